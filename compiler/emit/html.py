"""Book → HTML for print, from the theme's template and nothing but frozen page models."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from importlib.resources.abc import Traversable
from itertools import accumulate, pairwise

from jinja2 import BaseLoader, Environment, StrictUndefined, TemplateError, TemplateNotFound
from jinja2.sandbox import ImmutableSandboxedEnvironment
from markupsafe import Markup, escape

from stemline.book.fit import BOTTOM, NOTE_LINE, TOP, Arrangement, Front, side_margin, telling
from stemline.book.model import Book, Entry, Page
from stemline.emit.fetch import Refused, theme_files
from stemline.emit.gallery import Gallery
from stemline.theme import Theme

_THEIRS = re.compile(r"\[([A-Z][A-Z0-9]?)\]")


@dataclass(frozen=True)
class Laid:
    """A page of pictures and how it is laid: what a template's page is filled from."""

    page: Page
    how: Arrangement

    @property
    def under(self) -> tuple[Entry, ...]:
        """Dress-ups below the large picture."""
        return self.page.dressups[: self.how.first]

    @property
    def overleaf(self) -> tuple[tuple[Entry, ...], ...]:
        """Dress-ups on each of the pages after it."""
        ends = tuple(accumulate(self.how.rest, initial=self.how.first))
        return tuple(self.page.dressups[a:b] for a, b in pairwise(ends))

    def notes(self, page: int) -> int:
        """Ruled lines at the foot of a sheet of the page, counted from 0."""
        return self.how.notes[page] if page < len(self.how.notes) else 0


def book_html(
    book: Book,
    gallery: Gallery,
    layout: Mapping[str, Arrangement],
    theme: Theme,
    front: Front | None = None,
) -> str:
    """The book as one document; ``layout`` holds each picture page's arrangement by its id.

    Without a ``front`` it is for measuring: the cover and the indexes are left out, and of the
    small pictures all but the telling ones.
    """
    pages = tuple(
        Laid(page if front else replace(page, dressups=telling(page.dressups)), layout[page.id])
        for page in book.pages
    )
    return filled(
        theme,
        "book.html.jinja",
        book=book,
        whole=front is not None,
        front=front or Front(care_apart=True),
        pages=pages,
        gallery=gallery,
        faces=tuple(sorted(theme.fonts)),
        margins=f"{TOP}pt {side_margin(book.paper):.2f}pt {BOTTOM}pt",
        note_line=NOTE_LINE,
    )


def filled(theme: Theme, template: str, **values: object) -> str:
    """A template of the theme filled in. Raises `Refused` where a coach's own cannot be."""
    run = environment(theme_files(theme, ".jinja"))
    try:
        return run.get_template(template).render(colours=theme.colours, **values)
    except TemplateError as why:
        raise Refused(f"theme {theme.name}, {_where(why, template)}: {why}") from why


def _where(why: TemplateError, template: str) -> str:
    name, line = getattr(why, "name", None) or template, getattr(why, "lineno", None)
    return f"{name}, line {line}" if line else str(name)


def environment(templates: Mapping[str, Traversable]) -> Environment:
    """Where templates run: sandboxed, nothing they are given can be changed, all text escaped."""
    return ImmutableSandboxedEnvironment(
        loader=_ThemeLoader(templates),
        autoescape=True,
        finalize=_lettered,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )


def _lettered(value: object) -> object:
    """A value as it is printed: a letter of the defence, "[J]" in words, in a style of its own."""
    if not isinstance(value, str) or isinstance(value, Markup) or not _THEIRS.search(value):
        return value
    return Markup(_THEIRS.sub(r'<span class="defender">\1</span>', str(escape(value))))


class _ThemeLoader(BaseLoader):
    """Templates from a theme's folders, wherever they are kept."""

    def __init__(self, templates: Mapping[str, Traversable]) -> None:
        self._files = templates

    def get_source(
        self, environment: Environment, template: str
    ) -> tuple[str, str | None, Callable[[], bool] | None]:
        if template not in self._files:
            raise TemplateNotFound(template)
        return self._files[template].read_text(encoding="utf-8"), None, None
