"""Which definition of the old playbook is which of the new one."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass

from stemline.compare.definitions import Definition, DefinitionKey
from stemline.compare.line_changes import Renamed, renamed_line, renamed_roles
from stemline.compare.matching import ALIKE, best_pairs, likeness

_OWNED = ("tag", "dress")
"""Kinds that go with a concept: what it is called now, they are called by."""

Alike = Callable[[Definition, Definition], float]
"""How alike the plays of two definitions are, from 0 to 1; 0 where they make none."""


@dataclass(frozen=True)
class Matched:
    """Pairs of definitions, and what was renamed.

    ``names`` hold for the whole text, ``roles`` for a concept, its tags and what extends it, by
    the old concept's name in lower case; ``scores`` are those of the renamed, by their new key.
    """

    pairs: tuple[tuple[Definition, Definition], ...]
    gone: tuple[Definition, ...]
    come: tuple[Definition, ...]
    names: Renamed
    roles: Mapping[str, Renamed]
    scores: Mapping[DefinitionKey, float]

    def words(self, old: Definition) -> Renamed:
        """What is to be read otherwise in the lines of an old definition."""
        owner = old.owner.casefold() or old.name.casefold()
        family = (owner, old.parent.casefold())
        roles = {name: now for one in family for name, now in self.roles.get(one, {}).items()}
        return {**self.names, **roles}


def matched(
    old: Mapping[DefinitionKey, Definition],
    new: Mapping[DefinitionKey, Definition],
    plays: Alike = lambda a, b: 0.0,
) -> Matched:
    """Definitions of one name are one; of the others those that are alike, by lines or plays."""
    pairs = [(old[key], new[key]) for key in old if key in new]
    names: dict[str, str] = {}
    scores: dict[DefinitionKey, float] = {}
    rest_old = [d for k, d in old.items() if k not in new]
    rest_new = [d for k, d in new.items() if k not in old]
    for kind in dict.fromkeys(d.kind for d in rest_old if d.kind not in _OWNED):
        found = _renamed(_of(kind, rest_old), _of(kind, rest_new), plays, scores)
        pairs += found
        if kind != "playbook":
            names |= {a.name.casefold(): b.name for a, b in found}
    for kind in _OWNED:
        ours, theirs = _of(kind, rest_old), _of(kind, rest_new)
        led = [(a, b) for a in ours for b in theirs if _moved(a, names) == b.key]
        pairs += led
        ours = [a for a in ours if not any(a is was for was, _ in led)]
        theirs = [b for b in theirs if not any(b is now for _, now in led)]
        if kind == "tag":
            found = _renamed(ours, theirs, plays, scores, names)
            pairs += found
            names |= {a.name.casefold(): b.name for a, b in found}
    taken = {id(d) for pair in pairs for d in pair}
    roles = {
        a.name.casefold(): other
        for a, b in pairs
        if a.kind in ("concept", "run", "protection") and (other := renamed_roles(a, b))
    }
    order = {key: n for n, key in enumerate(new)}
    pairs.sort(key=lambda pair: order[pair[1].key])
    return Matched(
        tuple(pairs),
        tuple(d for d in old.values() if id(d) not in taken),
        tuple(d for d in new.values() if id(d) not in taken),
        names,
        roles,
        scores,
    )


def _of(kind: str, defs: Iterable[Definition]) -> list[Definition]:
    return [d for d in defs if d.kind == kind]


def _moved(old: Definition, names: Renamed) -> DefinitionKey:
    """The key of an old tag or dress, were its concept called as it is now."""
    name, owner = old.name.casefold(), old.owner.casefold()
    if old.kind == "dress":
        name = names.get(name, name).casefold()
    return DefinitionKey(old.kind, name, names.get(owner, owner).casefold() if owner else "")


def _renamed(
    old: Sequence[Definition],
    new: Sequence[Definition],
    plays: Alike,
    scores: dict[DefinitionKey, float],
    names: Renamed | None = None,
) -> list[tuple[Definition, Definition]]:
    """The pairs that are alike enough to be one; a tag only with one of the same concept."""
    table = [[_alike(a, b, plays, names or {}) for b in new] for a in old]
    found = best_pairs(table, ALIKE)
    scores |= {new[b].key: table[a][b] for a, b in found}
    return [(old[a], new[b]) for a, b in found]


def _alike(a: Definition, b: Definition, plays: Alike, names: Renamed) -> float:
    owner = a.owner.casefold()
    if names.get(owner, owner).casefold() != b.owner.casefold():
        return 0.0
    roles = {**names, **renamed_roles(a, b)}
    lines = likeness(
        [("extends", a.parent.casefold())] * bool(a.parent)
        + [renamed_line(line, roles).alike for line in a.lines],
        [("extends", b.parent.casefold())] * bool(b.parent) + [line.alike for line in b.lines],
    )
    return max(lines, plays(a, b))
