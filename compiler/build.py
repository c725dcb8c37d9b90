"""Season → pictures and the book: the one place where the back ends are joined."""

from __future__ import annotations

from collections.abc import Callable

from stemline.book.model import Edition, Paper
from stemline.book.pages import call_ids, concept_groups, make_book
from stemline.draw.legend import legend_entries
from stemline.draw.picture import frame_of, picture
from stemline.draw.scene import Scene
from stemline.emit.gallery import Art, Gallery
from stemline.emit.pdf import to_pdf
from stemline.emit.svg import to_svg
from stemline.football.play import Season
from stemline.theme import Size, Theme

Progress = Callable[[int, int], None]
"""Told after each picture how many are drawn, and of how many."""


def build_book(
    season: Season,
    revision: str,
    date: str,
    theme: Theme,
    progress: Progress,
    paper: Paper = Paper.LETTER,
) -> bytes:
    """The season's playbook as a PDF.

    ``revision`` is its short name and ``date`` its day ("2026-05-01"); both are printed on every
    page. Raises `stemline.emit.pdf.PangoMissing` where the PDF library's system part is missing.
    """
    legend = legend_entries(theme)
    captions = tuple(caption for caption, _ in legend)
    arts = (
        *_call_arts(season, theme, progress),
        *(_art(f"legend-{i}", scene, theme) for i, (_, scene) in enumerate(legend, 1)),
    )
    book = make_book(season, Edition(revision, date, paper), captions)
    return to_pdf(book, Gallery(arts), theme, date)


def pictures(season: Season, theme: Theme, progress: Progress) -> dict[str, str]:
    """Every call's large picture as SVG, by the call as it is spoken."""
    drawn: dict[str, str] = {}
    for done, play in enumerate(season.plays, 1):
        drawn[play.call.spoken] = to_svg(picture(play, Size.FULL, theme), theme)
        progress(done, len(season.plays))
    return drawn


def _call_arts(season: Season, theme: Theme, progress: Progress) -> tuple[Art, ...]:
    """Each concept's first call large, the others small and all in one frame, to be compared."""
    ids = iter(call_ids(season))
    arts: list[Art] = []
    for plays in concept_groups(season):
        frame = frame_of(plays[1:]) if plays[1:] else None
        for play in plays:
            first = play is plays[0]
            scene = (
                picture(play, Size.FULL, theme)
                if first
                else picture(play, Size.THUMB, theme, frame)
            )
            arts.append(_art(next(ids), scene, theme))
            progress(len(arts), len(season.plays))
    return tuple(arts)


def _art(id_: str, scene: Scene, theme: Theme) -> Art:
    return Art(id_, to_svg(scene, theme), scene.description, scene.width, scene.height)
