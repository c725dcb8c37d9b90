"""What holds of every run of both playbooks against every look of theirs."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from functools import cache
from itertools import pairwise

import pytest
from shapely import LineString
from shapely import Point as Dot

from resolve.shipped_books import BOOKS, played, shipped
from stemline.football.blocking.run_rules import PULLS, BlockWay
from stemline.football.defenders import Defender, Level
from stemline.football.play import Kind, Play
from stemline.geometry.paths import Path as Way_

BODY = 0.5
"""Yards: a path nearer to a man's middle than this runs through him."""
RUNNERS = (*(w.value for w in PULLS), BlockWay.LEAD.value, BlockWay.ARC.value)


@cache
def plays(team: str) -> tuple[Play, ...]:
    """Every run in every set of it, against every look."""
    result = shipped(team)
    assert result.book is not None
    made: list[Play] = []
    seen = set()
    for order in result.calls.by_name.values():
        key = (order.concept, order.formation, order.way, order.tags)
        if key in seen or result.book.concepts[order.concept].kind is not Kind.RUN:
            continue
        seen.add(key)
        made += [played(team, order, look) for look in result.book.looks]
    return tuple(made)


def name(play: Play) -> str:
    assert play.defence is not None
    return f"{play.call.spoken} against {play.defence.name}"


@pytest.mark.parametrize("team", BOOKS)
def test_nobody_is_blocked_by_three_and_nobody_is_climbed_to_by_two(team: str) -> None:
    for play in plays(team):
        firsts = Counter(a.hits[0].defender for a in play.assignments if a.hits)
        assert all(n <= 2 for n in firsts.values()), (name(play), firsts)
        climbs = Counter(a.hits[1].defender for a in play.assignments if len(a.hits) > 1)
        assert all(n == 1 for n in climbs.values()), (name(play), climbs)
        assert not firsts.keys() & climbs.keys(), name(play)
        assert not {k.man for k in play.keys} & {*firsts, *climbs}, name(play)


def climbs(play: Play) -> Iterator[tuple[float, float]]:
    """Where each man of the line who climbs stands, and where his linebacker does."""
    assert play.defence is not None
    for a in play.assignments:
        man = play.man(a.man)
        pulls = a.hits and a.hits[0].how in RUNNERS
        if not man.interior or not a.hits or pulls:
            continue
        backer = play.defence.defender(a.hits[-1].defender)
        if backer.level is Level.SECOND and 3.25 < backer.at.y <= 6.25:
            yield man.snap.x, backer.at.x


@pytest.mark.parametrize("team", BOOKS)
def test_no_two_climbers_cross(team: str) -> None:
    """Of two men who climb the inner takes the inner linebacker: common practice."""
    for play in plays(team):
        for (_, one), (_, two) in pairwise(sorted(climbs(play))):
            assert one <= two, name(play)


@pytest.mark.parametrize("team", BOOKS)
def test_who_is_left_at_the_line_is_not_at_the_hole(team: str) -> None:
    """Inside of the last man to each side, nobody on the line is left over while a man of the
    line has nobody."""
    for play in plays(team):
        assert play.defence is not None
        idle = [
            m.snap.x
            for m in play.men
            if m.interior and not play.assignment(m.label).hits
            and "hinge" not in play.assignment(m.label).job.lower()
        ]  # fmt: skip
        front = [d for d in play.defence.defenders if d.level is Level.LINE]
        free = [d.at.x for d in front if d.label in play.unblocked and abs(d.at.x) < 2.6]
        assert not [x for x in free for y in idle if abs(x - y) < 1.0], name(play)


def through(path: Way_, men: Sequence[Defender]) -> list[Defender]:
    """The men through whom a path runs, turns taken sharp: measured by another library."""
    corners = [(p.x, p.y) for p in path.corners]
    way = LineString(corners) if len(corners) > 1 else Dot(corners[0])
    return [man for man in men if way.distance(Dot(man.at.x, man.at.y)) < BODY]


@pytest.mark.parametrize("team", BOOKS)
def test_nobody_with_the_ball_or_ahead_of_it_runs_through_a_defender(team: str) -> None:
    """The hole opens where the blocks open it: a way that could not be found is rare, and against
    fronts that nobody calls the run into."""
    hit, total = [], 0
    for play in plays(team):
        assert play.defence is not None
        for a in play.assignments:
            runs = a.man == play.carrier or (a.hits and a.hits[0].how in RUNNERS)
            if a.path is None or not runs:
                continue
            total += 1
            own = {h.defender for h in a.hits}
            others = [d for d in play.defence.defenders if d.label not in own]
            hit += [(name(play), a.man, d.label) for d in through(a.path, others)]
    assert len(hit) <= total / 50, hit


@pytest.mark.parametrize("team", BOOKS)
def test_an_arc_goes_round_the_end(team: str) -> None:
    for play in plays(team):
        last = max(abs(m.snap.x) for m in play.men if m.interior)
        for a in play.assignments:
            if a.path is not None and a.hits and a.hits[0].how == BlockWay.ARC.value:
                past = [p for p in a.path.corners[1:] if p.y >= -1.0]
                assert abs(past[0].x) > last, (name(play), a.man)
