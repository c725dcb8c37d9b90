"""Pictures of the look team's cards: letters that are read from three yards, zones with an edge."""

from __future__ import annotations

from dataclasses import replace
from types import MappingProxyType

from stemline.emit.gallery import Art
from stemline.emit.pdf_ink import art_of
from stemline.football.play import Play
from stemline.football.timing.levels import PlayingLevel
from stemline.picture.picture import picture
from stemline.picture.scene.scene import Scene
from stemline.picture.turned import turned
from stemline.theme import Size, Theme
from stemline.week.call_sheet import least_points

READ_FROM = 3 * 36.0
"""Inches from the card to the man who reads it: three yards. ISO 9241-3's least capital, 16 minutes
of arc, is there 51.7 points of type."""
_LETTERS = ("letter", "defender", "defender-behind")
_RING = 0.55
"""How much of what its letter grows a man's ring grows: the ring has air, and its line no room."""
_TRIES, _SAME, _SPARE = 8, 0.004, 1.003
"""Larger men may take a larger frame, which is enlarged less: it is then tried again."""
_DASHES = (2.0, 1.6)


def card_picture(
    name: str, play: Play, theme: Theme, room: tuple[float, float], level: PlayingLevel
) -> tuple[Art, float]:
    """The play from the defence's side, and by how much it is enlarged to fill ``room`` points.

    A small picture is enlarged: of all sizes its symbols are the largest for its width. Its letters
    are then set as large as three yards take, and a zone has an edge that a copier keeps.
    """
    large, made = theme, _drawn(play, theme, level)
    factor = _fills(made, room)
    for _ in range(_TRIES):
        large = _for_cards(theme, factor)
        made = _drawn(play, large, level)
        before, factor = factor, _fills(made, room)
        if factor > before - _SAME:
            break
    return art_of(name, made, large, ""), factor


def _drawn(play: Play, theme: Theme, level: PlayingLevel) -> Scene:
    return turned(picture(play, Size.THUMB, theme, duties=True, level=level), theme)


def _fills(scene: Scene, room: tuple[float, float]) -> float:
    return min(room[0] / scene.width, room[1] / scene.height)


def _for_cards(theme: Theme, factor: float) -> Theme:
    """The theme with letters that have the least type when they are enlarged by ``factor``."""
    look = theme.look(Size.THUMB)
    points = least_points(READ_FROM) * _SPARE / factor
    more = max(points / look.types["defender"].points, 1.0)
    types = {
        **look.types,
        **{k: replace(look.types[k], points=max(points, look.types[k].points)) for k in _LETTERS},
    }
    rings = {k: look.symbol[k] * (1 + (more - 1) * _RING) for k in ("man", "letter_room")}
    zone = look.grounds["zone"]
    if zone.edge is not None:
        edge = replace(zone.edge, colour=theme.colours.ink, weight=0.5, dash=_DASHES)
        zone = replace(zone, edge=edge)
    card = replace(
        look,
        types=MappingProxyType(types),
        symbol=MappingProxyType({**look.symbol, **rings}),
        grounds=MappingProxyType({**look.grounds, "zone": zone}),
    )
    return replace(theme, looks={**theme.looks, Size.THUMB: card})
