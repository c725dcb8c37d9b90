"""Guards as sets of worlds: what may be true of a call, small enough to write out whole.

A world fixes the shape, the ball and the look as far as a guard can ask for them. A guard is the
set of worlds where it holds. So "two guards can both hold", "one refines the other" and "it
depends on the look" are plain set questions, and an example world can always be shown.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
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


class MoveWord(Enum):
    """What a defence may adjust to: the move of the motion man before the snap."""

    ANY = "motion"
    ACROSS = "motion across"
    IN = "motion in"
    OUT = "motion out"
    TO_STRONG = "motion to strong"
    TO_WEAK = "motion to weak"
    JET = "motion jet"


@dataclass(frozen=True)
class ManMove:
    """The move of one man: ``way`` is ACROSS the ball, IN toward it or OUT, None for one straight
    back or forward; ``to`` TO_STRONG or TO_WEAK; ``jet`` tells that he runs sideways at the snap.
    """

    way: MoveWord | None
    to: MoveWord | None
    jet: bool

    def tells(self, word: MoveWord) -> bool:
        """Whether ``word`` is true of it."""
        return (
            word is MoveWord.ANY
            or word in (self.way, self.to)
            or (self.jet and word is MoveWord.JET)
        )


MOVES: tuple[ManMove | None, ...] = (
    None,
    *(
        ManMove(way, to, jet)
        for way in (MoveWord.ACROSS, MoveWord.IN, MoveWord.OUT, None)
        for to in (MoveWord.TO_STRONG, MoveWord.TO_WEAK, None)
        for jet in (False, True)
    ),
)
"""Every move there may be, and None where nobody moves."""
EVERY_MOVE = (1 << len(MOVES)) - 1
"""A set of moves is an integer, a bit for each: guards are sealed a great many times."""


def bit_of(move: ManMove | None) -> int:
    """The set of one move."""
    return 1 << MOVES.index(move)


def moves_where(*words: MoveWord) -> int:
    """The moves of which one of ``words`` is true; all where there is none."""
    if not words:
        return EVERY_MOVE
    return sum(bit_of(m) for m in MOVES if m is not None and any(map(m.tells, words)))


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
            (self.shape is None or self.shape == world.shape)
            and (self.strong is None or _within(world.shape[0], self.strong))
            and (self.weak is None or _within(world.shape[1], self.weak))
            and (self.backs is None or self.backs == world.backs)
            and (self.lie is None or self.lie is world.lie)
            and (self.called is None or self.called is world.called)
            and (self.look is None or self.look in world.looks)
        )


def _within(number: int, limits: tuple[int, int]) -> bool:
    return limits[0] <= number <= limits[1]


@dataclass(frozen=True)
class Guard:
    """When a fact holds; ``text`` as written, ``looks`` the looks it asks for, in order.

    ``moves`` are those of the motion man under which it holds: only a look asks for them.
    ``formations`` are the keys of those of which one must be called, none where any may be: only
    a line of a concept or a run asks for them.
    """

    text: str
    worlds: Where
    looks: tuple[LookWord, ...]
    moves: int = EVERY_MOVE
    formations: frozenset[str] = frozenset()

    def refines(self, other: Guard) -> bool:
        """Whether it holds nowhere but where ``other`` does."""
        called = not other.formations or (self.formations and self.formations <= other.formations)
        return self.worlds <= other.worlds and not self.moves & ~other.moves and bool(called)

    def meets(self, other: Guard) -> bool:
        """Whether both can hold at once."""
        both = self.formations & other.formations or not (self.formations and other.formations)
        return bool(self.worlds & other.worlds) and bool(self.moves & other.moves) and bool(both)

    def called_in(self, formation: str) -> Guard:
        """What it comes to where that formation (a key) is called: nowhere where it asks for
        others."""
        if not self.formations or formation in self.formations:
            return self
        return replace(self, worlds=frozenset())


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
