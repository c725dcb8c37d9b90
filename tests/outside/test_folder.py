"""A folder that a build fills: one book or the other, and nobody's file lost."""

from __future__ import annotations

import errno
import os
import subprocess
from collections.abc import Callable, Iterator
from itertools import count
from pathlib import Path

import pytest

from outside.faulty import KILLED, at_operation, forked, kill
from stemline.outside.folder import HELD, refuse, replace, settle
from stemline.outside.not_written import NotWritten

SAME = {"pictures/snag.svg": b"same"}
OLD = {"book.pdf": b"old", "pictures/stick.svg": b"old", "pictures/gone.svg": b"gone", **SAME}
NEW = {"book.pdf": b"new", "pictures/stick.svg": b"new", "pictures/smash.svg": b"more", **SAME}
NOTE = b"film at nine"

Held = dict[str, bytes]


def held(root: Path) -> Held:
    """All files of a folder but stemline's own list of them."""
    return {
        path.relative_to(root).as_posix(): path.read_bytes()
        for path in sorted(root.rglob("*"))
        if path.is_file() and HELD not in path.parts
    }


def leftovers(root: Path) -> list[str]:
    return sorted(p.name for p in (root / HELD).iterdir() if p.name not in ("lock", "stands"))


@pytest.fixture
def root(tmp_path: Path) -> Path:
    """An old book, with a coach's note in each of its folders."""
    root = tmp_path / "build"
    replace(root, OLD)
    (root / "note.txt").write_bytes(NOTE)
    (root / "pictures" / "note.txt").write_bytes(NOTE)
    return root


NOTES = {"note.txt": NOTE, "pictures/note.txt": NOTE}


def test_a_new_book_takes_the_place_of_the_old_and_of_nothing_else(root: Path) -> None:
    replace(root, NEW)
    assert held(root) == NEW | NOTES
    assert leftovers(root) == []


def test_nothing_is_renamed_but_single_files(root: Path) -> None:
    before = root.stat().st_ino, (root / "pictures").stat().st_ino
    replace(root, NEW)
    assert (root.stat().st_ino, (root / "pictures").stat().st_ino) == before


def test_a_file_that_stands_as_it_should_is_not_written_again(root: Path) -> None:
    file = root / "pictures" / "snag.svg"
    before = file.stat()
    replace(root, NEW)
    assert (file.stat().st_ino, file.stat().st_mtime_ns) == (before.st_ino, before.st_mtime_ns)
    file.unlink()
    replace(root, OLD)
    assert held(root) == OLD | NOTES


@pytest.mark.parametrize("now", [NOTE, None], ids=["changed", "deleted"])
def test_a_file_of_both_books_that_changed_since_a_kill_holds_no_other_up(
    root: Path, now: bytes | None
) -> None:
    def killed() -> None:
        moves = iter(range(10))
        to_place = Path.replace

        def stop(path: Path, target: Path) -> Path:
            if path.parent.name == "staged" and next(moves) == 1:
                kill()
            return to_place(path, target)

        Path.replace = stop  # type: ignore[method-assign, assignment]
        replace(root, NEW)

    assert forked(killed) == KILLED
    own = root / "pictures" / "snag.svg"
    own.unlink()
    if now is not None:
        own.write_bytes(now)
    settle(root)
    changed = {"pictures/snag.svg": now} if now is not None else {}
    assert held(root) == {n: d for n, d in NEW.items() if n not in SAME} | NOTES | changed
    assert leftovers(root) == []


def test_a_folder_that_is_empty_now_goes(tmp_path: Path) -> None:
    replace(tmp_path / "b", OLD)
    replace(tmp_path / "b", {"book.pdf": b"x"})
    assert held(tmp_path / "b") == {"book.pdf": b"x"}
    assert not (tmp_path / "b" / "pictures").exists()


@pytest.mark.parametrize("name", ["book.pdf", "pictures/smash.svg"])
def test_a_foreign_file_in_the_way_is_named_and_stays(root: Path, name: str) -> None:
    (root / name).write_bytes(NOTE)
    before = held(root)
    with pytest.raises(NotWritten) as said:
        replace(root, NEW)
    assert (said.value.found.code, said.value.found.span.source) == ("E951", str(root / name))
    assert held(root) == before
    assert leftovers(root) == []


def test_a_file_of_ours_that_was_changed_is_no_more_deleted(root: Path) -> None:
    (root / "pictures" / "gone.svg").write_bytes(NOTE)
    replace(root, NEW)
    assert held(root) == NEW | NOTES | {"pictures/gone.svg": NOTE}


def links(root: Path) -> Iterator[Callable[[], None]]:
    yield lambda: (root / "book.pdf").symlink_to(root / "note.txt")
    yield lambda: (root / "pictures").symlink_to(root.parent)
    yield lambda: (root / HELD).symlink_to(root.parent)


@pytest.mark.parametrize("number", range(3))
def test_a_link_inside_is_never_followed(tmp_path: Path, number: int) -> None:
    root = tmp_path / "build"
    root.mkdir()
    (tmp_path / "stick.svg").write_bytes(NOTE)
    list(links(root))[number]()
    with pytest.raises(NotWritten) as said:
        replace(root, NEW)
    assert said.value.found.code == "E951"
    assert (tmp_path / "stick.svg").read_bytes() == NOTE
    assert not (tmp_path / "stands").exists()


def test_the_folder_may_be_a_link_and_must_be_a_folder(tmp_path: Path) -> None:
    (tmp_path / "disk").mkdir()
    (tmp_path / "build").symlink_to(tmp_path / "disk")
    replace(tmp_path / "build", NEW)
    assert held(tmp_path / "disk") == NEW
    assert (tmp_path / "build").is_symlink()
    (tmp_path / "lost").symlink_to(tmp_path / "nowhere")
    (tmp_path / "file").write_bytes(NOTE)
    (tmp_path / "loop").symlink_to(tmp_path / "loop")
    for name in ("lost", "file", "loop"):
        with pytest.raises(NotWritten) as said:
            replace(tmp_path / name, NEW)
        assert said.value.found.code == "E953"
        with pytest.raises(NotWritten):
            refuse(tmp_path / name, ("book.pdf",))


@pytest.fixture
def small_disk(tmp_path: Path) -> Iterator[Path]:
    """A disk of its own with 64 kilobytes."""
    place = tmp_path / "disk"
    place.mkdir()
    mount = ["mount", "-t", "tmpfs", "-o", "size=64k", "tmpfs", str(place)]
    try:
        done = subprocess.run(mount, capture_output=True, check=False)
    except OSError:
        pytest.skip("no mount here")
    if done.returncode:
        pytest.skip("mounting is not allowed here")
    yield place
    subprocess.run(["umount", str(place)], check=True)


def test_a_full_disk_leaves_the_old_book_and_a_mount_is_no_hindrance(small_disk: Path) -> None:
    replace(small_disk, OLD)
    with pytest.raises(NotWritten) as said:
        replace(small_disk, {**NEW, "pictures/smash.svg": b"x" * 100_000})
    assert (said.value.found.code, dict(said.value.found.values)["why"]) == (
        "E952", os.strerror(errno.ENOSPC).casefold(),
    )  # fmt: skip
    assert held(small_disk) == OLD
    assert leftovers(small_disk) == []
    replace(small_disk, NEW)
    assert held(small_disk) == NEW


def test_a_kill_at_any_operation_leaves_one_book_or_the_other(tmp_path: Path) -> None:
    """Each file is the old or the new one at once; the next command makes the whole so."""
    ended = KILLED
    number = 0
    seen = set()
    while ended == KILLED:
        root = tmp_path / str(number)
        replace(root, OLD)
        (root / "note.txt").write_bytes(NOTE)

        def work(root: Path = root, number: int = number) -> None:
            at_operation(number, root, kill)
            replace(root, NEW)

        ended = forked(work)
        now = held(root)
        assert now["book.pdf"] in (b"old", b"new")
        assert now["pictures/stick.svg"] in (b"old", b"new")
        assert now["note.txt"] == NOTE
        settle(root)
        after = held(root)
        assert after in (OLD | {"note.txt": NOTE}, NEW | {"note.txt": NOTE}), number
        assert leftovers(root) == []
        seen.add(after["book.pdf"])
        replace(root, {"book.pdf": b"next"})
        assert held(root) == {"book.pdf": b"next", "note.txt": NOTE}
        number += 1
    assert ended == 0
    assert number > 20
    assert seen == {b"old", b"new"}


@pytest.mark.parametrize("interrupt", [True, False], ids=["interrupt", "disk full"])
def test_a_failure_at_any_operation_leaves_one_book_or_the_other(
    tmp_path: Path, interrupt: bool
) -> None:
    met = tmp_path / "met"

    def fail() -> None:
        met.touch()
        if interrupt:
            raise KeyboardInterrupt
        raise OSError(errno.ENOSPC, "No space left on device")

    for number in count():
        root = tmp_path / str(number)
        replace(root, OLD)

        def work(root: Path = root, number: int = number) -> None:
            at_operation(number, root, fail)
            replace(root, NEW)

        forked(work)
        assert held(root)["book.pdf"] in (b"old", b"new")
        settle(root)
        assert held(root) in (OLD, NEW), number
        assert leftovers(root) == []
        if not met.exists():  # that were all of them
            break
        met.unlink()
    assert number > 20


def test_a_build_said_to_be_whole_that_is_not_is_not_used(root: Path) -> None:
    """A disk that lost its writes: the list is there, and what it lists is not as it says."""

    number = 0

    def work() -> None:
        at_operation(number, root, kill)
        replace(root, NEW)

    while not (root / HELD / "whole").exists():
        number += 1
        forked(work)
    (root / HELD / "staged" / "0").write_bytes(b"lost")
    settle(root)
    assert held(root) == OLD | NOTES
    assert leftovers(root) == []
    replace(root, NEW)
    assert held(root) == NEW | NOTES


def test_a_list_of_files_cannot_name_one_outside(root: Path) -> None:
    """A folder may come from somebody else, with a list that means harm."""
    outside = root.parent / "outside.txt"
    outside.write_bytes(NOTE)
    digest = "f" * 64
    for name in ("../outside.txt", str(outside), "pictures/../../outside.txt", "a/b/c.svg", ""):
        (root / HELD / "whole").write_text(f'{{"files": {{"{name}": "{digest}"}}}}', "utf-8")
        settle(root)
        assert outside.read_bytes() == NOTE
        assert held(root) == OLD | NOTES
    for text in ("[]", "{", '{"files": 3}', '{"files": {"book.pdf": 3}}', "[" * 100_000):
        (root / HELD / "whole").write_text(text, "utf-8")
        settle(root)
        assert held(root) == OLD | NOTES
