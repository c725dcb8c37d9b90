"""What is different between two versions of a call: as data for the picture, and in words.

A coach who changes a play in spring must show his men in August what is no longer true. So each
man is compared by where he stands, how he moves before the snap and where he runs, never by the
text that said so: two texts that put him on the same path are no change.
"""

from __future__ import annotations

from dataclasses import dataclass

from stemline.describe.phrases import alignment, at_last, lowered, numbered, plain, route
from stemline.describe.spoken_play import describe
from stemline.diagnostics.in_words import together
from stemline.football.exchanges import Exchange, said_any
from stemline.football.play import Assignment, Branch, Man, Play
from stemline.geometry.curves import far_from
from stemline.geometry.paths import Path, polyline

PROTECTION = "Protection was"
"""Which order tells of the protection."""
READS = ("Reads were", "After the reads was", "Under pressure was")
"""Which orders tell whom the quarterback looks at."""
BALL = "The ball went"
"""Which order tells how the ball goes from man to man."""
TOLERANCE = 0.5
"""Yards: places and paths nearer than this to each other are the same. Half a yard is what a
coach sees from the sideline; common practice, no published source."""


@dataclass(frozen=True)
class PlayChange:
    """One man who is not what he was; ``was`` or ``now`` is None where he is new, or gone.

    ``moved`` tells of his place before the snap, ``motion`` of his move to it, ``path`` of his
    path, and of the men he blocks, and ``words`` of nothing but what is said to him.
    """

    label: str
    was: Man | None
    now: Man | None
    moved: bool = False
    motion: bool = False
    path: bool = False
    words: bool = False


def changes(play: Play, before: Play) -> tuple[PlayChange, ...]:
    """Who is different, in the order of the men: those who are gone last."""
    labels = dict.fromkeys(man.label for man in (*play.men, *before.men))
    found = (_change(label, play, before) for label in labels)
    return tuple(change for change in found if change is not None)


def _change(label: str, play: Play, before: Play) -> PlayChange | None:
    now, new = _of(label, play)
    was, old = _of(label, before)
    if was is None or now is None:
        return PlayChange(label, was, now, moved=True, motion=True, path=True)
    moved = now.at.distance(was.at) > TOLERANCE or now.on_line != was.on_line
    motion = not same_path(_motion(new), _motion(old))
    path = _does(new) != _does(old) or _goes_elsewhere(new, old)
    words = _job(new) != _job(old)
    if not (moved or motion or path or words):
        return None
    return PlayChange(label, was, now, moved, motion, path, words)


def drawn_elsewhere(change: PlayChange, play: Play, before: Play) -> bool:
    """Whether a picture shows that a man is not what he was: he stands or goes elsewhere. One who
    only blocks in another way is drawn as he was."""
    if change.moved or change.motion:
        return True
    return _goes_elsewhere(_of(change.label, play)[1], _of(change.label, before)[1])


def _goes_elsewhere(new: Assignment | None, old: Assignment | None) -> bool:
    ways = (
        (new.path if new else None, old.path if old else None),
        (new.climb if new else None, old.climb if old else None),
    )
    if not all(same_path(a, b) for a, b in ways) or _branches(new) != _branches(old):
        return True
    return any(not same_branch(b, old) for b in (new.branches if new else ()))


def _of(label: str, play: Play) -> tuple[Man | None, Assignment | None]:
    man = next((m for m in play.men if m.label == label), None)
    return man, next((a for a in play.assignments if a.man == label), None)


def _motion(task: Assignment | None) -> Path | None:
    return task.motion.path if task is not None and task.motion is not None else None


def _job(task: Assignment | None) -> str:
    return plain(task.job) if task is not None else ""


def _does(task: Assignment | None) -> tuple[tuple[str, str], ...]:
    return tuple((h.defender, h.how) for h in task.hits) if task is not None else ()


def _branches(task: Assignment | None) -> tuple[str, ...]:
    return tuple(b.looks for b in task.branches) if task is not None else ()


def same_branch(branch: Branch, task: Assignment | None) -> bool:
    """Whether ``task`` has this branch already: the same look, the same path."""
    there = task.branches if task is not None else ()
    return any(b.looks == branch.looks and same_path(b.path, branch.path) for b in there)


def same_path(one: Path | None, other: Path | None) -> bool:
    """Whether two paths lie within `TOLERANCE` of each other and end alike."""
    if one == other:
        return True
    legs = [path.legs if path is not None else () for path in (one, other)]
    if one is None or other is None or not all(legs):
        return not any(legs)
    if one.ending is not other.ending or one.end.distance(other.end) > TOLERANCE:
        return False
    a, b = polyline(one), polyline(other)
    near = (far_from(b, p) <= TOLERANCE for p in a)
    return all(near) and all(far_from(a, p) <= TOLERANCE for p in b)


def told(play: Play, before: Play | None, duties: bool) -> tuple[str, str]:
    """A picture's title and its description: with a play before it, first what has changed."""
    if before is None:
        return play.call.spoken, describe(play, duties)
    said = f"{changed(play, before)} {describe(play, duties)}"
    return f"{play.call.spoken}, before and now", said


def changed(play: Play, before: Play) -> str:
    """The changes as sentences: each man's old job and his new one, then the quarterback's."""
    said = [_named(play, before)]
    said += [man_changed(change, play, before) for change in changes(play, before)]
    said += _orders(play, before)
    return " ".join(filter(None, said)) or "Nothing in it has changed."


def _named(play: Play, before: Play) -> str:
    new, old = play.call.spoken, before.call.spoken
    return "" if new == old else f"It was called {old}."


def man_changed(change: PlayChange, play: Play, before: Play) -> str:
    """One man's change as a sentence, "" where it is none to the ear."""
    label = change.label
    if change.now is None:
        return f"{label} is no longer in it; he was: {_job_of(label, before)}."
    if change.was is None:
        return f"{label} is new: {_job_of(label, play)}."
    said: list[str] = []
    if change.moved:
        was, now = alignment(change.was, before), alignment(change.now, play)
        said.append(f"lined up {was}; now {now}")
    if change.motion:
        said.append(f"before the snap was: {_moves(label, before)}; is: {_moves(label, play)}")
    if change.path or change.words:
        was, now = _job_of(label, before), _job_of(label, play)
        if was != now:
            said.append(f"was: {was}; is: {now}")
        elif change.path and not change.moved:
            was, now = _way(label, before), _way(label, play)
            said.append(f"was: {was}; is: {now}" if was != now else "the same on another path")
    return f"{label} {'; '.join(said)}." if said else ""


def _moves(label: str, play: Play) -> str:
    _, task = _of(label, play)
    if task is None or task.motion is None:
        return "no motion"
    words = task.motion.words or task.motion.name
    return f"{words}, to {alignment(play.man(label), play, at_snap=True)}"


def _job_of(label: str, play: Play) -> str:
    _, task = _of(label, play)
    said = _job(task)
    if task is None:
        return "nothing"
    branches = [f"{b.looks}: {plain(lowered(b.job))}" for b in task.branches if b.job]
    if not said and task.hits:
        said = together([f"block {hit.defender} ({hit.how})" for hit in task.hits])
    said = said or _way(label, play)
    return "; ".join([lowered(said), *branches])


def _way(label: str, play: Play) -> str:
    man, task = _of(label, play)
    if man is None or task is None or task.path is None or not task.path.legs:
        return "stays"
    return route(task.path, man.snap)


def order_changes(play: Play, before: Play) -> tuple[tuple[str, str, str], ...]:
    """What of the quarterback's orders is different, as (which, before, now): feet, reads,
    pressure, alerts, what it is killed to, protection, who carries, how the ball goes, what is done
    off the keys, hot throws, which side is picked, who does what on a scramble."""
    ball = said_any(before.exchanges) or said_any(play.exchanges)
    rows = (
        ("Feet were", _feet(before), _feet(play)),
        (READS[0], numbered(before.reads), numbered(play.reads)),
        (READS[1], at_last(before), at_last(play)),
        (READS[2], numbered(before.pressure), numbered(play.pressure)),
        ("Alerts were", _alerts(before), _alerts(play)),
        ("The kill was", _kills(before), _kills(play)),
        (PROTECTION, before.protection, play.protection),
        ("Carrier was", before.carrier, play.carrier),
        (BALL, _ball(before) if ball else "", _ball(play) if ball else ""),
        ("Off the key was", _keys(before), _keys(play)),
        ("The hot throw was", _hot(before), _hot(play)),
        ("The side was picked by", before.pick, play.pick),
        ("On a scramble was", _scrambles(before), _scrambles(play)),
    )
    return tuple(row for row in rows if row[1] != row[2])


def _orders(play: Play, before: Play) -> list[str]:
    return [
        f"{what}: {was or 'none'}; now: {now or 'none'}."
        for what, was, now in order_changes(play, before)
    ]


def _feet(play: Play) -> str:
    return ", ".join(step.name for step in play.feet)


def _kills(play: Play) -> str:
    return ", ".join(f"{becoming.words} when {becoming.when}" for becoming in play.becomes)


def _ball(play: Play) -> str:
    return ", ".join(_exchange(one) for one in play.exchanges)


def _exchange(one: Exchange) -> str:
    """ "Q tosses to R at 5 deep after 1.5 seconds"."""
    takers = " or ".join((one.taker, *one.others, *["run"] * one.runs))
    at = f" at {one.words}" if one.words else ""
    after = f" after {one.after:g} seconds" if one.after is not None else ""
    return f"{one.giver} {one.kind.value} to {takers}{at}{after}"


def _keys(play: Play) -> str:
    return "; ".join(
        f"{key.described}: {', '.join(map(_choice, key.choices))}" for key in play.keys
    )


def _choice(choice: tuple[str, str, str]) -> str:
    what, whom, when = choice
    return " ".join(filter(None, (what, whom, f"if {when}" if when else "")))


def _hot(play: Play) -> str:
    return ", ".join(f"{hot.throws}{f' if {hot.given}' if hot.given else ''}" for hot in play.hot)


def _scrambles(play: Play) -> str:
    return ", ".join(f"{task.man} {task.scramble}" for task in play.assignments if task.scramble)


def _alerts(play: Play) -> str:
    return ", ".join(f"{alert.target} when {alert.when}" for alert in play.alerts)
