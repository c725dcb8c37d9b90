"""The gate sees each fault in a hand-made diagram, and none where there is none."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass, replace
from types import MappingProxyType

import pytest
from picture.sample_plays import ALL

from stemline.emit.svg import to_svg
from stemline.picture.picture import picture
from stemline.picture.scene.metrics import faces
from stemline.theme import Size, load_theme

from . import roles
from .faults import TOLERANCE, Kind, faults
from .marks import read_svg

THEME = load_theme()


@dataclass(frozen=True)
class Case:
    """Elements put over the clean diagram, and the faults they make."""

    elements: tuple[str, ...]
    kinds: dict[Kind, int]


def words(text: str, style: str, x: float, y: float, size: float = 8.0) -> str:
    """Words as outlines; ``x`` and ``y`` are the left end of the baseline."""
    face = faces(THEME)[THEME.look(Size.FULL).types[style].face]
    at, parts = 0.0, []
    for letter in text:
        glyph = face.glyph(letter)
        for verb, points in glyph.outline:
            parts.append(verb + " ".join(f"{(at + a) * size} {-b * size}" for a, b in points))
        at += glyph.advance
    moved = f"translate({x} {y})"
    d = "".join(parts)
    return f'<path class="{style}" d="{d}" data-text="{text}" fill="#000000" transform="{moved}"/>'


def stroke(style: str, *points: tuple[float, float], weight: float = 1.0) -> str:
    d = "M" + "L".join(f"{x} {y}" for x, y in points)
    return f'<path class="{style}" d="{d}" fill="none" stroke="#000000" stroke-width="{weight}"/>'


def curve(style: str, start: str, bend: str, end: str) -> str:
    d = f"M{start}Q{bend} {end}"
    return f'<path class="{style}" d="{d}" fill="none" stroke="#000000" stroke-width="1"/>'


def head(style: str, *points: tuple[float, float]) -> str:
    d = "M" + "L".join(f"{x} {y}" for x, y in points) + "Z"
    return f'<path class="{style} head" d="{d}" fill="#000000"/>'


def disc(style: str, x: float, y: float, r: float, edge: float = 1.0) -> str:
    paint = f'fill="#ffffff" stroke="#000000" stroke-width="{edge}"' if edge else 'fill="#000000"'
    return f'<circle class="{style}" cx="{x}" cy="{y}" r="{r}" {paint}/>'


def plate(style: str, x: float, y: float, wide: float, tall: float) -> str:
    at = f'x="{x}" y="{y}" width="{wide}" height="{tall}"'
    return f'<rect class="{style}" {at} fill="#ffffff"/>'


# A man with his route and a label beside it, a defender, a tile and a line of the field.
CLEAN = (
    stroke("yard-line", (0, 60), (200, 60), weight=0.45),
    stroke("route", (50, 93), (50, 40)),
    head("route", (50, 34), (48, 41), (52, 41)),
    disc("man", 50, 100, 6.5),
    words("H", "letter", 47.5, 103),
    words("D", "defender", 100, 30),
    plate("tile", 20, 20, 10, 10),
    words("1", "read", 23, 28),
    words("12", "depth", 60, 50),
)


def svg(*elements: str) -> str:
    body = "".join(elements)
    space = 'xmlns="http://www.w3.org/2000/svg"'
    return f'<svg {space} viewBox="0 0 200 150"><g class="all">{body}</g></svg>'


def kinds(*elements: str) -> dict[Kind, int]:
    return dict(Counter(fault.kind for fault in faults(read_svg(svg(*elements), THEME))))


FAULTY = {
    "two labels": Case((words("14", "depth", 64, 51),), {Kind.LABELS: 1}),
    "a label on a route": Case((words("9", "depth", 48, 80),), {Kind.ON_PATH: 1}),
    "a label on an arrowhead": Case((words("9", "depth", 50.5, 40),), {Kind.ON_PATH: 1}),
    "a label on a dot": Case(
        (disc("dot", 150, 40, 2.5, 0), words("9", "depth", 149, 42)), {Kind.ON_PATH: 1}
    ),
    "a label on a curve": Case(
        (curve("branch", "120 100", "150 100", "150 70"), words("9", "words", 140, 95)),
        {Kind.ON_PATH: 1},
    ),
    "a label on a leader that is not its own": Case(
        (stroke("leader", (120, 20), (160, 20)), words("9", "words", 140, 22)), {Kind.ON_PATH: 1}
    ),
    "a label on a field line": Case((words("9", "depth", 150, 62),), {Kind.ON_FIELD: 1}),
    "a halo too small": Case(
        (plate("halo", 150, 55, 1.5, 9), words("9", "depth", 150, 62)), {Kind.ON_FIELD: 1}
    ),
    "a label on a man": Case((words("9", "depth", 54, 97),), {Kind.ON_SYMBOL: 1}),
    "a label on a defender": Case((words("9", "depth", 103, 30),), {Kind.ON_SYMBOL: 1}),
    "a label on a tile": Case((words("9", "depth", 28, 27),), {Kind.ON_SYMBOL: 1}),
    "two men": Case((disc("man", 60, 108, 6.5),), {Kind.SYMBOLS: 1}),
    "a man on a defender": Case((disc("man", 106, 30, 6.5),), {Kind.SYMBOLS: 1}),
    "another's route": Case((stroke("route", (80, 100), (20, 100)),), {Kind.THROUGH: 1}),
    "a route into a defender": Case((stroke("route", (102, 90), (102, 28)),), {Kind.THROUGH: 1}),
    "a rush through a man": Case((stroke("rush", (102, 33), (54, 104)),), {Kind.THROUGH: 1}),
    "a block's bar on a defender": Case((stroke("bar", (98, 27), (108, 27)),), {Kind.THROUGH: 1}),
    "two routes on one line": Case(
        (
            disc("man", 150, 130, 6.5),
            stroke("route", (150, 123), (150, 90), (100, 90)),
            disc("man", 180, 130, 6.5),
            stroke("route", (180, 123), (180, 90.5), (130, 90.5)),
        ),
        {Kind.ALONG: 1},
    ),
    "two old routes on one line": Case(
        (
            disc("man", 150, 130, 6.5),
            stroke("before", (150, 123), (150, 90), (100, 90)),
            disc("man", 180, 130, 6.5),
            stroke("before", (180, 123), (180, 90.5), (130, 90.5)),
        ),
        {Kind.ALONG: 1},
    ),
    "an old route through a man": Case(
        (stroke("before", (80, 100), (20, 100)),), {Kind.THROUGH: 1}
    ),
    "a letter too wide": Case(
        (disc("man", 150, 100, 4.0), words("W", "letter", 145.5, 103)), {Kind.RING: 1}
    ),
    "a halo over a label": Case((plate("halo", 64, 44, 9, 9),), {Kind.CUT: 1}),
    "small type": Case((words("9", "depth", 150, 40, 5.8),), {Kind.SMALL: 1}),
    "a route that leaves the frame": Case(
        (stroke("route", (150, 100), (210, 100)),), {Kind.OUTSIDE: 1}
    ),
    "a label cut off": Case((words("12", "depth", 195, 40),), {Kind.OUTSIDE: 1}),
}


@pytest.mark.parametrize("case", FAULTY.values(), ids=FAULTY.keys())
def test_each_fault_is_found_once_and_nothing_else(case: Case) -> None:
    assert kinds(*CLEAN, *case.elements) == case.kinds


ALLOWED = {
    "nothing more": (),
    "an old route of another along a new one": (
        disc("man", 150, 130, 6.5), stroke("route", (150, 123), (150, 90), (100, 90)),
        disc("man", 180, 130, 6.5), stroke("before", (180, 123), (180, 90.5), (130, 90.5)),
    ),
    "routes that cross": (stroke("route", (30, 70), (80, 70)),),
    "a branch along its own route": (stroke("branch", (50, 80), (50, 55), (70, 55)),),
    "a halo over a field line": (plate("halo", 148, 54, 9, 9), words("9", "depth", 150, 62)),
    "words on a pale ground": (plate("zone", 130, 20, 40, 20), words("9", "words", 150, 30)),
    "a leader and its two ends": (
        stroke("leader", (25, 25), (34, 40)), words("9", "words", 34, 45)
    ),
    "a block and its defender": (stroke("block", (102, 80), (102, 29)),),
    "a branch that leaves its route": (stroke("branch", (50, 80), (52, 97)),),
    "a bar at the end of its own path": (
        stroke("block", (57, 100), (57.4, 100)), stroke("bar", (57.4, 96), (57.4, 104)),
    ),
    "a key's box round its letter": (
        plate("key", 147, 20, 10, 11), words("E", "defender", 150, 28)
    ),
    "white that is cut off": (plate("halo", 148, 140, 9, 20),),
    "six points": (words("9", "depth", 150, 40, 6.0), words("ab", "words", 160, 40, 6.0)),
}  # fmt: skip


@pytest.mark.parametrize("elements", ALLOWED.values(), ids=ALLOWED.keys())
def test_what_is_allowed_is_no_fault(elements: tuple[str, ...]) -> None:
    assert kinds(*CLEAN, *elements) == {}


@pytest.mark.parametrize(("into", "count"), [(TOLERANCE / 2, 0), (3 * TOLERANCE, 1)])
def test_touching_is_not_overlap(into: float, count: int) -> None:
    """A stroke of weight 2 beside a symbol, its edge so far inside the symbol's."""
    x = 150 + 7.0 + 1.0 - into
    found = kinds(disc("man", 150, 100, 6.5), stroke("route", (x, 130), (x, 70), weight=2.0))
    assert found.get(Kind.THROUGH, 0) == count


def test_a_fault_says_what_and_where() -> None:
    (fault,) = faults(read_svg(svg(*CLEAN, words("9", "depth", 48, 80)), THEME))
    assert str(fault) == "label on path: '9' (depth) / route of H at 50, 77"


def test_type_is_measured_in_what_is_drawn() -> None:
    """A theme that asks for less than it may, drawn as it asks."""
    look = THEME.look(Size.FULL)
    small = replace(look.types["depth"], points=5.0)
    types = MappingProxyType({**look.types, "depth": small})
    looks = MappingProxyType({**THEME.looks, Size.FULL: replace(look, types=types)})
    drawn = replace(THEME, looks=looks)
    play = ALL["quads-return"]
    found = faults(read_svg(to_svg(picture(play, Size.FULL, drawn), drawn), THEME))
    assert {f.what.split("(")[1].split(",")[0] for f in found if f.kind is Kind.SMALL} == {"depth"}
    (mark,) = read_svg(svg(words("12", "depth", 9, 9, 7.25)), THEME).marks
    assert mark.points == pytest.approx(7.25, abs=0.02)


def test_an_unknown_role_is_refused() -> None:
    with pytest.raises(ValueError, match="unknown role of a stroke or shape: wave"):
        kinds(stroke("wave", (0, 0), (9, 9)))


@pytest.mark.parametrize("size", Size)
def test_every_role_of_the_theme_is_sorted_once(size: Size) -> None:
    look = THEME.look(size)
    for names, groups in (
        ({roles.plain(n) for n in look.pens}, roles.STROKES),
        (set(look.grounds), roles.SHAPES),
        (set(look.types), roles.TEXTS),
    ):
        assert sorted(names) == sorted(name for group in groups for name in group)
