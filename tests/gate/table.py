"""The counts as a table, and the worst diagrams with what is wrong with each."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from stemline.theme import Theme

from .faults import Fault, Kind, faults
from .marks import read_svg
from .pictures import Picture, Sort

_LISTED = 12
"""Faults of one diagram that are written out."""


@dataclass(frozen=True)
class Judged:
    """A diagram and its faults."""

    picture: Picture
    faults: tuple[Fault, ...]

    @property
    def title(self) -> str:
        picture = self.picture
        return f"{picture.name} ({picture.playbook}; {picture.sort.value})"


def judge(picture: Picture, theme: Theme) -> Judged:
    """What is wrong with one diagram."""
    return Judged(picture, faults(read_svg(picture.svg, theme)))


def worst(judged: Iterable[Judged], count: int) -> list[Judged]:
    """The diagrams with the most faults, then with the most area of them; none without any."""
    found = [j for j in judged if j.faults]
    found.sort(key=lambda j: (-len(j.faults), -sum(f.area for f in j.faults), j.title))
    return found[:count]


def table(judged: Sequence[Judged]) -> str:
    """Rows: playbook and size. Columns: diagrams, those without a fault, each kind of fault."""
    groups: dict[tuple[str, Sort], list[Judged]] = {}
    for each in judged:
        groups.setdefault((each.picture.playbook, each.picture.sort), []).append(each)
    rows = [(*key, members) for key, members in groups.items()]
    lines = [_heading()]
    lines += [_row(f"{book}; {sort.value}", members) for book, sort, members in rows]
    return "\n".join([*lines, _row("all", judged)])


def _heading() -> str:
    lines = [f"{number}. {kind.value}" for number, kind in enumerate(Kind, 1)]
    columns = "".join(f"{number:>6}" for number, _ in enumerate(Kind, 1))
    return "\n".join([*lines, "", f"{'':44}{'drawn':>7}{'clean':>7}{columns}{'all':>7}"])


def _row(name: str, judged: Sequence[Judged]) -> str:
    counts = Counter(f.kind for j in judged for f in j.faults)
    clean = sum(not j.faults for j in judged)
    columns = "".join(f"{counts[kind]:>6}" for kind in Kind)
    return f"{name:44}{len(judged):>7}{clean:>7}{columns}{sum(counts.values()):>7}"


def by_roles(judged: Iterable[Judged]) -> str:
    """The counts by what lies on what, in the theme's roles: where mending pays."""
    counts: Counter[tuple[str, str, str]] = Counter()
    for fault in (f for j in judged for f in j.faults):
        counts[fault.kind.value, _role(fault.what), _role(fault.on)] += 1
    order = sorted(counts.items(), key=lambda row: (-row[1], row[0]))
    return "\n".join(f"{n:>5}  {kind}: {a}" + (f" / {b}" if b else "") for (kind, a, b), n in order)


def _role(name: str) -> str:
    """The role in a thing's name: `'12' (depth)` is a depth, `route of H` a route."""
    head, _, role = name.rpartition("(")
    if head:
        return role.rstrip(")").split(",")[0]
    return name.split(" of ")[0]


def told(judged: Judged) -> str:
    """A diagram's faults, one a line."""
    lines = [f"{judged.title}: {len(judged.faults)}"]
    lines += [f"    {fault}" for fault in judged.faults[:_LISTED]]
    more = len(judged.faults) - _LISTED
    return "\n".join([*lines, *([f"    and {more} more"] if more > 0 else [])])
