"""The README's notation compiles, and its pictures are what stemline draws.

To remake the pictures:

    stemline draw playbooks/saltmarsh-herons "Quads Right Tuck Crossers" -o playbooks/crossers.svg

and, in a folder made by `stemline new` with the README's concept added to it:

    stemline draw FOLDER "Trips Right Slant Flat" -o playbooks/slant-flat.svg
"""

from __future__ import annotations

import re
from pathlib import Path

from click.testing import CliRunner

from stemline.commands import main

ROOT = Path(__file__).parent.parent
README = (ROOT / "README.md").read_text("utf-8")


def drawn(folder: Path, call: str) -> str:
    result = CliRunner().invoke(main, ["draw", str(folder), call])
    assert result.exit_code == 0, result.stderr
    return result.stdout


def test_the_first_picture() -> None:
    shown = (ROOT / "playbooks" / "crossers.svg").read_text("utf-8")
    assert "playbooks/crossers.svg" in README
    assert shown == drawn(ROOT / "playbooks" / "saltmarsh-herons", "Quads Right Tuck Crossers")


def test_the_ten_lines_and_their_picture(tmp_path: Path) -> None:
    (text,) = re.findall(r"```play\n(.*?)```", README, re.S)
    runner = CliRunner()
    assert runner.invoke(main, ["new", str(tmp_path / "book")]).exit_code == 0
    (tmp_path / "book" / "readme.play").write_text(text, "utf-8")
    result = runner.invoke(main, ["check", str(tmp_path / "book")])
    assert (result.exit_code, result.stderr) == (0, "")
    shown = (ROOT / "playbooks" / "slant-flat.svg").read_text("utf-8")
    assert shown == drawn(tmp_path / "book", "Trips Right Slant Flat")


def test_the_two_commands_are_what_ci_runs() -> None:
    first, second, *_ = re.findall(r"```sh\n(.*?)\n```", README, re.S)
    assert first.startswith("sh .ci/setup && ")
    assert second in (ROOT / ".ci" / "run").read_text("utf-8")


def test_links_lead_somewhere() -> None:
    for target in re.findall(r"\]\(([^)]+)\)", README):
        assert (ROOT / target).exists(), target
