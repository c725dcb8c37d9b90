"""Fronts and the blocks against them: what one man sees, and what must hold for all together."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from stemline.football.blocking.run_answers import strong, weak
from stemline.football.blocking.run_rules import MEANINGS, BlockWay, Rule, Takes, Task
from stemline.football.blocking.run_scheme import Scheme, scheme
from stemline.football.defence.described import Described
from stemline.football.defence.fronts import Front, at_place, front_of, line_of, wings
from stemline.football.defence.techniques import surface, technique_x
from stemline.football.defenders import Defence, Defender, Level
from stemline.football.field import Side
from stemline.football.play import Man
from stemline.football.players import Position
from stemline.geometry.paths import Point
from stemline.source import NOWHERE

SPLIT = 1.3
BASE = ("LT", "LG", "C", "RG", "RT")
DOWN = ("0", "1", "2i", "2", "3", "4i", "4", "5", "9")
BACKERS = ("00", "10", "20", "30", "40", "50")


def line(*labels: str, ends: tuple[str, ...] = ()) -> tuple[Man, ...]:
    """Linemen a split apart around C, and tight ends outside them: YR to the right, YL left."""
    centre = labels.index("C")
    positions = {"T": Position.TACKLE, "G": Position.GUARD, "C": Position.CENTRE}
    men = [
        Man(x, positions[x[-1]], at, at, True, None, NOWHERE)
        for x, at in ((x, Point((i - centre) * SPLIT, 0)) for i, x in enumerate(labels))
    ]
    for end in ends:
        side = 1 if end.endswith("R") else -1
        last = max(m.snap.x * side for m in men)
        at = Point(side * (last + SPLIT), 0)
        men.append(Man(end, Position.TIGHT_END, at, at, True, None, NOWHERE))
    return tuple(men)


def defence(men: tuple[Man, ...], **where: str) -> Defence:
    """Defenders by technique and side: ``T="3 R"``; two figures are a linebacker, 4.5 deep."""
    made = []
    for label, place in where.items():
        technique, _, side = place.partition(" ")
        there = Side.LEFT if side == "L" else Side.RIGHT
        level = Level.SECOND if len(technique) == 2 and technique.isdigit() else Level.LINE
        y = 4.5 if level is Level.SECOND else 0.8
        x = technique_x(technique, surface(men, there))
        made.append(Defender(label, Point(x, y), level, technique, None, NOWHERE))
    return Defence("Test", Side.RIGHT, tuple(made), (), NOWHERE)


def front(men: tuple[Man, ...], toward: Side = Side.RIGHT, /, **where: str) -> Front:
    return front_of(men, defence(men, **where), toward)


def labels(found: tuple[Defender, ...]) -> str:
    return " ".join(d.label for d in found)


FIVE = line(*BASE)
OVER = {"E": "5 R", "T": "3 R", "N": "1 L", "J": "5 L", "M": "10 R", "W": "30 L"}


# What one man sees.


@pytest.mark.parametrize(
    ("man", "over", "inside", "outside"),
    [("LT", "J", "", "J"), ("LG", "", "N", ""), ("C", "N", "N", ""), ("RG", "T", "", "T"),
     ("RT", "E", "T", "E")],
)  # fmt: skip
def test_who_is_over_a_man_and_in_his_gaps(man: str, over: str, inside: str, outside: str) -> None:
    even = front(FIVE, **OVER)
    x = next(m.snap.x for m in FIVE if m.label == man)
    out = even.out(x)
    assert labels(even.over(x)) == over
    assert labels(even.in_gap(x, out.other)) == inside
    assert labels(even.in_gap(x, out)) == outside


def test_head_up_men_are_in_no_gap() -> None:
    odd = front(FIVE, N="0", E="4 R", T="4 L")
    assert labels(odd.in_gap(1.3, Side.LEFT)) == ""
    assert labels(odd.in_gap(1.3, Side.LEFT, heads=True)) == "N"
    assert labels(odd.in_gap(1.3, Side.RIGHT)) == ""
    assert labels(odd.between(0.0, 1.3)) == "N"
    assert labels(odd.between(1.3, 2.6)) == "E"


def test_the_box_ends_a_yard_and_a_half_outside_the_line() -> None:
    men = line(*BASE, ends=("YR",))
    wide = front(men, S="60 R", X="50 L")
    assert labels(wide.second_level) == "X S"
    apex = replace(wide.defenders[0], at=Point(3.9 + 1.6, 4.5))
    assert labels(Front(wide.line, (apex,), Side.RIGHT).second_level) == ""


@pytest.mark.parametrize(
    ("what", "side", "found"),
    [
        ("end man on line", None, "E"),
        ("end man on line", Side.LEFT, "J"),
        ("nose", None, "N"),
        ("first man past centre", None, "T E"),
        ("first man outside guard", None, "T E"),
        ("first man outside tackle", None, "E"),
        ("second man outside tackle", None, ""),
        ("linebacker", Side.RIGHT, "M W"),
        ("linebacker", None, "M W"),
        ("near linebacker", None, "M W"),
        ("far linebacker", None, "W M"),
        ("middle linebacker", None, "M W"),
    ],
)
def test_described_defenders(what: str, side: Side | None, found: str) -> None:
    assert labels(front(FIVE, **OVER).described(Described(what, side), 1.3)) == found


def test_the_force_is_the_overhang_else_the_nearest_of_the_secondary() -> None:
    """grammar/reference.md says so of `force defender`; nobody has to be called the force."""
    base = front(FIVE, **OVER)
    man = base.defenders[0]
    near, far = (
        replace(man, label=label, at=Point(x, y), level=Level.DEEP, technique="")
        for label, x, y in (("R", 4.0, 9.0), ("C", 15.0, 7.0))
    )
    hangs = replace(man, label="S", at=Point(4.4, 5.0), level=Level.SECOND, technique="")
    asked = Described("force defender", None)
    plain = replace(base, defenders=(*base.defenders, far, near))
    assert labels(plain.described(asked, 1.3)) == "R C"
    hung = replace(base, defenders=(*base.defenders, far, near, hangs))
    assert labels(hung.described(asked, 1.3)) == "S R C"


SECONDARY = {"C": (21, 7), "H": (13, 10), "F": (1, 11), "B": (-8, 7)}
"""From the left hash: both safeties stand to the wide side of the ball, a corner near to it."""


@pytest.mark.parametrize(
    ("deep", "side", "near"),
    [
        (SECONDARY, Side.RIGHT, "H"),
        (SECONDARY, Side.LEFT, "F"),
        ({**SECONDARY, "F": (6, 13), "H": (13, 7)}, Side.LEFT, "F"),
        ({**SECONDARY, "F": (6, 13), "H": (13, 7)}, Side.RIGHT, "F"),
        ({"C": (15, 7), "H": (5, 10), "F": (-5, 12), "B": (-15, 7)}, Side.RIGHT, "H"),
        ({"C": (15, 7), "H": (5, 10), "F": (-5, 12), "B": (-15, 7)}, Side.LEFT, "F"),
        ({"C": (15, 8), "H": (8, 8), "F": (0, 13), "D": (-8, 8), "B": (-15, 8)}, Side.LEFT, "F"),
        ({"C": (20, 7), "H": (14, 9), "F": (5, 9), "B": (-15, 7)}, Side.LEFT, "F"),
        ({"C": (15, 7), "R": (-8, 9), "F": (8, 12.5), "B": (-15, 7)}, Side.LEFT, "R"),
        ({"C": (15, 7), "R": (-8, 9), "F": (8, 12.5), "B": (-15, 7)}, Side.RIGHT, "F"),
    ],
)
def test_the_near_safety_is_the_nearer_of_the_deep_men(
    deep: dict[str, tuple[float, float]], side: Side, near: str
) -> None:
    """Whatever side of the ball they stand on; a corner is none, and a single one is near to
    both."""
    base = front(FIVE, **OVER)
    man = base.defenders[0]
    made = tuple(
        replace(man, label=label, at=Point(*at), level=Level.DEEP) for label, at in deep.items()
    )
    wide = (-9.0, 14.0, 21.0) if deep is SECONDARY else (-15.0, 8.0, 15.0)
    middle = 8.9 if deep["B"] == SECONDARY["B"] else 0.0
    there = replace(base, defenders=(*base.defenders, *made), wide=wide, middle=middle)
    assert labels(there.described(Described("near safety", side), 0.0)[:1]) == near


@pytest.mark.parametrize(("free", "near"), [((17, 12.5), "R F"), ((8.5, 12.5), "F F")])
def test_from_a_hash_the_halves_are_the_fields(free: tuple[float, float], near: str) -> None:
    """From the left one: the shallower safety has the short half where the deep one has the other,
    and none where that one is alone in the middle of the field."""
    base = front(FIVE, **OVER)
    man = base.defenders[0]
    made = tuple(
        replace(man, label=label, at=Point(*at), level=Level.DEEP)
        for label, at in {"C": (25, 7), "F": free, "R": (1, 9), "B": (-9, 7)}.items()
    )
    there = replace(base, defenders=made, wide=(-9.0, 14.0, 25.0), middle=8.9)
    asked = (Described("near safety", side) for side in Side)
    assert " ".join(labels(there.described(a, 0.0)[:1]) for a in asked) == near


def test_descriptions_turn_with_the_play() -> None:
    left = front(FIVE, Side.LEFT, **OVER)
    assert labels(left.described(Described("end man on line", None), 0.0)) == "J"
    assert labels(left.described(Described("near linebacker", None), 0.0)) == "W M"


@pytest.mark.parametrize(
    ("men", "place", "side", "who"),
    [
        (FIVE, "guard", Side.LEFT, "LG"),
        (FIVE, "end", Side.LEFT, ""),
        (FIVE, "outside tackle", Side.RIGHT, ""),
        (line(*BASE, ends=("YR",)), "end", Side.RIGHT, "YR"),
        (line("LG", "C", "RG", "RT", "LT"), "outside tackle", Side.RIGHT, "LT"),
        (line("LG", "C", "RG", "RT", "LT"), "tackle", Side.LEFT, ""),
        (line("C", ends=("YL", "YR")), "end", Side.LEFT, "YL"),
        (line("LG", "C", "RG"), "tackle", Side.RIGHT, ""),
    ],
)
def test_places_on_any_line(men: tuple[Man, ...], place: str, side: Side, who: str) -> None:
    assert at_place(men, place, side) == who
    assert at_place(men, "centre", None) == "C"


def test_a_wing_is_one_by_place() -> None:
    men = line(*BASE, ends=("YR",))
    spots = {"A": Point(5.4, -1), "B": Point(7.5, -1), "D": Point(5.4, -4), "E": Point(-4.1, -1)}
    others = tuple(Man(x, Position.SLOT, at, at, False, None, NOWHERE) for x, at in spots.items())
    assert set(wings((*men, *others))) == {"A", "E"}


# One rule, one man.


@pytest.mark.parametrize(
    ("way", "man", "sure", "near"),
    [
        (BlockWay.ON, "RG", "T", "T"),
        (BlockWay.ON, "LG", "", "N"),
        (BlockWay.REACH, "RG", "T", "T"),
        (BlockWay.REACH, "C", "", "N"),
        (BlockWay.DOWN, "RT", "T", "E T"),
        (BlockWay.DOWN, "RG", "", "T"),
        (BlockWay.PIN, "RT", "T", "E T"),
        (BlockWay.BACK, "C", "N", ""),
        (BlockWay.OUT, "RT", "E", ""),
        (BlockWay.SCOOP, "LG", "N", ""),
        (BlockWay.CUT_OFF, "LT", "J", ""),
        (BlockWay.HINGE, "LT", "J", ""),
    ],
)
def test_whom_a_rule_asks_for(way: BlockWay, man: str, sure: str, near: str) -> None:
    even = front(FIVE, **OVER)
    x = next(m.snap.x for m in FIVE if m.label == man)
    assert labels(strong(even, x, way)) == sure
    assert labels(weak(even, x, way)) == near


def test_a_double_team_takes_from_nose_to_nose() -> None:
    even = front(FIVE, **OVER)
    assert labels(strong(even, 1.3, BlockWay.DOUBLE, 2.6)) == "T"
    assert labels(strong(even, 0.0, BlockWay.DOUBLE, 1.3)) == ""


# All together.

_LINE_WAYS = [w for w in BlockWay if MEANINGS[w].takes in (Takes.LINE, Takes.LEFT_OVER)]
_UP_WAYS = [
    BlockWay.CLIMB,
    BlockWay.WRAP,
    BlockWay.KICK,
    BlockWay.TRAP,
    BlockWay.LEAVE,
    BlockWay.PULL,
    BlockWay.ARC,
]
_THEN = ("near linebacker", "far linebacker", "middle linebacker", "linebacker")
_LINES = (
    FIVE,
    line(*BASE, ends=("YR",)),
    line(*BASE, ends=("YL", "YR")),
    line("LG", "C", "RG", "RT", "LT"),
    line("LG", "C", "RG", ends=("YL", "YR")),
    line("C", ends=("YL", "YR")),
)


@st.composite
def problems(draw: st.DrawFn) -> tuple[tuple[Man, ...], Defence, list[Task], Side]:
    """A line, a front of up to eight and six, any rules for each man of the line."""
    men = draw(st.sampled_from(_LINES))
    names = iter("ABDEFGHIJKLMNOPQSTUVXZ")
    where = {}
    for table, most in ((DOWN, 4), (BACKERS, 3)):
        for side in "LR":
            for technique in draw(st.lists(st.sampled_from(table), max_size=most, unique=True)):
                if side == "R" or technique not in ("0", "00"):
                    where[next(names)] = f"{technique} {side}"
    tasks = []
    on_line = line_of(men)
    for man in on_line:
        rules = []
        for way in draw(st.lists(st.sampled_from(_LINE_WAYS + _UP_WAYS), min_size=1, max_size=4)):
            beside = [b.label for a, b in pairwise(on_line) if a is man]
            beside += [a.label for a, b in pairwise(on_line) if b is man]
            partner = draw(st.sampled_from(beside)) if way is BlockWay.DOUBLE else ""
            rules.append(Rule(way, partner))
        then = draw(st.lists(st.sampled_from(_THEN), max_size=1))
        tasks.append(Task(man.label, tuple(rules), tuple(Described(t, None) for t in then)))
    return men, defence(men, **where), tasks, draw(st.sampled_from(Side))


def solved(men: tuple[Man, ...], against: Defence, tasks: list[Task], toward: Side) -> Scheme:
    return scheme(front_of(men, against, toward), tasks, {m.label: m for m in men})


@given(problems())
@settings(max_examples=120, deadline=None)
def test_what_every_line_coach_asks_for(
    problem: tuple[tuple[Man, ...], Defence, list[Task], Side],
) -> None:
    men, against, tasks, toward = problem
    made = solved(men, against, tasks, toward)
    assert {b.man for b in made.blocks} == {t.man for t in tasks}
    firsts = Counter(b.defender for b in made.blocks if b.defender)
    climbs = Counter(b.climb for b in made.blocks if b.climb)
    assert max(firsts.values(), default=0) <= 2, "a defender is blocked by three"
    assert max(climbs.values(), default=0) <= 1, "two climb to one man"
    assert not firsts.keys() & climbs.keys(), "one climbs to a man who is blocked"
    for block in made.blocks:
        partners = [b.man for b in made.blocks if b.defender == block.defender and b is not block]
        if block.defender:
            assert sorted(block.with_) == sorted(partners), "a partner does not know of him"
        if block.climb:
            assert partners, "a man leaves his man alone to climb"
    second = {d.label for d in against.defenders if d.level is Level.SECOND}
    assert all(firsts[label] == 1 for label in second & firsts.keys()), "two take one linebacker"
    assert set(made.free) == {d.label for d in front_of(men, against, toward).box} - {
        *firsts, *climbs}  # fmt: skip


@given(problems())
@settings(max_examples=80, deadline=None)
def test_a_front_seen_in_a_mirror_is_blocked_in_the_mirror(
    problem: tuple[tuple[Man, ...], Defence, list[Task], Side],
) -> None:
    men, against, tasks, toward = problem
    turned = tuple(replace(m, at=m.at.mirrored(), snap=m.snap.mirrored()) for m in men)
    other = replace(
        against, defenders=tuple(replace(d, at=d.at.mirrored()) for d in against.defenders)
    )
    made = solved(men, against, tasks, toward)
    mirror = solved(turned, other, tasks, toward.other)
    assert {b.man: b for b in made.blocks} == {b.man: b for b in mirror.blocks}
    assert set(made.free) == set(mirror.free)


def test_nobody_is_left_while_two_block_one_who_could_be_spared() -> None:
    """Against a bear the playside passes everybody one man inward: an augmenting path."""
    bear = front(FIVE, E="9 R", T="3 R", N="0", L="3 L", J="9 L")
    tasks = [
        Task("RT", (Rule(BlockWay.DOWN),)),
        Task("RG", (Rule(BlockWay.DOWN), Rule(BlockWay.ON))),
        Task("C", (Rule(BlockWay.BACK),)),
    ]
    made = scheme(bear, tasks, {m.label: m for m in FIVE})
    assert {b.man: b.defender for b in made.blocks} == {"RT": "T", "RG": "N", "C": "L"}


def test_a_double_team_needs_both_men() -> None:
    odd = front(FIVE, N="0", M="20 R")
    alone = [
        Task("C", (Rule(BlockWay.CLIMB),)),
        Task("RG", (Rule(BlockWay.DOUBLE, "C"), Rule(BlockWay.CLIMB))),
    ]
    both = [Task("C", (Rule(BlockWay.ON),)), alone[1]]
    men = {m.label: m for m in FIVE}
    assert [b.with_ for b in scheme(odd, alone, men).blocks] == [(), ()]
    assert [b.with_ for b in scheme(odd, both, men).blocks] == [("C",), ("RG",)]


def test_a_man_who_is_read_is_blocked_by_nobody() -> None:
    even = front(FIVE, **OVER)
    made = scheme(even, [Task("LT", (Rule(BlockWay.ON),))], {m.label: m for m in FIVE}, ["J"])
    block = made.of("LT")
    assert block is not None and block.defender == "W"
    assert "J" not in made.free


def test_the_trapped_man_is_left_by_the_one_over_him() -> None:
    even = front(FIVE, **OVER)
    tasks = [
        Task("LG", (Rule(BlockWay.TRAP),)),
        Task(
            "RG", (Rule(BlockWay.ON), Rule(BlockWay.LEAVE)), (Described("near linebacker", None),)
        ),
    ]
    made = scheme(even, tasks, {m.label: m for m in FIVE})
    assert {b.man: b.defender for b in made.blocks} == {"LG": "T", "RG": "M"}


# Receivers and the secondary.

SPREAD = {"X": -18.0, "H": 7.0, "Z": 18.0}


def stalked(wide: dict[str, float], **secondary: tuple[float, float]) -> dict[str, str]:
    """Whom each receiver stalks; ``wide`` and ``secondary`` by x, and x and y."""
    men = FIVE + tuple(
        Man(label, Position.WIDEOUT, Point(x, 0), Point(x, 0), True, None, NOWHERE)
        for label, x in wide.items()
    )
    deep = tuple(
        Defender(label, Point(x, y), Level.DEEP, "", None, NOWHERE)
        for label, (x, y) in secondary.items()
    )
    look = replace(defence(men), defenders=deep)
    made = solved(men, look, [Task(label, (Rule(BlockWay.STALK),)) for label in wide], Side.RIGHT)
    return {b.man: b.defender for b in made.blocks}


def test_each_receiver_stalks_the_man_over_him() -> None:
    """The inside one has nobody over him: he goes to the safety, not to the corner."""
    made = stalked(SPREAD, C=(18.5, 7), B=(-18.5, 7), F=(0, 12))
    assert made == {"X": "B", "H": "F", "Z": "C"}


def test_a_receiver_with_nobody_over_him_climbs_to_a_safety_of_his_side_or_in_the_middle() -> None:
    assert stalked({"X": -18.0}, C=(18, 7), F=(1, 12)) == {"X": "F"}
    assert stalked({"X": -18.0}, C=(18, 7), F=(1, 12), R=(-8, 11)) == {"X": "R"}


def test_no_receiver_stalks_across_the_formation() -> None:
    assert stalked({"X": -18.0}, C=(18, 7), R=(4, 9)) == {"X": ""}


def test_one_for_whom_nobody_is_left_runs_off_a_deep_man_of_his_side() -> None:
    made = stalked({"H": 7.0, "Z": 18.0, "X": 20.0}, C=(18, 7), R=(-5, 9))
    assert made == {"H": "C", "Z": "C", "X": ""}


def test_a_receiver_keeps_his_man_when_somebody_inside_goes_on_to_his_next_rule() -> None:
    """The end finds nobody to climb to and arcs: the second level is asked again."""
    men = (
        *line(*BASE, ends=("YR",)),
        Man("Z", Position.WIDEOUT, Point(18, -1), Point(18, -1), False, None, NOWHERE),
    )
    deep = tuple(
        Defender(label, Point(x, y), Level.DEEP, "", None, NOWHERE)
        for label, x, y in (("C", 18.0, 7.0), ("F", -1.0, 12.0))
    )
    look = replace(defence(men), defenders=deep)
    tasks = [
        Task("YR", (Rule(BlockWay.CLIMB), Rule(BlockWay.ARC))),
        Task("Z", (Rule(BlockWay.STALK),)),
    ]
    made = solved(men, look, tasks, Side.RIGHT)
    assert {b.man: b.defender for b in made.blocks} == {"YR": "", "Z": "C"}
