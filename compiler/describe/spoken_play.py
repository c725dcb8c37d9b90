"""A play said in words, for a reader who cannot see its picture.

It must do alone. So it goes in the order in which a play is taught: what it is, the quarterback's
feet and reads, then the men as he reads them, the others from left to right, the line, and last
whom they play against.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from itertools import groupby

from stemline.describe.phrases import (
    alignment,
    at_last,
    foot,
    lowered,
    numbered,
    plain,
    route,
    target,
    yards,
)
from stemline.describe.spoken_defence import look_words
from stemline.diagnostics.in_words import together
from stemline.football.exchanges import BallMoves, Exchange, said_any
from stemline.football.play import (
    FOR_MANY,
    Assignment,
    Claim,
    Hot,
    Key,
    Kind,
    Man,
    Play,
    Read,
    about_blocks,
)
from stemline.football.players import Position
from stemline.geometry.paths import Ending

_STEP = 1.0
"""Yards from the line within which a lineman only steps to his man."""
_WORD = re.compile(r"[^\s.,;]+")


def describe(play: Play, duties: bool = False) -> str:
    """Alignment, job, path, reads and alerts of a play, one sentence after another.

    ``duties`` tells that the picture shows what each defender is there for.
    """
    said = [
        f"{play.call.spoken}.",
        *_kind(play),
        _line(play),
        *(_key(key) for key in play.keys),
        *_quarterback(play),
        *_ball(play),
        *_reads(play),
        *_men(play),
        *_protection(play),
    ]
    said += _becomes(play)
    if play.unblocked:
        said.append(f"Free on defence: {together(play.unblocked)}.")
    if play.chasing:
        said.append(f"Left to {play.carrier}: {together(play.chasing)}.")
    if play.defence is not None:
        rush = about_blocks(play) and play.kind is Kind.PASS
        said.append(look_words(play.defence, duties, rush))
    elif play.against:
        said.append(f"Drawn against {', '.join(play.against)}.")
    return " ".join(said)


def _kind(play: Play) -> Iterator[str]:
    """What the play is and where the ball lies."""
    wide = play.field.wide_side
    where = f"ball on the {play.ball.value}, field to the {wide.word}" if wide else ""
    where = where or "ball in the middle"
    goal = play.field.goal
    near = f", {yards(goal)} from their goal line" if goal is not None else ""
    yield f"{_what(play)}, {where}{near}."
    strong, weak = play.shape
    if strong + weak:
        side, other = play.strong.word, play.strong.other.word
        yield f"Receivers: {strong} {side}, {weak} {other}."


def _what(play: Play) -> str:
    if play.kind is Kind.RUN:
        way = f" to the {play.toward.word}" if play.toward is not None else ""
        return f"Run{way}" + (f" by {play.carrier}" if play.carrier else "")
    routes = (t.path for t in play.assignments if t.path is not None and t.path.legs)
    if play.reads or any(path.ending in (Ending.RUN, Ending.SETTLE) for path in routes):
        return "Pass"
    return "Protection" if play.protection else "Formation"


def _line(play: Play) -> str:
    """Who the line are, from left to right: their places need no yards."""
    men = sorted((m for m in play.men if m.interior), key=lambda m: m.at.x)
    return f"The line from left to right: {together([m.label for m in men])}."


def _key(key: Key) -> str:
    man = f" ({key.man})" if key.man else ""
    choices = ", ".join(do + (f" when {when}" if when else "") for do, when in key.done)
    return f"Key: {key.described}{man}" + (f": {choices}." if choices else ".")


def _quarterback(play: Play) -> Iterator[str]:
    """Where the passer stands, and his feet; what else he does follows with the men."""
    passer = play.passer
    if passer is not None and _has_feet(play):
        feet = "; then ".join(step.words for step in play.feet)
        yield f"{passer.label} is {alignment(passer, play)}: {feet}."


def _ball(play: Play) -> Iterator[str]:
    """How the ball goes from man to man, in order, where the coach says it."""
    if said_any(play.exchanges):
        told = "; then ".join(f"{x.giver} {_gives(x)}" for x in play.exchanges)
        yield f"The ball: {told}."


def _gives(x: Exchange) -> str:
    """ "hands it to R", "fakes to B"; a place or a moment of the coach's behind it."""
    it = "" if x.kind is BallMoves.FAKE else "it "
    others = "".join(f" or {man}" for man in x.others) + (" or runs" if x.runs else "")
    place = f", {plain(x.words)}" if x.words else ""
    after = f" after {x.after:g} seconds" if x.after is not None else ""
    return f"{x.kind.value} {it}to {x.taker}{others}{place}{after}"


def _has_feet(play: Play) -> bool:
    """Whether his feet are said before his reads; on a run his own line says them."""
    return bool(play.feet) and play.kind is Kind.PASS


def _reads(play: Play) -> Iterator[str]:
    if play.pick:
        yield f"Pick the side: {play.pick}."
    if reads := _run(play, play.reads):
        last = f", then {at_last(play)}" if play.last else ""
        yield f"Reads: {numbered(reads)}{last}."
    if pressure := _run(play, play.pressure):
        yield f"Under pressure: {numbered(pressure)}."
    for alert in play.alerts:
        yield f"Alert: {target(alert.target, alert.men)} when {alert.when}."
    yield from (_claim(claim) for claim in play.claims)


def _run(play: Play, reads: Sequence[Read]) -> tuple[Read, ...]:
    """The reads that somebody runs: against a look a man who has a rusher is none."""
    return tuple(read for read in reads if read.men or play.defence is None)


def _claim(claim: Claim) -> str:
    on = f" on the {claim.on}" if claim.on else ""
    shape = f"The routes make a {claim.kind}{on}: "
    if claim.kind == "high-low" and len(claim.targets) == 2:
        return f"{shape}{claim.targets[0]} above {claim.targets[1]}."
    return f"{shape}{together(claim.targets)}."


def _men(play: Play) -> Iterator[str]:
    """The men with the ball or in the reads first, then from left to right, then the line."""
    first = {man: read.number for read in reversed(play.reads) for man in read.men}
    last = len(play.reads) + 1

    def order(task: Assignment) -> tuple[bool, bool, int, float]:
        man = play.man(task.man)
        carries = task.man == play.carrier
        return man.interior, not carries, first.get(task.man, last), man.snap.x

    tasks = sorted(play.assignments, key=order)
    men = [task for task in tasks if not _only_stands(play, task)]
    yield from (_man(play, t) for t in men if not play.man(t.man).interior)
    yield from _linemen(play, [t for t in men if play.man(t.man).interior])


def _only_stands(play: Play, task: Assignment) -> bool:
    """A quarterback of whom all has been said with his feet, or a lineman without a job."""
    man = play.man(task.man)
    known = man.interior or (man.position is Position.QUARTERBACK and _has_feet(play))
    moves = task.motion is not None or (task.path is not None and task.path.legs)
    return known and not (task.job or moves or task.branches or task.hits)


def _linemen(play: Play, tasks: Iterable[Assignment]) -> Iterator[str]:
    """The line from left to right; men beside each other who do the same are said together."""
    for _, same in groupby(tasks, key=lambda task: (task.job, task.hits, task.branches)):
        group = list(same)
        if len(group) > 1 and not any(task.motion for task in group):
            names = together([task.man for task in group])
            yield f"{names}: {plain(lowered(group[0].job))}."
        else:
            yield from (_man(play, task) for task in group)


def _man(play: Play, task: Assignment) -> str:
    """One man in a sentence: who he is in the play, where he is, how he moves, what he does."""
    man = play.man(task.man)
    named, stands = _named(play, task), _stands(play, man)
    said: list[str] = []
    if task.motion is not None:
        said.append(f"before the snap: {task.motion.words or task.motion.name}")
        said.append(f"then he is {alignment(man, play, at_snap=True)}")
    if task.job:
        said.append(plain(lowered(task.job)))
    if task.hits:
        if not all(hit.defender in _WORD.findall(task.job) for hit in task.hits):
            said.append("blocks " + ", then ".join(f"{x.defender} ({x.how})" for x in task.hits))
    elif task.path is not None and task.path.legs and not _is_set(man, task):
        said.append(route(task.path, man.snap))
    for branch in task.branches:
        when = branch.looks if branch.looks.startswith("if ") else f"against {branch.looks}"
        job = f"{plain(lowered(branch.job))}; " if branch.job else ""
        said.append(f"{when}: {job}{route(branch.path, man.snap)}" if branch.looks else job)
    does = "; ".join(filter(None, said))
    if stands:
        return f"{named}{stands}{'; ' if does else ''}{does}."
    return f"{named.rstrip(',')}: {does}."


def _is_set(man: Man, task: Assignment) -> bool:
    """A lineman's step to where he blocks: his rule says more than its yards."""
    deep = task.path is not None and any(abs(p.y) > _STEP for p in task.path.corners)
    return man.interior and bool(task.job) and not deep


def _named(play: Play, task: Assignment) -> str:
    """Label, role, and his place in the reads."""
    numbers = [f"read {r.number}{foot(r)}" for r in play.reads if task.man in r.men]
    numbers += [f"with read {r.number}" for r in play.reads if r.partner_man == task.man]
    named = task.role not in ("", task.man) and not task.role_said.startswith(FOR_MANY)
    role = f" as {task.role_said}" if named else ""
    if play.man(task.man).interior and task.role not in ("", "centre"):
        role = f", the {task.role}"
    elif task.role == "centre":
        role = ""
    return task.man + role + (f", {together(numbers)}," if numbers else "")


def _stands(play: Play, man: Man) -> str:
    if man.interior and man.at == man.snap:
        return ""
    if man is play.passer and _has_feet(play):
        return ""
    return f" lines up {alignment(man, play)}"


def _protection(play: Play) -> Iterator[str]:
    if play.protection:
        words = f". {plain(play.protection_words)}" if play.protection_words else ""
        yield f"Protection: {play.protection}{words}."
    yield from (_hot(hot) for hot in play.hot)


def _becomes(play: Play) -> Iterator[str]:
    """Each play that it is killed to at the line, in short: it has a picture of its own."""
    for becoming in play.becomes:
        second = becoming.play
        what = lowered(_what(second))
        order = f", reads {numbered(reads)}" if (reads := _run(second, second.reads)) else ""
        yield f"{becoming.headed} when {becoming.when}: {what}{order}."


def _hot(hot: Hot) -> str:
    when = f" when {hot.given}" if hot.given else ""
    return f"Hot: {target(hot.throws, hot.men)}{when}."
