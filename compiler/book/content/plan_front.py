"""The front page of a week's book: whom it is against, and the plan in a page."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from stemline.football.play import Kind
from stemline.football.situations import Moment
from stemline.week.killed_rows import printed_row
from stemline.week.week_values import PlanList, PlanRow, Week

HOW_PAGES_READ = (
    "Numbers are those of the call sheet and the wristbands. “Book” is the page of the season's "
    "playbook, as on the call sheet; every other page is one of this book."
)
MOST_OPENERS = 15
"""Openers that the front page has room for; the index by situation holds all."""


@dataclass(frozen=True)
class PlannedCall:
    """A call as the front page has it: its place, its number, where it stands in this book (an id)
    and in the season's ("" where that has no page of it), and what the plan says to it."""

    order: int
    number: str
    call: str
    id: str
    book: str
    said: str


@dataclass(frozen=True)
class PlannedSituation:
    """A situation of the plan, how many calls are kept for it, and how many of them are runs."""

    title: str
    calls: int
    runs: int

    @property
    def passes(self) -> int:
        return self.calls - self.runs


@dataclass(frozen=True)
class PlanFront:
    """``about`` counts the plan; ``more`` are openers that the page has no room for."""

    team: str
    title: str
    date: str
    about: str
    faces: str
    openers_title: str
    openers: tuple[PlannedCall, ...]
    more: int
    situations: tuple[PlannedSituation, ...]
    says: tuple[str, ...]
    pages: str
    cautions: tuple[str, ...]
    edition: str


def plan_front(week: Week, ids: Mapping[str, str], authority: str, edition: str) -> PlanFront:
    """The front page of a week; ``ids`` are where its calls stand in its book."""
    plan = week.plan
    opening = next((e for e in plan.lists if e.situation.moment is Moment.OPENERS), None)
    rows = opening.rows if opening is not None else ()
    situations = tuple(_counted(week, each) for each in plan.lists)
    runs = sum(week.entry(call).play.kind is Kind.RUN for call in plan.calls)
    return PlanFront(
        team=plan.team,
        title=f"Week {plan.number}: {plan.opponent}",
        date=plan.date,
        about=f"{_count(len(plan.calls), 'call')}: {_count(runs, 'run')} and "
        f"{_count(len(plan.calls) - runs, 'pass')}, in {_count(len(situations), 'situation')}.",
        faces=", ".join(plan.faces),
        openers_title=opening.title if opening is not None else "",
        openers=tuple(
            _planned(week, row, order, ids) for order, row in enumerate(rows[:MOST_OPENERS], 1)
        ),
        more=max(0, len(rows) - MOST_OPENERS),
        situations=situations,
        says=plan.says,
        pages=HOW_PAGES_READ,
        cautions=(
            f"This book is a planning aid. It defers to {authority}, and to qualified medical "
            "staff.",
        ),
        edition=edition,
    )


def _planned(week: Week, row: PlanRow, order: int, ids: Mapping[str, str]) -> PlannedCall:
    entry = week.entry(row.call)
    said = (
        row.spot.value if row.spot else "",
        f"when {row.look}" if row.look else "",
        row.tempo,
        row.note,
    )
    return PlannedCall(
        order=order,
        number="" if entry.number is None else str(entry.number),
        call=printed_row(row, entry.play),
        id=ids[entry.call],
        book="" if entry.page is None else str(entry.page),
        said=" · ".join(part for part in said if part),
    )


def _counted(week: Week, each: PlanList) -> PlannedSituation:
    runs = sum(week.entry(row.call).play.kind is Kind.RUN for row in each.rows)
    return PlannedSituation(each.title, len(each.rows), runs)


def _count(number: int, noun: str) -> str:
    return f"{number} {noun}{('es' if noun.endswith('s') else 's') * (number != 1)}"
