"""A week as plain data for other tools: CSV of its papers, and JSON of all with every play.

The JSON is as `grammar/week.schema.json` says (JSON Schema, draft 2020-12). Distances in yards, x
right of the ball as the offence faces and y past the line of scrimmage.
"""

from __future__ import annotations

import csv
import io
import json
from collections.abc import Iterable, Mapping
from typing import Any

from stemline.football.play import Assignment, Play
from stemline.week.game_plan import LookAnswer
from stemline.week.index_of import index_lines
from stemline.week.killed_rows import killed
from stemline.week.leanings import leanings_of
from stemline.week.position_book import OwnTask, men_of, own_book
from stemline.week.quizzing import QuizPaper, quiz_papers
from stemline.week.scripting import script_of
from stemline.week.week_values import CallEntry, PlanBand, PlanPeriod, PlanRow, Week

VERSION = 2
_DECIMALS = 2


def data_files(week: Week) -> dict[str, bytes]:
    """The files by their names: four tables and `week.json`."""
    return {
        "call-sheet.csv": _table(_sheet(week)),
        "wristbands.csv": _table(_bands(week)),
        "index.csv": _table(
            [{k: v for k, v in vars(line).items() if k != "said"} for line in index_lines(week)]
        ),
        "script.csv": _table(_script(week)),
        "week.json": (json.dumps(week_json(week), ensure_ascii=False) + "\n").encode(),
    }


def _table(rows: Iterable[Mapping[str, object]]) -> bytes:
    """Rows as CSV (RFC 4180) in UTF-8; nothing where there is none."""
    rows = list(rows)
    out = io.StringIO()
    if rows:
        writer = csv.DictWriter(out, list(rows[0]), lineterminator="\r\n")
        writer.writeheader()
        writer.writerows([{k: _safe(v) for k, v in row.items()} for row in rows])
    return out.getvalue().encode()


def _safe(value: object) -> object:
    """A text that a spreadsheet would take for a formula stands behind an apostrophe."""
    return f"'{value}" if isinstance(value, str) and value[:1] in ("=", "+", "-", "@") else value


def _sheet(week: Week) -> list[dict[str, object]]:
    return [
        {"situation": each.title, "order": order, **_row(week, row)}
        for each in week.plan.lists
        for order, row in enumerate(each.rows, 1)
    ]


def _row(week: Week, row: PlanRow) -> dict[str, Any]:
    entry = week.entry(row.call)
    return {
        "number": entry.number,
        "call": row.call,
        "page": entry.page,
        "spot": row.spot.value if row.spot else "",
        "formation": entry.formation,
        "personnel": entry.personnel,
        "look": row.look,
        "killed_to": "; ".join(f"{to} when {when}" for to, when in killed(row, entry.play)),
        "against": row.against,
        "tempo": row.tempo,
        "reps": row.reps,
        "note": row.note,
    }


def _bands(week: Week) -> list[dict[str, object]]:
    return [{"band": band.name, **cell} for band in week.plan.bands for cell in _cells(week, band)]


def _cells(week: Week, band: PlanBand) -> list[dict[str, object]]:
    """The calls of a band in the order of its card."""
    entries = sorted((week.entry(call) for call in band.calls), key=lambda e: e.number or 0)
    return [{"number": e.number, "short": e.short, "call": e.call} for e in entries]


def _script(week: Week) -> list[dict[str, object]]:
    rows: list[dict[str, object]] = []
    for day in script_of(week).days:
        for period in day.periods:
            head = {
                "day": day.title,
                "period": period.name,
                "begins": period.begins,
                "ends": period.ends,
                "minutes": period.minutes,
                "contact": period.contact,
            }
            rows += [
                {**head, **{k: v for k, v in vars(line).items() if k not in ("said", "kills")}}
                for line in period.lines
            ]
    return rows


def week_json(week: Week) -> dict[str, Any]:
    """All of the week as JSON values, in an order that follows from the week alone."""
    plan = week.plan
    return {
        "version": VERSION,
        "week": plan.number,
        "opponent": plan.opponent,
        "team": plan.team,
        "date": plan.date,
        "code": plan.code.key,
        "faces": list(plan.faces),
        "sheet": [
            {
                "situation": each.title,
                "words": each.situation.words,
                "rows": [_row(week, row) for row in each.rows],
            }
            for each in plan.lists
        ],
        "index": [_indexed(entry) for entry in week.entries],
        "bands": [_band(week, band) for band in plan.bands],
        "script": [_period(week, period) for period in plan.periods],
        "scout": [
            {"name": each.name, "rows": [_row(week, row) for row in each.rows]}
            for each in plan.scouts
        ],
        "game_plan": _game_plan(week),
        "install": _install(week),
        "positions": [_own_book(week, man) for man in men_of(plan)],
        "quizzes": [_quiz(paper) for paper in quiz_papers(week)],
        "counting": _counting(week),
        "plays": [_play(e.play) for e in week.entries],
    }


def _indexed(entry: CallEntry) -> dict[str, Any]:
    return {
        "number": entry.number,
        "call": entry.call,
        "short": entry.short,
        "page": entry.page,
        "formation": entry.formation,
        "personnel": entry.personnel,
        "situations": list(entry.situations),
    }


def _band(week: Week, band: PlanBand) -> dict[str, Any]:
    entries = sorted((week.entry(call) for call in band.calls), key=lambda e: e.number or 0)
    return {
        "name": band.name,
        "men": list(band.men),
        "width": band.width,
        "height": band.height,
        "windows": band.windows,
        "cells": [{"number": e.number, "short": e.short, "call": e.call} for e in entries],
    }


def _period(week: Week, period: PlanPeriod) -> dict[str, Any]:
    return {
        "day": period.day,
        "period": period.name,
        "minutes": period.minutes,
        "contact": period.contact.value,
        "groups": list(period.groups),
        "rows": [_row(week, row) for row in period.rows],
    }


def _called(entry: CallEntry) -> dict[str, Any]:
    """A call as every paper names it."""
    return {"number": entry.number, "call": entry.call, "page": entry.page}


def _game_plan(week: Week) -> dict[str, Any] | None:
    """The week's own book: its calls in the order of its pages, and what answers each look."""
    if week.game is None:
        return None

    def told(answers: Iterable[LookAnswer]) -> list[dict[str, Any]]:
        return [{**_called(week.entry(a.call)), "words": a.words} for a in answers]

    plays = week.game.season.plays
    return {
        "calls": [
            {**_called(week.entry(p.call.spoken)), "family": p.family, "concept": p.call.concept}
            for p in plays
        ],
        "looks": [
            {
                "name": look.name,
                "shows": list(look.shows),
                "rushers": look.rushers,
                "leaves": [{"part": part, "calls": count} for part, count in look.leaves],
                "answers": told(look.answers),
                "without": told(look.without),
            }
            for look in week.game.looks
        ],
    }


def _install(week: Week) -> dict[str, Any] | None:
    """The season by day, and the week's calls by the day that completed each."""
    sheet = week.install
    if sheet is None:
        return None
    practised = dict(sheet.practised)
    return {
        "name": sheet.name,
        "days": [
            {
                "title": day.title,
                "date": day.date,
                "new": [{"kind": kind, "names": list(names)} for kind, names in day.new],
                "again": list(day.again),
                "jobs": [
                    {"men": list(new.men), "count": new.jobs, "concepts": list(new.concepts)}
                    for new in day.men
                ],
                "came": list(day.came),
                "callable": day.callable,
                "before_this_game": day.now,
            }
            for day in sheet.days
        ],
        "calls": [
            {**_called(week.entry(call)), "since": day.title, "run": list(practised[call])}
            for day in sheet.planned
            for call in day.calls
        ],
        "practices": [
            {"day": p.day, "concepts": [{"name": n, "since": since} for n, since in p.concepts]}
            for p in sheet.practices
        ],
    }


def _own_book(week: Week, man: str) -> dict[str, Any]:
    book = own_book(week, man)
    return {
        "man": man,
        "places": [{"words": p.words, "formations": list(p.formations)} for p in book.places],
        "jobs": [
            {**_task(job.task), "calls": [_called(e) for alike in job.alike for e in alike.calls]}
            for job in book.jobs
        ],
        "since": book.since,
        "came": [_called(entry) for entry in book.came],
        "went": list(book.went),
    }


def _task(task: OwnTask) -> dict[str, Any]:
    return {
        "motion": task.motion,
        "job": task.job,
        "looks": [{"when": when, "words": words} for when, words in task.looks],
        "says": list(task.says),
    }


def _quiz(paper: QuizPaper) -> dict[str, Any]:
    """The questions in their order, each with its answer."""
    return {
        "man": paper.man,
        "day": paper.day,
        "questions": [{**_called(q.entry), **_task(q.answer)} for q in paper.questions],
    }


def _counting(week: Week) -> dict[str, Any]:
    counted = leanings_of(week)
    return {
        "rows": counted.rows,
        "groups": [
            {
                "title": group.title,
                "leanings": [
                    {"name": one.name, "rows": one.rows, "runs": one.runs} for one in group.leanings
                ],
            }
            for group in counted.groups
        ],
        "leaves": list(counted.leaves),
    }


def _play(play: Play) -> dict[str, Any]:
    """A play as it is resolved: who stands where and does what."""
    call = play.call
    return {
        "call": call.spoken,
        "kind": "run" if play.kind.value == "run" else "pass",
        "formation": call.formation,
        "side": call.side.word,
        "motion": call.motion,
        "concept": call.concept,
        "tags": list(call.tags),
        "family": play.family,
        "ball": play.ball.value,
        "shape": list(play.shape),
        "protection": play.protection,
        "men": [
            {
                "label": man.label,
                "position": man.position.value,
                "lines_up": _point(man.at.x, man.at.y),
                "snap": _point(man.snap.x, man.snap.y),
                "on_line": man.on_line,
            }
            for man in play.men
        ],
        "jobs": [_job(task) for task in play.assignments],
        "feet": [step.words for step in play.feet],
        "reads": [
            {"number": r.number, "target": r.target, "men": list(r.men), "foot": r.foot}
            for r in play.reads
        ],
    }


def _job(task: Assignment) -> dict[str, Any]:
    path = task.path.corners if task.path is not None else ()
    return {
        "man": task.man,
        "role": task.role_said,
        "job": task.job,
        "path": [_point(p.x, p.y) for p in path],
    }


def _point(x: float, y: float) -> list[float]:
    return [round(x, _DECIMALS) + 0.0, round(y, _DECIMALS) + 0.0]
