"""A dress-up: formations, tags, motions and sides make the calls; spots and looks prove them."""

from __future__ import annotations

import pytest

from resolve.texts import CROSSERS, QUADS, THREE_TWO, TWELVE, codes, compiled, dress, play, sound
from stemline.football.field import BallSpot
from stemline.resolve.dressing import at_most
from stemline.session import Session

TAGS = "with plain, Wheel, Return, Wheel + Return"
BOTH = f"{THREE_TWO}\n{QUADS}"


def dressed(*lines: str) -> Session:
    text = "\n".join(["dress Crossers", *(f"    {line}" for line in lines)])
    return compiled(TWELVE, BOTH, CROSSERS, text)


def calls(*lines: str) -> list[str]:
    result = dressed(*lines)
    assert result.diagnostics == (), codes(result)
    return list(result.calls.by_name)


BASE = ("in Three Two", "in Quads motion Tuck", TAGS, "to right, left")


def test_every_call_once_in_the_order_of_the_lines() -> None:
    made = calls(*BASE)
    assert len(made) == 2 * 4 * 2
    assert made[:3] == [
        "Three Two Right Crossers",
        "Three Two Left Crossers",
        "Three Two Right Crossers Wheel",
    ]
    assert made[8] == "Quads Right Tuck Crossers"


def test_how_many_calls_it_may_make_is_counted_before_they_are_made() -> None:
    """Each formation by its own motions, tags and sides; exceptions take none out."""
    own = "in Three Two motion none, Tuck with plain, Wheel, Return to both"
    book = dressed(own, "in Quads", TAGS, "never in Quads").book
    assert book is not None
    assert at_most(book.dresses[0]) == 2 * 3 * 2 + 1 * 4 * 1


def test_a_line_said_twice_makes_no_call_twice() -> None:
    assert calls(*BASE) == calls(*BASE, "in Three Two", "with Wheel", "to left")


def test_tags_in_another_order_are_no_other_call() -> None:
    assert calls("in Three Two", "with Wheel + Return", "with Return + Wheel") == [
        "Three Two Right Crossers Wheel + Return"
    ]


def test_without_a_side_a_call_goes_right_and_without_tags_it_is_plain() -> None:
    assert calls("in Three Two") == ["Three Two Right Crossers"]


@pytest.mark.parametrize(
    ("line", "left"),
    [
        ("never in Quads", ("Three Two",)),
        ("never to left", ("Right",)),
        ("only in Three Two", None),
    ],
)
def test_an_exception_by_formation_or_side(line: str, left: tuple[str, ...] | None) -> None:
    made = calls(*BASE, line)
    if left is None:
        assert made == calls(*BASE)
    else:
        assert made == [c for c in calls(*BASE) if left[0] in c]


def test_never_with_tags_takes_those_calls_only() -> None:
    made = calls(*BASE, "never in Quads with Wheel, Wheel + Return")
    assert set(calls(*BASE)) - set(made) == {
        f"Quads {side} Tuck Crossers {tags}"
        for side in ("Right", "Left")
        for tags in ("Wheel", "Wheel + Return")
    }


def test_only_in_one_formation_with_a_tag() -> None:
    made = calls(*BASE, "only in Quads with Wheel")
    assert set(calls(*BASE)) - set(made) == {
        f"Three Two {side} Crossers Wheel" for side in ("Right", "Left")
    }


def test_only_to_a_side_speaks_of_its_formation() -> None:
    made = calls(*BASE, "only in Quads to left")
    assert [c for c in made if c.startswith("Quads")] == [
        f"Quads Left Tuck Crossers{t}" for t in ("", " Wheel", " Return", " Wheel + Return")
    ]
    assert len([c for c in made if c.startswith("Three")]) == 8


def test_tags_of_an_exception_stand_in_any_order() -> None:
    one = calls(*BASE, "never with Wheel + Return")
    two = calls(*BASE, "never with Return + Wheel")
    assert one == two == [c for c in calls(*BASE) if "+" not in c]


def test_never_plain() -> None:
    made = calls("in Three Two", "with plain, Wheel", "never with plain")
    assert made == ["Three Two Right Crossers Wheel"]


def test_never_with_a_motion() -> None:
    lines = ("in Three Two motion Tuck, none", "never motion Tuck")
    assert calls(*lines) == ["Three Two Right Crossers"]
    assert calls("in Three Two motion Tuck, none", "never motion none") == [
        "Three Two Right Tuck Crossers"
    ]


def test_a_motion_line_is_for_every_formation_that_names_none() -> None:
    made = calls("in Three Two motion none", "in Quads", "motion Tuck")
    assert made == ["Three Two Right Crossers", "Quads Right Tuck Crossers"]


@pytest.mark.parametrize(
    "line",
    [
        "from left hash",
        "from left hash, middle",
        "from right hash",
        "against zone",
        "against man, press",
    ],
)
def test_a_ball_spot_and_a_look_add_no_call(line: str) -> None:
    assert calls(*BASE, line) == calls(*BASE)


def test_from_says_which_spots_are_proved() -> None:
    """A split that fits from the middle only is proved from where the call is run."""
    formation = THREE_TWO.replace("Z at call, numbers", "Z at call, 23 outside tackle")
    needs = CROSSERS.replace("needs under within 6 of tackle", "needs clear within 3 of sideline")
    assert needs != CROSSERS

    def found(*lines: str) -> list[str]:
        result = compiled(TWELVE, formation, needs, dress("Three Two", *lines, sides=False))
        return [dict(d.values)["spot"] for d in result.diagnostics if d.code == "E651"]

    assert found("from left hash") == ["left hash"]
    assert found("from right hash") == []
    assert found("from middle") == ["middle"]
    assert found() == ["left hash"]


def test_every_spot_is_proved_unless_said() -> None:
    result = sound(TWELVE, BOTH, CROSSERS, dress("Three Two"))
    assert result.book is not None
    assert set(result.book.dresses[0].spots) == {spot.value for spot in BallSpot}


# What deleting a definition breaks.


@pytest.mark.parametrize(
    ("line", "kind"),
    [
        ("in Trips", "formation"),
        ("in Three Two motion Jet", "motion"),
        ("with Seam", "tag"),
        ("with Wheel + Seam", "tag"),
        ("motion Jet", "motion"),
        ("never in Trips", "formation"),
        ("never in Three Two with Seam", "tag"),
        ("never motion Jet", "motion"),
        ("only in Trips", "formation"),
    ],
)
def test_a_name_that_is_gone_is_an_error_where_it_is_named(line: str, kind: str) -> None:
    result = dressed("in Three Two", TAGS, line)
    found = [d for d in result.diagnostics if d.code == "E310"]
    assert [(d.span.source, d.span.line, dict(d.values)["kind"]) for d in found] == [
        ("four.play", 4, kind)
    ]


def test_deleting_a_formation_breaks_the_never_that_names_it() -> None:
    exception = dress("Three Two", TAGS, "never in Quads with Wheel")
    with_quads = compiled(TWELVE, BOTH, CROSSERS, exception)
    assert codes(with_quads) == ["E705"]  # Quads is known, and never called here.
    without = compiled(TWELVE, THREE_TWO, CROSSERS, exception)
    (found,) = without.diagnostics
    assert (found.code, found.span.line, dict(found.values)["found"]) == ("E310", 4, "Quads")
    assert exception.splitlines()[3].strip().startswith("never in Quads")


def test_a_dress_up_of_no_concept() -> None:
    result = compiled(TWELVE, THREE_TWO, dress("Three Two"))
    (found,) = result.diagnostics
    assert (found.code, dict(found.values)["kind"]) == ("E310", "concept")


def test_an_exception_that_excepts_nothing_is_a_mistake() -> None:
    assert codes(dressed(*BASE, "never in Three Two motion Tuck")) == ["E705"]
    assert codes(dressed("in Three Two", "only in Three Two to left")) == ["E705"]


def test_an_exception_takes_out_calls_of_its_own_dress_up_only() -> None:
    concept = "concept Go\n    a is strong #1\n    a runs go"
    result = compiled(
        TWELVE,
        THREE_TWO,
        CROSSERS,
        dress("Three Two", "never to left"),
        concept,
        dress("Three Two", concept="Go"),
    )
    assert "Three Two Left Crossers" not in result.calls.by_name
    assert "Three Two Left Go" in result.calls.by_name


@pytest.mark.parametrize(
    ("line", "code"),
    [
        ("to middle", "E702"),
        ("from left", "E703"),
        ("from goal line", "E703"),
        ("from goal line 0", "E703"),
        ("from goal line 2.5", "E703"),
        ("against blitz", "E412"),
        ("against zone, man", "E411"),
        ("never Tuk", "E310"),
    ],
)
def test_words_of_a_dress_up_are_closed_lists(line: str, code: str) -> None:
    assert code in codes(dressed("in Three Two", line))


@pytest.mark.parametrize(
    ("line", "near"),
    [
        ("never Lef in Three Two", "left"),
        ("never Plan in Three Two", "plain"),
        ("never Quad", "Quads"),
        ("never with Wheel motion nonne", "none"),
        ("in al", "all"),
    ],
)
def test_a_misspelt_word_is_given_the_nearest_of_all_that_may_stand_there(
    line: str, near: str
) -> None:
    found = [d for d in dressed("in Three Two", TAGS, line).definitions if d.code == "E310"]
    assert [d.nearest[0] for d in found] == [near]


def test_a_dress_up_without_a_formation() -> None:
    assert codes(dressed("to right")) == ["E701"]


def test_a_concept_without_a_dress_up_is_a_warning() -> None:
    result = compiled(TWELVE, THREE_TWO, CROSSERS)
    assert codes(result) == ["W710"]
    assert not result.failed


def test_quotes_make_anything_a_name() -> None:
    formation = THREE_TWO.replace("Three Two", '"Over With Y In"')
    tags = '\n\ntag "To And Fro" for Test\n    a runs post\n'
    concept = "concept Test\n    a is strong #1\n    a runs go" + tags
    lines = ('with "To And Fro"', 'never in "Over With Y In" to left')
    result = compiled(TWELVE, formation, concept, dress('"over with Y in"', *lines, concept="Test"))
    assert set(codes(result)) == {"W650"}
    assert list(result.calls.by_name) == ["Over With Y In Right Test To And Fro"]


def test_quotes_hold_one_whole_name() -> None:
    concept = "concept Test\n    a is strong #1\n    a runs go"
    result = compiled(TWELVE, THREE_TWO, concept, dress('"Three Two Quads"', concept="Test"))
    assert codes(result)[0] == "E310"


# A formation's own tags, sides and motions.


def test_a_formation_may_say_its_tags_and_sides_itself() -> None:
    assert calls("in Three Two with plain, Wheel to both", "in Quads motion Tuck") == [
        "Three Two Right Crossers",
        "Three Two Left Crossers",
        "Three Two Right Crossers Wheel",
        "Three Two Left Crossers Wheel",
        "Quads Right Tuck Crossers",
    ]


def test_all_formations_but_some() -> None:
    assert calls("in all but Quads") == ["Three Two Right Crossers"]


@pytest.mark.parametrize(
    ("head_first", "by_parts"),
    [
        ("never left in Quads", "never in Quads to left"),
        ("never Wheel, Wheel + Return in Quads", "never in Quads with Wheel, Wheel + Return"),
        ("never Wheel to left", "never with Wheel to left"),
        ("never Tuck", "never motion Tuck"),
        ("never Quads", "never in Quads"),
        ("Wheel + Return only to right", "only with Wheel + Return to right"),
        ("Wheel only in Quads", "only in Quads with Wheel"),
    ],
)
def test_exceptions_read_as_they_are_said(head_first: str, by_parts: str) -> None:
    assert calls(*BASE, head_first) == calls(*BASE, by_parts) != calls(*BASE)


def test_one_text_dresses_several_concepts() -> None:
    lines = "dress Crossers, Stop\n    in Three Two\n    to both"
    stop = "concept Stop\n    each #1 runs hitch 5\n    feet 3"
    result = compiled(TWELVE, BOTH, CROSSERS, stop, lines)
    assert [c for c in result.calls.by_name if "Left" in c] == [
        "Three Two Left Crossers",
        "Three Two Left Stop",
    ]


def test_a_line_that_was_not_read_makes_no_second_mistake_of_what_hangs_on_it() -> None:
    lines = (
        "with plain, Wheell", "never with Wheel", "only in Three Two with Wheel",
        "call Three Two Right Crossers Wheel as Fly",
    )  # fmt: skip
    result = compiled(TWELVE, THREE_TWO, CROSSERS, dress("Three Two", *lines))
    assert codes(result) == ["E310"]


def test_a_call_from_the_goal_line_says_how_far_it_is() -> None:
    result = dressed("in Three Two", "from goal line 3")
    made = play(result, "Three Two Right Crossers")
    assert (made.field.goal, made.field.end) == (3, 23)
    assert play(dressed("in Three Two"), "Three Two Right Crossers").field.goal is None
