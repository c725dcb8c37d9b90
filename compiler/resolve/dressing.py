"""A dress-up → its calls: formations x tags x motions x sides, less the exceptions."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import replace
from itertools import product
from typing import TypeVar

from stemline.diagnostics.catalogue.calls import E705, E707, E708, E709, W711
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.football.field import BallSpot, Way
from stemline.playbook.dress_ups import Dress, DressIn, DressWith, Pattern
from stemline.playbook.playbook import Playbook
from stemline.resolve.order import Order

T = TypeVar("T")

_WAYS = {way.word: way for way in Way}


def orders(book: Playbook, dress: Dress) -> tuple[tuple[Order, ...], tuple[Diagnostic, ...]]:
    """Every call of the dress-up once, in the order of its lines; exceptions that name none."""
    made: dict[tuple[object, ...], Order] = {}
    found: list[Diagnostic] = []
    everything = [
        _order(book, dress, where, tags, side, motion)
        for where in _places(dress)
        for tags, side in product(_tags(where, dress), _sides_of(where, dress))
        for motion in dict.fromkeys(_motions(where, dress))
    ]
    for order in everything:
        if not _dropped(order, dress):
            key = order.formation, order.way, order.motion, frozenset(order.tags)
            if key not in made:
                spotted, problems = _with_spots(order, dress)
                found += problems
                if spotted.spots:
                    made[key] = spotted
    found += _both_ways(made.values())
    for pattern in (*dress.never, *dress.only, *dress.best):
        if not any(_matches(order, pattern) for order in everything):
            found.append(E705().at(pattern.span))
    return tuple(made.values()), tuple(found)


def at_most(dress: Dress) -> int:
    """How many calls the dress-up would make without its exceptions."""
    return sum(
        len(_motions(where, dress)) * len(_tags(where, dress)) * len(_sides_of(where, dress))
        for where in _places(dress)
    )


def _places(dress: Dress) -> list[DressIn]:
    return _different(dress.formations, _said_of)


def _said_of(where: DressIn) -> object:
    tags = tuple(frozenset(with_.tags) for with_ in where.withs)
    return where.formation, where.motions, tags, where.sides


def _tags(where: DressIn, dress: Dress) -> list[DressWith]:
    return _different(where.withs or dress.withs, lambda with_: frozenset(with_.tags))


def _sides_of(where: DressIn, dress: Dress) -> list[str]:
    return list(dict.fromkeys(where.sides or dress.sides))


def _different(said: Iterable[T], key: Callable[[T], object]) -> list[T]:
    """The first of those that say the same."""
    kept: dict[object, T] = {}
    for one in said:
        kept.setdefault(key(one), one)
    return list(kept.values())


def spoken(
    book: Playbook, formation: str, way: Way, motion: str, concept: str, tags: tuple[str, ...]
) -> str:
    """How a call is said: formation, side, motion, concept, tags."""
    words = [book.formations[formation].name, way.word.capitalize()]
    if motion:
        words.append(book.motions[motion].name)
    words.append(book.concepts[concept].name)
    if tags:
        words.append(" + ".join(book.tags[concept, tag].name for tag in tags))
    return " ".join(words)


def _order(
    book: Playbook, dress: Dress, where: DressIn, with_: DressWith, side: str, motion: str
) -> Order:
    way = _WAYS[side]
    said = spoken(book, where.formation, way, motion, dress.concept, with_.tags)
    look = dress.looks[0] if dress.goal is not None and dress.looks else ""
    return Order(
        where.formation, way, motion, dress.concept, with_.tags, said, where.span, with_.span,
        book.settings.middle, goal=dress.goal, look=look,
    )  # fmt: skip


def _both_ways(made: Iterable[Order]) -> Iterator[Diagnostic]:
    """The first call by the field that is also made to its sides."""
    sided = {(o.formation, o.motion, frozenset(o.tags)): o for o in made if not o.way.by_field}
    for order in made:
        other = sided.get((order.formation, order.motion, frozenset(order.tags)))
        if order.way.by_field and other is not None:
            yield W711(call=order.spoken, other=other.spoken).at(order.span)
            return


def _with_spots(order: Order, dress: Dress) -> tuple[Order, list[Diagnostic]]:
    """The call with the spots that it is best, and never, called from; the lines that leave it
    none, or contradict each other."""
    found: list[Diagnostic] = []
    for pattern in dress.never:
        if pattern.spots and order.spots and _matches(order, pattern):
            order = replace(order, not_from=order.not_from | {*pattern.spots})
            if not order.spots:
                found.append(E708(call=order.spoken, line=pattern.line).at(pattern.span))
    named = [s for s in BallSpot if s.value in dress.spots]
    if not found and not any(order.at(spot) for spot in named):
        found.append(E707(call=order.spoken, way=order.way.word).at(order.span))
    for pattern in dress.best:
        if _matches(order, pattern):
            best = tuple(s for s in BallSpot if s in (*order.best, *pattern.spots))
            order = replace(order, best=best)
            never = next((s for s in pattern.spots if s in order.not_from), None)
            if never is not None and not found:
                found.append(E709(call=order.spoken, spot=never.value).at(pattern.span))
    return order, found


def _motions(where: DressIn, dress: Dress) -> tuple[str, ...]:
    return where.motions or dress.motions or ("",)


def _dropped(order: Order, dress: Dress) -> bool:
    if any(not pattern.spots and _matches(order, pattern) for pattern in dress.never):
        return True
    return any(_matches(order, _subject_of(p)) and not _matches(order, p) for p in dress.only)


def _subject_of(pattern: Pattern) -> Pattern:
    """Which calls an `only` line restricts: those it names itself, else those with its tags, else
    those in its formations."""
    if pattern.limits is not None:
        return pattern.limits
    if pattern.tags:
        return Pattern((), pattern.tags, (), (), pattern.span)
    return Pattern(pattern.formations, (), (), (), pattern.span)


def _matches(order: Order, pattern: Pattern) -> bool:
    return (
        order.formation in (pattern.formations or (order.formation,))
        and set(order.tags) in ([set(t) for t in pattern.tags] or [set(order.tags)])
        and order.way.word in (pattern.sides or (order.way.word,))
        and order.motion in (pattern.motions or (order.motion,))
    )
