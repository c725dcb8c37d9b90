"""The Herons' two seasons as a small real repository: nine commits by two coaches, a branch joined,
a tag a season. The last commit is the bundled playbook, letter by letter."""

from __future__ import annotations

import os
import subprocess
from collections.abc import Callable
from pathlib import Path

PLAYBOOKS = Path(__file__).parents[2] / "playbooks"
LAST, THIS = PLAYBOOKS / "saltmarsh-herons-2025", PLAYBOOKS / "saltmarsh-herons"
ADA, BRAM = "Ada Fenn", "Bram Oller"
"""Two coaches, invented."""
_RENAMED = ("corners.play", "formations-close.play", "goal-line.play")


def build(folder: Path) -> Path:
    """The repository in ``folder``, which is made."""
    folder.mkdir()
    git(folder, "init", "-q", "-b", "main")
    for file in sorted(LAST.glob("*.play")):
        (folder / file.name).write_text(file.read_text("utf-8"), "utf-8")
    _commit(folder, "2025-08-10", ADA, "The season's book")
    git(folder, "tag", "season-2025")
    _edit(folder, "corners.play", lambda text: text.replace("corner 12", "corner 10"))
    _commit(folder, "2026-01-12", BRAM, "Smash breaks at ten")
    for name in _RENAMED:
        _edit(folder, name, lambda text: text.replace("Tandem", "Stack"))
    _commit(folder, "2026-02-02", ADA, "Tandem is Stack, as the line says it")
    git(folder, "switch", "-q", "-c", "crossing")
    _take(folder, "crossing-deep.play")
    _commit(folder, "2026-02-20", BRAM, "Deep Over")
    git(folder, "switch", "-q", "main")
    _take(folder, "protections.play", "flood.play", "screens.play")
    _commit(folder, "2026-03-03", ADA, "Ferry for Breakout")
    git(folder, "merge", "-q", "--no-ff", "-m", "Take Deep Over", "crossing",
         day="2026-03-04", who=ADA)  # fmt: skip
    _take(folder, "corners.play")
    _commit(folder, "2026-03-15", BRAM, "Read the corner first")
    _take(folder, "quick.play")
    _commit(folder, "2026-04-01", ADA, "Slants: one man is read")
    _take(folder, "levels.play")
    _commit(folder, "2026-05-10", BRAM, "The dig at fourteen")
    _take(folder, *(file.name for file in THIS.glob("*.play")))
    _commit(folder, "2026-07-01", ADA, "Season 2026")
    git(folder, "tag", "season-2026")
    return folder


def _edit(folder: Path, name: str, change: Callable[[str], str]) -> None:
    text = (folder / name).read_text("utf-8")
    assert change(text) != text, name
    (folder / name).write_text(change(text), "utf-8")


def _take(folder: Path, *names: str) -> None:
    """These texts as they are this season."""
    for name in names:
        (folder / name).write_text((THIS / name).read_text("utf-8"), "utf-8")


def _commit(folder: Path, day: str, who: str, said: str) -> None:
    git(folder, "add", ".")
    git(folder, "commit", "-qm", said, day=day, who=who)


def git(folder: Path, *said: str, day: str = "2025-08-10", who: str = ADA) -> None:
    names = {
        f"GIT_{which}_{what}": value
        for which in ("AUTHOR", "COMMITTER")
        for what, value in (("NAME", who), ("EMAIL", "coach@example.invalid"),
                            ("DATE", f"{day}T12:00:00Z"))
    }  # fmt: skip
    quiet = {"GIT_CONFIG_GLOBAL": os.devnull, "GIT_CONFIG_SYSTEM": os.devnull}
    subprocess.run(
        ["git", *said], cwd=folder, env={**os.environ, **names, **quiet}, check=True,
        capture_output=True,
    )  # fmt: skip
