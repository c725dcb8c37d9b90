"""The values of a theme. Weights and sizes are points on the printed page, colours "#rrggbb"."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import Enum
from pathlib import PurePath

from stemline.source import Span

SMALLEST_TYPE = 6.0
"""Points. Nothing is printed smaller, whatever a theme asks for."""


class Size(Enum):
    """The three sizes a picture is drawn in, the largest first."""

    FULL = 0
    QUARTER = 1
    THUMB = 2


SIZES = {"large": Size.FULL, "quarter": Size.QUARTER, "small": Size.THUMB}
"""The sizes by the words a coach asks for them with."""


@dataclass(frozen=True)
class Pen:
    """How a line is drawn: weight and dashes in points, and its colour."""

    weight: float
    colour: str
    dash: tuple[float, ...]


@dataclass(frozen=True)
class Fill:
    """How a shape is filled and edged; ``fill`` is None for an empty one, ``edge`` for no edge."""

    fill: str | None
    edge: Pen | None

    @property
    def edge_weight(self) -> float:
        return self.edge.weight if self.edge else 0.0


@dataclass(frozen=True)
class Type:
    """How text is set: a face of the theme, points, colour."""

    face: str
    points: float
    colour: str


@dataclass(frozen=True)
class Appearance:
    """A theme at one size.

    ``width`` and ``height`` are the most room a picture takes, ``yard`` the longest that a yard
    is drawn, ``margin`` the ground round the content: all in points, as ``symbol`` is.
    """

    width: float
    height: float
    yard: float
    margin: float
    symbol: Mapping[str, float]
    pens: Mapping[str, Pen]
    grounds: Mapping[str, Fill]
    types: Mapping[str, Type]


@dataclass(frozen=True)
class Colours:
    """What the page is printed on and with."""

    ground: str = "#ffffff"
    ink: str = "#000000"

    @property
    def white(self) -> bool:
        """Whether the ground is the paper itself, which nothing has to be laid on."""
        return self.ground == "#ffffff"

    def shade(self, grey: float) -> str:
        """A grey from 0, the ink, to 1, the ground."""
        pairs = zip(_levels(self.ink), _levels(self.ground), strict=True)
        mixed = (round(ink + (ground - ink) * grey) for ink, ground in pairs)
        return "#" + "".join(f"{level:02x}" for level in mixed)


@dataclass(frozen=True)
class ThemeFolder:
    """One theme's folder as it was read: where it is, and its files by their path in it.

    Nothing is opened again, so a file that is changed meanwhile changes nothing. ``bundled`` is
    one that comes with the program.
    """

    place: str
    files: Mapping[str, bytes]
    bundled: bool = False

    def named(self, file: str) -> str:
        """What a message calls a file of it."""
        return str(PurePath(self.place, file))


@dataclass(frozen=True, eq=False)
class Theme:
    """A theme as read. ``digest`` changes when any file of it does.

    ``layers`` are its own folder and then, in turn, those of the themes it extends: a file is taken
    from the first that has it. ``faces_at`` is where each face is named.
    """

    name: str
    title: str
    looks: Mapping[Size, Appearance]
    fonts: Mapping[str, bytes]
    digest: str
    colours: Colours
    layers: tuple[ThemeFolder, ...]
    faces_at: Mapping[str, Span]

    @property
    def bundled(self) -> bool:
        """Whether all of it comes with the program."""
        return all(layer.bundled for layer in self.layers)

    def look(self, size: Size) -> Appearance:
        return self.looks[size]


def _levels(colour: str) -> tuple[int, int, int]:
    red, green, blue = (int(colour[i : i + 2], 16) for i in (1, 3, 5))
    return red, green, blue
