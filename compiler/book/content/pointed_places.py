"""The places of a book that pages point to by a word of a call."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TypeAlias

from stemline.book.content.page import call_ids, concept_groups
from stemline.football.play import Season

Places: TypeAlias = Mapping[tuple[str, str], str]
"""Ids by the part of a call, "formation", "motion" or "concept", and its word."""


def formation_place(name: str) -> str:
    """The id of the place that shows how a formation lines up: by its name, so that who points to
    it needs not know which others there are."""
    return "formation-" + "".join(
        each if each.isalnum() else "-" if each == " " else f"_{ord(each):x}_" for each in name
    )


def concept_places(season: Season) -> Mapping[str, str]:
    """The ids of the places of concepts, by name."""
    ids = iter(call_ids(season))
    found: dict[str, str] = {}
    for plays in concept_groups(season):
        first, *_ = [next(ids) for _ in plays]
        found[plays[0].call.concept] = f"concept-{first}"
    return found


def pointed_places(season: Season) -> Places:
    """The ids of the places of formations, motions and concepts."""
    found = {("concept", name): place for name, place in concept_places(season).items()}
    for formation in season.formations:
        found["formation", formation.name] = formation_place(formation.name)
    for number, motion in enumerate(season.motions, 1):
        found["motion", motion.name] = f"motion-{number}"
    return found
