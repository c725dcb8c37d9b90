"""A table of cheap rows judged in one test, where a test a row would cost more than the row.

It stands where `pytest.mark.parametrize` does, with the same words. Every row is judged, and those
that fail are told together, each by its name.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Sequence
from typing import Any

import pytest

Judge = Callable[..., None]
Row = tuple[str, dict[str, Any]]
_FAILED = (AssertionError, pytest.fail.Exception, LookupError, TypeError, ValueError)


def together(
    names: str | Sequence[str],
    rows: Iterable[Any],
    ids: Callable[[Any], object] | Collection[str] | None = None,
) -> Callable[[Judge], Judge]:
    """One test that judges every one of ``rows``, each given to the test by ``names``; a table
    without a row is a mistake. Two tables over one test are every pair of their rows."""
    keys = [name.strip() for name in names.split(",")] if isinstance(names, str) else list(names)
    values = list(rows)
    assert values, "a table without a row judges nothing"
    one = isinstance(names, str) and len(keys) == 1
    given = [dict(zip(keys, (row,) if one else row, strict=True)) for row in values]
    mine = list(zip(_told(values, one, ids), given, strict=True))

    def of(judge: Judge) -> Judge:
        table: list[Row] = [
            (f"{theirs}{' ' * bool(theirs)}{name}", {**known, **more})
            for theirs, known in getattr(judge, "table", [("", {})])
            for name, more in mine
        ]
        return _judging(getattr(judge, "judge", judge), table)

    return of


def _judging(judge: Judge, table: list[Row]) -> Judge:
    def test() -> None:
        found = []
        for name, row in table:
            try:
                judge(**row)
            except _FAILED as wrong:
                found.append(f"{name}: {type(wrong).__name__}: {wrong}")
        assert not found, "\n".join(found)

    for word in ("__name__", "__doc__", "__module__"):
        setattr(test, word, getattr(judge, word))
    vars(test).update(judge=judge, table=table)
    return test


def _told(
    table: list[Any], one: bool, ids: Callable[[Any], object] | Collection[str] | None
) -> list[str]:
    if ids is None:
        return [str(row) for row in table]
    if callable(ids):
        return ["-".join(str(ids(each)) for each in ((row,) if one else row)) for row in table]
    return list(ids)
