"""Each form of line that the notation has stands in a bundled playbook, and is seen there."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from stemline.outside.texts import read_files
from stemline.syntax.lines import KINDS

BOOKS = ("saltmarsh-herons", "cedar-flats-lanterns")
HABITS = frozenset(("contact", "draw", "league", "level", "lower", "scramble", "theme"))
"""Settings of a playbook that is kept otherwise than by default."""
OTHERWISE = frozenset(("handoff", "install", "picture", "splits"))
"""Older and shorter forms, `install` in a concept, which is refused, and other spacing."""
SAID = (
    ("everyone else", "run"), ("for any", "tag"), ("runs fade", "dress"), ("kill to", "run"),
    ("each #1", "run"), ("pick side", "concept"), ("to field", "dress"), ("best from", "dress"),
    ("tosses to", "run"), ("shovels to", "run"), ("pitches to", "run"),
    ("centre snaps to", "tag"), ("snap to", "formation"),
    ("throws to", "concept"), ("run or throw away", "concept"), ("scrambles", "concept"),
    ("key force is", "run"), (" up ", "concept"), ("tempo", "tag"), ("signal", "tag"),
    ("only for", "look"), ("after 1 second", "look"), ("behind", "look"), ("shows", "look"),
    ("when motion", "look"), ("quarterback says", "run"), ("toward", "run"), ("needs", "concept"),
    ("only to", "dress"), ("is Z", "concept"), ("H runs", "concept"), ("never left in", "dress"),
    ("> rest", "tag"), ("go to 2 outside", "tag"), ("at field", "look"), ("third, field", "look"),
    ("field #1 runs", "run"), ("when Quads", "concept"),
)  # fmt: skip
"""What a coordinator says on a sideline: words of a line, and the kind of block it stands in."""


@pytest.fixture(scope="module")
def blocks() -> list[str]:
    """Every block's text, what stands in quotes as a pair of them."""
    folder = Path(__file__).parents[1] / "playbooks"
    texts = [s.text for book in BOOKS for s in read_files(folder / book).sources]
    cut = (re.split(r"\n(?=[a-z])", re.sub(r'"[^"]*"|//.*', '""', text)) for text in texts)
    return [block for parts in cut for block in parts if block[:1].isalpha()]


def test_every_word_that_a_line_turns_on_is_used(blocks: list[str]) -> None:
    lines = [line for b in blocks for line in b.splitlines()[1:] if re.match(" {4}[^ ]", line)]
    used = {word for line in lines for word in line.split()}
    known = {word for kind in KINDS.values() for word in (*kind.turning, *kind.verbs)}
    assert known - used == HABITS | OTHERWISE


def test_what_a_coordinator_says_is_used(blocks: list[str]) -> None:
    for words, kind in SAID:
        assert any(words in b for b in blocks if b.startswith(f"{kind} ")), (kind, words)
