"""Men as coaches name them, read as the notation does: ``FB blocks kick`` is ``fullback blocks
kick``, ``each guard`` is the one of either side.

In any book, whatever letters its men wear. A word stays a name where a line gives it to another man
(``TE is strong #3``) or where the personnel makes the man of that letter something else. Common
practice, no published source.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import replace

from stemline.syntax.tree import (
    Atom,
    AtomKind,
    Block,
    Document,
    Fact,
    Link,
    Linked,
    Phrase,
    Series,
    Value,
    phrases,
)

RULE_OF: Mapping[str, str] = {
    "rb": "back",
    "tb": "back",
    "tailback": "back",
    "fb": "fullback",
    "te": "tight end",
    "qb": "quarterback",
    "wb": "wing",
    "wingback": "wing",
}
"""What a coach calls a man, in lower case, and the rule that finds him."""

_KINDS = frozenset(("concept", "run", "tag", "protection"))
_MEN = frozenset((
    "is", "read", "pressure", "alert", "claims", "pair", "needs", "swap", "handoff", "toward",
    "throw", "snaps", "hands", "tosses", "pitches", "throws", "shovels", "fakes",
))  # fmt: skip
"""Lines whose values hold men and no names of other things."""
_BEFORE_A_MAN = frozenset(("from", "as", "toward", "opposite"))
"""Words of a way or a place behind which a man stands."""
_NAMES = frozenset(("family", "say", "says", "caution", "protect", "join", "hot"))
_EITHER = ("guard", "tackle", "end")
_EACH = ("playside", "backside")

Meant = Mapping[str, str]


def with_own_men(documents: Iterable[Document]) -> tuple[Document, ...]:
    """The trees with each such man under the name of his rule; his place in the text is kept."""
    documents = tuple(documents)
    blocks = [block for document in documents for block in document.blocks]
    other = _named_otherwise(blocks)
    meant = {word: rule for word, rule in RULE_OF.items() if word not in other}
    return tuple(
        replace(document, blocks=tuple(_block(block, meant) for block in document.blocks))
        for document in documents
    )


def _named_otherwise(blocks: Iterable[Block]) -> set[str]:
    """The words that somebody else of this playbook has for his name."""
    found = set()
    for block in blocks:
        if block.kind not in (*_KINDS, "personnel"):
            continue
        for fact in block.facts:
            first = next(phrases(fact.value), None)
            if fact.key != "is" or first is None:
                continue
            for subject in fact.subject:
                word = subject.text.casefold()
                rule = first.text.casefold().removeprefix("the ")
                if word in RULE_OF and RULE_OF[word] != RULE_OF.get(rule, rule):
                    found.add(word)
    return found


def _block(block: Block, meant: Meant) -> Block:
    if block.kind not in _KINDS:
        return block
    return replace(block, facts=tuple(_fact(fact, meant) for fact in block.facts))


def _fact(fact: Fact, meant: Meant) -> Fact:
    subject = tuple(man for one in fact.subject for man in _subject(one, meant))
    if fact.key in _NAMES or fact.value is None:
        return replace(fact, subject=subject)
    anywhere = fact.key in _MEN
    value = _each_phrase(fact.value, lambda phrase: _phrase(phrase, meant, anywhere))
    return replace(fact, subject=subject, value=value)


def _subject(subject: Phrase, meant: Meant) -> tuple[Phrase, ...]:
    words = [atom.word for atom in subject.atoms]
    if len(words) == 2 and words[0] == "each" and words[1] in _EITHER:
        first, place = subject.atoms
        return tuple(Phrase((replace(first, text=side), place)) for side in _EACH)
    return (_phrase(subject, meant, len(words) <= 2),)


def _phrase(phrase: Phrase, meant: Meant, anywhere: bool) -> Phrase:
    """The phrase with each man in it by his rule; not ``anywhere``: only behind a word of a way."""
    atoms: list[Atom] = []
    before = ""
    for atom in phrase.atoms:
        rule = meant.get(atom.word) if atom.kind is AtomKind.WORD else None
        if rule is not None and (anywhere or before in _BEFORE_A_MAN):
            atoms += [replace(atom, text=word) for word in rule.split()]
        else:
            atoms.append(atom)
        before = atom.word
    return Phrase(tuple(atoms))


def _each_phrase(value: Value, does: Callable[[Phrase], Phrase]) -> Value:
    match value:
        case Phrase():
            return does(value)
        case Series():
            return Series(value.mark, tuple(_each_phrase(item, does) for item in value.items))
        case Linked():
            head = None if value.head is None else _each_phrase(value.head, does)
            links = (Link(x.connector, _each_phrase(x.value, does)) for x in value.links)
            return Linked(head, tuple(links))
