"""`compare` and `history` as a coach runs them, on a small real repository."""

from __future__ import annotations

import json
import os
from importlib.resources import files
from pathlib import Path
from shutil import copytree

import pytest
from click.testing import CliRunner, Result
from compare.two_seasons import ADA, git
from jsonschema import Draft202012Validator

from stemline.commands import main
from stemline.commands.print_lines import print_lines
from stemline.compare.aloud import ToldLine
from stemline.outside.project import CHANGED, revision
from stemline.outside.texts import read_files

ROOT = Path(__file__).parents[2]
SCHEMA = json.loads(files("stemline").joinpath("compare/compare-schema.json").read_text("utf-8"))


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """The starter over three revisions: as it comes, a route deeper, a formation renamed."""
    book = tmp_path / "book"
    book.mkdir()
    git(book, "init", "-q", "-b", "main")
    for source in read_files(ROOT / "grammar/starter/high-school").sources:
        (book / Path(source.name).name).write_text(source.text, "utf-8")
    git(book, "add", ".")
    git(book, "commit", "-qm", "Begin")
    quick = book / "quick.play"
    quick.write_text(quick.read_text("utf-8").replace("stick runs stick 6", "stick runs stick 8"))
    git(book, "commit", "-qam", "Deeper", day="2026-03-01")
    assert _run("rename", str(book), "Trips", "Trio", "--yes").exit_code == 0
    git(book, "commit", "-qam", "Trio", day="2026-06-01")
    return book


def _run(*said: str) -> Result:
    result = CliRunner().invoke(main, said)
    assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
    return result


def test_two_revisions_are_compared_without_touching_the_folder(folder: Path) -> None:
    said = _run("compare", "HEAD~2", "HEAD", "--in", str(folder))
    assert said.exit_code == 1
    assert "stick runs the stick at 8 instead of 6" in said.stdout
    assert "Formation Trips is now called Trio (100 % alike)" in said.stdout
    assert "calls we had" in said.stdout


@pytest.mark.parametrize("before", ("2026-03-15", "main~1"))
def test_a_side_may_be_a_day_or_a_name_of_git(folder: Path, before: str) -> None:
    said = _run("compare", before, str(folder))
    assert said.exit_code == 1
    assert "No play has changed" in said.stdout and "stick runs" not in said.stdout


def test_the_exit_code_is_a_diff_tools(folder: Path) -> None:
    same = _run("compare", "HEAD", str(folder))
    assert (same.exit_code, "Nothing has changed" in same.stdout) == (0, True)
    nowhere, early = (_run("compare", day, str(folder)) for day in ("nowhere", "1999-12-31"))
    assert (nowhere.exit_code, "no such revision" in nowhere.stderr) == (2, True)
    assert (early.exit_code, "no revision of that day or before" in early.stderr) == (2, True)


def test_plain_data_is_as_its_schema_says(folder: Path) -> None:
    Draft202012Validator.check_schema(SCHEMA)
    data = json.loads(_run("compare", "HEAD~2", str(folder), "--json").stdout)
    Draft202012Validator(SCHEMA).validate(data)
    assert data["calls"]["changed"] and data["definitions"]
    assert not Draft202012Validator(SCHEMA).is_valid({**data, "same": "no"})


def test_one_man_is_told_what_is_new_to_him(folder: Path) -> None:
    data = json.loads(_run("compare", "HEAD~2", str(folder), "--json").stdout)
    man = next(row["man"] for row in data["teaching"] if row["new"])
    said = _run("compare", "HEAD~2", str(folder), "--for", man).stdout
    assert f"{man}: what is new" in said and "Stick" in said


def test_numbers_are_of_what_is_asked_for(folder: Path) -> None:
    """``--stat``, ``--only`` and ``--for`` alone and together, each against the plain data."""
    sides = ("compare", "HEAD~2", str(folder))
    data = json.loads(_run(*sides, "--json").stdout)
    count = len(data["calls"]["changed"])
    man = next(row for row in data["teaching"] if row["new"])
    new, gone = (sum(j["concept"] == "Stick" for j in man[side]) for side in ("new", "gone"))
    asked = {
        ("--only", "Stick"): f"All {count} 0 0",
        ("--only", "Trips"): "Trips: as it was.",
        ("--for", man["man"]): f"All {len(man['new'])} {len(man['gone'])}",
        ("--for", man["man"], "--only", "Stick"): f"All {new} {gone}",
        ("--for", man["man"], "--only", "Slot Fade"): f"{man['man']}: nothing new in Slot Fade.",
    }
    for more, last in asked.items():
        said = _run(*sides, "--stat", *more).stdout.splitlines()
        assert " ".join(said[-1].split()) == last, more
    told = _run(*sides, "--for", man["man"], "--only", "Stick").stdout
    assert "what is new" in told and "Stick: " in told


@pytest.mark.skipif(not hasattr(os, "openpty"), reason="a system without terminals of its own")
@pytest.mark.parametrize(("lines", "terminal"), [(39, True), (60, True), (60, False)])
def test_a_long_answer_to_a_terminal_goes_through_the_pager(
    lines: int, terminal: bool, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    paged = tmp_path / "paged"
    monkeypatch.setenv("PAGER", f"tee {paged}")
    ours, theirs = os.openpty()
    with os.fdopen(theirs, "w") as out, os.fdopen(theirs, closefd=False) as back:
        if terminal:
            monkeypatch.setattr("sys.stdout", out)
            monkeypatch.setattr("sys.stdin", back)
        print_lines(ToldLine("", f"line {n}") for n in range(lines))
    os.close(ours)
    assert paged.exists() == (terminal and lines == 60)
    if paged.exists():
        assert paged.read_text("utf-8").split("\n")[:lines] == [f"line {n}" for n in range(lines)]


def test_a_history_is_told_by_revision(folder: Path) -> None:
    said = _run("history", str(folder), "Stick").stdout
    assert "2026-03-01" in said and "stick runs the stick at 8 instead of 6" in said
    trio = _run("history", str(folder), "Trio", "--who").stdout
    assert "it was called Trips" in trio and ADA in trio
    lines = _run("history", str(folder), "Stick", "--lines").stdout.splitlines()
    since = {line.split("  ")[-1]: line[:10] for line in lines}
    assert since["stick runs stick 8"] == "2026-03-01"
    assert since["feet quick, hitch"] == "2025-08-10"
    assert ADA not in "".join(lines)


def test_a_name_that_never_was_gets_the_nearest(folder: Path) -> None:
    said = _run("history", str(folder), "Stik")
    assert said.exit_code == 2 and "nearest: Stick" in said.stderr


@pytest.mark.parametrize(
    ("said", "told"),
    [
        (("compare", "begn", "HEAD", "--in"), ("OLD:1:1: error E605", "nearest: begin")),
        (("compare", "begin", "HEAD", "--only", "Stik", "--in"), ("--only", "nearest: Stick")),
        (("compare", "begin", "HEAD", "--for", "QQ", "--in"), ("--for", "QQ", "nearest: Q")),
        (("compare", "begin", "HEAD", "--for", "QQ", "--json", "--in"), ("--for", "nearest: Q")),
        (("compare", "begin", "HEAD", "--book", "a.doc", "--in"), ("E957", ".pdf")),
        (("history", "Stick", "-o", "a.doc"), ("E957", ".svg")),
        (("rename", "Trioo", "Trey"), ("nothing is called Trioo", "nearest: Trio")),
        (("rename", "Trio", "Trio 3!"), ("cannot be called Trio 3!", "error E", ".play:")),
        (("format", "nowhere.play"), ("E107", "nowhere.play")),
        (("merge", "a", "b", "c"), ("BASE", "does not exist")),
    ],
)  # fmt: skip
def test_a_cold_mistake_is_answered_with_place_and_reason(
    folder: Path, said: tuple[str, ...], told: tuple[str, ...]
) -> None:
    git(folder, "tag", "begin", "HEAD~2")
    whole = (*said, str(folder)) if said[0] == "compare" else said
    if said[0] in ("history", "rename"):
        whole = (said[0], str(folder), *said[1:])
    answer = _run(*whole)
    assert answer.exit_code in (1, 2) and not answer.stdout
    assert [word for word in told if word not in answer.stderr] == [], answer.stderr


def test_a_name_that_nothing_happened_to_is_said_to_be_as_it_was(folder: Path) -> None:
    assert "Slot Fade: as it was." in _run(
        "compare", "HEAD~2", str(folder), "--only", "slot fade"
    ).stdout.replace("slot fade:", "Slot Fade:")


def test_a_season_starts_from_the_last_one(folder: Path, tmp_path: Path) -> None:
    after = tmp_path / "next"
    assert _run("new", str(after), "--from", str(folder)).exit_code == 0
    assert "season 2027  // kept from 2026" in (after / "book.play").read_text("utf-8")
    assert (after / ".gitignore").read_text("utf-8") == "build/\n"
    said = _run("compare", str(folder), str(after))
    assert said.exit_code == 1 and "No play has changed" in said.stdout
    assert _run("new", str(after), "--from", str(folder)).exit_code == 2


def test_a_season_takes_the_theme_of_the_last_one_with_it(folder: Path, tmp_path: Path) -> None:
    last, after = tmp_path / "last", tmp_path / "next"
    copytree(folder, last)
    (last / "night").mkdir()
    (last / "night/theme.toml").write_text('extends = "dark"\n', "utf-8")
    assert _run("new", str(after), "--from", str(last)).exit_code == 0
    assert (after / "night/theme.toml").read_text("utf-8") == 'extends = "dark"\n'
    inside = _run("new", str(last / "next"), "--from", str(last))
    assert inside.exit_code == 2 and "choose a folder beside it" in inside.stderr
    assert not (last / "next").exists()


def test_a_games_week_stays_with_its_season(folder: Path, tmp_path: Path) -> None:
    """And so do the looks that only it has; a text that has more is kept whole."""
    last, after = tmp_path / "last", tmp_path / "next"
    copytree(folder, last)
    week = "week {} Larch Bay\n    date 2026-09-05\n"
    (last / "week-1.play").write_text(f"look Theirs\n\n{week.format(1)}", "utf-8")
    (last / "more.play").write_text(f"tag Slow for Stick\n\n{week.format(2)}", "utf-8")
    assert _run("new", str(after), "--from", str(last)).exit_code == 0
    kept = {path.name for path in after.glob("*.play")}
    assert kept == {path.name for path in last.glob("*.play")} - {"week-1.play"}


def test_the_book_says_that_the_text_has_changed_since(folder: Path) -> None:
    name, day = revision(folder)
    assert (len(name.split()), day) == (1, "2026-06-01")
    quick = folder / "quick.play"
    text = quick.read_text("utf-8")
    quick.write_text(text + "// More.\n", "utf-8")
    assert revision(folder) == (f"{name} {CHANGED}", day)
    quick.write_text(text, "utf-8")
    assert revision(folder) == (name, day)
    (folder / "more.play").write_text("// More.\n", "utf-8")
    assert revision(folder) == (f"{name} {CHANGED}", day)


def test_a_call_of_another_name_is_found_as_it_was(folder: Path) -> None:
    said = _run("draw", str(folder), "Trio Right Stick", "--before", "2025-09-01")
    assert said.exit_code == 0 and "It was called Trips Right Stick." in said.stdout


def test_the_same_comparison_again_compares_nothing(
    folder: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.delenv("STEMLINE_NO_CACHE", raising=False)
    monkeypatch.setattr("stemline.outside.cache.place", lambda shelf="rows": tmp_path / shelf)
    asked = {
        "whole": (), "json": ("--json",), "stat": ("--stat",), "man": ("--for", "h"),
        "only": ("--only", "Stick"),
    }  # fmt: skip

    def said(*more: str) -> Result:
        return _run("compare", "HEAD~2", str(folder), *more)

    first = {name: said(*more) for name, more in asked.items()}
    assert len({one.stdout for one in first.values()}) == len(asked), "each asks for another"

    def comparing(*_: object, **__: object) -> None:
        raise AssertionError("it was compared before")

    monkeypatch.setattr("stemline.commands.both_sides.compared", comparing)
    for name, more in asked.items():
        again = said(*more)
        assert (again.stdout, again.exit_code) == (first[name].stdout, 1), name
    with pytest.raises(AssertionError, match="compared before"):
        said("--no-cache")
    quick = folder / "quick.play"
    quick.write_text(quick.read_text("utf-8").replace("stick runs stick 8", "stick runs stick 7"))
    with pytest.raises(AssertionError, match="compared before"):
        said()
