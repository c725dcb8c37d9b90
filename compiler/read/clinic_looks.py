"""Lines of a look that hang on where its other men stand: ``corners cover flat``, ``M in behind
N``, ``S blitzes``, ``M, W cover backs``.

Each is put as lines that name the men and places; its place in the text is kept. What a look takes
over from another counts as its own. Common practice, no published source.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, replace
from itertools import pairwise

from stemline.football.defence.techniques import GAPS, LINEBACKERS, TECHNIQUES, WORDS
from stemline.read.read_places import LANDMARKS
from stemline.read.spoken_blocks import phrase_at
from stemline.syntax.tree import (
    AtomKind,
    Block,
    Fact,
    Mark,
    Phrase,
    Series,
    Value,
    items,
    phrases,
)

_DOES = ("covers", "rushes", "says")
_BEHIND = {tech: number for number, tech in LINEBACKERS.items()}
"""The linebacker's number that stands behind a lineman's: of two shades that none has, the next."""
_BEHIND.update({"2i": "10", "4i": "30", "6i": "50", "7": "50", "8": "60", "9": "60"})
_INSIDE_OF = {"A": "A", "B": "A", "C": "B", "D": "C"}
"""By a gap the next one toward the ball."""
_BACKS = ("back", "second back", "third back")
_SAFETY = 9.0
"""How deep, in yards, a man over a landmark of the field is a safety: custom."""


@dataclass(frozen=True)
class _Stood:
    """Where a man's line says that he stands first."""

    fact: Fact

    @property
    def first(self) -> Phrase:
        return next(phrases(self.fact.value))

    @property
    def technique(self) -> str:
        """The lineman's number of a down man, "" for any other."""
        word = self.first.text.casefold()
        return word if word in TECHNIQUES else WORDS.get(word, "")

    @property
    def linebacker(self) -> bool:
        return self.first.text in LINEBACKERS

    @property
    def rank(self) -> str:
        """``#2`` of a man who stands over the second receiver."""
        return next((a.text for a in self.first.atoms if a.kind is AtomKind.RANK), "")

    @property
    def deep(self) -> float:
        words = [a for p in phrases(self.fact.value) for a in p.atoms]
        for number, unit in pairwise(words):
            if unit.word == "deep" and number.kind is AtomKind.NUMBER:
                return float(number.text)
        return 0.0

    @property
    def over_field(self) -> bool:
        """Whether he stands over a place of the field and no man."""
        return any(a.word in (*LANDMARKS, "middle") for a in self.first.atoms)

    @property
    def gap(self) -> str:
        """What he rushes of whom no gap is said; "" for who stands deep over the field."""
        word = self.first.text.casefold()
        tech = self.technique or LINEBACKERS.get(word, "")
        if tech:
            return TECHNIQUES[tech].gap.value
        named = {name.casefold(): gap.value for name, gap in GAPS.items()}
        return named.get(word, "" if self.over_field else "contain")

    @property
    def side(self) -> str:
        words = [a.word for p in phrases(self.fact.value) for a in p.atoms]
        return next((w for w in words if w in ("strong", "weak", "left", "right")), "")


Places = Mapping[str, _Stood]
_GROUPS: Mapping[str, Callable[[_Stood], bool]] = {
    "corners": lambda p: p.rank == "#1",
    "halfbacks": lambda p: p.rank == "#2",
    "safeties": lambda p: p.over_field and p.deep >= _SAFETY,
    "linebackers": lambda p: p.linebacker,
    "backers": lambda p: p.linebacker,
    "tackles": lambda p: p.technique in ("1", "2i", "2", "3"),
    "ends": lambda p: p.technique not in ("", "0", "1", "2i", "2", "3"),
}
"""Men of a defence by what they are, and who of a look they are."""


def with_places(block: Block, looks: Mapping[str, Block]) -> Block:
    """The look with each such line as those that it means; ``looks`` are all, by their lower
    case."""
    if block.kind != "look":
        return block
    asked = any(_is_asked(fact) for fact in block.facts)
    if not asked:
        return block
    places = {k: _Stood(f) for k, f in _standing(block, looks, set()).items()}
    facts = [made for fact in block.facts for made in _lines(fact, places, block)]
    return replace(block, facts=tuple(facts))


def _is_asked(fact: Fact) -> bool:
    value = fact.value.text.casefold() if isinstance(fact.value, Phrase) else ""
    grouped = any(s.text.casefold() in _GROUPS for s in fact.subject)
    return (
        grouped
        or (fact.key == "rushes" and value in ("own gap", "inside gap"))
        or (fact.key == "covers" and value.removeprefix("man ") in ("backs", "the backs"))
        or (fact.key == "in" and next(phrases(fact.value)).atoms[0].word == "behind")
    )


def _standing(block: Block, looks: Mapping[str, Block], seen: set[str]) -> dict[str, Fact]:
    """The first line that says where each man stands, by his letter."""
    found: dict[str, Fact] = {}
    seen.add(block.name.text.casefold())
    for fact in block.facts:
        for man in fact.subject if fact.key in ("in", "at") and fact.guard is None else ():
            found.setdefault(man.text, fact)
    for name in block.joined("extends"):
        parent = looks.get(name.text.casefold())
        if parent is not None and name.text.casefold() not in seen:
            found = {**_standing(parent, looks, seen), **found}
    return found


def _lines(fact: Fact, places: Places, block: Block) -> Iterable[Fact]:
    if fact.key in _DOES:
        fact = replace(fact, subject=tuple(m for s in fact.subject for m in _men(s, places)))
    value = fact.value.text.casefold() if isinstance(fact.value, Phrase) else ""
    if fact.key == "rushes" and value == "own gap":
        return _own_gaps(fact, places, block)
    if fact.key == "rushes" and value == "inside gap":
        return [_slanted(replace(fact, subject=(man,)), places) for man in fact.subject]
    if fact.key == "covers" and value.removeprefix("man ") in ("backs", "the backs"):
        at = fact.value.atoms[-1] if isinstance(fact.value, Phrase) else None
        assert at is not None
        return [
            replace(fact, subject=(man,), value=phrase_at(back, at))
            for man, back in zip(fact.subject, _BACKS, strict=False)
        ]
    first = next(phrases(fact.value), None)
    if fact.key == "in" and first is not None and first.atoms[0].word == "behind":
        return [_stacked(fact, places)]
    return [fact]


def _men(subject: Phrase, places: Places) -> Iterable[Phrase]:
    """``corners`` as those who stand over the widest men: as it was, where nobody does."""
    who = _GROUPS.get(subject.text.casefold().removeprefix("the "))
    letters = [letter for letter, place in places.items() if who is not None and who(place)]
    return [phrase_at(letter, subject.atoms[0]) for letter in letters] or [subject]


def _own_gaps(fact: Fact, places: Places, block: Block) -> list[Fact]:
    """Who is down in a technique of this look rushes his own gap without a line."""
    own = {s.text for f in block.facts if f.key == "in" for s in f.subject}
    made = []
    for man in fact.subject:
        place = places.get(man.text)
        if place is not None and place.technique and man.text in own and not block.joins:
            continue
        gap = place.gap if place is not None else ""
        made.append(
            replace(fact, subject=(man,), value=phrase_at(gap, man.atoms[0]) if gap else fact.value)
        )
    return made


def _slanted(fact: Fact, places: Places) -> Fact:
    """``E slants in`` as the gap inside of his own; one whose gap is not known as it was."""
    place = places.get(fact.subject[0].text)
    gap = _INSIDE_OF.get(place.gap if place is not None and place.technique else "", "")
    return replace(fact, value=phrase_at(gap, fact.subject[0].atoms[0])) if gap else fact


def _stacked(fact: Fact, places: Places) -> Fact:
    """``M in behind N`` as the linebacker's number behind the lineman's, on his side."""
    parts = list(items(fact.value, Mark.AND))
    first = parts[0]
    mate = first.atoms[-1] if isinstance(first, Phrase) else None
    place = places.get(mate.text) if mate is not None else None
    if mate is None or place is None or not place.technique:
        return fact
    number = _BEHIND[place.technique]
    made: list[Value] = [Phrase((replace(mate, kind=AtomKind.NUMBER, text=number),))]
    if place.side and not any(p.text.casefold() == place.side for p in phrases(fact.value)):
        made.append(phrase_at(place.side, mate))
    made += parts[1:]
    return replace(fact, value=made[0] if len(made) == 1 else Series(Mark.AND, tuple(made)))
