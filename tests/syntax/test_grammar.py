from __future__ import annotations

import re
from importlib.resources import files

import pytest
from lark import Lark

from stemline.syntax.lines import KINDS

GRAMMAR = files("stemline.grammar").joinpath("stemline.lark").read_text("utf-8")


def test_no_conflict_and_no_two_tokens_for_one_text() -> None:
    pytest.importorskip("interegular")
    Lark(GRAMMAR, start="block", parser="lalr", lexer="basic", strict=True)


def test_the_grammar_knows_no_word_of_the_notation() -> None:
    """What stands in quotes in the grammar are marks, never a keyword."""
    code = re.sub(r"//.*", "", GRAMMAR)
    assert set(re.findall(r'(?<!\S)"[^"]*"(?!\S)', code)) == {'">"', '","', '"+"'}
    assert "concept" in KINDS and "concept" not in code
