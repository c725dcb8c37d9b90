"""What each man does: his path starts where he is, stays in bounds, and says what is taught."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from together import together

from resolve.texts import (
    CROSSERS,
    ELEVEN,
    EMPTY,
    QUADS,
    THREE_TWO,
    TREY,
    TWELVE,
    codes,
    compiled,
    dress,
    message,
    play,
    sound,
)
from stemline.football.blocking.block_names import BLOCKS
from stemline.football.field import BallSpot, Side
from stemline.football.offence.routes import LIBRARY
from stemline.football.offence.tracing import ROUNDED
from stemline.football.play import Assignment, Play
from stemline.geometry.paths import Ending, Point, polyline
from stemline.session import Session

EVERYBODY = ("strong #1", "strong #2", "strong #3", "weak #1", "weak #2", "back")


def one(line: str, rule: str = "strong #1", extra: str = "") -> Session:
    """A concept in which the first man does one thing; the others go."""
    roles = "abcdef"
    rules = dict(zip(roles, (rule, *(r for r in EVERYBODY if r != rule)), strict=True))
    lines = [f"    {r} is {who}\n" for r, who in rules.items()]
    lines += [f"    {r} runs go\n" for r in roles[1:]]
    text = f"concept Test\n    a {line}\n" + "".join(lines) + extra
    return compiled(TWELVE, THREE_TWO, text, dress("Three Two", concept="Test"))


def does(line: str, rule: str = "strong #1", side: str = "Right", extra: str = "") -> Assignment:
    made = play(one(line, rule, extra), f"Three Two {side} Test").runs("a")
    assert made is not None
    return made


def corners(line: str, rule: str = "strong #1", side: str = "Right") -> list[tuple[float, float]]:
    path = does(line, rule, side).path
    assert path is not None
    return [(round(p.x, 2), round(p.y, 2)) for p in path.corners]


# Z stands on the numbers (22.5), H 4 outside the tackle (6.6), R 2 weak of the ball.


@together(
    ("line", "rule", "expected"),
    [
        ("runs go", "strong #1", [(22.5, 0), (22.5, 22)]),
        ("runs dig", "strong #1", [(22.5, 0), (22.5, 12), (13.5, 12)]),
        ("runs dig 14", "strong #1", [(22.5, 0), (22.5, 14), (13.5, 14)]),
        ("runs dig 10-12", "strong #1", [(22.5, 0), (22.5, 11), (13.5, 11)]),
        ("runs out 10", "strong #3", [(6.6, -1), (6.6, 10), (12.6, 10)]),
        ("runs 6", "strong #1", [(22.5, 0), (22.5, 12), (13.5, 12)]),
        ("runs 6 10", "strong #1", [(22.5, 0), (22.5, 10), (13.5, 10)]),
        ("runs sit", "strong #3", [(6.6, -1), (6.6, 3.5), (0, 8)]),
        ("runs sit 8 over ball", "strong #3", [(6.6, -1), (6.6, 3.5), (0, 8)]),
        ("runs sit 8 over guard", "strong #3", [(6.6, -1), (6.6, 3.5), (1.3, 8)]),
        ("runs sit 6 over far guard", "strong #3", [(6.6, -1), (6.6, 1.5), (-1.3, 6)]),
        ("runs shoot", "back", [(-2, -5), (-10, 2)]),
        ("runs shoot strong", "back", [(-2, -5), (6, 2)]),
        ("runs shoot away from b", "back", [(-2, -5), (-10, 2)]),
        ("runs shoot same side as b", "back", [(-2, -5), (6, 2)]),
        ("runs shoot toward b", "back", [(-2, -5), (6, 2)]),
        ("runs shoot across from b", "back", [(-2, -5), (-10, 2)]),
        ("runs shoot right side", "back", [(-2, -5), (6, 2)]),
        ("runs dig across from b", "weak #1", [(-20.5, 0), (-20.5, 12), (-11.5, 12)]),
        ("runs out 10 across from b", "weak #1", [(-20.5, 0), (-20.5, 10), (-26.5, 10)]),
        ("runs go to numbers", "strong #3", [(6.6, -1), (6.6, 2), (22.5, 11), (22.5, 22)]),
        ("runs flat to 2 inside sideline", "strong #3", [(6.6, -1), (6.6, 1), (30.5, 4)]),
        ("runs dig then up to 20", "strong #1", [(22.5, 0), (22.5, 12), (13.5, 12), (13.5, 20)]),
        ("runs dig 10 then out 4 then settle", "strong #1",
         [(22.5, 0), (22.5, 10), (13.5, 10), (17.5, 10)]),
    ],
    ids=lambda v: v if isinstance(v, str) else None,
)  # fmt: skip
def test_a_line_runs_this_path(line: str, rule: str, expected: list[tuple[float, float]]) -> None:
    assert corners(line, rule) == expected
    if "right" not in line:
        assert corners(line, rule, "Left") == [(-x, y) for x, y in expected]


@pytest.mark.parametrize(
    ("line", "rule", "side", "x"),
    [
        ("runs shoot right", "back", "Right", 6),
        ("runs shoot right", "back", "Left", 10),
        ("runs shoot left", "back", "Right", -10),
        ("runs shoot call", "back", "Left", -6),
        ("runs shoot away", "back", "Left", 10),
        ("runs shoot field", "back", "Left", -6),
        ("runs shoot boundary", "back", "Left", 10),
    ],
)
def test_a_side_turns_the_route(line: str, rule: str, side: str, x: float) -> None:
    assert corners(line, rule, side)[-1] == (x, 2)


def test_a_man_behind_the_ball_goes_out_to_the_weak_side() -> None:
    text = THREE_TWO.replace("R at away, 2 outside ball", "R at ball")
    concept = "concept Test\n    a is back\n    a runs shoot"
    result = compiled(TWELVE, text, concept, dress("Three Two", concept="Test"))
    for side, x in (("Right", -8), ("Left", 8)):
        path = play(result, f"Three Two {side} Test").assignment("R").path
        assert path is not None and path.end.x == x


@together(
    ("line", "job"),
    [
        ("runs go", "Go."),
        ("runs dig", "Dig at 12."),
        ("runs go 18", "Go at 18."),
        ("runs sit 8 over ball", "Sit at 8 over ball."),
        ("runs shoot away from b", "Shoot away from b."),
        ("runs dig then up to 20", "Dig at 12, then up to 20."),
        ("runs 9", "9."),
        ("runs 6", "6 at 12."),
        ("blocks stalk", BLOCKS["stalk"].words),
        ("blocks inside out", BLOCKS["inside out"].words),
    ],
)
def test_the_line_of_the_assignment_table(line: str, job: str) -> None:
    assert does(line).job == job


@pytest.mark.parametrize(
    ("line", "rule", "end"),
    [
        ("blocks stalk", "strong #1", (22.5, 3)),
        ("blocks crack", "strong #1", (18.5, 2.5)),
        ("blocks arc", "strong #3", (5.1, 3.2)),
        ("blocks edge", "back", (-3.5, -1.8)),
        ("blocks chip", "back", (-3.5, -1.2)),
        ("blocks inside out", "back", (-0.9, -2.6)),
        ("blocks slide", "back", None),
    ],
)
def test_a_block_is_drawn_to_where_it_is_made(
    line: str, rule: str, end: tuple[float, float] | None
) -> None:
    for side, way in (("Right", 1), ("Left", -1)):
        path = does(line, rule, side).path
        if end is None:
            assert path is None
            continue
        assert path is not None and path.ending is Ending.BLOCK
        assert (round(path.end.x, 6) * way, path.end.y) == end


def test_a_man_who_blocks_is_at_no_spot() -> None:
    extra = "    spot there is 3 deep, 0 outside numbers, strong\n"
    result = one("blocks stalk", extra=extra)
    (spot,) = play(result, "Three Two Right Test").spots
    assert spot.men == ()


def test_the_depth_at_which_he_decides() -> None:
    extra = "    a runs out 10 when off\n    a decides at 6 on corner\n"
    made = does("runs dig", extra=extra)
    assert made.job == "Dig at 12. Decide at 6 on the corner."
    (branch,) = made.branches
    assert branch.leaves == Point(22.5, 6)
    assert [m.yards for m in branch.marks] == [10]


@pytest.mark.parametrize(
    ("base", "branch", "leaves"),
    [
        ("dig 12", "out 10", (22.5, 10)),
        ("dig 12", "post 14", (22.5, 12)),
        ("dig 12", "comeback 12", (22.5, 11.5)),
        ("dig 12", "slant 4", (22.5, 4)),
        ("go", "dig 12", (22.5, 12)),
    ],
)
def test_a_branch_leaves_where_the_paths_part(
    base: str, branch: str, leaves: tuple[float, float]
) -> None:
    made = does(f"runs {base}", extra=f"    a runs {branch} when off\n")
    (option,) = made.branches
    assert option.leaves.distance(Point(*leaves)) < 0.2


def test_a_depth_beyond_the_parting_moves_it_nowhere() -> None:
    extra = "    a runs out 10 when off\n    a decides at 11\n"
    (branch,) = does("runs dig", extra=extra).branches
    assert branch.leaves == Point(22.5, 10)


@together(
    ("line", "marks"),
    [
        ("runs dig", [((22.5, 12), 12)]),
        ("runs dig 14", [((22.5, 14), 14)]),
        ("runs go", []),
        ("runs go 18", [((22.5, 18), 18)]),
        ("runs shoot", []),
        ("runs sit 8 over ball", [((0, 8), 8)]),
        ("runs cross 5", [((3.1, 5), 5)]),
        ("blocks stalk", []),
    ],
)
def test_a_depth_that_is_taught_is_marked(
    line: str, marks: list[tuple[tuple[float, float], float]]
) -> None:
    made = does(line).marks
    assert [((round(m.at.x, 6), m.at.y), m.yards) for m in made] == marks


def test_what_the_coach_says_to_a_role_goes_with_its_man() -> None:
    made = does("runs dig", extra='    a says "Snap your head."\n    a says "Win inside."\n')
    assert made.says == ("Snap your head.", "Win inside.")


@pytest.mark.parametrize("who", ["strong #1", "each #1", "field #1"])
def test_a_word_to_a_man_by_place_goes_with_whoever_has_his_role(who: str) -> None:
    result = one("runs dig", extra=f'    {who} says "Win inside."\n')
    made = play(result, "Three Two Right Test")
    found = made.runs("a")
    assert found is not None and found.says == ("Win inside.",)
    assert not made.nobody


def test_one_line_may_speak_of_several_roles() -> None:
    text = 'concept Test\n    a, b is weak #1 or strong #1\n    a, b runs dig\n    a, b says "Go."'
    result = compiled(TWELVE, THREE_TWO, text, dress("Three Two", concept="Test"))
    made = play(result, "Three Two Right Test")
    assert {a.role: (a.man, a.job, a.says) for a in made.assignments if a.role} == {
        "a": ("X", "Dig at 12.", ("Go.",)),
        "b": ("Z", "Dig at 12.", ("Go.",)),
    }


@together(
    ("line", "code"),
    [
        ("runs digg", "E442"),
        ("runs 11", "E442"),
        ("runs dig fast", "E443"),
        ("runs dig away from v", "E444"),
        ("runs dig then jump", "E440"),
        ("runs dig then in", "E402"),
        ("runs dig over moon", "E430"),
        ("runs dig to 2 behind tackle", "E434"),
        ("runs dig, post", "E402"),
        ("blocks hard", "E445"),
        ("decides at corner", "E441"),
        ("decides at 6 on Z", "E462"),
    ],
)
def test_a_job_that_cannot_be_read(line: str, code: str) -> None:
    assert code in codes(one(line))


def test_a_role_that_does_nothing() -> None:
    text = "concept Test\n    a is strong #1\n    b is strong #2\n    a runs go"
    result = compiled(TWELVE, THREE_TWO, text, dress("Three Two", concept="Test"))
    found = [dict(d.values)["role"] for d in result.diagnostics if d.code == "E471"]
    assert found == ["b"]


def test_running_away_from_nobody() -> None:
    text = """
concept Test
    a is strong #4 or nobody
    a runs go
    b is back
    b runs shoot away from a
"""
    result = compiled(TWELVE, THREE_TWO, text, dress("Three Two", concept="Test"))
    assert [dict(d.values)["role"] for d in result.diagnostics if d.code == "E623"] == ["a"]


# A route of the coach's own.


def own(*lines: str, name: str = "Bend", runs: str = "bend") -> list[tuple[float, float]]:
    route = "\n".join([f"route {name}", *(f"    {line}" for line in lines)])
    text = f"{route}\n\nconcept Test\n    a is strong #1\n    a runs {runs}"
    result = compiled(TWELVE, THREE_TWO, text, dress("Three Two", concept="Test"))
    assert not result.failed, [message(d) for d in result.diagnostics]
    path = play(result, "Three Two Right Test").assignment("Z").path
    assert path is not None
    return [(round(p.x, 2), round(p.y, 2)) for p in path.corners[1:]]


@together(
    ("stroke", "expected"),
    [
        ("up 12", [(22.5, 12)]),
        ("up to 12", [(22.5, 12)]),
        ("up to depth", [(22.5, 10)]),
        ("up to 3 short of depth", [(22.5, 7)]),
        ("up to 4 past depth", [(22.5, 14)]),
        ("up 10 then in 8", [(22.5, 10), (14.5, 10)]),
        ("up 10 then out 6", [(22.5, 10), (28.5, 10)]),
        ("up 10 then in 10 at 30", [(22.5, 10), (17.5, 18.66)]),
        ("up 10 then out 4 at 45 degrees", [(22.5, 10), (25.33, 12.83)]),
        ("up 12 then back 2", [(22.5, 12), (21.09, 10.59)]),
        ("up 12 then back in 2", [(22.5, 12), (21.09, 10.59)]),
        ("up 12 then back out 2", [(22.5, 12), (23.91, 10.59)]),
        ("up 2 then across to tackle at 5", [(22.5, 2), (-2.6, 5)]),
        ("up 2 then across to 4 past tackle at 5", [(22.5, 2), (-6.6, 5)]),
        ("up 2 then across to far tackle", [(22.5, 2), (-2.6, 2)]),
        ("up 4 then over ball at 8", [(22.5, 4), (0, 8)]),
        ("up 4 then to ball at depth", [(22.5, 4), (0, 10)]),
        ("up 4 then to 2 inside hash at 12", [(22.5, 4), (6.5, 12)]),
        ("up 4 then to 2 outside far hash", [(22.5, 4), (-10.5, 4)]),
        ("up 4 then to sideline at 6", [(22.5, 4), (31.7, 6)]),
    ],
)
def test_a_stroke(stroke: str, expected: list[tuple[float, float]]) -> None:
    assert own("depth 10", f"stroke {stroke}") == expected


def test_strokes_may_stand_one_a_line_in_their_order() -> None:
    assert own("stroke up 10", "stroke in 8") == own("stroke up 10 then in 8")
    assert own("stroke in 8", "stroke up 10") != own("stroke up 10", "stroke in 8")


def test_a_settle_and_a_rounded_turn() -> None:
    route = "route Bend\n    stroke up 10 then rounded in 8 then settle"
    text = f"{route}\n\nconcept Test\n    a is strong #1\n    a runs bend"
    result = compiled(TWELVE, THREE_TWO, text, dress("Three Two", concept="Test"))
    path = play(result, "Three Two Right Test").assignment("Z").path
    assert path is not None
    assert path.ending is Ending.SETTLE
    assert path.legs[0].reach == ROUNDED


def test_a_route_of_the_library_is_changed_by_a_block_of_its_name() -> None:
    assert own("depth 15", name="Dig", runs="dig") == [(22.5, 15), (13.5, 15)]
    assert own("stroke up to depth then in 5", name="Dig", runs="dig") == [(22.5, 12), (17.5, 12)]
    assert own("depth 15", name="Dig", runs="dig 9") == [(22.5, 9), (13.5, 9)]


def test_a_route_without_strokes_is_nothing_to_run() -> None:
    result = compiled(TWELVE, THREE_TWO, "route Bend\n    depth 12")
    assert "E446" in codes(result)


# Every man has a job, or is named.


def test_a_man_without_a_job_is_named_once_for_all_his_calls() -> None:
    text = "concept Test\n" + "".join(
        f"    {r} is {who}\n    {r} runs go\n" for r, who in zip("abcde", EVERYBODY, strict=False)
    )
    result = compiled(TWELVE, THREE_TWO, text, dress("Three Two", concept="Test"))
    (found,) = result.diagnostics
    values = dict(found.values)
    assert (found.code, values["man"], values["concept"]) == ("W650", "R", "Test")
    assert values["call"] == "Three Two Right Test and 1 more call"
    assert not result.failed


@pytest.mark.parametrize("idle", range(6))
def test_whoever_has_no_job_is_named(idle: int) -> None:
    letters = ("Z", "S", "H", "X", "W", "R")
    kept = [
        (r, who) for i, (r, who) in enumerate(zip("abcdef", EVERYBODY, strict=True)) if i != idle
    ]
    text = "concept Test\n" + "".join(f"    {r} is {who}\n    {r} runs go\n" for r, who in kept)
    result = compiled(TWELVE, THREE_TWO, text, dress("Three Two", concept="Test"))
    assert [dict(d.values)["man"] for d in result.diagnostics] == [letters[idle]]


def test_a_block_is_a_job() -> None:
    text = "concept Test\n" + "".join(
        f"    {r} is {who}\n    {r} {'blocks edge' if r == 'f' else 'runs go'}\n"
        for r, who in zip("abcdef", EVERYBODY, strict=True)
    )
    sound(TWELVE, THREE_TWO, text, dress("Three Two", concept="Test"))


# Properties of every play.

_PLAYS = {
    "three two": (TWELVE, THREE_TWO, "Three Two", "Three Two {} Crossers"),
    "quads": (TWELVE, QUADS, "Quads motion Tuck", "Quads {} Tuck Crossers"),
    "empty": (ELEVEN, EMPTY, "Empty", "Empty {} Crossers"),
    "trey": (ELEVEN, TREY, "Trey", "Trey {} Crossers"),
}


def assert_in_order(made: Play) -> None:
    """Every path starts at its man, goes somewhere and stays between the sidelines."""
    left, right = made.field.sideline(Side.LEFT), made.field.sideline(Side.RIGHT)
    for assignment in made.assignments:
        man = made.man(assignment.man)
        paths = [p for p in (assignment.path, *(b.path for b in assignment.branches)) if p]
        for path in paths:
            assert path.start == man.snap
            assert path.legs
            assert all(left < p.x < right for p in polyline(path))
        if assignment.motion:
            assert assignment.motion.path.start == man.at
            assert assignment.motion.path.end == man.snap


@together("name", _PLAYS)
@together("side", ["Right", "Left"])
@together("spot", BallSpot, ids=lambda s: s.value)
def test_the_crossing_family_keeps_to_the_field(name: str, side: str, spot: BallSpot) -> None:
    book, formation, called, call = _PLAYS[name]
    result = sound(book, formation, CROSSERS, dress(called, "with plain, Wheel + Return"))
    for tags in ("", " Wheel + Return"):
        assert_in_order(play(result, call.format(side) + tags, spot))


routes = st.sampled_from(sorted(LIBRARY))


@settings(max_examples=40, deadline=None)
@given(
    st.lists(routes, min_size=6, max_size=6),
    st.sampled_from(list(BallSpot)),
    st.sampled_from(["Right", "Left"]),
    st.integers(2, 12),
)
def test_any_six_routes_keep_to_the_field(
    names: list[str], spot: BallSpot, side: str, split: int
) -> None:
    formation = THREE_TWO.replace("W at away, 5 outside", f"W at away, {split} outside")
    text = "concept Test\n" + "".join(
        f"    {r} is {who}\n    {r} runs {name}\n"
        for r, who, name in zip("abcdef", EVERYBODY, names, strict=True)
    )
    result = compiled(TWELVE, formation, text, dress("Three Two", concept="Test"))
    assert result.book is not None
    assert_in_order(play(result, f"Three Two {side} Test", spot))


def test_a_route_may_say_where_its_runner_decides() -> None:
    text = """
route Choice
    depth 10
    stroke up to depth then in 2 then settle
    decides at 6 on corner

concept Test
    a is strong #1
    a runs choice
    b is weak #1
    b runs choice
    b decides at 8
"""
    made = play(
        compiled(TWELVE, THREE_TWO, text, dress("Three Two", concept="Test")),
        "Three Two Right Test",
    )
    jobs = {a.role: a.job for a in made.assignments if a.role}
    assert jobs["a"] == "Choice at 10. Decide at 6 on the corner."
    assert jobs["b"] == "Choice at 10. Decide at 8."


@together(
    ("line", "rule", "end"),
    [
        ("runs swing to 7 outside tackle at 1 behind", "back", (-9.6, -1)),
        ("runs swing to 7 outside tackle at 1 behind the line", "back", (-9.6, -1)),
        ("runs swing to 7 outside tackle at 2", "back", (-9.6, 2)),
        ("runs bubble 2 behind", "strong #3", (12.6, -2)),
        ("runs hitch then to 5 outside tackle at 1 behind", "strong #3", (7.6, -1)),
        ("runs hitch then up to 2 behind", "strong #1", (22.2, -2)),
        ("runs cross 5 over ball at 7", "strong #3", (0, 7)),
        ("runs out to 2 outside numbers at 6", "strong #3", (24.5, 6)),
    ],
)
def test_a_depth_at_the_end_and_behind_the_line(
    line: str, rule: str, end: tuple[float, float]
) -> None:
    x, y = corners(line, rule)[-1]
    assert (round(x, 1), round(y, 1)) == end


def test_a_route_of_ones_own_behind_the_line() -> None:
    strokes = "to 3 outside tackle at 4 behind then up to depth"
    route = f"\nroute Slip\n    depth 1 behind\n    stroke {strokes}\n"
    made = does("runs slip", "back", extra=route)
    assert made.job == "Slip at 1 behind the line."
    assert made.marks == ()
    assert made.path is not None and made.path.end.y == -1


@pytest.mark.parametrize(
    ("line", "code"),
    [
        ("runs swing at 1 behind", "E404"),
        ("runs swing to 7 outside tackle at behind", "E441"),
        ("runs swing to 7 outside tackle at 1 behnd", "E443"),
        ("runs hitch then up to 2 behind quick", "E401"),
    ],
)
def test_a_depth_behind_that_cannot_be_read(line: str, code: str) -> None:
    assert codes(one(line, "back")) == [code]
