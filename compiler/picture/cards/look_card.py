"""A card for the look team: who stands where, and where each defender goes, in points of paper.

Not to scale: `card_rows` opens the box up and closes empty field, so that letters read from three
yards stand free. A man who stays about where he stands has his ground round him; any other line
goes round every letter (`card_ways`).
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from stemline.describe.changes import told
from stemline.football.defenders import Defender, DutyKind, Level
from stemline.football.field import Side
from stemline.football.play import Man, Play
from stemline.football.players import Position
from stemline.geometry.box import Box, square
from stemline.picture.cards.card_rows import (
    CardScale,
    Standee,
    across,
    in_row,
    rows_of,
    scale_through,
)
from stemline.picture.cards.card_ways import CardGround
from stemline.picture.scene.metrics import Extent, extent
from stemline.picture.scene.scene import (
    Disc,
    Item,
    Layer,
    Line,
    Plate,
    Point,
    Polygon,
    Scene,
    Stroke,
    TextRun,
)
from stemline.source import NOWHERE
from stemline.theme import Size, Theme

# All in points unless yards are said; they are the card's own, tried on the bundled looks.
_LINEMAN, _PITCH, _ARROW = 7.0, 26.0, 6.0
"""Radius of a lineman; from one to the next at least; half of what an arrow between two takes."""
_WIDEST_YARD, _BOX_PART = 34.0, 0.56
"""The longest a yard is drawn, and the most of the card's width that the box takes."""
_RING = 0.72
"""A ring's radius, in heights of its letter."""
_WHITE, _ROW_WHITE = 12.0, 8.0
"""Between two letters of a row, and between two rows."""
_WING = 12.0
"""A man off the line of scrimmage stands so much behind it."""
_FRONT, _PRESSED = 22.0, 44.0
"""From the line of scrimmage to the first letters: of the front, and of one before a receiver."""
_WALL = 4.0
"""White between a line and a letter that it passes."""
_ROWS = (1.6, 2.4, 3.4, 5.0)
"""Yards that a row is deep: the first with which all rows fit."""
_STAYS = 3.5
"""Yards: nearer than this to his ground, a man has it round him."""
_DEEPEST = 18.0
"""Yards: what is deeper stands at this depth."""
_GROUNDS = {
    DutyKind.QUARTER: 40.0, DutyKind.THIRD: 52.0, DutyKind.HALF: 70.0,
}  # fmt: skip
_GROUND, _GROUND_TALL = 30.0, 14.0
"""Half the width of a short zone's ground, and half the height of any."""
_HEAD, _HEAD_HALF = 12.0, 5.0
_BAR, _SHORT = 9.0, 5.0
"""Half the bar at a man who is covered; a line that is shorter is left out."""
_CORNERS = 40


def look_card(play: Play, theme: Theme, wide: float, high: float) -> Scene:
    """The look of ``play`` within ``wide`` and ``high`` points, as the offence sees it; its letters
    are as the theme's small pictures have them. ``play.defence`` has to be there."""
    return _Card(play, theme, wide, high).scene()


@dataclass(frozen=True)
class _Stood:
    """A letter or a ground in its place: ``box`` is what it takes, ``around`` half the width and
    half the height of the ground round a letter."""

    at: Point
    box: Box
    around: tuple[float, float] | None = None


class _Card:
    def __init__(self, play: Play, theme: Theme, wide: float, high: float) -> None:
        assert play.defence is not None, "a card shows a look"
        self._play, self._theme, self._wide = play, theme, wide
        self._types = theme.look(Size.THUMB).types
        rise = self._extent("H", "letter").rise
        self._ring = _RING * rise
        self._defence = play.defence
        self._men = sorted(play.men, key=lambda m: (m.snap.x, m.label))
        self._symbols: dict[str, Point] = {}
        self._gaps: dict[str, float] = {}
        self._x = self._line_up()
        depth = self._back_up()
        self._letters: dict[str, _Stood] = {}
        self._grounds: dict[str, _Stood] = {}
        self._y = self._set_defence(high - depth)
        self._frame = self._framed(-depth)

    def _extent(self, text: str, style: str) -> Extent:
        return extent(text, self._types[style], self._theme)

    def _radius(self, man: Man) -> float:
        if man.interior:
            return _LINEMAN
        return max(self._ring, self._extent(man.label, "letter").width / 2 + 6.0)

    # Who stands where.

    def _line_up(self) -> CardScale:
        """The men about the line of scrimmage in one row, and how yards across lie after it."""
        row = [m for m in self._men if m.snap.y > -1.6 and not m.under_centre]
        rushers = [d for d in self._defence.rushers if d.duty and d.duty.to]
        base = self._base()
        whites = [3.0 if not m.interior else 1.0 for m in row]
        wanted = [(m.snap.x, 0.0, m.label, self._radius(m) + w)
                  for m, w in zip(row, whites, strict=True)]  # fmt: skip
        wanted += [(d.duty.to.x, d.at.x, f"{d.label} gap", _ARROW)
                   for d in rushers if d.duty and d.duty.to]  # fmt: skip
        wanted.sort()
        places = in_row(
            [base(x) for x, *_ in wanted], [half for *_, half in wanted], 0.0, 2.0, self._wide - 2.0
        )
        at = {name: x for (*_, name, _), x in zip(wanted, places, strict=True)}
        self._gaps = {d.label: at[f"{d.label} gap"] for d in rushers}
        for man in row:
            self._symbols[man.label] = Point(at[man.label], 0.0 if man.on_line else -_WING)
        left, right = row[0].snap.x, row[-1].snap.x
        each = base(left) - base(left - 1.0)
        ends = ((left - 1.0, at[row[0].label] - each), (right + 1.0, at[row[-1].label] + each))
        return scale_through((*((m.snap.x, at[m.label]) for m in row), *ends))

    def _base(self) -> CardScale:
        line = [m.snap.x for m in self._men if m.interior]
        front = sorted(
            (d for d in self._defence.defenders if d.level is Level.LINE and abs(d.at.x) < 7.0),
            key=lambda d: d.at.x,
        )
        box = min([*line, *(d.at.x for d in front)]), max([*line, *(d.at.x for d in front)])
        wanted = [_PITCH / (b - a) for a, b in pairwise(line) if b - a > 0.3]
        for one, two in pairwise(front):
            apart = two.at.x - one.at.x
            if apart > 0.3:
                need = sum(self._extent(d.label, "defender").width / 2 for d in (one, two))
                wanted.append((need + _WHITE) / apart)
        yard = min(max(wanted), _WIDEST_YARD, _BOX_PART * self._wide / (box[1] - box[0]))
        xs = [m.snap.x for m in self._men] + [d.at.x for d in self._defence.defenders]
        xs += [d.duty.to.x for d in self._defence.defenders if d.duty and d.duty.to]
        return across(box, (min(xs) - 1.5, max(xs) + 1.5), yard, self._wide)

    def _back_up(self) -> float:
        """The men behind the line in rows; how deep it makes the card."""
        backs = [m for m in self._men if m.label not in self._symbols]
        if not backs:
            return self._ring + _WING + 4.0
        standing = [
            Standee(m.label, Point(self._x(m.snap.x), -m.snap.y), self._radius(m), self._radius(m))
            for m in backs
        ]
        rows = rows_of(standing, 1.6)
        first = any(m.under_centre for m in backs)
        low = _LINEMAN + 4.0 if first else self._ring + _WING + 5.0
        depths = in_row(
            [12.0 * _mean(row) for row in rows], [max(s.tall for s in row) for row in rows], 5.0,
            low, math.inf,
        )  # fmt: skip
        for row, depth in zip(rows, depths, strict=True):
            self._in_place(row, -depth, 6.0, self._symbols)
        return depths[-1] + max(s.tall for s in rows[-1]) + 4.0

    def _in_place(
        self, row: Sequence[Standee], y: float, gap: float, places: dict[str, Point]
    ) -> None:
        ordered = sorted(row, key=lambda s: (s.want.x, s.name))
        xs = in_row(
            [s.want.x for s in ordered], [s.wide for s in ordered], gap, 2.0, self._wide - 2.0
        )
        for each, x in zip(ordered, xs, strict=True):
            places[each.name] = Point(x, y)

    def _set_defence(self, high: float) -> CardScale:
        """The letters and grounds in rows, and how yards deep lie after it."""
        standing = [s for d in self._defence.defenders for s in self._standees(d)]
        low = _PRESSED if self._pressed() else _FRONT
        for deep in _ROWS:
            rows = rows_of(standing, deep)
            talls = [max(s.tall for s in row) for row in rows]
            need = low + sum(2 * t for t in talls) + _ROW_WHITE * (len(rows) - 1) + 3.0
            room = all(sum(2 * s.wide + _WHITE for s in row) < self._wide for row in rows)
            if need <= high and room:
                break
        means = [_mean(row) for row in rows]
        yard = min(max((high - talls[-1] - 3.0) / max(means[-1], 1.0), 10.0), 26.0)
        ys = in_row([yard * m for m in means], talls, _ROW_WHITE, low, high - 3.0)
        places: dict[str, Point] = {}
        for row, y in zip(rows, ys, strict=True):
            self._in_place(row, y, _WHITE, places)
        self._keep(standing, places)
        return scale_through(((0.0, 0.0), *zip(means, ys, strict=True)))

    def _pressed(self) -> bool:
        """Whether a defender close to the line stands before a ring."""
        near = [m.label for m in self._men if not m.interior and m.label in self._symbols]
        rings = [self._symbols[label].x for label in near if self._symbols[label].y > -20]
        close = [self._x(d.at.x) for d in self._defence.defenders if d.at.y < 2.6]
        return any(abs(a - b) < self._ring + 16.0 for a in rings for b in close)

    def _standees(self, man: Defender) -> list[Standee]:
        """His letter, with his ground round it where he stays; else his ground too."""
        room = self._extent(man.label, "defender")
        wide, tall = room.width / 2, room.rise / 2
        at = Point(self._x(man.at.x), min(man.at.y, _DEEPEST))
        ground = _ground(man)
        if ground is None:
            return [Standee(man.label, at, wide, tall)]
        to, half = ground
        if _stays(man, to):
            return [Standee(man.label, at, max(half, wide + 16.0), tall + 8.0)]
        zone = Standee(f"{man.label} ground", Point(self._x(to.x), to.y), half, _GROUND_TALL)
        return [Standee(man.label, at, wide, tall), zone]

    def _keep(self, standing: Sequence[Standee], places: dict[str, Point]) -> None:
        for each in standing:
            at = places[each.name]
            box = Box(at.x - each.wide, at.y - each.tall, at.x + each.wide, at.y + each.tall)
            if each.name.endswith(" ground"):
                self._grounds[each.name.removesuffix(" ground")] = _Stood(at, box)
                continue
            room = self._extent(each.name, "defender")
            w, h = room.width / 2, room.rise / 2
            letter = Box(at.x - w, at.y - h, at.x + w, at.y + h)
            around = (each.wide, each.tall) if each.tall > h + 1.0 else None
            self._letters[each.name] = _Stood(at, letter, around)

    def _framed(self, bottom: float) -> Box:
        tops = [s.box.top for s in (*self._letters.values(), *self._grounds.values())]
        tops += [s.at.y + s.around[1] for s in self._letters.values() if s.around]
        return Box(0.0, bottom, self._wide, max(tops) + 3.0)

    # What is drawn.

    def scene(self) -> Scene:
        """The card's items from the ground up."""
        lines = self._lines()
        layers = (
            Layer("field", self._field()),
            Layer("claims", self._zones()),
            Layer("duties", lines),
            Layer("men", tuple(i for m in self._men for i in self._man(m))),
            Layer("defence", tuple(self._letter(d) for d in self._defence.defenders)),
        )
        return Scene(*told(self._play, None, True), self._frame, 1.0, Size.THUMB, layers)

    def _man(self, man: Man) -> tuple[Item, ...]:
        at, radius = self._symbols[man.label], self._radius(man)
        if man.position is Position.CENTRE:
            box = square(at, 0.91 * radius)
            return (Plate(box, 0.0, "lineman", man.span, man.label),)
        if man.interior:
            return (Disc(at, radius, "lineman", man.span, man.label),)
        return Disc(at, radius, "man", man.span, man.label), self._written(
            man.label, at, "letter", man
        )

    def _letter(self, man: Defender) -> Item:
        return self._written(man.label, self._letters[man.label].at, "defender", man)

    def _written(self, text: str, at: Point, style: str, man: Man | Defender) -> TextRun:
        room = self._extent(text, style)
        return TextRun(text, Point(at.x - room.width / 2, at.y - room.rise / 2), style, man.span)

    def _zones(self) -> tuple[Item, ...]:
        made: list[Item] = []
        for man in self._defence.defenders:
            letter, ground = self._letters[man.label], self._grounds.get(man.label)
            if ground is not None:
                half = ground.box.width / 2
                made.append(_ellipse(ground.at, half, _GROUND_TALL, man))
            elif letter.around is not None:
                made.append(_ellipse(letter.at, *letter.around, man))
        return tuple(made)

    def _field(self) -> tuple[Item, ...]:
        """The line of scrimmage, each five yards past it, hash marks, the goal line and sidelines,
        broken at whatever stands there."""
        field, made, frame = self._play.field, list[Item](), self._frame
        boxes = [s.box.grown(3.0) for s in (*self._letters.values(), *self._grounds.values())]
        boxes += [
            Box(s.at.x - s.around[0], s.at.y - s.around[1], s.at.x + s.around[0],
                s.at.y + s.around[1])
            for s in self._letters.values() if s.around
        ]  # fmt: skip
        boxes += [square(self._symbols[m.label], self._radius(m)) for m in self._men]
        goal = field.goal if field.goal is not None else math.inf
        rows = [(0.0, "line-of-scrimmage"), *((float(y), "yard-line") for y in (5, 10, 15))]
        rows = [(y, style) for y, style in rows if y < goal - 1.0] + [(goal, "goal-line")]
        for yards, style in rows:
            y = self._y(yards) if yards < math.inf else math.inf
            if y > frame.top - 2.0:
                continue
            made += _level(y, 0.0, self._wide, boxes, style)
            for side in Side if style == "yard-line" else ():
                x = self._x(field.hash_mark(side))
                tick = Box(x - 1.0, y - 5.0, x + 1.0, y + 5.0)
                if 0 < x < self._wide and not any(b.overlap(tick) > 0 for b in boxes):
                    made.append(_line("hash", Point(x, y - 5.0), Point(x, y + 5.0)))
        for side in Side:
            x = self._x(field.sideline(side))
            edge = Box(x - 1.5, frame.bottom, x + 1.5, frame.top)
            if 1.5 < x < self._wide - 1.5 and not any(b.overlap(edge) > 0 for b in boxes):
                made.append(_line("sideline", Point(x, frame.bottom), Point(x, frame.top)))
        return tuple(made)

    def _lines(self) -> tuple[Item, ...]:
        """Rushes first, then drops, then men: a later line keeps off an earlier one."""
        walls = [s.box.grown(_WALL) for s in self._letters.values()]
        walls += [square(self._symbols[m.label], self._radius(m) + 3.0) for m in self._men]
        soft = [s.box for s in self._grounds.values()]
        ground = CardGround(self._frame, walls, soft)
        made: list[Item] = []
        order = {DutyKind.RUSH: 0, DutyKind.MAN: 2}
        ranked = sorted(
            (d for d in self._defence.defenders if d.duty is not None),
            key=lambda d: (order.get(d.duty.kind, 1) if d.duty else 0, d.at.y, d.label),
        )
        for man in ranked:
            assert man.duty is not None
            if man.duty.kind is DutyKind.RUSH:
                made += self._rush(man, ground)
            elif man.duty.kind is DutyKind.MAN:
                made += self._cover(man, ground)
            elif man.label in self._grounds:
                made += self._drop(man, ground)
        return tuple(made)

    def _rush(self, man: Defender, ground: CardGround) -> Sequence[Item]:
        duty = man.duty
        if duty is None or duty.to is None:
            return ()
        letter, x = self._letters[man.label], self._gaps[man.label]
        own = (letter.box.grown(_WALL),)
        points = ground.way(letter.at, Point(x, 12.0), own)
        if not points:
            return ()
        depth = next((y for y in (-14.0, -5.0) if self._free(Point(x, y))), 8.0)
        points = [*points[:-1], Point(x, max(points[-1].y, depth + 4.0)), Point(x, depth)]
        ground.use(points)
        return self._arrow(_left(points, letter.box.grown(3.0)), "rush", man)

    def _free(self, at: Point) -> bool:
        """Whether an arrow may end there."""
        return all(at.distance(self._symbols[m.label]) > self._radius(m) + 4.0 for m in self._men)

    def _drop(self, man: Defender, ground: CardGround) -> Sequence[Item]:
        letter, zone = self._letters[man.label], self._grounds[man.label]
        points = ground.way(letter.at, zone.at, (letter.box.grown(_WALL), zone.box))
        if not points:
            return ()
        ground.use(points)
        return self._arrow(_left(points, letter.box.grown(3.0)), "drop", man)

    def _cover(self, man: Defender, ground: CardGround) -> Sequence[Item]:
        """A line to his man with a bar; none to a man behind the line, whom words name."""
        duty, letter = man.duty, self._letters[man.label]
        his = next((m for m in self._men if duty and m.label == duty.man), None)
        if his is None or self._symbols[his.label].y < -20:
            return ()
        at, radius = self._symbols[his.label], self._radius(his)
        own = (letter.box.grown(_WALL), square(at, radius + 3.0))
        points = ground.way(letter.at, at, own)
        points = _left(points, letter.box.grown(3.0))
        points = _short_of(points, at, radius + 5.0)
        if len(points) < 2 or sum(a.distance(b) for a, b in pairwise(points)) < _SHORT:
            return ()
        ground.use(points)
        end, before = points[-1], points[-2]
        along = (end - before).scaled(1 / max(end.distance(before), 1e-6))
        aside = Point(-along.y, along.x).scaled(_BAR)
        bar = Line(end - aside, end + aside)
        return _stroke("man", points, man), Stroke((bar,), "man", (), man.span)

    def _arrow(self, points: Sequence[Point], style: str, man: Defender) -> Sequence[Item]:
        long = sum(a.distance(b) for a, b in pairwise(points))
        if len(points) < 2 or long < _SHORT:
            return ()
        tip, before = points[-1], points[-2]
        head = min(_HEAD, 0.8 * long)
        along = (tip - before).scaled(1 / max(tip.distance(before), 1e-6))
        base = tip - along.scaled(head)
        aside = Point(-along.y, along.x).scaled(_HEAD_HALF)
        shaft = _short_of(points, tip, 0.8 * head)
        segments = tuple(Line(a, b) for a, b in pairwise(shaft))
        return (Stroke(segments, style, (tip, base + aside, base - aside), man.span),)


def _mean(row: Sequence[Standee]) -> float:
    return sum(s.want.y for s in row) / len(row)


def _ground(man: Defender) -> tuple[Point, float] | None:
    """Where his ground is, in yards, and half its width in points; None for no zone."""
    duty = man.duty
    if duty is None or duty.to is None or duty.kind in (DutyKind.RUSH, DutyKind.MAN):
        return None
    return Point(duty.to.x, min(duty.to.y, _DEEPEST)), _GROUNDS.get(duty.kind, _GROUND)


def _stays(man: Defender, to: Point) -> bool:
    return man.at.distance(to) < _STAYS


def _ellipse(middle: Point, wide: float, tall: float, man: Defender) -> Polygon:
    turns = (i * 2 * math.pi / _CORNERS for i in range(_CORNERS))
    points = tuple(Point(middle.x + wide * math.cos(t), middle.y + tall * math.sin(t))
                   for t in turns)  # fmt: skip
    return Polygon(points, "zone", man.span)


def _line(style: str, a: Point, b: Point) -> Stroke:
    return Stroke((Line(a, b),), style, (), NOWHERE)


def _level(y: float, left: float, right: float, boxes: Sequence[Box], style: str) -> list[Item]:
    """A line across the card, broken at the boxes that stand on it."""
    made: list[Item] = []
    at = left
    for box in sorted((b for b in boxes if b.bottom < y < b.top), key=lambda b: b.left):
        if box.left > at + 2.0:
            made.append(_line(style, Point(at, y), Point(box.left, y)))
        at = max(at, box.right)
    if right > at + 2.0:
        made.append(_line(style, Point(at, y), Point(right, y)))
    return made


def _stroke(style: str, points: Sequence[Point], man: Defender) -> Stroke:
    return Stroke(tuple(Line(a, b) for a, b in pairwise(points)), style, (), man.span)


def _left(points: Sequence[Point], box: Box) -> list[Point]:
    """What of a way lies past the box in which it begins."""
    for index, (a, b) in reversed(list(enumerate(pairwise(points)))):
        if not _holds(box, a):
            continue
        if _holds(box, b):
            return []
        inside, outside = 0.0, 1.0
        for _ in range(20):
            middle = (inside + outside) / 2
            if _holds(box, a + (b - a).scaled(middle)):
                inside = middle
            else:
                outside = middle
        return [a + (b - a).scaled(outside), *points[index + 1 :]]
    return list(points)


def _holds(box: Box, at: Point) -> bool:
    return box.left <= at.x <= box.right and box.bottom <= at.y <= box.top


def _short_of(points: Sequence[Point], at: Point, radius: float) -> list[Point]:
    """The way as far as it first comes within ``radius`` of ``at``."""
    made: list[Point] = []
    for a, b in pairwise(points):
        if a.distance(at) <= radius:
            break
        made.append(a)
        if b.distance(at) <= radius:
            outside, inside = 0.0, 1.0
            for _ in range(20):
                middle = (inside + outside) / 2
                if (a + (b - a).scaled(middle)).distance(at) > radius:
                    outside = middle
                else:
                    inside = middle
            made.append(a + (b - a).scaled(outside))
            break
    else:
        made += points[-1:]
    return made
