"""Who takes whom when the quarterback throws: rules of protection worked out against a rush.

A rush is a list of men with the places they come through. Blockers in the line own a gap (slide,
reach), a man, or the gap they close behind the quarterback (hinge); those behind it take an edge or
scan. Every rusher gets one owner at most; what is left over comes free.

Order of service: gaps first (Wilmesherr, "Slide Protection Schemes and Technique", Grossmont
College); then the man side, its guard the first on the line and its tackle the second (Olineskills,
"Summer OTAs week 5", 2018); an uncovered man-side guard joins the slide, and the back reads two
linebackers inside out (Blitzology, "Understanding 1/2 slide protection", 2010). Idle linemen post
back to the gap behind them (Gridiron R&D, "Six-man slide pass protection", 2015).
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from enum import Enum

from stemline.football.field import Side
from stemline.geometry.paths import Point


class ProtectionRule(Enum):
    """What a man of a protection is told to do."""

    SLIDE = "slide"
    MAN = "man"
    BIG = "big on big"
    REACH = "reach"
    HINGE = "hinge"
    RELEASE = "set and release"
    EDGE = "edge"
    SCAN = "scan"
    CHECK = "check then release"
    CHECK_EDGE = "check edge then release"

    @property
    def by_gap(self) -> bool:
        return self in (ProtectionRule.SLIDE, ProtectionRule.REACH)

    @property
    def by_man(self) -> bool:
        return self in (ProtectionRule.MAN, ProtectionRule.BIG, ProtectionRule.RELEASE)

    @property
    def scans(self) -> bool:
        return self in (ProtectionRule.SCAN, ProtectionRule.CHECK)

    @property
    def checks(self) -> bool:
        """Whether he goes out when nobody comes."""
        return self in (ProtectionRule.CHECK, ProtectionRule.CHECK_EDGE)

    @property
    def at_edge(self) -> bool:
        return self in (ProtectionRule.EDGE, ProtectionRule.CHECK_EDGE)


class How(Enum):
    """How a rusher is taken; HELP is a second man on one who has his owner already."""

    GAP = "gap"
    MAN = "man"
    HINGE = "hinge"
    EDGE = "edge"
    SCAN = "scan"
    POST = "post back"
    LET_BY = "let by"
    HELP = "help"


@dataclass(frozen=True)
class Blocker:
    """A man who stays in. ``in_line`` for one who stands between the ends of the line; ``side``
    the edge he takes or the side he scans first; ``wants`` the rushers he looks at first."""

    label: str
    at: Point
    rule: ProtectionRule
    in_line: bool
    side: Side | None = None
    wants: tuple[str, ...] = ()


@dataclass(frozen=True)
class Rusher:
    """``aim`` is the place he comes through at the line; ``big`` for a man of the front line."""

    label: str
    at: Point
    aim: Point
    big: bool


@dataclass(frozen=True)
class RushTaken:
    """``blocker`` takes ``rusher``, by label."""

    blocker: str
    rusher: str
    how: How

    @property
    def owns(self) -> bool:
        return self.how is not How.HELP


# Common practice, no published source. Yards.
HEAD_UP = 0.3
"""A rusher within this of a man's nose is on him."""
COVER = 0.65
"""A big man this near to a lineman's nose covers him: half a split of the usual line."""
MAN_REACH = 3.5
"""The farthest a lineman goes to a man who is his."""
HELP_REACH = 1.6
"""The farthest a lineman leans to help his neighbour."""
CROSS_REACH = 4.8
"""How far across from where he stands a scanning back still gets to a rusher on the slide's side:
from beside the quarterback not to the far edge, from behind the ball to either."""
_BIG_LEFT, _POINT_LEFT, _OTHER_LEFT, _INSIDE = 60.0, 30.0, 12.0, 6.0
"""Ranks, no yards: the line would rather have a big man than the linebacker counted with it, him
than another, and of those the one at the ball."""


def pick_up(
    blockers: Sequence[Blocker],
    rushers: Sequence[Rusher],
    toward: Side | None,
    point: str = "",
    called: Side = Side.RIGHT,
) -> tuple[RushTaken, ...]:
    """Every block of the protection, owners before helpers; the order of the input is no matter.

    ``toward`` is the side the line slides to, ``point`` the linebacker whom big on big counts with
    the line ("" for none). Between two who are alike the side that is ``called`` decides.
    """
    if called is Side.LEFT:
        blockers = [_blocker_mirrored(b) for b in blockers]
        rushers = [replace(r, at=r.at.mirrored(), aim=r.aim.mirrored()) for r in rushers]
        toward = toward.other if toward is not None else None
    work = _served(blockers, rushers, toward, point, {})
    kept = work.kept_for_edges()
    if kept:
        work = _served(blockers, rushers, toward, point, kept)
    return tuple(work.taken)


def _served(
    blockers: Sequence[Blocker],
    rushers: Sequence[Rusher],
    toward: Side | None,
    point: str,
    kept: Mapping[str, str],
) -> _ProtectionSoFar:
    """Everybody served in order; ``kept`` are rushers whom edge men have beforehand."""
    work = _ProtectionSoFar(blockers, rushers, toward, point)
    work.keep(kept)
    work.gaps()
    work.hinges()
    work.men()
    work.edges()
    work.scans()
    work.posts()
    work.idle_edges()
    work.helps()
    return work


def _blocker_mirrored(b: Blocker) -> Blocker:
    return replace(b, at=b.at.mirrored(), side=b.side.other if b.side is not None else None)


def unblocked(rushers: Iterable[Rusher], taken: Iterable[RushTaken]) -> tuple[Rusher, ...]:
    """Those whom nobody owns, from the ball outward."""
    owned = {t.rusher for t in taken if t.owns}
    return tuple(sorted((r for r in rushers if r.label not in owned), key=_inside_out))


def _inside_out(r: Rusher) -> tuple[float, float, str]:
    return round(abs(r.aim.x), 3), round(r.aim.x, 3), r.label


class _ProtectionSoFar:
    """The protection half done: who is still free, on both sides."""

    def __init__(
        self,
        blockers: Sequence[Blocker],
        rushers: Sequence[Rusher],
        toward: Side | None,
        point: str,
    ) -> None:
        self.line = sorted((b for b in blockers if b.in_line), key=lambda b: (b.at.x, b.label))
        behind = [b for b in blockers if not b.in_line]
        self.behind = sorted(behind, key=lambda b: (abs(b.at.x), b.at.x, b.label))
        self.rushers = sorted(rushers, key=_inside_out)
        self.toward = toward
        self.point = point
        self.taken: list[RushTaken] = []
        self._places = {b.label: n for n, b in enumerate(self.line)}
        self._lanes = {r.label: self._lane(r) for r in self.rushers}
        xs = [b.at.x for b in self.line]
        self._gaps = {label: bisect_left(xs, lane) for label, lane in self._lanes.items()}

    def take(self, blocker: Blocker, rusher: Rusher, how: How) -> None:
        self.taken.append(RushTaken(blocker.label, rusher.label, how))

    @property
    def free(self) -> list[Rusher]:
        """Rushers without an owner, from the ball outward."""
        owned = {t.rusher for t in self.taken if t.owns}
        return [r for r in self.rushers if r.label not in owned]

    def idle(self, blocker: Blocker) -> bool:
        return all(t.blocker != blocker.label for t in self.taken)

    def gap(self, r: Rusher) -> int:
        """The gap he comes through: how many of the line are to its left."""
        return self._gaps[r.label]

    def lane(self, r: Rusher) -> float:
        return self._lanes[r.label]

    def place(self, b: Blocker) -> int:
        """Which man of the line he is, from the left."""
        return self._places[b.label]

    def _lane(self, r: Rusher) -> float:
        """The x of his rush. A big man head-up on a lineman is that man's, whichever way he goes:
        he counts in the gap on the slide's side of him."""
        lean = self.toward.value * HEAD_UP if self.toward is not None else 0.0
        on = any(abs(b.at.x - r.at.x) <= HEAD_UP for b in self.line)
        return (r.at.x if r.big and on else r.aim.x) + lean

    def neighbours(self, r: Rusher) -> list[Blocker]:
        """The man he is on and the men on both sides of his gap, the nearer first."""
        on = [i for i, b in enumerate(self.line) if abs(b.at.x - r.aim.x) <= HEAD_UP]
        beside = {on[0] - 1, on[0], on[0] + 1} if on else {self.gap(r) - 1, self.gap(r)}
        near = [self.line[i] for i in beside if 0 <= i < len(self.line)]
        return sorted(near, key=lambda b: (round(abs(b.at.x - r.aim.x), 3), round(b.at.x, 3)))

    def gaps(self) -> None:
        """Slide and reach: each man the gap on the slide's side of him. Two through one gap push
        the slide out by a man, as far as there are men who have nobody."""
        if self.toward is None:
            return
        sliders = [b for b in self.line if b.rule.by_gap]
        sliders = sorted(sliders + self._joining(sliders), key=self.place)
        for b, r in _matched(sliders, self.free, self.lane, self._slid, self._left_over):
            self.take(b, r, How.GAP)

    def _joining(self, sliders: Sequence[Blocker]) -> list[Blocker]:
        """Man-side linemen beside the slide who join it: nobody is on them, and the big men of
        their side leave as many of them over."""
        assert self.toward is not None
        if not sliders:
            return []
        way = self.toward.value
        men = [b for b in self.line if b.rule is ProtectionRule.MAN]
        men = sorted((b for b in men if self._behind(b, sliders)), key=lambda b: -b.at.x * way)
        last = min(self.place(b) * way for b in sliders) * way + (way < 0)
        theirs = [r for r in self.free if r.big and (self.gap(r) - last) * way <= 0]
        over = max(len(men) - len(theirs), 0)
        joining: list[Blocker] = []
        for b in men[:over]:
            if any(r.big and abs(r.at.x - b.at.x) <= COVER for r in self.rushers):
                break
            joining.append(b)
        return joining

    def _behind(self, b: Blocker, sliders: Sequence[Blocker]) -> bool:
        """Whether he stands on the side that the slide leaves."""
        assert self.toward is not None
        return all((s.at.x - b.at.x) * self.toward.value > 0 for s in sliders)

    def _slid(self, b: Blocker, r: Rusher) -> float | None:
        """What his gap, or one of the next two out, costs a slider; None for any other."""
        assert self.toward is not None
        mine = self.place(b) + (self.toward is Side.RIGHT)
        push = (self.gap(r) - mine) * self.toward.value
        if push not in (0, 1, 2) or abs(r.aim.x - b.at.x) > MAN_REACH:
            return None
        return None if self._around(b, r) else float(push)

    def _around(self, b: Blocker, r: Rusher) -> bool:
        """Whether a slider would go around a man of the line who does not slide with him."""
        assert self.toward is not None
        way = self.toward.value
        others = [x.at.x * way for x in self.line if not x.rule.by_gap and x is not b]
        return any(b.at.x * way < x < r.aim.x * way for x in others)

    def hinges(self) -> None:
        """Inside out: the gap inside first, else the one outside, so that nobody comes behind."""
        for b in sorted(self.line, key=lambda b: (abs(b.at.x), b.label)):
            if b.rule is not ProtectionRule.HINGE:
                continue
            at = self.place(b)
            inside, outside = (at, at + 1) if b.at.x > 0 else (at + 1, at)
            ahead = [r for gap in (inside, outside) for r in self.free if self.gap(r) == gap]
            if ahead:
                self.take(b, ahead[0], How.HINGE)

    def men(self) -> None:
        """Man blockers and rushers matched in order across the line, big men first; whom a man
        behind it is told to look at first is no longer the line's."""
        blockers = [b for b in self.line if b.rule.by_man and self.idle(b)]
        helped = self._named()
        theirs = [r for r in self.free if r.label not in helped]
        for b, r in _matched(blockers, theirs, _place, self._on, self._left_over):
            self.take(b, r, How.LET_BY if b.rule is ProtectionRule.RELEASE else How.MAN)

    def _named(self) -> set[str]:
        """The first rusher of those each scanning man is told by name; the ``point`` is the
        line's."""
        free = {r.label for r in self.free} - {self.point}
        named: set[str] = set()
        for b in self.behind:
            his = [label for label in b.wants if label in free - named]
            named |= set(his[:1]) if b.rule.scans else set()
        return named

    def _left_over(self, r: Rusher) -> float:
        """What it costs to leave him to the backs: of linebackers, more for one at the ball."""
        if r.big:
            return _BIG_LEFT
        inside = max(0.0, _INSIDE - 2 * abs(r.aim.x))
        return inside + (_POINT_LEFT if r.label == self.point else _OTHER_LEFT)

    def _on(self, b: Blocker, r: Rusher) -> float | None:
        """What a rusher costs a man-side lineman; None for one who is not his.

        Beside a slide an uncovered lineman joins it: of those who are no big men he takes only
        one through the gap on the slide's side of him. The back reads the others.
        """
        away = abs(b.at.x - _place(r))
        if away > MAN_REACH or self._past_neighbour(b, r):
            return None
        if not r.big:
            slides = self.toward is not None and any(x.rule.by_gap for x in self.line)
            at = self.place(b)
            inside = self.gap(r) == (at + 1 if self.toward is Side.RIGHT else at)
            if not (inside if slides else b in self.neighbours(r)):
                return None
        return away

    def edges(self) -> None:
        """The first rusher outside the line on the man's side."""
        for b in [*self.line, *self.behind]:
            if b.rule.at_edge and b.side is not None and self.idle(b):
                beyond = [r for r in self.free if self._outside(r, b)]
                if beyond:
                    self.take(b, beyond[0], How.EDGE)

    def _past_neighbour(self, b: Blocker, r: Rusher) -> bool:
        """Whether he stands outside the man next to ``b``, past his outside shoulder."""
        way = 1 if _place(r) > b.at.x else -1
        at = self.place(b) + way
        if b.at.x * way < -HEAD_UP or not 0 <= at < len(self.line):
            return False
        return (_place(r) - self.line[at].at.x) * way > COVER

    def keep(self, kept: Mapping[str, str]) -> None:
        """Rushers by the edge man who has each of them before the line is served."""
        rushers = {r.label: r for r in self.rushers}
        for b in [*self.line, *self.behind]:
            if b.label in kept:
                self.take(b, rushers[kept[b.label]], How.EDGE)

    def kept_for_edges(self) -> dict[str, str]:
        """The outermost rusher of each edge man whom the line has left with nobody: where two come
        outside the last lineman but him, or the one stands on him who is himself in the line."""
        kept: dict[str, str] = {}
        owned = {t.blocker for t in self.taken if t.owns}
        for b in [*self.line, *self.behind]:
            if not b.rule.at_edge or b.side is None or b.label in owned:
                continue
            beyond = [r for r in self.rushers if self._outside(r, b)]
            beyond = [r for r in beyond if r.label not in kept.values()]
            if not beyond:
                continue
            last = beyond[-1]
            nearest = min(self.line, key=lambda x: abs(x.at.x - _place(last)), default=None)
            if len(beyond) > 1 or nearest is b:
                kept[b.label] = last.label
        return kept

    def _outside(self, r: Rusher, b: Blocker) -> bool:
        assert b.side is not None
        inner = [x.at.x * b.side.value for x in self.line if x is not b]
        return r.aim.x * b.side.value > max(inner, default=0.0) - HEAD_UP

    def scans(self) -> None:
        """Named men first, then inside out; a back does not get across to the far edge."""
        for b in self.behind + self.line:
            if not b.rule.scans:
                continue
            free = self.free
            if b.side is not None:  # of two as near to the ball, the one on his side
                side = b.side.value
                free.sort(key=lambda r: (_inside_out(r)[0], -r.aim.x * side, r.label))
            named = [r for label in b.wants for r in free if r.label == label]
            ahead = named + [r for r in free if r not in named and self._within(r, b)]
            if ahead:
                self.take(b, ahead[0], How.SCAN)

    def _within(self, r: Rusher, b: Blocker) -> bool:
        return b.side is None or (b.at.x - r.aim.x) * b.side.value <= CROSS_REACH

    def posts(self) -> None:
        """A rusher through the gap beside a lineman who has nobody: he posts back and has him."""
        for r in self.free:
            for b in self.neighbours(r):
                if b.rule is not ProtectionRule.RELEASE and self.idle(b):
                    self.take(b, self._passed_on(b, r), How.POST)
                    break
        for r in self.free:
            self._passed_out(r)

    def _passed_on(self, b: Blocker, r: Rusher) -> Rusher:
        """Whom ``b`` takes when ``r`` is wider than a man's whom someone from behind has on that
        side: the inner one, and the wider is passed on, so that two blockers do not cross."""
        rushers = {x.label: x for x in self.rushers}
        for n, t in enumerate(self.taken):
            inner = rushers[t.rusher]
            same = inner.aim.x * r.aim.x > 0 and abs(inner.aim.x) < abs(r.aim.x)
            if t.how in (How.EDGE, How.SCAN) and same and b in self.neighbours(inner):
                self.taken[n] = replace(t, rusher=r.label)
                return inner
        return r

    def _passed_out(self, r: Rusher) -> None:
        """A man beside his gap takes him and passes his own to the next lineman, who has nobody:
        nobody comes free inside while a lineman stands by."""
        rushers = {x.label: x for x in self.rushers}
        for b in self.neighbours(r):
            own = next(
                (n for n, t in enumerate(self.taken) if t.blocker == b.label and t.owns), None
            )
            if own is None or b.rule is ProtectionRule.RELEASE:
                continue
            his = rushers[self.taken[own].rusher]
            for other in self.neighbours(his):
                outward = abs(other.at.x) > abs(b.at.x) and abs(his.aim.x) > abs(r.aim.x)
                if outward and other.rule is not ProtectionRule.RELEASE and self.idle(other):
                    self.taken[own] = RushTaken(b.label, r.label, How.POST)
                    self.take(other, his, How.POST)
                    return

    def idle_edges(self) -> None:
        """Nobody came off his edge: the man there helps inside, on his own side."""
        for b in self.behind:
            if b.rule.at_edge and b.side is not None and self.idle(b):
                near = [r for r in self.free if r.aim.x * b.side.value >= 0]
                if near:
                    self.take(b, near[-1], How.SCAN)

    def helps(self) -> None:
        """A lineman with nobody leans on the nearest big man, one helper for each of them."""
        for b in self.line:
            if b.rule is ProtectionRule.RELEASE or not self.idle(b):
                continue
            alone = [r for r in self.rushers if r.big and self._alone(r)]
            near = [r for r in alone if abs(_place(r) - b.at.x) <= HELP_REACH]
            if near:
                self.take(b, min(near, key=lambda r: round(abs(_place(r) - b.at.x), 3)), How.HELP)

    def _alone(self, r: Rusher) -> bool:
        """Whether one man has him, and only one."""
        return [t.how is How.HELP for t in self.taken if t.rusher == r.label] == [False]


Pairs = tuple[tuple[Blocker, Rusher], ...]


def _matched(
    blockers: Sequence[Blocker],
    rushers: Sequence[Rusher],
    place: Callable[[Rusher], float],
    cost: Callable[[Blocker, Rusher], float | None],
    left_over: Callable[[Rusher], float],
) -> Pairs:
    """Blockers and rushers in pairs that do not cross, at the least cost: what each pair costs,
    and what it costs to leave a rusher over. ``blockers`` stand from left to right."""
    men = sorted(rushers, key=lambda r: (round(place(r), 3), r.label))
    left = [left_over(r) for r in men]
    # best[j] is the cheapest for the men from j on and the blockers looked at so far, from the
    # right; of several as cheap the first stands: the rusher left over, the blocker, the pair.
    best: list[tuple[float, Pairs]] = [(sum(left[j:]), ()) for j in range(len(men) + 1)]
    for blocker in reversed(blockers):
        before, best = best, [(0.0, ())] * len(best)
        for j in reversed(range(len(men))):
            rest, pairs = best[j + 1]
            options = [(rest + left[j], pairs), before[j]]
            own = cost(blocker, men[j])
            if own is not None:
                rest, pairs = before[j + 1]
                options.append((rest + own, ((blocker, men[j]), *pairs)))
            best[j] = min(options, key=lambda option: round(option[0], 6))
    return best[0][1]


def _place(r: Rusher) -> float:
    """Where a lineman finds him: a man of the front where he stands, another where he comes."""
    return r.at.x if r.big else r.aim.x
