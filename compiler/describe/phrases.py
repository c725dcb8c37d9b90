"""Places, paths and reads in spoken words: the phrases that every description is made of."""

from __future__ import annotations

from collections.abc import Sequence

from stemline.diagnostics.in_words import half_yards
from stemline.football.field import Side
from stemline.football.play import Man, Play, Read
from stemline.football.players import Position
from stemline.geometry.paths import Ending, Path, Point

_OVER = 0.25
"""Yards from the ball, or from the line, that are none to the ear."""
_UNDER = 1.5
"""Yards behind the line within which a quarterback is under centre."""
_STRAIGHT = 1.0
"""Yards aside that a path may end from where it began and still go straight."""
_ENDS = {
    Ending.RUN: ("runs", "to"),
    Ending.SETTLE: ("settles", "at"),
    Ending.BLOCK: ("blocks", "at"),
    Ending.STAND: ("stays", "at"),
}


def alignment(man: Man, play: Play, *, at_snap: bool = False) -> str:
    """Where a man lines up, or is at the snap: his number from the outside, his yards from the
    ball, how far off the line."""
    at = man.snap if at_snap else man.at
    depth = _off_line(man, at)
    if man.position is Position.QUARTERBACK and abs(at.x) < _OVER:
        return "under centre" if -at.y <= _UNDER else f"{yards(-at.y)} behind the centre"
    counted = man.rank is not None and (at_snap or man.at == man.snap)
    if man.rank is None or not counted:
        return f"{across(at.x)}, {depth}"
    number = f"number {man.rank.number} {_side(man.rank.side, play)}"
    return f"{number}, {yards(abs(at.x))} from the ball, {depth}"


def _off_line(man: Man, at: Point) -> str:
    if man.on_line and at == man.snap:
        return "on the line"
    if -at.y < _OVER:
        return "on the line"
    return f"{yards(-at.y)} off the line" if -at.y <= _UNDER else f"{yards(-at.y)} deep"


def _side(side: Side, play: Play) -> str:
    wide = play.field.wide_side
    if wide is None:
        return side.word
    return f"{side.word}, to the {'field' if side is wide else 'boundary'}"


def route(path: Path, start: Point) -> str:
    """How a path ends and where, with the way it took from ``start``: inside, outside, across. Who
    moves and then stands, as a quarterback before a draw, has not stayed."""
    if path.ending is Ending.STAND and path.end != start:
        verb, to = "drops" if path.end.y < start.y else "moves", "to"
    else:
        verb, to = _ENDS[path.ending]
    return f"{verb}{_way(start, path.end)} {to} {place(path.end)}"


def _way(start: Point, end: Point) -> str:
    if abs(end.x - start.x) < _STRAIGHT or abs(start.x) < _STRAIGHT:
        return ""
    if abs(end.x) > _STRAIGHT and (end.x > 0) != (start.x > 0):
        return " across the ball"
    return " inside" if abs(end.x) < abs(start.x) else " outside"


def place(at: Point) -> str:
    """A point of the field: "8 yards past the line, 4.5 yards left of the ball"."""
    return f"{depth(at.y)}, {across(at.x)}"


def across(x: float) -> str:
    if abs(x) < _OVER:
        return "over the ball"
    return f"{yards(abs(x))} {'right' if x > 0 else 'left'} of the ball"


def depth(y: float) -> str:
    if abs(y) < _OVER:
        return "on the line"
    return f"{yards(abs(y))} {'past' if y > 0 else 'behind'} the line"


def yards(length: float) -> str:
    """A length to the half yard."""
    text = half_yards(length)
    if text == "0.5":
        return "half a yard"
    return f"{text} yard" if text == "1" else f"{text} yards"


def numbered(reads: Sequence[Read]) -> str:
    """Reads in order: the target, who is there, and the step that throws it."""
    return ", ".join(f"{r.number} {_read(r)}{foot(r)}" for r in reads)


def at_last(play: Play) -> str:
    """What the quarterback does when no read is open; "" where nobody says."""
    return " or ".join(_LAST.get(word, word) for word in play.last)


_LAST = {"throw away": "throw it away"}


def _read(read: Read) -> str:
    said = target(read.target, read.men)
    if read.partner:
        men = (read.partner_man,) if read.partner_man else ()
        said += f" with {target(read.partner, men)}"
    return said


def foot(read: Read) -> str:
    return f" on {read.foot}" if read.foot else ""


def target(name: str, men: Sequence[str]) -> str:
    """A read's name and who is there; a man who is called by his letter needs no second one."""
    return f"{name} ({', '.join(men)})" if men and tuple(men) != (name,) else name


def plain(job: str) -> str:
    """A job without its full stop, to stand inside a sentence."""
    return job.rstrip(". ")


def lowered(said: str) -> str:
    """Words that go on a sentence: a label or a short name keeps its capital."""
    return said[:1].lower() + said[1:] if said[1:2].islower() else said
