"""Jobs of men who stay in: a closed list, with the words for the assignment table."""

from __future__ import annotations

# Common practice, no published source.
BLOCKS: dict[str, str] = {
    "inside out": "Scan inside out: first free rusher from the ball outward.",
    "edge": "Block the edge: inside foot up, nobody outside you.",
    "slide": "Slide with the line to your gap.",
    "chip": "Chip the edge rusher, then get out.",
    "stalk": "Stalk the nearest defender, hands first, stay on your feet.",
    "crack": "Block inside from the front, above the waist, hands first.",
    "arc": "Arc outside the edge to the first defender past it.",
}

PROTECTIONS: dict[str, str] = {
    "five": "Five men, nobody helps: the quarterback owns a sixth rusher.",
    "five slide": "Five men slide to the call: each his gap.",
    "six": "Five and the back: he takes the first linebacker to his side.",
    "six slide": "Five slide away, the back takes the edge.",
    "seven": "Five, the back and one more: two edges, one inside.",
    "sprint": "Reach to the side of the launch, hinge behind it.",
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
)
"""Defenders as an offence's rules describe them: never by a look's letter. Common practice."""
