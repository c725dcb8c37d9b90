"""For all tests: no check reads or writes what the user's own checks have kept, and a property is
tried on the same examples each time. A file whose tests are not about what a book costs may take
what an earlier test has drawn and set: it asks for `kept`.

`--hypothesis-profile=wild` tries others. `STEMLINE_TESTS=all` takes every example of the tests that
take a share of theirs (`sampling.py`). `-m "not slow"` leaves out what judges whole books, sets
pages or starts programs: the rest takes a minute on two cores, and CI runs all.
"""

from __future__ import annotations

import gc
import os
from collections.abc import Iterator
from functools import lru_cache
from pathlib import Path

import pytest
import shared
from hypothesis import settings
from tiers import LONGEST, SLOW, TESTS
from unbroken_html import watch
from xdist.remote import Producer
from xdist.scheduler import LoadFileScheduling

from stemline.analysis import passes_against_looks
from stemline.compare import side_analysis
from stemline.emit import side_by_side
from stemline.syntax import parser

parser.parse = lru_cache(maxsize=256)(parser.parse)
"""The same texts are read in hundreds of tests: a tree is a value, so each is made once."""
passes_against_looks.processors = side_analysis.processors = lambda: 1
side_by_side._processors = lambda: 1
"""The tests' own processes fill the machine: what a command shares with others it does by itself. A
test of that says two."""
watch()
gc.set_threshold(20_000, 20, 20)
"""Values are frozen and make no circles: looking for some, as often as Python does by itself, took
a fourteenth to a ninth of the time of a file."""

settings.register_profile("house", deadline=None, derandomize=True)
settings.register_profile("wild", deadline=None)
settings.load_profile("house")

_BY_BOOK = ("gate/test_every_copy.py", "gate/test_gate.py")
"""Files whose tests share nothing between two playbooks but a season within each: those of one
playbook stay in one process, whichever file they are of."""
_TOGETHER = {
    "tests/book/": "books",
    "tests/compare/test_seasons.py": "seasons",
    "tests/compare/test_comparison_book.py": "seasons",
    "tests/week/": "shipped",
    "tests/references/test_answers.py": "shipped",
    "tests/references/test_bundled_runs.py": "shipped",
    "tests/references/test_hard_signs.py": "shipped",
    "tests/references/test_trade.py": "shipped",
}
"""Files, and folders of them, that ask for one season, one comparison, or plays and weeks of the
bundled books, which a process makes once: those of one word stay in one process."""


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Marks what is slow, and puts the longest first, then the other slow ones."""
    begun = {file: place for place, file in enumerate(LONGEST)}
    places = {}
    for item in items:
        file = item.path.relative_to(TESTS).with_suffix("")
        slow = bool(SLOW & {file.as_posix(), file.parts[0]})
        if slow:
            item.add_marker(pytest.mark.slow)
        places[item] = begun.get(file.as_posix(), len(LONGEST) + (not slow))
    items.sort(key=places.__getitem__)


class _ByFile(LoadFileScheduling):  # type: ignore[misc]
    """A file of tests stays in one process, or the gate's tests of one playbook, or several
    files."""

    def _split_scope(self, nodeid: str) -> str:
        file, _, test = nodeid.partition("::")
        for begins, together in _TOGETHER.items():
            if file.startswith(begins):
                return together
        return f"gate {test.partition('[')[2]}" if file.endswith(_BY_BOOK) else file


def pytest_collection_finish() -> None:
    """What was loaded is never looked through."""
    gc.freeze()


@pytest.hookimpl(optionalhook=True)
def pytest_xdist_make_scheduler(config: pytest.Config, log: Producer) -> _ByFile:
    return _ByFile(config, log)


def pytest_configure() -> None:
    """Before any fixture, since those of a whole file run commands too. Where the environment keeps
    Python from writing what it has compiled, each of the hundreds of processes that tests start
    compiled the whole package again."""
    os.environ["STEMLINE_NO_CACHE"] = "1"
    os.environ.pop("PYTHONDONTWRITEBYTECODE", None)


@pytest.fixture(scope="session", autouse=True)
def shared_place(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Where what this run's processes make for each other lies."""
    base = tmp_path_factory.getbasetemp()
    place = (base.parent if "PYTEST_XDIST_WORKER" in os.environ else base) / "shared"
    shared.begin(place)
    return place


@pytest.fixture(scope="module")
def kept(shared_place: Path) -> Iterator[None]:
    """What this run's processes have drawn, proved and set serves all who ask for this; a test that
    must do its own work says `--no-cache`."""
    with pytest.MonkeyPatch.context() as patch:
        patch.delenv("STEMLINE_NO_CACHE")
        for name in ("XDG_CACHE_HOME", "HOME"):
            patch.setenv(name, str(shared_place))
        yield
