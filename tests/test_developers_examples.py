"""The examples of `DEVELOPERS.md`: taken out of the page, put into a copy of the house, and run."""

from __future__ import annotations

import os
import re
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

HOUSE = Path(__file__).parent.parent
PAGE = (HOUSE / "DEVELOPERS.md").read_text("utf-8")
_FENCE = re.compile(r"^(`{3,})(\w+) (\S+)\n(.*?)^\1$", re.MULTILINE | re.DOTALL)
_LINES = 100


def examples() -> list[tuple[str, str, str]]:
    """Each fence that names a file: its kind, the file and the text."""
    return [(kind, path, text) for _, kind, path, text in _FENCE.findall(PAGE)]


def new_files() -> set[str]:
    """Names of files that only the examples have."""
    return {Path(path).name for kind, path, _ in examples() if kind != "diff"}


def changed(text: str, diff: str) -> str:
    """A file with the lines that each hunk has behind a plus, below the lines it names."""
    for hunk in diff.split("@@\n"):
        lines = hunk.splitlines(keepends=True)
        assert all(line[0] in " +\n" for line in lines), hunk
        old = "".join(line[1:] for line in lines if line[0] == " ")
        new = "".join(line[1:] if line[0] != "\n" else line for line in lines)
        assert text.count(old) == 1, f"this is to stand once where it is added to:\n{old}"
        text = text.replace(old, new)
    return text


@pytest.fixture(scope="module")
def copy(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The house with the examples in it."""
    there = tmp_path_factory.mktemp("house")
    for room in ("compiler", "grammar", "tests", "themes"):
        shutil.copytree(HOUSE / room, there / room)
    shutil.copy(HOUSE / "pyproject.toml", there)
    (there / "playbooks").symlink_to(HOUSE / "playbooks")
    (there / "stemline").symlink_to("compiler")
    for room in ("grammar", "themes"):
        (there / "compiler" / room).symlink_to(f"../{room}")
    for kind, path, text in examples():
        file = there / path
        assert (kind == "diff") == file.exists(), path
        file.write_text(changed(file.read_text("utf-8"), text) if kind == "diff" else text, "utf-8")
    run(there, "-m", "tests.errors_page")
    return there


def run(there: Path, *words: str) -> str:
    paths = os.pathsep.join((str(there), str(there / "tests")))
    done = subprocess.run(
        [sys.executable, *words],
        cwd=there,
        env={**os.environ, "PYTHONPATH": paths},
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stdout[-3000:] + done.stderr[-3000:]
    return done.stdout


def test_the_example_of_a_route(copy: Path) -> None:
    run(copy, "-m", "pytest", "-n0", "tests/football/test_routes.py")
    page = "tests/test_reference_page.py"
    run(copy, "-m", "pytest", "-n0", page, "-k", "route_table or no_longer_than")


def test_the_example_of_a_rule(copy: Path) -> None:
    """The tests that its steps name, and of the page of messages its own section."""
    run(
        copy,
        *("-m", "pytest", "-n0", "tests/references/test_codes.py"),
        *("tests/references/test_legality.py", "tests/checks/test_every_check.py"),
        "tests/test_every_code.py",
    )
    told = run(
        copy,
        "-c",
        "import test_errors_page as page\n"
        "for one in page.SECTIONS:\n"
        "    if one.code[1:] == '599':\n"
        "        print(one.code, *(sample.codes() for sample in one.samples))\n",
    )
    assert told == "E599 ['E599'] []\nW599\n"


def test_the_example_of_a_page(copy: Path) -> None:
    run(copy, "-m", "pytest", "-n0", "tests/book/test_men_page.py", "tests/emit/test_page_kinds.py")


def test_the_examples_are_as_the_formatter_has_them(copy: Path) -> None:
    own = [path for kind, path, _ in examples() if path.endswith(".py")]
    run(copy, "-m", "ruff", "check", *own)
    run(copy, "-m", "ruff", "format", "--check", *own)


def test_an_example_is_short_enough_to_be_read() -> None:
    told = examples()
    assert len(told) == 8
    assert all(text.count("\n") <= _LINES for _, _, text in told)
    assert {"from_hands.py", "men_page.py"} <= new_files()
