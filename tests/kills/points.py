"""A build interrupted at chosen lines, not at random: `python -m tests.kills.points FOLDER`.

One process builds, and at a line that it comes to for the first time it splits in two: the twin is
interrupted there, as Python would do it, and the first looks at how it ended and what it left. So
it loads nothing of stemline before the program itself does.
"""

from __future__ import annotations

import argparse
import dis
import gc
import os
import signal
import sys
import tempfile
import traceback
from collections import Counter
from collections.abc import Callable
from pathlib import Path
from types import CodeType, FrameType
from typing import Any

_PATIENCE = 60
"""Seconds until a twin that goes on counts as one that cannot be stopped."""
_HELD = ".stemline"
_TASKS = Path("/proc/self/task")


Files = dict[str, bytes | None]


def files_in(folder: Path) -> Files:
    """All that lies in a folder but the lock; None for a folder."""
    return {
        path.relative_to(folder).as_posix(): path.read_bytes() if path.is_file() else None
        for path in sorted(folder.rglob("*"))
        if path.name != "lock"
    }


def book_in(files: Files) -> Files:
    """What of it is the book, not stemline's own list."""
    return {name: data for name, data in files.items() if not name.startswith(_HELD)}


class Points:
    """Interrupts a twin of this process at a share of the points of the code that is ``wanted``:
    "lines" for each of its lines, "calls" for where it begins, "" for none."""

    def __init__(
        self, build: Path, wanted: Callable[[CodeType], str], share: tuple[int, int]
    ) -> None:
        self._build, self._wanted, self._share = build, wanted, share
        self._old = book_in(files_in(build))
        self._said = tempfile.TemporaryFile()  # noqa: SIM115 - as long as the process
        self._met: set[tuple[CodeType, int]] = set()
        self._kinds: dict[CodeType, str] = {}
        self.ended: Counter[str] = Counter()
        self.faults: list[str] = []
        self.is_twin = False
        self.done: list[tuple[str, Files]] = []

    def trace(self, frame: FrameType, event: str, value: object) -> Any:
        code = frame.f_code
        kind = self._kinds.get(code)
        if kind is None:
            kind = self._kinds[code] = self._wanted(code)
        if not kind:
            return None
        if event == ("line" if kind == "lines" else "call") and _asks(frame):
            point = code, frame.f_lineno if kind == "lines" else 0
            if point not in self._met:
                self._met.add(point)
                number, of = self._share
                if len(self._met) % of == number:
                    self._twin(frame)
        return self.trace if kind == "lines" else None

    def _twin(self, frame: FrameType) -> None:
        if any("[pango]" in _name(task) for task in _TASKS.glob("*/comm")):
            return  # a twin has none of its maker's threads, and would wait for it for ever
        place = f"{frame.f_code.co_filename}:{frame.f_lineno} {frame.f_code.co_qualname}"
        out, before = self._said, files_in(self._build)
        out.seek(0)
        out.truncate()
        child = os.fork()
        if child == 0:
            self.is_twin = True
            sys.settrace(None)
            _keep()
            os.dup2(out.fileno(), 1)
            os.dup2(out.fileno(), 2)
            signal.alarm(_PATIENCE)
            heard = signal.getsignal(signal.SIGINT)
            if callable(heard):
                heard(signal.SIGINT, frame)
                return
            os.kill(os.getpid(), signal.SIGINT)
        status = os.waitstatus_to_exitcode(os.waitpid(child, 0)[1])
        out.seek(0)
        said = out.read().decode("utf-8", "replace")
        self.ended[str(status)] += 1
        if status != 130 and not (status == -2 and not said):
            self.faults.append(f"{place}: ended with {status}\n{said[-1500:]}")
        elif "Traceback" in said:
            self.faults.append(f"{place}: {said[-1500:]}")
        now = files_in(self._build)
        if f"{_HELD}/coming" in now:
            self.faults.append(f"{place}: what nobody finishes was left")
        if book_in(now) != self._old:
            self.done.append((place, book_in(now)))
        self._restore(before, now)

    def _restore(self, before: Files, now: Files) -> None:
        for name in sorted(now.keys() - before.keys(), reverse=True):
            path = self._build / name
            path.unlink() if path.is_file() else path.rmdir()
        for name, data in before.items():
            path = self._build / name
            if data is None:
                path.mkdir(exist_ok=True)
            elif now.get(name) != data:
                path.write_bytes(data)


def _asks(frame: FrameType) -> bool:
    """Whether Python could hear a signal here: at the bare `try:` of a line it does not look."""
    return dis.opname[frame.f_code.co_code[frame.f_lasti]] != "NOP"


def _keep() -> None:
    """What a twin clears away at its end is the other's, who still works with it."""
    tempfile.TemporaryDirectory.cleanup = (  # type: ignore[method-assign]
        lambda self: self._finalizer.detach()  # type: ignore[attr-defined]
    )
    for name in ("shutil", "weasyprint.text.fonts"):
        if name in sys.modules:
            sys.modules[name].rmtree = lambda *args, **more: None  # type: ignore[attr-defined]


def _name(task: Path) -> str:
    try:
        return task.read_text()
    except OSError:  # it has ended since
        return ""


_AROUND = (
    "compiler/__main__.py", "compiler/commands/__init__.py", "compiler/commands/build.py",
    "compiler/commands/opening.py", "compiler/commands/stamping.py", "compiler/outside/",
    "click/core.py",
)  # fmt: skip


def around(code: CodeType) -> str:
    """Each line of what stands around the work; what a function writes that has a file open is the
    other's too, and `tests/outside/test_folder.py` stops that at each operation."""
    wanted = code.co_name != "_write" and any(part in code.co_filename for part in _AROUND)
    return "lines" if wanted else ""


def everything(code: CodeType) -> str:
    return around(code) or ("" if code.co_filename == __file__ else "calls")


def main() -> None:
    asked = argparse.ArgumentParser()
    asked.add_argument("folder", type=Path, help="its last book is of another text")
    asked.add_argument("--every", action="store_true", help="the beginning of each function too")
    asked.add_argument("--share", default="0/1", help="1/8: each eighth point, from the first on")
    given = asked.parse_args()
    number, of = map(int, given.share.split("/"))
    build = given.folder / "build"
    points = Points(build, everything if given.every else around, (number, of))
    sys.argv = ["stemline", "build", str(given.folder), "--no-cache"]
    gc.disable()
    code: object = 1
    from stemline.__main__ import main as door

    sys.settrace(points.trace)
    try:
        door()
    except SystemExit as left:
        code = left.code
    except BaseException:
        traceback.print_exc()
    finally:
        sys.settrace(None)
        if points.is_twin:
            sys.stdout.flush()
            os._exit(code if isinstance(code, int) else 1)
    new = book_in(files_in(build))
    faults = points.faults + [
        f"{place}: left a book that is neither" for place, now in points.done if now != new
    ]
    print(
        f"{points.ended.total()} interrupted, ended with {dict(points.ended)}; {len(points.done)}"
    )
    print(f"left the new book. The last, which nobody interrupted, ended with {code}.", *faults,
          sep="\n")  # fmt: skip
    sys.exit(1 if faults or code else 0)


if __name__ == "__main__":
    main()
