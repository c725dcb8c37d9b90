"""The season of a text that a test writes out."""

from __future__ import annotations

from stemline.diagnostics.render import render
from stemline.football.play import Season
from stemline.resolve.sheets import with_sheets
from stemline.session import Session
from stemline.source import Source


def written_season(text: str) -> Season:
    """Every call of the text, with what a book tells of its formations, looks and the like;
    refused with its messages where it has an error, which would leave calls out."""
    source = Source("a.play", text)
    session = Session([source], "a")
    book, season = session.book, session.season
    told = render(session.diagnostics, {"a.play": source})
    assert book is not None and season is not None and not session.failed, told
    return with_sheets(book, season)
