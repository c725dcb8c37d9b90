"""Book → HTML for print, from the theme's template and nothing but frozen page models."""

from __future__ import annotations

import re
from collections.abc import Callable, Collection, Mapping
from dataclasses import replace
from functools import lru_cache
from types import MappingProxyType
from typing import Any

from jinja2 import BaseLoader, Environment, StrictUndefined, TemplateError, TemplateNotFound
from jinja2.runtime import Context
from jinja2.sandbox import ImmutableSandboxedEnvironment
from markupsafe import Markup, escape

from stemline.book.content.book import Book
from stemline.book.content.page import Page
from stemline.book.layout.fit import NOTE_LINE, Arrangement, FrontMatter, Laid, telling
from stemline.book.paper import BOTTOM, TOP, side_margin
from stemline.diagnostics.catalogue.themes import E913
from stemline.emit.fetch import theme_files
from stemline.emit.gallery import Gallery
from stemline.emit.process_bounds import TooLong, in_time
from stemline.theme import Theme, refused_at
from stemline.theme.limits import LARGEST_PAGES, MEGABYTE, TEMPLATE_SECONDS

_THEIRS = re.compile(r"\[([A-Z][A-Z0-9]?)\]([,.;:])?")


_NONE: Mapping[str, int] = MappingProxyType({})


def book_html(
    book: Book,
    gallery: Gallery,
    layout: Mapping[str, Arrangement],
    theme: Theme,
    front: FrontMatter | None = None,
    numbers: Mapping[str, int] = _NONE,
    shown: Collection[Page] | None = None,
    opening: bool = True,
    part: str = "",
    sheets: int = 0,
) -> str:
    """The book as one document; ``layout`` holds each picture page's arrangement by its id, and
    ``numbers`` the page of each place that is pointed to. One that is left out is looked up by
    the engine, which lays its page out again for it.

    Without a ``front`` it is for measuring: the cover, the indexes and the footers are left out,
    and of the small pictures all but the telling ones. Then ``shown`` may be some of the book's
    pages of pictures, and ``opening`` False leaves out all that stands before them.

    A ``part`` of it is set alone: "cover", "front" with the rest before the pages of pictures,
    "pages" with those of ``shown``, "index", and "feet" with the foot of each page, the cover and
    as many ``sheets`` after it.
    """
    pages = tuple(
        Laid(page if front else replace(page, dressups=telling(page.dressups)), layout[page.id])
        for page in (book.pages if shown is None else shown)
        if layout[page.id].pages
    )
    return filled(
        theme,
        "book.html.jinja",
        book=book,
        whole=front is not None,
        opening=opening and part in ("", "front"),
        part=part,
        sheets=sheets,
        numbers=numbers,
        front=front or FrontMatter(care_apart=True),
        pages=pages,
        gallery=gallery,
        faces=tuple(sorted(theme.fonts)),
        margins=f"{TOP}pt {side_margin(book.paper):.2f}pt {BOTTOM}pt",
        note_line=NOTE_LINE,
    )


def filled(theme: Theme, template: str, **values: object) -> str:
    """A template of the theme filled in. Raises `Refused` where a coach's own cannot be."""
    run = _environment_of(theme)
    size, parts = 0, []
    try:
        with in_time(TEMPLATE_SECONDS):
            for part in run.get_template(template).generate(colours=theme.colours, **values):
                size += len(part)
                if size > LARGEST_PAGES:
                    raise TooLarge(
                        f"it writes more than {LARGEST_PAGES // MEGABYTE} million letters"
                    )
                parts.append(part)
    except Exception as why:  # a template is a program: it meets whatever a program can meet
        if theme.bundled and not isinstance(why, TemplateError):
            raise
        file, line = _where(why, template)
        raise refused_at(theme, file, line, E913(why=_why(why))) from why
    return "".join(parts)


def _why(error: Exception) -> str:
    """What went wrong in words; an error of Python itself with its kind before them."""
    if isinstance(error, MemoryError):
        return "it takes more memory than there is for it"
    if isinstance(error, RecursionError):
        return "it goes round in a circle, or too deep"
    words = " ".join(str(error).split())[:300]
    ours = isinstance(error, TemplateError | TooLarge | TooLong)
    return words if ours else f"{type(error).__name__}: {words}"


class TooLarge(ValueError):
    """A template writes, counts or repeats more than it may."""


def _where(why: BaseException, template: str) -> tuple[str, int]:
    """The file and line of a template where it went wrong, the innermost that is known."""
    name, line = getattr(why, "name", None), getattr(why, "lineno", None)
    if isinstance(why, TemplateError) and name and line:
        return str(name), int(line)
    at, trace = (template, 0), why.__traceback__
    while trace is not None:
        file = trace.tb_frame.f_code.co_filename
        if file.startswith(_MARK):
            at = (file.removeprefix(_MARK), trace.tb_lineno)
        trace = trace.tb_next
    return at


_MARK = "template of the theme: "
"""What stands before a template's name in a traceback, where no file of a disk can be meant."""


@lru_cache(maxsize=1)
def _environment_of(theme: Theme) -> Environment:
    """A theme's templates are the same for as long as it is: they are compiled once."""
    return environment(theme_files(theme, ".jinja"))


def environment(templates: Mapping[str, bytes]) -> Environment:
    """Where templates run: sandboxed, nothing they are given can be changed, all text escaped."""
    made = _Sandbox(
        loader=_ThemeLoader(templates),
        autoescape=True,
        finalize=_lettered,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    # What comes out differently each time has no place in a book.
    del made.globals["lipsum"], made.filters["random"]
    return made


class _Sandbox(ImmutableSandboxedEnvironment):
    """Sums that would not come to an end, or fill the machine, are refused before they begin."""

    intercepted_binops = frozenset({"**", "*"})

    def call_binop(self, context: Context, operator: str, left: Any, right: Any) -> Any:
        if operator == "**" and not (_small(left) and _small(right)):
            raise TooLarge(f"a power of more than {_LARGEST_POWER}")
        if operator == "*":
            for text, times in ((left, right), (right, left)):
                is_repeat = isinstance(text, str | bytes | list | tuple) and isinstance(times, int)
                if is_repeat and len(text) * times > LARGEST_PAGES:
                    raise TooLarge("it repeats something too often")
        return super().call_binop(context, operator, left, right)


_LARGEST_POWER = 100


def _small(number: Any) -> bool:
    return isinstance(number, int | float) and abs(number) <= _LARGEST_POWER


def _lettered(value: object) -> object:
    """A value as it is printed: a letter of the defence, "[J]" in words, in a style of its own."""
    if not isinstance(value, str) or isinstance(value, Markup) or not _THEIRS.search(value):
        return value
    return Markup(_THEIRS.sub(_letter, str(escape(value))))


def _letter(found: re.Match[str]) -> str:
    """The letter, and what ends its words kept to it: the engine else breaks the line there."""
    letter = f'<span class="defender">{found[1]}</span>'
    return f'<span class="kept">{letter}{found[2]}</span>' if found[2] else letter


class _ThemeLoader(BaseLoader):
    """Templates from a theme's folders, as they were read."""

    def __init__(self, templates: Mapping[str, bytes]) -> None:
        self._files = templates

    def get_source(
        self, environment: Environment, template: str
    ) -> tuple[str, str | None, Callable[[], bool] | None]:
        if template not in self._files:
            raise TemplateNotFound(template)
        return self._files[template].decode("utf-8-sig"), _MARK + template, None
