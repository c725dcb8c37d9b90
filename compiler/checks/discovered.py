"""The checks, found by their files, and every code with its row."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import cache
from importlib import import_module
from pkgutil import walk_packages
from types import ModuleType
from typing import Any

import stemline.checks
import stemline.diagnostics.catalogue
from stemline.checks.asked import When
from stemline.diagnostics.diagnostic import Diagnostic, Mistake, Wording


@cache
def files(package: ModuleType) -> tuple[ModuleType, ...]:
    """The modules of a package and of those inside it, by name."""
    found = walk_packages(package.__path__, f"{package.__name__}.")
    return tuple(import_module(name) for name in sorted(one.name for one in found))


@cache
def _asked(when: When) -> tuple[Callable[..., Iterator[Diagnostic]], ...]:
    checks: list[Any] = [f for f in files(stemline.checks) if getattr(f, "WHEN", None) is when]
    return tuple(getattr(f, f"check_{f.__name__.rpartition('.')[2]}") for f in checks)


def ask(when: When, *about: object) -> Iterator[Diagnostic]:
    """What the checks that are asked then find: ``check_NAME`` of each file whose WHEN it is."""
    for check in _asked(when):
        yield from check(*about)


@cache
def rows() -> tuple[type[Mistake], ...]:
    """Every row, by its number: those of the stages are in the catalogue, a check's in its file."""
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
