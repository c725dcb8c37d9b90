"""One build, stopped hundreds of times.

A build of a whole book takes a minute, and most of it touches no disk. So one process builds, and
at random moments of its own time it splits in two: the twin goes on building and is stopped a
little later, the first looks at what is left on the disk, sets it right again and goes on. Each
twin is a build that was stopped in the middle. While files are written the moments lie closer.
"""

from __future__ import annotations

import gc
import os
import random
import shutil
import signal
import subprocess
import sys
import tempfile
import time
from collections import Counter
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from functools import partial
from pathlib import Path
from types import FrameType
from typing import ClassVar
from weakref import WeakSet

import weasyprint.text.fonts
from weasyprint.text.fonts import FontConfiguration

from stemline.outside.folder import HELD, settle

BUILD = (sys.executable, "-m", "stemline", "build")
_LATER = 0.15
"""Seconds, at most, that a twin goes on before it is stopped."""
_TASKS = Path("/proc/self/task")
"""This process's threads, where the system shows them."""
_PATIENCE = 300.0
"""Seconds until a twin that was interrupted and goes on counts as one that cannot be stopped."""

Files = dict[str, bytes]


def files_in(folder: Path) -> Files:
    """The files of an output folder but stemline's own list of them."""
    return {
        path.relative_to(folder).as_posix(): path.read_bytes()
        for path in sorted(folder.rglob("*"))
        if path.is_file() and HELD not in path.relative_to(folder).parts
    }


@dataclass
class Report:
    """How the stopped builds ended, and every fault, in words."""

    ended: Counter[str] = field(default_factory=Counter)
    left: Counter[str] = field(default_factory=Counter)
    faults: list[str] = field(default_factory=list)
    slowest: float = 0.0

    def lines(self) -> Iterator[str]:
        yield "stopped by " + ", ".join(f"{n} {what}" for what, n in sorted(self.ended.items()))
        yield "left " + ", ".join(f"{n} {what}" for what, n in sorted(self.left.items()))
        yield f"longest from an interrupt to the end: {self.slowest:.2f} s"
        yield from self.faults
        yield f"{len(self.faults)} faults"


class Stopper:
    """Splits this process at moments and stops the twins; ``build`` is the book they build."""

    def __init__(self, build: Path, old: Files, new: Files, dice: random.Random) -> None:
        self._build, self._old, self._new, self._dice = build, old, new, dice
        self._saved = build.with_name("saved")
        shutil.copytree(build, self._saved)
        self.report = Report()
        self.is_twin = False
        self._due: list[signal.Signals] = []

    @contextmanager
    def computing(self, stops: list[signal.Signals], seconds: float) -> Iterator[None]:
        """While it is entered, a twin for each of ``stops``, over so many seconds of work."""
        self._due = stops
        gap = seconds / (len(stops) + 1)
        signal.signal(signal.SIGVTALRM, self._moment)
        signal.setitimer(signal.ITIMER_VIRTUAL, gap, gap)
        try:
            yield
        finally:
            signal.setitimer(signal.ITIMER_VIRTUAL, 0)

    def rest(self, others: list[signal.Signals]) -> list[signal.Signals]:
        """What is still to be stopped: ``others``, and those whose moment never came."""
        rest, self._due = [*others, *self._due], []
        return rest

    def _moment(self, number: int, frame: FrameType | None) -> None:
        if self._due and not _sets_up_fonts():
            self.twin(self._due.pop(), _LATER)

    def twin(self, stop: signal.Signals, later: float) -> bool:
        """Split: True in the twin, which is stopped within ``later`` seconds."""
        wait = self._dice.random() * later
        moments = signal.setitimer(signal.ITIMER_VIRTUAL, 0)
        # A library's own hook at a split would swallow an interrupt that falls into it.
        signal.pthread_sigmask(signal.SIG_BLOCK, {signal.SIGINT})
        child = os.fork()
        if child == 0:
            self.is_twin, self._due = True, []
            _keep()
            null = os.open(os.devnull, os.O_WRONLY)
            os.dup2(null, 1)
            os.dup2(null, 2)
            # Not before it is known for a twin: else it would go on as the other.
            signal.pthread_sigmask(signal.SIG_UNBLOCK, {signal.SIGINT})
            return True
        signal.pthread_sigmask(signal.SIG_UNBLOCK, {signal.SIGINT})
        time.sleep(wait)
        os.kill(child, stop)
        began = time.monotonic()
        status = _waited(child)
        self._ended(stop, status, time.monotonic() - began)
        self._look(stop)
        signal.setitimer(signal.ITIMER_VIRTUAL, *moments)
        return False

    def _ended(self, stop: signal.Signals, status: int | None, seconds: float) -> None:
        # Python gives an interrupt back to the system before it ends: the book is there by then.
        wanted = (130, -stop) if stop is signal.SIGINT else (-stop,)
        self.report.ended[stop.name] += 1
        if stop is signal.SIGINT:
            self.report.slowest = max(self.report.slowest, seconds)
        if status not in (*wanted, 0):
            self.report.faults.append(f"{stop.name}: ended with {status}")

    def _look(self, stop: signal.Signals) -> None:
        """What lies there must be of one book or the other, and after the next command whole."""
        now = files_in(self._build)
        for name, data in now.items():
            if data not in (self._old.get(name), self._new.get(name)):
                self.report.faults.append(f"{stop.name}: {name} is of neither book")
        settle(self._build)
        after = files_in(self._build)
        kind = "old" if after == self._old else "new" if after == self._new else "damaged"
        self.report.left[kind + (" book" if now == after else " book, made whole afterwards")] += 1
        if kind == "damaged":
            self.report.faults.append(f"{stop.name}: the book is damaged")
        left = {path.name for path in (self._build / HELD).iterdir()} - {"lock", "stands"}
        if left:
            self.report.faults.append(f"{stop.name}: left {', '.join(sorted(left))}")
        if kind != "old":
            shutil.rmtree(self._build)
            shutil.copytree(self._saved, self._build)


def _sets_up_fonts() -> bool:
    """Whether the library that sets text looks for fonts in a thread of its own: a twin would wait
    for it for ever, since it has none of its maker's threads."""
    return any(_name(task).startswith("[pango]") for task in _TASKS.glob("*/comm"))


def _name(task: Path) -> str:
    try:
        return task.read_text()
    except OSError:  # it has ended since
        return ""


def _keep() -> None:
    """What a twin clears away at its end is the other's, who still works with it."""
    _Fonts.move()
    tempfile.TemporaryDirectory.cleanup = (  # type: ignore[method-assign]
        lambda self: self._finalizer.detach()  # type: ignore[attr-defined]
    )
    for name in ("shutil", "weasyprint.text.fonts"):
        if name in sys.modules:
            sys.modules[name].rmtree = lambda *args, **more: None  # type: ignore[attr-defined]


class _Fonts(FontConfiguration):  # type: ignore[misc]
    """Fonts that a twin lays in a folder of its own: its maker would take one that lies there
    for one that it has loaded itself."""

    made: ClassVar[WeakSet[_Fonts]] = WeakSet()

    def __init__(self) -> None:
        super().__init__()
        self.made.add(self)

    @classmethod
    def move(cls) -> None:
        for each in cls.made:
            if each._folder is not None and each._folder.exists():
                own = Path(tempfile.mkdtemp(prefix="twin-"))
                each._folder = shutil.copytree(each._folder, own, dirs_exist_ok=True)


def _waited(child: int) -> int | None:
    """The exit code; None of a process that had to be killed in the end."""
    until = time.monotonic() + _PATIENCE
    while time.monotonic() < until:
        done, status = os.waitpid(child, os.WNOHANG)
        if done:
            return os.waitstatus_to_exitcode(status)
        time.sleep(0.002)
    os.kill(child, signal.SIGKILL)
    os.waitpid(child, 0)
    return None


@dataclass(frozen=True)
class TwoBooks:
    """A playbook and the same with one sentence more, in ``folders``, each built by itself: the
    files of its book, and the seconds that the last build took, by the clock and the processor."""

    folders: tuple[Path, Path]
    files: tuple[Files, Files]
    seconds: float
    worked: float


def two_books(playbook: Path, work: Path) -> TwoBooks:
    """Both as copies of ``playbook`` in the folder ``work``, which is made."""
    folders = work / "as it was", work / "as it is"
    seconds = worked = 0.0
    for each in folders:
        shutil.copytree(playbook, each, ignore=shutil.ignore_patterns("build"))
        if each is folders[1]:
            _change(each)
        began = os.times()
        seconds = _timed(partial(_built, each))
        worked = os.times().children_user - began.children_user
    old, new = (files_in(each / "build") for each in folders)
    assert old != new, "the change must be seen in the book"
    return TwoBooks(folders, (old, new), seconds, worked)


def _built(folder: Path) -> None:
    subprocess.run([*BUILD, "--no-cache", folder], check=True, capture_output=True)


def texts_of(folder: Path) -> Files:
    return {file.name: file.read_bytes() for file in folder.glob("*.play")}


def write_texts(texts: Files, folder: Path) -> None:
    for name, data in texts.items():
        (folder / name).write_bytes(data)


def stopped(books: TwoBooks, work: Path, kills: int, interrupts: int, seed: int) -> Report:
    """Stop so many builds of the second book over the first, in the folder ``work``."""
    import stemline.__main__
    from stemline.outside import folder as output_folder

    # A twin has its maker's connections, and none of its locks: no store is for both.
    os.environ["STEMLINE_NO_CACHE"] = "1"
    dice = random.Random(seed)
    mine, (old, new) = work / "mine", books.files
    shutil.copytree(books.folders[0], mine)
    write_texts(texts_of(books.folders[1]), mine)
    stopper = Stopper(mine / "build", old, new, dice)

    stops = [signal.SIGINT] * interrupts + [signal.SIGKILL] * (kills - kills // 4)
    stops += [signal.SIGTERM] * (kills // 4)
    dice.shuffle(stops)
    writing, computing = stops[::2], stops[1::2]
    replace, fonts, words = output_folder.replace, FontConfiguration, sys.argv

    def replaced(root: Path, files: dict[str, bytes]) -> None:
        if not stopper.is_twin:
            signal.setitimer(signal.ITIMER_VIRTUAL, 0)
            seconds = _timed(lambda: replace(work / "timed", files))
            any(stopper.twin(stop, seconds) for stop in stopper.rest(writing))
        replace(root, files)

    output_folder.replace = replaced  # type: ignore[assignment]
    weasyprint.text.fonts.FontConfiguration = _Fonts
    code: object = 1
    sys.argv = ["stemline", "build", str(mine)]
    try:
        with stopper.computing(computing, books.worked * 0.85):
            stemline.__main__.main()
    except SystemExit as left:
        code = left.code
    finally:
        output_folder.replace = replace
        weasyprint.text.fonts.FontConfiguration, sys.argv = fonts, words
        if stopper.is_twin:
            os._exit(code if isinstance(code, int) else 1)
        signal.signal(signal.SIGINT, signal.default_int_handler)
        gc.unfreeze()
    if (last := files_in(mine / "build")) != new:
        stopper.report.faults.append(
            f"the last build, which nobody stopped, ended with {code} and left "
            f"{'the old book' if last == old else 'a book that is neither'}"
        )
    return stopper.report


def whole_builds(books: TwoBooks, work: Path, count: int, seed: int, report: Report) -> None:
    """Kill so many builds, each started for it, at random moments of their whole time.

    They build two books in turn from what the ones before have kept, so none has nothing to do; at
    the end each book is built once more from what is left and must be as it is without.
    """
    dice = random.Random(seed)
    mine, good = work / "whole", books.files
    shutil.copytree(books.folders[0], mine, ignore=shutil.ignore_patterns("build"))
    texts = [texts_of(each) for each in books.folders]
    kept = {k: v for k, v in os.environ.items() if k != "STEMLINE_NO_CACHE"}
    kept |= {name: str(work / "kept") for name in ("XDG_CACHE_HOME", "HOME")}
    for number in range(count):
        write_texts(texts[number % 2], mine)
        stop = signal.SIGINT if number % 3 == 0 else signal.SIGKILL
        with subprocess.Popen([*BUILD, mine], stderr=subprocess.PIPE, text=True, env=kept) as child:
            time.sleep(dice.random() * books.seconds)
            child.send_signal(stop)
            _, said = child.communicate()
        report.ended[f"{stop.name} of a process of its own"] += 1
        settle(mine / "build")
        left = files_in(mine / "build")
        by_itself = (130, 0) if stop is signal.SIGINT else (0,)
        by_signal = (-stop,) if stop is signal.SIGKILL or left == good[number % 2] else ()
        if child.returncode not in (*by_itself, *by_signal):
            report.faults.append(f"whole build: ended with {child.returncode}")
        if "Traceback" in said or left not in ({}, *good):
            report.faults.append(f"whole build: {stop.name} was not clean")
    for book, wanted in zip(texts, good, strict=True):
        write_texts(book, mine)
        subprocess.run([*BUILD, mine], check=True, capture_output=True, env=kept)
        if files_in(mine / "build") != wanted:
            report.faults.append("whole build: from what killed builds have kept it is another")


def _change(playbook: Path) -> None:
    """One sentence more in a text of the playbook."""
    for path in sorted(playbook.glob("*.play")):
        text = path.read_text("utf-8")
        for verb in ("    say ", "    note "):
            if verb in text:
                path.write_text(text.replace(verb + '"', verb + '"Now and then. ', 1), "utf-8")
                return
    raise LookupError("no sentence to change")


def _timed(work: Callable[[], object]) -> float:
    began = time.monotonic()
    work()
    return time.monotonic() - began
