"""The pages that flow tell the numbers of all others, once they are set."""

from __future__ import annotations

from dataclasses import replace

from stemline.book.content.dressed_page import DressedPage, DressGroup
from stemline.book.content.page import Page
from stemline.book.layout.flowing import counted

GROUP = DressGroup("", "", "", "", (), (), (), ())


def flowing(*groups: str) -> Page:
    made = tuple(replace(GROUP, id=id_) for id_ in groups)
    return DressedPage(id=f"{groups[0]}-all", name="", groups=made)


def test_what_follows_moves_and_each_group_stands_where_it_was_set() -> None:
    one, two = flowing("a", "b"), flowing("c", "d")
    reckoned = {"x": 4, "a-all": 5, "a": 5, "b": 5, "y": 7, "c-all": 8, "c": 8, "d": 8, "z": 9}
    stands = {"a": [1, 2], "b": [2, 3], "c": [4], "d": [4, 5, 6]}
    assert counted(reckoned, {"a-all": 2, "c-all": 1}, (one, two), stands) == {
        "x": 4, "a-all": 5, "a": 5, "b": 6, "y": 8, "c-all": 9, "c": 9, "d": 9, "z": 12,
    }  # fmt: skip


def test_as_reckoned_nothing_moves() -> None:
    reckoned = {"x": 4, "a-all": 5, "a": 5, "y": 7}
    assert counted(reckoned, {"a-all": 2}, (flowing("a"),), {"a": [9, 10]}) == reckoned


def test_what_stands_on_another_page_is_left_there() -> None:
    """A group whose words and pictures are all on the concept's own page is not set here."""
    reckoned = {"a-all": 5, "a": 5, "b": 3, "y": 6}
    page = flowing("a", "b")
    assert counted(reckoned, {"a-all": 1}, (page,), {"a": [1, 2]}) == {**reckoned, "y": 7}
