"""Questions to a playbook: texts → definitions → calls → a play → its proof → the season.

Nothing is worked out that nobody asks for, and nothing twice: a session reads each text once, has
one maker of plays, and keeps each answer by what it was asked with. `list` asks for the calls and
makes no play; a picture asks for its own play; only a check and a book ask for the season, which
proves every call. What makes plays is loaded for who asks for one; what proves, and the numbers
that it needs, for it alone.
"""

from __future__ import annotations

import gc
import hashlib
from collections.abc import Callable, Iterable, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

from stemline.diagnostics.catalogue.bounds import E140
from stemline.diagnostics.catalogue.calls import W710
from stemline.diagnostics.catalogue.files import W103
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.football.call_facts import CallFacts
from stemline.football.conditions import LookWord
from stemline.football.field import BallSpot
from stemline.football.play import Kind, Play, Season
from stemline.outside.store import Store
from stemline.playbook.dress_ups import Dress
from stemline.playbook.playbook import Playbook
from stemline.proofs.kept_proofs import KeptAnswers
from stemline.proofs.kept_trees import parsed, parsed_beside
from stemline.read.coach_sentences import check_sentences
from stemline.read.read_playbook import read_playbook
from stemline.read.size_limits import too_much
from stemline.resolve.all_calls import Calls, all_calls, is_broken
from stemline.resolve.gathering import gathered, said_once
from stemline.resolve.order import Order
from stemline.source import Source
from stemline.syntax.tree import Document

if TYPE_CHECKING:
    from stemline.football.put_to_looks import PutToLooks
    from stemline.football.timing.answers import Answer, Faced
    from stemline.outside.cache import Cache
    from stemline.proofs.call_readings import CallReadings
    from stemline.proofs.kept_proving import KeptProving
    from stemline.proofs.page_readings import PageReadings
    from stemline.resolve.expand import Expanded, Expander
    from stemline.resolve.season import Proof
    from stemline.week.game_plan import GamePlan
    from stemline.week.install_days import InstallSheet
    from stemline.week.planning import Planned
    from stemline.week.putting_in import Installed
    from stemline.week.week_values import AgainstLooks, Plan, RowAnswer


@contextmanager
def no_collecting() -> Iterator[None]:
    """A compile makes a great many values and no circles: looking for some costs a quarter."""
    collecting = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if collecting:
            gc.enable()


@dataclass(frozen=True)
class _Read:
    """What the texts say: definitions, the calls they make, and what is wrong with either."""

    book: Playbook | None
    calls: Calls
    definitions: tuple[Diagnostic, ...]
    dressing: tuple[Diagnostic, ...]


class Session:
    """A playbook's texts, and all that can be asked of them.

    ``folder`` is only for messages about the whole playbook; ``whole`` tells that the texts are all
    of it: then one that makes no call is told so. Proofs are taken from ``store`` and kept in it.
    A text that ``beside``, another state of the playbook, has too is not parsed again.
    ``book`` and ``season`` are None where nothing can be counted.
    """

    def __init__(
        self,
        sources: Sequence[Source],
        folder: str,
        *,
        whole: bool = False,
        store: Store | None = None,
        beside: Session | None = None,
    ) -> None:
        self._beside = beside
        self._sources = tuple(sources)
        self._folder = folder
        self._whole = whole
        self._pictured: dict[str, tuple[Season, tuple[Diagnostic, ...]]] = {}
        self._answers: dict[int, tuple[RowAnswer, ...]] = {}
        self._rows: dict[Order, dict[str, Answer] | None] = {}
        self._provings: dict[str, KeptProving] = {}
        self._checked: dict[str, tuple[Diagnostic, ...]] = {}
        self._kept = KeptAnswers(store if store is not None else Store(None))

    @cached_property
    def trees(self) -> tuple[tuple[Document, tuple[Diagnostic, ...]], ...]:
        """Each text's tree, with what could not be read of it."""
        there = self._beside.trees if self._beside is not None else ()
        known = {made[0].source.text: made for made in there}

        def tree(source: Source) -> tuple[Document, tuple[Diagnostic, ...]]:
            beside = known.get(source.text)
            made = parsed_beside(beside, source) if beside is not None else None
            return made if made is not None else parsed(source, self._kept)

        return tuple(map(tree, self._sources))

    @property
    def book(self) -> Playbook | None:
        """The definitions, and with them the settings."""
        return self._read.book

    @property
    def calls(self) -> Calls:
        """Every call that the dress-ups make, proved or not."""
        return self._read.calls

    @property
    def definitions(self) -> tuple[Diagnostic, ...]:
        """What is wrong with the texts themselves, before any play is made."""
        return said_once((*self._read.definitions, *self._read.dressing))

    def seal(self, more: object) -> str:
        """A digest of the texts that the book is made from and of ``more``: those of weeks, which
        no page of the book shows, are left out."""
        weekly = {
            tree.source.name
            for tree, _ in self.trees
            if any(block.kind == "week" for block in tree.blocks)
        }
        digest = hashlib.sha256(repr(more).encode())
        for source in self._sources:
            if source.name not in weekly:
                digest.update(f"{len(source.text)}\n{source.text}".encode("utf-8", "surrogatepass"))
        return digest.hexdigest()

    @property
    def lowered(self) -> tuple[str, ...]:
        """The codes of the warnings that the playbook wants counted and not printed."""
        if self.book is None or not self.book.settings.lowered:
            return ()
        from stemline.checks.warnings_lowered import lowered

        return lowered(self.book.settings)

    @cached_property
    @no_collecting()
    def _read(self) -> _Read:
        if (much := too_much(self._sources)) is not None:
            return _Read(None, Calls(()), (much,), ())
        documents = [tree for tree, _ in self.trees]
        found = [d for _, problems in self.trees for d in problems]
        if any(isinstance(d.said, E140) for d in found):
            # A file was not read to its end: what is missing in the rest cannot be told.
            return _Read(None, Calls(()), tuple(found), ())
        book, problems = read_playbook(documents, found, self._folder)
        found += (*problems, *check_sentences(documents))
        if book is not None and book.settings.lowered:
            # Checks bring the numbers with them: a book that asks for none loads none.
            from stemline.checks.asked import When
            from stemline.checks.discovered import ask

            found += ask(When.WRITTEN, book.settings)
        calls, dressing = all_calls(book) if book is not None else (Calls(()), ())
        if not found and not dressing:
            return _Read(book, calls, (), ())
        # Only what is wrong can be in a coach's own words: texts that are right load none.
        from stemline.read.own_words import in_own_words

        said = in_own_words(found, self._sources)
        return _Read(book, calls, said, in_own_words(dressing, self._sources))

    # Plays.

    @cached_property
    def expander(self) -> Expander:
        """The one maker of plays: whatever two questions have in common it works out once. It knows
        the looks of opponents too, which only weeks ask for."""
        assert self.book is not None, "plays come from a book"
        from stemline.resolve.expand import Expander
        from stemline.week.planning import with_opponents

        return Expander(with_opponents(self.book))

    def play(
        self, order: Order, spot: BallSpot, against: Sequence[LookWord] = (), look_key: str = ""
    ) -> Expanded:
        """A call from a spot, against a look or what one shows; not proved."""
        return self.expander.expand(order, spot, against, look_key)

    def drawn(self, order: Order) -> Expanded:
        """A call as its picture shows it; not proved.

        A call that no dress-up makes, or that cannot be expanded whole, stands in the middle.
        """
        assert self.book is not None, "plays come from a book"
        if order in self._dressed and not is_broken(self.book, order):
            from stemline.resolve.season import drawn

            play, found = drawn(self.book, self.expander, order)
            if not any(d.is_error for d in found):
                return play, found
        return self.play(order, order.timed_from)

    @cached_property
    def _dressed(self) -> frozenset[Order]:
        return frozenset(order for _, order in self.calls.orders)

    def listed(self) -> tuple[str, ...]:
        """The calls of the playbook as they are spoken, but those that were not read whole."""
        book = self.book
        orders = (order for _, order in self.calls.orders)
        return tuple(o.spoken for o in orders if book is not None and not is_broken(book, o))

    def pictured(self, only: str = "") -> tuple[Season | None, tuple[Diagnostic, ...]]:
        """The calls as their pictures show them, nothing proved, and why some have none.

        ``only`` is a concept or a family: its calls alone are made, but all where it is neither.
        """
        if self.book is None:
            return None, ()
        if only not in self._pictured:
            self._pictured[only] = self._picture(self.book, only.casefold())
        return self._pictured[only]

    @no_collecting()
    def _picture(self, book: Playbook, only: str) -> tuple[Season, tuple[Diagnostic, ...]]:
        from stemline.resolve.called_season import season_of

        names = {key: (c.name.casefold(), c.family.casefold()) for key, c in book.concepts.items()}
        known = any(only in said for said in names.values())
        orders = [o for _, o in self.calls.orders if not is_broken(book, o)]
        made = [self.drawn(o) for o in orders if not known or only in names[o.concept]]
        wrong = gathered(d for _, found in made for d in found if d.is_error)
        plays = [
            play for play, found in made if play is not None and not any(d.is_error for d in found)
        ]
        return season_of(book, plays), tuple(wrong)

    def is_whole(self, season: Season) -> bool:
        """Whether a season of this session is all of it, and not the part that was asked for."""
        whole, _ = self._pictured.get("", (None, ()))
        return season is whole or ("_proved" in vars(self) and season is self.season)

    # Proofs.

    def proof(self, call: str) -> Proof:
        """All that is wrong with a call of the playbook. Raises KeyError for a name that no
        dress-up makes."""
        return self._proving.proof(*self._pairs[call])

    def is_known(self, call: str) -> bool:
        """Whether all that a check says of a call is kept, its answers to the looks too: then
        neither `proof` nor `faced` works anything out. Raises KeyError as `proof`."""
        from stemline.proofs.kept_answers import are_kept

        assert self.book is not None, "calls come from a book"
        dress, order = self._pairs[call]
        if not self._kept.keeps:
            return False
        proof = self._proving.held(dress, order)
        if proof is None or not (proof.right and proof.reads):
            return proof is not None
        return are_kept(self.book, order, self._readings, self._kept)

    @cached_property
    def _pairs(self) -> dict[str, tuple[Dress, Order]]:
        return {order.spoken: (dress, order) for dress, order in self.calls.orders}

    @property
    def _proving(self) -> KeptProving:
        return self._proving_of("")

    def _proving_of(self, only: str) -> KeptProving:
        """What proves the calls of a concept or a family, or of all."""
        if only not in self._provings:
            from stemline.proofs.kept_proving import KeptProving

            assert self.book is not None, "plays come from a book"
            calls = Calls(self.named(only))
            self._provings[only] = KeptProving(
                self.book,
                calls,
                self.expander,
                self._prove_play,
                lambda: self._readings,
                self._kept,
            )
        return self._provings[only]

    def _prove_play(self, play: Play, plain: Play | None, order: Order) -> Iterable[Diagnostic]:
        from stemline.checks.proving import prove_call

        assert self.book is not None, "plays come from a book"
        return prove_call(self.book, self.expander, play, plain, order)

    @cached_property
    def _readings(self) -> CallReadings:
        """What each call reads."""
        assert self.book is not None, "calls come from a book"
        from stemline.proofs.call_readings import CallReadings
        from stemline.week.planning import with_opponents

        return CallReadings(with_opponents(self.book), self.book.looks)

    def page_readings(self, season: Season) -> PageReadings:
        """What the pages of a book of ``season`` read."""
        assert self.book is not None, "a season comes from a book"
        from stemline.proofs.page_readings import PageReadings

        made, whole = self.calls.orders, self.is_whole(season)
        return PageReadings(self.book, self._readings, made, season.plays, whole=whole)

    @cached_property
    def _proved(self) -> tuple[Season | None, tuple[Diagnostic, ...]]:
        return self._prove("")

    def proved(self, only: str) -> tuple[Season | None, tuple[Diagnostic, ...]]:
        """The season and all that is wrong, of the calls of ``only``, a concept or a family, alone;
        of all calls where it is neither. What stands in the texts is told either way."""
        return self._prove(only) if self._part(only) else self._proved

    def checked(self, only: str) -> tuple[Diagnostic, ...]:
        """All that is wrong, as `proved` tells it; of a call that is known to be right no play is
        made."""
        part = self._part(only)
        if part not in self._checked:
            self._checked[part] = self._check(part)
        return self._checked[part]

    def read_calls(self, only: str) -> tuple[Order, ...]:
        """The calls, as `proved` has them, whose quarterback looks at somebody."""
        proving = self._proving_of(self._part(only))
        proofs = ((order, proving.proof(dress, order)) for dress, order in self.named(only))
        return tuple(order for order, proof in proofs if proof.right and proof.reads)

    def faced(
        self, orders: Sequence[Order], cache: Cache, *, alone: bool = False
    ) -> tuple[Faced, ...]:
        """The answer of each call to each look, from the middle; ``cache`` is asked about those
        that are not kept whole, and no other process shares the work that is done ``alone``."""
        from stemline.proofs.kept_answers import faced

        assert self.book is not None, "calls come from a book"
        kept = self._readings, self._kept
        return faced(self.book, orders, self.expander, cache, *kept, alone=alone)

    def _part(self, only: str) -> str:
        """``only``, or "" where it leaves no call out."""
        return only if len(self.named(only)) < len(self.calls.orders) else ""

    def named(self, only: str) -> tuple[tuple[Dress, Order], ...]:
        """The calls of a concept or a family; all where ``only`` is neither."""
        wanted, concepts = only.casefold(), self.book.concepts if self.book is not None else {}
        keys = {
            k for k, c in concepts.items() if wanted in (c.name.casefold(), c.family.casefold())
        }
        orders = self.calls.orders
        return tuple(each for each in orders if each[1].concept in keys) if keys else orders

    @no_collecting()
    def _prove(self, only: str) -> tuple[Season | None, tuple[Diagnostic, ...]]:
        found = self.checked(only)
        if self.book is None:
            return None, found
        from stemline.resolve.called_season import season_of

        proving = self._proving_of(only)
        made = (proving.call(*each)[0] for each in self.named(only))
        return season_of(self.book, [play for play in made if play is not None]), found

    @no_collecting()
    def _check(self, only: str) -> tuple[Diagnostic, ...]:
        book, read = self.book, self._read
        if book is None:
            return read.definitions
        from stemline.resolve.season import proved_calls

        found = [*read.definitions, *self._formations(book), *read.dressing, *self._standing(book)]
        found += self._taught(book)
        found += proved_calls(Calls(self.named(only)), self._proving_of(only))
        found += [d for planned in self.weeks for d in planned.found] if not only else []
        # A concept without a dress-up says why there is no call.
        silent = not any(d.is_error or isinstance(d.said, W710) for d in found)
        if self._whole and silent and not self.calls.orders:
            found.append(W103().at(book.settings.span))
        return said_once(found)

    def _formations(self, book: Playbook) -> tuple[Diagnostic, ...]:
        def work() -> Iterable[Diagnostic]:
            from stemline.checks.proving import check_formations

            return gathered(check_formations(book))

        return self._kept.found("formations", lambda: self._readings.formations(), work)

    def _standing(self, book: Playbook) -> tuple[Diagnostic, ...]:
        def work() -> Iterable[Diagnostic]:
            from stemline.checks.proving import check_standing

            return check_standing(book, self.calls, self.expander)

        return self._kept.found("standing", lambda: self._readings.standing(self.calls), work)

    def _taught(self, book: Playbook) -> tuple[Diagnostic, ...]:
        """What is wrong with the install, asked each time: it may name all that there is."""
        if book.install is None:
            return ()
        from stemline.checks.installs import check_installs

        return tuple(gathered(check_installs(book, self.calls)))

    # Weeks.

    @cached_property
    @no_collecting()
    def weeks(self) -> tuple[Planned, ...]:
        """The plan of every week in the order of the games, with all that is wrong with each."""
        if self.book is None or not self.book.weeks:
            return ()
        from stemline.week.planning import AskedOfSession, plan_weeks

        orders = self.calls.by_name
        asked = self._facts, self._page_of, self._run_from
        return plan_weeks(AskedOfSession(self.book, orders, *asked, self.expander))

    def pressed(self, planned: Iterable[Planned]) -> tuple[Diagnostic, ...]:
        """Where a pressure that a week names leaves its passes without an answer, or its runs a
        man; worked out only where it is told, since it runs the clock of each pass."""
        from stemline.week.facing import pressed, runs_pressed

        found: list[Diagnostic] = []
        for plan in (each.plan for each in planned if each.plan is not None):
            found += pressed(self.answers(plan))
            found += runs_pressed(plan, self.calls.by_name, self._free)
        return tuple(found)

    @no_collecting()
    def answers(self, plan: Plan) -> tuple[RowAnswer, ...]:
        """What each pass of a week's plan has against the looks that the week names."""
        if plan.number not in self._answers:
            from stemline.week.facing import answers_of

            self._answers[plan.number] = answers_of(plan, self.calls.by_name, self._answer)
        return self._answers[plan.number]

    @no_collecting()
    def game_plan(self, plan: Plan) -> GamePlan:
        """What the plan's own book holds; worked out only for paper, since it runs the clock of
        each call against each look of the opponent."""
        assert self.book is not None, "plans come from a book"
        from stemline.week.answering import AskedOfPlaybook, game_plan
        from stemline.week.planning import with_opponents

        book, level = with_opponents(self.book), self.book.settings.level
        asked = AskedOfPlaybook(book, self.calls, self.expander, level, self.put_to_looks)
        return game_plan(plan, asked)

    @no_collecting()
    def against_looks(self, plan: Plan) -> AgainstLooks:
        """The plan's runs against the looks that the week names, for its men."""
        from stemline.week.run_against import against_looks

        def put(order: Order, spot: BallSpot, look: str) -> Play | None:
            play, found = self.play(order, spot, look_key=look)
            return None if any(d.is_error for d in found) else play

        return against_looks(plan, self.calls.by_name, put)

    def install_sheet(self, plan: Plan) -> InstallSheet | None:
        """What the install has put in by the plan's game; None where the playbook has none."""
        made, book = self._installed, self.book
        if made is None or book is None or book.install is None:
            return None
        from stemline.week.putting_in import install_sheet

        says, calls = book.install.says, len(self.calls.orders)
        return install_sheet(plan, made, book.install.name, says, calls)

    @cached_property
    @no_collecting()
    def _installed(self) -> Installed | None:
        if self.book is None or self.book.install is None:
            return None
        from stemline.checks.installs import scheduled
        from stemline.week.putting_in import installed

        orders = self.calls.by_name
        schedule, _ = scheduled(self.book, orders)
        season, _ = self.pictured()
        if schedule is None or season is None:
            return None
        plays = {play.call.spoken: play for play in season.plays}
        return installed(self.book, schedule, orders, plays)

    def _answer(self, order: Order, spot: BallSpot, look: str) -> Answer | None:
        """What a call has against a look; None where it cannot stand there, or reads nobody."""
        from stemline.proofs.kept_answers import answers_as_data, answers_from_data

        if self.book is not None and look in self.book.looks and spot is order.timed_from:
            rows = self._rows_of(order)
            if rows is not None:
                return rows.get(self.book.looks[look].name)

        def work() -> list[Answer]:
            from stemline.football.timing.answers import answer
            from stemline.football.timing.clock import read_clock

            assert self.book is not None, "plays come from a book"
            play, found = self.play(order, spot, look_key=look)
            if play is None or any(d.is_error for d in found):
                return []
            got = answer(play, self.book.settings.level, read_clock)
            return [got] if got is not None else []

        reading = lambda: self._readings.against(order, (look,), spot)  # noqa: E731
        kept = self._kept.answer("answer", reading, work, answers_as_data, answers_from_data)
        return kept[0] if kept else None

    def _rows_of(self, order: Order) -> dict[str, Answer] | None:
        """The answers of a call to the looks, where they are known."""
        if self._rows.get(order) is None:
            from stemline.proofs.kept_answers import kept_rows

            assert self.book is not None, "calls come from a book"
            self._rows[order] = kept_rows(self.book, order, self._readings, self._kept)
        return self._rows[order]

    @no_collecting()
    def _free(self, order: Order, spot: BallSpot, look: str) -> tuple[str, ...]:
        """Whom a pressure leaves free against a run; nobody where it cannot stand there."""
        from stemline.proofs.kept_answers import labels_as_data, labels_from_data
        from stemline.week.facing import free_of_pressure

        def work() -> tuple[str, ...]:
            play, found = self.play(order, spot, look_key=look)
            wrong = play is None or any(d.is_error for d in found)
            return () if play is None or wrong else free_of_pressure(play)

        reading = lambda: self._readings.against(order, (look,), spot)  # noqa: E731
        return self._kept.answer("free", reading, work, labels_as_data, labels_from_data)

    def put_to_looks(
        self,
        order: Order,
        spot: BallSpot,
        looks: tuple[str, ...],
        plays: Callable[[], tuple[Play, ...]],
    ) -> PutToLooks | None:
        """What a pass has from a spot against looks by their keys, as its page prints it, worked
        out from ``plays`` where it is not kept; None where it stands against none."""
        from stemline.proofs.put_as_data import put_as_data, put_from_data

        def work() -> PutToLooks | None:
            from stemline.football.timing.putting import put_to_looks

            assert self.book is not None, "plays come from a book"
            made = plays()
            return put_to_looks(made, self.book.settings.level) if made else None

        if not looks:
            return None
        reading = lambda: self._readings.against(order, looks, spot)  # noqa: E731
        kept = self._kept.answer("put", reading, lambda: [work()], put_as_data, put_from_data)
        return kept[0]

    def _page_of(self, order: Order) -> Play | None:
        play, found = self.drawn(order)
        return None if any(d.is_error for d in found) else play

    def _facts(self, order: Order) -> CallFacts:
        """What a week asks of a call before anybody wants its play."""
        from stemline.proofs.put_as_data import facts_as_data, facts_from_data

        def work() -> CallFacts:
            play = self._page_of(order)
            if play is None:
                return CallFacts(False, False, False, order.drawn_from)
            return CallFacts(True, bool(play.reads), play.kind is Kind.RUN, play.ball)

        book = self.book
        assert book is not None, "calls come from a book"
        if is_broken(book, order):
            return work()
        reading = lambda: self._readings.drawn(order, book.base_look)  # noqa: E731
        return self._kept.answer("facts", reading, work, facts_as_data, facts_from_data)

    def _run_from(self, order: Order, spot: BallSpot) -> tuple[Diagnostic, ...]:
        """What is wrong with a call from a spot, whether its dress-up names that or not."""
        if self.book is None or is_broken(self.book, order):
            return ()
        return tuple(self._proving.from_spot(order, spot))

    @property
    def season(self) -> Season | None:
        """Every call proved; one with errors is left out."""
        return self._proved[0]

    @property
    def diagnostics(self) -> tuple[Diagnostic, ...]:
        """All that is wrong with the playbook: its definitions, formations, looks and calls."""
        return self._proved[1]

    @property
    def failed(self) -> bool:
        return any(d.is_error for d in self.diagnostics)
