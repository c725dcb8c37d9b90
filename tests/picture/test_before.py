"""The play as it was, under the play as it is."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace

import pytest
from describe.test_changes import moved, with_path
from syrupy.assertion import SnapshotAssertion
from syrupy.extensions.image import SVGImageSnapshotExtension

from picture.sample_plays import ALL, path, quads, three_two
from picture.sample_runs import outside_zone, power, power_bear, slide
from stemline.emit.svg import to_svg
from stemline.football.play import Play
from stemline.geometry.curves import far_from, points_of
from stemline.picture.picture import picture
from stemline.picture.scene.scene import Disc, Item, Scene, Stroke, TextRun
from stemline.theme import Size, load_theme

THEME = load_theme()
BEFORE = {"before", "before-motion", "before-bar"}


def drawn(
    play: Play, before: Play | None, size: Size = Size.FULL, only: str | None = None
) -> Scene:
    return picture(play, size, THEME, before=before, only=only)


def layer(scene: Scene, name: str) -> tuple[Item, ...]:
    return next((each.items for each in scene.layers if each.name == name), ())


def styles(scene: Scene) -> Counter[str]:
    return Counter(item.style for item in layer(scene, "before"))


DEEPER = with_path(quads(), "S", (27, -1), (27, 12), (20, 12), job="In at 12")
"""Quads with a deeper route of S."""


@pytest.mark.parametrize("size", Size)
@pytest.mark.parametrize("play", [*ALL.values(), power(), slide()], ids=lambda p: p.call.spoken)
def test_an_unchanged_play_is_drawn_as_ever(play: Play, size: Size) -> None:
    alone, over = drawn(play, None, size), drawn(play, play, size)
    assert layer(over, "before") == ()
    for name in ("routes", "motions", "men", "notes"):
        assert layer(over, name) == layer(alone, name)


def test_only_what_changed_is_drawn_twice() -> None:
    scene = drawn(DEEPER, quads())
    assert styles(scene) == {"before": 1}
    (line,) = layer(scene, "before")
    assert isinstance(line, Stroke)
    (route,) = (
        item
        for item in layer(scene, "routes")
        if isinstance(item, Stroke) and item.name == "S-route"
    )
    new = points_of(route.segments)
    assert min(far_from(new, p) for p in points_of(line.segments)) > 0.1
    assert line.head


def test_the_old_line_shares_the_stem() -> None:
    """It begins where the two part, not at the man."""
    (line,) = layer(drawn(DEEPER, quads()), "before")
    assert isinstance(line, Stroke)
    assert line.segments[0].start.y > 5.0


def test_the_new_picture_is_not_moved_by_the_old_one() -> None:
    alone, over = drawn(DEEPER, None), drawn(DEEPER, quads())
    assert layer(over, "men") == layer(alone, "men")
    assert layer(over, "routes") == layer(alone, "routes")


def test_a_man_who_moved_leaves_a_ring() -> None:
    scene = drawn(moved(quads(), "S", -4.0), quads())
    rings = [i for i in layer(scene, "before") if isinstance(i, Disc) and i.style == "before-man"]
    assert [round(ring.centre.x, 1) for ring in rings] == [27.0]
    assert styles(scene)["before-letter"] == 1


def test_the_small_picture_has_no_rings() -> None:
    scene = drawn(moved(quads(), "S", -4.0), quads(), Size.THUMB)
    assert set(styles(scene)) == {"before"}


def test_an_old_place_under_a_man_is_said_in_words() -> None:
    """S where H was, and H where S was: no ring may lie on either."""
    by = {m.label: m for m in quads().men}
    swap = by["S"].at.x - by["H"].at.x
    now = moved(moved(quads(), "S", -swap), "H", swap)
    scene = drawn(now, quads())
    said = {i.text for i in scene.items if isinstance(i, TextRun)}
    assert {"S before", "H before"} <= said
    assert "before-man" not in styles(scene)


def test_an_old_motion_is_dashed() -> None:
    still = tuple(replace(t, motion=None) for t in quads().assignments)
    men = tuple(replace(m, at=m.snap) for m in quads().men)
    scene = drawn(replace(quads(), assignments=still, men=men), quads())
    found = styles(scene)
    assert found["before-motion"] == 2
    assert not any(i for i in layer(scene, "motions"))


def test_only_one_mans_changes() -> None:
    both = with_path(DEEPER, "Z", (32, 0), (32, 6), (25, 6))
    assert styles(drawn(both, quads()))["before"] == 2
    assert styles(drawn(both, quads(), only="Z"))["before"] == 1


def test_the_frame_holds_the_old_play() -> None:
    shallow = with_path(quads(), "Z", (32, 0), (32, 5))
    deep = with_path(quads(), "Z", (32, 0), (32, 30))
    scene = drawn(shallow, deep)
    tops = [p.y for i in layer(scene, "before") if isinstance(i, Stroke) for p in i.head]
    assert max(tops) < scene.frame.top


@pytest.mark.parametrize("size", Size)
@pytest.mark.parametrize(
    ("play", "before"),
    [(power(), power_bear()), (outside_zone(), power()), (three_two(), quads())],
    ids=["power", "zone", "three two"],
)
def test_names_stay_with_the_new_play(play: Play, before: Play, size: Size) -> None:
    """An old line is nobody's way in the scene, so that no name stands for two."""
    scene = drawn(play, before, size)
    assert styles(scene).keys() & BEFORE
    assert not any(i.name for i in layer(scene, "before") if isinstance(i, Stroke))


def test_the_title_and_the_words_say_what_changed() -> None:
    scene = drawn(DEEPER, quads())
    assert scene.title == f"{quads().call.spoken}, before and now"
    assert scene.description.startswith("S was: ")
    assert quads().call.spoken in scene.description


def test_an_old_line_ends_like_itself() -> None:
    tasks = tuple(
        replace(t, path=path((9.7, -1), (9.7, 4), ending=t.path.ending))
        if t.man == "H" and t.path
        else t
        for t in quads().assignments
    )
    found = styles(drawn(quads(), replace(quads(), assignments=tasks)))
    assert found["dot-pale"] == 1


@pytest.mark.parametrize("theme", ["plain", "dark"])
@pytest.mark.parametrize(
    ("play", "before"),
    [(DEEPER, quads()), (power(), power_bear())],
    ids=["deeper", "power"],
)
def test_pictures(play: Play, before: Play, theme: str, snapshot: SnapshotAssertion) -> None:
    look = load_theme(theme)
    svg = to_svg(picture(play, Size.FULL, look, before=before), look)
    assert svg.replace("><", ">\n<") == snapshot(extension_class=SVGImageSnapshotExtension)
