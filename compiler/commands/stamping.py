"""Whether a build or a check has anything to do: nothing that it needs is loaded to tell."""

from __future__ import annotations

import hashlib
import os
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from stemline.outside.cache import place
from stemline.outside.folder import fillings, standing, waits
from stemline.outside.project import read_files, revision
from stemline.outside.stamp import (
    GoalAsked,
    Ingredients,
    LastSaid,
    files_of,
    keep,
    sealed,
    unchanged,
)

if TYPE_CHECKING:
    from stemline.outside.texts import Files
    from stemline.theme import Theme


class Stamping:
    """The stamp of one output: asked before a build, and kept after it.

    ``options`` are all that were given, ``theme`` is what the theme's among them says. With
    ``cached`` False there is no stamp.
    """

    SHELF = "stamps"

    def __init__(
        self, folder: Path, target: Path, options: Sequence[str], theme: str, *, cached: bool
    ) -> None:
        self._folder, self._target, self._theme = folder, target, theme
        try:
            home, goal, here = (os.path.realpath(each) for each in (folder, target, ""))
        except OSError:  # the folder where the coach stands is gone
            home, goal, here, cached = "", "", "", False
        told = (str(folder), home, str(target), goal, here if theme else "", theme, *options)
        shelf = place(self.SHELF) if cached else None
        self._asked = GoalAsked(shelf, Path(goal), told)
        self._before: Ingredients | None = None

    def unchanged(self) -> LastSaid | None:
        """What the last build said, where nothing is to be done."""
        if self._asked.place is None:
            return None
        texts, printed = read_files(self._folder), self._printed()
        self._before = Ingredients(self._asked, texts, printed)
        return unchanged(self._asked, self._before, self._standing())

    def _printed(self) -> tuple[str, str]:
        """The revision that is printed, and its date."""
        return revision(self._folder)

    def _standing(self) -> dict[str, str] | None:
        """What was written and stands; None where nothing is, or it is not as it was."""
        return standing(self._target) or None

    def keep(
        self, texts: Files, printed: tuple[str, str], said: str, theme: Theme, told: LastSaid
    ) -> None:
        """Keep what was made of these texts, with the revision that was ``printed``; ``said`` is
        the playbook's own word for its theme. Nothing is kept where anything has changed while it
        was made, so that it cannot be told what it was made of."""
        if self._asked.place is None:
            return
        made_of = Ingredients(self._asked, texts, printed)
        folders = self._folders(self._theme or said, theme)
        files = self._standing()
        same = self._before is not None and self._before.key == made_of.key
        if same and folders is not None and files is not None:
            keep(self._asked, made_of, folders, files, told)

    def _folders(self, name: str, theme: Theme) -> dict[str, str] | None:
        """Every folder that decides which theme a name means, with its seal; None where they are
        not as the theme was read."""
        if not name:
            return {}
        own = [layer for layer in theme.layers if not layer.bundled]
        for layer in own:
            there = files_of(Path(layer.place))
            digests = {n: hashlib.sha256(data).hexdigest() for n, data in layer.files.items()}
            if there is None or _printing(there) != digests:
                return None
        held = {data for layer in theme.layers for data in layer.files.values()}
        if not held.issuperset(theme.fonts.values()):
            return None
        homes = [Path(), self._folder, self._folder.resolve().parent]
        homes += [Path(layer.place).parent for layer in own]
        names = [name, *(Path(layer.place).name for layer in theme.layers)]
        seals: dict[str, str] = {}
        for folder in {(home / each).absolute() for home in homes for each in names}:
            found = files_of(folder)
            if found is None:
                return None
            seals[str(folder)] = sealed(found.items())
        return seals


class CheckStamping(Stamping):
    """The stamp of a check, which writes nothing and prints no revision."""

    SHELF, PRINTED = "checks", ("", "")

    def __init__(self, folder: Path, options: Sequence[str], *, cached: bool) -> None:
        super().__init__(folder, folder, ("check", *options), "", cached=cached)

    def _printed(self) -> tuple[str, str]:
        return self.PRINTED

    def _standing(self) -> dict[str, str] | None:
        """Nothing is written; a killed build of the playbook is finished, or its end told, by who
        opens it."""
        try:
            return None if any(map(waits, fillings(self._folder / "build"))) else {}
        except OSError:
            return None


def _printing(there: dict[str, str]) -> dict[str, str]:
    """The files of a theme's folder that print, as `theme.folder_files` takes them."""
    from stemline.theme.folder_files import PRINTED

    hidden = (".", "__pycache__")
    return {
        name: digest
        for name, digest in there.items()
        if name.endswith(PRINTED)
        and digest not in ("folder", "none")
        and not any(part.startswith(hidden) for part in name.split("/"))
    }
