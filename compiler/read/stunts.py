"""Rushers who wait for one another: ``T rushes A, strong behind E``."""

from __future__ import annotations

from collections.abc import Container, Iterator, Mapping, Sequence

from stemline.diagnostics.catalogue.looks import E422, E423
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.diagnostics.in_words import together
from stemline.playbook.look_definitions import Choices, Rush
from stemline.playbook.said import Said


def behind_nobody(
    men: Container[str], duties: Mapping[str, Sequence[Said[Choices]]]
) -> Iterator[Diagnostic]:
    """Rushers who wait for a man who does not come first: one who covers, one who is not there,
    and several who wait for each other.

    A man of whom no line tells a duty rushes where he stands.
    """
    waits: dict[str, str] = {}
    for man, lines in duties.items():
        for line in lines:
            for task in line.value.tasks:
                if isinstance(task, Rush) and task.behind:
                    waits[man] = task.behind
                    why = _why(task.behind, men, duties)
                    if why:
                        yield E422(man=man, other=task.behind, why=why).at(line.span)
    told: set[str] = set()
    for man in waits:
        chain = [man]
        while (after := waits.get(chain[-1])) and after not in chain:
            chain.append(after)
        if after == man and man not in told:
            told.update(chain)
            men_said = together([f"[{each}]" for each in sorted(chain)])
            yield E423(men=men_said).at(duties[man][0].span)


def _why(man: str, men: Container[str], duties: Mapping[str, Sequence[Said[Choices]]]) -> str:
    if man not in men:
        return "who is not lined up"
    tasks = [task for line in duties.get(man, ()) for task in line.value.tasks]
    if tasks and not any(isinstance(task, Rush) for task in tasks):
        return "who does not rush"
    return ""
