"""A man of another letter: every place that means him has it, and nothing else is told."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest
from click.testing import CliRunner

from stemline.commands import main
from stemline.compare.comparing import compared
from stemline.compare.man_letters import as_lettered, lettered, same_plays
from stemline.outside.texts import read_files
from stemline.session import Session
from stemline.source import Source

STARTER = Path(__file__).parents[2] / "grammar/starter/high-school"
MORE = """
// X is the man whom B of ours never meets.
tag Peek for Stick
    X runs post
    X says "X, look in. A yard."

tag X Over for Stick
    Z runs post

run Belly
    carrier is back
    carrier aims playside A
    line blocks down
    everyone else blocks stalk

dress Belly
    in Trips

look Own
    X in 10, strong
"""


def _session(texts: list[Source]) -> Session:
    made = Session(texts, "letters")
    assert not [d for d in made.definitions if d.is_error], made.definitions
    return made


@cache
def _before() -> Session:
    own = [Source(Path(s.name).name, s.text) for s in read_files(STARTER).sources]
    return _session([*own, Source("more.play", MORE)])


def _texts(old: str, new: str) -> list[Source]:
    return [*lettered([tree for tree, _ in _before().trees], old, new)]


@pytest.mark.parametrize(("old", "new"), [("X", "V"), ("B", "K2"), ("Q", "D")])
def test_the_letter_is_told_and_nothing_else(old: str, new: str) -> None:
    before, after = _before(), _session(_texts(old, new))
    assert same_plays(before, after, (old, new))
    side, letters = as_lettered(before, after)
    assert letters == ((old, new),)
    found = compared(side, after, letters=letters)
    assert found.no_play_changed
    assert [(c.roles, c.lines) for c in found.definitions] == [(((old, new),), ())]


def test_gaps_sentences_comments_names_and_defenders_stay() -> None:
    renamed = MORE.replace("X runs post", "V runs post").replace("X says", "V says")
    assert _texts("X", "V")[-1].text.strip() == renamed.strip()
    assert _texts("A", "V")[-1].text.strip() == MORE.strip()


def test_a_play_that_is_another_is_seen() -> None:
    moved = [Source(s.name, s.text.replace("Z at ", "Z at away, ", 1)) for s in _texts("X", "V")]
    assert not same_plays(_before(), Session(moved, "moved"), ("X", "V"))
    assert not same_plays(_before(), _session(_texts("X", "V")), ("Z", "V"))


def test_the_plan_is_shown_with_what_is_left(tmp_path: Path) -> None:
    for tree, _ in _before().trees:
        (tmp_path / tree.source.name).write_text(tree.source.text, "utf-8")

    def run(*said: str) -> tuple[int, str]:
        answer = CliRunner().invoke(main, ["rename", str(tmp_path), *said])
        return answer.exit_code, answer.output

    for new, why in (("Z", "a man's letter already"), ("vv", "a letter is a capital")):
        code, said = run("X", new)
        assert code == 1 and why in said
    code, said = run("X", "V", "--yes")
    assert code == 0 and "+ V runs post" in said
    assert "left as they are" in said and "// X is the man" in said and "X in 10" not in said
