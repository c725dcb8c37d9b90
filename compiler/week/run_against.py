"""What a plan's runs are against the looks of its opponent: a man is told what he does this week.

The season's book draws a run against one look; the men of a week have other fronts before them.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import replace

from stemline.football.field import BallSpot
from stemline.football.play import Play
from stemline.resolve.order import Order
from stemline.week.week_values import AgainstLooks, Plan


def against_looks(
    plan: Plan,
    orders: Mapping[str, Order],
    put: Callable[[Order, BallSpot, str], Play | None],
) -> AgainstLooks:
    """Each call whose picture shows a defence, against every look of the opponent that it meets
    and can stand against, in the order in which the week names them. ``put`` makes a call from a
    spot against a look by its key, or None where it cannot."""
    made: dict[str, tuple[tuple[str, Play], ...]] = {}
    for call in plan.calls:
        drawn = plan.plays[call]
        if drawn.defence is None:
            continue
        found = (
            (look, put(orders[call], drawn.ball, look.casefold())) for look in _met(plan, call)
        )
        plays = tuple(
            (look, replace(play, becomes=drawn.becomes))
            for look, play in found
            # One that is never played against the formation leaves the play without a defence.
            if play is not None and play.defence is not None
        )
        if plays:
            made[call] = plays
    return made


def _met(plan: Plan, call: str) -> Iterator[str]:
    """All that the week faces; of a call whose every row is kept for some of it, these alone."""
    rows = [row for each in plan.lists for row in each.rows if row.call == call]
    kept = {row.look.casefold() for row in rows}
    known = {name.casefold() for name in plan.faces}
    yield from (look for look in plan.faces if not kept <= known or look.casefold() in kept)
