"""The cover: whose book it is, what is in it, and to whom it defers."""

from __future__ import annotations

from dataclasses import dataclass

from stemline.book.content.page import concept_groups
from stemline.football.play import Kind, Season


@dataclass(frozen=True)
class CoverPage:
    team: str
    season: str
    code: str
    edition: str
    about: str
    says: tuple[str, ...]
    cautions: tuple[str, ...]

    @property
    def roomy(self) -> bool:
        """Whether the coach's own words leave room for an emblem; 80 letters make a line."""
        return sum(1 + len(line) // 80 for line in (*self.says, *self.cautions)) <= 8


def about(season: Season) -> str:
    """What the book holds, counted."""
    groups, calls = concept_groups(season), len(season.plays)
    runs = sum(plays[0].kind is Kind.RUN for plays in groups)
    counted = [_count(len(groups) - runs, "concept"), *((_count(runs, "run"),) if runs else ())]
    counted += [_count(len(season.protections), "protection")] if season.protections else []
    counted += [_count(len(season.looks), "look")] if season.looks else []
    return (
        f"{', '.join(counted)}, {_count(calls, 'call')}. A page a concept: its first "
        "call large, each man's job, the quarterback's eyes and feet, and every other way it "
        "is dressed up. Each call stands in the index at the back with its page."
    )


def cover(season: Season, printing: str, about: str) -> CoverPage:
    """The cover of a season's book that holds what `about` says; ``printing`` says which one it
    is."""
    return CoverPage(
        team=season.team.name,
        season=season.team.season,
        code=season.code_title,
        edition=printing,
        about=about,
        says=season.team.says,
        cautions=(
            f"This book is a planning aid. It defers to {season.authority}, and to qualified "
            "medical staff.",
            *season.team.cautions,
        ),
    )


def _count(number: int, noun: str) -> str:
    return f"{number} {noun}" if number == 1 else f"{number} {noun}s"
