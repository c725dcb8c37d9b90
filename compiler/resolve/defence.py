"""A look + the men at the snap → a `Defence`: every defender placed and given his duty."""

from __future__ import annotations

from stemline.diagnostics.model import Diagnostic
from stemline.football.defence import Defence
from stemline.resolve.binding import Picture
from stemline.resolve.look_definitions import LookDef


def line_up_defence(
    look: LookDef, picture: Picture
) -> tuple[Defence | None, tuple[Diagnostic, ...]]:
    """The look against these men; None, with the reasons, where it cannot line up."""
    return None, ()
