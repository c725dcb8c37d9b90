"""A build with nothing to do does nothing; whatever can change a byte makes it build again."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from collections.abc import Callable
from importlib.resources import as_file, files
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

import stemline.outside.cache as cache
import stemline.outside.program as program
import stemline.outside.stamp as stamp
from stemline.commands import main
from stemline.outside.folder import HELD, standing
from stemline.outside.manifest import digest_of

NOTHING = ", nothing changed"
HEAVY = ("numpy", "lark", "jinja2", "fontTools", "weasyprint", "stemline.session", "stemline.theme")


@pytest.fixture(scope="module")
def built(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder with a playbook that has a theme of its own, its book, and the cache of both."""
    home = tmp_path_factory.mktemp("stamped")
    with as_file(files("stemline.grammar").joinpath("starter/high-school")) as place:
        shutil.copytree(place, home / "mine", ignore=shutil.ignore_patterns("build"))
    own = home / "mine" / "club"
    own.mkdir()
    (own / "theme.toml").write_text('title = "Club"\n', "utf-8")
    (own / "book.css").write_text("", "utf-8")
    book = home / "mine" / "book.play"
    text = book.read_text("utf-8")
    book.write_text(text.replace("    season 2026\n", "    season 2026\n    theme club\n"), "utf-8")
    with pytest.MonkeyPatch.context() as patch:
        _cached(patch, home)
        first, second = _build(home), _build(home)
    assert first.exit_code == 0, first.output
    assert NOTHING not in first.output
    assert second.output == first.output.rstrip("\n") + NOTHING + "\n"
    return home


def _cached(patch: pytest.MonkeyPatch, home: Path) -> None:
    patch.delenv("STEMLINE_NO_CACHE", raising=False)
    patch.setattr(cache, "place", lambda shelf="answers": home / "cache" / shelf)
    patch.setattr("stemline.commands.stamping.place", cache.place)


def _build(home: Path, *more: str) -> Result:
    return CliRunner().invoke(main, ["build", str(home / "mine"), *more])


class Stopped(Exception):
    """A build that goes to work."""


@pytest.fixture
def home(built: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """As it was built; a build that goes to work stops before it does any."""
    _cached(monkeypatch, built)

    def stop(*_: object) -> None:
        raise Stopped

    monkeypatch.setattr("stemline.commands.opening.opened", stop)
    return built


def works(home: Path, *more: str) -> bool:
    done = _build(home, *more)
    if isinstance(done.exception, Stopped):
        return True
    assert done.exit_code == 0 and NOTHING in done.output, done.output
    return False


def _edited_in_place(file: Path) -> Callable[[], None]:
    """Another letter, at the same size and time; gives what takes it back."""
    held, raw = file.stat(), file.read_bytes()
    at = len(raw) // 2
    file.write_bytes(raw[:at] + bytes([raw[at] ^ 1]) + raw[at + 1 :])
    os.utime(file, ns=(held.st_atime_ns, held.st_mtime_ns))
    assert (file.stat().st_size, file.stat().st_mtime_ns) == (held.st_size, held.st_mtime_ns)
    return lambda: (file.write_bytes(raw), None)[1]


@pytest.mark.parametrize(
    "name",
    ["mine/quick.play", "mine/book.play", "mine/club/theme.toml", "mine/build/book.pdf",
     "mine/build/pictures/index.txt", f"mine/build/{HELD}/stands"],
)  # fmt: skip
def test_a_letter_changed_at_the_same_size_and_time_is_seen(home: Path, name: str) -> None:
    file = home / name
    if file.name == "theme.toml":
        file.write_text('title = "Club"\n', "utf-8")
    back = _edited_in_place(file)
    assert works(home)
    back()
    assert not works(home)


def test_every_file_of_the_output_counts(home: Path) -> None:
    build = home / "mine" / "build"
    for file in sorted(f for f in build.rglob("*") if f.is_file() and f.name != "lock"):
        raw = file.read_bytes()
        file.unlink()
        assert works(home), file
        file.write_bytes(raw)
    assert not works(home)


def test_another_book_that_came_with_its_own_list_is_not_this_one(home: Path) -> None:
    build = home / "mine" / "build"
    file, listed = build / "book.pdf", build / HELD / "stands"
    raw, names = file.read_bytes(), listed.read_bytes()
    file.write_bytes(b"another")
    listed.write_bytes(names.replace(digest_of(raw).encode(), digest_of(b"another").encode()))
    assert standing(build) is not None
    assert works(home)
    file.write_bytes(raw)
    listed.write_bytes(names)
    assert not works(home)


def test_a_link_to_the_same_words_is_no_output(home: Path, tmp_path: Path) -> None:
    file = home / "mine" / "build" / "book.pdf"
    file.rename(tmp_path / "book.pdf")
    file.symlink_to(tmp_path / "book.pdf")
    assert works(home)
    file.unlink()
    shutil.copy(tmp_path / "book.pdf", file)
    assert not works(home)


def test_a_build_that_waits_for_its_place_is_finished_first(home: Path) -> None:
    waiting = home / "mine" / "build" / HELD / "whole"
    waiting.write_text("{}", "utf-8")
    assert works(home)
    waiting.unlink()
    assert not works(home)


@pytest.mark.parametrize(
    "name",
    ["mine/new.play", "mine/new.PLAY", "mine/club/cover.svg", "mine/club/fonts/a.ttf",
     "club/theme.toml", "mine/plain/theme.toml"],
)  # fmt: skip
def test_a_file_that_comes_is_seen(home: Path, name: str) -> None:
    """Texts, what looks like one, and files where the theme, or one that it rests on, is sought."""
    file = home / name
    fresh = [each for each in (file.parent, *file.parent.parents) if not each.exists()]
    file.parent.mkdir(parents=True, exist_ok=True)
    file.write_text("", "utf-8")
    assert works(home)
    file.unlink()
    for each in fresh:
        each.rmdir()
    assert not works(home)


@pytest.mark.parametrize(
    "more", [("--paper", "a4"), ("--theme", "dark"), ("--only", "Stick"), ("--out", "elsewhere")]
)
def test_another_option_is_another_build(home: Path, more: tuple[str, ...]) -> None:
    assert works(home, *more)
    assert not works(home)


def test_the_same_folder_by_another_name_is_built_again(home: Path) -> None:
    """Messages name it as it was given."""
    other = home / "other"
    other.symlink_to(home / "mine")
    done = CliRunner().invoke(main, ["build", str(other)])
    other.unlink()
    assert isinstance(done.exception, Stopped)


@pytest.mark.parametrize(
    ("room", "what", "told"),
    [
        (stamp, "now_there", lambda: "another program"),
        (stamp, "bundled", lambda: "another grammar"),
        (stamp, "surroundings", lambda: "another font"),
        (stamp, "about", lambda path: [1, 2, 3, 4]),
        (program, "libraries", lambda: "weasyprint-1.0.dist-info"),
    ],
    ids=lambda each: each if isinstance(each, str) else "",
)
def test_another_program_or_library_builds_again(
    home: Path, monkeypatch: pytest.MonkeyPatch, room: object, what: str, told: object
) -> None:
    with monkeypatch.context() as patch:
        patch.setattr(room, what, told)
        assert works(home)
    assert not works(home)


@pytest.mark.parametrize("what", ["now_there", "bundled", "surroundings"])
def test_what_cannot_be_told_is_never_the_same(
    home: Path, monkeypatch: pytest.MonkeyPatch, what: str
) -> None:
    monkeypatch.setattr(stamp, what, lambda: "")
    assert works(home)


def test_the_revision_that_is_printed_counts(home: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    import stemline.commands.stamping as stamping

    for printed in (("abc1234", "2026-05-01"), ("", "2026-05-01")):
        with monkeypatch.context() as patch:
            patch.setattr(stamping, "revision", lambda folder, printed=printed: printed)
            assert works(home)
    assert not works(home)


def test_a_stamp_that_another_has_signed_is_none(home: Path) -> None:
    key = home / "cache" / "stamps" / "key"
    raw = key.read_bytes()
    key.write_bytes(bytes(reversed(raw)))
    assert works(home)
    key.write_bytes(raw)
    assert not works(home)


def test_nothing_is_kept_or_used_where_that_is_asked(home: Path) -> None:
    assert works(home, "--no-cache")
    assert not works(home)


def test_a_text_that_is_edited_while_its_book_is_made_is_built_again(
    built: Path, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    """What was made is of the old text: it is not taken for a book of the new one."""
    import stemline.results as output

    home = tmp_path / "home"
    shutil.copytree(built / "mine", home / "mine", ignore=shutil.ignore_patterns("build"))
    _cached(monkeypatch, home)
    text = home / "mine" / "quick.play"
    old = text.read_text("utf-8")

    def edited(*args: object) -> dict[str, bytes]:
        text.write_text(old + "\n// Later.\n", "utf-8")
        return {"book.pdf": b"book"}

    monkeypatch.setattr(output, "made_book", edited)
    assert _build(home).exit_code == 0
    assert NOTHING not in _build(home).output
    text.write_text(old, "utf-8")
    assert NOTHING not in _build(home).output


@pytest.fixture
def quick(built: Path, monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> Path:
    """A playbook whose book takes no time to make."""
    shutil.copytree(built / "mine", tmp_path / "mine", ignore=shutil.ignore_patterns("build"))
    _cached(monkeypatch, tmp_path)
    monkeypatch.setattr("stemline.results.made_book", lambda *_: {"book.pdf": b"book"})
    return tmp_path


@pytest.mark.parametrize("what", ["now_there", "bundled", "surroundings"])
def test_a_program_that_changes_while_a_book_is_made_made_none(
    quick: Path, monkeypatch: pytest.MonkeyPatch, what: str
) -> None:
    now = ["old"]
    monkeypatch.setattr(stamp, what, lambda: now[-1])

    def changed(*_: object) -> dict[str, bytes]:
        now.append("new")
        return {"book.pdf": b"book"}

    monkeypatch.setattr("stemline.results.made_book", changed)
    assert _build(quick).exit_code == 0
    assert NOTHING not in _build(quick).output
    assert NOTHING in _build(quick).output


@pytest.mark.parametrize("what", ["now_there", "bundled", "surroundings"])
def test_what_cannot_be_told_is_not_kept(
    quick: Path, monkeypatch: pytest.MonkeyPatch, what: str
) -> None:
    monkeypatch.setattr(stamp, what, lambda: "")
    assert NOTHING not in _build(quick).output
    assert NOTHING not in _build(quick).output


def test_a_commit_is_seen(quick: Path) -> None:
    assert NOTHING not in _build(quick).output
    assert NOTHING in _build(quick).output
    for words in (
        ["init", "-q"], ["add", "."],
        ["-c", "user.name=C", "-c", "user.email=c@example.org", "commit", "-qm", "Texts"],
    ):  # fmt: skip
        subprocess.run(["git", *words], cwd=quick / "mine", check=True)
    assert NOTHING not in _build(quick).output
    assert NOTHING in _build(quick).output


def test_what_is_built_again_is_what_is_built_anew(
    built: Path, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    _cached(monkeypatch, tmp_path)
    for name in ("mine", "new"):
        shutil.copytree(built / "mine", tmp_path / name, ignore=shutil.ignore_patterns("build"))
        (tmp_path / name / "quick.play").write_text(
            (built / "mine" / "quick.play").read_text("utf-8").replace("fade", "corner"), "utf-8"
        )
    shutil.copytree(built / "mine" / "build", tmp_path / "mine" / "build")
    assert NOTHING not in _build(tmp_path).output
    CliRunner().invoke(main, ["build", str(tmp_path / "new"), "--no-cache"])
    pdfs = [(tmp_path / name / "build" / "book.pdf").read_bytes() for name in ("mine", "new")]
    assert pdfs[0] == pdfs[1]


def test_a_build_with_nothing_to_do_loads_nothing_heavy(tmp_path: Path) -> None:
    """Neither the parser nor the numbers nor the page setter: of ours not even the session. Of one
    concept, since the first build sets all that is asked for."""
    with as_file(files("stemline.grammar").joinpath("starter/six-man")) as place:
        shutil.copytree(place, tmp_path / "mine", ignore=shutil.ignore_patterns("build"))
    words = {k: v for k, v in os.environ.items() if k != "STEMLINE_NO_CACHE"}
    words |= {name: str(tmp_path / "cache") for name in ("XDG_CACHE_HOME", "HOME")}
    program = (
        "import sys\n"
        f"sys.argv = ['stemline', 'build', {str(tmp_path / 'mine')!r}, '--only', 'Sweep']\n"
        "from stemline.__main__ import main\n"
        "try:\n    main()\n"
        "except SystemExit as end:\n    assert not end.code, end.code\n"
        f"print('LOADED', *[m for m in {HEAVY!r} if m in sys.modules])\n"
    )
    said = [
        subprocess.run(
            [sys.executable, "-c", program], capture_output=True, text=True, check=True, env=words
        ).stdout
        for _ in range(2)
    ]
    assert NOTHING not in said[0] and "LOADED numpy lark" in said[0]
    assert NOTHING in said[1] and said[1].splitlines()[-1] == "LOADED"
