"""For all tests: no check reads or writes what the user's own checks have kept, and a property is
tried on the same examples each time.

`--hypothesis-profile=wild` tries others.
"""

from __future__ import annotations

import pytest
from hypothesis import settings

settings.register_profile("house", deadline=None, derandomize=True)
settings.register_profile("wild", deadline=None)
settings.load_profile("house")


@pytest.fixture(autouse=True)
def _no_cache(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("STEMLINE_NO_CACHE", "1")
