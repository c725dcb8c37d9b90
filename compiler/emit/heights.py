"""What a document that was laid out says of its places: how tall, and on which page."""

from __future__ import annotations

from typing import Any

from stemline.book.layout.numbering import OPENING

POINTS = 0.75
"""Points to a CSS pixel."""


def heights_in(document: Any) -> dict[str, float]:
    """Height in points of every element that has an id, its pieces on several pages added up."""
    heights: dict[str, float] = {}
    for page in document.pages:
        for id_, (_, top, _, bottom) in page.anchors.items():
            heights[id_] = heights.get(id_, 0.0) + (bottom - top) * POINTS
    stands = stands_on(document)
    heights |= {f"{id_} pages": len(stands.get(id_, ())) for id_ in OPENING}
    return heights


def stands_on(document: Any) -> dict[str, list[int]]:
    """The pages from 1 on which each id stands, whole or a piece of it."""
    stands: dict[str, list[int]] = {}
    for number, page in enumerate(document.pages, 1):
        for id_ in page.anchors:
            stands.setdefault(id_, []).append(number)
    return stands
