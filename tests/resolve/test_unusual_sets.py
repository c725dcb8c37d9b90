"""Sets that no textbook page is complete without: the notation must be able to say them all."""

from __future__ import annotations

import pytest
from syrupy.assertion import SnapshotAssertion

from resolve.texts import codes, compiled, dress, play, said
from stemline.football.field import BallSpot
from stemline.football.play import Play

BOOK = "playbook Tried\n    version 1\n    code {}\n"
PEOPLE = """
personnel All
    Q is quarterback
    R, T, B, H is back
    F is fullback
    X, Z is wideout
    S, W is slot
    A is wing
    Y, U is tight end
"""
GO = "concept Go\n    a is back or strong #1\n    a runs go"

SETS: dict[str, tuple[str, str]] = {
    # The line stands by itself away from the ball; the snap goes sideways or straight back.
    "Swinging Gate": (
        "high school",
        """
    LG at away, 9 outside ball, on line
    LT at away, 1.3 outside LG, on line
    RG at away, 1.3 inside LG, on line
    RT at away, 1.3 inside RG, on line
    X at away, 1.3 outside LT, on line
    H at away, 9 outside ball, 4 deep
    W at away, 11 outside ball, 3 deep
    Z at call, 2 outside ball, on line
    S at call, 4 outside ball, off line
    Q at ball, 5 deep
""",
    ),
    # Both tackles and their receivers out at the numbers, three men over the ball.
    "Polecat": (
        "high school",
        """
    LT at away, 3 inside numbers, on line
    X at away, 2 outside LT, on line
    W at LT, 1.5 deep
    RT at call, 3 inside numbers, on line
    Z at call, 2 outside RT, on line
    S at RT, 1.5 deep
    B at call, 2 outside ball, 5 deep
    Q at ball, 5 deep
""",
    ),
    "Wishbone": (
        "high school",
        """
    splits 1
    X at away, 12 outside tackle, on line
    Y at call, end, on line
    F at ball, 3.5 deep
    T at away, 1.5 outside ball, 5 deep
    B at call, 1.5 outside ball, 5 deep
    Q at ball, under centre
""",
    ),
    # The away tackle comes over, the ball goes straight to the tailback.
    "Single Wing": (
        "high school",
        """
    line LG, C, RG, RT, LT
    Y at away, end, on line
    U at call, end, on line
    A at call, 1 outside U, 1.5 deep
    Q at call, 1.3 outside ball, 2.5 deep
    F at call, 0.7 inside guard, 4.5 deep
    T at away, 0.5 outside ball, 5 deep
""",
    ),
    "Diamond": (
        "college",
        """
    X at away, numbers, on line
    Z at call, numbers, on line
    F at call, 2 outside ball, 4 deep
    H at away, 2 outside ball, 4 deep
    B at ball, 7 deep
    Q at ball, 4 deep
""",
    ),
    "Full House": (
        "high school",
        """
    splits 0.7
    Y at call, end, on line
    U at away, end, on line
    F at ball, 3.5 deep
    H at call, 1.7 outside ball, 4.5 deep
    T at away, 1.7 outside ball, 4.5 deep
    Q at ball, under centre
""",
    ),
    # A tight end among the linemen: covered on purpose, so nobody sends him out.
    "Over Y Inside": (
        "high school",
        """
    line LG, C, RG, RT, Y
    LT at away, end, on line
    X at away, numbers, off line
    Z at call, numbers, on line
    H at call, 4 outside ball, 5 deep
    B at away, 2 outside ball, 5 deep
    Q at ball, 5 deep
    Y says "You are a tackle here: no release."
""",
    ),
    "Heavy": (
        "canadian amateur",
        """
    line LT, LG, C, RG, RT, ET
    splits 0.5
    people All
    Y at call, end, on line
    U at away, end, on line
    F at ball, 3 deep
    R at ball, 5.5 deep
    A at call, 1 outside Y, off line
    Q at ball, under centre
""",
    ),
    # Four in a bunch, three of them running at the line.
    "Quads Bunch": (
        "canadian amateur",
        """
    X at away, numbers, on line
    Z at call, 10 outside tackle, on line
    S at 2 inside Z, off line
    H at 2 outside Z, off line
    W at 2 outside H, off line
    R at away, 2 outside ball, 5 deep
    Q at ball, 5 deep
""",
    ),
    "Stack": (
        "high school",
        """
    X at away, 8 outside tackle, on line
    W at X, 2 deep
    Z at call, 8 outside tackle, on line
    S at Z, 2 deep
    B at away, 2 outside ball, 5 deep
    Q at ball, 5 deep
""",
    ),
    "Eight-Man Spread": (
        "eight-man",
        """
    X at away, 10 outside tackle, on line
    Y at call, end, on line
    Z at call, 10 outside tackle, off line
    B at away, 2 outside ball, 5 deep
    Q at ball, 5 deep
""",
    ),
    "Six-Man Tight": (
        "six-man",
        """
    X at away, end, on line
    Y at call, end, on line
    H at call, 1.5 outside ball, 4 deep
    T at away, 1.5 outside ball, 4 deep
    Q at ball, 3 deep
""",
    ),
}
MOTIONS = {
    "Quads Bunch": (
        "motion Triple\n    S moves from call, 14 outside tackle, 7 deep\n"
        "    H, W moves from 6 deep\n    snap running 7\n"
    ),
    "Wishbone": "motion Step\n    back moves 2 outside, 4 deep\n    snap set\n",
    "Diamond": (
        "motion Return\n    Z moves to call, 5 outside tackle, 2 deep then back\n    snap set\n"
    ),
}


def shown(made: Play) -> str:
    """One man a line: where he stands when the ball is snapped, and what he is."""
    lines = []
    for man in sorted(made.men, key=lambda m: (m.snap.x, m.snap.y)):
        place = "line" if man.on_line else "back"
        inside = " inside" if man.interior else ""
        count = f" #{man.rank.number}" if man.rank else ""
        was = f" from {man.at.x:.2f} {man.at.y:.2f}" if man.at != man.snap else ""
        lines.append(
            f"{man.label:2} {man.snap.x:6.2f} {man.snap.y:5.2f} {place}{inside}{count}{was}"
        )
    return "\n".join(lines)


def played(name: str, side: str, spot: BallSpot = BallSpot.MIDDLE) -> Play:
    code, text = SETS[name]
    motion = MOTIONS.get(name, "")
    called = f"{name} motion {motion.split()[1]}" if motion else name
    result = compiled(
        BOOK.format(code), PEOPLE, f"formation {name}{text}", motion, GO,
        dress(called, concept="Go"),
    )  # fmt: skip
    wrong = [d for d in result.diagnostics if d.is_error]
    assert not wrong, said(wrong)
    (call,) = [c for c in result.calls.by_name if f" {side} " in c]
    return play(result, call, spot)


@pytest.mark.parametrize("side", ["Right", "Left"])
@pytest.mark.parametrize("name", SETS)
def test_a_set_stands_where_its_text_says(
    name: str, side: str, snapshot: SnapshotAssertion
) -> None:
    assert shown(played(name, side)) == snapshot


@pytest.mark.parametrize("name", SETS)
def test_from_the_middle_the_left_call_is_the_mirror_of_the_right(name: str) -> None:
    right, left = played(name, "Right"), played(name, "Left")

    def places(made: Play, sign: int) -> list[tuple[float, float, bool]]:
        return sorted((round(sign * m.snap.x, 6), m.snap.y, m.on_line) for m in made.men)

    assert places(right, 1) == places(left, -1)


def test_the_tackle_who_comes_over_is_the_far_one() -> None:
    """Called left it is the right tackle who crosses: nobody else changes his side."""
    for side, sign, over, own in (("Right", 1, "LT", "RT"), ("Left", -1, "RT", "LT")):
        made = played("Single Wing", side)
        assert made.man(over).snap.x == sign * 3.9
        assert made.man(own).snap.x == sign * 2.6
        assert (made.man("LG").snap.x, made.man("RG").snap.x) == (-1.3, 1.3)


def test_landmarks_follow_the_line_that_is_drawn() -> None:
    wing, gate = played("Single Wing", "Right"), played("Full House", "Right")
    assert (wing.man("U").snap.x, wing.man("Y").snap.x) == (5.2, -2.6)
    assert (gate.man("Y").snap.x, gate.man("U").snap.x) == (2.1, -2.1)
    assert played("Heavy", "Right").man("Y").snap.x == 2.0
    assert played("Six-Man Tight", "Left").man("X").snap.x == 1.3


def test_a_man_put_into_the_line_is_no_receiver() -> None:
    made = played("Over Y Inside", "Right")
    assert made.man("Y").interior and made.man("Y").rank is None
    assert made.man("Y").says == ("You are a tackle here: no release.",)
    assert made.man("LT").interior and not made.man("LT").in_line


def test_every_set_is_legal_in_its_code() -> None:
    for name, (code, text) in SETS.items():
        result = compiled(BOOK.format(code), PEOPLE, f"formation {name}{text}")
        assert codes(result) == [], (name, said(result.diagnostics))
