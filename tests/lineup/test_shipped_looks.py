"""The looks of the bundled playbooks: each meets every set of the offence."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from together import together

from lineup.look_sets import (
    EVERY_LOOK,
    SHAPES,
    SHOWN,
    every_book,
    every_look,
    lined_up,
    offence,
    shipped,
)
from stemline.football.conditions import LookWord
from stemline.football.defenders import Defence, Level
from stemline.football.field import BallSpot, Side
from stemline.lineup.look_placed import ROOM, line_up_defence
from stemline.resolve.expand import field_of


@every_look
def test_the_shipped_looks_show_what_their_names_say(book: str, key: str) -> None:
    xs = SHAPES[book]["3x2" if book == "saltmarsh-herons" else "2x2"]
    shows = set(lined_up(book, key, offence(book, xs)).shows)
    name = next(n for n in SHOWN if n.casefold() == key)
    assert SHOWN[name] <= shows


@every_look
@together("spot", BallSpot, ids=lambda s: s.value)
@together("called", Side, ids=lambda s: s.word)
def test_a_look_meets_every_shape(book: str, key: str, spot: BallSpot, called: Side) -> None:
    for xs in SHAPES[book].values():
        assert_sound(lined_up(book, key, offence(book, xs, spot, called)), book, spot)


@every_look
@together("ends", [(Side.LEFT,), (Side.RIGHT,), (Side.LEFT, Side.RIGHT)])
def test_a_look_meets_tight_ends(book: str, key: str, ends: tuple[Side, ...]) -> None:
    for xs in ((16.0, -16.0), (16.0, 8.0, -16.0)):
        for spot in BallSpot:
            picture = offence(book, xs, spot, ends=ends)
            assert_sound(lined_up(book, key, picture), book, spot)


def assert_sound(defence: Defence, book: str, spot: BallSpot) -> None:
    """The right number of men, in bounds, off the ball, apart from each other, each with a duty."""
    made = shipped(book).book
    assert made is not None
    field = field_of(made, spot)
    assert len(defence.defenders) == field.code.players.value
    for d in defence.defenders:
        assert field.sideline(Side.LEFT) < d.at.x < field.sideline(Side.RIGHT)
        assert d.at.y >= max(0.3, field.code.restraining.value)
        assert d.duty is not None
        others = [o for o in defence.defenders if o is not d]
        assert all(o.at.distance(d.at) >= ROOM for o in others)
    assert len({d.label for d in defence.defenders}) == len(defence.defenders)


@every_look
def test_in_man_every_receiver_has_his_own_defender(book: str, key: str) -> None:
    for xs in SHAPES[book].values():
        picture = offence(book, xs)
        defence = lined_up(book, key, picture)
        if LookWord.MAN.value in defence.shows:
            covered = sorted(d.duty.man for d in defence.defenders if d.duty and d.duty.man)
            eligible = [*picture.count.left, *picture.count.right, *picture.count.backs]
            assert covered == sorted(eligible)


@every_look
@together("spot", BallSpot, ids=lambda s: s.value)
def test_called_left_is_called_right_in_a_mirror(book: str, key: str, spot: BallSpot) -> None:
    for xs in SHAPES[book].values():
        right = lined_up(book, key, offence(book, xs, spot, Side.RIGHT))
        left = lined_up(book, key, offence(book, xs, spot.mirrored, Side.LEFT))
        for one, two in zip(right.defenders, left.defenders, strict=True):
            assert (one.label, one.level, one.technique) == (two.label, two.level, two.technique)
            assert (one.at.x, one.at.y) == pytest.approx((-two.at.x, two.at.y))
            assert one.duty is not None and two.duty is not None
            assert one.duty.words == two.duty.words
            if one.duty.to is not None and two.duty.to is not None:
                assert (one.duty.to.x, one.duty.to.y) == pytest.approx(
                    (-two.duty.to.x, two.duty.to.y)
                )
        assert right.strong is left.strong.other and right.shows == left.shows


@settings(max_examples=60, deadline=None)
@given(
    st.sampled_from(EVERY_LOOK),
    st.lists(st.floats(3.5, 30), min_size=1, max_size=4),
    st.lists(st.floats(3.5, 30), min_size=1, max_size=1),
    st.sampled_from(list(BallSpot)),
)
def test_no_split_puts_two_defenders_on_one_spot(
    which: tuple[str, str], strong: list[float], weak: list[float], spot: BallSpot
) -> None:
    """Stacked, bunched or far apart: everybody finds room, or a line of the front is named."""
    book, key = which
    made = shipped(book).book
    assert made is not None
    picture = offence(book, (*strong, *(-x for x in weak)), spot)
    defence, found = line_up_defence(made.looks[key], picture)
    assert {d.code for d in found} <= {"E490"}
    if defence is not None:
        assert_sound(defence, book, spot)


def test_an_eleven_man_line_stands_a_yard_off_at_most() -> None:
    book = "cedar-flats-lanterns"
    eleven = lined_up(book, "over three", offence(book, (9, -9)))
    assert all(0.15 < d.at.y <= 1 for d in eleven.defenders if d.level is Level.LINE)


@every_book
def test_each_playbook_has_the_fronts_and_coverages_of_its_game(book: str) -> None:
    made = shipped(book)
    assert made.book is not None
    assert {name.casefold() for name in SHOWN} == made.book.looks.keys()
    fronts = set()
    for key in made.book.looks:
        defence = lined_up(book, key, offence(book, SHAPES[book]["2x2"]))
        line = [d for d in defence.defenders if d.level is Level.LINE]
        fronts.add(tuple(sorted(round(d.at.x, 2) for d in line)))
        assert made.book.looks[key].says
    assert len(fronts) >= 6
