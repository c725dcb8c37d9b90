"""How a man blocks on a run: a closed list of rules, read from left to right.

Each rule is a question to the front that is lined up ("is a man on the line in my inside gap?") and
names, best first, the defenders who answer it. `run_scheme` puts the answers together. Nothing
here knows of text.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from stemline.football.defence.described import Described


class BlockWay(Enum):
    """The words for a block. Terms are common practice, no published source."""

    ON = "on"
    REACH = "reach"
    DOWN = "down"
    PIN = "pin"
    BACK = "back"
    OUT = "out"
    DOUBLE = "double"
    SCOOP = "scoop"
    CUT_OFF = "cut off"
    HINGE = "hinge"
    CLIMB = "climb"
    LEAVE = "leave"
    KICK = "kick"
    TRAP = "trap"
    WRAP = "wrap"
    PULL = "pull"
    LEAD = "lead"
    SIFT = "sift"
    ARC = "arc"
    STALK = "stalk"
    CRACK = "crack"


class Takes(Enum):
    """When a rule gets its man: before the others, as an owner of the line, or of who is left."""

    FIRST = 0
    LINE = 1
    LEFT_OVER = 2
    SECOND = 3


@dataclass(frozen=True)
class Meaning:
    """``words`` for the notation's page; ``said`` opens the table's line against a front, and
    ``target`` is the described defender where the text names none ("" for the rule's own)."""

    takes: Takes
    words: str
    said: str
    target: str = ""


# Common practice, no published source, as the rule cards of the trade have it; published texts
# that the rules were tried on stand in tests/references.
MEANINGS: dict[BlockWay, Meaning] = {
    BlockWay.ON: Meaning(Takes.LINE, "The man on the line over you, either shoulder.", "block"),
    BlockWay.REACH: Meaning(
        Takes.LINE, "The man from your nose to the next man's nose, playside: hook him.", "reach"
    ),
    BlockWay.DOWN: Meaning(
        Takes.LINE, "The man on your inside shoulder or in your inside gap.", "down on"
    ),
    BlockWay.PIN: Meaning(
        Takes.LINE, "As `down`, for a man who would pull if nobody were there.", "pin"
    ),
    BlockWay.BACK: Meaning(
        Takes.LINE, "The first man from your nose to the backside: for one who pulls.", "back on"
    ),
    BlockWay.OUT: Meaning(Takes.LINE, "The first man outside you, by yourself.", "out on"),
    BlockWay.DOUBLE: Meaning(
        Takes.LINE, "The man between you and your neighbour, if he takes him too.", "double"
    ),
    BlockWay.SCOOP: Meaning(
        Takes.LEFT_OVER,
        "Step playside: a free man in that gap, else climb.",
        "scoop",
        "linebacker",
    ),
    BlockWay.CUT_OFF: Meaning(
        Takes.LEFT_OVER, "A free man in your inside gap or on you: get across him.", "cut off"
    ),
    BlockWay.HINGE: Meaning(
        Takes.LEFT_OVER,
        "A free man in your inside gap, else turn back on the edge; a back: the backside, inside "
        "out.",
        "hinge on",
    ),
    BlockWay.CLIMB: Meaning(
        Takes.SECOND, "Nobody on the line: to the second level.", "climb to", "linebacker"
    ),
    BlockWay.LEAVE: Meaning(
        Takes.SECOND,
        "Pass by the man on you whom another traps, kicks or reads, and climb.",
        "climb to",
        "linebacker",
    ),
    BlockWay.KICK: Meaning(Takes.FIRST, "Drive him out, from inside.", "kick", "end man on line"),
    BlockWay.TRAP: Meaning(
        Takes.FIRST, "Flat along the line to a man left alone.", "trap", "first man past centre"
    ),
    BlockWay.WRAP: Meaning(
        Takes.SECOND, "Pull, and turn up in the hole, inside the kick.", "wrap to", "linebacker"
    ),
    BlockWay.PULL: Meaning(
        Takes.SECOND,
        "Pull around the end man and turn up: kick nobody.",
        "pull to",
        "force defender",
    ),
    BlockWay.LEAD: Meaning(
        Takes.SECOND,
        "Through the hole ahead of the ball; `pull lead` from the line.",
        "lead on",
        "linebacker",
    ),
    BlockWay.SIFT: Meaning(
        Takes.FIRST, "Across behind the line, to the backside end.", "sift to", "end man on line"
    ),
    BlockWay.ARC: Meaning(
        Takes.SECOND, "Outside the end man, to the second level.", "arc to", "force defender"
    ),
    BlockWay.STALK: Meaning(Takes.SECOND, "The nearest man over you, hands first.", "stalk"),
    BlockWay.CRACK: Meaning(
        Takes.SECOND,
        "The first man inside you, from the front, above the waist; if none, `stalk`.",
        "crack",
    ),
}

PULLS = (BlockWay.KICK, BlockWay.TRAP, BlockWay.WRAP, BlockWay.PULL, BlockWay.SIFT)
"""Rules by which a lineman leaves his place behind the line."""


@dataclass(frozen=True)
class Rule:
    """One choice: how, with whom (a label, "" for nobody), and at whom if the text says it."""

    way: BlockWay
    partner: str = ""
    target: Described | None = None


@dataclass(frozen=True)
class Task:
    """All that the text tells one man: his choices in order, and for a double team whom it
    climbs to, choices in order too."""

    man: str
    rules: tuple[Rule, ...]
    then: tuple[Described, ...] = ()
