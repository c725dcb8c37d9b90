"""Figures of the rule books, copied here with edition and rule: the tests read no other file.

``seen`` tells how the figure was checked: the article itself, a data table, or neither.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Printed:
    """A figure as a book or table has it; lengths in yards."""

    code: str
    figure: str
    value: float
    source: str
    seen: str


ARTICLE = "the article"
TABLE = "a data table"
REPORT = "a report of the rule"

PRINTED = (
    # Football Canada's amateur code. The book seen is an older web copy without a date, kept by a
    # New Brunswick body; its Rule 1 gives the field.
    Printed("canadian amateur", "length", 110, "Canadian Rule Book for Amateur Tackle Football, "
            "undated web copy, 1-1-1", ARTICLE),
    Printed("canadian amateur", "width", 65, "the same, 1-1-1", ARTICLE),
    Printed("canadian amateur", "end_zone", 20, "the same, 1-1-1", ARTICLE),
    Printed("canadian amateur", "hash_from_sideline", 24, "the same, 1-1-6", ARTICLE),
    Printed("canadian amateur", "players", 12, "Football Canada, release of the 2016 rule changes",
            ARTICLE),
    Printed("canadian amateur", "ineligible", 5, "Football Canada, Amateur Tackle Rule Book "
            "Changes for 2019", ARTICLE),
    # NFHS Football Rules Book. Field in feet: 360 by 160 with the end zones.
    Printed("high school", "length", 100, "NFHS Football Rules Book, 1-1-2", ARTICLE),
    Printed("high school", "width", 160 / 3, "NFHS Football Rules Book, 1-1-2", ARTICLE),
    Printed("high school", "end_zone", 10, "NFHS Football Rules Book, 1-1-2", ARTICLE),
    Printed("high school", "players", 11, "NFHS Football Rules Book, 1-1-3", ARTICLE),
    Printed("high school", "ineligible", 5, "NFHS Football Rules Book, 7-2-5a: five men numbered "
            "50 to 79", REPORT),
    Printed("high school", "restraining", 0, "NFHS Football Rules Book, 2-28-1: the neutral zone "
            "is as long as the ball", ARTICLE),
    Printed("high school", "hash_from_sideline", 160 / 9, "sportypy 1.0.0, nfhs11: the field in "
            "three equal lanes of 53 ft 4 in", TABLE),
)  # fmt: skip


@dataclass(frozen=True)
class Hash:
    """Hash marks of one code and edition: yards from the sideline and yards apart."""

    code: str
    edition: str
    from_sideline: float
    apart: float
    source: str


HASHES = (
    Hash("canadian amateur", "the older web copy", 24, 17, "Canadian Rule Book for Amateur Tackle "
         "Football, undated web copy, 1-1-6"),
    Hash("canadian professional", "to 2021", 24, 17, "Official Playing Rules for the Canadian "
         "Football League, Rule 1 section 1"),
    Hash("canadian professional", "2022 on", 28, 9, "CFL announcement of rule changes, 27 April "
         "2022"),
    Hash("college", "2016-17", 20, 40 / 3, "NCAA Football Rules and Interpretations, 1-2-1"),
    Hash("professional", "digest", 70.75 / 3, 18.5 / 3, "NFL Official Playing Rules, digest: 70 ft "
         "9 in from the sideline"),
)  # fmt: skip
