"""An emitted picture read back by who would move its men: names, moments and where they are."""

from __future__ import annotations

import re
from xml.etree import ElementTree

import pytest
from picture.sample_plays import ALL
from picture.sample_scenes import PLAYS, drawn, drawn_mirrored
from together import together

from stemline.emit.svg import to_svg
from stemline.geometry.box import Box
from stemline.geometry.paths import Point
from stemline.picture.frame.board import shot
from stemline.picture.picture import picture
from stemline.picture.scene.scene import Disc, Layer, Scene
from stemline.source import NOWHERE
from stemline.theme import Size, load_theme

THEME = load_theme()
each_play = together("name", PLAYS)


def named(svg: str) -> dict[str, ElementTree.Element]:
    """Every element with an id. Two of one id are a mistake."""
    elements = [e for e in ElementTree.fromstring(svg).iter() if e.get("id")]
    ids = [e.get("id", "") for e in elements]
    assert len(ids) == len(set(ids))
    return dict(zip(ids, elements, strict=True))


def moments(element: ElementTree.Element) -> list[float]:
    return [float(t) for t in element.get("data-times", "").split()]


@each_play
def test_each_man_and_each_line_of_his_is_found_by_its_id(name: str) -> None:
    for size in Size:
        _is_found(name, size)


def _is_found(name: str, size: Size) -> None:
    found = named(to_svg(drawn(name, size), THEME))
    shown = shot(PLAYS[name], size).play
    assert {man.label for man in shown.men} <= found.keys()
    runners = {
        task.man for task in shown.assignments
        if task.path and task.path.legs and not task.hits and task.path.ending.value != "block"
    }  # fmt: skip
    lines = {line for line in found if "-" in line}
    assert all(any(line.startswith(f"{man}-") for line in lines) for man in runners)
    assert all(re.fullmatch("[A-Za-z][A-Za-z0-9]*(-[a-z]+(-[0-9]+)?)?", one) for one in found)


@each_play
def test_a_line_has_a_moment_for_each_place_of_its_path(name: str) -> None:
    for size in Size:
        _has_moments(named(to_svg(drawn(name, size), THEME)))


def _has_moments(found: dict[str, ElementTree.Element]) -> None:
    timed = {name: e for name, e in found.items() if e.get("data-times")}
    assert timed.keys() == {name for name in found if "-" in name}
    for element in timed.values():
        times = moments(element)
        assert len(times) == len(re.findall("[MLQ]", element.get("d", "")))
        assert times == sorted(times)
        assert all(t == round(t, 2) for t in times)


@each_play
def test_a_mirrored_picture_has_the_same_moments(name: str) -> None:
    here, there = (
        {n: moments(e) for n, e in named(to_svg(scene, THEME)).items()}
        for scene in (drawn(name, Size.FULL), drawn_mirrored(name))
    )
    assert here.keys() == there.keys()
    for line, times in here.items():
        assert there[line] == pytest.approx(times, abs=0.0101)


def test_the_picture_of_one_man_has_the_same_names_and_moments() -> None:
    play = ALL["quads-return"]
    whole, one = (
        {n: (moments(e)[0], moments(e)[-1]) for n, e in
         named(to_svg(picture(play, Size.FULL, THEME, only=only), THEME)).items() if "-" in n}
        for only in (None, "H")
    )  # fmt: skip
    assert whole == one


def test_ids_may_have_a_word_before_them_or_be_left_out() -> None:
    scene = drawn("quads-return", Size.THUMB)
    plain, put, bare = (to_svg(scene, THEME, ids) for ids in ("", "call-3-", None))
    assert named(put).keys() == {f"call-3-{name}" for name in named(plain)}
    assert not named(bare) and "data-times" not in bare
    assert re.sub(r' (id|data-times)="[^"]*"', "", plain) == bare


def test_an_id_begins_with_a_letter() -> None:
    men = (Disc(Point(0, 0), 1.0, "man", NOWHERE, "2"), Disc(Point(3, 0), 1.0, "man", NOWHERE, "X"))
    scene = Scene("", "", Box(-5, -5, 5, 5), 5.0, Size.FULL, (Layer("men", men),))
    assert named(to_svg(scene, THEME)).keys() == {"man-2", "X"}
