"""Does a wide man come back toward his own goal line to block inside?

Nobody sees him coming. The twelve-man codes forbid a forcible block by a man who moves back toward
his own dead line, anywhere on the field; a block from the front or from level is allowed. Where a
code only forbids the force of it, the picture cannot tell, and the page prints the rule instead.

Example: a slot who runs to the linebackers and peels back on the end. Let him crack from the front:
``slot blocks crack``.
"""

from __future__ import annotations

from collections.abc import Iterator

from stemline.checks.legality.model import broken
from stemline.diagnostics.model import Diagnostic
from stemline.football.counting import tackles
from stemline.football.play import Man, Play
from stemline.paths import Ending, Path

_WIDE = 2.0
"""Yards outside the tackle from which a man comes from out of sight: nearer ones block in line."""
_BACK = 1.0
"""Yards back that are more than meeting a man level."""


def check_back_toward(play: Play) -> Iterator[Diagnostic]:
    code = play.field.code
    known = code.blindside_block
    if not code.canadian or not known.binding:
        return
    left, right = tackles(play.men)
    for task in play.assignments:
        man = play.man(task.man)
        wide = man.snap.x > right + _WIDE or man.snap.x < left - _WIDE
        back = _back(task.path, man) if task.path is not None else 0.0
        if wide and not man.interior and back >= _BACK:
            yield broken(
                547, known, code, task.span if task.span.line else play.span, man=man.label,
                call=play.call.spoken, yards=f"{back:.1f}",
            )  # fmt: skip


def _back(path: Path, man: Man) -> float:
    """Yards that the last piece of a block goes back and inside; 0 for any other path."""
    if path.ending is not Ending.BLOCK or not path.legs:
        return 0.0
    before, end = path.corners[-2:]
    inside = abs(end.x) < abs(before.x) and end.x * man.snap.x >= 0
    return max(before.y - end.y, 0.0) if inside else 0.0
