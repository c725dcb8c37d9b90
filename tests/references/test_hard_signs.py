"""Signs that no respected coach disputes: one thing of a look changes, and the answer with it.

A sign says which way a read goes, never by how much. The playbooks' own calls stand against their
own looks and against the same with one thing changed. Where no text is named beside a sign it is
common practice, with no published source.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from functools import cache

import pytest
from resolve.shipped_books import PLAYBOOKS, shipped

from references.test_answers import BOTH, FOUR, HERONS, LANTERNS, THREE, TWO, book
from stemline.football.field import BallSpot
from stemline.football.timing.clock import read_clock
from stemline.football.timing.coverage import OPEN, Cover, Separation
from stemline.football.timing.coverage import against as covered
from stemline.football.timing.levels import HIGH_SCHOOL, PlayingLevel
from stemline.outside.project import read_files
from stemline.session import Session
from stemline.source import Source

# Odd Two with the middle linebacker deep; with corners who sink; Bear One with corners outside.
CHANGED = """
look Tampa extends Odd Two
    M covers third, middle

look Sinks extends Odd Two
    C covers third, strong
    B covers third, weak

look Outside extends Bear One
    C at strong #1, 1 outside, 3 deep
    B at weak #1, 1 outside, 3 deep or outside end, weak, 4 deep
    R at strong #2, 1 outside, 5 deep or tackle, strong, 5 deep
    H at strong #2, 1 outside, 6 deep or tackle, strong, 6 deep
"""
_ORDER = (Cover.OPEN, Cover.TIGHT, Cover.COVERED, Cover.LATE, Cover.NEVER)


@cache
def changed(name: str) -> Session:
    sources = read_files(PLAYBOOKS / name).sources
    man = "    H at" if name == LANTERNS else "    R at"  # whom the book's Bear One does not have
    text = "".join(s for s in CHANGED.splitlines(keepends=True) if not s.startswith(man))
    return Session([*sources, Source("changed.play", text)], name)


@cache
def reads(
    name: str,
    concept: str,
    look: str,
    level: PlayingLevel = HIGH_SCHOOL,
    spot: BallSpot = BallSpot.MIDDLE,
) -> Mapping[str, Separation]:
    """The reads of a concept's first call against a look, by target."""
    made = changed(name)
    season, _ = shipped(name).pictured()
    assert made.book is not None and season is not None
    call = next(p for p in season.plays if p.call.concept == concept).call.spoken
    key = next(k for k, value in made.book.looks.items() if value.name == look)
    play, _ = made.play(made.calls.by_name[call], spot, look_key=key)
    assert play is not None and play.defence is not None
    found = covered(play, read_clock(play, level), level).reads
    return {r.read.read.target: r for r in found}


def yards(name: str, concept: str, look: str, target: str) -> float:
    return reads(name, concept, look)[target].yards or 0.0


@pytest.mark.parametrize("name", BOTH)
def test_corners_who_sink_open_the_hitch_and_close_the_corner_route(name: str) -> None:
    """Smash: a corner sits and the route behind him is open, or sinks and the hitch is (Brown,
    Divide route in the multiple smash concept, 2008)."""
    sits, sinks = reads(name, "Smash", "Odd Two"), reads(name, "Smash", "Sinks")
    assert sits["flag"].cover is Cover.OPEN and sits["short"].cover is Cover.COVERED
    assert sinks["short"].cover is Cover.OPEN
    assert yards(name, "Smash", "Sinks", "flag") < yards(name, "Smash", "Odd Two", "flag")


@pytest.mark.parametrize(
    "spot", [BallSpot.MIDDLE, BallSpot.RIGHT_HASH], ids=["middle", "near hash"]
)
@pytest.mark.parametrize(
    ("name", "concept", "target"),
    [
        (LANTERNS, "Hitches", "outside"),
        (LANTERNS, "Stick", "flat"),
        (LANTERNS, "Quick Out", "quick"),
        (LANTERNS, "Spacing", "flat"),
        (LANTERNS, "Pop", "flat"),
        (HERONS, "Stick", "flat"),
        (HERONS, "Snag", "flat"),
        (HERONS, "Pop", "flat"),
        (HERONS, "Pylon", "out"),
    ],
)
def test_nothing_short_is_open_in_front_of_a_corner_who_squats(
    name: str, concept: str, target: str, spot: BallSpot
) -> None:
    """No quick game to the corner who is the flat man (Brown, Basic approach to three-step passing,
    2005). From the far hash he stands with the widest man, twenty yards from the slot's throw: that
    throw is not in front of him."""
    assert reads(name, concept, "Odd Two", spot=spot)[target].cover is not Cover.OPEN


@pytest.mark.parametrize(
    ("name", "concept", "target"),
    [
        (LANTERNS, "Crossers", "top"),
        (LANTERNS, "Slot Option", "option"),
        (LANTERNS, "Spacing", "hole"),
        (HERONS, "Choice", "choice"),
    ],
)
def test_a_middle_linebacker_who_runs_deep_leaves_who_sits_over_the_ball(
    name: str, concept: str, target: str
) -> None:
    """Fourth and Short, "Tampa 2, part 1", 2011."""
    deep, home = (yards(name, concept, look, target) for look in ("Tampa", "Odd Two"))
    assert deep > home + 1


@pytest.mark.parametrize(
    ("name", "concept", "target"),
    [(HERONS, "Verticals", "middle"), (LANTERNS, "Four Verticals", "seam")],
)
def test_a_middle_linebacker_who_runs_deep_closes_the_middle_behind_him(
    name: str, concept: str, target: str
) -> None:
    deep, home = (yards(name, concept, look, target) for look in ("Tampa", "Odd Two"))
    assert deep < home - 1


def test_a_quick_throw_does_not_know_whether_he_runs_deep() -> None:
    deep, home = (reads(LANTERNS, "Quick Out", look) for look in ("Tampa", "Odd Two"))
    assert home["quick"].read.thrown < 1.5
    assert [r.cover for r in deep.values()] == [r.cover for r in home.values()]


@pytest.mark.parametrize(
    ("name", "concept", "target"),
    [
        (LANTERNS, "Levels", "low"),
        (LANTERNS, "Levels", "dig"),
        (LANTERNS, "Curl Flat", "curl"),
        (LANTERNS, "Crossers", "top"),
        (LANTERNS, "Deep Cross", "dig"),
        (LANTERNS, "Back Angle", "dig"),
        (LANTERNS, "Dagger", "dig"),
        (LANTERNS, "Quick Out", "slant"),
        (HERONS, "Drive", "dig"),
        (HERONS, "Snag", "dig"),
    ],
)
def test_two_man_is_worse_for_who_breaks_in_than_one_outside_of_him(
    name: str, concept: str, target: str
) -> None:
    trail, outside = (yards(name, concept, look, target) for look in ("Even Two Man", "Outside"))
    assert trail < outside - 0.2


def test_against_two_man_who_keeps_running_is_better_off_than_who_breaks_in() -> None:
    drive = reads(HERONS, "Drive", "Even Two Man")
    assert (drive["drive"].yards or 0) > (drive["dig"].yards or 0)
    out = reads(LANTERNS, "Quick Out", "Even Two Man")
    assert (out["quick"].yards or 0) > (out["slant"].yards or 0)


@pytest.mark.parametrize("name", BOTH)
def test_a_faster_ball_takes_no_open_read_away(name: str) -> None:
    """Of those by half a yard and more: less is nothing that a plan on paper can tell."""
    arm = {key: getattr(HIGH_SCHOOL, key) for key in ("ball", "deep")}
    fast = replace(
        HIGH_SCHOOL, **{key: replace(known, value=known.value * 1.1) for key, known in arm.items()}
    )
    for (concept, look), stood in book(name).items():
        faster = reads(name, concept, look, fast)
        for read in stood.reads:
            if read.cover is Cover.OPEN and (read.yards or 0) >= OPEN + 0.5:
                assert faster[read.read.read.target].cover is Cover.OPEN, (concept, look)


def test_one_man_fewer_under_never_hurts_spacing() -> None:
    fire, base = (reads(LANTERNS, "Spacing", look) for look in ("Fire Three", "Over Three"))
    for target, read in base.items():
        assert _ORDER.index(fire[target].cover) <= _ORDER.index(read.cover), target


def test_an_outside_mans_out_to_the_field_is_later_from_the_far_hash_and_no_more_open() -> None:
    """Eight yards more of air: 0.35 to 0.65 s for a varsity arm, by the flight of the ball."""
    for look in (*THREE, *FOUR, *TWO):
        near = reads(LANTERNS, "Sprint Out", look)["out"]
        far = reads(LANTERNS, "Sprint Out", look, spot=BallSpot.LEFT_HASH)["out"]
        assert 0.35 <= far.read.air - near.read.air <= 0.65, look
        assert _ORDER.index(far.cover) >= _ORDER.index(near.cover), look
