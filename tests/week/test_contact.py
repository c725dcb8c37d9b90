"""Minutes of contact: as a spreadsheet adds them by hand, and one over the limit is told."""

from __future__ import annotations

import csv
from dataclasses import replace
from pathlib import Path

import pypdfium2 as pdfium
import pytest
from corpus.mixing import base

from stemline.football.contact_limits import ContactLimit, HitLevel, contact_limit
from stemline.football.rulebook.codes import CODES
from stemline.football.rulebook.rules import Certainty, Known
from stemline.printing.week_papers import Printing, week_papers
from stemline.session import Session
from stemline.source import Source
from stemline.theme import load_theme
from stemline.week.practising import check_contact, contact_minutes
from stemline.week.scripting import clock, script_of
from stemline.week.week_values import Plan, PlanPeriod
from stemline.week.working_out import work_out

from .plans import HERONS, bundled_week, ems, plan

SUMS = Path(__file__).with_name("contact.csv")
"""The minutes of each period that count for the team and for each group, put in by hand."""
GROUPS = ("linemen", "receivers", "backs")


def rows() -> list[dict[str, str]]:
    return list(csv.DictReader(SUMS.read_text("utf-8").splitlines()))


def period(minutes: int, level: HitLevel, day: str, groups: tuple[str, ...] = ()) -> PlanPeriod:
    return PlanPeriod("P", minutes, level, day, groups, (), plan(HERONS, 5).span)


def of_the_table() -> tuple[PlanPeriod, ...]:
    return tuple(
        period(int(r["minutes"]), HitLevel(r["level"]), r["day"],
               tuple(filter(None, r["groups"].split("+"))))
        for r in rows()
    )  # fmt: skip


def test_the_minutes_are_those_of_the_hand_sum() -> None:
    made = contact_minutes(of_the_table())
    for day in dict.fromkeys(r["day"] for r in rows()):
        team = sum(int(r["team"]) for r in rows() if r["day"] == day)
        assert made.days.get(day, 0) == team
        for group in GROUPS:
            mine = sum(int(r[group]) for r in rows() if r["day"] == day)
            if group in made.by_group:
                assert made.by_group[group][0].get(day, 0) == mine
            else:  # nobody hits with them alone: they have what everybody has
                whole = [r for r in rows() if r["day"] == day and not r["groups"]]
                assert mine == sum(int(r["team"]) for r in whole)
    assert made.week == sum(int(r["team"]) for r in rows()) == 81
    for group, (_, week) in made.by_group.items():
        assert week == sum(int(r[group]) for r in rows())
    assert set(made.by_group) == {"linemen", "backs"}


def test_a_scripted_week_prints_the_hand_sum() -> None:
    """From the text of its periods to the words of the sheet that coaches hold."""
    said = "".join(
        f"    period P{n}, {r['minutes']} minutes, {r['level']}, {r['day']}"
        f"{''.join(f', {group}' for group in filter(None, r['groups'].split('+')))}\n"
        for n, r in enumerate(rows())
    )
    text = f"week 1 A\n    openers\n        Three Two Right Crossers\n{said}"
    (planned,) = Session((*base(), Source("week.play", text)), "book").weeks
    assert planned.plan is not None, planned.found
    week = work_out(planned.plan, {}, {}, ems())
    made = week_papers(week, Printing(load_theme()), ("script",)).files["practice-script.pdf"]
    sheets = [
        " ".join(page.get_textpage().get_text_bounded().split())
        for page in pdfium.PdfDocument(made)
    ]
    for day in dict.fromkeys(r["day"] for r in rows()):
        (sheet,) = (sheet for sheet in sheets if sheet.startswith(day))
        for who in ("team", "linemen", "backs"):
            minutes = sum(int(r[who]) for r in rows() if r["day"] == day)
            assert f"{who} {minutes} of 30" in sheet, (day, who)
    for who in ("team", "linemen", "backs"):
        minutes = sum(int(r[who]) for r in rows())
        assert f"{who} {minutes} of 90" in sheets[-1], who


def limited(periods: tuple[PlanPeriod, ...], day: int | None, week: int | None) -> Plan:
    limit = Known(ContactLimit(day, week), Certainty.REPORTED, "a published figure")
    return replace(plan(HERONS, 5), periods=periods, limit=limit)


@pytest.mark.parametrize(("minutes", "told"), [(30, 0), (31, 1)])
def test_one_minute_over_the_day_is_told_with_its_source(minutes: int, told: int) -> None:
    found = list(check_contact(limited((period(minutes, HitLevel.LIVE, "Tuesday"),), 30, 90)))
    assert [d.code for d in found] == ["W991"] * told
    assert all("a published figure" in dict(d.values)["source"] for d in found)


@pytest.mark.parametrize(("minutes", "told"), [(30, 0), (31, 1)])
def test_one_minute_over_the_week_is_told(minutes: int, told: int) -> None:
    days = ("Sunday", "Tuesday", "Thursday")
    periods = tuple(
        period(m, HitLevel.THUD, day) for m, day in zip((30, 30, minutes), days, strict=True)
    )
    found = list(check_contact(limited(periods, None, 90)))
    assert [dict(d.values)["when"] for d in found] == ["in the week"] * told


def test_two_days_running_are_told() -> None:
    periods = (period(5, HitLevel.THUD, "Tuesday"), period(5, HitLevel.LIVE, "Wednesday"))
    assert [d.code for d in check_contact(limited(periods, 30, 90))] == ["W994"]
    apart = (periods[0], period(5, HitLevel.LIVE, "Thursday"))
    assert list(check_contact(limited(apart, 30, 90))) == []


def test_every_code_has_a_limit_with_a_source_or_says_that_it_has_none() -> None:
    """NFHS, Concussion Summit Task Force, July 2014: 30 minutes a day, 60 to 90 a week."""
    for code in CODES.values():
        limit = contact_limit(code)
        assert limit.source and not limit.binding
    assert contact_limit(CODES["high school"]).value == ContactLimit(30, 90)


def test_the_clock_of_a_script_adds_up() -> None:
    assert [clock(m) for m in (0, 65, 18 * 60, 24 * 60 + 5)] == ["0:00", "1:05", "18:00", "0:05"]
    for day in script_of(bundled_week(HERONS, 5)).days:
        ends = [p.ends for p in day.periods]
        assert [p.begins for p in day.periods][1:] == ends[:-1]
        hours, minutes = map(int, day.periods[0].begins.split(":"))
        whole = 60 * hours + minutes + sum(p.minutes for p in day.periods)
        assert clock(whole) == ends[-1]
        for p in day.periods:
            assert [line.first for line in p.lines[:1]] in ([], [1])
            assert p.scripted == sum(line.reps for line in p.lines)
