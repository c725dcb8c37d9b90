"""An arc goes around the end of its own side, and whoever hangs over that end is the arc's: the
line leaves him. Blocking of the inside veer on the goal line and of an odd front whose end is
read: common practice, as line coaches draw it; no published source."""

from __future__ import annotations

from resolve.test_checks_then_goes import TIGHT
from resolve.test_protections import against, taken
from resolve.texts import ELEVEN, codes, compiled
from stemline.football.play import Play

ODD = """
look Odd
    strength call
    J at weak, 2.5 outside tackle, 5 deep
    D at 5, weak
    N at 0
    E at 5, strong
    S at strong, 1.1 outside tackle, 4 deep
    W at 30, weak
    M at 30, strong
    C at strong #1, 7 deep
    K at weak #1, 7 deep
    V at hash, strong, 12 deep
    A at hash, weak, 12 deep
"""
GOAL = """
look Odd
    strength call
    L at 9, weak
    J at 5, weak
    N at 2i, weak
    T at 2i, strong
    E at 5, strong
    S at 9, strong
    M at 3, strong, 3 deep
    H at over end, strong, 5 deep
    W at 3, weak, 3 deep
    C at strong #1, 3 deep
    B at weak #1, 3 deep
"""
PITCH = """
    trail is weak #2
    trail runs swing playside
    pitch to trail off second man outside tackle if he takes the quarterback"""
RUN = """
run Read
    carrier is back
    carrier aims playside A
    playside tackle blocks climb to near linebacker
    playside guard blocks on or double with centre
    centre blocks on or double with playside guard
    line blocks on or scoop
    {arc} blocks arc
    everyone else blocks stalk
    key {key}
    give if he stays
    pull if he chases

dress Read
    in Tight
    against Odd
"""


def shown(arc: str, key: str, look: str = ODD) -> Play:
    text = RUN.format(arc=arc, key=key)

    result = compiled(ELEVEN, TIGHT.partition("run Plunge")[0], look, text)
    assert not [d for d in result.diagnostics if d.is_error], codes(result)
    return against(result, "Odd")[0]


def test_a_backside_tackle_arcs_around_his_own_end() -> None:
    play = shown("backside tackle", "backside end man on line")
    assert play.keys[0].man == "D"
    assert taken(play)["LT"] == "J"


def test_who_hangs_over_the_end_stacked_on_the_man_who_is_read_is_the_arc_s() -> None:
    play = shown("playside end", "first man outside tackle")
    assert play.keys[0].man == "E"
    assert (taken(play)["Y"], taken(play)["RT"]) == ("S", "M")


def test_on_the_goal_line_the_tackle_has_the_backer_in_the_gap_and_the_guard_helps_inside() -> None:
    play = shown("playside end", f"first man outside tackle{PITCH}", GOAL)
    jobs = {a.man: [h.defender for h in a.hits] for a in play.assignments}
    assert (jobs["Y"], jobs["RT"]) == (["H"], ["M"])
    assert jobs["RG"][:1] == jobs["C"][:1] == ["T"]
