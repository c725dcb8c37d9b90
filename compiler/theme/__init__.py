"""A theme: how pictures and pages look, read from a folder that a coach may copy and change.

A theme is `theme.toml`, fonts, page templates and a style sheet. Drawing code names roles ("route",
"letter"); only a theme says how heavy, in which ink, how large. A theme says what differs from the
one it extends, and needs no Python.
"""

from __future__ import annotations

from stemline.theme.faults import Refused, refusal, refused_at, where_said
from stemline.theme.finding import (
    Found,
    ThemeError,
    bundled_themes,
    load_theme,
    read_theme,
    theme_called,
)
from stemline.theme.model import (
    SIZES,
    SMALLEST_TYPE,
    Ground,
    Layer,
    Look,
    Pen,
    Size,
    Theme,
    Type,
)

__all__ = [
    "SIZES",
    "SMALLEST_TYPE",
    "Found",
    "Ground",
    "Layer",
    "Look",
    "Pen",
    "Refused",
    "Size",
    "Theme",
    "ThemeError",
    "Type",
    "bundled_themes",
    "load_theme",
    "read_theme",
    "refusal",
    "refused_at",
    "theme_called",
    "where_said",
]
