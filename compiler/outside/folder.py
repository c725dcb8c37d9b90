"""A folder that a build fills: the new files take their place together, or not at all.

A build is first written whole into a hidden folder of the output's own, under the list of what it
is. One rename says that it is whole; from then on it is the book, and whoever comes next puts the
files in their places that a killed build left lying. Before it nothing has been touched, and what
lies there is cleaned away. So no folder is ever renamed, and the output may be a link or a disk of
its own. A file that already stands as the new book has it is not written again.

Files that stemline did not write, or that somebody changed since, are never replaced or deleted.
"""

from __future__ import annotations

import os
from collections.abc import Iterator, Mapping
from contextlib import contextmanager, suppress
from pathlib import Path

from stemline.diagnostics.catalogue.output import E951, E952, E953, E954, E955
from stemline.outside.manifest import Digests, digest_at, digest_of, is_file, read, written
from stemline.outside.not_written import NotWritten, reason

HELD = ".stemline"
"""The hidden folder. In it: the list of what stands, the list of what is coming while that is
being written, and the same list under another name once it is whole."""
_STANDS, _COMING, _WHOLE, _STAGED, _LOCK = "stands", "coming", "whole", "staged", "lock"

_PATIENCE = 60.0
"""Seconds to wait for another build that is putting its files in their places: it takes one."""


def refuse(root: Path, names: Mapping[str, object] | tuple[str, ...]) -> None:
    """Raise `NotWritten` where files of these ``names`` could not take their place in ``root``."""
    try:
        _refuse_place(root)
        ours = (read(root / HELD / _STANDS), read(root / HELD / _WHOLE))
        for name in names:
            _refuse_file(root, name, *ours)
    except OSError as error:
        raise NotWritten(E952(why=reason(error)), root) from error


def standing(root: Path) -> dict[str, str] | None:
    """What stemline wrote into the folder, each file's name and digest, where all of it stands as
    it was written and nothing waits for its place; else None."""
    held = root / HELD
    try:
        if held.is_symlink() or waits(root):
            return None
        files = read(held / _STANDS)
        sound = all(_digest_in(root, name) == digest for name, digest in files.items())
    except OSError:
        return None
    return files if sound else None


def replace(root: Path, files: Mapping[str, bytes]) -> None:
    """Put ``files``, by their names below ``root``, in the place of all that stemline wrote there.

    Raises `NotWritten`: then what stood there stands as it was, unless the message says that the
    new files are whole and only wait for their place.
    """
    try:
        _refuse_place(root)
        (root / HELD).mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise NotWritten(E952(why=reason(error)), root) from error
    with _locked(root):
        _settle(root)
        refuse(root, tuple(files))
        new, old = {n: digest_of(files[n]) for n in files}, read(root / HELD / _STANDS)
        _stage(root, files, new)
        _take_place(root, new, old)


def waits(root: Path) -> bool:
    """Whether a killed build left something in it. Raises OSError where that cannot be told."""
    return any((root / HELD / each).exists() for each in (_WHOLE, _COMING, _STAGED))


def fillings(build: Path) -> list[Path]:
    """A playbook's build folder, and those folders in it that builds of a part have filled. Raises
    OSError for one that cannot be looked into."""
    return [build, *sorted(path.parent for path in build.glob(f"*/{HELD}"))]


def settle(root: Path) -> None:
    """Finish what a killed build left: its files go to their places if it was whole, else away.

    Does nothing to a folder that is not stemline's. Raises `NotWritten` where it cannot be done.
    """
    held = root / HELD
    try:
        if held.is_symlink() or not waits(root):
            return
        _refuse_held(held)
    except OSError as error:
        raise NotWritten(E952(why=reason(error)), root) from error
    with _locked(root):
        _settle(root)


def _refuse_place(root: Path) -> None:
    """Whatever stands where the folder should be must be a folder, or lead to one."""
    if root.is_symlink() and not root.exists():
        raise NotWritten(E953(what="a link that leads nowhere"), root)
    if root.exists() and not root.is_dir():
        raise NotWritten(E953(what="a file"), root)
    _refuse_held(root / HELD)
    near = next((p for p in (root, *root.absolute().parents) if p.exists()), root)
    if not os.access(near, os.W_OK | os.X_OK):
        raise NotWritten(E952(why="you may not write there"), near)


def _refuse_held(held: Path) -> None:
    """Raise where the hidden folder, or anything in it, is not of the kind that a build makes: it
    may have come with a stranger's playbook, and a link in it would lead writing elsewhere."""
    for name in ("", _STANDS, _COMING, _WHOLE, _STAGED, _LOCK):
        path = held / name
        kind_is_right = path.is_dir() if name in ("", _STAGED) else path.is_file()
        if os.path.lexists(path) and (path.is_symlink() or not kind_is_right):
            raise NotWritten(E951(how="was not made by stemline"), path)


def _digest_in(root: Path, name: str) -> str:
    """The digest of what stands under ``name`` in the folder itself; "" below a link out of it."""
    path = root / name
    return "" if path.parent != root and path.parent.is_symlink() else digest_at(path)


def _refuse_file(root: Path, name: str, *ours: Digests) -> None:
    """Raise where a file that is not ours, or a folder that is none, is in the way of ``name``."""
    path = root / name
    if path.parent != root and (path.parent.is_symlink() or path.parent.exists()):
        if path.parent.is_symlink() or not path.parent.is_dir():
            raise NotWritten(E951(how="is a file or a link, not a folder"), path.parent)
        if path.parent.stat().st_dev != root.stat().st_dev:
            raise NotWritten(E951(how="is a disk of its own"), path.parent)
    if not path.is_symlink() and not path.exists():
        return
    if digest_at(path) not in {held.get(name, "-") for held in ours}:
        known = any(name in held for held in ours)
        how = "was changed since stemline made it" if known else "was not made by stemline"
        raise NotWritten(E951(how=how), path)


@contextmanager
def _locked(root: Path) -> Iterator[None]:
    """One build at a time puts its files in their places; a killed one holds nobody up."""
    # Loaded where files are written: most commands only look whether any wait.
    from filelock import FileLock, Timeout

    try:
        with FileLock(root / HELD / _LOCK, timeout=_PATIENCE):
            yield
    except Timeout as error:
        raise NotWritten(E954(), root) from error
    except OSError as error:
        raise NotWritten(E952(why=reason(error)), root) from error


def _stage(root: Path, files: Mapping[str, bytes], new: Digests) -> None:
    """Write beside its place what does not stand there, then say with one rename that the book is
    whole."""
    held = root / HELD
    names = sorted(files)
    try:
        _write(held / _COMING, written(new))
        (held / _STAGED).mkdir(exist_ok=True)
        for number, name in enumerate(names):
            if _digest_in(root, name) != new[name]:
                _write(held / _STAGED / str(number), files[name])
        (held / _COMING).replace(held / _WHOLE)
    except BaseException as error:
        if not is_file(held / _WHOLE):
            _clear(held, _COMING, len(names))
        if isinstance(error, OSError):
            raise NotWritten(E952(why=reason(error)), root) from error
        raise


def _write(path: Path, data: bytes) -> None:
    """Written through to the disk, so that a rename never stands for less than it says."""
    path.unlink(missing_ok=True)
    with path.open("xb") as out:
        out.write(data)
        out.flush()
        os.fsync(out.fileno())


def _take_place(root: Path, new: Digests, old: Digests) -> None:
    """Move the whole build's files to their places. An interrupt waits until they are there."""
    try:
        _move(root, new, old)
    except KeyboardInterrupt:
        if is_file(root / HELD / _WHOLE):
            _move(root, new, old)
        raise


def _settle(root: Path) -> None:
    held = root / HELD
    if is_file(held / _COMING):
        _clear(held, _COMING, len(read(held / _COMING)))
    if not is_file(held / _WHOLE):
        with suppress(OSError):
            (held / _STAGED).rmdir()
        return
    new, old = read(held / _WHOLE), read(held / _STANDS)
    there = {name for name in new if _digest_in(root, name) == new[name]}
    # A file that both books have alike never waited: whoever changed it since, the rest is whole.
    ready = there | {name for name in new if old.get(name) == new[name]}
    if new and all(
        name in ready or digest_at(path) == new[name] for name, path in _staged(root, new)
    ):
        _move(root, new, old)
        return
    # What was said to be whole is not: a disk that lost writes. Keep what is known to be ours.
    _write(held / _COMING, written({**old, **{name: new[name] for name in there}}))
    (held / _COMING).replace(held / _STANDS)
    _clear(held, _WHOLE, len(new))


def _staged(root: Path, new: Digests) -> list[tuple[str, Path]]:
    """Each file's name with where it waits; the book, which a reader may hold open, first."""
    waiting = [
        (name, root / HELD / _STAGED / str(number)) for number, name in enumerate(sorted(new))
    ]
    return sorted(waiting, key=lambda each: "/" in each[0])


def _move(root: Path, new: Digests, old: Digests) -> None:
    """The waiting files to their places, what is no longer of the book away, and the list last."""
    held = root / HELD
    waiting = [(name, path) for name, path in _staged(root, new) if is_file(path)]
    begun = any(old.get(name) != new[name] for name in new.keys() - dict(waiting).keys())
    try:
        for name, path in waiting:
            _refuse_file(root, name, old, new)
            (root / name).parent.mkdir(exist_ok=True)
            path.replace(root / name)
            begun = True
        for name in old.keys() - new.keys():
            if _digest_in(root, name) == old[name]:
                (root / name).unlink()
        for folder in {(root / name).parent for name in old} - {root}:
            with suppress(OSError):
                folder.rmdir()
        (held / _WHOLE).replace(held / _STANDS)
        with suppress(OSError):
            (held / _STAGED).rmdir()
    except OSError as error:
        if begun:
            raise NotWritten(E955(why=reason(error)), root) from error
        _clear(held, _WHOLE, len(new))
        raise NotWritten(E952(why=reason(error)), root) from error


def _clear(held: Path, listed: str, count: int) -> None:
    """Away with a build that came to nothing: what its list names, then the list."""
    for number in range(count):
        with suppress(OSError):
            (held / _STAGED / str(number)).unlink()
    with suppress(OSError):
        (held / _STAGED).rmdir()
    with suppress(OSError):
        (held / listed).unlink()
