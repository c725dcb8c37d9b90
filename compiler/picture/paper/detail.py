"""What the smaller sizes leave out: by rule, so that nothing is shrunk until it cannot be read."""

from __future__ import annotations

from collections.abc import Mapping
from enum import Enum, auto

from stemline.theme import Size


class Detail(Enum):
    """A thing that not every size shows."""

    FIELD_WORDS = auto()
    """The wide side of the field, and the look that the picture is drawn against."""
    YARDS = auto()
    """Depths at the picture's edge."""
    MOTION_WORDS = auto()
    LINEMEN = auto()
    """Letters of linemen who are known by one."""
    MET_RUSH = auto()
    """The arrow of a rusher whom a bar meets: the bar says it."""
    BRANCHES = auto()
    """What a man does instead against another look, with its word."""
    ALERT_WORDS = auto()
    DEPTHS = auto()
    """The taught depths at the breaks."""
    GHOSTS = auto()
    """Rings where men stood before they moved."""
    SETS = auto()
    """Men who set to block, and the way of a passer who throws on the run."""
    BYSTANDERS = auto()
    """Defenders whom the picture is not about: of a run the deep ones, of routes the line's."""
    EDGE_DEPTHS = auto()
    """How deep a defender stands who is drawn at the picture's edge."""
    ZONE_WORDS = auto()


SMALLEST: Mapping[Detail, Size] = {
    Detail.FIELD_WORDS: Size.FULL,
    Detail.YARDS: Size.QUARTER,
    Detail.MOTION_WORDS: Size.FULL,
    Detail.LINEMEN: Size.FULL,
    Detail.MET_RUSH: Size.FULL,
    Detail.BRANCHES: Size.QUARTER,
    Detail.ALERT_WORDS: Size.QUARTER,
    Detail.DEPTHS: Size.QUARTER,
    Detail.GHOSTS: Size.QUARTER,
    Detail.SETS: Size.QUARTER,
    Detail.BYSTANDERS: Size.QUARTER,
    Detail.EDGE_DEPTHS: Size.QUARTER,
    Detail.ZONE_WORDS: Size.QUARTER,
}
"""The smallest size that shows each."""

OF_A_LOOK = frozenset({Detail.BYSTANDERS, Detail.EDGE_DEPTHS})
"""What every size shows of a look that is wanted whole."""


def shows(size: Size, detail: Detail) -> bool:
    """Whether a picture of ``size`` shows it."""
    return size.value <= SMALLEST[detail].value
