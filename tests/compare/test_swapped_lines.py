"""Two neighbouring lines that change places: a comparison tells it, or no page changes."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from enum import Enum
from functools import cache

import pytest
from sampling import every

from stemline.book.content.book import Edition, make_book
from stemline.compare.comparing import compared
from stemline.football.play import Play
from stemline.resolve.concept_views import with_views
from stemline.resolve.sheets import with_sheets
from stemline.session import Session
from stemline.source import Source, Span

PLAYBOOK = """
playbook Lanterns
    version 1
    code high school
    season 2026
    against Over
    say "Few plays."
    say "Many looks."
    caution "Water."
    caution "Heat."

personnel Base
    Q is quarterback
    B is back
    X is wideout
    Z is wideout
    H is slot
    Y is tight end

formation Doubles
    X at away, numbers, on line
    H at away, 4 outside tackle, off line
    Y at call, end, on line
    Z at call, numbers, off line
    B at away, 2 outside ball, 5 deep
    Q at ball, 5 deep
    signal "a fist"
    word Oak

look Over
    E in 5, strong
    T in 3, strong
    N in 1, weak
    J in 5, weak
    M in 10, strong
    W in 30, weak
    S at strong #3 or apex or outside end, strong, 5 deep
    C at strong #1, 1 outside, 8 deep
    K at weak #1 or outside end, weak, 8 deep
    R at weak #2 or hash, weak, 9 deep
    F at middle, 12 deep
    C covers third, strong
    F covers third, middle
    K covers third, weak
    S covers curl, strong

protection Wall
    toward call
    line blocks slide
    hot flat if a sixth comes
    hot stick

concept Stick
    stick is strong #2
    clear is strong #1
    flat is back
    away is weak #1
    stick runs stick 6
    clear runs fade
    flat runs shoot to 6 outside tackle
    away runs slant
    feet quick, hitch
    read flat on quick > stick on hitch
    pressure flat > stick
    protect Wall
    alert clear on corner
    alert away on near safety
    suits 2nd and 4 to 6
    suits red zone
    stick says "Turn."
    stick says "Stay."
    say "Quick."
    say "Now."
    signal "a star"
    word Elm

tag Up for Stick
    stick runs stick 5
    clear runs go
    keeps read

dress Stick
    in Doubles
    with plain
    with Up
    to right
    to left

run Zone
    carrier is back
    carrier aims playside A
    line blocks on or hinge
    key end is end man on line, backside
    key edge is first man outside tackle, playside
    quarterback gives if end stays
    quarterback keeps if end chases
    feet fake
    say "Press."

dress Zone
    in Doubles
    to right

run Veer
    carrier is back
    carrier aims playside A
    trail is strong #2
    trail runs swing playside
    line blocks on or hinge
    key first man outside tackle
    give if he stays
    pull if he comes down
    pitch to trail off second man outside tackle if he takes the quarterback

dress Veer
    in Doubles
    to right

concept Snag
    snag is strong #1
    snag runs snag
    flag is strong #2
    flag runs corner
    flat is back
    flat runs swing strong
    claims triangle flat, snag, flag
    claims stretch snag, flag on curl defender
    pair flag above flat
    kill to Stick when 6 or fewer in box
    kill to Zone when 8 or more in box
    spot window is low, same side as snag
    spot top is over ball
    read flag on 3 > flat on 3 > snag on hitch
    protect Wall
    feet 3, hitch

dress Snag
    in Doubles
    to right
"""
_LINES = tuple(PLAYBOOK.splitlines())
_PLACES = tuple(
    n for n in range(len(_LINES) - 1) if all(line.startswith("    ") for line in _LINES[n : n + 2])
)


def _swapped(at: int) -> str:
    lines = list(_LINES)
    lines[at : at + 2] = lines[at + 1], lines[at]
    return "\n".join(lines) + "\n"


def _session(text: str) -> Session:
    return Session((Source("book.play", text),), "swapped", whole=True)


def _printed(session: Session) -> tuple[object, ...]:
    """All that stands on the pages of the book, without pictures, and the calls in their order."""
    assert session.book is not None and session.season is not None, session.diagnostics
    shown = with_views(session.book, session.calls, session.season, session.expander)
    whole = with_sheets(session.book, shown, session.expander)
    return tuple(_words(make_book(whole, Edition("", ""), ("",)))), tuple(session.listed())


def _words(value: object) -> Iterator[object]:
    if isinstance(value, Play):
        yield value.call.spoken
    elif is_dataclass(value) and not isinstance(value, (type, Span)):
        for field in fields(value):
            yield from _words(getattr(value, field.name))
    elif isinstance(value, (tuple, list)):
        for each in value:
            yield from _words(each)
    elif isinstance(value, (str, int, float, Enum)):
        yield value


@cache
def _before() -> tuple[Session, tuple[object, ...]]:
    session = _session(PLAYBOOK)
    return session, _printed(session)


@pytest.mark.parametrize("at", _PLACES[:: every(8)])
def test_two_lines_that_change_places_are_told_or_change_no_page(at: int) -> None:
    was, printed = _before()
    now = _session(_swapped(at))
    if compared(was, now).is_same:
        assert _printed(now) == printed, f"{_LINES[at].strip()} | {_LINES[at + 1].strip()}"
