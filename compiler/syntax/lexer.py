"""Between lark's lexer and the parser: words get their type from their place in the line.

The lexer knows words, figures and marks only. `Places` reads one line at a time and settles
which word is its label or verb and which words are that word's connectors; a line it cannot
place is reported and handed on as one ``_JUNK`` token, so that the rest of the block is read.
`Margins` then turns the margin into ``_INDENT`` and ``_DEDENT``.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import replace
from functools import lru_cache
from itertools import pairwise
from typing import ClassVar

from lark import Token
from lark.indenter import Indenter

from stemline.diagnostics.catalogue.files import (
    E120,
    E121,
    E122,
    E123,
    E124,
    E125,
    E126,
    E127,
    Stray,
)
from stemline.diagnostics.catalogue.forms import E205, E206, E211, E220, E221, E225
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.diagnostics.in_words import either
from stemline.diagnostics.nearest import nearest
from stemline.source import Span
from stemline.syntax.characters import folded
from stemline.syntax.lines import JOINS, KINDS, OWN_WORDS, WrittenLine, holders, joined_by
from stemline.syntax.tree import Atom, AtomKind

Report = Callable[[Diagnostic], None]

_ATOMS = {
    "NUM": AtomKind.NUMBER,
    "RANGE": AtomKind.RANGE,
    "RANK": AtomKind.RANK,
    "SHAPE": AtomKind.SHAPE,
    "STRING": AtomKind.STRING,
}
"""The kind of atom a token becomes; every other type is a word."""

_MARK_WORDS = {"then": "_THEN", "or": "_OR", "when": "_WHEN"}

_JUNK: tuple[tuple[type[Stray], str], ...] = (
    (E121, ":"),
    (E122, ";"),
    (E123, "="),
    (E125, "-\u2010\u2011\u2012\u2013\u2014\u2212"),
    (E126, '"“”'),
    (E127, "'‘’"),
)
"""The characters that have an advice of their own; met outside a word or a closed quote."""

_VERB_SOUGHT = 5
"""A misspelt verb is looked for among so many words of a line; subjects are short."""


def place(source: str, token: Token) -> Span:
    """Where a token of the text stands."""
    assert token.line is not None and token.column is not None and token.end_column is not None
    return Span(source, token.line, token.column, token.end_column)


def junk(char: str, span: Span) -> Diagnostic:
    """What to say of a character the notation has no use for."""
    code: type[Stray] = next((code for code, chars in _JUNK if char in chars), E120)
    return code(char=char if char.isprintable() else f"U+{ord(char):04X}").at(span)


@lru_cache(maxsize=4096)
def _near(word: str, kind: str, label: bool) -> tuple[str, ...]:
    table = KINDS[kind].labels if label else KINDS[kind].verbs
    # Words of two letters ("is", "at") are near to half of the language.
    return nearest(word, [w for w in table if len(w) > 2])


class Places:
    """Types the words of one block of a known kind, header line first."""

    def __init__(self, source: str, kind: str, report: Report) -> None:
        self._source = source
        self._kind = kind
        self._shape = KINDS[kind]
        self._report = report

    def process(self, tokens: Iterable[Token]) -> Iterator[Token]:
        """The tokens retyped; the value of each word or figure is its `Atom`."""
        line: list[Token] = []
        placed = self._header
        for token in tokens:
            if token.type == "_NL":
                yield from placed(line)
                yield token
                line, placed = [], self._fact
            else:
                line.append(token)
        yield from placed(line)
        yield Token("_NL", "")

    def _header(self, line: list[Token]) -> list[Token]:
        # The block needs its name whatever else stands in the line.
        if mistake := self._junk(line):
            self._report(mistake)
        line = [token for token in line if token.type != "_JUNK"]
        line[0].type = "KIND"
        self._retype(line[1:], frozenset((self._shape.join,)))
        for token in line[1:]:
            word = token.casefold()
            if token.type == "WORD" and word in JOINS:
                span, kind = self._span(token), joined_by(word)
                self._report(E211(word=word, kind=kind, here=self._kind).at(span))
        return self._valued(line)

    def _fact(self, line: list[Token]) -> list[Token]:
        if mistake := self._junk(line):
            return self._given_up(mistake)
        first, shape = line[0], self._shape
        label = shape.labels.get(first.casefold()) if first.type == "WORD" else None
        verb = self._verb(line, label)
        if label is not None and verb is None:
            return self._turning(line, 0, "LABEL", label)
        if verb is not None:
            return self._turning(line, verb, "VERB", shape.verbs[line[verb].casefold()])
        return self._given_up(self._unknown(line))

    def _verb(self, line: list[Token], label: WrittenLine | None) -> int | None:
        """Where the line's verb stands. Behind a label it must turn a name, as in ``read man is
        strong #2``: words alone before it, none of them the label's own, and something after it."""
        for at, token in enumerate(line[1:], 1):
            word = token.casefold() if token.type == "WORD" else ""
            if label is not None:
                own = word in label.connectors or word in _MARK_WORDS
                if label.word in OWN_WORDS or not word or own:
                    return None
            if word in self._shape.verbs and (label is None or 1 < at < len(line) - 1):
                return at
        return None

    def _given_up(self, mistake: Diagnostic) -> list[Token]:
        self._report(mistake)
        return [Token("_JUNK", "")]

    def _turning(self, line: list[Token], at: int, kind: str, shape: WrittenLine) -> list[Token]:
        """Types the line around the word it turns on; before a verb no word is a connector."""
        line[at].type = kind
        self._retype(line[:at], frozenset())
        self._retype(line[at + 1 :], shape.connectors)
        return self._valued(line)

    @staticmethod
    def _retype(tokens: list[Token], connectors: frozenset[str]) -> None:
        for token in tokens:
            if token.type == "WORD":
                word = token.casefold()
                if word in _MARK_WORDS:
                    token.type = _MARK_WORDS[word]
                    if word == "when":
                        connectors = frozenset()  # a guard is the end of a line: no links in it
                elif word in connectors:
                    token.type = "CONN"

    def _valued(self, line: list[Token]) -> list[Token]:
        for token in line:
            kind = _ATOMS.get(token.type, AtomKind.WORD)
            text = folded(token[1:-1]) if kind is AtomKind.STRING else str(token)
            token.value = Atom(kind, text, self._span(token))
        return line

    def _span(self, token: Token) -> Span:
        return place(self._source, token)

    def _junk(self, line: list[Token]) -> Diagnostic | None:
        """The first character without a use, or a comma that may be a decimal one."""
        for token in line:
            if token.type == "_JUNK":
                found = junk(token, self._span(token))
                if isinstance(found.said, E126):
                    return replace(found, span=found.span.to(self._span(line[-1])))
                return found
        for (left, comma), (_, right) in pairwise(pairwise(line)):
            figures = comma.type == "_AND" and {left.type, right.type} <= {"NUM", "RANGE"}
            if figures and left.end_pos == comma.start_pos and comma.end_pos == right.start_pos:
                span = self._span(left).to(self._span(right))
                return E124(whole=left, part=right).at(span)
        return None

    def _unknown(self, line: list[Token]) -> Diagnostic:
        """What the coach may have meant by a line that turns on no word of this kind."""
        first, shape = line[0], self._shape
        word, span = first.casefold(), self._span(first)
        if first.type == "WORD":
            if word in shape.verbs:
                return E225(word=word, example=shape.verbs[word].example).at(span)
            if kinds := holders(word):
                return self._elsewhere(first, kinds)
            if near := _near(word, self._kind, True):
                return self._unlike(first, near, shape.labels)
        others = [t for t in line[1:_VERB_SOUGHT] if t.type == "WORD"]
        for token in others:
            if near := _near(token.casefold(), self._kind, False):
                return self._unlike(token, near, shape.verbs)
        for token in others:
            verb = token.casefold()
            if kinds := tuple(k for k in holders(verb) if verb in KINDS[k].verbs):
                return self._elsewhere(token, kinds)
        span = span.to(self._span(line[-1]))
        return E220(word=first, here=self._kind, example=shape.example).at(span)

    def _unlike(
        self, token: Token, near: tuple[str, ...], table: Mapping[str, WrittenLine]
    ) -> Diagnostic:
        span, example = self._span(token), table[near[0]].example
        return E220(word=token, here=self._kind, example=example).at(span, nearest=near)

    def _elsewhere(self, token: Token, kinds: tuple[str, ...]) -> Diagnostic:
        span, example = self._span(token), self._shape.example
        return E221(word=token, kinds=either(kinds), here=self._kind, example=example).at(span)


class Margins(Indenter):
    """The margin of one block, as tokens.

    A block has one level: the header, and its lines under it. A line that stands elsewhere is
    reported and read as if it stood right, since the coach's meaning is plain.
    """

    NL_type = "_NL"
    INDENT_type = "_INDENT"
    DEDENT_type = "_DEDENT"
    OPEN_PAREN_types: ClassVar[list[str]] = []
    CLOSE_PAREN_types: ClassVar[list[str]] = []
    tab_len = 1

    def __init__(self, source: str, report: Report) -> None:
        super().__init__()
        self._source = source
        self._report = report
        self._margin = 0  # until a line with a margin was seen
        self._last = -1

    def process(self, stream: Iterator[Token]) -> Iterator[Token]:
        tokens: Iterator[Token] = super().process(stream)  # type: ignore[no-untyped-call]
        return tokens

    def handle_NL(self, token: Token) -> Iterator[Token]:
        yield token
        if not token:
            return  # the end of the block, put there by `Places`
        if len(self.indent_level) == 1:
            self.indent_level.append(1)  # taken off again at the end of the block
            yield Token(self.INDENT_type, "")
        margin = token.rpartition("\n")[2]
        if "\t" not in margin:
            self._stands(token, len(margin))

    def _stands(self, token: Token, depth: int) -> None:
        """Compares a line's depth with the first line's; says a run of wrong lines once."""
        self._margin = self._margin or depth
        if depth != self._last and (not depth or depth != self._margin):
            assert token.end_line is not None
            span = Span(self._source, token.end_line, 1, max(depth, 1) + 1)
            wrong = E206(found=depth, wanted=self._margin) if depth else E205()
            self._report(wrong.at(span))
        self._last = depth
