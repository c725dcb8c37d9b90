"""A play with left and right changed over, as if the field had been turned in a mirror."""

from __future__ import annotations

from dataclasses import replace

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
    )


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
    )


def _branch(branch: Branch) -> Branch:
    return replace(
        branch,
        path=branch.path.mirrored(),
        leaves=branch.leaves.mirrored(),
        marks=tuple(_mark(m) for m in branch.marks),
    )
