"""The print-out: what a terminal is given, and how much of it."""

from __future__ import annotations

import pytest

from stemline.commands.closing_lines import summary
from stemline.diagnostics.catalogue.files import E105, W101
from stemline.diagnostics.catalogue.names import E301, E302
from stemline.diagnostics.diagnostic import Related
from stemline.diagnostics.in_words import either, half_yards, together
from stemline.diagnostics.plain import plain
from stemline.diagnostics.render import MOST, render
from stemline.session import Session
from stemline.source import Source, Span

HOSTILE = "a\x1b[31mred\x1b]0;title\x07\x9bX\u202eabc\u2028\x7f\ud800"


def is_plain(text: str) -> bool:
    return all(c.isprintable() or c == "\n" for c in text)


def test_nothing_that_a_terminal_obeys_is_printed() -> None:
    source = Source(f"{HOSTILE}\n.play", f"{HOSTILE}\n")
    at = Span(source.name, 1, 1, 5)
    twice = E301(kind="concept", name=HOSTILE, times="twice", instead=HOSTILE)
    found = twice.at(at, nearest=(HOSTILE,), related=(Related(at, HOSTILE),))
    shown = render([found], {source.name: source})
    assert is_plain(shown)
    assert shown.startswith("a␛[31mred␛]0;title␇")
    assert len(plain(HOSTILE)) == len(HOSTILE)


def test_a_folder_is_named_plainly() -> None:
    from pathlib import Path

    compiled = Session([Source("a.play", "concept A\n")], HOSTILE)
    assert is_plain(summary(Path(HOSTILE), compiled, 1, compiled.diagnostics))
    assert is_plain(render(compiled.diagnostics, {}))


def test_a_control_character_never_gets_into_a_name() -> None:
    text = "playbook A\x1bB\n    code high school\n"
    compiled = Session([Source("a.play", text)], "a")
    assert compiled.season is not None
    assert is_plain(compiled.season.team.name)


@pytest.mark.parametrize(("errors", "warnings"), [(40, 10), (49, 4), (3, 90), (80, 0), (70, 60)])
def test_of_many_messages_the_first_are_printed_and_the_others_counted(
    errors: int, warnings: int
) -> None:
    found = [E105().at(Span("a.play", n, 1, 2)) for n in range(1000, 1000 + errors)]
    found += [W101().at(Span("a.play", n, 1, 2)) for n in range(1, 1 + warnings)]
    shown = render(found, {})
    assert shown.count(": error ") == min(errors, MOST)
    assert shown.count(": warning ") == min(warnings, MOST - min(errors, MOST))
    left = errors + warnings - MOST
    assert ("check again" in shown) == (left > 0)
    if errors > MOST:
        assert f"and {errors - MOST} errors" in shown
    elif left > 0:
        assert f"and {left} warning" in shown


def test_a_long_name_is_not_repeated_in_full() -> None:
    shown = render([E302(kind="concept", name="x" * 5000).at(Span("a", 1, 1, 2))], {})
    assert len(shown) < 1000


@pytest.mark.parametrize(
    ("names", "one", "all_of_them"),
    [
        ("", "", ""),
        ("a", "a", "a"),
        ("ab", "a or b", "a and b"),
        ("abc", "a, b or c", "a, b and c"),
    ],
)
def test_lists_in_words(names: str, one: str, all_of_them: str) -> None:
    assert (either(names), together(iter(names))) == (one, all_of_them)


@pytest.mark.parametrize(
    ("length", "said"),
    [(0, "0"), (0.24, "0"), (0.25, "0.5"), (0.75, "1"), (4.6, "4.5"), (12, "12")],
)
def test_a_length_is_told_to_the_half_yard(length: float, said: str) -> None:
    assert half_yards(length) == said
