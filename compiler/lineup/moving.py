"""Formation + motion → men at the snap: the way each mover goes, and where he is when it counts."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import TYPE_CHECKING

from stemline.diagnostics.catalogue.calls import E610
from stemline.diagnostics.catalogue.legality import E548, E549, OutOfTime
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.football.offence.counting import Count, count, ranked
from stemline.football.offence.landmarks import OFF_LINE_DEPTH, TACKLE_SPLIT, Landmark
from stemline.football.play import Man, Motion
from stemline.football.timing.levels import PACE
from stemline.geometry.paths import Leg, Path, Point, length
from stemline.lineup.unplaced import Unplaced
from stemline.playbook.formations import MotionDef, Move, Mover
from stemline.playbook.places import AtLandmark, Home, Place

if TYPE_CHECKING:
    from stemline.lineup.alignment import Alignment

_DETOUR = 1.2
"""How far behind a set man a motion passes him: on paper and on the field he goes round."""
_BEHIND_ALL = -6.5
"""Yards from which a place is behind a quarterback in the gun: the way there passes all the men."""
_BEHIND_SLOTS = -2.5
"""Yards from which a place is behind those who stand off the line, quarterback and backs apart."""
_DETOUR_TURN = 1.5
_COMES_UP = ((3.5, 0.4), (1.5, 0.15))
"""Yards before his place (at most so much of the way) where a running man begins to come up, and
where he is level with it. Common practice, no published source."""
_EXACT = 1e-6
_ROOM = 0.5
"""Yards by which a count of seconds may miss a place: under a tenth of a second of a run."""


def move(
    alignment: Alignment, men: tuple[Man, ...], motion: MotionDef | None
) -> tuple[tuple[Man, ...], Mapping[str, Motion], tuple[Diagnostic, ...]]:
    """The men at the snap, and each mover's motion by letter."""
    motions: dict[str, Motion] = {}
    found: list[Diagnostic] = []
    if motion is None:
        return men, motions, ()
    counted = count(men, alignment.called)
    lined = ranked(men, counted)
    for one in motion.moves:
        man = _mover(one.mover, lined, counted, alignment)
        if man is None:
            found.append(_nobody_moves(one.mover, motion, alignment))
            continue
        try:
            moved, shown = _moved(one, man, motion, alignment)
        except Unplaced as failed:
            found.append(failed.diagnostic)
            continue
        men = tuple(moved if m.label == man.label else m for m in men)
        motions[man.label] = shown
    return men, motions, tuple(found)


def _mover(mover: Mover, men: Iterable[Man], counted: Count, alignment: Alignment) -> Man | None:
    if mover.letter or mover.back:
        label = mover.letter or next(iter(counted.backs), "")
        return next((m for m in men if m.label == label), None)
    side = alignment.side(Place(mover.side, AtLandmark(Landmark.BALL, 0), 0, False, mover.span))
    return next(
        (m for m in men if m.rank and m.rank.side is side and m.rank.number == mover.number), None
    )


def _nobody_moves(mover: Mover, motion: MotionDef, alignment: Alignment) -> Diagnostic:
    who = mover.letter or f"{mover.side.value if mover.side else ''} #{mover.number}".strip()
    if mover.back:
        who = "back"
    return E610(who=who, motion=motion.name, formation=alignment.formation.name).at(mover.span)


@dataclass(frozen=True)
class _MotionWay:
    """A mover's whole way, whether he ends on the line, and how it is named."""

    path: Path
    on_line: bool
    words: str


def _moved(one: Move, man: Man, motion: MotionDef, alignment: Alignment) -> tuple[Man, Motion]:
    speed = motion.speed if one.speed is None else one.speed
    way = _way(one, man, motion.name, speed > 0, alignment)
    shown = Motion(motion.name, way.path, speed > 0, speed, way.words, span=one.span)
    shown = _timed(shown, one, man, motion.name)
    whole = shown.path.end == way.path.end
    moved = replace(man, at=way.path.start, snap=shown.path.end, on_line=way.on_line and whole)
    return moved, shown


def _way(one: Move, man: Man, name: str, running: bool, alignment: Alignment) -> _MotionWay:
    how = "running" if running else "set"
    if one.from_depth is not None:
        start = Point(man.at.x, -one.from_depth)
        words = f"{name} from {one.from_depth:g} deep, {how}"
        return _MotionWay(Path(start, (Leg(man.at),)), man.on_line, words)
    words = f"{name}, {how}"
    if one.start is not None:
        start = alignment.point(one.start, -man.at.y, man)
        return _MotionWay(Path(start, (*_legs(start, man.at, running),)), man.on_line, words)
    legs: list[Leg] = []
    at, on_line = man.at, man.on_line
    for place in one.to:
        home = isinstance(place.where, Home)
        to = alignment.point(place, -man.at.y, replace(man, snap=at))
        legs += _legs(at, to, running, alone=len(one.to) == 1)
        at, on_line = to, man.on_line if home else place.on_line
    return _MotionWay(Path(man.at, tuple(legs)), on_line, words)


def _timed(shown: Motion, one: Move, man: Man, name: str) -> Motion:
    """The motion as far as it has come when the ball moves.

    A man who starts late is short of his place, one who starts early and still runs is past it: at
    the line that is for the rules to judge, anywhere else the text contradicts itself.
    """
    path = shown.path
    whole = length(path.corners)
    if one.starts is None:
        return replace(shown, starts=whole / shown.speed) if shown.running else shown
    pace = shown.speed or PACE
    ran = pace * one.starts
    if not shown.running:
        if ran < whole - _ROOM:
            raise Unplaced(_out_of_time(E549, one, man, name, ran, whole))
        return replace(shown, starts=one.starts, set_for=max(one.starts - whole / pace, 0.0))
    if ran < whole - _ROOM:
        path = _cut(path, ran)
    elif ran > whole + _ROOM:
        path = _on(path, ran - whole)
        if path.end.y <= _EXACT - OFF_LINE_DEPTH:
            raise Unplaced(_out_of_time(E548, one, man, name, ran, whole))
    return replace(shown, path=path, starts=one.starts)


def _out_of_time(
    code: type[OutOfTime], one: Move, man: Man, name: str, ran: float, whole: float
) -> Diagnostic:
    return code(
        man=man.label, motion=name, seconds=f"{one.starts:g}", ran=f"{ran:.1f}",
        way=f"{whole:.1f}", needed=f"{whole * (one.starts or 0) / ran:.1f}",
    ).at(one.span)  # fmt: skip


def _cut(path: Path, yards: float) -> Path:
    """The first ``yards`` of a path, measured from corner to corner."""
    legs: list[Leg] = []
    left = yards
    for (a, b), leg in zip(pairwise(path.corners), path.legs, strict=True):
        step = a.distance(b)
        if left <= step:
            to = a + (b - a).scaled(left / step) if step else b
            return replace(path, legs=(*legs, Leg(to)))
        legs.append(leg)
        left -= step
    return path


def _on(path: Path, yards: float) -> Path:
    """The path run on straight by so many yards."""
    before, end = path.corners[-2:]
    step = before.distance(end)
    to = end + (end - before).scaled(yards / step) if step else end
    return replace(path, legs=(*path.legs[:-1], Leg(to)))


def _legs(at: Point, to: Point, running: bool, alone: bool = True) -> tuple[Leg, ...]:
    """The way from one place to another, behind the men between them where there are any."""
    if abs(to.x - at.x) > 2 * TACKLE_SPLIT or to.x * at.x < 0:
        return (*_behind(at, to, running, alone), Leg(to))
    return (Leg(to),)


def _behind(at: Point, to: Point, running: bool, alone: bool) -> list[Leg]:
    """The way behind the men who are set between two places.

    A man who runs when the ball moves comes up early, so that he runs along the line and not
    toward it at the snap: a code may forbid that. One whose place is behind the slots runs flat,
    where that is all his way: who comes back passes where he ends.
    """
    deep, across = min(at.y, to.y), to.x - at.x
    if running and alone and _BEHIND_ALL < to.y <= _BEHIND_SLOTS:
        return [Leg(Point(at.x + across * 0.15, to.y), _DETOUR_TURN)]
    deep -= _DETOUR if deep > _BEHIND_ALL else 0.0
    legs = [Leg(Point(at.x + across * f, deep), _DETOUR_TURN) for f in (0.15, 0.85)]
    if running:
        up, level = (min(yards / abs(across), share) for yards, share in _COMES_UP)
        legs[-1] = Leg(Point(to.x - across * up, deep), _DETOUR_TURN)
        legs.append(Leg(Point(to.x - across * level, to.y), _DETOUR_TURN))
    return legs
