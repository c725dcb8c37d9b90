"""The reduced US high school codes: what a source gives for them, the rest only as recalled."""

from __future__ import annotations

from dataclasses import replace

from stemline.football.rulebook.american_codes import HIGH_SCHOOL
from stemline.football.rulebook.rules import Certainty, Known, memory, published, rare, table

_NFHS8 = "NFHS eight-player modifications, as printed by the San Diego officials' association"
_SIX = "a report on the six-player game"
_AS_ELEVEN = HIGH_SCHOOL.recalled("as in the eleven-man game")
_THREE = ("LG", "C", "RG")
_SHORT_NUMBERS = "bottoms 5 yards from the sideline, 2 high; their middle"

NINE_MAN = replace(
    _AS_ELEVEN,
    key="nine-man",
    **rare("nine-man"),
    title="US high school, 9 men",
    players=memory(9, "nine men; no rule text seen"),
    length=table(80, "NFHS nine-man field; 100 in many states"),
    width=table(40, "NFHS nine-man field; full width in some states"),
    end_zone=table(10, "NFHS nine-man field"),
    hash_from_sideline=table((40 - 70 / 9) / 2, "NFHS nine-man field, doubtful"),
    numbers_from_sideline=table(6, f"NFHS nine-man field: {_SHORT_NUMBERS}"),
    line=_THREE,
    ineligible=memory(3, "five on the line less two ends"),
    on_line=Known(5, Certainty.REPORTED, "a report on the nine-player game: five and four"),
    in_backfield=Known(4, Certainty.REPORTED, "a report on the nine-player game: five and four"),
)

EIGHT_MAN = replace(
    _AS_ELEVEN,
    key="eight-man",
    **rare("eight-man"),
    title="US high school, 8 men",
    players=published(8, _NFHS8),
    length=published(80, f"{_NFHS8}, Rule 1; 100 in many states"),
    width=published(40, f"{_NFHS8}, Rule 1"),
    end_zone=table(10, "NFHS eight-man field"),
    hash_from_sideline=published(15, _NFHS8),
    numbers_from_sideline=table(6, f"NFHS eight-man field: {_SHORT_NUMBERS}"),
    line=_THREE,
    ineligible=published(3, f"{_NFHS8}, Rule 7, implied: eight less two ends and three backs"),
    on_line=published(
        3,
        f"{_NFHS8}, Rule 7a; older texts say five, and with all eight on the field three backs "
        "at most leave five",
    ),
    in_backfield=Known(3, Certainty.PUBLISHED, f"{_NFHS8}, Rule 7: up to three backs"),
    eligible=Known("two ends and up to three backs", Certainty.PUBLISHED, f"{_NFHS8}, Rule 7"),
    ineligible_numbers=Known((), Certainty.PUBLISHED, f"{_NFHS8}, Rule 7: any number"),
)

SIX_MAN = replace(
    _AS_ELEVEN,
    key="six-man",
    **rare("six-man"),
    title="US high school, 6 men",
    players=memory(6, "six men; no rule text seen"),
    length=Known(80, Certainty.REPORTED, _SIX),
    width=table(40, "NFHS six-man field"),
    end_zone=table(10, "NFHS six-man field"),
    hash_from_sideline=table(15, "NFHS six-man field; 40 feet in Texas"),
    numbers_from_sideline=table(6, f"NFHS six-man field: {_SHORT_NUMBERS}"),
    line=("C",),
    ineligible=Known(0, Certainty.REPORTED, f"{_SIX}: all six, the centre too"),
    on_line=Known(3, Certainty.REPORTED, _SIX),
    in_backfield=Known(3, Certainty.MEMORY, "six less three on the line"),
    eligible=Known("all six, the centre too", Certainty.REPORTED, _SIX),
    ineligible_numbers=Known((), Certainty.MEMORY, "any number"),
    downfield=Known(None, Certainty.REPORTED, f"{_SIX}: everybody is eligible"),
)
