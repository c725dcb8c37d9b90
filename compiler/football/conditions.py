"""Guards as sets of worlds: what may be true of a call, small enough to write out whole.

A world fixes the shape, the ball and the look as far as a guard can ask for them. A guard is the
set of worlds where it holds. So "two guards can both hold", "one refines the other" and "it
depends on the look" are plain set questions, and an example world can always be shown.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from enum import Enum
from functools import cache, lru_cache
from itertools import product


class Lie(Enum):
    """Where the man stands, seen from the ball's spot."""

    FIELD = "into field"
    BOUNDARY = "into boundary"
    MIDDLE = "ball in middle"


class Called(Enum):
    """Where the call goes, seen from the ball's spot; neither from the middle, where the staff
    calls no side the field."""

    FIELD = "called to field"
    BOUNDARY = "called to boundary"
    NEITHER = "called to a side"


class LookWord(Enum):
    """What the defence shows, in pairs of which one holds."""

    ZONE = "zone"
    MAN = "man"
    PRESS = "press"
    OFF = "off"
    OPEN = "middle open"
    CLOSED = "middle closed"

    @property
    def opposite(self) -> LookWord:
        return _OPPOSITE[self]


_PAIRS = (
    (LookWord.ZONE, LookWord.MAN),
    (LookWord.PRESS, LookWord.OFF),
    (LookWord.OPEN, LookWord.CLOSED),
)
_OPPOSITE = {a: b for pair in _PAIRS for a, b in (pair, pair[::-1])}

Shape = tuple[int, int]


@dataclass(frozen=True)
class World:
    """One full answer to every question that a guard can ask."""

    shape: Shape
    backs: int
    lie: Lie
    called: Called
    looks: frozenset[LookWord]

    @property
    def words(self) -> str:
        shown = sorted(self.looks, key=list(LookWord).index)
        shape = "{}x{}".format(*self.shape)
        ball = (self.lie.value, self.called.value)
        return ", ".join([shape, *ball, *(look.value for look in shown)])


@cache
def worlds(receivers: int) -> tuple[World, ...]:
    """Every world of a code with this many eligible men besides the quarterback."""
    shapes = [
        (strong, weak)
        for strong in range(receivers + 1)
        for weak in range(strong + 1)
        if strong + weak <= receivers
    ]
    return tuple(
        World(shape, receivers - sum(shape), lie, called, frozenset(looks))
        for shape in shapes
        for lie in Lie
        for called in Called
        for looks in product(*_PAIRS)
    )


Where = frozenset[int]
"""A set of worlds, as positions in `worlds`."""


@lru_cache(maxsize=1024)
def where(receivers: int, condition: Condition) -> Where:
    return frozenset(i for i, w in enumerate(worlds(receivers)) if condition.holds(w))


@dataclass(frozen=True)
class Condition:
    """One word of a guard; the fields that are None do not matter.

    ``strong`` and ``weak`` are the fewest and the most receivers on that side.
    """

    shape: Shape | None = None
    backs: int | None = None
    lie: Lie | None = None
    called: Called | None = None
    look: LookWord | None = None
    strong: tuple[int, int] | None = None
    weak: tuple[int, int] | None = None

    def holds(self, world: World) -> bool:
        return (
            self.shape in (None, world.shape)
            and _within(world.shape[0], self.strong)
            and _within(world.shape[1], self.weak)
            and self.backs in (None, world.backs)
            and self.lie in (None, world.lie)
            and self.called in (None, world.called)
            and (self.look is None or self.look in world.looks)
        )


def _within(number: int, limits: tuple[int, int] | None) -> bool:
    return limits is None or limits[0] <= number <= limits[1]


@dataclass(frozen=True)
class Guard:
    """When a fact holds; ``text`` as written, ``looks`` the looks it asks for, in order."""

    text: str
    worlds: Where
    looks: tuple[LookWord, ...]


@cache
def always(receivers: int) -> Guard:
    return Guard("", frozenset(range(len(worlds(receivers)))), ())


def example(receivers: int, of: Iterable[int]) -> World:
    """The first world of a set that is not empty."""
    return worlds(receivers)[min(of)]


@cache
def possible(
    receivers: int,
    shape: Shape | None,
    lie: Lie,
    called: Called,
    against: tuple[LookWord, ...] = (),
) -> Where:
    """The worlds a call may still be in: what is known of its shape (None: nothing), its lie, where
    it is called to, and its looks."""
    return frozenset(
        i
        for i, w in enumerate(worlds(receivers))
        if shape in (None, w.shape)
        and w.lie is lie
        and w.called is called
        and all(look in w.looks for look in against)
    )
