"""For all tests: no check reads or writes what the user's own checks have kept, and a property is
tried on the same examples each time.

`--hypothesis-profile=wild` tries others. `-m "not slow"` leaves out what judges whole books, sets
pages or starts programs: the rest takes a minute on two cores, and CI runs all.
"""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import settings

settings.register_profile("house", deadline=None, derandomize=True)
settings.register_profile("wild", deadline=None)
settings.load_profile("house")

TESTS = Path(__file__).parent
_SLOW = """
    book/test_sentences_true checks/test_timing compare/test_following compare/test_two_seasons
    emit/test_forms emit/test_measuring
    emit/test_numbering emit/test_pdf emit/test_renderers emit/test_times football/test_fronts
    gate hostile kills lineup/test_shipped_looks outside/test_folder outside/test_workroom
    picture/test_before picture/test_placing picture/test_runs proofs/test_kept_proofs
    read/test_bounds
    references/test_answers references/test_legality_before_motion references/test_line_answers
    references/test_timing references/test_trade resolve/test_dress resolve/test_flip
    resolve/test_letters resolve/test_run_lines test_alternative_text test_build test_build_output
    test_cli test_cli_answers test_cli_themes test_errors_page test_facing test_handbook
    test_hostile_playbook test_mistakes test_packaging test_session test_starters test_theme_apart
"""
SLOW = frozenset(_SLOW.split())
"""Files of tests, and whole folders of them, that are marked slow."""


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    for item in items:
        file = item.path.relative_to(TESTS).with_suffix("")
        if SLOW & {file.as_posix(), file.parts[0]}:
            item.add_marker(pytest.mark.slow)


@pytest.fixture(autouse=True)
def _no_cache(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("STEMLINE_NO_CACHE", "1")
