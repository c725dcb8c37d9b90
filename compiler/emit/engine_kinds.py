"""What styles of one kind have in common, worked out once for all documents in the same fonts.

A style hangs on what the sheets say of its element, on its parent's and on nothing else of the
document: where both are alike, so is every value, and whatever is worked out from values alone. A
place's name is its own, and hangs on no parent.
"""

from __future__ import annotations

from typing import Any

KIND, _KINDS = "stemline kind", "stemline kinds"
"""Where on a style its kind is, and on fonts all that were met in them."""
_MOST = 20_000
"""Kinds that are held at a time: some thousand bytes each."""
NAME = "anchor"
DISPLAYED = ("position", "float", "display")
"""The properties of which the engine also holds what was said."""


class StyleKind:
    """``values`` are computed, ``specified`` those of `DISPLAYED` as they were said, ``made`` what
    was worked out from values alone."""

    __slots__ = ("made", "specified", "values")

    def __init__(self) -> None:
        self.values: dict[str, Any] = {}
        self.specified: dict[str, Any] = {}
        self.made: dict[str, Any] = {}


class _KindsMet:
    """The kinds by their keys, and what was said by its place in memory, held so that this stays
    its own."""

    def __init__(self) -> None:
        self.kinds: dict[tuple[Any, ...], StyleKind] = {}
        self.said: dict[int, tuple[Any, Any]] = {}

    def told(self, value: Any) -> Any:
        """The same for values that are alike in all that they are."""
        known = self.said.get(id(value))
        if known is None:
            known = self.said[id(value)] = value, _words(value)
        return known[1]


def _words(value: Any) -> Any:
    """All that a value says; for one that cannot be told, its place in memory."""
    from tinycss2 import serialize
    from tinycss2.ast import Node

    if type(value) is tuple and value and all(isinstance(each, Node) for each in value):
        return "variable", serialize(value)
    words = repr(value)
    return id(value) if "<" in words else words


def kind_of(style: Any) -> StyleKind | None:
    """The kind of a style that an element or a part of one has; None for any other, and for a copy,
    which is made to be changed."""
    own = vars(style)
    if KIND not in own:
        own[KIND] = _found(style)
    kind: StyleKind | None = own[KIND]
    return kind


def as_copy(style: Any) -> Any:
    """The style, a copy of another, as one of no kind."""
    vars(style)[KIND] = None
    return style


def memory_of(style: Any) -> dict[str, Any]:
    """Where what is worked out from a style's values is remembered."""
    own = vars(style)
    kind: StyleKind | None = own.get(KIND)
    return own if kind is None else kind.made


def _found(style: Any) -> StyleKind | None:
    said = getattr(style, "cascaded", None)
    if said is None:
        return None
    parent = style.parent_style
    over = None
    if parent is not None and (over := kind_of(parent)) is None:
        return None
    met: _KindsMet | None = vars(style.font_config).get(_KINDS)
    if met is None or len(met.kinds) >= _MOST:
        met = vars(style.font_config)[_KINDS] = _KindsMet()
    told = met.told
    key = (over, style.pseudo_type, style.base_url, *(
        (name, told(value), before, layer, tuple(specific))
        for name, (value, (before, layer, specific)) in said.items() if name != NAME
    ))  # fmt: skip
    kind = met.kinds.get(key)
    if kind is None:
        kind = met.kinds[key] = StyleKind()
    return kind
