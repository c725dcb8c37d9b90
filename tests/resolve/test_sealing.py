"""A value is sealed however many sets it holds, and comes back as it was."""

from __future__ import annotations

from stemline.football.conditions import Condition, Guard, where
from stemline.resolve.sealing import seal, unsealed


def test_a_value_with_hundreds_of_guards_is_sealed_and_comes_back() -> None:
    guards = tuple(
        Guard(f"{strong}x{weak}", where(6, Condition(shape=(strong, weak))), (), moves)
        for strong in range(7)
        for weak in range(strong + 1)
        for moves in range(1, 12)
    )
    assert unsealed(seal(guards)) == guards
    assert seal(guards[:1]) != seal(guards[1:2])
