"""The texts of each side of a comparison: a folder's, or those of an earlier revision.

Nothing here loads what reads a text.
"""

from __future__ import annotations

from pathlib import Path
from typing import NamedTuple

from stemline.diagnostics.catalogue.calls import E605
from stemline.diagnostics.nearest import nearest
from stemline.outside.project import Files, files_at, read_files, revision_names
from stemline.source import Span

BEFORE = "--before"
"""The option that asks for the playbook as it was, as the place where its mistakes are shown."""


class BothFiles(NamedTuple):
    """The texts of both sides, and the playbook's folder."""

    home: Path
    old: Files
    new: Files

    @property
    def are_whole(self) -> bool:
        """Whether each side has texts, and each of its files could be read as one."""
        sides = (self.old, self.new)
        return all(side.sources and not any(d.is_error for d in side.found) for side in sides)


def both_files(old: str, new: str, folder: Path | None) -> BothFiles:
    """What ``old`` and ``new`` mean: folders, else revisions of ``folder``, else of the side that
    is a folder, else of where we stand."""
    home = folder or next((Path(s) for s in (new, old) if Path(s).is_dir()), Path())
    return BothFiles(home, earlier_files(home, old, "OLD"), earlier_files(home, new, "NEW"))


def earlier_files(folder: Path, said: str, place: str = BEFORE) -> Files:
    """The texts of the folder ``said``, else those of ``folder`` at the revision ``said``, which
    was asked for as ``place``."""
    there = Path(said)
    if there.is_dir():
        return read_files(there)
    files, why = files_at(folder, said)
    if files is not None:
        return files
    beside = there.parent.iterdir() if there.parent.is_dir() else ()
    names = (*sorted(path.name for path in beside if path.is_dir()), *revision_names(folder))
    at = Span.over(place, said)
    problem = E605(said=said, why=why).at(at, nearest=nearest(there.name, names))
    return Files(there, (), (problem,))
