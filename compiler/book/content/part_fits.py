"""Whether a value is of the type that its model says: what was read back is not believed."""

from __future__ import annotations

from collections.abc import Callable, Hashable
from dataclasses import fields, is_dataclass
from functools import cache
from types import NoneType, UnionType
from typing import Any, Union, cast, get_args, get_origin, get_type_hints

_Fits = Callable[[Any], bool]


@cache
def fitting(hint: Any) -> _Fits:
    """What tells whether a value is of the type ``hint``: a plain one, a tuple, a union, or a
    class; of a model each field too. A whole number fits where any number does."""
    origin, of = get_origin(hint), get_args(hint)
    if origin in (Union, UnionType):
        some = tuple(map(fitting, of))
        return lambda value: any(fits(value) for fits in some)
    if origin is tuple:
        return _tuple(of)
    if hint in (None, NoneType):
        return lambda value: value is None
    if hint is float:
        return lambda value: type(value) in (int, float)
    if hint in (str, int, bool):
        return lambda value: type(value) is hint
    return lambda value: isinstance(value, hint) and _fields_fit(value)


def _tuple(of: tuple[Any, ...]) -> _Fits:
    if of[1:] == (...,):
        each = fitting(of[0])
        return lambda value: type(value) is tuple and all(map(each, value))
    parts = tuple(map(fitting, of))
    return lambda value: (
        type(value) is tuple
        and len(value) == len(parts)
        and all(fits(one) for fits, one in zip(parts, value, strict=True))
    )


def _fields_fit(value: Any) -> bool:
    return all(fits(getattr(value, name)) for name, fits in _model(cast("Hashable", type(value))))


@cache
def _model(of: Hashable) -> tuple[tuple[str, _Fits], ...]:
    """The fields of a model of this room; none of another's, which is not read back."""
    kind = cast("type[Any]", of)
    if not is_dataclass(kind) or not kind.__module__.startswith("stemline.book.content."):
        return ()
    hints = get_type_hints(kind)
    return tuple((field.name, fitting(hints[field.name])) for field in fields(kind))
