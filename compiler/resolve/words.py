"""Reading a phrase word by word against closed lists, with the nearest right word on a miss."""

from __future__ import annotations

from collections.abc import Iterable

from stemline.diagnostics.model import Diagnostic, diagnose
from stemline.diagnostics.nearest import nearest
from stemline.source import Span
from stemline.syntax.tree import Atom, AtomKind, Phrase, Value


class Misread(Exception):
    """A value that cannot be read; caught where its line is read, never let out of this room."""

    def __init__(self, diagnostic: Diagnostic) -> None:
        super().__init__(diagnostic.code)
        self.diagnostic = diagnostic


class Words:
    """A cursor over the atoms of one phrase or of several that only commas part."""

    def __init__(self, phrases: Iterable[Phrase]) -> None:
        self.atoms: tuple[Atom, ...] = tuple(a for p in phrases for a in p.atoms)
        self.at = 0

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
    def rest(self) -> str:
        return " ".join(a.text for a in self.atoms[self.at :])

    def take_word(self, *choices: str) -> str | None:
        """The next atom if it is one of the words."""
        if not self.done and self.atoms[self.at].word in choices:
            self.at += 1
            return self.atoms[self.at - 1].word
        return None

    def take_name(self, names: Iterable[str]) -> str | None:
        """The longest of ``names`` (they may hold spaces) that the next atoms spell."""
        best, length = None, 0
        for name in names:
            parts = name.casefold().split()
            ahead = [a.word for a in self.atoms[self.at : self.at + len(parts)]]
            if ahead == parts and len(parts) > length:
                best, length = name, len(parts)
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
        return atom.number

    def expect(self, names: Iterable[str], code: str, **values: object) -> str:
        """One of ``names`` must come next; else ``code`` with the nearest of them."""
        names = tuple(names)
        taken = self.take_name(names)
        if taken is None:
            raise self.miss(code, names, **values)
        return taken

    def miss(self, code: str, names: Iterable[str] = (), **values: object) -> Misread:
        """A misread at what comes next, naming the nearest of ``names``."""
        names = tuple(names)
        wrong = "" if self.done else self.rest
        first = "" if self.done else self.atoms[self.at].text
        near = nearest(first, names) or nearest(wrong, names)
        return Misread(
            diagnose(
                code,
                self.span if wrong else self.here,
                nearest=near,
                found=wrong or "nothing",
                choices=listed(names),
                **values,
            )
        )

    def finish(self, what: str) -> None:
        """Nothing may be left over."""
        if not self.done:
            raise Misread(diagnose("E401", self.span, found=self.rest, what=what))


def listed(names: Iterable[str]) -> str:
    """Names for a sentence: "a, b or c"."""
    names = list(names)
    if len(names) < 2:
        return "".join(names)
    return ", ".join(names[:-1]) + " or " + names[-1]


def one_phrase(value: Value | None, what: str, span: Span) -> Phrase:
    """The value as a single phrase; anything with marks in it is a misread."""
    if isinstance(value, Phrase):
        return value
    at = value.span if value is not None else span
    raise Misread(diagnose("E402", at, what=what))


def string_of(value: Value | None, span: Span) -> str:
    """The text of a coaching point: a quoted string, or plain words as they stand."""
    return one_phrase(value, "a text in quotes", span).text
