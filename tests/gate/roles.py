"""What each class of an emitted diagram is to a reader.

Every stroke, shape and text of the theme stands in exactly one of these sets; a test holds that.
Shapes and texts may share a name ("ghost").
"""

from __future__ import annotations

LABELS = frozenset(
    {
        *("depth", "depth-pale", "words", "words-pale", "yards", "corner"),
        *("clock-name", "clock-wrong", "clock-foot", "clock-second"),
    }
)
"""Texts that stand beside something: nothing may touch them."""

LETTERING = frozenset(
    {
        *("letter", "letter-own", "letter-pale", "lineman", "ghost", "ghost-pale", "before-letter"),
        *("read", "read-pale", "alert", "alert-pale"),
    }
)
"""Texts inside a symbol's outline."""

DEFENDERS = frozenset({"defender", "defender-behind"})
"""Texts that are symbols by themselves: a defender has no ring."""

SYMBOLS = frozenset(
    {
        *("man", "man-own", "man-pale", "lineman", "ghost", "ghost-pale", "before-man"),
        *("tile", "tile-pale", "tile-open", "tile-open-pale", "key", "free"),
    }
)
"""Shapes that stand for a man, a read or a mark on a man."""

DOTS = frozenset({"dot", "dot-pale"})
"""Shapes that end a path."""

GROUNDS = frozenset({"claim", "zone", "window"})
"""Shapes that lie under everything and may be written on."""

HALOS = frozenset({"halo"})
"""White shapes under words."""

FIELD = frozenset(
    {"yard-line", "hash", "line-of-scrimmage", "sideline", "goal-line", "break", "second"}
)
"""Strokes of the field: a word with a halo may stand on them."""

LEADERS = frozenset({"leader"})
"""Strokes from a label to its place."""

TILE_STROKES = frozenset({"chevron"})
"""Strokes that are part of a read's tile."""

BLOCKS = frozenset({"block", "climb", "set"})
"""Strokes that end at the defender who is blocked."""

DEFENCE = frozenset({"drop", "man", "rush", "eyes"})
"""Strokes that start at a defender's letter, a little white between."""

BEFORE = frozenset({"before", "before-motion", "before-bar"})
"""Strokes of a play as it was: they may lie on the paths of the play as it is."""

PATHS = frozenset(
    {
        *("route", "branch", "motion", "tick", "bar", "set-bar", "carry", "held", "fake", "flight"),
        *("mesh", "pitch", "foot", "foot-down", "ball", "arrival"),
        *BLOCKS,
        *DEFENCE,
        *BEFORE,
    }
)
"""Strokes that say where somebody or the ball goes; each may be pale."""


SHORT_MARKS = frozenset(
    {
        *("tick", "bar", "set-bar", "before-bar", "mesh"),
        *("foot", "foot-down", "ball", "arrival"),
    }
)
"""Paths that are a single short stroke across something, and those of a clock."""


def plain(style: str) -> str:
    """A role without its paleness: route-pale is a route."""
    return style.removesuffix("-pale")


STROKES = (PATHS, FIELD, LEADERS, TILE_STROKES)
SHAPES = (SYMBOLS, DOTS, GROUNDS, HALOS)
TEXTS = (LABELS, LETTERING, DEFENDERS)
