"""Whether a build has anything to do: nothing that a build needs is loaded to tell."""

from __future__ import annotations

import hashlib
import os
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from stemline.outside.cache import place
from stemline.outside.folder import standing
from stemline.outside.project import read_files, revision
from stemline.outside.stamp import (
    GoalAsked,
    Ingredients,
    LastBuild,
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

    def __init__(
        self, folder: Path, target: Path, options: Sequence[str], theme: str, *, cached: bool
    ) -> None:
        self._folder, self._target, self._theme = folder, target, theme
        try:
            home, goal, here = (os.path.realpath(each) for each in (folder, target, ""))
        except OSError:  # the folder where the coach stands is gone
            home, goal, here, cached = "", "", "", False
        told = (str(folder), home, str(target), goal, here if theme else "", theme, *options)
        self._asked = GoalAsked(place("stamps") if cached else None, Path(goal), told)
        self._before: Ingredients | None = None

    def unchanged(self) -> LastBuild | None:
        """What the last build said, where nothing is to be done."""
        if self._asked.place is None:
            return None
        texts, printed = read_files(self._folder), revision(self._folder)
        self._before = Ingredients(self._asked, texts, printed)
        return unchanged(self._asked, self._before, standing(self._target))

    def keep(
        self, texts: Files, printed: tuple[str, str], said: str, theme: Theme, told: LastBuild
    ) -> None:
        """Keep what was made of these texts, with the revision that was ``printed``; ``said`` is
        the playbook's own word for its theme. Nothing is kept where anything has changed while it
        was made, so that it cannot be told what it was made of."""
        if self._asked.place is None:
            return
        made_of = Ingredients(self._asked, texts, printed)
        folders = self._folders(self._theme or said, theme)
        files = standing(self._target)
        same = self._before is not None and self._before.key == made_of.key
        if same and folders is not None and files:
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
