"""Whom a coach's line speaks to: ``every slotback says``, ``linemen says``."""

from __future__ import annotations

from collections.abc import Collection

from stemline.diagnostics.catalogue.coaching_notes import E771, E772
from stemline.football.players import Position
from stemline.playbook.note_definitions import Addressed
from stemline.read.words import Misread, Words
from stemline.syntax.tree import Fact, Phrase
from stemline.syntax.writing import written

_POSITIONS = {position.value: position for position in Position}
LINEMEN = "linemen"
_BY_PLACE = {
    Position.QUARTERBACK: "quarterback", Position.BACK: "back", Position.FULLBACK: "fullback",
    Position.TIGHT_END: "tight end", Position.WING: "wing", Position.TACKLE: "each tackle",
    Position.GUARD: "each guard", Position.CENTRE: "centre",
}  # fmt: skip
"""By where the men of a position are named in a line that gives them something to do."""


def read_group(
    subject: Phrase, fact: Fact, positions: Collection[Position]
) -> Position | Addressed | None:
    """The men whom such a subject means; None for another subject. ``positions`` are those that
    men of the playbook have."""
    words = Words([subject])
    group: Position | Addressed | None = None
    if words.take_word(LINEMEN):
        group = Addressed.LINEMEN
    elif words.take_word("every") and not words.done:
        if words.atoms[words.at].word == "other":
            return None
        known = [position.value for position in positions]
        name = words.take_name(_POSITIONS)
        if name is None or _POSITIONS[name] not in positions:
            words.at = 1
            raise words.miss(E771, known)
        group = _POSITIONS[name]
    if group is None:
        return None
    words.finish("whom the line speaks to")
    if fact.key != "says":
        raise Misread(E772(who=subject.text, line=_line(group, fact)).at(subject.span))
    return group


def _line(group: Position | Addressed, fact: Fact) -> str:
    """The line that gives such men the job."""
    who = "line" if group is Addressed.LINEMEN else "each #2"
    if isinstance(group, Position):
        who = _BY_PLACE.get(group, who)
    when = f" when {written(fact.guard)}" if fact.guard is not None else ""
    return f"`{who} {fact.key} {written(fact.value)}{when}`"
