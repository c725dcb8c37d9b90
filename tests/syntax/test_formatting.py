"""The canonical layout: it changes no play, keeps every comment, and has nothing left to do."""

from __future__ import annotations

import random
from collections.abc import Iterator
from pathlib import Path

import pytest
from click.testing import CliRunner
from together import together

from stemline.commands import main
from stemline.compare.comparing import compared
from stemline.compare.definitions import definitions
from stemline.outside.texts import read_files
from stemline.session import Session
from stemline.source import Source
from stemline.syntax.formatting import formatted
from stemline.syntax.parser import parse
from stemline.syntax.tree import Document

ROOT = Path(__file__).parents[2]
BOOKS = (
    "playbooks/saltmarsh-herons",
    "playbooks/cedar-flats-lanterns",
    *(f"grammar/starter/{folder.name}" for folder in (ROOT / "grammar/starter").iterdir()),
)


def _texts() -> list[Source]:
    return [source for book in BOOKS for source in read_files(ROOT / book).sources]


def _said(tree: Document) -> list[tuple[object, ...]]:
    """Everything a text says, in its order, without places and layout."""
    return [
        (key, d.title, d.parent.casefold(), [line.alike for line in d.lines])
        for key, d in definitions([tree]).items()
    ]


def _spoiled(text: str, draw: random.Random) -> str:
    """The same text as somebody in a hurry has it: blanks, margins, blank lines, curly quotes."""

    def lines() -> Iterator[str]:
        for line in text.splitlines():
            if draw.random() < 0.2:
                yield "" if draw.random() < 0.7 else "   "
            body = line.lstrip()
            margin = line[: len(line) - len(body)]
            parts = body.split('"')
            if len(parts) == 3 and draw.random() < 0.3 and "//" not in body:
                body = f"{parts[0]}“{parts[1]}”{parts[2]}"
            elif len(parts) == 1 and "//" not in body:
                body = body.replace(" ", " " * draw.randint(1, 3)).replace(",  ", " , ")
            yield margin + body + " " * draw.randint(0, 2)

    margin = draw.choice(("  ", "    ", "        "))
    spoiled = "\n".join(lines()) + "\n" * draw.randint(0, 3)
    return "\n".join(
        margin * ((len(line) - len(line.lstrip())) // 4) + line.lstrip() if line.strip() else line
        for line in spoiled.split("\n")
    )


@together("source", _texts(), ids=lambda s: Path(s.name).name)
def test_a_bundled_text_keeps_what_it_says(source: Source) -> None:
    tree, found = parse(source)
    assert not found
    text = formatted(tree)
    again, found = parse(Source(source.name, text))
    assert not found
    assert _said(again) == _said(tree)
    assert [c.text for c in again.comments] == [c.text for c in tree.comments]
    assert formatted(again) == text


@together("seed", range(120))
def test_a_text_in_any_layout_comes_out_in_the_one(seed: int) -> None:
    draw = random.Random(seed)
    source = draw.choice(_texts())
    tree, _ = parse(source)
    spoiled, found = parse(Source(source.name, _spoiled(source.text, draw)))
    assert not found
    assert _said(spoiled) == _said(tree)
    assert _without_blanks(formatted(spoiled)) == _without_blanks(formatted(tree))
    again, _ = parse(Source(source.name, formatted(spoiled)))
    assert formatted(again) == formatted(spoiled)


@pytest.mark.parametrize("name", BOOKS[:2])
def test_a_playbook_in_any_layout_compares_as_the_same_when_formatted(name: str) -> None:
    texts, draw = read_files(ROOT / name).sources, random.Random(7)
    spoiled = [parse(Source(s.name, _spoiled(s.text, draw)))[0] for s in texts]
    after = [Source(s.name, formatted(t)) for s, t in zip(texts, spoiled, strict=True)]
    old = Session(texts, name)
    found = compared(old, Session(after, name, beside=old))
    assert found.is_same and found.same == len(old.calls.orders)


def _without_blanks(text: str) -> list[str]:
    return [line for line in text.splitlines() if line]


def test_comments_go_with_what_follows_them() -> None:
    text = """\
// The book.
playbook  Herons
      // A code.
  code   canadian amateur // of 2026
  // At the end.
// Of the men.

// Of the first.
personnel Base
    Q is quarterback
"""
    assert (
        formatted(parse(Source("a.play", text))[0])
        == """\
// The book.
playbook Herons
    // A code.
    code canadian amateur  // of 2026
    // At the end.

// Of the men.

// Of the first.
personnel Base
    Q is quarterback
"""
    )


def test_a_line_that_cannot_be_read_stays_as_it_is() -> None:
    text = "concept Stick\n    one is  strong #1\n    one  rnus  slant !!\nnothing  known\n"
    assert formatted(parse(Source("a.play", text))[0]) == (
        "concept Stick\n    one is strong #1\n    one  rnus  slant !!\n\nnothing  known\n"
    )


@pytest.mark.parametrize(
    "header",
    ["concept  Foo extends", "look A  extends B extends C", "formatoin  Trey", "tag A  for"],
)
def test_no_word_of_a_first_line_that_cannot_be_read_is_lost(header: str) -> None:
    assert formatted(parse(Source("a.play", f'{header}\n    say  "So."\n'))[0]) == (
        f'{header}\n    say "So."\n'
    )


@pytest.mark.parametrize(("line", "code"), [("one runs slant", 0), ("one  rnus  slant !!", 2)])
def test_an_editor_is_told_of_a_text_that_cannot_be_read_and_has_it_back(
    line: str, code: int
) -> None:
    text = f"concept Stick\n    {line}\n"
    answer = CliRunner().invoke(main, ["format", "-"], input=text)
    assert (answer.exit_code, answer.stdout, bool(answer.stderr)) == (code, text, code > 0)
