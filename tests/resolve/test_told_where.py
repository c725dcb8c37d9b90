"""Where a mistake is told that shows only in some calls: at the spot, the line or the man of it."""

from __future__ import annotations

import pytest
from corpus.mixing import base, compile_case
from corpus.small_run import RUN

from stemline.session import Session
from stemline.source import Source

FIVE = """
concept K
    a is strong #1
    b is strong #2
    c is strong #3
    d is weak #1
    e is weak #2
    {but}
    a, b, c, d, e runs go
    back runs check
    feet 3
    read a on 3

dress K
    in Three Two
"""


@pytest.mark.parametrize(
    ("but", "where"),
    [
        ("e is nobody when ball in middle", "Three Two Right K from the middle: W"),
        ("e is nobody when into field", "Three Two Right K from the left hash: W"),
        ("e is nobody when 3x2", "Three Two Right K: W"),
    ],
)
def test_a_man_without_a_job_from_one_spot_is_told_from_which(but: str, where: str) -> None:
    told = compile_case("tried.play", FIVE.format(but=but))
    assert told.codes == ["W650"]
    assert f"without a job in {where}\n" in told.shown


KILLED = f"""{RUN}    with plain, Check

tag Check for Z
    kill to Bench when 8 or more in box

concept Bench
    e is tight end
    e runs out
    each #1 runs go
    everyone else runs seam
    back runs check
    feet 3
    read e on 3
"""
DRESSED = "\ndress Bench\n    in Tight\n\nformation Tight extends Three Two\n    W at away, end\n"


def test_a_second_play_that_misses_a_man_is_told_at_the_line_that_calls_it() -> None:
    told = compile_case("tried.play", KILLED)
    (d,) = [d for d in told.found if d.code == "E620"]
    assert KILLED.splitlines()[d.span.line - 1].strip().startswith("kill to Bench")
    assert [KILLED.splitlines()[r.span.line - 1].strip() for r in d.related] == ["e is tight end"]


def test_one_that_a_dress_up_calls_too_is_told_at_its_own_line() -> None:
    text = KILLED + DRESSED.replace("    W at away, end\n", "    W at away, end, on line\n    X at "
                                    "away, numbers, off line\n")  # fmt: skip
    told = compile_case("tried.play", text)
    (d,) = [d for d in told.found if d.code == "E620"]
    assert text.splitlines()[d.span.line - 1].strip() == "e is tight end"
    assert [text.splitlines()[r.span.line - 1].strip()[:4] for r in d.related] == ["kill"]


def test_a_second_dress_up_is_told_to_join_the_first() -> None:
    told = compile_case("tried.play", "dress Crossers\n    in Three Two\n\n" * 2)
    assert told.codes.count("E301") == 1
    assert "delete this `dress Crossers` and write its lines under the first" in told.shown


NOTED = """
protection P
    line blocks man
    helper is back
    helper blocks scan
    centre says "Point him out."
    linemen says "Hands up."
    playside guard says "Help in."

concept K
    a is strong #1
    a runs hitch
    everyone else runs go
    back runs check
    protect P
    feet 3
    read a on 3

dress K
    in Three Two
"""


def test_a_protection_speaks_to_men_of_the_line() -> None:
    made = Session((*base(), Source("tried.play", NOTED)), "tried")
    assert not [d for d in made.diagnostics if d.span.source == "tried.play"]
    assert made.season is not None
    play = next(p for p in made.season.plays if p.call.concept == "K")
    says = {a.man: a.says for a in play.assignments if a.says}
    assert says == {
        "LT": ("Hands up.",),
        "LG": ("Hands up.",),
        "C": ("Point him out.", "Hands up."),
        "RG": ("Hands up.", "Help in."),
        "RT": ("Hands up.",),
    }


CRACKED = """
run Z
    carrier is back
    carrier aims playside D
    line blocks on or climb
    wide is strong #2
    wide blocks {how}
    everyone else blocks stalk

dress Z
    in Three Two
    against Base

look Base
    E in 5, strong
    T in 3, strong
    N in 1, weak
    J in 5, weak
    S at outside end, strong, 3 deep
    M at outside tackle, strong, 6 deep
    W in 30, weak
    C at strong #1, 8 deep
    H at strong #2, 12 deep
    D at weak #2, 8 deep
    B at weak #1, 8 deep
    F at middle, 13 deep
    C, B, F, H, S, M, W, D covers hole
"""


@pytest.mark.parametrize(
    ("how", "whom"), [("crack", "S"), ("crack overhang", "S"), ("crack middle linebacker", "M")]
)
def test_a_receiver_cracks_whom_his_line_describes(how: str, whom: str) -> None:
    texts = [s for s in base() if not s.name.endswith("looks.play")]
    made = Session((*texts, Source("tried.play", CRACKED.format(how=how))), "tried")
    assert made.season is not None, [d.code for d in made.diagnostics]
    play = next(p for p in made.season.plays if p.call.concept == "Z")
    task = play.runs("wide")
    assert task is not None and [hit.defender for hit in task.hits] == [whom]


@pytest.mark.parametrize(("yards", "found"), [("1", False), ("1.5", False), ("2", True)])
def test_who_is_no_wing_is_told_how_near_one_stands(yards: str, found: bool) -> None:
    text = KILLED.replace("e is tight end", "e is wing") + DRESSED.replace(
        "W at away, end", f"W at away, {yards} outside tackle, off line"
    )
    told = [d.message for d in compile_case("tried.play", text).found if d.code == "E620"]
    near = "at most 1.8 yards outside its last man: W is 2 outside"
    assert [near in one for one in told if "Tight" in one] == [True] * found


LEAK = """
concept Leak
    leak is tight end
    leak runs check edge then {over}
    each #1 runs go
    back runs swing
    everyone else runs seam
    feet 3, hitch
    read {read} on hitch

dress Leak
    in {where}

formation Tight extends Three Two
    W at away, end, on line
    X at away, numbers, off line
"""


@pytest.mark.parametrize("over", ["over", "over 8", "over 3 outside tackle"])
def test_over_behind_a_check_is_the_route_unless_a_place_follows(over: str) -> None:
    told = compile_case("tried.play", LEAK.format(over=over, read="leak", where="Tight"))
    assert not [code for code in told.codes if code.startswith("E")], told.shown


@pytest.mark.parametrize(("read", "last"), [("leak", "strong #2"), ("back", "nobody")])
def test_nobody_is_not_offered_for_a_man_who_is_looked_at(read: str, last: str) -> None:
    told = compile_case("tried.play", LEAK.format(over="over 8", read=read, where="Three Two"))
    assert f"write `leak is tight end or {last}`" in told.shown


@pytest.mark.parametrize(
    ("line", "wrong", "nearest"),
    [("    give to swep if he stays\n", "swep", "sweep"),
     ("    back checks edg then releases\n", "edg", "edge")],
)  # fmt: skip
def test_a_misspelt_name_is_told_with_the_nearest_and_not_as_other_words(
    line: str, wrong: str, nearest: str
) -> None:
    run = "run Bash\n    carrier is quarterback\n    sweep is back\n    key end man on line\n"
    told = compile_case("tried.play", (run if "sweep" in nearest else "concept K\n") + line)
    found = [d for d in told.found if d.nearest and d.nearest[0] == nearest]
    assert len(found) == 1 and "E404" not in told.codes, told.shown
    assert f"`{wrong}`" in told.shown
