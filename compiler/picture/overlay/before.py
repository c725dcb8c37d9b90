"""The play before it was changed, pale and dashed under the new one.

The old play is laid out on the new one's board by the same makers, so that a line that did not
change would fall on itself; what did not change is then left out. Of a changed path only what
lies off the new one is drawn. The new play's own picture is not moved by it.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace

from stemline.describe.changes import TOLERANCE, PlayChange, changes, same_branch
from stemline.football.field import Side
from stemline.football.play import Play
from stemline.geometry.box import square
from stemline.geometry.curves import far_from, points_of
from stemline.geometry.paths import Path, Point, polyline
from stemline.picture.frame.board import Shot, shot
from stemline.picture.labels.notes import WantedNote, text_note
from stemline.picture.lines.close_runs import plan_close
from stemline.picture.lines.motions import draw_motions
from stemline.picture.lines.route_lines import LineRun, draw_run, plan_runs
from stemline.picture.men.defender_letters import place_letters
from stemline.picture.men.hole import find_hole
from stemline.picture.men.standing import stand
from stemline.picture.overlay.left_over import (
    HERE,
    SHORTEST,
    Now,
    clear_of,
    left_over,
    near_lines,
    room_of,
)
from stemline.picture.paper.detail import Detail
from stemline.picture.paper.surface import Board
from stemline.picture.paper.symbol import Symbol, centred
from stemline.picture.scene.ink import Ink
from stemline.picture.scene.scene import Disc, Item, Stroke, TextRun
from stemline.picture.ways.detours import Round, detour
from stemline.picture.ways.gaps import through_gaps
from stemline.picture.ways.starts import ends_clear, keep_off
from stemline.source import NOWHERE
from stemline.theme import Size

_DOWN = Point(0.0, -1.0)
_HARD = 0.8
"""Part of the ring round a letter that an old line never enters while there is another way."""
_LEGEND = "dashed, pale: before"


@dataclass(frozen=True)
class Before:
    """What is drawn of the old play: its lines, and the men who stood elsewhere.

    ``lines`` says whose line runs where; ``stood`` are old symbols, as small as their ring.
    """

    items: tuple[Item, ...]
    lines: tuple[tuple[str, tuple[Point, ...]], ...]
    stood: tuple[Symbol, ...]


NOTHING = Before((), (), ())


@dataclass(frozen=True)
class Both:
    """A play and, under it, the play as it was: ``play`` and ``shot`` hold both as one, for the
    frame and for what a close picture closes up; ``now`` and ``was`` are as the picture shows
    them."""

    play: Play
    shot: Shot
    now: Play
    was: Play | None


def both_of(play: Play, before: Play | None, size: Size) -> Both:
    """Both plays as a picture of ``size`` shows them; ``was`` is None where there is no other."""
    if before is None:
        seen = shot(play, size)
        return Both(play, seen, seen.play, None)
    one = replace(
        play,
        men=(*play.men, *before.men),
        assignments=(*play.assignments, *before.assignments),
    )
    seen, men, tasks = shot(one, size), len(play.men), len(play.assignments)
    shown, look = seen.play, before.defence
    if look is not None:
        moved = tuple(replace(d, at=seen.fold.point(d.at)) for d in look.defenders)
        look = replace(look, defenders=moved)
    now = replace(shown, men=shown.men[:men], assignments=shown.assignments[:tasks])
    was = replace(before, men=shown.men[men:], assignments=shown.assignments[tasks:], defence=look)
    return Both(one, seen, now, was)


def lines_before(now: Now, before: Play) -> Before:
    """The old play's lines that are true no more, on the board of the new one."""
    on = now.on
    found = {c.label: c for c in changes(now.play, before) if now.shows(c.label)}
    olds = _olds(now, before)
    lines: list[tuple[str, tuple[Point, ...]]] = []
    items: list[Item] = []
    for run in _runs(now, before, olds):
        if run.man not in found or _still(run, found[run.man], now.play):
            continue
        run = replace(run, path=_kept_off(run.path, now, olds))
        others = [points for man, points in lines if man != run.man]
        kept = left_over(draw_run(run, olds, on, False).items, run.man, now, others)
        items += kept
        lines += [(run.man, points_of(i.segments)) for i in kept if isinstance(i, Stroke)]
    stood = tuple(s for name, s in olds.items() if name in found and not _same(s, now))
    return Before(tuple(items), tuple(lines), stood)


def motions_before(now: Now, before: Play, ink: Ink) -> Before:
    """The old motions that are no more, laid on ``ink``, and where they began."""
    found = {c.label for c in changes(now.play, before) if c.motion and now.shows(c.label)}
    tasks = tuple(t if t.man in found else replace(t, motion=None) for t in before.assignments)
    olds = _olds(now, before)
    items: list[Item] = []
    lines: list[tuple[str, tuple[Point, ...]]] = []
    stood: list[Symbol] = []
    rooms = [room_of(symbol, now.on) for symbol in now.symbols.values()]
    for task in (t for t in tasks if t.motion is not None and t.man in olds):
        one = replace(before, assignments=(task,))
        for item in (i for m in draw_motions(one, olds, ink, now.on, None) for i in m.items):
            if isinstance(item, Stroke):
                pieces = clear_of(item.segments, rooms, now.on.yards(SHORTEST))
                if pieces:
                    items.append(replace(item, segments=pieces, style="before-motion", name=""))
                    lines.append((task.man, points_of(pieces)))
        man = before.man(task.man)
        if not any(m.label == task.man and m.at.distance(man.at) <= TOLERANCE
                   for m in now.play.men):  # fmt: skip
            stood.append(_ring(replace(olds[task.man], man=man, at=man.at), now.on))
    return Before(tuple(items), tuple(lines), tuple(stood))


def rings(
    olds: Sequence[Before], moved: Sequence[Sequence[Point]], now: Now, ink: Ink
) -> tuple[tuple[Item, ...], tuple[WantedNote, ...]]:
    """Where men stood who stand there no more: a ring with his letter where there is room for
    one, else words beside his old place. Each ring is laid on ``ink``.

    ``moved`` are the new picture's motions.
    """
    if not now.on.shows(Detail.GHOSTS):
        return (), ()
    items: list[Item] = []
    notes: list[WantedNote] = []
    there = [("", line.points) for line in now.drawn] + [("", points) for points in moved]
    there += [line for old in olds for line in old.lines]
    for ghost in (ghost for old in olds for ghost in old.stood):
        name, span = ghost.man.label, ghost.man.span
        others = [points for man, points in there if man != name and len(points) > 1]
        if _free(ghost, others, ink, now.on):
            items.append(Disc(ghost.at, ghost.radius, "before-man", span))
            if not ghost.man.interior:
                items.append(centred(name, ghost.at, "before-letter", now.on, span))
            ink.solid(square(ghost.at, ghost.edge))
        else:
            notes.append(
                text_note(f"{name} before", "words", (ghost.at,), _DOWN, now.on, span, "-pale")
            )
    return tuple(items), tuple(notes)


def legend(now: Now) -> tuple[TextRun, ...]:
    """What the dashes mean, in each corner where there may be room for it: the first is best."""
    on = now.on
    if not on.shows(Detail.FIELD_WORDS):
        return ()
    room, pad, frame = on.extent(_LEGEND, "corner"), on.yards(4.0), on.frame
    field = now.play.field
    sides = [on.fold.x(field.sideline(side)) for side in (Side.LEFT, Side.RIGHT)]
    left, right = max(frame.left, sides[0]) + pad, min(frame.right, sides[1]) - pad - room.width
    top, low = frame.top - pad - room.rise, frame.bottom + pad
    places = (Point(right, top), Point(left, top), Point(left, low))
    return tuple(TextRun(_LEGEND, at, "corner", NOWHERE) for at in (*places, Point(right, low)))


def _olds(now: Now, before: Play) -> dict[str, Symbol]:
    """The old men's symbols: those of the new ones where they stand as they did."""
    olds = stand(before, now.on)
    return {name: now.symbols[name] if _same(s, now) else _ring(s, now.on)
            for name, s in olds.items()}  # fmt: skip


def _same(old: Symbol, now: Now) -> bool:
    new = now.symbols.get(old.man.label)
    return new is not None and new.man.snap.distance(old.man.snap) <= TOLERANCE


def _ring(symbol: Symbol, on: Board) -> Symbol:
    """A symbol no larger than the ring of a man who stood there."""
    radius = min(symbol.radius, on.mark("ghost"))
    return replace(symbol, radius=radius, edge=radius + on.yards(0.6))


def _runs(now: Now, before: Play, olds: Mapping[str, Symbol]) -> Sequence[LineRun]:
    if not now.on.close:
        return plan_runs(before, olds, now.on)
    hole = find_hole(before, olds, now.on)
    letters = place_letters(before, olds, now.on, True, hole)
    new = now.letters
    letters = {
        name: new[name] if name in new and new[name].man.at == letter.man.at else letter
        for name, letter in letters.items()
    }
    return plan_close(before, olds, letters, hole, now.on)


def _still(run: LineRun, change: PlayChange, play: Play) -> bool:
    """Whether a line of a man who has changed is true as it was."""
    if not change.path:
        return True
    if run.branch is None:
        return False
    return same_branch(run.branch, next((a for a in play.assignments if a.man == run.man), None))


def _kept_off(path: Path, now: Now, olds: Mapping[str, Symbol]) -> Path:
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


def _free(ghost: Symbol, lines: Iterable[Sequence[Point]], ink: Ink, on: Board) -> bool:
    white = on.mark("gap")
    clear = ghost.edge + white + on.weight("carry") / 2
    if ink.covers(square(ghost.at, ghost.edge + white)):
        return False
    return not near_lines(ghost.at, lines, clear)
