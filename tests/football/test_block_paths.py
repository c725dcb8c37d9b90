"""Where pullers and men who arc go: around the end that the play goes to."""

from __future__ import annotations

from itertools import pairwise

import pytest

from stemline.football.blocking.block_paths import block_path, lane
from stemline.football.blocking.carrying import Hole, carry
from stemline.football.blocking.run_rules import BlockWay
from stemline.football.field import Side
from stemline.football.play import Man
from stemline.football.players import Position
from stemline.geometry.paths import Path, Point
from stemline.source import NOWHERE


def man(label: str, position: Position, x: float, y: float = 0.0) -> Man:
    return Man(label, position, Point(x, y), Point(x, y), y == 0.0, None, NOWHERE)


MEN = tuple(
    man(label, position, x)
    for label, position, x in (
        ("LT", Position.TACKLE, -2.6), ("LG", Position.GUARD, -1.3), ("C", Position.CENTRE, 0.0),
        ("RG", Position.GUARD, 1.3), ("RT", Position.TACKLE, 2.6),
        ("Y", Position.TIGHT_END, 3.9),
    )
)  # fmt: skip
GUARD = MEN[3]


def way(who: Man, how: BlockWay, to: Point, toward: Side = Side.RIGHT) -> Path:
    return block_path(who, how, to, lane(MEN, 4.5 * toward.value, toward), 1.0)


@pytest.mark.parametrize("x", [-1.0, 0.9, 1.3, 4.0, 9.0])
def test_a_pull_goes_around_the_playside_end_wherever_his_man_stands(x: float) -> None:
    widest = max(p.x for p in way(GUARD, BlockWay.PULL, Point(x, 4.5)).corners[:-1])
    assert widest > 3.9
    assert min(p.x for p in way(GUARD, BlockWay.PULL, Point(x, 4.5)).corners) >= min(x, 1.3)


def test_a_pull_to_a_man_outside_the_other_end_goes_around_that_one() -> None:
    corners = way(GUARD, BlockWay.PULL, Point(-7.0, 4.5)).corners
    assert min(p.x for p in corners[:-1]) < -2.6 and max(p.x for p in corners) == 1.3


def test_a_kick_of_a_man_off_the_line_turns_up_past_the_end() -> None:
    far = way(GUARD, BlockWay.KICK, Point(4.3, 5.0)).corners[-2]
    near = way(GUARD, BlockWay.KICK, Point(4.9, 0.8)).corners[-2]
    assert far.x > 3.9 and near.x == pytest.approx(3.5)


@pytest.mark.parametrize("toward", Side)
def test_a_back_behind_the_ball_arcs_to_the_playside(toward: Side) -> None:
    back = man("F", Position.FULLBACK, 0.0, -4.0)
    turn = way(back, BlockWay.ARC, Point(6.0 * toward.value, 5.0), toward).corners[1]
    assert turn.x * toward.value > 2.6


@pytest.mark.parametrize(("x", "aims"), [(2.5, 2.0), (2.5, 0.7), (-2.5, 2.0), (-2.5, 5.4)])
def test_a_back_behind_a_quarterback_under_centre_runs_straight_at_his_hole(
    x: float, aims: float
) -> None:
    back = man("F", Position.FULLBACK, x, -4.0)
    men = (*MEN, man("Q", Position.QUARTERBACK, 0.0, -1.0), back)
    corners = carry([Hole(aims, aims > 5)], back, men).corners
    ways = [b.x - a.x for a, b in pairwise(corners[:-1])]
    assert all(way * ways[0] > 0 for way in ways)
    assert all(b.y > a.y for a, b in pairwise(corners))
