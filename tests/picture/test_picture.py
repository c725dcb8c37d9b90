"""Pictures of whole plays: the faults a coach would see are looked for one by one."""

from __future__ import annotations

import itertools
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from syrupy.assertion import SnapshotAssertion
from together import together

from picture.mirror import mirrored
from picture.sample_plays import ALL, counter, quads, quads_return, three_two
from picture.sample_scenes import drawn
from picture.scene_text import scene_text
from stemline.football.play import Play
from stemline.geometry.box import Box
from stemline.geometry.curves import far_from, points_of
from stemline.geometry.paths import Ending, Leg, Line, Point
from stemline.picture.picture import frame_of, picture
from stemline.picture.scene.scene import Disc, Item, Plate, Scene, Stroke, TextRun
from stemline.theme import Size, load_theme

THEME = load_theme()
BOTH = [(name, size) for name in ALL for size in Size]
each_picture = together(("name", "size"), BOTH, ids=[f"{n}-{s.name.lower()}" for n, s in BOTH])


def draw(name: str, size: Size) -> Scene:
    return drawn(name, size)


def layer(scene: Scene, name: str) -> tuple[Item, ...]:
    return next(part.items for part in scene.layers if part.name == name)


def texts(scene: Scene) -> list[str]:
    return [item.text for item in scene.items if isinstance(item, TextRun)]


def rooms(scene: Scene, layer_name: str) -> list[Box]:
    """Boxes of the words and tiles of a layer; the words inside a tile are part of it."""
    tiles = [
        item.box
        for item in layer(scene, layer_name)
        if isinstance(item, Plate) and item.style.startswith("tile")
    ]
    words = [_room(item, scene) for item in layer(scene, layer_name) if isinstance(item, TextRun)]
    return tiles + [w for w in words if not any(t.overlap(w) for t in tiles)]


def _room(run: TextRun, scene: Scene) -> Box:
    from stemline.picture.scene.metrics import extent

    room = extent(run.text, THEME.look(scene.size).types[run.style], THEME)
    s = scene.scale
    return Box(
        run.at.x, run.at.y - room.fall / s, run.at.x + room.width / s, run.at.y + room.rise / s
    )


@pytest.mark.parametrize(
    ("name", "size"), [("quads", Size.FULL), ("quads-return", Size.THUMB), ("counter", Size.FULL)]
)
def test_scene(name: str, size: Size, snapshot: SnapshotAssertion) -> None:
    assert scene_text(draw(name, size)) == snapshot


@each_picture
def test_no_symbol_touches_another(name: str, size: Size) -> None:
    scene = draw(name, size)
    pen = THEME.look(size).grounds["man"].edge_weight / scene.scale
    men = [item for item in layer(scene, "men") if isinstance(item, Disc)]
    for a, b in itertools.combinations(men, 2):
        assert a.centre.distance(b.centre) > a.radius + b.radius + pen / 2


@each_picture
def test_no_path_runs_through_another_man(name: str, size: Size) -> None:
    scene = draw(name, size)
    men = [item for item in layer(scene, "men") if isinstance(item, Disc)]
    men = [disc for disc in men if disc.style == "man"]
    lines = [i for i in layer(scene, "routes") if isinstance(i, Stroke) and i.style == "route"]
    assert lines
    for stroke in lines:
        points = points_of(stroke.segments)
        for disc in men:
            starts_here = points[0].distance(disc.centre) < disc.radius * 1.3
            if not starts_here:
                assert far_from(points, disc.centre) > disc.radius


@each_picture
def test_an_arrow_has_its_tip_where_the_path_ends(name: str, size: Size) -> None:
    scene = draw(name, size)
    ends = [
        task.path.end
        for task in ALL[name].assignments
        if task.path is not None and task.path.ending is Ending.RUN
    ]
    tips = [
        item.head[0]
        for item in layer(scene, "routes")
        if isinstance(item, Stroke) and item.style == "route" and item.head
    ]
    lane = THEME.look(size).symbol["lane"] / scene.scale
    assert len(tips) == len(ends)
    for end in ends:
        assert min(tip.distance(end) for tip in tips) <= 1.5 * lane


@each_picture
def test_an_arrowhead_sits_on_its_line_and_follows_it(name: str, size: Size) -> None:
    for item in draw(name, size).items:
        if isinstance(item, Stroke) and item.head and item.segments:
            tip, one, notch, other = item.head
            stem = item.segments[-1].end
            assert stem.distance(notch) < 0.3 * tip.distance(notch)
            assert abs(tip.distance(one) - tip.distance(other)) < 1e-6


@each_picture
def test_notes_lie_on_no_other_note_and_no_man(name: str, size: Size) -> None:
    scene = draw(name, size)
    boxes = rooms(scene, "notes")
    for a, b in itertools.combinations(boxes, 2):
        assert a.overlap(b) == 0
    men = [item for item in layer(scene, "men") if isinstance(item, Disc)]
    for box, disc in itertools.product(boxes, men):
        half = disc.radius * 0.7
        c = disc.centre
        assert box.overlap(Box(c.x - half, c.y - half, c.x + half, c.y + half)) == 0


@each_picture
def test_everything_is_inside_the_frame(name: str, size: Size) -> None:
    scene = draw(name, size)
    frame = scene.frame
    for item in scene.items:
        if isinstance(item, Stroke):
            for p in (*points_of(item.segments), *item.head):
                assert frame.grown(1e-6).holds(Box(p.x, p.y, p.x, p.y)), item
        elif isinstance(item, TextRun):
            assert frame.holds(_room(item, scene)), item


@each_picture
def test_a_read_stands_near_its_spot_or_has_a_leader(name: str, size: Size) -> None:
    scene = draw(name, size)
    play = ALL[name]
    tiles = [i.box for i in layer(scene, "notes") if isinstance(i, Plate) and i.style == "tile"]
    starts = [i.segments[0].start for i in layer(scene, "leaders") if isinstance(i, Stroke)]
    assert len(tiles) == len(play.reads)
    for read, box in zip(play.reads, tiles, strict=True):
        gap = read.at.distance(_nearest(box, read.at)) * scene.scale
        assert gap < 24 or any(s.distance(read.at) < 1e-6 for s in starts)


def _nearest(box: Box, p: Point) -> Point:
    return Point(min(max(p.x, box.left), box.right), min(max(p.y, box.bottom), box.top))


@each_picture
def test_nothing_is_printed_under_six_points(name: str, size: Size) -> None:
    scene = draw(name, size)
    for item in scene.items:
        if isinstance(item, TextRun):
            assert THEME.look(size).types[item.style].points >= 6


@each_picture
def test_two_runs_give_the_same_scene(name: str, size: Size) -> None:
    assert draw(name, size) == draw(name, size)


def test_the_motion_is_drawn_over_the_paths_and_off_the_line_of_scrimmage() -> None:
    scene = draw("quads", Size.FULL)
    names = [part.name for part in scene.layers]
    assert names.index("motions") > names.index("routes")
    dashed = next(
        i for i in layer(scene, "motions") if isinstance(i, Stroke) and i.style == "motion"
    )
    middle = points_of(dashed.segments)
    assert min(p.y for p in middle) < -0.3
    assert max(p.y for p in middle) < 0.2


def test_a_thumbnail_keeps_the_reads_and_drops_the_small_print() -> None:
    full, thumb = texts(draw("quads", Size.FULL)), texts(draw("quads", Size.THUMB))
    for word in ("1", "2", "3", "4", "A"):
        assert word in full and word in thumb
    for word in ("12", "Tuck, set 1 s", "zone", "middle open", "field", "15", "against Cover 1"):
        assert word in full and word not in thumb


def test_a_yard_is_as_long_across_as_up_and_the_same_in_one_section() -> None:
    plays = (quads(), quads_return(), three_two(wheel=True))
    frame = frame_of(plays)
    scales = {picture(p, Size.FULL, THEME, frame).scale for p in plays}
    assert len(scales) == 1
    scene = picture(plays[0], Size.FULL, THEME, frame)
    assert scene.width == pytest.approx(525.6)


@each_picture
def test_no_two_lines_lie_on_each_other(name: str, size: Size) -> None:
    scene = draw(name, size)
    pen = THEME.look(size).pens["route"].weight / scene.scale
    pieces = [
        (piece.start, piece.end)
        for item in layer(scene, "routes")
        if isinstance(item, Stroke) and item.style in ("route", "branch")
        for piece in item.segments
        if isinstance(piece, Line) and piece.start.distance(piece.end) > 2
    ]
    level = [(a, b) for a, b in pieces if abs(a.y - b.y) < 0.1 * abs(a.x - b.x)]
    for (a, b), (c, d) in itertools.combinations(level, 2):
        left = max(min(a.x, b.x), min(c.x, d.x))
        right = min(max(a.x, b.x), max(c.x, d.x))
        if right - left > 1:
            middle = (left + right) / 2
            assert abs(_height(a, b, middle) - _height(c, d, middle)) > pen


def _height(a: Point, b: Point, x: float) -> float:
    return a.y + (b.y - a.y) * (x - a.x) / (b.x - a.x)


def test_one_man_stands_out_when_asked_for() -> None:
    scene = picture(quads(), Size.FULL, THEME, only="H")
    strokes = [i for i in layer(scene, "routes") if isinstance(i, Stroke)]
    dark = [i for i in strokes if not i.style.endswith("-pale")]
    assert len(dark) == 1 and dark[0] is strokes[-1]
    rings = {i.style for i in layer(scene, "men") if isinstance(i, Disc)}
    assert rings == {"man-own", "man-pale", "lineman"}
    solid = picture(quads(), Size.THUMB, THEME, solid=("H", "X"))
    styles = [i.style for i in layer(solid, "men") if isinstance(i, Disc)]
    assert styles.count("man-own") == 2 and set(styles) == {"man-own", "man", "lineman"}
    stood = {i.style for i in layer(scene, "motions") if isinstance(i, Disc | TextRun)}
    assert stood == {"ghost-pale"}
    moved = quads().assignments
    (man,) = (task.man for task in moved if task.motion is not None)
    his = picture(quads(), Size.FULL, THEME, only=man)
    assert {i.style for i in layer(his, "motions") if isinstance(i, Disc | TextRun)} == {"ghost"}


@pytest.mark.parametrize("size", Size)
def test_what_is_written_for_the_others_is_pale(size: Size) -> None:
    play = quads()
    scene = picture(play, size, THEME, only="H")
    numbers = {i.text: i.style for i in layer(scene, "notes") if isinstance(i, TextRun)}
    his = {str(read.number) for read in play.reads if "H" in read.men}
    others = {str(read.number) for read in play.reads} - his
    assert his and others
    assert {numbers[n] for n in his} == {"read"}
    assert {numbers[n] for n in others} == {"read-pale"}
    tiles = [i.style for i in layer(scene, "notes") if isinstance(i, Plate) and "tile" in i.style]
    assert tiles.count("tile") == len(his)
    assert tiles.count("tile-pale") == len(others)
    assert tiles.count("tile-open-pale") == len(play.alerts)
    chevrons = {i.style for i in layer(scene, "notes") if isinstance(i, Stroke)}
    assert not any("H" in read.men for read in play.pressure)
    assert chevrons == {"chevron-pale"}


def test_depths_and_words_of_the_others_are_pale() -> None:
    scene = picture(quads(), Size.FULL, THEME, only="H")
    styles = {i.text: i.style for i in layer(scene, "notes") if isinstance(i, TextRun)}
    assert styles["12"] == "depth-pale"
    assert styles["Tuck, set 1 s"] == "words-pale"
    whole = picture(quads(), Size.FULL, THEME)
    assert not any(i.style.endswith("-pale") for i in whole.items)


def test_linemen_who_protect_need_no_lines() -> None:
    labels = {
        item.text for item in layer(draw("quads", Size.FULL), "men") if isinstance(item, TextRun)
    }
    assert labels == {"X", "Y", "H", "S", "Z", "R", "Q"}
    bars = [
        i for i in draw("counter", Size.FULL).items if isinstance(i, Stroke) and i.style == "bar"
    ]
    assert len(bars) == 6


@settings(max_examples=30, deadline=None)
@given(
    st.sampled_from(["quads", "quads-wheel", "quads-return", "three-two", "trips"]),
    st.sampled_from(list(Size)),
    st.integers(-15, 15),
    st.integers(-10, 10),
)
def test_the_mirrored_play_has_mirrored_paths(name: str, size: Size, dx: int, dy: int) -> None:
    play = moved(ALL[name], Point(dx / 10, dy / 10))
    here, there = picture(play, size, THEME), picture(mirrored(play), size, THEME)
    assert [_rounded(s, 1) for s in paths(here)] == [_rounded(s, -1) for s in paths(there)]


def moved(play: Play, by: Point) -> Play:
    """The play with the end of every path moved a little, so that no two runs are alike."""
    tasks = []
    for task in play.assignments:
        path = task.path
        if path is not None:
            legs = (*path.legs[:-1], Leg(path.end + by))
            task = replace(task, path=replace(path, legs=legs))
        tasks.append(task)
    return replace(play, assignments=tuple(tasks))


def paths(scene: Scene) -> list[Stroke]:
    return [i for i in layer(scene, "routes") if isinstance(i, Stroke)]


def _rounded(stroke: Stroke, side: int) -> tuple[str, tuple[tuple[float, float], ...]]:
    points = points_of(stroke.segments)
    return stroke.style, tuple((round(side * p.x, 5) + 0.0, round(p.y, 5)) for p in points)


def test_a_counter_is_drawn_behind_the_line() -> None:
    scene = picture(counter(), Size.FULL, THEME)
    assert "Jet, full speed" in texts(scene)
    jets = [i for i in layer(scene, "motions") if isinstance(i, Stroke) and i.style == "motion"]
    assert jets[0].head, "he is running at the snap"
