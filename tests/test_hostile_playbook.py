"""A playbook as a stranger may send it: its folder runs nothing, and touches nothing outside."""

from __future__ import annotations

import hashlib
import json
import os
import re
import shutil
import subprocess
import sys
import time
import zlib
from collections.abc import Callable
from contextlib import suppress
from pathlib import Path
from xml.etree import ElementTree

import pytest
from click.testing import CliRunner, Result

from stemline.commands import main
from stemline.outside import folder as output_folder
from stemline.outside import project, repository
from stemline.outside import texts as reading
from stemline.outside.not_written import NotWritten
from stemline.outside.texts import read_files

BOOK = {"book.pdf": b"a book"}


def run(*args: str | Path) -> Result:
    result = CliRunner().invoke(main, [str(a) for a in args])
    assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
    return result


def git(folder: Path, *args: str, given: str = "") -> str:
    who = ("-c", "user.name=coach", "-c", "user.email=coach@example.org")
    made = subprocess.run(
        ["git", *who, *args], cwd=folder, check=True, capture_output=True, input=given, text=True
    )
    return made.stdout.strip()


def listed(**files: bytes) -> str:
    digests = {name: hashlib.sha256(data).hexdigest() for name, data in files.items()}
    return json.dumps({"made by": "stemline", "files": digests})


@pytest.fixture
def book(tmp_path: Path) -> Path:
    folder = tmp_path / "stranger"
    assert run("new", folder).exit_code == 0
    return folder


@pytest.fixture
def held(book: Path) -> Path:
    """The hidden folder of an output that came with the playbook."""
    place = book / "build" / output_folder.HELD
    place.mkdir(parents=True)
    return place


@pytest.fixture
def mine(tmp_path: Path) -> Path:
    folder = tmp_path / "mine"
    folder.mkdir()
    for name in ("0", "1", "known.txt"):
        (folder / name).write_text("mine", "utf-8")
    return folder


@pytest.fixture
def kept(book: Path, tmp_path: Path) -> Path:
    """A repository whose settings run a program wherever git lets them."""
    program = tmp_path / "program"
    program.write_text(f"#!/bin/sh\ntouch {tmp_path}/ran\ncat\n", "utf-8")
    program.chmod(0o755)
    git(book, "init", "-q")
    git(book, "add", ".")
    git(book, "commit", "-q", "-m", "all")
    tree = git(book, "rev-parse", "HEAD^{tree}")
    who = "coach <coach@example.org> 1700000000 +0000"
    signed = "gpgsig -----BEGIN PGP SIGNATURE-----\n \n abc\n -----END PGP SIGNATURE-----"
    commit = f"tree {tree}\nauthor {who}\ncommitter {who}\n{signed}\n\nall\n"
    git(
        book,
        "update-ref",
        "HEAD",
        git(book, "hash-object", "-t", "commit", "-w", "--stdin", given=commit),
    )
    for key in (
        "gpg.program",
        "core.fsmonitor",
        "core.pager",
        "core.sshCommand",
        "tar.tar.command",
    ):
        git(book, "config", key, str(program))
    for key in ("filter.run.smudge", "diff.run.textconv", "core.alternateRefsCommand"):
        git(book, "config", key, str(program))
    git(book, "config", "log.showSignature", "true")
    git(book, "config", "i18n.logOutputEncoding", "UTF-16")
    attributes = book / ".git" / "info" / "attributes"
    attributes.write_text("*.play filter=run diff=run\n", "utf-8")
    return book


def test_a_repository_runs_no_program(kept: Path, tmp_path: Path) -> None:
    files, why = project.files_at(kept, "HEAD")
    assert files is not None and why == ""
    assert [s.text for s in files.sources] == [s.text for s in read_files(kept).sources]
    assert project.revision(kept) == (git(kept, "rev-parse", "--short", "HEAD"), "2023-11-14")
    assert not (tmp_path / "ran").exists()


def test_a_repository_fetches_nothing(kept: Path, tmp_path: Path) -> None:
    """A repository may say that what it lacks is to be had elsewhere, through a program."""
    tree = git(kept, "rev-parse", "HEAD^{tree}")
    (kept / ".git" / "config").write_text(
        "[core]\nrepositoryformatversion = 1\n[extensions]\npartialClone = origin\n"
        f'[remote "origin"]\nurl = "ext::sh -c touch% {tmp_path}/ran"\npromisor = true\n'
        '[protocol "ext"]\nallow = always\n',
        "utf-8",
    )
    (kept / ".git" / "objects" / tree[:2] / tree[2:]).unlink()
    assert project.files_at(kept, "HEAD")[0] is None
    project.revision(kept)
    assert not (tmp_path / "ran").exists()


def test_a_repository_that_says_too_much_is_not_heard_out(
    kept: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Twelve objects may stand for a list of ten to the twelfth files."""
    blob = git(kept, "hash-object", "-w", "--stdin", given="playbook X\n")
    tree = git(kept, "mktree", given="".join(f"100644 blob {blob}\t{n}.play\n" for n in range(10)))
    for _ in range(11):
        tree = git(kept, "mktree", given="".join(f"040000 tree {tree}\t{n}\n" for n in range(10)))
    git(kept, "update-ref", "HEAD", git(kept, "commit-tree", tree, "-m", "all"))
    monkeypatch.setattr(repository, "_MOST", 1_000_000)
    started = time.monotonic()
    assert project.files_at(kept, "HEAD")[0] is None
    assert time.monotonic() - started < repository._PATIENCE / 2


def test_a_git_of_the_playbooks_own_is_not_run(
    kept: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    shutil.copy(tmp_path / "program", kept / "git")
    monkeypatch.setenv("PATH", f"{kept}{os.pathsep}{os.environ['PATH']}")
    assert project.revision(kept) == ("", "")
    assert not (tmp_path / "ran").exists()


def test_a_forged_list_deletes_nothing_elsewhere(book: Path, held: Path, mine: Path) -> None:
    """What a killed build left is cleared, by numbers, where it was laid: not through a link."""
    (held / "staged").symlink_to(mine)
    (held / "coming").write_text(listed(**{"a.x": b"", "b.x": b""}), "utf-8")
    result = run("check", book)
    assert "staged: error E951: this was not made by stemline" in result.stderr
    assert sorted(p.name for p in mine.iterdir()) == ["0", "1", "known.txt"]


def test_a_forged_list_of_what_stands_deletes_nothing_elsewhere(
    book: Path, held: Path, mine: Path
) -> None:
    (book / "build" / "docs").symlink_to(mine)
    (held / "stands").write_text(listed(**{"docs/known.txt": b"mine"}), "utf-8")
    output_folder.replace(book / "build", BOOK)
    assert (mine / "known.txt").read_text("utf-8") == "mine"


@pytest.mark.parametrize("name", ["staged", "lock", "stands", "coming", "whole"])
@pytest.mark.parametrize("kind", ["link", "other"])
def test_nothing_is_written_through_a_hidden_folder(
    name: str, kind: str, book: Path, held: Path, mine: Path
) -> None:
    def other(path: Path) -> None:
        path.write_bytes(b"") if name == "staged" else path.mkdir()

    def link(path: Path) -> None:
        path.symlink_to(mine if name == "staged" else mine / "known.txt")

    make: dict[str, Callable[[Path], None]] = {"link": link, "other": other}
    make[kind](held / name)
    with pytest.raises(NotWritten, match="E951"):
        output_folder.replace(book / "build", BOOK)
    assert sorted(p.name for p in mine.iterdir()) == ["0", "1", "known.txt"]
    assert (mine / "known.txt").read_text("utf-8") == "mine"
    assert not (book / "build" / "book.pdf").exists()


@pytest.mark.parametrize(
    ("link", "asked"),
    [
        ("build", ("build",)),
        ("build/only-stick", ("build", "--only", "Stick")),
        ("build/sheet", ("sheet",)),
    ],
)
def test_output_is_not_led_out_of_the_playbook(
    link: str, asked: tuple[str, ...], book: Path, mine: Path
) -> None:
    """It could be led over the last good book of another playbook."""
    output_folder.replace(mine, BOOK)
    (book / link).parent.mkdir(exist_ok=True)
    (book / link).symlink_to(mine)
    command, *options = asked
    result = run(command, book, *options)
    assert result.exit_code == 2
    assert "error E960" in result.stderr and str(mine) in result.stderr
    assert (mine / "book.pdf").read_bytes() == BOOK["book.pdf"]


def test_a_build_folder_that_leads_to_itself(book: Path) -> None:
    (book / "build").symlink_to("build")
    assert run("check", book).exit_code == 0
    for command in ("build", "sheet"):
        result = run(command, book)
        assert result.exit_code == 2 and "error E9" in result.stderr


def test_a_name_too_long_for_the_system() -> None:
    result = run("check", "x" * 300)
    assert result.exit_code == 2 and "error E101" in result.stderr


def test_a_folder_whose_name_a_terminal_would_obey(book: Path) -> None:
    folder = book.rename(book.with_name("f\x1b[2J\n0 errors\u202e"))
    result = run("sheet", folder)
    assert result.exit_code == 0
    assert result.stdout.count("\n") == 1 and result.stdout.strip().isprintable()


@pytest.mark.skipif(sys.platform in ("win32", "darwin"), reason="names there are Unicode")
def test_a_folder_whose_name_is_no_text(
    book: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.delenv("STEMLINE_NO_CACHE")
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    odd = os.fsdecode(os.fsencode(tmp_path) + b"/\xff\xfe")
    folder = book.rename(odd)
    assert run("check", folder).exit_code == 0


def test_files_without_end(book: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(reading, "ALL_FILES", 5_000)
    (book / "a.play").write_text("// nothing\n" * 450, "utf-8")
    found = read_files(book).found
    assert [d.code for d in found] == ["E107"]


NASTY = "<script>1</script>{{7*7}}&lt;a href=http://x.example/>]]>--><![CDATA[ javascript:1"


def parts(svg: str) -> set[tuple[str, tuple[str, ...]]]:
    """The kinds of element in a picture, each with the names of its attributes."""
    return {(e.tag, tuple(sorted(e.attrib))) for e in ElementTree.fromstring(svg).iter()}


def unpacked(pdf: bytes) -> bytes:
    """A PDF with its compressed parts in clear."""
    packed = re.findall(rb"stream\r?\n(.*?)\r?\nendstream", pdf, re.DOTALL)
    clear = [pdf]
    for each in packed:
        with suppress(zlib.error):
            clear.append(zlib.decompress(each))
    return b"\n".join(clear)


def test_names_and_sayings_stay_text(book: Path) -> None:
    usual = parts(run("draw", book, "Trips Right Stick").stdout)
    for path in book.glob("*.play"):
        text = path.read_text("utf-8").replace("his numbers.", f"his numbers. {NASTY}")
        for place in ("concept", "for", "dress"):
            text = text.replace(f"{place} Stick", f'{place} "Sti\tck {NASTY}"')
        path.write_text(text.replace("My Playbook", f'"{NASTY}"'), "utf-8")
    result = run("draw", book, f"Trips Right Sti ck {NASTY}")
    assert result.exit_code == 0, result.stderr
    title = ElementTree.fromstring(result.stdout).findtext("{*}title")
    assert title == f"Trips Right Sti ck {NASTY}"
    assert parts(result.stdout) == usual
    assert run("build", book).exit_code == 0
    data = unpacked((book / "build" / "book.pdf").read_bytes())
    assert b"/Annot" in data
    for word in (b"/URI", b"/JS", b"/JavaScript", b"/Launch", b"/EmbeddedFile", b"/OpenAction"):
        assert word not in data
    index = (book / "build" / "pictures" / "index.txt").read_text("utf-8")
    rows = [row.split("\t") for row in index.splitlines()]
    assert len(rows) == 10 and all(len(row) == 2 for row in rows)
    assert {file for file, _ in rows} == {
        p.name for p in (book / "build" / "pictures").glob("*.svg")
    }


@pytest.mark.parametrize("mark", ["\ufe0f", "\ufe00", "\ufff5", "\U0001bca0"])
def test_no_second_name_looks_like_the_first(book: Path, mark: str) -> None:
    text = (book / "quick.play").read_text("utf-8").split("// A tag")[0]
    twin = text.replace("concept Stick", f'concept "Stick{mark}"')
    (book / "twin.play").write_text(twin, "utf-8")
    assert "twin.play:5:15: error E13" in run("check", book).stderr


def test_signs_may_be_pictures(book: Path) -> None:
    text = (book / "quick.play").read_text("utf-8")
    said = text.replace("his numbers", "his numbers \u2600\ufe0f 1\ufe0f\u20e3 \u00a9\ufe0f")
    (book / "quick.play").write_text(said, "utf-8")
    assert run("check", book).exit_code == 0
