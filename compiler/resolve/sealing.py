"""Values as bytes: what an answer is worked out from, and what it is filed under.

Whoever works from the bytes alone cannot know anything that they do not hold, so an answer filed
under them is right as long as the program is the same. Places in the text are left out: a line
that moves changes no play.
"""

from __future__ import annotations

import pickle
from dataclasses import fields
from functools import lru_cache
from io import BytesIO
from typing import TYPE_CHECKING, Any, Generic, TypeVar, cast

from stemline.football.conditions import Guard, LookWord, Where
from stemline.football.field import Field
from stemline.football.offence.counting import Count
from stemline.football.play import Man, Play
from stemline.geometry.paths import Path
from stemline.lineup.lined_up import LinedUp
from stemline.source import NOWHERE, Span

if TYPE_CHECKING:
    from collections.abc import Callable

    _Table = dict[type, Callable[[Any], tuple[Callable[..., Any], tuple[Any, ...]]]]

T = TypeVar("T")
Line = tuple[str, int]
"""A line of a text: the text's name, and its number from 1."""


class Sealed(bytes, Generic[T]):
    """A value of the compiler's own as bytes; alike values of one program have the same."""


def seal(value: T) -> Sealed[T]:
    return Sealed(_pickled(value, _TABLE))


def sealed_with_places(value: object) -> tuple[bytes, tuple[Line, ...]]:
    """A value as bytes that tell its places by the number of their line, and those lines.

    Lines are numbered as they are met, so a text that moves as a whole keeps its bytes; columns are
    in them.
    """
    numbers: dict[Line, int] = {}

    def placed(span: Span) -> tuple[Callable[..., Span], tuple[int, ...]]:
        number = numbers.setdefault((span.source, span.line), len(numbers))
        return _placed, (number, span.column, span.end)

    return _pickled(value, {**_TABLE, Span: placed}), tuple(numbers)


def unsealed(sealed: Sealed[T]) -> T:
    """The value again, all its places nowhere. Only for bytes that this program has sealed."""
    return cast("T", _Unpickler(BytesIO(sealed)).load())


class _Pickler(pickle.Pickler):
    """Alike values as the same bytes: of two alike words it does not matter whether they are one
    object, as their text was parsed, or two, as it was read back; nor in which order a set has its
    own. (What `fast` counts goes wrong at a set that it writes itself.)"""

    def __init__(self, out: BytesIO, table: _Table) -> None:
        super().__init__(out, protocol=5)
        self.dispatch_table = table
        self.fast = True

    def persistent_id(self, value: object) -> tuple[object, ...] | None:
        return tuple(sorted(value, key=repr)) if type(value) is frozenset else None


class _Unpickler(pickle.Unpickler):
    def persistent_load(self, kept: tuple[object, ...]) -> frozenset[object]:
        return frozenset(kept)


def _pickled(value: object, table: _Table) -> bytes:
    out = BytesIO()
    _Pickler(out, table).dump(value)
    return out.getvalue()


def _placed(line: int, column: int, end: int) -> Span:
    """What stands for a place in bytes that are only compared."""
    return Span("", line, column, end)


def _nowhere() -> Span:
    return NOWHERE


def _by_fields(value: Any) -> tuple[Callable[..., Any], tuple[Any, ...]]:
    """A value by its fields alone, without what it has worked out for itself meanwhile."""
    return type(value), tuple(getattr(value, field.name) for field in fields(value))


@lru_cache(maxsize=4096)
def _packed(worlds: Where) -> int:
    """Worlds as the bits of one number: a guard is sealed with every line that has it."""
    return sum(1 << world for world in worlds)


@lru_cache(maxsize=4096)
def _unpacked(bits: int) -> Where:
    return frozenset(at for at in range(bits.bit_length()) if bits >> at & 1)


def _guard(
    text: str, bits: int, looks: tuple[LookWord, ...], moves: int, formations: frozenset[str]
) -> Guard:
    return Guard(text, _unpacked(bits), looks, moves, formations)


def _sealed_guard(guard: Guard) -> tuple[object, ...]:
    return guard.text, _packed(guard.worlds), guard.looks, guard.moves, guard.formations


_TABLE: _Table = {
    Span: lambda span: (_nowhere, ()),
    Count: _by_fields,
    Field: _by_fields,
    Guard: lambda guard: (_guard, _sealed_guard(guard)),
    Man: _by_fields,
    LinedUp: _by_fields,
    Path: lambda path: (Path, (path.start, path.legs, path.ending)),
    Play: _by_fields,
}
