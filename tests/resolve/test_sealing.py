"""Values as bytes: alike ones have the same, and are themselves again."""

from __future__ import annotations

from dataclasses import dataclass

from hypothesis import given
from hypothesis import strategies as st

from stemline.geometry.paths import Ending, Leg, Path, Point
from stemline.resolve.sealing import seal, sealed_with_places, unsealed

WORDS = st.text("abc", min_size=1, max_size=3)
VALUES = st.recursive(
    WORDS | st.integers() | st.frozensets(WORDS, max_size=3),
    lambda within: st.lists(within).map(tuple) | st.dictionaries(WORDS, within),
)


@dataclass(frozen=True)
class Said:
    words: frozenset[str]
    more: tuple[object, ...]


@given(VALUES)
def test_a_value_comes_back_from_its_seal(value: object) -> None:
    assert unsealed(seal(value)) == value


def test_many_sets_are_sealed_as_few_are() -> None:
    """More of them than the library's own fast way counts rightly."""
    said = Said(frozenset("ab"), ())
    for number in range(80):
        said = Said(frozenset((str(number), "x")), (said, {"within": [frozenset("y")]}))
    assert unsealed(seal(said)) == said
    assert sealed_with_places(said)[0]


def test_a_path_is_sealed_without_what_it_has_worked_out() -> None:
    path = Path(Point(0, 0), (Leg(Point(0, 9), 2), Leg(Point(5, 9))), Ending.BLOCK)
    fresh = seal(path)
    assert path.corners[1] == Point(0, 9)
    assert seal(path) == fresh and unsealed(fresh) == path


def test_two_words_or_one_and_any_order_of_a_set_are_the_same() -> None:
    one = "".join(("sl", "ant"))
    other = "".join(("sl", "ant"))
    assert one is not other
    first = Said(frozenset(("b", "a", one)), (one, one))
    second = Said(frozenset((other, "a", "b")), (other, one))
    assert seal(first) == seal(second)
