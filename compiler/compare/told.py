"""A comparison in words, as a coordinator says it: what changed, where, whom it reaches."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from itertools import groupby

from stemline.compare.aloud import INDENT, ToldLine, line_words
from stemline.compare.comparison import Comparison, Consequence, DefinitionChange
from stemline.compare.counted import his_teaching, learned, numbers, reached_numbers
from stemline.compare.label_words import value_aloud
from stemline.compare.saying import (
    concept_lines,
    named,
    other_lines,
    replacement_lines,
)
from stemline.compare.side_analysis import NO_ANSWER
from stemline.compare.teaching import Job, Teaching, teaching
from stemline.compare.through_time import LineStanding, RevisionTurn
from stemline.compare.topics import topics
from stemline.diagnostics.in_words import how_many, together


def told(
    found: Comparison, only: str = "", man: str = "", whole: bool = True
) -> Iterator[ToldLine]:
    """The whole comparison; ``only`` a definition of this name, ``man`` what is his. Where it is
    not ``whole``, what is to be taught again is left out."""
    yield ToldLine("head", f"{found.old} → {found.new}")
    yield ToldLine("", summary(found))
    if found.is_same:
        return
    if man:
        yield from _for_man(found, man, only)
        return
    asked = topics(found, only)
    if only and not (asked.concepts or asked.replaced or asked.others):
        yield ToldLine("", f"{only}: as it was.")
    for concept in asked.concepts:
        yield ToldLine("", "")
        yield from concept_lines(concept, found)
    for pair in asked.replaced:
        yield ToldLine("", "")
        yield from replacement_lines(pair, found)
    for kind, group in groupby(asked.others, key=_gathered):
        yield ToldLine("", "")
        yield from other_lines(kind, tuple(group), found)
    if not only:
        broken = [c.spoken for c in found.changed if c.now is None]
        if broken:
            yield ToldLine("gone", f"No longer a play: {named(broken)}")
        yield from _follows(found)
        if whole:
            yield from _teaching(found)


def _gathered(change: DefinitionChange) -> str:
    """Plain arrivals and departures of a kind are told in one line."""
    one = change.one
    if change.was is None:
        return f"new {one.kind}"
    return f"gone {one.kind}" if change.now is None else f"{one.kind} {one.name}"


def summary(found: Comparison) -> str:
    """ "204 calls as they were, 12 changed, 4 new, 2 gone."""
    if found.is_same:
        return f"Nothing has changed: {how_many(found.same, 'call')}, every play as it was."
    counts = [
        (found.same, "as they were"),
        (len(found.changed), "changed"),
        (len(found.added), "new"),
        (len(found.dropped), "gone"),
    ]
    parts = [f"{number} {what}" for number, what in counts if number]
    text = f"Calls: {', '.join(parts)}."
    if found.no_play_changed:
        text = f"No play has changed: {how_many(found.same, 'call')} as they were. The text has."
    return text


def stat(found: Comparison, only: str = "", man: str = "") -> Iterator[ToldLine]:
    """Numbers alone: calls by family, and how much of the teaching still holds; of a ``man`` what
    he has to learn, by concept. ``only`` as in `told`."""
    yield ToldLine("head", f"{found.old} → {found.new}")
    rows = learned(found, man, only) if man else numbers(found)
    if only and not man:
        rows = reached_numbers(found, only)
    if len(rows) == 1:
        yield ToldLine("", _nothing_new(man, only) if man else f"{only}: as it was.")
        return
    wide = max(len(row[0]) for row in rows)
    for name, *counts in rows:
        yield ToldLine("", f"{name:<{wide}}  " + "  ".join(f"{n:>7}" for n in counts))
    if not (only or man):
        yield ToldLine("", holds(found))


def holds(found: Comparison) -> str:
    """How much of what was taught still holds: calls of last time that are as they were."""
    before = found.same + len(found.changed) + len(found.dropped)
    share = round(100 * found.same / before) if before else 0
    return f"{found.same} of the {before} calls we had ({share} %) are taught as they were."


def _follows(found: Comparison) -> Iterator[ToldLine]:
    if not found.follows:
        return
    yield ToldLine("", "")
    yield ToldLine("head", "What follows")
    for row in (row for row in found.follows if row.code != NO_ANSWER):
        word = "now" if row.came else "no longer"
        more = f" (and {len(row.calls) - 1} more)" if len(row.calls) > 1 else ""
        yield ToldLine("new" if row.came else "gone", f"{INDENT}{word}: {row.text}{more}")
    answers = [row for row in found.follows if row.code == NO_ANSWER]
    added = {play.call.spoken for play in found.added}
    for (concept, came), here in groupby(answers, key=lambda row: (row.concept, row.came)):
        rows = tuple(here)
        for new in (False, True):
            some = [
                replace(row, calls=those)
                for row in rows
                if (those := tuple(call for call in row.calls if (call in added) is new))
            ]
            if some:
                yield _answers(concept, came, some, new)
    if answers:
        text = "An answer is a man open, or a hot throw, in time: by the clock, planning figures."
        yield ToldLine("note", INDENT + text)


def _answers(concept: str, came: bool, rows: Sequence[Consequence], new: bool) -> ToldLine:
    """ "Deep Over has no answer to Even Two Man in 8 of its 11 calls, and to Goal Line in 2"; of
    one call alone by its name."""
    by_calls: dict[tuple[str, ...], list[str]] = {}
    for row in rows:
        by_calls.setdefault(row.calls, []).append(row.look)
    word = "has no answer" if new else "has lost its answer" if came else "now has an answer"
    kind = "new" if came else "gone"
    if len(by_calls) == 1 and len(rows[0].calls) == 1:
        to = together([row.look for row in rows])
        return ToldLine(kind, f"{INDENT}{rows[0].calls[0]} {word} to {to}")
    parts, whole = [], f" of its {how_many(rows[0].of, 'call')}"
    for calls, looks in by_calls.items():
        where = f"{len(calls)}{whole}" if len(calls) > 1 else calls[0]
        whole = "" if len(calls) > 1 else whole
        parts.append(f"to {together(looks)} in {where}")
    return ToldLine(kind, f"{INDENT}{concept} {word} {together(parts)}")


def _teaching(found: Comparison) -> Iterator[ToldLine]:
    rows = teaching(found)
    if not rows:
        return
    yield ToldLine("", "")
    yield ToldLine("head", "To teach again")
    by_count: dict[str, list[str]] = {}
    for row in rows:
        by_count.setdefault(to_learn(row), []).append(row.man)
    for said, men in by_count.items():
        if len(men) > 1:
            first, comma, gone = said.partition(", ")
            said = f"{first} each{comma}{gone}"
        yield ToldLine("", f"{INDENT}{together(men)}: {said}")
    yield ToldLine("", INDENT + holds(found))


def to_learn(row: Teaching) -> str:
    """ "4 new things, 1 gone"."""
    new = f"{how_many(len(row.new), 'new thing')}"
    gone = f"{len(row.gone)} gone"
    return ", ".join([new] * bool(row.new) + [gone] * bool(row.gone))


def _for_man(found: Comparison, man: str, only: str) -> Iterator[ToldLine]:
    yield ToldLine("", "")
    row = his_teaching(found, man, only)
    if row is None:
        yield ToldLine("", _nothing_new(man, only))
        return
    if row.new:
        yield ToldLine("head", f"{row.man}: what is new")
        yield from (ToldLine("new", INDENT + text) for text in job_lines(row.new))
    if row.gone:
        yield ToldLine("head", f"{row.man}: what is gone")
        yield from (ToldLine("gone", INDENT + text) for text in job_lines(row.gone))


def _nothing_new(man: str, only: str) -> str:
    return f"{man}: nothing new{f' in {only}' if only else ''}."


def job_lines(jobs: Sequence[Job]) -> Iterator[str]:
    """ "Deep Over: Out at 10; Flat at 4", a line a concept."""
    by_concept: dict[str, list[str]] = {}
    for concept, job in jobs:
        by_concept.setdefault(concept, []).append(job)
    for concept, said in by_concept.items():
        yield f"{concept}: {value_aloud('; '.join(said))}"


def turn_lines(rows: Sequence[RevisionTurn], who: bool) -> Iterator[ToldLine]:
    """A definition's history, oldest first: a revision, and what it changed."""
    for revision, here in groupby(rows, key=lambda turn: turn.revision):
        by = f", {revision.who}" if who else ""
        yield ToldLine("head", f"{revision.day} {revision.name}{by}")
        for turn in sorted(here, key=_hangs):
            yield from _turn(turn)


def _hangs(turn: RevisionTurn) -> bool:
    """Whether it is of what hangs on another definition, which is told first."""
    one = turn.now or turn.was
    return one is not None and one.kind in ("tag", "dress")


def _turn(turn: RevisionTurn) -> Iterator[ToldLine]:
    one = turn.now or turn.was
    assert one is not None, "a turn has a side"
    if turn.was is None:
        yield ToldLine("new", f"{INDENT}new: {one.title}")
        return
    if turn.now is None:
        yield ToldLine("gone", f"{INDENT}gone: {one.title}")
        return
    yield ToldLine("", f"{INDENT}{one.title}")
    if turn.was.name.casefold() != turn.now.name.casefold():
        yield ToldLine("now", f"{2 * INDENT}it was called {turn.was.name}")
    for line in turn.lines:
        yield from (ToldLine(kind, INDENT + text) for kind, text in line_words(line))


def standing_lines(rows: Iterable[LineStanding], who: bool) -> Iterator[ToldLine]:
    """Each line with the day since which it stands."""
    for row in rows:
        by = f" {row.since.who}" if who else ""
        yield ToldLine("", f"{row.since.day} {row.since.name}{by}  {row.line.text}")
