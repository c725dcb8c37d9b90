"""A call's text → the call, by every way its words can be cut, never by the longest.

The longest match would quietly change what an old call means when a colleague adds a name.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping

from stemline.diagnostics.catalogue.calls import E601, E602
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.diagnostics.nearest import nearest
from stemline.football.field import Way
from stemline.playbook.playbook import Playbook
from stemline.resolve.dressing import spoken
from stemline.resolve.order import Order
from stemline.source import Span

_WAYS = {way.word: way for way in Way}
_MOST_WORDS = 60
"""Words of a call that anybody could say in a huddle, several times over."""
_MOST_NEAR = 2
"""Calls of the same words that are named: the same to the right and to the left."""
_MOST_READINGS = 8
"""Ways to read one call's tags that are told apart: two are a mistake already."""


def readings(book: Playbook, text: str, at: Span) -> list[Order]:
    """Every call that the text can be read as."""
    words = tuple(re.sub(r"\s*\+\s*", " + ", text).casefold().split())
    if len(words) > _MOST_WORDS:
        return []
    found: list[Order] = []
    for formation, rest in prefixes(words, book.formations):
        if not rest or rest[0] not in _WAYS:
            continue
        way, after = _WAYS[rest[0]], rest[1:]
        for motion, then in [("", after), *prefixes(after, book.motions)]:
            for concept, tail in prefixes(then, book.concepts):
                for tags in tag_readings(tail, concept, book):
                    said = spoken(book, formation, way, motion, concept, tags)
                    middle = book.settings.middle
                    found.append(Order(formation, way, motion, concept, tags, said, at, at, middle))
    return _different(found)


def _different(orders: Iterable[Order]) -> list[Order]:
    """Each call once, whatever name it is given by and in whatever order its tags stand."""
    calls: dict[tuple[object, ...], Order] = {}
    for o in orders:
        calls.setdefault((o.formation, o.way, o.motion, o.concept, frozenset(o.tags)), o)
    return list(calls.values())


def read_call(
    book: Playbook, text: str, known: Mapping[str, Order], at: Span
) -> tuple[Order | None, tuple[Diagnostic, ...]]:
    """The one call that the text means. ``known`` are the book's calls by their spoken name."""
    plain = " ".join(text.split())
    named = [order for name, order in known.items() if name.casefold() == plain.casefold()]
    found = _different((*named, *readings(book, text, at)))
    if len(found) == 1:
        return found[0], ()
    if found:
        return None, (two_readings(book, plain, found, at),)
    near = nearest(plain, known) or _of_the_words(plain, known)
    return None, (E602(call=plain).at(at, nearest=near),)


def _of_the_words(text: str, known: Iterable[str]) -> tuple[str, ...]:
    """Calls that say all of these words in whatever order, those that say the fewest more first:
    what lacks its side, or has it behind, is far off by its letters."""
    said = Counter(text.casefold().split())
    if sum(said.values()) < 2:
        return ()
    fits = [name for name in known if said <= Counter(name.casefold().split())]
    return tuple(sorted(fits, key=lambda name: (len(name.split()), name))[:_MOST_NEAR])


def two_readings(book: Playbook, call: str, found: Iterable[Order], at: Span) -> Diagnostic:
    both = " or ".join(sorted(describe(book, order) for order in found))
    return E601(call=call, readings=both).at(at)


def describe(book: Playbook, order: Order) -> str:
    """A call with its parts told apart, for a message about two readings."""
    parts = [f"formation {book.formations[order.formation].name}", order.way.word]
    if order.motion:
        parts.append(f"motion {book.motions[order.motion].name}")
    parts.append(f"concept {book.concepts[order.concept].name}")
    parts += [f"tag {book.tags[order.concept, tag].name}" for tag in order.tags]
    return "(" + ", ".join(parts) + ")"


def ambiguous(book: Playbook, orders: Iterable[Order]) -> Iterator[Diagnostic]:
    """Calls of the book with two readings, each reported at the newest name that causes it."""
    seen: set[Diagnostic] = set()
    for order in orders:
        found = readings(book, order.spoken, order.span)
        if len(found) < 2:
            continue
        spans = [_spans(book, reading) for reading in found]
        shared = set.intersection(*spans)
        newest = max(set.union(*spans) - shared or {order.span})
        problem = two_readings(book, order.spoken, found, newest)
        if problem not in seen:
            seen.add(problem)
            yield problem


def _spans(book: Playbook, order: Order) -> set[Span]:
    spans = {book.formations[order.formation].span, book.concepts[order.concept].span}
    if order.motion:
        spans.add(book.motions[order.motion].span)
    return spans | {book.tags[order.concept, tag].span for tag in order.tags}


def prefixes(words: tuple[str, ...], names: Iterable[str]) -> Iterator[tuple[str, tuple[str, ...]]]:
    """Names that ``words`` begin with, each with the words behind it."""
    for name in names:
        parts = tuple(name.split())
        if words[: len(parts)] == parts:
            yield name, words[len(parts) :]


def tag_readings(words: tuple[str, ...], concept: str, book: Playbook) -> Iterator[tuple[str, ...]]:
    """Every way to read what is left as tags of the concept, a + between them or not."""
    own = [tag for owner, tag in book.tags if owner == concept] if words else []
    # By how many words are left: what they may be read as, each set of tags once.
    ways: dict[int, list[tuple[str, ...]]] = {0: [()]}
    for left in range(1, len(words) + 1):
        ahead = words[-left:]
        ahead = ahead[1:] if ahead[0] == "+" else ahead
        read: dict[frozenset[str], tuple[str, ...]] = {}
        for tag, rest in prefixes(ahead, own):
            for others in ways[len(rest)]:
                if len(read) < _MOST_READINGS:
                    read.setdefault(frozenset((tag, *others)), (tag, *others))
        ways[left] = list(read.values())
    yield from ways[len(words)]
