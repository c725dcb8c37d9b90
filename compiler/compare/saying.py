"""A topic of a comparison in words, as a coordinator says it."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from typing import NamedTuple

from stemline.compare.comparison import CallChange, Comparison, DefinitionChange
from stemline.compare.definitions import Definition, SaidLine
from stemline.compare.line_changes import LineChange
from stemline.compare.topics import ConceptTopic, Replacement
from stemline.diagnostics.in_words import how_many, together
from stemline.football.play import Play

SHOWN = 4
"""Calls named before the others are counted: what is read at a glance."""
INDENT = "    "
_SAID = ("say", "says", "idea", "caution")
_LINEMEN = 5


class ToldLine(NamedTuple):
    """A line of the print-out; ``kind`` is "head", "new", "gone", "now", "note" or ""."""

    kind: str
    text: str


def named(calls: Sequence[str]) -> str:
    """The first calls by name, the others counted."""
    more = len(calls) - SHOWN
    if more <= 1:
        return ", ".join(calls)
    return f"{', '.join(calls[:SHOWN])} and {more} more"


def calls_of(found: Comparison) -> Counter[str]:
    """How many calls a concept has now, by its name in lower case: of those that were touched."""
    plays = (*found.still, *found.added, *(c.now for c in found.changed if c.now is not None))
    return Counter(play.call.concept.casefold() for play in plays)


# A concept.


def concept_lines(topic: ConceptTopic, found: Comparison) -> Iterator[ToldLine]:
    """A concept with all that hangs on it."""
    change = topic.itself
    if change is not None and change.was is None:
        yield from _new_concept(topic)
        return
    if change is not None and change.now is None:
        gone = f" and its {how_many(len(topic.dropped), 'call')}" if topic.dropped else ""
        yield ToldLine("gone", f"Gone: {change.one.title}{gone}")
        return
    kind = change.one.kind if change is not None else "concept"
    yield _heading(change) if change is not None else ToldLine("head", f"Concept {topic.name}")
    if change is not None:
        yield from _change(change, found, kind)
    for tag in topic.tags:
        yield from _tag(tag, found)
    if topic.dress is not None:
        yield from lines_words(topic.dress.lines)
    for kind, word, plays in (("new", "new", topic.added), ("gone", "gone", topic.dropped)):
        if plays:
            calls = [play.call.spoken for play in plays]
            said = f"{len(calls)} calls {word}" if len(calls) > 1 else f"1 call {word}"
            yield ToldLine(kind, f"{INDENT}{said}: {named(calls)}")


def _new_concept(topic: ConceptTopic) -> Iterator[ToldLine]:
    change = topic.itself
    assert change is not None
    tags = [tag.one.name for tag in topic.tags]
    with_tags = f", with the {'tags' if len(tags) > 1 else 'tag'} {together(tags)}" if tags else ""
    yield ToldLine("new", f"New: {change.one.title}{with_tags}")
    yield from _first_word(change.one)
    if topic.added:
        calls = [play.call.spoken for play in topic.added]
        yield ToldLine("note", f"{INDENT}{how_many(len(calls), 'call')}: {named(calls)}")


def _first_word(one: Definition) -> Iterator[ToldLine]:
    """The first thing its coach says of it."""
    said = next((line.value for line in one.lines if line.verb == "say" and not line.subject), "")
    if said:
        yield ToldLine("new", INDENT + said)


def _tag(change: DefinitionChange, found: Comparison) -> Iterator[ToldLine]:
    if change.was is None:
        yield ToldLine("new", f"{INDENT}new tag {change.one.name}")
        yield from _indented(_first_word(change.one))
    elif change.now is None:
        yield ToldLine("gone", f"{INDENT}the tag {change.one.name} is gone")
    else:
        yield ToldLine("now", INDENT + _renaming(change))
        yield from _indented(_change(change, found, "tag"))


# A protection that took another's place, and all the rest.


def replacement_lines(pair: Replacement, found: Comparison) -> Iterator[ToldLine]:
    was, now = pair.was.one.name, pair.now.one.name
    where = f"in {together(pair.concepts)}"
    yield ToldLine("head", f"Protection {now} takes the place of {was} {where}")
    yield from _first_word(pair.now.one)
    for side, verb in ((pair.was.one, "was"), (pair.now.one, "is")):
        yield ToldLine("now", f"{INDENT}{verb}: {_blocks(side)}")
    if pair.calls:
        yield ToldLine("note", INDENT + _reached(pair.calls, found))


def _blocks(protection: Definition) -> str:
    """Who blocks how, those who block alike together."""
    found: dict[str, list[SaidLine]] = {}
    for line in protection.lines:
        if line.verb == "blocks":
            found.setdefault(f"{line.value} {line.guard}", []).append(line)
    return "; ".join(_text(lines[0], [line.subject for line in lines]) for lines in found.values())


def other_lines(
    group: str, changes: Sequence[DefinitionChange], found: Comparison
) -> Iterator[ToldLine]:
    """Changes of one ``group``: "new look", "gone motion", or one definition's own."""
    word = group.partition(" ")[0]
    if changes[0].was is None or changes[0].now is None:
        one = changes[0].one
        kind = f"{one.kind}s" if len(changes) > 1 and one.kind != "personnel" else one.kind
        names = together([change.one.name for change in changes])
        yield ToldLine(word, f"{word.capitalize()}: {kind} {names}")
        if len(changes) == 1 and word == "new":
            yield from _first_word(one)
        return
    for change in changes:
        yield _heading(change)
        yield from _change(change, found, change.one.kind)


def _heading(change: DefinitionChange) -> ToldLine:
    text = _renaming(change)
    return ToldLine("head", text[0].upper() + text[1:])


def _renaming(change: DefinitionChange) -> str:
    was, now = change.was, change.now
    assert was is not None and now is not None
    if was.name.casefold() == now.name.casefold():
        return now.title.removesuffix(f" for {now.owner}") if now.owner else now.title
    score = f" ({round(100 * change.likeness)} % alike)" if change.likeness is not None else ""
    return f"{was.kind} {was.name} is now called {now.name}{score}"


def _change(change: DefinitionChange, found: Comparison, kind: str) -> Iterator[ToldLine]:
    """What a definition says otherwise, and whom that reaches."""
    for old, new in change.roles:
        yield ToldLine("now", f"{INDENT}{old} is now called {new}")
    yield from lines_words(change.lines)
    if kind not in ("dress", "playbook", "week"):
        yield ToldLine("note", INDENT + _reach(change, found))


def _reach(change: DefinitionChange, found: Comparison) -> str:
    if change.calls:
        return _reached(change.calls, found, change.one.name)
    assert change.was is not None
    renamed = _spoken_with(change.was.name, found)
    if change.likeness is not None and renamed:
        return f"{how_many(renamed, 'call')} by the new name; every man does what he did"
    return "no play changes"


def _spoken_with(name: str, found: Comparison) -> int:
    words = f" {name} ".casefold()
    return sum(words in f" {before} ".casefold() for before, _ in found.renamed)


def _reached(calls: Sequence[str], found: Comparison, own: str = "") -> str:
    """ "all 13 calls of Flood and Throwback; another job for R"; ``own`` is a concept that need not
    be named."""
    reached = set(calls)
    here = [c for c in found.changed if c.spoken in reached]
    concepts = Counter(play.call.concept for c in here if (play := c.now or c.was) is not None)
    known = calls_of(found)
    whole = all(number == known[name.casefold()] for name, number in concepts.items())
    text = how_many(len(calls), "call")
    if whole:
        text = "all " * (len(calls) > 1) + text
        text += "" if list(concepts) == [own] else f" of {together(list(concepts))}"
    else:
        text += f": {named(calls)}"
    whom = _whom(here)
    return f"{text}; another job for {whom}" if whom else text


def _whom(changes: Sequence[CallChange]) -> str:
    """Who does something else, the one it is most often first; five linemen are the line."""
    men = Counter(label for c in changes for label in _others(c))
    line = {
        man.label
        for c in changes
        for man in (c.now.men if c.now is not None else ())
        if man.position.interior
    }
    labels = [label for label, _ in sorted(men.items(), key=lambda row: (-row[1], row[0]))]
    if len(line & men.keys()) >= _LINEMEN:
        labels = ["the line", *(label for label in labels if label not in line)]
    return together(labels)


def _others(change: CallChange) -> Iterator[str]:
    yield from dict.fromkeys((*(man.label for man in change.men), *_jobs_differ(change)))


def _jobs_differ(change: CallChange) -> Iterator[str]:
    """Men of whom another thing is said, and the quarterback where his orders are others."""
    if change.was is None or change.now is None:
        return
    quarterback = [m.label for m in change.now.men if m.position.value == "quarterback"]
    if any(what != "Protection was" for what, _, _ in change.orders):
        yield from quarterback
    before = _jobs(change.was)
    for label, job in _jobs(change.now).items():
        if before.get(label, job) != job:
            yield label


def _jobs(play: Play) -> Mapping[str, str]:
    return {task.man: task.job for task in play.assignments}


# Lines.


def lines_words(lines: Sequence[LineChange]) -> Iterator[ToldLine]:
    """The lines; those that say one thing of several subjects together."""
    told: list[LineChange] = []
    for line in lines:
        if any(line is done for done in told):
            continue
        alike = [other for other in lines if _unnamed(other) == _unnamed(line)]
        told += alike
        subjects = [said.subject for a in alike if (said := a.now or a.was)]
        yield from line_words(line, subjects if len(alike) > 1 else ())


def _unnamed(line: LineChange) -> tuple[object, ...]:
    sides = [(s.about[1:], s.value, bool(s.subject)) if s else None for s in (line.was, line.now)]
    subjects = {s.subject for s in (line.was, line.now) if s}
    return (*sides, len(subjects))


def line_words(change: LineChange, subjects: Sequence[str] = ()) -> Iterator[ToldLine]:
    """One line's change; ``subjects`` are all of whom it is true, where they are several."""
    was, now = change.was, change.now
    if (one := now or was) is not None and one.verb in _SAID:
        yield from _told_words(was, now)
    elif now is None:
        assert was is not None
        yield ToldLine("gone", f"{INDENT}no longer: {_text(was, subjects)}")
    elif was is None:
        yield ToldLine("new", f"{INDENT}new: {_text(now, subjects)}")
    else:
        yield ToldLine("now", INDENT + _instead(was, now, subjects))


def _told_words(was: SaidLine | None, now: SaidLine | None) -> Iterator[ToldLine]:
    """Sentences a line each: they are read aloud."""
    one = now or was
    assert one is not None
    who = f"{one.subject} is" if one.subject else "we"
    word = "told" if one.subject else "say"
    if one.verb == "caution":
        who, word = "the caution", "is"
    if now is None:
        yield ToldLine("gone", f"{INDENT}{who} no longer {word}: {one.value}")
        return
    yield ToldLine("new" if was is None else "now", f"{INDENT}{who} now {word}: {now.value}")
    if was is not None:
        yield ToldLine("now", f"{INDENT}    before: {was.value}")


def _text(line: SaidLine, subjects: Sequence[str] = ()) -> str:
    """The line as it is read aloud."""
    verb, subject = line.verb, line.subject
    if verb == "pressure" and not subject:
        verb = "under pressure"
    if len(subjects) > 1:
        subject, verb = together(subjects), verb.removesuffix("s") if verb != "is" else "are"
    when = f"when {line.guard}" if line.guard else ""
    return " ".join(filter(None, (subject, verb, _aloud(line.value), when)))


def _aloud(value: str) -> str:
    return value.replace(" > ", ", then ") if '"' not in value else value


def _instead(was: SaidLine, now: SaidLine, subjects: Sequence[str]) -> str:
    """ "over runs cross 6, instead of 5": of the old line only what is not in the new one."""
    text = _text(now, subjects)
    if was.value.casefold() == now.value.casefold():
        before = f"when {was.guard}" if was.guard else "always"
        return f"{text} (was {before})"
    if " > " in was.value or " > " in now.value:
        return f"{text}; before: {_aloud(was.value)}"
    old, new = was.value.split(), now.value.split()
    start = _common(old, new)
    end = _common(old[start:][::-1], new[start:][::-1])
    rest = " ".join(old[start : len(old) - end]).rstrip(",")
    whole = not rest or start + end < len(old) / 2 or '"' in was.value
    return f"{text}, instead of {was.value if whole else rest}"


def _common(one: Sequence[str], other: Sequence[str]) -> int:
    count = 0
    for a, b in zip(one, other, strict=False):
        if a.casefold() != b.casefold():
            break
        count += 1
    return count


def _indented(lines: Iterator[ToldLine]) -> Iterator[ToldLine]:
    return (ToldLine(kind, INDENT + text) for kind, text in lines)
