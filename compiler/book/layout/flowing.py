"""Numbers of pages put right by those that flow: how many sheets they take, and what stands on
which, is known only when they are set."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from stemline.book.content.page import Page

Stands = Mapping[str, Sequence[int]]


def counted(
    numbers: Mapping[str, int], takes: Mapping[str, int], flowing: Sequence[Page], stands: Stands
) -> dict[str, int]:
    """``numbers``, reckoned with so many sheets for each page as ``takes`` has, with those that
    the pages of ``flowing`` really take; ``stands`` has the sheets of everything on them, counted
    from any beginning."""
    own: dict[str, int] = {}
    longer: list[tuple[int, int]] = []

    def moved(number: int) -> int:
        return number + sum(more for behind, more in longer if number >= behind)

    for page in flowing:
        here = (page.id, *page.anchors, *(entry.id for entry in page.entries))
        found = {id_: stands[id_] for id_ in here if id_ in stands}
        if not found:
            continue
        first = min(min(sheets) for sheets in found.values())
        sheets = max(max(sheets) for sheets in found.values()) - first + 1
        begins = moved(numbers[page.id])
        own |= {id_: begins + at[0] - first for id_, at in found.items()}
        own[page.id] = begins
        longer.append((numbers[page.id] + takes[page.id], sheets - takes[page.id]))
    return {id_: own.get(id_, moved(number)) for id_, number in numbers.items()}
