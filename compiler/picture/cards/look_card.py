"""A card for the look team: who stands where, and where each defender goes, in points of paper.

Not to scale: `card_rows` opens the box up and closes empty field, so that letters read from three
yards stand free. A man who stays about where he stands has his ground round him; any other line
goes round every letter (`card_ways`).
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise

from stemline.describe.changes import told
from stemline.football.defenders import Defender, DutyKind
from stemline.football.field import Side
from stemline.football.play import Man, Play
from stemline.football.players import Position
from stemline.geometry.box import Box, square
from stemline.picture.cards.card_places import GROUND_TALL, CardPlaces
from stemline.picture.cards.card_ways import CardGround, left_of_box, short_of
from stemline.picture.cards.stunt_orders import TIP, WHITE, OrderRoom, stunt_orders
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

_WALL = 4.0
"""White between a line and a letter that it passes."""
_HEAD, _HEAD_HALF = 12.0, 5.0
_BAR, _SHORT = 9.0, 5.0
"""Half the bar at a man who is covered; a line that is shorter is left out."""
_CORNERS = 40


def look_card(play: Play, theme: Theme, wide: float, high: float) -> Scene:
    """The look of ``play`` within ``wide`` and ``high`` points, as the offence sees it; its letters
    are as the theme's small pictures have them. ``play.defence`` has to be there."""
    return _Card(play, theme, wide, high).scene()


class _Card:
    def __init__(self, play: Play, theme: Theme, wide: float, high: float) -> None:
        assert play.defence is not None, "a card shows a look"
        self._play, self._wide, self._defence = play, wide, play.defence
        self._on = CardPlaces(play, theme, wide, high)
        self._ways: dict[str, list[Point]] = {}

    def scene(self) -> Scene:
        """The card's items from the ground up."""
        lines = self._lines()
        layers = (
            Layer("field", self._field()),
            Layer("claims", self._zones()),
            Layer("duties", lines),
            Layer("men", tuple(i for m in self._on.men for i in self._man(m))),
            Layer("defence", tuple(self._letter(d) for d in self._defence.defenders)),
            Layer("reads", self._orders()),
        )
        return Scene(*told(self._play, None, True), self._on.frame, 1.0, Size.THUMB, layers)

    def _man(self, man: Man) -> tuple[Item, ...]:
        at, radius = self._on.symbols[man.label], self._on.radius(man)
        if man.position is Position.CENTRE:
            box = square(at, 0.91 * radius)
            return (Plate(box, 0.0, "lineman", man.span, man.label),)
        if man.interior:
            return (Disc(at, radius, "lineman", man.span, man.label),)
        return Disc(at, radius, "man", man.span, man.label), self._written(
            man.label, at, "letter", man
        )

    def _letter(self, man: Defender) -> Item:
        return self._written(man.label, self._on.letters[man.label].at, "defender", man)

    def _written(self, text: str, at: Point, style: str, man: Man | Defender) -> TextRun:
        room = self._on.extent(text, style)
        return TextRun(text, Point(at.x - room.width / 2, at.y - room.rise / 2), style, man.span)

    def _orders(self) -> tuple[Item, ...]:
        """Who goes first in a stunt, as numbers; lines have to be laid before. Without room for all
        of them there are none: the words beside the picture say it."""
        turns = stunt_orders(self._defence.defenders)
        told = {d.label: d for d in self._defence.defenders if d.label in turns}
        taken = [s.box for s in (*self._on.letters.values(), *self._on.grounds.values())]
        rings = [(self._on.symbols[m.label], self._on.radius(m)) for m in self._on.men]
        sizes = {k: self._on.extent(str(turns[k]), "read") for k in told if k in self._ways}
        tiles = {k: (s.width + 2 * WHITE, s.rise + 2 * WHITE) for k, s in sizes.items()}
        placed = OrderRoom(self._on.frame, taken, rings, self._ways).placed(tiles)
        return tuple(
            item
            for label, tile in placed.items()
            for item in (
                Plate(tile, WHITE, "tile", told[label].span),
                self._written(str(turns[label]), tile.centre, "read", told[label]),
            )
        )

    def _zones(self) -> tuple[Item, ...]:
        made: list[Item] = []
        for man in self._defence.defenders:
            letter, ground = self._on.letters[man.label], self._on.grounds.get(man.label)
            if ground is not None:
                half = ground.box.width / 2
                made.append(_ellipse(ground.at, half, GROUND_TALL, man))
            elif letter.around is not None:
                made.append(_ellipse(letter.at, *letter.around, man))
        return tuple(made)

    def _field(self) -> tuple[Item, ...]:
        """The line of scrimmage, each five yards past it, hash marks, the goal line and sidelines,
        broken at whatever stands there."""
        field, made, frame = self._play.field, list[Item](), self._on.frame
        boxes = [s.box.grown(3.0) for s in (*self._on.letters.values(), *self._on.grounds.values())]
        boxes += [
            Box(s.at.x - s.around[0], s.at.y - s.around[1], s.at.x + s.around[0],
                s.at.y + s.around[1])
            for s in self._on.letters.values() if s.around
        ]  # fmt: skip
        boxes += [square(self._on.symbols[m.label], self._on.radius(m)) for m in self._on.men]
        goal = field.goal if field.goal is not None else math.inf
        rows = [(0.0, "line-of-scrimmage"), *((float(y), "yard-line") for y in (5, 10, 15))]
        rows = [(y, style) for y, style in rows if y < goal - 1.0] + [(goal, "goal-line")]
        for yards, style in rows:
            y = self._on.y(yards) if yards < math.inf else math.inf
            if y > frame.top - 2.0:
                continue
            made += _level(y, 0.0, self._wide, boxes, style)
            for side in Side if style == "yard-line" else ():
                x = self._on.x(field.hash_mark(side))
                tick = Box(x - 1.0, y - 5.0, x + 1.0, y + 5.0)
                if 0 < x < self._wide and not any(b.overlap(tick) > 0 for b in boxes):
                    made.append(_line("hash", Point(x, y - 5.0), Point(x, y + 5.0)))
        for side in Side:
            x = self._on.x(field.sideline(side))
            edge = Box(x - 1.5, frame.bottom, x + 1.5, frame.top)
            if 1.5 < x < self._wide - 1.5 and not any(b.overlap(edge) > 0 for b in boxes):
                made.append(_line("sideline", Point(x, frame.bottom), Point(x, frame.top)))
        return tuple(made)

    def _lines(self) -> tuple[Item, ...]:
        """Rushes first, then drops, then men: a later line keeps off an earlier one."""
        walls = [s.box.grown(_WALL) for s in self._on.letters.values()]
        walls += [square(self._on.symbols[m.label], self._on.radius(m) + 3.0) for m in self._on.men]
        soft = [s.box for s in self._on.grounds.values()]
        ground = CardGround(self._on.frame, walls, soft)
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
            elif man.label in self._on.grounds:
                made += self._drop(man, ground)
        return tuple(made)

    def _rush(self, man: Defender, ground: CardGround) -> Sequence[Item]:
        duty = man.duty
        if duty is None or duty.to is None:
            return ()
        letter, x = self._on.letters[man.label], self._on.gaps[man.label]
        own = (letter.box.grown(_WALL),)
        points = ground.way(letter.at, Point(x, 12.0), own)
        if not points:
            return ()
        depth = next((y for y in (TIP, -5.0) if self._free(Point(x, y))), 8.0)
        points = [*points[:-1], Point(x, max(points[-1].y, depth + 4.0)), Point(x, depth)]
        ground.use(points)
        return self._arrow(left_of_box(points, letter.box.grown(3.0)), "rush", man)

    def _free(self, at: Point) -> bool:
        """Whether an arrow may end there."""
        return all(
            at.distance(self._on.symbols[m.label]) > self._on.radius(m) + 4.0 for m in self._on.men
        )

    def _drop(self, man: Defender, ground: CardGround) -> Sequence[Item]:
        letter, zone = self._on.letters[man.label], self._on.grounds[man.label]
        points = ground.way(letter.at, zone.at, (letter.box.grown(_WALL), zone.box))
        if not points:
            return ()
        ground.use(points)
        return self._arrow(left_of_box(points, letter.box.grown(3.0)), "drop", man)

    def _cover(self, man: Defender, ground: CardGround) -> Sequence[Item]:
        """A line to his man with a bar; none to a man behind the line, whom words name."""
        duty, letter = man.duty, self._on.letters[man.label]
        his = next((m for m in self._on.men if duty and m.label == duty.man), None)
        if his is None or self._on.symbols[his.label].y < -20:
            return ()
        at, radius = self._on.symbols[his.label], self._on.radius(his)
        own = (letter.box.grown(_WALL), square(at, radius + 3.0))
        points = ground.way(letter.at, at, own)
        points = left_of_box(points, letter.box.grown(3.0))
        points = short_of(points, at, radius + 5.0)
        if len(points) < 2 or sum(a.distance(b) for a, b in pairwise(points)) < _SHORT:
            return ()
        ground.use(points)
        self._ways[man.label] = points
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
        shaft = short_of(points, tip, 0.8 * head)
        self._ways[man.label] = list(points)
        segments = tuple(Line(a, b) for a, b in pairwise(shaft))
        return (Stroke(segments, style, (tip, base + aside, base - aside), man.span),)


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
