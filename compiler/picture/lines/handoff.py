"""The strokes of a mesh, and the pitch that a key may have."""

from __future__ import annotations

import math
from collections.abc import Collection, Mapping, Sequence
from dataclasses import replace

from stemline.football.exchanges import TOSS_SPEED, said_any
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
_TRAILS = frozenset({"pitch", "trail"})
"""Roles of the man who trails the quarterback for it, where the choice names nobody."""
_CAUGHT = 0.35
"""Part of his path after which the pitch reaches its man."""


def pitch_items(
    play: Play,
    drawn: Sequence[Drawn],
    symbols: Mapping[str, Symbol],
    board: Board,
    paces: Mapping[str, Pace],
) -> tuple[Item, ...]:
    """A thin dashed line for a pitch that a key may have, called after the man who gets it:
    "A-pitch". It leaves when the quarterback is at the end of his line, and is there when it has
    flown and its man has come."""
    if said_any(play.exchanges) or play.kind is not Kind.RUN or play.passer is None:
        return ()
    passer = play.passer.label
    own_lines = [d for d in drawn if d.run.branch is None and len(d.points) > 1]
    lines = {d.run.man: d.points for d in own_lines}
    times = {d.run.man: paces[d.run.name] for d in own_lines if d.run.name in paces}
    items: list[Item] = []
    for man in _pitch_men(play):
        if man in lines and man != play.carrier and passer in lines:
            points, leaves_at = lines[man], lines[passer][-1]
            caught = along(points, _CAUGHT * length(points))
            span = play.assignment(man).span
            pitch = Stroke((Line(leaves_at, caught),), "pitch", (), span)
            if man in times and passer in times:
                leaves, there = times[passer].end, times[man].at(_CAUGHT)
                flown = leaves + leaves_at.distance(caught) / TOSS_SPEED.value
                moments = (leaves, max(flown, there))
                pitch = replace(pitch, name=f"{man}-pitch", times=moments)
            items.append(pitch)
    return tuple(items)


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
    """The men to whom the ball may be pitched: named by a key, or in a role of that name."""
    choices = [c for key in play.keys for c in key.choices if c[0] in _PITCH]
    named = {to for _, to, _ in choices if to} or (_TRAILS if choices else frozenset())
    return tuple(t.man for t in play.assignments if t.role in named or t.man in named)
