"""Every diagram that the bundled playbooks print, at every size, is without a fault; a run takes
a seventh of them, since to draw and judge one takes a twentieth of a second."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass

import pytest
from sampling import every

from stemline.theme import load_theme

from .pictures import BUNDLED, CALL, Sort, legend, pictures
from .table import judge, told

THEME = load_theme()
NTH = 7


@dataclass(frozen=True)
class Verdict:
    """How many diagrams of each sort a playbook has, and those with a fault, told."""

    drawn: Counter[Sort]
    guilty: tuple[str, ...]


@pytest.fixture(scope="module", params=BUNDLED)
def verdict(request: pytest.FixtureRequest) -> Verdict:
    """The diagrams of a playbook read back and judged; of two alike only one is judged."""
    drawn: Counter[Sort] = Counter()
    guilty: list[str] = []
    seen: set[str] = set()
    for picture in pictures(request.param, THEME, every(NTH, "gate")):
        drawn[picture.sort] += 1
        if picture.svg not in seen:
            seen.add(picture.svg)
            judged = judge(picture, THEME)
            guilty += [told(judged)] if judged.faults else []
    return Verdict(drawn, tuple(guilty))


def test_every_diagram_is_drawn(verdict: Verdict) -> None:
    drawn = verdict.drawn
    assert set(drawn) == set(Sort) - {Sort.LEGEND}
    apart = every(2, "gate") - 1  # a share may take one more of a sort that begins sooner
    of_calls = [drawn[sort] for sort in CALL.values()]
    assert max(of_calls) - min(of_calls) <= apart
    assert abs(drawn[Sort.SHEET] - drawn[Sort.SHEET_QUARTER]) <= apart
    assert drawn[Sort.SHEET] <= drawn[Sort.SHEET_SMALL]
    assert drawn[Sort.LARGE] > 200 // every(NTH, "gate")


def test_every_diagram_is_clean(verdict: Verdict) -> None:
    assert not verdict.guilty, "\n".join(verdict.guilty)


def test_the_page_that_explains_the_marks_is_clean() -> None:
    judged = [judge(picture, THEME) for picture in legend(THEME)]
    guilty = [told(each) for each in judged if each.faults]
    assert len(judged) > 20
    assert not guilty, "\n".join(guilty)
