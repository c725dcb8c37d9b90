"""Pictures of the look team's cards: letters that are read from three yards, zones with an edge."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from math import ceil
from types import MappingProxyType

from stemline.emit.gallery import Art
from stemline.emit.pdf_ink import art_of
from stemline.football.play import Play
from stemline.picture.cards.look_card import look_card
from stemline.picture.turned import turned
from stemline.theme import Pen, Size, Theme
from stemline.week.call_sheet import least_points

READ_FROM = 3 * 36.0
"""Inches from the card to the man who reads it: three yards. ISO 9241-3's least capital, 16 minutes
of arc, is there 51.7 points of type."""
_LETTERS = ("letter", "defender", "read")
_SPARE = 1.003
_PENS = {
    "line-of-scrimmage": 1.6, "yard-line": 1.1, "hash": 1.6, "sideline": 2.6, "goal-line": 3.2,
    "rush": 2.8, "drop": 2.0, "man": 1.8,
}  # fmt: skip
"""Weights in points of the lines of a card."""
_EDGES = {"man": 2.6, "lineman": 1.8, "zone": 1.3}
_LARGEST_DUTY, _LEAST_DUTY, LEADING, BETWEEN = 20, 13, 1.1, 3.0
"""The column of duties: most and least points of type, a line's height in them, and points between
two men."""
_INDENT, _RAGGED = 1.7, 0.9
"""Ems before a duty, and the part of a line that its words fill."""
_DASHES = {"drop": (7.0, 4.5), "yard-line": (1.4, 6.0), "zone": (4.5, 3.5)}


def card_picture(name: str, play: Play, theme: Theme, room: tuple[float, float]) -> Art:
    """The play's look from the defence's side within ``room`` points, its letters as large as
    three yards take, and each zone with an edge that a copier keeps."""
    large = card_theme(theme)
    return art_of(name, turned(look_card(play, large, *room), large), large, "")


def duty_points(
    duties: Sequence[tuple[str, str]],
    ems: Callable[[str, str], float],
    wide: float,
    high: float,
) -> int:
    """The largest type in which the column of ``duties`` fills no more than ``wide`` and ``high``
    points; ``ems`` is how wide words are."""
    for points in range(_LARGEST_DUTY, _LEAST_DUTY, -1):
        line = (wide / points - _INDENT) * _RAGGED
        lines = sum(max(1, ceil(ems(job, "semibold") / line)) for _, job in duties)
        if lines * points * LEADING + BETWEEN * len(duties) <= high:
            return points
    return _LEAST_DUTY


def card_theme(theme: Theme) -> Theme:
    """The theme with letters that have the least type, and lines to go with them."""
    look = theme.look(Size.THUMB)
    points = least_points(READ_FROM) * _SPARE
    types = {k: replace(look.types[k], points=points) for k in _LETTERS}
    pens = {k: replace(look.pens[k], weight=w) for k, w in _PENS.items()}
    pens |= {k: replace(pens[k], dash=_DASHES[k]) for k in _DASHES if k in pens}
    grounds = dict(look.grounds)
    for style, weight in _EDGES.items():
        dash = _DASHES.get(style, ())
        grounds[style] = replace(look.grounds[style], edge=Pen(weight, theme.colours.ink, dash))
    card = replace(
        look,
        types=MappingProxyType({**look.types, **types}),
        pens=MappingProxyType({**look.pens, **pens}),
        grounds=MappingProxyType(grounds),
    )
    return replace(theme, looks={**theme.looks, Size.THUMB: card})
