"""What checks are asked about, and when."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum
from functools import cached_property
from typing import TYPE_CHECKING

from stemline.football.exchanges import BallMoves
from stemline.football.field import Field
from stemline.football.play import Kind, Man, Motion, Play
from stemline.playbook.concepts import Body, Tag
from stemline.playbook.playbook import Playbook
from stemline.resolve.expand import Expander
from stemline.resolve.order import Order
from stemline.source import Span

if TYPE_CHECKING:
    from stemline.football.timing.clock import ReadClock


class When(Enum):
    """What a check is asked about: `check_NAME` of its file takes that and yields diagnostics."""

    WRITTEN = "the settings of a playbook"
    BOOK = "a playbook, its calls and the maker of its plays"
    TAUGHT = "a playbook and its calls, each time anew: it may read all of them"
    PLACED = "the men of a formation where they line up: `PlacedMen`"
    STANDING = "the men of a formation when the ball is snapped: `Snap`"
    MOVING = "who moves then: `Snap`"
    CALLED = "a play"
    PROVED = "a play and what it is compared with: `ProvedCall`"
    THROWN = "a play and the level whose clock tells when the ball leaves"


@dataclass(frozen=True)
class PlacedMen:
    """The men of a formation on a field; ``span`` is its name's place in the text."""

    men: tuple[Man, ...]
    field: Field
    formation: str
    span: Span


@dataclass(frozen=True)
class ProvedCall:
    """A call at one spot, against one look or none; ``plain`` is the call without its tags, None
    where it has none."""

    book: Playbook
    maker: Expander
    play: Play
    plain: Play | None
    order: Order

    @cached_property
    def tags(self) -> tuple[Tag, ...]:
        return tuple(self.book.tags[self.order.concept, tag] for tag in self.order.tags)

    @cached_property
    def body(self) -> Body:
        """The concept with the tags laid over it."""
        return self.maker.body(self.order, self.book.concepts[self.order.concept])

    @cached_property
    def motions(self) -> dict[str, Motion]:
        """By man, of those who have one."""
        return {a.man: a.motion for a in self.play.assignments if a.motion is not None}

    @cached_property
    def against_a_front(self) -> Play | None:
        """A run against the look that it is drawn against, and against those that a dress-up names;
        not against a front that the coach has not written. None where it is no run."""
        play, book = self.play, self.book
        if play.kind is Kind.RUN and play.defence is None and book.looks and not play.against:
            return self.maker.expand(self.order, play.ball, (), book.base_look)[0]
        return play if play.kind is Kind.RUN else None

    @cached_property
    def when_thrown(self) -> tuple[Play, ...]:
        """The play where its throws are looked at, a run-pass option and a run on
        which the ball is passed against every look too: from the middle where it is called there,
        and not against words that no look stands for."""
        play = self.play
        if play.ball is not self.order.timed_from or (play.against and play.defence is None):
            return ()
        passed = any(x.said and x.kind is BallMoves.SHOVEL for x in play.exchanges)
        looks = self.book.looks if play.keys or (passed and play.kind is Kind.RUN) else ()
        made = (self.maker.expand(self.order, play.ball, (), key)[0] for key in looks)
        return (play, *(other for other in made if other is not None))

    @cached_property
    def clock(self) -> ReadClock | None:
        """The clock of a pass where it is drawn; from the hashes the table of `--timing` shows
        it."""
        play = self.play
        thrown = play.reads or any(key.throws for key in play.keys)
        if not thrown or play.ball is not self.order.timed_from or play.against:
            return None
        return self.clock_of(play)

    def clock_of(self, play: Play) -> ReadClock:
        # Loaded where it is asked: a week has its installs checked, which need no numbers.
        from stemline.football.timing.clock import read_clock

        return read_clock(play, self.book.settings.level)
