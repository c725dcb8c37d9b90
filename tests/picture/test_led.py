"""A man who leads runs beside the carrier's line, one who only follows ends where he joins it."""

from __future__ import annotations

import pytest

from picture.close_board import on_paper, opened
from picture.sample_plays import man, path
from picture.sample_runs import EVEN, PRO, blocks, job, run
from stemline.football.blocking.block_paths import Lane, block_path
from stemline.football.blocking.run_rules import BlockWay
from stemline.football.field import Side
from stemline.football.players import Position
from stemline.geometry.curves import far_from
from stemline.geometry.paths import Leg, Path, Point, crossing, polyline
from stemline.picture.lines.leading import followed, led
from stemline.picture.men.hole import find_hole
from stemline.picture.men.standing import stand
from stemline.picture.paper.surface import Board
from stemline.picture.ways.at_hole import DrawnHole
from stemline.picture.ways.detours import Round, detour
from stemline.theme import Size

BENT = path((0, -7), (2.0, -0.45, 0.2), (2.0, 0.45, 0.2), (3.6, 5))
ROUND = path((0, -7), (4.4, -1.8, 1.2), (6.1, 0.8, 1.2), (6.5, 7))


def lane(way: Path, aside: float) -> DrawnHole:
    return DrawnHole(way, {"F": aside}, way)


def board(size: Size = Size.FULL) -> Board:
    back = job("R", "Follow", BENT)
    return on_paper(run("Lead", EVEN, PRO, (back,)), size)[2]


@pytest.mark.parametrize("aside", [0.3, -0.3])
@pytest.mark.parametrize("way", [BENT, ROUND])
def test_a_leader_never_comes_onto_the_carriers_line_before_he_is_through(
    way: Path, aside: float
) -> None:
    """With a lane that only joins his first place and his last, he cuts the carrier's corner."""
    corner = next(leg.to for leg in way.legs if leg.to.y > 0)
    hole = crossing(way, 0.0)
    assert hole is not None
    block = path((hole, -4), (hole, -0.8, 0.3), (corner.x + 10 * aside, 6.0))
    drawn = polyline(led(block, "F", lane(way, aside), board()))
    carrier = polyline(way)
    drawn_line = Path(carrier[0], tuple(Leg(p) for p in carrier[1:]))
    beside = [p for p in drawn if 0.2 < p.y < 1.85]
    assert len(beside) > 2
    for p in beside:
        there = crossing(drawn_line, p.y)
        assert there is not None and (p.x - there) * aside > 0 and far_from(carrier, p) > 0.22


def test_his_own_turns_in_the_lane_are_left_out() -> None:
    block = path((0, -4), (2.0, -0.8, 0.3), (3.4, 0.7, 0.3), (4.3, 2.7, 0.3), (5.9, 6.0))
    drawn = led(block, "F", lane(BENT, 0.3), board())
    assert all(p.x < 3.3 for p in drawn.corners[:-1]) and drawn.end == block.end


def test_a_pull_to_a_lane_beyond_the_carrier_turns_up_right_below_it() -> None:
    slant = path((-3, -5), (2.0, -0.45, 0.2), (2.0, 5))
    pull = path((-2.6, 0), (-2.0, -1.5, 0.6), (1.4, -1.5, 0.6), (2.0, 0.3, 0.6), (2.6, 0.8))
    corners = led(pull, "F", lane(slant, 0.25), board()).corners
    below = [p for p in corners if p.y == -1.5]
    assert abs(below[-1].x - 2.25) < 1e-6


def test_a_man_who_ends_beside_the_carrier_follows_him_too() -> None:
    """He runs through the same gap: his way ends where it comes into the carrier's line."""
    on = board()
    push = path((0, -9), (1.7, -0.6, 1.0), (3.4, 5))
    ended = followed(push, lane(BENT, 0.0), on, ())
    assert ended.end.y < 0 and far_from(polyline(BENT), ended.end) < on.mark("lane")
    other = path((0, -9), (4.0, -0.6, 1.0), (4.2, 5))
    assert followed(other, lane(BENT, 0.0), on, ()) == other


def test_lanes_are_ordered_by_pulls_as_they_are_drawn() -> None:
    """Under centre a deep pull is drawn shallow: the back who comes from below is nearer."""
    backs = (man("Q", Position.QUARTERBACK, 0, -1), man("R", Position.BACK, -2, -6))
    men = (*(m for m in PRO if m.label not in "QR"), *backs)
    pull = ((-1.3, 0), (-0.7, -1.5, 0.6), (4.8, -1.5, 0.6), (5.4, 0.3, 0.6))
    tasks = (
        blocks("LG", EVEN, pull, ("W", "wrap")),
        blocks("F", EVEN, ((2, -6), (5.4, -0.8, 0.6)), ("M", "lead")),
        job("R", "Sweep", path((-2, -6), (0, -1.8, 1), (4.4, -1.8, 1), (6.0, 0.8, 1), (6.4, 7))),
    )
    play, symbols, on = opened(run("Sweep", EVEN, men, tasks), Size.FULL)
    hole = find_hole(play, symbols, on)
    assert hole is not None and abs(hole.lanes["F"]) < abs(hole.lanes["LG"])


def test_an_end_and_a_wing_let_a_guard_pull_through_between_them() -> None:
    men = (*PRO, man("H", Position.WING, 5.3, -1.0))
    pull = ((1.3, 0), (1.9, -1.0, 0.6), (4.6, -0.8, 0.6))
    tasks = (blocks("RG", EVEN, pull, ("S", "kick")), job("R", "Sweep", ROUND))
    play, _, on = on_paper(run("Sweep", EVEN, men, tasks), Size.THUMB)
    symbols = stand(play, on)
    wing, end = symbols["H"], symbols["Y"]
    white = wing.at.distance(end.at) - wing.edge - end.edge
    assert white > on.weight("block") + on.mark("clear")


def test_a_bend_between_two_men_who_stand_close_is_not_pushed_onto_either() -> None:
    left, right = Round(Point(1.75, 1.36), 0.73, 0.5), Round(Point(3.05, 1.6), 0.99, 0.76)
    line = (Round(Point(1.3, 0), 0.46, 0.37), Round(Point(3.93, 0), 1.11, 0.83))
    way = path((2.6, 0), (2.85, 3.27))
    drawn = polyline(detour(way, (*line, left, right), 1.5))
    assert (
        far_from(drawn, left.at) > 0.8 * left.hard and far_from(drawn, right.at) > 0.9 * right.hard
    )


def test_a_wrap_to_a_man_on_the_line_inside_the_hole_meets_him_from_inside() -> None:
    """He does not run around the end and back along the line of scrimmage."""
    through = Lane(5.4, (-3.9, 3.9), Side.RIGHT)
    guard = next(m for m in PRO if m.label == "LG")
    near = block_path(guard, BlockWay.WRAP, Point(0.85, 0.8), through, 1.5)
    assert max(p.x for p in near.corners) <= 0.85 and min(p.y for p in near.corners) >= -1.0
    off = block_path(guard, BlockWay.WRAP, Point(0.85, 4.5), through, 1.5)
    assert max(p.x for p in off.corners) == through.hole
    assert near.legs[-1] == Leg(Point(0.85, 0.8))
