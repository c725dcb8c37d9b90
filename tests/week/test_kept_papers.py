"""What is kept of one week never shows in another's papers: cold, warm and without, alike bytes."""

from __future__ import annotations

from pathlib import Path

from stemline.outside.store import Store
from stemline.printing.week_papers import Printing, week_papers
from stemline.theme import load_theme

from .test_papers import CALL, QUADS, worked

PARTS = ("gameplan", "positions", "quiz")
"""Those that keep pictures, heights or parts of pages."""
WEEK = f"week 3 Larch Bay\n    openers\n        {CALL}\n    quiz H on Thursday\n"
NEXT = f"week 4 Ember Ridge\n    openers\n        {CALL}\n        {QUADS}\n    quiz H\n"


def made(text: str, store: Store | None = None) -> dict[str, bytes]:
    how = Printing(load_theme(), men=("H",), store=store)
    return week_papers(worked(text), how, PARTS).files


def test_a_week_is_the_same_whatever_is_kept(tmp_path: Path) -> None:
    with Store(tmp_path / "store") as store:
        cold = made(WEEK, store)
    with Store(tmp_path / "store") as store:
        following = made(NEXT, store)
        assert made(WEEK, store) == cold
    assert set(following) >= {"game-plan.pdf", "positions/h.pdf", "quiz.pdf"}
    assert following == made(NEXT)
