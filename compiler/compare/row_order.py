"""Lines whose order says something: the rows under a heading of a week or an install, its periods,
the headings that are printed as they are written, what a week moves to one list, sentences to one
man, what is done off a key, claims, kills, the men of a formation or a personnel, and quizzes."""

from __future__ import annotations

import re
from bisect import bisect_left
from collections.abc import Iterator, Mapping, Sequence

from stemline.compare.definitions import SaidLine
from stemline.diagnostics.in_words import together
from stemline.football.contact_limits import DAYS
from stemline.source import Span

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
_UNDER = {
    "say": "what we say",
    "caution": "cautions",
    "alert": "alerts",
    "key": "keys",
    "hot": "hot throws",
    "suits": "what it suits",
}
"""Lines that a block may have several of and that are printed one under another, and what they are
together."""
_KEYED = ("gives", "keeps")
"""Verbs of what the quarterback does off a key that has a name."""
_AS_TYPED = {
    **dict.fromkeys(("give", "pull", "throw", "pitch"), "what is done off the key"),
    **dict.fromkeys(("claims", "pair"), "claims"),
    "kill": "kills",
}
"""Labels of what is printed one behind another, and what they are together."""
_MEN = (("personnel", "is"), ("formation", "at"))
"""Lines whose men stand in their order in every table: the kind of block, and the verb."""
_SHOWN = 2
"""Rows that moved and are told one by one; of more the whole order is."""
_NAMED = 10
"""Names of a whole order that are told."""
Pair = tuple[SaidLine, SaidLine]


def order_changes(
    old: Sequence[SaidLine], new: Sequence[SaidLine], pairs: Sequence[Pair], kind: str = ""
) -> Iterator[Pair]:
    """Each list whose rows stand in another order, as a line that names them as they were and as
    they are. ``pairs`` are the rows of both sides that are one row, ``kind`` that of the block."""
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
    yield from _printed_as_written(pairs, place, where, kind)
    was_held, now_held = _periods(old), _periods(new)
    for day, held in now_held.items():
        both = [name for name in held if name in was_held.get(day, {})]
        earlier = [name for name in was_held.get(day, {}) if name in both]
        if both:
            spans = was_held[day][both[0]], held[both[0]]
            yield from _told(f"periods{f' of {day}' if day else ''}", earlier, both, spans)
    yield from _days_mixed(was_held, now_held)
    yield from _one_behind_another(_headings(old), _headings(new))
    yield from _one_behind_another(_moves(old), _moves(new))


def _printed_as_written(
    pairs: Sequence[Pair], place: Mapping[int, int], where: Mapping[int, int], kind: str
) -> Iterator[Pair]:
    """What is printed in the order of its lines without a heading over them."""
    lists: dict[str, dict[str, Pair]] = {}
    for was, now in sorted(pairs, key=lambda pair: where[id(pair[1])]):
        heading, name = _list_of(now, kind)
        if heading:
            lists.setdefault(heading, {}).setdefault(name, (was, now))
    for heading, rows in lists.items():
        before = sorted(rows, key=lambda name: place[id(rows[name][0])])
        yield from _told(heading, before, list(rows), next(iter(rows.values())))


def _list_of(line: SaidLine, kind: str) -> tuple[str, str]:
    """The list that a line stands in, and its name there; "" for none."""
    if line.verb == "says":
        return f"what we tell {line.subject}", line.value
    if line.verb in _UNDER and not line.subject:
        return _UNDER[line.verb], together(COMMA.split(line.value))
    if line.verb in _AS_TYPED and not line.subject:
        heading = _AS_TYPED[line.verb]
        said = line.value if line.verb == heading else f"{line.verb} {line.value}"
        when = f" when {line.guard}" if line.guard else ""
        # A name of an order has no comma, which parts the names.
        return heading, " and ".join(COMMA.split(said + when))
    if line.subject and line.verb in ("hands", "fakes"):
        return f"what {line.subject} does with the ball", f"{line.verb} {line.value}"
    if line.subject and line.verb in _KEYED and line.value.startswith("if "):
        return "what is done off the keys", f"{line.verb} {line.value}"
    if (kind, line.verb) in _MEN:
        return "the men", line.subject
    if line.verb == "quiz" and not line.subject:
        return "quizzes", together(COMMA.split(line.value))
    return "", ""


_Named = dict[str, dict[str, SaidLine]]
"""What things are together → each of them by its name, in order, with a line of it."""


def _one_behind_another(old: _Named, new: _Named) -> Iterator[Pair]:
    for heading, now in new.items():
        was = old.get(heading, {})
        both = [name for name in now if name in was]
        earlier = [name for name in was if name in now]
        if both:
            yield from _told(heading, earlier, both, (was[both[0]], now[both[0]]))


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
    return ordered(heading, was, now, (lines[0].span, lines[1].span))


def ordered(
    heading: str, was: Sequence[str], now: Sequence[str], spans: tuple[Span, Span]
) -> Iterator[Pair]:
    """The same names in two orders, each as a line; nothing where the orders are one."""
    if was != now:
        old, new = (
            SaidLine(heading, ORDER, ", ".join(names), "", span)
            for names, span in zip((was, now), spans, strict=True)
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


def _days_mixed(
    old: Mapping[str, Mapping[str, SaidLine]], new: Mapping[str, Mapping[str, SaidLine]]
) -> Iterator[Pair]:
    """The periods of all days, where those of one day stand otherwise among those of another."""
    sides: list[dict[str, tuple[str, SaidLine]]] = []
    for held, other in ((old, new), (new, old)):
        both = [
            (line.span.source, line.span.line, day, name, line)
            for day, periods in held.items()
            for name, line in periods.items()
            if name in other.get(day, {})
        ]
        both.sort(key=lambda row: row[:2])
        sides.append({f"{name} of {day}": (day, line) for *_, day, name, line in both})
    days = [[day for day, _ in side.values()] for side in sides]
    if days[0] != days[1]:
        spans = [next(iter(side.values()))[1] for side in sides]
        yield from _told("periods", list(sides[0]), list(sides[1]), (spans[0], spans[1]))


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
    said = [_put(after, n) for n in moved] if len(moved) <= _SHOWN else [_begins(after)]
    heading = now.subject.removeprefix("situation ")
    if heading.startswith(("period ", "day ")):
        heading = COMMA.split(heading)[0]
    return f"{heading} in another order: {', '.join(said)}"


def _begins(names: Sequence[str]) -> str:
    """The names in order, the last of many counted."""
    more = len(names) - _NAMED
    return ", ".join(names if more <= 1 else [*names[:_NAMED], f"then {more} more"])


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
