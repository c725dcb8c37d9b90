"""Which looks show a call what it is killed on."""

from __future__ import annotations

from dataclasses import replace

from stemline.football.field import BallSpot
from stemline.lineup.sights import seen
from stemline.playbook.kill_definitions import KillDef
from stemline.playbook.playbook import Playbook
from stemline.resolve.blocking.blockers import playside
from stemline.resolve.expand import Expander, called_at
from stemline.resolve.order import Order


def looks_seen(
    book: Playbook, expander: Expander, order: Order, kill: KillDef, spot: BallSpot
) -> tuple[str, ...]:
    """The keys of the playbook's looks that show a call from a spot what the kill waits for."""
    parts, at = expander.casting(order, spot), called_at(book, order, spot)
    if parts is None or at is None:
        return ()
    picture = replace(parts.picture, toward=playside(parts.body, parts.picture))
    found = []
    for key, look in book.looks.items():
        defence, _ = expander.defence(key, at) if not look.broken else (None, ())
        if defence is not None and seen(kill.when, defence, picture):
            found.append(key)
    return tuple(found)
