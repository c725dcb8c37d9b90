"""The outside world: the files of a playbook, and its revision."""

from __future__ import annotations

import io
import os
import subprocess
import tarfile
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from stemline.diagnostics.model import Diagnostic, diagnose
from stemline.diagnostics.nearest import nearest
from stemline.source import Source, Span

SUFFIX = ".play"
LARGEST_FILE = 8_000_000
"""Bytes. A season's book is a few hundred kilobytes of text; more is not one."""


@dataclass(frozen=True)
class Files:
    """The texts of a playbook folder, in order of their names."""

    folder: Path
    sources: tuple[Source, ...]
    found: tuple[Diagnostic, ...]

    @property
    def by_name(self) -> dict[str, Source]:
        return {s.name: s for s in self.sources}


def read_files(folder: Path) -> Files:
    """Every ``.play`` file below the folder, its build folder and hidden folders left out.

    Mistakes of the outside world are diagnostics too: no folder, no file, not UTF-8, empty.
    """
    place = Span(str(folder), 0, 0, 0)
    if not folder.exists():
        siblings = folder.parent.iterdir() if folder.parent.is_dir() else ()
        names = tuple(sorted(p.name for p in siblings if p.is_dir()))
        near = nearest(folder.name, names)
        return Files(folder, (), (diagnose("E101", place, nearest=near, folder=folder),))
    if not folder.is_dir():
        return Files(folder, (), (diagnose("E102", place, folder=folder),))
    paths = sorted(_play_files(folder))
    if not paths:
        return Files(folder, (), (diagnose("E103", place, folder=folder),))
    sources: list[Source] = []
    found: list[Diagnostic] = []
    for path in paths:
        source, problem = _read(path)
        if problem is not None:
            found.append(problem)
        if source is not None:
            sources.append(source)
    return Files(folder, tuple(sources), tuple(found))


def _play_files(folder: Path) -> Iterator[Path]:
    for root, folders, names in os.walk(folder):
        folders[:] = [f for f in folders if f != "build" and not f.startswith(".")]
        yield from (Path(root) / n for n in names if n.endswith(SUFFIX) and not n.startswith("."))


def files_at(folder: Path, revision: str) -> tuple[Files | None, str]:
    """The texts of the folder as they were at a revision of it; None with the reason in words.

    Nothing is written: the revision is read out of the repository as one archive.
    """
    asked = ("rev-parse", "--verify", "--quiet", "--end-of-options", f"{revision}^{{commit}}")
    if (top := _git(folder, "rev-parse", "--show-toplevel")) is None:
        return None, f"{folder} is under no version control"
    if (commit := _git(folder, *asked)) is None or not top:
        return None, "the playbook has no such revision"
    archive = _git(folder, "archive", "--format=tar", commit.decode().strip(), "--", ".")
    texts = sorted(_archived(archive)) if archive is not None else []
    if not texts:
        return None, f"at that revision there was no playbook in {folder}"
    read = [_decoded(f"{revision}:{name}", raw) for name, raw in texts]
    sources = tuple(source for source, _ in read if source is not None)
    return Files(folder, sources, tuple(found for _, found in read if found is not None)), ""


def _git(folder: Path, *asked: str) -> bytes | None:
    """What git answers of the folder; None where it cannot."""
    try:
        made = subprocess.run(
            ["git", *asked], cwd=folder, capture_output=True, timeout=30, check=False
        )
    except (OSError, subprocess.SubprocessError):
        return None
    return made.stdout if made.returncode == 0 else None


def _archived(archive: bytes) -> Iterator[tuple[str, bytes]]:
    """The playbook files of an archive, by the same rules as those of a folder."""
    with tarfile.open(fileobj=io.BytesIO(archive)) as tar:
        for member in tar:
            *folders, name = member.name.split("/")
            hidden = any(part.startswith(".") or part == "build" for part in folders)
            if not member.isfile() or hidden or name.startswith(".") or not name.endswith(SUFFIX):
                continue
            held = tar.extractfile(member)
            if held is not None and member.size <= LARGEST_FILE:
                yield member.name, held.read()


def _read(path: Path) -> tuple[Source | None, Diagnostic | None]:
    name = str(path)
    place = Span(name, 0, 0, 0)
    try:
        size = path.stat().st_size
        if size > LARGEST_FILE:
            return None, diagnose("E106", place, size=f"{size / 1e6:.0f}")
        raw = path.read_bytes()
    except OSError as error:
        return None, diagnose("E107", place, why=error.strerror or "cannot be opened")
    return _decoded(name, raw)


def _decoded(name: str, raw: bytes) -> tuple[Source | None, Diagnostic | None]:
    place = Span(name, 0, 0, 0)
    try:
        text = raw.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = raw.count(b"\n", 0, error.start) + 1
        column = error.start - (raw.rfind(b"\n", 0, error.start) + 1) + 1
        at = Span(name, line, column, column + 1)
        return None, diagnose("E104", at, byte=f"{raw[error.start]:#04x}")
    text = text.replace("\r\n", "\n").replace("\r", "\n")
    source = Source(name, text)
    if not text.strip():
        return source, diagnose("E105", place)
    return source, None


def revision(folder: Path) -> tuple[str, str]:
    """The revision and date of the folder's last commit; ("", "") outside version control."""
    try:
        asked = subprocess.run(
            ["git", "log", "-1", "--format=%h %cs", "--", "."],
            cwd=folder, capture_output=True, text=True, timeout=10, check=False,
        )  # fmt: skip
    except (OSError, subprocess.SubprocessError):
        return "", ""
    parts = asked.stdout.split()
    return (parts[0], parts[1]) if asked.returncode == 0 and len(parts) == 2 else ("", "")
