"""What a playbook's calls, formations and looks are judged by, as readings."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace

from stemline.football.field import BallSpot
from stemline.football.play import Kind
from stemline.outside.program import program
from stemline.playbook.concepts import Body, Concept, Tag
from stemline.playbook.dress_ups import Dress
from stemline.playbook.playbook import Playbook, Settings
from stemline.proofs.reading import Reading, ReadPart
from stemline.read.ready_looks import look_of
from stemline.resolve.all_calls import Calls
from stemline.resolve.blocking.pass_blocking import find
from stemline.resolve.kills import second_calls
from stemline.resolve.noting import notes_on_looks
from stemline.resolve.order import Order
from stemline.resolve.tags import merged
from stemline.source import NOWHERE


class CallReadings:
    """Readings of one playbook; what calls have in common is sealed once.

    ``book`` knows the opponents' looks too, where there are any: plays are made from it.
    """

    def __init__(self, book: Playbook, looks: Iterable[str]) -> None:
        self._book = book
        self._looks = tuple(looks)
        """The keys of the playbook's own looks."""
        self._parts: dict[tuple[str, object], ReadPart] = {}
        self._shared = Reading((ReadPart((program(), _judging(book.settings), book.people)),))
        self._bodies: dict[tuple[str, tuple[str, ...]], Body] = {}

    def call(self, order: Order, bare: Order | None, dress: Dress | None = None) -> Reading:
        """A call and its dress-up; ``bare`` is the call without its tags, None of a plain one."""
        body = self._body(order)
        run = self._book.concepts[order.concept].kind is Kind.RUN
        fronts = self._looks if run or body.reactions or body.keys or body.joins else ()
        faced = (dress.spots, dress.against, dress.looks) if dress is not None else ()
        named = dress.looks if dress is not None else ()
        said = order, bare, faced, min(self._looks, default=""), fronts
        seconds = [second for _, second in second_calls(self._book, order)]
        return self._of(order, body).and_also(
            *(self.look(key) for key in (*fronts, *named)),
            ReadPart(said),
            # What it becomes is proved with it, told by who else calls that, and every look is
            # asked whether it kills it.
            *(part for each in seconds for part in self._second(each, dress)),
            *(ReadPart(self._dresses(each.concept)) for each in seconds),
            *((self.look(key) for key in self._looks) if body.kills else ()),
        )

    def _second(self, order: Order, dress: Dress | None) -> Sequence[ReadPart]:
        bare = replace(order, tags=(), spoken="") if order.tags else None
        return self.call(order, bare, dress).parts

    def _dresses(self, concept: str) -> tuple[Dress, ...]:
        return tuple(dress for dress in self._book.dresses if dress.concept == concept)

    def against(self, order: Order, looks: Iterable[str], spot: BallSpot) -> Reading:
        """A call from a spot, against looks by their keys."""
        keys = tuple(looks)
        parts = [self.look(key) for key in keys]
        return self._of(order, self._body(order)).and_also(*parts, ReadPart((order, keys, spot)))

    def drawn(self, order: Order, base: str) -> Reading:
        """A call as the book draws it; ``base`` is the key of the look that runs are drawn
        against."""
        shown = dict.fromkeys(key for key in (base, order.look) if key)
        parts = [self.look(key) for key in shown]
        return self._of(order, self._body(order)).and_also(*parts, ReadPart((order, base)))

    def unused_tag(self, key: tuple[str, str], calls: Iterable[tuple[BallSpot, Order]]) -> Reading:
        """A tag that no dress-up calls, laid over plain calls."""
        parts: list[ReadPart] = []
        for spot, order in calls:
            tagged = replace(order, tags=(key[1],))
            for each in (order, tagged):
                parts += self.call(each, order if each.tags else None).parts
            parts.append(ReadPart(spot))
        return self._shared.and_also(self._tag(key), *parts)

    def standing(self, calls: Calls) -> Reading:
        """Every formation as it stands, and every look against each, after the motions that calls
        use."""
        book = self._book
        used = dict.fromkeys((o.formation, o.way, o.motion) for _, o in calls.orders)
        motions = dict.fromkeys(motion for _, _, motion in used if motion)
        return self.formations().and_also(
            *(self._part("motion", key, book.motions[key]) for key in motions),
            *(self.look(key) for key in self._looks),
            ReadPart((tuple(used), self._looks)),
            ReadPart(notes_on_looks(book)),
        )

    def formations(self) -> Reading:
        every = self._book.formations
        return self._shared.and_also(
            *(self._part("formation", key, every[key]) for key in every), ReadPart(tuple(every))
        )

    def bodies(self) -> list[bytes]:
        """A digest of each concept and tag without the coach's own words."""
        parts = [self._concept(key) for key in self._book.concepts]
        parts += [self._tag(key) for key in self._book.tags]
        return [part.digest for part in parts]

    def look(self, key: str) -> ReadPart:
        return self._part("look", key, look_of(self._book, key))

    def _of(self, order: Order, body: Body) -> Reading:
        """The definitions that a call is made of."""
        book = self._book
        named = dict.fromkeys(said.value for said in body.protect)
        protections = {name: find(book, name) for name in named}
        return self._shared.and_also(
            self._part("formation", order.formation, book.formations[order.formation]),
            *((self._part("motion", order.motion, book.motions[order.motion]),)
              if order.motion else ()),
            self._concept(order.concept),
            *(self._tag((order.concept, tag)) for tag in order.tags),
            *(self._part("protection", name, each) for name, each in protections.items()),
        )  # fmt: skip

    def _tag(self, key: tuple[str, str]) -> ReadPart:
        return self._parts.get(("tag", key)) or self._without_words(
            "tag", key, self._book.tags[key]
        )

    def _concept(self, key: str) -> ReadPart:
        known = self._parts.get(("concept", key))
        return known or self._without_words("concept", key, self._book.concepts[key])

    def _without_words(self, kind: str, key: object, value: Concept | Tag) -> ReadPart:
        return self._part(kind, key, replace(value, body=_unsaid(value.body)))

    def _body(self, order: Order) -> Body:
        key = order.concept, order.tags
        if key not in self._bodies:
            tags = [self._book.tags[order.concept, tag] for tag in order.tags]
            self._bodies[key] = merged(self._book.concepts[order.concept].body, tags)
        return self._bodies[key]

    def _part(self, kind: str, key: object, value: object) -> ReadPart:
        if (kind, key) not in self._parts:
            self._parts[kind, key] = ReadPart((kind, value))
        return self._parts[kind, key]


def _judging(settings: Settings) -> Settings:
    """The settings without what is only printed."""
    return replace(
        settings, name="", season="", sections=(), says=(), cautions=(), span=NOWHERE, lowered=(),
        theme="", theme_span=NOWHERE, contact=None, kill_word="",
    )  # fmt: skip


def _unsaid(body: Body) -> Body:
    """The facts without the coach's own words for the page and for whoever has a role: they are
    judged where they are read, and nothing else is by them."""
    says = {role: ("",) * len(lines) for role, lines in body.role_says.items()}
    return replace(body, idea="", says=(), cautions=(), role_says=says)
