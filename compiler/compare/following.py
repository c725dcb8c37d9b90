"""What follows from the changes: what a check says of the calls that it did not say before, and the
looks that gained or lost an answer."""

from __future__ import annotations

from collections import Counter
from collections.abc import Container, Iterator, Mapping, Sequence
from dataclasses import replace

from stemline.compare.comparison import Comparison, Consequence, DefinitionChange
from stemline.compare.definitions import definitions
from stemline.compare.line_changes import LineChange
from stemline.compare.row_order import ORDER
from stemline.compare.side_analysis import NO_ANSWER, SaidOfCall, SideAnalysis, both_said
from stemline.outside.cache import Cache
from stemline.outside.store import Store
from stemline.playbook.playbook import Playbook
from stemline.session import Session


def with_consequences(
    found: Comparison, old: Session, new: Session, cache: Cache, store: Store | None = None
) -> Comparison:
    """The comparison with what follows from it, proving no call that is as it was and is judged
    by the same code, level and men.

    Of a call that is no play any more, or was none, only that is told. ``store`` has what was said
    of a call the last time; None keeps nothing.
    """
    pairs = [(c.before, c.spoken) for c in found.changed]
    if _judging(old) != _judging(new):
        pairs += [(was, now) for now, was in _kept(found, new).items()]
    sides = [SideAnalysis(each, cache, store or Store(None)) for each in (old, new)]
    before, after = both_said(
        (sides[0], sides[1]),
        ([a for a, _ in pairs], [*(b for _, b in pairs), *(p.call.spoken for p in found.added)]),
    )
    came: _Rows = {}
    went: _Rows = {}
    for a, b in (*pairs, *(("", p.call.spoken) for p in found.added)):
        was, now = before.get(a, {}), after.get(b, {})
        concept = _concept(new, b)
        _gather(came, concept, b, now, was)
        _gather(went, concept, b, was, now)
    told = {call for _, call in pairs}
    for b, now, was in _looked(found, old, new, sides, told):
        _gather(came, _concept(new, b), b, now, was)
        _gather(went, _concept(new, b), b, was, now)
    assert new.book is not None, "both sides were read"
    names = (new.book.concepts[order.concept].name for _, order in new.calls.orders)
    of = Counter(names)
    rows = [*_consequences(came, True, of), *_consequences(went, False, of)]
    rows.sort(key=lambda row: (not row.came, not row.code.startswith("E")))
    return replace(found, follows=tuple(rows))


_Rows = dict[tuple[str, str, str], tuple[str, list[str]]]
"""(code, concept, look or "") → the first text, and the calls."""


def _judging(session: Session) -> object:
    """What decides besides a call's play how it is judged: the figures, and how fast men run."""
    assert session.book is not None, "both sides were read"
    said = session.book.settings
    men = {key: (p.position, p.forty) for key, p in session.book.people.items()}
    return said.code, said.level, men


def _kept(found: Comparison, new: Session) -> dict[str, str]:
    """The calls whose plays are as they were, and what each was called."""
    told = {c.spoken for c in found.changed} | {p.call.spoken for p in found.added}
    called = {now: was for was, now in found.renamed}
    kept = (o.spoken for _, o in new.calls.orders if o.spoken not in told)
    return {call: called.get(call, call) for call in kept}


def _looked(
    found: Comparison,
    old: Session,
    new: Session,
    sides: Sequence[SideAnalysis],
    told: Container[str],
) -> Iterator[tuple[str, SaidOfCall, SaidOfCall]]:
    """What a look that is another, or new, does to the passes that are as they were: (call, now,
    before). Of those in ``told`` all is known."""
    assert old.book is not None and new.book is not None, "both sides were read"
    looks = list(_looks(found, new, new.book))
    if not looks:
        return
    pairs = {now: was for now, was in _kept(found, new).items() if now not in told}
    names = {was: now for was, now in looks if was.casefold() in old.book.looks}
    before, after = sides
    was_said = before.against(list(pairs.values()), [name.casefold() for name in names])
    is_said = after.against(list(pairs), [now.casefold() for _, now in looks])
    for call, former in pairs.items():
        old_rows = was_said.get(former, {})
        was = {(code, names.get(look, look)): text for (code, look), text in old_rows.items()}
        yield call, is_said.get(call, {}), was


def _looks(found: Comparison, new: Session, book: Playbook) -> Iterator[tuple[str, str]]:
    """The looks of every week that are others than they were, or new, and those that are made from
    one of them: (its name before, "" for a new one; its name)."""
    made = [c for c in found.definitions if c.one.kind == "look" and c.now is not None]
    names = {c.one.name: c.was.name if c.was else "" for c in made if _is_another(c)}
    if not names:
        return
    every = definitions(tree for tree, _ in new.trees).values()
    parents = {d.name.casefold(): d.parent.casefold() for d in every if d.kind == "look"}
    moved = {name.casefold() for name in names}
    for key, look in book.looks.items():
        above = key
        while above and above not in moved:
            above = parents.get(above, "")
        if above:
            yield names.get(look.name, look.name), look.name


def _is_another(change: DefinitionChange) -> bool:
    return change.was is None or any(map(_moves, change.lines))


def _moves(line: LineChange) -> bool:
    said = line.now or line.was
    return said is not None and said.verb not in (
        "say",
        "says",
        "idea",
        "caution",
        "signal",
        "word",
        ORDER,
    )


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


def _consequences(rows: _Rows, came: bool, of: Mapping[str, int]) -> Iterator[Consequence]:
    for (code, concept, look), (text, calls) in rows.items():
        those = tuple(dict.fromkeys(calls))
        yield Consequence(came, code, text, those, concept, look, of[concept])


def _concept(session: Session, call: str) -> str:
    assert session.book is not None, "both sides were read"
    return session.book.concepts[session.calls.by_name[call].concept].name
