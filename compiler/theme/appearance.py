"""A whole theme table, all of it sound, as looks: the pens, grounds and types of each size."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Any

from stemline.theme.sizing import at_size, dash_at
from stemline.theme.theme import SMALLEST_TYPE, Appearance, Colours, Fill, Pen, Size, Type

Table = Mapping[str, Any]

_EDGE = 0.8
"""Points: an edge that a theme gives to a shape without saying how heavy."""


def colours_of(table: Table) -> Colours:
    """The ground and the ink; black on white where a theme names none."""
    said = table.get("colour", {})
    plain = Colours()
    return Colours(
        str(said.get("ground", plain.ground)).lower(), str(said.get("ink", plain.ink)).lower()
    )


def look_of(table: Table, size: Size) -> Appearance:
    """The table at one size. Every role must have its values."""
    paint = _Paint(table)
    picture = table["picture"]
    return Appearance(
        width=at_size(picture["width"], size),
        height=at_size(picture["height"], size),
        yard=at_size(picture["yard"], size),
        margin=at_size(picture["margin"], size),
        symbol=MappingProxyType({k: at_size(v, size) for k, v in table["symbol"].items()}),
        pens=MappingProxyType({k: paint.pen(v, size) for k, v in table["stroke"].items()}),
        grounds=MappingProxyType({k: paint.ground(v, size) for k, v in table["shape"].items()}),
        types=MappingProxyType({k: paint.type(v, size) for k, v in table["text"].items()}),
    )


class _Paint:
    """Rows of the table as pens, grounds and types, their inks worked out."""

    def __init__(self, table: Table) -> None:
        self._colours = colours_of(table)
        named = {k: str(v).lower() for k, v in table.get("colour", {}).items()}
        self._named = {"ground": self._colours.ground, "ink": self._colours.ink, **named}

    def pen(self, row: Table, size: Size) -> Pen:
        return Pen(at_size(row["weight"], size), self._ink(row), dash_at(row.get("dash", ()), size))

    def ground(self, row: Table, size: Size) -> Fill:
        fill, edge = row.get("fill", "none"), row.get("edge", "none")
        pen = None
        if edge != "none":
            pen = Pen(
                at_size(row.get("weight", _EDGE), size),
                self._colour(edge),
                dash_at(row.get("dash", ()), size),
            )
        return Fill(None if fill == "none" else self._colour(fill), pen)

    def type(self, row: Table, size: Size) -> Type:
        points = max(SMALLEST_TYPE, at_size(row["size"], size))
        return Type(str(row["face"]), points, self._ink(row))

    def _ink(self, row: Table) -> str:
        return self._colour(row.get("colour", row.get("grey", 0.0)))

    def _colour(self, said: Any) -> str:
        if isinstance(said, str):
            return self._named.get(said, said.lower())
        return self._colours.shade(float(said))
