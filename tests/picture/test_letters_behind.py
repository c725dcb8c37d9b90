"""Defenders' letters behind routes step off the lines, however short a yard is on paper."""

from __future__ import annotations

from picture.sample_plays import quads
from picture.sample_runs import front
from stemline.geometry.box import Box
from stemline.geometry.curves import nearest
from stemline.geometry.paths import Point
from stemline.picture.frame.board import board, shot
from stemline.picture.lines.letters_aside import beside_lines
from stemline.picture.paper.letter import Letter, letter_of
from stemline.picture.paper.surface import Board
from stemline.picture.scene.ink import Ink
from stemline.theme import Size, load_theme

THEME = load_theme()
AT = Point(9.0, 7.0)


def stepped(*lines: tuple[Point, Point]) -> tuple[Letter, Board]:
    """Where a letter goes that would stand at `AT` among these lines of a quarter picture."""
    play = quads()
    on = board(Box(-20.0, -7.0, 20.0, 12.0), shot(play, Size.QUARTER), Size.QUARTER, THEME)
    letter = letter_of(front("One", ("S", AT.x, AT.y)).defenders[0], on, bold=False)
    ink = Ink(on.yards(1.5))
    for line in lines:
        ink.line(line)
    return beside_lines({"S": letter}, play, {}, ink, on)["S"], on


def clear(letter: Letter, a: Point, b: Point) -> bool:
    """Whether a line stays out of a letter's box."""
    at, _ = nearest(a, b, letter.at)
    return not (letter.box.left < at.x < letter.box.right) or not (
        letter.box.bottom < at.y < letter.box.top
    )


def test_a_letter_with_no_line_near_stays() -> None:
    letter, _ = stepped()
    assert letter.at == AT


def test_a_letter_among_several_lines_steps_as_far_as_it_must() -> None:
    lines = [
        (Point(AT.x + aside, AT.y - 4), Point(AT.x + aside, AT.y + 4)) for aside in (-0.6, 0, 0.6)
    ]
    letter, _ = stepped(*lines)
    assert all(clear(letter, a, b) for a, b in lines)


def test_the_end_of_a_line_is_seen_as_well_as_the_line() -> None:
    _, on = stepped()
    plain = letter_of(front("One", ("S", AT.x, AT.y)).defenders[0], on, bold=False)
    for part in (0.02, 0.1, 0.2):
        end = Point(plain.box.left + part * plain.box.width, AT.y)
        bar = (Point(end.x - 3.2 * on.yards(1.5), AT.y), end)
        letter, _ = stepped(bar)
        assert end.x <= letter.box.left or not letter.box.bottom < end.y < letter.box.top
