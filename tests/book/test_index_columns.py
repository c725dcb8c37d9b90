"""The index is set in columns of equal length, and no heading stands last in one."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from stemline.book.content.index import HEIGHTS, IndexItem, set_columns

PAGE = 600.0


def items(groups: list[int]) -> tuple[IndexItem, ...]:
    """An index whose groups hold that many calls."""
    made = [IndexItem("index", "Index", "index", HEIGHTS["index"])]
    for number, calls in enumerate(groups):
        made.append(IndexItem("group", f"group {number}", "", HEIGHTS["group"]))
        made += (IndexItem("call", f"call {i}", f"call-{i}", HEIGHTS["call"]) for i in range(calls))
    return tuple(made)


@given(groups=st.lists(st.integers(1, 40), min_size=1, max_size=12), across=st.sampled_from((2, 3)))
def test_columns(groups: list[int], across: int) -> None:
    given_items = items(groups)
    pages = set_columns(given_items, across, PAGE)
    columns = [column for page in pages for column in page]
    assert tuple(item for column in columns for item in column) == given_items
    assert all(len(page) <= across for page in pages)
    for column in columns:
        assert sum(item.height for item in column) <= PAGE
        assert column[-1].kind == "call"
    heights = [sum(item.height for item in column) for column in columns]
    total = sum(heights)
    slack = HEIGHTS["index"] + HEIGHTS["group"] + 2 * HEIGHTS["call"]
    assert max(heights) <= total / (len(pages) * across) + slack


def test_nothing_to_index_is_no_page() -> None:
    assert set_columns((), 3, PAGE) == ()


def test_a_full_page_goes_on_to_a_second_of_the_same_length() -> None:
    pages = set_columns(items([180]), 3, PAGE)
    heights = [sum(item.height for item in column) for page in pages for column in page]
    assert len(pages) == 2
    assert max(heights) - min(heights) <= 4 * HEIGHTS["call"]


@given(groups=st.lists(st.integers(1, 12), min_size=2, max_size=16))
def test_no_call_of_a_situation_stands_alone_at_an_end_of_a_column(groups: list[int]) -> None:
    given_items = items(groups)
    pages = set_columns(given_items, 2, PAGE, 2)
    columns = [column for page in pages for column in page]
    assert tuple(item for column in columns for item in column) == given_items
    many = {i for i, item in enumerate(given_items) if item.kind == "call"}
    at = 0
    for column in columns[:-1]:
        at += len(column)
        assert column[-1].kind == "call"
        parted = at in many and at - 1 in many
        assert not parted or {at - 2, at + 1} <= many, (at, column)
