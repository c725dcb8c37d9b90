"""The commands, run as a coach runs them."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path

import pypdf
import pytest
from running import run
from test_cli_answers import HEAD

BOOKS = Path(__file__).parent.parent / "playbooks"
HERONS = BOOKS / "saltmarsh-herons"
LANTERNS = BOOKS / "cedar-flats-lanterns"
CROWDED = Path(__file__).parent / "gate" / "crowded"


pytestmark = pytest.mark.usefixtures("kept")


@pytest.fixture
def starter(tmp_path: Path) -> Path:
    folder = tmp_path / "mine"
    assert run("new", folder).exit_code == 0
    return folder


def spoil(folder: Path) -> None:
    path = folder / "quick.play"
    path.write_text(path.read_text("utf-8").replace("runs fade", "runs faed"), "utf-8")


@pytest.mark.parametrize("folder", [HERONS, LANTERNS], ids=lambda p: p.name)
def test_bundled_playbooks_are_clean(folder: Path) -> None:
    result = run("check", folder)
    assert result.exit_code == 0, result.stderr
    assert result.stderr == ""
    *lines, last = result.stdout.splitlines()
    assert "no errors, no warnings" in last
    # Concepts without an answer stand above the count, in lines that a terminal holds.
    assert len(lines) < 12 and max(map(len, lines), default=0) <= 110
    if folder is HERONS:
        assert lines[0].startswith(HEAD) and len(lines) > 1 and last.startswith("Saltmarsh Herons:")


def test_check_lists_crowded_pictures_worst_first() -> None:
    result = run("check", "--pictures", CROWDED)
    assert result.exit_code == 0, result.stderr
    _, heading, *rows, closing = result.stdout.splitlines()
    assert heading.startswith("Crowded pictures, worst first.")
    costs = [float(row.split("(")[1].split(";")[0]) for row in rows]
    assert costs == sorted(costs, reverse=True)
    calls = {row.split(",")[0].strip() for row in rows}
    assert closing == f"10 calls, {len(calls)} crowded"
    assert "Clutch Right Rush Thicket, large: " in result.stdout


def test_check_of_pictures_may_be_narrowed_and_finds_nothing_in_a_simple_book(
    starter: Path,
) -> None:
    result = run("check", "--pictures", starter)
    assert result.stdout.splitlines()[-1].endswith(" calls, none crowded")
    assert "Crowded pictures" not in result.stdout
    result = run("check", "--pictures", "--only", "Shoebox", CROWDED)
    assert result.stdout.splitlines()[-1].startswith("2 calls, ")
    assert "Times are planning estimates" not in result.stdout
    assert run("check", "--pictures", "--only", "Shoobox", CROWDED).exit_code == 2


def test_new_makes_a_playbook_that_is_clean(starter: Path) -> None:
    assert run("check", starter).exit_code == 0
    assert run("check", starter).stderr == ""


def test_new_has_a_run_drawn_against_a_look(starter: Path) -> None:
    said = run("draw", starter, "Doubles Right Inside Zone").stdout
    assert "Run to the right by B" in said
    assert "Against Over Three" in said
    assert "RG, the playside guard: block T." in said


def test_new_does_not_touch_a_folder_with_files(starter: Path) -> None:
    before = {p: p.read_bytes() for p in starter.iterdir()}
    assert run("new", starter).exit_code == 2
    assert {p: p.read_bytes() for p in starter.iterdir()} == before


def test_check_says_what_is_wrong_and_exits_1(starter: Path) -> None:
    spoil(starter)
    result = run("check", starter)
    assert result.exit_code == 1
    assert "error E442" in result.stderr
    assert "nearest: fade" in result.stderr


def test_a_missing_folder_is_a_usage_error_with_the_nearest_name(tmp_path: Path) -> None:
    (tmp_path / "herons").mkdir()
    result = run("check", tmp_path / "heron")
    assert result.exit_code == 2
    assert "E101" in result.stderr
    assert "nearest: herons" in result.stderr


@pytest.mark.parametrize("args", [["chekc", "x"], ["check"], ["draw", "x"]])
def test_wrong_usage_exits_2(args: list[str]) -> None:
    assert run(*args).exit_code == 2


def test_list_prints_each_call_once(starter: Path) -> None:
    lines = run("list", starter).stdout.splitlines()
    assert "Trips Left Stick" in lines
    assert len(lines) == len(set(lines)) == 10


def test_list_count_shows_how_receivers_are_counted() -> None:
    lines = run("list", HERONS, "--count").stdout.splitlines()
    quads = next(line for line in lines if line.startswith("Quads Right:"))
    assert "4x1" in quads
    assert "strong (right) #1 Z, #2 S, #3 H, #4 W" in quads
    assert "weak (left) #1 X" in quads
    assert any(line.startswith("Quads Right Tuck:") for line in lines)


def test_draw_writes_a_picture(starter: Path, tmp_path: Path) -> None:
    out = tmp_path / "stick.svg"
    assert run("draw", starter, "trips left stick", "-o", out).exit_code == 0
    assert out.read_text("utf-8").startswith("<svg")
    assert run("draw", starter, "Trips Left Stick").stdout == out.read_text("utf-8")


def test_draw_takes_a_call_that_no_dress_up_makes(starter: Path) -> None:
    assert run("draw", starter, "Trips Right Stick").exit_code == 0


def test_draw_from_a_hash_and_against_a_look_changes_the_picture() -> None:
    call = "Three Two Right Crossers"
    plain = run("draw", HERONS, call).stdout
    assert run("draw", HERONS, call, "--from", "left hash").stdout != plain
    against = run("draw", HERONS, call, "--against", "off, zone").stdout
    assert against != plain
    named = run("draw", HERONS, call, "--against", "over three")
    assert named.exit_code == 0
    assert named.stdout not in (plain, against)
    # The men of a look by name do what they are there for: they drop to a ground with its word.
    assert "third" in named.stdout.partition("</desc>")[0]
    assert 'class="drops"' in named.stdout and 'class="drops"' not in plain


def test_draw_names_the_nearest_call_and_look(starter: Path) -> None:
    result = run("draw", starter, "Trip Left Stick")
    assert result.exit_code == 1
    assert "Trips Left Stick" in result.stderr
    result = run("draw", starter, "Trips Left Stick", "--against", "zoen")
    assert result.exit_code == 1
    assert "nearest: zone" in result.stderr
    result = run("draw", HERONS, "Three Two Right Crossers", "--against", "Ovr Three")
    assert result.exit_code == 1
    assert "nearest: Over Three" in result.stderr


def test_draw_works_while_another_concept_is_broken(starter: Path) -> None:
    (starter / "more.play").write_text("concept Broken\n    x is strng #1\n", "utf-8")
    result = run("draw", starter, "Trips Left Stick")
    assert result.exit_code == 0
    assert "see stemline check" in result.stderr


def test_build_writes_the_book_and_a_changed_word_changes_it(starter: Path) -> None:
    assert run("build", starter).exit_code == 0
    book = starter / "build" / "book.pdf"
    before = text_of(book)
    assert "Trips Left Stick" in before
    path = starter / "quick.play"
    path.write_text(path.read_text("utf-8").replace("stick 6", "stick 7"), "utf-8")
    assert run("build", starter).exit_code == 0
    assert "Stick at 6." in before
    assert "Stick at 7." in text_of(book)


def text_of(book: Path) -> str:
    return "\n".join(page.extract_text() for page in pypdf.PdfReader(book).pages)


def test_a_failed_build_leaves_the_last_good_one(starter: Path) -> None:
    run("build", starter)
    good = {p: p.read_bytes() for p in (starter / "build").rglob("*") if p.is_file()}
    spoil(starter)
    assert run("build", starter).exit_code == 1
    assert {p: p.read_bytes() for p in (starter / "build").rglob("*") if p.is_file()} == good
    assert [p.name for p in starter.iterdir() if p.name.startswith(".")] == [".gitignore"]


def test_build_out_and_only(starter: Path, tmp_path: Path) -> None:
    out = tmp_path / "elsewhere"
    assert run("build", starter, "--out", out, "--only", "stick").exit_code == 0
    assert (out / "book.pdf").exists()
    result = run("build", starter, "--only", "stik")
    assert result.exit_code == 2
    assert "nearest: Stick" in result.stderr


NO_PANGO = """
import json, sys
class Missing:
    def find_spec(self, name, path=None, target=None):
        if name.split(".")[0] == "weasyprint":
            raise OSError("cannot load library 'libpango-1.0-0'")
sys.meta_path.insert(0, Missing())
from click.testing import CliRunner
from stemline.commands import main
for words in json.loads(sys.argv[1]):
    done = CliRunner().invoke(main, words)
    wrong = "" if isinstance(done.exception, SystemExit | None) else repr(done.exception)
    print(json.dumps([done.exit_code, done.stderr + wrong]))
"""


def without_pango(*asked: list[str]) -> list[tuple[int, str]]:
    """How each command ends, and what it says of what hinders it, all in one process."""
    words = [sys.executable, "-c", NO_PANGO, json.dumps(asked)]
    said = subprocess.run(words, capture_output=True, text=True, check=True).stdout
    return [(code, told) for code, told in map(json.loads, said.splitlines())]


def test_without_pango_only_build_asks_for_it(starter: Path) -> None:
    book = str(starter)
    *others, (code, told) = without_pango(
        ["check", book], ["list", book], ["draw", book, "Trips Left Stick"], ["build", book]
    )
    assert others == [(0, "")] * 3
    assert code == 2
    assert "apt-get install" in told and "Error" not in told
    assert not (starter / "build").exists()


def test_a_screen_without_its_man_is_a_message_and_no_traceback() -> None:
    """A screen of the book called from a set that has nobody to throw it to."""
    result = run("draw", HERONS, "quads left tuck throwback")
    assert result.exit_code == 1
    assert "nobody can be the screen" in result.stderr


def test_a_called_formation_without_a_quarterback_is_a_message_and_no_traceback(
    tmp_path: Path,
) -> None:
    base = Path(__file__).parent / "corpus" / "base"
    for play in base.glob("*.play"):
        text = play.read_text("utf-8").replace("    Q at ball, 5 deep\n", "")
        (tmp_path / play.name).write_text(text, "utf-8")
    result = run("check", tmp_path)
    assert result.exit_code == 1
    assert "error E513" in result.stderr
    assert "Traceback" not in result.stderr
