"""A call is read by every way its words can be cut: one reading is the call, two are a mistake."""

from __future__ import annotations

import pytest

from resolve.texts import CROSSERS, ELEVEN, THREE_TWO, TRIPS, TWELVE, codes, compiled, dress, sound
from stemline.football.field import Way
from stemline.resolve.call_reading import read_call, readings
from stemline.resolve.order import Order
from stemline.session import Session
from stemline.source import NOWHERE

TAGS = "with plain, Wheel, Return, Wheel + Return"
JET = """
motion Jet
    X moves to away, 2 outside tackle
"""


def book() -> Session:
    return sound(TWELVE, THREE_TWO, CROSSERS, dress("Three Two", TAGS))


def read(result: Session, text: str) -> tuple[Order | None, list[str]]:
    assert result.book is not None
    order, found = read_call(result.book, text, result.calls.by_name, NOWHERE)
    return order, [d.code for d in found]


@pytest.mark.parametrize(
    ("text", "way", "tags"),
    [
        ("Three Two Right Crossers", Way.RIGHT, ()),
        ("three two left crossers", Way.LEFT, ()),
        ("  Three   Two Right  Crossers ", Way.RIGHT, ()),
        ("Three Two Right Crossers Wheel", Way.RIGHT, ("wheel",)),
        ("Three Two Right Crossers Wheel + Return", Way.RIGHT, ("wheel", "return")),
        ("Three Two Right Crossers Wheel Return", Way.RIGHT, ("wheel", "return")),
        ("Three Two Right Crossers Wheel+Return", Way.RIGHT, ("wheel", "return")),
        ("Three Two Right Crossers + Wheel", Way.RIGHT, ("wheel",)),
        ("Three Two Left Crossers Return + Wheel", Way.LEFT, ("return", "wheel")),
    ],
)
def test_one_reading(text: str, way: Way, tags: tuple[str, ...]) -> None:
    order, found = read(book(), text)
    assert found == [] and order is not None
    assert (order.formation, order.way, order.concept) == ("three two", way, "crossers")
    assert order.tags == tags


@pytest.mark.parametrize(
    "text",
    [
        "",
        "Three Two",
        "Three Two Right",
        "Right Crossers",
        "Three Two Crossers",
        "Three Two Middle Crossers",
        "Three Two Right Crossers Twist",
        "Three Two Right Crossers Wheel +",
        "Three Two Right Right Crossers",
        "Three Two Right Crossers Crossers",
    ],
)
def test_no_reading(text: str) -> None:
    order, found = read(book(), text)
    assert order is None
    assert found == ["E602"]


def test_no_reading_gives_the_nearest_calls() -> None:
    result = book()
    assert result.book is not None
    _, (found,) = read_call(result.book, "Three To Right Crossers", result.calls.by_name, NOWHERE)
    assert found.nearest[0] == "Three Two Right Crossers"


def test_a_call_that_no_dress_up_makes_is_still_read() -> None:
    result = sound(TWELVE, THREE_TWO, JET, CROSSERS, dress("Three Two"))
    order, found = read(result, "Three Two Right Jet Crossers Wheel")
    assert found == [] and order is not None
    assert (order.motion, order.tags) == ("jet", ("wheel",))
    assert order.spoken not in result.calls.by_name


def ambiguous() -> Session:
    """A motion Jet with Crossers, and a concept Jet Crossers."""
    concept = "concept Jet Crossers\n    a is strong #1\n    a runs go"
    return compiled(
        TWELVE,
        THREE_TWO,
        JET,
        CROSSERS,
        dress("Three Two motion Jet, none", sides=False),
        concept,
        dress("Three Two", concept="Jet Crossers", sides=False),
    )


def test_two_readings_are_a_mistake_at_the_newest_name() -> None:
    result = ambiguous()
    (found,) = [d for d in result.diagnostics if d.code == "E601"]
    values = dict(found.values)
    assert values["call"] == "Three Two Right Jet Crossers"
    assert values["readings"] == (
        "(formation Three Two, right, concept Jet Crossers) or "
        "(formation Three Two, right, motion Jet, concept Crossers)"
    )
    assert found.span.source == "three.play"
    order, codes = read(result, "Three Two Right Jet Crossers")
    assert order is None and codes == ["E601"]


def test_the_longest_name_never_wins() -> None:
    """Two formations, one the start of the other, and a side in the name: both are found."""
    long = THREE_TWO.replace("Three Two", "Three Two Right Tight")
    right = "concept Tight Left Crossers\n    a is strong #1\n    a runs go"
    result = compiled(TWELVE, f"{THREE_TWO}\n{long}", CROSSERS, right)
    assert result.book is not None
    found = readings(result.book, "Three Two Right Tight Left Crossers", NOWHERE)
    assert {(o.formation, o.way, o.concept) for o in found} == {
        ("three two", Way.RIGHT, "tight left crossers"),
        ("three two right tight", Way.LEFT, "crossers"),
    }


def test_a_tag_named_like_two_tags() -> None:
    text = f"{CROSSERS}\n\ntag Wheel Return for Crossers\n    over, under runs return"
    tags = "with plain, Wheel, Return, Wheel Return"
    result = compiled(TWELVE, THREE_TWO, text, dress("Three Two", tags))
    found = [d for d in result.diagnostics if d.code == "E601"]
    # Once a side, at the name that came last.
    assert [d.span.line for d in found] == [len(text.splitlines()) - 1] * 2
    order, _ = read(result, "Three Two Right Crossers Wheel + Return")
    assert order is not None and order.tags == ("wheel", "return")
    assert read(result, "Three Two Right Crossers Wheel Return")[0] is None


def test_tags_in_another_order_are_the_same_call() -> None:
    result = book()
    assert result.book is not None
    (one,) = readings(result.book, "Three Two Right Crossers Wheel Return", NOWHERE)
    (two,) = readings(result.book, "Three Two Right Crossers Return Wheel", NOWHERE)
    assert set(one.tags) == set(two.tags)


def test_a_tag_belongs_to_its_own_concept() -> None:
    other = (
        "concept Verts\n    a is strong #1\n    a runs go\n\ntag Deep for Verts\n    a runs post"
    )
    result = compiled(
        TWELVE, THREE_TWO, CROSSERS, dress("Three Two"), other, dress("Three Two", concept="Verts")
    )
    assert read(result, "Three Two Right Crossers Deep") == (None, ["E602"])
    assert read(result, "Three Two Right Verts Deep")[1] == []
    assert read(result, "Three Two Right Verts Wheel") == (None, ["E602"])


# A name given to a call.


def named(*lines: str) -> Session:
    return compiled(TWELVE, THREE_TWO, CROSSERS, dress("Three Two", "with plain, Wheel", *lines))


def test_a_call_takes_its_name_and_keeps_its_place() -> None:
    result = named("call Three Two Right Crossers Wheel as Comet")
    assert result.diagnostics == ()
    assert list(result.calls.by_name) == [
        "Three Two Right Crossers",
        "Three Two Left Crossers",
        "Comet",
        "Three Two Left Crossers Wheel",
    ]
    assert result.season is not None
    assert [p.call.spoken for p in result.season.plays] == list(result.calls.by_name)
    for text in ("Comet", "comet", "Three Two Right Crossers Wheel"):
        order, found = read(result, text)
        assert found == [] and order is not None
        assert (order.way, order.tags) == (Way.RIGHT, ("wheel",))


@pytest.mark.parametrize(
    ("lines", "expected"),
    [
        (("call Three Two Right Verts as Comet",), "E602"),
        (("call Three Two Right Crossers Return as Comet",), "E706"),
        (
            ("call Three Two Right Crossers as Comet", "call Three Two Left Crossers as Comet"),
            "E601",
        ),
        (("call Three Two Right Crossers as Three Two Left Crossers",), "E601"),
        (("call Three Two Right Crossers as Three Two Left Crossers Return",), "E601"),
        (
            ("call Three Two Right Crossers as Comet", "call Three Two Right Crossers as Star"),
            "E420",
        ),
    ],
)
def test_a_name_that_cannot_be_given(lines: tuple[str, ...], expected: str) -> None:
    result = named(*lines)
    assert codes(result) == [expected]
    assert result.diagnostics[0].span.source == "four.play"
    # No call is lost over it.
    assert len(result.calls.orders) == 4
    assert len(result.calls.by_name) == 4


def test_a_name_given_twice_alike_is_said_twice_and_no_more() -> None:
    line = "call Three Two Right Crossers as Comet"
    assert named(line, line).diagnostics == ()


def test_names_are_known_over_the_whole_book() -> None:
    concept = "concept Go\n    a is strong #1\n    a runs go"
    result = compiled(
        ELEVEN,
        TRIPS,
        CROSSERS,
        dress("Trips", "call Trips Right Crossers as Comet"),
        concept,
        dress("Trips", "call Trips Right Go as Comet", concept="Go"),
    )
    found = [d for d in result.diagnostics if d.is_error]
    assert [(d.code, d.span.source) for d in found] == [("E601", "six.play")]


def test_a_name_hides_no_ambiguity_among_the_other_calls() -> None:
    concept = "concept Jet Crossers\n    a is strong #1\n    a runs go"
    result = compiled(
        TWELVE,
        THREE_TWO,
        JET,
        CROSSERS,
        dress("Three Two motion Jet, none", "call Three Two Right Crossers as Comet", sides=False),
        concept,
        dress("Three Two", concept="Jet Crossers", sides=False),
    )
    assert "E601" in codes(result)
