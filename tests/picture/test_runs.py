"""Pictures of runs, protections and looks: what a player would misread is looked for one by one."""

from __future__ import annotations

import itertools

import pytest
from syrupy.assertion import SnapshotAssertion
from together import together

from picture.mirror import mirrored
from picture.sample_runs import RUNS, look_page, outside_zone, power, slide
from picture.sample_scenes import drawn
from picture.scene_text import scene_text
from stemline.football.play import Kind
from stemline.geometry.box import Box
from stemline.geometry.curves import far_from, points_of
from stemline.picture.picture import frame_of, picture
from stemline.picture.scene.metrics import extent
from stemline.picture.scene.scene import Disc, Item, Plate, Point, Polygon, Scene, Stroke, TextRun
from stemline.theme import Size, load_theme

THEME = load_theme()
BOTH = [(name, size) for name in RUNS for size in Size]
each_picture = together(("name", "size"), BOTH, ids=[f"{n}-{s.name.lower()}" for n, s in BOTH])
ONLY_RUNS = [(n, s) for n, s in BOTH if RUNS[n].kind is Kind.RUN]
each_run = together(
    ("name", "size"), ONLY_RUNS, ids=[f"{n}-{s.name.lower()}" for n, s in ONLY_RUNS]
)


def draw(name: str, size: Size) -> Scene:
    return drawn(name, size, duties=name == "look")


def layer(scene: Scene, name: str) -> tuple[Item, ...]:
    return next((part.items for part in scene.layers if part.name == name), ())


def strokes(scene: Scene, *styles: str) -> list[Stroke]:
    return [i for i in scene.items if isinstance(i, Stroke) and i.style in styles]


def letters(scene: Scene) -> dict[str, Box]:
    """The box of each defender's letter."""
    found = {}
    for item in (*layer(scene, "defence"), *layer(scene, "behind")):
        if isinstance(item, TextRun) and item.style.startswith("defender"):
            found[item.text] = room(item, scene)
    return found


def room(run: TextRun, scene: Scene) -> Box:
    size = extent(run.text, THEME.look(scene.size).types[run.style], THEME)
    s, at = scene.scale, run.at
    return Box(at.x, at.y - size.fall / s, at.x + size.width / s, at.y + size.rise / s)


def symbols(scene: Scene) -> list[Box]:
    made = []
    for item in layer(scene, "men"):
        if isinstance(item, Disc):
            c, r = item.centre, 0.7 * item.radius
            made.append(Box(c.x - r, c.y - r, c.x + r, c.y + r))
        elif isinstance(item, Plate):
            made.append(item.box)
    return made


SNAPPED = [
    ("power", Size.FULL),
    ("look", Size.FULL),
    ("slide", Size.FULL),
    ("counter-two", Size.THUMB),
]


@pytest.mark.parametrize(("name", "size"), SNAPPED)
def test_scene(name: str, size: Size, snapshot: SnapshotAssertion) -> None:
    assert scene_text(draw(name, size)) == snapshot


@each_picture
def test_two_drawings_are_the_same(name: str, size: Size) -> None:
    assert draw(name, size) == draw(name, size)


@each_picture
def test_everything_is_inside_the_frame(name: str, size: Size) -> None:
    scene = draw(name, size)
    frame = scene.frame.grown(1e-6)
    for item in scene.items:
        if isinstance(item, Stroke):
            for p in (*points_of(item.segments), *item.head):
                assert frame.holds(Box(p.x, p.y, p.x, p.y)), item
        elif isinstance(item, Polygon):
            for p in item.points:
                assert frame.holds(Box(p.x, p.y, p.x, p.y)), item
        elif isinstance(item, TextRun):
            assert frame.holds(room(item, scene)), item


@each_picture
def test_no_letter_lies_on_a_man_or_another_letter(name: str, size: Size) -> None:
    scene = draw(name, size)
    boxes = list(letters(scene).values())
    assert boxes
    for a, b in itertools.combinations(boxes, 2):
        assert a.overlap(b) == 0
    for box, man in itertools.product(boxes, symbols(scene)):
        assert box.overlap(man) == 0


@each_picture
def test_linemen_do_not_touch(name: str, size: Size) -> None:
    men = [i for i in layer(draw(name, size), "men") if isinstance(i, Disc)]
    for a, b in itertools.combinations(men, 2):
        assert a.centre.distance(b.centre) > a.radius + b.radius


@each_run
def test_every_block_ends_in_a_bar_at_its_man_and_not_on_his_letter(name: str, size: Size) -> None:
    scene = draw(name, size)
    shown = letters(scene)
    reach = THEME.look(size).symbol["letter_room"] / scene.scale
    bars = [points_of(s.segments) for s in strokes(scene, "bar")]
    blocked = [hit.defender for task in RUNS[name].assignments for hit in task.hits]
    for defender in set(blocked):
        box = shown[defender]
        far = max(box.width, box.height) / 2 + reach
        near = [bar for bar in bars if far_from(bar, box.centre) < far + 1e-6]
        assert len(near) >= blocked.count(defender)
        for bar in near:
            assert not any(box.holds(Box(p.x, p.y, p.x, p.y)) for p in bar)


@each_run
def test_two_bars_at_one_man_stand_side_by_side(name: str, size: Size) -> None:
    scene = draw(name, size)
    middles = [points_of(s.segments) for s in strokes(scene, "bar")]
    half = THEME.look(size).symbol["hit_bar"] / scene.scale
    for a, b in itertools.combinations(middles, 2):
        assert centre(a).distance(centre(b)) > half


def centre(points: tuple[Point, ...]) -> Point:
    return (points[0] + points[-1]).scaled(0.5)


@each_run
def test_the_carrier_has_the_heaviest_line_and_nothing_breaks_it(name: str, size: Size) -> None:
    scene = draw(name, size)
    look = THEME.look(size)
    lines = [i for i in layer(scene, "routes") if isinstance(i, Stroke)]
    drawn = [i.style for i in lines if i.style != "bar"]
    assert drawn[-1] == "carry" and drawn.count("carry") == 1
    others = {look.pens[style].weight for style in drawn[:-1]}
    assert look.pens["carry"].weight >= 1.5 * max(others)


@each_run
def test_no_line_runs_through_a_letter(name: str, size: Size) -> None:
    scene = draw(name, size)
    for stroke in strokes(scene, "carry", "block", "climb", "fake", "route"):
        points = points_of(stroke.segments)
        for label, box in letters(scene).items():
            half = min(box.width, box.height) / 2
            assert far_from(points, box.centre) > 0.7 * half, (label, stroke.style)


def test_keys_are_boxed_and_free_men_have_a_wedge() -> None:
    scene = picture(outside_zone(), Size.FULL, THEME)
    shown = letters(scene)
    (box,) = [i.box for i in layer(scene, "defence") if isinstance(i, Plate)]
    assert box.holds(shown["J"])
    (wedge,) = [i for i in layer(scene, "defence") if isinstance(i, Polygon)]
    tip = min(wedge.points, key=lambda p: p.y)
    assert abs(tip.x - shown["R"].centre.x) < 1e-6 and tip.y > shown["R"].top


def test_a_deep_man_stands_at_the_edge_with_his_depth_and_is_dropped_when_small() -> None:
    full, small = picture(power(), Size.FULL, THEME), picture(power(), Size.THUMB, THEME)
    words = {i.text for i in layer(full, "defence") if isinstance(i, TextRun)}
    assert "F" in words and "12" in words
    assert "F" not in letters(small) and "M" in letters(small)


def test_a_small_picture_of_routes_keeps_only_those_who_cover() -> None:
    full, small = draw("pass-against", Size.FULL), draw("pass-against", Size.THUMB)
    assert {"E", "N", "J"} <= set(letters(full))
    assert {"E", "N", "J"}.isdisjoint(letters(small)) and "M" in letters(small)
    assert strokes(full, "set") and not strokes(small, "set")


def test_a_picture_of_blocks_is_closer_than_one_of_routes() -> None:
    scale = picture(power(), Size.FULL, THEME).scale
    assert scale > 1.1 * THEME.look(Size.FULL).yard


def test_where_field_is_closed_up_the_line_of_scrimmage_is_broken() -> None:
    scene = draw("counter-two", Size.FULL)
    assert len(strokes(scene, "break")) % 2 == 0 and strokes(scene, "break")
    line = [points_of(s.segments) for s in strokes(scene, "line-of-scrimmage")]
    assert len(line) == len(strokes(scene, "break")) // 2 + 1
    assert not strokes(draw("eight-man", Size.FULL), "break")


def test_runs_of_one_section_stand_at_one_scale() -> None:
    plays = [RUNS[name] for name in ("power", "outside-zone", "veer")]
    frame = frame_of(plays)
    assert len({picture(p, Size.THUMB, THEME, frame).scale for p in plays}) == 1


def test_duties_are_drawn_only_when_asked_for() -> None:
    asked, plain = picture(look_page(), Size.FULL, THEME, duties=True), draw_plain()
    assert len([i for i in layer(asked, "drops") if isinstance(i, Polygon)]) == 6
    assert len(strokes(asked, "rush")) == 4 and strokes(asked, "man")
    assert not strokes(plain, "rush", "drop", "man") and letters(plain)


def draw_plain() -> Scene:
    return picture(look_page(), Size.FULL, THEME)


def test_each_rusher_of_a_protection_comes_to_the_bar_that_meets_him() -> None:
    scene = picture(slide(), Size.FULL, THEME)
    tips = [s.head[0] for s in strokes(scene, "rush")]
    bars = [points_of(s.segments) for s in strokes(scene, "bar")]
    assert len(tips) == 5
    for tip in tips:
        assert min(far_from(bar, tip) for bar in bars) * scene.scale < 4


def test_the_mesh_is_marked_on_the_carriers_path() -> None:
    scene = picture(outside_zone(), Size.FULL, THEME)
    marks = strokes(scene, "mesh")
    (carry,) = (i for i in layer(scene, "routes") if isinstance(i, Stroke) and i.name == "R-carry")
    assert len(marks) == 2
    for mark in marks:
        start, end = points_of(mark.segments)
        across = [start + (end - start).scaled(i / 20) for i in range(21)]
        assert min(far_from(points_of(carry.segments), p) for p in across) < 0.05
        for man in layer(scene, "men"):
            assert not isinstance(man, Disc) or far_from(across, man.centre) > man.radius
    assert len(strokes(draw("outside-zone", Size.THUMB), "mesh")) == 2


@each_run
def test_the_mirrored_run_has_mirrored_lines(name: str, size: Size) -> None:
    play = RUNS[name]
    here, there = picture(play, size, THEME), picture(mirrored(play), size, THEME)
    assert _lines(here, 1) == _lines(there, -1)


def _lines(scene: Scene, side: int) -> list[tuple[str, tuple[tuple[float, float], ...]]]:
    """Every line without its bars, whose ends change places in a mirror."""
    return [
        (i.style, tuple((round(side * p.x, 4) + 0.0, round(p.y, 4)) for p in points_of(i.segments)))
        for i in layer(scene, "routes")
        if isinstance(i, Stroke) and not i.style.startswith("bar")
    ]
