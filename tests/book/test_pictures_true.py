"""The picture of a call says of each man what his play says, ours and theirs.

Passes by their first and last call and against looks, every run, and runs against other looks.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace

import pytest
from keeper_reading import KEEPS, keeper_off
from picture_reading import THEME, duties_off, letters_of, lines_of, off
from shifting import shifted
from word_reading import BACKS

from stemline.book.content.backfield import backfield
from stemline.football.defenders import Defender, DutyKind
from stemline.football.play import Assignment, Branch, Kind, Play, Season
from stemline.geometry.curves import points_of
from stemline.picture.picture import picture
from stemline.picture.scene.scene import Item, Point, Scene, Stroke, TextRun
from stemline.theme import Size


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
    drawn = [(play, _drawn(play)) for play in runs]
    wrong = [line for drew in drawn for line in (*off(*drew), *keeper_off(*drew))]
    assert "\n".join(wrong) == ""


def _keeping(season: Season) -> list[Play]:
    """Runs on which a key has the quarterback keep the ball, a call of each concept and tags."""
    found: dict[object, Play] = {}
    for play in season.plays:
        if any(choice[0] in KEEPS for key in play.keys for choice in key.choices):
            found.setdefault((play.call.concept, play.call.tags), play)
    return list(found.values())


def test_a_quarterback_who_keeps_the_ball_by_a_key_is_drawn_so(season: Season) -> None:
    keeping = [play for play in _keeping(season) if play.kind is Kind.RUN]
    assert sum(len(p.assignment(p.passer.label).branches) for p in keeping if p.passer) > 1
    drawn = [(play, size) for play in keeping for size in Size]
    wrong = [line for p, size in drawn for line in keeper_off(p, picture(p, size, THEME))]
    assert "\n".join(wrong) == ""


def test_a_trick_behind_the_line_is_drawn_close_too_with_its_moments(season: Season) -> None:
    """The ball changes hands twice within a few yards in one pass of each book, and in no other."""
    passes = [play for play in season.plays if play.kind is Kind.PASS]
    made = [(play, entry) for play in passes for entry in backfield(play, "x", season.level)]
    assert {play.call.concept for play, _ in made} == {"Flea Flicker"}
    for play, entry in made:
        scene = picture(entry.play, Size.THUMB, THEME)
        assert scene.scale > 2 * picture(play, Size.THUMB, THEME).scale
        assert {task.man for task in entry.play.assignments} < {
            task.man for task in play.assignments
        }
        drawn = {
            (man, f"{line.times[-1]:.1f}")
            for man, mine in lines_of(scene).items()
            for what, line in mine.items()
            if what in ("mesh-1", "toss")
        }
        assert set(re.findall(r"(\w+) (?:has it )?at (\d\.\d) s", entry.aside)) == drawn


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


def test_a_quarterback_who_keeps_and_is_drawn_otherwise_is_told(season: Season) -> None:
    play = next(p for p in _keeping(season) if p.passer and p.assignment(p.passer.label).branches)
    assert play.passer is not None and play.defence is not None
    scene, task = _drawn(play), play.assignment(play.passer.label)
    assert not list(keeper_off(play, scene))
    way = task.branches[0]
    line = lines_of(scene)[task.man]["branch-1"]
    middle = points_of(line.segments)[len(points_of(line.segments)) // 2]
    met = replace(play.defence.defenders[0], at=middle)
    spoilt = {
        "0 are drawn": (play, _drawn(_other(play, replace(task, branches=())))),
        "keeps on 0 ways": (_other(play, replace(task, branches=())), scene),
        "no key has him keep": (replace(play, keys=()), scene),
        "drawn to": (play, _drawn(_other(play, _moved(task, way, Point(3.0, 0.0))))),
        "no moments": (play, _without(scene, line, replace(line, times=()))),
        "goes back": (play, _without(scene, line, replace(line, times=line.times[::-1]))),
        "no arrow": (play, _without(scene, line, replace(line, head=()))),
        "runs through": (play, _lettered(scene, play, met)),
    }
    for words, (other, picture_) in spoilt.items():
        assert any(words in said for said in keeper_off(other, picture_)), words


def _moved(task: Assignment, way: Branch, by: Point) -> Assignment:
    return replace(task, branches=(replace(way, path=shifted(way.path, by)),))


def _without(scene: Scene, old: Stroke, new: Stroke) -> Scene:
    """The scene with one line of it in the place of another."""
    layers = tuple(
        replace(layer, items=tuple(new if item is old else item for item in layer.items))
        for layer in scene.layers
    )
    return replace(scene, layers=layers)


def _lettered(scene: Scene, play: Play, met: Defender) -> Scene:
    """The scene with the letter of one defender moved to where he is in ``met``."""
    at = letters_of(play, scene)[met.label]

    def moved(item: Item) -> Item:
        if isinstance(item, TextRun) and item.span == met.span and item.text == met.label:
            return replace(item, at=item.at + (met.at - at))
        return item

    layers = tuple(replace(layer, items=tuple(map(moved, layer.items))) for layer in scene.layers)
    return replace(scene, layers=layers)


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
