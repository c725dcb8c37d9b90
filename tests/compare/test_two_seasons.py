"""Two seasons of one playbook in git, by two coaches: what is said between tags, days and branches,
and of one concept through all of them."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cache
from pathlib import Path

import pytest
from click.testing import CliRunner, Result
from compare.two_seasons import ADA, BRAM, LAST, THIS, build

from stemline.commands import main
from stemline.compare import strip
from stemline.compare.strip import DatedSession, StripTurn, strip_file
from stemline.football.timing.levels import HIGH_SCHOOL
from stemline.outside.project import files_at
from stemline.outside.texts import Files, read_files
from stemline.printing.drawings import Drawings
from stemline.theme import load_theme

pytestmark = pytest.mark.usefixtures("kept")


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return build(tmp_path_factory.mktemp("seasons") / "herons")


def _run(*said: str) -> Result:
    result = CliRunner().invoke(main, said)
    assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
    return result


def _compared(folder: Path, old: str, new: str, *more: str) -> str:
    said = _run("compare", old, new, "--in", str(folder), *more)
    assert said.exit_code == 1, said.stderr
    return said.stdout


def test_tags_say_what_the_two_folders_say(folder: Path) -> None:
    """They hold the same texts, and are counted alike; what follows hangs on the texts alone."""
    for tag, kept in (("season-2025", LAST), ("season-2026", THIS)):
        at, _ = files_at(folder, tag)
        assert at is not None and _texts(at) == _texts(read_files(kept))
    between = _compared(folder, "season-2025", "season-2026", "--stat")
    assert between == _run("compare", str(LAST), str(THIS), "--stat").stdout


def _texts(files: Files) -> dict[str, str]:
    return {Path(each.name).name: each.text for each in files.sources}


def test_between_two_days_is_what_was_committed_between_them(folder: Path) -> None:
    said = _compared(folder, "2026-02-10", "2026-03-10", "--no-cache")
    assert "Ferry takes the place of Breakout" in said and "concept Deep Over" in said
    assert not re.search("Smash|Stack|Tandem|Slants|Dagger|Scissors", said)


def test_a_branch_is_told_alone(folder: Path) -> None:
    said = _compared(folder, "crossing~1", "crossing", "--stat")
    assert re.search(r"^All +\d+ +0 +11 +0$", said, re.MULTILINE)
    assert "concept Deep Over" in _compared(folder, "crossing~1", "crossing", "--only", "Deep Over")


def test_each_revision_that_changed_a_concept_is_told(folder: Path) -> None:
    heads = [line for line in _run("history", str(folder), "Smash", "--who").stdout.splitlines()
             if line[0] != " "]  # fmt: skip
    told = [(line[:10], line.partition(", ")[2]) for line in heads]
    assert told == [("2025-08-10", ADA), ("2026-01-12", BRAM), ("2026-03-15", BRAM)]
    assert "it was called Tandem" in _run("history", str(folder), "Stack").stdout


def test_a_line_stands_since_the_day_it_was_written_so(folder: Path) -> None:
    rows = _run("history", str(folder), "Smash", "--lines", "--who").stdout.splitlines()
    said = {row.partition("  ")[2]: row.partition("  ")[0] for row in rows}
    assert re.fullmatch(rf"2026-01-12 \w+ {BRAM}", said["flag runs corner 10"])
    assert re.fullmatch(rf"2025-08-10 \w+ {ADA}", said["short runs hitch 6"])
    assert re.fullmatch(
        rf"2026-03-15 \w+ {BRAM}", said["read flag on 3 > short on hitch > outlet on hitch"]
    )


@dataclass
class Strips:
    """The strip of Smash as the command writes it, and the turns it found; other strips are asked
    of the revisions that it read, so each is read once, and each pair of them compared once."""

    said: str
    smash: tuple[StripTurn, ...] = ()
    read: Sequence[DatedSession] = ()

    def turns(self, name: str) -> tuple[StripTurn, ...]:
        return strip.strip_turns(self.read, name)


@pytest.fixture(scope="module")
def strips(folder: Path, kept: None, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Strips]:
    found, ask = Strips(""), strip.strip_turns

    def asked(read: Sequence[DatedSession], name: str) -> tuple[StripTurn, ...]:
        found.read, found.smash = read, ask(read, name)
        return found.smash

    svg = tmp_path_factory.mktemp("strips") / "strip.svg"
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(strip, "compared", cache(strip.compared))
        with pytest.MonkeyPatch.context() as listening:
            listening.setattr(strip, "strip_turns", asked)
            assert _run("history", str(folder), "Smash", "-o", str(svg)).exit_code == 0
        found.said = svg.read_text("utf-8")
        yield found


def test_a_strip_has_a_picture_for_each_change_of_its_plays(strips: Strips) -> None:
    turns = strips.smash
    assert [turn.day for turn in turns] == ["2025-08-10", "2026-01-12", "2026-03-15"]
    assert turns[0].was is None and turns[1].was is not None
    depths = [max(leg.to.y for leg in _path(turn)) for turn in turns]
    said = [turn.otherwise for turn in turns]
    assert said == ["", "", "reads and under pressure"], "two pictures alike say what is not"
    assert depths[0] - depths[1] == pytest.approx(2.0, abs=0.01) and depths[1] == depths[2]


def _path(turn: StripTurn) -> tuple:  # type: ignore[type-arg]
    (task,) = (t for t in turn.now.assignments if t.role == "flag")
    assert task.path is not None
    return task.path.legs


def test_a_protection_and_a_formation_reach_the_strips_of_what_is_made_of_them(
    strips: Strips,
) -> None:
    assert [turn.day for turn in strips.turns("Flood")] == ["2025-08-10", "2026-03-03"]
    days = [turn.day for turn in strips.turns("Stack")]
    assert days == ["2025-08-10", "2026-01-12", "2026-03-15"], "a new name moves nobody"


def test_the_strip_is_written_as_what_is_asked_for(
    strips: Strips, folder: Path, tmp_path: Path
) -> None:
    days = re.findall(r'data-text="(\d{4}-\d\d-\d\d)', strips.said)
    assert days == ["2025-08-10", "2026-01-12", "2026-03-15"]
    assert BRAM not in strips.said, "who it was is not shown unless it is asked for"
    turns, theme = strips.smash, load_theme()
    drawings = Drawings(theme, HIGH_SCHOOL)
    assert BRAM in strip_file(turns, "Smash", drawings, theme, ".svg", who=True).decode()
    for kind, begins in ((".pdf", b"%PDF"), (".png", b"\x89PNG")):
        assert strip_file(turns, "Smash", drawings, theme, kind).startswith(begins)
    wrong = _run("history", str(folder), "Smash", "-o", str(tmp_path / "strip.doc"))
    assert wrong.exit_code == 2 and "E957" in wrong.stderr
