"""A sample of the bundled playbooks' diagrams has no more faults than last time."""

from __future__ import annotations

import pytest

from stemline.theme import load_theme

from .ceilings import CALLS, CEILINGS, PAGES, as_table, counts, judged_sample
from .faults import Kind
from .pictures import Sort
from .table import Judged, told


@pytest.fixture(scope="module")
def judged() -> list[Judged]:
    return judged_sample(load_theme())


def test_the_sample_is_what_it_says(judged: list[Judged]) -> None:
    sorts = [each.picture.sort for each in judged]
    calls = sum(len(names) for names in CALLS.values())
    assert sorts.count(Sort.LARGE) == sorts.count(Sort.SMALL) == calls
    assert sorts.count(Sort.SHEET) == len(PAGES) * len(CALLS)
    assert sorts.count(Sort.SHEET_SMALL) > 0
    assert counts(judged).keys() == CEILINGS.keys()


@pytest.mark.parametrize("row", CEILINGS, ids=lambda row: f"{row[0]}; {row[1].value}")
def test_no_more_faults_than_the_ceiling(row: tuple[str, Sort], judged: list[Judged]) -> None:
    found, ceiling = counts(judged)[row], CEILINGS[row]
    over = {kind: found[kind] for kind in Kind if found[kind] > ceiling.get(kind, 0)}
    guilty = [
        told(each)
        for each in judged
        if (each.picture.playbook, each.picture.sort) == row
        and any(fault.kind in over for fault in each.faults)
    ]
    assert not over, "\n".join(guilty)


def test_what_is_mended_stays_mended(judged: list[Judged]) -> None:
    """A kind that no longer happens has the ceiling 0 from then on."""
    found = counts(judged)
    idle = [(row, k.name) for row, kinds in CEILINGS.items() for k in kinds if not found[row][k]]
    assert not idle, f"lower the ceilings to:\n{as_table(found)}"
