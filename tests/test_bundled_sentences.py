"""No bundled sentence teaches contact with the head, and a coach's own that does is warned of."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from corpus.mixing import compile_case
from together import together

from stemline.football.rulebook.care_rules import HEAD
from stemline.football.rulebook.head_contact import head_contact

HOUSE = Path(__file__).parent.parent
TEXTS = sorted([*(HOUSE / "playbooks").rglob("*.play"), *(HOUSE / "grammar").rglob("*.play")])
PAGES = tuple(
    HOUSE / "grammar" / name for name in ("reference.md", "ball.md", "week.md", "season.md")
)
TAG = """tag Wheel for Crossers
    flat runs wheel away from settle
    {line}
"""


@together("path", [*TEXTS, *PAGES], ids=lambda p: p.name)
def test_no_bundled_sentence_puts_a_head_into_a_block(path: Path) -> None:
    told = re.findall(r'"([^"\n]*)"', path.read_text("utf-8"))
    assert [words for words in told if head_contact(words)] == []


@pytest.mark.parametrize("label", ["say", "caution", "flat says"])
def test_a_sentence_of_a_coach_is_underlined_where_it_says_so(label: str) -> None:
    line = f'{label} "Eyes up. Head in his ribs."'
    out = compile_case("sample.play", TAG.format(line=line))
    assert out.codes == ["W890"]
    assert HEAD.removesuffix(".") in out.shown
    (found,) = out.found
    shown = TAG.format(line=line).split("\n")[found.span.line - 1]
    assert shown[found.span.column - 1 : found.span.end - 1] == "Head in his ribs"


def test_the_same_words_meant_otherwise_are_let_be() -> None:
    line = 'say "Head up on the guard, then face the quarterback."'
    assert compile_case("sample.play", TAG.format(line=line)).codes == []
