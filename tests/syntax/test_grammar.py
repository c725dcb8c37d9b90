from __future__ import annotations

import re
from importlib.resources import files

import pytest
from grammar_table import PLACE, written
from lark import Lark

from stemline.syntax import grammar_table
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


def test_the_table_is_that_of_the_grammar() -> None:
    """Written again by `python -m tests.grammar_table`."""
    assert PLACE.read_text("utf-8") == written()
    kept = grammar_table._kept(GRAMMAR)
    assert kept is not None
    made = grammar_table.made(GRAMMAR)
    read = Lark._load_from_dict(*kept)  # type: ignore[no-untyped-call]
    assert {repr(t) for t in read.terminals} == {repr(t) for t in made.terminals}
    assert read.rules == made.rules


def test_a_table_of_another_grammar_is_not_read() -> None:
    assert grammar_table._kept(GRAMMAR + " ") is None
