"""What is said of a play, its protection's words and the spoken description, against the play."""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import takewhile

from stemline.football.play import Assignment, Kind, Play, Read
from stemline.football.players import Position

BACKS = (Position.BACK, Position.FULLBACK)


# The protection.


def unprotected(play: Play) -> Iterator[str]:
    """Each man who is told another block than the protection's words say of his place."""
    said = dict(_places(play.protection_words))
    kept = [t.job for t in play.assignments if play.man(t.man).position in BACKS]
    for head, word in (("Scan", "Scan"), ("Edge", "Block the edge")):
        other = {"Scan": "Block the edge", "Edge": "Scan"}[head]
        if said.get("helper") == head and not any(job.startswith(word) for job in kept):
            stays = [job for job in kept if job.startswith(other)]
            yield from (f"{play.call.spoken}: {head}, but he is told {job}" for job in stays)
    if "Slide" not in play.protection_words and "Man" not in play.protection_words:
        return
    for man in play.men:
        job = play.assignment(man.label).job
        side = 0 if play.toward is None else man.snap.x * play.toward.value
        place = man.position.value
        if place in ("guard", "tackle"):
            place = f"{'playside' if side > 0 else 'backside'} {place}"
        rule = said.get(place) or said.get("line")
        judged = man.interior and play.toward is not None and not _outside(man.label, play)
        if judged and rule and not job.startswith(rule.split(" ")[0]):
            yield f"{play.call.spoken}: {man.label} {rule}, but he is told {job}"


def _outside(label: str, play: Play) -> bool:
    """A second tackle on one side has a place of his own."""
    mine = play.man(label)
    return (
        sum(
            m.interior and m.position is mine.position and m.snap.x * mine.snap.x > 0
            for m in play.men
        )
        > 1
    )


def _places(words: str) -> Iterator[tuple[str, str]]:
    """ "Slide: centre, playside guard. Scan: helper (back)." by place."""
    for rule, places in re.findall(r"([A-Z][a-z ]+): ([^.]+)\.", words):
        for place in places.split(", "):
            yield place.partition(" (")[0], rule


# The spoken words.


def unsaid(play: Play, words: str) -> Iterator[str]:
    """What ``words`` leave out of a play: a man, where he is, his job, where he ends."""
    sentences = re.split(r"(?<=\.) (?=[A-Z])", words)
    for task in play.assignments:
        man = play.man(task.man)
        if man.interior or not (task.role and task.job):
            continue
        mine = [s for s in sentences if re.match(rf"{man.label}( as |,| lines|:)", s)]
        said = " ".join(_after(sentences, mine[0], play)) if mine else ""
        if not said:
            yield f"{play.call.spoken}: {man.label} is not spoken of"
            continue
        yield from (
            f"{play.call.spoken}: {man.label} {what} is not in: {said}"
            for what in _parts(task, play)
            if what.casefold() not in said.casefold()
        )
    yield from (
        f"{play.call.spoken}: not said: {what}" for what in _whole(play) if what not in words
    )
    if play.protection and f"Protection: {play.protection}" not in words:
        yield f"{play.call.spoken}: no protection"
    if play.protection_words and play.protection_words.rstrip(". ") not in words:
        yield f"{play.call.spoken}: the protection is not said"


def _done(does: str, to: str) -> str:
    """ "pitch to F", "throw R", "keep"."""
    return f"{does} to {to}" if does in ("pitch", "give") and to else f"{does} {to}".rstrip()


def _whole(play: Play) -> Iterator[str]:
    """What is true of a play as a whole, in its words."""
    strong, weak = play.shape
    yield f"Receivers: {strong} {play.strong.word}, {weak} {play.strong.other.word}."
    if play.kind is Kind.RUN and play.toward is not None:
        yield f"to the {play.toward.word} by {play.carrier}, ball"
    for name, reads in (("Reads", play.reads), ("Under pressure", play.pressure)):
        said = ", ".join(_read(r) for r in reads if r.men or play.defence is None)
        then = f", then {in_the_end(play)}" if name == "Reads" and play.last else ""
        if said:
            yield f"{name}: {said}{then}."
    if play.feet and play.kind is Kind.PASS:
        yield "; then ".join(step.words for step in play.feet)
    for key in play.keys:
        yield f"Key: {key.described}" + (f" ({key.man})" if key.man else "")
        yield from (f"{_done(does, to)} when {when}" for does, to, when in key.choices)
    for alert in play.alerts:
        yield f"Alert: {alert.target}"
    if play.unblocked:
        *most, last = play.unblocked
        yield f"Free on defence: {' and '.join(filter(None, (', '.join(most), last)))}."
    if play.chasing:
        *most, last = play.chasing
        yield f"Left to {play.carrier}: {' and '.join(filter(None, (', '.join(most), last)))}."
    for task in play.assignments:
        if play.man(task.man).interior and task.job:
            words = re.sub(r"\.$", "", task.job.strip())
            yield words[1:]
    if play.defence is not None:
        yield play.defence.name


def in_the_end(play: Play) -> str:
    """What the quarterback does when nobody is open, as it is said: "run or throw it away"."""
    return " or ".join("throw it away" if w == "throw away" else w for w in play.last)


def _read(read: Read) -> str:
    who = f" ({', '.join(read.men)})" if read.men else ""
    with_ = f" with {read.partner}" + (f" ({read.partner_man})" if read.partner_man else "")
    return (
        f"{read.number} {read.target}{who}"
        + (with_ if read.partner else "")
        + (f" on {read.foot}" if read.foot else "")
    )


def _after(sentences: list[str], first: str, play: Play) -> list[str]:
    """A man's sentence with those that belong to it, up to the next man's: a job may be of
    several."""
    others = "|".join(man.label for man in play.men)
    at = sentences.index(first)
    own = takewhile(
        lambda s: not re.match(rf"({others})( as |,| lines|:)|Protection:|Free on", s),
        sentences[at + 1 :],
    )
    return [first, *own]


def _parts(task: Assignment, play: Play) -> Iterator[str]:
    man = play.man(task.man)
    if task.motion is not None:
        yield f"before the snap: {task.motion.words}"
    if man is not play.passer and abs(man.at.x) >= 0.25:
        side = "right" if man.at.x > 0 else "left"
        counted = task.motion is None and man.rank is not None
        yield f"{_half(abs(man.at.x))} {'from' if counted else f'{side} of'} the ball"
    yield task.job.rstrip(". ")
    yield from (branch.job.rstrip(". ") for branch in task.branches)
    path = task.path
    if path is not None and path.legs and not task.hits:
        if abs(path.end.x) >= 0.25:
            side = "right" if path.end.x > 0 else "left"
            yield f"{_half(abs(path.end.x))} {side} of the ball"
        if abs(path.end.y) >= 0.25:
            yield f"{_half(abs(path.end.y))} {'past' if path.end.y > 0 else 'behind'} the line"


def _half(length: float) -> str:
    text = f"{int(2 * length + 0.5) / 2:g}"
    return {"0.5": "half a yard", "1": "1 yard"}.get(text, f"{text} yards")
