"""SVG is a plain translation of the scene."""

from __future__ import annotations

from functools import cache
from xml.etree import ElementTree

import pytest
import resvg_py
from picture.sample_plays import ALL
from picture.sample_scenes import drawn, legend
from syrupy.assertion import SnapshotAssertion
from syrupy.extensions.image import SVGImageSnapshotExtension

from stemline.emit.svg import to_svg
from stemline.geometry.box import Box
from stemline.geometry.paths import Point
from stemline.picture.scene.scene import Disc, Layer, Scene, TextRun
from stemline.source import NOWHERE
from stemline.theme import Size, load_theme

THEME = load_theme()
SVG = "{http://www.w3.org/2000/svg}"


@cache
def scenes() -> tuple[tuple[str, Scene, str], ...]:
    """Every sample play at every size, and what explains the marks, each with its SVG."""
    made = {f"{name}-{size.name.lower()}": drawn(name, size) for name in ALL for size in Size}
    made |= {f"legend-{i}": scene for i, scene in enumerate(legend())}
    return tuple((name, scene, to_svg(scene, THEME)) for name, scene in made.items())


def test_it_is_xml_with_a_title_and_the_play_in_words() -> None:
    for name, scene, svg in scenes():
        root = ElementTree.fromstring(svg)
        assert root.findtext(f"{SVG}title") == scene.title
        assert root.findtext(f"{SVG}desc") == scene.description
        assert root.get("role") == "img", name
        groups = [g.get("class") for g in root.iter(f"{SVG}g")]
        assert groups == [layer.name for layer in scene.layers], name


def test_it_is_printed_at_the_scenes_size() -> None:
    for name, scene, svg in scenes():
        root = ElementTree.fromstring(svg)
        width, height = root.get("width", ""), root.get("height", "")
        assert float(width.removesuffix("pt")) == pytest.approx(scene.width, abs=0.01), name
        assert float(height.removesuffix("pt")) == pytest.approx(scene.height, abs=0.01), name


def test_it_needs_no_font_and_two_runs_are_the_same() -> None:
    for name, scene, svg in scenes():
        assert "<text" not in svg and "font" not in svg.lower(), name
        assert svg == to_svg(scene, THEME), name


def test_each_element_says_its_role_and_words_what_they_are() -> None:
    for name, scene, svg in scenes():
        look = THEME.look(scene.size)
        groups = list(ElementTree.fromstring(svg).iter(f"{SVG}g"))
        for layer, group in zip(scene.layers, groups, strict=True):
            roles = [e.get("class", "").removesuffix(" head") for e in group]
            styles = dict.fromkeys(i.style for i in layer.items)
            assert list(dict.fromkeys(roles)) == list(styles), name
            said = [e.get("data-text") for e in group if e.get("data-text")]
            assert said == [i.text for i in layer.items if isinstance(i, TextRun)], name
            for element in group:
                line = element.get("fill") == "none" or "head" in element.get("class", "")
                kind = look.pens if line else {**look.grounds, **look.types}
                assert element.get("class", "").removesuffix(" head") in kind, name


def test_marks_of_a_coach_stand_in_names_and_words_as_he_wrote_them() -> None:
    at, words = Point(0, 0), 'R&D <"1">'
    items = (Disc(at, 1.0, "man", NOWHERE, words), TextRun(words, at, "letter", NOWHERE))
    scene = Scene("", "", Box(-9, -9, 9, 9), 5.0, Size.FULL, (Layer("notes", items),))
    group = ElementTree.fromstring(to_svg(scene, THEME, "5-")).find(f"{SVG}g")
    assert group is not None and len(group) == 2
    assert group[0].get("id") == f"5-{words}" and group[1].get("data-text") == words


def test_it_renders() -> None:
    for name, _, svg in scenes():
        png = bytes(resvg_py.svg_to_bytes(svg_string=svg, dpi=96, background="#ffffff"))
        blank = bytes(
            resvg_py.svg_to_bytes(
                svg_string=svg[: svg.index("<g")] + "</svg>", dpi=96, background="#ffffff"
            )
        )
        assert png.startswith(b"\x89PNG")
        assert len(png) > len(blank), name


def test_thumbnail(snapshot: SnapshotAssertion) -> None:
    svg = to_svg(drawn("quads-return", Size.THUMB), THEME)
    assert svg.replace("><", ">\n<") == snapshot(extension_class=SVGImageSnapshotExtension)


def test_legend_entry(snapshot: SnapshotAssertion) -> None:
    svg = to_svg(legend()[2], THEME)
    assert svg.replace("><", ">\n<") == snapshot(extension_class=SVGImageSnapshotExtension)
