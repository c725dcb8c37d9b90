"""What a check keeps on disk: whole or not at all, bounded, and never in a check's way."""

from __future__ import annotations

import hashlib
import hmac
import json
import os
from pathlib import Path

import pytest

from stemline.outside import cache as stored
from stemline.outside.cache import MOST_FILES, MOST_ROWS, Cache, Row, place
from stemline.outside.program import digest_of

ROWS: dict[str, Row] = {
    "a": (True, False, 1.73),
    "b": (False, False, None),
    "c": None,
    "d": (False, True, 2.1799999999999997),
}


def kept(folder: Path, rows: dict[str, Row], name: str = "book") -> Cache:
    cache = Cache(folder / name, folder / "cache")
    cache.keep(rows, {})
    return cache


def only_file(folder: Path) -> Path:
    (file,) = (each for each in (folder / "cache").iterdir() if each.name != "key")
    return file


def test_what_is_kept_is_read_again_to_the_last_digit(tmp_path: Path) -> None:
    kept(tmp_path, ROWS)
    assert Cache(tmp_path / "book", tmp_path / "cache").rows() == ROWS


def test_each_playbook_has_its_own(tmp_path: Path) -> None:
    kept(tmp_path, ROWS)
    assert Cache(tmp_path / "other", tmp_path / "cache").rows() == {}


def test_without_a_place_nothing_is_kept(tmp_path: Path) -> None:
    cache = Cache(tmp_path / "book", None)
    cache.keep(ROWS, {})
    assert cache.rows() == {} and list(tmp_path.iterdir()) == []


def test_any_byte_that_is_not_as_written_makes_the_whole_file_worth_nothing(tmp_path: Path) -> None:
    cache = kept(tmp_path, ROWS)
    file = only_file(tmp_path)
    good = file.read_bytes()
    for n in range(len(good)):
        file.write_bytes(good[:n] + bytes([good[n] ^ 1]) + good[n + 1 :])
        assert cache.rows() == {}, f"byte {n} of {good!r}"
        file.write_bytes(good[:n])
        assert cache.rows() == {}, f"cut off at {n}"
    file.write_bytes(good)
    assert cache.rows() == ROWS


@pytest.mark.parametrize(
    "rows",
    [
        [1, 2],
        {"a": [True, False]},
        {"a": [True, 1, None]},
        {"a": "yes"},
        {"a": [True, False, "soon"]},
        7,
        None,
    ],
)
def test_rows_of_another_shape_are_nothing_even_where_the_sum_is_right(
    tmp_path: Path, rows: object
) -> None:
    cache = kept(tmp_path, ROWS)
    text = json.dumps(rows)
    key = (tmp_path / "cache" / "key").read_bytes()
    signed = hmac.new(key, text.encode(), hashlib.sha256).hexdigest()
    only_file(tmp_path).write_text(f"{signed}\n{text}", "utf-8")
    assert cache.rows() == {}


def test_a_folder_in_the_place_of_the_file_or_a_file_in_that_of_the_folder(tmp_path: Path) -> None:
    cache = kept(tmp_path, ROWS)
    file = only_file(tmp_path)
    file.unlink()
    file.mkdir()
    assert cache.rows() == {}
    cache.keep(ROWS, {})
    blocked = Cache(tmp_path / "book", tmp_path / "taken")
    (tmp_path / "taken").write_text("a file", "utf-8")
    assert blocked.rows() == {}
    blocked.keep(ROWS, {})
    assert (tmp_path / "taken").read_text("utf-8") == "a file"


def test_a_write_that_breaks_off_leaves_the_old_file_and_nothing_beside_it(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    cache = kept(tmp_path, ROWS)

    def full(self: Path, target: Path) -> Path:
        raise OSError("no space left on device")

    monkeypatch.setattr(Path, "replace", full)
    cache.keep({"new": None}, {})
    assert cache.rows() == ROWS
    assert only_file(tmp_path).suffix == ".json"


def test_nothing_new_is_not_written_again(tmp_path: Path) -> None:
    cache = kept(tmp_path, ROWS)
    file = only_file(tmp_path)
    os.utime(file, (1, 1))
    cache.keep({"a": ROWS["a"]}, ROWS)
    assert file.stat().st_mtime == 1
    cache.keep({"e": None}, ROWS)
    assert file.stat().st_mtime > 1
    assert cache.rows() == {**ROWS, "e": None}


def test_rows_in_use_push_out_the_oldest(tmp_path: Path) -> None:
    cache = Cache(tmp_path / "book", tmp_path / "cache")
    old: dict[str, Row] = {f"old {n}": None for n in range(MOST_ROWS)}
    new: dict[str, Row] = {f"new {n}": None for n in range(10)}
    cache.keep(new, old)
    rows = cache.rows()
    assert len(rows) == MOST_ROWS and new.keys() <= rows.keys()
    assert f"old {MOST_ROWS - 11}" in rows and f"old {MOST_ROWS - 10}" not in rows


def test_a_season_larger_than_the_bound_is_kept_whole(tmp_path: Path) -> None:
    cache = Cache(tmp_path / "book", tmp_path / "cache")
    large: dict[str, Row] = {f"{n}": None for n in range(MOST_ROWS + 5)}
    cache.keep(large, ROWS)
    assert cache.rows() == large


def test_the_playbooks_checked_last_are_kept(tmp_path: Path) -> None:
    for n in range(MOST_FILES + 3):
        kept(tmp_path, ROWS, f"book {n}")
        for file in (tmp_path / "cache").iterdir():
            os.utime(file, (file.stat().st_mtime - 10,) * 2)  # everything is ten seconds older now
    books = [Cache(tmp_path / f"book {n}", tmp_path / "cache") for n in range(MOST_FILES + 3)]
    assert [bool(book.rows()) for book in books] == [False] * 3 + [True] * MOST_FILES


def test_the_program_is_another_after_any_change_of_its_source(tmp_path: Path) -> None:
    module, other = tmp_path / "a.py", tmp_path / "sub" / "b.py"
    other.parent.mkdir()
    module.write_text("x = 1\n", "utf-8")
    other.write_text("", "utf-8")
    later = module.stat().st_mtime + 10
    seen = {digest_of(tmp_path, later)}
    for file, text in ((module, "x = 2\n"), (other, "\n"), (tmp_path / "c.py", "")):
        file.write_text(text, "utf-8")
        seen.add(digest_of(tmp_path, later))
    other.rename(tmp_path / "b.py")
    seen.add(digest_of(tmp_path, later))
    assert len(seen) == 5 and "" not in seen


def test_a_source_written_since_the_program_began_is_not_what_runs(tmp_path: Path) -> None:
    (tmp_path / "a.py").write_text("", "utf-8")
    written = (tmp_path / "a.py").stat().st_mtime
    assert digest_of(tmp_path, written + 1) != ""
    assert digest_of(tmp_path, written - 1) == ""


def test_without_source_there_is_no_digest(tmp_path: Path) -> None:
    assert digest_of(tmp_path, 1e12) == ""


def test_the_place_is_the_users_own_for_caches(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(
        stored.platformdirs,
        "user_cache_path",
        lambda name, appauthor: tmp_path / name,
    )
    assert place() == tmp_path / "stemline" / "answers"


# Somebody else's answers.


def forged(rows: object, key: bytes | None = None) -> str:
    """A file as it would be written by one who has the program but not the key."""
    text = json.dumps(rows)
    plain = hashlib.sha256(text.encode()).hexdigest()
    made = hmac.new(key, text.encode(), hashlib.sha256).hexdigest() if key else plain
    return f"{made}\n{text}"


@pytest.mark.parametrize("key", [None, b"", b"0" * 32])
def test_a_forged_file_is_worth_nothing(tmp_path: Path, key: bytes | None) -> None:
    cache = kept(tmp_path, ROWS)
    only_file(tmp_path).write_text(forged({"a": [False, True, 9.9]}, key), "utf-8")
    assert cache.rows() == {}
    cache.keep(ROWS, {})
    assert cache.rows() == ROWS


def test_a_file_that_another_user_signed_is_worth_nothing(tmp_path: Path) -> None:
    kept(tmp_path / "his", ROWS)
    cache = Cache(tmp_path / "book", tmp_path / "his" / "cache")
    mine = kept(tmp_path, {"a": None})
    only_file(tmp_path).write_bytes(only_file(tmp_path / "his").read_bytes())
    assert mine.rows() == {}
    assert cache.rows() == {}  # and a book's file is its own: another book has another name


posix = pytest.mark.skipif(not hasattr(os, "getuid"), reason="permissions of another kind")


@posix
def test_the_folder_and_all_in_it_are_the_users_alone(tmp_path: Path) -> None:
    kept(tmp_path, ROWS)
    folder = tmp_path / "cache"
    assert folder.stat().st_mode & 0o777 == 0o700
    assert {file.stat().st_mode & 0o777 for file in folder.iterdir()} == {0o600}


@posix
@pytest.mark.parametrize(("what", "mode"), [("", 0o777), ("", 0o750), ("key", 0o644)])
def test_what_others_can_reach_is_not_believed_and_made_private_again(
    tmp_path: Path, what: str, mode: int
) -> None:
    cache = kept(tmp_path, ROWS)
    before = (tmp_path / "cache" / "key").read_bytes()
    (tmp_path / "cache" / what).chmod(mode)
    assert cache.rows() == {}
    cache.keep(ROWS, {})
    assert (tmp_path / "cache" / "key").read_bytes() != before, "the old key may be known"
    assert cache.rows() == ROWS


@posix
def test_a_folder_that_is_a_link_is_not_used(tmp_path: Path) -> None:
    (tmp_path / "elsewhere").mkdir()
    (tmp_path / "cache").symlink_to(tmp_path / "elsewhere")
    cache = kept(tmp_path, ROWS)
    assert cache.rows() == {} and list((tmp_path / "elsewhere").iterdir()) == []


@posix
def test_a_pipe_in_the_files_place_is_not_waited_for(tmp_path: Path) -> None:
    cache = kept(tmp_path, ROWS)
    file = only_file(tmp_path)
    for each in (file, tmp_path / "cache" / "key"):
        each.unlink()
        os.mkfifo(each, 0o600)
        assert cache.rows() == {}


def test_a_store_that_is_too_large_or_too_deep_costs_nothing_else(tmp_path: Path) -> None:
    cache = kept(tmp_path, ROWS)
    key = (tmp_path / "cache" / "key").read_bytes()
    deep = "[" * 100_000
    for text in (deep, " " * stored.LARGEST_FILE):
        signed = hmac.new(key, text.encode(), hashlib.sha256).hexdigest()
        only_file(tmp_path).write_text(f"{signed}\n{text}", "utf-8")
        assert cache.rows() == {}
