"""The interior line of one formation, called to one side: who stands where, and its landmarks.

A line is written from left to right as it stands when called right. Called left it is the same
line seen from the other side, and a man named by a side, LT or RG, keeps to his own: the tackle
who comes over to an unbalanced side is the left one when the call goes right and the right one
when it goes left. A staff whose men change sides names them otherwise, ST or QG, and they go with
the call.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping

from stemline.diagnostics.catalogue.legality import E516
from stemline.football.field import Side
from stemline.football.line import ENDINGS, KNOWN_LINEMEN, SNAPPER, SPLIT, LineMarks
from stemline.football.play import Man
from stemline.football.players import Position
from stemline.geometry.paths import Point
from stemline.lineup.unplaced import Unplaced
from stemline.playbook.formations import Formation, Person
from stemline.source import NOWHERE

_SIDED = {"L": "R", "R": "L"}


def position_of(label: str, people: Mapping[str, Person], *, in_line: bool = False) -> Position:
    """What a man is: as the personnel says, else by his label."""
    person = people.get(label)
    if person is not None:
        return person.position
    if label == SNAPPER:
        return Position.CENTRE
    if in_line or label in KNOWN_LINEMEN:
        return ENDINGS.get(label[-1], Position.TACKLE)
    return Position.QUARTERBACK if label.startswith("Q") else Position.SLOT


def line_labels(
    formation: Formation,
    own: tuple[str, ...],
    people: Mapping[str, Person],
    lined: Collection[str] = (),
) -> tuple[str, ...]:
    """The interior men from left to right when called right.

    ``own`` is the code's line, which a lineman leaves whom the formation lines up elsewhere.
    ``lined`` are the letters that any formation of the book lines up: the centre has one label in
    all of them.
    """
    line = formation.line.labels if formation.line is not None else ()
    if not line:
        elsewhere = {m for m in formation.men if position_of(m, people).interior}
        line = tuple(label for label in own if label not in elsewhere)
    if SNAPPER in line:
        return line
    taken = {*formation.men, *lined, *(p for p in people if not people[p].position.interior)}
    return tuple(SNAPPER if label == "C" and label in taken else label for label in line)


def called_to(labels: tuple[str, ...], called: Side) -> tuple[str, ...]:
    """The line from left to right when called to that side."""
    if called is Side.RIGHT:
        return labels
    return tuple(_other_side(label, labels) for label in reversed(labels))


def _other_side(label: str, labels: tuple[str, ...]) -> str:
    """RT for LT, where both stand in the line; any other man keeps his label."""
    other = _SIDED.get(label[0], "") + label[1:]
    return other if len(label) > 1 and other in labels else label


def interior(
    formation: Formation,
    own: tuple[str, ...],
    people: Mapping[str, Person],
    called: Side,
    lined: Collection[str] = (),
) -> tuple[tuple[Man, ...], LineMarks]:
    """The men of the line, the centre over the ball, and where guard, tackle and end are.

    Raises Unplaced where no centre stands in it.
    """
    labels = called_to(line_labels(formation, own, people, lined), called)
    span = formation.line.span if formation.line is not None else NOWHERE
    positions = [position_of(label, people, in_line=True) for label in labels]
    centres = [i for i, position in enumerate(positions) if position is Position.CENTRE]
    if len(centres) != 1:
        at = span if span.line else formation.span
        raise Unplaced(E516(formation=formation.name, got=len(centres) or "no").at(at))
    split = (formation.line.split if formation.line is not None else None) or SPLIT
    centre = centres[0]
    men = []
    for i, (label, position) in enumerate(zip(labels, positions, strict=True)):
        place = Point(round((i - centre) * split, 6), 0)
        person = people.get(label)
        number, forty = (person.number, person.forty) if person else (None, None)
        says = formation.man_says.get(label, ())
        men.append(
            Man(
                label, position, place, place, True, None, span, in_line=True, forty=forty,
                number=number, says=says,
            )
        )  # fmt: skip
    return tuple(men), LineMarks(split, centre, len(labels) - centre - 1)
