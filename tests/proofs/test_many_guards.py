"""A body with many conditions is sealed like any other."""

from __future__ import annotations

from stemline.football.conditions import Guard
from stemline.resolve.sealing import seal, sealed_with_places, unsealed


def test_a_hundred_guards_are_sealed_and_come_back() -> None:
    guards = tuple(Guard(f"{n}x1", frozenset(range(n)), ()) for n in range(100))
    assert unsealed(seal(guards)) == guards
    assert seal(guards) == seal(tuple(Guard(g.text, frozenset(g.worlds), ()) for g in guards))
    assert sealed_with_places(guards)[0] != sealed_with_places(guards[1:])[0]
