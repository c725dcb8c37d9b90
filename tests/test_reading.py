"""The files of a playbook: each is read, or named with the reason."""

from __future__ import annotations

import errno
import os
import socket
import stat
from pathlib import Path

import pytest

from stemline.outside.texts import read_files

BOOK = "playbook Herons\n    code canadian amateur\n"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    made = tmp_path / "mine"
    made.mkdir()
    (made / "book.play").write_text(BOOK)
    return made


def told(folder: Path) -> list[tuple[str, str, int]]:
    """Code, file and line of each message."""
    found = read_files(folder).found
    return [(d.code, str(Path(d.span.source).relative_to(folder)), d.span.line) for d in found]


def test_a_socket_is_not_read(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(folder)
    with socket.socket(socket.AF_UNIX) as bound:
        bound.bind("quick.play")
    assert told(folder) == [("E108", "quick.play", 1)]


def test_a_pipe_put_in_the_place_of_a_file_is_not_waited_for(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """It was a file when it was looked at."""
    os.mkfifo(folder / "quick.play")
    regular = (folder / "book.play").stat()
    real = Path.stat

    def lies(path: Path, **how: bool) -> os.stat_result:
        return regular if path.name == "quick.play" else real(path, **how)

    monkeypatch.setattr(Path, "stat", lies)
    assert told(folder) == [("E107", "quick.play", 1)]


def test_a_link_inside_the_playbook_is_read(folder: Path) -> None:
    (folder / "notes.txt").write_text("concept A\n    x is back\n")
    (folder / "linked.play").symlink_to("notes.txt")
    assert told(folder) == []
    assert len(read_files(folder).sources) == 2


def test_a_linked_playbook_is_read_whole(folder: Path) -> None:
    (folder.parent / "link").symlink_to(folder, target_is_directory=True)
    assert len(read_files(folder.parent / "link").sources) == 1


def test_a_folder_that_may_not_be_read_is_named(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    closed = folder / "closed"
    closed.mkdir()
    (closed / "quick.play").write_text("concept A\n    x is back\n")
    real = os.scandir

    def refused(path: str) -> object:
        if Path(path) == closed:
            raise PermissionError(errno.EACCES, os.strerror(errno.EACCES), path)
        return real(path)

    monkeypatch.setattr(os, "scandir", refused)
    assert told(folder) == [("E109", "closed", 0)]


@pytest.mark.skipif(os.geteuid() == 0, reason="root may read everything")
def test_a_folder_without_permission_is_named(folder: Path) -> None:
    closed = folder / "closed"
    closed.mkdir(mode=0)
    try:
        assert told(folder) == [("E109", "closed", 0)]
    finally:
        closed.chmod(stat.S_IRWXU)


def test_a_file_that_may_not_be_read_is_named(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (folder / "quick.play").write_text("concept A\n    x is back\n")
    real = os.open

    def refused(path: Path, *how: int) -> int:
        if Path(path).name == "quick.play":
            raise PermissionError(errno.EACCES, os.strerror(errno.EACCES), path)
        return real(path, *how)

    monkeypatch.setattr(os, "open", refused)
    assert told(folder) == [("E107", "quick.play", 1)]


def test_the_playbook_itself_may_be_closed(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def refused(path: Path, **how: bool) -> os.stat_result:
        raise PermissionError(errno.EACCES, os.strerror(errno.EACCES), str(path))

    monkeypatch.setattr(Path, "stat", refused)
    assert [d.code for d in read_files(folder).found] == ["E109"]


@pytest.mark.parametrize("name", ["x" * 300, "a\0b", "no\ud800where"])
def test_a_name_that_no_system_takes_is_no_folder(tmp_path: Path, name: str) -> None:
    assert [d.code for d in read_files(tmp_path / name).found] == ["E101"]


def test_a_file_of_another_alphabet_is_read_and_named_plainly(folder: Path) -> None:
    Path(os.fsdecode(os.fsencode(folder) + b"/\xff\x1b.play")).write_text("\n")
    (found,) = read_files(folder).found
    assert (found.code, found.span.line) == ("E105", 1)


def test_hidden_files_and_the_build_are_left_out(folder: Path) -> None:
    for name in ("build", ".git"):
        (folder / name).mkdir()
        (folder / name / "old.PLAY").write_text("x")
    (folder / ".quick.play").write_text("x")
    (folder / ".quick.play.txt").write_text("x")
    assert told(folder) == []
