"""The grammar with its table, which lies beside it as plain data: to make it takes as long as to
parse a few texts.

The file is written by ``python -m tests.grammar_table``. One that does not go with the grammar or
with the parser's version only costs the time to make the table again.
"""

from __future__ import annotations

import hashlib
import json
from importlib.resources import files
from typing import Any

import lark
from lark import Lark, Transformer

FILE = "table.json"
"""A line with a seal, then the table."""


def grammar() -> str:
    """The grammar as it is written."""
    return files("stemline.grammar").joinpath("stemline.lark").read_text("utf-8")


def with_table(builder: Transformer[Any, Any]) -> Lark:
    """What parses a block; ``builder`` makes the tree as it goes."""
    text = grammar()
    kept = _kept(text)
    if kept is None:
        return made(text, transformer=builder)
    data, memo = kept
    read: Lark = Lark._load_from_dict(  # type: ignore[no-untyped-call]
        data, memo, transformer=builder
    )
    return read


def made(text: str, **options: Any) -> Lark:
    """What parses a block by the grammar ``text``, its table worked out."""
    return Lark(text, start="block", parser="lalr", lexer="basic", **options)


def _kept(text: str) -> tuple[Any, Any] | None:
    """The table of this grammar; None where the file has that of another, or is not there."""
    try:
        head, _, table = files("stemline.grammar").joinpath(FILE).read_text("utf-8").partition("\n")
    except (OSError, UnicodeError):
        return None
    table = table.rstrip("\n")
    if head != seal(text, table):
        return None
    data, memo = json.loads(table, object_pairs_hook=_numbered)
    return data, memo


def seal(text: str, table: str) -> str:
    """What tells that a table is of this grammar, and of the parser that is there."""
    said = f"{lark.__version__} {len(text)} {text}{table}"
    return hashlib.sha256(said.encode("utf-8", "surrogatepass")).hexdigest()


def _numbered(pairs: list[tuple[str, Any]]) -> dict[Any, Any]:
    """JSON has no numbers for keys, and the table has them: of states and of what it shares."""
    return {int(key) if key.isdigit() else key: value for key, value in pairs}
