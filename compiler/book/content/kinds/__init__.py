"""The kinds of pages, one a file, found by their ``KIND``: nothing else lists them."""

from __future__ import annotations

from functools import cache
from importlib import import_module
from pkgutil import iter_modules

from stemline.book.content.page import PageKind


@cache
def page_kinds() -> tuple[PageKind, ...]:
    """Every kind in print order."""
    names = sorted(file.name for file in iter_modules(__path__))
    found: list[PageKind] = [import_module(f"{__name__}.{name}").KIND for name in names]
    return tuple(sorted(found, key=lambda kind: kind.order))
