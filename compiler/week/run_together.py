"""What a hurried coach runs together on a line of a week, parted as the notation has it."""

from __future__ import annotations

from collections.abc import Iterable

from stemline.football.contact_limits import DAYS
from stemline.playbook.week_definitions import TEMPOS

_AGAINST = ("vs", "v", "versus")
_SPOTS = ("left hash", "middle", "right hash")
_BEHIND = (*TEMPOS, *_SPOTS, "first")


def parted_row(said: str, calls: Iterable[str]) -> tuple[str, ...]:
    """A row whose call goes on without a comma, or names a look by "vs", as it is written; none
    where its first words are no call."""
    known = {call.casefold(): call for call in calls}
    words = said.split()
    for at in range(len(words) - 1, 0, -1):
        call = known.get(" ".join(words[:at]).casefold())
        if call is None:
            continue
        rest = " ".join(words[at:])
        if words[at].casefold().rstrip(".") in _AGAINST and words[at + 1 :]:
            return (f"{call} against {' '.join(words[at + 1 :])}",)
        reps = words[at].isdecimal() and words[at + 1 :] in (["reps"], ["rep"])
        if reps or rest.casefold() in _BEHIND:
            return (f"{call}, {rest}",)
    return ()


def parted_man(said: str) -> tuple[str, ...]:
    """A letter with a day behind it, as a quiz says it."""
    *letter, day = said.split()
    return (f"{' '.join(letter)} on {day.title()}",) if letter and day.title() in DAYS else ()
