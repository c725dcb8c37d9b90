"""Men whom the lines of a body call by their letters: ``X runs post``, ``read Z > X``.

A letter is a man of some formation. A role, a spot or a key of its name is what the coach means
then, in the block that has it.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field

from stemline.football.line import KNOWN_LINEMEN, SNAPPER
from stemline.football.players import Position
from stemline.playbook.exchange_definitions import QUARTERBACK
from stemline.playbook.formations import Person
from stemline.syntax.tree import Atom, AtomKind, Block, Fact, Linked, Phrase, Value, phrases

_LINEMEN = (Position.TACKLE, Position.GUARD, Position.CENTRE)
_CENTRE = "C"
"""A lineman's label that a receiver may have for his letter."""
_ANYWHERE = frozenset(
    ("read", "pressure", "alert", "claims", "pair", "needs", "swap", "handoff", "throw", "toward")
)
"""Lines whose values hold men."""
_BEHIND_A_WAY = frozenset(("runs", "is", "spot"))
_WAYS = frozenset(("from", "as", "toward", "opposite"))
"""Words of a way behind which a man stands."""
_JOBS = frozenset(("runs", "blocks", "aims", "decides", "scrambles"))
_FREE = "if"
"""The connector of a coach's free words."""


@dataclass(frozen=True)
class Letters:
    """The letters that lines of one body may use for men, by their lower case, and what each is
    there. ``same_as`` are the roles whose rule is just that letter; ``idle`` the men of whom no
    line says what they do."""

    of: Mapping[str, str] = field(default_factory=dict)
    same_as: Mapping[str, str] = field(default_factory=dict)
    idle: frozenset[str] = frozenset()

    def called(self, subject: Phrase) -> str:
        """The man's letter that a phrase is; "" for any other."""
        return self.of.get(subject.text.casefold(), "") if len(subject.atoms) == 1 else ""

    def mentioned(self, fact: Fact) -> Iterator[str]:
        """The men of whom a line speaks without saying what they do."""
        for atom in _men_in(fact) if self.of else ():
            if atom.word in self.of:
                yield self.of[atom.word]


NO_LETTERS = Letters()


def letters_of(blocks: Iterable[Block], people: Mapping[str, Person]) -> dict[str, str]:
    """Who lines up in some formation and is no lineman, by his letter in lower case."""
    found: dict[str, str] = {}
    for block in blocks:
        for fact in block.facts:
            for subject in fact.subject if fact.key == "at" else ():
                letter = subject.text
                person = people.get(letter)
                lineman = letter in KNOWN_LINEMEN or letter == SNAPPER
                if person is not None and person.position in _LINEMEN:
                    continue
                if len(letter) <= 2 and (not lineman or letter == _CENTRE):
                    found.setdefault(letter.casefold(), letter)
    return found


def letters_in(facts: Sequence[Fact], letters: Mapping[str, str], taken: Iterable[str]) -> Letters:
    """What the letters are in a body of ``facts``; ``taken`` are its own names."""
    free = dict(letters)
    for name in (*taken, QUARTERBACK):
        free.pop(name, None)
    if not free:
        return NO_LETTERS
    named: dict[str, str] = {}
    for fact in facts:
        if fact.key == "is" and len(fact.subject) == 1 and fact.guard is None:
            value = fact.value
            role = fact.subject[0].text.casefold()
            alone = value.text.casefold() if isinstance(value, Phrase) else ""
            named[role] = free.get(alone, "")
    same_as = {letter: role for role, letter in named.items() if letter}
    busy = {
        subject.text.casefold() for fact in facts if fact.key in _JOBS for subject in fact.subject
    }
    idle = frozenset(letter for key, letter in free.items() if key not in busy)
    return Letters(free, same_as, idle)


def _men_in(fact: Fact) -> Iterator[Atom]:
    """The words of a line's value that stand where a man may."""
    value, key = fact.value, fact.key
    if key in ("throws", "pitches") and isinstance(value, Linked) and value.link(_FREE):
        yield from _words(value.link("to"), anywhere=True)  # off a key
    elif key in _ANYWHERE or key in _BEHIND_A_WAY:
        anywhere = key in _ANYWHERE
        if isinstance(value, Linked):
            yield from _words(value.head, anywhere=anywhere)
            for link in value.links:
                if link.connector.word != _FREE:
                    yield from _words(link.value, anywhere=anywhere)
        else:
            yield from _words(value, anywhere=anywhere)


def _words(value: Value | None, *, anywhere: bool) -> Iterator[Atom]:
    for phrase in phrases(value):
        before = ""
        for atom in phrase.atoms:
            if atom.kind is AtomKind.WORD and (anywhere or before in _WAYS):
                yield atom
            before = atom.word
