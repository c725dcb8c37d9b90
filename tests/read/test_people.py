"""Personnel: what a letter is, his jersey's number, and how fast he is."""

from __future__ import annotations

import pytest
from resolve.texts import THREE_TWO, TWELVE, codes, compiled, dress, play

from stemline.football.play import Man
from stemline.football.timing.clock import read_clock
from stemline.football.timing.levels import HIGH_SCHOOL
from stemline.session import Session

CONCEPT = """
concept Test
    z is strong #1
    z runs go
    s is strong #2
    s runs hitch
    feet 3
    read z on 3
"""


def people(*lines: str) -> Session:
    """The twelve with another group beside them, which says more of its men."""
    more = "\npersonnel More\n" + "".join(f"    {line}\n" for line in lines)
    called = dress("Three Two", concept="Test", sides=False)
    return compiled(TWELVE, THREE_TWO, more if lines else "", CONCEPT, called)


def man(result: Session, label: str) -> Man:
    return play(result, "Three Two Right Test").man(label)


@pytest.mark.parametrize(
    ("line", "number", "forty"),
    [
        ("Z is wideout", None, None),
        ("Z is wideout, 81", 81, None),
        ("Z is wideout, forty 4.9", None, 4.9),
        ("Z is wideout, 81, forty 4.9", 81, 4.9),
        ("Z is wideout, forty 4.9 seconds, 81", 81, 4.9),
        ("Z is wideout, forty 4", None, 4.0),
        ("Z is wideout, forty 8", None, 8.0),
    ],
)
def test_what_is_said_of_a_man(line: str, number: int | None, forty: float | None) -> None:
    z = man(people(line), "Z")
    assert (z.number, z.forty) == (number, forty)


def test_two_men_may_be_as_fast() -> None:
    result = people("S, W is slotback, forty 5")
    assert (man(result, "S").forty, man(result, "W").forty) == (5.0, 5.0)


@pytest.mark.parametrize(
    "lines",
    [
        ("Z is wideout, forty 4.9", "Z is wideout, 81"),
        ("Z is wideout, 81", "Z is wideout, forty 4.9"),
        ("Z is wideout, 81, forty 4.9", "Z is wideout, 81"),
    ],
)
def test_what_is_said_once_holds_in_every_group(lines: tuple[str, ...]) -> None:
    z = man(people(*lines), "Z")
    assert (z.number, z.forty) == (81, 4.9)


@pytest.mark.parametrize("said", ["49", "3.9", "8.1", "", "fast", "4.9 or so", "seconds"])
def test_a_forty_that_no_watch_shows(said: str) -> None:
    result = people(f"Z is wideout, forty {said}")
    assert codes(result)[:1] == (["E554"] if " or " not in said else ["E402"])


def test_two_times_of_one_man_are_a_contradiction() -> None:
    found = people("Z is wideout, forty 4.9", "Z is wideout, forty 5").diagnostics
    assert [d.code for d in found if d.is_error] == ["E420"]
    assert dict(found[0].values)["what"] == "the forty of Z"


def test_the_clock_runs_with_the_man_himself() -> None:
    times = []
    for forty in ("4.6", "5.6"):
        made = play(people(f"Z is wideout, forty {forty}"), "Three Two Right Test")
        times.append(read_clock(made, HIGH_SCHOOL).men["Z"].arrives)
    assert times[0] < times[1] - 0.3
