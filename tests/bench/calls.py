"""A season of as many calls as are asked for, made of a bundled playbook's own definitions.

Every call is another one (formation, side and motion with concept and tags), so that nothing is
measured twice from a store.
"""

from __future__ import annotations

import re
from bisect import bisect_left
from collections.abc import Iterable, Iterator, Mapping
from itertools import islice
from pathlib import Path

from stemline.football.field import BallSpot, Side, Way
from stemline.outside.project import read_files
from stemline.playbook.playbook import Playbook
from stemline.read.read_playbook import read_playbook
from stemline.resolve.all_calls import Calls, all_calls
from stemline.resolve.expand import CalledAt, Expander
from stemline.resolve.order import Order
from stemline.session import Session
from stemline.source import Source
from stemline.syntax.parser import parse

PLAYBOOKS = Path(__file__).parents[2] / "playbooks"


def fresh_book(name: str) -> Playbook:
    """A bundled playbook, read anew."""
    sources = read_files(PLAYBOOKS / name).sources
    book, _ = read_playbook([parse(source)[0] for source in sources], [], name)
    assert book is not None, f"{name} can be read"
    return book


def many_orders(name: str, number: int) -> tuple[Order, ...]:
    """``number`` passes and runs that expand without an error, concept by concept in turn."""
    book = fresh_book(name)
    calls, _ = all_calls(book)
    orders = tuple(islice(_sound(book, calls), number))
    assert len(orders) == number, f"{name} makes only {len(orders)} calls"
    return orders


def many_texts(name: str, number: int) -> tuple[Source, ...]:
    """The texts of a bundled playbook with more sets in each dress-up, as few as make ``number``
    calls. Raises AssertionError where all its sets do not make so many."""
    book, sources = fresh_book(name), read_files(PLAYBOOKS / name).sources
    sets: dict[str, dict[str, None]] = {}
    calls, _ = all_calls(book)
    for order in _sound(book, calls):
        motion = f" motion {book.motions[order.motion].name}" if order.motion else ""
        row = f"    in {book.formations[order.formation].name}{motion}\n"
        sets.setdefault(order.concept, {})[row] = None

    def texts(most: int) -> tuple[Source, ...]:
        return tuple(Source(s.name, _dressed(s.text, sets, most)) for s in sources)

    def enough(most: int) -> bool:
        return len(Session(texts(most), name).calls.orders) >= number

    turns = range(1, max(map(len, sets.values())) + 1)
    fewest = bisect_left(turns, True, key=enough)
    assert fewest < len(turns), f"{name} makes no {number} calls"
    return texts(turns[fewest])


def _dressed(text: str, sets: Mapping[str, Iterable[str]], most: int) -> str:
    def more(head: re.Match[str]) -> str:
        return head[0] + "".join(islice(sets.get(head[1].casefold(), ()), most))

    return re.sub(r"(?m)^dress (.*)\n", more, text)


def _sound(book: Playbook, calls: Calls) -> Iterator[Order]:
    expander = Expander(book)
    own = [order for _, order in calls.orders]
    sets = list(dict.fromkeys((o.formation, o.way, o.motion) for o in own))
    whats = list(dict.fromkeys((o.concept, o.tags) for o in own))

    def shape(formation: str, way: Way, motion: str) -> tuple[int, int] | None:
        side = way.at(BallSpot.MIDDLE, Side.RIGHT)
        assert side is not None, "the middle has a field side"
        picture = expander.lined(CalledAt(formation, side, motion, BallSpot.MIDDLE)).picture
        return picture.count.shape if picture is not None else None

    # A concept is dressed up in what is shaped like the sets that the playbook has it in.
    shapes = {(o.concept, shape(o.formation, o.way, o.motion)) for o in own}
    for turn in range(len(sets)):
        for n, (concept, tags) in enumerate(whats):
            formation, way, motion = sets[(n + turn) % len(sets)]
            if (concept, shape(formation, way, motion)) not in shapes:
                continue
            spoken = f"{formation} {way.word} {motion} {concept} {' '.join(tags)}"
            at = book.formations[formation].span
            order = Order(formation, way, motion, concept, tags, spoken, at, at)
            play, found = expander.expand(order, BallSpot.MIDDLE)
            if play is not None and not any(d.is_error for d in found):
                yield order
