"""A session answers what is asked, each question once: counted at the makers themselves."""

from __future__ import annotations

import json
import os
import shutil
import subprocess
import sys
from collections import Counter
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner
from syrupy.assertion import SnapshotAssertion

import stemline.checks.proving as proving
import stemline.football.timing.clock as clock
import stemline.resolve.expand as expand
from stemline.commands import main, options
from stemline.commands.show import STAGES
from stemline.emit.pdf import page_list
from stemline.football.field import BallSpot
from stemline.outside.project import read_files
from stemline.printing import comparison_book, printed_season, week_papers
from stemline.resolve.sealing import seal
from stemline.session import Session
from stemline.stages import STAGES as KNOWN
from stemline.theme import SIZES

HERONS = Path(__file__).parent.parent / "playbooks" / "saltmarsh-herons"
BASE = Path(__file__).parent / "corpus" / "base"
STARTER = Path(__file__).parent.parent / "grammar" / "starter" / "high-school"
CALL = "Three Two Right Crossers"


def _placed(look: Any, men: Any, moves: Mapping[str, object]) -> object:
    return look.name, look.span, seal(men), seal(tuple(moves.items()))


class Counted:
    """How often each maker was asked, by all that it was asked with.

    A look is known by its place too: one of last year's text is another, though alike.
    """

    def __init__(self, patch: pytest.MonkeyPatch) -> None:
        self.makers = 0
        self.casts: Counter[object] = Counter()
        self.looks: Counter[object] = Counter()
        self.clocks: Counter[object] = Counter()
        clock.read_clock.cache_clear()
        begin, cast = expand.Expander.__init__, expand.Cast.__init__

        def began(maker: expand.Expander, book: Any) -> None:
            self.makers += 1
            begin(maker, book)

        def expanded(made: expand.Cast, parts: Any) -> None:
            self.casts[seal(parts), parts.span] += 1
            cast(made, parts)

        patch.setattr(expand.Expander, "__init__", began)
        patch.setattr(expand.Cast, "__init__", expanded)
        self._wrap(patch, expand, "line_up_defence", self.looks, _placed)
        self._wrap(patch, clock, "timelines", self.clocks, lambda play, level: (play, level.name))

    @staticmethod
    def _wrap(
        patch: pytest.MonkeyPatch,
        room: Any,
        name: str,
        counts: Counter[object],
        key: Callable[..., object],
    ) -> None:
        made = getattr(room, name)

        def counted(*args: Any) -> Any:
            counts[key(*args)] += 1
            return made(*args)

        patch.setattr(room, name, counted)

    @property
    def twice(self) -> dict[str, int]:
        kinds = {"casts": self.casts, "looks": self.looks, "clocks": self.clocks}
        return {name: len([n for n in c.values() if n > 1]) for name, c in kinds.items()}


@pytest.fixture
def counted(monkeypatch: pytest.MonkeyPatch) -> Counted:
    return Counted(monkeypatch)


def run(*args: str | Path) -> str:
    result = CliRunner().invoke(main, [str(a) for a in args])
    assert result.exit_code == 0, result.output
    return result.stdout


NOTHING_TWICE = {"casts": 0, "looks": 0, "clocks": 0}


WEEK = """week 1 Larch Bay
    faces Over Three
    openers
        Trips Right Stick
        Doubles Right Inside Zone
    situation 3rd and 3 to 5
        Doubles Right Stick
        Doubles Left Stick
    scout Tuesday
        Trips Right Stick against Over Three
    period Team, 10 minutes, thud, Tuesday
        openers
    quiz H, Y on Thursday
"""
LAST_YEAR = ("runs fade", "runs go")


@pytest.fixture(scope="module")
def kept(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A starter with a week, as a repository whose last commit changed a concept: `book`; and as
    it was before: `old`."""
    folder = tmp_path_factory.mktemp("kept")
    book, old = folder / "book", folder / "old"
    shutil.copytree(STARTER, old)
    quick = (old / "quick.play").read_text("utf-8")
    (old / "quick.play").write_text(quick.replace(*LAST_YEAR), "utf-8")
    (old / "week.play").write_text(WEEK, "utf-8")
    shutil.copytree(old, book)
    who = ("-c", "user.name=A", "-c", "user.email=a@example.org", "-c", "commit.gpgsign=false")
    for words in (("init", "-q"), ("add", "."), ("commit", "-qm", "One")):
        subprocess.run(["git", "-C", str(book), *who, *words], check=True)
    (book / "quick.play").write_text(quick, "utf-8")
    subprocess.run(["git", "-C", str(book), *who, "commit", "-qam", "Two"], check=True)
    return folder


COMMANDS = {
    "new new": 0,
    "format --check book": 0,
    "merge base.play ours.play theirs.play": 0,
    "list book": 0,
    "history book Stick": 0,
    "rename book Trips Trio --yes": 1,
    "show book CALL --as scene": 1,
    "draw book CALL --against LOOK -o a.svg": 1,
    "draw book CALL --before old -o a.svg": 2,
    "check book": 1,
    "check book --timing": 1,
    "sheet book -o a.svg": 1,
    "sheet book --views -o a.svg": 1,
    "build book --out out": 1,
    "week book 1 --out out": 1,
    "week book 1 --only data --no-pages --out out": 1,
    "compare old book": 2,
    "compare old book --stat": 2,
    "compare old book --for Z": 2,
    "compare HEAD~1 HEAD --in book --json": 2,
    "compare old book --book a.pdf": 2,
    "history book Stick -o a.svg": 2,
}
"""What is asked, and how many makers of plays it takes: a playbook has one, two have two."""


def _not_set(_: object, pictures: int, make: Callable[..., bytes], *values: Any) -> bytes:
    """What a page engine would be given, and no page set: that takes the longest of all."""
    assert pictures
    pages = {line.id: 1 for line in values[0].index.calls} if make is page_list else {}
    return json.dumps(pages).encode()


@pytest.mark.parametrize("asked", COMMANDS)
def test_a_command_works_nothing_out_twice(
    asked: str, kept: Path, counted: Counted, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """No cast expanded, look placed or clock read twice on the same inputs."""
    for room in (printed_season, week_papers, comparison_book):
        monkeypatch.setattr(room, "apart", _not_set)
    monkeypatch.setattr(week_papers, "page_count", lambda _: 1)
    shutil.copytree(kept, tmp_path, dirs_exist_ok=True)
    for side in ("base", "ours", "theirs"):
        shutil.copy(kept / "book" / "quick.play", tmp_path / f"{side}.play")
    words = {"CALL": "Trips Left Stick", "LOOK": "Over Three"}
    names = {"new", "book", "old", "out"}
    args = [
        str(tmp_path / word) if (at and word in names) or "." in word else words.get(word, word)
        for at, word in enumerate(asked.split())
    ]
    result = CliRunner().invoke(main, args)
    assert result.exit_code == (asked.startswith("compare")), result.output
    assert counted.twice == NOTHING_TWICE
    assert counted.makers == COMMANDS[asked]
    assert bool(counted.casts) == (counted.makers > 0)


def test_no_command_is_left_uncounted() -> None:
    """All but git's settings, what git asks of one text, and a page whose every sample is a
    playbook of its own."""
    counted = {asked.split()[0] for asked in COMMANDS}
    assert counted == set(main.commands) - {"install-git", "tell", "handbook"}


def test_a_season_works_nothing_out_twice(counted: Counted) -> None:
    """A playbook in which more is wrong and more depends on the look."""
    run("check", "--no-cache", "--timing", BASE)
    assert counted.makers == 1
    assert counted.casts
    assert counted.twice == NOTHING_TWICE


def test_a_list_of_calls_makes_no_play(counted: Counted) -> None:
    assert CALL in run("list", HERONS).splitlines()
    assert counted.makers == 0
    assert not counted.casts


@pytest.mark.parametrize("more", [[], ["--against", "Over Three"], ["--from", "left hash"]])
def test_a_picture_makes_its_own_play_and_no_other(more: list[str], counted: Counted) -> None:
    run("draw", HERONS, CALL, *more)
    assert (counted.makers, len(counted.casts)) == (1, 1)
    assert counted.twice == NOTHING_TWICE


def test_a_sheet_makes_what_it_shows_and_proves_nothing(
    counted: Counted, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    monkeypatch.setattr(Session, "diagnostics", property(lambda _: pytest.fail("proved")))
    listed = run("sheet", HERONS, "--only", "Crossers", "-o", tmp_path / "sheet.svg")
    calls = sum("Crossers" in call for call in run("list", HERONS).splitlines())
    assert listed.endswith(f": {calls} pictures\n")
    assert (counted.makers, len(counted.casts)) == (1, calls)
    assert counted.twice == NOTHING_TWICE


def test_what_is_pictured_is_what_is_proved() -> None:
    session = Session(read_files(BASE).sources, "base")
    pictured, unmade = session.pictured()
    assert not unmade
    assert pictured == session.season
    assert pictured is not None
    assert session.is_whole(pictured)


def test_a_proof_of_one_call_is_what_the_season_has_of_it() -> None:
    sources = read_files(BASE).sources
    alone, whole = Session(sources, "base"), Session(sources, "base")
    assert whole.season is not None
    proved = {play.call.spoken: play for play in whole.season.plays}
    for name in whole.calls.by_name:
        proof = alone.proof(name)
        assert proof.right == (name in proved)
        assert proof.right != any(d.is_error for d in proof.found)
        assert not proof.right or proof.reads == bool(proved[name].reads)


@pytest.mark.parametrize("only", ["Stick", "stick", "Quick"])
def test_what_is_asked_for_by_name_is_proved_alone(
    only: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A concept or a family: its calls are as in the whole season, and no other is proved."""
    sources = read_files(STARTER).sources
    alone, whole = Session(sources, "starter"), Session(sources, "starter")
    proved: list[str] = []
    make = proving.prove_call

    def counted(*asked: Any) -> Any:
        proved.append(asked[-1].concept)
        return make(*asked)

    monkeypatch.setattr(proving, "prove_call", counted)
    season, found = alone.proved(only)
    assert season is not None and not alone.is_whole(season)
    named = {order.concept for _, order in alone.named(only)}
    assert named == set(proved)
    assert whole.season is not None and named < set(proved), "the whole proves others too"
    plays = whole.season.plays
    assert season.plays == tuple(p for p in plays if p.call.concept.casefold() in named)
    assert set(found) <= set(whole.diagnostics)
    assert alone.proved("nobody's") == (alone.season, alone.diagnostics)


def test_what_is_wrong_with_a_definition_reaches_who_touches_it(tmp_path: Path) -> None:
    """A line that was not read is told by `list` in the words of `check`; who draws hears of it."""
    for path in STARTER.glob("*.play"):
        text = path.read_text("utf-8").replace("runs fade", "runs faed")
        (tmp_path / path.name).write_text(text, "utf-8")
    runner = CliRunner()
    checked, listed = (runner.invoke(main, [name, str(tmp_path)]) for name in ("check", "list"))
    assert listed.exit_code == 1
    assert "Inside Zone" in listed.stdout and "Stick" not in listed.stdout
    assert "error E442" in listed.stderr
    assert listed.stderr.strip() in checked.stderr
    drawn = runner.invoke(main, ["draw", str(tmp_path), "Trips Left Stick"])
    assert "the playbook has 2 errors: see stemline check" in drawn.stderr


def test_what_is_wrong_with_a_call_reaches_who_draws_it(tmp_path: Path) -> None:
    """A man who could not be placed: what follows of it for this call, and no picture."""
    for path in STARTER.glob("*.play"):
        text = path.read_text("utf-8").replace("5 deep", "5 dep")
        (tmp_path / path.name).write_text(text, "utf-8")
    drawn = CliRunner().invoke(main, ["draw", str(tmp_path), "Trips Left Stick"])
    assert (drawn.exit_code, drawn.stdout) == (1, "")
    assert "error E620: in Trips Left Stick nobody can be the flat" in drawn.stderr


HEAVY = (
    "numpy", "lark", "jinja2", "fontTools", "weasyprint", "stemline.session", "stemline.theme",
    "stemline.read.coach_lines", "stemline.resolve.expand", "multiprocessing", "filelock",
)  # fmt: skip


@pytest.mark.parametrize(
    "asked", [["--help"], ["--version"], ["draw", "--help"], ["check", "--help"]]
)
def test_help_loads_nothing_heavy(asked: list[str]) -> None:
    assert _loaded(asked, {}) == []


def test_a_list_of_calls_loads_no_numbers() -> None:
    assert _loaded(["list", str(STARTER)], {}) == ["lark", "stemline.session"]


def test_a_list_after_a_check_parses_nothing_and_says_the_same(tmp_path: Path) -> None:
    """Nor does a picture; and neither keeps anything where no check has."""
    cache = {"XDG_CACHE_HOME": str(tmp_path / "cache"), "HOME": str(tmp_path)}
    environment = {**cache, "STEMLINE_NO_CACHE": ""}
    folder = tmp_path / "book"
    shutil.copytree(STARTER, folder)
    assert "lark" in _loaded(["list", str(folder)], environment)
    assert not list(tmp_path.rglob("results.db"))
    before = run("list", folder)
    assert "lark" in _loaded(["check", str(folder)], environment)
    assert _loaded(["list", str(folder)], environment) == ["stemline.session"]
    call = before.splitlines()[0]
    picture = ["draw", str(folder), call, "-o", str(tmp_path / "call.svg")]
    program = [sys.executable, "-m", "stemline", "list", str(folder)]
    done = subprocess.run(
        program, env={**os.environ, **environment}, capture_output=True, text=True, check=True
    )
    assert done.stdout == before
    assert not {"lark", "multiprocessing", "filelock"} & {*_loaded(picture, environment)}
    assert (tmp_path / "call.svg").read_text("utf-8") == run("draw", folder, call)


def test_completion_of_a_shell_loads_nothing_heavy() -> None:
    words = {"_STEMLINE_COMPLETE": "bash_complete", "COMP_WORDS": "stemline dr", "COMP_CWORD": "1"}
    assert _loaded([], words) == []


def _loaded(asked: list[str], environment: dict[str, str]) -> list[str]:
    program = (
        "import os, sys\n"
        f"os.environ.update({environment!r})\n"
        f"sys.argv = ['stemline', *{asked!r}]\n"
        "from stemline.__main__ import main\n"
        "try:\n    main()\n"
        "except SystemExit as end:\n    assert not end.code, end.code\n"
        f"print('LOADED', *[m for m in {HEAVY!r} if m in sys.modules])\n"
    )
    done = subprocess.run(
        [sys.executable, "-c", program], capture_output=True, text=True, check=True, timeout=60
    )
    assert len(done.stdout) > len("LOADED\n"), "it said something of its own"
    return done.stdout.splitlines()[-1].split()[1:]


def test_options_offer_what_the_compiler_knows() -> None:
    assert tuple(spot.value for spot in BallSpot) == options.SPOTS
    assert tuple(SIZES) == options.SIZES
    assert STAGES == KNOWN


@pytest.mark.parametrize("stage", STAGES)
def test_a_stage_is_shown_as_text(stage: str, snapshot: SnapshotAssertion) -> None:
    """A tree and a play whole; of a scene as much as a person reads, its layers' names beside."""
    lines = run("show", STARTER, "Trips Left Stick", "--as", stage).splitlines()
    layers = [line for line, above in zip(lines[1:], lines, strict=False) if "Layer" in above]
    assert "\n".join([*lines[:130], *layers]) == snapshot


def test_a_call_that_is_not_there_shows_no_stage() -> None:
    result = CliRunner().invoke(main, ["show", str(STARTER), "Trips Left Stik"])
    assert result.exit_code == 1
    assert "Trips Left Stick" in result.stderr
