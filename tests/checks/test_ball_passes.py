"""The rules about handing and throwing the ball on, asked of plays that nearly break them."""

from __future__ import annotations

import pytest
from resolve.texts import THREE_TWO, TWELVE, codes, compiled, dress

SIX = """
playbook Lanterns
    code six-man

personnel All
    Q is quarterback
    R is back
    X, Z is wideout
    Y is tight end

formation Spread
    X at away, 6 outside tackle, on line
    Y at call, end, on line
    Z at call, 6 outside tackle, off line
    R at away, 2 outside ball, 5 deep
    Q at ball, 5 deep

run Option
    toward call
    carrier is back
    carrier aims playside A
    centre blocks on or climb
    others, wide, far is playside outside or backside outside
    others, wide, far blocks stalk
"""
NAMED = """
    key end is end man on line, backside
    quarterback gives if end stays
    quarterback {} if end chases
"""
UNNAMED = """
    key end man on line, backside
    give if he stays
    {} if he chases
"""
REST = """
    strong #1 runs go
    everyone else runs seam
    back blocks inside out
    feet 3
    read strong #1 on 3
"""


@pytest.mark.parametrize(
    ("lines", "told"),
    [
        (NAMED.format("keeps"), True),
        (NAMED.format("throws to others"), False),
        (UNNAMED.format("pull"), True),
        (UNNAMED.format("throw others"), False),
    ],
)
def test_in_six_man_he_may_not_keep_the_ball_off_a_key(lines: str, told: bool) -> None:
    text = SIX + lines[1:] + "\n" + dress("Spread", concept="Option", sides=False)
    assert codes(compiled(text)) == (["W872"] if told else [])


@pytest.mark.parametrize(
    ("lines", "told"),
    [
        ("shot runs cross 3\n    quarterback shovels to shot", []),
        ("quarterback throws to shot at 2 behind\n    shot throws to strong #1", []),
        ("quarterback throws to shot at 3 deep\n    shot throws to strong #1", ["W797"]),
    ],
)
def test_who_has_given_the_ball_away_throws_none(lines: str, told: list[str]) -> None:
    """He reads a receiver too, and throws to him only where he has the ball."""
    text = f"\nconcept On\n    shot is strong inside\n    {lines}{REST}"
    assert codes(compiled(TWELVE, THREE_TWO, text, dress("Three Two", concept="On"))) == told


@pytest.mark.parametrize(("route", "told"), [("slant 2", ["W798"]), ("return 2", [])])
def test_past_the_line_the_ball_may_be_handed_back(route: str, told: list[str]) -> None:
    """On his slant he takes it in front of the carrier, on his way back out behind him."""
    text = f"""
run Past
    carrier is back
    taker is strong inside
    quarterback hands to carrier
    carrier aims playside C
    carrier hands to taker
    taker runs {route}
    line blocks on or climb
    everyone else blocks stalk
"""
    assert codes(compiled(TWELVE, THREE_TWO, text, dress("Three Two", concept="Past"))) == told
