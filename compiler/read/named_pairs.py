"""A name for the two of a number: ``hitches are each #1`` and ``hitches runs hitch``.

The notation has a name for one man; the lines of the two are said of each of them, and in an order
of looks it is the strong one. Where the name is given to somebody else too, nothing is changed.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from stemline.syntax.tree import Atom, AtomKind, Block, Fact, Linked, Phrase, Series, Value

_PLAYS = ("concept", "run", "tag")
_LOOKED_AT = ("read", "pressure", "alert", "claims", "pair")


def as_pairs(block: Block) -> Block:
    """The block without such a line, and with `each #1` where the name stood."""
    if block.kind not in _PLAYS:
        return block
    said = [fact for fact in block.facts if fact.key == "is"]
    pairs = {
        fact.subject[0].text.casefold(): fact
        for fact in said
        if fact.guard is None and len(fact.subject) == 1 and _is_each(fact.value)
    }
    names = [subject.text.casefold() for fact in said for subject in fact.subject]
    pairs = {name: fact for name, fact in pairs.items() if names.count(name) == 1}
    if not pairs:
        return block
    ranks = {name: _rank(fact.value) for name, fact in pairs.items()}
    gone = list(pairs.values())
    facts = tuple(_fact(fact, ranks) for fact in block.facts if fact not in gone)
    return replace(block, facts=facts)


def _is_each(value: Value | None) -> bool:
    atoms = value.atoms if isinstance(value, Phrase) else ()
    return len(atoms) == 2 and atoms[0].word == "each" and atoms[1].kind is AtomKind.RANK


def _rank(value: Value | None) -> Atom:
    assert isinstance(value, Phrase)
    return value.atoms[1]


def _fact(fact: Fact, ranks: Mapping[str, Atom]) -> Fact:
    subject = tuple(_put(one, ranks, "each") for one in fact.subject)
    looked = fact.key in _LOOKED_AT and fact.value is not None
    value = _each(fact.value, ranks) if looked and fact.value is not None else fact.value
    return replace(fact, subject=subject, value=value)


def _put(phrase: Phrase, ranks: Mapping[str, Atom], word: str) -> Phrase:
    rank = ranks.get(phrase.text.casefold())
    if rank is None:
        return phrase
    first = phrase.atoms[0]
    side = replace(first, kind=AtomKind.WORD, text=word)
    return Phrase((side, replace(first, kind=AtomKind.RANK, text=rank.text)))


def _each(value: Value, ranks: Mapping[str, Atom]) -> Value:
    match value:
        case Phrase():
            return _put(value, ranks, "strong")
        case Series():
            return Series(value.mark, tuple(_each(item, ranks) for item in value.items))
        case Linked():
            head = None if value.head is None else _each(value.head, ranks)
            links = (replace(link, value=_each(link.value, ranks)) for link in value.links)
            return Linked(head, tuple(links))
