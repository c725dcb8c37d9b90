"""Feet, protections, blocks and defenders: closed lists with words for each."""

from __future__ import annotations

import pytest
from together import together

from stemline.football.blocking.block_names import BLOCKS, DEFENDERS, PROTECTIONS
from stemline.football.field import Side
from stemline.football.offence.quarterback import FEET, MOVING, step
from stemline.football.play import Step
from stemline.football.players import Position


@together("name", [n for n in FEET if n not in MOVING])
@together("hand", [True, False])
def test_a_step_on_the_spot_knows_no_hand(name: str, hand: bool) -> None:
    assert {step(name, side, hand) for side in Side} == {Step(name, FEET[name])}


@pytest.mark.parametrize("name", MOVING)
def test_a_launch_is_set_by_its_side(name: str) -> None:
    """Common practice, no published source: a right-hander to his left gets depth first."""
    right, left = step(name, Side.RIGHT, True), step(name, Side.LEFT, True)
    assert (right.side, left.side) == (Side.RIGHT, Side.LEFT)
    assert right.words.startswith(f"{FEET[name]} to the right: turn the hips upfield")
    assert left.words.startswith(f"{FEET[name]} to the left: get depth first")


@together("name", MOVING)
@together("side", Side)
@together("faked", [*Side, None])
def test_only_a_boot_that_leaves_the_fake_says_so(
    name: str, side: Side, faked: Side | None
) -> None:
    words = step(name, side, True, faked).words
    assert ("away from the fake" in words) == (name == "boot" and faked is side.other)
    assert words.count(side.word) == 1 and side.other.word not in words


@pytest.mark.parametrize("name", MOVING)
def test_the_other_hand_turns_the_manner_around(name: str) -> None:
    def manner(side: Side, right_handed: bool) -> str:
        return step(name, side, right_handed).words.split(": ")[1]

    assert manner(Side.RIGHT, True) == manner(Side.LEFT, False)
    assert manner(Side.LEFT, True) == manner(Side.RIGHT, False)
    assert manner(Side.RIGHT, True) != manner(Side.LEFT, True)


def test_every_word_of_the_lists_is_said() -> None:
    blocks = {name: job.words for name, job in BLOCKS.items()}
    for table in (FEET, blocks, PROTECTIONS):
        for name, words in table.items():
            assert name == name.casefold() and words.strip() == words and words
    assert len(set(DEFENDERS)) == len(DEFENDERS)


def test_a_block_is_one_or_two_sentences_for_the_table() -> None:
    for words in (*(job.words for job in BLOCKS.values()), *PROTECTIONS.values()):
        assert words[0].isupper() and words.endswith(".")


@together("position", Position)
def test_the_five_inside_are_the_line(position: Position) -> None:
    inside = {Position.TACKLE, Position.GUARD, Position.CENTRE}
    assert position.interior == (position in inside)
