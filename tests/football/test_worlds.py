"""Worlds: every case a guard can ask for, written out, so that set questions are questions."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from stemline.football.conditions import (
    Called,
    Condition,
    Lie,
    LookWord,
    always,
    example,
    possible,
    where,
    worlds,
)

RECEIVERS = (5, 6)
conditions = st.one_of(
    st.builds(Condition, look=st.sampled_from(list(LookWord))),
    st.builds(Condition, lie=st.sampled_from(list(Lie))),
    st.builds(Condition, called=st.sampled_from(list(Called))),
    st.builds(Condition, backs=st.integers(0, 3)),
    st.builds(
        Condition, shape=st.sampled_from([(2, 2), (3, 1), (3, 2), (4, 1), (3, 0), (2, 1), (5, 0)])
    ),
)
receivers = st.sampled_from(RECEIVERS)


@pytest.mark.parametrize(("count", "shapes"), [(5, 12), (6, 16)])
def test_every_world_once(count: int, shapes: int) -> None:
    made = worlds(count)
    assert len(set(made)) == len(made) == shapes * 3 * 3 * 8
    assert all(sum(w.shape) + w.backs == count for w in made)
    assert all(w.shape[0] >= w.shape[1] for w in made)


@pytest.mark.parametrize("look", LookWord)
def test_of_two_opposite_looks_exactly_one_holds(look: LookWord) -> None:
    assert look.opposite.opposite is look
    for count in RECEIVERS:
        assert all((look in w.looks) != (look.opposite in w.looks) for w in worlds(count))


@pytest.mark.parametrize(
    ("narrow", "wide"),
    [
        (Condition(shape=(3, 2)), Condition(backs=1)),
        (Condition(shape=(4, 2)), Condition(backs=0)),
        (Condition(shape=(3, 1), look=LookWord.ZONE), Condition(shape=(3, 1))),
        (Condition(shape=(3, 1)), Condition()),
        (Condition(look=LookWord.OFF, lie=Lie.FIELD), Condition(look=LookWord.OFF)),
    ],
)
def test_one_condition_refines_another(narrow: Condition, wide: Condition) -> None:
    assert where(6, narrow) < where(6, wide)


@pytest.mark.parametrize(
    ("one", "two"),
    [
        (Condition(look=LookWord.ZONE), Condition(look=LookWord.MAN)),
        (Condition(shape=(3, 1)), Condition(shape=(2, 2))),
        (Condition(shape=(3, 1)), Condition(backs=0)),
        (Condition(lie=Lie.FIELD), Condition(lie=Lie.BOUNDARY)),
        (Condition(lie=Lie.FIELD), Condition(lie=Lie.MIDDLE)),
        (Condition(called=Called.FIELD), Condition(called=Called.BOUNDARY)),
    ],
)
def test_one_condition_excludes_another(one: Condition, two: Condition) -> None:
    assert not where(6, one) & where(6, two)


@pytest.mark.parametrize(
    ("one", "two"),
    [
        (Condition(look=LookWord.ZONE), Condition(look=LookWord.OFF)),
        (Condition(shape=(3, 1)), Condition(look=LookWord.PRESS)),
        (Condition(backs=1), Condition(lie=Lie.FIELD)),
        (Condition(called=Called.FIELD), Condition(lie=Lie.FIELD)),
    ],
)
def test_two_conditions_that_are_about_different_things(one: Condition, two: Condition) -> None:
    both = where(6, one) & where(6, two)
    assert both and both < where(6, one) and both < where(6, two)


def test_the_same_shape_is_empty_in_one_code_and_not_in_the_other() -> None:
    assert where(5, Condition(shape=(3, 2))) <= where(5, Condition(backs=0))
    assert where(6, Condition(shape=(3, 2))) <= where(6, Condition(backs=1))


def test_a_shape_that_a_code_cannot_have_holds_nowhere() -> None:
    assert where(5, Condition(shape=(4, 2))) == frozenset()
    assert where(6, Condition(shape=(4, 2)))


@given(receivers, conditions)
def test_always_holds_every_condition(count: int, condition: Condition) -> None:
    assert where(count, condition) <= always(count).worlds
    assert always(count).looks == ()


@given(receivers, conditions)
def test_a_set_of_worlds_is_where_its_condition_holds(count: int, condition: Condition) -> None:
    held = where(count, condition)
    for index, world in enumerate(worlds(count)):
        assert condition.holds(world) == (index in held)
    if held:
        assert condition.holds(example(count, held))


@pytest.mark.parametrize("lie", Lie)
def test_what_a_call_leaves_open_are_its_looks(lie: Lie) -> None:
    called = Called.BOUNDARY
    left = possible(6, (3, 2), lie, called)
    assert len(left) == 8
    assert {worlds(6)[i].shape for i in left} == {(3, 2)}
    assert {(worlds(6)[i].lie, worlds(6)[i].called) for i in left} == {(lie, called)}
    assert len(possible(6, (3, 2), lie, called, (LookWord.ZONE,))) == 4
    assert len(possible(6, (3, 2), lie, called, (LookWord.ZONE, LookWord.OFF, LookWord.OPEN))) == 1


def test_a_world_in_words() -> None:
    (only,) = possible(
        6, (3, 2), Lie.FIELD, Called.FIELD, (LookWord.MAN, LookWord.OFF, LookWord.OPEN)
    )
    assert worlds(6)[only].words == "3x2, into field, called to field, man, off, middle open"
