"""Has a pass an answer to a look: is anybody open or nearly, or is there a hot throw in time?
And where it has none, which concept of the playbook has.

Planning figures throughout, as all of the clock's.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Protocol

from stemline.football.play import Play
from stemline.football.timing.levels import PlayingLevel

if TYPE_CHECKING:
    from stemline.football.timing.clock import ReadClock
    from stemline.football.timing.coverage import Against

Clocking = Callable[[Play, PlayingLevel], "ReadClock"]


@dataclass(frozen=True)
class Answer:
    """What a call has against one look.

    ``nearly`` tells that a read is open, or that a good throw beats who covers it, in time;
    ``hot`` that the pressure order beats a free rusher, ``rusher`` when the first of these is
    there, in seconds after the snap (None where all are blocked).
    """

    nearly: bool
    hot: bool
    rusher: float | None

    @property
    def given(self) -> bool:
        return self.nearly or self.hot


@dataclass(frozen=True)
class Stood:
    """A concept's first call, from its formation, against each look."""

    concept: str
    formation: str
    rows: tuple[Against, ...]


class Answered(Protocol):
    """A call against a look, as `Against` and `LookAnswered` are."""

    @property
    def look(self) -> str: ...

    @property
    def leaves_nobody(self) -> bool: ...

    @property
    def out(self) -> float | None: ...


class AgainstLooks(Protocol):
    """A concept's first call against each look, as `Stood` and `PutToLooks` are."""

    @property
    def concept(self) -> str: ...

    @property
    def formation(self) -> str: ...

    @property
    def rows(self) -> Sequence[Answered]: ...


def check_to(one: AgainstLooks, others: Iterable[AgainstLooks]) -> dict[str, str]:
    """For each look that leaves nobody to ``one``: a concept that has an open man there.

    It stands in the same formation, so that nobody moves for the check, and of those its ball is
    out soonest; "" where there is none.
    """
    near = [o for o in others if o.formation == one.formation and o.concept != one.concept]
    return {
        row.look: min(_outs(near, row.look), default=(0.0, 0, ""))[2]
        for row in one.rows
        if row.leaves_nobody
    }


def _outs(others: Sequence[AgainstLooks], look: str) -> Iterator[tuple[float, int, str]]:
    """When the ball is out to the open man of each concept that has one; its place; its name."""
    for place, other in enumerate(others):
        for row in other.rows:
            if row.look == look and row.out is not None:
                yield row.out, place, other.concept


@dataclass(frozen=True)
class Faced:
    """A call of a concept against a look, by their names, and its answer."""

    concept: str
    call: str
    look: str
    answer: Answer


def answer(play: Play, level: PlayingLevel, reading: Clocking | None = None) -> Answer | None:
    """The answer of a play that stands against a look; None for one that reads nobody.

    Who asks of the play again reads with `read_clock`; to know it by its hash, where nobody does,
    would cost a part of its clock: `clocked` is how it is read.
    """
    if play.defence is None or not play.reads:
        return None
    # An answer that is kept is a value without the numbers.
    from stemline.football.timing.clock import clocked
    from stemline.football.timing.coverage import against

    stood = against(play, (reading or clocked)(play, level), level)
    return Answer(stood.best is not None, stood.hot is not None, stood.rusher)
