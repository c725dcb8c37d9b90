"""Parts of a book as JSON has them, to be kept: page models without the plays that they show.

What is read back is plain data and models of the book, never a program: a model is told by its
name among those of this room. Of a picture's play its kind alone is written, since pages are laid
by it; the play itself is made when somebody asks for more.
"""

from __future__ import annotations

import json
import sys
from collections.abc import Callable, Mapping
from dataclasses import fields, is_dataclass
from functools import cache
from typing import Any

from stemline.book.content.page import Entry
from stemline.book.content.part_fits import fitting
from stemline.football.later import later
from stemline.football.play import Kind, Play

_ROOM = "stemline.book.content."
_TUPLE, _ENTRY = -1, -2


class _Writer:
    def __init__(self) -> None:
        self.entries: dict[str, Entry] = {}
        self.kinds: dict[str, int] = {}

    def data(self, value: object) -> object:
        if value is None or type(value) in (str, int, float, bool):
            return value
        if isinstance(value, tuple) and type(value) is tuple:
            return [_TUPLE, *map(self.data, value)]
        if type(value) is Entry:
            if self.entries.setdefault(value.id, value) is not value:
                raise ValueError(f"two pictures are called {value.id}")
            return [_ENTRY, value.id]
        model: Any = type(value)
        name: str = model.__name__
        if _models().get(name) is model:
            number = self.kinds.setdefault(name, len(self.kinds))
            return [number, *(self.data(getattr(value, f)) for f in _names(model))]
        raise ValueError(f"a {name} is not kept")


def part_as_data(part: object) -> tuple[bytes, dict[str, Entry]]:
    """A part and its pictures by their ids. Raises ValueError for what is not kept."""
    writer = _Writer()
    made = writer.data(part)
    entries = [
        [
            e.id, e.call, e.play.kind.name, writer.data(e.changes), e.listed, e.aside,
            list(e.also), list(e.solid), e.keyed, e.marks,
        ]
        for e in writer.entries.values()
    ]  # fmt: skip
    held = [list(writer.kinds), entries, made]
    return json.dumps(held, separators=(",", ":")).encode(), writer.entries


def part_of_kind(
    kind: object, data: bytes, make: Callable[[], object]
) -> tuple[Any, dict[str, Entry]]:
    """As `part_from_data`; raises ValueError, too, for what is not of the type ``kind``, or holds
    what is not of its own."""
    part, pictures = part_from_data(data, make)
    if not (fitting(kind)(part) and all(map(fitting(Entry), pictures.values()))):
        raise ValueError(kind)
    return part, pictures


def part_from_data(data: bytes, make: Callable[[], object]) -> tuple[Any, dict[str, Entry]]:
    """The part that was written and its pictures; ``make`` makes it anew, for who asks for a play.
    Raises ValueError, LookupError or TypeError for what `part_as_data` does not write."""
    kinds, entries, made = json.loads(data)
    known = [(model, _names(model)) for model in (_models()[name] for name in kinds)]
    plays = _Plays(make)
    pictures: dict[str, Entry] = {}

    def value(held: Any) -> Any:
        if type(held) is not list:
            return held
        if held[0] == _TUPLE:
            return tuple(map(value, held[1:]))
        if held[0] == _ENTRY:
            return pictures[held[1]]
        model, names = known[held[0]]
        return model(**dict(zip(names, map(value, held[1:]), strict=True)))

    for id_, call, kind, changes, listed, aside, also, solid, keyed, marks in entries:
        play = plays.play(id_, Kind[kind])
        pictures[id_] = Entry(
            id_, call, play, value(changes), listed, aside, tuple(also), tuple(solid), keyed, marks
        )
    return value(made), pictures


class _Plays:
    """The plays of a part's pictures, all made with it when one is asked for."""

    def __init__(self, make: Callable[[], object]) -> None:
        self._make = make
        self._made: Mapping[str, Entry] = {}

    def play(self, id_: str, kind: Kind) -> Play:
        return later(Play, {"kind": kind}, lambda _: self._fields(id_))

    def _fields(self, id_: str) -> dict[str, object]:
        if not self._made:
            writer = _Writer()
            writer.data(self._make())
            self._made = writer.entries
        play = self._made[id_].play
        return {name: getattr(play, name) for name in _names(Play)}


@cache
def _names(model: type) -> tuple[str, ...]:
    return tuple(field.name for field in fields(model))


@cache
def _models() -> dict[str, type]:
    """Every model of this room, by its name, which is its own in the whole house."""
    rooms = [module for name, module in sys.modules.items() if name.startswith(_ROOM)]
    return {
        made.__name__: made
        for room in rooms
        for made in vars(room).values()
        if isinstance(made, type) and is_dataclass(made) and made.__module__.startswith(_ROOM)
    }
