"""Every diagram that the bundled playbooks print, at every size, is without a fault, but for those
of `known`."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass

import pytest

from stemline.theme import load_theme

from .known import KNOWN
from .pictures import BUNDLED, CALL, Sort, legend, pictures
from .table import Judged, judge, told

THEME = load_theme()


@dataclass(frozen=True)
class Verdict:
    """How many diagrams of each sort a playbook has, and those with a fault."""

    playbook: str
    drawn: Counter[Sort]
    guilty: tuple[Judged, ...]


@pytest.fixture(scope="module", params=BUNDLED)
def verdict(request: pytest.FixtureRequest) -> Verdict:
    """Every diagram of a playbook read back and judged; of two alike only one is judged."""
    drawn: Counter[Sort] = Counter()
    guilty: list[Judged] = []
    seen: set[str] = set()
    for picture in pictures(request.param, THEME):
        drawn[picture.sort] += 1
        if picture.svg not in seen:
            seen.add(picture.svg)
            judged = judge(picture, THEME)
            guilty += [judged] if judged.faults else []
    return Verdict(request.param, drawn, tuple(guilty))


def test_every_diagram_is_drawn(verdict: Verdict) -> None:
    drawn = verdict.drawn
    assert set(drawn) == set(Sort) - {Sort.LEGEND}
    assert len({drawn[sort] for sort in CALL.values()}) == 1
    assert drawn[Sort.SHEET] == drawn[Sort.SHEET_QUARTER] <= drawn[Sort.SHEET_SMALL]
    assert drawn[Sort.LARGE] > 200


def test_every_diagram_is_clean(verdict: Verdict) -> None:
    """None that is not known has a fault, and none that is known has more than it had."""
    worse = [each for each in verdict.guilty if len(each.faults) > KNOWN.get(each.title, 0)]
    assert not worse, "\n".join(told(each) for each in worse)


def test_what_is_mended_leaves_the_list(verdict: Verdict) -> None:
    guilty = {each.title for each in verdict.guilty}
    listed = {title for title in KNOWN if f"({verdict.playbook}; " in title}
    assert listed <= guilty, f"mended: {sorted(listed - guilty)}"


def test_the_page_that_explains_the_marks_is_clean() -> None:
    judged = [judge(picture, THEME) for picture in legend(THEME)]
    guilty = [told(each) for each in judged if each.faults]
    assert len(judged) > 20
    assert not guilty, "\n".join(guilty)
