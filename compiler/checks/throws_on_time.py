"""Is every read open when the quarterback gets to it?

A drawing can lie: the man who is drawn open at twelve yards gets there when the ball should be
gone, or two men who cross on paper run into each other on grass. The clock says when the feet are
ready, when the ball is there and when its man is open; what does not fit is a warning, since every
figure behind it is a planning estimate.

Example: the far out of the wide side, thrown across 65 yards off a three-step drop. Give the man a
shorter split, throw it earlier, or call it into the boundary.
"""

from __future__ import annotations

from collections.abc import Container, Iterator, Sequence

from stemline.diagnostics.diagnostic import Diagnostic, diagnose
from stemline.football.play import Play
from stemline.football.timing.clock import ReadClock, TimedRead, Verdict
from stemline.football.timing.levels import GAP
from stemline.football.timing.space import Meeting, crossings, crowds, measured
from stemline.playbook.concepts import Keep
from stemline.source import Span


def check_clock(play: Play, clock: ReadClock, told: Container[str] = ()) -> Iterator[Diagnostic]:
    """Reads that come too early, too late or out of reach, at the read's place in the text.

    ``told`` are targets of which something worse is said: one cause, one diagnostic.
    """
    for look in clock.reads:
        if look.read.target in told:
            continue
        code = {Verdict.LATE: "W800", Verdict.EARLY: "W801", Verdict.TOO_FAR: "W802"}.get(
            look.verdict
        )
        if code is not None and look.window is not None:
            yield diagnose(
                code,
                look.read.span,
                target=look.read.target,
                man=look.window.man,
                foot=look.foot,
                arrives=f"{look.arrives:.1f}",
                opens=f"{look.window.opens:.1f}",
                closes=f"{look.window.closes:.1f}",
                off=f"{look.misses:.1f}",
                yards=f"{look.distance:.0f}",
                spot=play.ball.value,
                call=play.call.spoken,
            )


def check_space(play: Play, clock: ReadClock) -> Iterator[Diagnostic]:
    """Men who run into each other or stand in one window, and claims that do not hold."""
    over = max((look.arrives for look in clock.reads), default=0.0)
    for crossing in crossings(clock.men):
        if crossing.meeting is Meeting.COLLIDE and crossing.time <= over + GAP:
            task = play.assignment(crossing.under)
            yield diagnose(
                "W803", task.span, over=_who(play, crossing.over), under=_who(play, crossing.under),
                time=f"{crossing.time:.1f}", apart=f"{crossing.apart:.1f}", call=play.call.spoken,
            )  # fmt: skip
    for crowd in crowds(clock):
        yield diagnose(
            "W804", crowd.read.read.span, target=crowd.read.read.target,
            other=_who(play, crowd.other), apart=f"{crowd.apart:.1f}", call=play.call.spoken,
        )  # fmt: skip
    for shape in measured(play, clock):
        if not shape.holds:
            yield diagnose(
                "W805", shape.claim.span, kind=shape.claim.kind, measured=shape.words,
                wanted=shape.wish, targets=", ".join(shape.claim.targets),
                call=play.call.spoken,
            )  # fmt: skip


def check_rhythm(
    tag: str,
    keeps: Sequence[tuple[Keep, Span]],
    plain: ReadClock,
    tagged: ReadClock,
    play: Play,
) -> Iterator[Diagnostic]:
    """``keeps read`` by the clock: a read that is on time in the plain call is on time with the
    tag, off the same foot."""
    for keep, span in keeps:
        pairs = {
            Keep.READ: zip(plain.reads, tagged.reads, strict=False),
            Keep.PRESSURE: zip(plain.pressure, tagged.pressure, strict=False),
        }.get(keep, ())
        for before, after in pairs:
            if before.verdict is Verdict.ON_TIME and _broken(after):
                yield diagnose(
                    "E666", span, tag=tag, target=after.read.target, foot=after.foot,
                    what=keep.value, number=after.read.number, how=_how(after),
                    call=play.call.spoken, concept=play.call.concept,
                )  # fmt: skip


def _broken(look: TimedRead) -> bool:
    return look.verdict in (Verdict.EARLY, Verdict.LATE, Verdict.TOO_FAR)


def _how(look: TimedRead) -> str:
    if look.verdict is Verdict.EARLY:
        opens = look.window.opens if look.window else 0.0
        return f"opens at {opens:.1f} s, {look.misses:.1f} s after the ball is there"
    if look.verdict is Verdict.LATE:
        return f"was open until {look.misses:.1f} s before the ball is there"
    return f"is {look.distance:.0f} yards away, out of reach"


def _who(play: Play, label: str) -> str:
    role = play.assignment(label).role
    return f"{role} ({label})" if role else label
