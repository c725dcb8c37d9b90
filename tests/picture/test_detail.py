"""What each size leaves out."""

from __future__ import annotations

import pytest

from stemline.picture.paper.detail import SMALLEST, Detail, shows
from stemline.picture.picture import picture
from stemline.picture.scene.scene import Scene, TextRun
from stemline.theme import Size, load_theme

from .sample_plays import ALL

THEME = load_theme()


def words(scene: Scene, style: str) -> set[str]:
    return {i.text for i in scene.items if isinstance(i, TextRun) and i.style == style}


@pytest.mark.parametrize("detail", Detail)
def test_every_detail_has_a_size_and_the_large_picture_shows_all(detail: Detail) -> None:
    assert shows(Size.FULL, detail)
    shown = [shows(size, detail) for size in Size]
    assert shown == sorted(shown, reverse=True)
    assert SMALLEST[detail] is not Size.THUMB


def test_the_quarter_picture_keeps_depths_and_branches_but_not_the_words_of_motions() -> None:
    by_size = {size: picture(ALL["quads-return"], size, THEME) for size in Size}
    depths = [words(by_size[size], "depth") for size in Size]
    assert depths[0] == depths[1] != set()
    assert not depths[2]
    said = [len(words(by_size[size], "words")) for size in Size]
    assert said[0] > said[1] >= said[2] == 0


def test_a_smaller_picture_has_fewer_things_in_it() -> None:
    for play in ALL.values():
        counts = [len(picture(play, size, THEME).items) for size in Size]
        assert counts == sorted(counts, reverse=True)
