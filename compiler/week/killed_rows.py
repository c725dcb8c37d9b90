"""What a week's papers print of a call that becomes another at the line."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import replace

from stemline.football.play import Call, Play
from stemline.week.week_values import PlanRow

_MORE = re.compile(r"\b(\d+) or more in (?:the )?box\b")
_FEWER = re.compile(r"\b(\d+) or fewer in (?:the )?box\b")


def bare_call(play: Play) -> Call:
    """The call without the tags that only say what it becomes."""
    killing = {becoming.tag for becoming in play.becomes}
    tags = tuple(tag for tag in play.call.tags if tag not in killing)
    if tags == play.call.tags:
        return play.call
    said, spoken = " + ".join(play.call.tags), play.call.spoken
    if spoken.endswith(f" {said}"):  # a call with a name of its own keeps it
        spoken = f"{spoken.removesuffix(said)}{' + '.join(tags)}".strip()
    return replace(play.call, tags=tags, spoken=spoken)


def killed(row: PlanRow, play: Play) -> tuple[tuple[str, str], ...]:
    """What the row's call becomes and on what: as the row says itself, then as the book does."""
    own = ((row.kill_to, row.look),) if row.kill_to else ()
    return (*own, *killed_by_book(play))


def killed_by_book(play: Play) -> tuple[tuple[str, str], ...]:
    return tuple((becoming.words, becoming.when) for becoming in play.becomes)


def printed_call(call: str, play: Play) -> str:
    """How every paper prints a call: with an arrow to what the book says that it becomes."""
    kills = killed_by_book(play)
    return arrowed(bare_call(play).spoken, kills) if kills else call


def printed_row(row: PlanRow, play: Play) -> str:
    """As `printed_call`, and with an arrow to what the row itself kills it to."""
    own = ((row.kill_to, ""),) if row.kill_to else ()
    return arrowed(printed_call(row.call, play), own)


def told_kills(kills: Iterable[tuple[str, str]]) -> str:
    """What is seen where a call is killed, as a note: "Draw: 0-5 in box."; "" for no kill."""
    told = "; ".join(f"{to}: {brief(when)}" for to, when in kills)
    return f"{told}." if told else ""


def brief(when: str) -> str:
    """What he sees in as few letters as a row has room for: `8+ in box`."""
    return _FEWER.sub(r"0-\1 in box", _MORE.sub(r"\1+ in box", when))


def arrowed(call: str, kills: Iterable[tuple[str, str]]) -> str:
    """*Power > Stick*, in letters that the typeface has."""
    return " > ".join((call, *dict.fromkeys(to for to, _ in kills)))
