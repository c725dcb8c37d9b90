"""Lines whose meaning hangs on the other lines of their block: ``playside line``, ``everyone else``
of a protection, ``everybody covers man``, a run that a man fakes, a pitch man without a line.

Each is put as lines that name the men; its place in the text is kept. Common practice, no
published source.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace

from stemline.read.read_roles import read_men
from stemline.syntax.tree import (
    Atom,
    AtomKind,
    Block,
    Fact,
    Linked,
    Mark,
    Phrase,
    Series,
    Value,
    phrases,
)

_PLAYS = ("concept", "run", "tag")
_HALVES = ("playside", "backside")
_MAY_STAY_IN = ("back", "fullback", "tight end", "wing")
"""Whom `everyone else` of a protection means, where no line names him."""
_OF_LINE = ("centre", "center", "line")
_ELSE = ("everyone else", "everybody else")
_ALL = ("everyone", "everybody", "every man", "all")
_FAKERS = ("back", "fullback", "carrier")
_KEPT_IN = {"tight end": "edge", "wing": "edge"}
"""What those of them block who stand at the end of the line."""
_TRAILS = "swing playside"
"""What a man runs whom the ball is pitched to, where no line says it."""


def as_lines(block: Block, runs: Iterable[str]) -> Block:
    """The block with each such line as those that it means; ``runs`` are the names of runs."""
    facts: list[Fact] = []
    for fact in block.facts:
        facts += _lines(block, fact, tuple(runs))
    return block if facts == list(block.facts) else replace(block, facts=tuple(facts))


def _lines(block: Block, fact: Fact, runs: Sequence[str]) -> list[Fact]:
    if fact.key == "blocks" and block.kind in ("protection", "concept") and _says(fact, "scan"):
        if _is_all(fact, _ELSE):
            return _staying_in(block, fact)
        if block.kind == "concept" and _is_all(fact, _OF_LINE):
            return []  # as the protection says
    if fact.key == "blocks" and block.kind == "protection" and _says(fact, "nobody"):
        return []
    if fact.key == "blocks" and block.kind in (*_PLAYS, "protection"):
        return [_half_line(block, fact)]
    if fact.key == "covers" and block.kind == "look" and _is_all(fact, _ALL):
        return _man_to_man(block, fact) or [fact]
    if fact.key == "fakes" and block.kind in ("concept", "tag"):
        return [_joining(block, fact, runs)]
    if fact.key == "pitch" and block.kind in _PLAYS:
        return [fact, *_trailing(block, fact)]
    return [fact]


def _subjects(block: Block, *keys: str) -> set[str]:
    return {subject.text.casefold() for f in block.facts if f.key in keys for subject in f.subject}


def _is_all(fact: Fact, words: Sequence[str]) -> bool:
    return len(fact.subject) == 1 and fact.subject[0].text.casefold() in words


def phrase_at(words: str, at: Atom) -> Phrase:
    """The words as a phrase that stands where ``at`` does."""
    return Phrase(tuple(replace(at, kind=AtomKind.WORD, text=word) for word in words.split()))


def _told(fact: Fact, man: str) -> Fact:
    return replace(fact, subject=(phrase_at(man, fact.subject[0].atoms[0]),))


def _says(fact: Fact, words: str) -> bool:
    return isinstance(fact.value, Phrase) and fact.value.text.casefold() == words


# Who stays in.


def _staying_in(block: Block, fact: Fact) -> list[Fact]:
    """A line for each who may help and of whom no other line speaks: a place that nobody has in a
    call is passed over."""
    told = _subjects(block, "blocks", "runs", "aims")
    named = {p.text.casefold() for f in block.facts if f.key == "is" for p in phrases(f.value)}
    men = [_told(fact, man) for man in _MAY_STAY_IN if man not in {*told, *named}]
    if block.kind == "protection":
        return men
    at = fact.subject[0].atoms[0]
    return [replace(man, value=phrase_at(_KEPT_IN.get(_who(man), "inside out"), at)) for man in men]


def _who(fact: Fact) -> str:
    return fact.subject[0].text.casefold()


# The line.


def _half_line(block: Block, fact: Fact) -> Fact:
    """``playside line`` as the guard and tackle of that side, those who have no line of their own:
    as `line` is all who have none. The centre is of the playside, where nobody else has him."""
    if not any(_is_half(one) for one in fact.subject):
        return fact
    own = _subjects(block, "blocks")
    men: list[Phrase] = []
    for one in fact.subject:
        if not _is_half(one):
            men.append(one)
            continue
        side, line = one.atoms
        made = [Phrase((side, replace(line, text=place))) for place in ("guard", "tackle")]
        centre = side.word == _HALVES[0] and not own & {"centre", "center", "line"}
        men += [man for man in made if man.text.casefold() not in own] or made[:1]
        men += [phrase_at("centre", line)] * (centre and block.kind == "run")
    return replace(fact, subject=tuple(men))


def _is_half(subject: Phrase) -> bool:
    words = [atom.word for atom in subject.atoms]
    return len(words) == 2 and words[0] in _HALVES and words[1] == "line"


# A look.


def _man_to_man(block: Block, fact: Fact) -> list[Fact]:
    """``everybody covers man`` as a line for each who stands over a man and has nothing else."""
    said = list(phrases(fact.value))
    if len(said) != 1 or not said[0].text.casefold().startswith("man"):
        return []
    busy = {s.text for f in block.facts if f.key in ("covers", "rushes") for s in f.subject}
    made = []
    for stands in block.facts:
        over = [p for p in phrases(stands.value) if _is_a_man(p)] if stands.key == "at" else []
        if over and not busy & {one.text for one in stands.subject}:
            value: Value = over[0] if len(over) == 1 else Series(Mark.OR, tuple(over))
            made.append(replace(fact, subject=stands.subject, value=value, guard=stands.guard))
    return made


def _is_a_man(phrase: Phrase) -> bool:
    words = [atom.word for atom in phrase.atoms]
    return words[-2:] == ["tight", "end"] or any(a.kind is AtomKind.RANK for a in phrase.atoms)


# A pass that shows a run, and an option.


def _joining(block: Block, fact: Fact, runs: Sequence[str]) -> Fact:
    """``back fakes zone`` as ``join run Zone``, where one run of the playbook is called so."""
    value, who = fact.value, fact.subject[0].text.casefold()
    if not isinstance(value, Phrase) or who not in _FAKERS or len(fact.subject) > 1:
        return fact
    named = value.text.casefold().removeprefix("the ")
    meant = [run for run in runs if run.casefold() == named]
    meant = meant or [run for run in runs if run.casefold().endswith(f" {named}")]
    if len(meant) != 1 or any(f.key == "join" for f in block.facts):
        return fact
    verb = fact.verb
    assert verb is not None
    joined = phrase_at(f"run {meant[0]}", value.atoms[0])
    return replace(fact, label=replace(verb, text="join"), subject=(), verb=None, value=joined)


def _trailing(block: Block, fact: Fact) -> list[Fact]:
    """What the man runs whom the ball is pitched to and of whom no line speaks."""
    taker = fact.value.link("to") if isinstance(fact.value, Linked) else None
    if not isinstance(taker, Phrase) or fact.label is None:
        return []
    told = _subjects(block, "is", "runs", "aims", "blocks")
    if taker.text.casefold() in told or not read_men(taker):
        return []
    verb = replace(fact.label, text="runs")
    value = phrase_at(_TRAILS, taker.atoms[0])
    return [replace(fact, label=None, subject=(taker,), verb=verb, value=value, guard=None)]
