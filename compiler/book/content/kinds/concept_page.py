"""One concept's page: its first call in full; and pages of what the others make of it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import partial
from itertools import islice

from stemline.book.content.answer_table import Answers
from stemline.book.content.answer_table import answers as reads_by_looks
from stemline.book.content.backfield import HANDS, backfield
from stemline.book.content.block_table import (
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
from stemline.book.content.by_call import ByCall, OwnRow, by_call, own_rows
from stemline.book.content.by_spot import BySpot, by_spot, spots_said
from stemline.book.content.cast_table import changes, new_jobs
from stemline.book.content.cautions import cautions
from stemline.book.content.drawn_calls import left_out
from stemline.book.content.dressed_page import (
    DressedPage,
    DressGroup,
    dressed,
    enough,
    mirrors,
    said_of,
)
from stemline.book.content.job_rows import JobChange, LineJobs, Row
from stemline.book.content.job_table import NOBODY, formation_columns, line, rows
from stemline.book.content.keeping import KeepPart, Reads
from stemline.book.content.letters import mark, only_theirs, spoken
from stemline.book.content.page import (
    Entry,
    Page,
    PageKind,
    Remark,
    call_ids,
    concept_groups,
    sentence,
)
from stemline.book.content.page_marks import (
    SOLID,
    answer_marks,
    block_marks,
    picture_marks,
    signs_of,
)
from stemline.book.content.pointed_places import concept_places, formation_place
from stemline.book.content.quarterback_strip import Quarterback, orders
from stemline.book.content.second_plays import second_plays, tag_words, told_seconds
from stemline.diagnostics.in_words import each_sign_once, how_many
from stemline.football.blocking.block_names import PROTECTIONS
from stemline.football.play import Call, ConceptSheet, Kind, Play, Season
from stemline.source import NOWHERE

BRIEF = 70
"""Letters that a line of the contents has room for beside a concept's name; measured."""
FREE = "unblocked"
VIEWS = 1
"""Fronts, beside the first picture's, that a run is drawn against: the table tells the others."""


@dataclass(frozen=True, kw_only=True)
class ConceptPage(Page):
    """All that is printed of one concept or run in its first call.

    ``rows`` tell the jobs of all its calls, who has them in each
    formation in ``columns``, or in one named "man" where all cast it alike; ``own`` are those of
    its own call. ``fronts`` is, on a run, the table of who blocks whom; on a pass ``answers`` are
    the reads against each look. ``seconds`` are the plays that its call becomes at the line, and a
    trick's backfield close, drawn beside the jobs; ``killed`` are the words for the former.
    ``changes`` and ``change_keys`` are what its other calls change and whom they read: on this
    sheet where it has room, else on those of the dress-ups. ``holds`` are, on a run, the looks
    against which its call leaves nobody unblocked. ``killed_on`` are the ids of the pages of
    what its call becomes.
    """

    template = "concept.html.jinja"

    base: Entry
    serves: str
    suits: str
    columns: tuple[str, ...]
    rows: tuple[Row, ...]
    own: tuple[OwnRow, ...]
    line: LineJobs | None
    quarterback: Quarterback | None
    keys: tuple[KeyRead, ...]
    fronts: Fronts | None
    answers: Answers | None
    seconds: tuple[Entry, ...] = ()
    killed: tuple[Remark, ...] = ()
    changes: tuple[ByCall, ...] = ()
    change_keys: tuple[KeyRead, ...] = ()
    holds: tuple[str, ...] = ()
    killed_on: tuple[str, ...] = ()

    @property
    def answered(self) -> str:
        """What the cells of its reads against each look mean."""
        return answer_marks(self.answers)

    @property
    def framed(self) -> tuple[tuple[Entry, ...], ...]:
        close = tuple(e for e in self.seconds if e.id.endswith(HANDS))
        others = tuple(e for e in self.seconds if e not in close)
        return tuple(together for together in (others, close) if together)

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


def _pages(
    season: Season, _: Sequence[Page], keep: KeepPart
) -> Iterator[ConceptPage | DressedPage]:
    """A page a concept, those of a family together, and after them their dress-ups, one concept
    below the other: each begins where the one before ends, runs and passes alike."""
    waiting: list[DressGroup] = []
    places = concept_places(season)
    for page, group in _by_family(season, keep):
        yield _placed(page, places)
        waiting += [] if group.empty else [group]
        if waiting and enough(waiting):
            yield dressed(waiting)
            waiting = []
    if waiting:
        yield dressed(waiting)


def _placed(page: ConceptPage, places: Mapping[str, str]) -> ConceptPage:
    """The page with the places of what its call becomes; they move when other concepts do."""
    return replace(page, killed_on=tuple(places.get(name, "") for name in page.killed_on))


def _by_family(season: Season, keep: KeepPart) -> Iterator[tuple[ConceptPage, DressGroup]]:
    sheets = {sheet.name: sheet for sheet in season.concepts}
    tables, ids = reads_by_looks(season), iter(call_ids(season))
    families: dict[str, list[tuple[ConceptPage, DressGroup]]] = {}
    for plays in concept_groups(season):
        name, family = plays[0].call.concept, plays[0].family
        sheet = sheets.get(name) or ConceptSheet(name, family, (), (), (), (), (), NOWHERE)
        mine, table = tuple(islice(ids, len(plays))), tables.get(name)
        make = partial(_page, sheet, plays, mine, season, table)
        made = keep(
            Reads.CONCEPT, "section", tuple[ConceptPage, DressGroup], (mine, table), make, name
        )
        families.setdefault(family, []).append(made)
    return (page for pages in families.values() for page in pages)


KIND = PageKind(20, parts=_pages)


def _page(
    sheet: ConceptSheet,
    plays: tuple[Play, ...],
    ids: tuple[str, ...],
    season: Season,
    table: Answers | None,
) -> tuple[ConceptPage, DressGroup]:
    """The page of ``sheet`` and its dress-ups; ``plays`` are its calls in book order and ``ids``
    their ids."""
    base = plays[0]
    columns = formation_columns(plays)
    names = tuple(name for name, _ in columns)
    theirs = only_theirs((*plays, *sheet.views, *sheet.faced), sheet.put)
    blocked = grouped((base, *sheet.views))
    jobs = _marked(rows(plays, columns), theirs)
    five = line(plays, lambda name: _protects(name, season), bool(blocked))
    rule = next((view for view in sheet.views if view.defence is None), None)
    quarterback = orders(plays) if base.reads or base.kind is Kind.PASS else None
    jobs = _alike(jobs) if base.kind is Kind.RUN else jobs
    entries = _entries(plays, ids, season, sheet)
    blocks = fronts(blocked, rule, FREE)
    page = ConceptPage(
        id=f"concept-{ids[0]}",
        name=sheet.name,
        family=sheet.family,
        idea=sentence(sheet.idea),
        serves=_serves(sheet, plays),
        suits=", ".join(sheet.suits),
        drawn="; ".join(filter(None, (_drawn(base), *_spots(base, sheet)))),
        base=entries[0],
        seconds=(
            *second_plays(base, ids[0], season.level),
            *backfield(base, ids[0], season.level),
        ),
        killed=told_seconds(base, season.level),
        killed_on=tuple(one.play.call.concept for one in base.becomes),
        stands=formation_place(base.call.formation),
        columns=names if len(names) > 1 else ("man",),
        rows=jobs,
        own=own_rows(jobs, season.letters, base),
        line=_marked_line(five, theirs),
        quarterback=quarterback,
        says=tuple(spoken(line, theirs) for line in sheet.says),
        cautions=(*sheet.cautions, *cautions((*plays, *sheet.views), season)),
        keys=key_reads(plays, sheet.keyed),
        fronts=blocks,
        holds=_held(base, sheet) if sheet.kind is Kind.RUN else (),
        marks=" · ".join(filter(None, (picture_marks((base,)), block_marks(blocks)))),
        clock=f"clock-{ids[0]}" if base.reads and base.feet else "",
        answers=table,
    )
    passer = quarterback.but if quarterback is not None else ()
    group = DressGroup(
        id=f"dressed-{ids[0]}",
        of=page.id,
        name=page.name,
        family=page.family,
        calls=by_call(jobs, page.columns, page.line, passer, _tags(sheet, theirs, plays)),
        keys=tuple(key for key in page.keys if key.calls),
        entries=(
            *_from_spots(entries[0], sheet),
            *(each for one in entries[1:] for each in (one, *_from_spots(one, sheet))),
            *_views(most_unlike(blocked, VIEWS), ids[0]),
        ),
        said=(
            *_killed(plays, season),
            *(() if season.every_call else said_of(left_out(plays), plays)),
        ),
    )
    if group.empty:
        return page, group
    group = replace(
        group,
        entries=tuple(_explained(entry, group.keys) for entry in group.entries),
        signs=signs_of(entry.play for entry in group.entries),
    )
    page = replace(
        page,
        further=group.id,
        changes=group.calls,
        change_keys=group.keys,
        offered=group.entries,
        more=bool(group.said),
    )
    return page, group


def _explained(entry: Entry, keys: Sequence[KeyRead]) -> Entry:
    """A dress-up with what a man must know to read it where it stands alone: its signs, and what
    is done off the man whom it reads."""
    mine = [key for key in keys if entry.listed and key.calls == " + ".join(entry.play.call.tags)]
    told = (
        f"{mark(here.man) or key.described}: "
        + ", ".join(f"{choice.label} {choice.words}".strip() for choice in key.choices)
        for key, here in zip(mine, entry.play.keys if mine else (), strict=False)
    )
    marks = each_sign_once(picture_marks((entry.play,)), SOLID if entry.solid else "")
    return replace(entry, keyed="; ".join(told), marks=marks)


def _held(base: Play, sheet: ConceptSheet) -> tuple[str, ...]:
    """The looks against which a run leaves nobody unblocked."""
    firsts: dict[str, Play] = {}
    for view in (base, *sheet.views):
        if view.defence is not None:
            firsts.setdefault(view.defence.name, view)
    return tuple(look for look, view in firsts.items() if not view.unblocked)


def _killed(plays: tuple[Play, ...], season: Season) -> tuple[Remark, ...]:
    """What the calls after the first become at the line, those told alike together; nothing of
    what the first is told in the same words."""
    calls: dict[str, list[str]] = {}
    first = told_seconds(plays[0], season.level)
    for play in plays[1:]:
        for note in (each for each in told_seconds(play, season.level) if each not in first):
            calls.setdefault(f"{note.label} {note.words}", []).append(play.call.spoken)
    return tuple(Remark(", ".join(names), words) for words, names in calls.items())


def _entries(
    plays: tuple[Play, ...], ids: tuple[str, ...], season: Season, sheet: ConceptSheet
) -> tuple[Entry, ...]:
    """The calls that are drawn, each with those that it says too, and what they become at the line
    where the first does not become that."""
    left = () if season.every_call else left_out(plays)
    seen = {(kill.headed, kill.when) for kill in plays[0].becomes}
    gone = {one.call for one in left}
    made = []
    for i, (id_, play) in enumerate(zip(ids, plays, strict=True)):
        if i in gone:
            continue
        other = mirrors(i, left, plays)
        named = ", ".join(_beside(call, play.call, plays) for call in other)
        told = [f"and {named}"] if other else []
        if i and (spots := [*_spots(play, sheet)]):
            told += [_from(play), *spots]
        aside = "; ".join(told)
        said = tuple(plays[one.call].call.spoken for one in left if one.of[0] == i)
        changed = changes(play, plays[0]) if i else ()
        solid = new_jobs(play, plays[0]) if i else ()
        made.append(
            Entry(id_, play.call.spoken, play, changed, aside=aside, also=said, solid=solid)
        )
        seconds = second_plays(play, id_, season.level) if i else ()
        made += (one for one in seconds if (one.call, one.aside) not in seen)
    return tuple(made)


def _spots(play: Play, sheet: ConceptSheet) -> Iterator[str]:
    """Where a call is best called from, and what its picture lacks of its other spots; of a call to
    its side that no line keeps from a spot, the page of formations says it."""
    call = play.call
    if call.way is not None or call.best or call.not_from:
        yield from filter(None, (spots_said(play), _by_spot(play, sheet).words))


def _by_spot(play: Play, sheet: ConceptSheet) -> BySpot:
    return by_spot(play, [p for p in sheet.spotted if p.call.spoken == play.call.spoken])


def _from_spots(entry: Entry, sheet: ConceptSheet) -> tuple[Entry, ...]:
    """A call from the spots where its men have other jobs than in its picture."""
    return tuple(
        Entry(f"{entry.id}-spot-{i}", entry.call, play, listed=False, aside=_from(play))
        for i, play in enumerate(_by_spot(entry.play, sheet).apart, 1)
    )


def _from(play: Play) -> str:
    """Where the ball is, and which way the call goes from there."""
    wide = play.field.wide_side
    if wide is None:
        return "from the middle of the field"
    return f"from the {play.ball.value}, to the {'field' if play.call.side is wide else 'boundary'}"


def _beside(spoken: str, drawn: Call, plays: tuple[Play, ...]) -> str:
    """How a call is named beside the picture that says it: by its side, or its own name; one that
    only its tempo tells, by that tag."""
    call = next(play.call for play in plays if play.call.spoken == spoken)
    if call.tempo and call.side is drawn.side:
        return " + ".join(tag for tag in call.tags if tag not in drawn.tags)
    side = call.side.word
    return side if f" {side} ".casefold() in f" {spoken} ".casefold() else f"{side}: {spoken}"


def _views(columns: tuple[Front, ...], id_: str) -> tuple[Entry, ...]:
    """The first call against the looks that are answered otherwise than in its own picture."""
    return tuple(
        Entry(
            f"{id_}-view-{i}",
            f"{play.call.spoken} {against(names)[0]}",
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


def _tags(
    sheet: ConceptSheet, theirs: frozenset[str], plays: tuple[Play, ...]
) -> tuple[Remark, ...]:
    """Each tag with what it kills a call to, and the coach's words for it."""
    killed = tag_words(plays)
    return tuple(
        Remark(
            tag,
            " ".join(
                (
                    *((killed[tag],) if tag in killed else ()),
                    *(spoken(sentence(line), theirs) for line in lines),
                )
            ),
        )
        for tag, lines in sheet.tags
    )


def _serves(sheet: ConceptSheet, plays: tuple[Play, ...]) -> str:
    shapes = dict.fromkeys(sheet.serves or (f"{s}x{w}" for s, w in (p.shape for p in plays)))
    formations = dict.fromkeys(play.call.formation for play in plays)
    return f"{', '.join(shapes)} · {', '.join(formations)}"


def _drawn(play: Play) -> str:
    """Against whom and from where the large picture is drawn. In its corner the look's name stands
    too, but only where men leave room for it."""
    spot = _from(play) if play.call.way is not None else _from(play).partition(",")[0]
    goal = play.field.goal
    near = "" if goal is None else f"{how_many(goal, 'yard')} from their goal line"
    against = f"against {play.defence.name}" if play.defence is not None else ""
    return ", ".join(filter(None, (against, spot, near)))


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
