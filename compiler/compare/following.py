"""What follows from the changes: what a check says of the calls that it did not say before, and the
looks that gained or lost an answer."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from stemline.compare.comparison import Comparison, Consequence
from stemline.outside.cache import Cache
from stemline.resolve.expand import Order
from stemline.session import Session

NO_ANSWER = "no answer"
"""What stands for a code where the clock speaks and not a check."""

_Told = dict[str, dict[tuple[str, str], str]]
"""Call → (code, text without the call's name, or the look that has no answer) → text."""


def with_consequences(found: Comparison, old: Session, new: Session, cache: Cache) -> Comparison:
    """The comparison with what follows from it, proving no call that is as it was.

    Of a call that is no play any more, or was none, only that is told.
    """
    pairs = [(c.before, c.spoken) for c in found.changed]
    before = _said(old, [*(a for a, _ in pairs), *(p.call.spoken for p in found.dropped)], cache)
    after = _said(new, [*(b for _, b in pairs), *(p.call.spoken for p in found.added)], cache)
    came: _Rows = {}
    went: _Rows = {}
    for a, b in (*pairs, *(("", p.call.spoken) for p in found.added)):
        was, now = before.get(a, {}), after.get(b, {})
        concept = _concept(new, b)
        _gather(came, concept, b, now, was)
        _gather(went, concept, b, was, now)
    rows = [*_consequences(came, True), *_consequences(went, False)]
    rows.sort(key=lambda row: (not row.came, not row.code.startswith("E")))
    return replace(found, follows=tuple(rows))


_Rows = dict[tuple[str, str, str], tuple[str, list[str]]]
"""(code, concept, look or "") → the first text, and the calls."""


def _gather(
    rows: _Rows,
    concept: str,
    call: str,
    here: Mapping[tuple[str, str], str],
    there: Mapping[tuple[str, str], str],
) -> None:
    """What is said here of a call and not there, under what it has in common with other calls."""
    failed = any(code.startswith("E") for code, _ in here)
    if any(code.startswith("E") for code, _ in there):
        return
    for (code, bare), text in here.items():
        if (code, bare) in there or (failed and not code.startswith("E")):
            continue
        key = (code, concept, bare if code == NO_ANSWER else "")
        rows.setdefault(key, (text, []))[1].append(call)


def _consequences(rows: _Rows, came: bool) -> Iterator[Consequence]:
    for (code, concept, look), (text, calls) in rows.items():
        yield Consequence(came, code, text, tuple(dict.fromkeys(calls)), concept, look)


def _concept(session: Session, call: str) -> str:
    assert session.book is not None, "both sides were read"
    return session.book.concepts[session.calls.by_name[call].concept].name


def _said(session: Session, calls: Sequence[str], cache: Cache) -> _Told:
    told: _Told = {call: {} for call in calls}
    orders: list[Order] = []
    for call in calls:
        proof = session.proof(call)
        for d in proof.found:
            text = d.message
            told[call].setdefault((d.code, text.replace(call, "")), text)
        if proof.right and proof.reads:
            orders.append(session.calls.by_name[call])
    for one in session.faced(orders, cache):
        if not one.answer.given:
            text = f"{one.concept} has no answer to {one.look} by the clock (planning figures)"
            told[one.call][NO_ANSWER, one.look] = text
    return told
