"""Leaders cross each other, and the carrier, as little as may be."""

from __future__ import annotations

from picture.close_board import on_paper
from picture.sample_plays import path
from picture.sample_runs import EVEN, PRO, blocks, job, run
from stemline.football.play import Assignment
from stemline.geometry.paths import Path
from stemline.picture.men.leaders import lanes_of
from stemline.theme import Size

CARRY = path((0, -7), (2.0, -0.6, 1), (2.3, 9))


def lanes(*tasks: Assignment, carry: Path = CARRY) -> dict[str, float]:
    play = run("Lead", EVEN, PRO, (*tasks, job("R", "Follow", carry)))
    _, _, on = on_paper(play, Size.FULL)
    return lanes_of(play, carry, on)


def pull(label: str, start: float, depth: float, to: str) -> Assignment:
    way = ((start, 0), (start + 0.6, -depth, 0.6), (1.8, -depth, 0.6))
    return blocks(label, EVEN, way, (to, "wrap"))


def test_of_two_who_pull_to_one_side_the_shallow_one_turns_up_first() -> None:
    """They come from the left and block on the right: the shallow one beside the carrier's left
    man, whichever of them is named first."""
    for order in (1, -1):
        pulls = (pull("LG", -1.35, 0.8, "S"), pull("LT", -2.7, 1.5, "S"))[::order]
        made = lanes(*pulls)
        assert 0 < made["LG"] < made["LT"]


def test_one_who_blocks_out_has_the_outer_lane() -> None:
    made = lanes(
        blocks("F", EVEN, ((2.4, -4.2), (2.0, -0.8, 0.6)), ("C", "kick")),
        blocks("Y", EVEN, ((1.4, -5), (2.0, -0.8, 0.6)), ("S", "lead")),
    )
    assert made.keys() == {"F", "Y"}
    assert 0 < made["Y"] < made["F"]


def test_a_kick_that_would_lie_on_the_carrier_crosses_him_past_the_hole() -> None:
    """He comes from the right of the ball's way and kicks out a man on its left."""
    carry = path((0, -7), (-2.0, -0.6, 1), (-2.2, 9))
    kick = blocks("F", EVEN, ((0, -4), (-1.9, -0.5, 0.6)), ("J", "kick"))
    assert lanes(kick, carry=carry)["F"] > 0
    across = blocks("F", EVEN, ((6, -1.2), (-1.9, -0.9, 0.6)), ("J", "kick"))
    assert lanes(across, carry=carry)["F"] < 0
