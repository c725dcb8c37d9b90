"""How much of what is drawn or listed a test tries: a share each time, or all when that is asked.

`STEMLINE_TESTS=all` tries all, `STEMLINE_TESTS=gate` every picture of the bundled books; without it
a test that would take minutes takes every nth of its examples, always the same ones.
"""

from __future__ import annotations

import os

_WHOLE = os.environ.get("STEMLINE_TESTS", "")


def every(nth: int, of: str = "all") -> int:
    """``nth``, or 1 when all are asked for, or all ``of`` that name."""
    return 1 if _WHOLE in ("all", of) else nth
