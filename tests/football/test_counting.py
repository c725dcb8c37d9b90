"""Counting receivers from outside in: what decides strength, shape and every rank."""

from __future__ import annotations

from random import Random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from stemline.football.field import Side
from stemline.football.offence.counting import Count, count, ranked, tight_ends
from stemline.football.offence.landmarks import END_SPLIT, TACKLE_SPLIT
from stemline.football.play import Man
from stemline.football.players import Position
from stemline.geometry.paths import Point
from stemline.source import NOWHERE

LINE = (-2.6, -1.3, 0.0, 1.3, 2.6)


def man(
    label: str,
    x: float,
    y: float = -1,
    *,
    on_line: bool = False,
    position: Position = Position.SLOT,
    at: float | None = None,
) -> Man:
    """A man at the snap; ``at`` is where he lined up when he moved."""
    start = Point(x if at is None else at, y)
    return Man(label, position, start, Point(x, y), on_line, None, NOWHERE)


def team(*men: Man) -> tuple[Man, ...]:
    tackles = tuple(
        man(f"L{i}", x, 0, on_line=True, position=Position.TACKLE) for i, x in enumerate(LINE)
    )
    return (*tackles, man("Q", 0, -5, position=Position.QUARTERBACK), *men)


def counted(*men: Man, called: Side = Side.RIGHT) -> Count:
    return count(team(*men), called)


def test_from_outside_in_on_each_side() -> None:
    made = counted(man("A", 20), man("B", 6), man("C", 12), man("D", -18), man("E", -8))
    assert made.right == ("A", "C", "B")
    assert made.left == ("D", "E")
    assert made.strong is Side.RIGHT and made.weak is Side.LEFT
    assert (made.shape, made.shape_word) == ((3, 2), "3x2")
    assert made.on(Side.LEFT) == made.left and made.on(Side.RIGHT) == made.right


def test_the_side_with_more_receivers_is_strong_whatever_is_called() -> None:
    men = (man("A", 20), man("B", -18), man("C", -8))
    for called in Side:
        made = counted(*men, called=called)
        assert made.strong is Side.LEFT
        assert made.shape == (2, 1)


@pytest.mark.parametrize("called", Side)
def test_a_tie_is_strong_to_the_called_side(called: Side) -> None:
    made = counted(man("A", 20), man("B", 6), man("C", -20), man("D", -6), called=called)
    assert made.strong is called
    assert made.shape == (2, 2)


def test_nobody_out_is_a_tie_too() -> None:
    made = counted(man("R", -2, -5), called=Side.LEFT)
    assert made.strong is Side.LEFT
    assert (made.shape, made.backs) == ((0, 0), ("R",))


def test_in_a_stack_the_man_nearer_the_line_counts_first() -> None:
    made = counted(man("A", 12, -2.5), man("B", 12, 0, on_line=True), man("C", 6))
    assert made.right == ("B", "A", "C")
    assert counted(man("B", 12, 0), man("A", 12, -2.5), man("C", 6)).right == ("B", "A", "C")


def test_a_stack_on_the_left() -> None:
    made = counted(man("A", -12, -2.5), man("B", -12, -1), man("C", -12.5, -4))
    assert made.left == ("B", "A", "C")


@pytest.mark.parametrize("called", Side)
@pytest.mark.parametrize(
    ("outside", "deep", "first"),
    [(0.5, 3, "H"), (0.99, 3, "H"), (1, 3, "S"), (0.5, 1.5, "H"), (0.5, 1.4, "S"), (-0.5, 3, "H")],
)
def test_the_hind_man_of_a_stack_is_second_though_he_stands_a_little_wider(
    called: Side, outside: float, deep: float, first: str
) -> None:
    """From a yard on it is a bunch, and who stands but a yard deeper is a wing: from outside in."""
    side = called.value
    made = counted(
        man("S", side * (9 + outside), -deep), man("H", side * 9, 0), man("Z", side * 20, -1),
        man("Y", side * 4, 0, on_line=True), called=called,
    )  # fmt: skip
    assert made.on(called)[:2] == ("Z", first)
    assert made.on(called)[3] == "Y"


def test_three_in_a_stack_count_from_the_line_back_and_pass_nobody_who_is_wider() -> None:
    made = counted(man("A", 12.5, -5), man("B", 12.2, -3), man("C", 12, -1), man("D", 12.9, -1))
    assert made.right == ("D", "C", "B", "A")


def test_two_men_who_stand_alike_count_by_letter_so_that_the_count_is_sure() -> None:
    assert counted(man("B", 12), man("A", 12)).right == ("A", "B")


@pytest.mark.parametrize(
    ("x", "back"), [(2.0, True), (TACKLE_SPLIT, True), (2.7, False), (0, True)]
)
def test_a_man_inside_the_tackles_is_a_back(x: float, back: bool) -> None:
    made = counted(man("A", x, -5), man("B", 20))
    assert (made.backs == ("A",)) is back
    assert (len(made.right) == 1) is back


def test_backs_from_the_deepest() -> None:
    made = counted(man("F", 1, -4), man("R", 0, -7), man("G", -1, -4))
    assert made.backs == ("R", "F", "G")


def test_the_quarterback_and_the_line_are_never_counted() -> None:
    wide = (man("Q2", 20, position=Position.QUARTERBACK), man("T", 10, position=Position.TACKLE))
    made = count(wide, Side.RIGHT)
    assert made.right == made.backs == ()


def test_a_man_counts_where_he_is_at_the_snap() -> None:
    made = counted(man("A", -6, at=6), man("B", 20), man("C", -20))
    assert made.left == ("C", "A")
    assert made.strong is Side.LEFT


def test_ranks_are_written_on_the_men() -> None:
    men = team(man("A", 20), man("B", 6), man("C", -18), man("R", 0, -7))
    after = {m.label: m.rank for m in ranked(men, count(men, Side.RIGHT))}
    ranks = {k: (r.side, r.number) for k, r in after.items() if r}
    assert ranks == {"A": (Side.RIGHT, 1), "B": (Side.RIGHT, 2), "C": (Side.LEFT, 1)}


@pytest.mark.parametrize(
    ("x", "on_line", "tight"),
    [
        (END_SPLIT, True, True),
        (-END_SPLIT, True, True),
        (4.6, True, True),  # the tackle stands at 2.6
        (4.7, True, False),
        (END_SPLIT, False, False),
        (20, True, False),
    ],
)
def test_a_tight_end_is_one_by_his_place(x: float, on_line: bool, tight: bool) -> None:
    """Common practice, no published source: on the line, within two yards of the tackle."""
    for letter in ("Y", "X"):
        men = team(man(letter, x, 0, on_line=on_line, position=Position.WIDEOUT))
        assert (tight_ends(men) == (letter,)) is tight


spots = st.lists(
    st.tuples(st.integers(-30, 30), st.integers(-8, 0)), min_size=1, max_size=6, unique=True
)


@given(spots, st.sampled_from(list(Side)), st.randoms(use_true_random=False))
def test_the_order_of_the_men_means_nothing(
    places: list[tuple[int, int]], called: Side, random: Random
) -> None:
    men = [man(chr(65 + i), x, y) for i, (x, y) in enumerate(places)]
    shuffled = random.sample(men, len(men))
    assert count(team(*men), called) == count(team(*shuffled), called)


@given(spots, st.sampled_from(list(Side)))
def test_every_man_is_counted_once(places: list[tuple[int, int]], called: Side) -> None:
    men = [man(chr(65 + i), x, y) for i, (x, y) in enumerate(places)]
    made = count(team(*men), called)
    assert sorted((*made.left, *made.right, *made.backs)) == [m.label for m in men]
    assert made.shape[0] >= made.shape[1]


@given(spots, st.sampled_from(list(Side)))
def test_a_mirror_changes_the_sides_and_nothing_else(
    places: list[tuple[int, int]], called: Side
) -> None:
    men = [man(chr(65 + i), x, y) for i, (x, y) in enumerate(places)]
    seen = [man(chr(65 + i), -x, y) for i, (x, y) in enumerate(places)]
    one, two = count(team(*men), called), count(team(*seen), called.other)
    assert (one.left, one.right) == (two.right, two.left)
    assert one.strong is two.strong.other
    assert (one.backs, one.shape) == (two.backs, two.shape)


@pytest.mark.parametrize("called", Side)
@pytest.mark.parametrize("positions", ["bf", "fb"])
def test_of_two_at_one_depth_a_back_comes_before_a_fullback(called: Side, positions: str) -> None:
    kinds = {"b": Position.BACK, "f": Position.FULLBACK}
    men = [man("AB"[i], 4 * i - 2, -5, position=kinds[p]) for i, p in enumerate(positions)]
    made = counted(*men, called=called)
    assert made.backs == (("A", "B") if positions == "bf" else ("B", "A"))


@pytest.mark.parametrize(("called", "backs"), [(Side.RIGHT, ("B", "A")), (Side.LEFT, ("A", "B"))])
def test_of_two_alike_at_one_depth_the_one_to_the_called_side_comes_first(
    called: Side, backs: tuple[str, ...]
) -> None:
    men = [man("A", -2, -5, position=Position.BACK), man("B", 2, -5, position=Position.BACK)]
    assert counted(*men, called=called).backs == backs


def test_a_stated_position_comes_before_depth() -> None:
    back = man("A", 0, -4, position=Position.BACK)
    full = man("B", 0, -7, position=Position.FULLBACK)
    assert counted(back, full).backs == ("A", "B")
