"""Who is past the line when the ball is thrown or touched: judged at the moment, not by the path.

The rules: NFHS 7-5-12 with 2-28-2 (two yards), NCAA A.R. 7-3-10 (three), a report of NFL 8-3-1
(one, any pass), the Canadian yard from memory; NFHS 7-5-8a and NCAA 7-3-8b on contact past
the line.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checks.test_legality_rules import ELEVEN, NAME, TWELVE, codes, path, stand
from checks.test_legality_rules import play as bare
from stemline.checks.asked import When
from stemline.checks.discovered import ask
from stemline.checks.legality.block_past import check_block_past
from stemline.checks.legality.downfield import check_downfield
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.football.exchanges import BallMoves, Exchange
from stemline.football.play import Key, Kind, Man, Play, Read, Step
from stemline.football.rulebook.codes import (
    CANADIAN_AMATEUR,
    COLLEGE,
    HIGH_SCHOOL,
    PROFESSIONAL,
    SIX_MAN,
    Code,
)
from stemline.football.timing.levels import HIGH_SCHOOL as LEVEL
from stemline.football.timing.release import DOUBLE, place_at, releases
from stemline.geometry.paths import Ending, Path, Point

SLANT = path((-7, -1), (-7, 3), (-1, 9), ending=Ending.RUN)
OUT = path((1.3, 0), (4, 12))
"""A guard who climbs at once and goes on."""


def thrown(
    code: Code, foot: str, *, men: tuple[Man, ...] = ELEVEN, at: float = 8, **paths: Path
) -> Play:
    """A pass to H off one foot; ``at`` is how far past the line he is to catch it."""
    made = bare(code, men, kind=Kind.PASS, looks=at, **{"H": SLANT, **paths})
    read = Read(1, "a", Point(-3, at), ("H",), foot, "", "", NAME)
    return replace(made, feet=(Step(foot, foot),), reads=(read,))


def said(found: Iterable[Diagnostic], name: str) -> list[str]:
    return [dict(d.values)[name] for d in found]


@pytest.mark.parametrize(
    ("code", "foot", "wanted"),
    [
        (HIGH_SCHOOL, "catch", []), (HIGH_SCHOOL, "3", ["W546"]), (COLLEGE, "catch", []),
        (COLLEGE, "3", ["W546"]), (PROFESSIONAL, "catch", ["W546"]),
        (CANADIAN_AMATEUR, "3", ["W546"]), (SIX_MAN, "3", []),
    ],
)  # fmt: skip
def test_the_same_climb_is_early_enough_or_too_late(
    code: Code, foot: str, wanted: list[str]
) -> None:
    """His drawn path ends at twelve yards each time: it is the foot that decides."""
    men = TWELVE if code is CANADIAN_AMATEUR else ELEVEN
    assert codes(check_downfield(thrown(code, foot, men=men, RG=OUT), LEVEL)) == wanted


@settings(max_examples=30, deadline=None)
@given(foot=st.sampled_from(["catch", "quick", "3", "5", "7"]), deep=st.floats(0.5, 15))
def test_the_verdict_is_where_he_is_when_the_ball_leaves(foot: str, deep: float) -> None:
    made = thrown(HIGH_SCHOOL, foot, RG=path((1.3, 0), (1.3, deep)))
    (throw,) = releases(made, LEVEL)
    task = made.assignment("RG")
    found = list(check_downfield(made, LEVEL))
    late = place_at(made, task, throw.thrown, LEVEL).y
    early = place_at(made, task, throw.thrown - 0.2, LEVEL).y
    assert bool(found) <= (late > 2) and bool(found) >= (early > 2)
    assert late <= deep + 1e-9


def test_the_message_says_when_and_how_far() -> None:
    (found,) = ask(When.THROWN, thrown(HIGH_SCHOOL, "3", RG=OUT), LEVEL)
    values = dict(found.values)
    assert (values["man"], values["wanted"], values["target"]) == ("RG", "2", "a")
    assert float(values["seconds"]) > 1.5 and 2 < float(values["yards"]) < 8
    assert "7-5-12" in values["source"]


def test_a_double_team_is_at_the_line_until_it_climbs() -> None:
    def with_climb(foot: str) -> Play:
        made = thrown(HIGH_SCHOOL, foot, RG=path((1.3, 0), (1.5, 0.8)))
        climb = path((1.5, 0.8), (2, 9))
        tasks = tuple(replace(a, climb=climb) if a.man == "RG" else a for a in made.assignments)
        return replace(made, assignments=tasks)

    assert DOUBLE > 0.5
    assert codes(check_downfield(with_climb("catch"), LEVEL)) == []
    assert codes(check_downfield(with_climb("quick"), LEVEL)) == []
    assert codes(check_downfield(with_climb("7"), LEVEL)) == ["W546"]


def test_a_screen_behind_the_line_lets_the_linemen_go() -> None:
    """NFHS 7-5-12 and the college rule speak of passes that cross; the professional of any."""
    assert codes(check_downfield(thrown(HIGH_SCHOOL, "5", at=-2, RG=OUT), LEVEL)) == []
    assert codes(check_downfield(thrown(PROFESSIONAL, "5", at=-2, RG=OUT), LEVEL)) == ["W546"]


@pytest.mark.parametrize(
    ("code", "wanted"), [(HIGH_SCHOOL, []), (COLLEGE, []), (PROFESSIONAL, ["W546"])]
)
def test_a_shovel_is_a_pass_that_does_not_cross(code: Code, wanted: list[str]) -> None:
    """Forward to a man behind the line: the guard who climbs is asked about where any pass is."""
    way = path((-2, -5), (-0.8, -2.4), (0.7, -2.4), (0.7, 6), ending=Ending.RUN)
    run = bare(code, ELEVEN, kind=Kind.RUN, B=way, RG=OUT)
    for kind, found in ((BallMoves.SHOVEL, wanted), (BallMoves.HAND, [])):
        made = replace(run, reads=(), carrier="B", exchanges=(Exchange(kind, "Q", "B"),))
        assert codes(check_downfield(made, LEVEL)) == found


def test_each_throw_is_judged_by_itself() -> None:
    """A screen first, a route behind it: the route alone is the foul, at its own moment."""
    made = thrown(HIGH_SCHOOL, "5", at=-2, RG=OUT)
    deep = Read(2, "dig", Point(-1, 9), ("H",), "5", "", "", NAME)
    found = list(check_downfield(replace(made, reads=(*made.reads, deep)), LEVEL))
    assert said(found, "target") == ["dig"]


def test_a_covered_man_is_a_lineman_on_a_pass() -> None:
    men = stand(ELEVEN, "S", 7, 0, line=True)
    out = path((7, 0), (7, 12), ending=Ending.RUN)
    assert codes(check_downfield(thrown(HIGH_SCHOOL, "3", men=men, S=out), LEVEL)) == ["W546"]
    free = stand(men, "Z", 14, -1, line=False)
    assert codes(check_downfield(thrown(HIGH_SCHOOL, "3", men=free, S=out), LEVEL)) == []


def keyed(foot: str, choice: str, **paths: Path) -> Play:
    made = bare(HIGH_SCHOOL, ELEVEN, kind=Kind.RUN, looks=8, **{"H": SLANT, **paths})
    key = Key("overhang", "W", (("give", "", "he drops"), (choice, "H", "he fits")), NAME)
    return replace(made, reads=(), keys=(key,), feet=(Step(foot, foot),))


def test_a_run_is_asked_only_where_it_may_be_thrown() -> None:
    assert codes(ask(When.THROWN, keyed("3", "throw", RG=OUT), LEVEL)) == ["W546"]
    assert codes(ask(When.THROWN, keyed("catch", "throw", RG=OUT), LEVEL)) == []
    assert codes(ask(When.THROWN, keyed("3", "pull", RG=OUT), LEVEL)) == []


# Blocks past the line.

STALK = path((14, 0), (14, 4))


@pytest.mark.parametrize(
    ("at", "code", "way", "wanted"),
    [
        (8, HIGH_SCHOOL, STALK, ["W871"]), (8, COLLEGE, STALK, ["W871"]),
        (-1, HIGH_SCHOOL, STALK, []),
        (8, HIGH_SCHOOL, path((14, 0), (6, 2.5)), ["W871"]),
        (8, HIGH_SCHOOL, path((14, 0), (14, 30)), []),
        (8, HIGH_SCHOOL, path((14, 0), (13, 0.8)), []),
        (8, HIGH_SCHOOL, path((14, 0), (14, 12), ending=Ending.RUN), []),
    ],
)  # fmt: skip
def test_a_stalk_or_crack_beside_a_slant(
    at: float, code: Code, way: Path, wanted: list[str]
) -> None:
    """NFHS 7-5-8a: past the neutral zone until the ball is touched, on a pass that crosses it.

    Silent: a screen, a block that comes after the catch, one on the line, and a route.
    """
    assert codes(check_block_past(thrown(code, "quick", at=at, Z=way), LEVEL)) == wanted


@pytest.mark.parametrize(("men", "wanted"), [(("H", "Z"), []), (("Z",), ["W871"])])
def test_the_man_who_may_catch_it_is_not_blamed_for_his_own_way(
    men: tuple[str, ...], wanted: list[str]
) -> None:
    go = path((14, 0), (14, 12), ending=Ending.RUN)
    made = thrown(HIGH_SCHOOL, "quick", H=path((-7, -1), (-7, 4)), Z=go)
    made = replace(made, reads=tuple(replace(r, men=men) for r in made.reads))
    assert codes(check_block_past(made, LEVEL)) == wanted


def test_of_several_blocks_the_one_that_is_met_first_is_told() -> None:
    made = thrown(HIGH_SCHOOL, "5", Z=STALK, S=path((7, -1), (7, 6)))
    assert said(check_block_past(made, LEVEL), "man") == ["Z"]
    alone = thrown(HIGH_SCHOOL, "5", S=path((7, -1), (7, 6)))
    assert said(check_block_past(alone, LEVEL), "man") == ["S"]
