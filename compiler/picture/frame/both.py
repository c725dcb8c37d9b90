"""What a picture shows: a play, and under it the play as it was where that is shown too."""

from __future__ import annotations

from dataclasses import dataclass, replace

from stemline.football.play import Play
from stemline.picture.frame.board import Shot, shot
from stemline.theme import Size


@dataclass(frozen=True)
class Both:
    """A play and, under it, the play as it was: ``play`` and ``shot`` hold both as one, for the
    frame and for what a close picture closes up; ``now`` and ``was`` are as the picture shows
    them."""

    play: Play
    shot: Shot
    now: Play
    was: Play | None


def both_of(play: Play, before: Play | None, size: Size) -> Both:
    """Both plays as a picture of ``size`` shows them; ``was`` is None where there is no other."""
    if before is None:
        seen = shot(play, size)
        return Both(play, seen, seen.play, None)
    one = replace(
        play,
        men=(*play.men, *before.men),
        assignments=(*play.assignments, *before.assignments),
    )
    seen, men, tasks = shot(one, size), len(play.men), len(play.assignments)
    shown, look = seen.play, before.defence
    if look is not None:
        moved = tuple(replace(d, at=seen.fold.point(d.at)) for d in look.defenders)
        look = replace(look, defenders=moved)
    now = replace(shown, men=shown.men[:men], assignments=shown.assignments[:tasks])
    was = replace(before, men=shown.men[men:], assignments=shown.assignments[tasks:], defence=look)
    return Both(one, seen, now, was)
