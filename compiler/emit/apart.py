"""The pages of a coach's own theme, set in a process of their own that is held to its bounds.

Templates and styles are programs: they can go round for ever, fill the machine, or bring down the
library that sets them. So a theme that is not a bundled one is set apart, by the same functions on
the same values. The process gets them as bytes and gives the document or one message back; it ends
with the one that waits for it, whichever way that goes.
"""

from __future__ import annotations

import json
import os
import pickle
import signal
import subprocess
import sys
import tempfile
import threading
from collections.abc import Callable
from typing import Any

from stemline.diagnostics.catalogue.themes import E915, E918
from stemline.emit.carried import carried
from stemline.emit.engine_log import PictureFailed
from stemline.emit.fetch import Refused
from stemline.emit.pdf import PangoMissing
from stemline.emit.process_bounds import TooLong, bind
from stemline.theme import Theme, refused_at, where_said
from stemline.theme.limits import (
    GRACE,
    LARGEST_PDF,
    MEGABYTE,
    MEMORY,
    MEMORY_A_PICTURE,
    SECONDS,
    SECONDS_A_PICTURE,
    SLACK,
)

RAISED: tuple[type[Exception], ...] = (Refused, PangoMissing, PictureFailed)
"""What the work raises by itself, and what comes over as it is."""

_START = "import sys, json; sys.path[:] = json.loads(sys.argv[1]); \
from stemline.emit.apart import work; work()"
_DONE = b"done\n"
_FEW = {"OPENBLAS_NUM_THREADS": "1", "OMP_NUM_THREADS": "1"}
"""Threads that nobody needs there would each set addresses aside."""


def apart(theme: Theme, pictures: int, make: Callable[..., bytes], *values: Any) -> bytes:
    """``make(*values)``: here for a bundled theme, else in a process of its own.

    ``make`` is a function of a module, ``values`` can be pickled; ``pictures`` is how many there
    are, by which the bounds grow. Raises `Refused`, and what ``make`` raises of `RAISED`.
    """
    if theme.bundled:
        return make(*values)
    seconds = round(SECONDS + SECONDS_A_PICTURE * pictures)
    memory = MEMORY + MEMORY_A_PICTURE * pictures
    sealed = carried(((seconds, seconds + GRACE, memory), make, values))
    try:
        said, answer, code = _set_apart(sealed, SLACK * seconds)
    except OSError as error:
        why = f"no process can be started for them: {error.strerror}"
        raise refused_at(theme, "theme.toml", 0, E918(name=theme.name, why=why)) from error
    if said.startswith(_DONE):
        return answer
    raise _told(theme, said, code, seconds, memory)


def _set_apart(sealed: bytes, longest: float) -> tuple[bytes, bytes, int]:
    """What the process said in its first line, the bytes after it, and how it ended."""
    # Its own folder for what it writes: libraries leave files behind when they are stopped.
    with tempfile.TemporaryDirectory(prefix="stemline-", ignore_cleanup_errors=True) as room:
        places = dict.fromkeys(("TMPDIR", "TEMP", "TMP"), room)
        started = subprocess.Popen(
            [sys.executable, "-P", "-c", _START, json.dumps(sys.path)],
            stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL,
            env={**os.environ, **_FEW, **places}, cwd=room,
        )  # fmt: skip
        clock = threading.Timer(longest, started.kill)
        clock.daemon = True
        try:
            clock.start()
            assert started.stdin is not None and started.stdout is not None
            try:
                started.stdin.write(len(sealed).to_bytes(8, "big") + sealed)
                started.stdin.flush()  # and left open: its end says that nobody waits any more
            except BrokenPipeError:
                pass
            said = started.stdout.readline(MEGABYTE)
            answer = started.stdout.read(LARGEST_PDF + 1)
            if len(answer) > LARGEST_PDF:
                return b'{"bounds": true}', b"", 0
            return said, answer, started.wait()
        finally:
            clock.cancel()
            started.kill()
            started.wait()
            for pipe in (started.stdin, started.stdout):
                if pipe is not None:
                    pipe.close()


def _told(theme: Theme, said: bytes, code: int, seconds: int, memory: int) -> Exception:
    """The exception for what the process said before it ended, or for its silence."""
    try:
        news = json.loads(said)
    except ValueError:
        news = {}
    for kind in RAISED:
        if news.get("kind") == kind.__name__:
            error = kind.__new__(kind, *news["args"])
            error.__dict__.update(news["holds"])
            return error
    file, line = where_said(theme, ())
    if news.get("why") and not news.get("bounds"):
        return refused_at(theme, file, line, E918(name=theme.name, why=news["why"]))
    if news.get("bounds") or -code in (signal.SIGKILL, getattr(signal, "SIGXCPU", None)):
        most = f"{seconds} seconds or {memory // MEGABYTE:,} megabytes"
        return refused_at(theme, file, line, E915(name=theme.name, most=most))
    why = f"the page setter broke down (it ended with {code})"
    return refused_at(theme, file, line, E918(name=theme.name, why=why))


def work() -> None:
    """What the process does: read what there is to do, do it in its bounds, tell, and end."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)  # the one that waits hears it, and ends this one
    told = os.fdopen(os.dup(1), "wb")
    os.dup2(2, 1)  # whatever else is printed is no part of the answer
    came = sys.stdin.buffer
    sealed = came.read(int.from_bytes(came.read(8), "big"))
    threading.Thread(target=_end_with, args=(came,), daemon=True).start()
    try:
        bounds, make, values = pickle.loads(sealed)
        del sealed
        bind(*bounds)
        said, answer = _DONE, make(*values)
    except BaseException as error:  # it has to be told, whatever it is
        said, answer = json.dumps(_news(error)).encode() + b"\n", b""
    told.write(said + answer)
    told.flush()
    os._exit(0)


def _end_with(came: Any) -> None:
    """End when nobody waits any more: then the other end of the pipe is closed."""
    came.read(1)
    os._exit(1)


def _news(error: BaseException) -> dict[str, Any]:
    for kind in RAISED:
        if type(error) is kind:
            holds = {key: value for key, value in vars(error).items() if isinstance(value, str)}
            return {"kind": kind.__name__, "args": [str(each) for each in error.args],
                    "holds": holds}  # fmt: skip
    if isinstance(error, MemoryError | TooLong):
        return {"bounds": True}
    why = " ".join(str(error).split())[:300]
    return {"why": f"{type(error).__name__}: {why}" if why else type(error).__name__}
