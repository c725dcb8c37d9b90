"""The outside world: a playbook's files as they are and as they were, and its revision."""

from __future__ import annotations

import io
import subprocess
import tarfile
from collections.abc import Iterator
from pathlib import Path

from stemline.reading import BUILD, LARGEST_FILE, Files, decoded, is_text, read_files

__all__ = ["Files", "files_at", "read_files", "revision"]


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
    read = [decoded(f"{revision}:{name}", raw) for name, raw in texts]
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
            hidden = any(part.startswith(".") or part == BUILD for part in folders)
            if not member.isfile() or hidden or not is_text(name):
                continue
            held = tar.extractfile(member)
            if held is not None and member.size <= LARGEST_FILE:
                yield member.name, held.read()


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
