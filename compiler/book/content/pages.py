"""Plays → Book: the cover, the front pages, a section a family, a page a concept, the indexes."""

from __future__ import annotations

from dataclasses import replace
from itertools import groupby

from stemline.book.content.answer_table import answers
from stemline.book.content.care_page import care
from stemline.book.content.concept_page import concept_page
from stemline.book.content.index import index
from stemline.book.content.legend_page import reading
from stemline.book.content.look_page import look_page
from stemline.book.content.page_models import (
    Book,
    ConceptPage,
    CoverPage,
    Edition,
    Entry,
    LineupPage,
    Remark,
    Section,
)
from stemline.book.content.protection_page import protection_page
from stemline.football.play import ConceptSheet, Kind, Play, Season
from stemline.source import NOWHERE

CAUTION = "A planning aid. Your league's rule book decides."


def call_ids(season: Season) -> tuple[str, ...]:
    """The id of each of the season's calls, in book order: picture, anchor and link share it."""
    return tuple(f"call-{number}" for number in range(1, len(season.plays) + 1))


def concept_groups(season: Season) -> tuple[tuple[Play, ...], ...]:
    """The season's plays cut into concepts, as they stand side by side in book order."""
    return tuple(
        tuple(plays) for _, plays in groupby(season.plays, lambda p: (p.family, p.call.concept))
    )


def make_book(season: Season, edition: Edition, captions: tuple[str, ...]) -> Book:
    """The book of a season; ``captions`` are those of the legend's pictures."""
    ids = call_ids(season)
    title = " ".join(part for part in (season.team.name, season.team.season) if part)
    printing = _joined(edition.revision and f"revision {edition.revision}", edition.date)
    return Book(
        title=f"{title} playbook",
        footer=_joined(season.team.name, season.team.season, printing),
        caution=CAUTION,
        paper=edition.paper,
        cover=_cover(season, printing),
        reading=reading(captions),
        care=care(season),
        sections=_sections(season, ids),
        index=index(season.plays, ids, edition.paper),
        lineup=_lineup(season),
        protections=tuple(protection_page(s, i) for i, s in enumerate(season.protections, 1)),
        looks=tuple(look_page(s, i) for i, s in enumerate(season.looks, 1)),
    )


def _cover(season: Season, printing: str) -> CoverPage:
    groups, calls = concept_groups(season), len(season.plays)
    runs = sum(plays[0].kind is Kind.RUN for plays in groups)
    counted = [_count(len(groups) - runs, "concept"), *((_count(runs, "run"),) if runs else ())]
    counted += [_count(len(season.protections), "protection")] if season.protections else []
    counted += [_count(len(season.looks), "look")] if season.looks else []
    return CoverPage(
        team=season.team.name,
        season=season.team.season,
        code=season.code_title,
        edition=printing,
        about=(
            f"{', '.join(counted)}, {_count(calls, 'call')}. A page a concept: its first "
            "call large, each man's job, the quarterback's eyes and feet, and every other way it "
            "is dressed up. Each call stands in the index at the back with its page."
        ),
        says=season.team.says,
        cautions=(
            f"This book is a planning aid. It defers to {season.authority}, and to qualified "
            "medical staff.",
            *season.team.cautions,
        ),
    )


def _lineup(season: Season) -> LineupPage | None:
    """Every formation small, called right."""
    entries = tuple(
        Entry(
            f"formation-{i}",
            sheet.name,
            sheet.view,
            tuple(Remark("", line) for line in sheet.says),
            listed=False,
            aside=_joined("{}x{}".format(*sheet.view.shape), sheet.people),
        )
        for i, sheet in enumerate(season.formations, 1)
    )
    return LineupPage("lineup", entries) if entries else None


def _sections(season: Season, ids: tuple[str, ...]) -> tuple[Section, ...]:
    sheets = {sheet.name: sheet for sheet in season.concepts}
    tables = answers(season)
    families: dict[str, list[ConceptPage]] = {}
    at = 0
    for plays in concept_groups(season):
        own, at = ids[at : at + len(plays)], at + len(plays)
        name, family = plays[0].call.concept, plays[0].family
        sheet = sheets.get(name) or ConceptSheet(name, family, (), (), (), (), (), NOWHERE)
        pages = families.setdefault(family, [])
        page = concept_page(sheet, plays, own, season, opens=not pages)
        pages.append(replace(page, answers=tables.get(name)))
    return tuple(Section(family, tuple(pages)) for family, pages in families.items())


def _joined(*parts: str) -> str:
    return " · ".join(part for part in parts if part)


def _count(number: int, noun: str) -> str:
    return f"{number} {noun}" if number == 1 else f"{number} {noun}s"
