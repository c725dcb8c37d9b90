"""What is read of a coach's talk changes nothing that the notation says already."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest

from stemline.source import Source
from stemline.syntax import lexer, spoken_lines
from stemline.syntax.parser import parse

ROOT = Path(__file__).parents[2]
SAMPLE = re.compile(r"^```play(.*)\n((?:.*\n)*?)```$", re.MULTILINE)


def texts() -> Iterator[Source]:
    """Both books, the starters, and every right sample of the pages for coaches."""
    for folder in ("playbooks", "grammar"):
        for path in sorted((ROOT / folder).rglob("*.play")):
            yield Source(str(path.relative_to(ROOT)), path.read_text("utf-8"))
    for path in sorted((ROOT / "grammar").glob("*.md")):
        for words, text in SAMPLE.findall(path.read_text("utf-8")):
            if "fail" not in words:
                yield Source(path.name, text)


def test_no_line_of_a_right_text_is_put_in_other_words(monkeypatch: pytest.MonkeyPatch) -> None:
    asked, put = 0, []

    def watched(name: str, of: Callable[..., Any]) -> Callable[..., Any]:
        def said(kind: str, line: Any, **more: bool) -> Any:
            nonlocal asked
            asked += 1
            found = of(kind, line, **more)
            if found is not None and [*map(str, found)] != [*map(str, line)]:
                put.append(f"{name}, {kind}: {' '.join(line)} -> {' '.join(found)}")
            return found

        return said

    for room, name in (
        (lexer, "plainly"), (lexer, "as_talked"), (spoken_lines, "talked"),
    ):  # fmt: skip
        monkeypatch.setattr(room, name, watched(name, getattr(room, name)))
    for source in texts():
        parse(source)
    assert put == []
    assert asked > 5000
