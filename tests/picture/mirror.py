"""A play with left and right changed over, as if the field had been turned in a mirror."""

from __future__ import annotations

from dataclasses import replace

from stemline.football.defenders import Defence
from stemline.football.play import Assignment, Branch, DepthMark, Man, Play, Read


def mirrored(play: Play) -> Play:
    return replace(
        play,
        field=replace(play.field, spot=play.field.spot.mirrored),
        strong=play.strong.other,
        men=tuple(_man(m) for m in play.men),
        assignments=tuple(_task(a) for a in play.assignments),
        spots=tuple(replace(s, at=s.at.mirrored()) for s in play.spots),
        reads=tuple(_read(r) for r in play.reads),
        pressure=tuple(_read(r) for r in play.pressure),
        claims=tuple(replace(c, points=tuple(p.mirrored() for p in c.points)) for c in play.claims),
        defence=_look(play.defence) if play.defence else None,
        toward=play.toward.other if play.toward else None,
    )


def _look(look: Defence) -> Defence:
    men = tuple(
        replace(
            d,
            at=d.at.mirrored(),
            duty=replace(d.duty, to=d.duty.to.mirrored()) if d.duty and d.duty.to else d.duty,
        )
        for d in look.defenders
    )
    return replace(look, strong=look.strong.other, defenders=men)


def _man(man: Man) -> Man:
    return replace(man, at=man.at.mirrored(), snap=man.snap.mirrored())


def _read(read: Read) -> Read:
    return replace(read, at=read.at.mirrored())


def _mark(mark: DepthMark) -> DepthMark:
    return replace(mark, at=mark.at.mirrored())


def _task(task: Assignment) -> Assignment:
    motion = task.motion
    return replace(
        task,
        path=task.path.mirrored() if task.path else None,
        branches=tuple(_branch(b) for b in task.branches),
        marks=tuple(_mark(m) for m in task.marks),
        motion=replace(motion, path=motion.path.mirrored()) if motion else None,
        hits=tuple(replace(h, at=h.at.mirrored()) for h in task.hits),
        climb=task.climb.mirrored() if task.climb else None,
    )


def _branch(branch: Branch) -> Branch:
    return replace(
        branch,
        path=branch.path.mirrored(),
        leaves=branch.leaves.mirrored(),
        marks=tuple(_mark(m) for m in branch.marks),
    )
