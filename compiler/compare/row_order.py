"""Lines whose order says something: the rows under a heading of a week or an install, a day's
periods, the headings that are printed as they are written, and what a week moves to one list."""

from __future__ import annotations

import re
from bisect import bisect_left
from collections.abc import Iterator, Sequence

from stemline.compare.definitions import SaidLine
from stemline.football.contact_limits import DAYS

ORDER = "in the order"
"""The verb of a line that stands for the order of rows: "openers in the order A, B"."""
COMMA = re.compile(r', (?=(?:[^"]*"[^"]*")*[^"]*$)')
"""A comma outside a coach's own sentence."""
_ORDERED = ("openers", "situation", "period", "scout")
_LISTED = ("day", "week")
"""Headings whose rows are lists of names: their order is that of the install sheet."""
_HEADINGS = {
    "situation": "own situations",
    "wristband": "wristbands",
    "scout": "scout cards",
    "day": "days and weeks",
    "week": "days and weeks",
}
"""Headings that are printed in the order of the text, and what they are together; a situation only
where its name is the coach's own, since the others stand as the downs go."""
_SHOWN = 2
"""Rows that moved and are told one by one; of more the whole order is."""
Pair = tuple[SaidLine, SaidLine]


def order_changes(
    old: Sequence[SaidLine], new: Sequence[SaidLine], pairs: Sequence[Pair]
) -> Iterator[Pair]:
    """Each list whose rows stand in another order, as a line that names them as they were and as
    they are. ``pairs`` are the rows of both sides that are one row."""
    place = {id(line): n for n, line in enumerate(old)}
    where = {id(line): n for n, line in enumerate(new)}
    lists: dict[str, list[Pair]] = {}
    for was, now in sorted((*pairs, *_reopened(old, new, pairs)), key=lambda p: where[id(p[1])]):
        if (_is_ordered(now) or _heads(now, _LISTED)) and was.subject:
            lists.setdefault(now.subject, []).append((was, now))
    for heading, rows in lists.items():
        before = sorted(rows, key=lambda pair: place[id(pair[0])])
        names = [[_name(now) for _, now in side] for side in (before, rows)]
        yield from _told(heading, names[0], names[1], rows[0])
    was_held, now_held = _periods(old), _periods(new)
    for day, held in now_held.items():
        both = [name for name in held if name in was_held.get(day, {})]
        earlier = [name for name in was_held.get(day, {}) if name in both]
        if both:
            spans = was_held[day][both[0]], held[both[0]]
            yield from _told(f"periods{f' of {day}' if day else ''}", earlier, both, spans)
    yield from _one_behind_another(_headings(old), _headings(new))
    yield from _one_behind_another(_moves(old), _moves(new))


_Named = dict[str, dict[str, SaidLine]]
"""What things are together → each of them by its name, in order, with a line of it."""


def _one_behind_another(old: _Named, new: _Named) -> Iterator[Pair]:
    for together, now in new.items():
        was = old.get(together, {})
        both = [name for name in now if name in was]
        earlier = [name for name in was if name in now]
        if both:
            yield from _told(together, earlier, both, (was[both[0]], now[both[0]]))


def _headings(lines: Sequence[SaidLine]) -> _Named:
    found: _Named = {}
    for line in lines:
        text = line.subject or f"{line.verb} {line.value}"
        kind, _, says = text.partition(" ")
        name = COMMA.split(says)[0].partition(" for ")[0]
        if kind in _HEADINGS and (kind != "situation" or '"' in name):
            own = f"{kind} {name}" if kind in _LISTED else name
            found.setdefault(_HEADINGS[kind], {}).setdefault(own, line)
    return found


def _moves(lines: Sequence[SaidLine]) -> _Named:
    """What is moved to one list stands there in the order of the moves."""
    found: _Named = {}
    for line in lines:
        call, to, where = line.value.rpartition(" to ")
        if line.verb == "move" and not line.subject and to:
            name = call.partition(" from ")[0]
            found.setdefault(f"moves to {where.partition(' after ')[0]}", {})[name] = line
    return found


def call_of(line: SaidLine) -> tuple[str, ...]:
    """The key of a row by its call, or of a period by its name; of any other line `about`."""
    if _is_ordered(line):
        return line.subject.casefold(), _name(line).casefold()
    if line.verb == "period" and not line.subject:
        return line.verb, COMMA.split(line.value)[0].casefold()
    return line.about


def _is_ordered(line: SaidLine) -> bool:
    return _heads(line, _ORDERED)


def _heads(line: SaidLine, headings: Sequence[str]) -> bool:
    return line.subject.partition(" ")[0].casefold() in headings


def _told(heading: str, was: Sequence[str], now: Sequence[str], lines: Pair) -> Iterator[Pair]:
    if was != now:
        old, new = (
            SaidLine(heading, ORDER, ", ".join(names), "", line.span)
            for names, line in zip((was, now), lines, strict=True)
        )
        yield old, new


def _reopened(
    old: Sequence[SaidLine], new: Sequence[SaidLine], pairs: Sequence[Pair]
) -> Iterator[Pair]:
    """Rows that say the same under one period's heading with another length, contact or day."""
    taken = {id(line) for pair in pairs for line in pair}
    left = [line for line in old if id(line) not in taken]
    for now in (line for line in new if id(line) not in taken and line.subject):
        name, said = COMMA.split(now.subject)[0], (now.verb, now.value, now.guard)
        for was in left:
            if (was.verb, was.value, was.guard) == said and COMMA.split(was.subject)[0] == name:
                left.remove(was)
                yield was, now
                break


def _periods(lines: Sequence[SaidLine]) -> dict[str, dict[str, SaidLine]]:
    """Day → its periods by name, in order, each with its first line."""
    days: dict[str, dict[str, SaidLine]] = {}
    for line in lines:
        text = line.subject or f"{line.verb} {line.value}"
        if text.partition(" ")[0].casefold() == "period":
            name, *says = COMMA.split(text.partition(" ")[2])
            day = next((said.capitalize() for said in says if said.capitalize() in DAYS), "")
            days.setdefault(day, {}).setdefault(name, line)
    return days


def _name(row: SaidLine) -> str:
    """What a row is called by: its call."""
    return COMMA.split(" ".join(filter(None, (row.verb, row.value))))[0]


def order_words(was: SaidLine, now: SaidLine) -> str:
    """ "openers in another order: Trey Right Stick first"."""
    before, after = (COMMA.split(side.value) for side in (was, now))
    places, left = [], list(enumerate(before))
    for name in after:
        at = next(pair for pair in left if pair[1] == name)
        left.remove(at)
        places.append(at[0])
    still = _unmoved(places)
    moved = [n for n in range(len(after)) if n not in still]
    said = [_put(after, n) for n in moved] if len(moved) <= _SHOWN else [", ".join(after)]
    heading = now.subject.removeprefix("situation ")
    if heading.startswith(("period ", "day ")):
        heading = COMMA.split(heading)[0]
    return f"{heading} in another order: {', '.join(said)}"


def _put(names: Sequence[str], at: int) -> str:
    return f"{names[at]} after {names[at - 1]}" if at else f"{names[at]} first"


def _unmoved(places: Sequence[int]) -> frozenset[int]:
    """The indices of a longest rising run of places, the one that ends last: so of two rows that
    changed places the upper one moved."""
    length: list[int] = []
    tails: list[int] = []
    for place in places:
        at = bisect_left(tails, place)
        tails[at : at + 1] = [place]
        length.append(at + 1)
    kept, wanted, below = set(), len(tails), len(places)
    for n in reversed(range(len(places))):
        if length[n] == wanted and places[n] < below:
            kept.add(n)
            wanted, below = wanted - 1, places[n]
    return frozenset(kept)
