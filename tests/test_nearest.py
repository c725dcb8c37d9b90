"""The nearest right names: against the definition of the distance, and what a coach would mean."""

from __future__ import annotations

from collections.abc import Iterable
from functools import cache
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from stemline.diagnostics.nearest import distance, nearest
from stemline.outside.project import read_files
from stemline.session import Session

PLAYBOOKS = Path(__file__).parents[1] / "playbooks"

WORD = st.text("abAB", max_size=6)


def steps(a: str, b: str) -> int:
    """The distance by its recursion (restricted: no letter moves twice), after F. J. Damerau, "A
    technique for computer detection and correction of spelling errors", CACM 7(3), 1964."""

    @cache
    def least(i: int, j: int) -> int:
        if not i or not j:
            return i + j
        kept = least(i - 1, j - 1) + (a[i - 1] != b[j - 1])
        ways = [kept, least(i - 1, j) + 1, least(i, j - 1) + 1]
        if i > 1 and j > 1 and a[i - 2 : i] == b[j - 2 : j][::-1]:
            ways.append(least(i - 2, j - 2) + 1)
        return min(ways)

    a, b = a.casefold(), b.casefold()
    return least(len(a), len(b))


@given(WORD, WORD)
def test_the_distance_is_that_of_its_definition(a: str, b: str) -> None:
    assert distance(a, b) == distance(b, a) == steps(a, b)


@given(WORD, WORD, st.integers(0, 6))
def test_who_asks_up_to_some_steps_is_answered_right_up_to_there(a: str, b: str, most: int) -> None:
    found = distance(a, b, most)
    assert found == steps(a, b) or (found > most and steps(a, b) > most)


@given(WORD, st.lists(WORD, max_size=8), st.integers(1, 4))
def test_the_nearest_names_are_those_within_a_third(
    wrong: str, names: list[str], most: int
) -> None:
    near = nearest(wrong, names, most)
    held = [n for n in set(names) if _holds(n, wrong) or _holds(wrong, n)]
    thirds = {n: max(1, max(len(n), len(wrong)) // 3) for n in names}
    good = {n for n in names if wrong and (n in held or steps(wrong, n) <= thirds[n])}
    assert list(near) == sorted(good, key=lambda n: (steps(wrong, n), n))[:most]


def _holds(long: str, short: str) -> bool:
    return len(short) > 2 and len(long) > 2 and short.casefold() in long.casefold()


@pytest.mark.parametrize(
    ("wrong", "names", "near"),
    [
        ("Quads", ("Quads Tight", "Trips"), ("Quads Tight",)),
        ("Trisp", ("Trips", "Trey"), ("Trips",)),
        # Two letters stand in half of all names: they are near to what is one letter off, no more.
        ("in", ("inside", "line", "is", "on"), ("is", "on")),
        ("at", ("boundary at", "flat", "as"), ("as",)),
        ("inside", ("in", "on"), ()),
        ("X", ("Exit", "Z", "XX"), ("XX", "Z")),
        ("", ("A",), ()),
        ("a" * 61, ("a" * 61, "a" * 60), ()),
        ("a" * 60, ("a" * 61, "a" * 60), ("a" * 60,)),
    ],
)
def test_what_a_coach_may_have_meant(
    wrong: str, names: tuple[str, ...], near: tuple[str, ...]
) -> None:
    assert nearest(wrong, names) == near


def test_a_text_without_a_mistake_is_compared_with_no_name(monkeypatch: pytest.MonkeyPatch) -> None:
    """Looking for one takes long, and a line may be tried as one thing and read as another."""
    asked: list[str] = []

    def heard(wrong: str, names: Iterable[str]) -> tuple[str, ...]:
        asked.append(wrong)
        return nearest(wrong, names)

    monkeypatch.setattr("stemline.read.words.nearest", heard)
    session = Session(read_files(PLAYBOOKS / "cedar-flats-lanterns").sources, "lanterns")
    assert session.book is not None and not session.definitions
    assert not asked
