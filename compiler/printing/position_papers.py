"""A man's book of a week on paper: a picture for each way he goes, the others pale."""

from __future__ import annotations

from collections.abc import Iterable

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
from stemline.geometry.box import Box
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


class OwnPictures:
    """The pictures of men's books, each play in a frame of its own."""

    def __init__(self, drawings: Drawings) -> None:
        self._drawings = drawings
        self._frames: dict[int, tuple[Play, Box]] = {}

    def wanted(self, books: Iterable[OwnBook]) -> list[tuple[Play, Showing, bool]]:
        """All of them as `Drawings.beside` takes them, those of a play together."""
        plays: dict[int, list[tuple[Play, Showing, bool]]] = {}
        for book in books:
            for alike in (alike for job in book.jobs for alike in job.alike):
                play = alike.calls[0].play
                plays.setdefault(id(play), []).append((play, self._showing(play, book.man), False))
        return [each for same in plays.values() for each in same]

    def art(self, id_: str, play: Play, man: str) -> Art:
        return self._drawings.art(id_, play, self._showing(play, man))

    def _showing(self, play: Play, man: str) -> Showing:
        held = self._frames.get(id(play))
        if held is None:
            held = self._frames[id(play)] = play, frame_of((play,))
        return Showing(Size.THUMB, held[1], only=man)


def position_page(
    book: OwnBook, week: Week, pictures: OwnPictures, paper: str
) -> tuple[PositionPage, tuple[Art, ...]]:
    """What the printed book of a man holds, and its pictures."""
    arts: list[Art] = []

    def shown(alike: AlikeCalls) -> PositionPicture:
        play = alike.calls[0].play
        art = pictures.art(f"own-{len(arts) + 1}", play, book.man)
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
        killed=tuple(
            (tuple(listed(entry) for entry in each.calls), f"{each.to}, {each.when}", each.job)
            for each in book.killed
        ),
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
