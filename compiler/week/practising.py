"""Practice: minutes of contact added up, and what is practised and not called."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from itertools import pairwise

from stemline.diagnostics.catalogue.weeks import W991, W993, W994, W995
from stemline.diagnostics.diagnostic import Diagnostic, Related
from stemline.football.contact_limits import DAYS, GROUPS
from stemline.source import Span
from stemline.week.week_values import Plan, PlanPeriod, PlanRow, PlanScout

EVERYBODY = "the team"


@dataclass(frozen=True)
class ContactMinutes:
    """Minutes of thud and live by day, and in the week; ``by_group`` for the men of a group, who
    have those of everybody's periods too."""

    days: Mapping[str, int]
    week: int
    by_group: Mapping[str, tuple[Mapping[str, int], int]]


def contact_minutes(periods: tuple[PlanPeriod, ...]) -> ContactMinutes:
    """The minutes of a week's periods. The team's are those that anybody has: two groups hit at
    once in two periods are counted one after the other, as on the clock of the field."""
    full = [p for p in periods if p.contact.full]
    named = [g for g in GROUPS if any(g in p.groups for p in full)]
    groups: dict[str, tuple[Mapping[str, int], int]] = {}
    for group in named:
        mine = [p for p in full if not p.groups or group in p.groups]
        groups[group] = (_by_day(mine), sum(p.minutes for p in mine))
    return ContactMinutes(_by_day(full), sum(p.minutes for p in full), groups)


def _by_day(periods: list[PlanPeriod]) -> dict[str, int]:
    days: dict[str, int] = {}
    for period in sorted(periods, key=lambda p: day_place(p.day)):
        days[period.day] = days.get(period.day, 0) + period.minutes
    return days


def day_place(day: str) -> int:
    """Where a day stands in the week; a practice without one before all."""
    return DAYS.index(day) if day in DAYS else -1


def check_contact(plan: Plan) -> Iterator[Diagnostic]:
    """More minutes than the limit a day or a week, of the team or of a group that has more than
    the team's limit alone; and full contact on two days running."""
    minutes, limit = contact_minutes(plan.periods), plan.limit
    told: set[str] = set()
    for who, (days, week) in ((EVERYBODY, (minutes.days, minutes.week)), *minutes.by_group.items()):
        over = [
            (f"on {day}" if day else "in a practice", found, limit.value.day)
            for day, found in days.items()
        ]
        for when, found, most in (*over, ("in the week", week, limit.value.week)):
            if most is not None and found > most and (who == EVERYBODY or when not in told):
                told.add(when)
                yield W991(who=who, found=found, when=when, limit=most, source=limit.cited).at(
                    _where(plan, when)
                )
    running = [day for day in DAYS if minutes.days.get(day)]
    for first, second in pairwise(running):
        if DAYS.index(second) - DAYS.index(first) == 1:
            at = _where(plan, f"on {second}")
            yield W994(first=first, second=second).at(at)


def _where(plan: Plan, when: str) -> Span:
    """The last period of the time that is meant."""
    day = when.removeprefix("on ")
    full = [p for p in plan.periods if p.contact.full]
    return next((p.span for p in reversed(full) if p.day == day), full[-1].span)


def check_practised(plan: Plan) -> Iterator[Diagnostic]:
    """Calls that are practised and stand on no list: they have no number to be called by."""
    rows = {row.call: row for row in plan.scripted}
    for call in plan.practised:
        yield W993(call=call).at(rows[call].span)


def check_old_looks(
    plan: Plan,
    taken_over: Iterable[PlanPeriod | PlanScout],
    waiting: Iterable[tuple[str, PlanRow]],
) -> Iterator[Diagnostic]:
    """What was taken over and has a look of the game before: periods and cards that show it, and
    rows, ``waiting`` with their list's title, that are called when it shows. Told once of each
    look, and nothing where the week says no looks."""
    shown = ((each.name, row) for each in taken_over for row in each.rows)
    rows = [(f"{name} still runs against", row.against, row) for name, row in shown]
    rows += [(f"{title} still has {r.call} for when they show", r.look, r) for title, r in waiting]
    told: set[str] = set()
    for what, look, row in rows if plan.faces else ():
        if look and look not in (*plan.faces, *told):
            told.add(look)
            there = Related(row.span, "the line is here")
            wrong = W995(what=what, look=look, week=plan.name)
            yield wrong.at(plan.span, related=(there,))
