"""Rule codes as data: the field and the players of each code.

Every figure stands with its source and how sure it is. A figure marked ``MEMORY`` or ``CUSTOM``
is a default that a coach may change in his playbook; it never makes an error by itself.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum


class Certainty(Enum):
    PUBLISHED = "published"
    TABLE = "published data table"
    CUSTOM = "common practice, no published source"
    MEMORY = "from memory"


@dataclass(frozen=True)
class Figure:
    """A number with where it comes from. Lengths in yards."""

    value: float
    certainty: Certainty
    source: str


@dataclass(frozen=True)
class Code:
    """One rule code.

    ``hash_from_sideline`` is the distance of a hash mark from the sideline nearer to it;
    ``numbers_from_sideline`` is where receivers line up when told to stand on the numbers;
    ``ineligible`` is how many interior linemen the code wants in one run with the centre.
    """

    key: str
    title: str
    players: Figure
    length: Figure
    width: Figure
    end_zone: Figure
    hash_from_sideline: Figure
    numbers_from_sideline: Figure
    numbers_painted: bool
    restraining: Figure
    ineligible: Figure
    low_block: str
    crossing_contact: str
    authority: str

    @property
    def receivers(self) -> int:
        """Eligible men besides the quarterback: what shapes are counted from."""
        return int(self.players.value - self.ineligible.value) - 1


_FC_OLD = "Canadian Rule Book for Amateur Tackle Football, undated web copy, Rule 1"
_NFHS = "NFHS Football Rules Book"

CANADIAN_AMATEUR = Code(
    key="canadian amateur",
    title="Canadian amateur, 12 men",
    players=Figure(12, Certainty.PUBLISHED, "Football Canada, 2016 rule-change release"),
    length=Figure(110, Certainty.PUBLISHED, f"{_FC_OLD}-1-1"),
    width=Figure(65, Certainty.PUBLISHED, f"{_FC_OLD}-1-1"),
    end_zone=Figure(20, Certainty.PUBLISHED, f"{_FC_OLD}-1-1"),
    hash_from_sideline=Figure(24, Certainty.PUBLISHED, f"{_FC_OLD}-1-6"),
    numbers_from_sideline=Figure(
        10,
        Certainty.MEMORY,
        "the amateur code asks for no painted numbers; 10 to 12 yards is a usual landmark",
    ),
    numbers_painted=False,
    restraining=Figure(
        1, Certainty.MEMORY, "as the Canadian professional rule 4-1-3 (2008 edition)"
    ),
    ineligible=Figure(5, Certainty.PUBLISHED, "Football Canada, rule changes for 2019"),
    low_block=(
        "Blocks below the waist are illegal except close to the ball between the tight ends "
        "(Football Canada, rule changes for 2019). Forcible blocks back toward your own dead "
        "line are illegal anywhere."
    ),
    crossing_contact=(
        "A crosser who runs into a defender past the line before the catch is interfering. "
        "Cross close, touch nobody."
    ),
    authority="Football Canada's current rule book and your league",
)

HIGH_SCHOOL = Code(
    key="high school",
    title="US high school, 11 men",
    players=Figure(11, Certainty.PUBLISHED, f"{_NFHS}, 1-1-3"),
    length=Figure(100, Certainty.PUBLISHED, f"{_NFHS}, 1-1-2 (360 by 160 feet with end zones)"),
    width=Figure(160 / 3, Certainty.PUBLISHED, f"{_NFHS}, 1-1-2"),
    end_zone=Figure(10, Certainty.PUBLISHED, f"{_NFHS}, 1-1-2"),
    hash_from_sideline=Figure(160 / 9, Certainty.TABLE, "sportypy 1.0.0, NFHS field: 53 ft 4 in"),
    numbers_from_sideline=Figure(
        8, Certainty.TABLE, "sportypy 1.0.0, NFHS field: numbers from 7 to 9 yards; their middle"
    ),
    numbers_painted=True,
    restraining=Figure(0, Certainty.PUBLISHED, f"{_NFHS}, 2-28-1 (length of the ball)"),
    ineligible=Figure(5, Certainty.PUBLISHED, f"{_NFHS}, 7-2-5a"),
    low_block=(
        "Blocks below the waist are legal only between linemen in the free-blocking zone and at "
        "once at the snap (NFHS 2-17-2, 2021). Clipping is illegal everywhere (2-17-3). Blindside "
        "blocks outside the zone must be begun with open hands (9-4-3n)."
    ),
    crossing_contact=(
        "An eligible receiver may not contact a defender past the neutral zone until the ball is "
        "touched, when the pass crosses it (NFHS 7-5-8a, 7-5-10). Cross close, touch nobody."
    ),
    authority="the current NFHS rules book and your state association",
)

CODES: dict[str, Code] = {code.key: code for code in (CANADIAN_AMATEUR, HIGH_SCHOOL)}
