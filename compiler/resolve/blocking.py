"""Who blocks whom: a play's blocking rules worked out against the defence it is drawn against."""

from __future__ import annotations

from stemline.diagnostics.model import Diagnostic
from stemline.football.field import Side
from stemline.football.play import Play
from stemline.resolve.binding import Bound, Picture
from stemline.resolve.definitions import Body, Playbook


def playside(body: Body, picture: Picture) -> Side | None:
    """The side a run goes to, or a protection slides to; None where the body says nothing."""
    return None


def block_up(
    play: Play, body: Body, book: Playbook, bound: Bound, picture: Picture
) -> tuple[Play, tuple[Diagnostic, ...]]:
    """``play`` with its blockers' assignments, keys and unblocked men filled in."""
    return play, ()
