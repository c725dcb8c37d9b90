"""Weeks of a playbook → plans: calls found, parents laid under, all checked that text can be.

Plans come in the order of the weeks' numbers, since each may start from an earlier one.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from stemline.checks.called_in_time import check_called
from stemline.checks.installs import scheduled
from stemline.checks.line_calls_agree import E767
from stemline.diagnostics.catalogue.looks import W428
from stemline.diagnostics.catalogue.weeks import (
    E975,
    E981,
    E988,
    E989,
    E990,
    E993,
    W981,
)
from stemline.diagnostics.diagnostic import Diagnostic, Related
from stemline.diagnostics.in_words import either
from stemline.diagnostics.nearest import nearest
from stemline.football.call_facts import CallFacts
from stemline.football.contact_limits import ContactLimit, contact_limit
from stemline.football.field import BallSpot
from stemline.football.play import Play
from stemline.football.rulebook.rules import Certainty, Known
from stemline.football.situations import Situation, misfits
from stemline.playbook.concepts import Body, Concept
from stemline.playbook.kill_definitions import KillDef
from stemline.playbook.playbook import Playbook
from stemline.playbook.week_definitions import BandDef, RowDef, WeekDef
from stemline.resolve.expand import Expander
from stemline.resolve.kills import (
    is_itself,
    readings,
    second_call,
    second_words,
    wrongly_named,
)
from stemline.resolve.order import Order
from stemline.source import Span
from stemline.week.merging import KnownRow, Merged, in_order, merged
from stemline.week.plays_when_asked import PlaysWhenAsked
from stemline.week.practising import check_contact, check_old_looks, check_practised
from stemline.week.shorts import check_shorts
from stemline.week.wanting import check_left_empty
from stemline.week.week_names import WeekNames
from stemline.week.week_values import (
    Plan,
    PlanBand,
    PlanList,
    PlanPeriod,
    PlanQuiz,
    PlanRow,
    PlanScout,
)
from stemline.week.wristband_numbers import check_kept

RunFrom = Callable[[Order, BallSpot], Sequence[Diagnostic]]
"""What is wrong with a call run from a spot."""
Facts = Callable[[Order], CallFacts]
"""What is asked of a call before its play is wanted."""
Drawn = Callable[[Order], Play | None]
"""A call as the book draws it; None where that has errors."""


@dataclass(frozen=True)
class Planned:
    """A week's plan, None where its text has errors, and all that is wrong with it."""

    week: WeekDef
    plan: Plan | None
    found: tuple[Diagnostic, ...]


@dataclass(frozen=True)
class AskedOfSession:
    """What planning asks of the playbook: its calls by how they are spoken, what is known of
    each and its play, whether it can be run from a spot, and a maker of plays that knows the
    opponents' looks too."""

    book: Playbook
    calls: Mapping[str, Order]
    facts: Facts
    drawn: Drawn
    run_from: RunFrom
    expander: Expander


def with_opponents(book: Playbook) -> Playbook:
    """The playbook with the looks that stand in its weeks alone."""
    return replace(book, looks={**book.looks, **book.week_looks}) if book.week_looks else book


def plan_weeks(asked: AskedOfSession) -> tuple[Planned, ...]:
    """Every week of the playbook, in the order of their numbers."""
    weeks = sorted(asked.book.weeks.values(), key=lambda week: week.number)
    schedule, _ = scheduled(asked.book, asked.calls)
    known: dict[int, tuple[WeekDef, Merged]] = {}
    made: list[Planned] = []
    for week in weeks:
        if week.broken:
            made.append(Planned(week, None, ()))
            continue
        if week.number in known:
            first = Related(known[week.number][0].span, "the first is here")
            twice = E988(number=week.number).at(week.span, related=(first,))
            made.append(Planned(week, None, (twice,)))
            continue
        planner = _Planner(asked, week)
        meant = planner.names.parent(week, weeks)
        if meant is not None and meant.number not in known:
            # What it starts from was not read, and has told why.
            made.append(Planned(week, None, tuple(planner.found)))
            continue
        parent = known[meant.number][1] if meant is not None else None
        together, found = merged(parent, week, planner.names.canon)
        planner.found += found
        known[week.number] = week, together
        plan = planner.plan(together)
        if plan is not None:
            played = [each.plan for each in made if each.plan is not None]
            plan = replace(plan, before=played[-1] if played else None)
        if plan is not None and schedule is not None:
            rows = (row for each in plan.lists for row in each.rows)
            called = {row.call: (asked.calls[row.call], row.span) for row in reversed([*rows])}
            planner.found += check_called(asked.book, schedule, week.number, called)
        broken = any(d.is_error for d in planner.found)
        made.append(Planned(week, None if broken else plan, tuple(planner.found)))
    return tuple(made)


class _Planner:
    """Makes the plan of one week; what is wrong is told where the week's own text says it."""

    def __init__(self, asked: AskedOfSession, week: WeekDef) -> None:
        self._asked = asked
        self._book = asked.book
        self._code = asked.book.settings.code
        self._week = week
        self.found: list[Diagnostic] = []
        self.names = WeekNames(asked.book, asked.calls, self.found)

    def plan(self, said: Merged) -> Plan | None:
        """The plan of what the week and its parents say; None where an error stands in the way."""
        self._check_situations()
        ordered = in_order(said.lists, self._code.length.value)
        lists = tuple(
            PlanList(situation, tuple(self._row(r, situation) for r in rows), span)
            for situation, span, rows in ordered
        )
        faces = tuple(name for look in said.faces if (name := self.names.look(look)))
        periods = tuple(
            PlanPeriod(p.name, p.minutes, p.contact, p.day, p.groups, self._script(p.rows, lists),
                       p.span)
            for p in said.periods.values()
        )  # fmt: skip
        scouts = tuple(
            PlanScout(s.name, self._script(s.rows, lists), s.span) for s in said.scouts.values()
        )
        bands = tuple(self._band(b, lists) for b in said.bands.values())
        quizzes = tuple(
            PlanQuiz(tuple(self.names.letter(m) for m in q.men), q.day, q.span)
            for q in said.quizzes
        )
        settings = self._book.settings
        scripts = [each.rows for each in periods] + [each.rows for each in scouts]
        scripted = [row for rows in scripts for row in rows]
        calls = dict.fromkeys(
            row.call for row in (*(r for e in lists for r in e.rows), *scripted) if row.call
        )
        facts = {call: self._asked.facts(self._asked.calls[call]) for call in calls}
        if any(d.is_error for d in self.found) or not all(each.right for each in facts.values()):
            return None
        plan = Plan(
            number=self._week.number,
            opponent=self._week.opponent,
            date=self._week.date,
            team=settings.name,
            code=self._code,
            span=self._week.span,
            says=self._week.says,
            faces=faces,
            lists=lists,
            bands=bands,
            scouts=scouts,
            periods=periods,
            quizzes=quizzes,
            facts=facts,
            plays=PlaysWhenAsked({c: self._asked.calls[c] for c in calls}, self._asked.drawn),
            shown=self._shown(scripted, facts),
            people={
                call: self._book.formations[self._asked.calls[call].formation].people
                for call in calls
            },
            limit=self._limit(),
            frozen={call: number for call, (_, number) in said.frozen.items()},
            shorts=tuple((name.text, short) for name, short in said.shorts.values()),
            together=said.numbering.together,
            seed=said.numbering.seed,
            starts=said.starts,
        )
        self._check(plan, said)
        return plan

    def _limit(self) -> Known[ContactLimit]:
        own = self._book.settings.contact
        if own is None:
            return contact_limit(self._code)
        return Known(own, Certainty.HOUSE, "this playbook's own limit")

    def _check(self, plan: Plan, said: Merged) -> None:
        """Asks the whole plan what no row can be asked alone."""
        self.found += check_kept(plan, {c: at.span for c, (at, _) in said.frozen.items()})
        self.found += check_shorts(
            plan, {at.text: at.span for at, _ in said.shorts.values()}, self._parts(plan)
        )
        self.found += check_practised(plan)
        self.found += check_contact(plan)
        own = (*self._week.periods, *self._week.scouts)
        parts = (*said.periods.values(), *said.scouts.values())
        made: tuple[PlanPeriod | PlanScout, ...] = (*plan.periods, *plan.scouts)
        old = [each for part, each in zip(parts, made, strict=True) if part not in own]
        here = {row.span for each in self._week.lists for row in each.rows}
        looks = {*self.names.looks.values()}
        rows = ((each.title, row) for each in plan.lists for row in each.rows)
        waiting = [(title, r) for title, r in rows if r.look in looks and r.span not in here]
        self.found += check_old_looks(plan, old, waiting)
        self.found += check_left_empty(plan, self._book.taught)

    def _check_situations(self) -> None:
        for each in self._week.lists:
            for misfit in misfits(each.situation, self._code):
                wrong = E981 if misfit.binding else W981
                said = wrong(situation=each.situation.words, why=misfit.why)
                self.found.append(said.at(each.span))

    def _row(self, known: KnownRow, situation: Situation) -> PlanRow:
        row = known.row
        spot = row.spot or situation.spot
        if row.spot and situation.spot and row.spot is not situation.spot:
            self.found.append(E990(found=row.spot.value, spot=situation.spot.value).at(row.span))
        elif spot is not None:
            self._check_spot(known.call, spot, row)
        return self._plain(known.call, row, spot)

    def _plain(self, call: str, row: RowDef, spot: BallSpot | None, situation: str = "") -> PlanRow:
        return PlanRow(
            call=call,
            span=row.span,
            spot=spot,
            look=self.names.condition(row.when, row.sights),
            against=self.names.look(row.against) if row.against else "",
            tempo=row.tempo or self._tempo(call),
            note=row.note,
            reps=row.reps,
            kill_to=self._killed(call, row, spot),
            situation=situation,
        )

    def _tempo(self, call: str) -> str:
        """The tempo that the last tag of a call says, "" where none does."""
        order = self._asked.calls[call]
        tags = (self._book.tags[order.concept, tag] for tag in reversed(order.tags))
        return next((tag.tempo for tag in tags if tag.tempo), "")

    def _killed(self, call: str, row: RowDef, spot: BallSpot | None) -> str:
        """What a row's call is killed to, as it is called; proved from the row's spot."""
        if row.kill_to is None or row.when is None:
            return ""
        said, order = row.kill_to.text, self._asked.calls[call]
        words = tuple(said.casefold().split())
        at = row.kill_to.span
        kill = KillDef(words, said, row.sights, row.when.text, at, at)
        found = readings(self._book, kill)
        if len(found) != 1:
            self.found += wrongly_named(self._book, kill, found)
            return ""
        to = second_words(self._book, found[0])
        if is_itself(self._book, order, found[0]):
            self.found.append(E767(call=call, to=to, when=kill.text).at(kill.span))
            return ""
        second = second_call(self._book, order, kill, found[0])
        where = spot or second.timed_from
        wrong = [d for d in self._asked.run_from(second, where) if d.is_error]
        if wrong:
            why = _why(wrong[0])
            self.found.append(E989(call=second.spoken, spot=where.value, why=why).at(kill.span))
        return to

    def _check_spot(self, call: str, spot: BallSpot, row: RowDef) -> None:
        order = self._asked.calls[call]
        if spot in order.not_from:
            others = either([each.value for each in order.spots])
            concept = self._book.concepts[order.concept].name
            never = E975(call=call, concept=concept, others=others, spot=spot.value)
            self.found.append(never.at(row.span))
            return
        wrong = [d for d in self._asked.run_from(order, spot) if d.is_error]
        if wrong:
            why = _why(wrong[0])
            self.found.append(E989(call=call, spot=spot.value, why=why).at(row.span))

    def _script(self, rows: Sequence[RowDef], lists: Sequence[PlanList]) -> tuple[PlanRow, ...]:
        """The rows of a script; a situation stands for its calls in order, and one that is kept for
        a look is run against it, so that the look team has a card."""
        made: list[PlanRow] = []
        looks = {*self.names.looks.values()}
        for row in rows:
            if row.situation is not None:
                for each in self._held(row.situation, lists, row.span):
                    made += [
                        replace(r, situation=each.title, span=row.span,
                                against=r.look if r.look in looks else "")
                        for r in each.rows
                    ]  # fmt: skip
            elif call := self.names.canon(row.call):
                if row.spot is not None:
                    self._check_spot(call, row.spot, row)
                made.append(self._plain(call, row, row.spot))
        return tuple(made)

    def _held(self, situation: Situation, lists: Sequence[PlanList], at: Span) -> list[PlanList]:
        """The lists of a situation: its own, and where it names no spot those of every spot."""
        found = [e for e in lists if situation.key in (e.situation.key, e.situation.anywhere.key)]
        if not found:
            known = [e.situation.words for e in lists]
            near, choices = nearest(situation.words, known), ", ".join(known) or "none"
            self.found.append(E993(situation=situation.words, choices=choices).at(at, nearest=near))
        return found

    def _band(self, band: BandDef, lists: Sequence[PlanList]) -> PlanBand:
        """A band with the calls it holds; one that names no situation holds all of them."""
        held = [e for h in band.holds for e in self._held(h.situation, lists, h.span)]
        rows = (row for each in (held if band.holds else lists) for row in each.rows)
        return PlanBand(
            name=band.name,
            men=tuple(self.names.letter(m) for m in band.men),
            width=band.width,
            height=band.height,
            windows=band.windows,
            calls=tuple(dict.fromkeys(row.call for row in rows)),
            span=band.span,
        )

    def _shown(
        self, rows: Sequence[PlanRow], facts: Mapping[str, CallFacts]
    ) -> dict[tuple[str, str, BallSpot | None], Play]:
        """The set of each call against the look that it is practised against: the offence only
        lines up, since a look team is shown what it does itself."""
        shown: dict[tuple[str, str, BallSpot | None], Play] = {}
        for row in rows:
            if not row.against:
                continue
            order, key = self._asked.calls[row.call], row.against.casefold()
            spot = row.spot or facts[row.call].ball
            concept = self._book.concepts[order.concept]
            stands = Concept(concept.name, "", Body(), concept.span, False)
            play, _ = self._asked.expander.play_of(order, stands, spot, look_key=key)
            if play is not None and play.defence is not None:
                shown[row.call, row.against, row.spot] = play
            elif (look := self._book.looks[key]).limited:
                told = W428(call=row.call, look=look.name, sets=look.sets)
                self.found.append(told.at(row.span))
        return shown

    def _parts(self, plan: Plan) -> Iterator[str]:
        """The names of all that the plan's calls are made of."""
        book = self._book
        for order in (self._asked.calls[call] for call in plan.facts):
            yield book.formations[order.formation].name
            yield from (book.motions[key].name for key in (order.motion,) if key)
            yield book.concepts[order.concept].name
            yield from (book.tags[order.concept, tag].name for tag in order.tags)


def _why(problem: Diagnostic) -> str:
    """What is wrong with a play, in the words of its own message."""
    return problem.message.replace("`", "")
