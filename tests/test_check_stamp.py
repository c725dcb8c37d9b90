"""A check with nothing changed says what it said; whatever can change a word makes it check again.

What of the program, its libraries and a theme's folders counts, `test_stamp.py` holds for both.
"""

from __future__ import annotations

import shutil
from importlib.resources import as_file, files
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

import stemline.outside.cache as cache
import stemline.outside.stamp as stamp
from stemline.commands import main
from stemline.outside.folder import HELD
from stemline.outside.store import Store


@pytest.fixture(scope="module")
def checked(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, Result]:
    """A playbook with a theme of its own, and what its check said."""
    home = tmp_path_factory.mktemp("checked")
    with as_file(files("stemline.grammar").joinpath("starter/six-man")) as place:
        shutil.copytree(place, home / "mine", ignore=shutil.ignore_patterns("build"))
    book = home / "mine" / "book.play"
    text = book.read_text("utf-8")
    book.write_text(text.replace("    season 2026\n", "    season 2026\n    theme club\n"), "utf-8")
    (home / "mine" / "club").mkdir()
    (home / "mine" / "club" / "theme.toml").write_text('title = "Club"\n', "utf-8")
    with pytest.MonkeyPatch.context() as patch:
        _cached(patch, home)
        return home, _check(home)


def _cached(patch: pytest.MonkeyPatch, home: Path) -> None:
    patch.delenv("STEMLINE_NO_CACHE", raising=False)
    patch.setattr(cache, "place", lambda shelf="answers": home / "cache" / shelf)
    for room in ("stamping", "opening"):
        patch.setattr(f"stemline.commands.{room}.place", cache.place)


def _check(home: Path, *more: str) -> Result:
    return CliRunner().invoke(main, ["check", str(home / "mine"), *more])


class Stopped(Exception):
    """A check that goes to work."""


@pytest.fixture
def home(checked: tuple[Path, Result], monkeypatch: pytest.MonkeyPatch) -> Path:
    """As it was checked; a check that goes to work stops before it does any."""
    _cached(monkeypatch, checked[0])

    def stop(*_: object) -> None:
        raise Stopped

    monkeypatch.setattr("stemline.commands.opening.opened", stop)
    return checked[0]


def works(home: Path, *more: str) -> bool:
    return isinstance(_check(home, *more).exception, Stopped)


def test_it_says_the_same_words_on_the_same_streams(
    home: Path, checked: tuple[Path, Result]
) -> None:
    first, again = checked[1], _check(home)
    assert first.stdout and first.exit_code == 0
    assert (again.stdout, again.stderr) == (first.stdout, first.stderr)
    assert again.exit_code == first.exit_code


@pytest.mark.parametrize(
    "name",
    ["mine/book.play", "mine/club/theme.toml", "mine/new.play", "mine/new.PLAY", "club/theme.toml",
     f"mine/build/{HELD}/whole", f"mine/build/only-a/{HELD}/coming"],
)  # fmt: skip
def test_a_file_that_changes_or_comes_is_seen(home: Path, name: str) -> None:
    file = home / name
    fresh = [each for each in (file.parent, *file.parent.parents) if not each.exists()]
    was = file.read_bytes() if file.exists() else None
    file.parent.mkdir(parents=True, exist_ok=True)
    file.write_bytes((was or b"") + b"\n")
    assert works(home)
    if was is not None:
        file.write_bytes(was)
    else:
        file.unlink()
    for each in fresh:
        each.rmdir()
    assert not works(home)


@pytest.mark.parametrize(
    "more", [("--timing",), ("--pictures",), ("--only", "Stick"), ("--no-cache",)]
)
def test_another_option_is_another_check(home: Path, more: tuple[str, ...]) -> None:
    assert works(home, *more)
    assert not works(home)


@pytest.mark.parametrize("what", ["now_there", "bundled", "surroundings"])
@pytest.mark.parametrize("told", ["", "another"])
def test_another_program_checks_again(
    home: Path, monkeypatch: pytest.MonkeyPatch, what: str, told: str
) -> None:
    monkeypatch.setattr(stamp, what, lambda: told)
    assert works(home)


def test_errors_are_told_again_and_fail_again(
    checked: tuple[Path, Result], monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    _cached(monkeypatch, tmp_path)
    shutil.copytree(checked[0] / "mine", tmp_path / "mine")
    (tmp_path / "mine" / "new.play").write_text("formation Odd\n    X at nowhere\n", "utf-8")
    said = [_check(tmp_path)]
    monkeypatch.setattr("stemline.commands.opening.opened", None)
    said.append(_check(tmp_path))
    assert said[0].exit_code == said[1].exit_code == 1 and "error" in said[0].stderr
    assert (said[1].stdout, said[1].stderr) == (said[0].stdout, said[0].stderr)


def test_a_text_that_is_edited_while_it_is_opened_is_checked_again(
    checked: tuple[Path, Result], monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    """The stamp is of one text, what was said of the other: it is kept for neither."""
    import stemline.commands.opening as opening

    _cached(monkeypatch, tmp_path)
    shutil.copytree(checked[0] / "mine", tmp_path / "mine")
    book, opened = tmp_path / "mine" / "book.play", opening.opened
    old = book.read_text("utf-8")

    def edited(folder: Path, store: Store) -> object:
        book.write_text(old + "\n// Later.\n", "utf-8")
        return opened(folder, store)

    monkeypatch.setattr(opening, "opened", edited)
    assert _check(tmp_path).exit_code == 0
    monkeypatch.setattr(opening, "opened", None)
    for text in (book.read_text("utf-8"), old):
        book.write_text(text, "utf-8")
        assert isinstance(_check(tmp_path).exception, TypeError)
