"""The bundled books' seasons, each made once for all tests of a process."""

from __future__ import annotations

from functools import cache

from stemline.football.play import Season
from tests.gate.pictures import BUNDLED, bundled_season

__all__ = ["BUNDLED", "season_of"]


@cache
def season_of(name: str) -> Season:
    return bundled_season(name)
