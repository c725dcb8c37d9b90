"""Lines of a definition, and what has become of them, as a coach says them to his staff."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import NamedTuple

from stemline.compare.definitions import SaidLine
from stemline.compare.label_words import (
    AS_VERBS,
    DOING,
    WHOLE,
    duty_aloud,
    label_words,
    value_aloud,
    when_aloud,
)
from stemline.compare.line_changes import LineChange
from stemline.compare.row_order import ORDER, order_words
from stemline.compare.rows_aloud import is_row, list_change, reopened, row_change, row_words
from stemline.diagnostics.in_words import together

INDENT = "    "
_SENTENCES = ("say", "says", "idea", "caution")
_LOOKS = {"read": "we now read", "pressure": "under pressure we now read"}
"""Orders that are told whole, as they are and as they were."""
_DUTIES = ("covers", "rushes")
_STEPS = {"1": "first", "3": "third", "5": "fifth", "7": "seventh", "quick": "quick"}
_ON_STEP = re.compile(r"\bon (1|3|5|7|quick)\b")
_POSITION = re.compile(
    r"(playside|backside|line|linemen|helper|centre|center|carrier|quarterback)\b"
)
"""What begins, or is, a place and no letter and no role of a concept's own."""
_STEM = r"(?! (?:up|on a line) (?:\d+(?:\.\d+)?|a yard)(?: yards)? (?:inside|outside) )"
_SHORT = 60
"""Letters of an order of two reads up to which one still hears what they share."""
_HALVES = ("or", "then", "and", "if")
"""Words that no old part of a line may begin with: it is said whole."""
_OPENING = ("for ", "word ", "to ", "if ", "run ")
"""What stands before both values of a label, and is said once."""
_ROUTE = re.compile(rf"([a-z](?:{_STEM}[a-z -])*?) (\d+(?:\.\d+)?)\b(.*)", re.IGNORECASE)
"""A route and its depth, which is not the figure of a stem."""
_AHEAD = re.compile(r"^(\S+ (?:seconds?|counts?))")
_DRESSED = {
    "in": "from {}", "with": "with {}", "to": "to {}", "motion": "with {} motion",
    "from": "from the {}", "against": "drawn against {}",
}  # fmt: skip
"""What a line of a dress-up says of the concept: it is called so."""
_PLACE = re.compile(r"(.*?)(?: with ((?:(?! to ).)+))?( to .*)?")
"""Where a dress-up calls its concept: the formation and motion, the tags, the side."""
_TAGGED = re.compile(r" with ((?:(?! to )[^,])+(?:, (?:(?! to )[^,])+)+|plain)")
"""The tags of a place's calls, where they are several or one of them has none."""


class ToldLine(NamedTuple):
    """A line of the print-out; ``kind`` is "head", "new", "gone", "now", "note" or ""."""

    kind: str
    text: str


def lines_words(lines: Sequence[LineChange]) -> Iterator[ToldLine]:
    """The lines; those that say one thing of several subjects together, and of rows that stand
    under another heading the heading alone."""
    told: list[LineChange] = []
    for text, done in reopened(lines):
        yield ToldLine("now", INDENT + text)
        told += done
    for line in lines:
        if any(line is done for done in told):
            continue
        alike = [other for other in lines if _unnamed(other) == _unnamed(line)]
        told += alike
        subjects = [said.subject for a in alike if (said := a.now or a.was)]
        yield from line_words(line, subjects if len(alike) > 1 else ())


def _unnamed(line: LineChange) -> tuple[object, ...]:
    one = line.one
    if is_row(one) or one.verb == ORDER:
        return line.was, line.now
    sides = [(s.about[1:], s.value, bool(s.subject)) if s else None for s in (line.was, line.now)]
    subjects = {s.subject for s in (line.was, line.now) if s}
    return (*sides, len(subjects))


def line_words(change: LineChange, subjects: Sequence[str] = ()) -> Iterator[ToldLine]:
    """One line's change; ``subjects`` are all of whom it is true, where they are several."""
    was, now = change.was, change.now
    one = change.one
    if one.verb in _SENTENCES:
        yield from _told_words(was, now)
    elif one.verb == "drop":
        if now is not None:
            yield ToldLine("new", f"{INDENT}dropped: {now.value}{_when(now)}")
        if was is not None:
            yield ToldLine("gone", f"{INDENT}no longer dropped: {was.value}{_when(was)}")
    elif now is None:
        yield ToldLine("gone", f"{INDENT}no longer: {line_aloud(one, subjects)}")
    elif was is None:
        word = "we now read" if one.verb == "read" and not one.subject else "new:"
        said = line_aloud(now, subjects).removeprefix("we read " if word != "new:" else "")
        yield ToldLine("new", f"{INDENT}{word} {said}")
    elif is_read(one) and was.value != now.value:
        yield ToldLine("now", f"{INDENT}{_LOOKS[one.verb]} {_order_aloud(now.value)}{_when(now)}")
        yield ToldLine("now", f"{2 * INDENT}before: {_order_aloud(was.value)}")
    else:
        yield ToldLine("now", INDENT + _instead(was, now, subjects))


def is_read(line: SaidLine) -> bool:
    """Whether the line says in which order the quarterback looks."""
    return line.verb in _LOOKS and not line.subject


def _told_words(was: SaidLine | None, now: SaidLine | None) -> Iterator[ToldLine]:
    """Sentences a line each: they are read aloud."""
    one = now or was
    assert one is not None, "a change has a side"
    what = f"we {{}} tell {_man(one.subject)}" if one.subject else "we {} say"
    if one.verb in ("caution", "idea"):
        what = f"the {one.verb} is {{}}"
    what = f"{what}{_when(one)}"
    if now is None:
        yield ToldLine("gone", f"{INDENT}{what.format('no longer')}: {one.value}")
        return
    yield ToldLine("new" if was is None else "now", f"{INDENT}{what.format('now')}: {now.value}")
    if was is not None:
        when = "" if was.guard == now.guard else _when(was) or " always"
        yield ToldLine("now", f"{2 * INDENT}before{when}: {was.value}")


def line_aloud(line: SaidLine, subjects: Sequence[str] = (), now: str = "") -> str:
    """The line as it is read aloud; ``now`` is a word before what he does."""
    if is_row(line):
        return row_words(line, value_aloud(line.value)) + _when(line)
    verb, value = line.verb, value_aloud(line.value)
    many = len(subjects) > 1
    if verb == "blocks":
        first, _, rest = value.partition(" ")
        if first in AS_VERBS:
            ending = "es" if first.endswith("ch") else "s"
            verb, value = first + ending, rest
    elif verb == "runs" and (route := _ROUTE.fullmatch(value)) is not None:
        value = f"the {route[1]} at {route[2]}{route[3]}"
    elif verb in _DUTIES:
        value = duty_aloud(verb, line.value)
    elif verb == "starts":
        value = _AHEAD.sub(r"\1 before the snap", value)
    elif is_read(line):
        value = _order_aloud(line.value)
    if bool(line.subject) == (verb == "at"):
        verb, value = label_words(verb, value)
    if many and line.subject:
        verb = _plural(verb)
    subject = _man(together(subjects) if many else line.subject)
    return " ".join(filter(None, (subject, now, verb, value))) + _when(line)


def _man(subject: str) -> str:
    """The subject with its article, where it is a place and no name."""
    return f"the {subject}" if _POSITION.match(subject) else subject


def _order_aloud(value: str) -> str:
    """ "short on the third step, then flag on the hitch"; a step that all looks share once."""
    looks = value.split(" > ")
    parts = [look.rpartition(" on ") for look in looks]
    if len(looks) == 2 and parts[0][0] and parts[0][2] == parts[1][2] and len(value) < _SHORT:
        value = f"{parts[0][0]} > {parts[1][0]}, both on {parts[0][2]}"
    return _ON_STEP.sub(lambda found: f"on the {_STEPS[found[1]]} step", value_aloud(value))


def _plural(verb: str) -> str:
    if verb in ("is", "lines up at"):
        return "are" if verb == "is" else "line up at"
    return verb.removesuffix("es") if verb.endswith("ches") else verb.removesuffix("s")


def _when(line: SaidLine) -> str:
    return f" {when_aloud(line.guard, line.verb)}" if line.guard else ""


def _instead(was: SaidLine, now: SaidLine, subjects: Sequence[str]) -> str:
    """ "over runs the cross at 6 instead of 5": of the old line only what is not in the new one."""
    if now.verb == ORDER:
        return order_words(was, now)
    if is_row(now):
        return list_change(was, now) or row_change(was, now)
    if now.guard and now.guard.casefold() == was.guard.casefold():
        bare = _instead(replace(was, guard=""), replace(now, guard=""), subjects)
        return f"{when_aloud(now.guard, now.verb)}, {bare}"
    text = line_aloud(now, subjects)
    if was.verb != now.verb:
        said = line_aloud(now, subjects, "now")
        return f"{said}{',' * (',' in said)} instead of {_doing(was, now)}"
    if was.value.casefold() == now.value.casefold():
        before = _when(was).strip() or "always"
        return f"{text} (was {before})"
    if lists := list_change(was, now):
        return lists
    if " > " in was.value or " > " in now.value:
        return f"{text}; before: {value_aloud(was.value)}"
    if now.verb in WHOLE and not now.subject:
        return f"{text} instead of {was.value}"
    routes = [_ROUTE.fullmatch(side.value) for side in (was, now)]
    if now.verb == "runs" and routes[0] is not None and routes[1] is not None:
        a, b = routes[0], routes[1]
        if _said_of(a) == _said_of(b) and not a[3] and b[3]:
            return f"{text} instead of a plain {value_aloud(a[1])}"
        alike = (a[1].casefold(), a[3]) == (b[1].casefold(), b[3])
        old = a[2] if alike else f"the {a[1]} at {a[2]}{value_aloud(a[3])}"
        return f"{text} instead of {old}"
    if now.verb in _DUTIES:
        return f"{text} instead of {_duty_before(was, now)}"
    if now.verb == "runs" and now.value.casefold().startswith(f"{was.value.casefold()} "):
        return f"{text} instead of a plain {value_aloud(was.value)}"
    if now.verb == "blocks":
        return f"{line_aloud(now, subjects, 'now')} instead of {_blocked(was, now)}"
    comma = "," if "," in now.value else ""
    return f"{text}{comma} instead of {_other_part(was.value, now.value)}"


def _said_of(route: re.Match[str]) -> tuple[str, str]:
    """A route and its depth, whatever stands behind them."""
    return route[1].casefold(), route[2]


def _duty_before(was: SaidLine, now: SaidLine) -> str:
    """What a defender did before: of the same gap only when he came."""
    old, new = was.value.partition(" after "), now.value.partition(" after ")
    if old[0].casefold() == new[0].casefold():
        return value_aloud(f"after {old[2]}") if old[2] else "at once"
    return duty_aloud(was.verb, was.value)


def _doing(was: SaidLine, now: SaidLine) -> str:
    """What he did before, in another verb, to follow "instead of"."""
    if was.verb == "blocks":
        first, _, rest = value_aloud(was.value).partition(" ")
        return f"{AS_VERBS.get(first, f'blocking {first}')} {rest}".rstrip()
    doing = DOING[was.verb]
    if was.value.casefold() == now.value.casefold():
        return doing
    if was.verb in _DUTIES:
        return f"{doing} {duty_aloud(was.verb, was.value)}"
    said = line_aloud(was).removeprefix(_man(was.subject)).split(maxsplit=1)
    return f"{doing} {said[1] if was.verb != 'at' else value_aloud(was.value)}"


def _blocked(was: SaidLine, now: SaidLine) -> str:
    """What he blocked before, to follow "instead of"."""
    value = value_aloud(was.value)
    first, _, rest = value.partition(" ")
    if first in AS_VERBS:
        return " ".join(filter(None, (AS_VERBS[first], rest)))
    still = now.value.partition(" ")[0] not in AS_VERBS
    return value if still else f"blocking {value}"


def _other_part(was: str, now: str) -> str:
    old, new = was.split(), now.split()
    start = _common(old, new)
    end = _common(old[start:][::-1], new[start:][::-1])
    rest = " ".join(old[start : len(old) - end]).rstrip(",")
    whole = not rest or start + end < len(old) / 2 or '"' in was
    whole = whole or rest.split()[0] in _HALVES or not " ".join(new[start : len(new) - end])
    for word in _OPENING:
        was = was.removeprefix(word) if now.startswith(word) else was
    return value_aloud(was if whole else rest)


def _common(one: Sequence[str], other: Sequence[str]) -> int:
    count = 0
    for a, b in zip(one, other, strict=False):
        if a.casefold() != b.casefold():
            break
        count += 1
    return count


# Dress-ups.


def dress_words(lines: Sequence[LineChange]) -> Iterator[ToldLine]:
    """The lines of a dress-up: out of what the concept is called, and how, since then."""
    sentences = [line for line in lines if line.one.verb in (*_SENTENCES, ORDER)]
    for line in sentences:
        yield from line_words(line)
    lines = [line for line in lines if line not in sentences]
    for kind, word in (("new", "now also"), ("gone", "no longer")):
        by_verb: dict[str, list[SaidLine]] = {}
        for line in lines:
            one = line.now if kind == "new" else line.was
            if one is not None and (line.was is None) == (kind == "new") and not _both(line):
                by_verb.setdefault("" if one.subject else one.verb, []).append(one)
        for verb, ones in by_verb.items():
            said = _DRESSED.get(verb)
            if said is not None:
                places = together([_place(one) for one in ones])
                yield ToldLine(kind, f"{INDENT}{word} {said.format(places)}")
            else:
                yield from (ToldLine("now", INDENT + _left_out(one, kind)) for one in ones)
    for line in filter(_both, lines):
        assert line.was is not None and line.now is not None, "both sides"
        said = _DRESSED.get(line.now.verb)
        if line.now.verb == "in" and (tags := _other_tags(line.was, line.now)):
            yield from (ToldLine(kind, INDENT + text) for kind, text in tags)
            continue
        if said is not None:
            text = f"now {said.format(_place(line.now))} instead of {_place(line.was)}"
        else:
            text = f"{_left_out(line.now, 'new')}; before: {_place(line.was)}"
        yield ToldLine("now", INDENT + text)


def _both(line: LineChange) -> bool:
    return line.was is not None and line.now is not None


def _left_out(line: SaidLine, kind: str) -> str:
    """An exception of a dress-up, or another of its lines."""
    if line.subject:
        return f"{line.subject} {'now' if kind == 'new' else 'no longer'} only {_place(line)}"
    if line.verb == "never" and kind == "new":
        return f"never {'from ' * line.value.startswith('in ')}{_place(line)}"
    if line.verb in ("best", "only"):
        return f"{'now' if kind == 'new' else 'no longer'} {line.verb} {_place(line)}"
    what = {"never": "left out", "call": "called"}.get(line.verb, line.verb)
    return f"{what} now: {_place(line)}" if kind == "new" else f"no longer {what}: {_place(line)}"


def _place(line: SaidLine) -> str:
    value = value_aloud(f"to {line.value}").removeprefix("to ") if line.verb == "to" else ""
    value = _TAGGED.sub(_tagged, (value or value_aloud(line.value)).removeprefix("in "))
    return value.replace(" motion ", " with ") + _when(line)


def _other_tags(was: SaidLine, now: SaidLine) -> list[tuple[str, str]]:
    """What is said of calls in one formation to one side that have other tags; nothing where that
    is not all."""
    sides = [_PLACE.fullmatch(line.value) for line in (was, now)]
    old, new = sides
    if old is None or new is None or was.guard or now.guard:
        return []
    if [old[1].casefold(), old[3]] != [new[1].casefold(), new[3]]:
        return []
    tags = [(side[2] or "plain").split(", ") for side in (old, new)]
    gone, come = ([x for x in a if x not in b] for a, b in (tags, tags[::-1]))

    def place(those: Sequence[str], end: str | None = new[3]) -> str:
        return _place(replace(now, value=f"{new[1]} with {', '.join(those)}{end or ''}"))

    if come and not gone:
        return [("new", f"now also from {place(come)}")]
    if gone and not come:
        return [("gone", f"no longer from {place(gone)}")]
    instead = "" if gone == ["plain"] else f" instead of {together(gone)}"
    where = _place(replace(now, value=f"{new[1]}{new[3] or ''}"))
    return [("now", f"from {where} now with {together(come)}{instead}")]


def _tagged(found: re.Match[str]) -> str:
    """ "Pinch, plain and with Swing"."""
    tags = found[1].split(", ")
    said = together([tag if tag == "plain" else f"with {tag}" for tag in tags])
    return f", {said}" if "plain" in tags else f" {said}"
