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
from stemline.theme.theme import (
    SIZES,
    SMALLEST_TYPE,
    Appearance,
    Fill,
    Pen,
    Size,
    Theme,
    ThemeFolder,
    Type,
)

__all__ = [
    "SIZES",
    "SMALLEST_TYPE",
    "Appearance",
    "Fill",
    "Found",
    "Pen",
    "Refused",
    "Size",
    "Theme",
    "ThemeError",
    "ThemeFolder",
    "Type",
    "bundled_themes",
    "load_theme",
    "read_theme",
    "refusal",
    "refused_at",
    "theme_called",
    "where_said",
]
