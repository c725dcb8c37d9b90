"""The papers as files: what a change changes, what an error leaves, and what is printed."""

from __future__ import annotations

import csv
import io
import json
from functools import cache
from itertools import zip_longest
from pathlib import Path

import pypdfium2 as pdfium
import pytest
from click.testing import CliRunner
from corpus.mixing import base
from shared import results

from stemline.commands import main
from stemline.emit.week_pages import MARGIN, index_pdf
from stemline.outside.folder import HELD
from stemline.outside.store import Store
from stemline.printing.week_papers import PARTS, Printing, week_papers
from stemline.results import made_week
from stemline.session import Session
from stemline.source import Source
from stemline.theme import load_theme
from stemline.week.call_sheet import SheetRow, sheet_rows
from stemline.week.index_of import WeekIndexLine, index_lines
from stemline.week.week_values import Week
from stemline.week.working_out import work_out

from .plans import HERONS, bundled_week, ems

pytestmark = pytest.mark.usefixtures("kept")

CALL, QUADS, WHEEL = (
    "Three Two Right Crossers", "Quads Right Tuck Crossers", "Three Two Right Crossers Wheel"
)  # fmt: skip
WEEK = (
    f"week 3 Larch Bay\n    date 2026-09-19\n    openers\n        {CALL}\n        {QUADS}\n"
    f"    situation red zone\n        {WHEEL}\n    wristband Skill for Q, R\n"
    f"    scout Tuesday\n        {CALL} against Base\n"
    f"    period Team, 10 minutes, thud, Tuesday\n        openers\n"
    f"        {WHEEL} against Base, 3 reps\n"
    f"    quiz H on Thursday\n"
)
INSTALL = (
    "install Camp\n    day 1\n        Three Two, Crossers\n    day 2\n        Quads, Tuck\n"
    "        Wheel for Crossers\n        again Crossers\n"
)


@cache
def session(text: str) -> Session:
    return Session((*base(), Source("week.play", text), Source("install.play", INSTALL)), "book")


@cache
def worked(text: str) -> Week:
    compiled = session(text)
    (planned,) = compiled.weeks
    assert planned.plan is not None, planned.found
    calls = (*planned.plan.calls, *planned.plan.practised)
    game = compiled.game_plan(planned.plan)
    install = compiled.install_sheet(planned.plan)
    return work_out(planned.plan, {}, dict.fromkeys(calls, 7), ems(), game, install)


def folder(at: Path, text: str) -> Path:
    book = at / "book"
    book.mkdir()
    sources = (*base(), Source("base/week.play", text), Source("base/install.play", INSTALL))
    for source in sources:
        (book / Path(source.name).name).write_text(source.text, "utf-8")
    return book


def test_a_moved_call_changes_its_two_lists_and_nothing_else() -> None:
    """The sheet's two lists and the index line of the call; no number, band, card or other line."""
    was = worked(WEEK)
    # A week moves what it takes over, so the moved week is written out.
    written = WEEK.replace(f"        {QUADS}\n", "").replace(
        f"        {WHEEL}\n    wrist", f"        {WHEEL}\n        {QUADS}\n    wrist"
    )
    now = worked(written)
    before = {title: rows for title, _, rows in sheet_rows(was)}
    after = {title: rows for title, _, rows in sheet_rows(now)}
    assert {title for title in before if before[title] != after[title]} == {"Openers", "Red zone"}

    def numbers(rows: tuple[SheetRow, ...]) -> dict[str, str]:
        return {row.call: row.number for row in rows}

    assert numbers(before["Openers"]) | numbers(before["Red zone"]) == numbers(
        after["Openers"]
    ) | numbers(after["Red zone"])
    old, new = ({line.call: line for line in index_lines(w)} for w in (was, now))
    changed: list[WeekIndexLine] = [new[call] for call in new if new[call] != old[call]]
    assert [(line.call, line.situations) for line in changed] == [(QUADS, "Red zone")]
    assert [e.number for e in sorted(was.entries, key=lambda e: e.call)] == [
        e.number for e in sorted(now.entries, key=lambda e: e.call)
    ]


def test_a_moved_call_changes_these_pages_and_no_other() -> None:
    """From openers, which a period and a band take over, to the red zone: what each man does, what
    the look team shows, and what is asked, is as before. Of the game plan it is the front, the plan
    at its end and the pages of the call's concept, whose calls stand in the plan's order. Of a call
    that no script and no band takes over from its situation, these and the install are the same
    too."""
    taken = WEEK.replace("for Q, R\n", "for Q, R\n        holds openers\n")
    sheets = {"call-sheet.pdf 1", "call-index.pdf 1", "data/call-sheet.csv"}
    sheets |= {"data/index.csv", "data/week.json"}
    plan = {f"game-plan.pdf {n}" for n in (1, 3, 4, 5)}
    holds = {"wristbands.pdf 1", "data/wristbands.csv"}
    scripts = {"practice-script.pdf 1", "data/script.csv"}
    loose = taken.replace(
        "        openers\n        Three Two Right Crossers Wheel ag",
        "        Three Two Right Crossers Wheel ag",
    )
    loose = loose.replace("        holds openers\n", "")
    assert _changed(loose, BRIEF) == sheets
    # On no band and in no practice now, which the counting and the install say.
    said = {"counting.pdf 1", "install.pdf 1"}
    assert _changed(taken) == sheets | plan | holds | scripts | said
    # What its situations answer is counted where the opponent's looks are named.
    faces = loose.replace("    openers\n", "    faces Base\n    openers\n", 1)
    assert _changed(faces, BRIEF) == sheets | {"counting.pdf 1"}


BRIEF = tuple(part for part in PARTS if part not in ("gameplan", "positions", "quiz"))
"""What is left when the slow ones, which know neither bands nor scripts, have been made once."""


def _changed(written: str, parts: tuple[str, ...] = PARTS) -> set[str]:
    """Those of the files that differ when `QUADS` is moved from the openers to the red zone, with
    the number of each page that does."""
    there = f"        {WHEEL}\n    wrist"
    moved = written.replace(f"        {QUADS}\n", "", 1).replace(
        there, f"        {WHEEL}\n        {QUADS}\n    wrist"
    )
    assert moved != written
    made = []
    with results(Path()) as (store, _):
        how = Printing(load_theme(), store=store)
        for text in (written, moved):
            asked = session(text)
            week = worked(text)
            made.append(week_papers(week, how, parts, asked.answers(week.plan)).files)
    assert made[0].keys() == made[1].keys()
    own = {"positions", "quiz.pdf"} if "quiz" in parts else set()
    assert {name.split("/")[0] for name in made[0]} >= {"scout-cards.pdf", *own}
    found: set[str] = set()
    for name in (name for name in made[0] if made[0][name] != made[1][name]):
        if not name.endswith(".pdf"):
            found.add(name)
            continue
        was, now = (_pages(each[name]) for each in made)
        pages = zip_longest(was, now)
        found |= {f"{name} {n}" for n, (one, other) in enumerate(pages, 1) if one != other}
    return found


def _pages(data: bytes) -> list[bytes]:
    """Each page as it is seen."""
    return [page.render(scale=1.0).to_pil().tobytes() for page in pdfium.PdfDocument(data)]


def test_the_printed_sheet_holds_every_row() -> None:
    """Each call stands behind its number and before its page, in the words of the PDF itself."""
    week = bundled_week(HERONS, 5)
    made = week_papers(week, Printing(load_theme(), sides=2), ("sheet",))
    document = pdfium.PdfDocument(made.files["call-sheet.pdf"])
    words = " ".join(
        " ".join(page.get_textpage().get_text_bounded().split()) for page in document
    ).replace(" ", "")
    for _, _, rows in sheet_rows(week):
        for row in rows:
            assert f"{row.number}{row.call}".replace(" ", "") in words, row
    assert "Playclock:20seconds" in words


def test_no_page_of_the_index_is_begun_for_a_few_calls() -> None:
    """Fifty calls at the usual distance are a page and a line; sixty are two pages."""
    lines = index_lines(bundled_week(HERONS, 5))
    for calls, pages in ((50, 1), (60, 2)):
        many = [line for _ in range(2) for line in lines][:calls]
        made = index_pdf(many, "Week 5", load_theme(), "letter", "", "")
        assert len(pdfium.PdfDocument(made)) == pages


def test_no_column_of_the_script_leaves_the_paper() -> None:
    """Week 5 has periods with every column, and some with few."""
    week = bundled_week(HERONS, 5)
    made = week_papers(week, Printing(load_theme()), ("script",))
    document = pdfium.PdfDocument(made.files["practice-script.pdf"])
    for page in document:
        words = page.get_textpage()
        right = max(words.get_rect(n)[2] for n in range(words.count_rects()))
        assert right <= page.get_width() - MARGIN


def test_the_pages_are_those_that_the_book_prints(tmp_path: Path) -> None:
    """Each call is looked up on the page of the printed book that the week names; what was set for
    the week is bound into the book, as by the commands."""
    compiled = session(WEEK)
    (planned,) = compiled.weeks
    assert planned.plan is not None
    with Store(tmp_path) as store:
        made = made_week(compiled, planned.plan, load_theme(), parts=("data",), store=store)
    told = csv.DictReader(io.StringIO(made.files["data/index.csv"].decode(), newline=""))
    from stemline.results import made_book

    assert compiled.season is not None
    with Store(tmp_path) as store:
        files = made_book(
            compiled, compiled.season, "", "", "letter", load_theme(), lambda done, of: None, store
        )
    book = pdfium.PdfDocument(files["book.pdf"])
    texts = [" ".join(page.get_textpage().get_text_bounded().split()) for page in book]
    for row in told:
        page = texts[int(row["page"]) - 1]
        short = row["call"].removeprefix("Three Two Right ").removeprefix("Quads Right ")
        assert row["call"] in page or short in page, (row, page[:300])


def test_the_command_says_what_it_made_and_how_many_to_print(tmp_path: Path) -> None:
    book = folder(tmp_path, WEEK)
    result = CliRunner().invoke(main, ["week", str(book), "3", "--no-pages"])
    assert result.exit_code == 0, result.output
    out = book / "build" / "week-3"
    assert {f.name for f in out.iterdir() if f.name != HELD.split("/")[0]} == {
        "call-sheet.pdf", "wristbands.pdf", "scout-cards.pdf", "practice-script.pdf",
        "call-index.pdf", "data", "positions", "quiz.pdf", "quiz-key.pdf",
        "counting.pdf", "game-plan.pdf", "install.pdf",
    }  # fmt: skip
    last = result.output.strip().splitlines()[-1]
    assert last.endswith(
        "call sheet: 1 side; wristbands: 1 sheet (2 Skill); "
        "game plan: 3 sheets on both sides; scout cards: 2 sheets; "
        "script: 1 practice; position books: 12 sheets on both sides "
        "(LT, LG, C, RG, RT, X, W, H, S, Z, R, Q); quiz: 1 sheet (H); key to it: 1 sheet; "
        "counting: 1 sheet; install: 1 sheet on both sides; index: 3 calls; data: 5 files"
    )
    assert len(pdfium.PdfDocument(out / "scout-cards.pdf")) == 2
    data = json.loads((out / "data" / "week.json").read_text("utf-8"))
    assert data["opponent"] == "Larch Bay"


def test_an_error_leaves_the_last_good_papers_whole(tmp_path: Path) -> None:
    book = folder(tmp_path, WEEK)
    assert CliRunner().invoke(main, ["week", str(book), "3", "--no-pages"]).exit_code == 0
    out = book / "build" / "week-3"
    before = {f: f.read_bytes() for f in out.rglob("*") if f.is_file()}
    empty = WEEK.replace("for Q, R\n", "for Q, R\n        holds goal line\n")
    for code, wrong in (("E602", WEEK.replace(QUADS, "Quads Right Crosers")), ("E993", empty)):
        (book / "week.play").write_text(wrong, "utf-8")
        result = CliRunner().invoke(main, ["week", str(book), "3", "--no-pages"])
        assert result.exit_code == 1 and code in result.output, result.output
        assert {f: f.read_bytes() for f in out.rglob("*") if f.is_file()} == before


@pytest.mark.parametrize(("arguments", "code"), [(["4"], 1), (["3", "--only", "sheets"], 2)])
def test_a_week_or_part_that_is_not_there(tmp_path: Path, arguments: list[str], code: int) -> None:
    result = CliRunner().invoke(main, ["week", str(folder(tmp_path, WEEK)), *arguments])
    assert result.exit_code == code and not (tmp_path / "book" / "build").exists()


@cache
def whole() -> dict[str, bytes]:
    return week_papers(worked(WEEK), Printing(load_theme())).files


@pytest.mark.parametrize("part", PARTS)
def test_each_part_alone_is_the_same_as_among_all(part: str) -> None:
    alone = week_papers(worked(WEEK), Printing(load_theme()), (part,)).files
    assert alone and all(whole()[name] == data for name, data in alone.items())
