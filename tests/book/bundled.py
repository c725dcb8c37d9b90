"""The bundled books' seasons, each made once for all tests of a process."""

from __future__ import annotations

from functools import cache

from gate.pictures import BUNDLED, bundled_season

from stemline.football.play import Season

__all__ = ["BUNDLED", "season_of"]


@cache
def season_of(name: str) -> Season:
    return bundled_season(name)
