"""Which small pictures of a page share a frame."""

from __future__ import annotations

import pytest
from bundled import BUNDLED, book_of


@pytest.mark.parametrize("name", BUNDLED)
def test_runs_share_no_frame_with_passes(name: str) -> None:
    pages = [page.framed for page in book_of(name).pages]
    kinds = [{entry.play.kind for entry in entries} for framed in pages for entries in framed]
    assert len(kinds) > 20
    assert all(len(each) == 1 for each in kinds)
