"""A theme's inks, read from what is emitted, and which of them a reader must tell apart.

Nothing is asked of the theme's own model: every role is drawn once and its paint read back. A theme
in colours is judged the day it can be drawn.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from enum import Enum
from xml.etree import ElementTree

from stemline.emit.svg import to_svg
from stemline.geometry.box import Box
from stemline.picture.scene.scene import Disc, Item, Layer, Line, Point, Scene, Stroke, TextRun
from stemline.source import NOWHERE
from stemline.theme import Size, Theme

from . import roles
from .colour import Rgb, Vision, contrast, difference, rgb, seen

TEXT_CONTRAST = 4.5
"""WCAG 2.2, success criterion 1.4.3, level AA, for text under 18 points (14 in bold)."""
MARK_CONTRAST = 3.0
"""WCAG 2.2, success criterion 1.4.11: what is needed to understand a drawing."""
APART = 20.0
"""CIELAB distance by which two thin strokes are told apart. Common practice, no published source:
about nine times the least visible difference of large fields, 2.3 (M. Mahy, L. Van Eycken and
A. Oosterlinck, Color Research and Application 19(2), 1994)."""
DASH_RATIO, WEIGHT_RATIO = 1.4, 1.25
"""How many times longer a dash, or heavier a stroke, is told from another. Common practice, no
published source."""

Parts = tuple[str, str]
"""A role by its sort ("stroke", "shape", "text") and name."""


@dataclass(frozen=True)
class Ink:
    """How a role is painted. ``colour`` is a stroke's, a text's or a shape's edge; ``fill`` what
    a shape is filled with; weight and dash in points."""

    colour: str
    weight: float = 0.0
    dash: tuple[float, ...] = ()
    fill: str = ""


class By(Enum):
    """How two inks are told apart without a second look."""

    COLOUR = "colour, to all eyes and on a grey printer"
    DASH = "dash"
    WEIGHT = "weight"


@dataclass(frozen=True)
class Pair:
    """Two roles that must be told apart. ``shape`` says by what they are told besides ink; empty
    where the ink alone must do it."""

    sort: str
    one: str
    other: str
    shape: str = ""


PAIRS = (
    Pair("stroke", "route", "branch"),
    Pair("stroke", "route", "motion"),
    Pair("stroke", "branch", "motion"),
    Pair("stroke", "route", "carry"),
    Pair("stroke", "route", "drop"),
    Pair("stroke", "route", "yard-line"),
    Pair("stroke", "route", "line-of-scrimmage"),
    Pair("stroke", "route", "leader"),
    Pair("stroke", "route", "route-pale"),
    Pair("stroke", "branch", "branch-pale"),
    Pair("stroke", "motion", "motion-pale"),
    Pair("stroke", "carry", "carry-pale"),
    Pair("stroke", "block", "block-pale"),
    Pair("stroke", "block", "climb"),
    Pair("stroke", "block", "carry"),
    Pair("stroke", "block", "set"),
    Pair("stroke", "climb", "motion"),
    Pair("stroke", "carry", "fake"),
    Pair("stroke", "carry", "pitch"),
    Pair("stroke", "route", "held"),
    Pair("stroke", "held", "held-pale"),
    Pair("stroke", "held", "block"),
    Pair("stroke", "held", "fake"),
    Pair("stroke", "held", "flight"),
    Pair("stroke", "flight", "route"),
    Pair("stroke", "flight", "carry"),
    Pair("stroke", "flight", "pitch"),
    Pair("stroke", "rush", "drop"),
    Pair("stroke", "rush", "man"),
    Pair("stroke", "man", "drop"),
    Pair("stroke", "bar", "set-bar"),
    Pair("stroke", "yard-line", "line-of-scrimmage"),
    Pair("stroke", "foot", "foot-down"),
    Pair("stroke", "ball", "arrival"),
    Pair("shape", "man", "ghost"),
    Pair("shape", "man", "man-pale"),
    Pair("shape", "man-own", "man-pale"),
    Pair("shape", "man-own", "dot", "a dot is smaller, at the end of a line"),
    Pair("shape", "man-pale", "ghost-pale"),
    Pair("stroke", "route", "before"),
    Pair("stroke", "branch", "before"),
    Pair("stroke", "motion", "before-motion"),
    Pair("stroke", "bar", "before-bar"),
    Pair("shape", "man", "before-man"),
    Pair("shape", "tile", "tile-open"),
    Pair("shape", "tile", "tile-pale"),
    Pair("shape", "tile-open", "tile-open-pale"),
    Pair("stroke", "chevron", "chevron-pale"),
    Pair("text", "depth", "depth-pale", "a depth stands beside its path, which is pale"),
    Pair("text", "words", "words-pale", "words stand beside their line, which is pale"),
    Pair("text", "alert", "alert-pale"),
    Pair("stroke", "route", "block", "a route ends in an arrow, a block in a bar"),
    Pair("stroke", "route", "rush", "a rush starts at a letter that has no ring"),
    Pair("stroke", "branch", "drop", "a drop starts at a letter that has no ring"),
    Pair("stroke", "branch", "climb", "a branch ends in an arrow, a climb in a bar"),
    Pair("stroke", "carry", "held", "the line of the man who gives the ball on ends at its mark"),
    Pair("stroke", "flight", "climb", "a climb ends in a bar, a flight in the mark of an exchange"),
    Pair("stroke", "flight", "branch", "a flight ends in a mark across it, a branch in an arrow"),
    Pair("stroke", "flight", "motion", "a flight ends in a mark across it, a motion has none"),
    Pair("stroke", "flight", "drop", "a drop starts at a letter that has no ring"),
    Pair("stroke", "pitch", "eyes", "a pitch is on a run's picture, eyes on a protection's"),
    Pair("shape", "man", "lineman", "a lineman is smaller and stands in the line"),
    Pair("shape", "man", "key", "a man is round, a key's box is square"),
    Pair("shape", "dot", "free", "a dot is round, the wedge over a free man has corners"),
    Pair("text", "letter", "defender", "a man's letter has a ring"),
    Pair("text", "depth", "words", "words slant"),
    Pair("text", "depth", "yards", "yards stand at the picture's edge"),
)

STANDS_ON: dict[str, tuple[str, ...]] = {
    "letter": ("man",),
    "letter-own": ("man-own",),
    "letter-pale": ("man-pale",),
    "lineman": ("lineman",),
    "ghost": ("ghost",),
    "ghost-pale": ("ghost-pale",),
    "read": ("tile",),
    "before-letter": ("before-man",),
    "read-pale": ("tile-pale",),
    "alert": ("tile-open",),
    "alert-pale": ("tile-open-pale",),
    "defender": ("", "key", "zone"),
    "defender-behind": ("", "key", "claim"),
    "depth": ("", "halo", "claim"),
    "depth-pale": ("", "halo", "claim"),
    "words": ("", "halo", "claim", "zone"),
    "words-pale": ("", "halo", "claim"),
    "yards": ("", "halo"),
    "corner": ("", "halo"),
    "clock-name": ("",),
    "clock-wrong": ("",),
    "clock-foot": ("",),
    "clock-second": ("",),
}
"""The shapes that each text may be printed on, "" being the paper."""

FAINT = roles.HALOS
"""Roles that may be fainter than a mark: they take the ground's colour on purpose."""


def inks(theme: Theme, size: Size) -> dict[Parts, Ink]:
    """Every role's ink as it is emitted."""
    look = theme.look(size)
    here, there = Point(0.0, 0.0), Point(1.0, 0.0)
    layers: dict[str, tuple[Item, ...]] = {
        "stroke": tuple(Stroke((Line(here, there),), name, (), NOWHERE) for name in look.pens),
        "shape": tuple(Disc(here, 1.0, name, NOWHERE) for name in look.grounds),
        "text": tuple(TextRun("A", here, name, NOWHERE) for name in look.types),
    }
    drawn = tuple(Layer(name, items) for name, items in layers.items())
    scene = Scene("", "", Box(-9.0, -9.0, 9.0, 9.0), 10.0, size, drawn)
    root = ElementTree.fromstring(to_svg(scene, theme))
    return {
        (group.get("class", ""), element.get("class", "")): _ink(group.get("class", ""), element)
        for group in root.iter("{http://www.w3.org/2000/svg}g")
        for element in group
    }


def _ink(sort: str, element: ElementTree.Element) -> Ink:
    fill = element.get("fill", "none")
    fill = "" if fill == "none" else fill
    if sort == "text":
        return Ink(fill)
    dash = tuple(float(n) for n in element.get("stroke-dasharray", "").split())
    edge = element.get("stroke", "")
    return Ink(edge or fill, float(element.get("stroke-width", 0.0)), dash, fill)


def coloured(plain: Mapping[Parts, Ink], colours: Mapping[Parts, str]) -> dict[Parts, Ink]:
    """The inks with some in another colour, a shape's fill kept."""
    return {**plain, **{role: replace(plain[role], colour=to) for role, to in colours.items()}}


def told_by(one: Ink, other: Ink) -> frozenset[By]:
    """By what two inks are told apart."""
    ways: set[By] = set()
    if all(_apart(one, other, vision) for vision in Vision):
        ways.add(By.COLOUR)
    if bool(one.dash) != bool(other.dash) or _ratio(sum(one.dash), sum(other.dash)) >= DASH_RATIO:
        ways.add(By.DASH)
    if _ratio(one.weight, other.weight) >= WEIGHT_RATIO:
        ways.add(By.WEIGHT)
    return frozenset(ways)


def _apart(one: Ink, other: Ink, vision: Vision) -> bool:
    """By the colours of their lines, or by what they are filled with."""
    return any(
        difference(seen(rgb(a), vision), seen(rgb(b), vision)) >= APART
        for a, b in ((one.colour, other.colour), (one.fill, other.fill))
        if a and b
    )


def _ratio(a: float, b: float) -> float:
    low, high = sorted((a, b))
    return high / low if low else 1.0


def confused(palette: Mapping[Parts, Ink]) -> list[Pair]:
    """The pairs that only their ink could tell apart, and does not."""
    return [
        pair
        for pair in PAIRS
        if not pair.shape
        and not told_by(palette[pair.sort, pair.one], palette[pair.sort, pair.other])
    ]


def too_faint(palette: Mapping[Parts, Ink], paper: str) -> Iterator[tuple[str, str, float]]:
    """Texts and marks with too little contrast: their name, what they stand on, the contrast.

    ``paper`` is the colour of the ground they are printed on.
    """
    ground = rgb(paper)
    for (sort, name), ink in palette.items():
        if sort == "text":
            for under in STANDS_ON[name]:
                ratio = contrast(rgb(ink.colour), _ground(palette, under, ground))
                if ratio < TEXT_CONTRAST:
                    yield name, under or "paper", ratio
        elif name not in FAINT:
            ratio = max(contrast(rgb(c), ground) for c in (ink.colour, ink.fill) if c)
            if ratio < MARK_CONTRAST:
                yield name, "paper", ratio


def _ground(palette: Mapping[Parts, Ink], name: str, paper: Rgb) -> Rgb:
    return rgb(palette["shape", name].fill) if name else paper
