"""Lowered warnings, as a coach sees them: counted in one line, never hidden."""

from __future__ import annotations

from pathlib import Path

import pytest
from running import run

from stemline.checks.discovered import rows
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.diagnostics.lowered import lowered_line, parted
from stemline.source import Span


def warning(code: str, line: int) -> Diagnostic:
    (row,) = (row for row in rows() if row.__name__ == code)
    return row(**dict.fromkeys(row.fields, "")).at(Span("book.play", line, 1, 2))


@pytest.mark.parametrize(
    ("codes", "line"),
    [
        ((), ""),
        (("W650",), "1 warning lowered: W650"),
        (("W650", "W650", "W650"), "3 warnings lowered: W650"),
        (("W710", "W650", "W650"), "3 warnings lowered: 2 W650, 1 W710"),
    ],
)
def test_the_line_that_counts(codes: tuple[str, ...], line: str) -> None:
    assert lowered_line([warning(code, n) for n, code in enumerate(codes, 1)]) == line


def test_an_error_is_printed_whatever_is_lowered() -> None:
    found = [warning("E510", 1), warning("W650", 2), warning("W710", 3), warning("W650", 2)]
    printed, counted = parted(found, ("W650", "E510"))
    assert [d.code for d in printed] == ["E510", "W710"]
    assert [d.code for d in counted] == ["W650"]


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    assert run("new", tmp_path / "mine").exit_code == 0
    return tmp_path / "mine"


def add(folder: Path, line: str, more: str = "") -> None:
    """A line of the playbook block, and blocks behind it."""
    for path in folder.glob("*.play"):
        text = path.read_text("utf-8")
        if text.startswith("playbook") or "\nplaybook" in text:
            head, _, rest = text.partition("    code ")
            path.write_text(f"{head}    {line}\n    code {rest}\n{more}", "utf-8")


WEEKS = "week 1 One\n    openers\n\nweek 2 Two\n    openers\n"


def test_check_prints_a_warning_that_is_not_lowered(folder: Path) -> None:
    add(folder, "season 2026", WEEKS)
    result = run("check", folder)
    assert result.exit_code == 0
    assert result.stderr.count("warning W974") == 2
    assert result.stdout.rstrip().endswith("no errors, 2 warnings")


def test_check_counts_a_warning_that_is_lowered(folder: Path) -> None:
    add(folder, "lower W974", WEEKS)
    result = run("check", folder)
    assert result.exit_code == 0
    assert result.stderr == "2 warnings lowered: W974\n"
    assert result.stdout.rstrip().endswith("no errors, no warnings, 2 lowered")


def test_an_error_beside_it_is_still_printed_and_fails(folder: Path) -> None:
    add(folder, "lower W974", f"{WEEKS}\nroute Odd\n    stroke pu 5\n")
    result = run("check", folder)
    assert result.exit_code == 1
    assert "error E440" in result.stderr and "warning" not in result.stderr.split("\n")[0]
    assert result.stderr.endswith("2 warnings lowered: W974\n")
    assert result.stdout.rstrip().endswith("1 error, no warnings, 2 lowered")


def test_lowering_everything_is_refused(folder: Path) -> None:
    add(folder, "lower all", WEEKS)
    result = run("check", folder)
    assert result.exit_code == 1
    assert "error E320" in result.stderr
    assert result.stderr.count("warning W974") == 2
