"""Who has the ball from when to when, and between which places of his way: what a picture may draw
heavy. Times in seconds after the snap, places in yards."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from stemline.football.exchanges import BallMoves
from stemline.football.play import Play
from stemline.football.timing.ball_clock import BallMoment, ball_moments
from stemline.football.timing.levels import PlayingLevel


@dataclass(frozen=True)
class BallHeld:
    """A man who has the ball: ``got`` is how he gets it, None where it is snapped to him, and
    ``gave`` how he gives it, None where he keeps it."""

    man: str
    got: BallMoment | None = None
    gave: BallMoment | None = None


def ball_held(play: Play, level: PlayingLevel) -> tuple[BallHeld, ...]:
    """Who has the ball, one after another. A fake gives nothing; where nothing is said of it, it
    is the carrier's or the quarterback's from the snap."""
    return tuple(_held(play, level))


def _held(play: Play, level: PlayingLevel) -> Iterator[BallHeld]:
    passer = play.passer
    holder = BallHeld(passer.label if passer is not None else "")
    gives = [m for m in ball_moments(play, level) if m.exchange.kind is not BallMoves.FAKE]
    if not gives and play.carrier:
        holder = BallHeld(play.carrier)
    for moment in gives:
        if moment.exchange.kind is not BallMoves.SNAP and holder.man:
            yield BallHeld(holder.man, holder.got, moment)
        holder = BallHeld(moment.exchange.taker, moment)
    if holder.man:
        yield holder
