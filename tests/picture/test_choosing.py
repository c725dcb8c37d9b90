"""The best choice of all, against trying every one."""

from __future__ import annotations

import itertools

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from stemline.picture.labels import choosing
from stemline.picture.labels.choosing import CheapestFirst, choose

COST = st.integers(0, 40).map(lambda n: n / 4)
Pairs = dict[tuple[int, int, int, int], float]


def whole(costs: list[list[float]], pairs: Pairs, taken: tuple[int, ...]) -> float:
    own = sum(row[k] for row, k in zip(costs, taken, strict=True))
    return own + sum(
        pairs.get((i, taken[i], j, taken[j]), 0.0)
        for i, j in itertools.combinations(range(len(taken)), 2)
    )


@st.composite
def problems(draw: st.DrawFn) -> tuple[list[list[float]], Pairs]:
    """A few labels with a few places each; about a third of the pairs lie on each other."""
    costs = draw(st.lists(st.lists(COST, min_size=1, max_size=4), min_size=1, max_size=5))
    pairs = {
        (i, k, j, at): 25.0
        for i, j in itertools.combinations(range(len(costs)), 2)
        for k in range(len(costs[i]))
        for at in range(len(costs[j]))
        if draw(st.integers(0, 2)) == 0
    }
    return costs, pairs


def choice(costs: list[list[float]], pairs: Pairs) -> tuple[int, ...]:
    def together(i: int, k: int, j: int, at: int) -> float:
        return pairs.get((i, k, j, at) if i < j else (j, at, i, k), 0.0)

    return choose([CheapestFirst([0.0] * len(own), own.__getitem__) for own in costs], together)


@given(st.lists(st.tuples(COST, COST), max_size=8), COST)
def test_places_come_by_cost_and_none_is_worked_out_that_its_rank_rules_out(
    drawn: list[tuple[float, float]], most: float
) -> None:
    ranks, asked = [rank for rank, _ in drawn], []

    def cost(k: int) -> float:
        asked.append(k)
        return sum(drawn[k])

    places = CheapestFirst(ranks, cost)
    by_cost = sorted((sum(both), k) for k, both in enumerate(drawn))
    under = [place for place in by_cost if place[0] <= most]
    assert places.at_most(most) == under
    last = by_cost[len(under)][0] if len(under) < len(by_cost) else float("inf")
    assert sorted(asked) == [k for k, rank in enumerate(ranks) if rank <= last]
    assert list(places) == by_cost


@settings(deadline=None)
@given(problems())
def test_no_other_choice_costs_less(problem: tuple[list[list[float]], Pairs]) -> None:
    costs, pairs = problem
    best = min(
        whole(costs, pairs, taken) for taken in itertools.product(*(range(len(c)) for c in costs))
    )
    assert abs(whole(costs, pairs, choice(costs, pairs)) - best) < 1e-6


def test_a_descent_alone_would_stay_where_two_must_move_at_once() -> None:
    costs = [[0.0, 3.0], [0.0, 1.0], [0.0, 3.0]]
    pairs = {(0, 0, 1, 0): 2.0, (1, 0, 2, 0): 2.0, (0, 0, 1, 1): 25.0, (1, 1, 2, 0): 25.0}
    pairs |= {(0, 1, 1, 0): 25.0, (1, 0, 2, 1): 25.0, (0, 0, 2, 0): 9.0}
    assert whole(costs, pairs, (0, 0, 0)) == 13.0
    assert all(whole(costs, pairs, one) >= 13.0 for one in ((1, 0, 0), (0, 1, 0), (0, 0, 1))), (
        "no single step is cheaper"
    )
    assert choice(costs, pairs) == (1, 1, 1)


def test_a_search_that_takes_too_long_gives_the_best_so_far(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    costs = [[0.0, 3.0], [0.0, 1.0], [0.0, 3.0]]
    pairs = {(0, 0, 1, 0): 2.0, (1, 0, 2, 0): 2.0, (0, 0, 1, 1): 25.0, (1, 1, 2, 0): 25.0}
    pairs |= {(0, 1, 1, 0): 25.0, (1, 0, 2, 1): 25.0, (0, 0, 2, 0): 9.0}
    monkeypatch.setattr(choosing, "_MOST", 1)
    assert choice(costs, pairs) == (0, 0, 0)


def test_nothing_to_place() -> None:
    assert choose([], lambda *_: 0.0) == ()
