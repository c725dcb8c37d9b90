"""Every code with its row: those of the stages in the catalogue, a check's own in its file."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from importlib import import_module
from pkgutil import walk_packages
from types import ModuleType

import stemline.checks
import stemline.diagnostics.catalogue
from stemline.diagnostics.diagnostic import Mistake, Wording


@cache
def files(package: ModuleType) -> tuple[ModuleType, ...]:
    """The modules of a package and of those inside it, by name."""
    found = walk_packages(package.__path__, f"{package.__name__}.")
    return tuple(import_module(name) for name in sorted(one.name for one in found))


@cache
def rows() -> tuple[type[Mistake], ...]:
    """Every row, by its number."""
    places = (*files(stemline.diagnostics.catalogue), *files(stemline.checks))
    found = {row for place in places for row in _rows_of(place)}
    return tuple(sorted(found, key=lambda row: (row.__name__[1:], row.__name__)))


@cache
def wordings() -> dict[str, Wording]:
    """How each code is said, by the code as it is printed."""
    return {code: worded for row in rows() for code, worded in row.worded().items()}


def _rows_of(place: ModuleType) -> Iterator[type[Mistake]]:
    for value in vars(place).values():
        if isinstance(value, type) and issubclass(value, Mistake) and value.title:
            yield value
