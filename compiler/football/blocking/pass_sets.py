"""How a pass blocker moves: the set, the way to the rusher he takes, and the words for both.

Paths are short: a set back from the line and a step to meet the rusher; bars end them.
"""

from __future__ import annotations

from collections.abc import Sequence

from stemline.football.blocking.protecting import Blocker, How, ProtectionRule, Rusher, RushTaken
from stemline.football.field import Side
from stemline.geometry.paths import Ending, Leg, Path, Point

# Common practice, no published source. Yards.
SET_DEPTH = 1.3
"""How far a lineman sets back; a tackle goes a little deeper as he goes wider."""
TACKLE_DEPTH = 1.8
KICK = 1.3
"""The widest that a set goes toward its rusher."""
GAP_STEP = 0.7
"""A slide with nobody in the gap: a step to that side."""
STRIKE = 0.5
"""The last step, at the rusher."""
EDGE_OUTSIDE = 0.9
"""Where a man stands who closes an edge, outside the last man of the line."""
MEET_DEPTH = 2.0
"""How deep a man from behind the line meets his rusher."""
SCAN_AT = Point(0.9, -2.6)
"""Where a man from behind the line waits who scans: inside his guard."""
THROW = Point(0.0, -6.0)
"""Where rushers run: the quarterback after his drop."""
RELEASE_PAST = 3.0
"""How far outside the catch the first lineman of a screen goes."""
RELEASE_GAP = 2.6
"""How far apart they run; the last goes no nearer to the ball than RELEASE_LEAST."""
RELEASE_LEAST = 3.5
RELEASE_DEPTH = 1.25
"""How deep the first of them runs: he has given ground to the man whom he let by. A quarter yard
more, and on a small picture the last had to give way to the back."""
LANE = 0.45
"""Each runs that much behind the one ahead of him, so that nobody crosses anybody."""
SCREEN_CATCH = 5.6
"""Yards from the ball to the catch of a slow screen where no read says it: 3 outside a tackle."""
TURN_UP = 0.5
"""The first turns up to that far behind the line."""


def set_path(blocker: Blocker, rusher: Rusher | None, toward: Side | None, outer: bool) -> Path:
    """A lineman's set. ``rusher`` is whom he takes, None for a man with nobody; ``toward`` the
    side his slide steps to."""
    start = blocker.at
    depth = start.y - (TACKLE_DEPTH if outer else SET_DEPTH)
    if rusher is None:
        step = toward.value * GAP_STEP if toward is not None and blocker.rule.by_gap else 0.0
        return _path(start, Point(start.x + step, depth))
    across = max(-KICK, min(KICK, rusher.aim.x - start.x))
    set_at = Point(start.x + 0.8 * across, depth)
    return _path(start, set_at, _step(set_at, rusher.aim, STRIKE))


def meet_path(start: Point, rusher: Rusher) -> Path:
    """From behind the line to the way of a rusher, in front of the quarterback."""
    share = (rusher.aim.y + MEET_DEPTH) / (rusher.aim.y - THROW.y)
    on_way = rusher.aim + (THROW - rusher.aim).scaled(share)
    back = min(STRIKE, start.distance(on_way) / 2)
    return _path(start, _step(on_way, start, back))


def edge_path(start: Point, tackle: Point, side: Side) -> Path:
    """To an edge that nobody comes off: outside the last man of the line, and no deeper."""
    return _path(start, Point(tackle.x + side.value * EDGE_OUTSIDE, tackle.y - TACKLE_DEPTH))


def scan_path(start: Point, side: Side) -> Path | None:
    """A scan's step up to where he looks from; None for who stands as near the line already."""
    to = Point(side.value * SCAN_AT.x, SCAN_AT.y)
    return _path(start, to) if start.y <= to.y - STRIKE else None


def release_path(blocker: Blocker, side: Side, order: int, target: float) -> Path:
    """Out in front of a screen: ``order`` 0 for the first man, ``target`` the x of the catch."""
    depth = -(RELEASE_DEPTH + order * LANE)
    wide = max(abs(target) + RELEASE_PAST - order * RELEASE_GAP, RELEASE_LEAST)
    ways = [Point(blocker.at.x, depth), Point(side.value * wide, depth)]
    if not order:
        ways.append(Point(side.value * (wide + 0.8), -TURN_UP))
    return _path(blocker.at, *ways)


def _path(start: Point, *to: Point) -> Path:
    return Path(start, tuple(Leg(_round(p)) for p in to), Ending.BLOCK)


def _step(start: Point, to: Point, yards: float) -> Point:
    away = start.distance(to)
    return start + (to - start).scaled(min(1.0, yards / away)) if away > 1e-6 else start


def _round(p: Point) -> Point:
    return Point(round(p.x, 3) + 0.0, round(p.y, 3) + 0.0)


# Words.

_RULES = {
    ProtectionRule.SLIDE: "Slide {way}: the gap on that side of you.",
    ProtectionRule.MAN: "Man: the rusher on you. Nobody there: help inside.",
    ProtectionRule.BIG: "Big on big: the man of the front on you. Uncovered: {point}.",
    ProtectionRule.REACH: "Reach {way}: get to the gap on that side of you, hips around.",
    ProtectionRule.HINGE: "Hinge: close the gap inside you, then turn to who comes behind.",
    ProtectionRule.RELEASE: "Set, hold him for two counts, let him by, then out in front of the "
    "screen.",
    ProtectionRule.EDGE: "Block the {edge}: the first man outside the line, nobody around you.",
    ProtectionRule.SCAN: "Scan {order}.",
    ProtectionRule.CHECK: "Check {order}. Nobody comes: {out}.",
    ProtectionRule.CHECK_EDGE: "Check the {edge}: the first man outside the line. "
    "Nobody comes: {out}.",
}

_TAKEN = {
    How.GAP: "{rule}: {rusher}.",
    How.MAN: "{rule}: {rusher}.",
    How.HINGE: "{rule}: {rusher}.",
    How.EDGE: "{rule}: {rusher}.",
    How.SCAN: "{rule}: {rusher}.",
    How.POST: "{rule}: post back on {rusher}.",
    How.LET_BY: "Hold {rusher} for two counts, let him by, then out.",
    How.HELP: "{rule}: help on {rusher}.",
}


def rule_words(
    rule: ProtectionRule,
    way: str,
    wants: Sequence[str],
    point: str,
    edge: str = "edge",
    out: str = "out",
) -> str:
    """A man's job without a look. ``way`` is the slide as the coach says it ("weak"), ``wants``
    the described defenders he looks at in order, ``edge`` the edge with its side ("weak edge"),
    ``out`` where he goes who checks."""
    order = ", then ".join(f"the {w}" for w in wants) if wants else "inside out"
    named = f"the {point}" if point else "help"
    words = _RULES[rule].format(way=way, order=order, point=named, edge=edge, out=out)
    return words.replace(" :", ":")


def taken_words(taken: RushTaken | None, rule: ProtectionRule) -> str:
    """A man's job against a look: "Slide: T." """
    said = rule.value.partition(" then ")[0].capitalize()
    if taken is None:
        return f"{said}: nobody comes{', out' if rule.checks else ''}."
    return _TAKEN[taken.how].format(rule=said, rusher=taken.rusher)
