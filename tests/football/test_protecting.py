"""Who takes whom on a pass: the order of service, and what holds for every protection and rush."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from football.rush import PLACES, back, comes, down, free, half_slide, line, owners
from stemline.football.blocking.protecting import (
    Blocker,
    How,
    ProtectionRule,
    Rusher,
    pick_up,
    unblocked,
)
from stemline.football.field import Side
from stemline.geometry.paths import Point

L, R = Side.LEFT, Side.RIGHT
FOUR = [down("E", "5", R), down("T", "3", R), down("N", "1", L), down("J", "5", L)]


def five(rule: ProtectionRule) -> list[Blocker]:
    return line(**dict.fromkeys(PLACES, rule))


# The order of service.


def test_five_men_have_five() -> None:
    got = owners(five(ProtectionRule.MAN), [*FOUR, comes("M", "A", R)], None)
    assert sorted(got.values()) == ["E", "J", "M", "N", "T"]


def test_a_man_head_up_is_the_blockers_he_is_on_whichever_way_he_goes() -> None:
    nose = down("N", "0", R, "A")
    for toward in Side:
        assert owners(five(ProtectionRule.SLIDE), [nose], toward) == {"C": "N"}
        assert owners(half_slide(toward), [nose], toward) == {"C": "N"}


def test_two_through_one_gap_push_the_slide_out() -> None:
    rush = [down("E", "5", R), comes("S", "D", R)]
    assert owners(five(ProtectionRule.SLIDE), rush, R) == {"RG": "E", "RT": "S"}


OVERLOAD = [
    down("J", "5", L), down("N", "2i", L), comes("M", "A", R), down("T", "3", R),
    down("E", "5", R), comes("S", "D", R),
]  # fmt: skip
"""Four to the side of the slide, and nobody of the other side to spare."""


def test_a_slide_with_somebody_in_every_gap_cannot_be_pushed() -> None:
    assert free(half_slide(R), OVERLOAD, R) == ("S",)


def test_a_back_does_not_get_across_to_the_far_edge() -> None:
    men = [*half_slide(R), back(L)]
    assert free(men, OVERLOAD, R) == ("S",)
    assert owners(men, [*OVERLOAD[:-1], comes("S", "A", R)], R)["B"] in ("M", "S")


def test_a_named_defender_comes_before_a_nearer_one() -> None:
    rush = [*FOUR, comes("M", "A", L), comes("W", "D", L)]
    assert owners([*half_slide(R), back(L, wants=("W",))], rush, R)["B"] == "W"
    assert owners([*half_slide(R), back(L)], rush, R)["B"] == "M"


def test_the_edge_has_the_first_man_outside_the_line() -> None:
    rush = [down("J", "5", L), comes("W", "D", L)]
    got = owners([*line(), back(L, ProtectionRule.EDGE)], rush, R)
    assert got == {"LT": "J", "B": "W"}  # passed on: the tackle posts back on the inner one
    assert owners([back(L, ProtectionRule.EDGE)], rush, R) == {"B": "J"}


def test_a_hinge_closes_inside_before_it_turns_out() -> None:
    men = line(
        LG=ProtectionRule.HINGE,
        LT=ProtectionRule.HINGE,
        C=ProtectionRule.REACH,
        RG=ProtectionRule.REACH,
        RT=ProtectionRule.REACH,
    )
    assert owners(men, FOUR, R) == {"LG": "N", "LT": "J", "RG": "T", "RT": "E"}
    three = [down("E", "5", R), down("N", "0", R, "A"), down("J", "4i", L, "B")]
    assert owners(men, three, R) == {"LG": "J", "C": "N", "RT": "E"}


def test_a_screen_lets_its_rushers_by_and_counts_them() -> None:
    men = line(
        **dict.fromkeys(("LG", "C", "RG"), ProtectionRule.RELEASE),
        LT=ProtectionRule.MAN,
        RT=ProtectionRule.MAN,
    )
    taken = pick_up(men, FOUR, None)
    by = {t.rusher for t in taken if t.how is How.LET_BY}
    assert by == {"N", "T"}
    assert unblocked(FOUR, taken) == ()


def test_help_goes_to_one_man_each() -> None:
    taken = pick_up(five(ProtectionRule.SLIDE), [down("N", "0", R, "A")], R)
    assert [t.how for t in taken] == [How.GAP, How.HELP]


# What always holds.

_x = st.floats(-6, 6).map(lambda x: round(x, 2))


@st.composite
def rushes(draw: st.DrawFn) -> list[Rusher]:
    made = []
    for n in range(draw(st.integers(0, 9))):
        big = draw(st.booleans())
        x, aim = draw(_x), draw(_x)
        made.append(Rusher(f"D{n}", Point(x, 1 if big else 5), Point(aim, 0), big))
    return made


@st.composite
def protections(draw: st.DrawFn) -> tuple[list[Blocker], Side | None]:
    toward = draw(st.sampled_from([L, R, None]))
    rules = {label: draw(st.sampled_from(list(ProtectionRule)[:6])) for label in PLACES}
    men = line(**rules)
    for n in range(draw(st.integers(0, 2))):
        rule = draw(
            st.sampled_from([ProtectionRule.SCAN, ProtectionRule.EDGE, ProtectionRule.CHECK])
        )
        side = draw(st.sampled_from([L, R]))
        men.append(Blocker(f"B{n}", Point(draw(_x), -4 - n), rule, False, side))
    return men, toward


@given(protections(), rushes())
def test_every_rusher_has_one_owner_at_most_and_every_blocker_one_man(
    protection: tuple[list[Blocker], Side | None], rush: list[Rusher]
) -> None:
    men, toward = protection
    taken = pick_up(men, rush, toward)
    assert all(n == 1 for n in Counter(t.rusher for t in taken if t.owns).values())
    assert all(n == 1 for n in Counter(t.blocker for t in taken).values())
    owned = {t.rusher for t in taken if t.owns}
    assert {t.rusher for t in taken} == owned  # nobody helps on a man without an owner
    assert owned | {r.label for r in unblocked(rush, taken)} == {r.label for r in rush}


@given(protections(), rushes())
def test_one_more_rusher_than_blockers_is_counted(
    protection: tuple[list[Blocker], Side | None], rush: list[Rusher]
) -> None:
    men, toward = protection
    left = unblocked(rush, pick_up(men, rush, toward))
    assert len(left) >= len(rush) - len(men)


@given(protections(), rushes(), st.randoms(use_true_random=False))
def test_the_order_in_which_men_are_named_is_no_matter(
    protection: tuple[list[Blocker], Side | None], rush: list[Rusher], random: object
) -> None:
    men, toward = protection
    taken = set(pick_up(men, rush, toward))
    assert set(pick_up(men[::-1], rush[::-1], toward)) == taken


def mirrored(p: Point) -> Point:
    return Point(-p.x, p.y)


@pytest.mark.parametrize("toward", [L, R])
@pytest.mark.parametrize("rule", [ProtectionRule.SCAN, ProtectionRule.EDGE])
def test_the_other_way_is_the_mirror(toward: Side, rule: ProtectionRule) -> None:
    rush = [*FOUR, comes("M", "A", R), comes("W", "D", L), comes("S", "C", R)]
    men = [*half_slide(toward), back(toward.other, rule)]
    turned = {"LT": "RT", "LG": "RG", "RT": "LT", "RG": "LG"}
    other = [
        replace(
            b,
            label=turned.get(b.label, b.label),
            at=mirrored(b.at),
            side=b.side.other if b.side else None,
        )
        for b in men
    ]
    seen = [replace(r, at=mirrored(r.at), aim=mirrored(r.aim)) for r in rush]
    got = owners(men, rush, toward)
    assert {turned.get(b, b): r for b, r in got.items()} == owners(other, seen, toward.other)


def test_six_rushers_against_five_men_leave_one() -> None:
    """One more rusher than blockers is counted, whatever the five do."""
    rush = [*FOUR, comes("M", "A", R), comes("W", "B", L)]
    for rule in (ProtectionRule.MAN, ProtectionRule.SLIDE, ProtectionRule.BIG):
        assert len(free(five(rule), rush, R if rule is ProtectionRule.SLIDE else None)) == 1
