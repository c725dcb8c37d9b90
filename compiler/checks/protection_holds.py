"""Is there an answer for everybody who comes?

A pressure that brings one more than the protection blocks is normal football: the quarterback
throws before the free man is there. But then somebody must be the throw: the concept says it by its
`pressure` order or the protection by a `hot` line. Two free rushers no throw beats.

Silent without a look: a dress-up's `against` names those that a call is proved against.

Example: ``protect five`` against a look in which six rush, and no `pressure` line. Write
``pressure flat on quick``, or ``hot slant`` in the protection, or keep the back in.
"""

from __future__ import annotations

from collections.abc import Iterator

from stemline.diagnostics.diagnostic import Diagnostic, Mistake
from stemline.football.play import Kind, Play


class W691(Mistake):
    title = "a free rusher and no answer"
    message = (
        "against {look} one more comes than {protection} blocks: {man} is free {where}, and "
        "nothing is thrown for him ({call})"
    )
    label = "no answer"
    help = "give the concept a `pressure` order, or the protection a `hot`"

    call: str
    look: str
    man: str
    protection: str
    where: str


class W692(Mistake):
    title = "two free rushers"
    message = "against {look} two more come than {protection} blocks: {men} are free ({call})"
    label = "too few stay in"
    help = "keep another man in, slide to them, or leave this look out of the dress-up"

    call: str
    look: str
    men: str
    protection: str


MIDDLE = 1.5
"""A man who comes free within this of the ball comes up the middle. Common practice."""


def check_protection(play: Play) -> Iterator[Diagnostic]:
    """Free rushers of a pass against the look it is drawn against, at the call."""
    if play.kind is not Kind.PASS or play.defence is None or not play.protection:
        return
    look, protection, call = play.defence.name, play.protection, play.call.spoken
    free = play.unblocked
    if len(free) > 1:
        men = " and ".join(f"{label} {_where(play, label)}" for label in free)
        yield W692(look=look, protection=protection, men=men, call=call).at(play.span)
    elif free and not play.pressure and not play.hot:
        yield W691(
            look=look, protection=protection, man=free[0], where=_where(play, free[0]), call=call,
        ).at(play.span)  # fmt: skip


def _where(play: Play, label: str) -> str:
    """Where he comes from, by the side of the offence's strength."""
    assert play.defence is not None
    man = play.defence.defender(label)
    x = (man.duty.to if man.duty is not None and man.duty.to is not None else man.at).x
    if abs(x) < MIDDLE:
        return "up the middle"
    return "from the strong side" if x * play.strong.value > 0 else "from the weak side"
