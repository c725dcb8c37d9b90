"""A week laid over the one it starts from: drops, then moves, then additions, by key.

Calls are known here by how they are spoken in the book, so that two ways to say one are one.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace

from stemline.diagnostics.catalogue.weeks import E991, E992, E993
from stemline.diagnostics.diagnostic import Diagnostic, Related
from stemline.diagnostics.nearest import nearest
from stemline.football.situations import Situation
from stemline.playbook.week_definitions import (
    BandDef,
    DropDef,
    ListDef,
    MoveDef,
    Named,
    Numbering,
    PeriodDef,
    QuizDef,
    RowDef,
    ScoutDef,
    WeekDef,
)
from stemline.source import Span

Canon = Callable[[Named], str]
"""A call as it is spoken in the book; "" with a mistake told where it is none of its calls."""


@dataclass(frozen=True)
class KnownRow:
    """A row whose call the book knows."""

    call: str
    row: RowDef


@dataclass
class Merged:
    """All that a week says, its parent's lines and its own."""

    lists: dict[str, tuple[Situation, Span, list[KnownRow]]] = field(default_factory=dict)
    faces: tuple[Named, ...] = ()
    bands: dict[str, BandDef] = field(default_factory=dict)
    scouts: dict[str, ScoutDef] = field(default_factory=dict)
    periods: dict[str, PeriodDef] = field(default_factory=dict)
    quizzes: tuple[QuizDef, ...] = ()
    shorts: dict[str, tuple[Named, str]] = field(default_factory=dict)
    frozen: dict[str, tuple[Named, int]] = field(default_factory=dict)
    numbering: Numbering = field(default_factory=Numbering)
    starts: dict[str, int] = field(default_factory=dict)

    def copy(self) -> Merged:
        """A copy whose lists may be changed."""
        lists = {k: (s, span, list(rows)) for k, (s, span, rows) in self.lists.items()}
        return Merged(
            lists,
            self.faces,
            dict(self.bands),
            dict(self.scouts),
            dict(self.periods),
            self.quizzes,
            dict(self.shorts),
            dict(self.frozen),
            self.numbering,
            dict(self.starts),
        )


def merged(parent: Merged | None, week: WeekDef, canon: Canon) -> tuple[Merged, list[Diagnostic]]:
    """The week over its parent, and what it drops, moves or says twice in vain."""
    merging = _Merging(parent.copy() if parent else Merged(), canon, week.name)
    for drop in week.drops:
        merging.drop(drop)
    for move in week.moves:
        merging.move(move)
    for each in week.lists:
        merging.add(each)
    made = merging.made
    made.faces = week.faces or made.faces
    made.bands |= {each.name.casefold(): each for each in week.bands}
    made.scouts |= {each.name.casefold(): each for each in week.scouts}
    made.periods = periods_over(made.periods, week.periods)
    made.quizzes = week.quizzes or made.quizzes
    made.shorts |= {s.name.text.casefold(): (s.name, s.short) for s in week.shorts}
    for kept in week.frozen:
        if call := canon(kept.call):
            made.frozen[call] = (kept.call, kept.number)
    made.numbering = week.numbering or made.numbering
    made.starts |= dict(week.starts)
    made.lists = {key: each for key, each in made.lists.items() if each[2]}
    return made, merging.found


def period_key(period: PeriodDef) -> str:
    """A period of one name on one day replaces the old one."""
    return f"{period.day} {period.name}".casefold()


def periods_over(
    before: Mapping[str, PeriodDef], said: Sequence[PeriodDef]
) -> dict[str, PeriodDef]:
    """A week's periods over those of the week before. Those of a day are in the order in which they
    are said; one that is taken over keeps its place among them."""
    new = {period_key(each): each for each in said}
    order, ahead = list(before), dict[str, str]()
    for key, each in new.items():
        of_day = [k for k in new if new[k].day == each.day and k in order]
        behind = ahead.get(each.day)
        if behind is not None and key in order and order.index(key) < order.index(behind):
            order.remove(key)
        if key not in order and behind is not None:
            order.insert(order.index(behind) + 1, key)
        elif key not in order:
            order.insert(order.index(of_day[0]) if of_day else len(order), key)
        ahead[each.day] = key
    return {key: new.get(key) or before[key] for key in order}


class _Merging:
    def __init__(self, made: Merged, canon: Canon, name: str) -> None:
        self.made = made
        self.found: list[Diagnostic] = []
        self._canon = canon
        self._name = name

    # What goes.

    def drop(self, drop: DropDef) -> None:
        if drop.kind:
            self._drop_part(drop)
            return
        call = self._canon(drop.call) if drop.call else ""
        if drop.call and not call:
            return
        keys = list(self.made.lists)
        if drop.situation is not None:
            if drop.situation.key not in self.made.lists:
                self._missing(drop.situation, drop.span)
                return
            keys = [drop.situation.key]
        gone = 0
        for key in keys:
            _, _, rows = self.made.lists[key]
            kept = [r for r in rows if call and r.call != call]
            gone += len(rows) - len(kept)
            rows[:] = kept
        if not gone and call:
            where = drop.situation.words if drop.situation else self._name
            self.found.append(E992(what=call, where=where).at(drop.span))

    def _drop_part(self, drop: DropDef) -> None:
        parts: dict[str, dict[str, BandDef] | dict[str, ScoutDef] | dict[str, PeriodDef]] = {
            "wristband": self.made.bands,
            "scout": self.made.scouts,
            "period": self.made.periods,
        }
        table = parts[drop.kind]
        keys = [k for k, each in table.items() if each.name.casefold() == drop.name.casefold()]
        for key in keys:
            del table[key]
        if not keys:
            near = nearest(drop.name, [each.name for each in table.values()])
            what = f"the {drop.kind} {drop.name}"
            self.found.append(E992(what=what, where=self._name).at(drop.span, nearest=near))

    # What goes elsewhere.

    def move(self, move: MoveDef) -> None:
        call = self._canon(move.call)
        if not call:
            return
        if move.source is not None and move.source.key not in self.made.lists:
            self._missing(move.source, move.span)
            return
        keys = [move.source.key] if move.source else list(self.made.lists)
        taken: KnownRow | None = None
        for key in keys:
            rows = self.made.lists[key][2]
            if key != move.to.key or move.source is not None:
                taken = taken or next((r for r in rows if r.call == call), None)
                rows[:] = [r for r in rows if r.call != call]
        if taken is None:
            where = move.source.words if move.source else self._name
            self.found.append(E992(what=call, where=where).at(move.call.span))
            return
        row = replace(taken.row, first=False, after=move.after, call=move.call)
        self._place(move.to, [KnownRow(call, row)], move.span)

    # What comes.

    def add(self, each: ListDef) -> None:
        known = (KnownRow(self._canon(row.call), row) for row in each.rows)
        self._place(each.situation, [row for row in known if row.call], each.span)

    def _place(self, situation: Situation, rows: Iterable[KnownRow], span: Span) -> None:
        _, _, there = self.made.lists.setdefault(situation.key, (situation, span, []))
        first = 0
        for known in rows:
            again = next((r for r in there if _same(r, known)), None)
            if again is not None:
                at = Related(again.row.span, "the other line is here")
                self.found.append(
                    E991(call=known.call, situation=situation.words).at(
                        known.row.span, related=(at,)
                    )
                )
                continue
            place = len(there)
            if known.row.first:
                place, first = first, first + 1
            elif known.row.after is not None:
                place = self._behind(known.row.after, there, situation)
            there.insert(place, known)

    def _behind(self, after: Named, there: list[KnownRow], situation: Situation) -> int:
        call = self._canon(after)
        at = next((n for n, r in enumerate(there) if r.call == call), None) if call else None
        if at is None:
            if call:
                self.found.append(E992(what=call, where=situation.words).at(after.span))
            return len(there)
        return at + 1

    def _missing(self, situation: Situation, span: Span) -> None:
        known: Mapping[str, object] = self.made.lists
        near = nearest(situation.words, [str(s.words) for s, *_ in self.made.lists.values()])
        self.found.append(
            E993(situation=situation.words, choices=", ".join(known) or "none").at(
                span, nearest=near
            )
        )


def _same(one: KnownRow, other: KnownRow) -> bool:
    """The same call on the same look from the same spot."""
    a, b = one.row, other.row
    looks = [r.when.text.casefold() if r.when else "" for r in (a, b)]
    return one.call == other.call and a.spot == b.spot and looks[0] == looks[1]


def in_order(
    lists: Mapping[str, tuple[Situation, Span, list[KnownRow]]], length: float
) -> list[tuple[Situation, Span, list[KnownRow]]]:
    """The situations as a caller meets them; openers stand first whether named so or not."""
    return sorted(lists.values(), key=lambda each: each[0].place_in(length))
