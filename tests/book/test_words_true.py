"""A protection's words and the spoken description say of each man what his play says."""

from __future__ import annotations

import re
from dataclasses import replace

from word_reading import unprotected, unsaid

from stemline.describe.spoken_play import describe
from stemline.football.field import Side
from stemline.football.offence.quarterback import MOVING
from stemline.football.play import Kind, Play, Season
from stemline.picture.ways.launch import launch_path


def test_the_protections_words_are_each_mans_own(season: Season) -> None:
    wrong = [line for play in season.plays if play.protection_words for line in unprotected(play)]
    assert "\n".join(wrong) == ""


def test_the_spoken_words_are_those_of_the_play(season: Season) -> None:
    views = [v for sheet in season.concepts for v in (*sheet.faced, *sheet.views)]
    wrong = [line for play in (*season.plays, *views) for line in unsaid(play, describe(play))]
    assert len(views) > 100
    assert "\n".join(wrong) == ""


def _launch_unsaid(play: Play) -> str:
    """What the words of a launch have other than the way that is drawn and the run he showed."""
    passer = play.passer
    moving = [step for step in play.feet if step.name in MOVING]
    if passer is None or not moving:
        return ""
    own = play.assignment(passer.label)
    drawn = launch_path(play, passer.snap, -12.0)
    path = drawn[1] if drawn is not None else own.path
    assert path is not None
    way = Side.RIGHT if path.end.x > 0 else Side.LEFT
    words = own.job if play.kind is Kind.RUN else moving[-1].words
    away = " away from the " in words
    said = re.findall(r"\b(left|right)\b", words)
    by_run = away and play.kind is Kind.RUN  # a call to the left is told nothing else
    wrong = said != ([] if by_run else [way.word])
    if wrong or away != (moving[-1].name == "boot" and play.toward is way.other):
        return f"{play.call.spoken}: {words} (drawn {way.word}, the run {play.toward})"
    if play.kind is Kind.RUN and "throw" in words:
        return f"{play.call.spoken}: {words} (the ball is gone)"
    return ""


def test_a_launch_is_said_as_it_is_drawn(season: Season) -> None:
    views = [v for sheet in season.concepts for v in (*sheet.faced, *sheet.views)]
    plays = [p for p in (*season.plays, *views) if any(s.name in MOVING for s in p.feet)]
    assert len(plays) > 20
    assert {p.kind for p in plays} == {Kind.RUN, Kind.PASS}
    assert "\n".join(filter(None, map(_launch_unsaid, plays))) == ""


# What is said otherwise is told.


def _with(play: Play, old: str, new: str) -> Play:
    words = play.protection_words
    assert old in words
    return replace(play, protection_words=words.replace(old, new))


def test_another_protection_is_told(season: Season) -> None:
    slide = next(p for p in season.plays if "Scan: helper" in p.protection_words and _helps(p))
    assert any(unprotected(_with(slide, "Scan: helper", "Edge: helper")))
    both = next(p for p in season.plays if p.protection_words.startswith("Slide: centre"))
    other = both.protection_words.replace("Slide", "?").replace("Man", "Slide").replace("?", "Man")
    assert any(unprotected(replace(both, protection_words=other)))


def _helps(play: Play) -> bool:
    return any(task.job.startswith("Scan") for task in play.assignments)


def test_other_words_of_a_play_are_told(season: Season) -> None:
    """Words of a call in which one thing is another: each man's job, path and motion, the reads."""
    play = next(p for p in season.plays if p.reads and p.pressure and p.call.motion)
    words = describe(play)
    assert not list(unsaid(play, words))
    mine = [t for t in play.assignments if t.role and t.job and t.path is not None]
    others = [replace(t, job="Sit down.") for t in mine]
    others += [replace(t, path=t.path.mirrored()) for t in mine if t.path and abs(t.path.end.x) > 1]
    others += [
        replace(t, motion=replace(t.motion, words="waves")) for t in mine if t.motion is not None
    ]
    assert len(others) > 8
    for task in others:
        tasks = tuple(task if t.man == task.man else t for t in play.assignments)
        assert any(unsaid(replace(play, assignments=tasks), words)), task
    for changed in (
        replace(play, reads=play.reads[::-1]),
        replace(play, pressure=play.pressure[::-1] if len(play.pressure) > 1 else ()),
        replace(play, feet=play.feet[1:]),
        replace(play, shape=(9, 0)),
    ):
        said = list(unsaid(play, describe(changed)))
        assert said, changed.call
