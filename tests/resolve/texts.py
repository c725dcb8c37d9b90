"""Small playbooks for the tests: formations of both codes and the crossing family's one text."""

from __future__ import annotations

import re
from collections.abc import Iterable
from pathlib import Path as File

from stemline.checks.discovered import wordings
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.football.conditions import LookWord
from stemline.football.field import BallSpot
from stemline.football.play import Play
from stemline.resolve.expand import expand
from stemline.session import Session
from stemline.source import Source

PLAYBOOKS = File(__file__).parents[2] / "playbooks"

TWELVE = """
playbook Saltmarsh Herons
    version 1
    code canadian amateur
    house numbers is 10

personnel Twelve
    Q is quarterback, right hand
    R, F is back
    X, Z is wideout
    H, S, W is slotback
"""

ELEVEN = """
playbook Cedar Flats Lanterns
    version 1
    code high school

personnel Eleven
    Q is quarterback, right hand
    R is back
    X, Z is wideout
    H, S, W is slot
    Y is tight end
"""

THREE_TWO = """
formation Three Two
    X at away, 2 inside numbers, on line
    W at away, 5 outside tackle, off line
    H at call, 4 outside tackle, off line
    S at call, between H and Z, off line
    Z at call, numbers, on line
    R at away, 2 outside ball, 5 deep
    Q at ball, 5 deep
"""

QUADS = """
formation Quads
    X at away, numbers, on line
    W at call, 3 outside tackle, off line
    H at call, 6 outside tackle, off line
    S at call, between H and Z, off line
    Z at call, numbers, on line
    R at away, 2 outside ball, 5 deep
    Q at ball, 5 deep

motion Tuck
    away #1 moves to away, 6 outside tackle, on line
    snap set
"""

EMPTY = """
formation Empty
    X at away, 1 inside numbers, on line
    W at away, 2 outside tackle, off line
    H at call, 2 outside tackle, off line
    S at call, between H and Z, off line
    Z at call, numbers, on line
    Q at ball, 5 deep
"""

TRIPS = """
formation Trips
    X at away, 5 outside tackle, on line
    H at call, 2 outside tackle, off line
    S at call, between H and Z, off line
    Z at call, numbers, on line
    R at away, 2 outside ball, 5 deep
    Q at ball, 5 deep
"""

TREY = """
formation Trey
    X at away, 5 outside tackle, on line
    Y at call, end, on line
    S at call, between Y and Z, off line
    Z at call, numbers, off line
    R at away, 2 outside ball, 5 deep
    Q at ball, 5 deep
"""

DOUBLES_ELEVEN = """
formation Doubles
    X at away, 6 outside tackle, on line
    W at away, 3 outside tackle, off line
    S at call, 3 outside tackle, off line
    Z at call, 6 outside tackle, on line
    R at away, 2 outside ball, 5 deep
    Q at ball, 5 deep
"""

DOUBLES_TWELVE = f"{DOUBLES_ELEVEN}    F at call, 2 outside ball, 5 deep\n"


def block_of(text: str, header: str) -> str:
    """One block of a text by its header line, with the lines under it."""
    found = re.search(rf"^{re.escape(header)}\n(?:(?:[ /].*)?\n)*", text, re.MULTILINE)
    assert found, f"no block {header}"
    return found.group()


def shipped(header: str) -> str:
    """A block of the playbooks that come with the compiler, wherever it stands there."""
    texts = [f.read_text(encoding="utf-8") + "\n" for f in sorted(PLAYBOOKS.rglob("*.play"))]
    return block_of(next(t for t in texts if f"{header}\n" in t), header)


CONCEPT = shipped("concept Crossers")
WHEEL = shipped("tag Wheel for Crossers")
RETURN = shipped("tag Return for Crossers")
CROSSERS = f"{CONCEPT}\n{WHEEL}\n{RETURN}"


def dress(formation: str, *lines: str, concept: str = "Crossers", sides: bool = True) -> str:
    """A dress-up in one formation ("Quads motion Tuck"), to both sides unless said."""
    more = ["to right, left"] if sides else []
    return "\n".join(
        [f"dress {concept}", *(f"    {x}" for x in (f"in {formation}", *lines, *more))]
    )


CLOCK = ("W80", "E666")


def compiled(*texts: str) -> Session:
    """Texts, each as a file of its own: one.play, two.play ...

    What the clock says of them is left out: it has tests of its own.
    """
    names = ("one", "two", "three", "four", "five", "six", "seven", "eight")
    sources = [Source(f"{n}.play", f"{t}\n") for n, t in zip(names, texts, strict=False)]
    assert len(sources) == len(texts)
    result = Session(sources, "playbook")
    kept = tuple(d for d in result.diagnostics if not d.code.startswith(CLOCK))
    # What a session has answered it keeps: the same playbook, without what the text leaves out.
    result.__dict__["_proved"] = (result.season, kept)
    return result


def sound(*texts: str) -> Session:
    """Texts that make no mistake, not even a warning."""
    result = compiled(*texts)
    assert said(result.diagnostics) == []
    return result


def play(
    result: Session,
    call: str,
    spot: BallSpot = BallSpot.MIDDLE,
    against: Iterable[LookWord] = (),
) -> Play:
    """One call of the book from one ball spot."""
    assert result.book is not None
    made, found = expand(result.book, result.calls.by_name[call], spot, tuple(against))
    assert made is not None and not found, said(found)
    return made


def message(d: Diagnostic) -> str:
    """The sentence of one diagnostic."""
    return wordings()[d.code].message.format(**dict(d.values))


def said(found: Iterable[Diagnostic]) -> list[str]:
    """Every diagnostic as "code line: sentence"."""
    return [f"{d.code} {d.span.line}: {message(d)}" for d in found]


def codes(result: Session) -> list[str]:
    return [d.code for d in result.diagnostics]


def who(play: Play) -> dict[str, str]:
    """Roles by the man who plays them: "strong #2", or his letter when he is behind the ball."""
    table: dict[str, str] = {}
    for assignment in play.assignments:
        if assignment.role:
            rank = play.man(assignment.man).rank
            side = "strong" if rank and rank.side is play.strong else "weak"
            table[assignment.role] = f"{side} #{rank.number}" if rank else assignment.man
    return table
