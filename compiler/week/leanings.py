"""What a plan leans on, counted by row of its lists, and what it leaves: tendencies before the
opponent sees them."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass

from stemline.football.field import Way
from stemline.football.play import Kind
from stemline.week.killed_rows import arrowed, killed, printed_call
from stemline.week.week_values import CallEntry, PlanRow, RowAnswer, Week

ALWAYS = 3
"""Rows of a formation from which it is told that it is always run or always passed from; a
default of this program, no published source."""


@dataclass(frozen=True)
class Leaning:
    """Rows of one sort: how many, and how many of them are runs."""

    name: str
    rows: int
    runs: int

    @property
    def passes(self) -> int:
        return self.rows - self.runs


@dataclass(frozen=True)
class LeaningGroup:
    """Sorts of one kind, the one of most rows first; ``said`` is what is counted, "" for all."""

    title: str
    said: str
    leanings: tuple[Leaning, ...]

    @property
    def rows(self) -> int:
        return sum(each.rows for each in self.leanings)


@dataclass(frozen=True)
class SituationAnswers:
    """A list of the plan against the looks of the week: of ``passes`` asked each, how many have an
    answer, in the order of the looks; (0, 0) where none of its passes may meet the look."""

    situation: str
    answered: tuple[tuple[int, int], ...]


@dataclass(frozen=True)
class Leanings:
    """All that is counted of ``rows`` rows; what is left is in sentences. ``looks`` are those of
    the week, and ``answers`` what each list that has a pass has against them."""

    rows: int
    groups: tuple[LeaningGroup, ...]
    leaves: tuple[str, ...]
    looks: tuple[str, ...] = ()
    answers: tuple[SituationAnswers, ...] = ()


def leanings_of(week: Week, answers: Sequence[RowAnswer] = ()) -> Leanings:
    """The plan's rows counted; a call that stands on three lists counts three times. ``answers``
    are those of its passes to the looks that the week names."""
    rows = [row for each in week.plan.lists for row in each.rows]
    # A plan that says no hash leans on none.
    hashes = any(row.spot for row in rows)
    ways: tuple[tuple[str, str, Callable[[PlanRow], str]], ...] = (
        ("Run and pass", "", lambda row: "run" if _runs(week, row) else "pass"),
        ("Formation", "", lambda row: week.entry(row.call).formation),
        ("Personnel", "", lambda row: week.entry(row.call).personnel),
        ("Hash", "", lambda row: (row.spot.value if row.spot else "not said") if hashes else ""),
        ("Strong and weak", "Runs, by the side they go to.", lambda row: _strong(week, row)),
        (
            "Field and boundary",
            "Runs planned on a hash, or called by the field.",
            lambda row: _field(week, row),
        ),
        ("Motion", "", lambda row: week.entry(row.call).play.call.motion or "none"),
        ("Concept", "", lambda row: week.entry(row.call).play.call.concept),
        ("Killed to", "Counted above as what is called first.", lambda row: _killed(week, row)),
    )
    groups = tuple(
        LeaningGroup(title, said, _counted(week, rows, sort)) for title, said, sort in ways
    )
    looks = week.plan.faces
    table = tuple(_answered(week, answers))
    return Leanings(
        len(rows),
        tuple(group for group in groups if group.leanings),
        (*_unanswered(looks, table), *_leaves(week, rows)),
        looks if table else (),
        table,
    )


def _answered(week: Week, answers: Iterable[RowAnswer]) -> Iterator[SituationAnswers]:
    found: dict[tuple[str, str], list[bool]] = {}
    for each in answers:
        found.setdefault((each.situation, each.look), []).append(each.answer.given)
    for one in week.plan.lists:
        cells = [found.get((one.title, look), []) for look in week.plan.faces]
        if any(cells):
            yield SituationAnswers(one.title, tuple((sum(c), len(c)) for c in cells))


def _unanswered(looks: Sequence[str], table: Sequence[SituationAnswers]) -> Iterator[str]:
    """The situations in which no pass has an answer to a look; runs are not asked."""
    for n, look in enumerate(looks):
        bare = [a.situation for a in table if a.answered[n][1] and not a.answered[n][0]]
        if bare:
            yield f"No pass has an answer to {look} by the clock in: {'; '.join(bare)}."


def _counted(
    week: Week, rows: Iterable[PlanRow], sort: Callable[[PlanRow], str]
) -> tuple[Leaning, ...]:
    """The rows by sort; one whose sort is "" is not of the kind."""
    found: dict[str, list[bool]] = {}
    for row in rows:
        if name := sort(row):
            found.setdefault(name, []).append(_runs(week, row))
    made = [Leaning(name, len(runs), sum(runs)) for name, runs in found.items()]
    return tuple(sorted(made, key=lambda each: (-each.rows, each.name)))


def _killed(week: Week, row: PlanRow) -> str:
    """What the row's call is, and becomes at the line; "" for nothing."""
    play = week.entry(row.call).play
    kills = killed(row, play)
    return arrowed(play.call.concept, kills) if kills else ""


def _runs(week: Week, row: PlanRow) -> bool:
    return week.entry(row.call).play.kind is Kind.RUN


def _strong(week: Week, row: PlanRow) -> str:
    play = week.entry(row.call).play
    if play.kind is not Kind.RUN or play.toward is None:
        return ""
    return "strong" if play.toward is play.strong else "weak"


def _field(week: Week, row: PlanRow) -> str:
    """Where a run goes from the hash that it is planned on; one that is called by the field says
    it from wherever it is called."""
    play = week.entry(row.call).play
    way = play.call.way
    if way is None:
        wide = row.spot.wide_side if row.spot else None
    else:
        wide = play.call.side if way is Way.FIELD else play.call.side.other
    if play.kind is not Kind.RUN or play.toward is None or wide is None:
        return ""
    return "field" if play.toward is wide else "boundary"


def _leaves(week: Week, rows: Sequence[PlanRow]) -> Iterator[str]:
    """What the opponent may know before the snap, and which numbers nobody will need or find."""
    always: tuple[tuple[Callable[[PlanRow], str], str], ...] = (
        (lambda row: week.entry(row.call).formation, "{}"),
        (lambda row: week.entry(row.call).play.call.motion or "", "Motion {}"),
        (lambda row: week.entry(row.call).personnel, "Personnel {}"),
    )
    for sort, words in always:
        for one in _counted(week, rows, sort):
            if one.rows >= ALWAYS and one.runs in (0, one.rows):
                what = "run" if one.runs else "passed"
                yield f"{words.format(one.name)} is always {what} from: {one.rows} rows."
    strong = _counted(week, rows, lambda row: _strong(week, row))
    field = _counted(week, rows, lambda row: _field(week, row))
    for sides, of in ((strong, ""), (field, " on a hash or called by the field")):
        if len(sides) == 1 and sides[0].rows >= ALWAYS:
            yield f"Every run{of} goes to the {sides[0].name} side: {sides[0].rows} rows."
    yield from _numbers_left(week)


def _numbers_left(week: Week) -> Iterator[str]:
    """Numbers that are kept for a call nobody calls, that no band has, that nobody practises."""
    plan = week.plan
    idle = [f"{n} {call}" for call, n in plan.frozen.items() if call not in plan.calls]
    if idle:
        yield f"A number kept and never called: {', '.join(idle)}."
    numbered = [e for e in week.entries if e.number is not None]
    worn = {call for band in plan.bands for call in band.calls}
    practised = {row.call for row in plan.scripted}
    if plan.bands and (bare := [e for e in numbered if e.call not in worn]):
        yield f"On no wristband: {_named(bare)}."
    if plan.periods and (never := [e for e in numbered if e.call not in practised]):
        yield f"In no practice of the week: {_named(never)}."


def _named(entries: Iterable[CallEntry]) -> str:
    return ", ".join(f"{entry.number} {printed_call(entry.call, entry.play)}" for entry in entries)
