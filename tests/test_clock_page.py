"""The page's section on the clock: its figures are the compiler's, its print-out a real one."""

from __future__ import annotations

import re
from importlib.resources import files
from pathlib import Path

import pytest
from click.testing import CliRunner

from stemline.commands import main
from stemline.football.rulebook.codes import CODES, Certainty, Known
from stemline.football.timing.clock import Verdict
from stemline.football.timing.coverage import OPEN, TIGHT, Cover
from stemline.football.timing.levels import (
    FAKED,
    GAP,
    HIGH_SCHOOL,
    LEVELS,
    PLANTED_TURN,
    ROUNDED_TURN,
    Group,
    PlayingLevel,
    level_for,
)
from stemline.football.timing.space import (
    BRUSH,
    COLLIDE,
    HIGH_LOW,
    SPAN,
    STRETCH,
    TRIANGLE,
    Meeting,
)

PAGE = files("stemline.grammar").joinpath("figures.md").read_text("utf-8")
SECTION = PAGE.partition("\n## The clock\n")[2].partition("\n## ")[0]
PROSE = " ".join(SECTION.split())
MARKS = {Certainty.PUBLISHED: "P", Certainty.CUSTOM: "C", Certainty.MEMORY: "M"}

FIGURES = {
    "first step after the snap": "start",
    "held up by press": "press",
    "stop and turn to the ball": "settle",
    "a defender moves at the snap": "react",
    "a defender sees a break or a throw": "choose",
    "from the foot to the ball's leaving": "motion",
    "ball, miles an hour": "ball",
    "deep ball, miles an hour": "deep",
}


def rows(heading: str) -> dict[str, list[str]]:
    table = SECTION.partition(f"| {heading} |")[2].partition("\n\n")[0]
    cells = [[c.strip() for c in line.strip("|").split("|")] for line in table.splitlines()[2:]]
    return {row[0].strip("`"): row[1:] for row in cells}


def cell(value: float, known: Known[object]) -> str:
    return f"{value:g} {MARKS[known.certainty]}"


def test_the_table_of_levels_is_the_compilers() -> None:
    levels = list(LEVELS.values())
    wanted: dict[str, list[str]] = {}
    for group in Group:
        runs = [level.splits[group] for level in levels]
        wanted[f"{group.value}, 10 yards"] = [cell(known.value.ten, known) for known in runs]
        wanted[f"{group.value}, 40 yards"] = [cell(known.value.forty, known) for known in runs]
    for words, name in FIGURES.items():
        figures: list[Known[float]] = [getattr(level, name) for level in levels]
        wanted[words] = [cell(known.value, known) for known in figures]
    assert rows("figure") == wanted
    head = SECTION.partition("| figure |")[2].partition("\n")[0]
    assert [c.strip(" `") for c in head.strip("|").split("|")] == list(LEVELS)


def test_the_table_of_feet_is_the_compilers_at_every_level() -> None:
    under = HIGH_SCHOOL.under
    wanted = {
        name: [cell(k.value, k), cell(under[name].value, under[name])]
        for name, k in HIGH_SCHOOL.foot.items()
    }
    wanted |= {name: [f"{cell(k.value, k)} more", ""] for name, k in HIGH_SCHOOL.again.items()}
    assert rows("foot") == wanted
    for level in LEVELS.values():
        assert (level.foot, level.again) == (HIGH_SCHOOL.foot, HIGH_SCHOOL.again)
        assert level.under == under


@pytest.mark.parametrize(
    "words",
    [
        f"`collide` under {COLLIDE:g} yards, `brush` to {BRUSH:g}, and are `loose` beyond",
        f"{TRIANGLE:g} yards off the line",
        f"more than {SPAN:g} yards apart",
        f"`high-low` needs {HIGH_LOW:g} yards",
        f"`stretch` {STRETCH:g} yards between neighbours",
        f"`open` from {OPEN:g} yards, `tight` from {TIGHT:g}",
        f"{GAP:g} seconds either way",
        f"behind a `fake` is down no sooner than {FAKED:g} seconds",
    ],
)
def test_figures_in_the_prose(words: str) -> None:
    assert words in PROSE


def test_what_a_square_cut_leaves() -> None:
    assert "a square cut more than half, a rounded one a quarter" in PROSE
    assert dict(PLANTED_TURN)[90] < 0.5
    assert dict(ROUNDED_TURN)[90] == pytest.approx(0.75, abs=0.02)


def test_every_word_of_the_clock_stands_on_the_page() -> None:
    spans = set(re.findall(r"`([^`\n]+)`", SECTION))
    words = (
        {v.value for v in Verdict}
        | {m.value for m in Meeting}
        | {c.value for c in Cover} - {"covered", "not there"}
    )
    assert words - {"nobody"} <= spans
    assert LEVELS.keys() <= spans


def test_the_level_that_a_code_has_of_itself() -> None:
    own = {code: level_for(code) for code in CODES}
    assert {code for code, level in own.items() if level == "professional"} == {
        code for code in CODES if "professional" in code
    }
    assert [code for code, level in own.items() if level == "college"] == ["college"]
    assert {own[c] for c in CODES if "professional" not in c and c != "college"} == {"high school"}
    assert all(isinstance(LEVELS[level], PlayingLevel) for level in own.values())


def test_the_print_out_is_what_the_command_prints() -> None:
    """In its order, less the clock of the tags."""
    shown = SECTION.partition("```text\n")[2].partition("```")[0].splitlines()
    folder = Path(__file__).parent / "corpus" / "base"
    result = CliRunner().invoke(main, ["check", "--timing", str(folder)])
    assert result.exit_code == 0
    left = iter(result.stdout.splitlines())
    for line in filter(None, shown):
        assert line in left, line
    assert len(shown) > 15
