"""Whether what a comparison is asked about is known to either side."""

from __future__ import annotations

from collections.abc import Iterable

from stemline.compare.definitions import Definition, definitions
from stemline.diagnostics.nearest import nearest
from stemline.session import Session


def unknown_name(sides: tuple[Session, Session], only: str, man: str) -> str:
    """Why ``only``, a definition, or ``man``, a letter, means nothing on either side; "" where
    both do."""
    if only:
        names = [d.name for side in sides for d in _definitions(side)]
        if only.casefold() not in map(str.casefold, names):
            return f"--only: neither side has anything called {only}{_near(only, names)}"
    if man:
        letters = [letter for side in sides for letter in _letters(side)]
        if man.casefold() not in map(str.casefold, letters):
            return f"--for: neither side has a man called {man}{_near(man, letters)}"
    return ""


def _definitions(side: Session) -> Iterable[Definition]:
    return definitions(tree for tree, _ in side.trees).values()


def _letters(side: Session) -> list[str]:
    """The men of one call of each formation."""
    first = {order.formation: order for _, order in reversed(side.calls.orders)}
    plays = (side.drawn(order)[0] for order in first.values())
    return [man.label for play in plays if play is not None for man in play.men]


def _near(asked: str, names: Iterable[str]) -> str:
    found = nearest(asked, sorted(set(names)))
    return f"; nearest: {found[0]}" if found else f"; there are {', '.join(dict.fromkeys(names))}"
