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
    alike = {(n, 10 * (n - 10)) for n in range(13, 20)}
    found = {
        (a, b) for a in range(1, 100) for b in range(a + 1, 100) if sounds_like(a) == sounds_like(b)
    }
    assert found == alike
    assert sounds_like(113) == sounds_like(130) != sounds_like(13)


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
