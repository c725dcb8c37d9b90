"""What the clock and the room between men say to a coach, and the table of `check --timing`."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from click.testing import CliRunner
from corpus.mixing import CORPUS
from football.timed import clocked, family, plays, texts
from resolve.texts import (
    CONCEPT,
    CROSSERS,
    PLAYBOOKS,
    RETURN,
    THREE_TWO,
    TWELVE,
    WHEEL,
    dress,
    message,
    play,
)
from syrupy.assertion import SnapshotAssertion

from stemline.commands import main
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.football.play import Play
from stemline.football.timing.levels import GAP
from stemline.session import Session

SLOW_WHEEL = """
route Slow Wheel
    stroke out 2 then in 5 then out 5 then in 5 then out 10 then up 18
"""
LONG_STEM = """route Long Cross
    stroke up 6 then across to 2 past tackle
"""
TAGS = "with plain, Wheel, Return, Wheel + Return"


def of(result: Session, *codes: str) -> list[Diagnostic]:
    return [d for d in result.diagnostics if d.code in codes]


def value(d: Diagnostic, name: str) -> str:
    return dict(d.values)[name]


def line_of(text: str, d: Diagnostic) -> str:
    return text.splitlines()[d.span.line - 1].strip()


# A promise on the clock.


def slowed() -> tuple[str, Session]:
    text = CROSSERS.replace("flat runs wheel", "flat runs slow wheel") + SLOW_WHEEL
    return text, texts(TWELVE, THREE_TWO, text, dress("Three Two", TAGS))


def opens(result: Session, call: str) -> float:
    first = clocked(play(result, call)).reads[0].window
    assert first is not None
    return first.opens


def test_a_wheel_that_comes_two_seconds_later_breaks_what_its_tag_promises() -> None:
    text, result = slowed()
    straight = texts(TWELVE, THREE_TWO, CROSSERS, dress("Three Two", TAGS))
    call = "Three Two Right Crossers Wheel"
    assert opens(result, call) - opens(straight, call) >= 2
    assert of(straight, "E666") == []
    broken = of(result, "E666")
    assert {value(d, "tag") for d in broken} == {"Wheel"}
    for d in broken:
        assert d.is_error and line_of(text, d) == "keeps read, feet"
        assert (value(d, "target"), value(d, "number"), value(d, "foot")) == ("flat", "1", "quick")
        assert re.fullmatch(
            r"opens at (\d\.\d) s, (\d\.\d) s after the ball is there", value(d, "how")
        )
        assert "look 1, flat" in message(d) and "off the quick" in message(d)
    first = re.sub(r" and \d+ more calls?$", "", value(broken[0], "call"))
    assert value(broken[0], "how").startswith(f"opens at {opens(result, first):.1f} s")
    by = float(value(broken[0], "how").split(", ")[1].split()[0])
    assert by >= 2


def test_a_broken_promise_is_said_once() -> None:
    """Not as a warning too."""
    _, result = slowed()
    assert [d for d in of(result, "W801") if value(d, "target") == "flat"] == []


@pytest.mark.parametrize(("order", "broken"), [("flat > near", {"flat"}), ("near > far", set())])
def test_a_promise_of_the_order_under_pressure_is_judged_by_that_order(
    order: str, broken: set[str]
) -> None:
    text, _ = slowed()
    text = text.replace("keeps read, feet", "keeps pressure, feet")
    text = text.replace("pressure flat > near > far", f"pressure {order}")
    found = of(texts(TWELVE, THREE_TWO, text, dress("Three Two", "with plain, Wheel")), "E666")
    assert {(value(d, "what"), value(d, "target")) for d in found} == {
        ("pressure", target) for target in broken
    }


def test_a_tag_that_promises_nothing_is_only_warned_of() -> None:
    text = CROSSERS.replace("flat runs wheel", "flat runs slow wheel") + SLOW_WHEEL
    text = text.replace(
        "away from settle\n    keeps read, feet", "away from settle\n    keeps feet"
    )
    result = texts(TWELVE, THREE_TWO, text, dress("Three Two", TAGS))
    assert of(result, "E666") == []
    early = [d for d in of(result, "W801") if value(d, "target") == "flat"]
    assert early and not any(d.is_error for d in early)


def test_what_is_late_without_the_tag_is_not_the_tags_fault() -> None:
    late = CONCEPT.replace("flat runs shoot", "flat runs slow wheel")
    result = texts(TWELVE, THREE_TWO, late + SLOW_WHEEL, WHEEL, RETURN, dress("Three Two", TAGS))
    assert of(result, "E666") == []
    assert {value(d, "target") for d in of(result, "W801")} >= {"flat"}


# Reads.


def test_the_bundled_family_has_nothing_said_of_it() -> None:
    assert [d for d in family().diagnostics if d.code.startswith(("W80", "E666"))] == []


def test_a_crosser_with_four_yards_more_of_stem_is_named_with_his_read_and_by_how_much() -> None:
    """His own route turns in at 1.5 yards and climbs, the long one goes up to its depth first."""
    result = family(
        ("    over runs cross 6\n", "    over runs long cross\n"),
        ("tag Wheel for Crossers", f"{LONG_STEM}\ntag Wheel for Crossers"),
    )
    (early,) = {value(d, "target"): d for d in of(result, "W801")}.values()
    call = "Three Two Right Crossers"
    (look,) = (r for r in clocked(_play(result, call)).reads if r.read.target == "near")
    before = next(r for r in clocked(_play(family(), call)).reads if r.read.target == "near")
    assert look.window is not None and before.window is not None
    assert look.window.opens > before.window.opens + 0.15
    assert value(early, "target") == "near"
    assert value(early, "man") == look.window.man == before.window.man
    assert value(early, "off") == f"{abs(look.off):.1f}" and abs(look.off) > GAP
    assert f"open for near from {look.window.opens:.1f} s" in message(early)
    # What the help offers is late enough, and no foot before it is.
    offered = value(early, "later").split("`near on ")[1].split("`")[0]
    steps = {foot.name: foot.time for foot in clocked(_play(result, call)).feet}
    assert steps[offered] >= look.ready + look.misses
    between = [t for t in steps.values() if look.ready < t < steps[offered]]
    assert all(time < look.ready + look.misses for time in between)
    source = (PLAYBOOKS / "saltmarsh-herons" / "crossing.play").read_text("utf-8")
    assert "near with dig on 3" in source.splitlines()[early.span.line - 1]
    assert not result.failed  # a warning: the figures are planning estimates


def _play(result: Session, call: str) -> Play:
    return next(p for p in plays(result) if p.call.spoken == call)


def case(name: str) -> tuple[Session, str]:
    """A case of the corpus with its base, the clock asked."""
    text = (CORPUS / f"{name}.play").read_text("utf-8")
    rest = [path.read_text("utf-8") for path in sorted((CORPUS / "base").glob("*.play"))]
    tag = re.search(r"^tag \w+ for \w+$", text, re.MULTILINE)
    assert tag is not None
    rest = [re.sub(rf"^{tag[0]}\n(    .*\n)+", "", one, flags=re.MULTILINE) for one in rest]
    return texts(*rest, text), text


@pytest.mark.parametrize(
    ("name", "code", "target"),
    [
        ("slant-off-a-long-drop", "W800", "dig"),
        ("comeback-off-the-first-foot", "W801", "dig"),
    ],
)
def test_a_foot_that_does_not_fit_is_said_at_its_read(name: str, code: str, target: str) -> None:
    """With the man, the foot, both times and the difference, as the clock has them."""
    result, text = case(name)
    (found,) = of(result, code)
    call = value(found, "call").partition(" and ")[0]
    (look,) = (r for r in clocked(_play(result, call)).reads if r.read.target == target)
    assert look.window is not None
    assert line_of(text, found).startswith("read")
    assert text.splitlines()[found.span.line - 1][found.span.column - 1 :].startswith("dig on")
    assert value(found, "man") == look.window.man == "X"
    assert value(found, "foot") == look.foot
    assert value(found, "arrives") == f"{look.arrives:.1f}"
    edge = look.window.closes if code == "W800" else look.window.opens
    assert value(found, "off") == f"{abs(look.arrives - edge):.1f}"
    assert (look.arrives > edge) == (code == "W800")


def test_an_arm_of_the_level_decides_what_is_out_of_reach() -> None:
    wide = f"""{THREE_TWO}
concept Outs
    out is strong #1
    out runs out 10
    feet 3
    read out on 3

dress Outs
    in Three Two
"""
    far = {}
    for level in ("youth", "high school", "college", "professional"):
        result = texts(TWELVE.replace("version 1", f"version 1\n    level {level}"), wide)
        far[level] = [d.code for d in of(result, "W800", "W801", "W802")]
    assert far == {"youth": ["W802"], "high school": [], "college": [], "professional": []}


# Room.


def test_two_crossers_at_one_depth_are_told_who_when_and_how_near() -> None:
    text = CONCEPT.replace("over runs cross 6", "over runs cross 5")
    result = texts(TWELVE, THREE_TWO, text, dress("Three Two"))
    (met,) = of(result, "W803")
    assert "over (H)" in message(met) and "under (W)" in message(met)
    assert float(value(met, "apart")) < 0.6
    assert 1.8 < float(value(met, "time")) < 2.6
    assert of(texts(TWELVE, THREE_TWO, CONCEPT, dress("Three Two")), "W803") == []


def test_men_who_meet_after_the_last_ball_is_caught_are_nobodys_concern() -> None:
    text = CONCEPT.replace("over runs cross 6", "over runs cross 5")
    text = re.sub(r"^    (read|pressure) .*\n", "", text, flags=re.MULTILINE)
    quick = text.replace("feet quick, 3, reset", "feet quick\n    read flat on quick")
    assert of(texts(TWELVE, THREE_TWO, quick, dress("Three Two")), "W803") == []


def test_two_men_in_one_window_and_a_flat_triangle_are_said_at_their_lines() -> None:
    result, text = case("two-men-over-the-ball")
    (crowd,) = of(result, "W804")
    assert line_of(text, crowd).startswith("read") and value(crowd, "other") == "settle (S)"
    result, text = case("settle-too-low-for-his-triangle")
    (flat,) = of(result, "W805")
    assert line_of(text, flat) == "claims triangle near top far"
    assert float(value(flat, "measured").split()[0]) < float(value(flat, "wanted")) == 1.8


def test_the_way_is_told_on_which_the_other_man_leaves_the_window() -> None:
    result, _ = case("two-men-over-the-ball")
    (crowd,) = of(result, "W804")
    way, role = value(crowd, "way"), value(crowd, "role")
    assert way in ("deeper", "lower", "farther out", "farther in") and role == "settle"
    assert value(crowd, "more") in ("0.5 yards", "a yard", "1.5 yards", "2 yards")


# Throws that no number of an order has.

BESIDE = """
concept Glance
    a is strong #1
    a runs hitch
    b is weak #1
    b runs {}
    everyone else runs go
    back runs swing
    feet 3, hitch
    {}
"""


@pytest.mark.parametrize(("route", "late"), [("hitch", False), ("go", True)])
@pytest.mark.parametrize(
    "order",
    [
        "read a with b on 3",
        "key near safety\n    throw a if he drops\n    throw b if he comes down",
    ],
)
def test_who_is_seen_with_another_or_chosen_by_a_key_is_timed(
    order: str, route: str, late: bool
) -> None:
    """A quick screen is over before the drop is down, off whatever foot: it is told, as a read."""
    text = BESIDE.format("bubble" if late else route, order)
    text = text.replace("feet 3, hitch", "feet 7, hitch, reset")
    text = text.replace("a runs hitch", "a runs dig 18").replace("on 3", "on 7")
    result = texts(TWELVE, THREE_TWO, text, "dress Glance\n    in Three Two\n")
    named = [value(d, "target") for d in of(result, "W800")]
    assert ("b" in named) is late


# The command.


def shown(folder: Path, *options: str) -> list[str]:
    result = CliRunner().invoke(main, ["check", str(folder), *options])
    assert result.exit_code == 0, result.output
    return result.stdout.splitlines()


def test_the_table_of_a_small_playbook(snapshot: SnapshotAssertion) -> None:
    assert "\n".join(shown(CORPUS / "base", "--timing")) == snapshot


def test_the_bundled_crossers_on_the_clock() -> None:
    """The clock of each tag, the sameness of all twenty calls, and the reads by all looks."""
    lines = shown(PLAYBOOKS / "saltmarsh-herons", "--timing", "--only", "Crossers")
    heads = [line for line in lines if "feet down at" in line]
    assert [head.partition(",")[0].removeprefix("Three Two Right ") for head in heads] == [
        "Crossers",
        "Crossers Wheel",
        "Crossers Return",
        "Crossers Wheel + Return",
    ]
    assert "Crossers: the quarterback's job in 20 calls" in lines
    assert "    all equal" in lines
    start = next(i for i, line in enumerate(lines) if line.startswith("    against"))
    looks = [line.split("  ")[2] for line in lines[start + 1 :] if line.startswith("    ")]
    assert looks == [
        *("Over Three", "Under Quarters", "Odd Two", "Tite Quarters", "Stack Three"),
        *("Bear One", "Even Two Man", "Fire Three", "Zero", "Goal Line"),
    ]
    assert lines[0].startswith("Times are planning estimates")


def test_only_without_timing_shows_the_clock_too() -> None:
    base = CORPUS / "base"
    assert shown(base, "--only", "Crossers") == shown(base, "--timing")
    assert len(shown(base)) == 1
