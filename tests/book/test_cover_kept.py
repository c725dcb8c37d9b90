"""A new sentence on the cover, or a new revision, asks for no play."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import cast

from sample_gallery import CAPTIONS
from sample_season import sample_season

from stemline.book.content.book import Edition, make_book
from stemline.book.content.keeping import Made, Reads
from stemline.football.later import later
from stemline.football.play import Season

SHEETS = ("formations", "motions", "routes", "looks", "protections")


def test_a_cover_is_made_anew_without_the_sheets_that_it_counts() -> None:
    kept: dict[str, object] = {}

    def keep(
        reads: Reads,
        what: str,
        kind: type[Made],
        more: object,
        make: Callable[[], Made],
        concept: str = "",
    ) -> Made:
        key = repr((reads, what, more, concept))
        if key not in kept:
            kept[key] = make()
        return cast("Made", kept[key])

    def asked(name: str) -> dict[str, object]:
        raise AssertionError(f"{name} were made")

    season = sample_season()
    before = make_book(season, Edition("", ""), CAPTIONS, keep)
    known = {name: value for name, value in vars(season).items() if name not in SHEETS}
    known["team"] = replace(season.team, says=("Now and then.",))
    after = make_book(later(Season, known, asked), Edition("1b2c3d4", ""), CAPTIONS, keep)
    assert after.cover.says == ("Now and then.",)
    assert after.cover.about == before.cover.about
