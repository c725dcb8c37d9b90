"""Has a pass an answer to a look: is anybody open or nearly, or is there a hot throw in time?

Planning figures throughout, as all of the clock's.
"""

from __future__ import annotations

from dataclasses import dataclass

from stemline.football.play import Play
from stemline.football.timing.clock import read_clock
from stemline.football.timing.coverage import Cover, against
from stemline.football.timing.levels import Level


@dataclass(frozen=True)
class Answer:
    """What a call has against one look.

    ``nearly`` tells that a read is open or tightly covered, ``hot`` that the pressure order beats a
    free rusher, ``rusher`` when the first of these is there, in seconds after the snap (None where
    all are blocked).
    """

    nearly: bool
    hot: bool
    rusher: float | None

    @property
    def given(self) -> bool:
        return self.nearly or self.hot


@dataclass(frozen=True)
class Faced:
    """A call of a concept against a look, by their names, and its answer."""

    concept: str
    call: str
    look: str
    answer: Answer


def answer(play: Play, level: Level) -> Answer | None:
    """The answer of a play that stands against a look; None for one that reads nobody."""
    if play.defence is None or not play.reads:
        return None
    stood = against(play, read_clock(play, level), level)
    nearly = any(read.cover in (Cover.OPEN, Cover.TIGHT) for read in stood.reads)
    return Answer(nearly, stood.hot is not None, stood.rusher)
