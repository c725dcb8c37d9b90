"""The picture of a call says of each man what his play says, ours and theirs.

Passes by their first and last call and against looks, every run, and runs against other looks.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

import pytest
from bundled import BUNDLED, season_of
from picture_reading import THEME, duties_off, lines_of, off
from shifting import shifted
from word_reading import BACKS

from stemline.football.defenders import DutyKind
from stemline.football.play import Assignment, Kind, Play, Season
from stemline.picture.picture import picture
from stemline.picture.scene.scene import Point, Scene
from stemline.theme import Size


@pytest.fixture(scope="module", params=BUNDLED)
def season(request: pytest.FixtureRequest) -> Season:
    return season_of(request.param)


def _drawn(play: Play, duties: bool = False) -> Scene:
    return picture(play, Size.FULL, THEME, duties=duties)


def _firsts(plays: tuple[Play, ...]) -> list[Play]:
    """Each pass concept's first and last call: pictures cost a tenth of a second each."""
    found: dict[str, list[Play]] = {}
    for play in plays:
        if play.kind is Kind.PASS and play.defence is None:
            found.setdefault(play.call.concept, []).append(play)
    return list({p.call.spoken: p for same in found.values() for p in (same[0], same[-1])}.values())


def _faced(season: Season) -> Iterator[Play]:
    """Each concept's first call against two looks, every look in its turn."""
    for i, sheet in enumerate(season.concepts):
        views = sheet.faced or tuple(v for v in sheet.views if v.defence is not None)
        yield from (views[(i + more) % len(views)] for more in (0, 3) if views)


def test_a_mans_line_ends_where_his_play_takes_him(season: Season) -> None:
    wrong = [line for play in _firsts(season.plays) for line in off(play, _drawn(play))]
    assert "\n".join(wrong) == ""


def test_a_run_is_drawn_as_its_play_says(season: Season) -> None:
    runs = [play for play in season.plays if play.kind is Kind.RUN]
    assert sum(len(task.hits) for play in runs for task in play.assignments) > 100
    wrong = [line for play in runs for line in off(play, _drawn(play))]
    assert "\n".join(wrong) == ""


def test_a_call_against_a_look_is_drawn_with_what_the_looks_men_do(season: Season) -> None:
    """As `draw --against` draws it: the duties of the look on a pass."""
    wrong, looks = [], set()
    for play in _faced(season):
        passes = play.kind is Kind.PASS
        scene = _drawn(play, duties=passes)
        wrong += [*off(play, scene), *(duties_off(play, scene) if passes else ())]
        assert play.defence is not None
        looks.add(play.defence.name)
    assert looks >= {sheet.name for sheet in season.looks}
    assert "\n".join(wrong) == ""


def test_a_back_who_takes_the_launchs_edge_runs_to_it(season: Season) -> None:
    wrong = [play.call.spoken for play in season.plays if _from_the_launch(play)]
    assert wrong == []


def _from_the_launch(play: Play) -> bool:
    """Whether a back blocks an edge from which the line does not move away, on the wrong side."""
    side = next((step.side for step in play.feet if step.side is not None), None)
    backs = (t for t in play.assignments if play.man(t.man).position in BACKS)
    return side is not None and any(
        task.job.startswith("Block the edge")
        and task.path is not None
        and "Reach" in play.protection_words
        and task.path.end.x * side.value <= 0
        for task in backs
    )


# What is drawn otherwise is told.


def _other(play: Play, *tasks: Assignment) -> Play:
    by_man = {task.man: task for task in tasks}
    return replace(play, assignments=tuple(by_man.get(t.man, t) for t in play.assignments))


def test_a_man_who_is_drawn_elsewhere_is_told(season: Season) -> None:
    play = next(play for play in season.plays if play.kind is Kind.RUN)
    scene = _drawn(play)
    assert not list(off(play, scene))
    blocker = next(t for t in play.assignments if t.climb is not None)
    carrier = play.assignment(play.carrier)
    hit = blocker.hits[0]
    aside = replace(hit, at=Point(hit.at.x + 1.5, hit.at.y))
    for task in (
        replace(blocker, hits=(aside, *blocker.hits[1:])),
        replace(blocker, climb=None),
        replace(carrier, hits=(hit,)),
        replace(play.assignment("X"), hits=(replace(hit, at=Point(13.0, 8.0)),)),
    ):
        wrong = list(off(_other(play, task), scene))
        assert wrong
        assert all(f": {task.man} " in line for line in wrong)
    wrong = list(off(replace(play, carrier="X"), scene))
    assert any("drawn with the ball" in line for line in wrong)
    wrong = list(off(play, _drawn(replace(play, carrier=""))))
    assert any(f": {play.carrier} " in line and "no such line" in line for line in wrong)


def test_a_man_who_follows_the_ball_and_is_drawn_beside_it_is_told(season: Season) -> None:
    play = next(p for p in season.plays if any(t.job.startswith("Follow ") for t in p.assignments))
    task = next(t for t in play.assignments if t.job.startswith("Follow "))
    assert task.path is not None
    wide = replace(task, path=shifted(task.path, Point(6.0, 0.0)))
    assert not list(off(play, _drawn(play)))
    assert any(f": {task.man} " in line for line in off(play, _drawn(_other(play, wide))))


def test_a_route_that_is_drawn_elsewhere_is_told(season: Season) -> None:
    play = _firsts(season.plays)[0]
    task = next(t for t in play.assignments if t.path is not None and t.path.end.y > 5)
    assert task.path is not None
    for path in (task.path.mirrored(), shifted(task.path, Point(0.0, -4.0))):
        wrong = list(off(play, _drawn(_other(play, replace(task, path=path)))))
        assert any(f": {task.man} " in line for line in wrong)


def test_a_man_who_gives_the_ball_back_and_is_drawn_elsewhere_is_told(season: Season) -> None:
    """Though the strokes of his mesh are no way of his, the line on which he has the ball is."""
    play, task = next(
        (p, t)
        for p in _firsts(season.plays)
        if {x.giver for x in p.exchanges if x.said} & {x.taker for x in p.exchanges if x.said}
        for lines in (lines_of(_drawn(p)),)
        for t in p.assignments
        if t.path is not None and "held" in lines.get(t.man, {})
    )
    assert task.path is not None
    assert not list(off(play, _drawn(play)))
    wide = replace(task, path=shifted(task.path, Point(4.0, 0.0)))
    wrong = list(off(play, _drawn(_other(play, wide))))
    assert any(f": {task.man} " in line and "drawn to" in line for line in wrong)


@pytest.mark.parametrize("kind", [DutyKind.RUSH, DutyKind.MAN, DutyKind.THIRD])
def test_a_defender_who_is_drawn_elsewhere_is_told(season: Season, kind: DutyKind) -> None:
    views = [view for sheet in season.concepts for view in sheet.faced]
    play, man = next(
        (view, d)
        for view in views
        if view.defence is not None
        for d in view.defence.defenders
        if d.duty is not None and d.duty.kind is kind
        if not any(hit.defender == d.label for task in view.assignments for hit in task.hits)
    )
    assert play.defence is not None and man.duty is not None
    scene = _drawn(play, duties=True)
    assert not [*off(play, scene), *duties_off(play, scene)]
    others = {
        DutyKind.RUSH: replace(man.duty, to=Point(-9.0, 0.0)),
        DutyKind.MAN: replace(man.duty, man=_farthest(play, man.duty.man)),
        DutyKind.THIRD: replace(man.duty, to=Point(-22.0, 15.0)),
    }
    for changed in (replace(man, duty=others[kind]), replace(man, at=man.at + Point(6.0, 0.0))):
        men = tuple(changed if d is man else d for d in play.defence.defenders)
        other = replace(play, defence=replace(play.defence, defenders=men))
        wrong = [*off(other, scene), *duties_off(other, scene)]
        assert any(line.startswith(man.label) or f": {man.label} " in line for line in wrong)


def _farthest(play: Play, label: str) -> str:
    his = play.man(label).snap if label else Point(0.0, 0.0)
    return max(play.men, key=lambda man: man.snap.distance(his)).label if label else ""
