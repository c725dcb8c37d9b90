"""One call → one play: men placed, motion run, receivers counted, roles bound, eyes set."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from stemline.diagnostics.model import Diagnostic
from stemline.football.counting import count, ranked
from stemline.football.defence import Defence
from stemline.football.field import BallSpot, Field, Side
from stemline.football.play import Call, Play
from stemline.football.worlds import Look
from stemline.resolve.alignment import line_up, move
from stemline.resolve.binding import Bound, Picture, bind
from stemline.resolve.blocking import block_up, playside
from stemline.resolve.defence import line_up_defence
from stemline.resolve.definitions import Body, Concept, Playbook, Tag
from stemline.resolve.eyes import look
from stemline.resolve.jobs import assignments
from stemline.resolve.merge import merged
from stemline.source import Span


@dataclass(frozen=True)
class Order:
    """A call by the keys of its definitions; ``spoken`` as the coach calls it.

    ``span`` is where its formation is dressed up, ``tags_span`` its tags.
    """

    formation: str
    side: Side
    motion: str
    concept: str
    tags: tuple[str, ...]
    spoken: str
    span: Span
    tags_span: Span


def field_of(book: Playbook, spot: BallSpot) -> Field:
    return Field(book.settings.code, spot, book.settings.numbers)


def expand(
    book: Playbook,
    order: Order,
    spot: BallSpot,
    against: Sequence[Look] = (),
    look_key: str = "",
) -> tuple[Play | None, tuple[Diagnostic, ...]]:
    """The play of a call from one ball spot; None where its men cannot be put on the field.

    With ``look_key`` it stands against that look of the playbook: its defenders are lined up,
    what the look shows is known, and blocks are worked out against it.
    """
    return play_of(book, order, book.concepts[order.concept], spot, against, look_key)


def play_of(
    book: Playbook,
    order: Order,
    concept: Concept,
    spot: BallSpot,
    against: Sequence[Look] = (),
    look_key: str = "",
) -> tuple[Play | None, tuple[Diagnostic, ...]]:
    """As `expand`, for a concept that need not stand in the playbook.

    A page on a formation or a look wants men who only stand: a concept with an empty body.
    """
    formation = book.formations[order.formation]
    tags = [book.tags[order.concept, tag] for tag in order.tags]
    motion = book.motions[order.motion] if order.motion else None
    field = field_of(book, spot)
    alignment, men, found = line_up(book, formation, order.side, field)
    if not men:
        return None, found
    field = alignment.field  # it knows the line that this formation draws
    men, motions, moved = move(alignment, men, motion)
    counted = count(men, order.side)
    men = ranked(men, counted)
    picture = Picture(men, counted, field, order.side, book.receivers)
    body = merged(concept.body, tags)
    picture = replace(picture, toward=playside(body, picture))
    defence: Defence | None = None
    lined: tuple[Diagnostic, ...] = ()
    if look_key:
        defence, lined = line_up_defence(book.looks[look_key], picture)
        if defence is not None and not against:
            against = tuple(Look(word) for word in defence.shows)
    bound = bind(body, picture, order.spoken)
    _swap(body, bound)
    assigned, job_found = assignments(body, bound, picture, motions, against, order.spoken)
    eyes = look(body, bound, picture, assigned, _right_handed(book), order.spoken)
    if bound.found:
        # A role without its man leaves spots empty and gives no side: one cause is reported once.
        eyes = replace(eyes, found=())
        job_found = tuple(d for d in job_found if d.code != "E623")
    play = Play(
        call=_call(book, order, concept, tags),
        family=concept.family,
        field=field,
        shape=counted.shape,
        strong=counted.strong,
        men=men,
        assignments=assigned,
        spots=eyes.spots,
        feet=eyes.feet,
        reads=eyes.reads,
        pressure=eyes.pressure,
        claims=eyes.claims,
        alerts=eyes.alerts,
        protection=eyes.protection,
        pick=eyes.pick,
        nobody=tuple(bound.nobody),
        against=tuple(x.value for x in against),
        span=order.span,
        kind=concept.kind,
        defence=defence,
        toward=picture.toward,
    )
    play, blocked = block_up(play, body, book, bound, picture)
    return play, (*found, *moved, *lined, *bound.found, *job_found, *eyes.found, *blocked)


def _swap(body: Body, bound: Bound) -> None:
    """`swap a with b`: the two men change roles."""
    for swap in body.swaps:
        a, b = bound.men.get(swap.first), bound.men.get(swap.second)
        if a is not None and b is not None:
            bound.men[swap.first], bound.men[swap.second] = b, a


def _right_handed(book: Playbook) -> bool:
    hands = [p.right_handed for p in book.people.values() if p.position.value == "quarterback"]
    return hands[0] if hands else book.settings.right_handed


def _call(book: Playbook, order: Order, concept: Concept, tags: Sequence[Tag]) -> Call:
    return Call(
        formation=book.formations[order.formation].name,
        side=order.side,
        motion=book.motions[order.motion].name if order.motion else "",
        concept=concept.name,
        tags=tuple(t.name for t in tags),
        spoken=order.spoken,
    )
