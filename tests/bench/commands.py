"""Whole commands as a coach gives them, timed from outside: this program's, or an earlier one's."""

from __future__ import annotations

import io
import os
import re
import shutil
import subprocess
import sys
import tarfile
import tempfile
import time
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from .calls import PLAYBOOKS

_ROOT = PLAYBOOKS.parent
_PARTS = ("compiler", "grammar", "themes", "playbooks")
_ROUTE = re.compile(r"^(\s+\w+ runs \w+ )(\d+)$", re.MULTILINE)
_SENTENCE = re.compile(r'(?<=say ")(?=\w)')
_OWN = 'title = "Club"\n'
"""A theme of one's own that prints as the plain one does."""


@dataclass(frozen=True)
class Ran:
    """A command: seconds of all its processors, seconds by the clock, and megabytes of its largest
    process; the bytes of the book, where it is one."""

    what: str
    cpu: float
    wall: float
    peak: float
    size: int = 0


class Program:
    """The program in ``home``, a folder that has the package, with the playbooks of its time; None
    for the one that runs."""

    def __init__(self, home: Path | None, playbooks: Path = PLAYBOOKS) -> None:
        self._home, self.playbooks = home, playbooks

    def ran(self, what: str, cache: Path, *asked: str | Path, book: Path | None = None) -> Ran:
        """Raises CalledProcessError where the command cannot be carried out."""
        kept = {k: v for k, v in os.environ.items() if k not in ("STEMLINE_NO_CACHE", "PYTHONPATH")}
        kept |= {"XDG_CACHE_HOME": str(cache), "HOME": str(cache)}
        if self._home is not None:
            kept["PYTHONPATH"] = str(self._home)
        elif "PYTHONPATH" in os.environ:
            kept["PYTHONPATH"] = os.environ["PYTHONPATH"]
        command = [sys.executable, "-m", "stemline", *map(str, asked)]
        began = time.perf_counter()
        with tempfile.TemporaryFile("w+") as said:
            child = subprocess.Popen(command, env=kept, stdout=said, stderr=subprocess.DEVNULL)
            _, status, spent = os.wait4(child.pid, 0)
            said.seek(0)
            self.said = said.read()
        wall = time.perf_counter() - began
        child.returncode = os.waitstatus_to_exitcode(status)
        if child.returncode:
            raise subprocess.CalledProcessError(child.returncode, command)
        size = book.stat().st_size if book is not None else 0
        return Ran(what, spent.ru_utime + spent.ru_stime, wall, _megabytes(spent), size)


def _megabytes(spent: Any) -> float:
    return float(spent.ru_maxrss) / (1_000_000 if sys.platform == "darwin" else 1_000)


def commands(name: str, program: Program) -> Iterator[Ran]:
    """Each command on a bundled playbook in its turn, in a folder and a cache of their own."""
    with tempfile.TemporaryDirectory() as work:
        folder, cache = Path(work, name), Path(work, "cache")
        shutil.copytree(program.playbooks / name, folder, ignore=shutil.ignore_patterns("build"))
        book = folder / "build" / "book.pdf"
        yield program.ran("--help", cache, "--help")
        yield program.ran("list", cache, "list", folder)
        call = program.said.splitlines()[0]
        picture = Path(work, "call.svg")
        yield program.ran("draw a call", cache, "draw", folder, call, "-o", picture)
        yield program.ran("check, cold", cache, "check", folder)
        yield program.ran("check, nothing changed", cache, "check", folder)
        yield program.ran("build, cold", cache, "build", folder, book=book)
        yield program.ran("build, nothing changed", cache, "build", folder, book=book)
        _edit(folder, _ROUTE, lambda m: f"{m[1]}{int(m[2]) + 1}")
        yield program.ran("check, one route changed", cache, "check", folder)
        yield program.ran("build, one route changed", cache, "build", folder, book=book)
        _edit(folder, _SENTENCE, lambda m: "Now and then. ")
        yield program.ran("build, one sentence changed", cache, "build", folder, book=book)
        own = Path(work, "club")
        own.mkdir()
        (own / "theme.toml").write_text(_OWN, "utf-8")
        asked = ("build", folder, "--theme", own)
        program.ran("", cache, *asked)
        (own / "book.css").write_text("h1 { letter-spacing: 0.2pt }\n", "utf-8")
        yield program.ran("build, a style of its theme changed", cache, *asked, book=book)


def _edit(folder: Path, what: re.Pattern[str], new: Callable[[re.Match[str]], str]) -> None:
    """The first place of the playbook's passes that fits, changed."""
    for path in sorted(folder.glob("*.play")):
        text = path.read_text("utf-8")
        made = what.sub(new, text, count=1)
        if made != text:
            path.write_text(made, "utf-8")
            return
    raise LookupError(f"nothing fits {what.pattern}")


def earlier(revision: str, place: Path) -> Program:
    """The program as it was at a revision of this repository, unpacked in ``place`` as a wheel is.

    It runs with the libraries that are installed now.
    """
    asked = ["git", "archive", "--format=tar", revision, *_PARTS]
    packed = subprocess.run(asked, cwd=_ROOT, check=True, capture_output=True).stdout
    with tarfile.open(fileobj=io.BytesIO(packed)) as held:
        held.extractall(place, filter="data")
    (place / "compiler").rename(place / "stemline")
    for room in ("grammar", "themes"):
        (place / room).rename(place / "stemline" / room)
    return Program(place, place / "playbooks")


def compared(name: str, against: str) -> Iterator[str]:
    """The table, a line at a time; with a revision each figure's ratio to what it was there."""
    head = f"{'':36}{'CPU s':>9}{'wall s':>9}{'peak MB':>9}{'PDF MB':>9}"
    yield head + (f"{'CPU was':>10}{'ratio':>8}{'wall':>8}{'peak':>8}{'PDF':>8}" if against else "")
    with tempfile.TemporaryDirectory() as place:
        olds: Iterator[Ran | None] = iter(lambda: None, 0)
        if against:
            olds = commands(name, earlier(against, Path(place)))
        for now in commands(name, Program(None)):
            was = next(olds)
            line = f"{now.what:36}{now.cpu:9.2f}{now.wall:9.2f}{now.peak:9.0f}"
            line += f"{now.size / 1e6:9.2f}" if now.size else f"{'':9}"
            if was is not None:
                line += f"{was.cpu:10.2f}{now.cpu / was.cpu:8.4f}{now.wall / was.wall:8.4f}"
                line += f"{now.peak / was.peak:8.2f}"
                line += f"{now.size / was.size:8.2f}" if now.size else ""
            yield line
