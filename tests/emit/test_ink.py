"""Pictures as drawing operators: what they paint, against a renderer of SVG that shares no code."""

from __future__ import annotations

import math
import re
from dataclasses import replace
from itertools import pairwise

import pypdfium2
import pytest
from hypothesis import given
from hypothesis import strategies as st
from picture.sample_scenes import drawn, legend

from emit.test_renderers import DOTS, LIMIT, Grey, apart, by_resvg, grey
from stemline.emit.gallery import Gallery
from stemline.emit.pdf import pages_pdf
from stemline.emit.pdf_ink import art_of, to_ink
from stemline.emit.svg import to_svg
from stemline.geometry.box import Box
from stemline.picture.scene.scene import Disc, Layer, Line, Plate, Point, Polygon, Scene, Stroke
from stemline.source import NOWHERE
from stemline.theme import Size, Theme, load_theme

THEME = load_theme()
SCENES = {
    "quads-return-full": ("quads-return", Size.FULL),
    "quads-return-thumb": ("quads-return", Size.THUMB),
    "trips-dark": ("trips", Size.FULL),
    "power": ("power", Size.FULL),
    "look": ("look", Size.FULL),
    "unbalanced": ("unbalanced", Size.THUMB),
}


def of(name: str) -> tuple[Scene, Theme]:
    theme = "dark" if name.endswith("-dark") else "plain"
    scene = drawn(*SCENES[name], theme, name == "look") if name in SCENES else legend()[1]
    return scene, load_theme(theme)


def by_operators(scene: Scene, theme: Theme) -> Grey:
    wide, tall = (math.ceil(round(side, 2)) for side in (scene.width, scene.height))
    art = art_of("a", scene, theme, "")
    page = (
        f'<html lang="en"><title>p</title><style>@page {{ size: {wide}pt {tall}pt; margin: 0 }}'
        f"body {{ margin: 0 }} img {{ display: block; width: {scene.width}pt }}</style>"
        '<img src="stemline:picture/a" alt="a"></html>'
    )
    document = pypdfium2.PdfDocument(pages_pdf(page, Gallery((art,)), theme, ""))
    assert len(document) == 1
    return grey(document[0].render(scale=DOTS).to_pil())


@pytest.mark.parametrize("name", (*SCENES, "legend"))
def test_operators_paint_what_the_svg_does(name: str) -> None:
    scene, theme = of(name)
    assert apart(by_resvg(to_svg(scene, theme)), by_operators(scene, theme)) < LIMIT


@pytest.mark.parametrize("kind", [Stroke, Disc, Plate])
def test_an_item_that_is_left_out_is_seen(kind: type) -> None:
    scene, theme = of("quads-return-full")
    kept = [
        replace(layer, items=tuple(item for item in layer.items if not isinstance(item, kind)))
        for layer in scene.layers
    ]
    less = replace(scene, layers=tuple(kept))
    assert less != scene
    assert apart(by_resvg(to_svg(scene, theme)), by_operators(less, theme)) > LIMIT


PLACE = st.builds(Point, st.floats(-30, 30), st.floats(-15, 25))
OPERATORS = re.compile(
    r"(?:\d+(?:\.\d+)?|\.\d+|-\d+(?:\.\d+)?|-\.\d+|\[[\d ]*\]|/\d+\.[0-9a-f]+|[a-zA-Z]+)"
)


@given(st.lists(PLACE, min_size=2, max_size=6), st.floats(0.05, 4), PLACE)
def test_numbers_are_whole_hundredths_and_every_word_is_one_of_pdf(
    places: list[Point], radius: float, centre: Point
) -> None:
    lines = tuple(Line(a, b) for a, b in pairwise(places))
    box = Box(centre.x, centre.y, centre.x + 2 * radius, centre.y + radius)
    items = (
        Stroke(lines, "route", tuple(places), NOWHERE),
        Disc(centre, radius, "man", NOWHERE),
        Plate(box, radius, "tile", NOWHERE),
        Polygon(tuple(places), "tile", NOWHERE),
    )
    frame = Box(-30, -15, 30, 25)
    scene = Scene("t", "d", frame, 7.3, Size.THUMB, (Layer("men", items),))
    ink = to_ink(scene, THEME)
    assert ink == to_ink(scene, THEME)
    for word in ink.operators.decode().replace("[]", "[ ]").split():
        assert OPERATORS.fullmatch(word) or word in "[]", word
