"""The way to a block: straight to a man over you, behind the line for one who pulls."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from stemline.football.blocking.run_rules import PULLS, BlockWay, Rule
from stemline.football.defence.fronts import BOX_DEPTH, HEAD_UP, line_of, wings
from stemline.football.field import Side
from stemline.football.play import Man
from stemline.geometry.paths import Ending, Leg, Path, Point

# Yards; common practice, no published source.
PULL_DEPTH = 1.0
"""How deep the first puller runs behind the line. Line coaches want no more than a yard and a
half: deeper is late."""
PULL_BEHIND = 0.5
"""How much deeper the second of two pullers runs, so that they do not meet."""
_BEHIND_LAST, _BESIDE_LAST, _UP_PAST_LAST = 0.9, 0.5, 0.6
"""Who kicks past a neighbour: how far behind the line he runs, to each side of that man, and where
behind it he turns up. Common practice, no published source."""
_FIRST_STEP = 0.6
_INSIDE_OUT = 1.4
"""A kick comes from inside: the puller is that far short of his man when he turns up on him."""
_AROUND = 1.2
"""Outside the last man of the line: where one who pulls or arcs around it turns up."""
_PAST_END = 0.6
"""The same for one who kicks a man off the line: he meets him nearer, but past the end."""
_BESIDE_BALL = 0.8
"""The same, outside of the hole, so that the ball runs inside of him and not on his line ..."""
_INSIDE_HIM = 0.5
"""... where that still leaves him so far inside of his man."""
_SHORT_OF_LINE = 0.4
"""Behind the line: where a pull ends on a pass."""
_OFF_LINE = 1.5
"""A man deeper than this is not on the line."""
_SHOWN = Point(0.6, 0.9)
"""To a side and forward: the first step of a block that nobody is known for."""
_BEHIND_BALL = 0.5
_TURN = 0.9
_TURNED_BACK = 3.0
"""A man who stands at least that far behind a turn, and flatter than _FLATTEST yards back for one
up, is met on his way to the ball."""
_FLATTEST = 0.8
_LED_BACK = 1.5
"""The same for who leads around the end: he goes where the ball does."""
_MEET_INSIDE = (1.2, 1.6, 0.9)
_MEET_UP = (2.8, 3.4, 2.2, 4.1)
"""Where, inside of the turn and past the line: the first place that is clear of others."""
_MEET_OUTSIDE = (1.6, 2.0, 1.3)
"""The same outside of it, for a man who is kicked by one who goes around the end."""
_MEET_ROOM = 1.2
_STALK_GAP = 1.0
_SIDES = 0.3
"""Two men on one defender stand that far to each side of him."""


@dataclass(frozen=True)
class Lane:
    """What a pull runs through: ``hole`` is x of the ball's aim, ``edges`` x of the last men of
    the line, left and right; ``toward`` the playside, ``wing`` x of the outermost wing there."""

    hole: float
    edges: tuple[float, float]
    toward: Side
    wing: float | None = None

    @property
    def wide(self) -> bool:
        """Whether the hole is outside the line."""
        return not self.edges[0] <= self.hole <= self.edges[1]

    def edge(self, side: Side) -> float:
        return self.edges[1] if side is Side.RIGHT else self.edges[0]

    def around_wing(self, side: Side) -> float | None:
        """Yards from the ball at which a man turns up outside the wing whom a wide run passes."""
        if self.wing is None or not self.wide or side is not self.toward:
            return None
        return self.wing * side.value + _PAST_END


def lane(men: Sequence[Man], hole: float, toward: Side) -> Lane:
    xs = [m.snap.x for m in line_of(men)] or [0.0]
    close = wings(men)
    outer = [m.snap.x for m in men if m.label in close and m.snap.x * toward.value > 0]
    wing = max(outer, key=abs, default=None)
    return Lane(hole, (min(xs), max(xs)), toward, wing)


def block_path(man: Man, way: BlockWay | None, to: Point, through: Lane, depth: float) -> Path:
    """From where he stands to the defender's place; ``depth`` is how deep he pulls."""
    start = man.snap
    side = 1 if to.x > start.x else -1
    if way in PULLS:
        return _path(start, *_pull(man, way, to, through, depth, side))
    match way:
        case BlockWay.LEAD:
            play, hole = through.toward.value, through.hole
            if through.wide and min(start.x * play, to.x * play) >= hole * play:
                return _path(start, to)  # he stands outside of the hole, and so does his man
            if man.interior:
                return _path(start, *_pull(man, BlockWay.WRAP, to, through, depth, side))
            return _path(start, Point(hole, -0.8), to)
        case BlockWay.ARC:
            out = _outside(start.x, through.toward)
            around = through.edge(out) + out.value * _AROUND
            if abs(start.x) > abs(around):
                return _path(start, to)
            return _path(start, Point(around, min(start.y, -0.3)), to)
        case BlockWay.STALK:
            gap = min(_STALK_GAP / max(start.distance(to), 0.01), 1.0)
            return _path(start, to + (start - to).scaled(gap))
    return _path(start, to)


def _pull(
    man: Man, way: BlockWay | None, to: Point, through: Lane, depth: float, side: int
) -> tuple[Point, ...]:
    start = man.snap
    behind = -depth if start.y > -depth else start.y + 0.2
    first = Point(start.x + side * _FIRST_STEP, behind)
    inside = (through.hole - to.x) * through.toward.value > _INSIDE_OUT and to.y <= _OFF_LINE
    if way is BlockWay.WRAP and not inside:  # a man on the line inside the hole is met from inside
        hole, past = through.hole, through.around_wing(through.toward)
        if past is not None:  # the wall is inside of the kick and of the ball
            hole = through.toward.value * min(past, hole * through.toward.value)
        if (hole - start.x) * through.toward.value <= 1.0:
            return (Point(hole, behind), to)
        way_to = through.toward.value
        return (
            Point(start.x + way_to * _FIRST_STEP, behind),
            *_turning_up(hole, way_to, behind),
            to,
        )
    if way is BlockWay.PULL:
        side = _around(to.x, through).value
        first = Point(start.x + side * _FIRST_STEP, behind)
        edge = through.edge(_around(to.x, through)) + side * _AROUND
        if to.y <= _OFF_LINE:  # a man of the line is shut in from outside of him
            edge = side * max(side * edge, side * to.x + _PAST_END)
        if (edge - start.x) * side <= _FIRST_STEP:
            return (to,)
        return (first, Point(edge - side * 1.0, behind), Point(edge, 0.2), to)
    if abs(to.x - start.x) < _INSIDE_OUT + _FIRST_STEP and start.y >= -2.5:
        last = side * through.edge(Side(side))
        if man.interior and side * start.x < last - HEAD_UP and side * to.x > last + HEAD_UP:
            # past the last man, who blocks inside: behind him, and out
            before, past = side * (last - _BESIDE_LAST), side * (last + _BESIDE_LAST)
            return (Point(before, -_BEHIND_LAST), Point(past, -_UP_PAST_LAST), to)
        return (to,)
    far = side * to.x - _INSIDE_OUT
    if to.y > _OFF_LINE:
        end = through.edge(Side(side))
        far = max(far, side * end + _PAST_END)
        beside_ball = side * through.hole + _BESIDE_BALL
        if beside_ball <= side * to.x - _INSIDE_HIM:
            far = max(far, beside_ball)
        past = through.around_wing(Side(side))
        if past is not None and side * to.x >= past - _PAST_END - HEAD_UP:
            far = max(far, past + _SIDES)
            # around him, then up: not straight from behind him to a man over him
            return (first, *_turning_up(side * far, side, behind), to)
    short = Point(side * far, min(behind * 0.8, -0.5))
    if start.y < -2.5 and way is BlockWay.KICK:
        play = through.toward.value
        ahead = to.y <= _OFF_LINE and 0 <= (to.x - start.x) * play < _INSIDE_OUT
        # who stands behind his man goes up inside of him, and out
        return (Point(to.x - play * _INSIDE_OUT, -_INSIDE_OUT), to) if ahead else (to,)
    if inside and side * (short.x - first.x) < _FIRST_STEP:
        return (Point(first.x, max(behind, -PULL_DEPTH)), to)
    return (first, short, to)


def _turning_up(x: float, way_to: int, behind: float) -> tuple[Point, Point]:
    """Along the line to ``x``, and up there."""
    return Point(x - way_to * 0.6, behind), Point(x, 0.3)


def shown_pull(man: Man, rule: Rule, through: Lane, depth: float) -> Path:
    """A pull on a pass that shows a run, with nobody on the line to take: along the line to where
    the run has him turn up, or to the end that is said, and he stays behind it."""
    way, side = rule.way, through.toward.other if rule.way is BlockWay.SIFT else through.toward
    if rule.target is not None and rule.target.side is not None:
        side = rule.target.side
    to = through.hole
    if side is not through.toward or way not in (BlockWay.WRAP, BlockWay.TRAP):
        to = through.edge(side) + side.value * (_AROUND if way is BlockWay.PULL else _PAST_END)
    end = Point(to, -_SHORT_OF_LINE)
    if abs(to - man.snap.x) < 2 * _FIRST_STEP:
        return _path(man.snap, end)
    way_to = 1 if to > man.snap.x else -1
    first = Point(man.snap.x + way_to * _FIRST_STEP, -depth)
    return _path(man.snap, first, Point(to - way_to * _FIRST_STEP, -depth), end)


def shown_block(man: Man, rule: Rule, through: Lane) -> Path:
    """A block of a run that a pass shows, where no front is known: which way he goes first."""
    way = rule.way
    if way in PULLS or (way is BlockWay.LEAD and not man.on_line):
        return shown_pull(man, rule, through, PULL_DEPTH)
    if way is BlockWay.HINGE:
        return hinge_path(man, through.toward)
    out = _outside(man.snap.x, through.toward).value
    if way is BlockWay.ARC:
        return _path(man.snap, man.snap + Point(out * _AROUND, max(-man.snap.y, 0.0) + _SHOWN.y))
    aside = {
        BlockWay.DOWN: -out, BlockWay.PIN: -out, BlockWay.OUT: out, BlockWay.ON: 0,
        BlockWay.BACK: -through.toward.value,
    }.get(way, through.toward.value)  # fmt: skip
    return _path(man.snap, man.snap + Point(aside * _SHOWN.x, _SHOWN.y))


def _around(x: float, through: Lane) -> Side:
    """The end that a pull goes around: the playside one, unless his man is outside the other."""
    back = through.toward.other
    return back if x * back.value > through.edge(back) * back.value else through.toward


def _outside(x: float, behind: Side) -> Side:
    """The side of a man at ``x``; ``behind`` for one behind the ball."""
    if abs(x) < _BEHIND_BALL:
        return behind
    return Side.RIGHT if x > 0 else Side.LEFT


def meeting(
    man: Man, way: BlockWay | None, to: Point, through: Lane, taken: Sequence[Point]
) -> Point:
    """Where a man who turns up on a run meets his defender, who stands at ``to``: there; but a
    linebacker far behind the turn comes to the ball, and is met on his way, inside of the turn,
    and who turns a wide run back in comes up outside of it, and is kicked there.

    ``taken`` are the places of the other defenders, and where others of his side meet theirs.
    """
    if way is BlockWay.KICK and through.wide and to.y > _OFF_LINE:
        return _forced(man, to, through, taken)
    leads = way is BlockWay.LEAD and through.wide and to.y <= BOX_DEPTH
    if not (leads or way in (BlockWay.WRAP, BlockWay.PULL)) or to.y <= _OFF_LINE:
        return to
    out = through.toward
    turn = through.edge(out) + out.value * _AROUND if way is BlockWay.PULL else through.hole
    back = (turn - to.x) * out.value
    most = _LED_BACK if leads else max(_TURNED_BACK, _FLATTEST * to.y)
    if (turn - man.snap.x) * out.value <= 0 or back <= most:
        return to
    places = [
        Point(round(turn - out.value * inside, 3), up)
        for inside in _MEET_INSIDE
        for up in _MEET_UP
        if up < to.y
    ]
    return next((p for p in places if all(p.distance(d) >= _MEET_ROOM for d in taken)), to)


def _forced(man: Man, to: Point, through: Lane, taken: Sequence[Point]) -> Point:
    """Where a man off the line is kicked on a wide run: outside of the ball, wherever he stood.
    "How to Install Buck Sweep", coaching site."""
    out = through.toward
    turn = through.hole * out.value
    past = through.around_wing(out)
    if past is not None:
        turn = max(turn, past)
    if to.x * out.value >= turn + _MEET_OUTSIDE[0] or man.snap.x * out.value >= turn:
        return to
    places = [
        Point(round(out.value * (turn + outside), 3), up)
        for outside in _MEET_OUTSIDE
        for up in _MEET_UP
        if up <= max(to.y, min(_MEET_UP))
    ]
    return next((p for p in places if all(p.distance(d) >= _MEET_ROOM for d in taken)), to)


def hinge_path(man: Man, toward: Side) -> Path:
    """A hinge with nobody to take: a short step back, ready to turn out; from behind the ball to
    the backside."""
    out = _outside(man.snap.x, toward.other).value
    return _path(man.snap, man.snap + Point(out * 0.3, -0.9))


def beside(to: Point, man: Man, others: Sequence[Man]) -> Point:
    """His own side of a defender whom two men block."""
    if not others:
        return to
    shift = _SIDES if man.snap.x > others[0].snap.x else -_SIDES
    return Point(to.x + shift, to.y)


def climb_path(first: Point, to: Point) -> Path:
    """From the man of a double team up to the second level."""
    return _path(first, to)


def _path(start: Point, *points: Point) -> Path:
    legs = [Leg(p, _TURN) for p in points[:-1]] + [Leg(points[-1])]
    return Path(start, tuple(legs), Ending.BLOCK)
