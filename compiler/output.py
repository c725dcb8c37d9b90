"""What the commands write: one call's picture, or a whole book with its pictures."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from stemline.book.model import Paper
from stemline.build import build_book, pictures
from stemline.compile import Compiled
from stemline.diagnostics.model import Diagnostic
from stemline.draw.picture import picture
from stemline.emit.fetch import Refused
from stemline.emit.pdf import PangoMissing
from stemline.emit.svg import to_svg
from stemline.football.field import BallSpot
from stemline.football.play import Play, Season
from stemline.football.worlds import Look
from stemline.project import file_name
from stemline.resolve.calls import read_call
from stemline.resolve.expand import expand
from stemline.resolve.read_guards import read_look_words
from stemline.source import Span
from stemline.theme import Size, load_theme

__all__ = ["PangoMissing", "Refused", "call_play", "draw_svg", "write_book"]


def call_play(
    compiled: Compiled, text: str, spot: str | None, against: str
) -> tuple[Play | None, tuple[Diagnostic, ...]]:
    """The play of a call's text, from a ball spot and against looks; None with the reasons."""
    if compiled.book is None or compiled.season is None:
        return None, ()
    at = Span("the call", 1, 1, len(text) + 1)
    order, found = read_call(compiled.book, text, compiled.calls.by_name, at)
    if order is None:
        return None, found
    looks: tuple[Look, ...] = ()
    if against:
        looks, found = read_look_words(against)
        if found:
            return None, found
    drawn = next((p for p in compiled.season.plays if p.call.spoken == order.spoken), None)
    if drawn is not None and spot is None and not looks:
        return drawn, ()
    at_spot = BallSpot(spot) if spot else drawn.ball if drawn else BallSpot.MIDDLE
    play, found = expand(compiled.book, order, at_spot, looks)
    errors = tuple(d for d in found if d.is_error)
    return (None, errors) if errors else (play, ())


def draw_svg(play: Play, *, small: bool = False) -> str:
    """The picture of a play as SVG."""
    theme = load_theme()
    return to_svg(picture(play, Size.THUMB if small else Size.FULL, theme), theme)


def write_book(
    season: Season,
    revision: str,
    date: str,
    paper: str,
    folder: Path,
    progress: Callable[[int, int], None],
) -> None:
    """``book.pdf`` and one SVG a call, under ``pictures``.

    Raises PangoMissing where the PDF library's system part is missing, OSError where the folder
    cannot be written.
    """
    theme = load_theme()
    pdf = build_book(season, revision, date, theme, progress, Paper.named(paper))
    (folder / "book.pdf").write_bytes(pdf)
    shelf = folder / "pictures"
    shelf.mkdir()
    for name, svg in pictures(season, theme, lambda done, of: None).items():
        (shelf / f"{file_name(name)}.svg").write_text(svg, "utf-8")
