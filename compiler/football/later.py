"""A value of which a part is known: the rest is made when somebody asks for it."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Mapping
from dataclasses import fields
from functools import cache
from typing import Any, TypeVar, cast

T = TypeVar("T")
Fill = Callable[[str], Mapping[str, object]]
"""Values by field, that of the asked one among them."""
_FILL = "fill of a later value"


def later(kind: type[T], known: Mapping[str, object], fill: Fill) -> T:
    """A value of a frozen dataclass, equal to the one that is made of all its fields.

    ``known`` are fields of it, and properties by what they would give; ``fill`` is asked for the
    others, each once, and must give what ``known`` says where it gives more.
    """
    made: object = object.__new__(_kind(cast("Hashable", kind)))
    _own(made).update({**known, _FILL: fill})
    return cast("T", made)


@cache
def _kind(of: Hashable) -> type:
    kind = cast("type[Any]", of)
    names = tuple(field.name for field in fields(kind))
    asked_of = frozenset(names)

    def asked(self: object, name: str) -> Any:
        own = _own(self)
        if name in own:
            return own[name]
        if name not in asked_of:
            return object.__getattribute__(self, name)
        for each, value in cast("Fill", own[_FILL])(name).items():
            own.setdefault(each, value)
        if asked_of <= own.keys():
            whole(self)
        return own[name]

    def whole(self: object) -> Any:
        """The same value, now one of its kind like any other."""
        values = {name: getattr(self, name) for name in names}
        _own(self).clear()
        _own(self).update(values)
        object.__setattr__(self, "__class__", kind)
        return self

    held: dict[str, object] = {
        "__getattribute__": asked,
        "__eq__": lambda self, other: whole(self) == other,
        "__hash__": lambda self: hash(whole(self)),
        "__repr__": lambda self: repr(whole(self)),
        "__reduce_ex__": lambda self, _: (kind, tuple(getattr(whole(self), n) for n in names)),
    }
    return type(f"Later{kind.__name__}", (kind,), held)


def _own(made: object) -> dict[str, object]:
    found: dict[str, object] = object.__getattribute__(made, "__dict__")
    return found
