"""The pairing of old and new names against the assignment solver of SciPy."""

from __future__ import annotations

import numpy as np
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import linear_sum_assignment

from stemline.compare.matching import best_pairs, likeness

TABLES = st.integers(1, 7).flatmap(
    lambda rows: st.integers(1, 7).flatmap(
        lambda columns: st.lists(
            st.lists(st.integers(0, 20), min_size=columns, max_size=columns),
            min_size=rows,
            max_size=rows,
        )
    )
)


@given(TABLES, st.integers(0, 15))
def test_pairs_are_the_best_there_are(table: list[list[int]], least: int) -> None:
    scores = [[n / 20 for n in row] for row in table]
    bound = least / 20
    pairs = best_pairs(scores, bound)
    worth = np.array([[s if s >= bound else 0.0 for s in row] for row in scores])
    rows, columns = linear_sum_assignment(worth, maximize=True)
    assert abs(sum(scores[r][c] for r, c in pairs) - worth[rows, columns].sum()) < 1e-9
    assert all(scores[r][c] >= bound for r, c in pairs)
    assert len({r for r, _ in pairs}) == len({c for _, c in pairs}) == len(pairs)


def test_likeness_is_the_shared_part() -> None:
    assert likeness("aab", "abc") == 2 / 4
    assert likeness("", "") == 0
    assert likeness("ab", "ab") == 1
