"""Two plays at the line: the call that another one becomes, from the same men at the same places.

The second call is made and proved as any other; it is no call of the book.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

from stemline.diagnostics.catalogue.calls import E601
from stemline.diagnostics.catalogue.line_calls import E764
from stemline.diagnostics.catalogue.names import E310
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.diagnostics.in_words import either
from stemline.diagnostics.nearest import nearest
from stemline.football.field import Side
from stemline.playbook.kill_definitions import KillDef, joined_kills
from stemline.playbook.playbook import Playbook
from stemline.resolve.call_reading import prefixes, tag_readings
from stemline.resolve.order import Order

SIDES = ("away", "call", "left", "right")
"""Sides that a kill may name: the formation stands, so that only the call's own have a meaning."""


@dataclass(frozen=True)
class KilledTo:
    """What a kill names: a concept and tags by their keys, and a side ("" for the call's)."""

    concept: str
    tags: tuple[str, ...]
    side: str


def kills_of(book: Playbook, order: Order) -> tuple[KillDef, ...]:
    """The kills of a call: its concept's, and over them its tags'."""
    kills = book.concepts[order.concept].body.kills
    for tag in (book.tags[order.concept, key] for key in order.tags):
        if tag.body.kills:
            kills = tuple(joined_kills(kills, tag.body.kills, tag.name))
    return kills


def second_calls(book: Playbook, order: Order) -> Iterator[tuple[KillDef, Order]]:
    """What a call may become. A kill whose names are not known, or whose play is that of the call
    itself, makes none; nor does the second play of a call."""
    if order.second:
        return
    for kill in kills_of(book, order):
        found = readings(book, kill)
        if len(found) == 1 and not is_itself(book, order, found[0]):
            yield kill, second_call(book, order, kill, found[0])


def second_call(book: Playbook, order: Order, kill: KillDef, to: KilledTo) -> Order:
    return replace(
        order,
        concept=to.concept,
        tags=to.tags,
        spoken=f"{order.spoken} killed to {second_words(book, to)}",
        span=kill.span,
        tags_span=kill.span,
        second=True,
        turned=_is_turned(order, to),
    )


def second_words(book: Playbook, to: KilledTo) -> str:
    """The second play as it is called: *Power Wheel away*."""
    tags = " + ".join(book.tags[to.concept, tag].name for tag in to.tags)
    side = to.side if to.side != "call" else ""
    return " ".join(filter(None, (book.concepts[to.concept].name, tags, side)))


def is_itself(book: Playbook, order: Order, to: KilledTo) -> bool:
    """Whether a kill names the play that the call is, tags apart that only kill it."""
    tags = {tag for tag in order.tags if not book.tags[order.concept, tag].body.kills}
    same = order.concept == to.concept and tags == set(to.tags)
    return same and not _is_turned(order, to)


def _is_turned(order: Order, to: KilledTo) -> bool:
    """Whether a second play goes to the other side than its call; where the call goes by the
    field, left and right are as it is drawn, to the right."""
    own = order.at(order.timed_from) or Side.RIGHT
    sides = {"left": Side.LEFT, "right": Side.RIGHT, "away": own.other}
    return sides.get(to.side, own) is not own


def readings(book: Playbook, kill: KillDef) -> list[KilledTo]:
    """Every way to read what a kill names."""
    found: dict[tuple[str, frozenset[str], str], KilledTo] = {}
    words = kill.to
    ends = [(words, "")]
    if len(words) > 1 and words[-1] in SIDES:
        ends.append((words[:-1], words[-1]))
    for said, side in ends:
        for concept, rest in prefixes(said, book.concepts):
            for tags in tag_readings(rest, concept, book):
                key = concept, frozenset(tags), side
                found.setdefault(key, KilledTo(concept, tags, side))
    return list(found.values())


def unknown_kills(book: Playbook) -> tuple[Diagnostic, ...]:
    """Kills whose names are not known, each line once."""
    found: dict[Diagnostic, None] = {}
    for kill in _written(book):
        found |= dict.fromkeys(wrongly_named(book, kill, readings(book, kill)))
    return tuple(found)


def wrongly_named(
    book: Playbook, kill: KillDef, read: Sequence[KilledTo]
) -> tuple[Diagnostic, ...]:
    """What is wrong with the names of a kill that is ``read`` so: none, or more than one."""
    if len(read) == 1:
        return ()
    if not read:
        return (_unknown(book, kill),)
    both = " or ".join(sorted(_told_apart(book, each) for each in read))
    return (E601(call=kill.said, readings=both).at(kill.named),)


def _told_apart(book: Playbook, to: KilledTo) -> str:
    tags = (f"tag {book.tags[to.concept, tag].name}" for tag in to.tags)
    return f"({', '.join((f'concept {book.concepts[to.concept].name}', *tags, to.side))})"


def _unknown(book: Playbook, kill: KillDef) -> Diagnostic:
    known = max(prefixes(kill.to, book.concepts), key=lambda one: len(one[0]), default=None)
    if known is None:
        names = [concept.name for concept in book.concepts.values()]
        said = E310(kind="concept", found=kill.said, choices=either(names))
        return said.at(kill.named, nearest=nearest(kill.said, names))
    concept, rest = known
    tags = [tag.name for (owner, _), tag in book.tags.items() if owner == concept]
    choices, wrong = (*tags, *SIDES), " ".join(kill.said.split()[-len(rest) :])
    told = E764(found=wrong, choices=either(choices), concept=book.concepts[concept].name)
    return told.at(kill.named, nearest=nearest(wrong, choices))


def killed_to(book: Playbook) -> frozenset[str]:
    """The keys of concepts that some call becomes: they need no dress-up of their own."""
    return frozenset(to.concept for kill in _written(book) for to in readings(book, kill))


def _written(book: Playbook) -> Iterable[KillDef]:
    """The kills of the playbook, each line once: a tag's may be for hundreds of concepts."""
    bodies = (*(c.body for c in book.concepts.values()), *(t.body for t in book.tags.values()))
    return {kill.span: kill for body in bodies for kill in body.kills}.values()
