"""A pass play's protection worked out: each blocker's words, his man, his way to him, who is free.

Without a look there are only words. Against one every rusher has his owner or comes free.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from stemline.diagnostics.model import Diagnostic
from stemline.football.defence import Defence, Level
from stemline.football.field import Side
from stemline.football.pass_sets import (
    edge_path,
    meet_path,
    release_path,
    rule_words,
    set_path,
    taken_words,
)
from stemline.football.play import Assignment, Hit, Hot, Play
from stemline.football.protecting import Blocker, How, Rule, Rusher, Taken, pick_up, unblocked
from stemline.paths import Path
from stemline.resolve.binding import Bound, Picture
from stemline.resolve.definitions import Body, Playbook
from stemline.resolve.protection_definitions import Protection
from stemline.resolve.protectors import Protector, Protectors
from stemline.resolve.ready_protections import ready


def find(book: Playbook, name: str) -> Protection | None:
    """The playbook's own protection of that name, else the ready one."""
    key = name.casefold()
    return book.protections.get(key) or ready(book.receivers).get(key)


def protect_up(
    play: Play, body: Body, book: Playbook, bound: Bound, picture: Picture
) -> tuple[Play, tuple[Diagnostic, ...]]:
    """``play`` with its protection's jobs; against a look with every block, and the rushers whom
    nobody takes in ``unblocked``."""
    protection = find(book, play.protection) if play.protection else None
    if protection is None or protection.broken:
        return play, ()
    men = Protectors(play, body, protection, bound, picture)
    made = _told(play, protection, men, bound)
    if play.defence is not None:
        made = _against(made, play.defence, protection, men)
    # A role of the concept without its man is one cause, and reported already.
    return made, () if bound.found else tuple(men.found)


def rushers(defence: Defence) -> tuple[Rusher, ...]:
    """Everybody who comes: those whose duty it is, and men of the front who have none."""
    return tuple(
        Rusher(d.label, d.at, d.duty.to if d.duty and d.duty.to else d.at, d.level is Level.LINE)
        for d in defence.defenders
        if d.rushes or (d.duty is None and d.level is Level.LINE)
    )


def _told(play: Play, protection: Protection, men: Protectors, bound: Bound) -> Play:
    """Words for everybody who stays in, and the way out in front of a screen."""
    jobs: dict[str, Assignment] = {}
    for man in men.men:
        before = play.assignment(man.blocker.label)
        if not man.kept:
            words = rule_words(man.blocker.rule, men.way, man.wants, protection.point)
            before = replace(before, role=before.role or man.role, job=words)
        says = protection.role_says.get(man.role, ())
        jobs[man.blocker.label] = replace(before, says=(*before.says, *says))
    for label, path in _releases(play, men).items():
        jobs[label] = replace(jobs[label], path=path)
    slides = any(m.blocker.rule.by_gap for m in men.men)
    return replace(
        play,
        assignments=tuple(jobs.get(a.man, a) for a in play.assignments),
        toward=men.toward if slides else play.toward,
        hot=tuple(_hots(protection, bound)),
        protection_words=protection.words,
    )


def _releases(play: Play, men: Protectors) -> dict[str, Path]:
    """Linemen who go out in front of a screen, the one nearest to it first."""
    side = men.launch
    out = [m.blocker for m in men.men if m.blocker.rule is Rule.RELEASE]
    if side is None:
        return {}
    out.sort(key=lambda b: -b.at.x * side.value)
    target = next((read.at.x for read in play.reads if read.at.x), 0.0)
    return {b.label: release_path(b, side, n, target) for n, b in enumerate(out)}


def _hots(protection: Protection, bound: Bound) -> tuple[Hot, ...]:
    made = []
    for hot in protection.hot:
        label = bound.men.get(hot.throws.casefold())
        made.append(Hot(hot.throws, hot.given, (label,) if label else (), hot.span))
    return tuple(made)


def _against(play: Play, defence: Defence, protection: Protection, men: Protectors) -> Play:
    rush = rushers(defence)
    point = men.described(protection.point, None)
    taken = pick_up([m.blocker for m in men.men], rush, men.toward, point)
    by_label = {r.label: r for r in rush}
    jobs: dict[str, Assignment] = {}
    for man in men.men:
        told = play.assignment(man.blocker.label)
        mine = next((t for t in taken if t.blocker == man.blocker.label), None)
        jobs[told.man] = _blocked(told, man, mine, by_label, men)
    return replace(
        play,
        assignments=tuple(jobs.get(a.man, a) for a in play.assignments),
        unblocked=tuple(r.label for r in unblocked(rush, taken)),
    )


def _blocked(
    told: Assignment,
    man: Protector,
    taken: Taken | None,
    rush: Mapping[str, Rusher],
    men: Protectors,
) -> Assignment:
    """One man's job against the look: whom he takes, in words and on the field."""
    rusher = rush[taken.rusher] if taken is not None else None
    hits: tuple[Hit, ...] = ()
    if rusher is not None and taken is not None and taken.how is not How.LET_BY:
        hits = (Hit(rusher.label, taken.how.value, rusher.at),)
    words = taken_words(taken, man.blocker.rule)
    if man.kept:
        words = told.job if rusher is None else f"{told.job} Here: {rusher.label}."
    return replace(told, job=words, hits=hits, path=_path(told.path, man, rusher, men))


def _path(
    before: Path | None, man: Protector, rusher: Rusher | None, men: Protectors
) -> Path | None:
    """A screen's way out and a check's route stay; a man who scans and has nobody stays too."""
    blocker = man.blocker
    if man.goes or blocker.rule is Rule.RELEASE:
        return before
    if blocker.in_line:
        return set_path(blocker, rusher, men.toward, blocker in _ends(men))
    if rusher is not None:
        return meet_path(blocker.at, rusher)
    ends = _ends(men)
    if blocker.rule is Rule.EDGE and blocker.side is not None and ends:
        end = ends[-1 if blocker.side is Side.RIGHT else 0]
        return edge_path(blocker.at, end.at, blocker.side)
    return before


def _ends(men: Protectors) -> tuple[Blocker, ...]:
    """The last men of the line who stay in, left and right."""
    line = sorted((m.blocker for m in men.men if m.blocker.in_line), key=lambda b: b.at.x)
    return (line[0], line[-1]) if line else ()
