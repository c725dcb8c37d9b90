"""Formation + motion → men on the field, at their alignment and at the snap."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace

from stemline.diagnostics.model import Diagnostic, diagnose
from stemline.football.counting import count, ranked
from stemline.football.field import Field, Side
from stemline.football.landmarks import (
    GUARD_SPLIT,
    OFF_LINE_DEPTH,
    TACKLE_SPLIT,
    Landmark,
    x_of,
)
from stemline.football.play import Man, Motion
from stemline.football.players import Position
from stemline.football.worlds import Guard, Lie, possible
from stemline.paths import Leg, Path, Point
from stemline.resolve.definitions import (
    AtLandmark,
    AtMan,
    Between,
    Formation,
    MotionDef,
    Move,
    Mover,
    Place,
    Playbook,
    Said,
    SideWord,
)
from stemline.resolve.read_guards import narrowest
from stemline.source import NOWHERE

LINE: tuple[tuple[str, Position, float], ...] = (
    ("LT", Position.TACKLE, -TACKLE_SPLIT),
    ("LG", Position.GUARD, -GUARD_SPLIT),
    ("C", Position.CENTRE, 0.0),
    ("RG", Position.GUARD, GUARD_SPLIT),
    ("RT", Position.TACKLE, TACKLE_SPLIT),
)
_DETOUR = 1.2
"""How far behind a set man a motion passes him: on paper and on the field he goes round."""
_DETOUR_TURN = 1.5
_COMES_UP = ((3.5, 0.4), (1.5, 0.15))
"""Yards before his place (at most so much of the way) where a running man begins to come up, and
where he is level with it. Common practice, no published source."""


class Unplaced(Exception):
    """A man who cannot be put on the field; caught by `line_up`."""

    def __init__(self, diagnostic: Diagnostic) -> None:
        super().__init__(diagnostic.code)
        self.diagnostic = diagnostic


def lie_of(side: Side | None, field: Field) -> Lie:
    """Whether a side is the wide or the short one from this spot."""
    if field.wide_side is None or side is None:
        return Lie.MIDDLE
    return Lie.FIELD if side is field.wide_side else Lie.BOUNDARY


class Alignment:
    """Places the men of one formation, called to one side, at one ball spot."""

    def __init__(self, book: Playbook, formation: Formation, called: Side, field: Field) -> None:
        self.book = book
        self.formation = formation
        self.called = called
        self.field = field
        self._placed: dict[str, tuple[Point, bool]] = {}
        self._busy: set[str] = set()

    def men(self) -> tuple[Man, ...]:
        """The line and everyone the formation lines up, in the order of the text.

        Raises Unplaced for the first man who cannot be placed.
        """
        men = [Man(label, p, Point(x, 0), Point(x, 0), True, None, NOWHERE) for label, p, x in LINE]
        for letter, said in self.formation.men.items():
            at, on_line = self.place_of(letter)
            position = self._position(letter)
            men.append(Man(letter, position, at, at, on_line, None, said[0].span))
        return tuple(men)

    def _position(self, letter: str) -> Position:
        person = self.book.people.get(letter)
        if person is not None:
            return person.position
        return Position.QUARTERBACK if letter.startswith("Q") else Position.SLOT

    def place_of(self, letter: str) -> tuple[Point, bool]:
        if letter in self._placed:
            return self._placed[letter]
        said = self.formation.men.get(letter)
        if said is None:
            raise Unplaced(
                diagnose("E501", self.formation.span, man=letter, formation=self.formation.name)
            )
        if letter in self._busy:
            raise Unplaced(diagnose("E502", said[0].span, man=letter))
        self._busy.add(letter)
        place = self._choose(said, letter).value
        point = self.point(place, self._default_depth(letter))
        self._placed[letter] = (point, place.on_line)
        return self._placed[letter]

    def _choose(self, said: tuple[Said[Place], ...], letter: str) -> Said[Place]:
        """The line that holds: the side a man stands on decides his lie, so try each line."""
        holding = [s for s in said if self._holds(s.guard, self.side(s.value))]
        chosen = narrowest(holding)
        if chosen is None:
            raise Unplaced(diagnose("E503", said[0].span, man=letter, spot=self.field.spot.value))
        return chosen

    def _holds(self, guard: Guard, side: Side | None) -> bool:
        known = possible(self.book.receivers, None, lie_of(side, self.field))
        return bool(known & guard.worlds)

    def _default_depth(self, letter: str) -> float:
        if self._position(letter) is Position.QUARTERBACK:
            return self.book.settings.gun_depth
        return OFF_LINE_DEPTH

    def side(self, place: Place) -> Side | None:
        """Left or right for a place's side word; None where another man's side decides."""
        match place.side:
            case None:
                anchor = place.where
                if isinstance(anchor, AtMan):
                    x = self.place_of(anchor.man)[0].x
                    return None if x == 0 else Side.RIGHT if x > 0 else Side.LEFT
                return None
            case SideWord.CALL:
                return self.called
            case SideWord.AWAY:
                return self.called.other
            case SideWord.LEFT:
                return Side.LEFT
            case SideWord.RIGHT:
                return Side.RIGHT
            case SideWord.FIELD:
                return self.field.wide_side or self.called
            case _:
                return (self.field.wide_side or self.called).other

    def point(self, place: Place, default_depth: float) -> Point:
        side = self.side(place) or self.called
        match place.where:
            case Between(first, second):
                x = (self._x(first, side) + self._x(second, side)) / 2
            case where:
                x = self._x(where, side)
        return Point(x, 0.0 - (default_depth if place.depth is None else place.depth))

    def _x(self, where: AtLandmark | AtMan, side: Side) -> float:
        if isinstance(where, AtLandmark):
            return x_of(where.landmark, side, self.field) + side.value * where.outside
        x = self.place_of(where.man)[0].x
        if x:
            side = Side.RIGHT if x > 0 else Side.LEFT
        return x + side.value * where.outside


def line_up(
    book: Playbook, formation: Formation, called: Side, field: Field
) -> tuple[Alignment, tuple[Man, ...], tuple[Diagnostic, ...]]:
    """The men at their alignment; none, with the reason, where a man cannot be placed."""
    alignment = Alignment(book, formation, called, field)
    try:
        return alignment, alignment.men(), ()
    except Unplaced as failed:
        return alignment, (), (failed.diagnostic,)


def move(
    alignment: Alignment, men: tuple[Man, ...], motion: MotionDef | None
) -> tuple[tuple[Man, ...], Mapping[str, Motion], tuple[Diagnostic, ...]]:
    """The men at the snap, and each mover's motion by letter."""
    motions: dict[str, Motion] = {}
    found: list[Diagnostic] = []
    if motion is None:
        return men, motions, ()
    counted = ranked(men, count(men, alignment.called))
    for one in motion.moves:
        man = _mover(one.mover, counted, alignment)
        if man is None:
            found.append(_nobody_moves(one.mover, motion, alignment))
            continue
        try:
            moved, shown = _moved(one, man, motion, alignment)
        except Unplaced as failed:
            found.append(failed.diagnostic)
            continue
        men = tuple(moved if m.label == man.label else m for m in men)
        motions[man.label] = shown
    return men, motions, tuple(found)


def _mover(mover: Mover, men: Iterable[Man], alignment: Alignment) -> Man | None:
    if mover.letter:
        return next((m for m in men if m.label == mover.letter), None)
    side = alignment.side(Place(mover.side, AtLandmark(Landmark.BALL, 0), 0, False, mover.span))
    return next(
        (m for m in men if m.rank and m.rank.side is side and m.rank.number == mover.number), None
    )


def _nobody_moves(mover: Mover, motion: MotionDef, alignment: Alignment) -> Diagnostic:
    who = mover.letter or f"{mover.side.value if mover.side else ''} #{mover.number}".strip()
    return diagnose(
        "E610", mover.span, who=who, motion=motion.name, formation=alignment.formation.name
    )


def _moved(one: Move, man: Man, motion: MotionDef, alignment: Alignment) -> tuple[Man, Motion]:
    running = motion.speed > 0
    how = "running" if running else "set"
    if one.from_depth is not None:
        start = Point(man.at.x, -one.from_depth)
        path = Path(start, (Leg(man.at),))
        words = f"{motion.name} from {one.from_depth:g} deep, {how}"
        return replace(man, at=start), Motion(motion.name, path, running, motion.speed, words)
    legs: list[Leg] = []
    at = man.at
    for place in one.to:
        to = alignment.point(place, -man.at.y)
        if abs(to.x - at.x) > 2 * TACKLE_SPLIT or to.x * at.x < 0:
            legs += _behind(at, to, running)
        legs.append(Leg(to))
        at = to
    on_line = one.to[-1].on_line
    moved = replace(man, snap=at, on_line=on_line)
    path = Path(man.at, tuple(legs))
    return moved, Motion(motion.name, path, running, motion.speed, f"{motion.name}, {how}")


def _behind(at: Point, to: Point, running: bool) -> list[Leg]:
    """The way behind the men who are set between two places.

    A man who runs when the ball moves comes up early, so that he runs along the line and not
    toward it at the snap: a code may forbid that.
    """
    deep, across = min(at.y, to.y) - _DETOUR, to.x - at.x
    legs = [Leg(Point(at.x + across * f, deep), _DETOUR_TURN) for f in (0.15, 0.85)]
    if running:
        up, level = (min(yards / abs(across), share) for yards, share in _COMES_UP)
        legs[-1] = Leg(Point(to.x - across * up, deep), _DETOUR_TURN)
        legs.append(Leg(Point(to.x - across * level, to.y), _DETOUR_TURN))
    return legs
