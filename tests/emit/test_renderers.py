"""Two renderers that share no code draw one SVG alike: the PDF's own engine, and resvg.

An SVG goes through WeasyPrint into a PDF, which PDFium paints, and through resvg. Both pictures are
made grey and slightly blurred, so that two ways to soften an edge do not count, and compared place
by place. The largest difference is judged and not the mean: one path that is missing or astray is a
small part of a picture. A faint line of the field is less than this can see.
"""

from __future__ import annotations

import base64
import io
import math
import re
from functools import cache

import numpy as np
import pypdfium2
import pytest
import resvg_py
from numpy.typing import NDArray
from picture.sample_scenes import drawn, legend
from PIL import Image
from scipy.ndimage import gaussian_filter
from weasyprint import HTML

from stemline.emit.svg import to_svg
from stemline.theme import Size, load_theme

DOTS = 3
"""Pixels to the point: whole, so that both renderers paint on one raster."""
BLUR = 2.0
"""Pixels, as a standard deviation: two thirds of a point."""
LIMIT = 0.08
"""Of the way from black to white, after the blur. Measured: two renderers differ by 0.05 at most, a
stroke that is missing or a point aside by 0.1 or more."""

Grey = NDArray[np.float64]

THEME = load_theme()
PICTURES = {
    f"{name}-{size.name.lower()}": (name, size)
    for name, size in (
        ("quads-return", Size.FULL),
        ("quads-return", Size.QUARTER),
        ("quads-return", Size.THUMB),
        ("trips", Size.FULL),
        ("power", Size.FULL),
        ("veer", Size.THUMB),
        ("slide", Size.FULL),
        ("look", Size.FULL),
        ("unbalanced", Size.THUMB),
    )
}


@cache
def svg_of(name: str) -> str:
    if name == "legend":
        return to_svg(legend()[1], THEME)
    play, size = PICTURES[name]
    return to_svg(drawn(play, size, duties=play == "look"), THEME)


def on_whole_points(svg: str) -> tuple[str, int, int]:
    """The picture with its frame grown to whole points, and how wide and tall that is."""
    found = re.search(r'viewBox="0 0 ([\d.]+) ([\d.]+)"', svg)
    assert found is not None
    wide, tall = math.ceil(float(found[1])), math.ceil(float(found[2]))
    svg = svg.replace(found[0], f'viewBox="0 0 {wide} {tall}"', 1)
    svg = re.sub(r' width="[\d.]+pt"', f' width="{wide}pt"', svg, count=1)
    return re.sub(r' height="[\d.]+pt"', f' height="{tall}pt"', svg, count=1), wide, tall


def grey(image: Image.Image) -> Grey:
    made: Grey = gaussian_filter(np.asarray(image.convert("L"), dtype=np.float64) / 255, BLUR)
    return made


def by_resvg(svg: str) -> Grey:
    whole, _, _ = on_whole_points(svg)
    png = resvg_py.svg_to_bytes(svg_string=whole, dpi=72 * DOTS, background="#ffffff")
    return grey(Image.open(io.BytesIO(bytes(png))))


def by_pdf(svg: str) -> Grey:
    whole, wide, tall = on_whole_points(svg)
    data = base64.b64encode(whole.encode()).decode()
    page = (
        f"<style>@page {{ size: {wide}pt {tall}pt; margin: 0 }} body {{ margin: 0 }}"
        f"img {{ display: block; width: {wide}pt; height: {tall}pt }}</style>"
        f'<img alt="" src="data:image/svg+xml;base64,{data}">'
    )
    document = pypdfium2.PdfDocument(HTML(string=page).write_pdf())
    assert len(document) == 1
    return grey(document[0].render(scale=DOTS).to_pil())


def apart(one: Grey, other: Grey) -> float:
    """The largest difference of two pictures, from 0 to 1."""
    assert one.shape == other.shape
    return float(np.abs(one - other).max())


@pytest.mark.parametrize("name", (*PICTURES, "legend"))
def test_both_draw_the_same(name: str) -> None:
    svg = svg_of(name)
    assert apart(by_resvg(svg), by_pdf(svg)) < LIMIT


def elements(svg: str, style: str) -> list[str]:
    return re.findall(rf'<path class="{style}"[^>]*/>', svg)


def moved(element: str, x: float, y: float) -> str:
    return element.replace("<path ", f'<path transform="translate({x} {y})" ', 1)


@pytest.mark.parametrize(
    ("name", "styles"),
    [
        ("quads-return-full", ("route", "route head", "motion", "depth")),
        ("quads-return-thumb", ("route", "route head", "motion")),
        ("power-full", ("carry", "block", "bar", "climb")),
    ],
)
def test_a_path_that_is_missing_or_a_point_aside_is_seen(
    name: str, styles: tuple[str, ...]
) -> None:
    svg = svg_of(name)
    printed = by_pdf(svg)
    for style in styles:
        element = elements(svg, style)[-1]
        assert apart(by_resvg(svg.replace(element, "", 1)), printed) > LIMIT, style
        if "transform" not in element:
            # a straight line moved along itself shows only at its ends: so to two sides
            aside = [moved(element, 1.0, 0.0), moved(element, 0.0, 1.0)]
            seen = [apart(by_resvg(svg.replace(element, to, 1)), printed) for to in aside]
            assert max(seen) > LIMIT, style


def test_a_dash_that_is_lost_is_seen() -> None:
    svg = svg_of("quads-return-full")
    dashes = re.compile(r' stroke-dasharray="[^"]*"')
    assert dashes.search(svg)
    assert apart(by_resvg(dashes.sub("", svg)), by_pdf(svg)) > LIMIT
