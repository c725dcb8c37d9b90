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
from hypothesis import settings
from unbroken_html import watch
from xdist.remote import Producer
from xdist.scheduler import LoadFileScheduling

from stemline.syntax import parser

parser.parse = lru_cache(maxsize=256)(parser.parse)
"""The same texts are read in hundreds of tests: a tree is a value, so each is made once."""
watch()
gc.set_threshold(20_000, 20, 20)
"""Values are frozen and make no circles: looking for some, as often as Python does by itself, took
a fourteenth to a ninth of the time of a file."""

settings.register_profile("house", deadline=None, derandomize=True)
settings.register_profile("wild", deadline=None)
settings.load_profile("house")

TESTS = Path(__file__).parent
_SLOW = """
    book/test_calls_true book/test_clocks_true book/test_frames book/test_front_pages_true
    book/test_generated_true book/test_keys_by_look book/test_letters_true book/test_pages_true
    book/test_pictures_true book/test_said_once book/test_sentences_true book/test_words_true
    checks/test_timing compare/test_git compare/test_seasons emit/test_forms emit/test_measuring
    emit/test_numbering emit/test_page_kinds emit/test_pdf emit/test_renderers emit/test_times
    football/test_fronts gate hostile kills lineup/test_shipped_looks outside/test_store
    outside/test_workroom picture/test_ball picture/test_before picture/test_placing
    picture/test_recipe_order picture/test_runs read/test_bounds read/test_newcomers
    read/test_own_words references/test_answers references/test_bundled_runs
    references/test_hard_signs references/test_legality_before_motion references/test_line_answers
    references/test_timing references/test_trade resolve/test_dress resolve/test_eyes
    resolve/test_flip resolve/test_left_and_right resolve/test_letters resolve/test_protections
    resolve/test_run_lines syntax/test_formatting week/test_bands week/test_call_sheet
    week/test_counting week/test_data week/test_installs week/test_killed_rows week/test_numbers
    week/test_positions week/test_quiz week/test_scout_cards test_alternative_text test_build
    test_cli_answers test_cli_themes test_copied test_errors_page test_handbook
    test_hostile_playbook test_mistakes test_packaging test_reference_page test_session
    test_starters test_theme_apart test_theme_safety
"""
LONGEST = (
    "gate/test_gate", "kills/test_kills", "compare/test_two_seasons", "emit/test_parts",
    "test_cli", "week/test_papers", "gate/test_every_copy", "proofs/test_kept_proofs",
    "compare/test_edits", "test_build_output", "compare/test_comparison_book",
    "week/test_game_plan", "week/test_kept_papers", "test_drawings", "week/test_agreement",
    "compare/test_following", "hostile/test_hostile", "test_stamp", "outside/test_folder",
    "test_facing",
)  # fmt: skip
"""Files that take longest, the longest first: they are begun first, so that no process is left with
one of them when the others are done."""
SLOW = frozenset((*_SLOW.split(), *LONGEST))
"""Files of tests, and whole folders of them, that are marked slow."""
_BY_BOOK = ("gate/test_every_copy.py", "gate/test_gate.py")
"""Files whose tests share nothing between two playbooks but a season within each: those of one
playbook stay in one process, whichever file they are of."""
_TOGETHER = (
    "tests/book/",
    "tests/compare/test_seasons.py",
    "tests/compare/test_comparison_book.py",
)
"""Files that ask for one season, or one comparison, which a process makes once: the folder of books
in one process, the two of the comparison in one."""


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
        if file.startswith(_TOGETHER):
            return file.rpartition("/")[0]
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


@pytest.fixture(scope="module")
def kept(tmp_path_factory: pytest.TempPathFactory) -> Iterator[None]:
    """What this run's processes have drawn, proved and set serves all who ask for this; a test that
    must do its own work says `--no-cache`."""
    base = tmp_path_factory.getbasetemp()
    place = (base.parent if "PYTEST_XDIST_WORKER" in os.environ else base) / "shared"
    with pytest.MonkeyPatch.context() as patch:
        patch.delenv("STEMLINE_NO_CACHE")
        for name in ("XDG_CACHE_HOME", "HOME"):
            patch.setenv(name, str(place))
        yield
