"""What of a definition's lines is new, gone or another, once old names are read as the new ones."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace

from stemline.compare.definitions import Definition, SaidLine
from stemline.compare.matching import best_pairs, likeness
from stemline.compare.row_order import call_of, order_changes

_ONE_THING = {
    **dict.fromkeys(("runs", "blocks", "aims"), "does"),
    **dict.fromkeys(("snaps", "hands", "tosses", "pitches", "throws", "shovels"), "gives the ball"),
    **dict.fromkeys(("gives", "keeps"), "reads"),
    **dict.fromkeys(("covers", "rushes"), "plays"),
    **dict.fromkeys(("in", "at"), "stands"),
}
"""Verbs that say one thing of a man in several ways."""
Renamed = Mapping[str, str]
"""Old name in lower case → new name as written."""


@dataclass(frozen=True)
class LineChange:
    """A line that is new (``was`` None), gone (``now`` None), or says another thing."""

    was: SaidLine | None
    now: SaidLine | None

    @property
    def one(self) -> SaidLine:
        """Its side, the new one where there are both."""
        found = self.now or self.was
        assert found is not None, "a change has a side"
        return found


def reworded(text: str, renamed: Renamed) -> str:
    """The text with old names replaced by new ones, whole words outside quotes only."""
    if not renamed:
        return text
    names = sorted(renamed, key=len, reverse=True)
    found = re.compile(r"(?<!\w)(" + "|".join(map(re.escape, names)) + r")(?!\w)", re.IGNORECASE)
    parts = text.split('"')
    return '"'.join(
        p if n % 2 else found.sub(lambda m: renamed[m[1].casefold()], p)
        for n, p in enumerate(parts)
    )


def renamed_line(line: SaidLine, renamed: Renamed) -> SaidLine:
    return replace(
        line,
        subject=reworded(line.subject, renamed),
        value=reworded(line.value, renamed),
        guard=reworded(line.guard, renamed),
    )


def renamed_roles(old: Definition, new: Definition) -> dict[str, str]:
    """Roles that have another name and say the same, or are the same man by the same rule: old
    name in lower case → new name."""
    was, now = _by_subject(old.lines), _by_subject(new.lines)
    gone = [name for name in was if name not in now and _is_role(was[name])]
    come = [name for name in now if name not in was and _is_role(now[name])]
    scores = [
        [likeness(_bare(was[a], {a: now[b][0].subject}), _bare(now[b], {})) for b in come]
        for a in gone
    ]
    found = {gone[a]: now[come[b]][0].subject for a, b in best_pairs(scores)}
    for a in (name for name in gone if name not in found):
        alike = [b for b in come if _rules(now[b]) == _rules(was[a])]
        ours = [name for name in gone if _rules(was[name]) == _rules(was[a])]
        if len(alike) == len(ours) == 1 and now[alike[0]][0].subject not in found.values():
            found[a] = now[alike[0]][0].subject
    return found


def _rules(lines: Sequence[SaidLine]) -> list[tuple[str, ...]]:
    """Who a role is."""
    rules = (line for line in lines if line.verb == "is")
    return sorted((line.value.casefold(), line.guard.casefold()) for line in rules)


def _by_subject(lines: Iterable[SaidLine]) -> dict[str, list[SaidLine]]:
    found: dict[str, list[SaidLine]] = {}
    for line in lines:
        if line.subject:
            found.setdefault(line.subject.casefold(), []).append(line)
    return found


def _is_role(lines: Sequence[SaidLine]) -> bool:
    return any(line.verb == "is" for line in lines)


def _bare(lines: Iterable[SaidLine], renamed: Renamed) -> list[tuple[str, str, str]]:
    return [
        (line.verb, reworded(line.value, renamed).casefold(), line.guard.casefold())
        for line in lines
    ]


def line_changes(
    old: Sequence[SaidLine], new: Sequence[SaidLine], renamed: Renamed, kind: str = ""
) -> tuple[LineChange, ...]:
    """The differences between two blocks of one ``kind``, in the order of the new text; then those
    that are gone, and last the lists whose rows stand in another order.

    A line whose key alone is on both sides is one line changed; so is one whose guard alone is
    another, and one that says what its man does in another verb.
    """
    left, right = list(old), list(new)
    same: list[LineChange] = []
    _take(left, right, lambda a, b: a.alike == b.alike, same)
    _take(left, right, lambda a, b: renamed_line(a, renamed).alike == b.alike, same)
    found: list[LineChange] = []
    for said in (call_of, _about, _value, _thing_said, _thing):
        pairs = _alone(left, right, said, renamed)
        found += [LineChange(a, b) for a, b in pairs]
        left = [a for a in left if not any(a is was for was, _ in pairs)]
        right = [b for b in right if not any(b is now for _, now in pairs)]
    found += [LineChange(None, b) for b in right]
    place = {id(line): n for n, line in enumerate(new)}
    found.sort(key=lambda change: place[id(change.now)])
    both = [(p.was, p.now) for p in (*same, *found) if p.was is not None and p.now is not None]
    gone = (LineChange(a, None) for a in left)
    return (*found, *gone, *(LineChange(*pair) for pair in order_changes(old, new, both, kind)))


def _take(
    left: list[SaidLine],
    right: list[SaidLine],
    same: Callable[[SaidLine, SaidLine], bool],
    taken: list[LineChange],
) -> None:
    """Move the pairs that are the same from both lists."""
    for a in list(left):
        b = next((b for b in right if same(a, b)), None)
        if b is not None:
            left.remove(a)
            right.remove(b)
            taken.append(LineChange(a, b))


def _about(line: SaidLine) -> tuple[str, ...]:
    return line.about


def _value(line: SaidLine) -> tuple[str, ...]:
    return line.subject.casefold(), line.verb, line.value.casefold()


def _thing_said(line: SaidLine) -> tuple[str, ...]:
    """The same said of him in another verb: the ball is tossed to whom it was handed."""
    return line.subject.casefold(), _ONE_THING.get(line.verb, line.verb), line.value.casefold()


def _thing(line: SaidLine) -> tuple[str, ...]:
    """What he does: a man who ran a route and now blocks does one thing instead of another."""
    return line.subject.casefold(), _ONE_THING.get(line.verb, line.verb), line.guard.casefold()


def _alone(
    left: Sequence[SaidLine],
    right: Sequence[SaidLine],
    said: Callable[[SaidLine], tuple[str, ...]],
    renamed: Renamed,
) -> list[tuple[SaidLine, SaidLine]]:
    """The pairs that have what ``said`` tells in common with each other and with nobody else."""
    pairs = []
    for a in left:
        key = said(renamed_line(a, renamed))
        ours = [x for x in left if said(renamed_line(x, renamed)) == key]
        theirs = [b for b in right if said(b) == key]
        if len(ours) == 1 and len(theirs) == 1:
            pairs.append((a, theirs[0]))
    return pairs
