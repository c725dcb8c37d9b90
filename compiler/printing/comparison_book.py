"""The comparison book: what was and what is drawn over each other, and set with what is said."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from stemline.emit.apart import apart
from stemline.emit.comparison_pages import BothPicture, ComparisonPages, comparison_pdf
from stemline.emit.pdf_ink import art_of
from stemline.emit.week_pages import text_room
from stemline.football.play import Play
from stemline.football.timing.levels import PlayingLevel
from stemline.picture.picture import picture
from stemline.theme import Size, Theme

_PART = 0.36
"""Of a page's height that a picture may take, so that two stand on a page with their words."""


@dataclass(frozen=True)
class BothDrawn:
    """A call that changed, as it was and as it is, with its words; ``was`` is None where nobody
    moves elsewhere, and then it is told and not drawn. ``his`` are those who move, by letter, each
    with what is different for him: his page shows it with him alone strong."""

    title: str
    also: str
    notes: tuple[str, ...]
    was: Play | None
    now: Play
    his: tuple[tuple[str, str], ...] = ()


def comparison_book(
    pages: ComparisonPages,
    drawn: Sequence[BothDrawn],
    theme: Theme,
    level: PlayingLevel,
    paper: str,
    footer: str,
    date: str,
) -> bytes:
    """The PDF of ``pages`` with ``drawn`` as their pictures. Raises what `comparison_pdf` does."""
    pictures = tuple(_both(n, both, theme, level, paper) for n, both in enumerate(drawn))
    men = tuple(replace(man, pictures=_his(man.man, drawn, theme, level)) for man in pages.men)
    pages = replace(pages, pictures=pictures, men=men)
    count = sum(p.art is not None for p in (*pictures, *(p for man in men for p in man.pictures)))
    return apart(theme, count, comparison_pdf, pages, theme, paper, footer, date)


def _both(
    number: int, both: BothDrawn, theme: Theme, level: PlayingLevel, paper: str
) -> BothPicture:
    if both.was is None:
        return BothPicture(both.title, both.also, both.notes, None, 1.0)
    scene = picture(both.now, Size.QUARTER, theme, before=both.was, level=level)
    art = art_of(f"both-{number}", scene, theme, "")
    wide, tall = text_room(paper)
    factor = min(wide / art.width, _PART * tall / art.height)
    return BothPicture(both.title, both.also, both.notes, art, factor)


def _his(
    man: str, drawn: Sequence[BothDrawn], theme: Theme, level: PlayingLevel
) -> tuple[BothPicture, ...]:
    """The changes that move this man, small and with him alone strong, two beside each other."""
    found = []
    for number, both in enumerate(drawn):
        told = [text for label, text in both.his if label == man]
        if both.was is None or not told:
            continue
        scene = picture(both.now, Size.QUARTER, theme, only=man, before=both.was, level=level)
        art = art_of(f"his-{man}-{number}", scene, theme, "")
        notes = tuple(text.removeprefix(f"{man} ") for text in told if text)
        found.append(BothPicture(both.title, both.also, notes, art, 1.0))
    return tuple(found)
