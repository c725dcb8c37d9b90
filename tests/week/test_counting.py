"""What a plan leans on, counted again by hand."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import replace
from functools import cache
from random import Random

import pypdfium2 as pdfium
import pytest

from stemline.football.field import BallSpot, Side
from stemline.football.play import Kind
from stemline.football.timing.clock import clocked
from stemline.football.timing.coverage import Against, against
from stemline.football.timing.levels import HIGH_SCHOOL
from stemline.printing.week_papers import Printing, week_papers
from stemline.theme import load_theme
from stemline.week.killed_rows import printed_call
from stemline.week.leanings import ALWAYS, Leanings, leanings_of
from stemline.week.week_values import PlanRow, Week
from stemline.week.working_out import work_out

from .plans import HERONS, LANTERNS, bundled_week, ems, made_up, pages, session


@pytest.mark.parametrize("seed", range(20))
def test_the_figures_are_those_of_the_rows(seed: int) -> None:
    plan = made_up(seed)
    week = work_out(plan, {}, pages(plan), ems())
    rows = [(row, plan.plays[row.call]) for each in plan.lists for row in each.rows]
    counted = leanings_of(week)
    groups = {g.title: {n.name: (n.rows, n.runs) for n in g.leanings} for g in counted.groups}
    runs = [(row, play) for row, play in rows if play.kind is Kind.RUN]
    assert counted.rows == len(rows)
    for title in ("Run and pass", "Formation", "Concept", "Personnel", "Hash", "Motion"):
        assert sum(n for n, _ in groups[title].values()) == len(rows), title
        assert sum(r for _, r in groups[title].values()) == len(runs), title
    formations = Counter(play.call.formation for _, play in rows)
    of_runs = Counter(play.call.formation for _, play in runs)
    assert groups["Formation"] == {f: (n, of_runs[f]) for f, n in formations.items()}
    assert {n: r for n, (r, _) in groups["Concept"].items()} == Counter(
        play.call.concept for _, play in rows
    )
    sides = Counter(
        ("field" if (toward.word == "right") == (spot is BallSpot.LEFT_HASH) else "boundary")
        for row, _ in runs
        for spot, toward in _on_a_hash(row)
    )
    assert {n: r for n, (r, _) in groups.get("Field and boundary", {}).items()} == sides
    strong = Counter(
        "strong" if play.toward is play.strong else "weak" for _, play in runs if play.toward
    )
    assert {n: r for n, (r, _) in groups.get("Strong and weak", {}).items()} == strong
    said = " ".join(counted.leaves)
    for of, found in (("", strong), (" on a hash or called by the field", sides)):
        one = len(found) == 1 and max(found.values()) >= ALWAYS
        assert (f"Every run{of} goes to" in said) == one
    for head, sort in (
        ("", lambda row, play: play.call.formation),
        ("Motion ", lambda row, play: play.call.motion),
        ("Personnel ", lambda row, play: week.entry(row.call).personnel),
    ):
        of_rows = Counter(name for row, play in rows if (name := sort(row, play)))
        ran = Counter(sort(row, play) for row, play in runs)
        for name, n in of_rows.items():
            always = n >= ALWAYS and ran[name] in (0, n)
            what = "run" if ran[name] else "passed"
            words = f"{head}{name} is always {what} from: {n} rows."
            assert (words in counted.leaves) == always, words
    worn = {call for band in plan.bands for call in band.calls}
    bare = [_numbered(week, c) for c in plan.calls if c not in worn]
    assert _told(counted, "On no wristband: ") == bare
    idle = [f"{n} {c}" for c, n in plan.frozen.items() if c not in plan.calls]
    assert _told(counted, "A number kept and never called: ") == idle
    scripted = {row.call for period in plan.periods for row in period.rows}
    scripted |= {row.call for scout in plan.scouts for row in scout.rows}
    left = [_numbered(week, c) for c in plan.calls if c not in scripted]
    assert _told(counted, "In no practice of the week: ") == left


def _numbered(week: Week, call: str) -> str:
    entry = week.entry(call)
    return f"{entry.number} {printed_call(call, entry.play)}"


def _on_a_hash(row: PlanRow) -> Iterator[tuple[BallSpot, Side]]:
    """The hash of a row and where its run goes from there; of one that is called by the field a
    hash that it may be called from, wherever the row has it."""
    known = session(HERONS)
    order = known.calls.by_name[row.call]
    hashes = [spot for spot in order.spots if spot is not BallSpot.MIDDLE]
    spot = hashes[0] if order.way.by_field else row.spot
    if spot in (BallSpot.LEFT_HASH, BallSpot.RIGHT_HASH):
        play, _ = known.play(order, spot)
        assert play is not None
        if play.toward is not None:
            yield spot, play.toward


def _told(counted: Leanings, head: str) -> list[str]:
    """What a sentence of the page names behind its head; none where it is not there."""
    told = [s.removeprefix(head)[:-1].split(", ") for s in counted.leaves if s.startswith(head)]
    assert len(told) <= 1
    return told[0] if told else []


def test_a_kept_number_that_nobody_calls_is_said() -> None:
    plan = made_up(3)
    spare = next(call for call in plan.plays if call not in plan.calls)
    week = work_out(replace(plan, frozen={spare: 7}), {}, pages(plan), ems())
    assert f"A number kept and never called: 7 {spare}." in leanings_of(week).leaves


@pytest.mark.parametrize("seed", range(12))
def test_a_look_that_no_call_of_a_situation_answers_is_said(seed: int) -> None:
    """Held against every pass put to every look once more, by the table of reads alone."""
    known = session(HERONS)
    assert known.book is not None
    rng = Random(seed)
    looks = rng.sample([look.name for look in known.book.looks.values()], rng.randint(1, 3))
    plan = made_up(seed)
    # A third of the rows is kept for one of the looks, and meets no other.
    lists = tuple(
        replace(each, rows=tuple(
            replace(row, look=rng.choice(looks)) if rng.random() < 1 / 3 else row
            for row in each.rows
        )[:4])
        for each in plan.lists[:6]
    )  # fmt: skip
    # Numbers of their own, since a session keeps the answers of each week.
    plan = replace(plan, lists=lists, faces=tuple(looks), number=1000 + seed, bands=())
    week = work_out(plan, {}, pages(plan), ems())
    counted = leanings_of(week, known.answers(plan))
    bare: dict[str, list[str]] = {}
    table = {}
    for each in plan.lists:
        cells = []
        for look in looks:
            asked = [r for r in each.rows if plan.plays[r.call].reads and r.look in ("", look)]
            # A look that is kept for some formations asks nothing of a call from another.
            stood = [_stood(row.call, row.spot, look) for row in asked]
            met = [one for one in stood if one is not None]
            given = sum(one.best is not None or one.hot is not None for one in met)
            cells.append((given, len(met)))
            if met and not given:
                bare.setdefault(look, []).append(each.title)
        if any(asked for _, asked in cells):
            table[each.title] = tuple(cells)
    assert {a.situation: a.answered for a in counted.answers} == table
    for look in looks:
        head = f"No pass has an answer to {look} by the clock in: "
        told = [s.removeprefix(head)[:-1] for s in counted.leaves if s.startswith(head)]
        assert told == (["; ".join(bare[look])] if look in bare else [])


@cache
def _stood(call: str, spot: BallSpot | None, look: str) -> Against | None:
    """None for a call that cannot stand against the look."""
    known = session(HERONS)
    order = known.calls.by_name[call]
    play, found = known.play(order, spot or order.timed_from, (), look.casefold())
    assert play is not None and not any(d.is_error for d in found)
    if play.defence is None:
        return None
    return against(play, clocked(play, HIGH_SCHOOL), HIGH_SCHOOL)


@pytest.mark.parametrize(("name", "number"), [(HERONS, 6), (LANTERNS, 2)])
def test_one_page_prints_them(name: str, number: int) -> None:
    week = bundled_week(name, number)
    answers = session(name).answers(week.plan)
    made = week_papers(week, Printing(load_theme()), ("counting",), answers)
    document = pdfium.PdfDocument(made.files["counting.pdf"])
    words = "".join("".join(page.get_textpage().get_text_bounded().split()) for page in document)
    counted = leanings_of(week, answers)
    assert counted.looks == week.plan.faces and counted.answers
    for asked in counted.answers:
        cells = "".join(f"{given}of{passes}" for given, passes in asked.answered if passes)
        assert asked.situation.replace(" ", "") + cells in words, asked
    for group in counted.groups:
        for each in group.leanings:
            share = f"{100 * each.rows / group.rows:.0f}"
            name = (each.name[:1].upper() + each.name[1:]).replace(" ", "")
            assert f"{name}{each.rows}{share}{each.runs}{each.passes}" in words, each
    assert made.counts == ["counting: 1 sheet"] and len(document) == 1
    if name == HERONS:
        assert "Every run goes to the strong side: 25 rows." in counted.leaves
