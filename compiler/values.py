"""`dataclass` as in the standard library, but each method is written when it is first asked for.

A command loads some hundred kinds of value more than it makes, and compares or prints few of
those; writing all their methods took as long as loading half of the files.
"""

from __future__ import annotations

import dataclasses
import sys
from typing import TYPE_CHECKING, Any, NoReturn

if TYPE_CHECKING:
    from dataclasses import dataclass as dataclass
else:

    def dataclass(cls: type | None = None, /, **how: bool) -> Any:
        """As `dataclasses.dataclass`. What cannot be a field is refused when a value is made."""
        if cls is None:
            return lambda given: dataclass(given, **how)
        if how.keys() - {"frozen", "eq", "order", "kw_only"}:
            return dataclasses.dataclass(cls, **how)
        _HOW[cls] = how
        names = [*_KNOWN_BY, "__init__", "__repr__"]
        if how.get("eq", True):
            names += ("__eq__", "__hash__")
        if how.get("order"):
            names += _ORDER
        for name in names:
            if vars(cls).get(name) is None:  # who says how he is equal has None for a hash
                setattr(cls, name, _LATER[name])
        if how.get("frozen"):
            cls.__setattr__, cls.__delattr__ = _not_set, _not_deleted
        elif how.get("eq", True):
            cls.__hash__ = None
        return cls


class _Later:
    """Stands in a class for what is written when somebody asks for it."""

    def __init__(self, name: str) -> None:
        self._name = name

    def __get__(self, instance: object, owner: type) -> Any:
        name = self._name
        cls = next(each for each in owner.__mro__ if vars(each).get(name) is self)
        fields = _fields(cls)
        if name == "__init__":
            cls.__init__ = _init(cls, fields)  # type: ignore[misc]
        elif name not in _KNOWN_BY:
            setattr(cls, name, _method(cls, name, fields))
        return getattr(owner if instance is None else instance, name)


_KNOWN_BY = ("__dataclass_fields__", "__dataclass_params__", "__match_args__")
"""What the standard library, and a `match`, ask of a dataclass."""
_ORDER = {"__lt__": "<", "__le__": "<=", "__gt__": ">", "__ge__": ">="}
_LATER = {
    name: _Later(name)
    for name in (*_KNOWN_BY, "__init__", "__repr__", "__eq__", "__hash__", *_ORDER)
}
_HOW: dict[type, dict[str, bool]] = {}
"""How a class was asked for; whether it is a dataclass to the standard library tells its fields."""


def _fields(cls: type) -> tuple[dataclasses.Field[Any], ...]:
    if vars(cls)["__dataclass_fields__"] is _LATER["__dataclass_fields__"]:
        for name in _KNOWN_BY:
            if vars(cls).get(name) is _LATER[name]:
                delattr(cls, name)
        # Its signature would be its text, and that is read off with much ado.
        cls.__doc__ = cls.__doc__ or cls.__name__
        more = _HOW[cls].get("kw_only", False)
        dataclasses.dataclass(cls, init=False, repr=False, eq=False, kw_only=more)
    return dataclasses.fields(cls)


def _init(cls: type, fields: tuple[dataclasses.Field[Any], ...]) -> Any:
    names, lines, known = ["self"], [], {"_set": object.__setattr__, "_left": dataclasses.MISSING}
    for field in sorted(fields, key=lambda each: each.kw_only is True):
        name = value = field.name
        if field.kw_only and "*" not in names:
            names.append("*")
        if field.default is not dataclasses.MISSING:
            known[f"_{name}_is"] = field.default
            name += f"=_{name}_is"
        elif field.default_factory is not dataclasses.MISSING:
            known[f"_make_{name}"] = field.default_factory
            value = f"_make_{name}() if {name} is _left else {name}"
            name += "=_left"
        names.append(name)
        frozen = _HOW[cls].get("frozen")
        said = f"_set(self, {field.name!r}, {value})" if frozen else f"self.{field.name} = {value}"
        lines.append(said)
    if hasattr(cls, "__post_init__"):
        lines.append("self.__post_init__()")
    made = _compiled(cls, f"__init__({', '.join(names)})", lines or ["pass"], known)
    made.__annotations__ = {each.name: each.type for each in fields}
    return made


def _method(cls: type, name: str, fields: tuple[dataclasses.Field[Any], ...]) -> Any:
    if name == "__repr__":
        shown = ", ".join(f"{each.name}={{self.{each.name}!r}}" for each in fields if each.repr)
        line = f'return f"{{self.__class__.__qualname__}}({shown})"'
        return _compiled(cls, "__repr__(self)", [line])
    compared = [each.name for each in fields if each.compare]
    own, others = (f"({''.join(f'{who}.{n}, ' for n in compared)})" for who in ("self", "other"))
    if name == "__hash__":
        return _compiled(cls, "__hash__(self)", [f"return hash({own})"])
    sign = _ORDER.get(name, "==")
    same = f"return {own} {sign} {others} if other.__class__ is self.__class__ else NotImplemented"
    return _compiled(cls, f"{name}(self, other)", [same])


def _compiled(cls: type, head: str, lines: list[str], known: dict[str, Any] | None = None) -> Any:
    """A method that sees what its class's file sees, and what it alone has to know by name."""
    known = known or {}
    body = "\n  ".join(lines)
    text = f"def _make({', '.join(known)}):\n def {head}:\n  {body}\n return {head.split('(')[0]}"
    made: dict[str, Any] = {}
    exec(text, vars(sys.modules[cls.__module__]), made)
    method = made["_make"](**known)
    method.__qualname__ = f"{cls.__qualname__}.{method.__name__}"
    return method


def _not_set(self: object, name: str, value: object) -> NoReturn:
    raise dataclasses.FrozenInstanceError(f"cannot assign to field {name!r}")


def _not_deleted(self: object, name: str) -> NoReturn:
    raise dataclasses.FrozenInstanceError(f"cannot delete field {name!r}")
