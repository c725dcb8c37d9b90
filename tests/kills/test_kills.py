"""A small book's build stopped at random moments: one book or the other, whole."""

from __future__ import annotations

import re
import shutil
import subprocess
import sys
from importlib.resources import as_file, files
from pathlib import Path

import pytest

from stemline.outside import folder
from stemline.outside.not_written import NotWritten

from .harness import (
    Report,
    Stopper,
    TwoBooks,
    stopped,
    texts_of,
    two_books,
    whole_builds,
    write_texts,
)


@pytest.fixture(scope="module")
def books(tmp_path_factory: pytest.TempPathFactory) -> TwoBooks:
    """The two books that all stopped builds are held against, each built once."""
    home = tmp_path_factory.mktemp("books")
    with as_file(files("stemline.grammar").joinpath("starter", "six-man")) as place:
        shutil.copytree(place, home / "starter", ignore=shutil.ignore_patterns("build"))
    book = home / "starter" / "book.play"
    text = book.read_text("utf-8")
    book.write_text(text.replace("    season 2026\n", '    season 2026\n    say "Few."\n'), "utf-8")
    return two_books(home / "starter", home)


def test_a_stopped_build_leaves_one_whole_book(books: TwoBooks, tmp_path: Path) -> None:
    report = stopped(books, tmp_path, kills=24, interrupts=12, seed=1)
    assert report.faults == []
    assert sum(report.ended.values()) == 36
    assert sum(report.left.values()) == 36
    assert report.left["old book"] > 0


def test_builds_killed_one_after_another_leave_what_the_next_can_use(
    books: TwoBooks, tmp_path: Path
) -> None:
    """Few, since each is a process of its own; `python -m tests.kills --whole 50` kills more."""
    report = Report()
    whole_builds(books, tmp_path, 4, 1, report)
    assert report.faults == []
    assert sum(report.ended.values()) == 4


def test_an_interrupt_at_any_line_ends_in_130_and_leaves_one_whole_book(
    books: TwoBooks, tmp_path: Path
) -> None:
    """One line in eight of those that stand around the work; `python -m tests.kills.points FOLDER`
    takes each, `--every` also the beginning of every function that is called."""
    shutil.copytree(books.folders[0], tmp_path / "mine")
    write_texts(texts_of(books.folders[1]), tmp_path / "mine")
    program = [sys.executable, "-m", "tests.kills.points", str(tmp_path / "mine"), "--share", "1/8"]
    said = subprocess.run(program, capture_output=True, text=True, cwd=Path(__file__).parents[2])
    assert said.returncode == 0, said.stdout + said.stderr
    points = re.search(r"^(\d+) interrupted", said.stdout, re.MULTILINE)
    assert points is not None
    assert int(points[1]) > 100


def test_the_harness_sees_a_damaged_book(tmp_path: Path) -> None:
    """A build that writes straight to its place is what it must not miss."""
    import random
    import signal

    build = tmp_path / "build"
    folder.replace(build, {"book.pdf": b"old"})
    stopper = Stopper(build, {"book.pdf": b"old"}, {"book.pdf": b"new"}, random.Random(1))
    (build / "book.pdf").write_bytes(b"ne")
    with pytest.raises(NotWritten):
        folder.replace(build, {"book.pdf": b"new"})
    stopper._look(signal.SIGKILL)
    assert stopper.report.faults == [
        "SIGKILL: book.pdf is of neither book",
        "SIGKILL: the book is damaged",
    ]
