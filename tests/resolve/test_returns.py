"""A tag is proved against what it says it keeps, at its own line, with a computed reason."""

from __future__ import annotations

from dataclasses import replace

import pytest

from resolve.texts import (
    CROSSERS,
    ELEVEN,
    QUADS,
    THREE_TWO,
    TRIPS,
    TWELVE,
    compiled,
    dress,
    message,
    play,
    sound,
    who,
)
from stemline.checks.keeps import _kept
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.geometry.paths import Point
from stemline.playbook.concepts import Keep
from stemline.session import Session
from stemline.source import NOWHERE


def tag(*lines: str, name: str = "Twist") -> str:
    return "\n".join([f"tag {name} for Crossers", *(f"    {line}" for line in lines)])


def tagged(*lines: str, called: str = "plain, Twist") -> Session:
    return compiled(TWELVE, THREE_TWO, tag(*lines), CROSSERS, dress("Three Two", f"with {called}"))


def kept_badly(*lines: str) -> Diagnostic:
    """The one mistake of a tag, which must stand at its `keeps` line."""
    result = tagged(*lines)
    (found,) = [d for d in result.diagnostics if d.is_error]
    assert found.span.source == "three.play"
    assert tag(*lines).splitlines()[found.span.line - 1].strip().startswith("keeps")
    return found


def values(found: Diagnostic, *names: str) -> tuple[str, ...]:
    return tuple(dict(found.values)[name] for name in names)


# The three return cases: each has its own answer.


def test_both_return_and_the_eyes_are_kept() -> None:
    result = sound(
        TWELVE,
        THREE_TWO,
        tag("over, under runs return", "keeps read, feet, pressure, spots"),
        CROSSERS,
        dress("Three Two", "with plain, Twist"),
    )
    made = play(result, "Three Two Right Crossers Twist")
    assert {s.name: s.men for s in made.spots} == {"near": ("W",), "top": ("S",), "far": ("H",)}


def test_only_the_under_man_returns_and_far_is_empty() -> None:
    found = kept_badly("under runs return", "keeps read, feet")
    assert found.code == "E663"
    assert values(found, "tag", "spot", "instead") == (
        "Twist",
        "far",
        "under and over are both at near",
    )
    assert "nobody comes to far: under and over are both at near" in message(found)


def test_only_the_over_man_returns_and_near_is_empty() -> None:
    found = kept_badly("over runs return", "keeps read, feet")
    assert found.code == "E663"
    assert values(found, "tag", "spot", "instead") == (
        "Twist",
        "near",
        "under and over are both at far",
    )
    assert "nobody comes to near: under and over are both at far" in message(found)


@pytest.mark.parametrize(
    ("who", "empty", "full"), [("under", "far", "near"), ("over", "near", "far")]
)
@pytest.mark.parametrize(
    ("book", "formation", "called"),
    [(TWELVE, QUADS, "Quads motion Tuck"), (ELEVEN, TRIPS, "Trips")],
    ids=["quads", "trips"],
)
def test_half_a_return_is_refused_wherever_it_is_called(
    book: str, formation: str, called: str, who: str, empty: str, full: str
) -> None:
    half = tag(f"{who} runs return", "keeps read")
    result = compiled(book, formation, half, CROSSERS, dress(called, "with plain, Twist"))
    (found,) = [d for d in result.diagnostics if d.is_error]
    assert (found.code, found.span.source, found.span.line) == ("E663", "three.play", 3)
    assert values(found, "spot") == (empty,)
    assert f"both at {full}" in values(found, "instead")[0]


def test_half_a_return_that_promises_nothing_still_leaves_a_read_empty() -> None:
    (found,) = tagged("under runs return").diagnostics
    assert found.code == "E630"
    assert values(found, "spot") == ("far",)


def test_half_a_return_may_be_called_where_the_read_leaves_the_empty_spot_out() -> None:
    result = tagged(
        "under runs return",
        "read flat on quick > near on 3 > top on reset",
        "keeps feet",
    )
    assert result.diagnostics == ()
    made = play(result, "Three Two Right Crossers Twist")
    assert made.reads[1].men == ("W", "H")


def test_a_refused_tag_takes_only_its_own_calls_out_of_the_season() -> None:
    made = tagged("under runs return", "keeps read").season
    assert made is not None
    assert [p.call.spoken for p in made.plays] == [
        "Three Two Right Crossers",
        "Three Two Left Crossers",
    ]


def test_a_tag_that_is_never_called_is_proved_too() -> None:
    result = tagged("under runs return", "keeps read", called="plain")
    (found,) = [d for d in result.diagnostics if d.is_error]
    assert found.code == "E663"


# Every other promise that is not kept.


@pytest.mark.parametrize(
    ("lines", "code", "told"),
    [
        (
            ("read near on quick > flat on 3 > top > far", "keeps read"),
            "E661",
            {"what": "read", "number": "1", "before": "flat on quick", "after": "near on quick"},
        ),
        (
            ("read flat on quick > near with dig on 3 > top on reset", "keeps read"),
            "E661",
            {"what": "read", "number": "4", "before": "far on reset", "after": "nothing"},
        ),
        (
            ("read flat on quick > near on 3 > top on reset > far on reset", "keeps read"),
            "E661",
            {"what": "read", "number": "2", "before": "near with dig on 3", "after": "near on 3"},
        ),
        (
            ("pressure far > near > flat", "keeps pressure"),
            "E661",
            {"what": "pressure", "number": "1", "before": "flat", "after": "far"},
        ),
        (
            ("feet 3, quick, reset", "keeps feet"),
            "E660",
            {"before": "quick, 3, reset", "after": "3, quick, reset"},
        ),
        (
            ("spot near is low, same side as settle", "keeps read"),
            "E662",
            {"spot": "near"},
        ),
        (
            ("spot near is low, same side as settle", "keeps spots"),
            "E662",
            {"spot": "near"},
        ),
        (("flat blocks edge", "keeps read"), "E664", {"what": "read", "role": "flat"}),
        (("flat blocks edge", "keeps pressure"), "E664", {"what": "pressure", "role": "flat"}),
        (
            ("flat runs shoot same side as settle", "keeps read"),
            "E665",
            {"what": "read", "role": "flat", "before": "weak", "after": "strong"},
        ),
        (
            ("settle runs post", "keeps spots"),
            "E663",
            {"spot": "top", "instead": "settle ends 21 deep, 13 right of the ball"},
        ),
        (
            ("settle blocks stalk", "keeps spots"),
            "E663",
            {"spot": "top", "instead": "settle has no route"},
        ),
    ],
    ids=lambda v: v[0] if isinstance(v, tuple) else "",
)
def test_a_promise_that_is_not_kept(
    lines: tuple[str, ...], code: str, told: dict[str, str]
) -> None:
    found = kept_badly(*lines)
    assert found.code == code
    assert values(found, "tag", *told) == ("Twist", *told.values())
    assert message(found)


@pytest.mark.parametrize("name", ["near", "top", "far"])
@pytest.mark.parametrize(("across", "up"), [(1, 0), (-1, 0), (0, 1), (0, -1), (0.6, 0.8)])
def test_a_spot_may_not_move_out_of_its_own_area_any_way(
    name: str, across: float, up: float
) -> None:
    """An area is wider than high: by its height alone it may move, whichever way it goes."""
    plain = play(tagged('say "Nothing changes."'), "Three Two Right Crossers")
    (old,) = (s for s in plain.spots if s.name == name)
    assert old.half_height < old.half_width

    def told(yards: float) -> list[str]:
        at = Point(old.at.x + across * yards, old.at.y + up * yards)
        spots = tuple(replace(s, at=at) if s.name == name else s for s in plain.spots)
        moved = replace(plain, spots=spots)
        return [d.code for d in _kept("Twist", [(Keep.SPOTS, NOWHERE)], plain, moved)]

    assert told(old.half_height - 0.1) == []
    assert told(old.half_height + 0.1) == ["E662"]


@pytest.mark.parametrize(
    "lines",
    [
        ("read near on quick > flat on 3 > top > far", "keeps feet, spots, pressure"),
        ("pressure far > near > flat", "keeps read, feet, spots"),
        ("feet 3, quick, reset", "keeps read, pressure, spots"),
        ("flat runs wheel away from settle", "keeps read, feet, pressure, spots"),
        ("swap over with under", "keeps read, feet, pressure, spots"),
        ("clear runs go", "keeps read, feet, pressure, spots"),
        ('say "Nothing changes."', "keeps read, feet, pressure, spots"),
    ],
    ids=lambda v: v[0],
)
def test_a_promise_that_is_kept_or_was_not_given(lines: tuple[str, ...]) -> None:
    assert tagged(*lines).diagnostics == ()


def test_a_swap_changes_men_and_a_return_changes_paths() -> None:
    one = tag("over, under runs return", "keeps read", name="Back")
    two = tag("swap over with under", "keeps read", name="Switch")
    tags = "with plain, Switch, Back + Switch"
    result = sound(TWELVE, THREE_TWO, f"{one}\n\n{two}", CROSSERS, dress("Three Two", tags))

    def men(tags: str) -> dict[str, tuple[str, ...]]:
        made = play(result, f"Three Two Right Crossers{tags}")
        return {s.name: s.men for s in made.spots if s.name != "top"}

    assert men("") == {"near": ("H",), "far": ("W",)}
    assert men(" Switch") == {"near": ("H",), "far": ("W",)}
    assert men(" Back + Switch") == {"near": ("W",), "far": ("H",)}
    switched = play(result, "Three Two Right Crossers Switch")
    assert who(switched)["over"] == "weak #2" and who(switched)["under"] == "strong #3"


def test_tags_that_say_one_thing_two_ways_quarrel() -> None:
    one = tag("flat runs wheel away from settle", name="Up")
    two = tag("flat runs swing away from settle", name="Out")
    result = compiled(
        TWELVE, THREE_TWO, f"{one}\n\n{two}", CROSSERS, dress("Three Two", "with plain, Up + Out")
    )
    (found,) = result.diagnostics
    assert found.code == "E640"
    assert values(found, "first", "second", "what") == ("Up", "Out", "what flat runs")
    assert [(r.span.source, r.span.line) for r in found.related] == [
        ("three.play", 2),
        ("three.play", 5),
    ]


def test_tags_that_say_one_thing_alike_do_not_quarrel() -> None:
    one = tag("flat runs wheel away from settle", name="Up")
    two = tag("flat runs wheel away from settle", "over, under runs return", name="Both")
    sound(
        TWELVE, THREE_TWO, f"{one}\n\n{two}", CROSSERS, dress("Three Two", "with plain, Up + Both")
    )
