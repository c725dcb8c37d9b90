"""Who takes the ball from whom: men whose paths do not meet hand nothing over.

The reach of a hand-off and of a toss is common practice, no published source.
"""

from __future__ import annotations

import pytest
from resolve.texts import ELEVEN, THREE_TWO, TWELVE, codes, compiled, message

from stemline.checks.ball_way_meets import E790
from stemline.checks.legality.forward_passes import E798
from stemline.diagnostics.broken_rule import Resting
from stemline.football.exchanges import HANDED_UNDER
from stemline.football.timing.ball_clock import ball_moments
from stemline.football.timing.levels import HIGH_SCHOOL
from stemline.session import Session

SET = """
formation Doubles
    X at away, numbers, on line
    H at away, 5 outside tackle, off line
    Y at call, end, on line
    Z at call, numbers, off line
    {back}
    Q at ball, {gun}
"""
RUN = """
run Tried
    toward call
    carrier is {carrier}
    carrier aims {aims}
    line blocks on or climb
    outside, second is strong outside or nobody
    outside, second blocks stalk
    far, third is weak outside or nobody
    far, third blocks stalk
    {more}

dress Tried
    in Doubles
"""
STAYS = "fake is back or nobody\n    fake blocks lead on near linebacker"
BEHIND, BESIDE = "R at ball, 7 deep", "R at away, 2 outside ball, 5 deep"
NEAR = "R at ball, 4 deep"


@pytest.mark.parametrize(
    ("carrier", "aims", "back", "gun", "told"),
    [
        ("back", "playside B", BEHIND, "under centre", False),
        ("back", "playside C", BEHIND, "under centre", False),
        ("back", "outside the end", BEHIND, "4 deep", False),
        ("back", "backside A then playside B", BESIDE, "5 deep", False),
        ("weak #2", "playside A", BESIDE, "5 deep", False),
        ("weak #2", "backside D then playside A", BESIDE, "5 deep", True),
        ("weak #2", "backside D then playside A", BESIDE, "under centre", False),
    ],
)  # fmt: skip
def test_who_takes_the_ball_comes_by(
    carrier: str, aims: str, back: str, gun: str, told: bool
) -> None:
    more = "" if carrier == "back" else STAYS
    made = compiled(
        ELEVEN,
        SET.format(back=back, gun=gun),
        RUN.format(carrier=carrier, aims=aims, more=more),
    )
    assert not [d for d in made.diagnostics if d.is_error], codes(made)
    assert made.season is not None and made.season.plays
    assert ("W864" in codes(made)) is told


@pytest.mark.parametrize(
    ("aims", "told"), [("outside the end", False), ("backside D then backside C", True)]
)
def test_the_second_man_of_a_reverse_comes_by_the_first(aims: str, told: bool) -> None:
    run = RUN.format(
        carrier="weak #2",
        aims=aims,
        more="first is back\n    first aims playside end\n    handoff first",
    )
    found = codes(compiled(ELEVEN, SET.format(back=BESIDE, gun="5 deep"), run))
    assert ("W864" in found) is told


def test_a_man_whose_way_is_wrong_is_told_once() -> None:
    """`everyone else blocks` takes Z away from both of his exchanges: one message, which says that
    line and what to type, and what it tells to type mends it."""
    run = (
        "\nrun Chain\n    toward call\n    carrier is back\n    carrier aims playside B\n"
        "    quarterback hands to Z at 3 deep\n    Z hands to carrier\n{}"
        "    line blocks on or climb\n    everyone else blocks stalk\n\n"
        "dress Chain\n    in Doubles\n"
    )
    texts = ELEVEN, SET.format(back=BEHIND, gun="under centre")
    told = [d for d in compiled(*texts, run.format("")).diagnostics if d.is_error]
    assert [d.code for d in told] == ["E790"]
    assert "`Z aims outside the end`" in dict(told[0].values)["instead"]
    mended = compiled(*texts, run.format("    Z aims outside the end\n"))
    assert "E790" not in codes(mended)


FLY = """
motion Fly
    H moves to {to}, 3 deep
    snap running

run Sweep
    toward call
    carrier is H
    carrier aims outside the end
    {lines}
    back aims playside A
    line blocks on or climb
    everyone else blocks stalk

dress Sweep
    in Doubles motion Fly
"""
BY_HIM, PAST_HIM = "away, 1 outside ball", "call, 1 outside ball"
HANDS = ("quarterback hands to carrier", "quarterback fakes to back")


@pytest.mark.parametrize("lines", [HANDS, HANDS[::-1], HANDS[1:]])
def test_a_man_in_motion_has_the_ball_as_he_runs_by_and_then_it_is_faked(
    lines: tuple[str, ...],
) -> None:
    """Whatever the order of the lines: no message, and he has it before a fake could be made."""
    fly = FLY.format(to=BY_HIM, lines="\n    ".join(lines))
    made = compiled(ELEVEN, SET.format(back=NEAR, gun="under centre"), fly)
    assert "W790" not in codes(made) and "E790" not in codes(made)
    assert made.season is not None
    for play in made.season.plays:
        assert [x.taker for x in play.exchanges] == ["H", "R"]
        given, faked = ball_moments(play, HIGH_SCHOOL)
        assert given.there < HANDED_UNDER.value and given.there < faked.there


@pytest.mark.parametrize(("lines", "takers"), [(HANDS, ["H", "R"]), (HANDS[::-1], ["R", "H"])])
def test_of_a_hand_off_and_a_fake_that_is_first_whose_line_is(
    lines: tuple[str, ...], takers: list[str]
) -> None:
    """Told and drawn in the order in which it is said, where no motion decides it."""
    fly = FLY.format(to=BY_HIM, lines="\n    ".join(lines)).replace(" motion Fly", "")
    made = compiled(ELEVEN, SET.format(back=NEAR, gun="5 deep"), fly)
    assert made.season is not None
    for play in made.season.plays:
        assert [x.taker for x in play.exchanges] == takers
        job = play.assignment("Q").job
        given, faked = job.casefold().index("hand"), job.casefold().index("fake")
        assert (given < faked) is (takers[0] == "H"), job


def test_a_man_in_motion_who_has_run_by_is_not_told_to_go_in_motion() -> None:
    fly = FLY.format(to=PAST_HIM, lines=HANDS[0])
    made = compiled(ELEVEN, SET.format(back=NEAR, gun="under centre"), fly)
    (told,) = [d for d in made.diagnostics if d.code in ("W790", "E790")]
    assert told.code == "W790"
    helped = dict(told.values)["instead"]
    assert isinstance(helped, str) and "end the motion Fly sooner" in helped
    assert "send H in motion" not in helped


def test_a_fake_that_is_late_is_called_a_fake() -> None:
    tail = ("tail is back", "tail aims outside the end")
    lines = "\n    ".join((*tail, "quarterback hands to carrier", "quarterback fakes to tail"))
    run = RUN.format(carrier="fullback", aims="playside A", more=lines)
    two = SET.format(back=BEHIND, gun="under centre").replace(
        "H at away, 5 outside tackle, off line", "F at ball, 4 deep"
    )
    (told,) = [d for d in compiled(ELEVEN, two, run).diagnostics if d.code == "W790"]
    assert message(told).endswith("away when Q fakes to him")


def test_where_the_ball_never_comes_nobody_hands_it_on() -> None:
    apart = E790(call="A", instead="", man="Q", place="", yards="9")
    rests = Resting("", "", True)
    assert apart.silences(
        E798(resting=rests, call="A", giver="H", man="S", aims="", line="", yards="2")
    )
    assert not apart.silences(
        E798(resting=rests, call="B", giver="H", man="S", aims="", line="", yards="2")
    )


HANDED_ON = """
run Far
    carrier is back
    taker is {taker}
    {lines}
    line blocks on or climb
    everyone else blocks stalk

dress Far
    in Three Two
"""
CARRIES = "quarterback hands to carrier\n    carrier aims playside D\n    "


def far(lines: str, taker: str = "strong inside") -> Session:
    return compiled(TWELVE, THREE_TWO, HANDED_ON.format(lines=lines, taker=taker))


def test_what_the_message_on_a_hand_off_past_the_line_says_mends_it() -> None:
    past = far(f"{CARRIES}carrier hands to taker\n    taker runs slant 2")
    (told,) = [dict(d.values) for d in past.diagnostics if d.code == "W798"]
    assert codes(far(f"{CARRIES}{told['line']}\n    {told['aims']}")) == []


def test_who_waits_with_the_ball_has_no_aim_of_his_own_and_that_is_said() -> None:
    lines = "carrier hands to taker at 3 deep, playside tackle\n    taker aims playside D"
    late = far(f"{CARRIES}{lines}", "weak #1")
    told = [dict(d.values)["instead"] for d in late.diagnostics if d.code == "W790"]
    assert told and all("`aims` line of carrier" in each for each in told)
    waits = CARRIES.replace("carrier aims playside D\n    ", "")
    assert "W790" not in codes(far(f"{waits}{lines}", "weak #1"))
