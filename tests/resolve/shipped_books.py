"""The bundled playbooks, each compiled once for all tests of a process."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from stemline.football.field import BallSpot
from stemline.football.play import Play
from stemline.outside.project import read_files
from stemline.resolve.order import Order
from stemline.session import Session

PLAYBOOKS = Path(__file__).parents[2] / "playbooks"
BOOKS = ("saltmarsh-herons", "cedar-flats-lanterns")


@cache
def shipped(book: str) -> Session:
    """What one test has asked of it, the next has for nothing: its plays too."""
    return Session(read_files(PLAYBOOKS / book).sources, book, whole=True)


def played(book: str, order: Order, look: str = "", spot: BallSpot = BallSpot.MIDDLE) -> Play:
    """A call of it as it must be made: there is nothing in either book that cannot be."""
    play, _ = shipped(book).play(order, spot, (), look)
    assert play is not None
    return play
