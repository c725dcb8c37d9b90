"""Every change that is made to a playbook is told, and nothing else: 400 drawn changes and more,
alone and three at once; a run makes a twelfth of them."""

from __future__ import annotations

import random
from functools import cache
from pathlib import Path

import pytest
from compare.edits import EDITS, Expected, Text
from sampling import every

from stemline.compare.comparing import compared
from stemline.compare.comparison import Comparison
from stemline.outside.texts import read_files
from stemline.session import Session
from stemline.source import Source

BOOK = Path(__file__).parents[2] / "playbooks/cedar-flats-lanterns"
ALONE, TOGETHER = 320, 120
_FORMATIONS = ("formations", "formations-backs", "formations-close", "formations-tight")
PART = (
    "book", *_FORMATIONS, "looks", "motions", "protections", "quick", "corners", "runs",
)  # fmt: skip
"""The files in which one change alone is made: every kind of definition in two fifths of the
calls, since each case reads its playbook anew."""


@cache
def _text(number: int) -> Text:
    """What ``number`` changes are made to: three at once to the whole playbook."""
    sources = (s for s in read_files(BOOK).sources if number > 1 or s.stem in PART)
    return Text(tuple((s.name, tuple(s.text.splitlines())) for s in sources))


def _session(text: Text) -> Session:
    sources = [Source(name, "\n".join(lines) + "\n") for name, lines in text.files]
    return Session(sources, "drawn")


@cache
def _before(number: int) -> Session:
    return _session(_text(number))


def _drawn(seed: int, number: int) -> tuple[Text, Expected]:
    """``number`` changes one after another, none of which touches what another has touched."""
    draw = random.Random(seed)
    text, whole = _text(number), Expected()
    left = number
    while left:
        made = draw.choice(EDITS)(text, draw)
        if made is None or made[1].touched & whole.touched:
            continue
        text, told = made
        whole = Expected(
            *(getattr(whole, part) | getattr(told, part) for part in Expected.__annotations__)
        )
        left -= 1
    return text, whole


def _told(found: Comparison) -> Expected:
    changes = found.definitions
    named = [c for c in changes if c.was is not None and c.now is not None]
    both = [(c.was, c.now) for c in named if c.was is not None and c.now is not None]
    return Expected(
        lines=frozenset(
            (c.one.title, line.was.text if line.was else "", line.now.text if line.now else "")
            for c in named
            for line in c.lines
        ),
        renamed=frozenset((was.title, now.name) for was, now in both if was.name != now.name),
        added=frozenset(c.one.title for c in changes if c.was is None),
        gone=frozenset(c.one.title for c in changes if c.now is None),
        roles=frozenset(role for c in named for role in c.roles),
    )


def _wrong(seed: int, number: int) -> str:
    text, expected = _drawn(seed, number)
    after = _session(text)
    if after.book is None or any(d.code.startswith("E1") for d in after.definitions):
        return f"{seed}: no playbook came of it"
    found = compared(_before(number), after)
    told, wrong = _told(found), []
    for part in ("renamed", "added", "gone", "roles", "lines"):
        wanted, got = getattr(expected, part), getattr(told, part)
        if wanted != got:
            wrong.append(f"{part}: wanted {sorted(wanted - got)}, told {sorted(got - wanted)}")
    if not expected.touched and not found.is_same:
        wrong.append("is not the same")
    return f"{seed}: {wrong}" if wrong else ""


@pytest.mark.parametrize("part", range(4))
def test_each_change_is_told_and_nothing_else(part: int) -> None:
    cases = range(part, ALONE, 4 * every(12))
    assert [line for seed in cases if (line := _wrong(seed, 1))] == []


@pytest.mark.parametrize("part", range(2))
def test_three_changes_at_once_are_told(part: int) -> None:
    cases = range(1000 + part, 1000 + TOGETHER, 2 * every(12))
    assert [line for seed in cases if (line := _wrong(seed, 3))] == []
