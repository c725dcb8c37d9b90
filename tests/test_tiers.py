"""What a quick run of the tests leaves out is there: a misspelt name would leave out nothing."""

from __future__ import annotations

from tiers import SLOW, TESTS
from together import together


@together("name", sorted(SLOW))
def test_what_is_marked_slow_is_a_file_of_tests_or_a_folder(name: str) -> None:
    assert (TESTS / name).is_dir() or (TESTS / f"{name}.py").is_file()
