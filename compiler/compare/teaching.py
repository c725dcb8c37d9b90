"""What each man has to learn and may forget, once every call he still runs is counted."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import NamedTuple

from stemline.compare.comparison import Comparison
from stemline.describe.phrases import foot
from stemline.football.play import Assignment, Kind, Play, Read
from stemline.football.players import Position

Job = tuple[str, str]
"""(concept, or protection, what he does in it)."""


class Teaching(NamedTuple):
    """What a man has to learn and may forget."""

    man: str
    new: tuple[Job, ...]
    gone: tuple[Job, ...]


def teaching(found: Comparison) -> tuple[Teaching, ...]:
    """Each man's jobs that are new or gone, those with most to learn first.

    A job that he has in another call of the concept is neither. A lineman learns a protection once,
    and then which concept has it.
    """
    protections = {d.name.casefold() for c in found.definitions for d in (c.was, c.now) if d}
    before = (*(c.was for c in found.changed if c.was), *found.dropped, *found.still)
    after = (*(c.now for c in found.changed if c.now), *found.added, *found.still)
    protects = frozenset(_protecting((*before, *after)))
    was, now = _jobs(before, protects), _jobs(after, protects)
    rows = []
    for man in dict.fromkeys((*now, *was)):
        old, new = was.get(man, {}), now.get(man, {})
        learn = tuple(_known(new, old, protections))
        forget = tuple(_known(old, new, protections))
        if learn or forget:
            rows.append(Teaching(man, learn, forget))
    return tuple(sorted(rows, key=lambda row: (-len(row.new), -len(row.gone), row.man)))


def _known(here: dict[Job, str], there: dict[Job, str], touched: set[str]) -> Iterator[Job]:
    """Jobs that are only here; of a protection that nobody touched none is."""
    for job, protection in here.items():
        if job not in there and (not protection or protection.casefold() in touched):
            yield job


def _jobs(plays: Iterable[Play], protects: frozenset[Job]) -> dict[str, dict[Job, str]]:
    """Man → his jobs, each with the protection that it is of, "" for a concept's."""
    found: dict[str, dict[Job, str]] = {}
    for play in plays:
        for man, jobs in _of_play(play, protects):
            found.setdefault(man, {}).update(jobs)
    return found


def _protecting(plays: Iterable[Play]) -> Iterator[Job]:
    """What linemen do in each protection, from the calls that show no run."""
    for play in plays:
        if play.protection and not _shows_run(play):
            line = _line(play)
            yield from ((play.protection, _job(t)) for t in play.assignments if t.man in line)


def _shows_run(play: Play) -> bool:
    return play.kind is Kind.RUN or bool(play.carrier) or any(s.name == "fake" for s in play.feet)


def _line(play: Play) -> set[str]:
    return {m.label for m in play.men if m.position.interior}


def _job(task: Assignment) -> str:
    return task.job.rstrip(".")


def _of_play(play: Play, protects: frozenset[Job]) -> Iterator[tuple[str, dict[Job, str]]]:
    concept = play.call.concept
    line = _line(play) if play.protection else set()
    if _shows_run(play):
        # Behind a faked run the line may block that run, or as the protection says.
        line &= {t.man for t in play.assignments if (play.protection, _job(t)) in protects}
    for task in play.assignments:
        job = _job(task)
        if task.man in line:
            own = {(play.protection, job): play.protection} if job else {}
            yield task.man, {(concept, f"protected by {play.protection}"): "", **own}
        elif job:
            yield task.man, {(concept, job): ""}
    passer = next((m.label for m in play.men if m.position is Position.QUARTERBACK), "")
    for becoming in play.becomes if passer else ():
        yield passer, {(concept, f"killed to {becoming.words} when {becoming.when}"): ""}
    for what, looks in (("read", play.reads), ("under pressure", play.pressure)):
        if looks and passer:
            yield passer, {(concept, f"{what} {', then '.join(map(_look, looks))}"): ""}


def _look(read: Read) -> str:
    """ "dig with far on hitch": by role, since the men differ from formation to formation."""
    return read.target + (f" with {read.partner}" if read.partner else "") + foot(read)
