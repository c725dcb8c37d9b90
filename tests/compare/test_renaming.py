"""Another name: every definition of a bundled book can have one, and no play is another by it."""

from __future__ import annotations

from pathlib import Path

import pytest
from click.testing import CliRunner
from resolve.shipped_books import shipped

from stemline.commands import main
from stemline.compare.comparing import compared
from stemline.compare.renaming import RenameTarget, renamed, targets
from stemline.outside.texts import read_files
from stemline.session import Session
from stemline.source import Source
from stemline.syntax.parser import parse

ROOT = Path(__file__).parents[2]


def _before() -> Session:
    return shipped("saltmarsh-herons")


@pytest.mark.parametrize(
    ("kind", "name", "owner"),
    [
        ("formation", "Trey", ""),
        ("formation", "Three Two", ""),
        ("motion", "Waggle", ""),
        ("concept", "Crossers", ""),
        ("run", "Inside Zone", ""),
        ("protection", "Harbour", ""),
        ("look", "Over Three", ""),
        ("personnel", "Base", ""),
        ("tag", "Wheel", "Crossers"),
        ("role", "settle", "Crossers"),
        ("role", "under", "Crossers"),
    ],
)
def test_a_new_name_is_told_as_one_and_moves_nobody(kind: str, name: str, owner: str) -> None:
    trees = [tree for tree, _ in _before().trees]
    target = next(t for t in targets(trees, name) if t.kind == kind and t.owner == owner)
    after = Session(renamed(trees, target, "Zanzi"), "herons")
    assert not [d for d in after.definitions if d.is_error]
    assert not [d for week in after.weeks for d in week.found if d.is_error]
    found = compared(_before(), after)
    assert found.no_play_changed
    assert [
        (c.was.name, c.now.name, c.lines)
        for c in found.definitions
        if kind != "role" and c.was is not None and c.now is not None
    ] == ([(name, "Zanzi", ())] if kind != "role" else [])
    if kind == "role":
        assert [c.roles for c in found.definitions] == [((name, "Zanzi"),)]


def test_a_name_that_is_taken_is_refused(tmp_path: Path) -> None:
    for source in read_files(ROOT / "grammar/starter/high-school").sources:
        (tmp_path / Path(source.name).name).write_text(source.text, "utf-8")
    before = {path: path.read_text("utf-8") for path in tmp_path.glob("*.play")}

    def run(*said: str) -> int:
        return CliRunner().invoke(main, ["rename", str(tmp_path), *said, "--yes"]).exit_code

    assert run("Trips", "Doubles") == 1
    assert run("Trisp", "Bunch") == 2
    assert {path: path.read_text("utf-8") for path in before} == before
    assert run("Trips", "Trio") == 0
    assert "Trips" not in "".join(
        line for path in before for line in path.read_text("utf-8").splitlines()
        if not line.lstrip().startswith("//")
    )  # fmt: skip


FORMS = """
tag Postcard for any pass but Crossers and Smash
    weak #1 runs post

tag Peek for Stick, Slants
    weak #1 runs post

dress Stick, Slants
    in all but Trey motion Waggle with plain, Peek
    never Peek in Doubles
    Peek + Postcard only to right

look Both extends Odd, Quarters

run Belly
    line blocks down when Trey or Trips, press
"""


@pytest.mark.parametrize(
    ("kind", "name", "owner", "lines"),
    [
        ("tag", "Peek", "Stick, Slants", (5, 9, 10, 11)),
        ("tag", "Postcard", "any pass but Crossers and Smash", (2, 11)),
        ("concept", "Smash", "", (2,)),
        ("concept", "Slants", "", (5, 8)),
        ("formation", "Trey", "", (9, 16)),
        ("look", "Quarters", "", (13,)),
    ],
)
def test_a_name_is_found_in_every_form(
    kind: str, name: str, owner: str, lines: tuple[int, ...]
) -> None:
    source = Source("forms.play", FORMS)
    document, found = parse(source)
    assert not found
    (after,) = renamed((document,), RenameTarget(kind, name, owner), "Zanzi")
    changed = [
        n for n, (a, b) in enumerate(zip(source.lines, after.lines, strict=True), 1) if a != b
    ]
    assert tuple(changed) == lines
