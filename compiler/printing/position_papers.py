"""A man's book of a week on paper: a picture for each way he goes, the others pale."""

from __future__ import annotations

from stemline.emit.gallery import Art
from stemline.emit.week_pages import MARGIN
from stemline.emit.week_positions import (
    ACROSS,
    ListedCall,
    PositionJob,
    PositionPage,
    PositionPicture,
)
from stemline.football.play import Play
from stemline.picture.frame.board import frame_of
from stemline.printing.drawings import Drawings, Showing
from stemline.theme import Size
from stemline.week.call_sheet import PAPERS
from stemline.week.killed_rows import printed_call
from stemline.week.position_book import AlikeCalls, OwnBook
from stemline.week.week_values import CallEntry, Week

_GAP = 12.0
"""Points between them."""


def picture_width(paper: str, across: int = ACROSS) -> float:
    """Points that one of ``across`` pictures may take of a page of ``paper``."""
    width, _ = PAPERS[paper]
    return (width - 2 * MARGIN - (across - 1) * _GAP) / across


def position_page(
    book: OwnBook, week: Week, drawings: Drawings, paper: str
) -> tuple[PositionPage, tuple[Art, ...]]:
    """What the printed book of a man holds, and its pictures."""
    arts: list[Art] = []

    def shown(alike: AlikeCalls) -> PositionPicture:
        play = alike.calls[0].play
        wanted = Showing(Size.THUMB, frame_of((play,)), only=book.man)
        art = drawings.art(f"own-{len(arts) + 1}", play, wanted)
        arts.append(art)
        factor = min(1.0, picture_width(paper) / art.width)
        return PositionPicture(art, factor, tuple(listed(e) for e in alike.calls), look_of(play))

    jobs = tuple(
        PositionJob(job.task.motion, job.task.job, job.task.looks, job.task.says,
                    tuple(shown(alike) for alike in job.alike), job.new)
        for job in book.jobs
    )  # fmt: skip
    page = PositionPage(
        man=book.man,
        places=tuple((place.words, ", ".join(place.formations)) for place in book.places),
        jobs=jobs,
        since=book.since,
        came=tuple(listed(entry) for entry in book.came),
        went=_gone(book, week),
        calls=len(week.plan.calls) - book.off,
        off=book.off,
    )
    return page, tuple(arts)


def _gone(book: OwnBook, week: Week) -> tuple[str, ...]:
    """The calls of the week before that he has no more, as they were printed then."""
    before = week.plan.before
    plays = before.plays if before is not None else {}
    return tuple(printed_call(call, plays[call]) for call in book.went)


def look_of(play: Play) -> str:
    """The name of the look that a picture shows, "" where it shows none."""
    return play.defence.name if play.defence is not None else ""


def listed(entry: CallEntry) -> ListedCall:
    """A call as every paper names it: its number, its words, its page."""
    return ListedCall(
        "" if entry.number is None else str(entry.number),
        printed_call(entry.call, entry.play),
        "" if entry.page is None else str(entry.page),
    )
