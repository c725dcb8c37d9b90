"""A coach's words laid on the men whom they are for, where they hold in a call.

A word that the ball's spot or the look decides is said with its condition: a page is drawn from one
spot and read for all of them.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from itertools import product

from stemline.football.conditions import Called, Guard, Lie, LookWord, Where, possible
from stemline.football.defence.fronts import at_place
from stemline.football.play import SHARED, Play
from stemline.football.players import Position
from stemline.lineup.lined_up import LinedUp
from stemline.playbook.note_definitions import Addressed, Note
from stemline.playbook.playbook import Playbook
from stemline.playbook.run_definitions import WHOLE_LINE, LineSpot
from stemline.resolve.roles import Bound, candidates

_LOOKS = {look.value: look for look in LookWord}
_BY_SPOT = {word.value for word in (*Lie, *Called)}


def with_notes(
    play: Play,
    notes: Iterable[Note],
    bound: Bound,
    picture: LinedUp,
    line: LinedUp,
    against: Sequence[LookWord],
) -> Play:
    """The play, each man's words with those that may hold for him; one may have several. ``line``
    is the picture with the side that is the linemen's playside, a pass protection's own."""
    said: dict[str, list[str]] = {}
    for note in notes:
        words = worded(note, picture.receivers, picture.count.shape, against)
        for label in _men(note, bound, picture, line) if words else ():
            said.setdefault(label, []).append(words)
    if not said:
        return play
    made = (
        replace(a, says=tuple(dict.fromkeys((*a.says, *said.get(a.man, ())))))
        for a in play.assignments
    )
    return replace(play, assignments=tuple(made))


def worded(
    note: Note, receivers: int, shape: tuple[int, int] | None, against: Sequence[LookWord] = ()
) -> str:
    """A note's words, with the part of its condition that is still open; "" where it cannot
    hold. ``shape`` None is any."""
    worlds: Where = frozenset().union(
        *(
            possible(receivers, shape, lie, called, tuple(against))
            for lie, called in product(Lie, Called)
        )
    )
    if not worlds & note.guard.worlds:
        return ""
    if worlds <= note.guard.worlds:
        return note.words
    return f"When {_open(note.guard, against)}: {note.words}"


def notes_on_looks(book: Playbook) -> tuple[tuple[Note, tuple[LookWord, ...]], ...]:
    """The notes that a look decides, each line once, with what some dress-up is proved against."""
    bodies = (*(c.body for c in book.concepts.values()), *(t.body for t in book.tags.values()))
    notes = dict.fromkeys((n.span, n) for body in bodies for n in body.notes if n.guard.looks)
    proved = (word for dress in book.dresses for words in dress.against for word in words)
    asked = tuple(sorted(set(proved), key=list(LookWord).index))
    return tuple((note, asked) for _, note in notes)


def _open(guard: Guard, against: Sequence[LookWord]) -> str:
    """What of a condition the call itself does not settle."""
    parts = [part for part in guard.text.split(", ") if _is_open(part, against)]
    return ", ".join(parts) or guard.text


def _is_open(part: str, against: Sequence[LookWord]) -> bool:
    words = part.casefold().split(" or ")
    return any(w in _BY_SPOT or (w in _LOOKS and _LOOKS[w] not in against) for w in words)


def _men(note: Note, bound: Bound, picture: LinedUp, line: LinedUp) -> list[str]:
    match note.who:
        case str(role):
            # Men whom one line tells their job have its words with a number behind them.
            return [m for r, m in bound.men.items() if r.partition(SHARED)[0] == role]
        case Position() as position:
            return [m.label for m in picture.men if m.position is position]
        case Addressed.LINEMEN:
            return [m.label for m in picture.men if m.interior]
        case Addressed.ALL:
            return []
        case LineSpot() as spot:
            if spot == WHOLE_LINE:
                return [m.label for m in picture.men if m.interior]
            side = line.side(spot.side) if spot.side is not None else None
            label = at_place(picture.men, spot.place, side)
            return [label] if label else []
        case choice:
            return candidates(choice, picture, bound)[:1]
