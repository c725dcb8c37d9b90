"""What each man does in one call: routes traced, options branched, motions attached."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import TypeVar

from stemline.diagnostics.model import Diagnostic, diagnose
from stemline.football.blocking import BLOCKS
from stemline.football.field import Side
from stemline.football.paths import Path, Point, polyline
from stemline.football.play import Assignment, Branch, DepthMark, Man, Motion
from stemline.football.strokes import RunTo, Stroke, Target
from stemline.football.tracing import Runner, called_depth, trace
from stemline.football.worlds import Look, Where, possible
from stemline.resolve.alignment import lie_of
from stemline.resolve.binding import Bound, Picture
from stemline.resolve.definitions import Block, Body, ByRole, Run, Said, SideWord
from stemline.resolve.read_guards import narrowest

T = TypeVar("T")

_MARK_REACH = 0.6
"""A depth is printed at the turn that lies within this of the taught depth."""


@dataclass(frozen=True)
class Chosen:
    """The fact that holds and, narrower, those that the look may still choose."""

    base: Said[Run | Block]
    branches: tuple[Said[Run | Block], ...]


def assignments(
    body: Body,
    bound: Bound,
    picture: Picture,
    motions: Mapping[str, Motion],
    against: Sequence[Look],
    call: str,
) -> tuple[tuple[Assignment, ...], tuple[Diagnostic, ...]]:
    """One assignment a man, in the order of the men; a man without a role has no job."""
    found: list[Diagnostic] = []
    roles = {label: role for role, label in bound.men.items()}
    made = [
        _assignment(m, roles.get(m.label, ""), body, bound, picture, against, call, found)
        for m in picture.men
    ]
    moved = tuple(replace(a, motion=motions.get(a.man)) for a in made)
    return moved, tuple(found)


def _assignment(
    man: Man,
    role: str,
    body: Body,
    bound: Bound,
    picture: Picture,
    against: Sequence[Look],
    call: str,
    found: list[Diagnostic],
) -> Assignment:
    idle = Assignment(man.label, role, "", None, (), (), None, (), man.span)
    if not role:
        return idle
    said = body.jobs.get(role, ())
    worlds = _worlds(man, picture, against)
    chosen = choose(said, worlds)
    if chosen is None:
        if said:
            shape = picture.count.shape_word
            found.append(diagnose("E622", said[0].span, role=role, shape=shape, call=call))
        return idle
    base, says = chosen.base, body.role_says.get(role, ())
    if isinstance(base.value, Block):
        job = BLOCKS[base.value.job]
        return replace(idle, job=job, says=says, span=base.span)
    path, marks = _run(base.value, man, bound, picture, base, found, call)
    decide = narrowest([d for d in body.decides.get(role, ()) if worlds & d.guard.worlds])
    branches = []
    for option in chosen.branches:
        if isinstance(option.value, Block):
            continue
        other, other_marks = _run(option.value, man, bound, picture, option, found, call)
        looks = ", ".join(look.value for look in option.guard.looks if look not in against)
        leaves = _leaves(path, other, decide.value.depth if decide else None)
        job = f"{option.value.words}."
        branches.append(Branch(looks, other, job, other_marks, leaves))
    job = f"{base.value.words}."
    if decide is not None:
        on = f" on the {decide.value.on}" if decide.value.on else ""
        job += f" Decide at {decide.value.depth:g}{on}."
    return replace(
        idle, job=job, path=path, branches=tuple(branches), marks=marks, says=says, span=base.span
    )


def _worlds(man: Man, picture: Picture, against: Sequence[Look]) -> Where:
    lie = lie_of(picture.side_of(man.label), picture.field)
    return possible(picture.receivers, picture.count.shape, lie, tuple(against))


def choose(said: Sequence[Said[Run | Block]], worlds: Where) -> Chosen | None:
    """The narrowest fact that surely holds, with the narrower ones that the look decides.

    Where every fact waits for the look, the widest of them is drawn solid.
    """
    holding = [s for s in said if s.guard.worlds & worlds]
    if not holding:
        return None
    sure = [s for s in holding if worlds <= s.guard.worlds]
    base = narrowest(sure) or max(
        holding, key=lambda s: (len(s.guard.worlds & worlds), -_look_order(s))
    )
    branches = [s for s in holding if s is not base and s not in sure]
    branches.sort(key=_look_order)
    return Chosen(base, tuple(branches))


def _look_order(said: Said[Run | Block]) -> int:
    order = list(Look)
    return min((order.index(look) for look in said.guard.looks), default=len(order))


def _run(
    run: Run,
    man: Man,
    bound: Bound,
    picture: Picture,
    said: Said[Run | Block],
    found: list[Diagnostic],
    call: str,
) -> tuple[Path, tuple[DepthMark, ...]]:
    out = natural_out(man, picture)
    if run.way is not None:
        turned = side_of_way(run.way, bound, picture)
        if turned is None:
            role = run.way.role if isinstance(run.way, ByRole) else ""
            found.append(diagnose("E623", said.span, role=role, call=call))
        else:
            out = turned
    runner = Runner(man.snap, out, picture.field)
    depth = called_depth(run.route, run.depth)
    strokes = run.route.strokes if run.target is None else aimed(run.route.strokes, run.target)
    path = trace((*strokes, *run.then), depth, runner)
    return path, _marks(path, depth, run)


def natural_out(man: Man, picture: Picture) -> Side:
    """The side a man stands on; for one behind the ball the weak side."""
    return picture.side_of(man.label) or picture.count.weak


def side_of_way(way: SideWord | ByRole, bound: Bound, picture: Picture) -> Side | None:
    """The side a word means; for a role, the side that its man comes from at the snap."""
    if isinstance(way, SideWord):
        return picture.side(way)
    label = bound.men.get(way.role)
    side = picture.side_of(label) if label is not None else None
    if side is None:
        return None
    return side.other if way.opposite else side


def aimed(strokes: tuple[Stroke, ...], target: Target) -> tuple[Stroke, ...]:
    """The strokes with the last place they run to changed; added at the end where there is none."""
    places = [i for i, s in enumerate(strokes) if isinstance(s, RunTo)]
    if not places:
        return (*strokes, RunTo(target))
    last = places[-1]
    stroke = strokes[last]
    assert isinstance(stroke, RunTo)
    return (*strokes[:last], replace(stroke, target=target), *strokes[last + 1 :])


def _marks(path: Path, depth: float, run: Run) -> tuple[DepthMark, ...]:
    if not run.route.taught and run.depth is None:
        return ()
    near = min(path.corners[1:], key=lambda p: abs(p.y - depth), default=None)
    if near is None or abs(near.y - depth) > _MARK_REACH:
        return ()
    return (DepthMark(near, depth),)


def _leaves(base: Path, branch: Path, depth: float | None) -> Point:
    """Where two paths part: their last common point, or the depth at which he decides."""
    common = base.start
    for a, b in zip(polyline(base), polyline(branch), strict=False):
        if a.distance(b) > 0.05:
            break
        common = a
    if depth is not None and common.x == base.start.x and depth < max(common.y, 0) + 1e-9:
        return Point(common.x, depth)
    if common == base.start:
        return _stem_end(base, branch)
    return common


def _stem_end(base: Path, branch: Path) -> Point:
    """Both start with one straight line of two lengths: the shorter one's end."""
    if not base.legs or not branch.legs:
        return base.start
    a, b = base.legs[0].to, branch.legs[0].to
    same_way = (
        abs(
            (a.x - base.start.x) * (b.y - base.start.y)
            - (b.x - base.start.x) * (a.y - base.start.y)
        )
        < 1e-6
    )
    if not same_way:
        return base.start
    return min(a, b, key=base.start.distance)
