"""A comparison in words, as a coordinator says it: what changed, where, whom it reaches."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from itertools import groupby
from typing import NamedTuple

from stemline.compare.comparison import (
    Comparison,
    Consequence,
    DefinitionChange,
)
from stemline.compare.definitions import SaidLine
from stemline.compare.following import NO_ANSWER
from stemline.compare.line_changes import LineChange
from stemline.compare.through_time import LineStanding, RevisionTurn
from stemline.diagnostics.in_words import how_many, together
from stemline.football.play import Play

_SHOWN = 4
"""Calls named before the others are counted: what is read at a glance."""
_INDENT = "    "


class ToldLine(NamedTuple):
    """A line of the print-out; ``kind`` is "head", "new", "gone", "now", "note" or ""."""

    kind: str
    text: str


def told(found: Comparison, only: str = "", man: str = "") -> Iterator[ToldLine]:
    """The whole comparison; ``only`` a definition of this name, ``man`` what is his."""
    yield ToldLine("head", f"{found.old} → {found.new}")
    yield ToldLine("", summary(found))
    if found.is_same:
        return
    for change in found.definitions:
        if not only or only.casefold() in _names(change):
            yield ToldLine("", "")
            yield from _definition(change, found)
    if man:
        yield from _for_man(found, man)
        return
    if not only:
        yield from _calls(found)
        yield from _follows(found.follows)
        yield from _teaching(found)


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


def stat(found: Comparison) -> Iterator[ToldLine]:
    """Numbers alone, by family, and how much of the teaching still holds."""
    yield ToldLine("head", f"{found.old} → {found.new}")
    rows = [("", "as was", "changed", "new", "gone")]
    rows += [(f.name, str(f.same), str(f.changed), str(f.new), str(f.gone)) for f in found.families]
    wide = max(len(row[0]) for row in rows)
    for name, *numbers in rows:
        yield ToldLine("", f"{name:<{wide}}  " + "  ".join(f"{n:>7}" for n in numbers))
    yield ToldLine("", holds(found))


def holds(found: Comparison) -> str:
    """How much of what was taught still holds: calls of last time that are as they were."""
    before = found.same + len(found.changed) + len(found.dropped)
    share = round(100 * found.same / before) if before else 0
    return f"{share} % of the calls of before ({found.same} of {before}) are taught as they were."


def _names(change: DefinitionChange) -> tuple[str, ...]:
    sides = (change.was, change.now)
    return tuple(
        text.casefold() for d in sides if d is not None for text in (d.name, d.owner) if text
    )


def _definition(change: DefinitionChange, found: Comparison) -> Iterator[ToldLine]:
    yield _heading(change)
    for old, new in change.roles:
        yield ToldLine("now", f"{_INDENT}{old} is called {new}")
    if change.was is not None and change.now is not None:
        for line in change.lines:
            yield from _line(line)
        if change.was.kind not in ("dress", "playbook"):
            yield ToldLine("note", _INDENT + _reach(change, found))


def _heading(change: DefinitionChange) -> ToldLine:
    was, now = change.was, change.now
    if was is None:
        assert now is not None
        return ToldLine("new", f"New: {now.title}")
    if now is None:
        return ToldLine("gone", f"Gone: {was.title}")
    if was.name.casefold() != now.name.casefold() and change.likeness is not None:
        score = round(100 * change.likeness)
        return ToldLine("head", f"{was.title} is called {now.name} ({score} % alike)")
    return ToldLine("head", now.title[0].upper() + now.title[1:])


def _line(change: LineChange) -> Iterator[ToldLine]:
    was, now = change.was, change.now
    if now is None:
        assert was is not None
        yield ToldLine("gone", f"{_INDENT}no longer: {was.text}")
    elif was is None:
        yield ToldLine("new", f"{_INDENT}new: {now.text}")
    else:
        yield ToldLine("now", _INDENT + _instead(was, now))


def _instead(was: SaidLine, now: SaidLine) -> str:
    """ "over runs cross 6 instead of 5": of the old line only what is not in the new one."""
    if was.verb in ("say", "says", "caution") and was.guard == now.guard:
        subject = f"{now.subject} is told" if now.subject else now.verb
        return f"{subject} {now.value} (was {was.value})"
    if was.value.casefold() == now.value.casefold():
        before = f"when {was.guard}" if was.guard else "always"
        return f"{now.text} (was {before})"
    old, new = was.value.split(), now.value.split()
    start = _common(old, new)
    end = _common(old[start:][::-1], new[start:][::-1])
    rest = " ".join(old[start : len(old) - end])
    whole = not rest or start + end < len(old) / 2 or '"' in was.value
    return f"{now.text}, instead of {was.value if whole else rest}"


def _common(one: Sequence[str], other: Sequence[str]) -> int:
    count = 0
    for a, b in zip(one, other, strict=False):
        if a.casefold() != b.casefold():
            break
        count += 1
    return count


def _reach(change: DefinitionChange, found: Comparison) -> str:
    """The calls that it reaches, and whom in them."""
    if not change.calls:
        return "no play is another by it"
    reached = set(change.calls)
    men = Counter(man.label for c in found.changed if c.spoken in reached for man in c.men)
    whom = together([label for label, _ in sorted(men.items(), key=lambda row: (-row[1], row[0]))])
    text = f"reaches {how_many(len(change.calls), 'call')}"
    text += f", in them {whom}" if whom else ""
    return f"{text}: {named(change.calls)}"


def named(calls: Sequence[str]) -> str:
    """The first calls by name, the others counted."""
    more = len(calls) - _SHOWN
    if more <= 1:
        return ", ".join(calls)
    return f"{', '.join(calls[:_SHOWN])} and {more} more"


def _calls(found: Comparison) -> Iterator[ToldLine]:
    if found.added or found.dropped:
        yield ToldLine("", "")
    groups = (("new", "New", found.added), ("gone", "Gone", found.dropped))
    for kind, word, plays in groups:
        by_concept: dict[str, list[str]] = {}
        for play in plays:
            by_concept.setdefault(play.call.concept, []).append(play.call.spoken)
        for concept, calls in by_concept.items():
            text = f"{word}: {how_many(len(calls), 'call')} of {concept}: {named(calls)}"
            yield ToldLine(kind, text)
    broken = [c.spoken for c in found.changed if c.now is None]
    if broken:
        yield ToldLine("gone", f"No longer a play: {named(broken)}")


def _follows(rows: Sequence[Consequence]) -> Iterator[ToldLine]:
    if not rows:
        return
    yield ToldLine("", "")
    yield ToldLine("head", "What follows")
    for row in rows:
        word = "now" if row.came else "no longer"
        more = f" (and {len(row.calls) - 1} more)" if len(row.calls) > 1 else ""
        if row.code == NO_ANSWER:
            more = f" ({how_many(len(row.calls), 'call')}: {named(row.calls)})"
        yield ToldLine("new" if row.came else "gone", f"{_INDENT}{word}: {row.text}{more}")


class Teaching(NamedTuple):
    """What a man has to learn and may forget: (concept, job) pairs."""

    man: str
    new: tuple[tuple[str, str], ...]
    gone: tuple[tuple[str, str], ...]


def teaching(found: Comparison) -> tuple[Teaching, ...]:
    """Each man's jobs that are new or gone, those with most to learn first."""
    was = _jobs([c.was for c in found.changed if c.was] + list(found.dropped))
    now = _jobs([c.now for c in found.changed if c.now] + list(found.added))
    rows = []
    for man in dict.fromkeys((*now, *was)):
        old, new = was.get(man, {}), now.get(man, {})
        learn = tuple(job for job in new if job not in old)
        forget = tuple(job for job in old if job not in new)
        if learn or forget:
            rows.append(Teaching(man, learn, forget))
    return tuple(sorted(rows, key=lambda row: (-len(row.new), row.man)))


def _jobs(plays: Sequence[Play]) -> dict[str, dict[tuple[str, str], None]]:
    found: dict[str, dict[tuple[str, str], None]] = {}
    for play in plays:
        for task in play.assignments:
            if task.job:
                jobs = found.setdefault(task.man, {})
                jobs[play.call.concept, task.job.rstrip(".")] = None
    return found


def _teaching(found: Comparison) -> Iterator[ToldLine]:
    rows = teaching(found)
    if not rows:
        return
    yield ToldLine("", "")
    yield ToldLine("head", "To teach again")
    for row in rows:
        counts = [(len(row.new), "new"), (len(row.gone), "gone")]
        said = ", ".join(f"{number} {word}" for number, word in counts if number)
        yield ToldLine("", f"{_INDENT}{row.man}: {said}")
    yield ToldLine("", _INDENT + holds(found))


def _for_man(found: Comparison, man: str) -> Iterator[ToldLine]:
    yield ToldLine("", "")
    mine = [row for row in teaching(found) if row.man.casefold() == man.casefold()]
    if not mine:
        yield ToldLine("", f"{man}: nothing new.")
    for row in mine:
        yield ToldLine("head", f"{row.man}: what is new")
        yield from (ToldLine("new", f"{_INDENT}{concept}: {job}") for concept, job in row.new)
        if row.gone:
            yield ToldLine("head", f"{row.man}: what is gone")
            yield from (ToldLine("gone", f"{_INDENT}{concept}: {job}") for concept, job in row.gone)


def turn_lines(rows: Sequence[RevisionTurn], who: bool) -> Iterator[ToldLine]:
    """A definition's history, oldest first: a revision, and what it changed."""
    for revision, here in groupby(rows, key=lambda turn: turn.revision):
        by = f", {revision.who}" if who else ""
        yield ToldLine("head", f"{revision.day} {revision.name}{by}")
        for turn in here:
            yield from _turn(turn)


def _turn(turn: RevisionTurn) -> Iterator[ToldLine]:
    one = turn.now or turn.was
    assert one is not None, "a turn has a side"
    if turn.was is None:
        yield ToldLine("new", f"{_INDENT}new: {one.title}")
        return
    if turn.now is None:
        yield ToldLine("gone", f"{_INDENT}gone: {one.title}")
        return
    yield ToldLine("", f"{_INDENT}{one.title}")
    if turn.was.name.casefold() != turn.now.name.casefold():
        yield ToldLine("now", f"{2 * _INDENT}it was called {turn.was.name}")
    for line in turn.lines:
        yield from (ToldLine(kind, _INDENT + text) for kind, text in _line(line))


def standing_lines(rows: Iterable[LineStanding], who: bool) -> Iterator[ToldLine]:
    """Each line with the day since which it stands."""
    for row in rows:
        by = f" {row.since.who}" if who else ""
        yield ToldLine("", f"{row.since.day} {row.since.name}{by}  {row.line.text}")
