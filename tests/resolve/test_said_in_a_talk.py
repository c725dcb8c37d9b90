"""What a coach's talk says is drawn as he means it: who doubles, where he keeps, who sets."""

from __future__ import annotations

from resolve.test_runs import against
from resolve.test_said_at_a_clinic import TIGHT, jobs, made
from resolve.texts import DOUBLES_ELEVEN, ELEVEN, compiled, dress
from stemline.football.defenders import Level
from stemline.football.play import Play

LOOK = """
look Over
    E in 5, strong
    T in 3, strong
    N in 1, weak
    J in 5, weak
    M in 10, strong
    W in 30, weak
    S at outside end, strong, 5 deep
    C at strong #1, 8 deep
    B at weak #1, 8 deep
    R at hash, weak, 9 deep
    F at middle, 12 deep
    C covers third, strong
    F covers third, middle
    B covers third, weak
    S covers curl, strong
    M covers hook, strong
    W covers hook, weak
    R covers curl, weak
"""


def run(*lines: str, formation: str = TIGHT, carrier: str = "back") -> Play:
    body = "\n".join(f"    {line}" for line in (f"carrier is {carrier}", *lines))
    text = f"run Test\n{body}\n    everyone else blocks stalk\n"
    book = compiled(ELEVEN, formation, LOOK, text, dress("Tight", concept="Test"))
    return against("Tight Right Test", "Over", book)


POWER = (
    "carrier aims playside B",
    "playside guard blocks down or on",
    "centre blocks back or on",
    "backside guard blocks wrap to near linebacker",
    "backside tackle blocks hinge",
    "fullback blocks kick end man on line",
)


def test_whom_the_tackle_and_y_double_nobody_kicks() -> None:
    shown = run(*POWER, "playside tackle and Y double the end to the far linebacker")
    told = {man: job for man, (_, job) in jobs(shown).items()}
    assert " E" in told["RT"]
    assert " E" in told["Y"]
    assert "E" not in told["H"].removesuffix(".").split()
    alone = run(*POWER, "playside tackle blocks on", "Y blocks climb")
    assert jobs(alone)["H"][1] == "Kick E."


def test_a_keep_off_a_man_read_in_the_middle_goes_up_inside_of_those_blocked() -> None:
    lines = (
        "carrier aims playside A",
        "playside guard blocks leave to near linebacker or climb",
        "playside tackle, playside end blocks out or climb",
        "centre, backside guard, backside tackle blocks on or climb",
        "give if he stays",
        "pull if he closes",
    )
    shown = run(*lines, "key first man outside guard")
    passer = shown.passer
    assert passer is not None and shown.defence is not None
    (branch,) = shown.assignment(passer.label).branches
    (key,) = shown.keys
    read = shown.defence.defender(key.man)
    outside = min(
        d.at.x for d in shown.defence.defenders if d.level is Level.LINE and d.at.x > read.at.x
    )
    assert all(leg.to.x < outside for leg in branch.path.legs)
    assert branch.path.end.x == read.at.x  # straight up, where he stood


def test_who_blocks_first_at_the_line_sets_where_he_stands() -> None:
    text = "concept Test\n    {}\n    everyone else runs go\n    every other back runs angle\n"
    shown = made(text.format("Y blocks one count then runs corner"), "Tight", TIGHT)
    y = shown.man("Y").snap
    path = jobs(shown)["Y"][0]
    corners = [leg.to for leg in path.legs]  # type: ignore[attr-defined]
    assert corners[0].y < y.y  # back first
    assert all(abs(p.x - y.x) < 1 for p in corners[:2])  # and nowhere near the guard
    back = made(text.format("R runs check then swing"), "Doubles", DOUBLES_ELEVEN)
    assert jobs(back)["R"][0].legs[0].to.x != path.legs[0].to.x  # type: ignore[attr-defined]


def test_of_two_backs_as_deep_the_one_behind_the_ball_is_the_fullback() -> None:
    wing = TIGHT.replace("H at ball, 4 deep", "F at ball, 4 deep")
    wing = wing.replace("R at ball, 7 deep", "H at away, 1 outside guard, 4 deep")
    lines = ("carrier aims playside B", "line blocks on or climb", "fullback blocks sift")
    told = jobs(run(*lines, formation=wing, carrier="H"))
    assert told["F"][1].startswith("Sift")
    assert "Take the ball" in told["H"][1]
