"""Characters that nobody sees, blanks in quotes, and what a merge leaves behind."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from together import together

from stemline.source import Source
from stemline.syntax.characters import readable
from stemline.syntax.parser import MOST_MISTAKES, parse

BLOCK = "concept A\n    x is back\n    x runs swing\n"


def found(text: str) -> list[tuple[str, int]]:
    return [(d.code, d.span.line) for d in parse(Source("test.play", text))[1]]


def names(text: str) -> list[str]:
    return [block.name.text for block in parse(Source("test.play", text))[0].blocks]


@pytest.mark.parametrize(
    "name",
    ["Stick Now", "Stick  Now", " Stick Now ", "Stick\tNow", "Stick\u00a0Now", "Stick \u202f Now"],
)
def test_blanks_in_a_quoted_name_are_one(name: str) -> None:
    assert names(f'concept "{name}"\n    x is back\n') == ["Stick Now"]
    assert found(f'concept "{name}"\n    x is back\n') == []


def test_a_no_break_space_between_words_parts_them() -> None:
    assert names("concept Stick\u00a0Now\n    x\u00a0is back\n") == ["Stick Now"]
    assert found("concept Stick\u00a0Now\n    x\u00a0is back\n") == []


@pytest.mark.parametrize(
    ("margin", "name"),
    [("\t", "a tab"), ("\u00a0 ", "a no-break space"), ("\u3000", "a wide space")],
)
def test_a_margin_that_is_not_spaces_is_called_by_its_name(margin: str, name: str) -> None:
    (told,) = parse(Source("test.play", f"concept A\n{margin}x is back\n"))[1]
    assert (told.code, dict(told.values)["what"]) == ("E110", name)


@together(
    ("char", "code"),
    [
        *((c, "E130") for c in "\x0b\x0c\x85\u2028\u2029"),
        *((c, "E131") for c in "\x00\x07\x08\x1b\x7f\x9b\ud800\uffff"),
        *((c, "E132") for c in "\xad\u200b\u200e\u202e\u2066\u2060\ufeff\u3164\u2800\U000e0041"),
    ],
)
@together("before", ["concept A", 'concept "A', "concept A // a", "concept A b"])
def test_what_nobody_sees_is_said_at_its_place(before: str, char: str, code: str) -> None:
    close = '"' if '"' in before else ""
    text = f"{before}{char}b{close}\n    x is back\n"
    _, (told,) = parse(Source("test.play", text))
    assert (told.code, told.span.column) == (code, len(before) + 1)


def test_joiners_are_left_where_a_script_wants_them() -> None:
    assert found("concept می\u200cدود\n    x is back\n") == []
    assert found("concept क\u094d\u200dष\n    x is back\n") == []
    assert found("concept St\u200dick\n    x is back\n") == [("E132", 1)]


@given(st.text(max_size=60))
def test_nothing_unseen_is_left_in_a_line(text: str) -> None:
    reported: list[object] = []
    lines = readable(Source("test.play", text), reported.append)
    assert all(c.isprintable() or c in "\t\r\u200c\u200d" or ord(c) > 0x7F for c in "".join(lines))
    assert len(lines) == text.count("\n") + 1


MERGED = """\
<<<<<<< mine
concept A
    x is back
=======
concept A
    x is strong #1
>>>>>>> theirs
"""


@pytest.mark.parametrize(
    "text",
    [
        MERGED,
        MERGED.replace("=======", "||||||| base\nconcept A\n    x is weak #1\n======="),
        f"{BLOCK}<<<<<<< HEAD\n    y is back\n=======\n    y is strong #2\n>>>>>>> b\n",
        "concept A\n    x is back\n>>>>>>> theirs\n",
        "concept A\n    x is back\n<<<<<<< mine\n    x runs go\n",
        MERGED * 300,
    ],
)
def test_an_unfinished_merge_is_one_message(text: str) -> None:
    marks = [
        n for n, line in enumerate(text.split("\n"), 1) if line.startswith(("<<<<<<<", ">>>>>>>"))
    ]
    assert found(text) == [("E133", marks[0])]


def test_of_a_merge_the_first_version_is_read() -> None:
    (document, _) = parse(Source("test.play", MERGED))
    assert [len(block.facts) for block in document.blocks] == [1]
    assert document.blocks[0].facts[0].span.line == 3


def test_a_file_of_mistakes_is_not_read_to_its_end() -> None:
    text = BLOCK + "junk )\n" * 100_000
    told = parse(Source("test.play", text))[1]
    assert len(told) == MOST_MISTAKES + 1
    last = told[-1]
    assert (last.code, last.span.line) == ("E140", 3 + MOST_MISTAKES + 1)
    assert dict(last.values)["rest"] == str(100_000 - MOST_MISTAKES)
