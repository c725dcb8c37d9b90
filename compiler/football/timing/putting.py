"""A pass put to the looks that it stands against, as `PutToLooks` has it."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from stemline.football.play import Play
from stemline.football.put_to_looks import LookAnswered, PutToLooks, ReadAtLook
from stemline.football.timing.clock import read_clock
from stemline.football.timing.coverage import Against, against
from stemline.football.timing.levels import PlayingLevel


def put_to_looks(plays: Sequence[Play], level: PlayingLevel) -> PutToLooks:
    """One call against looks, a play each; it reads somebody, and there is one play or more."""
    call = plays[0].call
    return PutToLooks(
        call.concept,
        call.formation,
        tuple((str(read.number), read.target) for read in plays[0].reads),
        tuple(looked(against(play, read_clock(play, level), level)) for play in plays),
        _letters(d.label for play in plays if play.defence for d in play.defence.defenders),
        _letters(man.label for play in plays for man in play.men),
    )


def looked(one: Against) -> LookAnswered:
    """What a page prints of a call against a look."""
    best, hot = one.best, one.hot
    return LookAnswered(
        one.look,
        tuple(
            ReadAtLook(each.cover.name, each.yards, each.nearest, bool(each.read.read.men))
            for each in one.reads
        ),
        next((i for i, each in enumerate(one.reads) if each is best), None),
        one.out,
        hot.read.read.target if hot is not None else None,
        one.rusher,
        one.hot_words,
    )


def _letters(said: Iterable[str]) -> tuple[str, ...]:
    return tuple(sorted(set(said)))
