"""A pass play's protection worked out: each blocker's words, his man, his way to him, who is free.

Without a look there are only words. Against one every rusher has his owner or comes free.
"""

from __future__ import annotations

from collections.abc import Container, Mapping, Sequence
from dataclasses import replace

from stemline.diagnostics.diagnostic import Diagnostic
from stemline.football.blocking.pass_sets import (
    SCREEN_CATCH,
    edge_path,
    meet_path,
    release_path,
    rule_words,
    scan_path,
    set_path,
    taken_words,
)
from stemline.football.blocking.protecting import (
    Blocker,
    How,
    ProtectionRule,
    Rusher,
    RushTaken,
    pick_up,
    unblocked,
)
from stemline.football.conditions import always
from stemline.football.defence.fronts import front_of
from stemline.football.defence.zones import middle_of
from stemline.football.defenders import Defence, Level
from stemline.football.field import Side
from stemline.football.play import Assignment, Branch, Hit, Hot, Play, Read
from stemline.geometry.paths import Path
from stemline.lineup.lined_up import LinedUp
from stemline.playbook.concepts import Body, Job, RouteJob
from stemline.playbook.playbook import Playbook
from stemline.playbook.protection_definitions import HotDef, Protection
from stemline.playbook.said import Said, SideWord
from stemline.read.ready_protections import ready
from stemline.resolve.assignments import assignments, parting
from stemline.resolve.blocking.handing_off import key_words
from stemline.resolve.blocking.keys_read import keys_read, unread
from stemline.resolve.blocking.protectors import Protector, Protectors, RushSeen
from stemline.resolve.blocking.run_blocking import faked, first_steps
from stemline.resolve.blocking.screen_blocks import ScreenBlocks
from stemline.resolve.roles import Bound, bind


def find(book: Playbook, name: str) -> Protection | None:
    """The playbook's own protection of that name, else the ready one."""
    key = name.casefold()
    return book.protections.get(key) or ready(book.receivers).get(key)


_HOT = "hot"
"""The one role in a body that is made for a hot, or for who checks and goes out."""


class PassBlocking:
    """A pass's blockers: what they are told once, their blocks against one defence after another.

    ``faker`` is the man who shows a run, by label: None for a pass that shows none.
    """

    def __init__(
        self,
        play: Play,
        body: Body,
        protection: Protection | None,
        bound: Bound,
        picture: LinedUp,
        faker: str | None,
    ) -> None:
        if faker is not None:
            play = first_steps(play, body, bound, picture, faker)
        self._play, self._faker = play, faker
        self._body, self._bound, self._picture = body, bound, picture
        self._wide = ScreenBlocks(play, body, bound, picture)
        self._men: Protectors | None = None
        self._found = unread(body, play)
        self.playside = picture.toward
        if protection is None or protection.broken:
            return
        self._men = Protectors(play, body, protection, bound, picture)
        self.playside = picture.toward or self._men.toward
        self._play = _told(play, protection, self._men)
        if not bound.found:
            # A role of the concept without its man is one cause, and reported already.
            self._found += tuple(self._men.found)

    def against(
        self, defence: Defence | None, shows: tuple[str, ...]
    ) -> tuple[Play, tuple[Diagnostic, ...]]:
        """The play with its protection's jobs; against a look with every block, and the rushers
        whom nobody takes in ``unblocked``."""
        play = replace(self._play, defence=defence, against=shows)
        if self._men is not None and defence is not None:
            play = _against(play, defence, self._men)
        if defence is not None:
            play = self._wide.against(play, defence)
        if self._body.keys:
            play = _keyed(play, self._body, self._bound, self._picture)
        return (play if self._faker is None else faked(play, self._faker)), self._found


def _keyed(play: Play, body: Body, bound: Bound, picture: LinedUp) -> Play:
    """The pass with the man who is read instead of an order, and what the quarterback does off him:
    seen from the side to which the first of the throws goes."""
    thrown = (bound.man(r.to) for r in body.reactions if r.does == "throw")
    paths = [play.assignment(man).path for man in thrown if man]
    sides = (Side.at(path.end.x) for path in paths if path is not None)
    toward = picture.toward or next(filter(None, sides), picture.called)
    front = None
    if play.defence is not None:
        front = front_of(picture.men, play.defence, toward, middle=middle_of(picture.field))
    play = replace(play, keys=keys_read(body, bound, picture, front, None))
    words, passer = " ".join(key_words(play)), play.passer
    if passer is None or not words:
        return play
    mine = play.assignment(passer.label)
    told = replace(mine, job=f"{words} {mine.job}".rstrip())
    jobs = tuple(told if a is mine else a for a in play.assignments)
    return replace(play, assignments=jobs)


def rushers(defence: Defence) -> tuple[Rusher, ...]:
    """Everybody who comes: those whose duty it is, and men of the front who have none."""
    return tuple(
        Rusher(d.label, d.at, d.duty.to if d.duty and d.duty.to else d.at, d.level is Level.LINE)
        for d in defence.defenders
        if d.comes
    )


def _told(play: Play, protection: Protection, men: Protectors) -> Play:
    """Words for everybody who stays in, and the way out in front of a screen."""
    jobs: dict[str, Assignment] = {}
    ends, scanning = _ends(men), _scans(play, men)
    for man in men.men:
        before, route = play.assignment(man.blocker.label), men.way_out(man)
        if route is not None:
            run = _goes_out(play, man, route, men)
            before = replace(before, path=run.path, marks=run.marks, waits=run.waits)
        if not man.kept:
            rule, edge = man.blocker.rule, man.edge
            out = route.words.partition(", then ")[2] if route is not None else ""
            words = rule_words(rule, men.way, man.wants, protection.point, edge, out or "out")
            before = replace(before, role=before.role or man.role, job=words)
        elif man.goes and man.wants and not before.job.startswith("Check the "):
            first = ", then ".join(f"the {who}" for who in man.wants)
            before = replace(before, job=before.job.replace("Check", f"Check {first}", 1))
        if not man.goes and man.blocker.rule.at_edge and not man.blocker.in_line:
            before = replace(before, path=_path(before.path, man, None, men.toward, ends))
        if before.path is None:
            before = replace(before, path=scanning.get(man.blocker.label))
        says = men.told(man)
        says = tuple(dict.fromkeys((*before.says, *says)))
        waits = 0.0 if man.goes and before.waits is None else before.waits
        jobs[man.blocker.label] = replace(before, says=says, waits=waits)
    hots = tuple((hot, _hot_man(hot, men)) for hot in protection.hot)
    for label, way in _hot_ways(play, hots, men).items():
        before = jobs.get(label, play.assignment(label))
        jobs[label] = replace(before, branches=(*before.branches, way))
    for label, path in _releases(play, men).items():
        jobs[label] = replace(jobs[label], path=path)
    slides = any(m.blocker.rule.by_gap for m in men.men)
    return replace(
        play,
        assignments=tuple(jobs.get(a.man, a) for a in play.assignments),
        toward=men.toward if slides else play.toward,
        hot=tuple(Hot(h.throws, h.given, (man,) if man else (), h.span) for h, man in hots),
        protection_words=protection.words,
    )


def _scans(play: Play, men: Protectors) -> dict[str, Path]:
    """Where each looks from who scans from behind the line and has no way of his own, by label:
    on his side of the ball; of two the second has the other side."""
    paths: dict[str, Path] = {}
    taken: set[Side] = set()
    for man in men.men:
        label, at = man.blocker.label, man.blocker.at
        scans = man.blocker.rule is ProtectionRule.SCAN and not man.blocker.in_line
        if not scans or play.assignment(label).path is not None:
            continue
        side = Side.at(at.x) or man.blocker.side or men.picture.called
        side = side.other if side in taken else side
        taken.add(side)
        path = scan_path(at, side)
        if path is not None:
            paths[label] = path
    return paths


def _releases(play: Play, men: Protectors) -> dict[str, Path]:
    """Linemen who go out in front of a screen, the one nearest to it first; to the called side
    where nobody is read, as on the page of a protection."""
    caught = next((read.at.x for read in play.reads if read.at.x), None)
    side = (Side.at(caught) if caught else men.launch) or men.picture.called
    out = [m.blocker for m in men.men if m.blocker.rule is ProtectionRule.RELEASE]
    out.sort(key=lambda b: -b.at.x * side.value)
    target = caught or SCREEN_CATCH
    return {b.label: release_path(b, side, n, target) for n, b in enumerate(out)}


def _hot_man(hot: HotDef, men: Protectors) -> str:
    """The label of the man who is thrown to: a role of the concept, or who stands where the text
    says; "" for nobody here."""
    for name in (hot.throws, hot.man):
        if label := men.bound.men.get(name.casefold()):
            return label
    if hot.rule is None:
        return ""
    made = bind(Body(rules={_HOT: (hot.rule,)}), men.picture, men.before.call.spoken)
    return made.men.get(_HOT, "")


def _hot_ways(play: Play, hots: Sequence[tuple[HotDef, str]], men: Protectors) -> dict[str, Branch]:
    """What each man runs for whom a hot names a route, by label: beside his own way, drawn thin.
    Who blocks runs none. ``hots`` are each with the label of its man, "" for nobody."""
    busy = {m.blocker.label for m in men.men if not m.goes}
    ways: dict[str, Branch] = {}
    for hot, label in hots:
        if hot.job is None or not label or label in busy or label in ways:
            continue
        run = _run(play, label, hot.job.value, men)
        if run.path is not None:
            looks = f"if {hot.given or 'one more comes than we block'}"
            leaves = parting(play.assignment(label).path, run.path)
            ways[label] = Branch(
                looks, run.path, f"Hot: {run.job[:1].lower()}{run.job[1:]}", run.marks, leaves
            )
    return ways


def _goes_out(play: Play, man: Protector, route: RouteJob, men: Protectors) -> Assignment:
    """The way of a man who checks: first to the side on which he looks, and out on it where his
    route says no other."""
    label, side = man.blocker.label, men.looks_to(man)
    goes = _run(play, label, route, men)
    if side is None:
        return goes
    there = replace(route, way=SideWord.LEFT if side is Side.LEFT else SideWord.RIGHT)
    looks = _run(play, label, there, men)
    if route.way is None:
        return looks
    if looks.path is None or goes.path is None or not man.blocker.rule.at_edge:
        return goes
    legs = (*looks.path.legs[:1], *goes.path.legs[1:])
    return replace(goes, path=replace(goes.path, legs=legs))


def _run(play: Play, label: str, job: RouteJob, men: Protectors) -> Assignment:
    """A man's way on a route that the protection has him run."""
    said = Said[Job](job, always(men.picture.receivers), men.protection.span)
    body, bound = Body(jobs={_HOT: (said,)}), Bound(men={_HOT: label})
    made, _ = assignments(body, bound, men.picture, {}, (), play.call.spoken)
    return next(a for a in made if a.man == label)


def _against(play: Play, defence: Defence, men: Protectors) -> Play:
    rush = rushers(defence)
    seen = RushSeen(men, defence)
    blockers = [seen.blocker(m) for m in men.men]
    point = seen.described(men.protection.point, None)
    taken = pick_up(blockers, rush, men.toward, point, men.picture.called)
    rusher = {r.label: r for r in rush}
    mine = {t.blocker: t for t in reversed(taken)}
    ends = _ends(men)
    jobs: dict[str, Assignment] = {}
    for man in men.men:
        told = play.assignment(man.blocker.label)
        jobs[told.man] = _blocked(told, man, mine.get(told.man), rusher, men.toward, ends)
    busy = {label for label, job in jobs.items() if job.hits}
    kept = busy & {man.blocker.label for man in men.men if man.goes}
    return replace(
        play,
        hot=tuple(hot for hot in play.hot if not busy & {*hot.men}),
        assignments=tuple(jobs.get(a.man, a) for a in play.assignments),
        reads=_without(play.reads, kept),
        pressure=_without(play.pressure, kept),
        unblocked=tuple(r.label for r in unblocked(rush, taken)),
    )


def _blocked(
    told: Assignment,
    man: Protector,
    taken: RushTaken | None,
    rush: Mapping[str, Rusher],
    toward: Side | None,
    ends: Sequence[Blocker],
) -> Assignment:
    """One man's job against the look: whom he takes, in words and on the field."""
    rusher = rush[taken.rusher] if taken is not None else None
    hits: tuple[Hit, ...] = ()
    if rusher is not None and taken is not None and taken.how is not How.LET_BY:
        hits = (Hit(rusher.label, taken.how.value, rusher.at),)
    words = taken_words(taken, man.blocker.rule)
    if man.kept:
        words = told.job if rusher is None else f"{told.job} Here: {_his(man, rusher)}."
    meets = rusher if hits or not man.goes else None
    made = replace(told, job=words, hits=hits, path=_path(told.path, man, meets, toward, ends))
    # Who has a rusher runs nothing on this snap, and has nothing to wait for.
    return replace(made, branches=(), marks=(), waits=None) if man.goes and hits else made


def _his(man: Protector, rusher: Rusher) -> str:
    """The rusher of a man whose own words stand; who has a route is told that he runs none."""
    return f"block {rusher.label}, no route" if man.goes else rusher.label


def _without(reads: Sequence[Read], kept: Container[str]) -> tuple[Read, ...]:
    """Reads against a look: who has picked up a rusher is not thrown to on this snap."""
    return tuple(
        replace(read, men=tuple(man for man in read.men if man not in kept))
        if any(man in kept for man in read.men)
        else read
        for read in reads
    )


def _path(
    before: Path | None,
    man: Protector,
    rusher: Rusher | None,
    toward: Side | None,
    ends: Sequence[Blocker],
) -> Path | None:
    """A screen's way out stays, and a check's route where nobody comes: who has a rusher is no
    receiver on this snap. A man who scans and has nobody stays too."""
    blocker = man.blocker
    if blocker.rule is ProtectionRule.RELEASE or (man.goes and rusher is None):
        return before
    if blocker.in_line:
        return set_path(blocker, rusher, toward, blocker in ends)
    if rusher is not None:
        return meet_path(blocker.at, rusher)
    if blocker.rule.at_edge and blocker.side is not None and ends:
        end = ends[-1 if blocker.side is Side.RIGHT else 0]
        return edge_path(blocker.at, end.at, blocker.side)
    return before


def _ends(men: Protectors) -> tuple[Blocker, ...]:
    """The last men of the line who stay in, left and right."""
    line = sorted((m.blocker for m in men.men if m.blocker.in_line), key=lambda b: b.at.x)
    return (line[0], line[-1]) if line else ()
