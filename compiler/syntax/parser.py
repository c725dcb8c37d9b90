"""Text to Tree.

The file is cut at its column-one lines and each block parsed alone. Inside a block the parser
recovers at the end of a line: what it built of a bad line is thrown away and ``_JUNK`` put in
its place, which the grammar takes as a line (panic mode). So a mistake costs one line, and
every line of every block is looked at.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from functools import cache
from typing import Any

from lark import Lark, Token, Transformer, UnexpectedToken
from lark.parsers.lalr_parser_state import ParserState

from stemline.diagnostics.catalogue.bounds import E140
from stemline.diagnostics.catalogue.forms import E202, E203, E210
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.source import Source, Span
from stemline.syntax.grammar_table import with_table
from stemline.syntax.lexer import Margins, Places, Report
from stemline.syntax.lines import KINDS
from stemline.syntax.mistakes import explain
from stemline.syntax.splitting import Cut, Cutter
from stemline.syntax.tree import (
    Block,
    Comment,
    Document,
    Fact,
    Link,
    Linked,
    Mark,
    Phrase,
    Series,
    Value,
)
from stemline.syntax.walking import Walk

MOST_MISTAKES = 1000
"""Mistakes of one file from which on it is not read: it is another kind of text, or was damaged by
a program. A coach mends a few at a time, and reads the text again."""


class _TooMany(Exception):
    """More mistakes than are looked for in one file; caught where it is parsed."""


def parse(source: Source) -> tuple[Document, tuple[Diagnostic, ...]]:
    """The blocks and comments of a file, and its mistakes in order of place, one a line at most.

    A block whose header gives no name is left out; so is a line that could not be read. A file
    of too many mistakes is read up to the last of them (E140).
    """
    found: dict[int, Diagnostic] = {}
    blocks: list[Block] = []
    comments: list[Comment] = []

    def report(mistake: Diagnostic) -> None:
        found.setdefault(mistake.span.line, mistake)
        if len(found) > MOST_MISTAKES:
            raise _TooMany

    try:
        cutter = Cutter(source, report)
        comments = cutter.comments
        for cut in cutter.cuts():
            if (block := _block(cut, source.name, report)) is not None:
                blocks.append(block)
    except _TooMany:
        line, _ = found.popitem()
        rest = sum(1 for text in source.lines[line - 1 :] if text.strip())
        at = Span(source.name, line, 1, len(source.lines[line - 1]) + 1)
        found[line] = E140(most=MOST_MISTAKES, rest=rest).at(at)
    document = Document(source, tuple(blocks), tuple(comments))
    return document, tuple(found[line] for line in sorted(found))


def _block(cut: Cut, source: str, report: Report) -> Block | None:
    block = _run(cut, source, report)
    if block is None:
        return None
    shape = KINDS[cut.kind]
    if not block.name.text.strip():
        report(E202(word="", kind=cut.kind, example=shape.header).at(block.name.span))
        return None
    if shape.join_required and not block.joins:
        header = shape.header
        report(E210(kind=cut.kind, join=shape.join, example=header).at(block.span))
    joins_two = any(isinstance(join.value, Series) for join in block.joins)
    if not (cut.said or shape.bare or (shape.join == "extends" and joins_two)):
        report(E203(kind=cut.kind, example=shape.example).at(block.span))
    return replace(block, kind=cut.kind)


def _run(cut: Cut, source: str, report: Report) -> Block | None:
    """The parser's run over one block; it is fed by hand, so that it can recover by line."""
    lark = _lark().parse_interactive(cut.text)
    lexer, state = lark.lexer_thread, lark.parser_state
    assert lexer.state is not None
    walk = _walk()
    lexer.state.line_ctr.line = cut.line
    placed = Places(source, cut.kind, report).process(lexer.lexer.lex(lexer.state, state))
    tokens = Margins(source, report).process(placed)
    line: list[Token] = []  # what the parser took of the line so far
    unread = rows = False  # the last line was an opener without a meaning; its rows are passed over
    for token in tokens:
        rows = token.type != "_DEDENT" if rows else unread and token.type == "_INDENT"
        if rows or (unread and token.type == "_DEDENT"):
            unread = rows
            continue
        unread = False
        try:
            walk.feed(state, token)
        except UnexpectedToken:
            report(explain(line, token, cut.kind, source))
            unread = any(t.type == "OPENER" for t in (*line[:1], token))
            _drop(state, line, _end(token, tokens))
            line.clear()
        else:
            if token.type in ("_NL", "_INDENT", "_DEDENT"):
                line.clear()
            else:
                line.append(token)
    block: Block | None = state.feed_token(Token("$END", ""), is_end=True)
    return block


def _end(token: Token, tokens: Iterator[Token]) -> Token:
    """The end of the line ``token`` stands in."""
    while token.type != "_NL":
        token = next(tokens)
    return token


def _drop(state: ParserState[int], line: list[Token], end: Token) -> None:
    """Takes a line off the parser's stack, up to its ``end``.

    A header is kept as far as it could be read, since the block needs a name; of a fact nothing
    is kept, since half of a fact may say the opposite.
    """
    header = bool(line) and line[0].type == "KIND"

    def takes(kind: str) -> bool:
        return kind in state.parse_conf.states[state.position]

    while not (takes("_JUNK") or (header and takes("_NL"))):
        state.state_stack.pop()
        state.value_stack.pop()
    if takes("_JUNK"):
        state.feed_token(Token("_JUNK", ""))
    state.feed_token(end)


class _Builder(Transformer[Token, "Block | None"]):
    """The tree, built as the parser goes; the value of a token is its `Atom`."""

    def block(self, parts: list[Any]) -> Block | None:
        head, *facts = parts
        return replace(head, facts=tuple(facts)) if head else None

    def head(self, parts: list[Any]) -> Block | None:
        if not parts:
            return None
        kind, name, *also, join = parts
        end = join.value if join else (name, *also)[-1]
        joins = (join,) if join else ()
        span = kind.value.span.to(end.span)
        return Block(kind.value.word, name, joins, (), span, tuple(also))

    def opened(self, parts: list[Fact]) -> Fact:
        opener, *rows = parts
        return replace(opener, rows=tuple(rows))

    def opener(self, parts: list[Any]) -> Fact:
        label, value = parts
        span = label.value.span.to(value.span) if value is not None else label.value.span
        return Fact(label.value, (), None, value, None, span)

    def row(self, parts: list[Any]) -> Fact:
        _, value, guard = parts
        return Fact(None, (), None, value, guard, value.span.to((guard or value).span))

    def labelled(self, parts: list[Any]) -> Fact:
        label, value, guard = parts
        span = label.value.span.to((guard or value).span)
        return Fact(label.value, (), None, value, guard, span)

    def said(self, parts: list[Any]) -> Fact:
        subject, verb, value, guard = parts
        span = subject[0].span.to((guard or value).span)
        return Fact(None, subject, verb.value, value, guard, span)

    def subject(self, parts: list[Phrase]) -> tuple[Phrase, ...]:
        return tuple(parts)

    def phrase(self, parts: list[Token]) -> Phrase:
        return Phrase(tuple(token.value for token in parts))

    def linked(self, parts: list[Any]) -> Linked:
        return Linked(parts[0], tuple(parts[1:]))

    def link(self, parts: list[Any]) -> Link:
        return Link(parts[0].value, parts[1])

    def join(self, parts: list[Any]) -> Link:
        connector, *names = parts
        value = names[0] if len(names) == 1 else Series(Mark.AND, tuple(names))
        return Link(connector.value, value)

    def order(self, parts: list[Value]) -> Series:
        return Series(Mark.ORDER, tuple(parts))

    def then(self, parts: list[Value]) -> Series:
        return Series(Mark.THEN, tuple(parts))

    def also(self, parts: list[Value]) -> Series:
        return Series(Mark.AND, tuple(parts))

    def choice(self, parts: list[Value]) -> Series:
        return Series(Mark.OR, tuple(parts))

    def together(self, parts: list[Value]) -> Series:
        return Series(Mark.TOGETHER, tuple(parts))


@cache
def _lark() -> Lark:
    return with_table(_Builder())


@cache
def _walk() -> Walk:
    return Walk(_lark().parse_interactive("").parser_state.parse_conf)
