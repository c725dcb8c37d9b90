"""One concept's page: its first call in full, the others as dress-ups of it."""

from __future__ import annotations

from stemline.book.casting import (
    NOBODY,
    Column,
    casting,
    changes,
    formation_changes,
    formation_columns,
    role_players,
    tag_changes,
)
from stemline.book.crossing import paths_cross
from stemline.book.model import ConceptPage, Entry, Line, Note, Row
from stemline.book.quarterback import strip
from stemline.football.blocking import PROTECTIONS
from stemline.football.field import BallSpot
from stemline.football.play import Assignment, ConceptSheet, Play, Season

MOST_COLUMNS = 4
"""Formations whose letters the assignment table has room for beside the jobs."""


def concept_page(
    sheet: ConceptSheet, plays: tuple[Play, ...], ids: tuple[str, ...], season: Season, opens: bool
) -> ConceptPage:
    """The page of ``sheet``; ``plays`` are its calls in book order and ``ids`` their ids."""
    base = plays[0]
    columns = formation_columns(plays)
    merged = len(columns) <= MOST_COLUMNS
    entries = tuple(
        Entry(id_, play.call.spoken, changes(play, base) if play is not base else ())
        for id_, play in zip(ids, plays, strict=True)
    )
    return ConceptPage(
        id=f"concept-{ids[0]}",
        name=sheet.name,
        family=sheet.family,
        opens=opens,
        serves=_serves(sheet, plays),
        drawn=_drawn(base),
        base=entries[0],
        columns=tuple(name for name, _ in columns) if merged and len(columns) > 1 else ("man",),
        rows=_rows(columns if merged else columns[:1], plays),
        line=_line(base),
        quarterback=strip(base),
        says=sheet.says,
        tags=_tags(sheet),
        cautions=_cautions(sheet, plays, season),
        casting=None if merged else casting(columns),
        dressups=entries[1:],
    )


def _tags(sheet: ConceptSheet) -> tuple[Note, ...]:
    """Each tag with the coach's words for it; those without any on one line together."""
    said = tuple(
        Note(tag, " ".join(_stop(line) for line in lines)) for tag, lines in sheet.tags if lines
    )
    bare = ", ".join(tag for tag, lines in sheet.tags if not lines)
    return (*said, *((Note("Tags", bare),) if bare else ()))


def _serves(sheet: ConceptSheet, plays: tuple[Play, ...]) -> str:
    shapes = dict.fromkeys(sheet.serves or (f"{s}x{w}" for s, w in (p.shape for p in plays)))
    formations = dict.fromkeys(play.call.formation for play in plays)
    return f"{', '.join(shapes)} · {', '.join(formations)}"


def _drawn(play: Play) -> str:
    """From where the large picture is drawn."""
    if play.ball is BallSpot.MIDDLE:
        return "from the middle of the field"
    return f"from the {play.ball.value}"


def _rows(columns: tuple[Column, ...], plays: tuple[Play, ...]) -> tuple[Row, ...]:
    """A row for each man who is not a lineman and has something to do, and for each role that
    only another formation has; ``columns`` are the formations with a cell in every row.
    """
    base = columns[0][1]
    men = [a for a in base.assignments if not base.man(a.man).interior]
    rows = [
        Row(
            tuple(_letter(a.role, play) for _, play in columns)
            if a.role
            else (a.man, *("" for _ in columns[1:])),
            a.role,
            _job(a),
            _changes(a, columns, plays),
        )
        for a in men
        if a.role or a.job or a.says
    ]
    known = {a.role for a in men}
    for _, play in columns[1:]:
        for a in role_players(play):
            if a.role not in known:
                known.add(a.role)
                letters = tuple(_letter(a.role, other) for _, other in columns)
                rows.append(Row(letters, a.role, _job(a), _changes(a, columns, plays)))
    return tuple(rows)


def _changes(
    a: Assignment, columns: tuple[Column, ...], plays: tuple[Play, ...]
) -> tuple[Note, ...]:
    return (
        *formation_changes(a.role, columns),
        *(Note(branch.looks, branch.job) for branch in a.branches),
        *tag_changes(plays).get(a.role, ()),
    )


def _letter(role: str, play: Play) -> str:
    assignment = play.runs(role)
    return assignment.man if assignment else NOBODY


def _job(assignment: Assignment) -> str:
    moved = assignment.motion.words if assignment.motion else ""
    return " ".join(_stop(part) for part in (moved, assignment.job, *assignment.says) if part)


def _line(base: Play) -> Line | None:
    """The five: the protection, and who does what when they do not all do the same."""
    jobs: dict[str, list[str]] = {}
    for a in base.assignments:
        if base.man(a.man).interior and (a.job or a.says):
            jobs.setdefault(_job(a), []).append(a.man)
    if not jobs and not base.protection:
        return None
    if len(jobs) == 1:
        return Line(base.protection, next(iter(jobs)), ())
    words = PROTECTIONS.get(base.protection, "")
    return Line(base.protection, words, tuple(Note(" ".join(m), job) for job, m in jobs.items()))


def _cautions(sheet: ConceptSheet, plays: tuple[Play, ...], season: Season) -> tuple[str, ...]:
    crossing = season.crossing_contact if any(paths_cross(play) for play in plays) else ""
    return (*sheet.cautions, *((crossing,) if crossing else ()))


def _stop(words: str) -> str:
    """A sentence with its full stop; coaches' lines come with and without one."""
    words = words.strip()
    return words if not words or words[-1] in ".!?" else f"{words}."
