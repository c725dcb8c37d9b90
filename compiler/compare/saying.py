"""A topic of a comparison in words, as a coordinator says it."""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection, Iterator, Mapping, Sequence

from stemline.compare.aloud import (
    INDENT,
    ToldLine,
    dress_words,
    is_read,
    line_aloud,
    lines_words,
)
from stemline.compare.comparison import CallChange, Comparison, DefinitionChange
from stemline.compare.definitions import Definition, SaidLine
from stemline.compare.topics import ConceptTopic, Replacement
from stemline.describe.changes import BALL, PROTECTION
from stemline.diagnostics.in_words import how_many, together
from stemline.football.play import Kind, Play

SHOWN = 4
"""Calls named before the others are counted: what is read at a glance."""
_TOLD = 8
"""Calls up to which some are named: of more nobody keeps four in mind."""
_LINEMEN = 5
_MANY = 6
"""Men, or the line as one, up to whom each is named."""
_PROTECTS = ("blocks", "toward", "point", "hot")
"""Lines of a protection that are told of one which takes another's place."""
_SHORT, _LINES = ("tag", "formation", "motion"), 3
"""What is told by its lines where its coach says nothing of it, and up to how many."""


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
        yield ToldLine("gone", f"Gone: {change.one.title}{_kin(change)}{gone}")
        return
    kind = change.one.kind if change is not None else _kind(topic, found)
    whose = "For" if topic.name.casefold().startswith("any ") else kind.capitalize()
    head = ToldLine("head", f"{whose} {topic.name}")
    yield _heading(change) if change is not None else head
    if change is not None:
        yield from _change(change, found, kind)
    for tag in topic.tags:
        yield from _tag(tag, found)
    if topic.dress is not None:
        yield from dress_words(topic.dress.lines)
        if topic.dress.calls:
            calls = _several_calls(topic.dress.calls)
            yield ToldLine("note", f"{INDENT}that is how {calls} drawn now")
    for kind, plays in (("new", topic.added), ("gone", topic.dropped)):
        if plays:
            said = "new" if kind == "new" else "gone with it" if topic.tags else "gone"
            calls = named([play.call.spoken for play in plays])
            yield ToldLine(kind, f"{INDENT}{said}: {calls}")


def _kind(topic: ConceptTopic, found: Comparison) -> str:
    """What the concept is called whose own lines say what they said: a run where its calls are."""
    plays = (*topic.added, *topic.dropped, *found.still, *(c.now for c in found.changed))
    own = (p for p in plays if p is not None and p.call.concept.casefold() == topic.name.casefold())
    return "run" if any(play.kind is Kind.RUN for play in own) else "concept"


def _new_concept(topic: ConceptTopic) -> Iterator[ToldLine]:
    change = topic.itself
    assert change is not None
    tags = [tag.one.name for tag in topic.tags]
    with_tags = f", with the {'tags' if len(tags) > 1 else 'tag'} {together(tags)}" if tags else ""
    yield ToldLine("new", f"New: {change.one.title}{_kin(change)}{with_tags}")
    yield from _first_word(change.one)
    if topic.added:
        calls = [play.call.spoken for play in topic.added]
        yield ToldLine("note", f"{INDENT}{how_many(len(calls), 'call')}: {named(calls)}")


def _kin(change: DefinitionChange) -> str:
    """ ", out of Crossers (62 % alike)"."""
    if change.kin is None:
        return ""
    name, score = change.kin
    word = "out of" if change.was is None else "now in"
    return f", {word} {name} ({round(100 * score)} % alike)"


def _first_word(one: Definition) -> Iterator[ToldLine]:
    """The first thing its coach says of it, or its lines where they are few."""
    said = next((line.value for line in one.lines if line.verb == "say" and not line.subject), "")
    if said:
        yield ToldLine("new", INDENT + said)
    elif one.kind in _SHORT and len(one.lines) <= _LINES:
        yield from (ToldLine("new", INDENT + line_aloud(line)) for line in one.lines)


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
    sides = [pair.was.one, pair.now.one]
    both = {line.alike for line in sides[0].lines} & {line.alike for line in sides[1].lines}
    for side, word in zip(sides, ("before", "now"), strict=True):
        if said := _blocks(side, both):
            yield ToldLine("now", f"{INDENT}{word}: {said}")
    if pair.calls:
        yield ToldLine("note", INDENT + _reached(pair.calls, found))


def _blocks(protection: Definition, both: Collection[tuple[str, ...]]) -> str:
    """Who blocks how, those who block alike together, and where the line goes and what is hot; not
    who does what he did."""
    found: dict[str, list[SaidLine]] = {}
    for line in protection.lines:
        if line.verb in _PROTECTS and line.alike not in both:
            found.setdefault(f"{line.verb} {line.value} {line.guard}", []).append(line)
    return "; ".join(
        line_aloud(lines[0], [line.subject for line in lines]) for lines in found.values()
    )


def other_lines(
    group: str, changes: Sequence[DefinitionChange], found: Comparison
) -> Iterator[ToldLine]:
    """Changes of one ``group``: "new look", "gone motion", or one definition's own."""
    word = group.partition(" ")[0]
    if changes[0].was is None or changes[0].now is None:
        one = changes[0].one
        kind = f"{one.kind}s" if len(changes) > 1 and one.kind != "personnel" else one.kind
        names = together([change.one.name for change in changes])
        kin = _kin(changes[0]) if len(changes) == 1 else ""
        yield ToldLine(word, f"{word.capitalize()}: {kind} {names}{kin}")
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
    lines = change.lines
    if change.reads_alike:
        lines = tuple(x for x in lines if not all(s and is_read(s) for s in (x.was, x.now)))
        yield ToldLine("note", f"{INDENT}we read as before: the line says it in other words")
    yield from lines_words(lines)
    if kind not in ("dress", "playbook", "week", "install"):
        yield ToldLine("note", INDENT + _reach(change, found))


def _reach(change: DefinitionChange, found: Comparison) -> str:
    if change.calls:
        return _reached(change.calls, found, change.one.name)
    assert change.was is not None
    renamed = _spoken_with(change.was.name, found)
    if change.likeness is not None and renamed:
        goes = "goes" if renamed == 1 else "go"
        return f"{how_many(renamed, 'call')} {goes} by the new name; every man does what he did"
    if change.one.kind == "look":
        return "our calls stay as they were"
    return "nobody lines up, runs or blocks otherwise"


def _spoken_with(name: str, found: Comparison) -> int:
    words = f" {name} ".casefold()
    return sum(words in f" {before} ".casefold() for before, _ in found.renamed)


def _reached(calls: Sequence[str], found: Comparison, own: str = "") -> str:
    """ "that changes all 13 calls of Flood and Throwback, for R"; ``own`` is a concept that need
    not be named. Few calls are named, where they are not all of a concept."""
    reached = set(calls)
    here = [c for c in found.changed if c.spoken in reached]
    concepts = Counter(play.call.concept for c in here if (play := c.now or c.was) is not None)
    known = calls_of(found)
    whole = all(number == known[name.casefold()] for name, number in concepts.items())
    mine = list(concepts) == [own]
    every = "both" if len(calls) == 2 else f"all {len(calls)}"
    text = f"{every} calls" if len(calls) > 1 else f"its call {calls[0]}"
    if not whole and mine:
        text = f"{len(calls)} of its {how_many(known[own.casefold()], 'call')}"
    elif not whole:
        text = how_many(len(calls), "call")
    text += "" if mine else f" of {_several(list(concepts))}"
    whom = _whom(here)
    text = f"that changes {text}" + (f", for {whom}" if whom else "")
    return text if whole or len(calls) > _TOLD else f"{text}: {named(calls)}"


def _several_calls(calls: Sequence[str]) -> str:
    if len(calls) == 1:
        return f"{calls[0]} is"
    return "both calls are" if len(calls) == 2 else f"all {len(calls)} calls are"


def _several(concepts: Sequence[str]) -> str:
    """Concepts by name, the others counted."""
    more = len(concepts) - SHOWN
    if more <= 1:
        return together(concepts)
    return together([*concepts[:SHOWN], f"{more} more"])


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
    return together(labels) if len(labels) <= _MANY else "nearly everybody"


def _others(change: CallChange) -> Iterator[str]:
    yield from dict.fromkeys((*(man.label for man in change.men), *_jobs_differ(change)))


def _jobs_differ(change: CallChange) -> Iterator[str]:
    """Men of whom another thing is said, and the quarterback where his orders are others."""
    if change.was is None or change.now is None:
        return
    quarterback = [m.label for m in change.now.men if m.position.value == "quarterback"]
    if any(what not in (PROTECTION, BALL) for what, _, _ in change.orders):
        yield from quarterback
    before = _jobs(change.was)
    for label, job in _jobs(change.now).items():
        if before.get(label, job) != job:
            yield label


def _jobs(play: Play) -> Mapping[str, str]:
    return {task.man: task.job for task in play.assignments}


def _indented(lines: Iterator[ToldLine]) -> Iterator[ToldLine]:
    return (ToldLine(kind, INDENT + text) for kind, text in lines)
