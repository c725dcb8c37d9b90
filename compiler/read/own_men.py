"""Men as coaches name them, read as the notation does: ``FB blocks kick`` is ``fullback blocks
kick``, ``each guard`` is the one of either side.

In any book, whatever letters its men wear. A word stays a name where a line gives it to another man
(``TE is strong #3``) or where the personnel makes the man of that letter something else. Common
practice, no published source.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass, replace

from stemline.read.clinic_blocks import as_meant, with_mates
from stemline.read.clinic_looks import with_places
from stemline.read.named_pairs import as_pairs
from stemline.read.spoken_blocks import as_lines
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
LINEMEN: Mapping[str, str] = {
    "lt": "left tackle",
    "lg": "left guard",
    "c": "centre",
    "rg": "right guard",
    "rt": "right tackle",
}
"""A lineman's label as the one of whom a line speaks, and his place: in a book whose line always
stands as the code has it."""
_WITH_THE_BALL = frozenset((
    "snaps", "hands", "tosses", "pitches", "throws", "shovels", "fakes", "gives", "keeps", "says",
))  # fmt: skip
"""Verbs whose quarterback is said so, whatever his letter: it may be another man who has it."""

_KINDS = frozenset(("concept", "run", "tag", "protection"))
_MEN = frozenset((
    "is", "read", "pressure", "alert", "claims", "pair", "needs", "swap", "handoff", "toward",
    "throw", "snaps", "hands", "tosses", "pitches", "throws", "shovels", "fakes",
))  # fmt: skip
"""Lines whose values hold men and no names of other things."""
_CATCHES = frozenset(("runs", "read", "pressure", "alert"))
"""Lines in which the centre is a man who gets open."""
_BEFORE_A_MAN = frozenset(("from", "as", "toward", "opposite"))
"""Words of a way or a place behind which a man stands."""
_NAMES = frozenset(("family", "say", "says", "caution", "protect", "join", "hot"))
_EITHER = ("guard", "tackle", "end")
_EACH = ("playside", "backside")
_BOTH = {"guards": "guard", "tackles": "tackle"}
_GOES_OUT = {"end": "tight end", "tight end": "tight end", "wing": "wing"}
"""Of whom there may be one on each side, and both run a route: ``each end runs flat``."""

Meant = Mapping[str, str]


def with_own_men(documents: Iterable[Document]) -> tuple[Document, ...]:
    """The trees with each such man under the name of his rule; his place in the text is kept."""
    documents = tuple(documents)
    blocks = [block for document in documents for block in document.blocks]
    other = _named_otherwise(blocks)
    meant = {word: rule for word, rule in RULE_OF.items() if word not in other}
    lined = {p.text.casefold(): p.text for p in _subjects(blocks, "formation", "at")}
    moved = any(f.key == "line" for b in blocks if b.kind == "formation" for f in b.facts)
    linemen = {} if moved else {x: y for x, y in LINEMEN.items() if x not in {*other, *lined}}
    men = _Men(
        meant,
        linemen,
        dict.fromkeys(_passers(blocks, lined) - other, "quarterback"),
        frozenset(lined),
        frozenset(_BOTH.keys() - other),
    )
    runs = tuple(b.name.text for b in blocks if b.kind == "run")
    looks = {b.name.text.casefold(): b for b in blocks if b.kind == "look"}
    return tuple(
        replace(
            document,
            blocks=tuple(
                as_lines(with_mates(_block(as_pairs(as_meant(with_places(b, looks))), men)), runs)
                for b in document.blocks
            ),
        )
        for document in documents
    )


@dataclass(frozen=True)
class _Men:
    """Words for men anywhere, for linemen as subjects, for the quarterback of the ball's lines."""

    anywhere: Meant
    linemen: Meant
    passers: Meant
    lined: frozenset[str] = frozenset()
    """The letters that formations line up, in lower case."""
    both: frozenset[str] = frozenset()
    """Words for two linemen of a kind."""


def _subjects(blocks: Iterable[Block], kind: str, key: str) -> Iterator[Phrase]:
    for block in blocks:
        for fact in block.facts if block.kind == kind else ():
            if fact.key == key:
                yield from fact.subject


def _passers(blocks: Iterable[Block], lined: Mapping[str, str]) -> set[str]:
    """The letters of quarterbacks, in lower case: by the personnel, else a Q before them."""
    found: set[str] = set()
    others: set[str] = set()
    for block in blocks:
        for fact in block.facts if block.kind == "personnel" else ():
            first = next(phrases(fact.value), None)
            for subject in fact.subject if fact.key == "is" and first is not None else ():
                passes = first is not None and first.text.casefold() == "quarterback"
                (found if passes else others).add(subject.text.casefold())
    usual = {key for key, letter in lined.items() if letter.startswith("Q")}
    return (found & lined.keys()) | (usual - others)


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
                known = RULE_OF.get(word)
                if known != RULE_OF.get(rule, rule) if known else block.kind != "personnel":
                    found.add(word)
    return found


def _block(block: Block, men: _Men) -> Block:
    if block.kind not in _KINDS:
        return block
    return replace(block, facts=tuple(_fact(fact, men) for fact in block.facts))


def _fact(fact: Fact, men: _Men) -> Fact:
    meant = {**men.anywhere, **(men.passers if fact.key in _WITH_THE_BALL else {})}
    if fact.key in _CATCHES and "c" in men.linemen:  # where the code lets him, he is told so
        meant = {**meant, "c": men.linemen["c"]}
    subjects = {**meant, **(men.linemen if fact.key in ("blocks", "says") else {})}
    out = fact.key == "runs"
    named = (_each_of(one, men.both) for one in fact.subject)
    subject = tuple(man for one in named for man in _subject(one, subjects, out=out))
    if fact.key in _NAMES or fact.value is None:
        return replace(fact, subject=subject)
    anywhere = fact.key in _MEN
    value = _each_phrase(fact.value, lambda phrase: _phrase(phrase, meant, anywhere))
    if fact.key == "blocks":
        value = _each_phrase(value, lambda phrase: _neighbour(phrase, men.lined))
    return replace(fact, subject=subject, value=value)


def _each_of(subject: Phrase, both: Collection[str]) -> Phrase:
    """``guards``, ``both tackles`` as ``each guard``, ``each tackle``."""
    words, last = [atom.word for atom in subject.atoms], subject.atoms[-1]
    if words[-1] not in both or words[:-1] not in ([], ["both"], ["the"]):
        return subject
    return Phrase((replace(last, text="each"), replace(last, text=_BOTH[last.word])))


def _subject(subject: Phrase, meant: Meant, *, out: bool) -> tuple[Phrase, ...]:
    words = [atom.word for atom in subject.atoms]
    man = _GOES_OUT.get(" ".join(words[1:])) if out and words[0] == "each" else None
    if man is not None:
        first, last = subject.atoms[0], subject.atoms[-1]
        men = tuple(replace(last, text=word) for word in man.split())
        return tuple(Phrase((replace(first, text=side), *men)) for side in ("strong", "weak"))
    if len(words) == 2 and words[0] == "each" and words[1] in _EITHER:
        first, place = subject.atoms
        return tuple(Phrase((replace(first, text=side), place)) for side in _EACH)
    return (_phrase(subject, meant, len(words) <= 2),)


def _neighbour(phrase: Phrase, lined: Collection[str]) -> Phrase:
    """``double with Y`` as ``double with end``: who stands beside a tackle and wears a letter."""
    words = [atom.word for atom in phrase.atoms]
    if words[:2] != ["double", "with"] or len(words) != 3:
        return phrase
    mate = phrase.atoms[2]
    if mate.word in LINEMEN:
        return Phrase((*phrase.atoms[:2], replace(mate, text=LINEMEN[mate.word].split()[-1])))
    return Phrase((*phrase.atoms[:2], replace(mate, text="end"))) if mate.word in lined else phrase


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
