"""A crack that reaches nobody is said, and who hangs over the end stands first among the unblocked
of a run around it."""

from __future__ import annotations

import pytest

from resolve.texts import ELEVEN, compiled

SET = """
formation Doubles
    X at away, numbers, on line
    S at away, 5 outside tackle, off line
    H at call, {wide} outside tackle, off line
    Z at call, 1 outside numbers, on line
    R at ball, 7 deep
    Q at ball, 4 deep
"""
LOOK = """
look Even
    E at 5, strong
    T at 3, strong
    N at 1, weak
    J at 5, weak
    M at 20, strong
    W at 20, weak
    O at outside end, strong, 3 outside, 5 deep
    C at strong #1, 8 deep
    B at weak #1, 8 deep
    F at middle, 14 deep
    K at hash, weak, 10 deep
    C covers third, strong
    F covers third, middle
    B covers third, weak
    O covers flat, strong
    M covers hook, strong
    W covers hook, weak
    K covers curl, weak
    strength call
"""
TOSS = """
run Toss
    toward call
    carrier is back
    carrier aims outside the end
    line blocks reach or climb
    crack is strong #2
    crack blocks crack
    outside is strong #1
    outside blocks stalk
    far, other is weak outside
    far, other blocks stalk

dress Toss
    in Doubles
"""


@pytest.mark.parametrize(("wide", "reached"), [(5, True), (17, False)])
def test_who_is_not_blocked_at_the_edge_is_unblocked_first(wide: int, reached: bool) -> None:
    made = compiled(ELEVEN, SET.format(wide=wide), LOOK, TOSS)
    assert made.season is not None
    play = next(p for p in made.season.plays if p.call.spoken == "Doubles Right Toss")
    task = play.assignment("H")
    assert bool(task.hits) is reached
    assert task.job.endswith("Here: nobody.") is not reached
    assert play.unblocked[:1] == ("O",) and "O" not in {hit.defender for hit in task.hits}
