"""What a command was made of and what it wrote: where all is as it was, nothing is to be done.

A stamp is kept in the user's cache, signed (`private.py`), never beside the output: a folder that
comes from somebody else brings none with it. It holds

- a key over the texts, the options, the revision that is printed, the program and its libraries;
- the libraries of the system that took part, and folders where a theme was sought, as they were;
- every file that was written, by its content, and what the command said. A check writes none.

Texts, themes, the program and the output go in by their content, so an edit that keeps a file's
size and time is seen. Where anything cannot be told there is no stamp, and the book is built.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from itertools import islice
from pathlib import Path

from stemline.outside.private import keep_text, kept_text
from stemline.outside.program import about, bundled, loaded, now_there, surroundings
from stemline.outside.texts import Files

MOST_STAMPS = 100
"""Outputs that are known, those built last."""
_LARGEST = 4_000_000
"""Bytes of a stamp; that of two hundred pictures has 30,000."""
_MOST_FILES, _MOST_BYTES = 5_000, 200_000_000
"""Files and bytes of a folder in which a theme is sought: with more it is somebody's desk."""


@dataclass(frozen=True)
class LastSaid:
    """What a command said, in order: words, and whether they are about what is wrong, which goes
    to the other stream; and whether it failed."""

    words: tuple[tuple[str, bool], ...]
    failed: bool = False


@dataclass(frozen=True)
class GoalAsked:
    """What a command was asked for: where it writes, else what it reads, and each option as it was
    given.

    ``place`` is where stamps are kept, None for nowhere.
    """

    place: Path | None
    target: Path
    options: tuple[str, ...]


class Ingredients:
    """All that the bytes of a build hang on, as it is at this moment, but its theme's folders."""

    def __init__(self, asked: GoalAsked, texts: Files, revision: tuple[str, str]) -> None:
        said = [each for source in texts.sources for each in (source.name, source.text)]
        held = (
            now_there(), bundled(), surroundings(), asked.options, revision, repr(texts.found), said
        )  # fmt: skip
        self.known = all(held[:3])
        text = json.dumps(held).encode("utf-8", "surrogatepass")
        self.key = hashlib.sha256(text).hexdigest()


def unchanged(
    asked: GoalAsked, made_of: Ingredients, standing: Mapping[str, str] | None
) -> LastSaid | None:
    """What the last command of this said, where nothing has changed since; ``standing`` is what
    lies in its folder, None where that is not as it was written."""
    file = _file(asked)
    if file is None or standing is None or not made_of.known:
        return None
    try:
        held = json.loads(kept_text(file, _LARGEST) or "{}")
        if held.get("key") != made_of.key or held["files"] != standing:
            return None
        if any(about(Path(path)) != was for path, was in held["libraries"].items()):
            return None
        if any(seal_of(Path(path)) != was for path, was in held["folders"].items()):
            return None
        words = tuple((str(said), bool(wrong)) for said, wrong in held["words"])
        return LastSaid(words, bool(held["failed"]))
    except (OSError, ValueError, LookupError, TypeError, AttributeError, RecursionError):
        return None


def keep(
    asked: GoalAsked,
    made_of: Ingredients,
    folders: Mapping[str, str],
    files: Mapping[str, str],
    told: LastSaid,
) -> None:
    """Keep what was built of ``made_of``, with the seals of the ``folders`` of its theme."""
    file, libraries = _file(asked), loaded()
    if file is None or libraries is None or not made_of.known or not all(folders.values()):
        return
    held = {
        "key": made_of.key, "libraries": libraries, "folders": dict(folders),
        "files": dict(files), "words": told.words, "failed": told.failed,
    }  # fmt: skip
    keep_text(file, json.dumps(held), MOST_STAMPS)


def seal_of(folder: Path) -> str:
    """A digest of all files in a folder, by name and content; of none where there is no folder,
    and "" where they are too many or one cannot be read."""
    found = files_of(folder)
    return "" if found is None else sealed(found.items())


def sealed(files: Iterable[tuple[str, str]]) -> str:
    return hashlib.sha256(json.dumps(sorted(files)).encode()).hexdigest()


def files_of(folder: Path) -> dict[str, str] | None:
    """The digest of each file in a folder by its name; None where they cannot all be told."""
    found: dict[str, str] = {}
    size = 0
    try:
        there = list(islice(folder.rglob("*"), _MOST_FILES + 1)) if folder.is_dir() else []
        if len(there) > _MOST_FILES:
            return None
        for file in there:
            name = file.relative_to(folder).as_posix()
            if not file.is_file():
                found[name] = "folder" if file.is_dir() else "none"
                continue
            size += file.stat().st_size
            if size > _MOST_BYTES:
                return None
            found[name] = hashlib.sha256(file.read_bytes()).hexdigest()
    except (OSError, RuntimeError):  # not to be read, or links in a circle
        return None
    return found


def _file(asked: GoalAsked) -> Path | None:
    if asked.place is None:
        return None
    name = hashlib.sha256(str(asked.target).encode("utf-8", "surrogatepass")).hexdigest()[:16]
    return asked.place / f"{name}.json"
