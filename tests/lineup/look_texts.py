"""A look as text, lined up against one formation of the 12-man code."""

from __future__ import annotations

from resolve.texts import THREE_TWO, TWELVE, codes, compiled, said

from stemline.football.defenders import Defence, Defender
from stemline.football.field import BallSpot, Side
from stemline.football.offence.counting import count, ranked
from stemline.lineup.alignment import line_up
from stemline.lineup.lined_up import LinedUp
from stemline.lineup.look_placed import line_up_defence
from stemline.resolve.expand import field_of
from stemline.session import Session

FRONT = """look Front
    E at 5, strong
    T at 3, strong
    N at 1, weak
    J at 5, weak
    S at strong #3 or apex or outside end, strong, 5 deep
    M at 10, strong
    W at 30, weak
    C at strong #1, 8 deep
    H at strong #2, 8 deep
    D at weak #2 or apex, weak, 8 deep
    B at weak #1, 8 deep
    F at middle, 13 deep
    C covers third, strong
    F covers third, middle
    B covers third, weak
    H covers flat, strong
    S covers hook, strong
    M covers hole
    W covers hook, weak
    D covers flat, weak
"""


def look(*lines: str) -> Session:
    """The front with lines of a look that extends it, beside one formation of the 12-man code."""
    child = "".join(["look Test extends Front\n", *(f"    {line}\n" for line in lines)])
    return compiled(TWELVE, THREE_TWO, FRONT + "\n" + (child if lines else ""))


def against(result: Session, spot: BallSpot = BallSpot.MIDDLE, side: Side = Side.RIGHT) -> Defence:
    """The test's look against its formation."""
    book = result.book
    assert book is not None
    field = field_of(book, spot)
    _, men, _ = line_up(book, book.formations["three two"], side, field)
    counted = count(men, side)
    picture = LinedUp(ranked(men, counted), counted, field, side, book.receivers)
    defence, found = line_up_defence(book.looks.get("test") or book.looks["front"], picture)
    assert defence is not None, said(found)
    return defence


def man(result: Session, label: str, side: Side = Side.RIGHT) -> Defender:
    assert codes(result) == [], said(result.diagnostics)
    return against(result, side=side).defender(label)
