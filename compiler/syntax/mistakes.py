"""What to say of a line whose shape the parser refused."""

from __future__ import annotations

from collections.abc import Sequence

from lark import Token

from stemline.diagnostics.catalogue.forms import (
    E202,
    E207,
    E208,
    E209,
    E223,
    E224,
    E226,
    E230,
    E231,
    E232,
    E233,
    E234,
    E235,
    E236,
    UnlikeItsLine,
)
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.syntax.lexer import place
from stemline.syntax.lines import KINDS, BlockKind

_TURNING = frozenset({"LABEL", "VERB", "OPENER", "ROW"})
_MARKS = frozenset({"_ORDER", "_THEN", "_AND", "_OR", "_TOGETHER"})


def explain(line: Sequence[Token], token: Token, kind: str, source: str) -> Diagnostic:
    """The mistake in a line: ``line`` is what the parser took of it, ``token`` what it refused.

    ``kind`` is the kind of block the line stands in.
    """
    shape = KINDS[kind]
    if line and line[0].type == "KIND":
        code, culprit = _header(line[-1], token)
        example = shape.header
    else:
        turn = next((t for t in line if t.type in _TURNING), None)
        code, culprit = _fact(line, token, turn)
        example = _example(shape, turn)
    return code(word=culprit, kind=kind, example=example).at(place(source, culprit))


def _example(shape: BlockKind, turn: Token | None) -> str:
    """A correct line that turns on the same word; a row of its own where it stands under one."""
    if turn is None:
        return shape.example
    word = turn.casefold()
    if turn.type == "ROW":
        return next(iter(shape.openers.values())).row.example
    if turn.type == "VERB":
        return shape.verbs[word].example
    rows = (opener.labels for opener in shape.openers.values())
    table = next(t for t in (shape.turning, *rows) if word in t)
    return table[word].example


def _header(before: Token, token: Token) -> tuple[type[UnlikeItsLine], Token]:
    if before.type == "CONN":
        return E209, before
    if token.type == "CONN" and before.type != "KIND":
        return E208, token
    if before.type == "KIND" and token.type in ("_NL", "CONN"):
        return E202, before
    return E207, token


def _fact(
    line: Sequence[Token], token: Token, turn: Token | None
) -> tuple[type[UnlikeItsLine], Token]:
    before = line[-1] if line else None
    if before is None:
        return E231, token
    if before.type in _MARKS:
        return E232, before
    if before.type == "CONN":
        return E230, before
    if before.type == "_WHEN":
        return E233, before
    if token.type in ("_NL", "_WHEN") and before.type in ("LABEL", "VERB"):
        return (E223 if before.type == "LABEL" else E224), before
    if any(t.type == "_WHEN" for t in line):
        return (E234 if token.type == "_WHEN" else E236), token
    if turn is None:
        return (E235 if token.type == "_WHEN" else E226), token
    return E231, token
