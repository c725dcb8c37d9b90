"""Calls to the field and the boundary: one call is three plays, a side from each ball spot."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import pytest

from resolve.texts import CROSSERS, QUADS, THREE_TWO, TWELVE, codes, compiled, dress
from stemline.book.content.by_spot import by_spot, jobs
from stemline.book.content.drawn_calls import is_mirror
from stemline.football.field import BallSpot, Side, Way
from stemline.football.play import Play
from stemline.session import Session

LEFT, MIDDLE, RIGHT = BallSpot
SIDES = {
    ("Field", LEFT): "Right",
    ("Field", RIGHT): "Left",
    ("Boundary", LEFT): "Left",
    ("Boundary", RIGHT): "Right",
}
BY_FIELD = """
formation Wide
    X at boundary, 2 inside numbers, on line
    W at boundary, 5 outside tackle, off line
    H at field, 4 outside tackle, off line
    S at field, between H and Z, off line
    Z at field, numbers, on line
    R at boundary, 2 outside ball, 5 deep
    Q at ball, 5 deep
"""
FADE = """
tag Fade for Crossers
    boundary #1 runs fade
    keeps feet
"""
SHORT = """
tag Short for Crossers
    clear runs go
    clear runs corner when called to boundary
    keeps feet
"""


def house(side: str) -> str:
    return TWELVE.replace("house numbers", f"house middle field is {side}\n    house numbers")


def dressed(*lines: str, book: str = TWELVE, tags: str = "") -> Session:
    made = dress("Three Two", *lines, sides=False)
    return compiled(book, THREE_TWO, QUADS, BY_FIELD, CROSSERS, tags, made)


@cache
def both() -> Session:
    """The same calls by the field and by their sides, in sets of the call and of the field."""
    return dressed(
        "in Quads motion Tuck",
        "in Wide",
        "with plain, Wheel, Fade, Short",
        "to field, boundary, right, left",
        tags=f"{FADE}{SHORT}",
    )


def play(session: Session, call: str, spot: BallSpot) -> Play:
    made, _ = session.play(session.calls.by_name[call], spot)
    assert made is not None
    return made


def by_field() -> list[str]:
    return [order.spoken for _, order in both().calls.orders if order.way.by_field]


@pytest.mark.parametrize("spot", [LEFT, RIGHT])
def test_a_call_by_the_field_is_the_call_to_that_side(spot: BallSpot) -> None:
    assert len(by_field()) == 3 * 4 * 2
    for call in by_field():
        word = "Field" if " Field " in call else "Boundary"
        mine = play(both(), call, spot)
        other = play(both(), call.replace(f" {word} ", f" {SIDES[word, spot]} "), spot)
        assert mine == replace(other, call=mine.call), call
        assert (mine.call.side_word, mine.call.side) == (word.lower(), other.call.side)


def test_from_the_other_hash_it_is_its_mirror() -> None:
    for call in by_field():
        one, other = (play(both(), call, spot) for spot in (LEFT, RIGHT))
        assert is_mirror(one, other), call
        assert by_spot(one, (other,)).words == "right hash: the mirror", call


@pytest.mark.parametrize("side", ["right", "left"])
def test_from_the_middle_the_house_says_which_side_is_the_field(side: str) -> None:
    said = dressed("in Wide", "to field, boundary, right, left", book=house(side))
    for call in ("Three Two {} Crossers", "Wide {} Crossers"):
        mine = play(said, call.format("Field"), MIDDLE)
        other = play(said, call.format(side.title()), MIDDLE)
        assert mine == replace(other, call=mine.call)
        assert play(said, call.format("Boundary"), MIDDLE).call.side is Side[side.upper()].other


def test_where_the_house_says_nothing_it_is_the_right_side() -> None:
    assert play(both(), "Wide Field Crossers", MIDDLE).call.side is Side.RIGHT
    assert play(both(), "Wide Boundary Crossers", MIDDLE).man("Z").at.x > 0


def test_where_no_side_is_the_field_a_call_has_none_from_the_middle() -> None:
    said = dressed("to field", book=house("none"))
    order = said.calls.by_name["Three Two Field Crossers"]
    assert (order.spots, said.diagnostics) == ((LEFT, RIGHT), ())
    assert [d.code for d in said.play(order, MIDDLE)[1]] == ["E707"]


def test_a_formation_by_the_field_stands_by_it_whatever_side_is_called() -> None:
    one, other = (play(both(), f"Wide {side} Crossers", LEFT) for side in ("Right", "Left"))
    places = [{m.label: m.at for m in p.men if not m.interior} for p in (one, other)]
    assert places[0] == places[1] and one.man("Z").at.x > 0


def test_a_man_of_the_boundary_runs_what_his_tag_says() -> None:
    for spot, call in (
        (LEFT, "Wide Field Crossers Fade"),
        (RIGHT, "Quads Field Tuck Crossers Fade"),
    ):
        made = play(both(), call, spot)
        assert made.assignment("X").job == "Fade."


def test_a_line_may_ask_where_the_call_goes() -> None:
    jobs_ = {
        way: play(both(), f"Three Two {way} Crossers Short", LEFT).runs("clear")
        for way in ("Field", "Boundary", "Right", "Left")
    }
    corner = {way for way, task in jobs_.items() if task is not None and "orner" in task.job}
    assert corner == {"Boundary", "Left"}


def test_pictures_are_told_apart_by_jobs_and_not_by_yards() -> None:
    """From the middle the men only stand closer; with a line for the boundary one does another job,
    and that picture stands by itself."""
    one = play(both(), "Three Two Right Crossers Short", LEFT)
    others = [play(both(), "Three Two Right Crossers Short", spot) for spot in (MIDDLE, RIGHT)]
    shown = by_spot(one, others)
    assert shown.words.startswith("middle: X at 20.5, S at 14.5, Z at 22.5")
    assert shown.apart == (others[1],) and jobs(others[0]) == jobs(one)


@pytest.mark.parametrize("way", Way)
def test_a_call_is_timed_where_it_goes_right(way: Way) -> None:
    order = both().calls.by_name[f"Three Two {way.value.title()} Crossers"]
    wanted = {Way.FIELD: LEFT, Way.BOUNDARY: RIGHT}.get(way, MIDDLE)
    assert order.timed_from is order.drawn_from is wanted


def test_best_is_where_it_is_drawn_and_never_where_it_is_proved() -> None:
    said = dressed(
        "in Quads motion Tuck",
        "to right",
        "best from right hash in Quads",
        "never from middle in Three Two",
    )
    quads, three = (
        said.calls.by_name[f"{f} Crossers"] for f in ("Quads Right Tuck", "Three Two Right")
    )
    assert codes(said) == []
    assert (quads.best, quads.spots, quads.drawn_from) == ((RIGHT,), tuple(BallSpot), RIGHT)
    assert (three.best, three.spots, three.drawn_from) == ((), (LEFT, RIGHT), LEFT)
    assert said.drawn(quads)[0] == replace(play(said, quads.spoken, RIGHT))


@pytest.mark.parametrize(
    ("lines", "found"),
    [
        (("to right, field",), ["W711"]),
        (("to left", "to boundary"), ["W711"]),
        (("in Wide to left, field", "to right"), ["W711"]),
        (("to field, boundary",), []),
        (("to field", "never from left hash, middle, right hash"), ["E708"]),
        (("to field", "best from left hash", "never from left hash"), ["E709"]),
        (("to field", "never from middle in Quads"), ["E705"]),
        (("to field", "best in Three Two"), ["E402"]),
        (("to field", "best from the hash"), ["E703"]),
    ],
)
def test_a_dress_up_is_told_what_does_not_fit(lines: tuple[str, ...], found: list[str]) -> None:
    assert sorted(set(codes(dressed(*lines)))) == found


def test_what_leaves_no_spot_is_told_the_line_that_leaves_it_out() -> None:
    lines = ("in Quads motion Tuck", "to field, boundary")
    never = "never from left hash, middle, right hash in Quads to boundary"
    found = [d for d in dressed(*lines, never).diagnostics if d.code == "E708"]
    assert dict(found[0].said.values)["line"] == "never in Quads to boundary"
