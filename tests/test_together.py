"""A table that is judged in one test tells each row that fails, and judges the rest too."""

from __future__ import annotations

import pytest
from together import together


def _judged(rows: list[tuple[int, int]]) -> list[int]:
    seen: list[int] = []

    @together(("a", "b"), rows, ids=str)
    def judge(a: int, b: int) -> None:
        seen.append(a)
        assert a < b

    judge()
    return seen


def test_every_row_is_judged() -> None:
    assert _judged([(1, 2), (3, 4)]) == [1, 3]


def test_every_row_that_fails_is_told_by_its_name() -> None:
    with pytest.raises(AssertionError) as failed:
        _judged([(5, 4), (1, 2), (7, 6)])
    told = str(failed.value)
    assert "5-4: AssertionError" in told and "7-6: AssertionError" in told and "1-2" not in told


def test_a_table_without_a_row_is_refused() -> None:
    with pytest.raises(AssertionError, match="without a row"):
        _judged([])


def test_two_tables_are_every_pair() -> None:
    seen: list[tuple[int, str]] = []

    @together("n", [1, 2])
    @together("word", ["a", "b"])
    def judge(n: int, word: str) -> None:
        seen.append((n, word))
        assert (n, word) != (2, "a")

    with pytest.raises(AssertionError, match=r"^a 2: "):
        judge()
    assert sorted(seen) == [(1, "a"), (1, "b"), (2, "a"), (2, "b")]
