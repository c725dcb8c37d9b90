"""A play as compact text, and a play seen in a mirror."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from stemline.football.play import Assignment, Man, Play, Read
from stemline.geometry.paths import Ending, Path, Point


def number(value: float) -> str:
    return f"{round(value, 2) + 0.0:g}"


def point(p: Point) -> str:
    return f"{number(p.x)},{number(p.y)}"


def path(runs: Path) -> str:
    """Corners, ``~`` before a turn that is rounded wide, then how it ends."""
    corners = [point(runs.start)]
    corners += [("~" if leg.reach > 1 else "") + point(leg.to) for leg in runs.legs]
    ending = "" if runs.ending is Ending.RUN else f" {runs.ending.value}"
    return " > ".join(corners) + ending


def write(play: Play, *, names: bool = True) -> str:
    """Everything a play says of the field, in lines. Without names, men stand by their places."""
    lines = [
        f"{play.call.spoken}" if names else "call",
        f"{play.shape[0]}x{play.shape[1]} strong {play.strong.word}, ball {play.ball.value}",
        "men",
        *sorted(_man(m, names) for m in play.men),
        "jobs",
        *sorted(_job(a, play, names) for a in play.assignments if a.path or a.job),
        "spots",
        *(
            f"  {s.name} {point(s.at)} by {number(s.half_width)},{number(s.half_height)}"
            f" {_who(s.men, play, names)}"
            for s in play.spots
        ),
        "eyes",
        f"  feet {', '.join(s.name for s in play.feet)}",
        *(_read("read", r, play, names) for r in play.reads),
        *(_read("pressure", r, play, names) for r in play.pressure),
        *(
            f"  {c.kind} {' '.join(point(p) for p in c.points)} {c.on}".rstrip()
            for c in play.claims
        ),
        *(f"  alert {a.target} {_who(a.men, play, names)} {a.when}" for a in play.alerts),
        f"protect {play.protection or 'nothing said'}; nobody is {', '.join(play.nobody) or '-'}",
    ]
    return "\n".join(lines) + "\n"


def _man(m: Man, names: bool) -> str:
    label = m.label if names and not m.interior else m.position.value
    rank = f" {m.rank.side.word} #{m.rank.number}" if m.rank else ""
    at = "" if m.at == m.snap else f" from {point(m.at)}"
    return f"  {label} {point(m.snap)}{at} {'on' if m.on_line else 'off'}{rank}"


def _job(a: Assignment, play: Play, names: bool) -> str:
    label = a.man if names else point(play.man(a.man).snap)
    lines = [f"  {label} {a.role}: {a.job}", f"    {path(a.path)}" if a.path else "    stays"]
    lines += [f"    taught {number(m.yards)} at {point(m.at)}" for m in a.marks]
    lines += [f"    {b.looks}: {path(b.path)}, leaves {point(b.leaves)}" for b in a.branches]
    if a.motion:
        lines.append(f"    before the snap, {a.motion.words}: {path(a.motion.path)}")
    return "\n".join(lines)


def _read(kind: str, r: Read, play: Play, names: bool) -> str:
    foot = f" on {r.foot}" if r.foot else ""
    partner = f" with {r.partner} {_who([r.partner_man], play, names)}" if r.partner else ""
    return f"  {kind} {r.number} {r.target} {point(r.at)} {_who(r.men, play, names)}{partner}{foot}"


def _who(labels: Iterable[str], play: Play, names: bool) -> str:
    if names:
        return "+".join(labels) or "nobody"
    return "+".join(point(play.man(x).snap) for x in labels) or "nobody"


def mirrored(play: Play) -> Play:
    """The play with left and right changed over, the ball's spot too.

    The linemen keep their labels, so they change places in the order of the men.
    """
    line = play.field.line
    if line is not None:
        line = replace(line, left=line.right, right=line.left)
    field = replace(play.field, spot=play.ball.mirrored, line=line)
    turned = {"LT": "RT", "RT": "LT", "LG": "RG", "RG": "LG"}
    return replace(
        play,
        field=field,
        strong=play.strong.other,
        men=tuple(
            replace(
                m,
                label=turned.get(m.label, m.label),
                at=m.at.mirrored(),
                snap=m.snap.mirrored(),
                rank=replace(m.rank, side=m.rank.side.other) if m.rank else None,
            )
            for m in play.men
        ),
        assignments=tuple(_mirrored_job(a, turned) for a in play.assignments),
        spots=tuple(replace(s, at=s.at.mirrored()) for s in play.spots),
        reads=tuple(replace(r, at=r.at.mirrored()) for r in play.reads),
        pressure=tuple(replace(r, at=r.at.mirrored()) for r in play.pressure),
        claims=tuple(replace(c, points=tuple(p.mirrored() for p in c.points)) for c in play.claims),
    )


def _mirrored_job(a: Assignment, turned: dict[str, str]) -> Assignment:
    return replace(
        a,
        man=turned.get(a.man, a.man),
        path=a.path.mirrored() if a.path else None,
        marks=tuple(replace(m, at=m.at.mirrored()) for m in a.marks),
        branches=tuple(
            replace(
                b,
                path=b.path.mirrored(),
                leaves=b.leaves.mirrored(),
                marks=tuple(replace(m, at=m.at.mirrored()) for m in b.marks),
            )
            for b in a.branches
        ),
        motion=replace(a.motion, path=a.motion.path.mirrored()) if a.motion else None,
    )
