"""What is kept of one week never shows in another's papers: cold, warm and without, alike bytes."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import Any

import pytest

import stemline.emit.side_by_side as side_by_side
import stemline.printing.drawings as drawings
import stemline.printing.week_papers as papers
from stemline.emit.side_by_side import SideBySide
from stemline.football.timing.levels import HIGH_SCHOOL
from stemline.outside.store import Store
from stemline.printing.week_papers import Printing, week_papers
from stemline.printing.workbench import workbenches
from stemline.theme import load_theme

from .test_papers import CALL, QUADS, worked

PARTS = ("gameplan", "positions", "quiz")
"""Those that keep pictures, heights or parts of pages."""
WEEK = f"week 3 Larch Bay\n    openers\n        {CALL}\n    quiz H on Thursday\n"
NEXT = f"week 4 Ember Ridge\n    openers\n        {CALL}\n        {QUADS}\n    quiz H\n"


def made(
    text: str, store: Store | None = None, helpers: SideBySide | None = None
) -> dict[str, bytes]:
    how = Printing(load_theme(), men=("H",), store=store, helpers=helpers)
    return week_papers(worked(text), how, PARTS).files


@cache
def made_anew() -> dict[str, bytes]:
    """The next week's, of which nothing is kept."""
    return made(NEXT)


def test_a_week_is_the_same_whatever_is_kept(tmp_path: Path) -> None:
    with Store(tmp_path / "store") as store:
        cold = made(WEEK, store)
    with Store(tmp_path / "store") as store:
        following = made(NEXT, store)
        assert made(WEEK, store) == cold
    assert set(following) >= {"game-plan.pdf", "positions/h.pdf", "quiz.pdf"}
    assert following == made_anew()


def test_papers_made_by_other_processes_are_as_they_are_here(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """The same processes draw the pictures of men's books and set every paper, in their order."""
    here = made_anew()
    asked: set[str] = set()
    each = SideBySide.each

    def heard(self: SideBySide, method: str, values: Any) -> Any:
        for answer in each(self, method, values):
            asked.add(method)
            yield answer

    monkeypatch.setattr(SideBySide, "each", heard)
    monkeypatch.setattr(side_by_side, "_processors", lambda: 2)
    monkeypatch.setattr(drawings, "FEW", 1)
    monkeypatch.setattr(papers, "FEW", 1)
    helpers = workbenches(load_theme(), HIGH_SCHOOL)
    try:
        there = made(NEXT, helpers=helpers)
        assert helpers.started
    finally:
        helpers.end()
    assert {"all_drawn", "paper"} <= asked
    assert [*there.items()] == [*here.items()]
