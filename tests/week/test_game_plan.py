"""The week's own book: its calls and no others, the opponent's looks, and pages that are true."""

from __future__ import annotations

import io
from dataclasses import replace
from functools import cache

import pypdfium2 as pdfium
import pytest

from stemline.book.content.book import Book, Edition
from stemline.book.content.dressed_page import DressedPage
from stemline.book.content.kinds.concept_page import ConceptPage
from stemline.book.content.kinds.look_page import LookPage
from stemline.book.content.page import Listing
from stemline.book.content.plan_book import make_plan_book
from stemline.book.content.their_looks import TheirLooksPage
from stemline.football.field import BallSpot
from stemline.football.play import Kind, Play
from stemline.football.timing.answers import answer
from stemline.football.timing.putting import put_to_looks
from stemline.playbook.playbook import with_opponents
from stemline.printing.week_papers import Printing, week_papers
from stemline.resolve.kills import second_calls
from stemline.theme import load_theme
from stemline.week.killed_rows import printed_call
from stemline.week.week_values import Plan, PlanRow
from stemline.week.working_out import work_out

from .plans import HERONS, LANTERNS, bundled_week, ems, pages, plan, session

WEEKS = [(HERONS, 5), (HERONS, 7), (LANTERNS, 2)]


@cache
def book_of(name: str, number: int) -> Book:
    return make_plan_book(bundled_week(name, number), Edition("", ""))


def _printed(plan: Plan) -> dict[str, str]:
    """Each call of a plan as every paper of the week prints it."""
    return {call: printed_call(call, plan.plays[call]) for call in plan.calls}


@pytest.mark.parametrize(("name", "number"), WEEKS)
def test_it_holds_the_calls_of_the_plan_and_no_others(name: str, number: int) -> None:
    plan, book = bundled_week(name, number).plan, book_of(name, number)
    entries = [e for page in book.pages for e in page.entries if e.listed]
    assert sorted(entry.call for entry in entries) == sorted(_printed(plan).values())
    concepts = {plan.plays[call].call.concept for call in plan.calls}
    assert {page.name for page in book.of(ConceptPage)} == concepts
    # Nor a tag that no call of the plan has, nor what the season's book has at its front.
    called = {(p.call.concept, tag) for p in plan.plays.values() for tag in p.call.tags}
    groups = [group for page in book.of(DressedPage) for group in page.groups]
    told = {(group.name, one.calls) for group in groups for one in group.calls if one.says}
    assert told <= called
    assert not [page.name for page in book.pages if page.listing is Listing.FIRST]


@pytest.mark.parametrize(("name", "number"), WEEKS)
def test_it_stands_in_the_order_of_the_plan(name: str, number: int) -> None:
    """Each concept opens with the call that the plan has first, and so does each family."""
    plan, book = bundled_week(name, number).plan, book_of(name, number)
    place = {call: n for n, call in enumerate(_printed(plan).values())}
    firsts: list[int] = []
    families: dict[str, int] = {}
    for page in book.of(ConceptPage):
        places = [place[entry.call] for entry in page.entries if entry.listed]
        assert places == sorted(places)
        firsts.append(places[0])
        families.setdefault(page.family, places[0])
    assert list(families.values()) == sorted(families.values())
    assert firsts[0] == 0


@pytest.mark.parametrize(("name", "number"), WEEKS)
def test_its_looks_are_the_opponents(name: str, number: int) -> None:
    """And those alone, but where a dress-up on the goal line names the look that it meets there."""
    plan, book = bundled_week(name, number).plan, book_of(name, number)
    orders = session(name).calls.by_name
    assert tuple(page.name for page in book.of(LookPage)) == plan.faces
    for page in book.of(ConceptPage):
        for e in page.entries:
            own = orders[e.call].look if e.call in orders else ""
            shown = e.play.defence.name if e.play.defence is not None else None
            if own and shown:
                assert shown.casefold() == own and e.play.field.goal is not None, e.call
            else:
                assert shown is None or shown in plan.faces, e.call
        assert page.answers is None or set(page.answers.looks) <= set(plan.faces), page.name
    (glance,) = book.of(TheirLooksPage)
    assert tuple(look.name for look in glance.looks) == plan.faces


@pytest.mark.parametrize(("name", "number"), WEEKS)
def test_every_call_answers_a_look_or_is_told_not_to(name: str, number: int) -> None:
    """Of each look the two lists hold each call once, but those kept for another look or from a
    formation that it is not for, and each fares as the clock and the blocking say."""
    week, compiled = bundled_week(name, number), session(name)
    assert week.game is not None
    assert compiled.book is not None
    looks, orders = with_opponents(compiled.book).looks, compiled.calls.by_name
    (glance,) = book_of(name, number).of(TheirLooksPage)
    said = _printed(week.plan)
    for look, shown in zip(week.game.looks, glance.looks, strict=True):
        rows = [row for each in week.plan.lists for row in each.rows]
        others = {n.casefold() for n in week.plan.faces} - {look.name.casefold()}
        # Without a formation it is a set: of these looks the empty one.
        only = {one.formation or "empty" for one in looks[look.name.casefold()].only_for}
        meeting = {
            row.call
            for row in rows
            if row.look.casefold() not in others
            and (not only or orders[row.call].formation in only)
        }
        told = [answer.call for answer in (*look.answers, *look.without)]
        assert sorted(told) == sorted(meeting)
        printed = [c.call for group in shown.answers for c in group.calls]
        assert sorted(printed) == sorted(said[answer.call] for answer in look.answers)
        assert [c.call for c in shown.without] == [said[answer.call] for answer in look.without]
        told_to = {answer.call for answer in look.answers}
        for row in {row.call: row for row in reversed(rows) if row.call in told}.values():
            drawn = week.plan.plays[row.call]
            good = fares(name, row, look.name, drawn)
            assert (row.call in told_to) is good, (look.name, row.call)


def fares(name: str, row: PlanRow, look: str, drawn: Play) -> bool:
    """Whether a call has an answer, asked of the clock and of the blocking anew."""
    compiled = session(name)
    assert compiled.book is not None
    order = compiled.calls.by_name[row.call]
    if kills := {b.play.call.concept for b in drawn.becomes if look in b.looks}:
        order = next(
            second
            for _, second in second_calls(compiled.book, order)
            if compiled.book.concepts[second.concept].name in kills
        )
    play, _ = compiled.play(order, row.spot or BallSpot.MIDDLE, look_key=look.casefold())
    assert play is not None
    if play.kind is Kind.RUN and not play.unblocked:
        return True
    got = answer(play, compiled.book.settings.level)
    return got is not None and got.given


def test_what_a_pass_has_against_their_looks_is_asked_of_what_is_kept() -> None:
    """And of each concept no play is left over that the page would run the clock of again."""
    week, compiled = bundled_week(LANTERNS, 2), session(LANTERNS)
    assert week.game is not None and compiled.book is not None
    season, faced = week.game.season, [name.casefold() for name in week.plan.faces]
    told = [sheet for sheet in season.concepts if sheet.put is not None]
    assert len(told) > 10
    assert not [sheet.name for sheet in season.concepts if sheet.faced]
    for sheet in told:
        first = next(p for p in season.plays if p.call.concept == sheet.name)
        order = compiled.calls.by_name[first.call.spoken]
        made = (compiled.play(order, first.ball, look_key=key) for key in faced)
        right = (p for p, found in made if p is not None and not any(d.is_error for d in found))
        met = [play for play in right if play.defence is not None]
        assert sheet.put == put_to_looks(met, compiled.book.settings.level), sheet.name


@pytest.mark.parametrize(("name", "number"), WEEKS)
def test_the_front_counts_what_the_sheet_has(name: str, number: int) -> None:
    week = bundled_week(name, number)
    front = book_of(name, number).plan
    assert front is not None
    for situation, each in zip(front.situations, week.plan.lists, strict=True):
        runs = [row for row in each.rows if week.entry(row.call).play.kind is Kind.RUN]
        assert (situation.title, situation.calls) == (each.title, len(each.rows))
        assert (situation.runs, situation.passes) == (len(runs), len(each.rows) - len(runs))


def test_the_printed_pages_are_true() -> None:
    """Each line of the plan at the end names the page on which its call's picture stands."""
    whole, known = plan(LANTERNS, 2), session(LANTERNS)
    few = tuple(replace(each, rows=each.rows[:4]) for each in whole.lists[:2])
    some = replace(whole, lists=few, faces=whole.faces[:2], bands=(), periods=(), scouts=())
    assert 5 < len(some.calls) < len(whole.calls)
    week = work_out(some, {}, pages(some), ems(), known.game_plan(some))
    made = week_papers(week, Printing(load_theme()), ("gameplan",))
    data = made.files["game-plan.pdf"]
    printed = [
        " ".join(page.get_textpage().get_text_bounded().split())
        for page in pdfium.PdfDocument(io.BytesIO(data))
    ]
    front, end = printed[0], " ".join(p for p in printed if "The plan by situation" in p)
    assert week.plan.opponent in front and week.plan.date in front
    pages_of_calls = set()
    for call in week.plan.calls:
        entry = week.entry(call)
        said = f"{entry.number} {call} · book {entry.page} "
        at = end.index(said) + len(said)
        here = int(end[at:].split()[0])
        over = f"{call} no. {entry.number} · book {entry.page}"
        assert over in printed[here - 1], (call, here)
        pages_of_calls.add(here)
    assert len(pages_of_calls) > 3


@pytest.mark.parametrize(("name", "number"), [(HERONS, 7), (LANTERNS, 4)])
def test_no_page_has_a_call_against_a_look_on_which_it_is_killed(name: str, number: int) -> None:
    """There it is another call, whose answer stands at a glance; and no man is told of it."""
    week = bundled_week(name, number)
    assert week.game is not None
    kills = {
        (call, look): becoming.play.call.concept
        for call in week.plan.calls for becoming in week.plan.plays[call].becomes
        for look in becoming.looks if look in week.plan.faces
    }  # fmt: skip
    assert kills
    told = {
        (each.call, look.name): each.words
        for look in week.game.looks for each in (*look.answers, *look.without)
    }  # fmt: skip
    for (call, look), to in kills.items():
        assert told[call, look].startswith(f"{to}: ")
        assert look not in {met for met, _ in week.against.get(call, ())}
    for page in book_of(name, number).of(ConceptPage):
        shown = {
            (entry.play.call.spoken, entry.play.defence.name)
            for entry in (page.base, *page.offered) if entry.play.defence is not None
        }  # fmt: skip
        rows = {(page.base.play.call.spoken, n) for n in _faced_by(page)}
        assert not (shown | rows) & kills.keys()


def test_a_call_that_every_look_of_theirs_kills_is_drawn_as_the_season_has_it() -> None:
    """Its page in the week's book has it against none of them."""
    base = bundled_week(HERONS, 7)
    calls = [call for call in base.plan.calls if base.plan.plays[call].becomes]
    looks = {
        look for call in calls for b in base.plan.plays[call].becomes for look in b.looks
    }  # fmt: skip
    faced = [look for look in base.plan.faces if look in looks]
    assert faced
    for look in faced:
        plan_ = replace(base.plan, faces=(look,))
        season = session(HERONS).game_plan(plan_).season
        drawn = {p.call.spoken: p for p in season.plays}
        for call in calls:
            play = plan_.plays[call]
            if look in {each for b in play.becomes for each in b.looks}:
                assert drawn[call].defence == play.defence
                assert play.defence is None or play.defence.name != look


def _faced_by(page: ConceptPage) -> set[str]:
    rows = page.fronts.rows if page.fronts else ()
    return {name for row in rows for name in row.looks.split(", ")}
