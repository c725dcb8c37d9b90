"""The opponent's looks at a glance: what each leaves open, and what answers it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from stemline.book.content.letters import spoken
from stemline.book.content.page import Listing, Page
from stemline.week.game_plan import FacedLook, LookAnswer
from stemline.week.killed_rows import printed_call
from stemline.week.week_values import Week

FAMILY = "Their looks"
_LEAST = 2
"""Calls that find a man in a part of the field before it is told as open."""


@dataclass(frozen=True)
class GlanceCall:
    """A call by its number, and how it fares."""

    number: str
    call: str
    words: str


@dataclass(frozen=True)
class GlanceGroup:
    """The calls of a situation; one that stands on two lists is told where it comes first."""

    title: str
    calls: tuple[GlanceCall, ...]


@dataclass(frozen=True)
class GlanceLook:
    """A look: what it shows and how many come, where it leaves room, what answers it."""

    name: str
    shows: str
    rushers: int
    leaves: tuple[str, ...]
    answers: tuple[GlanceGroup, ...]
    without: tuple[GlanceCall, ...]
    count: int


@dataclass(frozen=True, kw_only=True)
class TheirLooksPage(Page):
    """All looks of the opponent on a page."""

    template = "their-looks.html.jinja"
    listing = Listing.LINE

    looks: tuple[GlanceLook, ...]

    @property
    def brief(self) -> str:
        return "what each leaves open, and what answers it"

    @property
    def under(self) -> str:
        return "by the clock's figures, for planning"


def glance_page(week: Week) -> TheirLooksPage | None:
    """The page of a week's looks; None where it names none."""
    looks = week.game.looks if week.game is not None else ()
    if not looks:
        return None
    made = tuple(_look(week, look) for look in looks)
    return TheirLooksPage(id="their-looks", name="At a glance", family=FAMILY, looks=made)


def _look(week: Week, look: FacedLook) -> GlanceLook:
    told = {answer.call: answer for answer in look.answers}
    groups: list[GlanceGroup] = []
    for each in week.plan.lists:
        calls = dict.fromkeys(row.call for row in each.rows)
        mine = [told.pop(call) for call in calls if call in told]
        if mine:
            groups.append(GlanceGroup(each.title, _calls(week, mine)))
    return GlanceLook(
        name=look.name,
        shows=", ".join(look.shows),
        rushers=look.rushers,
        leaves=tuple(f"{part} ({count})" for part, count in look.leaves if count >= _LEAST),
        answers=tuple(groups),
        without=_calls(week, look.without),
        count=len(look.answers),
    )


def _calls(week: Week, answers: Sequence[LookAnswer]) -> tuple[GlanceCall, ...]:
    entries = ((week.entry(answer.call), answer) for answer in answers)
    return tuple(
        GlanceCall(
            "" if e.number is None else str(e.number),
            printed_call(e.call, e.play),
            spoken(a.words, ()),
        )
        for e, a in entries
    )
