"""The lines of a play as it was, laid out on the new one's board by the makers of the new lines:
one that did not change would fall on itself, so only those of men who changed are drawn."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from stemline.describe.changes import PlayChange, changes, same_branch
from stemline.football.play import Assignment, Play
from stemline.geometry.curves import far_from
from stemline.geometry.paths import Path, polyline
from stemline.picture.lines.close_runs import plan_close
from stemline.picture.lines.laid import LaidLines
from stemline.picture.lines.motions import Moved, draw_motions
from stemline.picture.lines.route_lines import Drawn, LineRun, draw_run, plan_runs
from stemline.picture.men.standing import Standing
from stemline.picture.paper.symbol import Symbol
from stemline.picture.scene.ink import Ink
from stemline.picture.ways.detours import Round, detour
from stemline.picture.ways.gaps import through_gaps
from stemline.picture.ways.starts import ends_clear, keep_off

HERE = 0.05
"""Yards within which two places are one."""
_HARD = 0.8
"""Part of the ring round a letter that an old line never enters while there is another way."""


@dataclass(frozen=True)
class OldLines:
    """The men who changed and are shown, by label, and what is true no more of those who stood at
    ``symbols``: their lines, and the assignments with their ``motions``."""

    play: Play
    found: Mapping[str, PlayChange]
    symbols: Mapping[str, Symbol]
    drawn: tuple[Drawn, ...]
    motions: tuple[Assignment, ...]


def old_lines(now: LaidLines, men: Standing) -> OldLines:
    """The old lines that are no more, of the ``men`` of the play as it was."""
    before, symbols = men.play, men.symbols
    found = {c.label: c for c in changes(now.play, before) if now.shows(c.label)}
    drawn = [
        draw_run(replace(run, path=_kept_off(run.path, now, symbols)), symbols, now.on, False)
        for run in _runs(now, men)
        if run.man in found and not _still(run, found[run.man], now.play)
    ]
    motions = tuple(
        task
        for task in before.assignments
        if task.motion is not None and task.man in symbols
        if task.man in found and found[task.man].motion
    )
    return OldLines(before, found, symbols, tuple(drawn), motions)


def old_motions(now: LaidLines, old: OldLines, ink: Ink) -> tuple[tuple[Moved, ...], Ink]:
    """The old motions that are no more, and the ink with them on it."""
    ink = ink.copy()
    moved = tuple(
        move
        for task in old.motions
        for move in draw_motions(
            replace(old.play, assignments=(task,)), old.symbols, ink, now.on, None
        )
    )
    return moved, ink


def _runs(now: LaidLines, men: Standing) -> Sequence[LineRun]:
    if not now.on.close:
        return plan_runs(men.play, men.symbols, now.on)
    new = now.letters
    letters = {
        name: new[name] if name in new and new[name].man.at == letter.man.at else letter
        for name, letter in men.letters.items()
    }
    return plan_close(men, letters)


def _still(run: LineRun, change: PlayChange, play: Play) -> bool:
    """Whether a line of a man who has changed is true as it was."""
    if not change.path:
        return True
    if run.branch is None:
        return False
    return same_branch(run.branch, next((a for a in play.assignments if a.man == run.man), None))


def _kept_off(path: Path, now: LaidLines, olds: Mapping[str, Symbol]) -> Path:
    """The path round the new symbols that stand where nobody stood, and round the letters: the
    old lines were not kept off them. One that meets none of them stays as it is."""
    on = now.on
    anew = {
        name: s
        for name, s in now.symbols.items()
        if all(s.at.distance(old.at) > HERE for old in olds.values())
    }
    off = [
        Round(letter.at, letter.reach, _HARD * letter.reach)
        for letter in now.letters.values()
        if letter.at.distance(path.end) > 1.05 * letter.reach
    ]
    met = [*keep_off(anew, {}, "", on), *off]
    drawn = polyline(path)
    if not any(far_from(drawn, o.at) < o.radius for o in met):
        return path
    begun = [s for s in now.symbols.values() if s.at.distance(path.start) > s.edge]
    keep = (*keep_off({s.man.label: s for s in begun}, {}, "", on), *off)
    path = ends_clear(path, keep_off(anew, {}, "", on), on.mark("head_half"))
    path = detour(path, keep, on.mark("turn"))
    return through_gaps(path, begun, on.weight("before") / 2)
