"""What the men who give and take the ball are told of it, where the coach says how it goes."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace

from stemline.football.exchanges import BallMoves, Exchange, said_any
from stemline.football.play import Assignment, Kind, Play, Step
from stemline.resolve.blocking.handing_off import FAKES, without_the_ball

_GIVES = {
    BallMoves.HAND: "hand {ball} to", BallMoves.TOSS: "toss {ball} to",
    BallMoves.PITCH: "pitch {ball} to", BallMoves.THROW: "throw {ball} to",
    BallMoves.SHOVEL: "shovel {ball} to", BallMoves.SNAP: "snap {ball} to",
}  # fmt: skip
_TAKES = {
    BallMoves.HAND: "take {ball} from", BallMoves.TOSS: "catch the toss from",
    BallMoves.PITCH: "catch the pitch from", BallMoves.THROW: "catch the throw from",
    BallMoves.SHOVEL: "catch the shovel from", BallMoves.SNAP: "catch the snap from",
    BallMoves.FAKE: "take the fake from",
}  # fmt: skip
_BEHIND = re.compile(r"\b([\d.]+) behind\b")
_DEEP = re.compile(r"\b([\d.]+) deep, (?:over )?(?:the )?([a-z]+(?: [a-z]+)?)$")
_RUNS = ("Take the ball to", "Fake the run to")


def with_ball_words(play: Play) -> Play:
    """The play with what each man does with the ball before what else he is told."""
    if not said_any(play.exchanges):
        return play
    tasks = tuple(_told(a, play) for a in play.assignments)
    return replace(play, assignments=tasks, feet=tuple(_step(step, play) for step in play.feet))


def _step(step: Step, play: Play) -> Step:
    """A step of the quarterback; his fake is none where he does hand the ball on."""
    passer = play.passer
    handed = next(
        (
            x.taker
            for x in play.exchanges
            if x.kind is BallMoves.HAND and passer is not None and x.giver == passer.label
        ),
        "",
    )
    if step.name != "fake" or not handed or play.kind is Kind.RUN:
        return step
    return replace(step, words=f"hand the ball to {handed}", said="hand-off")


def _told(a: Assignment, play: Play) -> Assignment:
    takes, gives = list(_takes(a, play)), list(_gives(a.man, play))
    passer = play.passer
    throws = passer is not None and a.man == passer.label
    if not takes and not gives:
        return a
    if throws and play.kind is Kind.RUN and play.carrier != a.man and not _reads(play):
        feet = without_the_ball(play)
        told = _sentence(", then ".join([", ".join((*gives, *takes)), *feet]))
        return replace(a, job=f"{told} {a.job}" if a.hits else told)
    if throws:
        return replace(a, job=" ".join((_sentence(", ".join((*gives, *takes))), a.job)).rstrip())
    job = a.job.replace(FAKES, "") if a.man in play.ball_men else a.job
    for words in _RUNS if a.man in play.ball_men else ():
        job = job.replace(words, "Run to")
    if job and a.path is not None and _caught_on_the_way(a, play):
        return replace(a, job=" ".join((job, *(_sentence(told) for told in takes))))
    if job and gives:
        done = ", then ".join((job.removesuffix("."), *gives))
        return replace(a, job=" ".join((*(_sentence(told) for told in takes), f"{done}.")))
    return replace(a, job=f"{_sentence(', '.join((*takes, *gives)))} {job}".rstrip())


def _reads(play: Play) -> bool:
    return any(key.choices for key in play.keys)


def _caught_on_the_way(a: Assignment, play: Play) -> bool:
    """Whether the ball is thrown to a man who runs a route for it."""
    thrown = any(x.taker == a.man and x.kind is BallMoves.THROW for x in play.exchanges)
    return thrown and a.path is not None and a.path.end.y > 0


def _takes(a: Assignment, play: Play) -> Iterator[str]:
    """From whom he takes it; a second time it is "it"."""
    for x in play.exchanges:
        if x.taker == a.man:
            yield f"{_TAKES[x.kind].format(ball='the ball')} {x.giver}{_where(x, 'him')}"


def _gives(man: str, play: Play) -> Iterator[str]:
    """To whom he gives it, in order."""
    named = any(x.taker == man for x in play.exchanges if x.kind is not BallMoves.FAKE)
    passer = play.passer
    named = named and (passer is None or man != passer.label)
    for x in play.exchanges:
        if x.giver != man or x.kind is BallMoves.SNAP:
            continue
        if x.kind is BallMoves.FAKE:
            yield f"fake to {x.taker}{_where(x, 'you')}"
            continue
        rest = " or run" if x.runs else ""
        given = _GIVES[x.kind].format(ball="it" if named else "the ball")
        yield f"{given} {' or '.join((x.taker, *x.others))}{_where(x, 'you')}{rest}"
        named = True


def _where(x: Exchange, giver: str) -> str:
    """The coach's own words for the place and the moment; ``giver`` is "you" or "him"."""
    place = _BEHIND.sub(rf"\1 yards behind {giver}", x.words)
    place = _DEEP.sub(r"\1 deep behind the \2", place)
    at = f", {place}" if place else ""
    return at + (f" after {x.after:g} seconds" if x.after is not None else "")


def _sentence(words: str) -> str:
    return f"{words[:1].upper()}{words[1:]}."
