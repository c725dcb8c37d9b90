"""Frames in place of a season's pictures: the book's tests are about pages, not about drawing."""

from __future__ import annotations

from stemline.book.content.page import call_ids
from stemline.emit.gallery import Art, Gallery
from stemline.football.play import Season

CAPTIONS = ("a route", "a motion", "a block")

BOX = (
    '<svg xmlns="http://www.w3.org/2000/svg" width="{w}pt" height="{h}pt" viewBox="0 0 {w} {h}">'
    '<path d="M1 1H{x}V{y}H1Z" fill="none" stroke="#000"/></svg>'
)


def box(id_: str, width: float, height: float) -> Art:
    svg = BOX.format(w=width, h=height, x=width - 1, y=height - 1)
    return Art(id_, svg, f"a picture called {id_}", width, height)


def gallery_of(season: Season, captions: tuple[str, ...]) -> Gallery:
    large = {call_ids(season)[i] for i in _firsts(season)}
    calls = (
        box(id_, 525.6, 260) if id_ in large else box(id_, 165.6, 95) for id_ in call_ids(season)
    )
    clocks = (box(f"clock-{id_}", 525.6, 70) for id_ in sorted(large))
    legend = (box(f"legend-{i}", 60, 30) for i in range(1, len(captions) + 1))
    return Gallery((*calls, *clocks, *legend))


def _firsts(season: Season) -> list[int]:
    names = [play.call.concept for play in season.plays]
    return [names.index(name) for name in dict.fromkeys(names)]
