"""The outside world: a playbook's files as they are and as they were, and its revision."""

from __future__ import annotations

import hashlib
from pathlib import Path

from stemline.outside.repository import (
    DAY,
    Commit,
    Kept,
    commit_of,
    commits_of,
    contents,
    has_repository,
    kept_files,
    last_commit,
    revision_names,
)
from stemline.outside.texts import BUILD, LARGEST_FILE, Files, decoded, is_text, read_files
from stemline.source import Source

__all__ = ["Files", "earlier_texts", "files_at", "read_files", "revision", "revision_names"]


def files_at(folder: Path, revision: str) -> tuple[Files | None, str]:
    """The texts of the folder as they were at a revision of it; None with the reason in words.

    Nothing is written: the texts are read out of the repository.
    """
    if not has_repository(folder):
        return None, f"{folder} is under no version control"
    if (commit := commit_of(folder, revision)) is None:
        if DAY.fullmatch(revision):
            return None, "the playbook has no revision of that day or before it"
        return None, "the playbook has no such revision"
    kept = _texts_of(folder, commit)
    texts = contents(folder, tuple(dict.fromkeys(each.object for each in kept)))
    read = [
        # As git names a file of a revision; the text's own name, which tells a family, stays whole.
        decoded(f"{revision}:./{each.name}", texts[each.object])
        for each in kept
        if each.object in texts
    ]
    if not read:
        return None, f"at that revision there was no playbook in {folder}"
    sources = tuple(source for source, _ in read if source is not None)
    return Files(folder, sources, tuple(found for _, found in read if found is not None)), ""


MOST_REVISIONS = 500
"""Revisions of a history that are looked at: some ten seasons of a coach who commits weekly."""


def earlier_texts(folder: Path) -> list[tuple[Commit, tuple[Source, ...]]]:
    """The texts at each commit that touched them, oldest first; the same text is one `Source`."""
    commits = commits_of(folder, MOST_REVISIONS)
    kept = [(commit, _texts_of(folder, commit.id)) for commit in commits]
    objects = dict.fromkeys((each.name, each.object) for _, files in kept for each in files)
    texts = contents(folder, tuple(dict.fromkeys(text for _, text in objects)))
    sources = {
        (name, text): decoded(name, texts[text])[0] for name, text in objects if text in texts
    }
    return [
        (
            commit,
            tuple(s for each in files if (s := sources.get((each.name, each.object))) is not None),
        )
        for commit, files in kept
    ]


def _texts_of(folder: Path, commit: str) -> list[Kept]:
    """The texts of a commit, in order of their names."""
    found = kept_files(folder, commit)
    read = [each for each in found if _is_read(each.name) and each.size <= LARGEST_FILE]
    return sorted(read, key=lambda each: each.name)


def _is_read(path: str) -> bool:
    """Whether a file of a revision is a text, by the same rules as those of a folder."""
    *folders, name = path.split("/")
    return is_text(name) and not any(part.startswith(".") or part == BUILD for part in folders)


CHANGED = "and changes since"


def revision(folder: Path) -> tuple[str, str]:
    """The revision and date of the folder's last commit, and whether the texts have changed since;
    ("", "") outside version control."""
    name, day = last_commit(folder)
    return (f"{name} {CHANGED}" if name and _is_changed(folder) else name), day


def _is_changed(folder: Path) -> bool:
    """Whether the texts are others than those of the last commit.

    Git's own answer could run programs that the repository names, so objects are named here.
    """
    commit = commit_of(folder, "HEAD")
    if commit is None:
        return True
    kept = {each.name: each.object for each in _texts_of(folder, commit)}
    here: dict[str, str] = {}
    for source in read_files(folder).sources:
        path = Path(source.name)
        try:
            raw = path.read_bytes()
        except OSError:
            return True
        wide = len(next(iter(kept.values()), "")) > 40
        hashed = hashlib.sha256() if wide else hashlib.sha1(usedforsecurity=False)
        hashed.update(b"blob %d\0" % len(raw))
        hashed.update(raw)
        here[path.relative_to(folder).as_posix()] = hashed.hexdigest()
    return here != kept
