"""A play said in words, for a reader who cannot see its picture."""

from __future__ import annotations

import re

from stemline.football.defence import Defence, Defender
from stemline.football.field import BallSpot
from stemline.football.play import Assignment, Key, Kind, Man, Play, Read
from stemline.paths import Ending, Path, Point

_WORD = re.compile(r"[^\s.,;]+")
_ENDS = {
    Ending.RUN: "keeps running",
    Ending.SETTLE: "settles",
    Ending.BLOCK: "blocks",
    Ending.STAND: "stays",
}


def describe(play: Play) -> str:
    """Alignment, job, path, reads and alerts of a play, one sentence after another."""
    said = [f"{play.call.spoken}.", _spot(play)]
    if play.kind is Kind.RUN:
        said.append(_ball(play))
    said += [_man(play, task) for task in play.assignments]
    if play.reads:
        said.append(f"Reads: {_order(play.reads)}.")
    if play.pressure:
        said.append(f"Under pressure: {_order(play.pressure)}.")
    said += [f"Alert: {_target(a.target, a.men)} when {a.when}." for a in play.alerts]
    if play.protection:
        said.append(f"Protection: {play.protection}.")
    if play.against:
        said.append(f"Drawn against {', '.join(play.against)}.")
    said += [_key(key) for key in play.keys]
    if play.unblocked:
        said.append(f"Free on defence: {_list(play.unblocked)}.")
    if play.defence is not None:
        said.append(_look(play.defence))
    return " ".join(said)


def _ball(play: Play) -> str:
    """Who carries it on a run, and which way."""
    way = f" to the {play.toward.word}" if play.toward is not None else ""
    who = f"; {play.carrier} carries" if play.carrier else ""
    return f"Run{way}{who}."


def _key(key: Key) -> str:
    man = f" ({key.man})" if key.man else ""
    choices = ", ".join(
        f"{do} {to}".rstrip() + (f" when {when}" if when else "") for do, to, when in key.choices
    )
    return f"Key: {key.described}{man}" + (f": {choices}." if choices else ".")


def _look(look: Defence) -> str:
    """A look in words: where everybody stands and what he is there for."""
    shows = f" ({', '.join(look.shows)})" if look.shows else ""
    return f"The look, {look.name}{shows}: {'; '.join(map(_defender, look.defenders))}."


def _defender(man: Defender) -> str:
    technique = f" in a {man.technique} technique" if man.technique else ""
    duty = f", {man.duty.words}" if man.duty is not None and man.duty.words else ""
    return f"{man.label}{technique} {_across(man.at.x)}, {_depth(man.at.y)}{duty}"


def _hits(task: Assignment) -> str:
    """Whom a man blocks, in order."""
    return "; blocks " + ", then ".join(f"{hit.defender} ({hit.how})" for hit in task.hits)


def _spot(play: Play) -> str:
    where = "in the middle" if play.ball is BallSpot.MIDDLE else f"on the {play.ball.value}"
    return f"Ball {where}."


def _man(play: Play, task: Assignment) -> str:
    man = play.man(task.man)
    role = f" ({task.role})" if task.role else ""
    said = f"{man.label}{role} lines up {_place(man.at, man)}"
    if task.motion is not None:
        said += f"; before the snap: {task.motion.words or task.motion.name}"
        said += f", to {_place(man.snap, man)}"
    if task.hits:
        named = all(hit.defender in _WORD.findall(task.job) for hit in task.hits)
        said += (f"; {_plain(task.job)}" if task.job else "") + ("" if named else _hits(task))
    elif task.path is not None and task.path.legs:
        job = f"; {_plain(task.job)}" if task.job else ""
        said += f"{job}; {_run(task.path)}"
    elif task.job:
        said += f"; {_plain(task.job)}"
    for branch in task.branches:
        job = f"{_plain(branch.job)}; " if branch.job else ""
        said += f"; against {branch.looks}: {job}{_run(branch.path)}"
    return said + "."


def _plain(job: str) -> str:
    return job.rstrip(". ")


def _place(at: Point, man: Man) -> str:
    depth = "on the line" if man.on_line else f"{_yards(-at.y)} deep"
    return f"{_across(at.x)}, {depth}"


def _run(path: Path) -> str:
    return f"{_ENDS[path.ending]} at {_across(path.end.x)}, {_depth(path.end.y)}"


def _across(x: float) -> str:
    if abs(x) < 0.25:
        return "over the ball"
    return f"{_yards(abs(x))} {'right' if x > 0 else 'left'} of the ball"


def _depth(y: float) -> str:
    if abs(y) < 0.25:
        return "on the line"
    return f"{_yards(abs(y))} {'past' if y > 0 else 'behind'} the line"


def _yards(yards: float) -> str:
    text = f"{yards:.1f}".removesuffix(".0")
    return f"{text} yard" if text == "1" else f"{text} yards"


def _list(names: tuple[str, ...]) -> str:
    return " and ".join(filter(None, (", ".join(names[:-1]), names[-1])))


def _order(reads: tuple[Read, ...]) -> str:
    return ", ".join(f"{r.number} {_target(r.target, r.men)}{_foot(r)}" for r in reads)


def _foot(read: Read) -> str:
    return f" on {read.foot}" if read.foot else ""


def _target(target: str, men: tuple[str, ...]) -> str:
    return f"{target} ({', '.join(men)})" if men else target
