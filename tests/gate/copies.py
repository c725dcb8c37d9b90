"""What copies of many diagrams have lost, as tables."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from stemline.theme import SMALLEST_TYPE, Theme

from .copied import SCALE, Copy, Loss, copied
from .pictures import Picture, Sort


@dataclass(frozen=True)
class Copied:
    """A diagram and its copy."""

    picture: Picture
    copy: Copy

    @property
    def title(self) -> str:
        return f"{self.picture.name} ({self.picture.playbook}; {self.picture.sort.value})"


def copies(pictures: Iterable[Picture], theme: Theme) -> list[Copied]:
    """Every diagram copied; of two alike only the first."""
    made: dict[str, Copied] = {}
    for picture in pictures:
        if picture.svg not in made:
            made[picture.svg] = Copied(picture, copied(picture.svg, theme))
    return list(made.values())


def lost_by_role(made: Sequence[Copied]) -> str:
    """A line for each role that lost an item: how many of how many, and how."""
    asked = Counter(role for each in made for role in each.copy.asked)
    lost = Counter((item.role, item.how) for each in made for item in each.copy.lost)
    lines = [f"{len(made)} diagrams, {asked.total()} items, {lost.total()} lost"]
    lines += [f"{'':2}{'lost':>7}{'of':>8}  role"] if lost else []
    for (role, how), count in sorted(lost.items(), key=lambda row: (-row[1], row[0][0])):
        lines.append(
            f"{'':2}{count:>7}{asked[role]:>8}  {role}" + f", {how.value}" * (how != Loss.GONE)
        )
    return "\n".join(lines)


def small_letters(made: Sequence[Copied]) -> str:
    """Of each sort, how many diagrams have letters too small as copied, and the least of all."""
    lines = [f"letters under {SMALLEST_TYPE:g} points as copied at {SCALE:.0%}:"]
    for sort in Sort:
        of = [each.copy for each in made if each.picture.sort is sort]
        if of:
            least = min(copy.least for copy in of if copy.least)
            few = sum(copy.small for copy in of)
            lines.append(f"{few:>7} of {len(of):>5} {sort.value}; the least {least:.1f} points")
    return "\n".join(lines)


def told_lost(each: Copied) -> str:
    """What a diagram's copy has lost, an item a line."""
    return "\n".join(
        [f"{each.title}: {len(each.copy.lost)}", *(f"    {i}" for i in each.copy.lost)]
    )
