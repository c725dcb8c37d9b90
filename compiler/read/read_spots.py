"""Spots: the places that a quarterback looks at, ``low, away from settle``, ``over ball``."""

from __future__ import annotations

from collections.abc import Collection

from stemline.diagnostics.catalogue.football import E430, E434, E456, E457
from stemline.football.offence.landmarks import Landmark
from stemline.playbook.concepts import SpotRule
from stemline.playbook.role_rules import ByRole
from stemline.playbook.said import SideWord
from stemline.read.read_places import LANDMARKS
from stemline.read.read_routes import read_way
from stemline.read.words import Misread, Words, one_phrase
from stemline.syntax.tree import Mark, Value, items

# Where the quarterback's spots lie. Common practice, no published source: a low spot is the
# window of a shallow crosser, from the tackle outward; "top" is the settle's depth over the ball.
LOW_DEPTH = 5.5
HIGH_DEPTH = 8.0
DEEP_DEPTH = 14.0
LOW_OUTSIDE = 4.5
SPOT_DEPTHS = {"low": LOW_DEPTH, "high": HIGH_DEPTH, "deep": DEEP_DEPTH}


def read_spot(value: Value, roles: Collection[str]) -> SpotRule:
    """``low, away from settle`` · ``over ball`` · ``high, strong, 4 outside tackle``."""
    side: SideWord | ByRole | None = None
    depth: float | None = None
    landmark, outside = Landmark.TACKLE, LOW_OUTSIDE
    over = False
    for item in items(value, Mark.AND):
        words = Words([one_phrase(item, "a depth and a side", value.span)])
        level = words.take_name(SPOT_DEPTHS)
        if level is not None:
            depth = SPOT_DEPTHS[level]
        elif words.take_word("over"):
            landmark, outside = LANDMARKS[words.expect(LANDMARKS, E430)], 0.0
            over = True
        elif (yards := words.take_number()) is not None:
            if words.take_word("deep") or words.done:
                depth = yards
            else:
                measure = words.expect(("inside", "outside"), E434)
                outside = yards if measure == "outside" else -yards
                landmark = LANDMARKS[words.expect(LANDMARKS, E430)]
                over = True
        else:
            side = read_way(words, roles, E456, (*SPOT_DEPTHS, "over"))
        words.finish("where a spot is")
    if side is None and landmark is not Landmark.BALL:
        raise Misread(E457().at(value.span))
    if depth is None:
        depth = HIGH_DEPTH if over else LOW_DEPTH
    return SpotRule(side, landmark, outside, depth)
