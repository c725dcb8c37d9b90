"""Every diagram that the bundled playbooks print keeps all it says when it is copied; a share of
them each time, since to print and copy one takes a sixth of a second."""

from __future__ import annotations

import pytest
from sampling import every

from stemline.theme import load_theme

from .copies import copies, told_lost
from .pictures import BUNDLED, Sort, legend, pictures

THEME = load_theme()
NTH = 29
"""Of each sort: a book has no more of some than 23."""


@pytest.mark.parametrize("book", BUNDLED)
def test_every_copy_keeps_what_its_diagram_says(book: str) -> None:
    made = copies(pictures(book, THEME, every(NTH)), THEME)
    assert len(made) > 600 / every(NTH)
    assert {one.picture.sort for one in made} == set(Sort) - {Sort.LEGEND}
    lost = [told_lost(one) for one in made if one.copy.lost]
    assert not lost, "\n".join(lost)


def test_a_copy_keeps_the_page_that_explains_the_marks() -> None:
    lost = [told_lost(one) for one in copies(legend(THEME), THEME) if one.copy.lost]
    assert not lost, "\n".join(lost)
