"""Diagrams of runs that still have a fault, with the most that each may have.

Blockers and the carrier now go round the men who stand in their way, and a few of these ways come
to lie along another or under a symbol; where they are drawn has not followed yet. The list can
only get shorter: a diagram that is not in it has no fault, and one that is mended leaves it.
"""

KNOWN = {
    "Full House Right Buck Sweep (cedar-flats-lanterns; small, dress-ups)": 1,
    "Full House Right Isolation (cedar-flats-lanterns; large, calls)": 1,
    "Full House Right Split Zone (cedar-flats-lanterns; quarter, calls)": 1,
    "Full House Right Split Zone (cedar-flats-lanterns; small, dress-ups)": 1,
    "Jumbo Left Power (saltmarsh-herons; large, calls)": 1,
    "Jumbo Right Power (saltmarsh-herons; large, calls)": 1,
    "concept-call-27: against Bear One (saltmarsh-herons; quarter, sheets)": 1,
    "concept-call-32: against Under Quarters (cedar-flats-lanterns; large, sheets)": 1,
    "concept-call-32: against Under Quarters (cedar-flats-lanterns; quarter, sheets)": 1,
    "concept-call-32: against Under Quarters (cedar-flats-lanterns; small, sheets)": 1,
    "concept-call-33: against Zero (saltmarsh-herons; large, sheets)": 1,
    "concept-call-43: against Goal Line (cedar-flats-lanterns; large, sheets)": 1,
    "concept-call-43: against Goal Line (cedar-flats-lanterns; quarter, sheets)": 4,
    "concept-call-43: against Goal Line (cedar-flats-lanterns; small, sheets)": 1,
    "concept-call-43: against Odd Two (cedar-flats-lanterns; small, sheets)": 2,
    "concept-call-52: against Goal Line (saltmarsh-herons; large, sheets)": 1,
    "concept-call-52: against Goal Line (saltmarsh-herons; quarter, sheets)": 1,
    "concept-call-52: against Goal Line (saltmarsh-herons; small, sheets)": 1,
    "concept-call-52: against Under Quarters (saltmarsh-herons; small, sheets)": 1,
    "concept-call-52: against Zero (saltmarsh-herons; large, sheets)": 1,
    "concept-call-53: against Even Two Man (cedar-flats-lanterns; small, sheets)": 1,
    "concept-call-53: against Zero (cedar-flats-lanterns; small, sheets)": 1,
    "concept-call-63: against Goal Line (cedar-flats-lanterns; large, sheets)": 1,
    "concept-call-63: against Goal Line (cedar-flats-lanterns; quarter, sheets)": 1,
    "concept-call-63: against Goal Line (cedar-flats-lanterns; small, sheets)": 3,
    "concept-call-63: against Under Quarters (cedar-flats-lanterns; small, sheets)": 1,
    "concept-call-63: against Zero (cedar-flats-lanterns; large, sheets)": 1,
    "concept-call-63: against Zero (cedar-flats-lanterns; quarter, sheets)": 1,
    "concept-call-63: against Zero (cedar-flats-lanterns; small, sheets)": 1,
}

KNOWN_DARK = {
    "Trey Right Quarterback Power (cedar-flats-lanterns; quarter, calls)": 1,
}
"""The same in the dark theme's sample, whose lines are heavier."""
