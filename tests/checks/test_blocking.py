"""Men of the box whom nobody blocks: told where a run is drawn or named against them."""

from __future__ import annotations

from dataclasses import replace

import pytest
from resolve.test_runs import FORMATIONS, LOOKS, OTHERS, against
from resolve.texts import ELEVEN, codes, compiled

from stemline.checks.blocks_find_men import too_many_free
from stemline.football.exchanges import BallMoves, Exchange
from stemline.geometry.paths import Point

DIVE = f"""
run Dive
    carrier is back
    carrier aims playside A
    line blocks on or climb
    playside tackle, backside tackle blocks climb
    backside guard blocks hinge
{OTHERS}
dress Dive
    in Two Backs
"""
"""Against the bear both ends are left, and only one of them may be the back's."""

KEYED = DIVE.replace(
    "    backside guard blocks hinge\n",
    "    backside guard blocks hinge\n    key backside end man on line\n    give if he stays\n",
)


@pytest.mark.parametrize(("free", "told"), [((), 0), (("J",), 0), (("J", "W"), 1)])
def test_one_man_is_the_backs_and_two_are_too_many(free: tuple[str, ...], told: int) -> None:
    play = replace(against("Two Backs Right Counter", "Even"), unblocked=free)
    found = list(too_many_free(play))
    assert len(found) == told
    for d in found:  # as pages have it: we may have a J too
        assert dict(d.values)["free"] == "[J] and [W]"


@pytest.mark.parametrize(
    ("x", "y", "told"),
    [
        (2.0, 5.0, ["the linebacker"]),  # where the counter goes
        (3.9, 5.0, []),  # over an end: the carrier's on many a run inside
        (-2.0, 5.0, []),  # behind the play
        (2.0, 8.0, []),  # too deep for the box
    ],
)
def test_one_linebacker_free_where_the_run_goes_is_told(
    x: float, y: float, told: list[str]
) -> None:
    """Unless a fake holds him: a man shown with the ball who has it not."""
    play = against("Two Backs Right Counter", "Even")
    assert play.defence is not None and play.toward is not None
    (mike,) = (d for d in play.defence.defenders if d.label == "M")
    moved = replace(mike, at=Point(x * play.toward.value, y))
    others = [d for d in play.defence.defenders if d is not mike]
    made = replace(
        play, unblocked=("M",), defence=replace(play.defence, defenders=(*others, moved))
    )
    found = list(too_many_free(made))
    assert [d.code for d in found] == ["W698"] * len(told)
    assert [dict(d.values)["place"] for d in found] == told
    fake = Exchange(BallMoves.FAKE, "Q", "W")
    assert list(too_many_free(replace(made, exchanges=(*made.exchanges, fake)))) == []


@pytest.mark.parametrize(("goal", "told"), [(None, 1), (1, 0), (9, 1)])
def test_at_the_goal_line_a_man_behind_it_is_too_late(goal: int | None, told: int) -> None:
    play = against("Two Backs Right Counter", "Even")
    assert play.defence is not None
    first, *rest = play.defence.defenders
    deep = replace(first, at=replace(first.at, y=5.0))
    made = replace(
        play, field=replace(play.field, goal=goal), unblocked=(first.label, rest[0].label),
        defence=replace(play.defence, defenders=(deep, *rest)),
    )  # fmt: skip
    assert len(list(too_many_free(made))) == told


def test_without_a_defence_nothing_is_said() -> None:
    play = replace(against("Two Backs Right Counter"), unblocked=("J", "W"))
    assert list(too_many_free(play)) == []


def book(run: str, look: str) -> list[str]:
    text = ELEVEN.replace("    code high school\n", f"    code high school\n    against {look}\n")
    return codes(compiled(text, FORMATIONS, LOOKS, run))


def test_the_look_that_runs_are_drawn_against_is_proved() -> None:
    assert "W670" in book(DIVE, "Bear")
    assert "W670" not in book(DIVE, "Even")


def test_another_look_is_no_mistake_unless_a_dress_up_names_it() -> None:
    named = DIVE.replace("    in Two Backs\n", "    in Two Backs\n    against Bear\n")
    assert "W670" in book(named, "Even")


def test_a_man_who_is_read_is_not_free() -> None:
    assert "W670" not in book(KEYED, "Bear")
