"""Two coaches' drawn changes to one playbook, joined: all of both are in it, or a conflict is
told."""

from __future__ import annotations

import random
from collections import Counter
from functools import cache

import pytest
from compare.edits import (
    Text,
    another_name,
    another_number,
    another_saying,
    new_tag,
    no_sentence,
)
from compare.test_edits import _text
from sampling import every

from stemline.compare.definitions import definitions
from stemline.source import Source
from stemline.syntax.joining import merge
from stemline.syntax.parser import parse
from stemline.syntax.tree import Document

CHANGES = (another_number, another_saying, no_sentence, new_tag, another_name)
"""What each coach may do: all that is no order of lines."""
PAIRS = 40
_Lines = Counter[tuple[str, ...]]


@cache
def _tree(name: str, lines: tuple[str, ...]) -> Document:
    document, found = parse(Source(name, "\n".join(lines) + "\n"))
    assert not found, (name, found[0].message)
    return document


def _said(text: Text) -> _Lines:
    found = definitions(_tree(*file) for file in text.files).values()
    lines = Counter((d.title, *line.alike) for d in found for line in d.lines)
    return lines + Counter((d.title, d.parent) for d in found)


def _changed(seed: int) -> tuple[Text, frozenset[str]]:
    draw = random.Random(seed)
    text = _text(1)
    while True:
        if made := draw.choice(CHANGES)(text, draw):
            return made[0], made[1].touched


@pytest.mark.parametrize("seed", range(3))
def test_what_two_coaches_changed_is_all_in_what_is_joined(seed: int) -> None:
    base = _text(1)
    joined = 0
    for pair in range(0, PAIRS, every(4)):
        first = 10_000 * seed + 2 * pair
        (ours, mine), (theirs, yours) = _changed(first), _changed(first + 1)
        made = [
            merge(_tree(*base.files[n]), _tree(*ours.files[n]), _tree(*theirs.files[n]))
            for n in range(len(base.files))
        ]
        if any(each.conflicts for each in made):
            assert mine & yours or _renames(mine | yours), (first, mine, yours)
            continue
        joined += 1
        files = zip(base.files, made, strict=True)
        text = Text(tuple((f[0], tuple(m.text.splitlines())) for f, m in files))
        was, a, b = _said(base), _said(ours), _said(theirs)
        assert _said(text) == was + ((a - was) | (b - was)) - ((was - a) | (was - b)), first
    assert joined > PAIRS / every(4) / 2


def _renames(touched: frozenset[str]) -> bool:
    return any(" Zz" in name for name in touched)
