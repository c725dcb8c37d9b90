"""A program as a coach starts it, this one or an earlier one, timed from outside."""

from __future__ import annotations

import io
import os
import shutil
import subprocess
import sys
import tarfile
import tempfile
import threading
import time
import tomllib
from dataclasses import dataclass
from importlib.resources import files
from pathlib import Path

from .calls import PLAYBOOKS

_ROOT = PLAYBOOKS.parent
_PARTS = ("pyproject.toml", "compiler", "grammar", "themes", "playbooks")
_ENOUGH = 0.02
"""Seconds between two looks at how much memory the processes have."""
_LEFT_OUT = ("STEMLINE_NO_CACHE", "PYTHONPATH", "PYTHONDONTWRITEBYTECODE")


@dataclass(frozen=True)
class Ran:
    """A command: seconds of all its processors, seconds by the clock, and the most megabytes that
    its processes had together; the bytes of the book, where it is one."""

    what: str
    cpu: float
    wall: float
    peak: float
    size: int = 0


class Program:
    """The program in ``home``, a folder that has the package, with the playbooks of its time; None
    for the one that runs. ``compiled`` is where its bytecode lies, as pip puts it when it
    installs; ``starts`` is the function that it starts with, as its project says."""

    def __init__(
        self,
        home: Path | None,
        compiled: Path,
        playbooks: Path = PLAYBOOKS,
        starts: str = "stemline.__main__:main",
    ) -> None:
        self._home, self._compiled, self.playbooks = home, compiled, playbooks
        module, _, function = starts.partition(":")
        self._start = f"from {module} import {function}; {function}()"
        self.said = ""

    def ran(
        self, what: str, cache: Path, *asked: str | Path, book: Path | None = None, times: int = 1
    ) -> Ran:
        """The best of so many times. Raises CalledProcessError where it cannot be carried out."""
        command = [sys.executable, "-c", self._start, *map(str, asked)]
        runs = [self.timed(what, command, cache) for _ in range(times)]
        best = min(runs, key=lambda each: each.cpu)
        size = book.stat().st_size if book is not None else 0
        peak = max(each.peak for each in runs)
        return Ran(what, best.cpu, min(each.wall for each in runs), peak, size)

    def timed(self, what: str, command: list[str], cache: Path) -> Ran:
        """Any command, with this program's surroundings."""
        kept = {k: v for k, v in os.environ.items() if k not in _LEFT_OUT}
        kept |= {"XDG_CACHE_HOME": str(cache), "HOME": str(cache)}
        kept["PYTHONPYCACHEPREFIX"] = str(self._compiled)
        paths = [str(self._home) if self._home else "", os.environ.get("PYTHONPATH", "")]
        kept["PYTHONPATH"] = os.pathsep.join(filter(None, paths))
        began = time.perf_counter()
        with tempfile.TemporaryFile("w+") as said:
            child = subprocess.Popen(command, env=kept, stdout=said, stderr=subprocess.DEVNULL)
            memory = _Memory(child.pid)
            _, status, spent = os.wait4(child.pid, 0)
            wall = time.perf_counter() - began
            most = memory.most()
            said.seek(0)
            self.said = said.read()
        child.returncode = os.waitstatus_to_exitcode(status)
        if child.returncode:
            raise subprocess.CalledProcessError(child.returncode, command)
        largest = spent.ru_maxrss / (1_000_000 if sys.platform == "darwin" else 1_000)
        return Ran(what, spent.ru_utime + spent.ru_stime, wall, max(most, largest))

    def compile(self, work: Path) -> None:
        """Every command once, on the few calls of its starter, so that its bytecode is there."""
        work.mkdir()
        here = files("stemline.grammar") if self._home is None else self._home / "stemline/grammar"
        starter, own = work / "starter", Path(str(here.joinpath("starter")))
        by_code = own / "high-school"  # there was one for all codes
        shutil.copytree(by_code if by_code.is_dir() else own, starter)
        self.ran("", work, "list", starter)
        self.ran("", work, "draw", starter, self.said.splitlines()[0], "-o", work / "call.svg")
        for asked in ("check", "build"):
            self.ran("", work, asked, starter)


class _Memory:
    """Megabytes of a process and of those it has started, looked at again and again; 0 on a system
    that does not tell."""

    def __init__(self, pid: int) -> None:
        self._pid, self._most = pid, 0.0
        self._ended = threading.Event()
        self._looking = threading.Thread(target=self._look, daemon=True)
        self._looking.start()

    def most(self) -> float:
        self._ended.set()
        self._looking.join()
        return self._most

    def _look(self) -> None:
        while not self._ended.wait(_ENOUGH):
            self._most = max(self._most, _resident(self._pid))


def _resident(pid: int) -> float:
    home = Path("/proc", str(pid))
    try:
        pages = int((home / "statm").read_text().split()[1])
        started = [
            child for task in (home / "task").iterdir() for child in _words(task / "children")
        ]
    except (OSError, IndexError, ValueError):
        return 0.0
    own = pages * os.sysconf("SC_PAGE_SIZE") / 1_000_000
    return own + sum(_resident(int(child)) for child in started)


def _words(file: Path) -> list[str]:
    try:
        return file.read_text().split()
    except OSError:
        return []


def earlier(revision: str, place: Path) -> Program:
    """The program as it was at a revision of this repository, unpacked in ``place`` as a wheel is.

    It runs with the libraries that are installed now.
    """
    home = place / "program"
    home.mkdir(parents=True)
    asked = ["git", "archive", "--format=tar", revision, *_PARTS]
    packed = subprocess.run(asked, cwd=_ROOT, check=True, capture_output=True).stdout
    with tarfile.open(fileobj=io.BytesIO(packed)) as held:
        held.extractall(home, filter="data")
    project = tomllib.loads((home / "pyproject.toml").read_text("utf-8"))["project"]
    (home / "compiler").rename(home / "stemline")
    for room in ("grammar", "themes"):
        (home / room).rename(home / "stemline" / room)
    starts = project["scripts"]["stemline"]
    return Program(home, place / "compiled", home / "playbooks", starts)
