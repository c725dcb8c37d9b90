"""A week worked out: its plan, and with numbers and pages the one value that papers are made from.

Nothing here knows the notation or paper. Every paper is a view of a `Week`: what it prints of a
call it takes from the call's one `CallEntry`, so that no two papers can disagree.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property

from stemline.football.call_facts import CallFacts
from stemline.football.contact_limits import ContactLimit, HitLevel
from stemline.football.field import BallSpot
from stemline.football.play import Play
from stemline.football.players import grouping
from stemline.football.rulebook.rules import Code, Known
from stemline.football.situations import Situation
from stemline.football.timing.answers import Answer
from stemline.source import Span
from stemline.week.game_plan import GamePlan
from stemline.week.install_days import InstallSheet


@dataclass(frozen=True)
class PlanRow:
    """A call where it is planned: ``call`` as it is spoken in the book.

    ``look`` is what it is called on, in words; ``against`` the name of the look it is practised
    against. ``reps`` 0 is as the tempo has it. ``kill_to`` is what it is killed to at the line.
    ``situation`` is "" or, in a script, the situation it was taken over from.
    """

    call: str
    span: Span
    spot: BallSpot | None = None
    look: str = ""
    against: str = ""
    tempo: str = ""
    note: str = ""
    reps: int = 0
    kill_to: str = ""
    situation: str = ""


@dataclass(frozen=True)
class PlanList:
    """A situation and its calls in the order in which the caller looks for them."""

    situation: Situation
    rows: tuple[PlanRow, ...]
    span: Span

    @property
    def title(self) -> str:
        """As it is printed, without the quotes of a name of the coach's own."""
        words = self.situation.words.replace('"', "")
        return words[:1].upper() + words[1:]


@dataclass(frozen=True)
class PlanPeriod:
    """A period of a practice; ``groups`` none for everybody, ``day`` "" where none is said."""

    name: str
    minutes: int
    contact: HitLevel
    day: str
    groups: tuple[str, ...]
    rows: tuple[PlanRow, ...]
    span: Span


@dataclass(frozen=True)
class PlanScout:
    """Cards for the look team, by a name such as the day they are used."""

    name: str
    rows: tuple[PlanRow, ...]
    span: Span


@dataclass(frozen=True)
class PlanBand:
    """A wristband: the letters who wear it (none: everybody), inches of one window, how many
    windows fold on each other, and the calls it holds, each once."""

    name: str
    men: tuple[str, ...]
    width: float
    height: float
    windows: int
    calls: tuple[str, ...]
    span: Span


@dataclass(frozen=True)
class PlanQuiz:
    """Men who are asked, by letter, and the day ("" where none is said)."""

    men: tuple[str, ...]
    day: str
    span: Span


@dataclass(frozen=True)
class Plan:
    """A week whose calls are known and whose lists are in order.

    ``plays`` holds each call as the book draws it, made when it is asked for, ``facts`` what is
    known of each without that, ``shown`` each that is practised against a look,
    by call, look and spot (None: as drawn); ``people`` is each call's personnel by
    the name of its personnel ("" where the playbook names none). ``faces`` are the opponent's looks
    by name. ``frozen`` are the numbers that stay, ``shorts`` the coach's own short names.
    ``together`` keeps families together, ``seed`` decides the numbers. ``starts`` tells when the
    practice of a day begins, in minutes after midnight. ``before`` is the plan of the game before,
    whether this one starts from it or not.
    """

    number: int
    opponent: str
    date: str
    team: str
    code: Code
    span: Span
    says: tuple[str, ...]
    faces: tuple[str, ...]
    lists: tuple[PlanList, ...]
    bands: tuple[PlanBand, ...]
    scouts: tuple[PlanScout, ...]
    periods: tuple[PlanPeriod, ...]
    quizzes: tuple[PlanQuiz, ...]
    facts: Mapping[str, CallFacts]
    plays: Mapping[str, Play]
    shown: Mapping[tuple[str, str, BallSpot | None], Play]
    people: Mapping[str, str]
    limit: Known[ContactLimit]
    frozen: Mapping[str, int]
    shorts: tuple[tuple[str, str], ...]
    together: bool
    seed: str
    starts: Mapping[str, int]
    before: Plan | None = None

    @property
    def name(self) -> str:
        return f"{self.number} {self.opponent}"

    @cached_property
    def calls(self) -> tuple[str, ...]:
        """Every call of the lists once, in their order: those that have a number."""
        return tuple(dict.fromkeys(row.call for each in self.lists for row in each.rows))

    @cached_property
    def scripted(self) -> tuple[PlanRow, ...]:
        """Every row of the scripts and cards."""
        scripts = [each.rows for each in self.periods] + [each.rows for each in self.scouts]
        return tuple(row for rows in scripts for row in rows)

    @cached_property
    def practised(self) -> tuple[str, ...]:
        """Calls of scripts and cards that stand on no list."""
        known = set(self.calls)
        return tuple(dict.fromkeys(r.call for r in self.scripted if r.call not in known))

    def situations(self, call: str) -> tuple[str, ...]:
        """The titles of the lists that a call stands on."""
        return tuple(e.title for e in self.lists if any(r.call == call for r in e.rows))


@dataclass(frozen=True)
class RowAnswer:
    """What a pass of a list has against a look that the week names; ``situation`` is the list's
    title."""

    situation: str
    look: str
    row: PlanRow
    answer: Answer


@dataclass(frozen=True)
class CallEntry:
    """All that any paper prints of a call.

    ``number`` is what is called out, None for a call that is only practised; ``page`` where it
    stands in the book, None where the book has no such page. ``short`` is how a wristband has it,
    ``personnel`` the personnel's name, or the staff's digits. ``situations`` are titles of lists.
    """

    call: str
    number: int | None
    page: int | None
    short: str
    personnel: str
    situations: tuple[str, ...]
    play: Play

    @property
    def formation(self) -> str:
        return self.play.call.formation


@dataclass(frozen=True)
class Week:
    """A plan with an entry for each of its calls. ``last`` are last week's numbers by call;
    ``game`` is what its own book is made from, ``install`` what the season has put in by then, each
    None where nobody asks for that or there is none."""

    plan: Plan
    entries: tuple[CallEntry, ...]
    last: Mapping[str, int]
    game: GamePlan | None = None
    install: InstallSheet | None = None

    @cached_property
    def by_call(self) -> Mapping[str, CallEntry]:
        return {entry.call: entry for entry in self.entries}

    def entry(self, call: str) -> CallEntry:
        """The entry of a call of the plan. Raises KeyError for another."""
        return self.by_call[call]


def personnel_of(plan: Plan, call: str) -> str:
    """The name of a call's personnel, or where it has none the staff's two digits."""
    if named := plan.people.get(call, ""):
        return named
    play = plan.plays[call]
    return grouping((m.position for m in play.men), int(plan.code.players.value)).split()[0]


def entries_of(
    plan: Plan,
    numbers: Mapping[str, int],
    pages: Mapping[str, int],
    shorts: Mapping[str, str],
) -> tuple[CallEntry, ...]:
    """The plan's calls, those with a number first, in the order of its lists."""
    return tuple(
        CallEntry(
            call,
            numbers.get(call),
            pages.get(call),
            shorts.get(call, call),
            personnel_of(plan, call),
            plan.situations(call),
            plan.plays[call],
        )
        for call in (*plan.calls, *plan.practised)
    )
