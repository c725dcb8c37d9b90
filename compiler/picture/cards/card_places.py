"""The places of a look team's card: the offence's men, the defence's letters and their grounds."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from stemline.football.defenders import Defender, DutyKind, Level
from stemline.football.play import Man, Play
from stemline.geometry.box import Box
from stemline.geometry.paths import Point
from stemline.picture.cards.card_rows import (
    CardScale,
    Standee,
    across,
    in_row,
    rows_of,
    scale_through,
)
from stemline.picture.cards.stunt_orders import TIP, WHITE, stunt_orders
from stemline.picture.scene.metrics import Extent, extent
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
_ROWS = (1.6, 2.4, 3.4, 5.0)
"""Yards that a row is deep: the first with which all rows fit."""
_STAYS = 3.5
"""Yards: nearer than this to his ground, a man has it round him."""
_DEEPEST = 18.0
"""Yards: what is deeper stands at this depth."""
_GROUNDS = {
    DutyKind.QUARTER: 40.0, DutyKind.THIRD: 52.0, DutyKind.HALF: 70.0,
}  # fmt: skip
_GROUND, GROUND_TALL = 30.0, 14.0
"""Half the width of a short zone's ground, and half the height of any."""


@dataclass(frozen=True)
class CardStood:
    """A letter or a ground in its place: ``box`` is what it takes, ``around`` half the width and
    half the height of the ground round a letter."""

    at: Point
    box: Box
    around: tuple[float, float] | None = None


class CardPlaces:
    """Everybody's place on a card of so many points, the line of scrimmage at 0: the ``symbols`` of
    the offence, ``letters`` and ``grounds`` of the defence by label, and in ``gaps`` where each
    rusher comes over the line. ``x`` and ``y`` say how yards lie, ``frame`` is what is taken.
    ``play.defence`` has to be there."""

    def __init__(self, play: Play, theme: Theme, wide: float, high: float) -> None:
        assert play.defence is not None, "a card shows a look"
        self._play, self._theme, self._wide = play, theme, wide
        self._types = theme.look(Size.THUMB).types
        rise = self.extent("H", "letter").rise
        self._ring = _RING * rise
        self._defence = play.defence
        self._beyond = 0.0
        if stunt_orders(self._defence.defenders):  # numbers stand past the arrows' tips
            self._beyond = self.extent("1", "read").rise + 5 * WHITE - TIP
        self.men = sorted(play.men, key=lambda m: (m.snap.x, m.label))
        self.symbols: dict[str, Point] = {}
        self.gaps: dict[str, float] = {}
        self.x = self._line_up()
        depth = self._back_up()
        self.letters: dict[str, CardStood] = {}
        self.grounds: dict[str, CardStood] = {}
        self.y = self._set_defence(high - depth)
        self.frame = self._framed(-depth)

    def extent(self, text: str, style: str) -> Extent:
        """Room that words take, in points."""
        return extent(text, self._types[style], self._theme)

    def radius(self, man: Man) -> float:
        """Of a man's symbol."""
        if man.interior:
            return _LINEMAN
        return max(self._ring, self.extent(man.label, "letter").width / 2 + 6.0)

    # Who stands where.

    def _line_up(self) -> CardScale:
        """The men about the line of scrimmage in one row, and how yards across lie after it."""
        row = [m for m in self.men if m.snap.y > -1.6 and not m.under_centre]
        rushers = [d for d in self._defence.rushers if d.duty and d.duty.to]
        base = self._base()
        whites = [3.0 if not m.interior else 1.0 for m in row]
        wanted = [(m.snap.x, 0.0, m.label, self.radius(m) + w)
                  for m, w in zip(row, whites, strict=True)]  # fmt: skip
        wanted += [(d.duty.to.x, d.at.x, f"{d.label} gap", _ARROW)
                   for d in rushers if d.duty and d.duty.to]  # fmt: skip
        wanted.sort()
        places = in_row(
            [base(x) for x, *_ in wanted], [half for *_, half in wanted], 0.0, 2.0, self._wide - 2.0
        )
        at = {name: x for (*_, name, _), x in zip(wanted, places, strict=True)}
        self.gaps = {d.label: at[f"{d.label} gap"] for d in rushers}
        for man in row:
            self.symbols[man.label] = Point(at[man.label], 0.0 if man.on_line else -_WING)
        left, right = row[0].snap.x, row[-1].snap.x
        each = base(left) - base(left - 1.0)
        ends = ((left - 1.0, at[row[0].label] - each), (right + 1.0, at[row[-1].label] + each))
        return scale_through((*((m.snap.x, at[m.label]) for m in row), *ends))

    def _base(self) -> CardScale:
        line = [m.snap.x for m in self.men if m.interior]
        front = sorted(
            (d for d in self._defence.defenders if d.level is Level.LINE and abs(d.at.x) < 7.0),
            key=lambda d: d.at.x,
        )
        box = min([*line, *(d.at.x for d in front)]), max([*line, *(d.at.x for d in front)])
        wanted = [_PITCH / (b - a) for a, b in pairwise(line) if b - a > 0.3]
        for one, two in pairwise(front):
            apart = two.at.x - one.at.x
            if apart > 0.3:
                need = sum(self.extent(d.label, "defender").width / 2 for d in (one, two))
                wanted.append((need + _WHITE) / apart)
        yard = min(max(wanted), _WIDEST_YARD, _BOX_PART * self._wide / (box[1] - box[0]))
        xs = [m.snap.x for m in self.men] + [d.at.x for d in self._defence.defenders]
        xs += [d.duty.to.x for d in self._defence.defenders if d.duty and d.duty.to]
        return across(box, (min(xs) - 1.5, max(xs) + 1.5), yard, self._wide)

    def _back_up(self) -> float:
        """The men behind the line in rows; how deep it makes the card."""
        backs = [m for m in self.men if m.label not in self.symbols]
        if not backs:
            return max(self._ring + _WING + 4.0, self._beyond)
        standing = [
            Standee(m.label, Point(self.x(m.snap.x), -m.snap.y), self.radius(m), self.radius(m))
            for m in backs
        ]
        rows = rows_of(standing, 1.6)
        first = any(m.under_centre for m in backs)
        low = _LINEMAN + 4.0 if first else max(self._ring + _WING + 5.0, self._beyond)
        depths = in_row(
            [12.0 * _mean(row) for row in rows], [max(s.tall for s in row) for row in rows], 5.0,
            low, math.inf,
        )  # fmt: skip
        for row, depth in zip(rows, depths, strict=True):
            self._in_place(row, -depth, 6.0, self.symbols)
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
        near = [m.label for m in self.men if not m.interior and m.label in self.symbols]
        rings = [self.symbols[label].x for label in near if self.symbols[label].y > -20]
        close = [self.x(d.at.x) for d in self._defence.defenders if d.at.y < 2.6]
        return any(abs(a - b) < self._ring + 16.0 for a in rings for b in close)

    def _standees(self, man: Defender) -> list[Standee]:
        """His letter, with his ground round it where he stays; else his ground too."""
        room = self.extent(man.label, "defender")
        wide, tall = room.width / 2, room.rise / 2
        at = Point(self.x(man.at.x), min(man.at.y, _DEEPEST))
        ground = _ground(man)
        if ground is None:
            return [Standee(man.label, at, wide, tall)]
        to, half = ground
        if _stays(man, to):
            return [Standee(man.label, at, max(half, wide + 16.0), tall + 8.0)]
        zone = Standee(f"{man.label} ground", Point(self.x(to.x), to.y), half, GROUND_TALL)
        return [Standee(man.label, at, wide, tall), zone]

    def _keep(self, standing: Sequence[Standee], places: dict[str, Point]) -> None:
        for each in standing:
            at = places[each.name]
            box = Box(at.x - each.wide, at.y - each.tall, at.x + each.wide, at.y + each.tall)
            if each.name.endswith(" ground"):
                self.grounds[each.name.removesuffix(" ground")] = CardStood(at, box)
                continue
            room = self.extent(each.name, "defender")
            w, h = room.width / 2, room.rise / 2
            letter = Box(at.x - w, at.y - h, at.x + w, at.y + h)
            around = (each.wide, each.tall) if each.tall > h + 1.0 else None
            self.letters[each.name] = CardStood(at, letter, around)

    def _framed(self, bottom: float) -> Box:
        tops = [s.box.top for s in (*self.letters.values(), *self.grounds.values())]
        tops += [s.at.y + s.around[1] for s in self.letters.values() if s.around]
        return Box(0.0, bottom, self._wide, max(tops) + 3.0)


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
