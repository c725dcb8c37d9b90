"""A season that a test writes out is whole, or refused."""

from __future__ import annotations

import pytest
from written_season import written_season

TEXT = """
playbook Lanterns
    code high school

formation Spread
    X at away, numbers, on line
    S at away, 6 outside tackle, off line
    H at call, 6 outside tackle, off line
    Z at call, numbers, on line
    R at away, 1 outside tackle, 5 deep
    Q at ball, 5 deep

concept Slants
    everyone else runs slant
    feet quick
    read weak #1 on quick

dress Slants
    in Spread
"""


def test_a_season_is_whole_or_refused() -> None:
    text = TEXT.replace("everyone else", "each #1, each #2")
    assert {play.call.concept for play in written_season(text).plays} == {"Slants"}
    with pytest.raises(AssertionError, match="nearest: slant"):
        written_season(text.replace("slant\n", "slannt\n", 1))
