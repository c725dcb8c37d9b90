"""Protections in whole playbooks: what a block says, who stays in, who takes whom."""

from __future__ import annotations

import re
from dataclasses import replace
from itertools import pairwise

import pytest
from gate.pictures import BUNDLED, bundled_season
from hypothesis import given, settings
from hypothesis import strategies as st
from syrupy.assertion import SnapshotAssertion

from resolve.shipped_books import BOOKS, shipped
from resolve.texts import (
    DOUBLES_ELEVEN,
    ELEVEN,
    THREE_TWO,
    TREY,
    TWELVE,
    codes,
    compiled,
    dress,
    said,
)
from stemline.book.content.book import Edition, make_book
from stemline.book.content.kinds.protection_page import ProtectionPage
from stemline.describe.spoken_play import describe
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.football.blocking.block_names import PROTECTIONS
from stemline.football.field import BallSpot, Side
from stemline.football.play import Play
from stemline.football.timing.clock import Verdict, read_clock
from stemline.football.timing.levels import HIGH_SCHOOL
from stemline.geometry.paths import Ending
from stemline.read.ready_protections import ready
from stemline.resolve.blocking.pass_blocking import find
from stemline.resolve.expand import expand
from stemline.resolve.sheets import with_sheets
from stemline.session import Session
from stemline.source import Source

LOOKS = """
look Four
    E at 5, strong
    T at 3, strong
    N at 1, weak
    J at 5, weak
    M at 20, strong
    W at 20, weak
    C at strong #1, 8 deep
    B at weak #1, 8 deep
    S at apex, strong, 6 deep
    R at apex, weak, 6 deep
    F at middle, 13 deep
    C covers third, strong
    B covers third, weak
    F covers third, middle
    S covers flat, strong
    R covers flat, weak
    M covers hook, strong
    W covers hook, weak

look Five extends Four
    W rushes B, weak

look Six extends Five
    M rushes A, strong
    R covers hook, weak

look Seven extends Six
    R rushes contain, weak
"""

THROW = """
concept Throw
    a is strong #1
    a runs hitch
    b is strong #2
    b runs seam
    c is weak #1
    c runs slant
    d is strong #3 or weak #2 or nobody
    d runs hook
    feet quick
    read a on quick
"""


def concept(*lines: str) -> str:
    return THROW + "".join(f"    {line}\n" for line in lines)


def made(*lines: str, formation: str = DOUBLES_ELEVEN, protections: str = "") -> Session:
    name = formation.split("\n")[1].removeprefix("formation ")
    calls = dress(name, concept="Throw")
    return compiled(ELEVEN, formation, LOOKS, protections, concept(*lines), calls)


def against(result: Session, look: str, side: str = "Right") -> tuple[Play, tuple[Diagnostic, ...]]:
    """The book's one call to a side, against a look."""
    assert result.book is not None
    order = next(o for _, o in result.calls.orders if o.way.word == side.lower())
    play, found = expand(result.book, order, BallSpot.MIDDLE, look_key=look.casefold())
    assert play is not None, said(found)
    return play, found


def taken(play: Play) -> dict[str, str]:
    """Rusher by blocker, without those who only help."""
    return {a.man: h.defender for a in play.assignments for h in a.hits if h.how != "help"}


# The library.


def test_every_ready_protection_has_words_and_rules() -> None:
    assert set(ready(5)) == set(PROTECTIONS)
    for key, protection in ready(5).items():
        assert protection.line and not protection.broken, key
        assert protection.words == PROTECTIONS[key]
        assert set(protection.rules) == set(protection.jobs), key


def test_a_playbooks_own_protection_takes_the_place_of_a_ready_one() -> None:
    own = 'protection Six\n    line blocks man\n    say "Ours."\n'
    result = made("out is back", "out runs swing", "protect six", protections=own)
    assert codes(result) == ["W699"]  # told once, at the block
    play, _ = against(result, "Four")
    assert play.protection == "Six"
    assert play.protection_words == "Man: line."
    assert not play.runs("helper")


def test_a_protection_that_extends_another_keeps_what_it_does_not_say() -> None:
    result = made(
        "protect Longer",
        protections="""
protection Base
    toward weak
    line blocks slide
    helper is back
    helper blocks backside edge

protection Longer extends Base
    helper blocks scan
    hot a
""",
    )
    assert result.book is not None
    longer = find(result.book, "longer")
    assert longer is not None
    assert longer.words == "Slide: line. Scan: helper (back)."
    assert len(longer.toward) == 1
    play, _ = against(result, "Six")
    assert play.hot[0].men == ("Z",)


# Who stays in.


def test_without_a_look_there_are_only_words() -> None:
    result = made("protect six", "help is back", "help blocks inside out")
    assert result.season is not None
    play = result.season.plays[0]
    line = [play.assignment(x) for x in ("LT", "LG", "C", "RG", "RT")]
    assert all(a.job and a.path is None and not a.hits for a in line)
    assert line[2].job == "Slide away from the back: the gap on that side of you."
    assert play.unblocked == ()


def test_the_protection_says_what_a_man_without_a_role_does() -> None:
    result = made("protect six")
    assert codes(result) == []  # nobody is without a job: the back has the protection's
    play, _ = against(result, "Four")
    job = play.assignment("R")
    assert (job.role, job.job) == ("helper", "Scan: nobody comes.")
    # He is drawn where he looks from, as one whom the concept keeps in, with a look and without.
    kept = made("protect six", "help is back", "help blocks inside out")
    for path in (job.path, result.season.plays[0].assignment("R").path if result.season else None):
        own = against(kept, "Four")[0].assignment("R").path
        assert path is not None and own is not None and path.end.distance(own.end) < 0.01


def test_the_concepts_words_stand_for_a_man_it_keeps_in() -> None:
    result = made("protect six", "help is back", "help blocks inside out")
    play, _ = against(result, "Six")
    job = play.assignment("R")
    assert job.role == "help"
    assert job.job.startswith("Scan inside out: first free rusher")
    assert job.job.endswith(f"Here: {job.hits[0].defender}.")


def test_a_back_who_checks_runs_his_route_only_where_nobody_comes() -> None:
    """Who has picked up a rusher is no receiver on that snap until he is rid of him, and nothing
    tells when that is: the picture blocks, and neither clock nor words offer him (common practice:
    a check release is "block, then go" and his read is skipped when his man comes)."""
    text = concept("protect six", "out is back", "out runs check").replace(
        "read a on", "read out on"
    )
    calls = dress(DOUBLES_ELEVEN.split("\n")[1].removeprefix("formation "), concept="Throw")
    result = compiled(ELEVEN, DOUBLES_ELEVEN, LOOKS, text, calls)
    assert codes(result) == []
    four, _ = against(result, "Four")
    six, _ = against(result, "Six")
    assert six.unblocked == ()
    job = six.assignment("R")
    assert [h.how for h in job.hits] == ["scan"]
    assert job.job.endswith(f"Here: block {job.hits[0].defender}, no route.")
    assert job.path is not None and job.path.ending is Ending.BLOCK
    assert [read.men for read in six.reads] == [()]
    assert read_clock(six, HIGH_SCHOOL).reads[0].verdict is Verdict.NOBODY
    assert "Reads:" not in describe(six)
    free = four.assignment("R")
    assert free.path is not None and free.path.ending is not Ending.BLOCK
    assert [read.men for read in four.reads] == [("R",)]


def test_a_helper_who_is_sent_out_is_told_and_not_counted() -> None:
    result = made("protect six", "out is back", "out runs swing")
    assert codes(result) == ["W690"]
    play, _ = against(result, "Six")
    assert len(play.unblocked) == 1
    assert play.assignment("R").hits == ()


def test_of_two_backs_the_one_who_stays_in_is_the_helper() -> None:
    two = THREE_TWO.replace("S at call, between H and Z", "F at call, 2 outside ball, 5 deep //")
    two = "\n".join(line.split(" //")[0] for line in two.split("\n"))
    for stays, goes in (("strong", "weak"), ("weak", "strong")):
        text = concept("protect six", f"go is {goes} back", "go runs swing", f"in is {stays} back",
                       "in blocks inside out")  # fmt: skip
        result = compiled(TWELVE, two, text, dress("Three Two", concept="Throw"))
        assert "W690" not in codes(result), said(result.diagnostics)


def test_a_protection_needs_its_men() -> None:
    empty = DOUBLES_ELEVEN.replace(
        "R at away, 2 outside ball, 5 deep", "R at call, 1 outside tackle"
    )
    result = made("e is weak #2", "e runs hook", "protect six", formation=empty)
    assert codes(result) == ["E695"]
    assert "no back is behind the ball" in said(result.diagnostics)[0]


def test_a_tight_end_by_place_blocks_where_the_concept_sends_him_nowhere() -> None:
    ends = "protection Wall\n    line blocks man\n    left end, right end blocks edge\n"
    result = made("protect Wall", formation=TREY, protections=ends)
    play, _ = against(result, "Four")
    # The third from outside is the tight end, and the concept has a hook for him.
    assert "Y" not in taken(play)
    free = made("d is nobody when 3x1", "protect Wall", formation=TREY, protections=ends)
    play, _ = against(free, "Four")
    assert play.assignment("Y").job.startswith("Edge: ")


@pytest.mark.parametrize("block", ["man", "slide"])
def test_a_block_of_the_line_is_a_scan_for_a_man_behind_it(block: str) -> None:
    wall = f"protection Wall\n    line blocks man\n    helper is back\n    helper blocks {block}\n"
    play, _ = against(made("protect Wall", protections=wall), "Six")
    assert play.unblocked == ()
    assert [h.how for h in play.assignment("R").hits] == ["scan"]


def test_a_line_of_three_has_no_tackles_to_speak_of() -> None:
    wall = "protection Wall\n    centre, each guard blocks slide\n"
    ends = ("X", "Y", "F", "R", "Q")
    spots = ("away, numbers, on line", "call, end, on line", "ball, 3 deep", "ball, 6 deep",
             "ball, under centre")  # fmt: skip
    men = "".join(f"    {m} at {spot}\n" for m, spot in zip(ends, spots, strict=True))
    text = "concept Throw\n    each #1 runs go\n    protect Wall\n\ndress Throw\n    in Pro\n"
    for code, told in (("eight-man", []), ("high school", ["E694"])):
        head = f"playbook Threes\n    version 1\n    code {code}\n"
        made = Session([Source("t.play", f"{head}\nformation Pro\n{men}\n{wall}\n{text}")], "t")
        assert [d.code for d in made.diagnostics if d.code == "E694"] == told


# Which way.

WAYS = """
protection Slide
    toward {}
    line blocks slide
"""


@pytest.mark.parametrize(
    ("way", "right", "left"),
    [
        ("call", Side.RIGHT, Side.LEFT),
        ("away", Side.LEFT, Side.RIGHT),
        ("left", Side.LEFT, Side.LEFT),
        ("weak", Side.LEFT, Side.RIGHT),
        ("back", Side.LEFT, Side.RIGHT),
        ("away from back", Side.RIGHT, Side.LEFT),
        ("tight end", Side.RIGHT, Side.LEFT),
        ("away from tight end or call", Side.LEFT, Side.RIGHT),
        ("launch", Side.RIGHT, Side.LEFT),
        ("away from launch", Side.LEFT, Side.RIGHT),
    ],
)
def test_which_way_a_slide_goes(way: str, right: Side, left: Side) -> None:
    result = made("protect Slide", formation=TREY, protections=WAYS.format(way))
    assert against(result, "Four", "Right")[0].toward is right
    assert against(result, "Four", "Left")[0].toward is left


def test_a_way_without_its_man_is_the_next_one() -> None:
    result = made("protect Slide", protections=WAYS.format("tight end or weak"))
    assert against(result, "Four")[0].toward is Side.LEFT
    result = made("protect Slide", protections=WAYS.format("tight end"))
    assert against(result, "Four")[0].toward is Side.RIGHT  # the called side, where nothing is left


# Against a look.


def test_every_declared_rusher_has_one_owner_or_is_named() -> None:
    for protection in PROTECTIONS:
        result = made(f"protect {protection}", formation=TREY)
        for look in ("Four", "Five", "Six", "Seven"):
            play, _ = against(result, look)
            assert play.defence is not None
            owned = [h.defender for a in play.assignments for h in a.hits if h.how != "help"]
            assert len(owned) == len(set(owned))
            if protection != "screen":  # there rushers are let by
                rush = {d.label for d in play.defence.rushers}
                assert set(owned) | set(play.unblocked) == rush, (protection, look)
                assert not set(owned) & set(play.unblocked)


def test_one_more_rusher_than_blockers_is_counted() -> None:
    five = made("protect five")
    assert [len(against(five, look)[0].unblocked) for look in ("Four", "Five", "Six", "Seven")] == [
        0, 0, 1, 2,
    ]  # fmt: skip
    six = made("protect six")
    assert [len(against(six, look)[0].unblocked) for look in ("Five", "Six", "Seven")] == [0, 0, 1]


def test_a_slide_takes_gaps_and_a_man_side_men() -> None:
    play, _ = against(made("protect six"), "Six")
    assert taken(play) == {"LT": "J", "LG": "N", "C": "M", "RG": "T", "RT": "E", "R": "W"}


def test_a_blocker_has_a_short_set_that_ends_in_his_block() -> None:
    play, _ = against(made("protect six"), "Six")
    for label in ("LT", "LG", "C", "RG", "RT", "R"):
        job = play.assignment(label)
        assert job.path is not None and job.path.ending is Ending.BLOCK
        assert job.path.end.y < 0
        assert job.path.end.distance(play.man(label).snap) < 4


def test_the_linemen_of_a_screen_go_out_to_the_side_of_the_throw() -> None:
    play, _ = against(made("protect screen"), "Four")
    out = [play.assignment(x).path for x in ("RG", "C", "LG")]
    ends = [path.end for path in out if path is not None]
    assert len(ends) == 3
    assert ends[0].x > ends[1].x > ends[2].x > 0  # the first goes widest
    assert all(end.y <= 0 for end in ends)
    assert play.unblocked == ()  # let by, not free


def test_a_flip_is_the_mirror_and_not_the_picture() -> None:
    """From the middle the slide, the men and the sets are those of the other side."""
    result = made("protect six")
    right, _ = against(result, "Six", "Right")
    left, _ = against(result, "Six", "Left")
    turned = {"LT": "RT", "LG": "RG", "RT": "LT", "RG": "LG"}
    assert {turned.get(b, b): d for b, d in taken(right).items()} == taken(left)
    for label, other in turned.items():
        here, there = right.assignment(label), left.assignment(other)
        assert here.job == there.job
        assert here.path is not None and here.path.mirrored() == there.path


def test_moving_a_technique_changes_jobs_and_not_the_text() -> None:
    nose = made("protect six")
    odd = compiled(
        ELEVEN, DOUBLES_ELEVEN,
        LOOKS.replace("T at 3, strong", "T at 0").replace("N at 1", "N at 3"),
        concept("protect six"), dress("Doubles", concept="Throw"),
    )  # fmt: skip
    one, two = against(nose, "Four")[0], against(odd, "Four")[0]
    assert taken(one) != taken(two)
    assert taken(two)["C"] == "T"


def test_a_named_defender_is_looked_at_first() -> None:
    """Two linebackers come through his side: inside out it is the inner one."""
    block = """
protection Named extends Wall
    helper blocks scan{}

protection Wall
    toward call
    centre, playside guard, playside tackle blocks slide
    backside guard, backside tackle blocks man
    helper is back
    helper blocks scan

look Both extends Four
    M rushes B, weak
    W rushes contain, weak
"""
    first = {
        wants: taken(against(made("protect Named", protections=block.format(wants)), "Both")[0])[
            "R"
        ]
        for wants in ("", " near linebacker", " far linebacker > near linebacker")
    }
    assert first == {
        "": "M", " near linebacker": "W", " far linebacker > near linebacker": "M",
    }  # fmt: skip


@given(st.permutations(range(6)))
@settings(max_examples=20, deadline=None)
def test_the_order_of_the_lines_decides_nothing(order: list[int]) -> None:
    lines = (
        "toward weak",
        "centre, playside guard, playside tackle blocks slide",
        "backside guard, backside tackle blocks man",
        "helper is back",
        "helper blocks scan",
        "hot a",
    )
    block = "protection Wall\n" + "".join(f"    {lines[i]}\n" for i in order)
    play, _ = against(made("protect Wall", protections=block), "Six")
    assert taken(play) == {"RT": "E", "RG": "T", "C": "N", "LG": "W", "LT": "J", "R": "M"}


# The bundled playbooks.


@pytest.mark.parametrize("name", BOOKS)
def test_the_protections_of_the_bundled_books(name: str, snapshot: SnapshotAssertion) -> None:
    """Every protection against every look: blockers, their men, and who comes free."""
    result = shipped(name)
    season, _ = result.pictured()
    assert result.book is not None and season is not None
    sheets = with_sheets(result.book, replace(season, plays=())).protections
    assert len(sheets) >= 6
    lines = []
    for sheet in sheets:
        lines.append(f"{sheet.name}: {sheet.words}")
        for play in sheet.views:
            if play.defence is None:
                continue
            jobs = [
                f"{a.man} {'+' if h.how == 'help' else ''}{h.defender}"
                for a in play.assignments
                for h in a.hits
            ]
            free = f" | free {', '.join(play.unblocked)}" if play.unblocked else ""
            lines.append(f"  {play.defence.name}: {', '.join(jobs)}{free}")
    assert "\n".join(lines) == snapshot


@pytest.mark.parametrize("book", BUNDLED)
def test_a_protections_own_page_draws_the_way_out(book: str) -> None:
    """Where nobody is read, those who release go out to the called side, each on a way of his own
    and none of them back over the ball."""
    (sheet,) = (s for s in bundled_season(book).protections if "Set and release" in s.words)
    assert len(sheet.views) > 5
    for play in sheet.views:
        out = [a for a in play.assignments if re.search("then out|nd release", a.job)]
        assert len(out) == 3
        ends = [a.path.end.x for a in out if a.path is not None]
        side = play.call.side.value
        assert len(ends) == 3 and all(x * side > 3 for x in ends), play.against
        assert all(b - a > 1.5 for a, b in pairwise(sorted(ends)))


def test_a_back_who_checks_is_told_whom_the_protection_names() -> None:
    """In his job, and on the protection's page in a column, though no look sends that man."""
    block = """
protection Edge Check
    line blocks big on big
    helper is back
    helper blocks scan overhang
"""
    lines = ("out is back", "out runs check then shoot weak", "protect Edge Check")
    calls = dress("Doubles", concept="Throw")
    quiet = LOOKS.partition("look Five")[0]
    result = compiled(ELEVEN, DOUBLES_ELEVEN, quiet, block, concept(*lines), calls)
    season, _ = result.pictured()
    assert result.book is not None and season is not None
    for play in season.plays:
        (job,) = (a.job for a in play.assignments if a.role == "out")
        assert job == "Check the overhang, then shoot weak."
    page = make_book(with_sheets(result.book, season), Edition("", ""), ()).of(ProtectionPage)[0]
    assert page.fronts is not None
    assert page.fronts.men[-1] == ("R", "helper")
    assert [row.blocks[-1] for row in page.fronts.rows] == ["nobody comes"]
