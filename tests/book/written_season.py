"""The season of a text that a test writes out."""

from __future__ import annotations

from stemline.diagnostics.render import render
from stemline.football.play import Season
from stemline.session import Session
from stemline.source import Source


def written_season(text: str) -> Season:
    """Every call of the text; refused with its messages where it has an error, which would leave
    calls out."""
    source = Source("a.play", text)
    session = Session([source], "a")
    season = session.season
    assert season is not None and not session.failed, render(
        session.diagnostics, {"a.play": source}
    )
    return season
