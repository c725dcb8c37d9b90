"""Plays as crowded as the rules allow are still legible, at every size.

Six receivers inside five yards, bunches on both sides, stacks, a bunch at the sideline, men who
run into a bunch, two backs and two tight ends: each with a read for every man, depths, branches,
alerts and claims. Both on paper and on a projector, where everything is heavier.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from stemline.emit.svg import to_svg
from stemline.football.play import Play
from stemline.outside.project import read_files
from stemline.picture.picture import how_crowded, picture
from stemline.session import Session
from stemline.theme import Size, load_theme

from .pictures import CALL, Picture
from .table import judge, told

THEMES = {name: load_theme(name) for name in ("plain", "dark")}


def plays() -> tuple[Play, ...]:
    texts = read_files(Path(__file__).parent / "crowded")
    compiled = Session(texts.sources, "crowded")
    assert not [d for d in compiled.diagnostics if d.is_error]
    assert compiled.season is not None
    return compiled.season.plays


PLAYS = {play.call.spoken: play for play in plays()}
NO_ROOM = {("Ditch Right Rush Knot", Size.FULL, "plain")}
"""Where a depth finds no place that is free of a dashed branch, since large letters are larger."""


def _marked(call: str, size: Size, theme: str) -> object:
    marks = pytest.mark.xfail(strict=True) if (call, size, theme) in NO_ROOM else ()
    return pytest.param(call, size, theme, marks=marks)


every_picture = pytest.mark.parametrize(
    ("call", "size", "theme"),
    [_marked(call, size, theme) for call in PLAYS for size in Size for theme in THEMES],
    ids=lambda value: value.name.lower() if isinstance(value, Size) else value,
)


def test_the_set_is_as_crowded_as_it_says() -> None:
    snap = [man.snap for man in PLAYS["Wedge Right Shoebox"].men if not man.interior]
    assert len(PLAYS) == 10
    assert len(snap) == 7
    assert max(at.x for at in snap) - min(at.x for at in snap) < 5.0
    assert len(PLAYS["Clutch Right Thicket"].reads) == 6


@every_picture
def test_a_crowded_picture_is_clean(call: str, size: Size, theme: str) -> None:
    look = THEMES[theme]
    svg = to_svg(picture(PLAYS[call], size, look), look)
    found = judge(Picture("crowded", CALL[size], call, svg), look)
    assert not found.faults, told(found)


def test_the_report_finds_them() -> None:
    """The figure that tells a coach which diagrams are crowded is high for these."""
    large = [how_crowded(play, Size.FULL, THEMES["plain"]) for play in PLAYS.values()]
    assert sum(each.crowded for each in large) >= 6
