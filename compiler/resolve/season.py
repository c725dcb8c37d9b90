"""A playbook → its season: every call of every dress-up expanded and proved."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

from stemline.diagnostics.catalogue.calls import E620, E622, E630
from stemline.diagnostics.catalogue.looks import FaultOfLook
from stemline.diagnostics.diagnostic import Diagnostic, Related
from stemline.football.blocking.protecting import ProtectionRule
from stemline.football.conditions import LookWord
from stemline.football.field import BallSpot, Side, Way
from stemline.football.play import Becoming, Kind, Play, Season
from stemline.geometry.paths import Ending
from stemline.playbook.concepts import Tag
from stemline.playbook.dress_ups import Dress
from stemline.playbook.kill_definitions import KillDef
from stemline.playbook.playbook import Playbook
from stemline.resolve.all_calls import Calls, is_broken
from stemline.resolve.blocking.pass_blocking import find
from stemline.resolve.blocking.run_blocking import has_run
from stemline.resolve.called_season import season_of
from stemline.resolve.expand import Expanded, Expander
from stemline.resolve.gathering import from_some_spots, gathered
from stemline.resolve.kills import second_calls
from stemline.resolve.order import Order
from stemline.resolve.play_facts import PlayFacts, facts_of, play_by_facts
from stemline.resolve.sight_of import looks_seen
from stemline.resolve.tags import merged

Prove = Callable[[Play, Play | None, Order], Iterable[Diagnostic]]
"""A check of one play: given the play, its plain call (None where it is plain) and the order."""


def season(
    book: Playbook, calls: Calls, prove: Prove, expander: Expander | None = None
) -> tuple[Season, tuple[Diagnostic, ...]]:
    """As `proved_season`, with a maker of plays of its own where none is given."""
    return proved_season(book, calls, Proving(book, calls, expander or Expander(book), prove))


def proved_season(
    book: Playbook, calls: Calls, proving: Proving
) -> tuple[Season, tuple[Diagnostic, ...]]:
    """Every call expanded at the spot it is drawn from, and proved from every spot it is run.

    A call with errors is left out of the season; its diagnostics say why.
    """
    plays = [play for each in calls.orders if (play := proving.call(*each)[0]) is not None]
    return season_of(book, plays), proved_calls(calls, proving)


def proved_calls(calls: Calls, proving: Proving) -> tuple[Diagnostic, ...]:
    """All that is wrong with the calls, and with tags that none of them has."""
    found = [d for each in calls.orders for d in proving.proof(*each).found]
    return tuple(gathered((*found, *proving.unused_tags())))


def drawn(book: Playbook, expander: Expander, order: Order) -> Expanded:
    """The play at the spot that the playbook draws from, against its base look where the picture
    shows a defence, with the plays that it becomes at the line."""
    play, found = _drawn(book, expander, order)
    if play is None:
        return play, found
    becomes = tuple(_becoming(book, expander, order, play.ball))
    return (replace(play, becomes=becomes) if becomes else play), found


def _becoming(
    book: Playbook, expander: Expander, order: Order, spot: BallSpot
) -> Iterator[Becoming]:
    """Each second play; where its picture shows a defence, against one that he kills it on, and
    against nobody where no look of the playbook shows him that."""
    for kill, second in second_calls(book, order):
        if is_broken(book, second):
            continue
        shown = looks_seen(book, expander, order, kill, spot)
        look = _drawn_against(book, expander, second)
        if look not in shown:
            look = shown[0] if look and shown else ""
        play, found = expander.expand(second, spot, look_key=look)
        if play is not None and not any(d.is_error for d in found):
            names = tuple(book.looks[key].name for key in shown)
            words = second.spoken.removeprefix(f"{order.spoken} killed to ")
            yield Becoming(
                book.settings.kill_word, words, kill.text, names, play, kill.span, kill.tag
            )


def _drawn(book: Playbook, expander: Expander, order: Order) -> Expanded:
    look = _drawn_against(book, expander, order)
    spot = order.drawn_from
    play, found = expander.expand(order, spot, look_key=look)
    wanted = book.settings.picture
    if play is None or wanted == "middle" or spot is not BallSpot.MIDDLE or order.best:
        return play, found
    to_field = BallSpot.LEFT_HASH if play.strong is Side.RIGHT else BallSpot.RIGHT_HASH
    hashed = to_field if wanted == "strength to field" else to_field.mirrored
    return expander.expand(order, hashed, look_key=look) if hashed in order.spots else (play, found)


def _drawn_against(book: Playbook, expander: Expander, order: Order) -> str:
    """The base look, by its key, for runs, and for passes whose ball goes where a defender does
    not; also for passes whose line shows a run or goes out in front of a screen, where the look
    decides nothing else of them. On the goal line it is the look named there. "" for others."""
    concept = book.concepts[order.concept]
    tags = [book.tags[order.concept, tag] for tag in order.tags]
    body = merged(concept.body, tags)
    if concept.kind is Kind.RUN or body.reactions:
        return order.look or book.base_look
    if not has_run(body) and not any(_releases(book, p.value) for p in body.protect):
        return ""
    spot = order.drawn_from
    plain, _ = expander.expand(order, spot)
    faced, _ = expander.expand(order, spot, look_key=book.base_look)
    alike = plain is not None and faced is not None and _routes(plain) == _routes(faced)
    return book.base_look if alike else ""


def _routes(play: Play) -> object:
    """All of a pass that is not its blocking."""
    runs = [
        (a.man, a.path, a.branches, a.job)
        for a in play.assignments
        if not a.hits and a.path is not None and a.path.ending is not Ending.BLOCK
    ]
    return runs, play.reads, play.pressure, play.alerts, play.claims


def _releases(book: Playbook, protection: str) -> bool:
    """Whether men of the line go out in front of a screen."""
    found = find(book, protection)
    said = found.line.values() if found is not None else ()
    return any(s.value.rule is ProtectionRule.RELEASE for rules in said for s in rules)


def _spots(dress: Dress, order: Order) -> list[BallSpot]:
    """The spots that a call is proved from: those that its dress-up names, as far as it may be
    called from them; all of these where it may from none of those."""
    named = [spot for spot in order.spots if spot.value in dress.spots]
    return named or list(order.spots)


@dataclass(frozen=True)
class Proof:
    """All that is wrong with a call, and what is known of its play where nothing is an error."""

    found: tuple[Diagnostic, ...]
    facts: PlayFacts | None = None

    @property
    def right(self) -> bool:
        return self.facts is not None

    @property
    def reads(self) -> bool:
        """Whether its quarterback looks at anybody."""
        return self.facts is not None and self.facts.reads


class Proving:
    """Proves the calls of one playbook, each once, on plays that ``expander`` makes."""

    def __init__(self, book: Playbook, calls: Calls, expander: Expander, prove: Prove) -> None:
        self.book = book
        self._calls = calls
        self._expander = expander
        self._prove = prove
        self._plain = {_untagged(o): o for _, o in calls.orders if not o.tags}
        self._proofs: dict[Order, Proof] = {}

    def call(self, dress: Dress, order: Order) -> Expanded:
        """The call as it is drawn, None where it has errors, and all that is wrong with it. Its
        play is made when somebody asks for more than is known of it."""
        proof = self.proof(dress, order)
        return self.known(order, proof.facts) if proof.facts is not None else None, proof.found

    def known(self, order: Order, facts: PlayFacts) -> Play:
        """The play of a call as it is drawn, by what is known of it."""
        make = lambda: drawn(self.book, self._expander, order)[0]  # noqa: E731
        return play_by_facts(self.book, order, facts, make)

    def proof(self, dress: Dress, order: Order) -> Proof:
        """Whether the call is right, and all that is wrong with it.

        Of a call whose definitions were not all read nothing is said: they have told why.
        """
        if order not in self._proofs:
            broken = is_broken(self.book, order)
            self._proofs[order] = Proof(()) if broken else self._proof(dress, order)
        return self._proofs[order]

    def _proof(self, dress: Dress, order: Order) -> Proof:
        loud = self._loud(order)
        if loud != order.tags:
            # A tempo changes no path: what is wrong is said of the call without it.
            same = replace(order, tags=loud)
            called = next(
                (
                    o
                    for _, o in self._calls.orders
                    if (_untagged(o), o.tags) == (_untagged(same), loud)
                ),
                None,
            )
            proof = self.proof(dress, called or same)
            return Proof(() if called else proof.found, self._facts(order) if proof.right else None)
        problems: list[Diagnostic] = []
        spots = _spots(dress, order)
        for spot in spots:
            for looks in ((), *dress.against):
                if not self._is_told(order, spot, looks):
                    problems += self.proved(order, spot, looks)
            for key in dress.looks:
                problems += self.proved(order, spot, (), key)
        problems = from_some_spots(problems, len(spots))
        right = not any(d.is_error for d in problems)
        return Proof(tuple(problems), self._facts(order) if right else None)

    def _facts(self, order: Order) -> PlayFacts | None:
        play, _ = drawn(self.book, self._expander, order)
        return facts_of(play) if play is not None else None

    def _loud(self, order: Order) -> tuple[str, ...]:
        """The tags of a call that change a man's job."""
        return tuple(t for t in order.tags if not self.book.tags[order.concept, t].silent)

    def _is_told(self, order: Order, spot: BallSpot, looks: Sequence[LookWord]) -> bool:
        """Whether all that can be wrong with a pass where these looks show is told already: nobody
        does anything else there than against nobody, where more is asked, by the clock."""
        if not looks or self.book.concepts[order.concept].kind is not Kind.PASS:
            return False
        both = (order, self.bare(order)) if order.tags else (order,)
        return not any(self._expander.asks(each, spot, looks) for each in both)

    def from_spot(self, order: Order, spot: BallSpot) -> Sequence[Diagnostic]:
        """What is wrong with a call from a spot, whether its dress-up names that or not."""
        return self.proved(order, spot, ())

    def proved(
        self,
        order: Order,
        spot: BallSpot,
        looks: Sequence[LookWord],
        look_key: str = "",
    ) -> list[Diagnostic]:
        """What is wrong with a call against words or a look; a look's own faults are not its."""
        play, found = self._expander.expand(order, spot, looks, look_key)
        found = tuple(d for d in found if not isinstance(d.said, FaultOfLook))
        if play is None or any(d.is_error and not isinstance(d.said, E630) for d in found):
            return list(found)
        plain = None
        if order.tags:
            bare = self.bare(order)
            plain, _ = self._expander.expand(bare, spot, looks, look_key)
        proofs = list(self._prove(play, plain, order))
        # A tag that breaks its own promise says so itself, and why: once is enough.
        kept = [d for d in (*found, *proofs) if not any(p.said.silences(d.said) for p in proofs)]
        return kept + self._seconds(order, spot, looks, look_key)

    def _seconds(
        self, order: Order, spot: BallSpot, looks: Sequence[LookWord], look_key: str
    ) -> list[Diagnostic]:
        """What is wrong with the plays that the call becomes at the line."""
        return [
            self._at_its_kill(d, kill, second)
            for kill, second in second_calls(self.book, order)
            if not is_broken(self.book, second)
            for d in self.proved(second, spot, looks, look_key)
        ]

    def _at_its_kill(self, d: Diagnostic, kill: KillDef, second: Order) -> Diagnostic:
        """A man whom the second play misses is told at the line that makes it where no dress-up
        calls its concept; else where it is written, with that line beside it."""
        if not isinstance(d.said, E620 | E622):
            return d
        concept = self.book.concepts[second.concept]
        if any(key[3] == second.concept for key in self._plain):
            return replace(d, related=(Related(kill.named, "called from these men by this kill"),))
        why = Related(d.span, f"{concept.name} is called by kills alone, and wants this man")
        return replace(d, span=kill.named, related=(why,))

    def unused_tags(self) -> list[Diagnostic]:
        """Tags that no dress-up calls are proved too, alone, over the concept's plain calls.

        A plain call that is wrong itself is passed over: the tag would only repeat it. So is a tag
        for many concepts, which is not meant for every one of them. One thing is told of each, and
        that no call has it: what else is wrong with it reaches nobody yet.
        """
        used = {(o.concept, tag) for _, o in self._calls.orders for tag in o.tags}
        unused = (key for key, tag in self.book.tags.items() if key not in used and is_proved(tag))
        return [d for key in unused for d in self._unused(key)]

    def _unused(self, key: tuple[str, str]) -> Sequence[Diagnostic]:
        found: list[Diagnostic] = []
        for spot, order in self.plain_calls(key[0]):
            if not any(d.is_error for d in self.proved(order, spot, ())):
                name = f"{order.spoken} {self.book.tags[key].name}"
                tagged = replace(order, tags=(key[1],), spoken=name)
                found += self.proved(tagged, spot, ())
        told = sorted(from_some_spots(found, 1), key=lambda d: not d.is_error)
        tag = self.book.tags[key]
        dress = f"no call has {tag.name} yet: a dress-up calls it by `with {tag.name}`"
        return [
            replace(d, related=(*d.related, Related(tag.span, dress)))
            for d in told
            if d.said.cause == told[0].said.cause
        ]

    def plain_calls(self, concept: str) -> Iterator[tuple[BallSpot, Order]]:
        """The calls of a concept without a tag, each with the first spot of its dress-up."""
        for dress, order in self._calls.orders:
            if order.concept == concept and not order.tags and not is_broken(self.book, order):
                yield _spots(dress, order)[0], order

    def bare(self, order: Order) -> Order:
        """The call without its tags."""
        if order.second:
            return replace(order, tags=(), spoken="")
        return self._plain.get(_untagged(order)) or replace(order, tags=(), spoken="")


def is_proved(tag: Tag) -> bool:
    """Whether a tag that no call has is proved alone."""
    return not (tag.broken or tag.shared or tag.silent)


def _untagged(order: Order) -> tuple[str, Way, str, str]:
    """What a call has in common with its plain call."""
    return order.formation, order.way, order.motion, order.concept
