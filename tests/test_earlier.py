"""`draw --before`: a call over what it was, from a folder or from a revision."""

from __future__ import annotations

import shutil
import subprocess
from pathlib import Path
from xml.etree import ElementTree

import pytest
from click.testing import Result
from running import run

from stemline.commands.side_files import earlier_files
from stemline.outside import repository
from stemline.outside.project import files_at, read_files

CALL = "Trips Right Stick"


def edit(folder: Path, old: str, new: str) -> None:
    found = [p for p in folder.glob("*.play") if old in p.read_text("utf-8")]
    assert found, old
    for path in found:
        path.write_text(path.read_text("utf-8").replace(old, new), "utf-8")


def git(folder: Path, *args: str) -> None:
    who = ("-c", "user.name=coach", "-c", "user.email=coach@example.org")
    subprocess.run(["git", *who, *args], cwd=folder, check=True, capture_output=True)


@pytest.fixture
def now(tmp_path: Path) -> Path:
    folder = tmp_path / "now"
    assert run("new", folder).exit_code == 0
    return folder


@pytest.fixture
def last(tmp_path: Path, now: Path) -> Path:
    """Last season's folder: the same, with another depth."""
    folder = tmp_path / "last"
    shutil.copytree(now, folder)
    edit(folder, "runs stick 6", "runs hook 7")
    return folder


def said(result: Result) -> tuple[str, str]:
    """The title and the description of a picture."""
    assert result.exit_code == 0, result.stderr
    root = ElementTree.fromstring(result.stdout)
    title, desc = (root.findtext(f"{{*}}{name}") for name in ("title", "desc"))
    assert title is not None and desc is not None
    return title, desc


def test_an_earlier_folder(now: Path, last: Path) -> None:
    result = run("draw", now, CALL, "--before", last)
    title, desc = said(result)
    assert title == f"{CALL}, before and now"
    assert "was: hook at 7; is: stick at 6" in desc
    assert 'class="before"' in result.stdout
    assert "was:" not in said(run("draw", now, CALL, "--before", now))[1]


def test_the_other_way_round(now: Path, last: Path) -> None:
    assert "was: stick at 6; is: hook at 7" in said(run("draw", last, CALL, "--before", now))[1]


def test_from_the_same_hash_and_small(now: Path, last: Path) -> None:
    hash_ = ("--from", "left hash", "--size", "small")
    _, desc = said(run("draw", now, CALL, *hash_, "--before", last))
    assert "ball on the left hash" in desc
    assert "lined up" not in desc


def test_a_call_of_another_name(now: Path, last: Path) -> None:
    edit(last, "Stick", "Halt")
    found = run("draw", now, CALL, "--before", last)
    assert said(found)[1].startswith("It was called Trips Right Halt. ")
    edit(last, "    in Trips\n", "")
    edit(last, "    never in Trips with Slot Fade\n", "")
    result = run("draw", now, CALL, "--before", last)
    assert result.exit_code == 2
    assert f"error E606: `{CALL}` is no call of {last}" in result.stderr
    assert "--before-call" in result.stderr
    wrong = run("draw", now, CALL, "--before", last, "--before-call", "Doubles Right Hallt")
    assert wrong.exit_code == 2
    assert "nearest: Doubles Right Halt" in wrong.stderr
    right = run("draw", now, CALL, "--before", last, "--before-call", "Doubles Right Halt")
    assert said(right)[1].startswith("It was called Doubles Right Halt. ")


def test_the_name_needs_its_playbook(now: Path) -> None:
    result = run("draw", now, CALL, "--before-call", CALL)
    assert result.exit_code == 2
    assert "--before-call goes with --before" in result.stderr


def test_a_folder_that_is_none_has_the_nearest_name(now: Path, last: Path) -> None:
    result = run("draw", now, CALL, "--before", last.with_name("lasst"))
    assert result.exit_code == 2
    assert "error E605" in result.stderr
    assert "is under no version control" in result.stderr
    assert "nearest: last" in result.stderr


def test_an_empty_folder_says_so(now: Path, tmp_path: Path) -> None:
    (tmp_path / "empty").mkdir()
    result = run("draw", now, CALL, "--before", tmp_path / "empty")
    assert result.exit_code == 2
    assert "error E103" in result.stderr


def test_an_earlier_call_with_a_mistake_says_which(now: Path, last: Path) -> None:
    edit(last, "runs hook 7", "runs hoock 7")
    result = run("draw", now, CALL, "--before", last)
    assert result.exit_code == 2
    assert "hoock" in result.stderr


def test_a_revision(now: Path, last: Path) -> None:
    git(last, "init", "-q")
    git(last, "add", ".")
    git(last, "commit", "-q", "-m", "last season")
    git(last, "tag", "season")
    edit(last, "runs hook 7", "runs stick 6")
    assert (
        "was: hook at 7; is: stick at 6" in said(run("draw", last, CALL, "--before", "season"))[1]
    )
    wrong = run("draw", last, CALL, "--before", "sesaon")
    assert wrong.exit_code == 2
    assert "the playbook has no such revision" in wrong.stderr


def test_a_revision_of_a_folder_in_a_repository(tmp_path: Path, now: Path) -> None:
    """Only the playbook's own files are read, by the rules of a folder, and nothing is written."""
    git(tmp_path, "init", "-q")
    other = tmp_path / "other.play"
    other.write_text("not a playbook\n", "utf-8")
    (now / "build").mkdir()
    (now / "build" / "old.play").write_text("nothing\n", "utf-8")
    (now / ".hidden.play").write_text("nothing\n", "utf-8")
    git(tmp_path, "add", "-f", ".")
    git(tmp_path, "commit", "-q", "-m", "all")
    before = sorted(tmp_path.rglob("*.play"))
    files, why = files_at(now, "HEAD")
    assert files is not None and why == ""
    texts = [source.text for source in files.sources]
    assert texts == [source.text for source in read_files(now).sources]
    assert all(source.name.startswith("HEAD:") for source in files.sources)
    assert sorted(tmp_path.rglob("*.play")) == before


def test_a_revision_before_the_playbook_was_there(tmp_path: Path, now: Path) -> None:
    git(tmp_path, "init", "-q")
    (tmp_path / "readme").write_text("first\n", "utf-8")
    git(tmp_path, "add", "readme")
    git(tmp_path, "commit", "-q", "-m", "first")
    files, why = files_at(now, "HEAD")
    assert files is None
    assert "there was no playbook" in why


@pytest.mark.parametrize("revision", ["--help", "-x", "--output=x", "HEAD; ls", ""])
def test_a_revision_is_never_an_option(revision: str, now: Path) -> None:
    git(now, "init", "-q")
    git(now, "add", ".")
    git(now, "commit", "-q", "-m", "all")
    assert files_at(now, revision)[0] is None
    assert not (now / "x").exists()


def test_without_git_it_is_said(now: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def missing(*args: object, **kwargs: object) -> None:
        raise FileNotFoundError("git")

    monkeypatch.setattr(repository.subprocess, "Popen", missing)
    files = earlier_files(now, "season")
    assert files.sources == ()
    assert [d.code for d in files.found] == ["E605"]
