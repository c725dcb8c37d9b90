"""What a run of the tests works out once, for whichever of its processes asks first.

It lies below the run's own folder, which the next run has not. Values are only read.
"""

from __future__ import annotations

import pickle
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import TypeVar

from filelock import FileLock

from stemline.outside.cache import Cache
from stemline.outside.store import Store

T = TypeVar("T")


class _Run:
    """Where this run's processes keep what they share; None where no test runs."""

    place: Path | None = None


def begin(place: Path) -> None:
    """A run of the tests that shares what lies in that folder."""
    _Run.place = place


def made_once(name: str, make: Callable[[], T]) -> T:
    """What ``make`` gives, as another process left it where one has."""
    if _Run.place is None:
        return make()
    folder = _Run.place / "made"
    folder.mkdir(parents=True, exist_ok=True)
    file = folder / f"{name}.pickle"
    with FileLock(folder / f"{name}.lock"):
        if not file.exists():
            made = make()
            file.write_bytes(pickle.dumps(made, pickle.HIGHEST_PROTOCOL))
            return made
    found: T = pickle.loads(file.read_bytes())
    return found


@contextmanager
def results(folder: Path) -> Iterator[tuple[Store, Cache]]:
    """What the tests that ask for `kept` have had proved, drawn and set, and what the clock said of
    the playbook in ``folder``."""
    kept = _Run.place and _Run.place / "stemline"
    with Store(kept and kept / "results") as store:
        yield store, Cache(folder, kept and kept / "answers")
