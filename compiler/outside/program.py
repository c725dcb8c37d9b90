"""What a result hangs on besides the coach's texts: the program, its libraries, this machine.

Where one of them cannot be told the answer is "" or None. Then nothing is kept, and nothing that
was kept is used.
"""

from __future__ import annotations

import hashlib
import os
import sys
from collections.abc import Iterator
from contextlib import suppress
from functools import cache
from importlib import import_module
from pathlib import Path

import stemline

_SPOKEN_OF = ("FC_", "FONTCONFIG_", "FREETYPE_", "HB_", "LD_", "PANGO", "XDG_")
"""How names of the environment begin that the page setter, or what loads it, listens to."""
_MOST_FONTS = 20_000
"""Files that say which fonts there are; with more of them it is not told."""
_FONTS = ("/etc/fonts", "/usr/share/fonts", "/usr/local/share/fonts")
_OWN_FONTS = (".fonts", ".fonts.conf", ".config/fontconfig", ".local/share/fonts")
"""Below the user's own folder (fonts.conf(5))."""
_TOLD_BY = (".dist-info", ".egg-info")
"""How the folder ends that has a library's name and version in its own name (PEP 376)."""

About = list[int]
"""A file without its content: size, times in nanoseconds and number on its disk. What is written
again has another time of change, which nobody sets at will; [] of a file that is not there."""


@cache
def program() -> str:
    """A digest of the program that runs and of what it counts with; "" where it cannot be told."""
    return now_there()


def now_there() -> str:
    """`program` as it lies on the disk at this moment."""
    try:
        return digest_of(Path(stemline.__file__ or "").parent, stemline.BEGAN)
    except OSError:
        return ""


def digest_of(home: Path, began: float) -> str:
    """A digest of every module below ``home`` and of the libraries; "" without a module, and where
    one was written since ``began``, in seconds: another text than the one that was loaded."""
    files = sorted(each for each in _files(home) if each[0].endswith(".py"))
    if not files or any(file.stat().st_mtime >= began for _, file in files):
        return ""
    digest = hashlib.sha256(f"{sys.version} {libraries()}\n".encode())
    for name, file in files:
        _add(digest, name, file.read_bytes())
    return digest.hexdigest()


def bundled() -> str:
    """A digest of the grammar, the themes and whatever else comes with the program."""
    digest = hashlib.sha256()
    for room in ("stemline.grammar", "stemline.themes"):
        for home in import_module(room).__path__:
            for name, file in _files(Path(home)):
                if "__pycache__" not in name:
                    _add(digest, name, file.read_bytes())
    return digest.hexdigest()


@cache
def libraries() -> str:
    """The name and version of every library that Python finds, by the folders that tell them."""
    found: set[str] = set()
    for entry in sys.path:
        with suppress(OSError):
            found |= {each.name for each in Path(entry).iterdir() if each.name.endswith(_TOLD_BY)}
    return " ".join(sorted(found))


def loaded() -> dict[str, About] | None:
    """The libraries of the system that this process has loaded, as they lie on the disk, without
    what lies with Python's own; None on a system that does not tell, or where one has been replaced
    meanwhile."""
    try:
        lines = Path("/proc/self/maps").read_text("utf-8", "surrogateescape").splitlines()
    except OSError:
        return None
    own = tuple(f"{entry}{os.sep}" for entry in sys.path if entry)
    paths = {line.split(maxsplit=5)[5] for line in lines if ".so" in line}
    paths = {path for path in paths if not path.startswith(own)}
    if any(path.endswith("(deleted)") for path in paths):
        return None
    return {path: about(Path(path)) for path in (*sorted(paths), "/etc/ld.so.cache")}


def about(file: Path) -> About:
    try:
        held = file.stat()
    except OSError:
        return []
    return [held.st_size, held.st_mtime_ns, held.st_ctime_ns, held.st_ino]


def surroundings() -> str:
    """A digest of the fonts that may stand in for a letter that a theme does not have, and of the
    words of the environment about them; "" where there are too many to be told."""
    said = sorted(f"{k}={v}" for k, v in os.environ.items() if k.startswith(_SPOKEN_OF))
    digest = hashlib.sha256("\n".join(said).encode("utf-8", "surrogateescape"))
    homes = [*map(Path, _FONTS), *(Path.home() / each for each in _OWN_FONTS)]
    if data := os.environ.get("XDG_DATA_HOME"):
        homes.append(Path(data, "fonts"))
    for number, (_, file) in enumerate(each for home in homes for each in _files(home)):
        if number >= _MOST_FONTS:
            return ""
        digest.update(f"{file} {about(file)}\n".encode("utf-8", "surrogateescape"))
    return digest.hexdigest()


def _files(home: Path) -> Iterator[tuple[str, Path]]:
    """Every file below ``home``, or it itself, in order: its name there, and where it is."""
    if home.is_file():
        yield "", home
    for root, folders, names in os.walk(home):
        folders.sort()
        under = "".join(f"{part}/" for part in Path(root[len(str(home)) :].lstrip(os.sep)).parts)
        yield from ((under + name, Path(root, name)) for name in sorted(names))


def _add(digest: hashlib._Hash, name: str, data: bytes) -> None:
    digest.update(f"{name} {len(data)}\n".encode("utf-8", "surrogateescape") + data)
