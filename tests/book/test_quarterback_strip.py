"""Reads stand under the step that throws them."""

from __future__ import annotations

from dataclasses import replace

import pytest
from sample_season import FEET, crossers, stick

from stemline.book.content.quarterback_strip import strip
from stemline.football.play import Alert, Claim, Play
from stemline.source import NOWHERE


def placed(play: Play) -> list[list[int]]:
    made = strip(play)
    assert made is not None
    return [[look.number for look in stop.looks] for stop in made.stops]


@pytest.mark.parametrize(
    ("feet", "expected"),
    [
        (("quick", "3", "reset", "reset"), [[1], [2], [3], [4]]),
        (("quick", "3", "reset"), [[1], [2], [3, 4]]),
        (("3", "quick"), [[2], [1]]),
    ],
)
def test_reads_go_to_their_step(feet: tuple[str, ...], expected: list[list[int]]) -> None:
    play = replace(crossers()[0], feet=tuple(FEET[name] for name in feet))
    assert placed(play) == expected


def test_a_read_without_a_step_stands_apart() -> None:
    made = strip(stick()[0])
    assert made is not None
    assert [look.target for look in made.loose] == ["fade"]


def test_pressure_names_what_it_leaves_out() -> None:
    made = strip(crossers()[0])
    assert made is not None
    assert [(look.number, look.target) for look in made.pressure] == [
        (1, "flat"),
        (2, "near"),
        (3, "far"),
    ]
    assert made.skipped == ("top",)


def test_partner_claim_and_alert_in_words() -> None:
    three_two = crossers()[4]
    made = strip(
        replace(
            three_two,
            claims=(Claim("high-low", ("dig", "near"), (), "hook defender", NOWHERE),),
            alerts=(Alert("clear", ("Z",), "middle open", NOWHERE),),
            nobody=("window",),
        )
    )
    assert made is not None
    assert made.stops[1].looks[0].partner == "dig X"
    assert [(n.label, n.words) for n in made.notes] == [
        ("high-low on hook defender", "dig, near"),
        ("alert", "clear Z, when middle open"),
        ("seen together", "2 near H with dig X"),
        ("nobody plays", "window"),
    ]


def test_nothing_to_say_is_no_strip() -> None:
    bare = replace(crossers()[0], feet=(), reads=(), pressure=(), claims=(), alerts=())
    assert strip(bare) is None
