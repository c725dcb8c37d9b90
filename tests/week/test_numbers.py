"""Numbers: new every week, one call each, and none that a crowd makes another of."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

from hypothesis import given, settings
from hypothesis import strategies as st

from stemline.week.week_values import Plan
from stemline.week.working_out import last_numbers
from stemline.week.wristband_numbers import numbers_of, sounds_like

from .plans import HERONS, made_up, session


def test_teens_and_tens_sound_alike() -> None:
    """By ear: -teen and -ty are what a noisy room makes one of."""
    alike = {(h + n, h + 10 * (n - 10)) for h in (0, 100, 200) for n in range(13, 20)}
    found = {
        (a, b) for a in range(1, 300) for b in range(a + 1, 300) if sounds_like(a) == sounds_like(b)
    }
    assert found == alike
    assert [sounds_like(n) for n in (12, 14, 40, 114, 120)] == [12, 40, 40, 140, 120]


@given(st.integers(0, 10_000), st.booleans())
@settings(max_examples=150)
def test_no_number_is_given_twice_sounds_like_another_or_was_last_weeks(
    seed: int, together: bool
) -> None:
    first = replace(made_up(seed, number=4), together=together)
    second = replace(first, number=5)
    last = numbers_of(first, {})
    numbers = numbers_of(second, last)
    assert numbers.keys() == set(second.calls)
    assert len(set(map(sounds_like, numbers.values()))) == len(numbers)
    for call, number in numbers.items():
        kept = second.frozen.get(call)
        assert number == kept if kept else number != last.get(call)
    assert numbers == numbers_of(second, last)
    spare = len(second.calls) + 20 + 2 * len({p.family for p in second.plays.values()})
    assert max(numbers.values()) <= spare + len(second.calls) // 5


def test_a_family_that_is_kept_together_has_numbers_of_its_own() -> None:
    plan = replace(made_up(3, rows=60), together=True, frozen={})
    spans: dict[str, list[int]] = {}
    for call, number in numbers_of(plan, {}).items():
        spans.setdefault(plan.plays[call].family, []).append(number)
    ranges = sorted((min(n), max(n)) for n in spans.values())
    assert all(high < low for (_, high), (low, _) in pairwise(ranges))
    apart = numbers_of(replace(plan, together=False), {})
    assert apart != numbers_of(plan, {})


@given(st.integers(0, 10_000))
@settings(max_examples=30)
def test_the_smallest_numbers_are_given(seed: int) -> None:
    """But two, and those of which a twin is given: a short number is the quickest to hear."""
    plan = replace(made_up(seed), together=False, frozen={}, shorts=())
    numbers = set(numbers_of(plan, {}).values())
    alone = {n for n in range(1, max(numbers)) if n not in range(30, 100, 10) and n % 100 < 13}
    assert len(alone - numbers) <= 2


def test_a_number_that_is_kept_for_a_call_of_another_week_is_nobodys() -> None:
    plan = made_up(3, rows=60)
    away = next(call for call in plan.plays if call not in plan.calls)
    numbers = numbers_of(replace(plan, frozen={away: 1}), {})
    assert numbers.keys() == set(plan.calls)
    assert 1 not in numbers.values()


def test_a_number_that_a_short_name_says_is_nobodys() -> None:
    """With `Three Two is 32` a card would have "32 32 R CRS"."""
    plan = replace(made_up(3, rows=60), together=False, frozen={}, shorts=())
    said = replace(plan, shorts=(("Three Two", "32"), ("Crossers", "CRS 7")))
    given = {32, 7} & set(numbers_of(plan, {}).values())
    assert given == {32, 7}
    assert not given & set(numbers_of(said, {}).values())


def test_another_seed_gives_other_numbers() -> None:
    plan = made_up(3, rows=60)
    assert numbers_of(replace(plan, seed="a"), {}) != numbers_of(replace(plan, seed="b"), {})


def test_the_bundled_weeks_change_from_week_to_week() -> None:
    plans: list[Plan] = [e.plan for e in session(HERONS).weeks if e.plan is not None]
    assert len(plans) == 4
    for plan in plans:
        last = last_numbers(plans, plan.number)
        numbers = numbers_of(plan, last)
        same = {call for call, n in numbers.items() if last.get(call) == n}
        assert same <= set(plan.frozen)
