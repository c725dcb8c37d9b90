"""How much a playbook may say, and what figures mean something: past that, one message in time."""

from __future__ import annotations

import time

import pytest
from corpus.mixing import PROVED, base
from together import together

from stemline.diagnostics.diagnostic import Diagnostic
from stemline.diagnostics.nearest import nearest
from stemline.read.league import FIGURES
from stemline.read.size_limits import (
    LARGEST_FIGURE,
    LONGEST_FIELD,
    MOST_BLOCKS,
    MOST_CALLS,
    MOST_GENERATIONS,
    MOST_LINES,
    MOST_TEXT,
)
from stemline.session import Session
from stemline.source import Source

HUGE = "9" * 309
SECONDS = 5.0
"""CPU seconds that any text of a megabyte may take."""
BOOK = "playbook Herons\n    code canadian amateur\n"


def found(text: str, *, alone: bool = False) -> list[Diagnostic]:
    """Of a text within the base, what the others have of it is proved once."""
    if alone:
        return list(Session([Source("a.play", text)], "a").diagnostics)
    return list(Session([*base(), Source("a.play", text)], "a", store=PROVED).diagnostics)


def in_time(text: str) -> list[Diagnostic]:
    began = time.process_time()
    told = found(text, alone=True)
    assert time.process_time() - began < SECONDS
    return told


def codes(text: str, *, alone: bool = False) -> list[str]:
    return [d.code for d in found(text, alone=alone)]


def test_the_largest_figure_holds_every_field_and_half_a_turn() -> None:
    length, ends = FIGURES["length"].most, FIGURES["end zone"].most
    assert length is not None
    assert ends is not None
    assert length + 2 * ends == LONGEST_FIELD <= LARGEST_FIGURE == 180


FIGURED = (
    "formation A\n    X at away, {} inside numbers, on line",
    "formation A\n    X at away, {} outside X, on line",
    "formation A\n    X at away, numbers, {} deep",
    "formation A\n    splits {}",
    "motion A\n    X moves from {} deep",
    "motion A\n    away #{} moves to away, 6 outside tackle",
    "motion A\n    X moves to away, {} outside tackle",
    "motion A\n    X moves to away, 6 outside tackle\n    X starts {}",
    "motion A\n    X moves to away, 6 outside tackle\n    snap running {}",
    "route A\n    stroke up {}",
    "route A\n    stroke up 5 then in {}",
    "route A\n    stroke up 5 then in 8 at {}",
    "route A\n    stroke up 5\n    depth {}",
    "route A\n    stroke to {} inside numbers",
    "tag A for Crossers\n    dig runs dig {}",
    "tag A for Crossers\n    dig runs dig then up {}",
    "tag A for Crossers\n    dig is strong #{}",
    "tag A for Crossers\n    needs under within {} of tackle at snap",
    "tag A for Crossers\n    dig decides at {} on corner",
    "tag A for Crossers\n    dig runs dig 12 when {} strong",
    "look A\n    S at strong #{}, 7 deep",
    "look A\n    S at strong #1, {} deep",
    "look A\n    S at middle, 12 deep\n    S covers man, strong #{}",
)


@together("line", FIGURED)
@together("figure", [HUGE, f"1-{HUGE}", "1000000", "181"])
def test_a_figure_out_of_bounds_is_said_where_it_stands(line: str, figure: str) -> None:
    if figure.startswith("1-") and ("#" in line or "when" in line):
        return  # no range can stand there
    text = line.format(figure)
    told = [d for d in found(text) if d.code == "E134"]
    assert len(told) == 1
    (number, row) = next((n, r) for n, r in enumerate(text.split("\n"), 1) if figure in r)
    assert (told[0].span.source, told[0].span.line) == ("a.play", number)
    assert row[told[0].span.column - 1 : told[0].span.end - 1].lstrip("#") == figure
    assert len(dict(told[0].values)["figure"]) <= 15


@together("line", [row for row in FIGURED if "#" not in row and "when" not in row])
def test_a_figure_next_to_nothing_is_said(line: str) -> None:
    assert codes(line.format("0." + "0" * 320 + "1")).count("E134") == 1


@pytest.mark.parametrize(
    ("line", "code"),
    [
        ("    X is wideout, {}", "E519"),
        ("    X is wideout, forty {}", "E134"),
    ],
)
def test_a_mans_figures_are_bounded(line: str, code: str) -> None:
    assert code in codes(f"personnel A\n{line.format(HUGE)}")


@together(
    "line", [*(f"league {name} is {{}}" for name in FIGURES), "league ineligible numbers is {}",
             "league ineligible numbers is 1-{}", "house numbers is {}", "house gun is {}",
             "version {}"],
)  # fmt: skip
def test_a_books_figures_are_bounded(line: str) -> None:
    text = BOOK + f"    {line.format(HUGE)}\n"
    told = [d for d in found(text, alone=True) if d.is_error]
    assert [d.code for d in told] in (["E329"], ["E134"])


@pytest.mark.parametrize("digit", ["²", "½", "٣", "３"])
def test_a_digit_of_another_script_is_no_figure(digit: str) -> None:
    assert "E410" in codes(f"tag A for Crossers\n    dig runs dig 12 when {digit} strong")


def test_a_rank_without_a_side_is_said_where_it_stands() -> None:
    text = "look A\n    S at middle, 12 deep\n    S covers man, #2\n"
    told = [d for d in found(text) if d.code == "E482"]
    assert [(d.span.line, d.span.column, d.span.end) for d in told] == [(3, 19, 21)]


def test_a_name_may_have_any_figure() -> None:
    assert codes("route 989\n    stroke up 12\ntag A for Crossers\n    dig runs 989\n") == []


# How much there may be of each thing.


def chain(many: int, *, turned: bool = False) -> str:
    links = [f"concept A{n} extends A{n - 1}\n    say a\n" for n in range(1, many)]
    return BOOK + "concept A0\n    say a\n" + "".join(reversed(links) if turned else links)


@pytest.mark.parametrize("turned", [False, True])
@pytest.mark.parametrize("many", [MOST_GENERATIONS + 2, 290])
def test_a_long_chain_is_one_message_in_time(many: int, turned: bool) -> None:
    text = chain(many, turned=turned)
    (told,) = (d for d in in_time(text) if d.is_error)
    assert told.code == "E143"
    assert f"concept A{MOST_GENERATIONS + 1} extends" in text.split("\n")[told.span.line - 1]


@pytest.mark.parametrize(("many", "turned"), [(400, False), (400, True), (8000, True)])
def test_a_chain_of_more_concepts_than_a_book_has_says_so(many: int, turned: bool) -> None:
    assert [d.code for d in in_time(chain(many, turned=turned))] == ["E144"]


def test_a_chain_as_long_as_may_be_is_right() -> None:
    text = chain(MOST_GENERATIONS + 1)
    assert "E143" not in [d.code for d in found(text, alone=True)]


@pytest.mark.parametrize("many", [3, 12, 290])
def test_a_circle_is_one_message_in_time(many: int) -> None:
    text = BOOK + "".join(
        f"concept A{n} extends A{(n + 1) % many}\n    say a\n" for n in range(many)
    )
    (told,) = (d for d in in_time(text) if d.is_error)
    assert told.code == "E303"
    assert len(dict(told.values)["path"]) < 200


def test_a_circle_of_500_is_answered_in_time() -> None:
    text = BOOK + "".join(f"concept A{n} extends A{(n + 1) % 500}\n    say a\n" for n in range(500))
    assert [d.code for d in in_time(text)] == ["E144"]


def test_one_name_20_000_times_is_one_message() -> None:
    text = BOOK + "route Deep\n    stroke up 9\n" * 8000
    (told,) = (d for d in in_time(text) if d.code == "E301")
    assert dict(told.values)["times"] == "8000 times"


def test_more_text_than_a_book_is_one_message_at_the_line_where_it_is_too_much() -> None:
    text = BOOK + "concept A\n" + "    say a a a a\n" * (MOST_TEXT // 11)
    (told,) = in_time(text)
    assert told.code == "E141"
    before = "".join(line.strip() for line in text.split("\n")[: told.span.line])
    assert MOST_TEXT < len(before) <= MOST_TEXT + 11


def test_comments_are_no_text() -> None:
    assert in_time(BOOK + "// a word on this\n" * 50_000) == []


def test_more_blocks_than_a_book_has_are_one_message() -> None:
    most = MOST_BLOCKS["route"]
    text = BOOK + "".join(f"route A{n}\n    stroke up 9\n" for n in range(most + 100))
    (told,) = in_time(text)
    assert told.code == "E144"
    assert dict(told.values)["found"] == str(most + 100)
    assert f"route A{most}" == text.split("\n")[told.span.line - 1]


def test_more_lines_than_a_block_has_are_one_message() -> None:
    text = BOOK + "concept A\n" + "    a is back\n" * (MOST_LINES + 1)
    (told,) = (d for d in in_time(text) if d.code != "W710")
    assert told.code == "E145"


def test_inherited_lines_count() -> None:
    half = "    a is back\n" * (MOST_LINES // 2 + 1)
    text = BOOK + f"concept A\n{half}concept B extends A\n{half}"
    told = [d for d in in_time(text) if d.code == "E145"]
    assert [d.span.column for d in told] == [len("concept ") + 1]


def test_more_calls_than_a_book_has_are_one_message_before_they_are_made() -> None:
    names = [f"T{n}" for n in range(MOST_CALLS // 2 + 1)]
    tags = "".join(f"tag {name} for Crossers\n    say a\n" for name in names)
    lists = [", ".join(names[n : n + 40]) for n in range(0, len(names), 40)]
    dress = "dress Crossers\n    in Quads, Three Two\n    to right, left\n"
    dress += "".join(f"    with {names}\n" for names in lists)
    began = time.process_time()
    blocks = [Source(s.name, s.text.split("dress Crossers")[0]) for s in base()]
    told = Session([*blocks, Source("a.play", tags + dress)], "a").diagnostics
    assert "E142" in [d.code for d in told]
    assert time.process_time() - began < SECONDS


def test_what_a_dress_up_says_again_makes_no_more_calls() -> None:
    text = "dress Crossers\n" + "    in Quads, Three Two\n" * 90 + "    with plain\n" * 90
    blocks = [Source(s.name, s.text.split("dress Crossers")[0]) for s in base()]
    compiled = Session([*blocks, Source("a.play", text)], "a")
    assert len(compiled.calls.orders) == 2
    assert "E142" not in [d.code for d in compiled.diagnostics]


def test_a_call_that_can_be_cut_in_many_ways_is_read_in_time() -> None:
    tags = "".join(f"tag {' '.join(['a'] * n)} for Crossers\n    say b\n" for n in range(1, 12))
    call = "Quads Right Crossers " + "a " * 50
    dress = f"dress Crossers\n    in Quads\n    call {call} as Long\n"
    blocks = [Source(s.name, s.text.split("dress Crossers")[0]) for s in base()]
    began = time.process_time()
    told = Session([*blocks, Source("a.play", tags + dress)], "a").diagnostics
    assert "E601" in [d.code for d in told]
    assert time.process_time() - began < SECONDS


def test_many_names_that_are_nearly_alike_are_looked_through_in_time() -> None:
    long = "abcdefgh" * 7
    began = time.process_time()
    for n in range(300):
        nearest(f"{long}x{n}", [f"{long}{m}" for m in range(120)])
    assert time.process_time() - began < SECONDS
    assert nearest("x" * 100_000, ["x" * 100_001]) == ()
