"""Does a run block the box it is called against?

A back makes one man miss; he does not make two. Against the look that the playbook draws runs
against, and against those that a dress-up names, more than one man of the box whom nobody blocks
and nobody reads is said, by name: bring a blocker, make one of them a `key`, or leave the call at
home.

Against the other looks of the book it is no mistake: a run is not called into every front, and who
is free stands on its page. Common practice, no published source: the extra man is the back's.
"""

from __future__ import annotations

from collections.abc import Iterator

from stemline.diagnostics.diagnostic import Diagnostic, diagnose
from stemline.football.play import Play
from stemline.read.words import listed

MOST_FREE = 1
"""Men of the box whom the carrier is asked to run by."""


def check_blocking(play: Play) -> Iterator[Diagnostic]:
    """More men of the box free than the carrier can run by."""
    if play.defence is not None and len(play.unblocked) > MOST_FREE:
        yield diagnose(
            "W670",
            play.span,
            call=play.call.spoken,
            free=listed(play.unblocked).replace(" or ", " and "),
            look=play.defence.name,
        )
