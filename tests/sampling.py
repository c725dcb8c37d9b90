"""How much of what is drawn or listed a test tries: a share each time, or all when that is asked.

`STEMLINE_TESTS=all` tries all; without it a test that would take minutes takes every nth of its
examples, always the same ones.
"""

from __future__ import annotations

import os

ALL = os.environ.get("STEMLINE_TESTS") == "all"


def every(nth: int) -> int:
    """``nth``, or 1 when all are asked for."""
    return 1 if ALL else nth
