"""Slips of a coach in a week's text: each has one message, at its place, with the nearest word."""

from __future__ import annotations

import pytest
from corpus.mixing import base

from stemline.session import Session
from stemline.source import Source

WEEK = """\
look Theirs extends Base
    say "Theirs on long downs."

week 3 Larch Bay
    date 2026-09-19
    faces Base, Theirs
    short Crossers is CRS
    openers
        Three Two Right Crossers
        Quads Right Tuck Crossers, "First look only."
    situation 1st and 10, left hash
        Three Two Right Crossers, fast
    situation red zone
        Three Two Right Crossers Wheel when Theirs
    wristband Skill for Q, R
        holds openers, red zone
    scout Tuesday
        Three Two Right Crossers against Theirs
    practice Tuesday at 1530
    period Team, 10 minutes, thud, Tuesday
        openers
        Three Two Right Crossers Wheel against Base, 3 reps
    quiz H on Thursday
"""

SLIPS = [
    ("Right Crossers\n        Quads", "Rihgt Crosers\n        Quads", "E602",
     "Three Two Rihgt Crosers", "Three Two Right Crossers"),
    ("        Three Two Right Crossers\n        Quads", "        Three Two Crossers\n        Quads",
     "E602", "Three Two Crossers", "Three Two Right Crossers"),
    ("Quads Right Tuck Crossers,", "Tuck Crossers Quads Right,", "E602",
     "Tuck Crossers Quads Right", "Quads Right Tuck Crossers"),
    ("situation red zone", "situaton red zone", "E220", "situaton", "situation"),
    ("situation red zone", "situation red zoen", "E971", "red zoen", "red zone"),
    ("1st and 10, left hash", "1st and 10 left hash", "E974", "1st and 10 left hash", ""),
    ("date 2026-09-19", "date Sept 19", "E977", "Sept 19", ""),
    ("faces Base, Theirs", "faces Base, Thiers", "E310", "Thiers", "Theirs"),
    ("extends Base", "extends Bsae", "E302", "Bsae", "Base"),
    ("when Theirs", "when Thiers", "E310", "Thiers", "Theirs"),
    ("for Q, R", "for Q, RR", "E998", "RR", "R"),
    ("holds openers, red zone", "holds openers, goal line", "E993", "goal line", ""),
    ("thud, Tuesday", "thud, Teusday", "E980", "Teusday", "Tuesday"),
    ("10 minutes, thud", "10 minutes, thudd", "E980", "thudd", "thud"),
    ("at 1530", "at 15:30", "E121", ":", ""),
    ("3 reps", "x3", "E983", "x3", ""),
    ("quiz H on", "quiz HH on", "E998", "HH", "H"),
    ("Crossers, fast", "Crossers fast", "E602",
     "Three Two Right Crossers fast", "Three Two Right Crossers, fast"),
    ("Wheel against Base, 3", "Wheel vs Base, 3", "E602",
     "Three Two Right Crossers Wheel vs Base", "Three Two Right Crossers Wheel against Base"),
    ("H on Thursday", "H Thursday", "E998", "H Thursday", "H on Thursday"),
    ("period Team, 10 minutes, thud, Tuesday", "period Team 10 minutes thud Tuesday", "E985",
     "period Team 10 minutes thud Tuesday", "period Team, 10 minutes, thud, Tuesday"),
    ("10 minutes, thud", "10 min, thud", "E980", "10 min", "10 minutes"),
    ("        openers\n        Three Two", "        openers\n    Three Two", "E228",
     "Three Two Right Crossers Wheel against Base, 3 reps", ""),
]  # fmt: skip


def _found(text: str) -> list[tuple[str, str, tuple[str, ...]]]:
    asked = Session((*base(), Source("week.play", text)), "book")
    found = [*asked.definitions, *(d for week in asked.weeks for d in week.found)]
    lines = text.splitlines()
    return [
        (d.code, lines[d.span.line - 1][d.span.column - 1 : d.span.end - 1], d.nearest)
        for d in found
        if d.is_error
    ]


def test_the_week_itself_has_none() -> None:
    assert _found(WEEK) == []


@pytest.mark.parametrize(("right", "wrong", "code", "at", "near"), SLIPS)
def test_a_slip_is_told_once_where_it_is(
    right: str, wrong: str, code: str, at: str, near: str
) -> None:
    text = WEEK.replace(right, wrong, 1)
    assert text != WEEK
    ((said, place, nearest),) = _found(text)
    assert (said, place) == (code, at)
    assert nearest[0] == near if near else True


WHEEL = "Three Two Right Crossers Wheel"
NEXT = """
week 4 Ember Ridge from 3 Larch Bay
    faces Base
"""


def test_a_card_of_last_weeks_look_is_told() -> None:
    """`Theirs` is on a card that is taken over; the period's own look is faced again."""
    assert _warned(WEEK + NEXT) == ["W995"]
    # A row that waits for it is told too, where no card is.
    assert _warned(WEEK + NEXT + "    drop scout Tuesday\n") == ["W995"]
    now = NEXT + f"    drop {WHEEL} from red zone\n    situation red zone\n        {WHEEL}\n"
    assert _warned(WEEK + NEXT.replace("Base", "Base, Theirs")) == []
    assert _warned(WEEK + now + "    drop scout Tuesday\n") == []
    # What the week itself writes is meant; and who names no looks is told nothing.
    own = "    scout Tuesday\n        Three Two Right Crossers against Theirs\n"
    assert _warned(WEEK + now + own) == []
    assert (
        _warned(
            (WEEK + now).replace("    faces Base, Theirs\n", "").replace("    faces Base\n", "")
        )
        == []
    )


def _warned(text: str) -> list[str]:
    asked = Session((*base(), Source("week.play", text)), "book")
    found = [*asked.definitions, *(d for week in asked.weeks for d in week.found)]
    assert not any(d.is_error for d in found)
    return [d.code for d in found]
