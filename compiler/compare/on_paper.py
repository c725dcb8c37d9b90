"""A comparison as the pages of its book: the numbers, what is said, whom it is drawn for, each man.

What is said is what `told` says, so that paper and terminal never differ.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence

from stemline.compare.aloud import INDENT
from stemline.compare.comparison import CallChange, Comparison
from stemline.compare.counted import numbers
from stemline.compare.teaching import Job, Teaching, teaching
from stemline.compare.told import holds, summary, to_learn, told
from stemline.describe.changes import drawn_elsewhere, man_changed
from stemline.diagnostics.in_words import how_many
from stemline.emit.comparison_pages import ComparisonPages, LearnPage
from stemline.printing.comparison_book import BothDrawn

_HEADS = 2
"""Lines at the head of what is told, which the first page has already."""


def on_paper(found: Comparison) -> tuple[ComparisonPages, tuple[BothDrawn, ...]]:
    """The pages without their pictures, and what is to be drawn, in the order of the book."""
    rows = teaching(found)
    learners = frozenset(row.man for row in rows if row.new)
    said = list(told(found, whole=False))[_HEADS:]
    pages = ComparisonPages(
        f"{found.old} to {found.new}",
        found.old,
        found.new,
        summary(found),
        holds(found),
        tuple(numbers(found)),
        tuple((row.man, to_learn(row)) for row in rows),
        tuple((line.kind, line.text.strip(), _steps(line.text)) for line in said),
        (),
        tuple(_man(row, found) for row in rows if row.man in learners),
    )
    return pages, tuple(_drawn(found, learners))


def _steps(text: str) -> int:
    return (len(text) - len(text.lstrip())) // len(INDENT)


def _drawn(found: Comparison, learners: Collection[str]) -> Iterator[BothDrawn]:
    """A picture for each concept and formation; calls that change otherwise have their own."""
    groups: dict[tuple[object, ...], list[CallChange]] = {}
    for change in found.changed:
        if change.was is not None and change.now is not None:
            men = tuple((m.label, m.moved, m.motion, m.path) for m in change.men)
            drawn = _drawn_elsewhere(change)
            alike = (change.now.call.formation, men) if drawn else _said(change)
            key = (change.now.call.concept, alike, change.orders)
            groups.setdefault(key, []).append(change)
    for here in groups.values():
        first = here[0]
        elsewhere = bool(_drawn_elsewhere(first))
        assert first.was is not None and first.now is not None
        now = first.now
        told = _said(first)
        lines = [text for _, text in told]
        lines += [
            f"{what} {was or 'none'}; now {is_ or 'none'}." for what, was, is_ in first.orders
        ]
        title = first.spoken if elsewhere else now.call.concept
        calls = [change.spoken for change in (here[1:] if elsewhere else here)]
        also = ", ".join(calls)
        if first.before != first.spoken:
            lines.insert(0, f"It was called {first.before}.")
        was = first.was if elsewhere else None
        yield BothDrawn(
            title, also, tuple(filter(None, lines)), was, now, _his(first, told, learners)
        )


def _said(change: CallChange) -> tuple[tuple[str, str], ...]:
    """What is different for each man, by letter."""
    now, was = change.now, change.was
    assert now is not None and was is not None, "told of calls that are plays on both sides"
    return tuple((man.label, man_changed(man, now, was)) for man in change.men)


def _his(
    change: CallChange, told: Sequence[tuple[str, str]], learners: Collection[str]
) -> tuple[tuple[str, str], ...]:
    """Whose page shows the picture, and what it says: those who are drawn elsewhere and have a
    page, since there is something new for them."""
    drawn = _drawn_elsewhere(change).intersection(learners)
    return tuple((label, text) for label, text in told if label in drawn)


def _drawn_elsewhere(change: CallChange) -> frozenset[str]:
    """The men who are drawn elsewhere: one who blocks otherwise is told and not drawn."""
    now, was = change.now, change.was
    if now is None or was is None:
        return frozenset(man.label for man in change.men)
    return frozenset(man.label for man in change.men if drawn_elsewhere(man, now, was))


def _man(row: Teaching, found: Comparison) -> LearnPage:
    mine = [c.spoken for c in found.changed if row.man in _drawn_elsewhere(c)]
    calls = f"Goes another way in {how_many(len(mine), 'call')}: {', '.join(mine)}." if mine else ""
    return LearnPage(row.man, to_learn(row), _by_topic(row.new), _by_topic(row.gone), calls)


def _by_topic(jobs: tuple[Job, ...]) -> tuple[tuple[str, tuple[str, ...]], ...]:
    found: dict[str, list[str]] = {}
    for topic, job in jobs:
        found.setdefault(topic, []).append(job)
    return tuple((topic, tuple(said)) for topic, said in found.items())
