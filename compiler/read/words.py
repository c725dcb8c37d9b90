"""Reading a phrase word by word against closed lists, with the nearest right word on a miss."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Sequence
from functools import cache, cached_property
from itertools import accumulate
from typing import Protocol

from stemline.diagnostics.catalogue.bounds import E134
from stemline.diagnostics.catalogue.football import E401, E402
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.diagnostics.in_words import either
from stemline.diagnostics.misspelt import Misspelt
from stemline.diagnostics.nearest import distance, nearest
from stemline.read.size_limits import LARGEST_FIGURE, LONGEST_FIELD, SMALLEST_FIGURE
from stemline.source import Span
from stemline.syntax.tree import Atom, AtomKind, Phrase, Value

_SHORT = 2
"""Characters of a man's letter at most; most words of the language are longer."""
_LONGEST_WRONG = 80
"""Characters among which a misspelt name is sought: no name of several words has so many."""

_DIGITS_SHOWN = 12
"""Of a figure that is out of bounds: what is left out says nothing more."""


class Missed(Protocol):
    """A code of a misspelt word, all but what the text says there."""

    def __call__(self, *, found: str, choices: str) -> Misspelt: ...


class Misread(Exception):
    """A value that cannot be read; caught where its line is read, never let out of this room."""

    def __init__(self, said: Diagnostic | Callable[[], Diagnostic]) -> None:
        super().__init__()
        self._said = said

    @cached_property
    def diagnostic(self) -> Diagnostic:
        """What is said of it: looking for the nearest right word takes long, and a line that is
        tried as one thing and read as another asks for none."""
        return self._said() if callable(self._said) else self._said


class Words:
    """A cursor over the atoms of one phrase or of several that only commas part."""

    def __init__(self, phrases: Iterable[Phrase]) -> None:
        phrases = tuple(phrases)
        self.atoms: tuple[Atom, ...] = tuple(a for p in phrases for a in p.atoms)
        self.at = 0
        self._ends = tuple(accumulate(len(p.atoms) for p in phrases))

    @property
    def done(self) -> bool:
        return self.at >= len(self.atoms)

    @property
    def span(self) -> Span:
        """What is left, or the last atom when nothing is."""
        if self.done:
            return self.atoms[-1].span
        return self.atoms[self.at].span.to(self.atoms[-1].span)

    @property
    def here(self) -> Span:
        return self.atoms[min(self.at, len(self.atoms) - 1)].span

    @property
    def last(self) -> Span:
        """The atom read last."""
        return self.atoms[max(self.at - 1, 0)].span

    @property
    def rest(self) -> str:
        return " ".join(a.text for a in self.atoms[self.at :])

    def take_word(self, *choices: str) -> str | None:
        """The next atom if it is one of the words."""
        if not self.done and self.atoms[self.at].word in choices:
            self.at += 1
            return self.atoms[self.at - 1].word
        return None

    def take_name(self, names: Iterable[str]) -> str | None:
        """The longest of ``names`` (they may hold spaces) that the next atoms spell.

        What stands in quotes is one whole name or none.
        """
        if self.done:
            return None
        quoted = self.atoms[self.at].kind is AtomKind.STRING
        ahead = tuple(atom.word for atom in self.atoms[self.at :])
        first, best, length = ahead[0], None, 0
        for name in names:
            parts = _parts(name, quoted)
            if parts and parts[0] == first:
                size = len(parts)
                if size > length and ahead[:size] == parts:
                    best, length = name, size
        self.at += length
        return best

    def take(self, kind: AtomKind) -> Atom | None:
        if not self.done and self.atoms[self.at].kind is kind:
            self.at += 1
            return self.atoms[self.at - 1]
        return None

    def take_number(self) -> float | None:
        """A number or the middle of a range, with an optional unit word after it."""
        atom = self.take(AtomKind.NUMBER) or self.take(AtomKind.RANGE)
        if atom is None:
            return None
        self.take_word("yards", "yard", "degrees", "seconds", "second")
        return bounded(atom)

    def take_rank(self) -> int | None:
        """A rank such as ``#2``."""
        atom = self.take(AtomKind.RANK)
        return None if atom is None else int(bounded(atom))

    def expect(self, names: Iterable[str], code: Missed) -> str:
        """One of ``names`` must come next; else ``code`` with the nearest of them."""
        names = tuple(names)
        taken = self.take_name(names)
        if taken is None:
            raise self.miss(code, names)
        return taken

    def choice(self, names: Collection[str], code: Missed) -> str:
        """One of ``names`` must be all that is left; else ``code`` with the nearest of them."""
        start = self.at
        name = self.expect(names, code)
        if not self.done:
            self.at = start
            raise self.miss(code, names)
        return name

    def miss(self, code: Missed, names: Iterable[str] = (), *, also: Iterable[str] = ()) -> Misread:
        """A misread at what comes next, naming the nearest of ``names``.

        ``also`` are other right words for this place, which a misspelt one may have meant.
        """
        names, here = tuple(names), self.here
        right = (*names, *also)
        ahead = self.atoms[self.at : next((e for e in self._ends if e > self.at), self.at)]
        return Misread(lambda: _missed(code, names, right, ahead, here))

    def finish(self, what: str) -> None:
        """Nothing may be left over."""
        if not self.done:
            raise Misread(E401(found=self.rest, what=what).at(self.span))


@cache
def _parts(name: str, quoted: bool) -> tuple[str, ...]:
    """The words of a name, as the atoms of a line have them."""
    words = name.casefold().split()
    return (" ".join(words),) if quoted else tuple(words)


def _missed(
    code: Missed, names: Sequence[str], right: Sequence[str], ahead: Sequence[Atom], here: Span
) -> Diagnostic:
    """What is said where one of ``names`` should have come and ``ahead`` did, ``here``."""
    wrong, near = _meant(ahead, right)
    found = " ".join(a.text for a in wrong) or "nothing"
    said = code(found=found, choices=either(names) or "none yet")
    if not wrong and said.wanted:
        return E402(what=said.wanted).at(here)
    span = wrong[0].span.to(wrong[-1].span) if wrong else here
    return said.at(span, nearest=near)


def _meant(ahead: Sequence[Atom], names: Sequence[str]) -> tuple[Sequence[Atom], tuple[str, ...]]:
    """As many of the words ``ahead`` as come nearest to a name, and the nearest names.

    A coach misspells one name, not the rest of his line; where nothing is near, all he wrote up to
    the next comma stands for it.
    """
    best: tuple[Sequence[Atom], tuple[str, ...]] = (ahead, ())
    least = None
    for length in range(1, len(ahead) + 1):
        wrong = " ".join(a.text for a in ahead[:length])
        if len(wrong) > _LONGEST_WRONG:
            break
        near = nearest(wrong, (n for n in names if _tells(n, wrong)))
        gap = distance(wrong, near[0]) if near else 0
        # A right word is not the wrong one; of two as near, the longer says more.
        if gap and (least is None or gap <= least):
            best, least = (ahead[:length], near), gap
    return best


def bounded(atom: Atom) -> float:
    """The number of an atom; a misread where it is more, or nearer to nothing, than any line can
    mean."""
    ends = [float(end) for end in atom.text.lstrip("#").split("-")]
    if not all(end == 0 or SMALLEST_FIGURE <= end <= LARGEST_FIGURE for end in ends):
        long = len(atom.text) > _DIGITS_SHOWN
        raise Misread(
            E134(
                least=SMALLEST_FIGURE, most=LARGEST_FIGURE, field=LONGEST_FIELD,
                figure=atom.text[:_DIGITS_SHOWN] + "..." * long,
            ).at(atom.span)
        )  # fmt: skip
    return atom.number


def _tells(name: str, wrong: str) -> bool:
    """Whether a name may help: a short one only with one letter too many or two swapped, for it
    is near to every other short word."""
    right, word = name.casefold(), wrong.casefold()
    return len(name) > _SHORT or word[:-1] == right or sorted(word) == sorted(right)


def one_phrase(value: Value | None, what: str, span: Span) -> Phrase:
    """The value as a single phrase; anything with marks in it is a misread."""
    if isinstance(value, Phrase):
        return value
    at = value.span if value is not None else span
    raise Misread(E402(what=what).at(at))


def string_of(value: Value | None, span: Span) -> str:
    """The text of a coaching point: a quoted string, or plain words as they stand."""
    return one_phrase(value, "a text in quotes", span).text
