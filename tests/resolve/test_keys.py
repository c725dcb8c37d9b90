"""Who is read: the man whom the blocking of the call leaves, in every look of both books."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache

import pytest

from resolve.shipped_books import shipped
from resolve.test_protections import LOOKS as COVERED
from resolve.test_runs import FORMATIONS, LOOKS, OTHERS
from resolve.texts import DOUBLES_ELEVEN, ELEVEN, THREE_TWO, codes, compiled
from stemline.football.defenders import DutyKind
from stemline.football.field import BallSpot
from stemline.football.play import Play
from stemline.session import Session
from stemline.source import Source

GLANCE = f"""
run Zone
    carrier is back
    carrier aims playside A
    line blocks on or double with centre then far linebacker
    centre blocks on or double with playside guard or double with backside guard then linebacker
{OTHERS.replace("far blocks stalk", "far runs slant")}
    key KEY
    give if he drops
    throw far if he fits the run
    feet catch

dress Zone
    in Two Backs
    to right, left
"""

TWO_KEYS = """
playbook Herons
    code college

formation Trips
    X at away, numbers, on line
    H at call, 4 outside tackle, off line
    S at call, 5 outside H, off line
    Z at call, numbers, on line
    R at call, 2 outside ball, 5 deep
    Q at ball, 5 deep

run Zone Bubble
    toward away from back
    carrier is back
    carrier aims playside A
    line blocks on or climb
    bubble is strong inside
    bubble runs bubble
    everyone else blocks stalk
    key end is backside end man on line
    key apex is backside overhang
    quarterback gives if end stays
    quarterback keeps if end chases
    quarterback throws to bubble if end chases, apex comes up

dress Zone Bubble
    in Trips to both

look Over Three
    E in 5, strong
    T in 3, strong
    N in 1, weak
    J in 5, weak
    S at tight end or apex, strong, 5 deep
    M in 10, strong
    W in 30, weak
    C at strong #1, 7 deep
    B at weak #1, 7 deep
    H at strong #2, 2 outside, 8 deep
    F at middle, 12 deep

look Odd Two
    N in 0
    E in 5, strong
    J in 5, weak
    S at outside end, strong, 1 deep
    W at outside end, weak, 1 deep
    M in 30, strong
    L in 30, weak
    C at strong #1, 6 deep
    B at weak #1, 6 deep
    H at hash, strong, 12 deep
    F at hash, weak, 12 deep
"""
"""A give, a keep and a throw: the tackle passes the end, who is read, to the linebacker."""


def book(key: str) -> Session:
    return compiled(ELEVEN, FORMATIONS, LOOKS, GLANCE.replace("KEY", key))


def options(made: Session) -> Iterator[Play]:
    """Every call with a throw off a key, against every look of its book; not proved."""
    season, _ = made.pictured()
    assert made.book is not None and season is not None
    for play in season.plays:
        if any(key.throws for key in play.keys):
            order = made.calls.by_name[play.call.spoken]
            for look in made.book.looks:
                shown, _ = made.play(order, BallSpot.MIDDLE, look_key=look)
                if shown is not None:
                    yield shown


@cache
def bundled(name: str) -> tuple[Play, ...]:
    return tuple(options(shipped(name)))


@pytest.mark.parametrize("name", ["saltmarsh-herons", "cedar-flats-lanterns"])
def test_the_books_read_who_is_left_and_nobody_blocks_him(name: str) -> None:
    """One free beside the key is the backside end, a man of a front with more men than blockers
    and key, or the far linebacker of a stack whose blitz the line takes."""
    shown = bundled(name)
    assert len(shown) >= 30
    for play in shown:
        assert play.defence is not None
        (key,) = play.keys
        taken = {h.defender for a in play.assignments for h in a.hits}
        assert key.man and key.man not in taken and not key.instead, play.call.spoken
        if play.defence.name in ("Over Three", "Under Quarters", "Fire Three"):
            assert play.unblocked == (), (play.call.spoken, play.defence.name)


def test_a_key_outside_the_box_while_a_linebacker_is_left_is_told() -> None:
    """Of two choices on one side only the man whom the line cannot block makes up for him."""
    assert "W671" in codes(book("backside corner"))
    assert "W671" not in codes(book("backside unblocked man"))


def test_an_unblocked_man_is_on_the_side_that_the_key_names() -> None:
    for side, way in (("playside", 1), ("backside", -1)):
        for play in options(book(f"{side} unblocked man")):
            assert play.defence is not None and play.toward is not None
            at = play.defence.defender(play.keys[0].man).at
            assert at.x * play.toward.value * way >= -0.25


def test_of_two_keys_the_second_is_refused() -> None:
    two = "overhang, backside\n    key end man on line, backside"
    assert "E681" in codes(book(two))


@pytest.mark.parametrize(
    ("name", "concept", "look", "man"),
    [
        ("saltmarsh-herons", "Inside Zone", "Over Three", "W"),
        ("saltmarsh-herons", "Inside Zone", "Odd Two", "J"),
        ("saltmarsh-herons", "Slants", "Over Three", "M"),
        ("saltmarsh-herons", "Slants", "Tite Quarters", "S"),
        ("cedar-flats-lanterns", "Zone", "Under Quarters", "W"),
        ("cedar-flats-lanterns", "Zone", "Tite Quarters", "J"),
        ("cedar-flats-lanterns", "Bubble", "Over Three", "M"),
        ("cedar-flats-lanterns", "Bubble", "Odd Two", "S"),
    ],
)
def test_the_count_tells_who_is_read(name: str, concept: str, look: str, man: str) -> None:
    """Six in the box and five blockers: one is left. Five and a man on the edge: whoever hangs
    there. Common practice, no published source."""
    shown = [p for p in bundled(name) if p.call.concept == concept]
    assert {p.keys[0].man for p in shown if p.defence and p.defence.name == look} == {man}


# A pass that shows no run.

SLANTS = """
concept Slants
    outer is strong #1
    outer runs slant 4
    inner is strong #2
    inner runs slant 3
    swing is back
    swing runs swing strong
    feet quick, 3
    KEY
    throw swing if he stays
    throw inner if he widens
    read inner on quick > outer on 3 > swing on 3

dress Slants
    in Three Two
    to right, left
"""


def test_a_pass_that_shows_no_run_reads_whom_it_names() -> None:
    """Each throw is the quarterback's, off the man on the side to which it goes."""
    made = compiled(ELEVEN, THREE_TWO, COVERED, SLANTS.replace("KEY", "key flat defender"))
    season, found = made.pictured()
    assert season is not None and not [d for d in found if d.is_error]
    for play in season.plays:
        assert play.defence is not None and play.passer is not None
        (key,) = play.keys
        duty = play.defence.defender(key.man).duty
        assert duty is not None and duty.kind is DutyKind.FLAT
        assert play.defence.defender(key.man).at.x * play.call.side.value > 0
        men = {a.role: a.man for a in play.assignments}
        swing, inner = men["swing"], men["inner"]
        assert play.assignment(play.passer.label).job == (
            f"Read {key.man}, the flat defender: throw {swing} if he stays; "
            f"throw {inner} if he widens."
        )


def test_a_throw_off_nobody_is_told_in_a_pass_too() -> None:
    made = compiled(ELEVEN, THREE_TWO, COVERED, SLANTS.replace("    KEY\n", ""))
    assert "E677" in codes(made)


WIDE = DOUBLES_ELEVEN.replace("6 outside tackle", "numbers")
ZERO = """
look Zero extends Four
    C at strong #1, 5 deep
    B at weak #1, 5 deep
    S at apex, strong, 4 deep
    R at apex, weak, 4 deep
    F in 30, strong
    F covers hook, strong
"""


@pytest.mark.parametrize(
    ("key", "looks", "others"),
    [
        ("nose", "", ["near safety", "near linebacker"]),
        ("nose", ZERO, ["near linebacker"]),
        ("near safety", ZERO, ["near linebacker"]),
    ],
)
def test_of_a_key_who_is_nobody_those_are_named_whom_every_look_has(
    key: str, looks: str, others: list[str]
) -> None:
    def told(key: str) -> list[str]:
        text = SLANTS.replace("KEY", f"key {key}").replace("Three Two", "Doubles")
        made = compiled(ELEVEN, WIDE, COVERED.replace("N at 1", "N at 3") + looks, text)
        return [dict(d.values)["instead"] for d in made.diagnostics if d.code == "W688"]

    (said,) = told(key)
    assert re.findall("`key ([^`]+)`", said) == others
    for other in others:
        assert told(other) == []


# An overhang, by where he stands.

HANGS = """
playbook Flint Rams
    code college

formation Trey
    X at away, numbers, on line
    Y at call, end, on line
    H at call, 5 outside tackle, off line
    Z at call, numbers, off line
    R at call, 2 outside ball, 5 deep
    Q at ball, 5 deep

run Inside Zone
    toward call
    carrier is back
    carrier aims playside A
    line blocks on or climb
    everyone else blocks stalk

concept Zone Glance
    join run Inside Zone
    glance is weak #1
    glance runs glance
    everyone else blocks stalk
    key weak WHO
    give if he stays out
    throw glance if he fits the run

dress Zone Glance
    in Trey to both

look Over Quarters
    E in 5, strong
    T in 3, strong
    N in 1, weak
    J in 5, weak
    M in STACK, weak
    S at apex, strong, 5 deep
    W at STANDS, weak, HIGH deep
    C at strong #1, 7 deep
    H at strong #2, 10 deep
    F at weak, between #1 and tackle, 10 deep
    B at weak #1, 7 deep
    C, H, F, B cover quarter
    S covers flat, strong
    M covers hole
    W covers flat, weak
"""


@pytest.mark.parametrize(
    ("who", "stack", "stands", "high", "man"),
    [
        ("overhang", "10", "apex", "5", "W"),
        ("force defender", "10", "apex", "5", "W"),
        ("overhang", "10", "4 outside tackle", "5", "W"),
        ("overhang", "10", "apex", "11", ""),
        ("overhang", "50", "apex", "11", ""),
        ("overhang", "50", "apex", "5", "W"),
    ],
)
def test_an_overhang_is_outside_the_line_and_as_wide_as_the_apex(
    who: str, stack: str, stands: str, high: str, man: str
) -> None:
    """An inside linebacker never is one, and then nobody is read, which is told. Common practice,
    no published source."""
    places = {"WHO": who, "STACK": stack, "STANDS": stands, "HIGH": high}
    text = HANGS
    for name, is_ in places.items():
        text = text.replace(name, is_)
    made = compiled(text)
    shown = list(options(made))
    assert {play.keys[0].man for play in shown} == {man} and len(shown) == 2
    for play in shown:
        blocked = {h.defender for a in play.assignments for h in a.hits}
        assert "M" in blocked and "W" not in blocked
    assert ("W688" in codes(made)) is (not man)


def test_a_key_is_judged_after_the_tackle_has_passed_the_other() -> None:
    session = Session([Source("herons", TWO_KEYS)], "two keys", whole=True)
    assert "W671" not in codes(session)
