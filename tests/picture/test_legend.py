"""The page that explains the marks shows every mark a picture can have."""

from __future__ import annotations

from picture.sample_plays import ALL
from picture.sample_runs import RUNS
from stemline.picture.legend.legend import legend_entries
from stemline.picture.picture import picture
from stemline.picture.scene.scene import Scene, Stroke
from stemline.theme import Size, load_theme

THEME = load_theme()
EVERY = [(p, name == "look") for name, p in {**ALL, **RUNS}.items()]
UNEXPLAINED = {"leader", "halo", "corner", "letter", "man", "sideline"}
"""Marks that need no words: white, thin helpers, and what everybody knows."""


def styles(scene: Scene) -> set[str]:
    return {item.style for item in scene.items}


def test_every_mark_of_a_picture_is_explained() -> None:
    shown = set().union(*(styles(scene) for _, scene in legend_entries(THEME)))
    used = set().union(*(styles(picture(p, Size.FULL, THEME, duties=d)) for p, d in EVERY))
    assert used - shown <= UNEXPLAINED


def test_entries_are_told_apart_and_stay_in_their_frames() -> None:
    entries = legend_entries(THEME)
    assert len({caption for caption, _ in entries}) == len(entries) >= 13
    for _, scene in entries:
        for item in scene.items:
            if isinstance(item, Stroke):
                for p in item.head:
                    assert scene.frame.left < p.x < scene.frame.right
                    assert scene.frame.bottom < p.y < scene.frame.top
