"""Jobs of men who stay in or block for the ball: a closed list, with words and strokes."""

from __future__ import annotations

from dataclasses import dataclass

from stemline.football.offence.landmarks import Landmark
from stemline.football.offence.strokes import Depth, RunTo, Stroke, Target, Up


@dataclass(frozen=True)
class BlockJob:
    """``words`` for the assignment table; ``strokes`` to the place of the block, none for a man
    who blocks where he stands; ``then`` go on from there, for one who gets out afterwards."""

    words: str
    strokes: tuple[Stroke, ...]
    then: tuple[Stroke, ...] = ()


_EDGE = Target(Landmark.TACKLE, 0.9)

# Common practice, no published source.
BLOCKS: dict[str, BlockJob] = {
    "inside out": BlockJob(
        "Scan inside out: first free rusher from the ball outward.",
        (RunTo(Target(Landmark.GUARD, -0.4), Depth(-2.6)),),
    ),
    "edge": BlockJob(
        "Block the edge: inside foot up, nobody outside you.", (RunTo(_EDGE, Depth(-1.8)),)
    ),
    "slide": BlockJob("Slide with the line to your gap.", ()),
    "chip": BlockJob(
        "Chip the edge rusher, then get out.",
        (RunTo(_EDGE, Depth(-1.2)),),
        (RunTo(Target(Landmark.TACKLE, 5), Depth(1.5)),),
    ),
    "stalk": BlockJob(
        "Stalk the nearest defender, hands first, stay on your feet.", (Up(Depth(3)),)
    ),
    "crack": BlockJob(
        "Block inside from the front, above the waist, hands first.",
        (RunTo(Target(None, -4), Depth(2.5)),),
    ),
    "arc": BlockJob(
        "Arc outside the edge to the first defender past it.",
        (RunTo(Target(Landmark.TACKLE, 2.5), Depth(0.3)), Up(Depth(3.2))),
    ),
}

PROTECTIONS: dict[str, str] = {
    "five": "Five men, nobody helps: the quarterback owns a sixth rusher.",
    "five slide": "Five men slide to the call: each his gap.",
    "six": "Five and the back: he takes the first linebacker to his side.",
    "six slide": "Five slide away, the back takes the edge.",
    "big on big": "Linemen on the front and the middle linebacker, the back on the next one.",
    "seven": "Five, the back and one more: two edges, one inside.",
    "max": "Eight men: both edges and the back inside.",
    "sprint": "Reach to the side of the launch, hinge behind it.",
    "boot": "The line slides with the fake: nobody blocks the end on the quarterback's side.",
    "screen": "Set as for a pass, then let the rush go by and get out.",
}

DEFENDERS: tuple[str, ...] = (
    "flat defender",
    "hook defender",
    "curl defender",
    "end man on line",
    "near linebacker",
    "middle linebacker",
    "far linebacker",
    "corner",
    "safety",
    "near safety",
    "overhang",
    "linebacker",
    "nose",
    "first man past centre",
    "first man outside guard",
    "first man outside tackle",
    "second man outside tackle",
    "force defender",
)
"""Defenders as an offence's rules describe them: never by a look's letter. Common practice."""

UNBLOCKED = "unblocked man"
"""A key's description alone: the man of the box whom the blocking of the call leaves."""
