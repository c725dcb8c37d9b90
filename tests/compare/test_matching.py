"""The pairing of old and new names against the assignment solver of SciPy."""

from __future__ import annotations

import random

import numpy as np
import pytest
from scipy.optimize import linear_sum_assignment

from stemline.compare.matching import best_pairs, likeness


@pytest.mark.parametrize("seed", range(4))
def test_pairs_are_the_best_there_are(seed: int) -> None:
    draw = random.Random(seed)
    for _ in range(150):
        rows, columns = draw.randint(1, 7), draw.randint(1, 7)
        most = draw.choice((1, 5, 20))  # few values make many pairs alike
        table = [[draw.randint(0, most) / most for _ in range(columns)] for _ in range(rows)]
        _judged(table, draw.randint(0, 15) / 20)


def _judged(scores: list[list[float]], bound: float) -> None:
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
