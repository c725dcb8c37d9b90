from __future__ import annotations

import pytest

from stemline.source import Source
from stemline.syntax.parser import parse
from stemline.syntax.tree import AtomKind, Phrase


def kinds(text: str) -> list[tuple[str, AtomKind]]:
    document, found = parse(Source("test.play", f"concept A\n    x is {text}\n"))
    assert not found, [d.code for d in found]
    value = document.blocks[0].facts[0].value
    assert isinstance(value, Phrase)
    return [(a.text, a.kind) for a in value.atoms]


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("inside", AtomKind.WORD),
        ("2i", AtomKind.WORD),
        ("3rd", AtomKind.WORD),
        ("5-man", AtomKind.WORD),
        ("high-low", AtomKind.WORD),
        ("high/low", AtomKind.WORD),
        ("Y-Cross", AtomKind.WORD),
        ("Will's", AtomKind.WORD),
        ("d’hiver", AtomKind.WORD),
        ("backs'", AtomKind.WORD),
        ("2026-09-12", AtomKind.WORD),
        ("3x2x1", AtomKind.WORD),
        ("Évasé", AtomKind.WORD),
        ("E\u0301vase\u0301", AtomKind.WORD),
        ("Ωμέγα", AtomKind.WORD),
        ("मेश", AtomKind.WORD),
        ("网状", AtomKind.WORD),
        ("12", AtomKind.NUMBER),
        ("1.5", AtomKind.NUMBER),
        ("10-12", AtomKind.RANGE),
        ("1.5-2", AtomKind.RANGE),
        ("#2", AtomKind.RANK),
        ("3x2", AtomKind.SHAPE),
    ],
)
def test_kind_of_one_token(text: str, kind: AtomKind) -> None:
    assert kinds(text) == [(text, kind)]


@pytest.mark.parametrize("text", ['"go, then"', "“go, then”", '“go, then"', '"go, then”'])
def test_either_kind_of_quotes(text: str) -> None:
    assert kinds(text) == [("go, then", AtomKind.STRING)]


def test_one_kind_of_quotes_may_stand_in_the_other() -> None:
    assert kinds('"he said “go”"') == [("he said “go”", AtomKind.STRING)]


def test_spacing_carries_no_meaning() -> None:
    assert kinds("a \t  b\u00a0c") == [(w, AtomKind.WORD) for w in "abc"]
