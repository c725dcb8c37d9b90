"""The mistakes coaches make, each with the print-out it must have.

A case is a file of the corpus. Its comments say what is wanted: `// expects` the codes in the
order of the print-out, one for one mistake; `// clock` that the clock is asked too; `// nearest`
the right word for a misspelt one; `// alone` that the base playbook is left out; `// todo` that
the print-out is known to be wrong.
The print-outs are written anew by `pytest --snapshot-update`; read the difference.
"""

from __future__ import annotations

import os
import re
from dataclasses import dataclass
from functools import cache
from pathlib import Path

import pytest
from corpus.mixing import CORPUS, Outcome, base, compile_case, outcome
from together import together

from stemline.checks.discovered import wordings
from stemline.diagnostics.render import in_order
from stemline.outside.project import read_files
from stemline.session import Session

FOLDERS = CORPUS / "folders"


@dataclass(frozen=True)
class Case:
    """One file of the corpus and what its comments ask for."""

    path: Path

    @property
    def text(self) -> str:
        return self.path.read_text("utf-8")

    def said(self, word: str) -> str | None:
        found = re.search(rf"^// {word}\b *(.*)$", self.text, re.MULTILINE)
        return found[1] if found else None

    @property
    def codes(self) -> list[str]:
        return (self.said("expects") or "").split()

    def compiled(self) -> Outcome:
        return _compiled(self)


@cache
def _compiled(case: Case) -> Outcome:
    alone, clock = (case.said(word) is not None for word in ("alone", "clock"))
    return compile_case(case.path.name, case.text, alone=alone, clock=clock)


CASES = [Case(p) for p in sorted(CORPUS.glob("*.play"))]
IDS = [c.path.stem for c in CASES]
RIGHT = [c for c in CASES if c.said("todo") is None]


def compare(shown: str, expected: Path, request: pytest.FixtureRequest) -> None:
    if request.config.getoption("update_snapshots"):
        expected.write_text(shown, "utf-8")
    assert shown == expected.read_text("utf-8")


@pytest.mark.parametrize("case", RIGHT, ids=[c.path.stem for c in RIGHT])
def test_a_mistake_prints_what_stands_beside_it(case: Case, request: pytest.FixtureRequest) -> None:
    compare(case.compiled().shown, case.path.with_suffix(".expected"), request)


@pytest.mark.parametrize("case", CASES, ids=IDS)
def test_one_mistake_is_one_diagnostic(case: Case, request: pytest.FixtureRequest) -> None:
    if why := case.said("todo"):
        request.applymarker(pytest.mark.xfail(reason=why, strict=True))
    result = case.compiled()
    assert result.codes == case.codes
    assert len(set(result.found)) == len(result.found)
    places = [(d.code, d.span) for d in result.found]
    assert len(set(places)) == len(places)


@together("case", CASES, ids=IDS)
def test_the_nearest_word_is_the_right_one(case: Case) -> None:
    wanted = case.said("nearest")
    if wanted is None:
        assert not case.path.stem.startswith("misspelt") or "nearest" not in case.compiled().shown
        return
    first = [d.nearest[0] for d in in_order(case.compiled().found) if d.nearest]
    assert first[0] == wanted


@together("case", CASES, ids=IDS)
def test_every_mistake_points_into_a_line(case: Case) -> None:
    """All but those of a whole folder stand at a place and mark some of its text."""
    texts = {s.name: s.text for s in base()} | {case.path.name: case.text}
    for d in case.compiled().found:
        if d.code == "E305":
            continue
        line = texts[d.span.source].split("\n")[d.span.line - 1]
        assert line[d.span.column - 1 : d.span.end - 1].strip() or d.code in ("E110", "E130")
        assert d.span.end - 1 <= len(line)


def test_the_base_has_no_mistake() -> None:
    assert compile_case("nothing.play", "// nothing\n").shown == ""


def test_ten_mistakes_are_ten_kinds() -> None:
    ten = Case(CORPUS / "ten-mistakes.play")
    assert len(set(ten.codes)) == 10
    lines = [d.span.line for d in ten.compiled().found]
    assert len(set(lines)) == 10


def test_the_corpus_is_whole() -> None:
    assert len(CASES) >= 60
    assert not [c.path.name for c in CASES if not c.codes]
    assert {c for case in CASES for c in case.codes} <= wordings().keys()
    wanted = {c.path.stem for c in RIGHT}
    assert wanted == {p.stem for p in CORPUS.glob("*.expected")}
    assert {*STORED, *MADE} == {p.stem for p in FOLDERS.glob("*.expected")}


@together("path", sorted(CORPUS.rglob("*.expected")), ids=lambda p: p.stem)
def test_no_print_out_names_this_machine(path: Path) -> None:
    assert str(CORPUS.parent.parent) not in path.read_text("utf-8")
    assert not re.search(r"(^|\s)/\w", path.read_text("utf-8"))


# Mistakes of the outside world: folders and files.

STORED = {
    "saltmarsh-heron": ["E101"],
    "just-a-file.play": ["E102"],
    "no-plays": ["E103"],
    "not-utf-8": ["E104"],
    "empty-file": ["E105"],
}


def read_and_compile(folder: str) -> Outcome:
    files = read_files(Path(folder))
    found = files.found
    if files.sources:
        whole = not any(d.is_error for d in found)
        found += Session(files.sources, folder, whole=whole).diagnostics
    return outcome(files.sources, found)


@pytest.mark.parametrize("folder", STORED)
def test_a_folder_that_is_no_playbook(
    folder: str, request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(FOLDERS)
    result = read_and_compile(folder)
    assert result.codes == STORED[folder]
    compare(result.shown, FOLDERS / f"{folder}.expected", request)


def _too_large(folder: Path) -> None:
    with (folder / "film.play").open("wb") as file:
        file.truncate(9_000_000)


def _gone(folder: Path) -> None:
    (folder / "link.play").symlink_to("deleted.play")


def _pipe(folder: Path) -> None:
    os.mkfifo(folder / "quick.play")


def _device(folder: Path) -> None:
    (folder / "quick.play").symlink_to("/dev/zero")


def _way_out(folder: Path) -> None:
    (folder.parent / "secret.txt").write_text("nobody's business\n")
    (folder / "quick.play").symlink_to("../secret.txt")


def _circle(folder: Path) -> None:
    (folder / "quick.play").symlink_to("quick.play")


def _other_letters(folder: Path) -> None:
    (folder / "quick.PLAY").write_text("concept Stick\n")


def _named_for_windows(folder: Path) -> None:
    (folder / "quick.play.txt").write_text("concept Stick\n")


def _linked_folder(folder: Path) -> None:
    (folder / "more").symlink_to(folder, target_is_directory=True)


def _long_line(folder: Path) -> None:
    (folder / "long.play").write_text("route Deep Dig\n    stroke up 15" + " then in 8" * 100_000)


MADE = {
    "too-large": (_too_large, "E106"),
    "gone": (_gone, "E107"),
    "long-line": (_long_line, "E111"),
    "pipe": (_pipe, "E108"),
    "device": (_device, "E108"),
    "way-out": (_way_out, "E108"),
    "round-in-a-circle": (_circle, "E107"),
    "other-letters": (_other_letters, "W101"),
    "named-for-windows": (_named_for_windows, "W101"),
    "linked-folder": (_linked_folder, "W102"),
    "no-calls": (lambda folder: None, "W103"),
}
WARNED = ("W101", "W102")
"""Said of a file beside the playbook, which then has no call either."""


@pytest.mark.parametrize("name", MADE)
def test_a_file_that_is_no_play(
    name: str, tmp_path: Path, request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch
) -> None:
    make, code = MADE[name]
    folder = tmp_path / name
    folder.mkdir()
    (folder / "book.play").write_text("playbook Herons\n    code canadian amateur\n")
    make(folder)
    monkeypatch.chdir(tmp_path)
    result = read_and_compile(name)
    assert sorted(result.codes) == sorted([code, *["W103"] * (code in WARNED)])
    compare(result.shown, FOLDERS / f"{name}.expected", request)


def test_a_line_too_far_is_answered_by_what_may_be_typed() -> None:
    """A depth that the next run would refuse is not offered."""
    tag = "tag Wheel for Crossers\n    clear runs post 8 up far hash\n"
    out = compile_case("sample.play", tag)
    assert out.codes == ["E416"]
    assert "give him longer" not in out.shown and "nearer to him" in out.shown
    near = compile_case("sample.play", tag.replace("post 8 up far hash", "go up hash by 8"))
    assert "give him longer, `by " in near.shown
