"""Who blocks whom: a play's blocking rules worked out against the defence it is drawn against."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Protocol

from stemline.diagnostics.diagnostic import Diagnostic
from stemline.football.defenders import Defence
from stemline.football.field import Side
from stemline.football.play import Play
from stemline.lineup.lined_up import LinedUp
from stemline.playbook.concepts import Body
from stemline.playbook.protection_definitions import Protection
from stemline.playbook.run_definitions import CARRIER
from stemline.resolve.blocking.pass_blocking import PassBlocking
from stemline.resolve.blocking.run_blocking import RunBlocking, has_run, run_side
from stemline.resolve.roles import Bound


class Blocking(Protocol):
    """What the blockers of one play are told: worked out once, put to one defence after another.

    ``playside`` is the side that a line's `playside` means, None for the strong one.
    """

    playside: Side | None

    def against(
        self, defence: Defence | None, shows: tuple[str, ...]
    ) -> tuple[Play, tuple[Diagnostic, ...]]:
        """The play with its blockers' assignments, keys and unblocked men filled in.

        ``shows`` are the looks that are known to show; without a defence there are only words.
        """


def playside(body: Body, picture: LinedUp) -> Side | None:
    """The side a run goes to; None for a pass that joins none: its protection says its own."""
    return run_side(body, picture)


def blocking(
    play: Play,
    body: Body,
    protections: Mapping[str, Protection],
    bound: Bound,
    picture: LinedUp,
) -> Blocking:
    """The blocking of ``play``, which stands against no defence yet."""
    if has_run(body):
        return RunBlocking(play, body, bound, picture)
    # A pass that shows a run and keeps its own protection: only the carrier fakes.
    carrier = bound.men.get(CARRIER, "") if CARRIER in body.first else None
    protection = protections.get(play.protection)
    return PassBlocking(play, body, protection, bound, picture, carrier)
