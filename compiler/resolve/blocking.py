"""Who blocks whom: a play's blocking rules worked out against the defence it is drawn against."""

from __future__ import annotations

from stemline.diagnostics.model import Diagnostic
from stemline.football.field import Side
from stemline.football.play import Play
from stemline.resolve.binding import Bound, Picture
from stemline.resolve.definitions import Body, Playbook
from stemline.resolve.jobs import CARRIER
from stemline.resolve.pass_blocking import protect_up
from stemline.resolve.run_blocking import faked, has_run, run_side, run_up


def playside(body: Body, picture: Picture) -> Side | None:
    """The side a run goes to; None for a pass that joins none: its protection says its own."""
    return run_side(body, picture)


def block_up(
    play: Play, body: Body, book: Playbook, bound: Bound, picture: Picture
) -> tuple[Play, tuple[Diagnostic, ...]]:
    """``play`` with its blockers' assignments, keys and unblocked men filled in."""
    if has_run(body):
        return run_up(play, body, bound, picture)
    play, found = protect_up(play, body, book, bound, picture)
    if CARRIER in body.first:
        # A pass that shows a run and keeps its own protection: only the carrier fakes.
        play = faked(play, bound.men.get(CARRIER, ""))
    return play, found
