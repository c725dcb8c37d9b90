"""The strokes of a mesh, and the pitch that a key may have."""

from __future__ import annotations

import math
from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, replace

from stemline.football.exchanges import TOSS_SPEED, TRAILS, said_any
from stemline.football.play import Kind, Play
from stemline.geometry.curves import dot, left_of
from stemline.geometry.paths import Line, Point, along, length
from stemline.picture.lines.paces import Pace
from stemline.picture.lines.route_lines import Drawn
from stemline.picture.paper.surface import Board
from stemline.picture.paper.symbol import Symbol
from stemline.picture.scene.scene import Item, Stroke
from stemline.source import Span

_PITCH = frozenset({"pitch", "toss"})
"""What a key's choice is called when the ball is thrown to a man beside or behind."""
_CAUGHT = 0.35
"""Part of his path after which the pitch reaches its man, where the passer only fakes."""
_BEHIND = 2.0
"""Yards behind the line at which a quarterback who has pulled the ball pitches it."""
_FLAT = 0.2
"""Yards at least that a pitch goes back: forward it would be a pass."""
_STEPS = 40
"""Places of a man's line that are tried for the catch."""


@dataclass(frozen=True)
class _Keeper:
    """The line on which the passer has the ball until he pitches it: its name, its points up to
    there, and how much of the line they are."""

    name: str
    points: Sequence[Point]
    share: float


def pitch_items(
    play: Play,
    drawn: Sequence[Drawn],
    paces: Mapping[str, Pace],
) -> tuple[Item, ...]:
    """A thin dashed line for a pitch that a key may have, called after the man who gets it:
    "A-pitch". It leaves the way on which the quarterback keeps the ball just behind the line, or
    the end of his fake, and is there when it has flown and its man has come."""
    if said_any(play.exchanges) or play.kind is not Kind.RUN or play.passer is None:
        return ()
    keeper = _keeper(play, play.passer.label, drawn)
    lines = {d.run.man: d for d in drawn if d.run.branch is None and len(d.points) > 1}
    if keeper is None:
        return ()
    items: list[Item] = []
    for man in _pitch_men(play):
        if man in lines and man not in (play.carrier, play.passer.label):
            line = lines[man]
            leaves_at, span = keeper.points[-1], play.assignment(man).span
            timed = line.run.name in paces and keeper.name in paces
            leaves = paces[keeper.name].at(keeper.share) if timed else 0.0
            pace = paces[line.run.name] if timed else None
            share = _CAUGHT
            if keeper.share < 1 and pace is not None:
                share = _catch(line.points, leaves_at, leaves, pace)
            caught = along(line.points, share * length(line.points))
            pitch = Stroke((Line(leaves_at, caught),), "pitch", (), span)
            if pace is not None:
                flown = leaves + leaves_at.distance(caught) / TOSS_SPEED.value
                moments = (leaves, max(flown, pace.at(share)))
                pitch = replace(pitch, name=f"{man}-pitch", times=moments)
            items.append(pitch)
    return tuple(items)


def _keeper(play: Play, passer: str, drawn: Sequence[Drawn]) -> _Keeper | None:
    own = [d for d in drawn if d.run.man == passer and len(d.points) > 1]
    keeps = next((d for d in own if d.run.branch is not None), None)
    if keeps is None and play.carrier == passer:
        keeps = next(iter(own), None)  # an option without a dive: his own way is the keep
    if keeps is None:
        return next((_Keeper(d.run.name, d.points, 1.0) for d in own), None)
    # Under centre he is never as deep as that: he pitches half way back up to the line.
    deepest = min(p.y for p in keeps.points)
    behind = max(-_BEHIND, deepest / 2)
    low = next(n for n, p in enumerate(keeps.points) if p.y == deepest)
    count = len(keeps.points)
    last = next((n for n in range(low, count) if keeps.points[n].y > behind), count - 1)
    points = keeps.points[: max(2, last)]
    return _Keeper(keeps.run.name, points, length(points) / length(keeps.points))


def _catch(points: tuple[Point, ...], start: Point, leaves: float, pace: Pace) -> float:
    """How much of his line the man has run when a pitch from ``start`` meets him: it is thrown
    beside or back."""
    whole = length(points)
    best = _CAUGHT
    for share in (n / _STEPS for n in range(1, _STEPS)):
        at = along(points, share * whole)
        if at.y > start.y - _FLAT:
            break
        best = share
        if pace.at(share) >= leaves + start.distance(at) / TOSS_SPEED.value:
            break
    return best


def mesh_items(
    at: Point, ahead: Point, board: Board, span: Span, near: Collection[Symbol] = ()
) -> tuple[Stroke, ...]:
    """Two short strokes across a path that runs in direction ``ahead`` through ``at``, cut short
    on the side where they would run into one of the men ``near``."""
    across = left_of(ahead)
    step = ahead.scaled(board.mark("mesh_apart") / 2)
    return tuple(
        Stroke(
            (
                Line(
                    _as_far(spot, across.scaled(-1), near, board),
                    _as_far(spot, across, near, board),
                ),
            ),
            "mesh",
            (),
            span,
        )
        for spot in (at - step, at + step)
    )


def _as_far(spot: Point, way: Point, near: Collection[Symbol], board: Board) -> Point:
    """The end of one half of a stroke."""
    half = board.mark("mesh")
    for man in near:
        apart = man.at - spot
        along_, aside = dot(apart, way), abs(dot(apart, left_of(way)))
        edge = man.edge + board.weight("mesh") / 2
        if along_ > 0 and aside < edge:
            half = min(half, max(0.0, along_ - math.sqrt(edge * edge - aside * aside)))
    return spot + way.scaled(half)


def _pitch_men(play: Play) -> tuple[str, ...]:
    """The men to whom a key may have the ball pitched."""
    choices = [c for key in play.keys for c in key.choices if c[0] in _PITCH]
    named = {to for _, to, _ in choices if to} or set(TRAILS if choices else ())
    return tuple(t.man for t in play.assignments if t.role in named or t.man in named)
