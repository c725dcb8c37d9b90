"""Protections against published coaching texts: the rule as the coach wrote it, then his case."""

from __future__ import annotations

from football.rush import back, comes, down, free, half_slide, line, owners

from stemline.football.blocking.protecting import Blocker, ProtectionRule
from stemline.football.field import Side
from stemline.geometry.paths import Point

L, R = Side.LEFT, Side.RIGHT

# Blitzology, "Understanding 1/2 slide protection", 2 March 2010: the first uncovered lineman starts
# the slide, the man side blocks man, the back has a dual read of two linebackers, inside out.

UNCOVERED = [down("E", "5", L), down("T", "3", L), down("N", "1", L), down("J", "5", R)]
COVERED = [down("E", "5", L), down("T", "1", L), down("N", "2i", R), down("J", "5", R)]
SIX = [*half_slide(L), back(R)]


def test_an_uncovered_guard_joins_the_slide() -> None:
    """He has the A gap, the tackle is man on the end, and the back has the other linebacker."""
    got = owners(SIX, [*UNCOVERED, comes("M", "A", R), comes("W", "D", R)], L)
    assert got == {"RG": "M", "C": "N", "LG": "T", "LT": "E", "RT": "J", "B": "W"}


def test_a_covered_guard_is_man_on_the_nose() -> None:
    got = owners(SIX, COVERED, L)
    assert got == {"RG": "N", "RT": "J", "C": "T", "LT": "E"}


def test_both_linebackers_of_the_man_side_are_hot_and_the_back_has_the_inside_one() -> None:
    rush = [*COVERED, comes("M", "B", R), comes("W", "D", R)]
    assert owners(SIX, rush, L)["B"] == "M"
    assert free(SIX, rush, L) == ("W",)


def test_one_linebacker_to_the_slide_is_picked_up_and_two_are_hot() -> None:
    one = [*UNCOVERED, comes("S", "D", L)]
    assert free(SIX, one, L) == ()
    assert owners(SIX, one, L) == {"RG": "N", "C": "T", "LG": "E", "LT": "S", "RT": "J"}
    assert len(free(SIX, [*one, comes("M", "B", L)], L)) == 1


# Olineskills, "Summer OTAs week 5", 2018: on the man side the guard has the first on the line and
# the tackle the second, whatever their alignment; centre A, guard B, tackle C gap on the other; the
# back checks the man side. "Linemen on linemen."


def test_the_man_side_counts_from_the_ball_whatever_the_alignment() -> None:
    even = [down("E", "5", L), down("N", "1", L), down("T", "3", R), down("J", "5", R)]
    odd = [down("E", "5", L), down("N", "0", R, "A"), down("T", "5", R), down("J", "9", R)]
    inside = [down("E", "5", L), down("N", "0", L, "A"), down("T", "2i", R), down("J", "4i", R)]
    for rush in (even, odd, inside):
        got = owners(SIX, rush, L)
        assert (got["RG"], got["RT"]) == ("T", "J")
        assert (got["C"], got["LT"]) == ("N", "E")
        assert "B" not in got


def test_the_slide_has_the_gaps_in_order() -> None:
    rush = [comes("a", "A", L), comes("b", "B", L), comes("c", "C", L)]
    assert owners(SIX, rush, L) == {"C": "a", "LG": "b", "LT": "c"}


# Ring, "Pass protection scheme 101, part 2", 2014: in a full slide each lineman has the space from
# his nose to the nose of his partner, and a back fills on the side away from it.


def test_a_full_slide_goes_from_nose_to_nose() -> None:
    full = [*line(), back(L, ProtectionRule.EDGE)]
    rush = [down("J", "5", L), down("T", "2", L), down("N", "2", R), down("E", "4", R)]
    got = owners(full, rush, R)
    assert got == {"B": "J", "LG": "T", "RG": "N", "RT": "E"}


def test_inside_pressure_meets_linemen_in_a_full_slide() -> None:
    """The merit that the text names: both A gaps have linemen in them."""
    full = [*line(), back(L, ProtectionRule.EDGE)]
    rush = [down("J", "5", L), down("T", "3", L), down("N", "3", R), down("E", "5", R),
            comes("M", "A", R), comes("W", "A", L)]  # fmt: skip
    got = owners(full, rush, R)
    assert (got["C"], got["LG"], got["B"]) == ("M", "W", "J")
    assert free(full, rush, R) == ()


# Savage, "Pass protection: the art of the slide": with the five alone the edge away from the slide
# can be left open; a back or a tight end closes it.


def test_five_who_slide_leave_the_edge_behind_them_open() -> None:
    rush = [down("J", "5", L), down("T", "3", L), down("N", "1", R), down("E", "5", R)]
    assert free(line(), [*rush, comes("M", "B", R)], R) == ("J",)
    assert free([*line(), back(L, ProtectionRule.EDGE)], [*rush, comes("M", "B", R)], R) == ()


# Gridiron R&D, "Six-man slide pass protection", 2015: an uncovered guard behind the slide posts, so
# that he can wall off whoever comes his way.


def test_a_lineman_with_nobody_posts_back_to_the_gap_behind_him() -> None:
    rush = [down("J", "5", L), down("E", "5", R), down("N", "1", R), comes("W", "B", L)]
    four = line(LT=ProtectionRule.MAN)
    assert owners(four, rush, R) == {"LT": "J", "LG": "W", "C": "N", "RT": "E"}


# Big on big. Common practice, no published source: the four of the front and the linebacker named
# the middle one are the line's, the back has the next one.


def test_big_on_big_counts_the_middle_linebacker_with_the_front() -> None:
    men = [
        *line(**dict.fromkeys(("LT", "LG", "C", "RG", "RT"), ProtectionRule.BIG)),
        back(L, wants=("W",)),
    ]
    rush = [down("J", "5", L), down("N", "1", L), down("T", "3", R), down("E", "5", R),
            comes("M", "A", R), comes("W", "B", L)]  # fmt: skip
    got = owners(men, rush, None, "M")
    assert got["B"] == "W"
    assert "M" in {got[x] for x in ("LG", "C", "RG")}


def test_seven_men_close_both_edges() -> None:
    """Five, the back inside and the tight end on the edge. Common practice, no published source."""
    end = Blocker("Y", Point(3.9, 0), ProtectionRule.EDGE, True, R)
    men = [*half_slide(L), back(R), end]
    rush = [*COVERED, comes("M", "B", R), comes("S", "D", R), comes("W", "D", L)]
    got = owners(men, rush, L)
    assert (got["Y"], got["B"]) == ("S", "M")
