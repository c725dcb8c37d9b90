"""What a run of the tests has proved, drawn and set, for whichever of its processes asks next.

It lies below the run's own folder, which the next run has not.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from stemline.outside.cache import Cache
from stemline.outside.store import Store


class _Run:
    """Where this run's processes keep what they share; None where no test runs."""

    place: Path | None = None


def begin(place: Path) -> None:
    """A run of the tests that shares what lies in that folder."""
    _Run.place = place


@contextmanager
def results(folder: Path) -> Iterator[tuple[Store, Cache]]:
    """What the tests that ask for `kept` have had proved, drawn and set, and what the clock said of
    the playbook in ``folder``."""
    kept = _Run.place and _Run.place / "stemline"
    with Store(kept and kept / "results") as store:
        yield store, Cache(folder, kept and kept / "answers")
