"""When a concept's page carries the caution on crossing routes."""

from __future__ import annotations

from dataclasses import replace

import pytest
from sample_season import crossers, path

from stemline.book.content.cautions import paths_cross
from stemline.football.play import Play
from stemline.football.timing.levels import HIGH_SCHOOL
from stemline.geometry.paths import Path


def with_paths(x: Path | None, y: Path | None) -> Play:
    play = crossers()[0]
    jobs = tuple(replace(a, path={"X": x, "Y": y}.get(a.man)) for a in play.assignments)
    return replace(play, assignments=jobs)


@pytest.mark.parametrize(
    ("x", "y", "expected"),
    [
        (path((-9, 0), (6, 5)), path((6, -1), (-9, 6)), True),
        (path((-9, 0), (-9, 12), (6, 12)), path((6, -1), (-4, 18)), False),
        (path((-9, 0), (-9, 10)), path((6, 0), (6, 10)), False),
        (path((-9, -1), (6, -4)), path((6, -1), (-9, -4)), False),
        (path((-9, 0), (6, 5)), None, False),
    ],
    ids=["shallow", "deep", "side by side", "behind the line", "one path"],
)
def test_crossing_close_to_the_line(x: Path, y: Path | None, expected: bool) -> None:
    assert paths_cross(with_paths(x, y), HIGH_SCHOOL) is expected
    assert paths_cross(with_paths(y, x), HIGH_SCHOOL) is expected
