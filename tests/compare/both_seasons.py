"""The Herons' two seasons compared, once for all tests of a process."""

from __future__ import annotations

from functools import cache

from resolve.shipped_books import PLAYBOOKS, shipped
from shared import results

from stemline.compare.comparing import compared
from stemline.compare.comparison import Comparison
from stemline.compare.following import with_consequences
from stemline.outside.texts import read_files
from stemline.session import Session

LAST, THIS = "saltmarsh-herons-2025", "saltmarsh-herons"


@cache
def seasons() -> tuple[Session, Session, Comparison]:
    """Both as they are shipped, and what is told of them. What follows is taken from what a check
    has kept of either, where one has."""
    old, new = shipped(LAST), shipped(THIS)
    with results(PLAYBOOKS / THIS) as (store, cache):
        sides = [
            Session(read_files(PLAYBOOKS / name).sources, name, whole=True, store=store)
            for name in (LAST, THIS)
        ]
        told = with_consequences(compared(old, new), sides[0], sides[1], cache, store)
    return old, new, told
