"""The folder of temporary files: gone afterwards, and a killed command's with the next."""

from __future__ import annotations

import errno
import os
import tempfile
from pathlib import Path

import pytest

from outside.faulty import at_operation, forked, kill
from stemline.outside.not_written import NotWritten
from stemline.outside.workroom import workroom


@pytest.fixture(autouse=True)
def place(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setattr(tempfile, "tempdir", str(tmp_path))
    return tmp_path


def test_temporary_files_are_made_in_it_and_go_with_it(place: Path) -> None:
    with workroom() as room:
        made = Path(tempfile.mkdtemp())
        assert made.parent == room
        (made / "font").write_bytes(b"x")
    assert list(place.iterdir()) == []
    assert tempfile.gettempdir() == str(place)


def test_the_next_clears_what_a_killed_one_left_and_nothing_else(place: Path) -> None:
    def killed() -> None:
        with workroom():
            Path(tempfile.mkdtemp(), "font").write_bytes(b"x")
            os._exit(9)

    assert forked(killed) == 9
    (place / "stemline-work-mine").mkdir()
    (place / "stemline-work-mine" / "note.txt").write_text("film at nine", "utf-8")
    assert len(list(place.iterdir())) == 2
    with workroom(), workroom():
        pass
    assert [p.name for p in place.rglob("*")] == ["stemline-work-mine", "note.txt"]


def test_one_in_use_is_left_alone(place: Path) -> None:
    with workroom() as room:
        (room / "font").write_bytes(b"x")

        def other() -> None:
            tempfile.tempdir = str(place)
            with workroom():
                pass

        assert forked(other) == 0
        assert (room / "font").exists()


def test_a_full_disk_is_told_by_its_place(place: Path) -> None:
    with pytest.raises(NotWritten) as said, workroom():
        raise OSError(errno.ENOSPC, "No space left on device")
    found = said.value.found
    assert (found.code, found.span.source) == ("E959", str(place))


def test_a_kill_at_any_operation_leaves_nothing_for_long(place: Path) -> None:
    def work(number: int) -> None:
        at_operation(number, place, kill)
        with workroom():
            Path(tempfile.mkdtemp(), "font").write_bytes(b"x")

    for number in range(12):
        forked(lambda number=number: work(number))  # type: ignore[misc]
        with workroom():
            pass
        left = [p for p in place.iterdir() if any(p.iterdir())]
        assert left == [], number
