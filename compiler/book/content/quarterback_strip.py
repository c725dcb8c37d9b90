"""The quarterback's strip: which read is thrown from which step, and what pressure leaves."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from stemline.book.content.calling import Calling
from stemline.book.content.job_rows import JobChange, change_notes
from stemline.book.content.letters import beside, with_men
from stemline.book.content.page import Remark
from stemline.describe.phrases import at_last
from stemline.football.play import Alert, Claim, Play, Read, Step


@dataclass(frozen=True)
class ReadLook:
    """A read: its number in the order, the spot or role, who stands there, who goes with it."""

    number: int
    target: str
    men: str
    partner: str


@dataclass(frozen=True)
class Stop:
    """A step of the quarterback's feet and the reads that are thrown from it."""

    name: str
    words: str
    looks: tuple[ReadLook, ...]


@dataclass(frozen=True)
class Quarterback:
    """The quarterback's strip.

    ``loose`` are reads whose step is not said; ``skipped`` the targets that pressure leaves out;
    ``but`` tells in which calls his "feet", "reads", "pressure", "alert", "claim" or what he does
    at "last" are others.
    """

    stops: tuple[Stop, ...]
    loose: tuple[ReadLook, ...]
    pressure: tuple[ReadLook, ...]
    skipped: tuple[str, ...]
    notes: tuple[Remark, ...]
    but: tuple[JobChange, ...] = ()

    @property
    def changes(self) -> tuple[Remark, ...]:
        return change_notes(self.but)


def strip(play: Play) -> Quarterback | None:
    """The strip of one call, or None when it says nothing to the quarterback."""
    placed = _steps_of(play.feet, play.reads)
    looks = tuple(_look(read) for read in play.reads)
    stops = tuple(
        Stop(
            step.called,
            _sentence(step),
            tuple(look for look, at in zip(looks, placed, strict=True) if at == i),
        )
        for i, step in enumerate(play.feet)
    )
    loose = tuple(look for look, at in zip(looks, placed, strict=True) if at is None)
    pressure = tuple(_look(read) for read in play.pressure)
    kept = {read.target for read in play.pressure}
    skipped = tuple(read.target for read in play.reads if kept and read.target not in kept)
    notes = (
        *(_claim(claim) for claim in play.claims),
        *(_alert(alert) for alert in play.alerts),
        *(_glance(read) for read in play.reads if read.partner),
        *((Remark("nobody open", at_last(play)),) if play.last else ()),
        *((Remark("side", play.pick),) if play.pick else ()),
        *((Remark("nobody plays", ", ".join(play.nobody)),) if play.nobody else ()),
    )
    if not (stops or loose or pressure or notes):
        return None
    return Quarterback(stops, loose, pressure, skipped, notes)


def orders(plays: Sequence[Play]) -> Quarterback | None:
    """The strip of the first call, and in which calls he is told otherwise."""
    first, calling = strip(plays[0]), Calling(plays)
    if first is None:
        return None
    told: dict[tuple[str, str], list[int]] = {}
    for i, play in enumerate(plays):
        for part, said in _PARTS.items():
            if said(play) != said(plays[0]):
                told.setdefault((part, said(play)), []).append(i)
    changes = (
        JobChange(
            part,
            calling.label(calls),
            _HEADS[part] + words if words else _NO[part],
            first=calls[0],
        )
        for (part, words), calls in told.items()
    )
    return replace(first, but=tuple(changes))


def feet_words(play: Play) -> str:
    """His feet in order; a step that goes to a side, or has words of its own, with these."""
    return ", ".join(
        f"{step.name} to the {step.side.word}" if step.side is not None else step.called
        for step in play.feet
    )


def reads_words(play: Play) -> str:
    """His reads in order with the step that throws each."""
    return ", ".join(
        f"{read.number} {_with(read)}" + (f" on {read.foot}" if read.foot else "")
        for read in play.reads
    )


def pressure_words(play: Play) -> str:
    return ", ".join(f"{read.number} {read.target}" for read in play.pressure)


def alert_words(play: Play) -> str:
    return ", ".join(
        f"{alert.target}, when {alert.when}" if alert.when else alert.target
        for alert in play.alerts
    )


def claim_words(play: Play) -> str:
    return "; ".join(f"{note.label}: {note.words}" for note in map(_claim, play.claims))


def _with(read: Read) -> str:
    return f"{read.target} with {read.partner}" if read.partner else read.target


_PARTS: dict[str, Callable[[Play], str]] = {
    "feet": feet_words,
    "reads": reads_words,
    "pressure": pressure_words,
    "alert": alert_words,
    "claim": claim_words,
    "last": at_last,
}
_HEADS = {
    "feet": "steps: ",
    "reads": "reads: ",
    "pressure": "under pressure: ",
    "alert": "alert: ",
    "claim": "shape: ",
    "last": "nobody open: ",
}
_NO = {
    "feet": "no steps said",
    "reads": "no reads",
    "pressure": "no read under pressure",
    "alert": "no alert",
    "claim": "no shape to read",
    "last": "nothing said for when nobody is open",
}


def _steps_of(feet: tuple[Step, ...], reads: tuple[Read, ...]) -> tuple[int | None, ...]:
    """For each read the index of the step that throws it, in order; None when it is not said.

    Two reads on steps of the same name stand on two steps when the feet hold two, else on one.
    """
    at = -1
    found: list[int | None] = []
    for read in reads:
        ahead = [i for i, step in enumerate(feet) if i > at and step.name == read.foot]
        if ahead:
            at = ahead[0]
        if ahead or (at >= 0 and feet[at].name == read.foot):
            found.append(at)
        else:
            found.append(next((i for i, s in enumerate(feet) if s.name == read.foot), None))
    return tuple(found)


def _look(read: Read) -> ReadLook:
    partner = with_men(read.partner, (read.partner_man,))
    return ReadLook(read.number, read.target, beside(read.target, " ".join(read.men)), partner)


def _sentence(step: Step) -> str:
    return "" if step.words == step.name else step.words


def _claim(claim: Claim) -> Remark:
    label = f"{claim.kind} on {claim.on}" if claim.on else claim.kind
    return Remark(label, ", ".join(claim.targets))


def _glance(read: Read) -> Remark:
    """A man who is looked at with a read: the clock's picture has only the read's own."""
    target, partner = (
        with_men(name, men)
        for name, men in ((read.target, read.men), (read.partner, (read.partner_man,)))
    )
    return Remark("seen together", f"{read.number} {target} with {partner}".rstrip())


def _alert(alert: Alert) -> Remark:
    who = with_men(alert.target, alert.men)
    return Remark("alert", f"{who}, when {alert.when}" if alert.when else who)
