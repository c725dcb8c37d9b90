"""A season's install → what its sheet shows of each day, and of a week's plan."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from stemline.football.play import Play
from stemline.playbook.playbook import Playbook
from stemline.resolve.installing import Schedule, Taught, parts_of
from stemline.resolve.order import Order
from stemline.week.install_days import (
    DayOfCalls,
    InstallDay,
    InstallSheet,
    NewJobs,
    RetaughtDay,
)
from stemline.week.position_book import own_task
from stemline.week.week_values import Plan

_KINDS = ("formation", "motion", "protection", "concept", "tag")
"""In the order in which a day's paper lists them."""


@dataclass(frozen=True)
class Installed:
    """The season's side of the sheet: its days, and for each call the place of the day that
    completed it, from 0; of a call that none completes there is no place."""

    schedule: Schedule
    days: tuple[InstallDay, ...]
    done: Mapping[str, int]
    since: Mapping[str, int]


def installed(
    book: Playbook, schedule: Schedule, orders: Mapping[str, Order], plays: Mapping[str, Play]
) -> Installed:
    """The days of an install. ``plays`` are the calls as the book draws them, by how they are
    spoken; one without a play is left out."""
    done: dict[str, int] = {}
    for call in plays:
        places = [schedule.since.get(part) for part in parts_of(book, orders[call])]
        known = [place for place in places if place is not None]
        if len(known) == len(places):
            done[call] = max(known)
    seen: set[object] = set()
    days = tuple(_day(n, t, done, plays, seen) for n, t in enumerate(schedule.steps))
    concepts = {p.name: n for p, n in schedule.since.items() if p.kind == "concept"}
    return Installed(schedule, days, done, concepts)


def install_sheet(plan: Plan, made: Installed, name: str, says: tuple[str, ...], calls: int
                  ) -> InstallSheet:  # fmt: skip
    """The sheet for a week; ``calls`` is how many the book has."""
    last = made.schedule.before_game(plan.number)
    days = tuple(replace(day, now=n == last) for n, day in enumerate(made.days))
    planned: dict[int, list[str]] = {}
    for call in plan.calls:
        planned.setdefault(made.done.get(call, len(days)), []).append(call)
    return InstallSheet(
        name=name,
        says=says,
        days=days,
        planned=tuple(
            DayOfCalls(days[n].title if n < len(days) else "", tuple(planned[n]))
            for n in sorted(planned)
        ),
        practices=_practices(plan, made),
        practised=tuple((call, _practised(plan, call)) for call in plan.calls),
        all_calls=calls,
    )


def _day(
    place: int,
    taught: Taught,
    done: Mapping[str, int],
    plays: Mapping[str, Play],
    seen: set[object],
) -> InstallDay:
    """``seen`` are the jobs that each man has learnt before, and after it those of this day too."""
    came = tuple(call for call, at in done.items() if at == place)
    named = [(kind, tuple(p.name for p in taught.new if p.kind == kind)) for kind in _KINDS]
    return InstallDay(
        title=taught.step.title[:1].upper() + taught.step.title[1:],
        date=taught.step.date,
        new=tuple((f"{kind}s", names) for kind, names in named if names),
        count=len(taught.new),
        again=tuple(part.name for part in taught.again),
        men=_new_jobs([plays[call] for call in came], seen),
        came=came,
        callable=sum(at <= place for at in done.values()),
        now=False,
    )


def _new_jobs(plays: Sequence[Play], seen: set[object]) -> tuple[NewJobs, ...]:
    """What each man has to learn, those of one list together, as the calls first line them up."""
    jobs: dict[str, int] = {}
    concepts: dict[str, dict[str, None]] = {}
    for play in plays:
        for man in play.men:
            task = own_task(play, man.label)
            key = man.label, task.motion, task.job
            jobs.setdefault(man.label, 0)
            if key not in seen:
                seen.add(key)
                jobs[man.label] += 1
                concepts.setdefault(man.label, {})[play.call.concept] = None
    alike: dict[tuple[int, tuple[str, ...]], list[str]] = {}
    for letter, count in jobs.items():
        if count:
            alike.setdefault((count, tuple(concepts[letter])), []).append(letter)
    return tuple(NewJobs(tuple(men), count, names) for (count, names), men in alike.items())


def _practices(plan: Plan, made: Installed) -> tuple[RetaughtDay, ...]:
    """Each practice day of the week with the concepts that it runs."""
    found: dict[str, dict[str, None]] = {}
    for period in plan.periods:
        ran = found.setdefault(period.day, {})
        ran |= dict.fromkeys(plan.plays[row.call].call.concept for row in period.rows)
    return tuple(
        RetaughtDay(day, tuple((name, _since(name, made)) for name in names))
        for day, names in found.items()
        if names
    )


def _since(concept: str, made: Installed) -> str:
    place = made.since.get(concept)
    return "" if place is None else made.days[place].title


def _practised(plan: Plan, call: str) -> tuple[str, ...]:
    days = (p.day for p in plan.periods if any(row.call == call for row in p.rows))
    return tuple(dict.fromkeys(days))
