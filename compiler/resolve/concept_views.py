"""What a concept's page shows besides its calls: its first call against the other looks and from
the other spots, and those that read a defender by look.

Nothing here is proved. It is built for a printed book alone, so that a check does not wait for it.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import replace

from stemline.diagnostics.diagnostic import Diagnostic
from stemline.football.field import BallSpot
from stemline.football.later import later
from stemline.football.play import ConceptSheet, Kind, Play, Season
from stemline.football.put_to_looks import PutToLooks
from stemline.playbook.playbook import Playbook
from stemline.resolve.all_calls import Calls
from stemline.resolve.expand import Expander
from stemline.resolve.order import Order

Plays = Callable[[], tuple[Play, ...]]
"""Makes plays, each against a look."""
Put = Callable[[Order, BallSpot, tuple[str, ...], Plays], PutToLooks | None]
"""What is known of a call from a spot against looks by their keys, else worked out from the plays
that the last gives; None where it has none."""


def with_views(
    book: Playbook,
    calls: Calls,
    season: Season,
    expander: Expander | None = None,
    put: Put | None = None,
) -> Season:
    """``season`` with each concept's first call against every look of the playbook, and the first
    of those that read a defender; ``put`` gives what comes of a pass's looks in their place."""
    maker = expander or Expander(book)
    viewed = (_viewed(book, calls, season, c, maker, put) for c in season.concepts)
    return replace(season, concepts=tuple(viewed))


def _viewed(
    book: Playbook,
    calls: Calls,
    season: Season,
    sheet: ConceptSheet,
    expander: Expander,
    put: Put | None,
) -> ConceptSheet:
    mine = tuple(p for p in season.plays if p.call.concept == sheet.name)
    if not mine:
        return sheet
    first = mine[0]
    order = calls.by_name[first.call.spoken]
    known = {name: value for name, value in vars(sheet).items() if name not in _VIEWS}

    def faced() -> tuple[Play, ...]:
        made = (expander.expand(order, first.ball, look_key=key) for key in whole_looks(book))
        return tuple(p for p in _shown(made) if p.defence is not None)

    if first.is_read and put is not None:
        known |= {"faced": (), "put": put(order, first.ball, tuple(whole_looks(book)), faced)}

    def fill(name: str) -> dict[str, object]:
        match name:
            case "faced":
                return {name: faced() if first.is_read else ()}
            case "keyed":
                return {name: _keyed(book, calls, mine, expander)}
            case "spotted":
                return {name: tuple(_spotted(book, calls, mine, expander))}
        return {"views": () if first.is_read else _against_looks(book, order, first, expander)}

    return later(ConceptSheet, known, fill)


_VIEWS = ("views", "faced", "keyed", "spotted")
"""What of a concept's sheet is made when somebody asks for it: plays that no index needs."""


def _against_looks(
    book: Playbook, order: Order, first: Play, expander: Expander
) -> tuple[Play, ...]:
    """A run by its rules, and against the looks that it is not drawn against."""
    if first.kind is not Kind.RUN or first.defence is None:
        return ()
    drawn = order.look or book.base_look
    others = (key for key in whole_looks(book) if key != drawn)
    rules, *met = (expander.expand(order, first.ball, look_key=key) for key in ("", *others))
    against = (play for play in _shown(met) if play.defence is not None)
    return (*_shown((rules,)), *against)


def _keyed(
    book: Playbook, calls: Calls, mine: Sequence[Play], expander: Expander
) -> tuple[Play, ...]:
    """The first call that reads a defender, and the first with each other tag, by look."""
    firsts: dict[tuple[str, ...], Play] = {}
    for play in mine:
        if play.keys:
            firsts.setdefault(play.call.tags, play)
    made = (
        expander.expand(calls.by_name[play.call.spoken], play.ball, look_key=key)
        for play in firsts.values()
        for key in whole_looks(book)
    )
    return tuple(play for play in _shown(made) if play.defence is not None)


def _spotted(
    book: Playbook, calls: Calls, mine: Sequence[Play], expander: Expander
) -> Iterator[Play]:
    """The first call, and those whose side or use hangs on the ball's spot, from their others."""
    for play in mine:
        call = play.call
        if play is not mine[0] and call.way is None and not call.best and not call.not_from:
            continue
        order = calls.by_name[call.spoken]
        look = book.base_look if play.defence is not None else ""
        spots = [spot for spot in order.spots if spot is not play.ball]
        yield from _shown(expander.expand(order, spot, look_key=look) for spot in spots)


def _shown(made: Iterable[tuple[Play | None, tuple[Diagnostic, ...]]]) -> Iterator[Play]:
    """The plays that could be made; what is wrong with the others is told by the checks."""
    for play, found in made:
        if play is not None and not any(d.is_error for d in found):
            yield play


def whole_looks(book: Playbook) -> Iterator[str]:
    """The keys of the looks that were read to the end."""
    return (key for key, look in book.looks.items() if not look.broken)
