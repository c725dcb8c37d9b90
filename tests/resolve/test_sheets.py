"""What only a book's pages need: runs against other fronts, looks, protections, formations."""

from __future__ import annotations

from functools import cache

from resolve.test_runs import COUNTER, FORMATIONS, LOOKS
from resolve.texts import DOUBLES_ELEVEN, ELEVEN, TREY, compiled
from stemline.football.play import ConceptSheet, Kind, Season
from stemline.resolve.concept_views import with_views
from stemline.resolve.sheets import MOST_SETS, with_sheets
from stemline.session import Session

SLIDE = """
protection Half Slide
    toward weak
    centre, playside guard, playside tackle blocks slide
    backside guard, backside tackle blocks man
    helper is back
    helper blocks scan
    hot slant if a sixth comes
    say "Six for six."
"""


@cache
def result() -> Session:
    return compiled(ELEVEN, FORMATIONS, DOUBLES_ELEVEN, TREY, LOOKS, COUNTER, SLIDE)


def parts() -> tuple[Season, Season]:
    made = result()
    assert made.book is not None
    assert made.season is not None
    return made.season, with_sheets(made.book, with_views(made.book, made.calls, made.season))


def counter() -> ConceptSheet:
    _, shown = parts()
    return next(sheet for sheet in shown.concepts if sheet.name == "Counter")


def test_a_check_builds_no_sheets() -> None:
    season, _ = parts()
    assert (season.looks, season.protections, season.formations) == ((), (), ())
    assert all(sheet.views == () for sheet in season.concepts)


def test_a_run_is_shown_against_every_other_look_and_without_one() -> None:
    season, _ = parts()
    first = next(play for play in season.plays if play.call.concept == "Counter")
    assert first.defence is not None
    assert counter().kind is Kind.RUN
    shown = [view.defence.name if view.defence else "" for view in counter().views]
    assert shown[0] == ""
    assert sorted((*shown[1:], first.defence.name)) == ["Bear", "Even", "Even Inside", "Odd"]
    assert {view.call for view in counter().views} == {first.call}
    assert {view.ball for view in counter().views} == {first.ball}


def test_the_view_without_a_look_holds_the_rules() -> None:
    rule, *others = counter().views
    assert "down" in rule.assignment("RT").job.lower()
    assert len({view.assignment("RT").job for view in (rule, *others)}) > 1


def test_every_formation_stands_called_right_with_nothing_to_do() -> None:
    made = result()
    _, shown = parts()
    assert made.book is not None
    assert [sheet.name for sheet in shown.formations] == [
        f.name for f in made.book.formations.values()
    ]
    for sheet in shown.formations:
        assert sheet.view.call.spoken == sheet.name
        assert all(a.job == "" and a.path is None for a in sheet.view.assignments)


def test_a_look_is_shown_against_few_sets_of_several_shapes() -> None:
    _, shown = parts()
    assert [sheet.name for sheet in shown.looks] == ["Even", "Even Inside", "Odd", "Bear"]
    for sheet in shown.looks:
        assert 1 < len(sheet.views) <= MOST_SETS
        assert all(view.defence and view.defence.name == sheet.name for view in sheet.views)
        formations = [view.call.formation for view in sheet.views]
        assert len(set(formations)) == len(formations)
        leads = [view.shape[0] - view.shape[1] for view in sheet.views]
        assert leads[0] == min(leads)
        assert len(set(leads)) > 1


def test_a_protection_stands_against_every_look_the_base_first() -> None:
    made = result()
    _, shown = parts()
    assert made.book is not None
    sheet = next(s for s in shown.protections if s.name == "Half Slide")
    assert sheet.says == ("Six for six.",)
    assert sheet.hot == (("slant", "a sixth comes"),)
    rule, base, *others = sheet.views
    assert rule.defence is None
    assert base.defence is not None
    assert base.defence.name.casefold() == made.book.base_look
    assert len(others) == 3
    assert base.assignment("C").job.lower().startswith("slide")


SPIN = """
look Still extends Even
    F covers third, middle

look Spin extends Still
    F covers flat, weak when motion

motion Across
    W moves to call, 2 outside S, off line
"""


def test_a_look_that_turns_on_a_motion_tells_what_it_shows_then() -> None:
    made = compiled(ELEVEN, FORMATIONS, DOUBLES_ELEVEN, TREY, LOOKS, COUNTER, SPIN)
    assert made.book is not None and made.season is not None
    sheets = {s.name: s for s in with_sheets(made.book, made.season).looks}
    assert sheets["Still"].after == ()
    (((motions, words)),) = sheets["Spin"].after
    defence = sheets["Spin"].views[0].defence
    assert defence is not None and "middle closed" in defence.shows
    assert motions == ("Across",) and "middle closed" not in words
