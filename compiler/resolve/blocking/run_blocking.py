"""A run's blocking rules put to the defence it is drawn against: jobs, hits, paths, keys."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from functools import partial

from stemline.diagnostics.diagnostic import Diagnostic
from stemline.football.blocking.block_names import BLOCKS
from stemline.football.blocking.block_paths import (
    PULL_BEHIND,
    PULL_DEPTH,
    Lane,
    beside,
    block_path,
    climb_path,
    hinge_path,
    lane,
    meeting,
    shown_block,
    shown_pull,
)
from stemline.football.blocking.openings import (
    closed_on,
    moved_hole,
    next_gap,
    opened,
    round_men,
    run_clear,
    way_of,
)
from stemline.football.blocking.run_rules import PULLS, BlockWay, Rule, Task
from stemline.football.blocking.run_scheme import BlockTaken, Scheme, scheme
from stemline.football.defence.fronts import HEAD_UP, Front, front_of
from stemline.football.defence.zones import middle_of
from stemline.football.defenders import Defence
from stemline.football.field import Side
from stemline.football.offence.counting import tight_ends
from stemline.football.play import Assignment, Hit, Key, Kind, Play
from stemline.geometry.paths import Path, Point
from stemline.lineup.lined_up import LinedUp
from stemline.playbook.concepts import Body
from stemline.playbook.guards import narrowest
from stemline.playbook.run_definitions import CARRIER
from stemline.resolve.blocking.handing_off import FAKES, following, given_if, handed_on, passer_job
from stemline.resolve.blocking.keys_read import keys_read, unread
from stemline.resolve.blocking.run_words import taken_words
from stemline.resolve.blocking.screen_blocks import thrown_short
from stemline.resolve.blocking.told_blocks import (
    aim_of,
    holders_by_label,
    hole_of,
    named,
    perimeter,
    places_of_line,
    task_of,
    told_men,
)
from stemline.resolve.roles import Bound

_INSIDE_READ = 0.9
"""Yards inside of a man who is read at which a puller turns up. Common practice."""


def has_run(body: Body) -> bool:
    """Whether a body has a run in it: a run's own, or one that a pass joins."""
    return bool(body.line)


def run_side(body: Body, picture: LinedUp) -> Side | None:
    """The playside: as `toward` says, else the called side; None for a body without a run.

    A pass that joins a run and protects by its own rules has no line of the run, but its fake.
    """
    known = picture.worlds(picture.count.strong)
    said = narrowest([s for s in body.toward if s.guard.worlds & known])
    if said is None:
        return picture.called if has_run(body) or CARRIER in body.rules else None
    toward = said.value
    if toward.side is not None:
        return picture.side(toward.side)
    if toward.man != "tight end":
        letters = [m.label for m in picture.men if m.label == toward.man]
        sides = [picture.side_of(b) for b in letters or picture.count.backs[:1]]
        side = sides[0] if sides else None
    else:
        ends = {picture.side_of(label) for label in tight_ends(picture.men)}
        side = next(iter(ends)) if len(ends) == 1 else None
    if side is None:  # no such man, one on each side, or a back behind the ball
        side = picture.count.strong if toward.man == "tight end" else picture.called.other
    return side.other if toward.away else side


class RunBlocking:
    """A run's blockers: what they are told once, their blocks against one defence after another."""

    def __init__(self, play: Play, body: Body, bound: Bound, picture: LinedUp) -> None:
        self._body, self._bound, self._picture = body, bound, picture
        self._toward = picture.toward or picture.called
        self.playside = picture.toward
        told = told_men(play, body, bound, picture)
        self._told = {t.man: t for t in reversed(told)}
        self._shows_run = play.kind is Kind.PASS and not body.reactions
        tasks = [task_of(t, picture) for t in told]
        tasks += perimeter(play, body, bound, picture)
        self._tasks = [t for t in tasks if t.rules]
        hands = holders_by_label(play, bound)
        self._carrier = hands[-1] if hands else ""
        self._through = lane(
            picture.men, hole_of(play, body, bound, picture, self._carrier), self._toward
        )
        places = places_of_line(picture)
        made = replace(
            play,
            assignments=tuple(
                named(a, self._told[a.man], body, places) if a.man in self._told else a
                for a in play.assignments
            ),
            carrier="" if self._shows_run else self._carrier,
            handoffs=() if self._shows_run else hands[:-1],
        )
        self._play = following(made)
        self._together = {self._carrier, *_others(made, self._play)}
        self._found = unread(body, play)

    def against(
        self, defence: Defence | None, shows: tuple[str, ...]
    ) -> tuple[Play, tuple[Diagnostic, ...]]:
        """The play with the run's blockers, carrier, keys and unblocked men filled in."""
        front = self._front(defence) if defence else None
        keys = self._keys(front)
        play = replace(self._play, defence=defence, against=shows, keys=keys)
        if front is not None:
            play = self._blocked(play, front)
        elif play.kind is Kind.PASS:
            told = [t for t in self._tasks if t.man in self._told]
            play = _first_steps(play, told, self._through)
        if self._shows_run:
            play = faked(play, self._carrier)
        return handed_on(given_if(passer_job(play, self._through))), self._found

    def _scheme(self, front: Front, read: Iterable[str]) -> Scheme:
        men = {m.label: m for m in self._picture.men}
        throws = any(r.does == "throw" for r in self._body.reactions)
        throw = thrown_short(self._play) if self._shows_run else None
        return scheme(
            front, self._tasks, men, read, hold=self._shows_run, may_throw=throws, throw=throw
        )

    def _front(self, defence: Defence) -> Front:
        middle = middle_of(self._picture.field)
        return front_of(self._picture.men, defence, self._toward, self._through.hole, middle)

    def _blocked(self, play: Play, front: Front) -> Play:
        solved = self._scheme(front, [k.man for k in play.keys if k.man])
        through = replace(self._through, hole=self._opened(front, solved, play))
        inside = self._inside_read(front, through, play)
        made: list[Assignment] = []
        for a in play.assignments:
            block = solved.of(a.man)
            if block is not None:
                met = [hit.at for other in made for hit in other.hits]
                rule, way = self._rule_of(block), inside if block.way is BlockWay.WRAP else through
                a = _blocked(a, block, solved, play, way, a.man in self._told, met, rule)
                a = self._round_men(a, block, front)
            elif a.man in self._together and a.path is not None and not self._shows_run:
                path = moved_hole(a.path, through.hole - self._through.hole)
                bodies = [d.at for d in front.defenders]
                kicked = [
                    play.defence.defender(b.defender).at for b in solved.blocks
                    if play.defence is not None and b.way is BlockWay.KICK and b.defender
                ] if through.wide else []  # fmt: skip
                a = replace(a, path=run_clear(path, bodies, self._toward.value, kicked))
            made.append(a)
        free = solved.free
        if self._shows_run:  # nobody blocks a linebacker who covers, and nobody has to
            coming = {d.label for d in front.defenders if d.comes}
            free = tuple(label for label in free if label in coming)
        return _chased(replace(play, assignments=tuple(made), unblocked=free))

    def _inside_read(self, front: Front, through: Lane, play: Play) -> Lane:
        """The lane of who wraps: where a man of the playside line is read whom the carrier runs
        around, inside of him, by the quarterback's own aim if he has one there."""
        side, keys = self._toward.value, {key.man for key in play.keys}
        read = [d.at.x * side for d in front.first_level if d.label in keys]
        past = [x for x in read if x > HEAD_UP and (through.wide or x < through.hole * side)]
        if not past:
            return through
        most, passer = min(past) - _INSIDE_READ, play.passer
        aim = 0.0
        if passer is not None and passer.label != self._carrier:
            role = self._bound.role_of(passer.label)  # the carrier's aim is not his
            mine = (role,) if role is not None else ()
            aim = aim_of(mine, play, self._body, self._picture, passer.label) * side
        return replace(through, hole=side * (aim if 0 < aim <= most else most))

    def _rule_of(self, block: BlockTaken) -> Rule | None:
        """The rule that held for a man, as it is written."""
        rules = (r for t in self._tasks if t.man == block.man for r in t.rules)
        return next((rule for rule in rules if rule.way is block.way), None)

    def _opened(self, front: Front, solved: Scheme, play: Play) -> float:
        """x of the hole that the blocks open; outside the line as it is aimed."""
        aim = self._through.hole
        edges = self._through.edges
        if not edges[0] <= aim <= edges[1] or self._shows_run:
            return aim
        blocks: dict[str, list[Point]] = {}
        for block in solved.blocks:
            if block.defender:
                blocks.setdefault(block.defender, []).append(play.man(block.man).snap)
        bodies = [(d.at, way_of(d.at, blocks.get(d.label, ()))) for d in front.defenders]
        found = opened(aim, bodies)
        if closed_on(aim, found, bodies, self._toward.value):
            found = opened(
                next_gap(aim, [m.snap.x for m in front.line], self._toward.value), bodies
            )
        return found

    def _round_men(self, a: Assignment, block: BlockTaken, front: Front) -> Assignment:
        if a.path is None or block.way not in (*PULLS, BlockWay.LEAD, BlockWay.ARC):
            return a
        own = [h.defender for h in a.hits]
        return replace(a, path=self._clear(a.path, own, front))

    def _clear(self, path: Path, own: Sequence[str], front: Front) -> Path:
        men = [d.at for d in front.defenders if d.label not in own]
        return round_men(path, men, self._toward.value)

    def _keys(self, front: Front | None) -> tuple[Key, ...]:
        return keys_read(
            self._body, self._bound, self._picture, front,
            partial(self._scheme, front) if front is not None else None, self._given(),
        )  # fmt: skip

    def _given(self) -> str:
        """Who gets a give that names nobody, of a run whose carrier is the passer: the one man
        who fakes."""
        if self._play.passer is None or self._carrier != self._play.passer.label:
            return ""
        fakes = [a.man for a in self._play.assignments if FAKES in a.job]
        return fakes[0] if len(fakes) == 1 else ""


def _others(play: Play, told: Play) -> Iterable[str]:
    """Men whose words are others."""
    pairs = zip(play.assignments, told.assignments, strict=True)
    return (a.man for a, b in pairs if a.job != b.job)


# Assignments.


def _blocked(
    a: Assignment,
    block: BlockTaken,
    solved: Scheme,
    play: Play,
    through: Lane,
    by_rule: bool,
    taken: Sequence[Point],
    rule: Rule | None,
) -> Assignment:
    """His assignment against this front; a receiver's own words stay as they are. ``taken`` is
    where others meet their men, ``rule`` the one that held."""
    assert play.defence is not None
    man = play.man(a.man)
    holds = play.kind is Kind.PASS and man.interior and not play.carrier
    job = taken_words(block, play, holds) if by_rule else a.job
    if not block.defender:
        path = hinge_path(man, through.toward) if block.way is BlockWay.HINGE else a.path
        if holds and rule is not None and block.way in PULLS:
            path = shown_pull(man, rule, through, _depth(a.man, solved, play))
        if block.way in (BlockWay.STALK, BlockWay.CRACK):
            job = f"{a.job} Here: nobody."
        return replace(a, job=job, path=path)
    if not by_rule and block.way is BlockWay.STALK and a.job == BLOCKS["crack"].words:
        job = f"{a.job} Here nobody is inside you: stalk {block.defender}."
    first = play.defence.defender(block.defender)
    others = [d.at for d in play.defence.defenders if d is not first]
    met = meeting(man, block.way, first.at, through, [*others, *taken])
    at = beside(met, man, [play.man(m) for m in block.with_])
    how = block.way.value if block.way else "help" if block.with_ else BlockWay.CLIMB.value
    if block.with_ and block.way is not None:
        how = BlockWay.DOUBLE.value
    hits = [Hit(first.label, how, at)]
    climb = None
    if block.climb:
        second = play.defence.defender(block.climb)
        hits.append(Hit(second.label, BlockWay.CLIMB.value, second.at))
        climb = climb_path(at, second.at)
    path = block_path(man, block.way, at, through, _depth(a.man, solved, play))
    return replace(a, job=job, path=path, hits=tuple(hits), climb=climb)


def _chased(play: Play) -> Play:
    """The run with those of the look who are left to the carrier."""
    assert play.defence is not None
    if play.kind is not Kind.RUN:
        return play
    taken = {hit.defender for a in play.assignments for hit in a.hits}
    taken |= {*play.unblocked, *(key.man for key in play.keys)}
    from stemline.football.timing.reaching import reaching  # a list of calls needs no numbers

    return replace(play, chasing=reaching(play, play.defence, taken))


def _depth(man: str, solved: Scheme, play: Play) -> float:
    """The second puller, counted from the ball, runs a little deeper than the first."""
    ways = (*PULLS, BlockWay.LEAD)
    pullers = [b.man for b in solved.blocks if b.way in ways and play.man(b.man).interior]
    pullers.sort(key=lambda m: abs(play.man(m).snap.x))
    behind = pullers.index(man) if man in pullers else 0
    return PULL_DEPTH + PULL_BEHIND * min(behind, 1)


def first_steps(play: Play, body: Body, bound: Bound, picture: LinedUp, carrier: str) -> Play:
    """A pass that shows a run and keeps its own protection: who blocks by the run's words all the
    same has his first step."""
    tasks = [task_of(t, picture) for t in told_men(play, body, bound, picture)]
    toward = picture.toward or picture.called
    through = lane(picture.men, hole_of(play, body, bound, picture, carrier), toward)
    return _first_steps(play, [t for t in tasks if t.rules], through)


def _first_steps(play: Play, tasks: Iterable[Task], through: Lane) -> Play:
    """The play with the first step of each man whose words are a run's and whose man is not
    known."""
    rules = {t.man: t.rules[0] for t in tasks}

    def step(a: Assignment) -> Assignment:
        if a.man not in rules or a.path is not None or a.hits:
            return a
        return replace(a, path=shown_block(play.man(a.man), rules[a.man], through))

    return replace(play, assignments=tuple(map(step, play.assignments)))


def faked(play: Play, carrier: str) -> Play:
    """A run that is only shown: its carrier goes to the line, and no further, but for one who has
    a route behind it."""
    made = tuple(
        _faked(a) if a.man == carrier and a.role == CARRIER else a for a in play.assignments
    )
    return replace(play, assignments=made)


def _faked(a: Assignment) -> Assignment:
    path = replace(a.path, legs=a.path.legs[:-1]) if a.path and len(a.path.legs) > 1 else a.path
    return replace(a, job=a.job.replace("Take the ball to", "Fake the run to"), path=path)
