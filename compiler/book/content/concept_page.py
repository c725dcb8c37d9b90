"""One concept's page: its first call in full, the others as dress-ups of it."""

from __future__ import annotations

from dataclasses import replace

from stemline.book.content.block_table import (
    MOST_VIEWS,
    Front,
    against,
    answers,
    fronts,
    grouped,
    key_reads,
    most_unlike,
)
from stemline.book.content.cast_table import casting, changes
from stemline.book.content.cautions import cautions
from stemline.book.content.job_table import NOBODY, formation_columns, line, rows
from stemline.book.content.letters import only_theirs, spoken
from stemline.book.content.page_models import (
    ConceptPage,
    Entry,
    JobChange,
    LineJobs,
    Remark,
    Row,
    sentence,
)
from stemline.book.content.quarterback_strip import orders
from stemline.football.blocking.block_names import PROTECTIONS
from stemline.football.field import BallSpot
from stemline.football.play import ConceptSheet, Kind, Play, Season

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
    theirs = only_theirs((*plays, *sheet.views, *sheet.faced))
    blocked = grouped((base, *sheet.views))
    jobs = _marked(rows(plays, columns if merged else columns[:1]), theirs)
    five = line(plays, lambda name: _protects(name, season), bool(blocked))
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
        rows=_alike(jobs) if base.kind is Kind.RUN else jobs,
        line=_marked_line(five, theirs),
        quarterback=orders(plays) if base.reads or base.kind is Kind.PASS else None,
        says=tuple(spoken(line, theirs) for line in sheet.says),
        tags=_tags(sheet, theirs),
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


def _marked(rows: tuple[Row, ...], theirs: frozenset[str]) -> tuple[Row, ...]:
    """The rows with the letters of the defence told from ours in a coach's sentences too."""
    return tuple(
        replace(
            row,
            task=replace(row.task, says=tuple(spoken(line, theirs) for line in row.task.says)),
            but=_changes(row.but, theirs, "says"),
        )
        for row in rows
    )


def _marked_line(line: LineJobs | None, theirs: frozenset[str]) -> LineJobs | None:
    if line is None:
        return None
    jobs = tuple(replace(note, words=spoken(note.words, theirs)) for note in line.jobs)
    but = _changes(line.but, theirs, "line")
    return replace(line, job=spoken(line.job, theirs), jobs=jobs, but=but)


def _changes(
    but: tuple[JobChange, ...], theirs: frozenset[str], part: str
) -> tuple[JobChange, ...]:
    return tuple(
        replace(change, words=spoken(change.words, theirs)) if change.part == part else change
        for change in but
    )


def _tags(sheet: ConceptSheet, theirs: frozenset[str]) -> tuple[Remark, ...]:
    """Each tag with the coach's words for it; those without any on one line together."""
    said = tuple(
        Remark(tag, " ".join(spoken(sentence(line), theirs) for line in lines))
        for tag, lines in sheet.tags
        if lines
    )
    bare = ", ".join(tag for tag, lines in sheet.tags if not lines)
    return (*said, *((Remark("Tags", bare),) if bare else ()))


def _serves(sheet: ConceptSheet, plays: tuple[Play, ...]) -> str:
    shapes = dict.fromkeys(sheet.serves or (f"{s}x{w}" for s, w in (p.shape for p in plays)))
    formations = dict.fromkeys(play.call.formation for play in plays)
    return f"{', '.join(shapes)} · {', '.join(formations)}"


def _drawn(play: Play) -> str:
    """Against what and from where the large picture is drawn."""
    middle = play.ball is BallSpot.MIDDLE
    spot = "from the middle of the field" if middle else f"from the {play.ball.value}"
    return f"against {play.defence.name}, {spot}" if play.defence else spot


def _alike(rows: tuple[Row, ...]) -> tuple[Row, ...]:
    """Rows of one job in one: on a run most receivers are told the same."""
    together: dict[object, list[Row]] = {}
    for row in rows:
        named = any(change.part in ("man", "only") for change in row.but)
        together.setdefault((row.task, row.but, row.role if named else ""), []).append(row)
    return tuple(_joined(same) for same in together.values())


def _joined(rows: list[Row]) -> Row:
    cells = zip(*(row.men for row in rows), strict=True)
    men = tuple(" ".join(man for man in cell if man != NOBODY) or NOBODY for cell in cells)
    return Row(men, "", rows[0].task, rows[0].but) if len(rows) > 1 else rows[0]


def _protects(name: str, season: Season) -> str:
    """What a protection of that name does: the playbook's own words, else the library's."""
    own = {sheet.name.casefold(): sheet.words for sheet in season.protections}
    return own.get(name.casefold()) or PROTECTIONS.get(name, "")
