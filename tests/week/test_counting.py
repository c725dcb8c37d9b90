"""What a plan leans on, counted again by hand."""

from __future__ import annotations

from collections import Counter

import pypdfium2 as pdfium
import pytest

from stemline.football.field import BallSpot
from stemline.football.play import Kind
from stemline.printing.week_papers import Printing, week_papers
from stemline.theme import load_theme
from stemline.week.leanings import ALWAYS, leanings_of
from stemline.week.working_out import work_out

from .plans import HERONS, bundled_week, ems, made_up, pages


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
        ("field" if (play.toward.word == "right") == (row.spot is BallSpot.LEFT_HASH)
         else "boundary")
        for row, play in runs
        if play.toward and row.spot in (BallSpot.LEFT_HASH, BallSpot.RIGHT_HASH)
    )  # fmt: skip
    assert {n: r for n, (r, _) in groups.get("Field and boundary", {}).items()} == sides
    strong = Counter(
        "strong" if play.toward is play.strong else "weak" for _, play in runs if play.toward
    )
    assert {n: r for n, (r, _) in groups.get("Strong and weak", {}).items()} == strong
    said = " ".join(counted.leaves)
    for of, found in (("", strong), (" on a hash", sides)):
        one = len(found) == 1 and max(found.values()) >= ALWAYS
        assert (f"Every run{of} goes to" in said) == one
    for formation, n in formations.items():
        always = n >= ALWAYS and of_runs[formation] in (0, n)
        assert (f"{formation} is always" in said) == always
    scripted = {row.call for period in plan.periods for row in period.rows}
    scripted |= {row.call for scout in plan.scouts for row in scout.rows}
    left = [f"{week.entry(c).number} {c}" for c in plan.calls if c not in scripted]
    head = "In no practice of the week: "
    told = [s.removeprefix(head)[:-1] for s in counted.leaves if s.startswith(head)]
    assert told == ([", ".join(left)] if left else [])


def test_the_page_prints_them() -> None:
    week = bundled_week(HERONS, 8)
    made = week_papers(week, Printing(load_theme()), ("counting",))
    document = pdfium.PdfDocument(made.files["counting.pdf"])
    words = "".join("".join(page.get_textpage().get_text_bounded().split()) for page in document)
    counted = leanings_of(week)
    for group in counted.groups:
        for each in group.leanings:
            share = f"{100 * each.rows / group.rows:.0f}"
            name = (each.name[:1].upper() + each.name[1:]).replace(" ", "")
            assert f"{name}{each.rows}{share}{each.runs}{each.passes}" in words, each
    assert made.counts == ["counting: 1 sheet"] and len(document) == 1
    assert "Every run goes to the strong side: 19 rows." in counted.leaves
