"""Where a defender stands: ``3, strong`` · ``strong #1, 1 inside, 7 deep`` · ``middle, 12 deep``.

`or` begins another choice, for when a receiver is not there. A depth or side that an earlier
choice leaves out is the one that a later choice says.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from stemline.diagnostics.catalogue.football import E402, E433
from stemline.diagnostics.catalogue.looks import E481, E482, E483
from stemline.diagnostics.in_words import either
from stemline.football.defence.techniques import BOTH_SIDES, GAPS, LINEBACKERS, TECHNIQUES, WORDS
from stemline.football.offence.landmarks import Landmark
from stemline.playbook.look_definitions import (
    Apex,
    AtField,
    AtTechnique,
    Halfway,
    InGap,
    LookSide,
    OverEnd,
    OverReceiver,
    Stand,
    Stands,
)
from stemline.read.words import Misread, Words
from stemline.source import Span
from stemline.syntax.tree import Mark, Phrase, Value, items

SIDES = {side.value: side for side in LookSide}
LANDMARKS = {landmark.value: landmark for landmark in Landmark}
NUMBERS = (*TECHNIQUES, *LINEBACKERS)
PLACES = ("middle", "apex", "tight end", "between")
DEPTH_OF = {"press": 2.0, "off": 7.0}
"""How deep a corner is who presses or is off, where no figure says it: custom."""
_MEASURES = ("deep", "inside", "outside")
_CHOICES = (*PLACES, *LANDMARKS, *WORDS, *GAPS, *NUMBERS)


def choices_of(value: Value | None, span: Span, what: str) -> list[list[Phrase]]:
    """The choices of a line, each the phrases that commas part: `or` opens the next one."""
    choices: list[list[Phrase]] = [[]]
    for item in items(value, Mark.AND):
        for nth, part in enumerate(items(item, Mark.OR)):
            if not isinstance(part, Phrase):
                raise Misread(E402(what=what).at(part.span))
            if nth:
                choices.append([])
            choices[-1].append(part)
    if not all(choices):
        raise Misread(E402(what=what).at(value.span if value is not None else span))
    return choices


def read_stands(value: Value | None, span: Span) -> tuple[Stand, ...]:
    """Every choice of a place, in order."""
    read = [_read(c) for c in choices_of(value, span, "a place, a side and a depth")]
    depth: float | None = None
    side: LookSide | None = None
    stands: list[Stand] = []
    for draft in reversed(read):
        depth = draft.depth if draft.depth is not None else depth
        side = draft.side or side
        stands.insert(0, _whole(replace(draft, depth=depth, side=side)))
    return tuple(stands)


@dataclass(frozen=True)
class _Draft:
    """A choice as far as it was read."""

    phrases: tuple[Phrase, ...]
    where: Stands | None = None
    side: LookSide | None = None
    outside: float = 0.0
    depth: float | None = None

    @property
    def span(self) -> Span:
        return self.phrases[0].span.to(self.phrases[-1].span)

    @property
    def text(self) -> str:
        return ", ".join(p.text for p in self.phrases)


def _read(phrases: list[Phrase]) -> _Draft:
    draft = _Draft(tuple(phrases))
    for phrase in phrases:
        words = Words([phrase])
        while not words.done:
            draft = _piece(words, draft)
    return draft


def _piece(words: Words, draft: _Draft) -> _Draft:
    """One piece more: a side, a measure or a place; a place is said once."""
    start = words.at
    if draft.side is None and (name := _side(words)):
        return replace(draft, side=name)
    if draft.depth is None and (stands := words.take_word(*DEPTH_OF)):
        return replace(draft, depth=DEPTH_OF[stands])
    measure = _measure(words)
    if measure is not None and measure[1] == "deep":
        return replace(draft, depth=measure[0])
    if measure is not None:
        yards = measure[0] if measure[1] == "outside" else -measure[0]
        draft = replace(draft, outside=yards)
        if words.done or not isinstance(_peek(words), Landmark):
            return draft
    place: Stands | None
    if words.take_word("between"):
        place, side = _between(words)
        draft = replace(draft, side=draft.side or side)
    else:
        place = _place(words)
    if place is None or draft.where is not None:
        words.at = start
        raise words.miss(E481, _CHOICES, also=SIDES)
    return replace(draft, where=place)


def _side(words: Words) -> LookSide | None:
    """A side; `over` before it is a word for the ear, as in `over strong #1`."""
    start = words.at
    words.take_word("over")
    name = words.take_name(SIDES)
    if name is None:
        words.at = start
        return None
    words.take_word("side")
    return SIDES[name]


def _measure(words: Words) -> tuple[float, str] | None:
    """``7 deep`` or ``1 inside``; a bare number is a technique and is left where it is."""
    start = words.at
    yards = words.take_number()
    if yards is not None and (word := words.take_word(*_MEASURES)):
        return yards, word
    words.at = start
    return None


def _peek(words: Words) -> Landmark | None:
    start = words.at
    name = words.take_name(LANDMARKS)
    words.at = start
    return LANDMARKS[name] if name else None


def _place(words: Words) -> Stands | None:
    if words.take_word("apex"):
        return Apex()
    if words.take_word("middle"):
        return AtField(None)
    if name := words.take_name(WORDS):
        return AtTechnique(WORDS[name])
    if name := words.take_name(GAPS):
        return InGap(GAPS[name])
    words.take_word("over")
    if words.take_name(("tight end",)):
        return OverEnd()
    if (rank := words.take_rank()) is not None:
        return OverReceiver(rank)
    if name := words.take_name(LANDMARKS):
        return AtField(LANDMARKS[name])
    if not words.done and words.atoms[words.at].word in NUMBERS:
        words.at += 1
        return AtTechnique(words.atoms[words.at - 1].word)
    return None


def _between(words: Words) -> tuple[Halfway, LookSide | None]:
    """The two places that he stands between, and the side where one of them says it."""
    sides: list[str | None] = [words.take_name(SIDES)]
    first = _end(words)
    words.expect(("and",), E433)
    sides.append(words.take_name(SIDES))
    side = next(filter(None, sides), None)
    return Halfway(first, _end(words)), SIDES[side] if side else None


def _end(words: Words) -> OverReceiver | OverEnd | AtField:
    place = _place(words)
    if not isinstance(place, OverReceiver | OverEnd | AtField):
        raise words.miss(E481, (*LANDMARKS, "tight end", "middle"))
    return place


def _whole(draft: _Draft) -> Stand:
    """The choice with all that its place needs."""
    where = draft.where
    if where is None:
        raise Misread(E481(found=draft.text, choices=either(_CHOICES)).at(draft.span))
    if draft.side is None and _needs_side(where):
        raise Misread(E482(place=draft.text).at(draft.span))
    if draft.depth is None and not isinstance(where, AtTechnique | InGap):
        raise Misread(E483(place=draft.text).at(draft.span))
    return Stand(where, draft.side, draft.outside, draft.depth, draft.text)


def _needs_side(where: Stands) -> bool:
    match where:
        case AtTechnique(name):
            return name not in BOTH_SIDES
        case AtField(landmark):
            return landmark not in (None, Landmark.BALL)
        case Halfway(first, second):
            return _needs_side(first) or _needs_side(second)
        case _:
            return True
