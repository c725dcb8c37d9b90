"""Room on paper for a man who runs between two others."""

from __future__ import annotations

from dataclasses import replace

from picture.sample_plays import man, path, quads, task
from stemline.football.play import Play
from stemline.football.players import Position
from stemline.geometry.curves import far_from
from stemline.geometry.paths import Ending, polyline
from stemline.picture.frame.board import board, frame_of, shot
from stemline.picture.lines.route_lines import plan_runs
from stemline.picture.men.clearance import let_through
from stemline.picture.men.symbols import place_men
from stemline.picture.paper.symbol import Symbol
from stemline.theme import Size, load_theme

THEME = load_theme()


def diamond(to: tuple[float, float]) -> Play:
    """A back behind the quarterback, one to each side of him; the deep one blocks at ``to``."""
    men = tuple(m for m in quads().men if m.interior or m.label in "XZ")
    backs = (
        man("A", Position.BACK, -2, -4),
        man("F", Position.BACK, 2, -4),
        man("R", Position.BACK, 0, -7),
        man("Q", Position.QUARTERBACK, 0, -4),
    )
    steps = task("R", "", "Scan", path((0, -7), to, ending=Ending.BLOCK))
    return replace(quads(), men=(*men, *backs), assignments=(steps,), reads=(), claims=())


def symbols(play: Play, size: Size) -> tuple[dict[str, Symbol], dict[str, Symbol]]:
    on = board(frame_of((play,)), shot(play, size), size, THEME)
    placed = place_men(play, on)
    return placed, let_through(play, placed, on)


def test_the_two_men_beside_a_path_stand_wider_and_it_goes_straight_between_them() -> None:
    for size in Size:
        play = diamond((-0.9, -2.6))
        on = board(frame_of((play,)), shot(play, size), size, THEME)
        placed, parted = symbols(play, size)
        wider = parted["Q"].at.x - parted["A"].at.x - placed["Q"].at.x + placed["A"].at.x
        assert wider > 0.4 if size is Size.THUMB else wider >= 0
        (run,) = plan_runs(play, parted, on)
        drawn = polyline(run.path)
        for name in "AQF":
            far = far_from(drawn, parted[name].at)
            assert far > parted[name].edge + on.weight("route") / 2
        between = [p.x for p in drawn if abs(p.y + 4) < 1.2]
        assert all(parted["A"].at.x < x < parted["Q"].at.x for x in between)


def test_men_whom_nobody_runs_between_stay() -> None:
    for size in Size:
        placed, parted = symbols(diamond((-6.0, -6.0)), size)
        assert placed == parted


def test_a_path_led_behind_a_quarterback_under_centre_has_room_before_the_fullback() -> None:
    men = tuple(m for m in quads().men if m.interior or m.label in "XZ")
    backs = (
        man("F", Position.FULLBACK, 0, -4),
        man("B", Position.BACK, -2, -6),
        man("H", Position.BACK, 2, -6),
        man("Q", Position.QUARTERBACK, 0, -1),
    )
    fake = task("B", "", "Fake", path((-2, -6), (-0.5, -0.2), (4.4, -1.8), (6, 0.8)))
    play = replace(quads(), men=(*men, *backs), assignments=(fake,), reads=(), claims=())
    placed, parted = symbols(play, Size.THUMB)
    assert parted["Q"].at.y - parted["F"].at.y > placed["Q"].at.y - placed["F"].at.y + 0.2
