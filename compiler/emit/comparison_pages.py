"""A comparison of two playbooks → PDF, from the theme's template and what is said on its pages."""

from __future__ import annotations

from dataclasses import dataclass

from stemline.emit.gallery import Art, Gallery
from stemline.emit.html import filled
from stemline.emit.pdf import pages_pdf
from stemline.emit.week_pages import a_page
from stemline.theme import Theme


@dataclass(frozen=True)
class BothPicture:
    """What was and what is, over each other: its title, the others it stands for in words, what is
    different in sentences, and the picture with its factor; None where nobody moves elsewhere."""

    title: str
    also: str
    notes: tuple[str, ...]
    art: Art | None
    factor: float


@dataclass(frozen=True)
class LearnPage:
    """One man's page: his letter, what he has to learn in short, and by topic what is new and
    what is gone, as (topic, things), and the pictures of what moves him."""

    man: str
    short: str
    new: tuple[tuple[str, tuple[str, ...]], ...]
    gone: tuple[tuple[str, tuple[str, ...]], ...]
    calls: str
    pictures: tuple[BothPicture, ...] = ()


@dataclass(frozen=True)
class ComparisonPages:
    """All that is said: ``numbers`` is a table with its head, ``teach`` rows of who and what,
    ``said`` lines as (kind, text, steps in from the margin)."""

    title: str
    old: str
    new: str
    summary: str
    holds: str
    numbers: tuple[tuple[str, ...], ...]
    teach: tuple[tuple[str, str], ...]
    said: tuple[tuple[str, str, int], ...]
    pictures: tuple[BothPicture, ...]
    men: tuple[LearnPage, ...]


def comparison_pdf(
    pages: ComparisonPages, theme: Theme, paper: str, footer: str, date: str
) -> bytes:
    """The book. Raises what `pages_pdf` does."""
    html = filled(
        theme, "comparison.html.jinja", pages=pages, footer=footer,
        **a_page(theme, pages.title, paper),
    )  # fmt: skip
    shown = (*pages.pictures, *(picture for man in pages.men for picture in man.pictures))
    return pages_pdf(html, Gallery(tuple(p.art for p in shown if p.art is not None)), theme, date)
