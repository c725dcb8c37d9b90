"""The ground of a defender's letter is clear: no line across the field runs through it."""

from __future__ import annotations

from dataclasses import replace

import pytest

from picture.sample_runs import power
from stemline.geometry.box import Box
from stemline.geometry.paths import Line, Point
from stemline.picture.lines.field_lines import HASH, YARD_LINE, broken_at
from stemline.picture.picture import picture
from stemline.picture.scene.metrics import extent
from stemline.picture.scene.scene import Scene, Stroke, TextRun
from stemline.source import NOWHERE
from stemline.theme import Size, load_theme

THEME = load_theme()


def letters(scene: Scene) -> list[Box]:
    """The ink of each letter of the defence, in the scene's yards."""
    kind = THEME.look(scene.size).types
    made = []
    for item in scene.items:
        if isinstance(item, TextRun) and item.style.startswith("defender"):
            room = extent(item.text, kind[item.style], THEME)
            wide, tall = room.width / scene.scale, room.rise / scene.scale
            made.append(Box(item.at.x, item.at.y, item.at.x + wide, item.at.y + tall))
    return made


@pytest.mark.parametrize("size", list(Size))
def test_no_yard_line_runs_through_a_letter(size: Size) -> None:
    run = power()
    assert run.defence is not None
    on = {d.label for d in run.defence.defenders[:6]}
    moved = tuple(
        replace(d, at=Point(d.at.x, 5.0)) if d.label in on else d for d in run.defence.defenders
    )
    scene = picture(replace(run, defence=replace(run.defence, defenders=moved)), size, THEME)
    lines = [i for i in scene.items if isinstance(i, Stroke) and i.style in (YARD_LINE, HASH)]
    pieces = [(s.start, s.end) for line in lines for s in line.segments]
    boxes = letters(scene)
    assert len(boxes) > 5
    met = 0
    for box in boxes:
        for a, b in pieces:
            across = min(a.x, b.x) < box.right and box.left < max(a.x, b.x)
            assert not (across and a.y == b.y and box.bottom < a.y < box.top), (box, a, b)
        met += any(a.y == b.y and box.bottom < a.y < box.top for a, b in pieces)
    assert met, "nobody stands on a yard line"


def test_a_depth_stands_on_the_side_where_no_other_letter_does() -> None:
    """Two deep men beside each other: "B 8D 10" was read as a depth of D."""
    run = power()
    assert run.defence is not None
    first, second, *rest = (d for d in run.defence.defenders if d.at.y < 8)
    deep = (
        replace(first, label="B", at=Point(-2.0, 12.0)),
        replace(second, label="D", at=Point(-0.6, 12.0)),
    )
    scene = picture(
        replace(run, defence=replace(run.defence, defenders=(*deep, *rest))),
        Size.THUMB, THEME, whole=True,
    )  # fmt: skip
    runs = [i for i in scene.items if isinstance(i, TextRun)]
    at = {run.text: run.at.x for run in runs if run.text in ("B", "D")}
    depths = sorted(run.at.x for run in runs if run.text == "12")
    assert len(depths) == 2 and depths[0] < at["B"] < at["D"] < depths[1]


def test_a_hash_under_a_letter_is_left_out_and_one_beside_it_stays() -> None:
    marks = tuple(Stroke((Line(Point(x, 4.5), Point(x, 5.5)),), HASH, (), NOWHERE) for x in (0, 3))
    assert broken_at(marks, [Box(-1, 4, 1, 5)]) == marks[1:]
    assert broken_at(marks, [Box(-1, 5.6, 1, 7)]) == marks
