"""The motion man, and what his move is called by a defence that adjusts to it."""

from __future__ import annotations

from collections.abc import Mapping
from itertools import pairwise
from types import MappingProxyType

from stemline.football.conditions import ManMove, MoveWord, bit_of
from stemline.football.field import Side
from stemline.football.play import Motion
from stemline.lineup.lined_up import LinedUp

NOBODY: Mapping[str, Motion] = MappingProxyType({})
_SIDEWAYS = 0.5
"""Yards to the side below which a move is straight back or forward."""


def motion_man(motions: Mapping[str, Motion]) -> str:
    """The label of the man who moves farthest to the side, "" where nobody moves: of several the
    defence adjusts to one."""
    return min(motions, key=lambda label: (-_sideways(motions[label]), label), default="")


def move_of(label: str, motions: Mapping[str, Motion], picture: LinedUp) -> int:
    """His move, as a set of one; that of nobody for a ``label`` without a motion."""
    motion = motions.get(label)
    if motion is None:
        return bit_of(None)
    start, end = motion.path.start, motion.path.end
    if abs(end.x - start.x) < _SIDEWAYS:
        return bit_of(ManMove(None, None, jet=False))
    if start.x * end.x < 0:
        way = MoveWord.ACROSS
    else:
        way = MoveWord.IN if abs(end.x) < abs(start.x) else MoveWord.OUT
    going = Side.RIGHT if end.x > start.x else Side.LEFT
    to = MoveWord.TO_STRONG if going is picture.count.strong else MoveWord.TO_WEAK
    return bit_of(ManMove(way, to, motion.running and _last_is_sideways(motion)))


def _sideways(motion: Motion) -> float:
    return abs(motion.path.end.x - motion.path.start.x)


def _last_is_sideways(motion: Motion) -> bool:
    last = [(a, b) for a, b in pairwise(motion.path.corners) if a != b][-1:]
    return all(abs(b.x - a.x) > abs(b.y - a.y) for a, b in last)
