"""Each rule of a code seen to bite and to stay silent, on men set up by hand."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

import pytest

from stemline.checks.asked import When
from stemline.checks.discovered import ask, rows
from stemline.checks.legality.between import check_between
from stemline.checks.legality.covered import check_covered
from stemline.checks.legality.ends import check_ends
from stemline.checks.legality.from_line import check_from_line
from stemline.checks.legality.in_backfield import check_in_backfield
from stemline.checks.legality.in_motion import check_in_motion
from stemline.checks.legality.interior import check_interior
from stemline.checks.legality.line_moves import check_line_moves
from stemline.checks.legality.numbers import check_numbers
from stemline.checks.legality.offside import check_offside
from stemline.checks.legality.on_line import check_on_line
from stemline.checks.legality.sent_out import check_sent_out
from stemline.checks.legality.set_time import check_set_time
from stemline.checks.legality.snap import Snap
from stemline.checks.legality.toward_line import check_toward_line
from stemline.diagnostics.broken_rule import BrokenRule, Resting
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.football.field import BallSpot, Field, Side
from stemline.football.play import Assignment, Call, Key, Kind, Man, Motion, Play, Read
from stemline.football.players import Position
from stemline.football.rulebook.codes import (
    CANADIAN_AMATEUR,
    CANADIAN_PROFESSIONAL,
    COLLEGE,
    EIGHT_MAN,
    HIGH_SCHOOL,
    PROFESSIONAL,
    SIX_MAN,
    Code,
)
from stemline.football.rulebook.rules import Certainty, Known
from stemline.geometry.paths import Ending, Leg, Path, Point
from stemline.session import Session
from stemline.source import Source, Span

NAME = Span("f.play", 1, 11, 15)
LINEMEN = (("LT", -2.6), ("LG", -1.3), ("C", 0.0), ("RG", 1.3), ("RT", 2.6))
_POSITIONS = {"T": Position.TACKLE, "G": Position.GUARD, "C": Position.CENTRE}


def man(label: str, x: float, y: float, *, line: bool = False, number: int | None = None) -> Man:
    position = Position.QUARTERBACK if label == "Q" else Position.SLOT
    at = Point(x, y)
    return Man(label, position, at, at, line, None, Span("f.play", ord(label[0]), 5, 9),
               number=number)  # fmt: skip


def lineman(label: str, x: float) -> Man:
    at = Point(x, 0)
    span = Span("f.play", 2, 5, 9)
    return Man(label, _POSITIONS[label[-1]], at, at, True, None, span, in_line=True)


LINE = tuple(lineman(label, x) for label, x in LINEMEN)
ENDS = (man("X", -14, 0, line=True), man("Z", 14, 0, line=True))
ELEVEN = (*LINE, *ENDS, man("H", -7, -1), man("S", 7, -1), man("B", -2, -5), man("Q", 0, -5))
TWELVE = (*ELEVEN, man("W", 10, -1))


def moved(men: tuple[Man, ...], label: str, **changes: object) -> tuple[Man, ...]:
    return tuple(replace(m, **changes) if m.label == label else m for m in men)  # type: ignore[arg-type]


def stand(men: tuple[Man, ...], label: str, x: float, y: float, *, line: bool) -> tuple[Man, ...]:
    return moved(men, label, at=Point(x, y), snap=Point(x, y), on_line=line)


def codes(found: Iterator[Diagnostic]) -> list[str]:
    return [d.code for d in found]


def snap(code: Code, men: tuple[Man, ...], **motions: Motion) -> Snap:
    return Snap(code, men, "Tried", NAME, "Tried Right Go" if motions else "", motions)


def ran(*corners: tuple[float, float], speed: float = 6.0, **more: float) -> Motion:
    points = [Point(*c) for c in corners]
    path = Path(points[0], tuple(Leg(p) for p in points[1:]))
    return Motion("Way", path, speed > 0, speed, "Way", more.get("starts"), more.get("set_for"))


def running(men: tuple[Man, ...], label: str, *corners: tuple[float, float]) -> tuple[Man, ...]:
    return moved(men, label, at=Point(*corners[0]), snap=Point(*corners[-1]))


def test_a_usual_set_breaks_nothing_in_any_code_of_its_size() -> None:
    for code in (HIGH_SCHOOL, COLLEGE, PROFESSIONAL):
        assert codes(ask(When.STANDING, snap(code, ELEVEN))) == []
    for code in (CANADIAN_AMATEUR, CANADIAN_PROFESSIONAL):
        assert codes(ask(When.STANDING, snap(code, TWELVE))) == []


def test_a_set_without_a_motion_is_asked_nothing_about_motion() -> None:
    assert codes(ask(When.MOVING, snap(HIGH_SCHOOL, ELEVEN))) == []


# Where the men stand.


@pytest.mark.parametrize(
    ("code", "wanted"),
    [(CANADIAN_AMATEUR, ["E520"]), (PROFESSIONAL, ["W520"]), (HIGH_SCHOOL, [])],
)
def test_six_on_the_line(code: Code, wanted: list[str]) -> None:
    men = TWELVE if code is CANADIAN_AMATEUR else ELEVEN
    short = stand(men, "X", -14, -1, line=False)
    found = list(check_on_line(snap(code, short)))
    assert [d.code for d in found] == wanted
    for d in found:
        values = dict(d.values)
        assert (values["got"], values["wanted"], d.span) == ("6", "7", NAME)
        assert values["rules"] == code.title and values["source"].startswith(code.on_line.source)
    assert codes(check_on_line(snap(code, men))) == []


def test_five_behind_the_line_is_one_foul_where_the_line_is_counted_too() -> None:
    short = stand(ELEVEN, "X", -14, -1, line=False)
    assert codes(check_in_backfield(snap(COLLEGE, short))) == ["E521"]
    assert codes(check_in_backfield(snap(HIGH_SCHOOL, short))) == ["W521"]
    assert codes(check_in_backfield(snap(PROFESSIONAL, short))) == []  # said of the line
    assert codes(check_in_backfield(snap(COLLEGE, ELEVEN))) == []


def test_a_league_that_sets_no_limit_behind_the_line() -> None:
    free = replace(COLLEGE, in_backfield=Known(None, Certainty.HOUSE, "this playbook's league"))
    short = stand(ELEVEN, "X", -14, -1, line=False)
    assert codes(check_in_backfield(snap(free, short))) == []


def test_a_split_off_tackle_breaks_the_run_of_twelve_men_only() -> None:
    gate = stand(TWELVE, "LT", -11, 0, line=True)
    (found,) = check_interior(snap(CANADIAN_AMATEUR, gate))
    assert found.code == "E522" and dict(found.values)["got"] == "4"
    assert codes(check_interior(snap(HIGH_SCHOOL, stand(ELEVEN, "LT", -11, 0, line=True)))) == []


@pytest.mark.parametrize(("code", "wanted"), [(COLLEGE, "E522"), (HIGH_SCHOOL, "W522")])
def test_four_linemen_are_one_short(code: Code, wanted: str) -> None:
    four = tuple(m for m in ELEVEN if m.label != "LT")
    assert codes(check_interior(snap(code, four))) == [wanted]


def test_six_man_asks_for_no_linemen() -> None:
    assert codes(check_interior(snap(SIX_MAN, (LINE[2],)))) == []


def test_a_tackle_at_the_end_of_the_line() -> None:
    men = (*stand(TWELVE, "X", -14, -1, line=False)[:-1], lineman("ET", 3.9))
    (found,) = check_ends(snap(CANADIAN_AMATEUR, men))
    assert found.code == "E523" and dict(found.values)["sides"] == "one side"
    both = (*stand(men, "Z", 14, -1, line=False), lineman("EG", 5.2))
    (found,) = check_ends(snap(CANADIAN_AMATEUR, both))
    assert dict(found.values)["sides"] == "both sides"
    assert codes(check_ends(snap(HIGH_SCHOOL, men))) == []


def test_a_covered_man_is_named_with_the_man_outside_him() -> None:
    for label, x, other in (("S", 7, "Z"), ("H", -7, "X")):
        (found,) = check_covered(snap(COLLEGE, stand(ELEVEN, label, x, 0, line=True)))
        values = dict(found.values)
        assert (found.code, values["man"], values["other"]) == ("E524", label, other)
        assert found.span.line == ord(label)
    assert codes(check_covered(snap(HIGH_SCHOOL, stand(ELEVEN, "S", 7, 0, line=True)))) == ["W524"]
    assert codes(check_covered(snap(SIX_MAN, stand(ELEVEN, "S", 7, 0, line=True)))) == []


def test_a_man_put_into_the_line_is_not_covered() -> None:
    men = moved(stand(ELEVEN, "S", 3.9, 0, line=True), "S", in_line=True)
    assert codes(check_covered(snap(COLLEGE, men))) == []


@pytest.mark.parametrize(
    ("code", "depth", "wanted"),
    [
        (CANADIAN_PROFESSIONAL, 0.9, ["E525"]),
        (CANADIAN_PROFESSIONAL, 1.0, []),
        (CANADIAN_AMATEUR, 0.9, ["W525"]),
        (COLLEGE, 0.4, ["E525"]),
        (COLLEGE, 0.5, []),
        (HIGH_SCHOOL, 0.4, ["W525"]),
        (PROFESSIONAL, 0.9, ["W525"]),
    ],
)
def test_a_man_in_neither_place(code: Code, depth: float, wanted: list[str]) -> None:
    men = TWELVE if code.players.value == 12 else ELEVEN
    found = codes(check_between(snap(code, stand(men, "S", 7, -depth, line=False))))
    assert found == wanted


def test_the_quarterback_under_centre_is_a_back_at_any_depth() -> None:
    close = stand(ELEVEN, "Q", 0, -0.6, line=False)
    assert codes(check_between(snap(PROFESSIONAL, close))) == []
    assert codes(check_between(snap(PROFESSIONAL, stand(close, "Q", 5, -0.6, line=False)))) != []


@pytest.mark.parametrize(
    ("code", "number", "wanted"),
    [
        (COLLEGE, 50, ["E527"]), (COLLEGE, 79, ["E527"]), (COLLEGE, 49, []), (COLLEGE, 80, []),
        (HIGH_SCHOOL, 72, ["W527"]), (PROFESSIONAL, 90, ["W527"]), (PROFESSIONAL, 79, ["E527"]),
        (CANADIAN_PROFESSIONAL, 69, ["E527"]), (CANADIAN_PROFESSIONAL, 70, []),
        (EIGHT_MAN, 55, []),
    ],
)  # fmt: skip
def test_who_may_wear_which_number_outside(code: Code, number: int, wanted: list[str]) -> None:
    assert codes(check_numbers(snap(code, moved(ELEVEN, "X", number=number)))) == wanted


def test_a_number_is_told_where_the_personnel_says_it() -> None:
    here = Span("people.play", 4, 5, 20)
    men = moved(ELEVEN, "X", number=72)
    (found,) = check_numbers(replace(snap(COLLEGE, men), numbers={"X": here}))
    assert found.span == here


def test_an_eligible_number_inside_counts_only_where_it_leaves_too_few() -> None:
    men = moved(ELEVEN, "LT", number=88)
    assert codes(check_numbers(snap(COLLEGE, men))) == ["E528"]
    assert codes(check_numbers(snap(COLLEGE, (*men, lineman("ET", 3.9))))) == []
    assert codes(check_numbers(snap(COLLEGE, moved(ELEVEN, "LT", number=71)))) == []


# How they move.

ALONG = ((-7.0, -1.0), (-7.0, -2.2), (4.0, -2.2), (5.0, -1.0), (6.0, -1.0))
UP = ((7.0, -6.0), (7.0, -1.0))


def test_two_in_motion() -> None:
    men = running(running(ELEVEN, "H", *ALONG), "S", (7, -1), (9, -1))
    two = snap(HIGH_SCHOOL, men, H=ran(*ALONG), S=ran((7, -1), (9, -1)))
    (found,) = check_in_motion(two)
    values = dict(found.values)
    assert found.code == "W540" and (values["got"], values["wanted"]) == ("2", "1")
    last = next(m for m in men if m.label == "S")
    assert (found.span, values["others"]) == (last.span, "H"), "told at the last who moves"
    assert codes(check_in_motion(replace(two, code=CANADIAN_AMATEUR))) == []
    assert codes(check_in_motion(snap(HIGH_SCHOOL, men, H=ran(*ALONG)))) == []
    league = replace(HIGH_SCHOOL, motion_most=Known(1, Certainty.HOUSE, "this playbook's league"))
    assert codes(check_in_motion(replace(two, code=league))) == ["E540"]


def test_a_man_who_is_set_is_not_in_motion() -> None:
    still = snap(HIGH_SCHOOL, ELEVEN, H=ran(*ALONG, speed=0), S=ran(*UP, speed=0))
    assert codes(ask(When.MOVING, still)) == []


def test_the_quarterback_waits_for_the_ball_in_twelve_men() -> None:
    men = running(TWELVE, "Q", (0, -5), (0, -7))
    late = snap(CANADIAN_AMATEUR, men, Q=ran((0, -5), (0, -7)))
    assert codes(check_in_motion(late)) == ["W553"]
    assert codes(check_in_motion(replace(late, code=HIGH_SCHOOL))) == []


@pytest.mark.parametrize(
    ("corners", "toward"),
    [
        (UP, True),
        (ALONG, False),
        (((7.0, -1.0), (9.0, -4.0)), False),
        (((7.0, -2.0), (9.0, -1.7)), True),
        (((7.0, -2.0), (9.0, -1.95)), False),
    ],
)
def test_toward_the_line(corners: tuple[tuple[float, float], ...], toward: bool) -> None:
    men = running(ELEVEN, "S", *corners)
    for code, letter in ((COLLEGE, "E"), (HIGH_SCHOOL, "W")):
        found = codes(check_toward_line(snap(code, men, S=ran(*corners))))
        assert found == ([f"{letter}541"] if toward else [])
    assert codes(check_toward_line(snap(CANADIAN_AMATEUR, men, S=ran(*corners)))) == []


def test_men_whom_one_line_sends_toward_the_line_are_told_once() -> None:
    men = running(running(ELEVEN, "H", *UP), "S", *UP)
    way = replace(ran(*UP), span=NAME)
    (found,) = check_toward_line(snap(COLLEGE, men, H=way, S=way))
    assert dict(found.values)["men"] == "H and S" and found.span == NAME


@pytest.mark.parametrize(
    ("still", "said"), [(0.0, "only just stopped"), (0.1, "been still for 0.1 seconds")]
)
def test_how_long_he_has_been_still_is_said(still: float, said: str) -> None:
    shift = ran((7, -1), (9, -1), speed=0, starts=3, set_for=still)
    (found,) = check_set_time(snap(COLLEGE, ELEVEN, S=shift))
    assert dict(found.values)["still"] == said


@pytest.mark.parametrize(("still", "wanted"), [(0.9, ["E542"]), (1.0, []), (2.0, [])])
def test_a_second_after_a_shift(still: float, wanted: list[str]) -> None:
    shift = ran((7, -1), (9, -1), speed=0, starts=3, set_for=still)
    assert codes(check_set_time(snap(COLLEGE, ELEVEN, S=shift))) == wanted
    assert codes(check_set_time(snap(CANADIAN_AMATEUR, TWELVE, S=shift))) == []


@pytest.mark.parametrize(("starts", "wanted"), [(1.0, []), (1.6, ["E542"])])
def test_the_second_ends_when_a_man_goes_in_motion(starts: float, wanted: list[str]) -> None:
    shift = ran((7, -1), (9, -1), speed=0, starts=3, set_for=2.5)
    men = running(ELEVEN, "H", *ALONG)
    both = snap(COLLEGE, men, S=shift, H=ran(*ALONG, starts=starts))
    assert codes(check_set_time(both)) == wanted
    men = running(men, "B", (-2, -5), (-4, -5))
    early = replace(both, men=men, motions={**both.motions, "B": ran((-2, -5), starts=0.5)})
    assert codes(check_set_time(early)) == wanted, "he who starts first ends it"


def test_a_line_player_still_runs() -> None:
    men = running(ELEVEN, "X", (-14, 0), (-10, 0))
    assert codes(check_line_moves(snap(HIGH_SCHOOL, men, X=ran((-14, 0), (-10, 0))))) == ["W543"]
    off = moved(men, "X", on_line=False)
    assert codes(check_line_moves(snap(HIGH_SCHOOL, off, X=ran((-14, 0), (-10, -1))))) == []


@pytest.mark.parametrize(
    ("code", "depth", "wanted"),
    [
        (HIGH_SCHOOL, 2, ["W544"]), (HIGH_SCHOOL, 5, []), (COLLEGE, 5, ["E544"]),
        (CANADIAN_AMATEUR, 2, []),
    ],
)  # fmt: skip
def test_in_motion_from_the_line(code: Code, depth: float, wanted: list[str]) -> None:
    way = ((-14.0, 0.0), (-8.0, -depth))
    men = moved(running(ELEVEN, "X", *way), "X", on_line=False)
    assert codes(check_from_line(snap(code, men, X=ran(*way)))) == wanted
    from_off = running(ELEVEN, "H", (-7, -1), (-5, -depth))
    assert codes(check_from_line(snap(code, from_off, H=ran((-7, -1), (-5, -depth))))) == []


@pytest.mark.parametrize(("y", "past"), [(0.3, True), (0.0, False), (-1.0, False)])
def test_past_the_line(y: float, past: bool) -> None:
    men = running(TWELVE, "S", (7, -6), (7, y))
    for code, letter in ((CANADIAN_PROFESSIONAL, "E"), (CANADIAN_AMATEUR, "W")):
        found = codes(check_offside(snap(code, men, S=ran((7, -6), (7, y)))))
        assert found == ([f"{letter}545"] if past else [])


# What they do after the snap.


def play(code: Code, men: tuple[Man, ...], *, kind: Kind = Kind.PASS, looks: float = 8,
         **paths: Path) -> Play:  # fmt: skip
    tasks = tuple(
        Assignment(m.label, "", "", paths.get(m.label), (), (), None, (), m.span) for m in men
    )
    read = Read(1, "a", Point(4, looks), ("H",), "", "", "", NAME)
    field = Field(code, BallSpot.MIDDLE, 10)
    call = Call("Tried", Side.RIGHT, "", "Go", (), "Tried Right Go")
    return Play(
        call, "", field, (2, 2), Side.RIGHT, men, tasks, (), (), (read,), (), (), (), "", "", (),
        (), NAME, kind=kind,
    )  # fmt: skip


def path(*corners: tuple[float, float], ending: Ending = Ending.BLOCK) -> Path:
    first, *rest = (Point(*c) for c in corners)
    return Path(first, tuple(Leg(p) for p in rest), ending)


@pytest.mark.parametrize(
    ("kind", "way", "wanted"),
    [
        (Kind.PASS, path((7, 0), (7, 12), ending=Ending.RUN), ["E524"]),
        (Kind.PASS, path((7, 0), (7, 0.8)), []),
        (Kind.PASS, None, []),
        (Kind.RUN, path((7, 0), (7, 12), ending=Ending.RUN), []),
    ],
)
def test_a_covered_man_may_block(kind: Kind, way: Path | None, wanted: list[str]) -> None:
    """NCAA 7-3-3 speaks of who may catch a pass: nobody asks it of a man who only blocks."""
    close = stand(ELEVEN, "S", 7, 0, line=True)
    ways = {"S": way} if way else {}
    assert codes(check_sent_out(play(COLLEGE, close, kind=kind, looks=8, **ways))) == wanted
    assert codes(check_sent_out(play(SIX_MAN, close, kind=kind, looks=8, **ways))) == []


def test_a_covered_man_with_the_ball_catches_no_pass() -> None:
    close = stand(ELEVEN, "S", 7, 0, line=True)
    sweep = play(COLLEGE, close, S=path((7, 0), (-7, 2), ending=Ending.RUN))
    assert codes(check_sent_out(sweep)) == ["E524"]
    assert codes(check_sent_out(replace(sweep, carrier="S"))) == []


def test_a_run_that_a_key_lets_him_throw_asks_who_may_catch_it() -> None:
    close = stand(ELEVEN, "S", 7, 0, line=True)
    run = play(COLLEGE, close, kind=Kind.RUN, S=path((7, 0), (7, 12), ending=Ending.RUN))
    gives = Key("the end", "E", (("give", "", ""), ("keep", "", "")), NAME)
    throws = Key("the end", "E", (("give", "", ""), ("throw", "H", "")), NAME)
    assert codes(check_sent_out(replace(run, keys=(gives,)))) == []
    assert codes(check_sent_out(replace(run, keys=(throws,)))) == ["E524"]


COVERED_SET = """
playbook Tried
    code college

personnel All
    Q is quarterback
    Y is tight end
    X, Z is wideout

formation Close
    X at away, 9 outside tackle, on line
    H at away, 4 outside tackle, off line
    Y at call, end, on line
    Z at call, 9 outside tackle, on line
    B at ball, 7 deep
    Q at ball, 5 deep

concept Go
    out is strong #1
    out runs go
    inside man is tight end
    inside man {does}

dress Go
    in Close
    to right
"""


@pytest.mark.parametrize(("does", "said"), [("blocks edge", False), ("runs seam", True)])
def test_a_formation_that_covers_a_man_is_right_for_calls_that_keep_him_in(
    does: str, said: bool
) -> None:
    made = Session([Source("t.play", COVERED_SET.format(does=does))], "t")
    assert ("E524" in {d.code for d in made.diagnostics}) is said


# The wording.


RULES = [row for row in rows() if issubclass(row, BrokenRule)]


@pytest.mark.parametrize("rule", [rule for rule in RULES if rule.__name__.startswith("E")])
def test_the_warning_says_the_same_and_what_it_rests_on(rule: type[BrokenRule]) -> None:
    error, warning = rule.worded().values()
    assert error.message.endswith(" ({rules}; {source})")
    rests = warning.message.removesuffix(" ({rules}; rests on: {source})")
    assert rests == error.message.removesuffix(" ({rules}; {source})")
    assert (error.label, error.help) == (warning.label, warning.help)


class W599(BrokenRule):
    title = "tried"
    message = "a rule that no text was seen of"


@pytest.mark.parametrize("binds", [True, False])
def test_a_rule_named_as_a_warning_is_no_error_anywhere(binds: bool) -> None:
    assert W599(resting=Resting("Tried", "the league", binds)).code == "W599"
    ((code, wording),) = W599.worded().items()
    assert code == "W599"
    assert "rests on: {source}" in wording.message
