"""Quizzes: which calls a man is asked of, and each drawn without what he has to know.

Which calls are asked follows from the week, its seed, the day and the man alone. Calls that came
this week are asked first, since they are what he has seen least.
"""

from __future__ import annotations

import hashlib
from dataclasses import dataclass, replace

from stemline.football.play import Assignment, Play
from stemline.week.position_book import (
    OwnKill,
    OwnTask,
    own_jobs,
    own_kills,
    own_task,
    plays_in,
)
from stemline.week.week_values import CallEntry, Week

QUESTIONS = 6
"""Calls that a man is asked of, a side of paper: 5 to 10 are common practice, no published
source."""


@dataclass(frozen=True)
class QuizQuestion:
    """A call to be drawn in: ``blank`` shows how it lines up and moves before the snap, and nothing
    of what comes after; ``answer`` is what the man is told, ``killed`` what he does where the call
    becomes another."""

    order: int
    entry: CallEntry
    blank: Play
    answer: OwnTask
    killed: tuple[OwnKill, ...] = ()


@dataclass(frozen=True)
class QuizPaper:
    """What one man is asked; ``day`` is "" where none is said."""

    man: str
    day: str
    questions: tuple[QuizQuestion, ...]


def quiz_papers(week: Week) -> tuple[QuizPaper, ...]:
    """A paper for each man of each quiz who plays in a call of the week."""
    papers = [
        QuizPaper(man, quiz.day, _asked(week, man, quiz.day))
        for quiz in week.plan.quizzes
        for man in quiz.men
    ]
    return tuple(paper for paper in papers if paper.questions)


def _asked(week: Week, man: str, day: str) -> tuple[QuizQuestion, ...]:
    """The calls he is asked of: new ones first, one of each task until there is no other."""
    plan = week.plan
    seed = f"{plan.seed or plan.team} {plan.number} {day} {man}".casefold()
    mine = [week.faced(call) for call in plan.calls if plays_in(plan.plays[call], man)]
    old = set(plan.before.calls) if plan.before is not None else set()
    new = {e.call for e in mine if plan.before is not None and e.call not in old}
    mine.sort(key=lambda e: (e.call not in new, _place(seed, e.call)))
    known: dict[str, int] = {}
    turns: dict[str, int] = {}
    for job in own_jobs(mine, man, week.against):
        calls = [entry.call for alike in job.alike for entry in alike.calls]
        for call in sorted(calls, key=[e.call for e in mine].index):
            turns[call] = known.get(repr(job.task), 0)
            known[repr(job.task)] = turns[call] + 1
    mine.sort(key=lambda e: turns[e.call])
    return tuple(
        QuizQuestion(
            order,
            entry,
            blank_of(entry.play),
            own_task(entry.play, man, week.against.get(entry.call, ())),
            own_kills((entry,), man),
        )
        for order, entry in enumerate(mine[:QUESTIONS], 1)
    )


def _place(seed: str, call: str) -> str:
    return hashlib.sha256(f"{seed} {call}".encode()).hexdigest()


def blank_of(play: Play) -> Play:
    """``play`` as it stands at the snap: who is where, and the motions that brought them. Its
    picture is asked for the whole look, since nobody is told yet whom he blocks."""
    return replace(
        play,
        assignments=tuple(_stands(task) for task in play.assignments),
        spots=(), reads=(), pressure=(), claims=(), alerts=(), keys=(), hot=(), feet=(),
        unblocked=(), chasing=(), nobody=(), protection="", protection_words="", pick="",
        carrier="", handoffs=(), exchanges=(),
    )  # fmt: skip


def _stands(task: Assignment) -> Assignment:
    return replace(
        task, role="", job="", path=None, branches=(), marks=(), says=(), hits=(), climb=None
    )
