"""What coaches hold to be true of a concept against a coverage, against the tables of both books.

A sign says who is there for the passer, or who is not: never by how many yards, since no text
tells that. Each stands on the text beside it; what respected coaches differ about is not here.
The looks of the books: Over Three and Stack Three drop three deep; Under and Tite Quarters four;
Odd Two two, with corners who squat; Bear One is man with a safety, Even Two Man man under two,
Fire Three five rushers and three deep, Zero six and nobody deep.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

import pytest
from resolve.shipped_books import shipped
from together import together

from stemline.football.field import BallSpot
from stemline.football.timing.clock import read_clock
from stemline.football.timing.coverage import Against, Cover, Separation
from stemline.football.timing.coverage import against as covered
from stemline.football.timing.levels import HIGH_SCHOOL

HERONS, LANTERNS = "saltmarsh-herons", "cedar-flats-lanterns"
THREE, FOUR = ("Over Three", "Stack Three"), ("Under Quarters", "Tite Quarters")
TWO, ONE, TWO_MAN, FIRE, ZERO = (
    ("Odd Two",), ("Bear One",), ("Even Two Man",), ("Fire Three",), ("Zero",),
)  # fmt: skip

QUICK = "Brown, Basic approach to three-step passing, 2005"
MULTIPLE = "Brown, Divide route in the multiple smash concept, 2008"
SMASH = "Brown, The smash route against man coverage, 2009"
TRIANGLES = "Brown, Snag, stick and the importance of triangles, undated"
FIRE_ZONES = "Brown, Fire zone-blitzes, 2009"
CURL = "Hoover, Curl-flat, 2010"
READS = "Jenkins, Ten basic QB reads, undated"
BEATERS = "Move the Chains, Cover 1 and cover 3 beaters, and Quarters coverage, 2010"
SHALLOW = "the air-Coryell blog, Shallow cross concepts, 2009"
SAFETY = "Sharik in Brown, Wisdom on how to try to defend four verticals with cover 3, undated"
HITCH = "Win with the Pass, All hitch, undated"
LEVELS = "Levels, 2010"
DAGGER = "Weekly Spiral, Dagger, 2021"
SHEET = "Football Film Room, Dagger, 2023"
SCISSORS = "Peters, How pro teams are using scissors, 2017"
POINTS = "American Football Monthly, Attacking quarters through 6 stress points, 2001"
UNIVERSAL = "Fisher, The universal route that is good versus any coverage, undated"
SPACING = "Reading coverages (slides), undated"
BUBBLE = "The bubble screen: a high percentage perimeter attack, undated"
SQUAT = "Cover 2 beaters (a coach's document), undated"
SCREEN = "Purdum, Point counterpoint: the screen pass, undated"
SPRINT = "Sprint-out part two, 2011"
BOOT = "Borges quoted on the naked, 2012"
MESH = "QB Advantage, 92 mesh, 2014"
MILLS = "Brown, The science of the post: going deep with Mills, 2017"
SEAM = "Blitzology, Fire zone coverage series, 2010"
CUSTOM = "common practice, no published source"


@dataclass(frozen=True)
class Sign:
    """``reads`` of a concept in ``books`` against ``looks``; ``wide`` also asks for yards."""

    concept: str
    books: tuple[str, ...]
    looks: tuple[str, ...]
    reads: tuple[str, ...]
    source: str

    def __str__(self) -> str:
        return f"{self.concept}-{self.looks[0]}-{'-'.join(self.reads)}"


BOTH, H, L = (HERONS, LANTERNS), (HERONS,), (LANTERNS,)

OPEN = (  # one of the reads is open, or beaten by a good throw: the call has an answer
    Sign("Stick", BOTH, THREE, ("flat", "stick"), TRIANGLES),
    Sign("Stick", BOTH, FOUR, ("flat",), READS),
    Sign("Stick", BOTH, FIRE, ("flat", "stick"), FIRE_ZONES),
    Sign("Slants", H, THREE, ("second", "outside"), QUICK),
    Sign("Slants", H, ZERO, ("arrow", "second"), READS),
    Sign("Slants", H, TWO, ("outside",), QUICK),
    Sign("Slants", H, FOUR, ("outside",), CUSTOM),
    Sign("Hitches", L, THREE, ("outside",), HITCH),
    Sign("Hitches", L, FOUR, ("outside",), BEATERS),
    Sign("Curl Flat", L, THREE, ("curl", "flat"), CURL),
    Sign("Curl Flat", L, FOUR, ("flat",), READS),
    Sign("Smash", BOTH, TWO, ("flag",), MULTIPLE),
    Sign("Smash", BOTH, ONE, ("flag",), SMASH),
    Sign("Smash", BOTH, FOUR, ("flag", "short"), POINTS),
    Sign("Smash", L, THREE, ("short",), UNIVERSAL),
    Sign("Snag", H, THREE, ("flat", "sit"), TRIANGLES),
    Sign("Snag", H, FOUR, ("flat",), READS),
    Sign("Spacing", L, THREE, ("flat", "window", "hole"), CUSTOM),
    Sign("Spacing", L, FOUR, ("flat",), SPACING),
    Sign("Spacing", L, FIRE, ("flat", "window", "hole"), CUSTOM),
    Sign("Crossers", BOTH, ONE, ("near", "far"), MESH),
    Sign("Crossers", BOTH, TWO_MAN, ("near", "far"), CUSTOM),
    Sign("Crossers", BOTH, THREE, ("near", "top", "far"), SHALLOW),
    Sign("Crossers", BOTH, ZERO, ("flat",), READS),
    Sign("Drive", H, ONE, ("drive",), SHALLOW),
    Sign("Drive", H, ZERO, ("drive",), READS),
    Sign("Drive", H, THREE, ("dig",), READS),
    Sign("Drive", H, TWO_MAN, ("drive",), CUSTOM),
    Sign("Levels", L, TWO, ("low", "dig"), LEVELS),
    Sign("Dagger", BOTH, TWO, ("dig",), DAGGER),
    Sign("Dagger", BOTH, FOUR, ("dig", "under"), SHEET),
    Sign("Flood", H, THREE, ("sail", "flat"), READS),
    Sign("Flood", H, FOUR, ("flat",), READS),
    Sign("Verticals", H, THREE, ("seam",), SAFETY),
    Sign("Four Verticals", L, THREE, ("seam",), SAFETY),
    Sign("Verticals", H, TWO, ("middle",), READS),
    Sign("Verticals", H, FIRE, ("seam",), SEAM),
    Sign("Four Verticals", L, FIRE, ("seam",), SEAM),
    Sign("Verticals", H, FOUR, ("outlet",), BEATERS),
    Sign("Four Verticals", L, FOUR, ("outlet",), BEATERS),
    Sign("Scissors", H, FOUR, ("flag", "post"), SCISSORS),
    Sign("Scissors", H, ONE, ("flag",), SCISSORS),
    Sign("Scissors", H, THREE, ("flag", "post"), SCISSORS),
    Sign("Post Wheel", L, THREE, ("wheel",), CUSTOM),
    Sign("Choice", H, ONE, ("choice",), CUSTOM),
    Sign("Choice", H, FOUR, ("choice",), CUSTOM),
    Sign("Slot Option", L, ONE, ("option",), CUSTOM),
    Sign("Bootleg", L, THREE, ("flat", "drag"), BOOT),
    Sign("Bootleg", L, FOUR, ("flat",), READS),
    Sign("Sprint Out", L, THREE, ("flat", "out"), SPRINT),
    Sign("Sprint Out", L, FOUR, ("flat",), BEATERS),
    Sign("Bubble", BOTH, THREE, ("bubble",), BUBBLE),
    Sign("Tunnel", H, ZERO, ("tunnel",), SCREEN),
    Sign("Slow Screen", BOTH, ZERO, ("screen",), CUSTOM),
    Sign("Throwback", BOTH, ZERO, ("flat", "screen"), SCREEN),
    Sign("Quick Out", L, TWO_MAN, ("quick",), CUSTOM),
    Sign("Deep Over", H, THREE, ("over",), CUSTOM),
    Sign("Deep Cross", L, THREE, ("deep",), CUSTOM),
    Sign("Sprint Out", L, ONE + TWO_MAN, ("out",), CUSTOM),
    Sign("Post Wheel", L, FOUR + TWO, ("wheel",), CUSTOM),
    Sign("Back Wheel", H, THREE + FOUR + TWO, ("wheel",), CUSTOM),
    Sign("Four Verticals", L, ONE, ("seam",), CUSTOM),
    Sign("Verticals", H, ONE, ("seam",), CUSTOM),
    Sign("Post Over", H, FOUR, ("post", "over"), MILLS),
    Sign("Post Cross", L, FOUR, ("post", "cross"), MILLS),
    Sign("Flood", H, FOUR, ("sail",), CUSTOM),
    Sign("Quick Out", L, THREE + FOUR, ("quick",), QUICK),
    Sign("Bubble", BOTH, FOUR, ("bubble",), CUSTOM),
    Sign("Curl Flat", L, FIRE, ("flat",), FIRE_ZONES),
    Sign("Drive", H, FIRE, ("drive",), CUSTOM),
    Sign("Levels", L, FOUR, ("low",), LEVELS),
    Sign("Flood", H, FIRE, ("flat",), CUSTOM),
    Sign("Snag", H, FIRE, ("sit",), SEAM),
    Sign("Hitches", L, ZERO, ("outside",), HITCH),
    Sign("Crossers", BOTH, FIRE + FOUR, ("near", "far"), CUSTOM),
    Sign("Tunnel", H, THREE + FOUR, ("tunnel",), CUSTOM),
    Sign("Choice", H, TWO, ("choice",), CUSTOM),
    Sign("Levels", L, ONE, ("low",), CUSTOM),
    Sign("Deep Over", H, ONE, ("over",), CUSTOM),
)

NOT_OPEN = (  # none of the reads is open: whoever throws it there has not seen the coverage
    Sign("Stick", BOTH, TWO, ("flat",), QUICK),
    Sign("Quick Out", L, TWO, ("quick",), QUICK),
    Sign("Goal Fade", L, TWO, ("out",), QUICK),
    Sign("Slants", H, TWO, ("arrow",), QUICK),
    Sign("Hitches", L, TWO, ("outside",), HITCH),
    Sign("Curl Flat", L, TWO, ("flat",), CURL),
    Sign("Smash", BOTH, TWO, ("short",), MULTIPLE),
    Sign("Snag", H, TWO, ("flat",), TRIANGLES),
    Sign("Spacing", L, TWO, ("flat", "hitch"), CUSTOM),
    Sign("Flood", H, TWO, ("flat",), CUSTOM),
    Sign("Sprint Out", L, TWO, ("flat",), CUSTOM),
    Sign("Bubble", BOTH, TWO, ("bubble",), SQUAT),
    Sign("Tunnel", H, TWO, ("tunnel",), CUSTOM),
    Sign("Bootleg", L, TWO, ("flat",), CUSTOM),
    Sign("Crossers", L, TWO, ("flat",), MESH),
    Sign("Verticals", H, FOUR, ("seam", "middle"), BEATERS),
    Sign("Four Verticals", L, FOUR, ("seam", "far"), BEATERS),
    Sign("Verticals", H, TWO_MAN, ("seam", "middle"), CUSTOM),
    Sign("Four Verticals", L, TWO_MAN, ("seam", "far"), CUSTOM),
    Sign("Hitches", L, TWO_MAN, ("outside",), CUSTOM),
    Sign("Smash", H, THREE, ("flag",), UNIVERSAL),
    Sign("Smash", L, THREE, ("flag",), UNIVERSAL),
    Sign("Post Wheel", L, TWO + FOUR, ("post",), CUSTOM),
    Sign("Dagger", BOTH, TWO_MAN, ("dig",), CUSTOM),
    Sign("Slants", H, TWO_MAN, ("second", "outside"), SMASH),
    Sign("Levels", L, TWO_MAN, ("low", "dig"), CUSTOM),
    Sign("Curl Flat", L, TWO_MAN, ("curl",), CUSTOM),
    Sign("Hitches", L, TWO_MAN, ("second",), CUSTOM),
    Sign("Spacing", L, ONE + TWO_MAN, ("window", "hole", "hitch"), SPACING),
    Sign("Crossers", BOTH, ONE + TWO_MAN + ZERO, ("top",), MESH),
    Sign("Snag", H, ONE + TWO_MAN, ("sit",), TRIANGLES),
    Sign("Dagger", BOTH, ZERO, ("dig", "under", "outlet"), CUSTOM),
    Sign("Scissors", H, TWO_MAN, ("post",), CUSTOM),
    Sign("Post Wheel", L, TWO_MAN, ("post",), CUSTOM),
    Sign("Post Cross", L, ZERO, ("post", "cross"), CUSTOM),
    Sign("Bootleg", L, ZERO, ("deep", "drag"), BOOT),
    Sign("Drive", H, ZERO, ("dig",), READS),
)


@cache
def book(name: str) -> Mapping[tuple[str, str], Against]:
    """Each pass of a playbook, its first call, against each of its looks."""
    made = shipped(name)
    season, _ = made.pictured()
    assert made.book is not None and season is not None
    first = {p.call.concept: p for p in reversed(season.plays) if p.reads}
    stood = {}
    for concept, call in first.items():
        for key in made.book.looks:
            order = made.calls.by_name[call.call.spoken]
            play, _ = made.play(order, BallSpot.MIDDLE, look_key=key)
            if play is not None and play.defence is not None:
                clock = read_clock(play, HIGH_SCHOOL)
                stood[concept, play.defence.name] = covered(play, clock, HIGH_SCHOOL)
    return stood


@cache
def outside_hitch(spot: BallSpot) -> Mapping[str, Separation]:
    """The outside hitch to the right, thrown from a place of the field, by look."""
    made = shipped(LANTERNS)
    season, _ = made.pictured()
    assert made.book is not None and season is not None
    call = next(p for p in season.plays if p.call.concept == "Hitches").call.spoken
    found = {}
    for key in made.book.looks:
        play, _ = made.play(made.calls.by_name[call], spot, look_key=key)
        if play is not None and play.defence is not None:
            reads = covered(play, read_clock(play, HIGH_SCHOOL), HIGH_SCHOOL).reads
            found[play.defence.name] = next(r for r in reads if r.read.read.target == "outside")
    return found


def test_a_field_hitch_from_the_far_hash_is_later_and_no_more_open() -> None:
    """Eight yards more of air: 0.35 to 0.65 s for a varsity arm, by the flight of the ball."""
    middle, far = outside_hitch(BallSpot.MIDDLE), outside_hitch(BallSpot.LEFT_HASH)
    for look in (*THREE, *FOUR, *TWO):
        later = far[look].read.air - middle[look].read.air
        assert 0.35 <= later <= 0.65, (look, later)
        order = (Cover.OPEN, Cover.TIGHT, Cover.COVERED, Cover.LATE, Cover.NEVER)
        assert order.index(far[look].cover) >= order.index(middle[look].cover), look


def covers(sign: Sign) -> dict[str, list[Cover]]:
    """How the reads of a sign are covered, by book and look."""
    found = {}
    for name in sign.books:
        for look in sign.looks:
            reads = book(name)[sign.concept, look].reads
            there = [r.cover for r in reads if r.read.read.target in sign.reads]
            assert len(there) == len(sign.reads), (name, sign)
            found[f"{name}, {look}"] = there
    return found


@together("sign", OPEN, ids=str)
def test_a_read_is_there_for_the_passer(sign: Sign) -> None:
    for where, there in covers(sign).items():
        assert {Cover.OPEN, Cover.TIGHT} & {*there}, f"{where}: {sign.source}"


@together("sign", NOT_OPEN, ids=str)
def test_a_read_is_not_open(sign: Sign) -> None:
    for where, there in covers(sign).items():
        assert Cover.OPEN not in there, f"{where}: {sign.source}"


def test_enough_of_the_signs_stand_on_a_text() -> None:
    published = [sign for sign in (*OPEN, *NOT_OPEN) if sign.source != CUSTOM]
    assert len(published) >= 15
    assert len({sign.concept for sign in published}) >= 5


@pytest.mark.parametrize("name", BOTH)
def test_never_both_men_of_a_pair_are_covered_by_one_defender(name: str) -> None:
    """Smash on a corner, curl and flat on the flat man: he has one of them (Brown, Divide route in
    the multiple smash concept, 2008; Hoover, Curl-flat, 2010)."""
    pairs: list[tuple[str, str, str, tuple[str, ...]]] = [("Smash", "flag", "short", TWO + FOUR)]
    if name == LANTERNS:
        pairs.append(("Curl Flat", "curl", "flat", THREE + FOUR))
    for concept, high, low, looks in pairs:
        for look in looks:
            reads = {r.read.read.target: r.cover for r in book(name)[concept, look].reads}
            assert reads[high] != Cover.COVERED or reads[low] != Cover.COVERED, (concept, look)


@pytest.mark.parametrize("name", BOTH)
def test_a_slow_screen_likes_pressure_and_no_screen_man_least(name: str) -> None:
    """Let them come, and throw it over them (Purdum, Point counterpoint: the screen pass)."""
    screens = [c for c in ("Slow Screen", "Tunnel", "Bubble") if (c, "Zero") in book(name)]
    for concept in screens:
        rows = {look: book(name)[concept, look] for look in (*ONE, *ZERO, *TWO)}
        assert rows["Zero"].best is not None
        first = {look: row.reads[0].cover is not Cover.COVERED for look, row in rows.items()}
        assert first["Bear One"] and (first["Zero"] or concept != "Slow Screen")


@pytest.mark.parametrize("name", BOTH)
def test_a_read_thrown_after_a_free_rusher_is_no_answer(name: str) -> None:
    for stood in book(name).values():
        if stood.rusher is not None:
            for row in (stood.best, stood.hot):
                assert row is None or row.thrown <= stood.rusher + 0.15 + 1e-9


@pytest.mark.parametrize("name", BOTH)
def test_an_answer_to_pressure_is_open_when_it_is_thrown(name: str) -> None:
    for stood in book(name).values():
        if (hot := stood.hot) is not None:
            assert hot.read.window is not None
            by = hot.arrives if hot.at.y <= 0 else hot.thrown  # behind the line he is not covered
            assert hot.read.window.opens <= by + 0.15 + 1e-9
