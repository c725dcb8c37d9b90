"""What a page shows of the plays that its call becomes at the line: a small picture of each."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from stemline.book.content.letters import with_men
from stemline.book.content.page import Entry, Remark
from stemline.book.content.quarterback_strip import feet_words
from stemline.football.play import Becoming, Play
from stemline.football.timing.clock import read_clock
from stemline.football.timing.levels import LEVELS


def second_plays(play: Play, id_: str, level: str) -> Iterator[Entry]:
    """A picture for each, headed by what is said, with what he sees beside it; ``level`` names
    the clock's figures."""
    for number, becoming in enumerate(play.becomes, 1):
        yield Entry(
            f"{id_}-second-{number}",
            becoming.headed,
            becoming.play,
            _told(becoming, level),
            listed=False,
            aside=becoming.when,
        )


def told_seconds(play: Play, level: str) -> tuple[Remark, ...]:
    """What a call is killed to, in words: what he sees, and his job then."""
    return tuple(
        Remark(
            f"killed to {k.words}",
            "; ".join((f"when {k.when}", *(f"{n.label} {n.words}" for n in _told(k, level)))),
        )
        for k in play.becomes
    )


def _told(becoming: Becoming, level: str) -> tuple[Remark, ...]:
    """The quarterback's job in the second play, and the looks that bring it."""
    return tuple(_notes(becoming, level))


def _notes(becoming: Becoming, level: str) -> Iterator[Remark]:
    second = becoming.play
    if second.reads and second.feet:
        yield Remark("feet", feet_words(second))
        clock = read_clock(second, LEVELS[level])
        reads = (
            f"{r.read.number} {with_men(r.read.target, r.read.men)} thrown {r.thrown:.1f}"
            for r in clock.reads
        )
        yield Remark("reads", ", ".join(reads))
    if becoming.looks:
        yield Remark("shown by", ", ".join(becoming.looks))


def tag_words(plays: Iterable[Play]) -> dict[str, str]:
    """By each tag that says one, what a call with it is killed to."""
    return {k.tag: f"Killed to {k.words} when {k.when}." for p in plays for k in p.becomes if k.tag}
