"""What `stemline new` gives to start from: legal under every rule code, and whole."""

from __future__ import annotations

from pathlib import Path

import pytest
from running import run

from stemline.football.rulebook.codes import CODES

WRITTEN = ("canadian amateur", "high school", "nine-man", "eight-man", "six-man", "wing")
LINES = 80


pytestmark = pytest.mark.usefixtures("kept")


def made(folder: Path, code: str) -> Path:
    result = run("new", folder, *(["--wing"] if code == "wing" else ["--code", code]))
    assert result.exit_code == 0, result.output
    return folder


@pytest.mark.parametrize("code", [*CODES, "wing"])
def test_each_is_checked_without_a_warning(tmp_path: Path, code: str) -> None:
    result = run("check", made(tmp_path / "mine", code))
    assert result.exit_code == 0, result.stderr
    assert result.stderr == ""
    assert result.stdout.endswith("no errors, no warnings\n")
    assert len(result.stdout.splitlines()) == 1, "a pass has no answer to the look"


@pytest.mark.parametrize("code", [*CODES, "wing"])
def test_each_has_its_code_a_pass_a_run_a_protection_and_a_look(tmp_path: Path, code: str) -> None:
    texts = [p.read_text("utf-8") for p in made(tmp_path / "mine", code).glob("*.play")]
    lines = [line for text in texts for line in text.splitlines()]
    kinds = {line.split()[0] for line in lines if line[:1].isalpha()}
    assert {"formation", "concept", "run", "protection", "look", "dress"} <= kinds
    wanted = "high school" if code == "wing" else code
    assert [line.split("//")[0].strip() for line in lines if line.startswith("    code ")] == [
        f"code {wanted}"
    ]
    assert any(line.strip().startswith("protect ") for line in lines)
    assert all(len(text.splitlines()) < LINES for text in texts)
    assert sum(line.startswith("//") for line in lines) >= LINES // 8, "nothing is explained"


@pytest.mark.parametrize("code", WRITTEN)
def test_one_call_of_each_is_drawn(tmp_path: Path, code: str) -> None:
    folder = made(tmp_path / "mine", code)
    calls = run("list", folder).stdout.splitlines()
    one = next(call for call in calls if " Right " in call)
    drawn = run("draw", folder, one).stdout
    assert drawn.lstrip().startswith(("<?xml", "<svg"))


@pytest.mark.parametrize("code", WRITTEN)
def test_each_builds_a_small_book_at_once(tmp_path: Path, code: str) -> None:
    folder = made(tmp_path / "mine", code)
    result = run("build", folder)
    assert result.exit_code == 0, result.output
    assert (folder / "build" / "book.pdf").stat().st_size > 10_000


@pytest.mark.parametrize("code", WRITTEN)
def test_each_is_laid_out_in_the_canonical_way(tmp_path: Path, code: str) -> None:
    result = run("format", "--check", made(tmp_path / "mine", code))
    assert result.exit_code == 0, result.stdout


def test_a_code_is_asked_for_by_its_men(tmp_path: Path) -> None:
    for men, code in (("12-man", "canadian amateur"), ("11-man", "high school")):
        book = (made(tmp_path / men, men) / "book.play").read_text("utf-8")
        assert f"    code {code}" in book


@pytest.mark.parametrize(
    ("args", "said"),
    [
        (["--code", "collage"], "no rule code is called 'collage': write college"),
        (["--code", "7-man"], "no rule code is called '7-man'"),
        (["--code", "six-man", "--wing"], "--wing is a set of eleven men"),
        (["--from", ".", "--wing"], "leave --code and --wing out"),
    ],
)
def test_what_cannot_be_made_is_said(tmp_path: Path, args: list[str], said: str) -> None:
    result = run("new", tmp_path / "mine", *args)
    assert result.exit_code == 2
    assert said in result.stderr
    assert not (tmp_path / "mine").exists()
