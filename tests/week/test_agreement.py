"""No paper of a week says another thing of a call than any other."""

from __future__ import annotations

import csv
import io
import json
import re
from collections.abc import Iterator, Mapping
from dataclasses import replace

import pytest
from sampling import every

from stemline.book.content.book import Edition
from stemline.book.content.plan_book import make_plan_book
from stemline.printing.install_papers import installed_calls
from stemline.printing.position_papers import listed
from stemline.week.bands import Card, card_of
from stemline.week.call_sheet import LONGEST_CALL, CallSheet, lay_out
from stemline.week.index_of import index_lines
from stemline.week.killed_rows import printed_call
from stemline.week.plain_data import data_files
from stemline.week.position_book import men_of, own_book
from stemline.week.quizzing import quiz_papers
from stemline.week.scripting import script_of
from stemline.week.week_values import Week
from stemline.week.working_out import work_out

from .plans import HERONS, LANTERNS, bundled_week, ems, made_up, pages, session

Said = tuple[str, str, str, str]
"""The paper, the call, its number and its page ("?" where the paper has none)."""
PLANS = 200
"""Of which a run tries a sixteenth."""
BOOKS = 25
"""Of so many plans one is made a book of."""


def said_by(week: Week, of_bands: Week | None = None) -> Iterator[Said]:
    """What each paper says of each call; a short name is told by the call it is short for.

    ``of_bands`` is the week that the bands are made from, to see one go wrong.
    """
    full = {entry.short: entry.call for entry in week.entries}
    full |= {printed_call(entry.call, entry.play): entry.call for entry in week.entries}
    sheet = lay_out(week, "legal", 2, ems())
    assert isinstance(sheet, CallSheet)
    for side in sheet.sides:
        for piece in (piece for column in side for piece in column):
            for row in piece.rows:
                call = row.call if row.call in week.by_call else full[row.call]
                assert len(row.call) <= LONGEST_CALL or row.call == week.entry(call).short
                yield "sheet", call, row.number, row.page
    bands = of_bands or week
    for band in bands.plan.bands:
        card = card_of(bands, band, ems())
        assert isinstance(card, Card)
        cells = [cell for window in card.windows for column in window for cell in column]
        assert len(cells) == len(band.calls)
        yield from (("band", full[cell.words], cell.number, "?") for cell in cells)
    yield from (("index", line.call, line.number, line.page) for line in index_lines(week))
    for day in script_of(week).days:
        for line in (line for period in day.periods for line in period.lines):
            yield "script", line.call, line.number, line.page
    for man in men_of(week.plan)[::4]:
        book = own_book(week, man)
        shown = [e for job in book.jobs for alike in job.alike for e in alike.calls]
        for told_call in map(listed, (*shown, *book.came)):
            yield "positions", full[told_call.call], told_call.number, told_call.page
    for paper in quiz_papers(week):
        for told_call in (listed(question.entry) for question in paper.questions):
            yield "quiz", full[told_call.call], told_call.number, told_call.page
    if week.game is not None:
        yield from game_plan_says(week, full)
    if week.install is not None:
        for told_day in installed_calls(week.install, week):
            yield from (("install", full[c.call], c.number, c.page) for c in told_day.calls)
    files = data_files(week)
    for name in ("call-sheet.csv", "index.csv", "script.csv", "wristbands.csv"):
        for told in csv.DictReader(io.StringIO(files[name].decode(), newline="")):
            yield name, told["call"], told["number"], told.get("page", "?")
    data = json.loads(files["week.json"])
    told_rows = [
        row for part in ("sheet", "script", "scout") for e in data[part] for row in e["rows"]
    ]
    told_rows += data["game_plan"]["calls"] if data["game_plan"] else []
    for look in data["game_plan"]["looks"] if data["game_plan"] else ():
        told_rows += [*look["answers"], *look["without"]]
    told_rows += data["install"]["calls"] if data["install"] else []
    for own in data["positions"]:
        told_rows += [*own["came"], *(call for job in own["jobs"] for call in job["calls"])]
    told_rows += [question for paper in data["quizzes"] for question in paper["questions"]]
    for row in (*told_rows, *data["index"]):
        yield "json", row["call"], _plain(row["number"]), _plain(row["page"])
    for band_told in data["bands"]:
        yield from (("json", c["call"], str(c["number"]), "?") for c in band_told["cells"])
    assert {play["call"] for play in data["plays"]} == set(week.by_call)


def game_plan_says(week: Week, full: Mapping[str, str]) -> Iterator[Said]:
    """What the week's book says on its front, over each picture and in the plan at its end;
    ``full`` are its calls by how they are printed."""
    book = make_plan_book(week, Edition("", ""))
    assert book.plan is not None
    for opener in book.plan.openers:
        yield "game plan", full[opener.call], opener.number, opener.book
    calls = {line.id: line.call for line in book.index.calls}
    for page in book.pages:
        for entry in (entry for entry in page.entries if entry.listed):
            assert calls[entry.id] == entry.call
            said = page.drawn if entry is page.base else entry.aside
            found = re.match(r"no\. (\d+) · book (\d+)", said)
            assert found is not None, said
            yield "game plan", full[entry.call], found[1], found[2]
    for item in (i for columns in book.index.pages for column in columns for i in column):
        if item.kind == "call":
            line = re.fullmatch(r"(\d+)  (.*) · book (\d+)", item.text)
            assert line is not None and line[2] == calls[item.id], item
            yield "game plan", full[line[2]], line[1], line[3]


def _plain(value: int | None) -> str:
    return "" if value is None else str(value)


def disagreements(said: list[Said]) -> list[tuple[str, set[str], set[str]]]:
    """Calls of which two papers say two numbers or pages; numbers that are two calls'."""
    numbers: dict[str, set[str]] = {}
    places: dict[str, set[str]] = {}
    calls: dict[str, set[str]] = {}
    for _, call, number, page in said:
        numbers.setdefault(call, set()).add(number)
        if page != "?":
            places.setdefault(call, set()).add(page)
        if number:
            calls.setdefault(number, set()).add(call)
    wrong = [(c, n, places.get(c, set())) for c, n in numbers.items() if len(n) > 1]
    wrong += [(c, set(), p) for c, p in places.items() if len(p) > 1]
    return wrong + [(number, of, set()) for number, of in calls.items() if len(of) > 1]


def week_of(seed: int) -> Week:
    the = made_up(seed)
    last = {call: n for n, call in enumerate(the.calls, 1)}
    # A book of a plan takes a second: some of the weeks have one.
    game = session(HERONS).game_plan(the) if seed % BOOKS == 0 else None
    return work_out(the, last, pages(the), ems(), game, session(HERONS).install_sheet(the))


@pytest.mark.parametrize("part", range(3))
def test_every_paper_says_the_same_of_every_call(part: int) -> None:
    for seed in range(part, PLANS, 3 * every(16)):
        week = week_of(seed)
        said = list(said_by(week))
        assert disagreements(said) == [], seed
        on_papers = {paper: {call for p, call, *_ in said if p == paper} for paper, *_ in said}
        assert on_papers["sheet"] == on_papers["index"] == set(week.plan.calls)
        assert on_papers["positions"] == set(week.plan.calls)
        assert on_papers["band"] <= on_papers["sheet"]
        assert on_papers["install"] == set(week.plan.calls)
        assert on_papers.get("game plan", set(week.plan.calls)) == set(week.plan.calls)
        assert {n for _, call, n, _ in said if call in week.plan.practised} <= {""}


def test_a_broken_numbering_is_seen() -> None:
    week = week_of(1)
    one, other, *rest = week.entries
    swapped = (replace(one, number=other.number), replace(other, number=one.number), *rest)
    assert one.call in week.plan.bands[0].calls
    assert disagreements(list(said_by(week, replace(week, entries=swapped))))
    twice = (replace(one, number=other.number), other, *rest)
    assert disagreements(list(said_by(replace(week, entries=twice))))
    turned = (replace(one, page=99), other, *rest)
    assert disagreements([*said_by(week), *said_by(replace(week, entries=turned))])


@pytest.mark.parametrize(("name", "number"), [(HERONS, n) for n in (5, 6, 7, 8)] + [
    (LANTERNS, n) for n in (1, 2, 3, 4)
])  # fmt: skip
def test_the_bundled_weeks_agree(name: str, number: int) -> None:
    week = bundled_week(name, number)
    assert disagreements(list(said_by(week))) == []
    assert not [entry for entry in week.entries if entry.number is None]
