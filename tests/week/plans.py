"""Plans for tests: of the bundled playbooks, and made up from their calls."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from random import Random

from resolve.shipped_books import shipped

from stemline.football.call_facts import CallFacts
from stemline.football.contact_limits import HitLevel
from stemline.football.field import BallSpot
from stemline.football.play import Kind
from stemline.football.situations import needed
from stemline.printing.week_papers import ems_of
from stemline.theme import load_theme
from stemline.week.call_sheet import Ems
from stemline.week.planning import Planned
from stemline.week.week_values import (
    Plan,
    PlanBand,
    PlanList,
    PlanPeriod,
    PlanRow,
    PlanScout,
    Week,
)
from stemline.week.working_out import last_numbers, work_out

HERONS, LANTERNS = "saltmarsh-herons", "cedar-flats-lanterns"
DAYS = ("Tuesday", "Wednesday", "Thursday")


session = shipped


@cache
def ems() -> Ems:
    return ems_of(load_theme())


def planned(name: str, number: int) -> Planned:
    return next(each for each in session(name).weeks if each.week.number == number)


def plan(name: str, number: int) -> Plan:
    made = planned(name, number).plan
    assert made is not None, planned(name, number).found
    return made


@cache
def bundled_week(name: str, number: int) -> Week:
    """A bundled week worked out, on pages that are made up: their real ones take a whole book."""
    plans = [each.plan for each in session(name).weeks if each.plan is not None]
    the = plan(name, number)
    last, known = last_numbers(plans, number), session(name)
    game, install = known.game_plan(the), known.install_sheet(the)
    against = known.against_looks(the)
    return work_out(the, last, pages(the), ems(), game, install, against)


def pages(the: Plan) -> dict[str, int]:
    return {call: 10 + n // 3 for n, call in enumerate((*the.calls, *the.practised))}


@cache
def _pool() -> Plan:
    """All that a made-up plan may take its calls from: every call of the Herons."""
    base, known = plan(HERONS, 5), session(HERONS)
    orders = list(known.calls.by_name.values())
    plays = {o.spoken: play for o in orders if (play := known.drawn(o)[0]) is not None}
    assert known.book is not None
    people = {o.spoken: known.book.formations[o.formation].people for o in orders}
    facts = {
        call: CallFacts(True, bool(play.reads), play.kind is Kind.RUN, play.ball)
        for call, play in plays.items()
    }
    return replace(base, facts=facts, plays=plays, people=people, frozen={})


def made_up(seed: int, rows: int | None = None, number: int | None = None) -> Plan:
    """A plan like a coach's: lists, bands, periods and cards of random calls of the Herons."""
    rng = Random(seed)
    base = _pool()
    calls = list(base.plays)
    situations = list(needed(base.code))
    count = rng.randint(2, len(situations)) if rows is None else len(situations)
    sizes = [rng.randint(1, 12) for _ in range(count)]
    if rows is not None:
        sizes = [rows // count + (n < rows % count) for n in range(count)]
    lists = tuple(
        PlanList(situation, tuple(_row(call, rng) for call in rng.sample(calls, size)), base.span)
        for situation, size in zip(situations, sizes, strict=False)
    )
    planned_calls = tuple(dict.fromkeys(row.call for each in lists for row in each.rows))
    mine = [call for call in planned_calls if rng.random() < 0.6] or list(planned_calls[:1])
    some = tuple(mine[:60])
    bands = (
        PlanBand("Everybody", (), 4.75, 2.75, 3, planned_calls[:90], base.span),
        PlanBand("Some", ("Q", "R"), 5.0, 3.0, 2, some, base.span),
    )
    shown = list(base.shown)
    cards = tuple(
        PlanRow(call, base.span, spot, against=look)
        for call, look, spot in rng.sample(shown, min(3, len(shown)))
    )
    periods = tuple(
        PlanPeriod(
            f"Period {n}", rng.randint(5, 25), rng.choice(list(HitLevel)), rng.choice(DAYS), (),
            tuple(_row(call, rng) for call in rng.sample(calls, rng.randint(0, 6))) + cards[:n],
            base.span,
        )
        for n in range(rng.randint(1, 5))
    )  # fmt: skip
    kept = dict.fromkeys(planned_calls[:1], 13) if rng.random() < 0.3 else {}
    return replace(
        base,
        number=number or rng.randint(1, 40),
        lists=lists,
        bands=bands,
        periods=periods,
        scouts=(PlanScout("Wednesday", cards, base.span),),
        frozen=kept,
        shorts=base.shorts if rng.random() < 0.5 else (),
        together=rng.random() < 0.5,
        seed=str(rng.randint(1, 9)),
    )


def _row(call: str, rng: Random) -> PlanRow:
    spot = rng.choice([None, None, *BallSpot])
    note = "First look only." if rng.random() < 0.1 else ""
    return PlanRow(call, plan(HERONS, 5).span, spot, note=note, reps=rng.choice([0, 0, 2]))
