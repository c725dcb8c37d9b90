"""The printed rows and lines of every call of both bundled books, and which calls are drawn."""

from __future__ import annotations

from dataclasses import replace

import pytest
from call_reading import (
    Printed,
    idle_roles,
    job_of,
    lettered,
    of_tag,
    printed,
    two_jobs,
    unsaid,
    wrong_men,
)
from shifting import shifted

from stemline.book.content.book import Book, Edition, make_book
from stemline.book.content.by_call import ByCall
from stemline.book.content.drawn_calls import left_out
from stemline.book.content.kinds.concept_page import ConceptPage
from stemline.book.content.page import concept_groups
from stemline.football.play import Assignment, Kind, Play, Season
from stemline.geometry.paths import Point


@pytest.fixture(scope="module")
def pages(book: Book, season: Season) -> list[Printed]:
    return printed(book, concept_groups(season))


def test_each_man_of_each_call_finds_himself(pages: list[Printed]) -> None:
    assert [line for one in pages for line in wrong_men(one)] == []


def test_no_line_gives_a_man_two_jobs_or_anothers_letter(pages: list[Printed]) -> None:
    assert [line for one in pages for line in two_jobs(one)] == []


def test_a_dress_up_shows_solid_who_does_something_else(book: Book, season: Season) -> None:
    """Of passes by the paths: who is not solid runs from where he stood on the page as he did
    there, and who is solid is told something else in words."""
    firsts = {plays[0].call.concept: plays[0] for plays in concept_groups(season)}
    shown = [(firsts[page.name], e) for page in book.of(ConceptPage) for e in page.offered]
    alike = other = 0
    for base, entry in shown:
        play = entry.play
        passes = entry.listed and play.kind is base.kind is Kind.PASS
        passes = passes and play.defence is None and play.ball is base.ball
        for task in play.assignments if passes else ():
            man, was = play.man(task.man), _task(base, task.man)
            if task.man in entry.solid:
                told = (task.job, task.branches, task.motion)
                assert was is None or told != (was.job, was.branches, was.motion), entry.call
                other += 1
            elif was and task.path and was.path and man.snap == base.man(task.man).snap:
                assert task.path.end.distance(was.path.end) < 1.0, (entry.call, task.man)
                alike += 1
    assert alike > 50 and other > 50


def _task(play: Play, man: str) -> Assignment | None:
    return next((task for task in play.assignments if task.man == man), None)


def test_no_line_names_a_role_that_its_call_has_not(pages: list[Printed]) -> None:
    assert [line for one in pages for line in idle_roles(one)] == []


def test_the_row_of_the_pages_own_call_has_its_men_by_letter(pages: list[Printed]) -> None:
    assert [line for one in pages for line in lettered(one)] == []


def test_whatever_a_call_changes_stands_in_a_line_of_it(pages: list[Printed]) -> None:
    assert [line for one in pages for line in unsaid(one)] == []


def test_a_tags_line_names_every_job_that_the_tag_changes(pages: list[Printed]) -> None:
    seen = 0
    for _, group, plays in pages:
        plain = {
            (p.call.formation, p.call.side, p.call.motion): p for p in plays if not p.call.tags
        }
        for play in (p for p in plays if p.call.tags):
            base = plain.get((play.call.formation, play.call.side, play.call.motion))
            if base is None or group is None:
                continue
            named = of_tag(group.calls, play.call.tags[0], play, plays)
            for task in play.assignments:
                before = base.runs(task.role) if task.role else None
                if before is None or play.man(task.man).interior:
                    continue
                if job_of(task) != job_of(before) and _same_men(play, base):
                    letters = " ".join(named).split()
                    assert task.role in named or task.man in letters, f"{play.call.spoken}: {task}"
                    seen += 1
    assert seen > 20


def _same_men(play: Play, base: Play) -> bool:
    """Whether letters mean the same roles in both: then a job's words can be held side by side."""
    return {(a.man, a.role) for a in play.assignments} == {
        (a.man, a.role) for a in base.assignments
    }


def test_rows_stand_in_one_order_on_every_page(pages: list[Printed], season: Season) -> None:
    for page, _, _ in pages:
        firsts = [season.letters.index(own.man.split()[0]) for own in page.own]
        assert firsts == sorted(firsts), page.name


def test_a_line_that_is_left_out_is_told(pages: list[Printed]) -> None:
    told = 0
    for page, group, plays in pages:
        for gone in group.calls if group is not None else ():
            if any(job.man not in ("", "–") and job.role and not job.words for job in gone.jobs):
                assert group is not None
                calls: tuple[ByCall, ...] = tuple(c for c in group.calls if c is not gone)
                found = list(wrong_men((page, replace(group, calls=calls), plays)))
                told += bool(found)
    assert told > 20


def test_a_call_that_is_not_drawn_is_a_mirror_or_a_sum(season: Season) -> None:
    mirrors = sums = 0
    for plays in concept_groups(season):
        for left in left_out(plays):
            play, parts = plays[left.call], [plays[i] for i in left.of]
            if left.mirror and len(parts) == 1:
                mirrors += 1
                # A call of another tempo alone goes to the same side.
                same = play.call.side is parts[0].call.side
                shown = _places(play) if same else _turned(play)
                assert shown == _places(parts[0]), play.call.spoken
            elif not left.mirror:
                sums += 1
                _judge_sum(play, parts)
    assert mirrors > 10
    assert sums > 10


def test_a_call_that_is_other_than_its_mirror_or_its_parts_is_drawn(season: Season) -> None:
    tried = 0
    for plays in concept_groups(season):
        for left in left_out(plays):
            play = plays[left.call]
            for task in (a for a in play.assignments if a.role and a.path and not a.branches):
                assert task.path is not None
                moved = replace(task, job="Sit down.", path=shifted(task.path, Point(3, 0)))
                tasks = tuple(moved if a is task else a for a in play.assignments)
                changed = replace(play, assignments=tasks)
                others = (*plays[: left.call], changed, *plays[left.call + 1 :])
                assert left.call not in {one.call for one in left_out(others)}, play.call.spoken
                tried += 1
                break
    assert tried > 30


def _places(play: Play, way: int = 1) -> set[tuple[str, float, float, float, float]]:
    """Each man who is no lineman: where he is at the snap and where his path ends."""
    places = set()
    for man in play.men:
        if not man.interior:
            path = play.assignment(man.label).path
            end = path.end if path is not None else man.snap
            places.add(
                (
                    man.label,
                    round(man.snap.x * way, 1) + 0.0,
                    round(man.snap.y, 1) + 0.0,
                    round(end.x * way, 1) + 0.0,
                    round(end.y, 1) + 0.0,
                )
            )
    return places


def _turned(play: Play) -> set[tuple[str, float, float, float, float]]:
    return _places(play, -1)


def _judge_sum(play: Play, parts: list[Play]) -> None:
    """He stands as in the plain call; what he does is done in one of the parts by who has his
    role, to within the yards that formations differ by where it is not the plain call's."""
    plain, *tagged = parts
    assert {(m.label, m.snap) for m in play.men} == {(m.label, m.snap) for m in plain.men}
    assert {tag for part in tagged for tag in part.call.tags} == set(play.call.tags)
    for task in play.assignments:
        if task.role and task.job != plain.assignment(task.man).job:
            jobs = [t.job for part in tagged if (t := part.runs(task.role)) is not None]
            assert any(_alike(task.job, job) for job in jobs), f"{play.call.spoken}: {task.job}"


def _alike(one: str, other: str) -> bool:
    """The same words but for a letter of one's own man."""
    pairs = list(zip(one.split(), other.split(), strict=False))
    return len(one.split()) == len(other.split()) and all(
        a == b or (len(a.strip(".,'s")) <= 2 and len(b.strip(".,'s")) <= 2) for a, b in pairs
    )


def test_every_call_is_drawn_where_the_coach_asks(season: Season) -> None:
    asked = make_book(replace(season, every_call=True), Edition("", ""), ("",))
    shown = [e.call for page in asked.pages for e in page.entries if e.listed]
    assert sorted(shown) == sorted(play.call.spoken for play in season.plays)
    assert all(not entry.also for page in asked.pages for entry in page.entries)
