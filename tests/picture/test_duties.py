"""What a look's men are there for, at every size: words in the picture, lines that can be told."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import pytest

from picture.close_board import THEME
from picture.sample_plays import man
from picture.sample_runs import PRO, front, run
from stemline.football.defenders import Defence, Duty, DutyKind
from stemline.football.play import Kind, Play
from stemline.football.players import Position
from stemline.geometry.curves import points_of
from stemline.geometry.paths import Point
from stemline.picture.picture import picture
from stemline.picture.scene.scene import Scene, Stroke, TextRun
from stemline.theme import Size


def look(*duties: Duty, **where: tuple[float, float]) -> Defence:
    made = front("Test", *((label, x, y) for label, (x, y) in where.items()))
    men = zip(made.defenders, duties, strict=True)
    return replace(made, defenders=tuple(replace(d, duty=duty) for d, duty in men))


def drawn(against: Defence, size: Size) -> Scene:
    men = (*(m for m in PRO if m.label not in "QR"), man("Q", Position.QUARTERBACK, 0, -5),
           man("R", Position.BACK, -1.4, -5))  # fmt: skip
    play: Play = replace(run("Look", against, men, (), carrier=""), kind=Kind.PASS)
    return picture(play, size, THEME, duties=True)


@pytest.mark.parametrize("size", Size)
def test_the_word_of_a_deep_ground_is_inside_the_picture(size: Size) -> None:
    third = Duty(DutyKind.THIRD, "deep third", "", Point(0, 30))
    wide = [Duty(DutyKind.MAN, "man", who, None) for who in ("X", "Z")]
    scene = drawn(look(third, *wide, F=(0, 12), C=(-30, 5), H=(30, 5)), size)
    words = [i for i in scene.items if isinstance(i, TextRun) and i.text == "third"]
    assert bool(words) == (size is not Size.THUMB)
    tall = 0.7 * THEME.look(size).types["words"].points / scene.scale
    assert all(word.at.y + tall <= scene.frame.top for word in words)


BLITZ = look(
    Duty(DutyKind.RUSH, "A gap", "", Point(-0.65, -0.5)),
    Duty(DutyKind.MAN, "man on back", "R", None),
    J=(-2.4, 1.0),
    M=(-0.1, 4.5),
)
"""The man who has the back comes through the gap that is rushed."""


def at_line(scene: Scene, style: str) -> list[float]:
    """Where strokes of a style cross the line of scrimmage."""
    found = []
    for item in scene.items:
        if isinstance(item, Stroke) and item.style == style:
            points = points_of(item.segments)
            for a, b in pairwise(points):
                if a.y >= 0 > b.y:
                    found.append(a.x + (b.x - a.x) * a.y / (a.y - b.y))
    return found


def test_a_man_who_covers_through_a_rushed_gap_is_drawn_beside_the_rush() -> None:
    scene = drawn(BLITZ, Size.FULL)
    (rush,), (cover,) = at_line(scene, "rush"), at_line(scene, "man")
    pens = THEME.look(Size.FULL).pens
    assert abs(rush - cover) * scene.scale > (pens["rush"].weight + pens["man"].weight) / 2


@pytest.mark.parametrize("size", [Size.QUARTER, Size.THUMB])
def test_a_smaller_picture_draws_him_beside_it_or_not_at_all(size: Size) -> None:
    scene = drawn(BLITZ, size)
    pens = THEME.look(size).pens
    for rush in at_line(scene, "rush"):
        for cover in at_line(scene, "man"):
            assert abs(rush - cover) * scene.scale > (pens["rush"].weight + pens["man"].weight) / 2


TWIST = look(
    Duty(DutyKind.RUSH, "C gap", "", Point(3.25, -0.5)),
    Duty(DutyKind.RUSH, "B gap", "", Point(1.95, -0.5), behind="T", via=Point(1.7, 2.0)),
    T=(1.7, 0.9),
    E=(3.3, 0.9),
)


@pytest.mark.parametrize("size", [Size.FULL, Size.QUARTER])
def test_an_end_who_comes_in_beside_the_tackle_makes_no_loop_over_him(size: Size) -> None:
    rushes = [
        points_of(i.segments)
        for i in drawn(TWIST, size).items
        if isinstance(i, Stroke) and i.style == "rush"
    ]
    ends = max(rushes, key=lambda points: max(p.y for p in points))
    behind = [p.x for p in ends if p.y > 0.9]
    assert len(behind) > 1
    assert all(b <= a + 0.01 for a, b in pairwise(behind))
