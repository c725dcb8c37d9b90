"""The clock and the room between men; codes 800 to 829, and a promise broken on the clock.

All but the promise are warnings: they rest on planning estimates.
"""

from __future__ import annotations

from stemline.diagnostics.wording import Wording

WORDING: dict[str, Wording] = {
    "E666": Wording(
        "a promise broken on the clock",
        "{tag} keeps the {what}, but in {call} its look {number}, {target}, {how} off the {foot}",
        "does not keep it",
        "{concept} without the tag has it on time: give the man a shorter way, or leave {what} "
        "out of `keeps`",
    ),
    "W800": Wording(
        "a read comes late",
        "{call}: {man} was open for {target} until {closes} s, and the ball thrown off the {foot} "
        "is there at {arrives} s, {off} s late",
        "late by {off} s, a throw of {yards} yards",
        "throw it off an earlier foot, shorten the throw, or let the man sit",
    ),
    "W801": Wording(
        "a read comes early",
        "{call}: {man} is open for {target} from {opens} s, and the ball thrown off the {foot} "
        "is there at {arrives} s, {off} s early",
        "early by {off} s",
        "throw it off a later foot, or give the man a shorter way or a running start",
    ),
    "W802": Wording(
        "a throw out of reach",
        "{call}: {target} is {yards} yards from the passer when {man} is open, farther than this "
        "level throws",
        "out of reach",
        "shorten the route, bring the man closer, or set `level` to that of your passer",
    ),
    "W803": Wording(
        "two men run into each other",
        "{call}: {over} and {under} are {apart} yards apart at {time} s",
        "they collide",
        "give one of them another depth or another stem; a yard between them is a brush",
    ),
    "W804": Wording(
        "two men in one window",
        "{call}: when the ball comes to {target}, {other} is {apart} yards away",
        "one defender has both",
        "move one of them, or look at both in one glance: `with` and his role",
    ),
    "W805": Wording(
        "a claim that does not hold",
        "{call}: the {kind} of {targets} measures {measured}; {wanted} are wanted",
        "does not hold",
        "change the depths or splits, or drop the claim",
    ),
}
