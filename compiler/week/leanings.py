"""What a plan leans on, counted by row of its lists, and what it leaves: tendencies before the
opponent sees them."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass

from stemline.football.field import BallSpot, Side
from stemline.football.play import Kind
from stemline.week.week_values import PlanRow, Week

ALWAYS = 3
"""Rows of a formation from which it is told that it is always run or always passed from; a
default of this program, no published source."""
_FIELD = {BallSpot.LEFT_HASH: Side.RIGHT, BallSpot.RIGHT_HASH: Side.LEFT}


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
class Leanings:
    """All that is counted of ``rows`` rows; what is left is in sentences."""

    rows: int
    groups: tuple[LeaningGroup, ...]
    leaves: tuple[str, ...]


def leanings_of(week: Week) -> Leanings:
    """The plan's rows counted; a call that stands on three lists counts three times."""
    rows = [row for each in week.plan.lists for row in each.rows]
    ways: tuple[tuple[str, str, Callable[[PlanRow], str]], ...] = (
        ("Run and pass", "", lambda row: _kind(week, row)),
        ("Formation", "", lambda row: week.entry(row.call).formation),
        ("Personnel", "", lambda row: week.entry(row.call).personnel),
        ("Hash", "", lambda row: row.spot.value if row.spot else "not said"),
        ("Strong and weak", "Runs, by the side they go to.", lambda row: _strong(week, row)),
        ("Field and boundary", "Runs planned on a hash.", lambda row: _field(week, row)),
        ("Motion", "", lambda row: week.entry(row.call).play.call.motion or "none"),
        ("Concept", "", lambda row: week.entry(row.call).play.call.concept),
    )
    groups = tuple(
        LeaningGroup(title, said, _counted(week, rows, sort)) for title, said, sort in ways
    )
    return Leanings(
        len(rows), tuple(group for group in groups if group.leanings), tuple(_leaves(week, rows))
    )


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


def _runs(week: Week, row: PlanRow) -> bool:
    return week.entry(row.call).play.kind is Kind.RUN


def _kind(week: Week, row: PlanRow) -> str:
    return "run" if _runs(week, row) else "pass"


def _strong(week: Week, row: PlanRow) -> str:
    play = week.entry(row.call).play
    if play.kind is not Kind.RUN or play.toward is None:
        return ""
    return "strong" if play.toward is play.strong else "weak"


def _field(week: Week, row: PlanRow) -> str:
    play = week.entry(row.call).play
    wide = _FIELD.get(row.spot) if row.spot else None
    if play.kind is not Kind.RUN or play.toward is None or wide is None:
        return ""
    return "field" if play.toward is wide else "boundary"


def _leaves(week: Week, rows: Sequence[PlanRow]) -> Iterable[str]:
    """What the opponent may know before the snap, and what nobody has practised."""
    for one in _counted(week, rows, lambda row: week.entry(row.call).formation):
        if one.rows >= ALWAYS and one.runs in (0, one.rows):
            what = "run" if one.runs else "passed"
            yield f"{one.name} is always {what} from: {one.rows} rows."
    strong = _counted(week, rows, lambda row: _strong(week, row))
    field = _counted(week, rows, lambda row: _field(week, row))
    for sides, of in ((strong, ""), (field, " on a hash")):
        if len(sides) == 1 and sides[0].rows >= ALWAYS:
            yield f"Every run{of} goes to the {sides[0].name} side: {sides[0].rows} rows."
    practised = {row.call for row in week.plan.scripted}
    never = [e for e in week.entries if e.number is not None and e.call not in practised]
    if never and week.plan.periods:
        said = ", ".join(f"{entry.number} {entry.call}" for entry in never)
        yield f"In no practice of the week: {said}."
