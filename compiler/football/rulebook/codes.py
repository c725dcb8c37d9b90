"""The rule codes by the name that a playbook gives them.

Figures of officials' texts drift between editions: a source names the edition that was seen, and
the league's current book decides.
"""

from __future__ import annotations

from stemline.football.rulebook.american_codes import COLLEGE, HIGH_SCHOOL, PROFESSIONAL
from stemline.football.rulebook.canadian_codes import (
    CANADIAN_AMATEUR,
    CANADIAN_NINE,
    CANADIAN_PROFESSIONAL,
    CANADIAN_PROFESSIONAL_2027,
    CANADIAN_SIX,
)
from stemline.football.rulebook.reduced_codes import EIGHT_MAN, NINE_MAN, SIX_MAN
from stemline.football.rulebook.rules import Certainty, Code, Figure, Known

__all__ = [
    "CANADIAN_AMATEUR",
    "CANADIAN_NINE",
    "CANADIAN_PROFESSIONAL",
    "CANADIAN_PROFESSIONAL_2027",
    "CANADIAN_SIX",
    "CODES",
    "COLLEGE",
    "EIGHT_MAN",
    "HIGH_SCHOOL",
    "NINE_MAN",
    "PROFESSIONAL",
    "SIX_MAN",
    "Certainty",
    "Code",
    "Figure",
    "Known",
]

CODES: dict[str, Code] = {
    code.key: code
    for code in (
        CANADIAN_AMATEUR,
        CANADIAN_PROFESSIONAL,
        CANADIAN_PROFESSIONAL_2027,
        CANADIAN_NINE,
        CANADIAN_SIX,
        HIGH_SCHOOL,
        COLLEGE,
        PROFESSIONAL,
        NINE_MAN,
        EIGHT_MAN,
        SIX_MAN,
    )
}
