"""What a rule code is made of: figures that each carry a source and how sure it is."""

from __future__ import annotations

from dataclasses import dataclass, fields, replace
from enum import Enum
from typing import Any, Generic, TypeVar

T_co = TypeVar("T_co", covariant=True)
T = TypeVar("T")


NO_SOURCE = "common practice, no published source"


class Certainty(Enum):
    """How a figure is known, from the surest down; a league's own word stands beside the scale."""

    PUBLISHED = "published"
    REPORTED = "published second-hand"
    TABLE = "published data table"
    CUSTOM = NO_SOURCE
    MEMORY = "from memory"
    HOUSE = "this playbook's league"

    @property
    def binding(self) -> bool:
        """Whether a rule that rests on it is an error when broken; else it is a warning."""
        return self in (Certainty.PUBLISHED, Certainty.HOUSE)


@dataclass(frozen=True)
class Known(Generic[T_co]):
    """A value of a rule with where it comes from. Lengths in yards, times in seconds."""

    value: T_co
    certainty: Certainty
    source: str

    @property
    def binding(self) -> bool:
        """Whether breaking it is an error; else it is a warning."""
        return self.certainty.binding

    @property
    def cited(self) -> str:
        """The source for a message or a page, with the doubt where there is one."""
        if self.binding:
            return self.source
        return f"{self.certainty.value}: {self.source}"


def noted(rule: Known[str]) -> str:
    """A rule's text for a page with its source behind it, and the doubt where there is one."""
    return f"{rule.value.removesuffix('.')} ({rule.cited})."


Figure = Known[float]
Numbers = tuple[tuple[int, int], ...]
"""Jersey numbers as ranges, both ends in."""


class MotionWay(Enum):
    """Which way a man may move when the ball is snapped."""

    ANY = "any way, forward too, behind the line"
    NOT_FORWARD = "sideways or back, not toward the line"


@dataclass(frozen=True)
class PlayClock:
    """Seconds to snap the ball in, and from when: ``usual`` runs from ``starts``, ``short`` (None:
    there is no other) from ``short_starts``."""

    usual: float
    starts: str
    short: float | None = None
    short_starts: str = ""


@dataclass(frozen=True, kw_only=True)
class RareFigures:
    """Figures that few codes have, each with what holds where a code says nothing; what a code says
    stands in `RARE`."""

    exchange: Known[bool] = Known(False, Certainty.MEMORY, "no such rule known")
    """Whether the man who takes the snap must hand the ball on, or throw it, before anybody runs it
    over the line."""
    forward_passes: Figure = Known(1, Certainty.MEMORY, "one in a down, as in every code known")
    """How often the ball may be thrown forward in one down."""
    hand_past: Known[bool] = Known(
        False, Certainty.MEMORY, "behind the line only, as in every code known"
    )
    """Whether it may be handed forward past the line."""
    pass_past: Known[bool] = Known(
        False, Certainty.MEMORY, "from behind the line only, as in every code known"
    )
    """Whether it may be thrown forward from there."""


@dataclass(frozen=True, kw_only=True)
class Code(RareFigures):
    """One rule code.

    The field: ``length`` goal line to goal line, ``hash_from_sideline`` from a hash mark to the
    sideline nearer to it, ``numbers_from_sideline`` where receivers line up when told to stand on
    the numbers, ``restraining`` how far off the line the defence stays before the snap.

    The line: ``line`` are the interior men from left to right, the centre C among them;
    ``ineligible`` how many men of the line may not catch a pass (none in six-man, where the centre
    may); ``on_line`` the least number of men on the line and ``in_backfield`` the most behind it
    (None: no such figure); ``line_reach`` how far from the line a man may be and still be on it,
    ``back_depth`` how far behind it a back must be (None: a back by his place, not by yards), and
    ``between_foul`` whether it is a foul to be neither. ``canadian`` tells that the line must be
    one run with an eligible man at each end of it. ``ineligible_numbers`` are the jerseys of men
    who may not catch a pass (empty: any number may), ``also_ineligible`` those of which that is
    known less surely.

    Motion: ``motion_most`` may move at the snap (None: no limit), ``motion_way`` which way,
    ``motion_set`` for how long all are still after a shift, ``motion_from_line`` how deep a man
    who leaves the line in motion must be at the snap (None: no figure in yards).

    Passes and blocks: ``downfield`` is how far past the line an ineligible man may be when the
    pass is thrown (None: no limit), ``downfield_crossing`` whether that holds only for passes that
    cross the line; ``block_past`` how far past the line an eligible man may block before a pass
    that crosses it is touched. ``play_clock`` is what a call sheet needs. The texts are for the
    page that a coach reads, in whole sentences.
    """

    key: str
    title: str
    players: Figure
    length: Figure
    width: Figure
    end_zone: Figure
    hash_from_sideline: Figure
    numbers_from_sideline: Figure
    restraining: Figure
    downs: Figure
    line: tuple[str, ...]
    ineligible: Figure
    on_line: Figure
    in_backfield: Known[float | None]
    line_reach: Figure
    back_depth: Known[float | None]
    between_foul: Known[bool]
    eligible: Known[str]
    ineligible_numbers: Known[Numbers]
    also_ineligible: Known[Numbers]
    motion_most: Known[float | None]
    motion_way: Known[MotionWay]
    motion_set: Figure
    motion_from_line: Known[float | None]
    downfield: Known[float | None]
    downfield_crossing: Known[bool]
    block_past: Figure
    play_clock: Known[PlayClock]
    low_block: Known[str]
    behind_block: Known[str]
    blindside_block: Known[str]
    crossing_contact: Known[str]
    chop_block: Known[str]
    authority: str
    canadian: bool = False

    @property
    def interior(self) -> int:
        """How many men make the line that is always there: five, three, or the centre alone."""
        return len(self.line)

    @property
    def all_eligible(self) -> bool:
        """Whether even the interior men may catch a pass."""
        return self.ineligible.value == 0

    @property
    def receivers(self) -> int:
        """Eligible men besides the quarterback: what shapes are counted from."""
        return int(self.players.value - self.ineligible.value) - 1

    def recalled(self, words: str) -> Code:
        """The same figures for a code that grows out of this one, each from memory.

        What no source gives for the younger code must not borrow this one's source: ``words``
        ("as in the eleven-man game") stand in its place until the code says its own. A rare figure
        is not taken over: it holds where a code says it.
        """
        doubtful: dict[str, Any] = {
            f.name: Known(value.value, Certainty.MEMORY, words)
            for f in fields(self)
            if isinstance(value := getattr(self, f.name), Known)
        }
        usual: dict[str, Any] = {f.name: f.default for f in fields(RareFigures)}
        return replace(self, **(doubtful | usual))


def published(value: T, source: str) -> Known[T]:
    """A figure whose rule text or league release was seen."""
    return Known(value, Certainty.PUBLISHED, source)


def table(value: float, source: str) -> Figure:
    """A figure of a data table, sportypy's."""
    return Known(value, Certainty.TABLE, f"sportypy 1.0.0, {source}")


def custom(value: float, why: str = "") -> Figure:
    """A habit of the trade, with the reason for it where one is known."""
    return Known(value, Certainty.CUSTOM, f"{why}; {NO_SOURCE}" if why else NO_SOURCE)


def memory(value: float, source: str) -> Figure:
    """A figure that no source was seen for: a default, and no ground for an error."""
    return Known(value, Certainty.MEMORY, source)


NFHS = "NFHS Football Rules Book"
CFL = "CFL Official Playing Rules"
NCAA = "NCAA"
SDCFOA = "as printed by the San Diego officials' association"

RARE: dict[str, dict[str, Known[Any]]] = {
    "exchange": {
        "six-man": Known(
            True,
            Certainty.REPORTED,
            "a report on the six-player game; a Texas association's Section 163: not over the line "
            "until the receiver of the snap and another player have exchanged the ball, unless it "
            "is kicked or passed forward",
        ),
    },
    "forward_passes": {
        "canadian professional": published(1, f"{CFL} 2013, 6-4"),
        "high school": published(1, f"{NFHS}, 7-5-1"),
        "college": published(1, f"{NCAA}, {SDCFOA}, 7-3-2-d"),
    },
    "hand_past": {
        "canadian professional": published(False, f"{CFL} 2010, 6-2"),
        "college": published(False, f"{NCAA}, {SDCFOA}, 7-1-6"),
    },
    "pass_past": {
        "canadian professional": published(False, f"{CFL} 2013, 6-4"),
        "high school": published(False, f"{NFHS}, 7-5-1"),
        "college": published(False, f"{NCAA}, {SDCFOA}, 7-3-2-a"),
    },
}
"""What a code says of a rare figure, by the figure and the code's key."""


def rare(key: str) -> dict[str, Any]:
    """What the code of that key says of rare figures."""
    return {figure: of[key] for figure, of in RARE.items() if key in of}
