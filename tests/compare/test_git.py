"""The settings for git, through real git: what a merge joins, what a diff shows, what a commit
refuses."""

from __future__ import annotations

import os
import re
import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import CliRunner
from sampling import every

from stemline.commands import main
from stemline.outside.git_settings import install, remove
from stemline.source import Source
from stemline.syntax.joining import merge
from stemline.syntax.parser import parse

BASE = """\
playbook Herons
    code canadian amateur

concept Crossers
    over is strong inside
    over runs cross 6
    under is weak inside
    under runs cross 5
    read under on quick > over on 3
    say "Stay flat."
    say "Eyes back."

// High and low.
concept Smash
    hitch is strong #1
    hitch runs hitch 6

week 1 Larch Bay
    openers
        Trips Right Stick
        Trips Left Stick
    situation 1st and 10
        Trips Right Smash, "Soft corner."

tag Wheel for Crossers
    under runs wheel
    keeps read
"""

SMASH = BASE[BASE.index("// High") : BASE.index("week 1")]

ROW = "        Trips Left Stick\n"

NUMBER = "    number Trips Left Stick is 8\n"
DRESS = "dress Crossers\n    in Trips, Trey\n    call Trips Right Crossers as Ruby\n"

Case = tuple[str, list[tuple[str, str]], list[tuple[str, str]], tuple[str, ...], int]

PAIRS: list[Case] = [
    # name, ours (old → new), theirs, what the result must hold, conflicts
    (
        "neighbouring lines",
        [("over runs cross 6", "over runs cross 7")],
        [("under is weak inside", "under is weak #2")],
        ("over runs cross 7", "under is weak #2"),
        0,
    ),
    (
        "a tag each at the end",
        [("    keeps read\n", "    keeps read\n\ntag Ours for Crossers\n    over runs go\n")],
        [("    keeps read\n", "    keeps read\n\ntag Theirs for Smash\n    hitch runs go\n")],
        ("tag Ours for Crossers", "tag Theirs for Smash", "keeps read"),
        0,
    ),
    (
        "one tag's promise is not lost",
        [("    keeps read\n", "    keeps read\n    over says \"Ours.\"\n")],
        [("    keeps read\n", "    keeps read\n    under says \"Theirs.\"\n")],
        ("keeps read", "Ours.", "Theirs."),
        0,
    ),
    (
        "a man each, by his letter",
        [("    hitch runs hitch 6\n", "    hitch runs hitch 6\n    X runs post 12\n")],
        [("    hitch runs hitch 6\n", "    hitch runs hitch 6\n    H, Z runs go\n")],
        ("hitch runs hitch 6", "X runs post 12", "H, Z runs go"),
        0,
    ),
    (
        "one letter, two routes",
        [("    hitch runs hitch 6\n", "    hitch runs hitch 6\n    X runs post 12\n")],
        [("    hitch runs hitch 6\n", "    hitch runs hitch 6\n    X runs post 14\n")],
        ("X runs post 12", "X runs post 14", "<<<<<<<"),
        1,
    ),
    (
        "one call, two names",
        [("tag Wheel", f"{DRESS}    call Trips Left Crossers as Rose\n\ntag Wheel")],
        [("tag Wheel", f"{DRESS}    call Trips Left Crossers as Lima\n\ntag Wheel")],
        ("as Ruby", "as Rose", "as Lima", "<<<<<<<"),
        1,
    ),
    (
        "one word, two calls",
        [("tag Wheel", f"{DRESS}    call Trips Left Crossers as Rose\n\ntag Wheel")],
        [("tag Wheel", f"{DRESS}    call Trey Left Crossers as Rose\n\ntag Wheel")],
        ("call Trips Left Crossers as Rose", "call Trey Left Crossers as Rose", "<<<<<<<"),
        1,
    ),
    (
        "one word, two concepts",
        [("    over runs cross 6\n", "    over runs cross 6\n    word Plank\n")],
        [("    hitch runs hitch 6\n", "    hitch runs hitch 6\n    word Plank\n")],
        ("word Plank", "<<<<<<<"),
        1,
    ),
    (
        "two calls, a name each",
        [("tag Wheel", f"{DRESS}    call Trips Left Crossers as Rose\n\ntag Wheel")],
        [("tag Wheel", f"{DRESS}    call Trey Left Crossers as Lima\n\ntag Wheel")],
        ("as Ruby", "as Rose", "as Lima"),
        0,
    ),
    (
        "one call, two short names and one number",
        [("    openers\n", f"    short Trips Stick is TS\n{NUMBER}    openers\n")],
        [("    openers\n", f"    short Trips Stick is TK\n{NUMBER}    openers\n")],
        ("is TS", "is TK", "<<<<<<<", "number Trips Left Stick is 8"),
        1,
    ),
    (
        "two calls, a number each",
        [("    openers\n", "    number Trips Right Stick is 8\n    openers\n")],
        [("    openers\n", "    number Trips Left Stick is 9\n    openers\n")],
        ("number Trips Right Stick is 8", "number Trips Left Stick is 9"),
        0,
    ),
    (
        "one line, two values",
        [("over runs cross 6", "over runs cross 7")],
        [("over runs cross 6", "over runs cross 8")],
        ("over runs cross 7", "over runs cross 8", "<<<<<<< ours", ">>>>>>> theirs"),
        1,
    ),
    (
        "one line, one value",
        [("over runs cross 6", "over runs cross 7")],
        [("over runs cross 6", "over  runs cross 7")],
        ("over runs cross 7",),
        0,
    ),
    (
        "one of two sentences each",
        [('say "Stay flat."', 'say "Stay low."')],
        [('say "Eyes back."', 'say "Eyes up."')],
        ("Stay low.", "Eyes up."),
        0,
    ),
    (
        "the same sentence, two ways",
        [('say "Stay flat."', 'say "Ours."')],
        [('say "Stay flat."', 'say "Theirs."')],
        ("Ours.", "Theirs.", "<<<<<<<"),
        2,
    ),
    (
        "a sentence more each",
        [('say "Eyes back."', 'say "Eyes back."\n    say "Ours."')],
        [('say "Eyes back."', 'say "Eyes back."\n    say "Theirs."')],
        ("Ours.", "Theirs.", "Eyes back."),
        0,
    ),
    (
        "deleted here, changed there",
        [("    over runs cross 6\n", "")],
        [("over runs cross 6", "over runs cross 7")],
        ("over runs cross 7", "<<<<<<<"),
        1,
    ),
    (
        "deleted on both sides",
        [('    say "Eyes back."\n', "")],
        [('    say "Eyes back."\n', "")],
        ("Stay flat.",),
        0,
    ),
    (
        "a block deleted, untouched there",
        [(SMASH, "")],
        [("over runs cross 6", "over runs cross 7")],
        ("over runs cross 7",),
        0,
    ),
    (
        "a block deleted, changed there",
        [(SMASH, "")],
        [("hitch runs hitch 6", "hitch runs hitch 5")],
        ("hitch runs hitch 5", "<<<<<<<"),
        1,
    ),
    (
        "a concept renamed, changed there",
        [("concept Smash", "concept Smack")],
        [("hitch runs hitch 6", "hitch runs hitch 5")],
        ("hitch runs hitch 5", "<<<<<<<", "concept Smack"),
        1,
    ),
    (
        "the lines in another order, one changed",
        [("    over is strong inside\n    over runs cross 6\n",
          "    over runs cross 6\n    over is strong inside\n")],
        [("over runs cross 6", "over runs cross 7")],
        ("over runs cross 7",),
        0,
    ),
    (
        "a comment here, a line there",
        [("// High and low.", "// High, low.")],
        [("hitch is strong #1", "hitch is strong #2")],
        ("// High, low.", "hitch is strong #2"),
        0,
    ),
    (
        "a comment on a line, two ways",
        [("over runs cross 6", "over runs cross 6  // ours")],
        [("over runs cross 6", "over runs cross 6  // theirs")],
        ("// ours", "// theirs", "<<<<<<<"),
        1,
    ),
    (
        "a guarded line beside a changed one",
        [("over runs cross 6", "over runs cross 6\n    over runs sit 6 when zone")],
        [("over runs cross 6", "over runs cross 7")],
        ("over runs cross 7", "over runs sit 6 when zone"),
        0,
    ),
    (
        "one new guard, two values",
        [("over runs cross 6", "over runs cross 6\n    over runs sit 6 when zone")],
        [("over runs cross 6", "over runs cross 6\n    over runs sit 8 when zone")],
        ("sit 6", "sit 8", "<<<<<<<"),
        1,
    ),
    (
        "one new tag, two meanings",
        [("tag Wheel", "tag Return for Crossers\n    over runs return\n\ntag Wheel")],
        [("tag Wheel", "tag Return for Crossers\n    under runs return\n\ntag Wheel")],
        ("over runs return", "under runs return"),
        0,
    ),
    (
        "one new concept, one line of it two ways",
        [("tag Wheel", "concept Flood\n    out is strong #1\n    out runs out 10\n\ntag Wheel")],
        [("tag Wheel", "concept Flood\n    out is strong #1\n    out runs out 12\n\ntag Wheel")],
        ("out 10", "out 12", "<<<<<<<"),
        1,
    ),
    (
        "a row each in one list",
        [("        Trips Left Stick\n", "        Trips Left Stick\n        Trips Right Ours\n")],
        [("        Trips Left Stick\n", "        Trips Left Stick\n        Trips Right Theirs\n")],
        ("Trips Right Ours", "Trips Right Theirs"),
        0,
    ),
    (
        "a row moved here, another noted there",
        [(ROW, ""), ('corner."\n', f'corner."\n{ROW}')],
        [("        Trips Right Stick\n", "        Trips Right Stick, \"First look.\"\n")],
        ('corner."\n Trips Left Stick', '"First look."'),
        0,
    ),
    (
        "one row, two notes",
        [('"Soft corner."', '"Ours."')],
        [('"Soft corner."', '"Theirs."')],
        ("Ours.", "Theirs.", "<<<<<<<"),
        1,
    ),
    (
        "a row dropped here, noted there",
        [("        Trips Left Stick\n", "")],
        [("        Trips Left Stick\n", "        Trips Left Stick, fast\n")],
        ("Trips Left Stick, fast", "<<<<<<<"),
        1,
    ),
    (
        "a situation each",
        [(ROW, f"{ROW}    situation 3rd and 1\n        Trips Right Ours\n")],
        [('corner."\n', 'corner."\n    situation goal line\n        Trips Left Theirs\n')],
        ("situation 3rd and 1\n Trips Right Ours", "situation goal line\n Trips Left Theirs"),
        0,
    ),
    (
        "the week's date, two values",
        [("    openers\n", "    date 2026-09-01\n    openers\n")],
        [("    openers\n", "    date 2026-09-02\n    openers\n")],
        ("2026-09-01", "2026-09-02", "<<<<<<<"),
        1,
    ),
    (
        "a date here, a saying there",
        [("    openers\n", "    date 2026-09-01\n    openers\n")],
        [("    openers\n", '    say "Theirs."\n    openers\n')],
        ("2026-09-01", "Theirs."),
        0,
    ),
    (
        "a role renamed here, another's line there",
        [("over is", "top is"), ("over runs", "top runs"), ("> over on", "> top on")],
        [("under runs cross 5", "under runs cross 4")],
        ("top is strong inside", "top runs cross 6", "under runs cross 4", "> top on 3"),
        0,
    ),
    (
        "a role renamed here, its line changed there",
        [("over is", "top is"), ("over runs", "top runs"), ("> over on", "> top on")],
        [("over runs cross 6", "over runs cross 7")],
        ("over runs cross 7", "top runs cross 6", "<<<<<<<"),
        1,
    ),
    (
        "a parent, two values",
        [("concept Smash", "concept Smash extends Crossers")],
        [("concept Smash", "concept Smash extends Wheel")],
        ("extends Crossers", "extends Wheel", "<<<<<<<"),
        1,
    ),
    (
        "a parent here, a line there",
        [("concept Smash", "concept Smash extends Crossers")],
        [("hitch runs hitch 6", "hitch runs hitch 5")],
        ("concept Smash extends Crossers", "hitch runs hitch 5"),
        0,
    ),
    (
        "one subject more here, a promise there",
        [("under runs wheel", "under, over runs wheel")],
        [("keeps read", "keeps read, feet")],
        ("under, over runs wheel", "keeps read, feet"),
        0,
    ),
    (
        "one subject more here, another route there",
        [("under runs wheel", "under, over runs wheel")],
        [("under runs wheel", "under runs go")],
        ("under, over runs wheel", "under runs go", "<<<<<<<"),
        1,
    ),
    (
        "blank lines here, a line there",
        [("    over runs", "\n    over runs")],
        [("under runs cross 5", "under runs cross 4")],
        ("under runs cross 4", "over runs cross 6"),
        0,
    ),
    (
        "another margin here, a line there",
        [(BASE, BASE.replace("    ", "  "))],
        [("over runs cross 6", "over runs cross 7"), ("Left Stick", "Left Stick, fast")],
        ("over runs cross 7", "Trips Left Stick, fast"),
        0,
    ),
    (
        "a quote's shape here, a sentence there",
        [('"Stay flat."', "“Stay flat.”")],
        [('say "Eyes back."', 'say "Eyes up."')],
        ("Stay flat.", "Eyes up."),
        0,
    ),
    (
        "the same new tag on both sides",
        [("tag Wheel", "tag Return for Crossers\n    over runs return\n\ntag Wheel")],
        [("tag Wheel", "tag Return for Crossers\n    over  runs return\n\ntag Wheel")],
        ("tag Return for Crossers",),
        0,
    ),
    (
        "blocks in another order here, a line there",
        [(SMASH, ""), ("tag Wheel", SMASH + "tag Wheel")],
        [("hitch runs hitch 6", "hitch runs hitch 5")],
        ("hitch runs hitch 5",),
        0,
    ),
    (
        "the last block deleted, one put behind it there",
        [(BASE[BASE.index("tag Wheel") :], "")],
        [("    keeps read\n", "    keeps read\n\ntag Last for Smash\n    hitch runs go\n")],
        ("tag Last for Smash",),
        0,
    ),
    (
        "a guard here, the plain line there",
        [("over runs cross 6", "over runs cross 6 when man")],
        [("over runs cross 6", "over runs cross 7")],
        ("over runs cross 6 when man", "over runs cross 7", "<<<<<<<"),
        1,
    ),
]  # fmt: skip


def _changed(changes: list[tuple[str, str]]) -> str:
    text = BASE
    for old, new in changes:
        assert text.count(old) >= 1, old
        text = text.replace(old, new, 1)
    return text


def _git(folder: Path, *said: str, check: bool = True) -> subprocess.CompletedProcess[str]:
    env = {
        **os.environ,
        "GIT_CONFIG_GLOBAL": os.devnull,
        "GIT_CONFIG_SYSTEM": os.devnull,
        "STEMLINE_NO_CACHE": "1",
        **{f"GIT_{who}_{what}": "coach@example.invalid" for who in ("AUTHOR", "COMMITTER")
           for what in ("NAME", "EMAIL")},
    }  # fmt: skip
    done = subprocess.run(
        ["git", *said], cwd=folder, env=env, capture_output=True, text=True, timeout=600
    )
    assert not check or done.returncode == 0, done.stderr
    return done


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    _git(tmp_path, "init", "-q", "-b", "main")
    (tmp_path / "book.play").write_text(BASE, "utf-8")
    _git(tmp_path, "add", ".")
    _git(tmp_path, "commit", "-qm", "Base")
    list(install(tmp_path))
    (tmp_path / ".git/hooks/pre-commit").unlink()
    return tmp_path


def _merged(at: Path, ours: str, theirs: str) -> tuple[int, str]:
    """The merge driver's exit code and what it leaves."""
    files = [at / name for name in ("base", "ours", "theirs")]
    for file, text in zip(files, (BASE, ours, theirs), strict=True):
        file.write_text(text, "utf-8")
    done = CliRunner().invoke(main, ["merge", *map(str, files)])
    return done.exit_code, files[1].read_text("utf-8")


@pytest.mark.parametrize("swapped", (False, True), ids=("ours", "theirs"))
@pytest.mark.parametrize("case", PAIRS, ids=[case[0] for case in PAIRS])
def test_branches_join_by_what_a_line_is_about(tmp_path: Path, case: Case, swapped: bool) -> None:
    _, ours, theirs, holds, conflicts = case
    if swapped:
        ours, theirs = theirs, ours
    code, text = _merged(tmp_path, _changed(ours), _changed(theirs))
    said = re.sub(r"[ ]+", " ", text)
    assert text.count("tag Return") == text.count("tag Return for Crossers") <= 1
    assert all(part in said for part in holds), text
    assert code == bool(conflicts), text
    assert ("<<<<<<<" in text) == bool(conflicts)
    if not conflicts:
        _, found = parse(Source("book.play", text))
        assert not found
        one, two = (parse(Source("o", _changed(c)))[0] for c in (theirs, ours))
        back = merge(parse(Source("b", BASE))[0], one, two)
        words = (re.sub("[“”]", '"', each).split() for each in (back.text, text))
        assert len({tuple(sorted(each)) for each in words}) == 1


def test_git_joins_as_the_merge_driver_does(folder: Path, tmp_path: Path) -> None:
    """Some of the pairs, each a file of one merge: git starts a process for every one."""
    work = tmp_path / ".git" / "tried"
    work.mkdir()
    cases = {f"{n}.play": case for n, case in enumerate(PAIRS) if n % every(5) == 0}

    def commit(said: str, text: Callable[[Case], str]) -> None:
        for name, case in cases.items():
            (folder / name).write_text(text(case), "utf-8")
        _git(folder, "add", ".")
        _git(folder, "commit", "-qm", said)

    commit("Files", lambda case: BASE)
    _git(folder, "checkout", "-qb", "theirs")
    commit("Theirs", lambda case: _changed(case[2]))
    _git(folder, "checkout", "-q", "main")
    commit("Ours", lambda case: _changed(case[1]))
    assert _git(folder, "merge", "-q", "theirs", check=False).returncode == 1
    for name, case in cases.items():
        _, text = _merged(work, _changed(case[1]), _changed(case[2]))
        assert (folder / name).read_text("utf-8") == text, case[0]
    open_ = _git(folder, "diff", "--name-only", "--diff-filter=U").stdout.split()
    assert open_ == sorted(name for name, case in cases.items() if case[4]) != []


def test_a_diff_names_what_a_line_belongs_to(folder: Path) -> None:
    book = folder / "book.play"
    book.write_text(_changed([("over runs cross 6", "over runs cross 7")]), "utf-8")
    said = _git(folder, "diff").stdout
    assert "-concept Crossers: over runs cross 6" in said
    assert "+concept Crossers: over runs cross 7" in said
    _git(folder, "commit", "-qam", "Seven")
    for shown in (("show",), ("log", "-p", "-1")):
        assert "+concept Crossers: over runs cross 7" in _git(folder, *shown).stdout


def test_a_text_that_cannot_be_read_is_not_merged(folder: Path) -> None:
    book = folder / "book.play"
    _git(folder, "checkout", "-qb", "theirs")
    book.write_text(_changed([("over runs cross 6", "over rnus corss !!")]), "utf-8")
    _git(folder, "commit", "-qam", "Theirs")
    _git(folder, "checkout", "-q", "main")
    book.write_text(_changed([("hitch runs hitch 6", "hitch runs hitch 5")]), "utf-8")
    _git(folder, "commit", "-qam", "Ours")
    done = _git(folder, "merge", "-q", "theirs", check=False)
    assert done.returncode != 0
    assert "hitch runs hitch 5" in book.read_text("utf-8")


def test_a_commit_is_checked_and_all_can_be_undone(folder: Path) -> None:
    before = (folder / ".git/config").read_text()
    list(install(folder))
    book = folder / "book.play"
    book.write_text(_changed([("over runs cross 6", "over runs nowhere at all")]), "utf-8")
    done = _git(folder, "commit", "-qam", "Wrong", check=False)
    assert done.returncode != 0 and "E" in done.stderr
    list(remove(folder))
    config = (folder / ".git/config").read_text()
    assert "stemline" in before and "stemline" not in config
    assert "stemline" not in (folder / ".git/info/attributes").read_text()
    _git(folder, "commit", "-qam", "Wrong")


def test_a_hook_of_the_coach_stays(folder: Path) -> None:
    hook = folder / ".git/hooks/pre-commit"
    hook.parent.mkdir(exist_ok=True)
    hook.write_text("#!/bin/sh\nexit 0\n")
    assert any("yours" in line for line in install(folder))
    list(remove(folder))
    assert hook.read_text() == "#!/bin/sh\nexit 0\n"
