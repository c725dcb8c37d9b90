"""Each man of each call held against the page of his concept: his row, his line, in words."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from job_reading import Job, jobs, line_jobs, line_told, protection, same_words, told

from stemline.book.content.book import Book, Edition, make_book
from stemline.book.content.kinds.concept_page import ConceptPage
from stemline.book.content.page import concept_groups
from stemline.football.play import Play, Season

Paged = tuple[ConceptPage, tuple[Play, ...]]


def paged(season: Season, book: Book | None = None) -> list[Paged]:
    """The page of each concept with the calls that it speaks of."""
    pages = (book or make_book(season, Edition("", ""), ("",))).of(ConceptPage)
    return list(zip(pages, concept_groups(season), strict=True))


def wrong(pages: Sequence[Paged]) -> Iterator[str]:
    """Each man of each call whose page and play do not agree, in a line."""
    for page, plays in pages:
        for play in plays:
            found = (*_disagree(page, play, plays), *_wrong_line(page, play, plays))
            yield from (f"{play.call.spoken}: {line}" for line in found)


def _disagree(page: ConceptPage, play: Play, plays: Sequence[Play]) -> list[str]:
    try:
        given = jobs(page, play, plays)
    except AssertionError as twice:
        return [str(twice)]
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
        and same_words(" ".join(page.says), " ".join(play_says.says), play)
    )


def _wrong_line(page: ConceptPage, play: Play, plays: Sequence[Play]) -> Iterator[str]:
    if page.fronts is None and protection(page, play, plays) != play.protection:
        yield f"protection {play.protection}"
    given = line_jobs(page, play, plays)
    for task in play.assignments:
        if play.man(task.man).interior:
            said = given.get(task.man, "")
            if not same_words(said, line_told(task), play):
                yield f"{task.man} page {said} play {line_told(task)}"
