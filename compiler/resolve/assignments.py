"""What each man does in one call: routes traced, options branched, motions attached."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import TypeVar

from stemline.diagnostics.catalogue.calls import E622, E623
from stemline.diagnostics.catalogue.football import E478
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.football.blocking.block_names import BLOCKS
from stemline.football.blocking.carrying import Hole, carry, hole
from stemline.football.conditions import LookWord, Where, example
from stemline.football.defence.fronts import wings
from stemline.football.exchanges import BallMoves, Exchange
from stemline.football.field import Side
from stemline.football.offence.aiming import aimed
from stemline.football.offence.counting import tight_ends
from stemline.football.offence.landmarks import Landmark
from stemline.football.offence.rails import in_time, railed, stem_of
from stemline.football.offence.strokes import (
    BLOCKS_FOR,
    DOWN_SET,
    PASS_SET,
    Decide,
    set_at_the_line,
    to_the_flat,
)
from stemline.football.offence.tracing import Runner, called_depth, trace
from stemline.football.play import Assignment, Branch, DepthMark, Man, Motion
from stemline.football.players import Position
from stemline.football.scrambling import DEEP, SHORT, SHORT_ENDS, told
from stemline.geometry.paths import Ending, Path, Point, polyline
from stemline.lineup.lined_up import LinedUp
from stemline.playbook.concepts import BlockSaid, Body, Job, RouteJob
from stemline.playbook.guards import narrowest
from stemline.playbook.role_rules import ByRole
from stemline.playbook.run_definitions import CARRIER, Aim, BlockRules
from stemline.playbook.said import Said, SideWord
from stemline.resolve.ball_way import on_their_ways, ways_through
from stemline.resolve.faking import fake_of, faked_at, then_out
from stemline.resolve.lines_run_up import beside, off_the_rail
from stemline.resolve.roles import Bound, side_of_way

_OUTWARD = ("centre", "A", "guard", "B", "tackle", "C", "end", "D", "edge")
"""What a run aims at, from the ball outward."""

T = TypeVar("T")

_STRAIGHT_UP = 0.05
"""Yards to the side up to which a leg of a route goes neither way."""
_MARK_REACH = 0.6
"""A depth is printed at the turn that lies within this of the taught depth."""


@dataclass(frozen=True)
class Chosen:
    """The fact that holds and, narrower, those that the look may still choose."""

    base: Said[Job]
    branches: tuple[Said[Job], ...]


def assignments(
    body: Body,
    bound: Bound,
    picture: LinedUp,
    motions: Mapping[str, Motion],
    against: Sequence[LookWord],
    call: str,
    exchanges: Sequence[Exchange] = (),
) -> tuple[tuple[Assignment, ...], tuple[Diagnostic, ...]]:
    """One assignment a man, in the order of the men; a man without a role has no job. Who meets
    another for the ball goes by way of there."""
    found: list[Diagnostic] = []
    roles = {label: role for role, label in bound.men.items()}
    made = [
        _assignment(
            m, roles.get(m.label, ""), body, bound, picture, against, call, found, exchanges
        )
        for m in picture.men
    ]
    made = list(on_their_ways(made, exchanges, picture))
    moved = (replace(a, motion=motions[a.man]) if a.man in motions else a for a in made)
    return tuple(moved), tuple(found)


def _assignment(
    man: Man,
    role: str,
    body: Body,
    bound: Bound,
    picture: LinedUp,
    against: Sequence[LookWord],
    call: str,
    found: list[Diagnostic],
    exchanges: Sequence[Exchange],
) -> Assignment:
    said_to = body.role_says.get(role, ()) if role else ()
    idle = Assignment(man.label, role, "", None, (), (), None, said_to, man.span)
    if not role:
        return idle
    said = body.jobs.get(role, ())
    worlds = worlds_of(man, picture, against)
    if not worlds:
        return idle  # more receivers than the code plays: said at the formation
    chosen = choose(said, worlds)
    if chosen is None:
        if said:
            found.append(_no_line(said, worlds, role, picture, call))
        return idle
    if _without(worlds, said):
        found.append(_no_line(said, worlds, role, picture, call))
    base = chosen.base
    if _blocks_air(base.value, man, picture):
        instead = _without_down(role, base.value, man, picture)
        found.append(E478(man=man.label, call=call, instead=instead).at(base.span))
    fake = fake_of(man.label, role, body, bound)
    jobs = said

    def runs(said: Said[Job]) -> tuple[Path, tuple[DepthMark, ...]]:
        assert isinstance(said.value, RouteJob)
        if fake is None:
            return _run(said.value, man, bound, picture, said, jobs, found, call)
        at = faked_at(man, aim_path(fake, man, picture), picture)
        # As wide as from his own place: from where a fake ends he would turn up through the line.
        there = replace(man, snap=Point(man.snap.x, at[-1].y))
        out, turns = _run(said.value, there, bound, picture, said, jobs, found, call)
        return then_out(out, man.snap, at), turns

    path: Path | None = None
    then: Path | None = None
    marks: tuple[DepthMark, ...] = ()
    match base.value:
        case RouteJob():
            path, marks = runs(base)
        case BlockSaid():
            path = _block(base.value, man, picture)
            then = _goes_out(base.value, path, man, picture)
        case Aim():
            handles = any(man.label in (x.giver, x.taker) for x in exchanges)
            leads = not (role == CARRIER or handles) and _same_hole(base.value, body, picture)
            path = aim_path(base.value, man, picture, exchanges, leads=leads)
        case BlockRules():
            # Worked out against a defence; a receiver's on a pass is drawn without one too.
            way = base.value.rules[0].way.value if base.value.rules else ""
            if way in ("stalk", "crack") and not body.line:
                path = _block(BlockSaid(way, None), man, picture)
    decide = _decision(body, role, base.value, worlds)
    job = words_of(base.value, role)
    if fake is not None and isinstance(base.value, RouteJob):
        job = f"Fake the run to {fake.words}, then {job[:1].lower()}{job[1:]}"
    job += _decides(decide) if decide else ""
    branches: list[Branch] = []
    for option in chosen.branches:
        looks = ", ".join(look.value for look in option.guard.looks if look not in against)
        if not isinstance(option.value, RouteJob):
            # Two paths for one man who blocks are one too many: the table says it.
            job += f" Against {looks}: {words_of(option.value, role)}"
            continue
        other, other_marks = runs(option)
        leaves = parting(path, other, decide.depth if decide else None)
        told = words_of(option.value, role)
        branches.append(Branch(looks, other, told, other_marks, leaves))
    says = (
        *(body.role_says.get(CARRIER, ()) if fake is not None else ()),
        *body.role_says.get(role, ()),
        *_of_routes(base.value, *(o.value for o in chosen.branches)),
    )
    made = Assignment(man.label, role, job, path, tuple(branches), marks, None, says, base.span)
    return replace(made, climb=then, waits=_waits(base.value, man, picture))


def _of_routes(*jobs: Job) -> tuple[str, ...]:
    """What the coach says of the routes themselves, each sentence once."""
    said = (line for job in jobs if isinstance(job, RouteJob) for line in job.route.says)
    return tuple(dict.fromkeys(said))


def scrambling(
    a: Assignment, body: Body, bound: Bound, rules: Mapping[str, str], picture: LinedUp
) -> Assignment:
    """The assignment with what he does when the quarterback runs: as the concept says of him, else
    by where his route ends."""
    said = body.scrambles.get(bound.role_of(a.man) or "", ())
    worlds = worlds_of(picture.man(a.man), picture, ())
    own = narrowest([s for s in said if s.guard.worlds & worlds])
    goes = a.path is not None and a.path.legs and a.path.ending in (Ending.RUN, Ending.SETTLE)
    way = own.value if own is not None else ""
    if not way and goes and a.path is not None and not picture.man(a.man).interior:
        way = rules.get(SHORT if a.path.end.y <= SHORT_ENDS else DEEP, "")
    if not way:
        return a
    return replace(a, scramble=way, job=f"{a.job} {told(way)}".lstrip())


def _decision(body: Body, role: str, does: Job, worlds: Where) -> Decide | None:
    """Where he chooses: as the concept says of his role, else as his route says."""
    said = narrowest([d for d in body.decides.get(role, ()) if worlds & d.guard.worlds])
    if said is not None:
        return said.value
    return does.route.decides if isinstance(does, RouteJob) else None


def _decides(decide: Decide) -> str:
    on = f" on the {decide.on}" if decide.on else ""
    return f" Decide at {decide.depth:g}{on}."


def words_of(does: Job, role: str) -> str:
    """The line of the assignment table for what a role does."""
    match does:
        case BlockSaid(job, side):
            first, _, rest = BLOCKS[job].words.partition(":")
            return f"{first}, {side.value}:{rest}" if side is not None else BLOCKS[job].words
        case Aim(_, words):
            if _cuts_back(does):
                words = words.replace(", then ", ": press it, then cut back to ")
            carries = f"Take the ball to {words}."
            return carries if role == CARRIER else f"Run to {words}, as if with the ball."
        case BlockRules(_, _, words):
            return f"{words[:1].upper()}{words[1:]}."
        case RouteJob():
            return f"{does.words}."


def _same_hole(aim: Aim, body: Body, picture: LinedUp) -> bool:
    """Whether the carrier aims at the same place in the end: then a man goes ahead of him, and
    needs no ball."""
    theirs = [s.value for s in body.jobs.get(CARRIER, ()) if isinstance(s.value, Aim)]
    return any(_holes(one, picture)[-1] == _holes(aim, picture)[-1] for one in theirs)


def _holes(aim: Aim, picture: LinedUp) -> list[Hole]:
    """Where its points lie; one without a side on the playside."""
    sides = [picture.side(p.side or SideWord.PLAYSIDE) for p in aim.points]
    return [hole(p.point, s, picture.men) for p, s in zip(aim.points, sides, strict=True)]


def _cuts_back(aim: Aim) -> bool:
    """Whether the second of two aims is inside the first, which is on the playside, or past the
    ball: he presses the one and cuts back to the other."""
    if len(aim.points) != 2:
        return False
    first, last = aim.points
    inside = _OUTWARD.index(last.point) < _OUTWARD.index(first.point)
    sides = [point.side or SideWord.PLAYSIDE for point in aim.points]
    return sides[0] is SideWord.PLAYSIDE and (sides[1] is SideWord.BACKSIDE or inside)


def aim_path(
    aim: Aim,
    man: Man,
    picture: LinedUp,
    exchanges: Sequence[Exchange] = (),
    *,
    leads: bool = False,
) -> Path:
    """The way to an aim; who ``leads`` goes by the quarterback only where he gets the ball."""
    holes = _holes(aim, picture)
    passer = next((m.label for m in picture.men if m.position is Position.QUARTERBACK), "")
    meets, through = ways_through(man.label, exchanges, passer)
    across = any(x.taker == man.label and x.kind is BallMoves.SHOVEL for x in exchanges)
    back = _cuts_back(aim)
    return carry(
        holes, man, picture.men, through, meets, leads=leads, across=across, cuts_back=back
    )


def _no_line(
    said: Sequence[Said[Job]], worlds: Where, role: str, picture: LinedUp, call: str
) -> Diagnostic:
    """No line holds, or none against a look that no line asks for: the case is named."""
    shown = example(picture.receivers, _without(worlds, said)).looks
    asked = {look for s in said for look in s.guard.looks if s.guard.worlds & worlds}
    looks = [look.value for look in LookWord if look in shown and look.opposite in asked]
    case = ", ".join([picture.count.shape_word, *looks])
    return E622(role=role, shape=case, call=call).at(said[0].span)


def _without(worlds: Where, said: Sequence[Said[Job]]) -> Where:
    """The worlds in which no line holds."""
    for one in said:
        worlds -= one.guard.worlds
    return worlds


def worlds_of(man: Man, picture: LinedUp, against: Sequence[LookWord]) -> Where:
    """What may still be so for a man: the shape is known, where he stands, and looks that show."""
    return picture.worlds(picture.side_of(man.label), tuple(against))


def choose(said: Sequence[Said[Job]], worlds: Where) -> Chosen | None:
    """The narrowest fact that surely holds, with the narrower ones that the look decides.

    A fact that a narrower one hides in every case left plays no part. Where every fact waits for
    the look, the widest of them is drawn solid.
    """
    holding = [s for s in said if s.guard.worlds & worlds]
    if len(holding) == 1:
        return Chosen(holding[0], ())
    used = [s for s in holding if any(_rules(s, holding, world) for world in worlds)]
    if not used:
        return None
    base = narrowest([s for s in used if worlds <= s.guard.worlds]) or max(
        used, key=lambda s: (len(s.guard.worlds & worlds), -_look_order(s))
    )
    return Chosen(base, tuple(sorted((s for s in used if s is not base), key=_look_order)))


def _rules(said: Said[Job], holding: Sequence[Said[Job]], world: int) -> bool:
    """Whether a fact is the one that holds in a world."""
    return narrowest([s for s in holding if world in s.guard.worlds]) is said


def _look_order(said: Said[Job]) -> int:
    order = list(LookWord)
    return min((order.index(look) for look in said.guard.looks), default=len(order))


def _run(
    run: RouteJob,
    man: Man,
    bound: Bound,
    picture: LinedUp,
    said: Said[Job],
    jobs: Sequence[Said[Job]],
    found: list[Diagnostic],
    call: str,
) -> tuple[Path, tuple[DepthMark, ...]]:
    out = natural_out(man, picture)
    if run.way is not None:
        turned = side_of_way(run.way, bound, picture)
        if turned is None:
            role = run.way.role if isinstance(run.way, ByRole) else ""
            found.append(E623(role=role, call=call).at(said.span))
        else:
            out = _facing(turned, run, man, picture)
    runner = Runner(man.snap, out, picture.field)
    depth = called_depth(run.route, run.depth)
    strokes = run.route.strokes
    back = man.label in picture.count.backs
    strokes = to_the_flat(strokes) if back else set_at_the_line(strokes)
    if run.target is not None:
        strokes = aimed(strokes, run.target, run.end, depth)
    if run.rail is not None:
        rail = in_time(run.rail, stem_of(run.route.strokes, depth) or depth, runner)
        strokes = railed(strokes, rail, depth)
        told = off_the_rail(run, rail, man, runner, said, beside(said, jobs, picture), call)
        found += [told] if told is not None else []
    path = trace((*strokes, *run.then), depth, runner)
    return path, _marks(path, depth, run)


def _waits(does: Job, man: Man, picture: LinedUp) -> float | None:
    """For how long a man at the line blocks whose route begins with it."""
    if not isinstance(does, RouteJob) or man.label in picture.count.backs:
        return None
    sets = set_at_the_line(does.route.strokes)[:1] in ((PASS_SET,), (DOWN_SET,))
    return BLOCKS_FOR if sets else None


def _blocks_air(does: Job, man: Man, picture: LinedUp) -> bool:
    """Whether a man is to block down before his route who stands at no end of the line."""
    if not isinstance(does, RouteJob) or does.route.strokes[:1] != (DOWN_SET,):
        return False
    return man.label not in (*tight_ends(picture.men), *wings(picture.men))


def _without_down(role: str, does: Job, man: Man, picture: LinedUp) -> str:
    """The nearest right line for him: a back looks for a rusher first, a receiver goes at once."""
    assert isinstance(does, RouteJob)
    first = "check then " if man.label in picture.count.backs else ""
    who = man.label if role == man.label.casefold() else role
    return f"for example `{who} runs {first}{does.route.name}`"


def _facing(way: Side, run: RouteJob, man: Man, picture: LinedUp) -> Side:
    """The side that is out for a man whose route goes ``way``. A man behind the ball runs out to
    it, and a place lies on it; for who stands out wide, or on the ball, the route's last turn is
    made that way: a hook turns to it, a slant goes to it."""
    placed = run.rail is not None or (
        run.target is not None and run.target.landmark is not Landmark.BALL
    )
    if placed or man.label in picture.count.backs:
        return way
    own = natural_out(man, picture)
    depth = called_depth(run.route, run.depth)
    strokes = run.route.strokes
    if run.target is not None:
        strokes = aimed(strokes, run.target, run.end, depth)
    straight = trace((*strokes, *run.then), depth, Runner(man.snap, own, picture.field))
    corners = straight.corners
    turns = [b.x - a.x for a, b in pairwise(corners) if abs(b.x - a.x) > _STRAIGHT_UP]
    if not turns:
        return way
    across = isinstance(run.way, ByRole) and run.way.across and own is way
    if across and straight.ending is Ending.RUN and turns[-1] * own.value < 0:
        return own  # he is the man across from the other one, and nobody's post turns out
    return own if turns[-1] * way.value > 0 else own.other


def _block(block: BlockSaid, man: Man, picture: LinedUp) -> Path | None:
    """The way to a block; None for a man who blocks where he stands."""
    strokes = BLOCKS[block.job].strokes
    if not strokes:
        return None
    out = picture.side(block.side) if block.side is not None else natural_out(man, picture)
    runner = Runner(man.snap, out, picture.field)
    return replace(trace(strokes, 0, runner), ending=Ending.BLOCK)


def _goes_out(block: BlockSaid, path: Path | None, man: Man, picture: LinedUp) -> Path | None:
    """The way from a block that is over; None for one who stays at it."""
    strokes = BLOCKS[block.job].then
    if path is None or not strokes:
        return None
    return trace(strokes, 0, Runner(path.end, natural_out(man, picture), picture.field))


def natural_out(man: Man, picture: LinedUp) -> Side:
    """The side a man stands on; for one behind the ball the weak side."""
    return picture.side_of(man.label) or picture.count.weak


def _marks(path: Path, depth: float, run: RouteJob) -> tuple[DepthMark, ...]:
    if depth < 0 or (not run.route.taught and run.depth is None):
        return ()
    near = min(path.corners[1:], key=lambda p: abs(p.y - depth), default=None)
    if near is None or abs(near.y - depth) > _MARK_REACH:
        return ()
    return (DepthMark(near, depth),)


def parting(base: Path | None, branch: Path, depth: float | None = None) -> Point:
    """Where two paths part: their last common point, or the depth at which he decides."""
    if base is None:
        return branch.start
    common = base.start
    for a, b in zip(polyline(base), polyline(branch), strict=False):
        if a.distance(b) > 0.05:
            break
        common = a
    parts = _stem_end(base, branch) if common == base.start else common
    start = base.start
    if depth is not None and parts.x == start.x and start.y <= depth <= parts.y:
        return Point(start.x, depth)
    return parts


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
