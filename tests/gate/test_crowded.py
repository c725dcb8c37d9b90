"""Plays as crowded as the rules allow are still legible, at every size.

Six receivers inside five yards, bunches on both sides, stacks, a bunch at the sideline, men who
run into a bunch, two backs and two tight ends: each with a read for every man, depths, branches,
alerts and claims. Nothing that is written may touch anything; what the paths still do to each
other is held by a ceiling, as in `ceilings`.
"""

from __future__ import annotations

from collections import Counter
from functools import cache
from pathlib import Path

import pytest

from stemline.compile import compile_texts
from stemline.draw.picture import how_crowded, picture
from stemline.emit.svg import to_svg
from stemline.football.play import Play
from stemline.project import read_files
from stemline.theme import Size, load_theme

from .faults import Kind
from .pictures import Picture, Sort
from .table import Judged, judge, told

THEME = load_theme()
SORTS = {Size.FULL: Sort.LARGE, Size.QUARTER: Sort.QUARTER, Size.THUMB: Sort.OWN_SMALL}
OF_PATHS = frozenset({Kind.THROUGH, Kind.ALONG})

PATHS: dict[tuple[str, Size], dict[Kind, int]] = {
    ("Clutch Right Rush Thicket", Size.QUARTER): {Kind.THROUGH: 1},
    ("Clutch Right Rush Thicket", Size.THUMB): {Kind.THROUGH: 1},
    ("Totem Right Bramble", Size.QUARTER): {Kind.THROUGH: 1},
    ("Totem Right Bramble", Size.THUMB): {Kind.THROUGH: 1},
    ("Totem Right Knot", Size.FULL): {Kind.THROUGH: 1},
    ("Totem Right Knot", Size.QUARTER): {Kind.THROUGH: 1},
    ("Totem Right Knot", Size.THUMB): {Kind.THROUGH: 1},
    ("Totem Right Swarm Knot", Size.QUARTER): {Kind.THROUGH: 2},
    ("Totem Right Swarm Knot", Size.THUMB): {Kind.ALONG: 1},
    ("Ditch Right Rush Knot", Size.FULL): {Kind.ALONG: 1},
}
"""Paths through a symbol or along another path: a number here only goes down."""


def plays() -> tuple[Play, ...]:
    texts = read_files(Path(__file__).parent / "crowded")
    compiled = compile_texts(texts.sources, "crowded")
    assert not [d for d in compiled.diagnostics if d.is_error]
    assert compiled.season is not None
    return compiled.season.plays


PLAYS = {play.call.spoken: play for play in plays()}
every_picture = pytest.mark.parametrize(
    ("call", "size"),
    [(call, size) for call in PLAYS for size in Size],
    ids=lambda value: value.name.lower() if isinstance(value, Size) else value,
)


@cache
def judged(call: str, size: Size) -> Judged:
    svg = to_svg(picture(PLAYS[call], size, THEME), THEME)
    return judge(Picture("crowded", SORTS[size], call, svg), THEME)


def test_the_set_is_as_crowded_as_it_says() -> None:
    snap = [man.snap for man in PLAYS["Wedge Right Shoebox"].men if not man.interior]
    assert len(PLAYS) == 10
    assert len(snap) == 7
    assert max(at.x for at in snap) - min(at.x for at in snap) < 5.0
    assert len(PLAYS["Clutch Right Thicket"].reads) == 6


@every_picture
def test_nothing_written_touches_anything(call: str, size: Size) -> None:
    found = judged(call, size)
    assert not [f for f in found.faults if f.kind not in OF_PATHS], told(found)


@every_picture
def test_paths_meet_no_more_than_the_ceiling(call: str, size: Size) -> None:
    ceiling = PATHS.get((call, size), {})
    over = {kind for kind, count in of_paths(call, size).items() if count > ceiling.get(kind, 0)}
    assert not over, told(judged(call, size))


def test_what_is_mended_stays_mended() -> None:
    found = {row: dict(of_paths(*row)) for row in PATHS}
    lower = {row: kinds for row, kinds in found.items() if kinds != PATHS[row]}
    assert not lower, f"these are the faults now: {lower}"


def of_paths(call: str, size: Size) -> Counter[Kind]:
    """How often paths meet what they should not."""
    return Counter(f.kind for f in judged(call, size).faults if f.kind in OF_PATHS)


def test_the_report_finds_them() -> None:
    """The figure that tells a coach which diagrams are crowded is high for these."""
    large = [how_crowded(play, Size.FULL, THEME) for play in PLAYS.values()]
    assert sum(each.crowded for each in large) >= 6
