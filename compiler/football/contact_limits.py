"""Contact in practice: the levels, and the limits that are published for each kind of code.

Thud and live are full contact. Doctors and the league decide; this program only adds minutes up.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from stemline.football.rulebook.rules import Certainty, Code, Known


class HitLevel(Enum):
    """The national youth-coaching body's levels of contact, from none to the game's."""

    AIR = "air"
    BAGS = "bags"
    CONTROL = "control"
    THUD = "thud"
    LIVE = "live"

    @property
    def full(self) -> bool:
        """Whether its minutes count as full contact."""
        return self in (HitLevel.THUD, HitLevel.LIVE)


LEVELS = {level.value: level for level in HitLevel}
GROUPS = ("linemen", "receivers", "backs", "quarterbacks", "tight ends")
"""Groups of men that a period may be for."""
DAYS = ("Sunday", "Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday")


@dataclass(frozen=True)
class ContactLimit:
    """Minutes of thud and live a day and a week; None for no figure."""

    day: int | None
    week: int | None


_SCHOOLS = "NFHS, Concussion Summit Task Force position paper, July 2014"


def contact_limit(code: Code) -> Known[ContactLimit]:
    """The limit of a code in season."""
    if code.canadian:
        why = f"{_SCHOOLS}, for US schools; no Canadian figure in minutes was seen"
        return Known(ContactLimit(30, 90), Certainty.REPORTED, why)
    match code.key:
        case "college":
            why = "NCAA Division I, adopted 19 May 2021, before the season; none in it was seen"
            return Known(ContactLimit(75, None), Certainty.REPORTED, why)
        case "professional":
            why = "contact there is counted in practices, not in minutes"
            return Known(ContactLimit(None, None), Certainty.REPORTED, why)
    why = f"{_SCHOOLS}: 30 minutes a day, 60 to 90 a week; your state may allow less"
    return Known(ContactLimit(30, 90), Certainty.REPORTED, why)
