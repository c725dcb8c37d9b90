"""A book's paper, and the room that is left on it for text. Points."""

from __future__ import annotations

from enum import Enum


class Paper(Enum):
    """Sheet sizes by their CSS names; the value is width and height in inches."""

    LETTER = (8.5, 11.0)
    A4 = (8.268, 11.693)

    @property
    def css(self) -> str:
        return {Paper.LETTER: "letter", Paper.A4: "A4"}[self]

    @staticmethod
    def named(name: str) -> Paper:
        """The paper called ``name`` ("letter", "a4", in any case); KeyError for another."""
        return Paper[name.strip().upper()]


TOP, BOTTOM = 30.0, 38.0
"""Margins above the text and below it, the footer standing in the lower one."""


TEXT_WIDTH = 525.6
"""7.3 inches: the width of the large picture, and so of the text."""


def room(paper: Paper) -> float:
    """Height of the text on a page."""
    return paper.value[1] * 72 - TOP - BOTTOM


def side_margin(paper: Paper) -> float:
    """Margin left and right, so that the text is as wide as the large picture."""
    return (paper.value[0] * 72 - TEXT_WIDTH) / 2
