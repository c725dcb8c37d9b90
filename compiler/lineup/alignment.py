"""Formation + motion → men on the field, at their alignment and at the snap."""

from __future__ import annotations

from dataclasses import replace

from stemline.diagnostics.catalogue.football import E501, E502, E503
from stemline.diagnostics.catalogue.legality import E517
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.football.conditions import Called, Guard, Lie, possible
from stemline.football.field import Field, Side
from stemline.football.offence.landmarks import OFF_LINE_DEPTH, x_of
from stemline.football.play import Man
from stemline.football.players import Position
from stemline.geometry.paths import Point
from stemline.lineup.interior_line import interior, position_of
from stemline.lineup.unplaced import Unplaced
from stemline.playbook.formations import Formation
from stemline.playbook.guards import narrowest
from stemline.playbook.places import (
    STACKED,
    AtLandmark,
    AtMan,
    Between,
    FromHere,
    Home,
    Place,
    Where,
)
from stemline.playbook.playbook import Playbook
from stemline.playbook.said import Said, SideWord


def lie_of(side: Side | None, field: Field) -> Lie:
    """Whether a side is the wide or the short one from this spot."""
    if field.wide_side is None or side is None:
        return Lie.MIDDLE
    return Lie.FIELD if side is field.wide_side else Lie.BOUNDARY


def called_of(called: Side, field: Field) -> Called:
    """Whether a call to that side goes to the field or the boundary."""
    if field.field_side is None:
        return Called.NEITHER
    return Called.FIELD if called is field.field_side else Called.BOUNDARY


class Alignment:
    """Places the men of one formation, called to one side, at one ball spot.

    ``field`` has the interior line on it as soon as the men are placed.
    """

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
        people = self.book.people
        own = self.field.code.line
        lined = {letter for f in self.book.formations.values() for letter in f.men}
        line, marks = interior(self.formation, own, people, self.called, lined)
        self.field = replace(self.field, line=marks)
        men = list(line)
        standing = {man.label: man for man in line}
        for letter, said in self.formation.men.items():
            if letter in standing:
                raise Unplaced(E517(man=letter, formation=self.formation.name).at(said[0].span))
            at, on_line = self.place_of(letter)
            person = people.get(letter)
            number, forty = (person.number, person.forty) if person else (None, None)
            says = self.formation.man_says.get(letter, ())
            men.append(
                Man(
                    letter, self._position(letter), at, at, on_line, None, said[0].span,
                    forty=forty, number=number, says=says,
                    natural=position_of(letter, people) if self.formation.snap_to else None,
                )
            )  # fmt: skip
        return tuple(men)

    def _position(self, letter: str) -> Position:
        """What he is here: who takes the snap is the quarterback, and he then a receiver."""
        own, snapped = position_of(letter, self.book.people), self.formation.snap_to
        if not snapped:
            return own
        if letter == snapped:
            return Position.QUARTERBACK
        return Position.WIDEOUT if own is Position.QUARTERBACK else own

    def place_of(self, letter: str) -> tuple[Point, bool]:
        if letter in self._placed:
            return self._placed[letter]
        said = self.formation.men.get(letter)
        if said is None:
            raise Unplaced(E501(man=letter, formation=self.formation.name).at(self.formation.span))
        if letter in self._busy:
            raise Unplaced(E502(man=letter).at(said[0].span))
        self._busy.add(letter)
        place = self._choose(said, letter).value
        point = self.point(place, self._default_depth(letter))
        on_line = place.on_line
        if place.depth is None and isinstance(place.where, AtMan) and place.where.beside:
            neighbour, on_line = self.place_of(place.where.man)
            point = Point(point.x, neighbour.y)
        if place.depth is None and isinstance(place.where, AtMan) and place.where.behind:
            ahead, _ = self.place_of(place.where.man)
            point = Point(point.x, ahead.y - STACKED)
        self._placed[letter] = (point, on_line)
        return self._placed[letter]

    def _choose(self, said: tuple[Said[Place], ...], letter: str) -> Said[Place]:
        """The line that holds: the side a man stands on decides his lie, so try each line."""
        holding = [s for s in said if self._holds(s.guard, self.side(s.value))]
        chosen = narrowest(holding)
        if chosen is None:
            raise Unplaced(E503(man=letter, spot=self.field.spot.value).at(said[0].span))
        return chosen

    def _holds(self, guard: Guard, side: Side | None) -> bool:
        called = called_of(self.called, self.field)
        known = possible(self.book.receivers, None, lie_of(side, self.field), called)
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
                return (
                    Side.at(self.place_of(anchor.man)[0].x) if isinstance(anchor, AtMan) else None
                )
            case SideWord.CALL:
                return self.called
            case SideWord.AWAY:
                return self.called.other
            case SideWord.LEFT:
                return Side.LEFT
            case SideWord.RIGHT:
                return Side.RIGHT
            case SideWord.FIELD:
                return self.field.field_side or self.called
            case _:
                return (self.field.field_side or self.called).other

    def point(self, place: Place, default_depth: float, man: Man | None = None) -> Point:
        """Where a place is; ``man`` is the mover, for places that only a motion names."""
        side = self.side(place) or self.called
        match place.where:
            case Between(first, second):
                x = (self._x(first, side, man) + self._x(second, side, man)) / 2
            case where:
                x = self._x(where, side, man)
        return Point(x, 0.0 - (default_depth if place.depth is None else place.depth))

    def _x(self, where: Where, side: Side, man: Man | None) -> float:
        match where:
            case AtLandmark(landmark, outside):
                return x_of(landmark, side, self.field) + side.value * outside
            case AtMan(letter, outside):
                x = self.place_of(letter)[0].x
            case FromHere(outside) if man is not None:
                x = man.snap.x
            case Home() if man is not None:
                return man.at.x
            case _:
                return 0.0
        return x + (Side.at(x) or side).value * outside


def line_up(
    book: Playbook, formation: Formation, called: Side, field: Field
) -> tuple[Alignment, tuple[Man, ...], tuple[Diagnostic, ...]]:
    """The men at their alignment; none, with the reason, where a man cannot be placed."""
    alignment = Alignment(book, formation, called, field)
    try:
        return alignment, alignment.men(), ()
    except Unplaced as failed:
        return alignment, (), (failed.diagnostic,)
