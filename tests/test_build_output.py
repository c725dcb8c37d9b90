"""What a command leaves in a folder: a whole book or the last one, and everybody else's files."""

from __future__ import annotations

import io
import itertools
import os
import re
import shutil
import signal
import subprocess
import sys
import time
from pathlib import Path
from typing import Any

import pypdf
import pytest
from PIL import Image
from running import run

import stemline.emit.pdf
import stemline.results
from stemline.emit.pdf_forms import Forms

pytestmark = pytest.mark.usefixtures("kept")


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory, kept: None) -> Path:
    """The starter, and a good book of it."""
    folder = tmp_path_factory.mktemp("starter") / "mine"
    assert run("new", folder).exit_code == 0
    assert run("build", folder).exit_code == 0
    return folder


@pytest.fixture
def starter(made: Path, tmp_path: Path) -> Path:
    """A copy of the starter that has no book yet."""
    shutil.copytree(made, tmp_path / "mine", ignore=shutil.ignore_patterns("build"))
    return tmp_path / "mine"


@pytest.fixture
def built(made: Path, tmp_path: Path) -> Path:
    """A copy of the starter with its book."""
    shutil.copytree(made, tmp_path / "mine")
    return tmp_path / "mine"


def files_in(folder: Path) -> dict[str, bytes]:
    return {
        path.relative_to(folder).as_posix(): path.read_bytes()
        for path in sorted(folder.rglob("*"))
        if path.is_file() and path.name != "lock"
    }


def test_part_of_a_book_and_the_whole_leave_each_other_alone(starter: Path, made: Path) -> None:
    assert run("build", starter, "--only", "Stick").exit_code == 0
    part = files_in(starter / "build" / "only-stick")
    assert run("build", starter).exit_code == 0
    assert files_in(starter / "build" / "only-stick") == part
    whole = {f"build/{name}": data for name, data in files_in(made / "build").items()}
    assert whole.items() <= files_in(starter).items()
    assert run("build", starter, "--only", "Stick", "--paper", "a4").exit_code == 0
    assert files_in(starter / "build" / "only-stick") != part
    assert whole.items() <= files_in(starter).items()


def test_a_note_in_the_build_folder_and_a_folder_beside_it_stay(built: Path) -> None:
    notes = [
        built / "build" / "note.txt",
        built / "build" / "pictures" / "note.svg",
        built / ".build-old" / "note.txt",
    ]
    for note in notes:
        note.parent.mkdir(exist_ok=True)
        note.write_text("film at nine", "utf-8")
    assert run("build", built).exit_code == 0
    assert [note.read_text("utf-8") for note in notes] == ["film at nine"] * 3


def test_a_book_with_notes_written_into_it_is_told_before_anything_is_drawn(
    built: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    book = built / "build" / "book.pdf"
    book.write_bytes(book.read_bytes() + b"% my notes")
    before = files_in(built / "build")
    monkeypatch.setattr(stemline.results, "Build", None)
    result = run("build", built)
    assert result.exit_code == 2
    assert f"{book}: error E951: this was changed since stemline made it" in result.stderr
    assert files_in(built / "build") == before


def test_a_folder_of_other_files_gets_the_book_beside_them(starter: Path, tmp_path: Path) -> None:
    out = tmp_path / "photos"
    out.mkdir()
    (out / "film.txt").write_text("week 1", "utf-8")
    assert run("build", starter, "--out", out).exit_code == 0
    assert (out / "film.txt").read_text("utf-8") == "week 1"
    assert (out / "book.pdf").exists()


@pytest.mark.parametrize("place", ["", "..", "quick.play"])
def test_the_playbook_itself_is_no_place_for_its_book(starter: Path, place: str) -> None:
    before = files_in(starter)
    result = run("build", starter, "--out", starter / place)
    assert result.exit_code == 2
    assert "error E95" in result.stderr
    assert files_in(starter) == before


def test_calls_that_read_alike_have_a_file_each_and_an_index_says_whose(starter: Path) -> None:
    """A call's own name may be any text."""
    quick = starter / "quick.play"
    names = {
        "Doubles Left Stick": "Doubles Right Stick!",
        "Trips Right Stick": "!!!",
        "Trips Left Stick": "NUL",
        "Doubles Right Stick Slot Fade": "x" * 300,
        "Doubles Left Stick Slot Fade": "Doubles right-stick",
    }
    lines = "".join(f'    call {call} as "{name}"\n' for call, name in names.items())
    quick.write_text(quick.read_text("utf-8").rstrip() + f"\n{lines}", "utf-8")
    result = run("build", starter)
    assert result.exit_code == 0, result.stderr
    shelf = starter / "build" / "pictures"
    rows = [row.split("\t") for row in (shelf / "index.txt").read_text("utf-8").splitlines()]
    calls = run("list", starter).stdout.splitlines()
    assert [call for _, call in rows] == calls
    assert len({file for file, _ in rows}) == len(rows)
    for file, call in rows:
        assert f"<title>{call}</title>" in (shelf / file).read_text("utf-8")


def test_a_picture_is_what_its_ending_says(starter: Path, tmp_path: Path) -> None:
    call = "Trips Left Stick"
    for kind in ("svg", "pdf", "png", "PNG"):
        out = tmp_path / f"s.{kind}"
        assert run("draw", starter, call, "-o", out).exit_code == 0, kind
    assert (tmp_path / "s.svg").read_text("utf-8").startswith("<svg")
    (page,) = pypdf.PdfReader(tmp_path / "s.pdf").pages
    image = Image.open(io.BytesIO((tmp_path / "s.png").read_bytes()))
    assert image.width / image.height == pytest.approx(
        float(page.mediabox.width) / float(page.mediabox.height), rel=0.01
    )
    assert image.convert("L").getextrema() == (0, 255)


@pytest.mark.parametrize("command", ["draw", "sheet"])
def test_an_ending_that_is_not_made_is_refused_with_those_that_are(
    starter: Path, tmp_path: Path, command: str
) -> None:
    words = [command, str(starter), *(["Trips Left Stick"] if command == "draw" else [])]
    for name in ("s.gif", "s", "pdf"):
        result = run(*words, "-o", tmp_path / name)
        assert result.exit_code == 2
        assert "error E957" in result.stderr
        assert ".svg" in result.stderr
        assert not (tmp_path / name).exists()


def test_a_picture_goes_through_a_link_and_into_a_pipe(starter: Path, tmp_path: Path) -> None:
    (tmp_path / "real.svg").write_text("old", "utf-8")
    (tmp_path / "real.svg").chmod(0o640)
    (tmp_path / "link.svg").symlink_to(tmp_path / "real.svg")
    assert run("draw", starter, "Trips Left Stick", "-o", tmp_path / "link.svg").exit_code == 0
    assert (tmp_path / "link.svg").is_symlink()
    assert (tmp_path / "real.svg").read_text("utf-8").startswith("<svg")
    assert (tmp_path / "real.svg").stat().st_mode & 0o777 == 0o640
    program = [sys.executable, "-m", "stemline", "draw", str(starter), "Trips Left Stick"]
    piped = subprocess.run([*program, "-o", "/dev/stdout"], capture_output=True, check=True)
    assert piped.stdout == (tmp_path / "real.svg").read_bytes()


def test_a_picture_that_cannot_be_written_says_why(starter: Path, tmp_path: Path) -> None:
    result = run("draw", starter, "Trips Left Stick", "-o", tmp_path / "no" / "s.svg")
    assert result.exit_code == 2
    assert "error E952: this cannot be written: no such file or directory" in result.stderr


def test_a_picture_that_fails_stops_the_build_by_its_name(
    built: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    before = files_in(built / "build")
    form, tried = Forms.form, itertools.count()

    def failing(self: Forms, name: str, ink: Any, box: tuple[float, float]) -> Any:
        if next(tried) == 3:
            raise ZeroDivisionError("by nothing")
        return form(self, name, ink, box)

    monkeypatch.setattr(Forms, "form", failing)
    monkeypatch.setattr("stemline.emit.side_by_side._processors", lambda: 1)  # in this process
    result = run("build", built, "--no-cache")
    assert result.exit_code == 2
    named = "^[A-Z].+: error E956: this picture cannot be drawn whole: by nothing"
    assert re.search(named, result.stderr, re.MULTILINE)
    assert files_in(built / "build") == before


def test_an_interrupt_that_a_library_swallows_still_ends_the_build(
    starter: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The signal comes while a picture is drawn, and what it raises is caught there."""
    made = stemline.results.made_book

    def swallowing(*args: object) -> object:
        try:
            os.kill(os.getpid(), signal.SIGINT)
            time.sleep(5)
        except KeyboardInterrupt:
            pass
        return made(*args)  # type: ignore[arg-type]

    monkeypatch.setattr(stemline.results, "made_book", swallowing)
    result = run("build", starter)
    assert result.exit_code == 130
    assert "interrupted" in result.stderr
    assert not (starter / "build").exists()


def test_an_interrupted_command_ends_with_130_and_one_line(starter: Path) -> None:
    """While it reads, and while it draws: a book of two hundred calls takes far longer."""
    herons = Path(__file__).parent.parent / "playbooks" / "saltmarsh-herons"
    program = [sys.executable, "-m", "stemline", "build", str(herons), "--no-cache"]
    program += ["--out", str(starter / "build")]
    for seconds in (0.8, 3.0):
        with subprocess.Popen(program, stderr=subprocess.PIPE, text=True) as child:
            time.sleep(seconds)
            child.send_signal(signal.SIGINT)
            _, said = child.communicate(timeout=60)
        assert child.returncode == 130
        assert "interrupted" in said
        assert "Traceback" not in said
        assert not (starter / "build" / "book.pdf").exists()


def test_two_builds_at_once_leave_one_whole_book(starter: Path, made: Path) -> None:
    program = [sys.executable, "-m", "stemline", "build", str(starter)]
    children = [subprocess.Popen(program, stdout=subprocess.DEVNULL) for _ in range(2)]
    assert [child.wait(timeout=240) for child in children] == [0, 0]
    assert files_in(starter / "build") == files_in(made / "build")
