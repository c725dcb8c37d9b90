"""A theme: how pictures look, read from a folder that a coach may copy and change.

A theme is `theme.toml` and its fonts. Drawing code names roles ("route", "letter"); only a theme
says how heavy, how grey, how large. Weights and sizes are points on the printed page.
"""

from __future__ import annotations

import hashlib
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from enum import Enum
from functools import cache
from importlib.resources import files
from importlib.resources.abc import Traversable
from types import MappingProxyType
from typing import Any

SMALLEST_TYPE = 6.0
"""Points. Nothing is printed smaller, whatever a theme asks for."""


class Size(Enum):
    """The two sizes a picture is drawn in."""

    FULL = 0
    THUMB = 1


class ThemeError(ValueError):
    """A theme that cannot be read; the message is for the person who wrote it."""


@dataclass(frozen=True)
class Pen:
    """How a line is drawn: weight and dashes in points, grey from 0 (black) to 1 (white)."""

    weight: float
    grey: float
    dash: tuple[float, ...]


@dataclass(frozen=True)
class Ground:
    """How a shape is filled and edged; ``fill`` is None for an empty one, ``edge`` for no edge."""

    fill: float | None
    edge: Pen | None

    @property
    def edge_weight(self) -> float:
        return self.edge.weight if self.edge else 0.0


@dataclass(frozen=True)
class Type:
    """How text is set: a face of the theme, points, grey."""

    face: str
    points: float
    grey: float


@dataclass(frozen=True)
class Look:
    """A theme at one size.

    ``width`` and ``height`` are the most room a picture takes, ``yard`` the longest that a yard
    is drawn, ``margin`` the white round the content: all in points, as ``symbol`` is.
    """

    width: float
    height: float
    yard: float
    margin: float
    symbol: Mapping[str, float]
    pens: Mapping[str, Pen]
    grounds: Mapping[str, Ground]
    types: Mapping[str, Type]


@dataclass(frozen=True, eq=False)
class Theme:
    """A theme as read. ``digest`` changes when anything in its table or its fonts does."""

    name: str
    title: str
    looks: Mapping[Size, Look]
    fonts: Mapping[str, bytes]
    digest: str

    def look(self, size: Size) -> Look:
        return self.looks[size]


@cache
def load_theme(name: str = "plain") -> Theme:
    """The bundled theme of that name. Raises `ThemeError` when it is missing or wrong."""
    return read_theme(files("stemline.themes") / name, name)


def read_theme(folder: Traversable, name: str) -> Theme:
    """The theme kept in ``folder``: a coach's own, or a bundled one."""
    try:
        text = (folder / "theme.toml").read_bytes()
        table = tomllib.loads(text.decode("utf-8"))
        fonts = {face: (folder / file).read_bytes() for face, file in table["font"].items()}
        looks = {size: _look(table, size) for size in Size}
        title = str(table["title"])
    except (OSError, tomllib.TOMLDecodeError, KeyError, TypeError, IndexError, ValueError) as why:
        raise ThemeError(f"theme {name}: {type(why).__name__}: {why}") from why
    digest = hashlib.sha256(text)
    for face in sorted(fonts):
        digest.update(face.encode() + fonts[face])
    return Theme(name, title, MappingProxyType(looks), MappingProxyType(fonts), digest.hexdigest())


def _look(table: Mapping[str, Any], size: Size) -> Look:
    picture = table["picture"]
    return Look(
        width=_pick(picture["width"], size),
        height=_pick(picture["height"], size),
        yard=_pick(picture["yard"], size),
        margin=_pick(picture["margin"], size),
        symbol=MappingProxyType({k: _pick(v, size) for k, v in table["symbol"].items()}),
        pens=MappingProxyType({k: _pen(v, v["grey"], size) for k, v in table["stroke"].items()}),
        grounds=MappingProxyType({k: _ground(v, size) for k, v in table["shape"].items()}),
        types=MappingProxyType(
            {k: _type(v, table["font"], size) for k, v in table["text"].items()}
        ),
    )


def _pick(pair: Any, size: Size) -> float:
    return float(pair[size.value] if isinstance(pair, list) else pair)


def _pen(row: Mapping[str, Any], grey: Any, size: Size) -> Pen:
    dash = row.get("dash", ())
    if dash and isinstance(dash[0], list):
        dash = dash[size.value]
    return Pen(_pick(row["weight"], size), float(grey), tuple(float(d) for d in dash))


def _ground(row: Mapping[str, Any], size: Size) -> Ground:
    edge = _pen(row, row["edge"], size) if "edge" in row else None
    return Ground(float(row["fill"]) if "fill" in row else None, edge)


def _type(row: Mapping[str, Any], fonts: Mapping[str, Any], size: Size) -> Type:
    face = str(row["face"])
    if face not in fonts:
        raise ValueError(f"no face called {face} under [font]")
    points = max(SMALLEST_TYPE, _pick(row["size"], size))
    return Type(face, points, float(row.get("grey", 0.0)))
