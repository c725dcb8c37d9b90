"""What a repository is told of stemline: how to show, merge and check a playbook's texts.

Settings, attributes and the hook lie below the repository's own folder and are not committed, so a
coach who does not have stemline is not troubled by them, and all can be taken away again.
"""

from __future__ import annotations

import shlex
import sys
from collections.abc import Iterator
from pathlib import Path

from stemline.outside.file import write_file
from stemline.outside.repository import git_folder, set_setting, unset_section

_MARK = "stemline install-git"
"""Stands in what we wrote, so that nothing else is ever taken away."""
_ATTRIBUTES = "*.play diff=stemline merge=stemline"


class NoRepository(Exception):
    """The folder is under no version control."""


def install(folder: Path) -> Iterator[str]:
    """Write the settings; yields what was done. Raises `NoRepository`."""
    home = git_folder(folder)
    if home is None:
        raise NoRepository
    program = f"{shlex.quote(sys.executable)} -m stemline"
    settings = {
        "diff.stemline.textconv": f"{program} tell",
        "diff.stemline.cachetextconv": "false",
        "merge.stemline.name": "joins a playbook's texts line by line",
        "merge.stemline.driver": f"{program} merge %O %A %B --marks %L --name %P",
    }
    for name, value in settings.items():
        set_setting(folder, name, value)
    _attributes(home, True)
    return iter(
        (
            "git diff, git log -p and git show name what a changed line belongs to",
            "git merge joins texts line by line of the notation",
            _hook(home, folder, program),
        )
    )


def remove(folder: Path) -> Iterator[str]:
    """Take away what `install` wrote, and nothing else. Raises `NoRepository`."""
    home = git_folder(folder)
    if home is None:
        raise NoRepository
    for section in ("diff.stemline", "merge.stemline"):
        unset_section(folder, section)
    _attributes(home, False)
    hook = home / "hooks" / "pre-commit"
    if hook.is_file() and _MARK in hook.read_text("utf-8", "replace"):
        hook.unlink()
    return iter(("git knows nothing of stemline any more",))


def _attributes(home: Path, there: bool) -> None:
    path = home / "info" / "attributes"
    lines = path.read_text("utf-8", "surrogateescape").splitlines() if path.is_file() else []
    lines = [line for line in lines if line != _ATTRIBUTES]
    if there:
        lines.append(_ATTRIBUTES)
    path.parent.mkdir(exist_ok=True)
    write_file(path, "".join(f"{line}\n" for line in lines).encode("utf-8", "surrogateescape"))


def _hook(home: Path, folder: Path, program: str) -> str:
    """The check before a commit; a hook that is somebody else's stays."""
    path = home / "hooks" / "pre-commit"
    if path.exists() and _MARK not in path.read_text("utf-8", "replace"):
        return f"{path} is yours and stays: put `stemline check` into it"
    path.parent.mkdir(exist_ok=True)
    book = shlex.quote(str(folder.resolve()))
    text = f"#!/bin/sh\n# {_MARK}\nexec {program} check {book}\n"
    write_file(path, text.encode())
    path.chmod(0o755)
    return "git commit checks the playbook first (git commit --no-verify does not)"
