"""A playbook → its calls: every call that its dress-ups make, and no play."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cached_property

from stemline.diagnostics.catalogue.bounds import E142
from stemline.diagnostics.catalogue.calls import E706, W710
from stemline.diagnostics.catalogue.football import E420
from stemline.diagnostics.catalogue.names import E327
from stemline.diagnostics.diagnostic import Diagnostic, Related
from stemline.diagnostics.in_words import either
from stemline.diagnostics.nearest import nearest
from stemline.playbook.dress_ups import Alias, Dress
from stemline.playbook.playbook import Playbook
from stemline.read.size_limits import MOST_CALLS
from stemline.resolve.call_reading import ambiguous, read_call, readings, two_readings
from stemline.resolve.dressing import at_most, orders
from stemline.resolve.kills import killed_to, unknown_kills
from stemline.resolve.order import Order

_EXCEPTED = 4
"""Calls that dress-ups may name for each that is left when their exceptions are taken off."""


@dataclass(frozen=True)
class Calls:
    """A playbook's calls in book order, by how they are spoken."""

    orders: tuple[tuple[Dress, Order], ...]

    @cached_property
    def by_name(self) -> Mapping[str, Order]:
        return {order.spoken: order for _, order in self.orders}


def all_calls(book: Playbook) -> tuple[Calls, tuple[Diagnostic, ...]]:
    """Every call that the dress-ups make, aliases given, ambiguous names reported."""
    found: list[Diagnostic] = []
    made: list[tuple[Dress, Order]] = []
    aliases: dict[str, Order] = {}
    count = room = 0
    for dress in _in_book_order(book):
        # Counted before they are made: a line that says much may be one of few calls.
        room += at_most(dress)
        few = room <= MOST_CALLS * _EXCEPTED
        dressed, problems = orders(book, dress) if few else ((), ())
        count += len(dressed)
        if not few or count > MOST_CALLS:
            said = f"{count if few else room:,}"
            found.append(E142(most=f"{MOST_CALLS:,}", found=said).at(dress.span))
            break
        found += problems
        called, wrong = _aliased(book, dress, dressed, aliases)
        found += wrong
        made += [(dress, order) for order in called]
    undressed = set(book.concepts) - {dress.concept for dress in book.dresses}
    undressed -= killed_to(book) | _joined(book)
    for key in book.concepts:
        if key in undressed:
            concept = book.concepts[key]
            found.append(W710(concept=concept.name).at(concept.span))
    found += ambiguous(book, (o for _, o in made))
    found += _unknown_sections(book)
    found += unknown_kills(book)
    return Calls(tuple(made)), tuple(found)


def _joined(book: Playbook) -> frozenset[str]:
    """The keys of runs that a dressed pass or one of its tags shows: they are called with it."""
    dressed = {dress.concept for dress in book.dresses}
    bodies = [book.concepts[key].body for key in dressed if key in book.concepts]
    bodies += [tag.body for (concept, _), tag in book.tags.items() if concept in dressed]
    return frozenset(join.name for body in bodies for join in body.joins)


def _aliased(
    book: Playbook, dress: Dress, dressed: Sequence[Order], aliases: dict[str, Order]
) -> tuple[list[Order], list[Diagnostic]]:
    """The calls with the names given to them; ``aliases`` holds those of the whole book so far.

    A name that is another call's, by its own words or as an alias, is a call with two readings.
    """
    named = {order.spoken: order for order in dressed}
    called: dict[str, str] = {}
    given: dict[str, Alias] = {}
    found: list[Diagnostic] = []
    for alias in dress.aliases:
        order, problems = read_call(book, alias.text, named, alias.span)
        found += problems
        if order is None:
            continue
        if order.spoken not in named:
            found.append(E706(call=order.spoken).at(alias.span))
            continue
        first = given.setdefault(order.spoken, alias)
        if first.name != alias.name:
            other = (Related(first.span, "the other line is here"),)
            what = f"what {order.spoken} is called"
            found.append(E420(what=what).at(alias.span, related=other))
            continue
        others = readings(book, alias.name, alias.span)
        others += [aliases[alias.name.casefold()]] if alias.name.casefold() in aliases else []
        others = [o for o in others if o.spoken != order.spoken]
        if others:
            found.append(two_readings(book, alias.name, (order, *others), alias.span))
            continue
        aliases[alias.name.casefold()] = order
        called[order.spoken] = alias.name
    return [replace(o, spoken=called.get(o.spoken, o.spoken)) for o in dressed], found


def _unknown_sections(book: Playbook) -> Iterable[Diagnostic]:
    known = {family.casefold() for family in book.families}
    for name, span in book.settings.sections:
        if name.casefold() not in known:
            near = nearest(name, book.families)
            yield E327(found=name, choices=either(book.families)).at(span, nearest=near)


def _in_book_order(book: Playbook) -> list[Dress]:
    """By family, then concept, as they stand in the text."""
    families, keys = book.families, list(book.concepts)

    def place(dress: Dress) -> tuple[int, int]:
        return families.index(book.concepts[dress.concept].family), keys.index(dress.concept)

    return sorted(book.dresses, key=place)


def is_broken(book: Playbook, order: Order) -> bool:
    """Whether a definition that the call is made of was not read whole."""
    return book.is_broken(order.formation, order.motion, order.concept, order.tags)
