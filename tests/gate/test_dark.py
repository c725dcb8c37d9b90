"""The dark theme is heavier and larger; its pictures may be a little fuller, and no more."""

from __future__ import annotations

from stemline.theme import load_theme

from .ceilings import counts, judged_sample

CEILING = 14
"""Faults in the sample of `ceilings.py`, all kinds together. It only goes down."""


def test_heavier_lines_still_leave_room() -> None:
    found = counts(judged_sample(load_theme("dark")))
    assert sum(row.total() for row in found.values()) <= CEILING, found
