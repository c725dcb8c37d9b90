"""A draw on the clock: the quarterback drops as for a pass, and the back waits to take the ball
where he is when the last step is down."""

from __future__ import annotations

from stemline.football.exchanges import Exchange
from stemline.football.offence.quarterback import DROPS
from stemline.football.play import Kind, Play
from stemline.football.timing.levels import PlayingLevel
from stemline.football.timing.throwing import in_gun


def draws(play: Play) -> Exchange | None:
    """The exchange at the end of a drop, which nobody has to say; None for any other play."""
    if play.kind is not Kind.RUN or len(play.exchanges) != 1:
        return None
    (x,) = play.exchanges
    return x if not x.said and x.at is not None and _steps(play) else None


def drop_down(play: Play, level: PlayingLevel) -> float:
    """Seconds from the snap until the last step of a draw's drop is down."""
    passer = play.passer
    gun = passer is None or in_gun(passer.snap)
    return (level.foot if gun else level.under)[_steps(play)[0]].value


def _steps(play: Play) -> list[str]:
    return [step.name for step in play.feet if step.name in DROPS]
