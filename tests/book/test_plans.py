"""How a book is laid is decided from heights alone; whoever sets text only answers."""

from __future__ import annotations

from collections import defaultdict
from dataclasses import replace

import pytest
from sample_gallery import CAPTIONS, gallery_of
from sample_season import sample_season

from stemline.book.content.book import Book, Edition, make_book
from stemline.book.content.dressed_page import DressedPage
from stemline.book.content.kinds.concept_page import ConceptPage
from stemline.book.content.page import Remark
from stemline.book.layout.numbering import OPENING
from stemline.book.layout.plans import SLACKS, Heights, PagePlan, plans
from stemline.book.paper import room


@pytest.fixture(scope="module")
def book() -> Book:
    return make_book(sample_season(), Edition("", ""), CAPTIONS)


@pytest.fixture(scope="module")
def pictures() -> Heights:
    return gallery_of(sample_season(), CAPTIONS).heights


def heights() -> Heights:
    """Every part 90 points tall, and each front part on one sheet."""
    return defaultdict(lambda: 90.0, {f"{each} pages": 1.0 for each in OPENING})


def as_planned(plan: PagePlan) -> dict[str, list[int]]:
    stands = {id_: [number] for id_, number in plan.numbers.items()}
    for id_, how in plan.layout.items():
        first = plan.numbers[id_]
        stands[f"{id_}-all"] = list(range(first, first + how.pages))
    return stands


def test_where_all_stands_as_planned_the_first_plan_is_the_last(
    book: Book, pictures: Heights
) -> None:
    better = plans(book, heights(), pictures)
    with pytest.raises(StopIteration):
        better.send(as_planned(next(better)))


def test_what_follows_a_page_that_runs_on_is_numbered_after_all_its_sheets(
    book: Book, pictures: Heights
) -> None:
    """So the first plan is the last, and nothing is set twice for a page number."""
    first, after = book.pages[0].id, book.pages[1].id
    tall = {**heights(), f"{first}-fixed": 2.5 * room(book.paper)}
    plan = next(plans(book, defaultdict(lambda: 90.0, tall), pictures))
    assert plan.layout[first].runs_on
    assert plan.numbers[after] == plan.numbers[first] + 3


def test_a_page_that_runs_over_gets_more_room_and_no_other(book: Book, pictures: Heights) -> None:
    better = plans(book, heights(), pictures)
    plan, tried = next(better), 1
    over = book.pages[0].id
    others = {page.id: plan.layout[page.id] for page in book.pages[1:]}
    with pytest.raises(StopIteration):
        while True:
            stands = as_planned(plan)
            stands[f"{over}-all"] = [*stands[f"{over}-all"], 999]
            plan, tried = better.send(stands), tried + 1
            assert {id_: plan.layout[id_] for id_ in others} == others
    assert tried == len(SLACKS)


def test_a_number_that_is_wrong_is_mended_by_one_more_plan(book: Book, pictures: Heights) -> None:
    better = plans(book, heights(), pictures)
    plan = next(better)
    last = book.pages[-1].id
    stands = as_planned(plan) | {last: [plan.numbers[last] + 3]}
    mended = better.send(stands)
    assert mended.layout == plan.layout
    assert mended.numbers[last] == plan.numbers[last] + 3
    with pytest.raises(StopIteration):
        better.send(stands)


def test_a_page_that_flows_is_set_first_and_the_others_are_numbered_by_it(
    book: Book, pictures: Heights
) -> None:
    """So what stands behind it, or points to it, is set once."""
    (dressed,) = book.of(DressedPage)
    tall = defaultdict(lambda: 90.0, {**heights(), f"{dressed.id}-fixed": 2.5 * room(book.paper)})
    better = plans(book, tall, pictures, apart=True)
    begun = next(better)
    assert begun.first == (dressed,)
    takes = begun.layout[dressed.id].pages + 2
    plan = better.send({group.id: [1, takes] for group in dressed.groups})
    after = book.pages[book.pages.index(dressed) + 1 :]
    behind = begun.numbers[after[0].id if after else "by-call"]
    assert not plan.first
    for id_, number in begun.numbers.items():
        assert plan.numbers[id_] == number + (2 if number >= behind else 0)
    with pytest.raises(StopIteration):
        better.send(as_planned(plan))


@pytest.mark.parametrize("said", [(), (Remark("a call", "of two parts"),)])
def test_a_sheet_whose_every_word_stands_on_its_concepts_page_takes_none(
    book: Book, pictures: Heights, said: tuple[Remark, ...]
) -> None:
    (dressed,) = book.of(DressedPage)
    bare = replace(dressed, groups=tuple(replace(g, entries=(), said=said) for g in dressed.groups))
    pages = (
        bare if page is dressed
        else replace(page, offered=()) if isinstance(page, ConceptPage) else page
        for page in book.pages
    )  # fmt: skip
    flat = replace(book, pages=tuple(pages))
    plan = next(plans(flat, heights(), pictures))
    assert all(plan.layout[page.id].told for page in flat.of(ConceptPage))
    assert bool(plan.layout[dressed.id].pages) is bool(said)
