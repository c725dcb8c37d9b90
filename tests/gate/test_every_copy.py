"""Every diagram that the bundled playbooks print keeps all it says when it is copied."""

from __future__ import annotations

import pytest

from stemline.theme import load_theme

from .copies import copies, told_lost
from .pictures import BUNDLED, legend, pictures

THEME = load_theme()


@pytest.mark.parametrize("book", BUNDLED)
def test_every_copy_keeps_what_its_diagram_says(book: str) -> None:
    made = copies(pictures(book, THEME), THEME)
    assert len(made) > 600
    lost = [told_lost(each) for each in made if each.copy.lost]
    assert not lost, "\n".join(lost)


def test_a_copy_keeps_the_page_that_explains_the_marks() -> None:
    lost = [told_lost(each) for each in copies(legend(THEME), THEME) if each.copy.lost]
    assert not lost, "\n".join(lost)
