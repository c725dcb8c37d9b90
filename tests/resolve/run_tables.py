"""A run against every look as a table that a coach reads: a row a man, a column a look."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence

from stemline.football.play import Assignment, Play

STALK = "Stalk the nearest defender, hands first, stay on your feet."
NOTHING = "-"
_SHORT = tuple(
    (re.compile(whole), short)
    for whole, short in (
        (r"Block (\w+)\.", r"\1"),
        (r"Double (\w+) with (\w+), then (\w+)\.", r"\1+\2 > \3"),
        (r"Double (\w+) with (\w+)\.", r"\1+\2"),
        (r"Help (\w+) on (\w+), then (\w+)\.", r"help \1 on \2 > \3"),
        (r"Help (\w+) on (\w+)\.", r"help \1 on \2"),
        (r"Nobody on you: climb to (\w+)\.", r"up \1"),
        (r"Scoop, climb to (\w+)\.", r"scoop > \1"),
        (r"Climb: the first man who shows\.", "climb first"),
        (r"Wrap: the first man inside the kick\.", "wrap first"),
        (
            r"(Arc|Back|Climb|Cut off|Down|Hinge|Kick|Lead|Out|Pull|Reach|Scoop|Sift|Trap|Wrap)"
            r"(?: on| to)? (\w+)\.",
            r"\1 \2",
        ),
    )
)
"""A job's words, and what stands for them in a cell: an upper-case name is a defender."""


def in_short(jobs: Iterable[str]) -> dict[str, str]:
    """Each job's cell. No two have the same one, or the table would hide what changed."""
    cells = {job: _short(job) for job in dict.fromkeys(jobs)}
    assert len(set(cells.values())) == len(cells), sorted(cells.items(), key=lambda c: c[1])
    return cells


def _short(job: str) -> str:
    found = ((whole.fullmatch(job), short) for whole, short in _SHORT)
    return next((match.expand(short) for match, short in found if match is not None), job)


def table(call: str, looks: Sequence[str], plays: Sequence[Play], cells: Mapping[str, str]) -> str:
    """Who takes whom in a call against each look, who is read, who is free."""
    first = plays[0]
    rows = []
    for man in sorted(first.men, key=lambda m: m.snap.x):
        tasks = [play.assignment(man.label) for play in plays]
        told = [told_of(play, task) for play, task in zip(plays, tasks, strict=True)]
        if any(told):
            (role,) = {task.role for task in tasks}
            rows.append((f"{man.label} {role}", [cells[job] if job else NOTHING for job in told]))
    (keys,) = {tuple(key.described for key in play.keys) for play in plays}
    for n, key in enumerate(keys):
        rows.append((f"read {key}", [play.keys[n].man or NOTHING for play in plays]))
    rows.append(("free", [",".join(play.unblocked) or NOTHING for play in plays]))
    return "\n".join(_aligned([(call, list(looks)), *rows]))


def told_of(play: Play, task: Assignment) -> str:
    """The job of a man who blocks somebody or stands in the line; nothing for the others."""
    blocks = task.role and (task.hits or play.man(task.man).interior)
    return task.job if blocks and task.job != STALK else ""


def _aligned(rows: Sequence[tuple[str, list[str]]]) -> list[str]:
    head = max(len(name) for name, _ in rows)
    wide = [max(len(cells[n]) for _, cells in rows) for n in range(len(rows[0][1]))]
    return [
        "  ".join(
            [name.ljust(head), *(c.ljust(w) for c, w in zip(cells, wide, strict=True))]
        ).rstrip()
        for name, cells in rows
    ]
