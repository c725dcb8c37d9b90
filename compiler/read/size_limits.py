"""How much a playbook may say: bounds that no season's book comes near, and a text gone wrong does.

Every check is in proportion to what is called, so that these bound its time. The figures are ours;
the larger of the bundled playbooks has 76 thousand characters, 223 calls and 30 lines a block.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from stemline.diagnostics.catalogue.bounds import E141
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.source import Source, Span
from stemline.syntax.lines import LONGEST_LINE

MOST_TEXT = 300_000
"""Characters outside comments and margins: four of the bundled playbooks in one."""

MOST_CALLS = 1000
"""Four times the calls of a bundled playbook, and more than any team installs."""

MOST_GENERATIONS = 12
"""Blocks that one block may extend, one through the other: who reads it must find them all."""

MOST_LINES = 300
"""Lines of a block, with those of the blocks it extends: ten times the longest of ours."""

MOST_BLOCKS: Mapping[str, int] = {
    "personnel": 60,
    "formation": 120,
    "motion": 120,
    "route": 200,
    "concept": 300,
    "run": 200,
    "protection": 60,
    "tag": 600,
    "dress": 400,
    "look": 60,
    "week": 60,
    "install": 4,
}
"""Blocks of each kind: several times what the bundled playbooks have."""

LARGEST_FIGURE = 180
"""Yards, degrees or a rank: no figure of a line means more. A half turn has 180 degrees, and
`LONGEST_FIELD` is shorter."""

SMALLEST_FIGURE = 0.01
"""Of a figure that is not 0: a hundredth of a yard is a third of an inch, and no stopwatch in the
hand tells less of a second. Ours."""

LONGEST_FIELD = 170
"""Yards of the longest field that a league may set, with both end zones."""


def too_much(sources: Sequence[Source]) -> Diagnostic | None:
    """What is said of more text than a playbook has, at the line where it becomes too much."""
    said = [_said(source) for source in sources]
    if sum(map(sum, said)) <= MOST_TEXT:
        return None
    room = MOST_TEXT
    for source, lengths in zip(sources, said, strict=True):
        for n, length in enumerate(lengths, 1):
            room -= length
            if room < 0:
                at = Span(source.name, n, 1, len(source.lines[n - 1]) + 1)
                return E141(most=f"{MOST_TEXT:,}", found=f"{sum(map(sum, said)):,}").at(at)
    return None


def _said(source: Source) -> list[int]:
    """The characters of each line but its margin; none of a comment on a line of its own, or of a
    line too long to be read."""
    lines = (line.strip() for line in source.lines)
    return [0 if line.startswith("//") or len(line) > LONGEST_LINE else len(line) for line in lines]
