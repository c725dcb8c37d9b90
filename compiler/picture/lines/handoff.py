"""The ball on a run: the mesh, where the carrier takes it, and the pitch to another man."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import replace
from itertools import pairwise

from stemline.football.exchanges import said_any
from stemline.football.play import Kind, Play
from stemline.geometry.curves import dot, left_of, nearest, unit
from stemline.geometry.paths import Line, Point, along, length
from stemline.picture.lines.paces import Pace, far_along
from stemline.picture.lines.route_lines import Drawn
from stemline.picture.paper.detail import Detail
from stemline.picture.paper.surface import Board
from stemline.picture.paper.symbol import Symbol
from stemline.picture.scene.scene import Item, Stroke
from stemline.source import Span

_MESH = 1.7
"""Yards: a carrier who comes this near the quarterback or his path takes the ball from him."""
_STEP = 0.25
"""Yards between two places of a way that are looked at."""
_OFF = 4
"""Steps of the carrier's way, from his own place, on which nothing is marked: his symbol's room."""
_PITCH = frozenset({"pitch", "toss"})
"""What a key's choice is called when the ball is thrown to a man beside or behind."""
_TRAILS = frozenset({"pitch", "trail"})
"""Roles of the man who trails the quarterback for it, where the choice names nobody."""
_CAUGHT = 0.35
"""Part of his path after which the pitch reaches its man."""

_PITCH_SPEED = 12.0
"""Yards a second of a ball tossed underhand; common practice, no published source."""


def ball_items(
    play: Play,
    drawn: Sequence[Drawn],
    symbols: Mapping[str, Symbol],
    board: Board,
    paces: Mapping[str, Pace],
) -> tuple[Item, ...]:
    """Two short strokes across the carrier's path at the mesh; a thin dashed line for a pitch.

    They are called after the man who gets the ball: "R-mesh-1", "R-mesh-2", "A-pitch". Both
    strokes of a mesh have the moment at which he is there; a pitch leaves when the quarterback is
    at the end of his line, and is there when it has flown and its man has come.
    """
    if (
        said_any(play.exchanges)
        or play.kind is not Kind.RUN
        or not board.shows(Detail.MESH)
        or play.passer is None
    ):
        return ()
    passer = play.passer.label
    own_lines = [d for d in drawn if d.run.branch is None and len(d.points) > 1]
    lines = {d.run.man: d.points for d in own_lines}
    times = {d.run.man: paces[d.run.name] for d in own_lines if d.run.name in paces}
    his = _way(symbols[passer].at, lines.get(passer, ()))
    items: list[Item] = []
    hands = (passer, *play.handoffs, play.carrier) if play.carrier else ()
    for giver, taker in pairwise(hands):
        own, given = (_way(symbols[man].at, lines.get(man, ())) for man in (taker, giver))
        if giver != taker and (found := _meeting(own, given)):
            span = play.assignment(taker).span
            made = mesh_items(*found, board, span, symbols[passer])
            items += _timed_mesh(made, taker, found[0], lines, times)
    for man in _pitch_men(play):
        if man in lines and man != play.carrier and passer in lines:
            points = lines[man]
            caught = along(points, _CAUGHT * length(points))
            span = play.assignment(man).span
            pitch = Stroke((Line(his[-1], caught),), "pitch", (), span)
            if man in times and passer in times:
                leaves, there = times[passer].end, times[man].at(_CAUGHT)
                flown = leaves + his[-1].distance(caught) / _PITCH_SPEED
                moments = (leaves, max(flown, there))
                pitch = replace(pitch, name=f"{man}-pitch", times=moments)
            items.append(pitch)
    return tuple(items)


def _timed_mesh(
    strokes: Sequence[Stroke],
    carrier: str | None,
    at: Point,
    lines: Mapping[str, Sequence[Point]],
    times: Mapping[str, Pace],
) -> tuple[Stroke, ...]:
    """The strokes with the moment at which the carrier is ``at`` the mesh."""
    if carrier is None or carrier not in times:
        return tuple(strokes)
    points = lines[carrier]
    moment = times[carrier].at(far_along(points, at) / length(points))
    return tuple(
        replace(stroke, name=f"{carrier}-mesh-{number}", times=(moment, moment))
        for number, stroke in enumerate(strokes, 1)
    )


def mesh_items(
    at: Point, ahead: Point, board: Board, span: Span, passer: Symbol | None = None
) -> tuple[Stroke, ...]:
    """Two short strokes across a path that runs in direction ``ahead`` through ``at``, cut short
    on the side where they would run into the ``passer``."""
    across = left_of(ahead)
    step = ahead.scaled(board.mark("mesh_apart") / 2)
    return tuple(
        Stroke(
            (
                Line(
                    _as_far(spot, across.scaled(-1), passer, board),
                    _as_far(spot, across, passer, board),
                ),
            ),
            "mesh",
            (),
            span,
        )
        for spot in (at - step, at + step)
    )


def _as_far(spot: Point, way: Point, passer: Symbol | None, board: Board) -> Point:
    """The end of one half of a stroke."""
    half = board.mark("mesh")
    if passer is not None:
        apart = passer.at - spot
        along_, aside = dot(apart, way), abs(dot(apart, left_of(way)))
        edge = passer.edge + board.weight("mesh") / 2
        if along_ > 0 and aside < edge:
            half = min(half, max(0.0, along_ - math.sqrt(edge * edge - aside * aside)))
    return spot + way.scaled(half)


def _way(start: Point, points: Sequence[Point]) -> tuple[Point, ...]:
    """A man's way in small steps, his own place first."""
    whole = (start, *points)
    count = int(length(whole) / _STEP)
    return (*(along(whole, i * _STEP) for i in range(count + 1)), whole[-1])


def _meeting(own: Sequence[Point], his: Sequence[Point]) -> tuple[Point, Point] | None:
    """Where behind the line the carrier comes nearest to the quarterback's way, and which way he
    is running there; None when he never comes near."""
    best, found = _MESH, None
    for a, b in pairwise(own[_OFF:] if len(own) > _OFF + 1 else own):
        if a.y > 0:
            break
        for p in his:
            at, _ = nearest(a, b, p)
            if at.distance(p) < best - 1e-9:
                best, found = at.distance(p), (at, unit(a, b))
    return found


def _pitch_men(play: Play) -> tuple[str, ...]:
    """The men to whom the ball may be pitched: named by a key, or in a role of that name."""
    choices = [c for key in play.keys for c in key.choices if c[0] in _PITCH]
    named = {to for _, to, _ in choices if to} or (_TRAILS if choices else frozenset())
    return tuple(t.man for t in play.assignments if t.role in named or t.man in named)
