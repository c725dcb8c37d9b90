"""How tall two balanced columns are, from the heights of their lines.

The engine fills balanced columns again and again, each time a little taller, until all fits. To be
measured they stand as one column, which is laid out once; how tall the two are is then a sum over
lines that are never parted.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from math import inf

_COLUMNS = re.compile(
    r'(<section class="changes" id="([\w-]+)-changes">(?:(?!</section>).)*?)'
    r'<div class="two-across">(.*?)</div>',
    re.DOTALL,
)
_LINE = '<p class="change"'
_ONE = '<div class="two-across" style="columns: auto; width: calc(50% - 7.2pt)">'
"""A column as wide as one of two with the white that the style sheet sets between them."""
_LEAST = 0.75
"""Points by which the engine makes columns taller at least: one of its pixels."""


def in_one_column(html: str) -> str:
    """The document with each of its balanced columns in one; those in which something else stands
    than lines stay as they are."""

    def one(found: re.Match[str]) -> str:
        before, id_, held = found.groups()
        first, *lines = held.split(_LINE)
        if "<section" in held or first.strip() or not lines:
            return found[0]
        named = (f'{_LINE} id="{id_}-change-{n}"{line}' for n, line in enumerate(lines))
        return f"{before}{_ONE}{first}{''.join(named)}</div>"

    return _COLUMNS.sub(one, html)


def in_two_columns(heights: Mapping[str, float]) -> dict[str, float]:
    """The heights of a document that was measured in one column, as they are in two."""
    lines: dict[str, list[float]] = {}
    others: dict[str, float] = {}
    for id_, height in heights.items():
        section, mark, number = id_.rpartition("-change-")
        if mark and number.isdecimal():
            lines.setdefault(section, []).append(height)
        else:
            others[id_] = height
    for section, each in lines.items():
        others[f"{section}-changes"] += balanced(each) - sum(each)
    return others


def balanced(lines: Sequence[float]) -> float:
    """The height of two columns of these lines: the engine begins with the half of all, and adds
    what the next line lacks until the second column holds the rest."""
    height = sum(lines) / 2
    while True:
        taken, lost = 0, inf
        tallest = 0.0
        for _ in range(2):
            used = 0.0
            while taken < len(lines) and (not used or used + lines[taken] <= height + 1e-6):
                used += lines[taken]
                taken += 1
            tallest = max(tallest, used)
            if taken == len(lines):
                return tallest
            if lines[taken] - (height - used) > _LEAST:
                lost = min(lost, lines[taken] - (height - used))
        height += _LEAST if lost == inf else lost
