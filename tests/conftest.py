"""For all tests: no check reads or writes what the user's own checks have kept."""

from __future__ import annotations

import pytest


@pytest.fixture(autouse=True)
def _no_cache(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("STEMLINE_NO_CACHE", "1")
