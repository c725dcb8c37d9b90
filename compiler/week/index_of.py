"""The index of a week's calls: what each is called by, where it stands and what it is kept for."""

from __future__ import annotations

from dataclasses import dataclass

from stemline.week.killed_rows import bare_call, killed_by_book
from stemline.week.week_values import Week


@dataclass(frozen=True)
class WeekIndexLine:
    """A call's line, all in words; ``becomes`` is what it is killed to, and on what, ``said`` what
    stands before it on paper: the call without the tags that only say so."""

    number: str
    call: str
    becomes: str
    short: str
    situations: str
    page: str
    formation: str
    people: str
    said: str


def index_lines(week: Week) -> tuple[WeekIndexLine, ...]:
    """Every call that has a number, by its words."""
    named = (e for e in week.entries if e.number is not None)
    return tuple(
        WeekIndexLine(
            number=str(e.number),
            call=e.call,
            becomes=", ".join(f"{to} when {when}" for to, when in killed_by_book(e.play)),
            short=e.short,
            situations=", ".join(e.situations),
            page="" if e.page is None else str(e.page),
            formation=e.formation,
            people=e.personnel,
            said=bare_call(e.play).spoken if e.play.becomes else e.call,
        )
        for e in sorted(named, key=lambda e: (e.call.casefold(), e.call))
    )
