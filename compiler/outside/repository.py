"""What git keeps of a folder. The repository may be a stranger's, and its settings name programs.

So git is asked only for what runs none of them: objects as they are kept, without the filters,
signatures, pagers and fetches that a repository may ask for (git-config(1), gitattributes(5)).
What it answers is bounded in size and in time.
"""

from __future__ import annotations

import os
import re
import shutil
import subprocess
import tempfile
import threading
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

_PATIENCE = 10.0
"""Seconds. The list of a book's files and their texts take a few hundredths."""
_MOST = 64_000_000
"""Bytes of one answer; a few objects can be arranged so that a list of them has no end."""

_QUIET = (
    "--no-pager",
    *("-c", "core.fsmonitor=false"),  # a program, run where the index is read
    *("-c", f"core.hooksPath={os.devnull}"),
    *("-c", "i18n.logOutputEncoding=UTF-8"),
)
_ALONE = {
    "GIT_NO_LAZY_FETCH": "1",  # an object that is missing is missing
    "GIT_ALLOW_PROTOCOL": "none",  # and, to a git that does not know that word, not to be fetched
    "GIT_OPTIONAL_LOCKS": "0",
    "GIT_TERMINAL_PROMPT": "0",
}

_FILE = re.compile(rb"100(?:644|755) blob ([0-9a-f]{40,64}) +([0-9]+)\t(.+)", re.DOTALL)
"""A plain file in ``git ls-tree -l``: its object, its size, its path. No link, no other module."""
DAY = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}")
_REVISION = re.compile(r"([0-9a-f]{4,64}) ([0-9]{4}-[0-9]{2}-[0-9]{2})")


@dataclass(frozen=True)
class Kept:
    """A file that a commit keeps: its path below the folder, its object, its size in bytes."""

    name: str
    object: str
    size: int


def has_repository(folder: Path) -> bool:
    return _git(folder, "rev-parse", "--git-dir") is not None


def git_folder(folder: Path) -> Path | None:
    """Where the repository keeps its own files; None outside of one."""
    answer = _git(folder, "rev-parse", "--git-common-dir")
    return (folder / answer.decode("utf-8", "surrogateescape").strip()) if answer else None


def set_setting(folder: Path, name: str, value: str) -> None:
    """Write one setting of the repository's own."""
    _git(folder, "config", "--local", name, value)


def unset_section(folder: Path, section: str) -> None:
    """Take a whole section out of the repository's own settings."""
    _git(folder, "config", "--local", "--remove-section", section)


def commit_of(folder: Path, revision: str) -> str | None:
    """The commit that a revision names, for a day the last one of the folder until its end; None
    where it names none, and for an option."""
    if DAY.fullmatch(revision):
        until = f"--until={revision}T23:59:59"
        answer = _git(folder, "rev-list", "-1", until, "HEAD", "--", ".")
        return (answer or b"").decode("ascii", "replace").strip() or None
    asked = ("rev-parse", "--verify", "--quiet", "--end-of-options", f"{revision}^{{commit}}")
    answer = _git(folder, *asked)
    return (answer or b"").decode("ascii", "replace").strip() or None


def kept_files(folder: Path, commit: str) -> Iterator[Kept]:
    """The plain files below the folder in a commit."""
    listed = _git(folder, "ls-tree", "-r", "-l", "-z", commit) or b""
    for row in listed.split(b"\0"):
        if (found := _FILE.fullmatch(row)) is not None:
            name = found[3].decode("utf-8", "surrogateescape")
            yield Kept(name, found[1].decode(), int(found[2]))


def contents(folder: Path, objects: tuple[str, ...]) -> Mapping[str, bytes]:
    """The bytes of each object that can be had; of none where all are more than a book has."""
    asked = "".join(f"{each}\n" for each in objects).encode()
    answer = _git(folder, "cat-file", "--batch", given=asked) or b""
    found: dict[str, bytes] = {}
    at = 0
    for each in objects:
        end = answer.find(b"\n", at)
        head = answer[at:end].split()
        at = end + 1
        if len(head) == 3:  # object, kind, size; of a missing one there are two words
            size = int(head[2])
            found[each] = answer[at : at + size]
            at += size + 1
    return found


def revision_names(folder: Path) -> tuple[str, ...]:
    """The names of the repository's tags and branches, in order."""
    answer = _git(folder, "for-each-ref", "--format=%(refname:short)", "refs/tags", "refs/heads")
    return tuple((answer or b"").decode("utf-8", "replace").splitlines())


@dataclass(frozen=True)
class Commit:
    """A commit: its whole and its short name, its day, who made it."""

    id: str
    name: str
    day: str
    who: str


def commits_of(folder: Path, most: int) -> tuple[Commit, ...]:
    """The last ``most`` commits that touched the folder, oldest first."""
    asked = ("rev-list", f"-{most}", "--format=%H%x00%h%x00%cs%x00%an", "HEAD", "--", ".")
    answer = (_git(folder, *asked) or b"").decode("utf-8", "replace")
    rows = (line.split("\0") for line in answer.splitlines() if "\0" in line)
    return tuple(reversed([Commit(*row) for row in rows if len(row) == 4]))


def last_commit(folder: Path) -> tuple[str, str]:
    """The short name and the day of the folder's last commit; ("", "") where there is none."""
    answer = _git(folder, "rev-list", "-1", "--format=%h %cs", "HEAD", "--", ".") or b""
    lines = answer.decode("ascii", "replace").splitlines()
    told = _REVISION.fullmatch(lines[-1]) if lines else None
    return (told[1], told[2]) if told is not None else ("", "")


def _git(folder: Path, *asked: str, given: bytes = b"") -> bytes | None:
    """What git answers of the folder; None where it cannot, will not end or says too much."""
    if (program := _program(folder)) is None:
        return None
    try:
        with tempfile.TemporaryFile() as put:
            put.write(given)
            put.seek(0)
            with subprocess.Popen(
                [program, *_QUIET, *asked], cwd=folder, env={**os.environ, **_ALONE},
                stdin=put, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL,
            ) as git:  # fmt: skip
                return _answer(git)
    except (OSError, ValueError, subprocess.SubprocessError):
        return None


def _program(folder: Path) -> str | None:
    """Where git is; None where the only one lies in the folder or where the coach stands, which
    some systems search before their own places."""
    found = shutil.which("git")
    if found is None or not Path(found).is_absolute():
        return None
    home = Path(found).resolve()
    if home.parent == Path.cwd() or home.is_relative_to(folder.resolve()):
        return None
    return found


def _answer(git: subprocess.Popen[bytes]) -> bytes | None:
    assert git.stdout is not None, "asked for with a pipe"
    late = threading.Timer(_PATIENCE, git.kill)
    late.start()
    try:
        said = git.stdout.read(_MOST + 1)
        if len(said) > _MOST:
            return None
        return said if git.wait() == 0 else None
    finally:
        late.cancel()
        git.kill()
