"""A page says of a man what his play says: every call of both bundled books, read back."""

from __future__ import annotations

import re
from collections.abc import Sequence

import pytest
from bundled import BUNDLED, season_of
from generated import generated_seasons
from job_reading import (
    Job,
    jobs,
    line_jobs,
    line_told,
    protection,
    same_words,
    told,
)

from stemline.book.content.page_models import ConceptPage, Edition
from stemline.book.content.pages import concept_groups, make_book
from stemline.football.play import Play, Season

Paged = tuple[ConceptPage, tuple[Play, ...]]


def paged(season: Season) -> list[Paged]:
    pages = make_book(season, Edition("", ""), ("",)).concepts
    return list(zip(pages, concept_groups(season), strict=True))


@pytest.fixture(scope="module", params=BUNDLED)
def pages(request: pytest.FixtureRequest) -> list[Paged]:
    return paged(season_of(request.param))


def test_the_table_of_jobs_says_what_every_call_says(pages: list[Paged]) -> None:
    assert "\n".join(_wrong(pages)) == ""


def test_the_line_is_told_what_every_call_says(pages: list[Paged]) -> None:
    assert "\n".join(_wrong_line(pages)) == ""


def test_letters_of_the_defence_are_marked_and_ours_are_not(pages: list[Paged]) -> None:
    for page, plays in pages:
        for play in plays:
            if play.defence is None:
                continue
            theirs = {d.label for d in play.defence.defenders}
            ours = {man.label for man in play.men}
            for _, job in jobs(page, play, plays).values():
                marked = set(re.findall(r"\[(\w+)\]", job.job))
                words = re.sub(r"(playside|backside|strong|weak) [A-D]\b|[A-D] gap", "", job.job)
                bare = set(re.findall(r"(?<![\[\w])[A-Z][A-Z]?(?![\]\w])", words))
                assert marked <= theirs, job
                assert not bare & (theirs - ours), f"{play.call.spoken}: {job.job}"


def test_generated_playbooks_are_read_back_too() -> None:
    seasons = list(generated_seasons(200))
    assert len(seasons) == 200
    assert sum(len(season.plays) for season in seasons) > 800
    pages = [paged(season) for season in seasons]
    found = [line for each in pages for line in (*_wrong(each), *_wrong_line(each))]
    assert "\n".join(found) == ""


def _wrong(pages: Sequence[Paged]) -> list[str]:
    """Each man of each call whose page and play do not agree, in a line."""
    return [
        f"{play.call.spoken}: {line}"
        for page, plays in pages
        for play in plays
        for line in _disagree(page, play, plays)
    ]


def _disagree(page: ConceptPage, play: Play, plays: Sequence[Play]) -> list[str]:
    try:
        given = jobs(page, play, plays)
    except AssertionError as wrong:
        return [str(wrong)]
    found = []
    wanted = {
        task.man: task
        for task in play.assignments
        if not play.man(task.man).interior
        and (task.role or task.job or task.says or task.motion is not None)
    }
    found += [f"{man} has no row" for man in wanted if man not in given]
    found += [f"{man} has a row and no job" for man in given if man not in wanted]
    for man, task in wanted.items():
        if man in given:
            role, job = given[man]
            if role not in ("", task.role):
                found.append(f"{man} is {role}, plays {task.role}")
            if not _same(job, told(task), play):
                found.append(f"{man} page {job} play {told(task)}")
    return found


def _same(page: Job, play_says: Job, play: Play) -> bool:
    return (
        page.motion == play_says.motion
        and same_words(page.job, play_says.job, play)
        and page.looks == play_says.looks
        and " ".join(page.says) == " ".join(play_says.says)
    )


def _wrong_line(pages: Sequence[Paged]) -> list[str]:
    found = []
    for page, plays in pages:
        for play in plays:
            if page.fronts is None and protection(page, play, plays) != play.protection:
                found.append(f"{play.call.spoken}: protection {play.protection}")
            given = line_jobs(page, play, plays)
            for task in play.assignments:
                if play.man(task.man).interior:
                    said = given.get(task.man, "")
                    if not same_words(said, line_told(task), play):
                        found.append(
                            f"{play.call.spoken}: {task.man} page {said} play {line_told(task)}"
                        )
    return found
