"""What is kept between commands: this user's own rows or none, bounded, whole after a kill."""

from __future__ import annotations

import os
import random
import signal
import sqlite3
import time
from collections.abc import Iterable
from pathlib import Path

import pytest

import stemline.outside.store as stored
from stemline.outside.store import Store

ROWS = {"a": b"one" * 100, "b": b"", "c": bytes(range(256))}


def kept(place: Path, rows: dict[str, bytes] = ROWS) -> None:
    with Store(place) as store:
        for key, data in rows.items():
            store.put(key, data)


def known(place: Path, keys: Iterable[str] = "abc") -> dict[str, bytes]:
    with Store(place) as store:
        return {key: data for key in keys if (data := store.get(key)) is not None}


def base(place: Path) -> sqlite3.Connection:
    return sqlite3.connect(place / "results.db", isolation_level=None)


def test_what_is_put_is_there_at_once_and_for_the_next(tmp_path: Path) -> None:
    with Store(tmp_path / "place") as store:
        store.put("a", ROWS["a"])
        assert store.get("a") == ROWS["a"]
    kept(tmp_path / "place", {"b": ROWS["b"], "c": ROWS["c"]})
    assert known(tmp_path / "place") == ROWS


def test_without_a_place_nothing_is_kept(tmp_path: Path) -> None:
    with Store(None) as store:
        store.put("a", b"one")
        assert store.get("a") is None


def test_who_adds_nothing_takes_what_is_there_and_makes_no_file(tmp_path: Path) -> None:
    place = tmp_path / "place"
    with Store(place, adding=False) as store:
        store.put("a", b"one")
        assert store.get("a") is None
    assert not place.exists()
    kept(place, {"a": ROWS["a"]})
    with Store(place, adding=False) as store:
        store.put("c", ROWS["c"])
        assert store.get("a") == ROWS["a"]
    assert known(place) == {"a": ROWS["a"]}


def test_a_row_that_is_not_as_written_is_none(tmp_path: Path) -> None:
    """Any of its bytes, its seal, or the bytes of another key under this one."""
    kept(tmp_path)
    ((held, seal),) = base(tmp_path).execute("SELECT data, seal FROM result WHERE key = 'a'")
    for n in range(len(held)):
        changed = held[:n] + bytes([held[n] ^ 1]) + held[n + 1 :]
        base(tmp_path).execute("UPDATE result SET data = ? WHERE key = 'a'", (changed,))
        assert "a" not in known(tmp_path)
    wrong = bytes([seal[0] ^ 1]) + seal[1:]
    base(tmp_path).execute("UPDATE result SET data = ?, seal = ?", (held, wrong))
    assert known(tmp_path) == {}
    base(tmp_path).execute("UPDATE result SET data = ?, seal = ?", (held, seal))
    assert known(tmp_path) == {"a": ROWS["a"]}
    base(tmp_path).execute("UPDATE result SET data = 'text', seal = 7")
    assert known(tmp_path) == {}


def test_rows_of_another_user_are_none(tmp_path: Path) -> None:
    kept(tmp_path / "mine")
    kept(tmp_path / "his")
    (tmp_path / "mine" / "results.db").write_bytes((tmp_path / "his" / "results.db").read_bytes())
    assert known(tmp_path / "mine") == {}


def test_a_broken_file_costs_what_it_held_and_nothing_else(tmp_path: Path) -> None:
    """Cut off, overwritten, of another shape: the second command after it keeps again."""
    kept(tmp_path)
    file, dice = tmp_path / "results.db", random.Random(1)
    good = file.read_bytes()
    broken = [b"", b"\0" * 5000, b"SQLite format 3\0" + dice.randbytes(9000), b"words" * 3000]
    broken += [good[: dice.randrange(1, len(good))] for _ in range(8)]
    for _ in range(12):
        at = dice.randrange(len(good))
        broken.append(good[:at] + dice.randbytes(400) + good[at + 400 :])
    for data in broken:
        file.write_bytes(data)
        assert known(tmp_path).items() <= ROWS.items()
        kept(tmp_path)
        kept(tmp_path)
        assert known(tmp_path) == ROWS
    file.unlink()
    base(tmp_path).execute("CREATE TABLE result (key TEXT, other TEXT)")
    file.chmod(0o600)
    kept(tmp_path)
    kept(tmp_path)
    assert known(tmp_path) == ROWS


def test_what_stands_in_its_place_is_left_alone(tmp_path: Path) -> None:
    (tmp_path / "taken").write_text("a file", "utf-8")
    kept(tmp_path / "taken")
    assert known(tmp_path / "taken") == {}
    kept(tmp_path / "mine", {})
    file = tmp_path / "mine" / "results.db"
    file.unlink()
    file.symlink_to(tmp_path / "taken")
    kept(tmp_path / "mine")
    assert (tmp_path / "taken").read_text("utf-8") == "a file"
    file.unlink()
    file.mkdir()
    kept(tmp_path / "mine")
    assert known(tmp_path / "mine") == {}


@pytest.mark.skipif(not hasattr(os, "getuid"), reason="permissions of another kind")
def test_what_others_can_reach_is_not_believed(tmp_path: Path) -> None:
    kept(tmp_path / "mine")
    file = tmp_path / "mine" / "results.db"
    assert file.stat().st_mode & 0o777 == 0o600
    for each, mode in ((file, 0o666), (tmp_path / "mine", 0o770), (tmp_path / "mine/key", 0o644)):
        before = each.stat().st_mode
        each.chmod(mode)
        assert known(tmp_path / "mine") == {}
        each.chmod(before)


def test_the_rows_used_longest_ago_go_first(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    dice = random.Random(1)
    day = 0
    monkeypatch.setattr(stored, "_today", lambda: day)
    for day in range(60):
        with Store(tmp_path, most=100_000) as store:
            store.put(str(day), dice.randbytes(4_000))
            if day:
                assert store.get("0") is not None, day
    there = known(tmp_path, [str(n) for n in range(60)])
    assert set(there) >= {"0", "59", "58", "57"} and "1" not in there
    assert 15 < len(there) < 27
    assert (tmp_path / "results.db").stat().st_size < 250_000


def test_a_large_row_is_written_at_once(tmp_path: Path) -> None:
    with Store(tmp_path) as store:
        store.put("small", b"held back")
        assert known(tmp_path, ["small"]) == {}
        store.put("large", bytes(stored._LARGE))
        assert set(known(tmp_path, ["small", "large"])) == {"small", "large"}


def test_two_commands_at_once(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    with Store(tmp_path) as one, Store(tmp_path) as other:
        one.put("a", ROWS["a"])
        other.put("b", ROWS["b"])
        one.flush()
        assert other.get("a") == ROWS["a"]
    assert known(tmp_path) == {"a": ROWS["a"], "b": ROWS["b"]}
    monkeypatch.setattr(stored, "_PATIENCE", 0.05)
    writing = base(tmp_path)
    writing.execute("BEGIN EXCLUSIVE")
    kept(tmp_path)
    assert known(tmp_path) == {}
    writing.execute("ROLLBACK")
    assert known(tmp_path) == {"a": ROWS["a"], "b": ROWS["b"]}


@pytest.mark.skipif(not hasattr(os, "fork"), reason="needs a twin of the process")
def test_a_command_killed_at_any_moment_leaves_a_store(tmp_path: Path) -> None:
    dice = random.Random(1)
    kept(tmp_path)
    for _ in range(50):
        child = os.fork()
        if child == 0:
            while True:
                with Store(tmp_path) as store:
                    for n in range(20):
                        store.put(f"row {n}", bytes([n]) * dice.randrange(20_000))
        time.sleep(dice.random() * 0.06)
        os.kill(child, signal.SIGKILL)
        os.waitpid(child, 0)
        assert known(tmp_path) == ROWS
        there = known(tmp_path, [f"row {n}" for n in range(20)])
        assert all(set(data) <= {int(key[4:])} for key, data in there.items())
    assert there, "no command came as far as to write"
