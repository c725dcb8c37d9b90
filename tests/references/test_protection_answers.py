"""Protections against fronts, worked out by hand by the published rule; the back works to the right
and the slide goes left.

The *rules*: "Six-Man Slide Pass Protection", coaching blog, July 2015; "Understanding BOB
Protection vs. the 3-4, Part 2", December 2010, and "Double A Gap Mug", August 2020, both of a blog
on pressures. The *cells* are those rules worked through for the front: common practice, no
published source, where no other stands beside them.
"""

from __future__ import annotations

from dataclasses import replace

import pytest
from football.rush import back, comes, down, free, half_slide, line, owners

from stemline.football.blocking.protecting import Blocker, ProtectionRule, Rusher
from stemline.football.field import Side
from stemline.geometry.paths import Point

L, R = Side.LEFT, Side.RIGHT

HALF = [*half_slide(L), back(R)]
FULL = [*line(), back(R, ProtectionRule.EDGE)]
FIVE = line(**dict.fromkeys(("LT", "LG", "C", "RG", "RT"), ProtectionRule.BIG))
BIG = [*FIVE, back(R)]

OVER = [down("J", "5", L), down("N", "1", L), down("T", "3", R), down("E", "5", R)]
ODD = [down("D", "5", L), down("N", "0", R), down("E", "5", R)]
STACK = [down("D", "4", L), down("N", "0", R), down("E", "4", R)]
BEAR = [down("J", "9", L), down("TL", "3", L), down("N", "0", R), down("TR", "3", R),
        down("E", "9", R)]  # fmt: skip
MUG = [down("J", "5", L), down("N", "3", L), down("T", "3", R), down("E", "5", R)]
TITE = [down("D", "4i", L), down("N", "0", R), down("E", "4i", R)]

# Protection, rush, who comes besides, who has whom ("" has nobody), who is free.
CASES: dict[str, tuple[list[Blocker], list[Rusher], list[Rusher], dict[str, str], set[str]]] = {
    "half slide, over, both backers": (
        HALF, OVER, [comes("M", "A", R), comes("W", "B", L)],
        {"RT": "E", "RG": "T", "C": "N", "LG": "W", "LT": "J", "B": "M"}, set()),
    "half slide, over, two at the back": (
        HALF, OVER, [comes("M", "A", R), comes("S", "D", R)],
        {"RT": "E", "RG": "T", "B": "M"}, {"S"}),
    "half slide, odd, near backer": (
        HALF, ODD, [comes("M", "B", R)],
        {"RT": "E", "LT": "D", "B": "M"}, set()),
    "half slide, odd, outside man to the slide": (
        HALF, ODD, [comes("J", "D", L)],
        {"RT": "E", "LT": "J", "LG": "D"}, set()),
    "half slide, bear": (
        HALF, BEAR, [comes("M", "B", R)],
        {"RT": "E", "RG": "TR", "C": "N", "LG": "TL", "LT": "J", "B": "M"}, set()),
    "half slide, double A": (
        HALF, MUG, [comes("M", "A", R), comes("W", "A", L)],
        {"RT": "E", "RG": "T", "C": "W", "B": "M", "LG": "N", "LT": "J"}, set()),
    "half slide, stack, two outside the slide: six block five": (
        HALF, STACK, [comes("W", "C", L), comes("S", "D", L)],
        {"RG": "N", "C": "D", "LG": "W", "LT": "S", "RT": "E"}, set()),
    "full slide, over": (
        FULL, OVER, [comes("M", "A", R), comes("W", "B", L)],
        {"RT": "T", "RG": "M", "C": "N", "LG": "W", "LT": "J", "B": "E"}, set()),
    "full slide, double A": (
        FULL, MUG, [comes("M", "A", R), comes("W", "A", L)],
        {"RT": "T", "RG": "M", "C": "W", "LG": "N", "LT": "J", "B": "E"}, set()),
    "full slide, tite, double A: nobody inside while a tackle stands by": (
        FULL, TITE, [comes("M", "A", R), comes("W", "A", L)],
        {"RT": "E", "RG": "M", "LT": "D"}, set()),
    "big on big, over": (
        BIG, OVER, [comes("M", "A", R), comes("W", "B", L)],
        {"RT": "E", "RG": "T", "LG": "N", "LT": "J", "C": "M", "B": "W"}, set()),
    "big on big, bear": (
        BIG, BEAR, [comes("M", "B", R)],
        {"RT": "E", "RG": "TR", "C": "N", "LG": "TL", "LT": "J", "B": "M"}, set()),
    "big on big, double A": (
        BIG, MUG, [comes("M", "A", R), comes("W", "A", L)],
        {"RT": "E", "RG": "T", "C": "M", "LG": "N", "LT": "J", "B": "W"}, set()),
    "five, over, both backers: the one who is not counted is the passer's": (
        FIVE, OVER, [comes("M", "A", R), comes("W", "B", L)],
        {"RT": "E", "RG": "T", "C": "M", "LG": "N", "LT": "J"}, {"W"}),
    "five, double A: the centre has the one who is counted": (
        FIVE, MUG, [comes("M", "A", R), comes("W", "A", L)],
        {"RT": "E", "RG": "T", "C": "M", "LG": "N", "LT": "J"}, {"W"}),
    "full slide, bear: the second backer is over the count": (
        FULL, BEAR, [comes("M", "A", R), comes("W", "C", R)],
        {"RT": "TR", "RG": "M", "C": "N", "LG": "TL", "LT": "J"}, {"E"}),
    "full slide, odd, nobody in the gap of the last man: he has the end, the back the next": (
        FULL, ODD, [comes("S", "D", R)],
        {"C": "N", "RT": "E", "B": "S"}, set()),
    "half slide, over, four to the slide: the widest": (
        HALF, OVER, [comes("W", "B", L), comes("B", "D", L)],
        {"RT": "E", "RG": "T", "C": "N", "LG": "W", "LT": "J"}, {"B"}),
    "half slide, seven come: the widest and no inner man": (
        HALF, OVER, [comes("M", "A", R), comes("W", "B", L), comes("S", "D", R)],
        {"RT": "E", "RG": "T", "C": "N", "LG": "W", "LT": "J", "B": "M"}, {"S"}),
}  # fmt: skip


@pytest.mark.parametrize("case", CASES)
def test_the_line_coach_agrees(case: str) -> None:
    blockers, front, others, wanted, left = CASES[case]
    rush = [*front, *others]
    by_count = blockers in (BIG, FIVE)
    toward, point = (None, "M") if by_count else (L, "")
    got = owners(blockers, rush, toward, point)
    assert {man: got.get(man, "") for man in wanted} == wanted
    assert {r.label for r in rush} - set(got.values()) == left


@pytest.mark.parametrize("toward", [None, L, R])
@pytest.mark.parametrize("rule", [ProtectionRule.SCAN, ProtectionRule.CHECK])
def test_the_line_keeps_its_front_where_the_back_has_the_next_backer(
    rule: ProtectionRule, toward: Side | None
) -> None:
    """Big on big: the five on the four down men and the declared one, the back on the backer whom
    he is told, off the edge or inside; who is counted with the line is the line's all the same."""
    edge = [*FIVE, back(L, rule, wants=("W", "M"))]
    for lane in ("B", "C", "D"):
        got = owners(edge, [*OVER, comes("W", lane, L)], toward)
        assert got.pop("LG", "") == "N" or got.pop("C") == "N"  # the nearer, where none else comes
        assert got == {"LT": "J", "RG": "T", "RT": "E", "B": "W"}
    got = owners(edge, [*OVER, comes("M", "A", R)], toward, "M")
    assert got == {"LT": "J", "LG": "N", "C": "M", "RG": "T", "RT": "E"}


def test_who_comes_free_of_a_fire_zone_at_the_back_is_the_outer_of_two() -> None:
    """ "Firezone Pressure to Overload the RB", blog on pressures, August 2020."""
    rush = [down("N", "1", L), down("T", "3", R, "A"), down("E", "5", R, "B"),
            comes("M", "C", R), comes("S", "D", R)]  # fmt: skip
    got = owners(HALF, rush, L)
    assert (got["RG"], got["RT"], got["B"]) == ("T", "E", "M")
    assert free(HALF, rush, L) == ("S",)


@pytest.mark.parametrize(("x", "whom"), [(0.0, "J"), (2.0, None)])
def test_a_back_behind_the_ball_has_the_edge_that_an_unbalanced_line_leaves(
    x: float, whom: str | None
) -> None:
    """Both tackles on the right against a bear: five rush, six are there, and the sixth is he who
    stands behind the ball. From beside the quarterback the edge is too far. Common practice, no
    published source."""
    men = [
        replace(b, at=Point(3.9, 0), rule=ProtectionRule.MAN) if b.label == "LT" else b
        for b in half_slide(L)
    ]
    helper = replace(back(R), at=Point(x, -5))
    assert owners([*men, helper], BEAR, L).get("B") == whom
