"""One call → one play: men placed, motion run, receivers counted, roles bound, eyes set."""

from __future__ import annotations

from collections.abc import Hashable, Mapping, Sequence
from dataclasses import dataclass, replace

from stemline.diagnostics.catalogue.calls import E707
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.football.conditions import LookWord
from stemline.football.defenders import Defence
from stemline.football.field import BallSpot, Field, Side
from stemline.football.offence.counting import count, ranked
from stemline.football.play import Call, Motion, Play
from stemline.lineup.alignment import line_up
from stemline.lineup.lined_up import LinedUp, plays_against
from stemline.lineup.look_placed import line_up_defence
from stemline.lineup.moving import move
from stemline.playbook.concepts import Body, Concept, Tag
from stemline.playbook.look_definitions import BASE_FRONT
from stemline.playbook.playbook import Playbook
from stemline.playbook.protection_definitions import Protection
from stemline.read.ready_looks import look_of
from stemline.resolve.blocking.pass_blocking import find
from stemline.resolve.cast import CallParts, Cast
from stemline.resolve.in_formation import called_in
from stemline.resolve.order import Order
from stemline.resolve.tags import merged

Expanded = tuple[Play | None, tuple[Diagnostic, ...]]
"""A call's play, None where its men cannot be put on the field, and what is wrong with it."""


@dataclass(frozen=True)
class CalledAt:
    """Where a call's men stand: its formation, true side, motion and spot; ``middle`` is the side
    that is called the field from the middle, None for none."""

    formation: str
    side: Side
    motion: str
    spot: BallSpot
    middle: Side | None = None


def field_of(book: Playbook, spot: BallSpot, middle: Side | None = None) -> Field:
    return Field(book.settings.code, spot, book.settings.numbers, middle=middle)


def called_at(book: Playbook, order: Order, spot: BallSpot) -> CalledAt | None:
    """Where the men of a call stand at a spot; None where it has no side there.

    A side of the middle is the field for a call by the field, for others only where the playbook
    says so, and nowhere but in the middle: what stands alike is the same.
    """
    side = order.at(spot)
    if side is None:
        return None
    said = order.way.by_field or book.settings.middle_said
    middle = order.middle if said and spot is BallSpot.MIDDLE else None
    return CalledAt(order.formation, side, order.motion, spot, middle)


def expand(
    book: Playbook,
    order: Order,
    spot: BallSpot,
    against: Sequence[LookWord] = (),
    look_key: str = "",
) -> Expanded:
    """One call alone, as `Expander.expand`: who wants many keeps an expander."""
    return Expander(book).expand(order, spot, against, look_key)


_Defended = tuple[Defence | None, tuple[Diagnostic, ...]]


@dataclass(frozen=True)
class Lined:
    """A formation's men at the snap; no picture, with the reasons, where one cannot be placed."""

    picture: LinedUp | None
    motions: Mapping[str, Motion]
    found: tuple[Diagnostic, ...]


class Expander:
    """Makes the plays of one playbook; what calls have in common is worked out once.

    Calls of one formation, side and motion share their men at each spot, and their defence against
    each look; the looks that one call stands against share its roles.
    """

    def __init__(self, book: Playbook) -> None:
        self._book = book
        self._right_handed = _right_handed(book)
        self._lined: dict[CalledAt, Lined] = {}
        self._defences: dict[
            tuple[str, CalledAt], tuple[Defence | None, tuple[Diagnostic, ...]]
        ] = {}
        self._wholes: dict[tuple[str, tuple[str, ...]], Body] = {}
        self._bodies: dict[tuple[str, tuple[str, ...], str], Body] = {}
        self._casts: dict[tuple[Order, BallSpot, int], tuple[Concept, Cast]] = {}
        self._plays: dict[tuple[Order, BallSpot, tuple[LookWord, ...], str, int], Expanded] = {}
        self.posed: dict[Hashable, tuple[Order, Concept]] = {}
        """Concepts that no text has, by what they are made of: whoever wants one again must ask
        with the same concept, since it is known by itself."""

    def expand(
        self, order: Order, spot: BallSpot, against: Sequence[LookWord] = (), look_key: str = ""
    ) -> Expanded:
        """The play of a call from one ball spot; None where its men cannot be put on the field.

        With ``look_key`` it stands against that look of the playbook: its defenders are lined up,
        what the look shows is known, and blocks are worked out against it.
        """
        concept = self._book.concepts[order.concept]
        return self.play_of(order, concept, spot, against, look_key)

    def play_of(
        self,
        order: Order,
        concept: Concept,
        spot: BallSpot,
        against: Sequence[LookWord] = (),
        look_key: str = "",
    ) -> Expanded:
        """As `expand`, for a concept that need not stand in the playbook.

        A page on a formation or a look wants men who only stand: a concept with an empty body.
        A concept is known by itself and not by its name, which a formation may have too.
        """
        key = order, spot, tuple(against), look_key, id(concept)
        if key not in self._plays:
            self._plays[key] = self._play(order, concept, spot, against, look_key)
        return self._plays[key]

    def _play(
        self,
        order: Order,
        concept: Concept,
        spot: BallSpot,
        against: Sequence[LookWord],
        look_key: str,
    ) -> Expanded:
        at = called_at(self._book, order, spot)
        if at is None:
            return None, (E707(call=order.spoken, way=order.way.word).at(order.span),)
        lined = self.lined(at)
        if lined.picture is None:
            return None, lined.found
        picture = _turned(lined.picture) if order.turned else lined.picture
        cast = self._cast(order, concept, spot, picture, lined.motions)
        defence, standing = self.defence(look_key, at) if look_key else (None, ())
        if defence is not None and not against:
            against = tuple(LookWord(word) for word in defence.shows)
        play, found = cast.play(tuple(against), defence)
        if play is not None and order.goal is not None:
            play = replace(play, field=replace(play.field, goal=order.goal))
        return play, (*lined.found, *standing, *found)

    def _cast(
        self,
        order: Order,
        concept: Concept,
        spot: BallSpot,
        picture: LinedUp,
        motions: Mapping[str, Motion],
    ) -> Cast:
        """The call's roles with their men. The concept is kept beside it: as long as it lives no
        other has its id."""
        key = order, spot, id(concept)
        if key not in self._casts:
            self._casts[key] = concept, Cast(self._casting(order, concept, picture, motions))
        return self._casts[key][1]

    def asks(self, order: Order, spot: BallSpot, looks: Sequence[LookWord]) -> bool:
        """Whether a call's men may do anything else where these looks show."""
        stood = self._stood(order, spot)
        if stood is None:
            return True
        concept = self._book.concepts[order.concept]
        return self._cast(order, concept, spot, *stood).asks(tuple(looks))

    def casting(self, order: Order, spot: BallSpot) -> CallParts | None:
        """What decides a call's play from a spot; None where its men cannot be put on the field."""
        stood = self._stood(order, spot)
        concept = self._book.concepts[order.concept]
        return self._casting(order, concept, *stood) if stood is not None else None

    def _stood(self, order: Order, spot: BallSpot) -> tuple[LinedUp, Mapping[str, Motion]] | None:
        """A call's men and their motions; None where they cannot be put on the field."""
        at = called_at(self._book, order, spot)
        lined = self.lined(at) if at is not None else None
        if lined is None or lined.picture is None:
            return None
        return _turned(lined.picture) if order.turned else lined.picture, lined.motions

    def _casting(
        self,
        order: Order,
        concept: Concept,
        picture: LinedUp,
        motions: Mapping[str, Motion],
    ) -> CallParts:
        tags = [self._book.tags[order.concept, tag] for tag in order.tags]
        body = self.body(order, concept)
        return CallParts(
            body=body,
            picture=picture,
            motions=motions,
            protections=_protections(self._book, body),
            call=_call(self._book, order, picture.called, concept, tags),
            family=concept.family,
            kind=concept.kind,
            right_handed=self._right_handed,
            span=order.span,
            concept=(concept.span, concept.last),
            scramble=self._book.settings.scramble,
        )

    def lined(self, at: CalledAt) -> Lined:
        """The men of a formation at the snap, after a motion ("" for none)."""
        if at not in self._lined:
            self._lined[at] = _line_up(self._book, at)
        return self._lined[at]

    def defence(self, look_key: str, at: CalledAt) -> _Defended:
        """A look against men who stand as in `lined`; nobody where they do not, or where the look
        is never played against them.

        No place or duty of a look is said by a playside, so the concept does not matter to it.
        """
        key = look_key, at
        if key not in self._defences:
            lined = self.lined(at)
            meets = lined.picture is not None and self.meets(look_key, at.formation, lined.picture)
            made = _defence(self._book, look_key, lined) if meets else (None, ())
            self._defences[key] = made
        return self._defences[key]

    def meets(self, look_key: str, formation: str, picture: LinedUp) -> bool:
        """Whether a look is played against a formation as it stands at the snap."""
        return plays_against(look_of(self._book, look_key), formation, picture)

    def body(self, order: Order, concept: Concept) -> Body:
        """A concept with the call's tags laid over it."""
        tags = [self._book.tags[order.concept, tag] for tag in order.tags]
        if self._book.concepts.get(order.concept) is not concept:
            return called_in(merged(concept.body, tags), order.formation)
        key = order.concept, order.tags, order.formation
        if key not in self._bodies:
            whole = self._wholes.get(key[:2]) or merged(concept.body, tags)
            self._wholes[key[:2]] = whole
            self._bodies[key] = called_in(whole, order.formation)
        return self._bodies[key]


def _line_up(book: Playbook, at: CalledAt) -> Lined:
    field = field_of(book, at.spot, at.middle)
    alignment, men, found = line_up(book, book.formations[at.formation], at.side, field)
    if not men:
        return Lined(None, {}, found)
    before = count(men, at.side)
    men, motions, moved = move(alignment, men, book.motions[at.motion] if at.motion else None)
    counted = count(men, at.side)
    came = tuple(
        (side, number, label)
        for side in Side
        for number, label in enumerate(before.on(side), 1)
        if label in motions and label in counted.backs
    )
    # The alignment's field knows the line that this formation draws.
    men, field = ranked(men, counted), alignment.field
    picture = LinedUp(men, counted, field, at.side, book.receivers, came=came)
    return Lined(picture, motions, (*found, *moved))


def _turned(picture: LinedUp) -> LinedUp:
    """The same men, the call going to the other side; a tie is strong to that one then."""
    counted = count(picture.men, picture.called.other)
    men = ranked(picture.men, counted)
    return replace(picture, men=men, count=counted, called=picture.called.other)


def _defence(
    book: Playbook, look_key: str, lined: Lined
) -> tuple[Defence | None, tuple[Diagnostic, ...]]:
    assert lined.picture is not None, "somebody stands there"
    defence, found = line_up_defence(look_of(book, look_key), lined.picture, lined.motions)
    if look_key != BASE_FRONT:
        return defence, found
    # Nobody wrote it, so nobody is told of it; and men who only stand there show no coverage.
    return (replace(defence, shows=()) if defence is not None else None), ()


def _protections(book: Playbook, body: Body) -> Mapping[str, Protection]:
    """The protections that a body names, by its words for them."""
    named = {said.value: find(book, said.value) for said in body.protect}
    return {name: protection for name, protection in named.items() if protection is not None}


def _right_handed(book: Playbook) -> bool:
    hands = [p.right_handed for p in book.people.values() if p.position.value == "quarterback"]
    return hands[0] if hands else book.settings.right_handed


def call_of(book: Playbook, order: Order, side: Side) -> Call:
    """A call of the playbook, to its true side, by its names."""
    tags = [book.tags[order.concept, tag] for tag in order.tags]
    return _call(book, order, side, book.concepts[order.concept], tags)


def _call(book: Playbook, order: Order, side: Side, concept: Concept, tags: Sequence[Tag]) -> Call:
    return Call(
        formation=book.formations[order.formation].name,
        side=side,
        motion=book.motions[order.motion].name if order.motion else "",
        concept=concept.name,
        tags=tuple(t.name for t in tags),
        spoken=order.spoken,
        way=order.way if order.way.by_field else None,
        best=order.best,
        not_from=order.not_from,
        tempo=next((t.tempo for t in reversed(tags) if t.tempo), ""),
    )
