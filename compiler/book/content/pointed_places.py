"""The places of a book that pages point to by a word of a call."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TypeAlias

from stemline.book.content.page import call_ids, concept_groups
from stemline.football.play import Season

Places: TypeAlias = Mapping[tuple[str, str], str]
"""Ids by the part of a call, "formation", "motion" or "concept", and its word."""


def pointed_places(season: Season) -> Places:
    """The ids of the places of formations, motions and concepts."""
    ids = iter(call_ids(season))
    found: dict[tuple[str, str], str] = {}
    for plays in concept_groups(season):
        first, *_ = [next(ids) for _ in plays]
        found["concept", plays[0].call.concept] = f"concept-{first}"
    for number, formation in enumerate(season.formations, 1):
        found["formation", formation.name] = f"formation-{number}"
    for number, motion in enumerate(season.motions, 1):
        found["motion", motion.name] = f"motion-{number}"
    return found
