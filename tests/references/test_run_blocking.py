"""Runs against fronts, worked out by hand from published coaching texts.

Each run is written in the words of its source's rule, each answer is what a line coach gets when
he puts that rule to the front by hand. The source stands beside each run; where a front is not in
the source, the answer is the rule's own and marked as common practice.
"""

from __future__ import annotations

from functools import cache

import pytest

from stemline.diagnostics.render import render
from stemline.football.field import BallSpot, Way
from stemline.football.play import Play
from stemline.playbook.playbook import Playbook
from stemline.resolve.expand import expand
from stemline.resolve.order import Order
from stemline.session import Session
from stemline.source import NOWHERE, Source

BOOK = """
playbook Reference
    version 1
    code high school

personnel All
    Q is quarterback
    B, F is back
    X, Z is wideout
    H is slot
    Y is tight end

formation Open
    X at away, numbers, on line
    H at call, 6 outside tackle, off line
    Z at call, numbers, on line
    F at call, 2 outside ball, 5 deep
    B at ball, 7 deep
    Q at ball, 4 deep

formation Wing
    X at away, numbers, on line
    Y at call, end, on line
    H at call, 1.5 outside Y, off line
    F at ball, 4 deep
    B at ball, 7 deep
    Q at ball, under centre

look Over
    E at 5, strong
    T at 3, strong
    N at 1, weak
    J at 5, weak
    M at 10, strong
    W at 30, weak
    S at outside end, strong, 5 deep
    C at strong #1, 7 deep
    D at weak #1, 7 deep
    R at hash, strong, 11 deep
    A at hash, weak, 11 deep

look Inside Three extends Over
    T at 2i, strong

look Under extends Over
    T at 3, weak
    N at 1, strong
    M at 30, strong

look Odd
    E at 5, strong
    N at 0
    T at 5, weak
    M at 20, strong
    W at 20, weak
    S at tackle, strong, 9 deep
    J at tackle, weak, 9 deep
    C at strong #1, 7 deep
    D at weak #1, 7 deep
    R at hash, strong, 12 deep
    A at hash, weak, 12 deep

look Bear
    E at 9, strong
    T at 3, strong
    N at 0
    L at 3, weak
    J at 9, weak
    M at 20, strong
    W at 20, weak
    C at strong #1, 7 deep
    D at weak #1, 7 deep
    S at hash, strong, 9 deep
    R at ball, 12 deep
"""

# "Inside the Playbook: Blocking Power O", Maize n Brew, 30 Aug 2013: playside guard and tackle take
# the man head-up or inside unless they are called down, eyes on the backside linebacker; the centre
# is "on or first lineman away"; guard pulls through the hole, tackle seals inside, fullback kicks
# the end man. The same in "Running Power", T. Sukine, 24 Apr 2016: gap, on, linebacker.
POWER = """
run Power
    carrier is back
    carrier aims playside B
    kick is fullback
    kick blocks kick end man on line
    playside tackle blocks down or double with guard or on then far linebacker
    playside guard blocks down or on or double with centre then far linebacker
    centre blocks back or on
    backside guard blocks wrap to near linebacker
    backside tackle blocks hinge
"""

# "Run Game: Counter Trey", I Teach, I Coach, I Blog, Jan 2011: everybody from the centre to the
# playside takes whoever crosses his face on an angle away from the play, doubles where he can and
# comes off on the linebacker; the guard traps the last man on the line, the tackle leads up on the
# playside linebacker.
COUNTER = """
run Counter
    carrier is back
    carrier aims backside A then playside B
    playside tackle blocks down or double with guard or on then far linebacker
    playside guard blocks down or on or double with centre then far linebacker
    centre blocks back or on
    backside guard blocks kick end man on line
    backside tackle blocks wrap to near linebacker
"""

# "Zone Blocking Rules" (two pages, Scribd 93230248): a covered man blocks; an uncovered man helps
# the covered man to his playside; of two neighbours who are both covered the playside one is on his
# own; both look at the linebacker and one of them takes him.
ZONE = """
run Zone
    carrier is back
    carrier aims playside A
    playside tackle blocks on or climb
    playside guard blocks on or double with tackle or climb then near linebacker
    centre blocks on or double with playside guard then near linebacker
    backside guard blocks on or double with centre then far linebacker
    backside tackle blocks on or double with guard or hinge then far linebacker
"""

# "X's & O's: Split Zone", American Football Coaches Association, Insider: playside tackle man on,
# playside guard base, centre and an uncovered backside guard double to the point linebacker, the
# backside tackle zones to the backside linebacker, another man kicks the end.
SPLIT = """
run Split
    carrier is back
    carrier aims playside A
    kick is fullback
    kick blocks sift
    playside tackle blocks on
    playside guard blocks on or double with centre then near linebacker
    centre blocks on or double with backside guard then near linebacker
    backside guard blocks on or double with centre then near linebacker
    backside tackle blocks double with guard or climb to far linebacker
"""

# "Blocking Inside Zone Read Against an Even Front", Spread Offense Football: six in the box, five
# to block, so one of them, the end to the backside, is read.
READ = """
run Read extends Zone
    backside tackle blocks double with guard or climb to far linebacker
    key backside end man on line
    give if he stays
    pull if he chases
"""

# "Blocking Rules" (Scribd 44551061), the reach rules: uncovered, reach and overtake the lineman in
# front; covered, take the lineman in the gap in front if there is one, else rip through and run up.
REACH = """
run Reach
    carrier is back
    carrier aims playside tackle
    playside tackle blocks reach or climb
    playside guard blocks reach or climb
    centre blocks reach or climb
    backside guard blocks scoop
    backside tackle blocks scoop
"""

# "Beginner Series, Guide to Basic Plays, Part 2: HB Iso and Power-O", r/nfl, 20 Mar 2015: covered,
# block him; uncovered, double the nearest one and go on to a linebacker; the fullback has his own.
ISO = """
run Iso
    carrier is back
    carrier aims playside B
    lead is fullback
    lead blocks lead on near linebacker
    playside tackle blocks on
    playside guard blocks on or climb to far linebacker
    centre blocks on or double with backside guard then far linebacker
    backside guard blocks on or double with centre then far linebacker
    backside tackle blocks on
"""

# "13 Variations of the Wing-T Trap Game", K. McElvany, X&O Labs, 2012: playside tackle by the
# cleanest release to the first linebacker inside; playside guard gap, double team, backer; against
# an odd front he doubles the nose with the centre to the backside linebacker.
TRAP = """
run Trap
    carrier is back
    carrier aims playside A
    playside tackle blocks climb to near linebacker
    playside guard blocks down or double with centre or climb to far linebacker then far linebacker
    centre blocks back or double with playside guard or on
    backside guard blocks trap first man past centre
    backside tackle blocks cut off or climb
"""

# "Buck Sweep", Just Play Solutions, and "How to install Buck Sweep", All Access Coaching: end and
# tackle gap, down, linebacker; the playside guard kicks the first man past the wing; centre on,
# away, reach; the backside guard turns up on the inside linebacker; the wing takes the first free
# man inside; the backside tackle has the B gap.
BUCK = """
run Buck
    carrier is back
    carrier aims outside the end
    wing is wing
    wing blocks down or climb
    playside end blocks down or climb to near linebacker
    playside tackle blocks down or climb to near linebacker
    playside guard blocks pull kick overhang
    centre blocks on or back or reach
    backside guard blocks wrap to near linebacker
    backside tackle blocks cut off
"""

# "Simple Rules for the Pin and Pull Play", Youth Football Online: a defender in the gap away from
# the call, block down on him; nobody from your playside eye to the next man's, pull.
PIN = """
run Pin
    carrier is back
    carrier aims outside the end
    playside end blocks pin or arc
    playside tackle blocks pin or pull to force defender
    playside guard blocks pin or pull to force defender
    centre blocks pin or pull to near linebacker
    backside guard blocks scoop
    backside tackle blocks scoop
"""

# "Duo/Double: The Best Play in Football", Z. Dunn: two double teams, power without a puller; and
# "Torque Technique on Gap Double Teams", X&O Labs: the playside tackle works to the linebacker whom
# the centre points out, the centre to the next one in the box.
DUO = """
run Duo
    carrier is back
    carrier aims playside B
    playside end blocks on or down
    playside tackle blocks double with guard or on then middle linebacker
    playside guard blocks double with tackle or on
    centre blocks double with backside guard or on then far linebacker
    backside guard blocks double with centre or on
    backside tackle blocks on
"""

# "Inside Veer Rules", Flexbone Nation, 21 Jan 2015: the first man on or outside the tackle is left
# for the dive read and the next for the pitch; the tackle releases inside to the linebacker, the
# backside scoops its inside gaps.
VEER = """
run Veer
    carrier is back
    carrier aims playside A
    playside tackle blocks climb to near linebacker
    playside guard blocks on or double with centre then near linebacker
    centre blocks on or reach or climb
    backside guard blocks scoop
    backside tackle blocks scoop
    key first man outside tackle
    give if he stays
    pitch off second man outside tackle if he comes
"""

# The front, the run, its formation, and who takes whom: "T" alone, "T+RG" with the right guard,
# "> W" when he goes on to W; "" blocks nobody. The ball goes right.
PAIRS: list[tuple[str, str, str, dict[str, str]]] = [
    ("Over", POWER, "Open", {
        "RT": "T+RG", "RG": "T+RT > W", "C": "N", "LG": "M", "LT": "J", "F": "E"}),
    ("Under", POWER, "Open", {
        "RT": "W", "RG": "N", "C": "T", "LG": "M", "LT": "J", "F": "E"}),
    ("Odd", POWER, "Open", {
        "RG": "N+C > W", "C": "N+RG", "LG": "M", "LT": "T", "F": "E"}),
    ("Bear", POWER, "Open", {
        "RT": "T+RG", "RG": "T+RT > W", "C": "N", "LG": "M", "LT": "L", "F": "E"}),
    ("Over", COUNTER, "Open", {
        "RT": "T+RG", "RG": "T+RT > W", "C": "N", "LG": "E", "LT": "M"}),
    ("Under", COUNTER, "Open", {"RT": "W", "RG": "N", "C": "T", "LG": "E", "LT": "M"}),
    ("Odd", COUNTER, "Open", {"RG": "N+C > W", "C": "N+RG", "LG": "E", "LT": "M"}),
    ("Bear", COUNTER, "Open", {"RT": "T", "RG": "N", "C": "L", "LG": "E", "LT": "M"}),
    ("Over", ZONE, "Open", {"RT": "E", "RG": "T", "C": "N+LG > M", "LG": "N+C", "LT": "J"}),
    ("Odd", ZONE, "Open", {"RT": "E", "RG": "M", "C": "N+LG", "LG": "N+C > W", "LT": "T"}),
    ("Bear", ZONE, "Open", {"RT": "E", "RG": "T", "C": "N", "LG": "L", "LT": "J"}),
    ("Over", SPLIT, "Open", {
        "RT": "E", "RG": "T", "C": "N+LG > M", "LG": "N+C", "LT": "W", "F": "J"}),
    ("Under", SPLIT, "Open", {
        "RT": "E", "RG": "N+C > M", "C": "N+RG", "LG": "T+LT > W", "LT": "T+LG", "F": "J"}),
    ("Over", READ, "Open", {
        "RT": "E", "RG": "T", "C": "N+LG > M", "LG": "N+C", "LT": "W"}),
    ("Over", REACH, "Open", {"RT": "E", "RG": "T", "C": "M", "LG": "N", "LT": "W"}),
    ("Under", REACH, "Open", {"RT": "E", "RG": "M", "C": "N", "LG": "W", "LT": "T"}),
    ("Odd", REACH, "Open", {"RT": "E", "RG": "M", "C": "N+LG", "LG": "N+C > W", "LT": "T"}),
    ("Over", ISO, "Open", {
        "RT": "E", "RG": "T", "C": "N+LG", "LG": "N+C > W", "LT": "J", "F": "M"}),
    ("Odd", ISO, "Open", {"RT": "E", "RG": "N+C", "C": "N+RG", "LG": "W", "LT": "T", "F": "M"}),
    ("Over", TRAP, "Open", {"RT": "M", "RG": "W", "C": "N", "LG": "T", "LT": "J"}),
    ("Odd", TRAP, "Open", {"RT": "M", "RG": "N+C > W", "C": "N+RG", "LG": "E", "LT": "T"}),
    # Common practice: the short trap, on the man in the playside A gap.
    ("Under", TRAP, "Open", {"RT": "M", "RG": "W", "C": "T", "LG": "N", "LT": "J"}),
    ("Over", BUCK, "Wing", {
        "Y": "E", "RT": "T", "RG": "S", "C": "N", "LG": "M", "LT": "J", "H": "W"}),
    ("Over", PIN, "Wing", {"Y": "E", "RT": "T", "RG": "S", "C": "N+LG > M"}),
    ("Over", DUO, "Wing", {
        "Y": "E", "RT": "T+RG > M", "RG": "T+RT", "C": "N+LG > W", "LG": "N+C", "LT": "J"}),
    ("Odd", VEER, "Open", {"RT": "M", "RG": "N+C", "C": "N+RG", "LG": "W", "LT": "T"}),
]  # fmt: skip
RUNS = (POWER, COUNTER, ZONE, SPLIT, READ, REACH, ISO, TRAP, BUCK, PIN, DUO, VEER)


@cache
def book() -> Playbook:
    sources = [Source("reference.play", BOOK), *(Source("run.play", run) for run in RUNS)]
    result = Session(sources, "reference")
    errors = [d for d in result.diagnostics if d.is_error]
    assert not errors and result.book, render(errors, {s.name: s for s in sources})
    return result.book


def name_of(run: str) -> str:
    return run.split()[1]


def against(front: str, run: str, formation: str) -> Play:
    order = Order(
        formation.casefold(), Way.RIGHT, "", name_of(run).casefold(), (), "", NOWHERE, NOWHERE
    )
    play, _ = expand(book(), order, BallSpot.MIDDLE, (), front.casefold())
    assert play is not None
    return play


def taken(play: Play, man: str) -> str:
    """A man's hits as the table above writes them."""
    hits = play.assignment(man).hits
    if not hits:
        return ""
    others = [
        a.man
        for a in play.assignments
        if a.man != man and a.hits and a.hits[0].defender == hits[0].defender
    ]
    return "+".join([hits[0].defender, *others]) + "".join(f" > {h.defender}" for h in hits[1:])


@pytest.mark.parametrize(
    ("front", "run", "formation", "wanted"),
    PAIRS,
    ids=[f"{name_of(run)} against {front}" for front, run, _, _ in PAIRS],
)
def test_who_takes_whom(front: str, run: str, formation: str, wanted: dict[str, str]) -> None:
    play = against(front, run, formation)
    assert {man: taken(play, man) for man in wanted} == wanted


def test_there_are_enough_pairs() -> None:
    assert len({(front, run) for front, run, _, _ in PAIRS}) >= 20


@pytest.mark.parametrize(
    ("front", "run", "keys", "free"),
    [
        ("Over", READ, ["J"], ()),
        ("Over", ZONE, [], ("W",)),
        ("Over", POWER, [], ()),
        ("Over", COUNTER, [], ("J",)),
        ("Odd", VEER, ["E", "S"], ()),
    ],
)
def test_who_is_read_and_who_is_left(
    front: str, run: str, keys: list[str], free: tuple[str, ...]
) -> None:
    play = against(front, run, "Open")
    assert [k.man for k in play.keys] == keys
    assert play.unblocked == free


def test_a_three_technique_moved_inside_changes_two_jobs_and_not_the_text() -> None:
    """Common practice: against a 2i the playside guard is covered inside, so he blocks down on him
    alone and the tackle, with nobody in his gap, goes straight to the linebacker."""
    three, inside = (against(front, POWER, "Open") for front in ("Over", "Inside Three"))
    changed = {
        m.label for m in three.men if m.interior and taken(three, m.label) != taken(inside, m.label)
    }
    assert changed == {"RG", "RT"}
    assert taken(inside, "RG") == "T"
    assert taken(inside, "RT") == "W"
