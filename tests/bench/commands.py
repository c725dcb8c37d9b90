"""Whole commands on whole books: what they take, what they took, and what is wanted."""

from __future__ import annotations

import re
import shutil
import tempfile
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from .books import write_book
from .programs import Program, Ran, earlier
from .yardstick import pictures, set_by_typst

BOOKS = ("100", "200", "800", "saltmarsh-herons")
"""Books by the number of their calls, or a bundled one by its name."""
PARTS = ("help", "list", "draw", "check", "build", "again", "theme", "typst", "picture")
BRIEF = "saltmarsh-herons", tuple(part for part in PARTS if part != "theme")
"""What the brief table is of: a book, and all of it but a theme of one's own."""
_ROUTE = re.compile(r"^(\s+\w+ runs \w+ )(\d+)$", re.MULTILINE)
_SENTENCE = re.compile(r'(?<=say ")(?=\w)')
_OWN = 'title = "Club"\n'
"""A theme of one's own that prints as the plain one does."""
_WANTED = {
    "list": 0.12, "draw a call": 0.12, "check, one route changed": 0.15, "build, cold": 0.16,
    "build, one route changed": 0.02, "build, one sentence changed": 0.015,
    "build, nothing changed": 0.0025,
}  # fmt: skip
"""CPU seconds by those of the earlier program, at most; of a check those of its warm one, where
nothing has changed. A cold build is held by the clock."""
_HELP = 0.15
"""Seconds that `--help` may take."""
_PEAK, _SIZE = 0.35, 1.2
"""A cold build's memory, and the size of its book, by those of the earlier program, at most."""
_GROWS = 4.2, 2.0
"""Times of CPU and of memory that a book of 800 calls may take, by one of 200."""
_WARM = "check, nothing changed"


@dataclass(frozen=True)
class Asked:
    """What is timed: which books, what of each, at which revision ("" for the files as they are),
    against which other, and each the best of so many times. With ``once`` the other program builds
    each book one time: true of one that keeps nothing of a build, as those before 0.2 did."""

    books: tuple[str, ...] = BOOKS
    parts: tuple[str, ...] = PARTS
    revision: str = ""
    against: str = ""
    times: int = 1
    once: bool = False


def compared(asked: Asked) -> Iterator[str]:
    """The table, a line at a time; with a revision each figure's ratio to what it was there."""
    yield _head(bool(asked.against))
    with tempfile.TemporaryDirectory() as place:
        programs = [Program(None, Path(place, "compiled"))]
        if asked.revision:
            programs = [earlier(asked.revision, Path(place, "now"))]
        if asked.against:
            programs.append(earlier(asked.against, Path(place, "earlier")))
        for number, program in enumerate(programs):
            program.compile(Path(place, f"first-{number}"))
        cold: dict[str, Ran] = {}
        for name in asked.books:
            yield f"{name} calls" if name.isdigit() else name
            for line, ran in _book(name, programs, asked):
                yield line
                if ran is not None and ran.what == "build, cold":
                    cold[name] = ran
        if "200" in cold and "800" in cold:
            cpu, peak = cold["800"].cpu / cold["200"].cpu, cold["800"].peak / cold["200"].peak
            yield (
                f"800 calls against 200, cold: {cpu:.1f} times the CPU ({_GROWS[0]} wanted), "
                f"{peak:.1f} times the memory ({_GROWS[1]} wanted)"
            )


def _book(name: str, programs: Sequence[Program], asked: Asked) -> Iterator[tuple[str, Ran | None]]:
    """Each command on a book, this program's beside the earlier one's."""
    warm = 0.0
    with tempfile.TemporaryDirectory() as work:
        homes = [Path(work, str(number)) for number in range(len(programs))]
        runs = [
            commands(name, program, home, asked, once=asked.once and program is not programs[0])
            for program, home in zip(programs, homes, strict=True)
        ]
        for rans in zip(*runs, strict=True):
            now, was = rans[0], rans[1] if len(rans) > 1 else None
            if now.what == _WARM and was is not None:
                warm = was.cpu
            yield _row(now, was, warm), now
            if now.what == "build, cold" and was is not None:
                clock = _WANTED[now.what]
                yield f"{'':36}wanted: by the clock {clock}, peak {_PEAK}, PDF {_SIZE}", None
        if "typst" in asked.parts and "build" in asked.parts:
            shelf = homes[0] / name / "build" / "pictures"
            for ran in set_by_typst(programs[0], shelf, homes[0]):
                yield _row(ran, None, 0.0), None
        if "picture" in asked.parts:
            usual, most = pictures(homes[0] / name)
            said = f"{1000 * usual:.0f} ms in the median, {1000 * most:.0f} ms at most"
            yield f"  {'one picture':34}{said} (10 and 100 wanted)", None


def commands(
    name: str, program: Program, work: Path, asked: Asked, *, once: bool = False
) -> Iterator[Ran]:
    """Each command on a book in its turn, in a folder of its own; what is checked and what is built
    have a cache each, so that neither serves the other."""
    work.mkdir()
    folder, cache, built = work / name, work / "cache", _fresh(work)
    if name.isdigit():
        write_book(folder, int(name))
    else:
        shutil.copytree(program.playbooks / name, folder, ignore=shutil.ignore_patterns("build"))
    book, parts, times = folder / "build" / "book.pdf", asked.parts, asked.times
    if "help" in parts:
        yield program.ran("--help", cache, "--help", times=times)
    if "list" in parts:
        yield _cold(program, "list", work, times, "list", folder)
    if "draw" in parts:
        if "list" not in parts:
            program.ran("", _fresh(work), "list", folder)
        call, picture = program.said.splitlines()[0], work / "call.svg"
        yield _cold(program, "draw a call", work, times, "draw", folder, call, "-o", picture)
    if "check" in parts:
        yield program.ran("check, cold", cache, "check", folder)
        yield program.ran(_WARM, cache, "check", folder, times=times)
    cold = Ran("", 0, 0, 0)
    if "build" in parts:
        cold = program.ran("build, cold", built, "build", folder, book=book)
        yield cold

    def rebuilt(what: str, times: int = 1) -> Ran:
        if once:
            return replace(cold, what=what)
        return program.ran(what, built, "build", folder, book=book, times=times)

    if "again" in parts:
        yield rebuilt("build, nothing changed", times)
    _edit(folder, _ROUTE, lambda m: f"{m[1]}{int(m[2]) + 1}")
    if "check" in parts:
        yield program.ran("check, one route changed", cache, "check", folder)
    if "again" in parts:
        yield rebuilt("build, one route changed")
        _edit(folder, _SENTENCE, lambda m: "Now and then. ")
        yield rebuilt("build, one sentence changed")
    if "theme" in parts and "build" in parts:
        own = work / "club"
        own.mkdir()
        (own / "theme.toml").write_text(_OWN, "utf-8")
        themed = ("build", folder, "--theme", own)
        program.ran("", built, *themed)
        (own / "book.css").write_text("h1 { letter-spacing: 0.2pt }\n", "utf-8")
        yield program.ran("build, a style of its theme changed", built, *themed, book=book)


def _cold(program: Program, what: str, work: Path, times: int, *asked: str | Path) -> Ran:
    """The best of so many times, each with a cache that knows nothing."""
    runs = [program.ran(what, _fresh(work), *asked) for _ in range(times)]
    return min(runs, key=lambda ran: ran.cpu)


def _fresh(work: Path) -> Path:
    """A cache that knows nothing."""
    return Path(tempfile.mkdtemp(dir=work))


def _edit(folder: Path, what: re.Pattern[str], new: Callable[[re.Match[str]], str]) -> None:
    """The first place of the playbook's passes that fits, changed."""
    for path in sorted(folder.glob("*.play")):
        text = path.read_text("utf-8")
        made = what.sub(new, text, count=1)
        if made != text:
            path.write_text(made, "utf-8")
            return
    raise LookupError(f"nothing fits {what.pattern}")


def _head(ratios: bool) -> str:
    head = f"{'':36}{'CPU s':>9}{'wall s':>9}{'peak MB':>9}{'PDF MB':>9}"
    more = ("CPU was", "ratio", "wall", "peak", "PDF", "wanted")
    return head + ("".join(f"{each:>9}" for each in more) if ratios else "")


def _row(now: Ran, was: Ran | None, warm: float) -> str:
    """``warm`` is what a check with nothing changed took the earlier program, 0 where not known."""
    line = f"  {now.what:34}{now.cpu:9.2f}{now.wall:9.2f}{now.peak:9.0f}"
    line += f"{now.size / 1e6:9.2f}" if now.size else f"{'':9}"
    if was is None:
        return line
    of = warm if now.what == "check, one route changed" and warm else was.cpu
    line += f"{of:9.2f}{now.cpu / of:9.4f}{now.wall / was.wall:9.4f}{now.peak / was.peak:9.2f}"
    line += f"{now.size / was.size:9.2f}" if now.size and was.size else f"{'':9}"
    wanted = _WANTED.get(now.what)
    if now.what == "--help":
        return f"{line}   {_HELP} s"
    return line + (f"{wanted:9.4f}" if wanted is not None else "")
