"""A call from the other spots that it is called from: which of them its picture says too.

Pictures are told apart by jobs and not by yards: turned so that the call goes right, two are alike
where the men have the same roles, counts and routes and the quarterback the same feet and reads.
Then a line of splits is enough, else both are drawn.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from stemline.diagnostics.in_words import together
from stemline.football.field import BallSpot, Side
from stemline.football.play import Kind, Play

_TURNED = {"LT": "RT", "LG": "RG", "RT": "LT", "RG": "LG", "left": "right", "right": "left"}
_STEP = 0.5
"""Yards to which a split is printed, as on the page of formations."""


@dataclass(frozen=True)
class BySpot:
    """A call's other spots: ``words`` are what its picture lacks of those that it says, ``apart``
    are the plays that want a picture of their own."""

    words: str
    apart: tuple[Play, ...]


def by_spot(drawn: Play, others: Sequence[Play]) -> BySpot:
    """``others`` are the call of ``drawn`` from its other spots."""
    mine, same = jobs(drawn), list[str]()
    seen, apart = list[object](), list[Play]()
    for other in others:
        if (theirs := jobs(other)) == mine:
            same.append(f"{other.ball.value}: {_splits(drawn, other)}")
        elif theirs not in seen:
            seen.append(theirs)
            apart.append(other)
    return BySpot("; ".join(same), tuple(apart))


def jobs(play: Play) -> object:
    """What everybody does, as if the call went right: nothing in it is a place."""
    over = play.call.side is Side.LEFT
    return (
        play.shape,
        sorted(_men(play, over)),
        sorted(_tasks(play, over)),
        [(step.name, _side(step.side, over)) for step in play.feet],
        [(read.number, _turned(read.target, over), read.foot) for read in play.reads],
        [_turned(read.target, over) for read in play.pressure],
        sorted(play.nobody),
        _side(play.toward, over),
        _turned(play.protection, over),
    )


def _men(play: Play, over: bool) -> Iterator[tuple[str, str]]:
    """Who stands on which side, counted from where."""
    for man in play.men:
        side = _side(man.rank.side, over) if man.rank is not None else ""
        number = man.rank.number if man.rank is not None else 0
        yield _turned(man.label, over), f"{side} {number} {man.on_line}"


def _tasks(play: Play, over: bool) -> Iterator[tuple[str, ...]]:
    """A front that stands otherwise from a hash makes no other run: whom each man hits there its
    rules say."""
    for task in play.assignments:
        job = "" if play.kind is Kind.RUN and play.defence is not None else task.job
        words = (task.man, task.role, job, *(f"{b.looks} {b.job}" for b in task.branches))
        yield tuple(_turned(each, over) for each in words)


def _splits(drawn: Play, other: Play) -> str:
    """Who stands otherwise, and how many yards from the ball; where nobody does, that it is the
    same picture, or the same turned over."""
    way, back = drawn.call.side.value, other.call.side.value
    moved = []
    for man in drawn.men:
        there = next((m for m in other.men if m.label == man.label), None)
        if man.interior or there is None:
            continue
        if abs(man.at.x * way - there.at.x * back) >= _STEP / 2:
            moved.append(f"{man.label} at {round(abs(there.at.x) / _STEP) * _STEP:g}")
    if moved:
        return ", ".join(moved)
    return "the same" if way == back else "the mirror"


def _side(side: Side | None, over: bool) -> str:
    if side is None:
        return ""
    return (side.other if over else side).word


def _turned(words: str, over: bool) -> str:
    if not over:
        return words
    return re.sub(r"\b(LT|LG|RT|RG|left|right)\b", lambda found: _TURNED[found[0]], words)


def spots_said(play: Play) -> str:
    """Where the call is best and never called from, as its dress-up says it."""
    best, never = play.call.best, [s for s in BallSpot if s in play.call.not_from]
    said = [f"best from {_spots(best)}"] if best else []
    return "; ".join((*said, *([f"never from {_spots(never)}"] if never else ())))


def _spots(spots: Sequence[BallSpot]) -> str:
    return together(f"the {spot.value}" for spot in spots)
