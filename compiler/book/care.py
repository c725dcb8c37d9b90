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


def care(season: Season) -> Care:
    """The page for this season's code: what does not apply to it is left out."""
    notes = (
        *(Note(label, words) for label, words in season.care),
        Note("Blocks below the waist", season.low_block),
        Note("Chop blocks", season.chop_block),
        Note("Blocks from behind", season.behind_block),
        Note("Blindside blocks", season.blindside_block),
        Note("Crossing routes", season.crossing_contact),
        Note("Blocks past the line on a pass", season.past_line),
        Note("Figures of this league", _sentence(season.league)),
        Note(
            "Who decides",
            "This book is a planning aid and defers: on what is legal to "
            f"{season.authority}; on injuries and illness to qualified medical staff and your "
            "association's protocol.",
        ),
    )
    return Care(LEVELS, SOURCE, tuple(note for note in notes if note.words))


def _sentence(figures: str) -> str:
    return f"{figures[0].upper()}{figures[1:]} (as the playbook sets them)." if figures else ""
