"""The page on contact and on head injuries: what is published, and who decides.

The book plans football; it judges nobody's health and promises nothing. Every figure here stands
with its source on the page itself.
"""

from __future__ import annotations

from stemline.book.model import Care, Level, Note
from stemline.football.play import Season

LEVELS = (
    Level(0, "air", "Nobody opposite, no contact.", False),
    Level(1, "bags", "Against a bag or a pad.", False),
    Level(
        2,
        "control",
        "The winner is agreed beforehand. Part speed, contact above the waist, everybody stays up.",
        False,
    ),
    Level(3, "thud", "Full speed to the contact, no agreed winner, nobody is taken down.", True),
    Level(4, "live", "As in a game: men are taken down.", True),
)
"""USA Football's scale. Names, order and which count as full contact are published; the
wording of bags and control is from memory."""

SOURCE = (
    "USA Football's scale as used in NFHS, Recommendations and Guidelines for Minimizing Head "
    "Impact Exposure and Concussion Risk in Football, July 2014"
)

_LIMITS = (
    "In season no more than 2 to 3 practices a week with full contact (thud and live), no more "
    "than 30 minutes of it in a day and 60 to 90 minutes in a week (same source, as published "
    "second-hand). Count them for each player: men who play both ways take more than the team's "
    "clock shows. Your association may allow less."
)
_CANADA = (
    Note(
        "Start of the season",
        "Football Canada asks for at least 3 hours of helmet-only Safe Contact work at the start "
        "of the season, before any other work (since 2017, as a provincial body prints it).",
    ),
    Note(
        "Technique",
        "Tackle with the chest and the front shoulder, block with the hands first, and keep the "
        "head out of both (Football Canada, 2015).",
    ),
)
_CONCUSSION = (
    "A player who may have a concussion comes out at once, does not go back the same day, and "
    "comes back only when cleared by a qualified health professional. In doubt: out. So it is in "
    "the US high school and the Canadian game, from memory. This book defers to your medical staff "
    "and to your association's protocol."
)


def care(season: Season) -> Care:
    """The page for this season's code: what does not apply to it is left out."""
    notes = (
        Note("Limits", _LIMITS),
        *(_CANADA if _canadian(season) else ()),
        Note("Blocks below the waist", season.low_block),
        Note("Chop blocks", season.chop_block),
        Note("Blocks from behind", season.behind_block),
        Note("Blindside blocks", season.blindside_block),
        Note("Crossing routes", season.crossing_contact),
        Note("Figures of this league", _sentence(season.league)),
        Note("Concussion", _CONCUSSION),
        Note(
            "Who decides",
            f"This book is a planning aid. Where it and the rules differ, {season.authority} "
            "decide.",
        ),
    )
    return Care(LEVELS, SOURCE, tuple(note for note in notes if note.words))


def _sentence(figures: str) -> str:
    return f"{figures[0].upper()}{figures[1:]} (as the playbook sets them)." if figures else ""


def _canadian(season: Season) -> bool:
    keys = {play.field.code.key for play in season.plays}
    return any("canadian" in key for key in keys) or "canadian" in season.code_title.lower()
