"""The install: what is taught on what, and the sheet that shows it."""

from __future__ import annotations

from functools import cache
from random import Random

import pytest
from corpus.mixing import base

from stemline.checks.installs import scheduled
from stemline.compare.renaming import renamed, targets
from stemline.resolve.installing import Schedule, TaughtPart, parts_of
from stemline.session import Session
from stemline.source import Source
from stemline.week.install_days import InstallSheet

from .plans import HERONS, LANTERNS, plan, session

BOOKS = [(HERONS, 8), (LANTERNS, 4)]
TAG = "tag Wheel for Crossers\n    flat runs wheel away from settle\n    keeps read, feet\n"


def compiled(install: str, more: str = "") -> Session:
    texts = (Source("install.play", f"install Camp\n{install}"), Source("more.play", TAG + more))
    return Session((*base(), *texts), "book")


@cache
def schedule(name: str) -> Schedule:
    known = session(name)
    assert known.book is not None
    made, found = scheduled(known.book, known.calls.by_name)
    assert made is not None and found == ()
    return made


def sheet(name: str, number: int) -> InstallSheet:
    made = session(name).install_sheet(plan(name, number))
    assert made is not None
    return made


@pytest.mark.parametrize(("name", "number"), BOOKS)
def test_nothing_is_called_before_all_it_is_made_of(name: str, number: int) -> None:
    """By each day those calls came whose every part is in, and no others."""
    known, made = session(name), schedule(name)
    assert known.book is not None
    parts = {call: parts_of(known.book, o) for call, o in known.calls.by_name.items()}
    have: set[TaughtPart] = set()
    can: set[str] = set()
    for taught, day in zip(made.steps, sheet(name, number).days, strict=True):
        have |= set(taught.new)
        assert not set(day.came) & can
        can |= set(day.came)
        assert can == {call for call, needs in parts.items() if have.issuperset(needs)}
        assert day.callable == len(can) and day.count == len(taught.new)


@pytest.mark.parametrize(("name", "number"), BOOKS)
def test_a_tag_comes_after_its_concept_and_again_after_the_first_time(
    name: str, number: int
) -> None:
    made = schedule(name)
    for part, place in made.since.items():
        if part.kind == "tag":
            assert any(p.kind == "concept" and p.key == part.key[:1] and at <= place
                       for p, at in made.since.items())  # fmt: skip
    for place, taught in enumerate(made.steps):
        assert all(made.since[part] < place for part in taught.again)


@pytest.mark.parametrize(("name", "number"), BOOKS)
def test_the_sheet_holds_each_call_of_the_week_once(name: str, number: int) -> None:
    the, made = plan(name, number), sheet(name, number)
    told = [call for day in made.planned for call in day.calls]
    assert sorted(told) == sorted(the.calls)
    came = {call: day.title for day in made.days for call in day.came}
    for day in made.planned:
        assert {came.get(call, "") for call in day.calls} == {day.title}
    run = {(row.call, p.day) for p in the.periods for row in p.rows}
    assert {(call, d) for call, days in made.practised for d in days} == {
        (call, d) for call, d in run if call in the.calls
    }
    assert [day.title for day in made.days if day.now] == [f"Week {number}"]


def test_new_jobs_by_hand() -> None:
    """Three receivers learn a job each on day 1; on day 2 only who the tag gives another does."""
    known = compiled("    day 1\n        Three Two, Crossers\n    day 2\n"
                     "        Wheel for Crossers\n", WEEK)  # fmt: skip
    (planned,) = known.weeks
    assert planned.plan is not None
    made = known.install_sheet(planned.plan)
    assert made is not None
    first, second = made.days
    count = {man: new.jobs for new in first.men for man in new.men}
    assert set(count) == {man.label for man in planned.plan.plays[CALL].men}
    assert min(count.values()) == 1
    learns = {man for new in second.men for man in new.men}
    wheel = planned.plan.plays[WHEEL]
    flat = {a.man for a in wheel.assignments if a.role == "flat"}
    assert flat and flat <= learns
    before = planned.plan.plays[CALL]
    same = {a.man for a in wheel.assignments
            for b in before.assignments if (a.man, a.job) == (b.man, b.job)}  # fmt: skip
    assert "X" in same - learns


CALL, WHEEL = "Three Two Right Crossers", "Three Two Right Crossers Wheel"
WEEK = (
    f"week 3 Larch Bay\n    openers\n        {CALL}\n        {WHEEL}\n"
    "    period Team, 10 minutes, thud, Tuesday\n        openers\n"
)


@pytest.mark.parametrize(
    ("install", "codes"),
    [
        ("    day 1\n        Three Two, Crossers\n    week 3\n        Wheel for Crossers\n", []),
        ("    day 1\n        Three Two, Crossers\n    week 4\n        Wheel for Crossers\n",
         ["W731"]),
        ("    day 1\n        Crossers\n        Wheel for Crossers\n", ["W731", "W731"]),
        ("    day 1\n        Three Two\n        Wheel for Crossers\n    day 2\n        Crossers\n",
         ["E731"]),
        ("    day 1\n        Crossers, run Crossers, concept Crossers, Three Two\n"
         "        Wheel for Crossers\n", []),
    ],
)  # fmt: skip
def test_what_a_week_calls_is_put_in_by_then(install: str, codes: list[str]) -> None:
    found = compiled(install, WEEK).diagnostics
    assert [d.code for d in found if d.code[1:3] == "73"] == codes


def test_a_near_name_is_offered_and_the_name_underlined() -> None:
    (found,) = [
        d for d in compiled("    day 1\n        Three Two, Crosers\n").diagnostics
        if d.code == "E730"
    ]  # fmt: skip
    assert found.nearest == ("Crossers",) and "Crosers" in found.message
    assert (found.span.line, found.span.column, found.span.end) == (3, 20, 27)


def test_a_playbook_without_an_install_says_nothing_and_prints_nothing() -> None:
    known = Session((*base(), Source("week.play", TAG + WEEK)), "book")
    (planned,) = known.weeks
    assert planned.plan is not None and known.install_sheet(planned.plan) is None
    assert not [d for d in known.diagnostics if d.code[1:3] == "73"]


def test_any_order_of_days_is_told_as_it_is() -> None:
    """Two hundred shuffles of what a day puts in: an error exactly where a tag, a call or an
    `again` stands before what it needs."""
    rng, rows = Random(1), ["Three Two", "Crossers", "Wheel for Crossers", "again Crossers", CALL]
    needs = {2: [1], 3: [1], 4: [0, 1]}
    codes = {2: "E731", 3: "E733", 4: "E732"}
    for _ in range(200):
        order = rng.sample(range(5), 5)
        text = "".join(f"    day {n}\n        {rows[row]}\n" for n, row in enumerate(order, 1))
        place = {row: n for n, row in enumerate(order)}
        wrong = sorted(
            codes[row] for row, on in needs.items() if any(place[o] > place[row] for o in on)
        )
        known = compiled(text)
        assert known.book is not None
        _, found = scheduled(known.book, known.calls.by_name)
        assert sorted(d.code for d in found) == wrong, text


def test_a_new_name_is_taken_over_in_every_row() -> None:
    rows = "    day 1\n        Three Two, Crossers\n        Wheel for Crossers\n"
    known = compiled(f"{rows}    day 2\n        again Crossers\n")
    trees = [tree for tree, _ in known.trees]
    (target,) = targets(trees, "Crossers")
    (text,) = (text for text in renamed(trees, target, "Lattice") if text.name == "install.play")
    assert text.text.count("Lattice") == 3 and "Crossers" not in text.text
