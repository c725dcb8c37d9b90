"""One concept's page: its first call in full, the others as dress-ups of it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import islice

from stemline.book.content.answer_table import Answers
from stemline.book.content.answer_table import answers as reads_by_looks
from stemline.book.content.block_table import (
    MOST_VIEWS,
    Front,
    Fronts,
    KeyRead,
    against,
    answers,
    fronts,
    grouped,
    key_reads,
    most_unlike,
)
from stemline.book.content.cast_table import CastTable, casting, changes
from stemline.book.content.cautions import cautions
from stemline.book.content.job_rows import JobChange, LineJobs, Row
from stemline.book.content.job_table import NOBODY, formation_columns, line, rows
from stemline.book.content.letters import only_theirs, spoken
from stemline.book.content.page import (
    Entry,
    Page,
    PageKind,
    Remark,
    call_ids,
    concept_groups,
    sentence,
)
from stemline.book.content.quarterback_strip import Quarterback, orders
from stemline.football.blocking.block_names import PROTECTIONS
from stemline.football.field import BallSpot
from stemline.football.play import ConceptSheet, Kind, Play, Season
from stemline.source import NOWHERE

BRIEF = 74
"""Letters that a line of the contents has room for beside a concept's name; measured."""
FREE = "unblocked"
MOST_COLUMNS = 4
"""Formations whose letters the assignment table has room for beside the jobs."""


@dataclass(frozen=True, kw_only=True)
class ConceptPage(Page):
    """All that is printed of one concept or run.

    ``columns`` name the formations that the assignment table has letters for, or hold one "man";
    when formations are too many for that, ``casting`` is a table of its own. ``fronts`` is, on a
    run, the table of who blocks whom; on a pass ``answers`` are the reads against each look.
    """

    template = "concept.html.jinja"

    base: Entry
    serves: str
    columns: tuple[str, ...]
    rows: tuple[Row, ...]
    line: LineJobs | None
    quarterback: Quarterback | None
    casting: CastTable | None
    keys: tuple[KeyRead, ...]
    fronts: Fronts | None
    answers: Answers | None

    @property
    def brief(self) -> str:
        """What it serves, on one line of the contents."""
        words = self.serves
        if len(words) <= BRIEF:
            return words
        return f"{words[:BRIEF].rsplit(', ', 1)[0]} …"

    @property
    def under(self) -> str:
        return f"serves {self.serves}"

    @property
    def rusher(self) -> float | None:
        return self.answers.rusher if self.answers is not None else None

    @property
    def split(self) -> int:
        """Per cent of the words' width in the table that go to what changes a job, from 20 to 50.

        Long jobs beside short changes get the wider column, and the other way round.
        """
        changing = [row for row in self.rows if row.changes]
        if not changing:
            return 0
        job = max(len(row.job) for row in changing)
        change = max(_length(row.changes) for row in changing)
        return min(50, max(20, round(100 * change / (job + change))))


def _length(notes: tuple[Remark, ...]) -> int:
    """Letters of notes set one after another."""
    return sum(len(note.label) + len(note.words) + 3 for note in notes)


def _pages(season: Season) -> Iterator[ConceptPage]:
    """A page a concept with all its calls, those of a family together."""
    sheets = {sheet.name: sheet for sheet in season.concepts}
    tables, ids = reads_by_looks(season), iter(call_ids(season))
    families: dict[str, list[ConceptPage]] = {}
    for plays in concept_groups(season):
        name, family = plays[0].call.concept, plays[0].family
        sheet = sheets.get(name) or ConceptSheet(name, family, (), (), (), (), (), NOWHERE)
        page = _page(sheet, plays, tuple(islice(ids, len(plays))), season, tables.get(name))
        families.setdefault(family, []).append(page)
    return (page for pages in families.values() for page in pages)


KIND = PageKind(20, _pages)


def _page(
    sheet: ConceptSheet,
    plays: tuple[Play, ...],
    ids: tuple[str, ...],
    season: Season,
    table: Answers | None,
) -> ConceptPage:
    """The page of ``sheet``; ``plays`` are its calls in book order and ``ids`` their ids."""
    base = plays[0]
    columns = formation_columns(plays)
    merged = len(columns) <= MOST_COLUMNS
    calls = tuple(
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
        serves=_serves(sheet, plays),
        drawn=_drawn(base),
        base=calls[0],
        columns=tuple(name for name, _ in columns) if merged and len(columns) > 1 else ("man",),
        rows=_alike(jobs) if base.kind is Kind.RUN else jobs,
        line=_marked_line(five, theirs),
        quarterback=orders(plays) if base.reads or base.kind is Kind.PASS else None,
        says=tuple(spoken(line, theirs) for line in sheet.says),
        tags=_tags(sheet, theirs),
        cautions=(*sheet.cautions, *cautions((*plays, *sheet.views), season)),
        casting=None if merged else casting(columns),
        dressups=(*calls[1:], *_views(most_unlike(blocked, MOST_VIEWS), ids[0])),
        again="dressed up" if calls[1:] else "against other fronts",
        keys=key_reads(plays, sheet.keyed),
        fronts=fronts(blocked, rule, FREE),
        clock=f"clock-{ids[0]}" if base.reads and base.feet else "",
        answers=table,
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
