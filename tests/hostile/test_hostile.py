"""Hostile texts: each gives messages or a play, in its time, and no traceback.

A run tries fifty; `python -m tests.hostile` goes on for as long as it is let.
"""

from __future__ import annotations

from random import Random

import pytest
from sampling import every

from .floods import FLOODS, Flood, flood
from .judging import judge, warm
from .running import results
from .texts import text_of

SEED = 20
COUNT = 250
SECONDS = 5
"""CPU seconds that any text of a megabyte may take."""


def test_hostile_texts_give_messages_or_a_play() -> None:
    wrong = []
    plays = 0
    tried = range(0, COUNT, every(5))
    for result in results(SEED, tried, SECONDS):
        plays += result.judged.play
        if result.judged.fault or result.judged.seconds > SECONDS:
            wrong.append((result.number, result.done, result.judged.seconds, result.judged.fault))
    assert not wrong
    assert len(tried) // 10 < plays < len(tried)


def test_a_text_is_the_same_each_time() -> None:
    assert [text_of(3, n) for n in range(40)] == [text_of(3, n) for n in range(40)]
    assert text_of(3, 1) != text_of(4, 1)


@pytest.mark.parametrize("sort", FLOODS, ids=lambda sort: sort.__name__)
def test_a_megabyte_of_one_thing_is_answered_in_time(sort: Flood) -> None:
    warm()
    text = flood(Random(f"{SEED}"), sort, many=20_000)
    judged = judge(text.encode())
    assert not judged.fault
    assert judged.seconds < SECONDS


def test_a_man_on_the_line_in_no_gap_has_no_rush() -> None:
    """Found by a mutation: a place by the tight end, a yard deep, with no duty."""
    _, raw = text_of(10, 6898)
    assert b"S at tight end, strong, 1 outside, 1 deep or apex" in raw
    assert not judge(raw).fault
