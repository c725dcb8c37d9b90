"""Lines that are one at a clinic and two, or another, in the notation: ``E, J in 5`` is a man on
each side, ``line slides right`` the way of the slide and the rule, an aim without a carrier his who
aims.

Each is put as the lines it means; its place in the text is kept. Common practice, no published
source.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from stemline.football.defence.techniques import BOTH_SIDES, GAPS, LINEBACKERS, TECHNIQUES, WORDS
from stemline.football.exchanges import TRAILS
from stemline.syntax.tree import (
    Atom,
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

_TWO_SIDED = frozenset((*TECHNIQUES, *LINEBACKERS, *WORDS, *GAPS)) - frozenset(BOTH_SIDES)
_SIDES = frozenset(("left", "right", "strong", "weak", "field", "boundary", "call", "away"))
_DOES = frozenset(("aims", "blocks", "runs"))
_EXCHANGES = frozenset(("hands", "tosses", "pitches", "throws", "shovels", "snaps"))


def as_meant(block: Block) -> Block:
    """The block with each such line as those that it means."""
    facts: list[Fact] = []
    for fact in block.facts:
        facts += _lines(block, fact)
    if block.kind == "run" and not block.joins:
        facts = _with_carrier(facts)
        facts += _trailing(facts)
        facts = _without_echo(facts)
    return block if facts == list(block.facts) else replace(block, facts=tuple(facts))


def _lines(block: Block, fact: Fact) -> Sequence[Fact]:
    if block.kind == "look" and fact.key == "in" and len(fact.subject) == 2:
        return _one_each(fact)
    if block.kind == "protection" and fact.key == "blocks":
        return _slid(block, fact)
    return [fact]


def _word(text: str, at: Atom) -> Atom:
    return replace(at, kind=AtomKind.WORD, text=text)


def _one_each(fact: Fact) -> Sequence[Fact]:
    """``E, J in 5`` as ``E in 5, strong`` and ``J in 5, weak``: of two men in a technique that is
    on both sides, where none is said, one is on each."""
    parts = items(fact.value, Mark.AND)
    said = [part.text.casefold() for part in parts if isinstance(part, Phrase)]
    if len(said) != len(parts) or not said or said[0] not in _TWO_SIDED or fact.guard is not None:
        return [fact]
    if any(word in _SIDES for text in said for word in text.split()):
        return [fact]
    at = next(phrases(fact.value)).atoms[0]
    return [
        replace(fact, subject=(man,), value=Series(Mark.AND, (*parts, Phrase((_word(side, at),)))))
        for man, side in zip(fact.subject, ("strong", "weak"), strict=True)
    ]


def _slid(block: Block, fact: Fact) -> Sequence[Fact]:
    """``line blocks slide right`` as ``toward right`` and ``line blocks slide``; ``back blocks edge
    left`` as ``back blocks left edge``."""
    value = fact.value
    if not isinstance(value, Phrase) or len(value.atoms) != 2 or fact.verb is None:
        return [fact]
    how, side = value.atoms
    if how.word == "edge" and side.word in (*_SIDES, "playside", "backside"):
        return [replace(fact, value=Phrase((side, how)))]
    whole = [one.text.casefold() for one in fact.subject] == ["line"]
    if how.word != "slide" or side.word not in _SIDES or not whole:
        return [fact]
    if any(other.key == "toward" for other in block.facts):
        return [fact]
    way: Value = Phrase((side,))
    toward = replace(
        fact, label=replace(fact.verb, text="toward"), subject=(), verb=None, value=way
    )
    return [toward, replace(fact, value=Phrase((how,)))]


def _with_carrier(facts: list[Fact]) -> list[Fact]:
    """A run of which no line says who carries the ball, and one man aims: it is he."""
    if any(_names_carrier(fact) for fact in facts):
        return facts
    aims = [fact for fact in facts if fact.key == "aims"]
    verb = aims[0].verb if len(aims) == 1 and len(aims[0].subject) == 1 else None
    if verb is None:
        return facts
    (aim,) = aims
    (man,) = aim.subject
    if not _gets_it_last(man, facts):
        return facts
    carrier = (Phrase((_word("carrier", man.atoms[0]),)),)
    named = replace(aim, subject=carrier, verb=replace(verb, text="is"), value=man, guard=None)
    made = [replace(fact, subject=carrier) if fact is aim else fact for fact in facts]
    return [named, *made]


def _trailing(facts: Sequence[Fact]) -> list[Fact]:
    """What the man of an option runs whom a line calls the pitch man, and none says what he does:
    he goes along outside, as `pitch to` has it."""
    told = {s.text.casefold() for f in facts if f.key in _DOES for s in f.subject}
    if not any(fact.key == "pitch" for fact in facts):
        return []
    made = []
    for fact in facts:
        who = fact.subject[0].text.casefold() if fact.subject else ""
        if fact.key == "is" and who in TRAILS and who not in told and fact.verb is not None:
            at = fact.subject[0].atoms[0]
            value = Phrase((_word("swing", at), _word("playside", at)))
            made.append(replace(fact, verb=replace(fact.verb, text="runs"), value=value))
    return made


def with_mates(block: Block) -> Block:
    """A run with a line for the end with whom a man doubles and of whom no line says how he
    blocks: he doubles with him."""
    if block.kind != "run" or block.joins:
        return block
    told = {s.text.casefold() for f in block.facts if f.key == "blocks" for s in f.subject}
    made = []
    for fact in block.facts:
        rule, *rest = items(fact.value, Mark.THEN) if fact.key == "blocks" else ((),)
        if not isinstance(rule, Phrase) or rule.text.casefold() != "double with end":
            continue
        man = fact.subject[0]
        end = Phrase((*man.atoms[:1], rule.atoms[-1]))
        if len(fact.subject) == 1 and len(man.atoms) == 2 and end.text.casefold() not in told:
            said = Phrase((*rule.atoms[:2], man.atoms[-1]))
            value: Value = Series(Mark.THEN, (said, *rest)) if rest else said
            made.append(replace(fact, subject=(end,), value=value))
    return replace(block, facts=(*block.facts, *made)) if made else block


def _without_echo(facts: Sequence[Fact]) -> list[Fact]:
    """The lines without those that say again what one before says: a shorter order of his feet,
    the same job of the same men."""
    kept: list[Fact] = []
    for fact in facts:
        said = _echo(fact)
        if fact.guard is None and any(said and _echo(one)[: len(said)] == said for one in kept):
            continue
        kept.append(fact)
    return kept


def _echo(fact: Fact) -> list[str]:
    """What a line says in words that another may say too; [] for one that is not asked about."""
    if fact.guard is not None:
        return []
    if fact.key == "feet":
        return ["feet", *(phrase.text.casefold() for phrase in phrases(fact.value))]
    who = [one.text.casefold() for one in fact.subject]
    if fact.key == "blocks" and who == ["everyone else"] and isinstance(fact.value, Phrase):
        return ["blocks", *who, fact.value.text.casefold(), "."]
    return []


def _names_carrier(fact: Fact) -> bool:
    return any(one.text.casefold() == "carrier" for one in fact.subject)


def _gets_it_last(man: Phrase, facts: Sequence[Fact]) -> bool:
    """Whether no line gives the ball on from him or to another alone."""
    given = [fact for fact in facts if fact.key in _EXCHANGES]
    if any(one.text.casefold() == man.text.casefold() for fact in given for one in fact.subject):
        return False
    takers = [phrase.text.casefold() for fact in given for phrase in phrases(fact.value)]
    return not given or man.text.casefold() in takers
