"""The page on contact and on head injuries: what is published, and who decides.

The book plans football; it judges nobody's health and promises nothing. Every figure here stands
with its source on the page itself.
"""

from __future__ import annotations

from dataclasses import dataclass

from stemline.book.content.page import Remark
from stemline.football.play import Season


@dataclass(frozen=True)
class ContactLevel:
    """A level of contact in practice and whether it counts as full contact."""

    number: int
    name: str
    meaning: str
    full: bool


@dataclass(frozen=True)
class Care:
    """The page on contact and on head injuries; ``source`` is where scale and limits come from."""

    levels: tuple[ContactLevel, ...]
    source: str
    notes: tuple[Remark, ...]


LEVELS = (
    ContactLevel(0, "air", "Nobody opposite, no contact.", False),
    ContactLevel(1, "bags", "Against a bag or a pad.", False),
    ContactLevel(
        2,
        "control",
        "The winner is agreed beforehand. Part speed, contact above the waist, everybody stays up.",
        False,
    ),
    ContactLevel(
        3, "thud", "Full speed to the contact, no agreed winner, nobody is taken down.", True
    ),
    ContactLevel(4, "live", "As in a game: men are taken down.", True),
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
        *(Remark(label, words) for label, words in season.care),
        Remark("Blocks below the waist", season.low_block),
        Remark("Chop blocks", season.chop_block),
        Remark("Blocks from behind", season.behind_block),
        Remark("Blindside blocks", season.blindside_block),
        Remark("Crossing routes", season.crossing_contact),
        Remark("Blocks past the line on a pass", season.past_line),
        Remark("Figures of this league", _sentence(season.league)),
        Remark(
            "Who decides",
            "This book is a planning aid and defers: on what is legal to "
            f"{season.authority}; on injuries and illness to qualified medical staff and your "
            "association's protocol.",
        ),
    )
    return Care(LEVELS, SOURCE, tuple(note for note in notes if note.words))


def _sentence(figures: str) -> str:
    return f"{figures[0].upper()}{figures[1:]} (as the playbook sets them)." if figures else ""
