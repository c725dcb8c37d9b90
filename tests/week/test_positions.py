"""A man's own book: all his calls once, alike ones together, and what came and went."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import pypdfium2 as pdfium
import pytest

from stemline.describe.phrases import plain
from stemline.emit.gallery import Art
from stemline.emit.html import filled
from stemline.emit.pdf import page_count
from stemline.emit.week_pages import a_page
from stemline.emit.week_positions import ListedCall, PositionJob, PositionPage, PositionPicture
from stemline.football.play import Assignment, Play
from stemline.football.players import Position
from stemline.printing.position_papers import listed
from stemline.printing.week_papers import Printing, week_papers
from stemline.theme import load_theme
from stemline.week.position_book import OwnBook, men_of, own_book, own_task, plays_in
from stemline.week.week_values import CallEntry, Week
from stemline.week.working_out import work_out

from .plans import HERONS, LANTERNS, bundled_week, ems, made_up, pages, session

WEEKS = [(HERONS, 8), (LANTERNS, 4)]


def calls_of(book: OwnBook) -> list[CallEntry]:
    return [entry for job in book.jobs for alike in job.alike for entry in alike.calls]


def his(play: Play, man: str) -> Assignment:
    return next(a for a in play.assignments if a.man == man)


def weeks() -> list[Week]:
    made = [bundled_week(*each) for each in WEEKS]
    for seed in range(6):
        plan = made_up(seed)
        made.append(work_out(plan, {}, pages(plan), ems()))
    return made


@pytest.mark.parametrize("n", range(8))
def test_every_call_he_plays_in_stands_once_under_what_it_tells_him(n: int) -> None:
    week = weeks()[n]
    for man in men_of(week.plan):
        book = own_book(week, man)
        mine = {c for c in week.plan.calls if plays_in(week.plan.plays[c], man)}
        found = [entry.call for entry in calls_of(book)]
        assert len(found) == len(set(found)) and set(found) == mine
        assert book.off == len(week.plan.calls) - len(mine)
        for job in book.jobs:
            for entry in (entry for alike in job.alike for entry in alike.calls):
                told = his(entry.play, man)
                assert told.job.strip() in job.task.job
                assert [b.looks for b in told.branches] == [looks for looks, _ in job.task.looks][
                    : len(told.branches)
                ]
                if entry.play.man(man).position is Position.QUARTERBACK:
                    for read in entry.play.reads:
                        assert read.target in job.task.job


@pytest.mark.parametrize(("name", "number"), WEEKS)
def test_calls_of_one_picture_are_one_to_him(name: str, number: int) -> None:
    """He starts and ends where the picture has him, to the yard that a picture shows."""
    week = bundled_week(name, number)
    for man in men_of(week.plan):
        for job in own_book(week, man).jobs:
            for alike in job.alike:
                first = alike.calls[0].play
                for other in (entry.play for entry in alike.calls):
                    assert first.man(man).at.distance(other.man(man).at) < 1.5
                    ways = [his(play, man).path for play in (first, other)]
                    assert (ways[0] is None) == (ways[1] is None)
                    if ways[0] is not None and ways[1] is not None:
                        assert ways[0].end.distance(ways[1].end) < 1.5
                    assert first.kind is other.kind


def test_what_came_and_went_is_by_the_game_before() -> None:
    week, before = bundled_week(HERONS, 8), bundled_week(HERONS, 7)
    assert week.plan.before == before.plan
    book = own_book(week, "LT")
    assert book.since == "7 Thistlemere"
    assert {e.call for e in book.came} == {
        "Stack Right Smash", "Three Two Right Crossers Wheel", "Doubles Right Back Wheel",
        "Doubles Right Scissors",
    }  # fmt: skip
    went = {"Pro Right Trap", "Pistol Right Trap", "Doubles Right Back Angle"}
    assert set(book.went) == went
    # W is not on the field in Pro.
    assert set(own_book(week, "W").went) == went - {"Pro Right Trap"}
    # The first week of the book has none before it.
    first = own_book(bundled_week(HERONS, 5), "LT")
    assert (first.since, first.came, first.went) == ("", (), ())
    assert not any(job.new for job in first.jobs)


@pytest.mark.parametrize(("name", "number"), WEEKS)
def test_a_task_is_new_where_no_call_of_the_week_before_told_it(name: str, number: int) -> None:
    week = bundled_week(name, number)
    before = week.plan.before
    for man in men_of(week.plan):
        book = own_book(week, man)
        if before is None:
            assert not any(job.new for job in book.jobs)
            continue
        plays = [before.plays[call] for call in before.calls]
        told = [own_task(play, man) for play in plays if plays_in(play, man)]
        # By the season's book: that the front is another one makes no job new.
        for job in book.jobs:
            calls = [e.call for alike in job.alike for e in alike.calls]
            rules = [own_task(week.plan.plays[call], man) for call in calls]
            assert job.new == (not any(rule in told for rule in rules))


@pytest.mark.parametrize(("name", "number"), WEEKS)
def test_a_run_is_the_one_that_this_week_s_front_makes_of_it(name: str, number: int) -> None:
    """Picture and job are against the first look that the week names, and where another look of it
    gives a man another job, that is told."""
    week = bundled_week(name, number)
    known, plan = session(name), week.plan
    orders, told = known.calls.by_name, 0
    for man in men_of(plan):
        for job in own_book(week, man).jobs:
            for entry in (e for alike in job.alike for e in alike.calls):
                if plan.plays[entry.call].defence is None:
                    assert entry.play is plan.plays[entry.call]
                    continue
                said = dict(job.task.looks)
                spot = plan.plays[entry.call].ball
                for n, look in enumerate(plan.faces):
                    play, found = known.play(orders[entry.call], spot, look_key=look.casefold())
                    if play is None or any(d.is_error for d in found):
                        continue
                    wanted = his(play, man).job.strip()
                    if n == 0:
                        assert entry.play.defence is not None
                        assert entry.play.defence.name == look and wanted in job.task.job
                    elif wanted != his(entry.play, man).job.strip():
                        assert said[f"against {look}"] == wanted
                        told += 1
    assert told or len(plan.faces) == 1


def test_a_week_that_starts_from_none_is_held_against_the_game_before_too() -> None:
    """Weeks 3 and 7 of the two books start afresh, and their men had a week before all the same."""
    for name in (HERONS, LANTERNS):
        plans = [p.plan for p in session(name).weeks if p.plan is not None]
        assert len(plans) == 4 and plans[0].before is None
        for earlier, later in pairwise(plans):
            assert later.before is not None and later.before.number == earlier.number


def test_men_are_asked_for_by_letter_position_or_group() -> None:
    plan = bundled_week(HERONS, 8).plan
    assert men_of(plan, ["h", "Q"]) == ("H", "Q")
    assert men_of(plan, ["linemen"]) == ("LT", "LG", "C", "RG", "RT")
    assert men_of(plan, ["guards"]) == ("LG", "RG")
    with pytest.raises(KeyError, match="kicker"):
        men_of(plan, ["H", "kicker"])


def test_the_printed_book_holds_his_calls_and_as_many_sheets_as_are_said() -> None:
    week = bundled_week(HERONS, 8)
    few = replace(week.plan, bands=(), periods=(), scouts=())
    week = work_out(few, {}, pages(few), ems())
    made = week_papers(week, Printing(load_theme(), men=("H", "LT")), ("positions",))
    assert set(made.files) == {"positions/h.pdf", "positions/lt.pdf"}
    sheets, more, overleaf = 0, set[tuple[str, int]](), set[tuple[str, int]]()
    for name, man in (("positions/h.pdf", "H"), ("positions/lt.pdf", "LT")):
        document = pdfium.PdfDocument(made.files[name])
        assert page_count(made.files[name]) == len(document)
        sheets += (len(document) + 1) // 2
        pages_ = ["".join(page.get_textpage().get_text_bounded().split()) for page in document]
        words = "".join(pages_)
        # And that it is said again stands over it.
        more |= {(man, n) for n, page in enumerate(pages_) if "(more)" in page}
        for job in own_book(week, man).jobs:
            his_calls = [
                f"{e.number}{listed(e).call}p.".replace(" ", "") for a in job.alike for e in a.calls
            ]
            on = [n for n, page in enumerate(pages_) if any(call in page for call in his_calls)]
            overleaf |= {(man, n) for n in on[1:]}
        # What he is told stands over his pictures again where they go overleaf.
        for page in document:
            assert page.get_textpage().get_text_bounded(bottom=page.get_height() - 70).strip()
        for entry in calls_of(own_book(week, man)):
            said = f"{entry.number}{listed(entry).call}p.{entry.page}".replace(" ", "")
            assert said in words, said
    assert more == overleaf != set()
    assert made.counts == [f"position books: {sheets} sheets on both sides (LT, H)"]


def test_short_jobs_that_follow_each_other_stand_beside_each_other() -> None:
    call = ListedCall("7", "Trey Right Stick", "57")
    picture = PositionPicture(Art("a", "", "", 10, 10), 1.0, (call,))
    short = PositionJob("", "Block J", (), (), (picture,))
    wordy = replace(short, job="Block J. " * 40)
    shown = replace(short, pictures=(picture, picture))
    called = replace(short, pictures=(replace(picture, calls=(call,) * 9),))
    jobs = (short, short, wordy, short, short, short, short, shown, short, called)
    page = PositionPage("LT", (), jobs, "", (), (), 1, 0)
    assert [job for block in page.blocks for job in block] == list(jobs)
    assert [len(block) for block in page.blocks] == [2, 1, 3, 1, 1, 1, 1]


def test_a_look_stands_over_the_calls_that_are_drawn_against_it() -> None:
    """Behind the last call it was read as that call's alone."""
    call = ListedCall("7", "Trey Right Power", "57")
    picture = PositionPicture(Art("a", "", "", 10, 10), 1.0, (call, call), "Bear One")
    job = PositionJob("", "Block J", (), (), (picture,))
    shown = replace(job, pictures=(picture, picture))
    page = PositionPage("LT", (), (job, shown), "", (), (), 1, 0)
    theme = load_theme()
    html = filled(
        theme, "week-positions.html.jinja", page=page, footer="", **a_page(theme, "", "letter")
    )
    assert html.count("drawn against Bear One") == 3
    for part in html.split("drawn against Bear One")[1:]:
        assert "Trey Right Power" in part
    assert "Trey Right Power" not in html.split("drawn against Bear One")[0]


def test_no_formation_has_two_places_for_him() -> None:
    """One who moves before the snap begins elsewhere: then the motion is named."""
    week = bundled_week(HERONS, 8)
    places = {place.words: place.formations for place in own_book(week, "H").places}
    named = [words for formations in places.values() for words in formations]
    assert len(named) == len(set(named))
    assert "Quads Right Waggle" in named and "Quads Right" in named


def test_no_man_is_told_of_a_look_that_never_meets_his_formation() -> None:
    week = bundled_week(LANTERNS, 2)
    met = {call: {look for look, _ in plays} for call, plays in week.against.items()}
    assert all(play.defence is not None for plays in week.against.values() for _, play in plays)
    # Hatchet is only for sets that throw.
    assert met["Heavy Left Power"] == {"Under Quarters"}
    assert met["Doubles Right Zone"] == {"Under Quarters", "Hatchet"}


@pytest.mark.parametrize(("name", "number"), [(HERONS, 7), (LANTERNS, 4)])
def test_each_man_is_told_what_he_does_where_his_call_is_killed(name: str, number: int) -> None:
    week = bundled_week(name, number)
    told = 0
    for man in men_of(week.plan):
        book = own_book(week, man)
        by_call = {
            (entry.call, kill.to, kill.when): kill.job
            for kill in book.killed for entry in kill.calls
        }  # fmt: skip
        for entry in calls_of(book):
            for becoming in entry.play.becomes:
                said = by_call.pop((entry.call, becoming.words, becoming.when))
                assert plain(his(becoming.play, man).job) in said
                told += 1
        assert not by_call
    assert told > 10


def test_a_quarterback_who_reads_a_run_is_told_his_feet_once() -> None:
    for name, number in ((HERONS, 6), (HERONS, 7), (LANTERNS, 4)):
        for job in own_book(bundled_week(name, number), "Q").jobs:
            said = [each.casefold() for each in plain(job.task.job).split(". ")]
            assert len(set(said)) == len(said), job.task.job
            assert all(each[0] == each[0].upper() for each in plain(job.task.job).split(". "))
