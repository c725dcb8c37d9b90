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
from stemline.book.cautions import cautions
from stemline.book.fronts import (
    MOST_VIEWS,
    Front,
    against,
    answers,
    fronts,
    grouped,
    key_reads,
    most_unlike,
)
from stemline.book.model import ConceptPage, Entry, Line, Note, Row
from stemline.book.quarterback import strip
from stemline.football.blocking import PROTECTIONS
from stemline.football.field import BallSpot
from stemline.football.play import Assignment, ConceptSheet, Kind, Play, Season

FREE = "unblocked"
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
        Entry(id_, play.call.spoken, play, changes(play, base) if play is not base else ())
        for id_, play in zip(ids, plays, strict=True)
    )
    blocked = grouped((base, *sheet.views))
    rows = _rows(columns if merged else columns[:1], plays)
    rule = next((view for view in sheet.views if view.defence is None), None)
    return ConceptPage(
        id=f"concept-{ids[0]}",
        name=sheet.name,
        family=sheet.family,
        opens=opens,
        serves=_serves(sheet, plays),
        drawn=_drawn(base),
        base=entries[0],
        columns=tuple(name for name, _ in columns) if merged and len(columns) > 1 else ("man",),
        rows=_alike(rows) if base.kind is Kind.RUN else rows,
        line=None if blocked else _line(base, season),
        quarterback=strip(base) if base.reads or base.kind is Kind.PASS else None,
        says=sheet.says,
        tags=_tags(sheet),
        cautions=(*sheet.cautions, *cautions((*plays, *sheet.views), season)),
        casting=None if merged else casting(columns),
        dressups=(*entries[1:], *_views(most_unlike(blocked, MOST_VIEWS), ids[0])),
        keys=key_reads(base),
        fronts=fronts(blocked, rule, FREE),
        clock=f"clock-{ids[0]}" if base.reads and base.feet else "",
    )


def _views(columns: tuple[Front, ...], id_: str) -> tuple[Entry, ...]:
    """The first call against the looks that are answered otherwise than in its own picture."""
    return tuple(
        Entry(
            f"{id_}-view-{i}",
            against(names)[0],
            play,
            answers(play, columns[0][1], FREE),
            listed=False,
            aside=against(names)[1],
        )
        for i, (names, play) in enumerate(columns[1:], 1)
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
    """Against what and from where the large picture is drawn."""
    middle = play.ball is BallSpot.MIDDLE
    spot = "from the middle of the field" if middle else f"from the {play.ball.value}"
    return f"against {play.defence.name}, {spot}" if play.defence else spot


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


def _alike(rows: tuple[Row, ...]) -> tuple[Row, ...]:
    """Rows of one job in one: on a run most receivers are told the same."""
    together: dict[tuple[str, tuple[Note, ...]], list[Row]] = {}
    for row in rows:
        together.setdefault((row.job, row.changes), []).append(row)
    return tuple(_joined(same) for same in together.values())


def _joined(rows: list[Row]) -> Row:
    cells = zip(*(row.men for row in rows), strict=True)
    men = tuple(
        " ".join(man for man in cell if man not in ("", NOBODY)) or NOBODY for cell in cells
    )
    return Row(men, "", rows[0].job, rows[0].changes) if len(rows) > 1 else rows[0]


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


def _line(base: Play, season: Season) -> Line | None:
    """The five: the protection, and who does what when they do not all do the same."""
    jobs: dict[str, list[str]] = {}
    for a in base.assignments:
        if base.man(a.man).interior and (a.job or a.says):
            jobs.setdefault(_job(a), []).append(a.man)
    if not jobs and not base.protection:
        return None
    if len(jobs) == 1:
        return Line(base.protection, next(iter(jobs)), ())
    notes = tuple(Note(" ".join(m), job) for job, m in jobs.items())
    return Line(base.protection, _protects(base.protection, season), notes)


def _protects(name: str, season: Season) -> str:
    """What a protection of that name does: the playbook's own words, else the library's."""
    own = {sheet.name.casefold(): sheet.words for sheet in season.protections}
    return own.get(name.casefold()) or PROTECTIONS.get(name, "")


def _stop(words: str) -> str:
    """A sentence with its full stop; coaches' lines come with and without one."""
    words = words.strip()
    return words if not words or words[-1] in ".!?" else f"{words}."
