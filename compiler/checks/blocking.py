"""Does a run block the box it is called against?

A back makes one man miss; he does not make two. Against the look that the playbook draws runs
against, and against those that a dress-up names, more than one man of the box whom nobody blocks
and nobody reads is said, by name: bring a blocker, make one of them a `key`, or leave the call at
home. Against the other looks of the book only a blocker who has nobody is said, where two men or
more are free: give him one more rule, such as `or climb`.

How many a look leaves free is football and stands on the run's page; it is no mistake by itself.
Common practice, no published source: the extra man is the back's.
"""

from __future__ import annotations

from collections.abc import Iterator

from stemline.diagnostics.model import Diagnostic, diagnose
from stemline.football.defence import Level
from stemline.football.play import Man, Play
from stemline.resolve.words import listed

REACH = 4.5
"""Yards from his place to the second level over him: how far a lineman climbs."""
GAP = 1.3
"""Yards to each side of him in which a man on the line is on him or in his gap."""
MOST_FREE = 1
"""Men of the box whom the carrier is asked to run by."""


def check_free(play: Play) -> Iterator[Diagnostic]:
    """More men free than the carrier can run by."""
    if play.defence is not None and len(play.unblocked) > MOST_FREE:
        yield diagnose(
            "W670",
            play.span,
            call=play.call.spoken,
            free=_and(play.unblocked),
            look=play.defence.name,
        )


def check_spent(play: Play) -> Iterator[Diagnostic]:
    """A lineman who blocks nobody while men of the box are free."""
    if play.defence is None or len(play.unblocked) <= MOST_FREE:
        return
    for man in play.men:
        mine = play.assignment(man.label)
        if man.interior and mine.job and not mine.hits and mine.path is None and near(man, play):
            yield diagnose(
                "W671",
                mine.span,
                call=play.call.spoken,
                free=_and(play.unblocked),
                look=play.defence.name,
                man=mine.role or man.label,
            )


def near(man: Man, play: Play) -> bool:
    """Whether one of the free men is where he could have come to him."""
    free = [d for d in play.defence.defenders if d.label in play.unblocked] if play.defence else []
    return any(
        abs(d.at.x - man.snap.x) <= GAP if d.level is Level.LINE
        else man.snap.distance(d.at) <= REACH
        for d in free
    )  # fmt: skip


def _and(labels: tuple[str, ...]) -> str:
    return listed(labels).replace(" or ", " and ")
