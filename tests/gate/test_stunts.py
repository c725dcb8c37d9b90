"""Pictures of looks whose men go round one another or wait are clean at every size, on paper and
on a projector."""

from __future__ import annotations

import pytest

from stemline.theme import load_theme

from .pictures import BUNDLED, of_pages
from .table import judge, told

PAGES = ("protection-4", "protection-7", "look-6", "look-7", "look-8")
"""Pages with a man behind another man's rush, with one who comes late, and with men who cover the
backs through a tight line."""


@pytest.mark.parametrize(
    ("book", "theme"), [*((book, "plain") for book in BUNDLED), (BUNDLED[0], "dark")]
)
def test_their_lines_touch_nobody(book: str, theme: str) -> None:
    look = load_theme(theme)
    judged = [judge(picture, look) for picture in of_pages(book, PAGES, look)]
    assert len(judged) > 40
    guilty = [told(each) for each in judged if each.faults]
    assert not guilty, "\n".join(guilty)
