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
from stemline.diagnostics.catalogue.forms import (
    E205,
    E206,
    E211,
    E220,
    E221,
    E225,
    E227,
    E228,
)
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.diagnostics.in_words import either
from stemline.diagnostics.nearest import nearest
from stemline.source import Span
from stemline.syntax.characters import folded
from stemline.syntax.lines import (
    JOINS,
    KINDS,
    OWN_WORDS,
    TOPICS,
    WrittenLine,
    holders,
    joined_by,
)
from stemline.syntax.plain_said import as_talked, plainly
from stemline.syntax.spoken_lines import (
    DOES,
    NAMES_TOO,
    as_it_is_said,
    as_written,
    in_order,
    thrown_away,
)
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

_QUOTES = frozenset('"“”')
_ORDERS = ("read", "pressure")
"""Labels of what is looked at one after another."""
_EVERYDAY = ("in",)
"""Verbs that any sentence may hold: one does not tell of which kind a wrong line is."""
_VERB_SOUGHT = 5
"""A misspelt verb is looked for among so many words of a line; subjects are short."""


_SIDES = ("right", "left")
"""Words that a call has and no other line of a week: what is told of a call out of its place."""


def _depth(token: Token) -> int:
    """The margin of the line behind a line's end."""
    return len(token.rpartition("\n")[2])


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
    table = KINDS[kind].turning if label else KINDS[kind].verbs
    # Words of two letters ("is", "at") are near to half of the language.
    return nearest(word, [w for w in table if len(w) > 2])


class Places:
    """Types the words of one block of a known kind, header line first."""

    def __init__(self, source: str, kind: str, report: Report) -> None:
        self._source = source
        self._kind = kind
        self._shape = KINDS[kind]
        self._report = report
        self._under = ""
        """The opener that deeper lines are rows of; "" where the last line was none, and where it
        was not read: what stands under that is passed over."""
        self._lost = False
        self._depth = 0

    def process(self, tokens: Iterable[Token]) -> Iterator[Token]:
        """The tokens retyped; the value of each word or figure is its `Atom`."""
        line: list[Token] = []
        placed: Callable[[list[Token]], list[Token]] = self._header
        for token in tokens:
            if token.type == "_NL":
                if placed != self._passed_over:
                    yield from placed(line)
                placed = self._placing(_depth(token))
                line = []
                if placed != self._passed_over:
                    yield token
            else:
                line.append(token)
        if placed != self._passed_over:
            yield from placed(line)
        yield Token("_NL", "")

    def _placing(self, depth: int) -> Callable[[list[Token]], list[Token]]:
        """How a line at this margin is read: one that stands deeper than an opener is its row."""
        if self._shape.openers and depth > self._depth > 0:
            if self._under:
                return self._row
            if self._lost:
                return self._passed_over
        self._depth, self._under, self._lost = depth, "", False
        return self._fact

    def _passed_over(self, line: list[Token]) -> list[Token]:
        return []

    def _row(self, line: list[Token]) -> list[Token]:
        """A line under an opener: a label of its own, or a value."""
        if mistake := self._junk(line):
            return self._given_up(mistake)
        opener = self._shape.openers[self._under]
        label = opener.labels.get(line[0].casefold()) if line[0].type == "WORD" else None
        if label is not None:
            return self._turning(line, 0, "LABEL", label)
        if opener.labels:
            word, known = line[0], opener.labels
            near = nearest(word.casefold(), known)
            example = known[near[0]].example if near else opener.row.example
            return self._given_up(
                E227(found=word, opener=self._under, example=example).at(
                    self._span(word), nearest=near
                )
            )
        # A connector at the end of a row has nothing to join: "wind against" is a name there.
        self._retype(line[:-1], opener.row.connectors)
        self._retype(line[-1:], frozenset())
        at = line[0]
        mark = Token("ROW", "", at.start_pos, at.line, at.column, at.end_line, at.column)
        return [mark, *self._valued(line)]

    def _header(self, line: list[Token]) -> list[Token]:
        # The block needs its name whatever else stands in the line.
        if mistake := self._junk(line):
            self._report(mistake)
        line = [token for token in line if token.type != "_JUNK"]
        line[0].type = "KIND"
        self._retype(line[1:], frozenset((self._shape.join,)))
        joined = False
        for before, token in pairwise(line):
            if before.type == "CONN" and token.casefold() == "any":
                break  # not a list: what it leaves out would be read as what it is for
            joined = joined or token.type == "CONN"
            if token.type == "_AND" and self._listed(joined):
                token.type = "_ALSO"
        for token in line[1:]:
            word = token.casefold()
            if token.type == "WORD" and word in JOINS:
                span, kind = self._span(token), joined_by(word)
                self._report(E211(word=word, kind=kind, here=self._kind).at(span))
        return self._valued(line)

    def _listed(self, joined: bool) -> bool:
        """Whether commas may part names here."""
        return self._shape.joins_many if joined else self._shape.many

    def _fact(self, line: list[Token]) -> list[Token]:
        if mistake := self._junk(line):
            return self._given_up(mistake)
        line = as_it_is_said(self._kind, plainly(self._kind, line))
        first, shape = line[0], self._shape
        if first.type == "WORD" and first.casefold() in shape.openers:
            self._under = first.casefold()
            return self._turning(line, 0, "OPENER", shape.openers[self._under].line)
        label = shape.labels.get(first.casefold()) if first.type == "WORD" else None
        verb = self._verb(line, label)
        if label is not None and verb is None:
            if label.word in _ORDERS:
                line = thrown_away(line)
            return self._turning(line, 0, "LABEL", label)
        if verb is not None:
            return self._turning(line, verb, "VERB", shape.verbs[line[verb].casefold()])
        said = as_talked(self._kind, line) or as_written(self._kind, line)
        return self._fact(said) if said is not None else self._given_up(self._unknown(line))

    def _verb(self, line: list[Token], label: WrittenLine | None) -> int | None:
        """Where the line's verb stands. Behind a label it must turn a name, as in ``read man is
        strong #2``: words alone before it, none of them the label's own, and something after it."""
        for at, token in enumerate(line[1:], 1):
            word = token.casefold() if token.type == "WORD" else ""
            if label is not None:
                own = word in label.connectors or word in _MARK_WORDS
                if label.word in OWN_WORDS or not word or own:
                    return None
            named = at > 1 or (label is not None and label.word in NAMES_TOO and word in DOES)
            if word in self._shape.verbs and (label is None or (named and at < len(line) - 1)):
                return at
        return None

    def _given_up(self, mistake: Diagnostic) -> list[Token]:
        self._lost = not self._under
        self._report(mistake)
        return [Token("_JUNK", "")]

    def _turning(self, line: list[Token], at: int, kind: str, shape: WrittenLine) -> list[Token]:
        """Types the line around the word it turns on; before a verb no word is a connector."""
        line[at].type = kind
        self._retype(line[:at], frozenset())
        if self._shape.many:  # what stands before a dress-up's verb are tags: `Wheel + Return only`
            for token in line[:at]:
                token.type = "WORD" if token.type == "_TOGETHER" else token.type
        self._retype(line[at + 1 :], shape.connectors)
        return self._valued(in_order(line) if shape.word in _ORDERS else line)

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
                last = line[-1]
                if len(line) > 2 and last.type == "_JUNK" and last in _QUOTES:
                    # It closes what was never opened, whatever stands between.
                    return junk(last, self._span(line[1]).to(self._span(last)))
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
            if shape.openers and any(t.casefold() in _SIDES for t in line[1:]):
                return E228().at(span.to(self._span(line[-1])))
            if word in shape.verbs:
                labelled = tuple(k for k in holders(word) if word in KINDS[k].labels)
                known = shape.verbs[word].connectors
                if labelled and known and not any(t.casefold() in known for t in line[1:]):
                    return self._elsewhere(first, labelled)  # `keeps read` is no `keeps if`
                return E225(word=word, example=shape.verbs[word].example).at(span)
            kinds = holders(word)
            if not kinds and (near := _near(word, self._kind, True)):
                return self._unlike(first, near, shape.turning)
        # `and` is near to `hands`, and parts what is listed.
        others = [t for t in line[1:_VERB_SOUGHT] if t.type == "WORD" and t.casefold() != "and"]
        for token in others:  # before a label of another kind: a name may be one
            if near := _near(token.casefold(), self._kind, False):
                return self._unlike(token, near, shape.verbs)
        if first.type == "WORD" and kinds:
            return self._elsewhere(first, kinds)
        for token in others:
            verb = token.casefold()
            kinds = () if verb in _EVERYDAY else holders(verb)
            if kinds := tuple(k for k in kinds if verb in KINDS[k].verbs):
                return self._elsewhere(token, kinds)
        span = span.to(self._span(line[-1]))
        return E220(word=first, here=self._kind, example=self._sample(line)).at(span)

    def _sample(self, line: list[Token]) -> str:
        """A correct line of the block, about what this one seems to be about."""
        table = {**self._shape.turning, **self._shape.verbs}
        topics = (TOPICS.get(token.casefold(), "") for token in line)
        topic = next((t for t in topics if t in table), "")
        return table[topic].example if topic else self._shape.example

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

    A block has one level: the header, and its lines under it; only an opener has rows one level
    further in. A line that stands elsewhere is reported and read as if it stood right, since the
    coach's meaning is plain.
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
        self._at = 0  # the margin of the last line that is no row
        self._rows = 0  # that of the rows under an opener, while one is open
        self._opened = False
        self._last = -1

    def process(self, stream: Iterator[Token]) -> Iterator[Token]:
        tokens: Iterator[Token] = super().process(self._watched(stream))  # type: ignore[no-untyped-call]
        return tokens

    def _watched(self, stream: Iterator[Token]) -> Iterator[Token]:
        """The tokens, and whether the last line that stood at the block's margin was an opener."""
        for token in stream:
            if token.type == "OPENER":
                self._opened = True
            yield token

    def handle_NL(self, token: Token) -> Iterator[Token]:
        yield token
        if not token:
            return  # the end of the block, put there by `Places`
        if len(self.indent_level) == 1:
            self.indent_level.append(1)  # taken off again at the end of the block
            yield Token(self.INDENT_type, "")
        depth, tabs = _depth(token), "\t" in token.rpartition("\n")[2]
        if not tabs:
            self._margin = self._margin or depth
        if self._opened and depth > self._at > 0:
            if not self._rows:
                self._rows = depth
                self.indent_level.append(2)
                yield Token(self.INDENT_type, "")
        else:
            self._opened, self._at = False, depth
            if self._rows:
                self._rows = 0
                self.indent_level.pop()
                yield Token(self.DEDENT_type, "")
        if not tabs:
            self._stands(token, depth)

    def _stands(self, token: Token, depth: int) -> None:
        """Compares a line's depth with that of the first line of its level; says a run of wrong
        lines once."""
        wanted = self._rows or self._margin
        if depth != self._last and (not depth or depth != wanted):
            assert token.end_line is not None
            span = Span(self._source, token.end_line, 1, max(depth, 1) + 1)
            wrong = E206(found=depth, wanted=wanted) if depth else E205()
            self._report(wrong.at(span))
        self._last = depth
