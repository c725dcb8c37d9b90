"""A call that becomes another at the line, on the papers of a week: one row, one number."""

from __future__ import annotations

from functools import cache

import pytest
from resolve.shipped_books import PLAYBOOKS

from stemline.book.content.plan_book import planned_line
from stemline.outside.project import read_files
from stemline.picture.scene.metrics import faces
from stemline.printing.position_papers import listed
from stemline.session import Session
from stemline.source import Source
from stemline.theme import load_theme
from stemline.week.bands import card_of
from stemline.week.call_sheet import SheetRow, sheet_rows
from stemline.week.index_of import index_lines
from stemline.week.killed_rows import brief
from stemline.week.leanings import leanings_of
from stemline.week.scripting import script_of
from stemline.week.week_values import Week
from stemline.week.working_out import work_out

from .plans import HERONS, bundled_week, ems

KILLED = "Pistol Right Counter Kill Stick"


def row(week: Week, call: str) -> SheetRow:
    return next(r for *_, rows in sheet_rows(week) for r in rows if r.call.startswith(call))


def test_a_kill_is_one_row_with_what_he_sees_in_the_look_column() -> None:
    week = bundled_week(HERONS, 7)
    said = row(week, "Pistol Right Counter")
    assert (said.call, said.look) == ("Pistol Right Counter > Stick", "Bear One")
    assert said.number == str(week.entry(KILLED).number)
    assert sum(e.call == KILLED for e in week.entries) == 1
    # A row with a look of its own keeps it.
    own = row(week, "Doubles Right Back Angle")
    assert (own.call, own.look) == ("Doubles Right Back Angle > Draw", "Bear One")
    assert own.note.startswith("Draw: 0-5 in box.")
    # A letter that the typeface has not is another face's, of a width that nobody measured.
    semibold = faces(load_theme())["semibold"]
    missing = semibold.glyph("\N{RIGHTWARDS ARROW}").outline
    assert missing not in [semibold.glyph(letter).outline for letter in f"{said.call} {own.call}"]


def test_a_band_has_one_number_for_both() -> None:
    week = bundled_week(HERONS, 7)
    band = next(b for b in week.plan.bands if KILLED in b.calls)
    card = card_of(week, band, ems())
    cells = [cell for window in card.windows for column in window for cell in column]  # type: ignore[union-attr]
    (cell,) = [c for c in cells if c.number == str(week.entry(KILLED).number)]
    assert cell.words.endswith(" > Stick") and "Kill" not in cell.words
    (line,) = [line for line in index_lines(week) if line.call == KILLED]
    assert line.becomes == "Stick when Bear One"
    assert line.said == "Pistol Right Counter"


def test_every_paper_prints_it_as_the_sheet_does() -> None:
    """The script, a man's book, the quiz, the install sheet and the week's own book."""
    week = bundled_week(HERONS, 7)
    rows = {r.number: r.call for *_, rows in sheet_rows(week) for r in rows}
    entries = [e for e in week.entries if e.play.becomes]
    assert len(entries) > 1
    for entry in entries:
        said = rows[str(entry.number)]
        assert listed(entry).call == said and "Kill" not in said
        assert said in planned_line(entry)
    lines = [line for day in script_of(week).days for p in day.periods for line in p.lines]
    told = {line.call: (line.said, line.kills) for line in lines}
    killed = [call for call in told if week.entry(call).play.becomes]
    assert killed
    for call in killed:
        said, kills = told[call]
        assert said == rows[str(week.entry(call).number)]
        assert kills.startswith(f"{said.rpartition(' > ')[2]}: ")
    assert all(not kills for call, (_, kills) in told.items() if call not in killed)
    leaves = " ".join(leanings_of(week).leaves)
    assert "Kill" not in leaves


def test_it_is_counted_as_what_is_called_first() -> None:
    groups = {g.title: g for g in leanings_of(bundled_week(HERONS, 7)).groups}
    told = [(each.name, each.runs) for each in groups["Killed to"].leanings]
    assert told == [("Back Angle > Draw", 0), ("Counter > Stick", 1)]
    assert "Counter" in {x.name for x in groups["Concept"].leanings}


@cache
def rowed(line: str) -> Session:
    """The Herons with a week of one row."""
    sources = [s for s in read_files(PLAYBOOKS / HERONS).sources if "week-" not in s.name]
    text = f"week 9 Larch Bay\n    openers\n        {line}\n"
    sources = [s for s in sources if "install" not in s.name]
    return Session([*sources, Source("week-9.play", text)], "herons")


def test_a_row_of_a_week_may_kill_its_call() -> None:
    (planned,) = rowed("Doubles Right Power, kill to Stick when 8 or more in box").weeks
    assert planned.plan is not None, planned.found
    week = work_out(planned.plan, {}, {}, ems())
    said = row(week, "Doubles Right Power")
    assert (said.call, said.look) == ("Doubles Right Power > Stick", "8+ in box")


@pytest.mark.parametrize(
    ("line", "code"),
    [
        ("Doubles Right Power, kill to Stick", "E762"),
        ("Doubles Right Power, kill to Stic when press", "E310"),
        ("Doubles Right Power, kill to Stick Og when press", "E764"),
        ("Doubles Right Power, kill to Power when press", "E767"),
        ("Doubles Right Power, kill to Stick when 8 in bix", "E763"),
        ("Doubles Right Power, kill to Crossers when press", "E989"),
    ],
)
def test_a_row_that_cannot_be_killed_so(line: str, code: str) -> None:
    session = rowed(line)
    found = [*session.definitions, *(d for each in session.weeks for d in each.found)]
    assert [d.code for d in found if d.is_error] == [code], [d.message for d in found]


def test_what_he_sees_in_as_few_letters_as_a_row_has() -> None:
    assert brief("8 or more in the box, press") == "8+ in box, press"
    assert brief("5 or fewer in box") == "0-5 in box"
