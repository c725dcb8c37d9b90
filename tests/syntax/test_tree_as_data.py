"""A tree as plain data: read back it is the tree, and what is no tree is none."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from stemline.source import Source
from stemline.syntax.parser import parse
from stemline.syntax.tree_as_data import as_data, from_data

ROOT = Path(__file__).parents[2]
TEXTS = sorted((*ROOT.glob("playbooks/*/*.play"), *ROOT.glob("grammar/starter/*/*.play"),
                *ROOT.glob("tests/corpus/*.play")))  # fmt: skip


def test_every_text_that_we_have_comes_back_as_it_was() -> None:
    assert len(TEXTS) > 60
    for path in TEXTS:
        source = Source(path.name, path.read_text("utf-8"))
        tree, _ = parse(source)
        held = json.loads(json.dumps(as_data(tree)))
        assert from_data(held, source) == tree, path
        other = Source("another", source.text)
        assert from_data(held, other) == parse(other)[0], "places are in the text read now"


def test_no_part_of_a_tree_is_left_out() -> None:
    """A text with every part a tree has: a dress-up of two runs lost its second, once kept."""
    said = "tag Wheel for Stick, Snag\n    flat runs wheel when zone or man, press // far\n"
    said += 'dress Sweep, "Now or Never"\n    in all but Trips with plain, A + B to both\n'
    said += "look Tite Quarters extends Tite, Quarters\n    M rushes A, either\n"
    said += "week 1 Larch Bay\n    openers\n        Trips Right Stick, first\n"
    source = Source("a", said)
    tree, found = parse(source)
    assert not found
    assert from_data(json.loads(json.dumps(as_data(tree))), source) == tree


ATOM = ["word", "a", 1, 2, 3]


@pytest.mark.parametrize(
    "held",
    [
        None, [], [[]], [[], [], []], [[7], []], [[["concept", ["phrase", ATOM], [], []]], []],
        [[["concept", ["nothing", ATOM], [], [], [1, 2, 3], []]], []],
        [[["concept", [">", ["phrase", ATOM]], [], [], [1, 2, 3], []]], []],
        [[["concept", ["phrase", ["verb", "a", 1, 2, 3]], [], [], [1, 2, 3], []]], []],
        [[["concept", ["phrase", ["word", 7, 1, 2, 3]], [], [], [1, 2, 3], []]], []],
        [[[7, ["phrase", ATOM], [], [], [1, 2, 3], []]], []],
        [[["concept", ["phrase", ATOM], [], [], [1, 2, 3.5], []]], []],
        [[["concept", ["phrase", ATOM], [], [], ["a", 2, 3], []]], []],
        [[["concept", ["phrase", ATOM], [], [], [1, 2, 3], [7]]], []],
        [[], [["// said", 1, [1, 2, 3]]]],
    ],
)  # fmt: skip
def test_what_is_no_tree_is_refused(held: object) -> None:
    with pytest.raises((ValueError, LookupError, TypeError)):
        from_data(held, Source("a", "a"))
