"""A letter says which man, never what he does: rename every man and only the letters change."""

from __future__ import annotations

import re

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from resolve.compact import write
from resolve.texts import (
    CROSSERS,
    ELEVEN,
    QUADS,
    THREE_TWO,
    TREY,
    TRIPS,
    TWELVE,
    compiled,
    dress,
    play,
    sound,
    who,
)
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.football.field import BallSpot, Side

MEN = "FHQRSWXYZ"


def renamed(text: str, letters: dict[str, str]) -> str:
    """Every man's letter changed wherever it stands as a word of its own."""
    return re.sub(rf"\b[{MEN}]\b", lambda m: letters[m.group()], text)


@settings(max_examples=12, deadline=None)
@given(st.permutations("ABDEFGHJKLMNPRSTUVWXYZ"), st.sampled_from(list(BallSpot)))
@pytest.mark.parametrize(
    ("book", "formation", "called"),
    [
        (TWELVE, THREE_TWO, "Three Two"),
        (TWELVE, QUADS, "Quads motion Tuck"),
        (ELEVEN, TREY, "Trey"),
    ],
    ids=["three two", "quads", "trey"],
)
def test_renaming_every_letter_changes_no_path_no_read_and_no_foot(
    book: str, formation: str, called: str, order: list[str], spot: BallSpot
) -> None:
    letters = {**dict(zip(MEN, order, strict=False)), "Q": "Q"}
    tags = dress(called, "with plain, Wheel + Return")
    before = sound(book, formation, CROSSERS, tags)
    after = sound(renamed(book, letters), renamed(formation, letters), CROSSERS, tags)
    assert list(before.calls.by_name) == list(after.calls.by_name)
    for call in before.calls.by_name:
        one, two = play(before, call, spot), play(after, call, spot)
        assert write(one, names=False) == write(two, names=False)
        for a, b in zip(one.assignments, two.assignments, strict=True):
            assert letters.get(a.man, a.man) == b.man
            assert a.role == b.role


def test_the_tight_end_is_found_by_his_place() -> None:
    """Letter Y outside the lone wideout's partner: the settle goes to the new strong #2."""
    inside = sound(ELEVEN, TREY, CROSSERS, dress("Trey"))
    made = play(inside, "Trey Right Crossers")
    assert {a.role: a.man for a in made.assignments if a.role}["settle"] == "Y"

    split = TREY.replace("Y at call, end, on line", "Y at call, 2 outside Z, on line").replace(
        "S at call, between Y and Z", "S at call, 3 outside tackle"
    )
    outside = sound(ELEVEN, split, CROSSERS, dress("Trey"))
    for side in ("Right", "Left"):
        made = play(outside, f"Trey {side} Crossers")
        rank = made.man("Y").rank
        assert rank is not None and (rank.side, rank.number) == (made.strong, 1)
        roles = {a.role: a.man for a in made.assignments if a.role}
        assert roles["settle"] == "Z"
        assert who(made)["settle"] == "strong #2"
        assert roles["clear"] == "Y"


def test_a_tight_end_who_trades_places_with_the_wideout_across() -> None:
    """Y outside X on the weak side: he is weak #1 and the settle stays strong #2."""
    text = TRIPS.replace(
        "X at away, 5 outside tackle, on line", "Y at away, 5 outside tackle, on line"
    )
    made = play(sound(ELEVEN, text, CROSSERS, dress("Trips")), "Trips Right Crossers")
    roles = {a.role: a.man for a in made.assignments if a.role}
    assert roles["under"] == "Y"
    assert who(made)["settle"] == "strong #2"


def test_any_man_at_the_tight_ends_place_settles() -> None:
    """A slot on the line beside the tackle is a tight end by place, whatever he is called."""
    text = TREY.replace("Y at call, end", "H at call, end").replace("between Y", "between H")
    made = play(sound(ELEVEN, text, CROSSERS, dress("Trey")), "Trey Left Crossers")
    assert {a.role: a.man for a in made.assignments if a.role}["settle"] == "H"
    assert made.strong is Side.LEFT


def test_a_wing_off_the_line_is_no_tight_end() -> None:
    text = TREY.replace("Y at call, end, on line", "Y at call, end, off line").replace(
        "Z at call, numbers, off line", "Z at call, numbers, on line"
    )
    made = play(sound(ELEVEN, text, CROSSERS, dress("Trey")), "Trey Right Crossers")
    assert who(made)["settle"] == "strong #2"


@pytest.mark.parametrize("letter", ["Y", "Z2"])
def test_a_role_by_the_letter_of_nobody_is_refused(letter: str) -> None:
    text = CROSSERS.replace("settle is strong #2\n", f"settle is {letter}\n")
    assert text != CROSSERS
    found: list[Diagnostic] = [
        d for d in compiled(ELEVEN, TRIPS, text, dress("Trips")).diagnostics if d.code == "E453"
    ]
    assert [dict(d.values)["letter"] for d in found] == [letter]
