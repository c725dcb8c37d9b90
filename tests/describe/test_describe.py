"""The picture said in words."""

from __future__ import annotations

from dataclasses import replace

import pytest
from picture.sample_plays import ALL, counter, quads
from picture.sample_runs import look_page, outside_zone, power, slide, unbalanced, veer
from syrupy.assertion import SnapshotAssertion

from stemline.describe.phrases import route
from stemline.describe.spoken_play import describe
from stemline.football.field import BallSpot
from stemline.football.play import Hot, Key, Play
from stemline.geometry.paths import Ending, Leg, Path, Point
from stemline.source import NOWHERE

EVERY = [*ALL.values(), power(), slide(), veer(), outside_zone(), unbalanced(), look_page()]


def lines(play: Play, duties: bool = False) -> str:
    return describe(play, duties).replace(". ", ".\n")


def test_a_pass(snapshot: SnapshotAssertion) -> None:
    assert lines(quads()) == snapshot


def test_a_run(snapshot: SnapshotAssertion) -> None:
    assert lines(counter()) == snapshot


def test_a_run_against_a_look(snapshot: SnapshotAssertion) -> None:
    assert lines(outside_zone()) == snapshot


def test_a_look(snapshot: SnapshotAssertion) -> None:
    assert lines(look_page(), duties=True) == snapshot


def test_a_protection(snapshot: SnapshotAssertion) -> None:
    assert lines(slide()) == snapshot


def test_an_option(snapshot: SnapshotAssertion) -> None:
    assert lines(veer()) == snapshot


@pytest.mark.parametrize("play", EVERY, ids=lambda p: p.call.spoken)
def test_every_man_is_named(play: Play) -> None:
    words = set(describe(play).replace(",", " ").replace(":", " ").replace(".", " ").split())
    assert {man.label for man in play.men if man.position.interior} <= words
    assert {task.man for task in play.assignments} <= words


@pytest.mark.parametrize("play", EVERY, ids=lambda p: p.call.spoken)
def test_it_can_be_read_out(play: Play) -> None:
    """Plain sentences: no doubled stops, no empty parts, each begun with a capital or a label."""
    said = describe(play, duties=True)
    for wrong in ("..", ";;", ": ;", "; .", "  ", "None", "()", ":.", ",,", " ,", " 1 yards"):
        assert wrong not in said, wrong


def test_a_man_of_theirs_is_said_without_a_mark() -> None:
    """A mark in words becomes markup on a page, which would end an image's words there."""
    play = look_page()
    assert play.defence is not None
    first, *rest = play.defence.defenders
    assert first.duty is not None
    round_him = replace(first, duty=replace(first.duty, words="rush A gap, behind [T]"))
    behind = replace(play, defence=replace(play.defence, defenders=(round_him, *rest)))
    said = describe(behind, duties=True)
    assert "behind T" in said and "[" not in said
    assert said.endswith(".")
    assert all(line[0].isupper() or line[0].isdigit() for line in said.split(". "))


def test_the_reads_come_before_the_men_and_their_men_in_order() -> None:
    said = describe(quads())
    first, second = (said.index(f"{r.men[0]} as ") for r in quads().reads[:2])
    assert said.index("Reads: 1 ") < first < second < said.index("Protection")


def test_sides_are_named_by_the_field_from_a_hash() -> None:
    assert "field to the right" in describe(quads())
    assert "number 1 right, to the field" in describe(quads())
    assert "number 1 left, to the boundary" in describe(quads())
    middle = replace(quads(), field=replace(quads().field, spot=BallSpot.MIDDLE))
    assert "ball in the middle" in describe(middle)
    assert "to the field" not in describe(middle)


def test_a_route_says_which_way_it_goes() -> None:
    said = describe(quads())
    assert "runs across the ball to" in said
    assert "settles inside at" in said or "settles at" in said


def test_a_motion_says_both_places() -> None:
    said = describe(quads())
    assert "X as under" in said
    assert "lines up 14 yards left of the ball, on the line; before the snap: Tuck" in said
    assert "then he is number 1 left, to the boundary, 8.5 yards from the ball" in said


def test_what_is_thrown_against_one_too_many() -> None:
    hot = (Hot("settle", "a sixth comes", ("H",), NOWHERE),)
    assert "Hot: settle (H) when a sixth comes." in describe(replace(quads(), hot=hot))


def test_a_partner_of_a_read_is_named() -> None:
    reads = (replace(quads().reads[0], partner="dig", partner_man="S"), *quads().reads[1:])
    said = describe(replace(quads(), reads=reads))
    assert "1 flat (R) with dig (S)" in said
    assert "S as " in said and ", with read 1, lines up" in said


def test_a_key_tells_what_is_done_and_when() -> None:
    key = Key("end man on line", "E", (("give", "", "he stays"), ("pull", "", "")), NOWHERE)
    said = describe(replace(counter(), keys=(key,)))
    assert "Key: end man on line (E): give when he stays, pull." in said


def test_the_look_has_its_duties_only_where_they_are_drawn() -> None:
    look = look_page().defence
    assert look is not None
    man = next(d for d in look.defenders if d.duty and not d.rushes)
    assert man.duty is not None
    assert man.duty.words in describe(look_page(), duties=True)
    assert man.duty.words not in describe(look_page())


def test_linemen_with_one_job_are_said_together() -> None:
    play = power()
    tasks = tuple(
        replace(t, job="Slide to the call", path=None, hits=(), climb=None)
        for t in play.assignments
        if play.man(t.man).interior
    )
    said = describe(replace(play, assignments=tasks))
    assert "LT, LG, C, RG and RT: slide to the call." in said
    apart = (replace(tasks[0], job="Man on him"), *tasks[1:])
    said = describe(replace(play, assignments=apart))
    assert "LT: man on him. LG, C, RG and RT: slide to the call." in said


def test_who_goes_and_then_stands_has_not_stayed() -> None:
    """A quarterback drops before a draw; a man who stands where he lined up stays."""
    start = Point(0, -5)
    dropped = Path(start, (Leg(Point(-1, -7.5)),), Ending.STAND)
    assert route(dropped, start) == "drops to 7.5 yards behind the line, 1 yard left of the ball"
    assert route(Path(start, (), Ending.STAND), start).startswith("stays at 5 yards behind")
    led = Path(start, (Leg(Point(2, -4)),), Ending.STAND)
    assert route(led, start).startswith("moves to 4 yards behind")
