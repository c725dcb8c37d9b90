"""Lines, splits, numbers and motions, and what a rule code says of them: 514 to 579, 870 to 879."""

from __future__ import annotations

from stemline.diagnostics.wording import Wording

_READ: dict[str, Wording] = {
    "E514": Wording(
        "no condition here",
        "`{verb}` holds from every ball spot, so a condition has no place behind it",
        "a condition",
        "delete the `when`, or write a second block of another name",
    ),
    "E515": Wording(
        "not a lineman",
        "`{found}` is no lineman and no man of the personnel",
        "who is this",
        "a lineman's label ends in T, G or C, such as LT, EG or C; any other man needs a line in "
        "the personnel",
    ),
    "E516": Wording(
        "who snaps the ball",
        "{formation} has {got} centre in its line, and one stands over the ball",
        "one centre",
        "put C into the line, or a man of whom the personnel says `is centre`",
    ),
    "E517": Wording(
        "in the line and lined up",
        "{man} stands in the line of {formation} and is lined up as well",
        "lined up here",
        "keep one of the two: take him out of the `line`, or delete this line",
    ),
    "E518": Wording(
        "not in the personnel",
        "{man} is lined up, and he is not in the personnel {people}",
        "not among them",
        "add him there with `is`, or name another personnel behind `people`",
    ),
    "E519": Wording(
        "unknown number",
        "`{found}` is no jersey number",
        "not a number",
        "one man, one number from 0 to 99, such as `X is wideout, 81`",
    ),
}
"""Mistakes in the text of a formation, a personnel or a motion; 548 to 552 go on with them."""

_RULES: dict[int, tuple[str, str, str, str]] = {
    520: (
        "too few on the line",
        "{formation} has {got} men on the line, and {wanted} must be there",
        "{got} on the line",
        "put men on the line with `on line`, the widest man of each side first",
    ),
    521: (
        "too many behind the line",
        "{formation} has {got} men behind the line, the quarterback among them; {wanted} may be",
        "{got} behind it",
        "put one of them on the line with `on line`",
    ),
    522: (
        "the interior line",
        "{formation} has {got} linemen {how}, and {wanted} must be there",
        "the interior line",
        "line up {wanted} linemen beside each other, the centre among them",
    ),
    523: (
        "nobody at the end of the line",
        "the last man on the line is a lineman on {sides} of {formation}: an eligible man must be "
        "outside him",
        "no end of the line",
        "put the widest man of that side on the line with `on line`",
    ),
    524: (
        "covered on the line",
        "{man} stands on the line inside {other} in {formation}, so he may not catch a pass",
        "covered",
        "put {man} or {other} off the line; a man who shall only block belongs into the `line`",
    ),
    525: (
        "in neither place",
        "{man} is {yards} yards off the line in {formation}: neither on it nor a back, who is "
        "{wanted} yards behind it",
        "neither",
        "write `on line`, `off line`, or a greater depth",
    ),
    526: (
        "the quarterback goes out",
        "{man} takes the snap under centre and goes out for a pass in {call}: he may not catch it",
        "not eligible",
        "put him in the gun, or give the catch to another man",
    ),
    527: (
        "an ineligible number outside",
        "{man} wears {jersey} and stands where a receiver stands: numbers {ranges} may not catch a "
        "pass",
        "number {jersey}",
        "give him another number, or report him to the officials before every play",
    ),
    528: (
        "an eligible number inside",
        "{man} wears {jersey} in the interior line: {wanted} men there wear numbers {ranges}",
        "number {jersey}",
        "give him another number, or add a lineman beside him",
    ),
    540: (
        "too many in motion",
        "{got} men are in motion at the snap in {call}, and {wanted} may be",
        "in motion with {others}",
        "let the others be set: `snap set`, or a motion of one man",
    ),
    541: (
        "toward the line",
        "toward the line at the snap in {call}: {men}; a man may move only sideways or back",
        "toward the line",
        "let him be set with `snap set`, or end his way along the line",
    ),
    542: (
        "not still long enough",
        "{man} has {still} at the snap in {call}: all must be set for {wanted} s",
        "{still}",
        "let him start earlier",
    ),
    543: (
        "a line player moves",
        "{man} is on the line and moves when the ball is snapped in {call}: line players are still",
        "on the line and moving",
        "let him be set with `snap set`, or end his way `off line`",
    ),
    544: (
        "in motion from the line",
        "{man} lines up on the line and is still in motion at the snap in {call}, {yards} yards "
        "deep: he must first stop as a back{wanted}",
        "from the line",
        "line him up off the line, or let him be set",
    ),
    545: (
        "past the line at the snap",
        "{man} is {yards} yards past the line when the ball is snapped in {call}",
        "offside",
        "let him start later or deeper",
    ),
    553: (
        "the quarterback in motion",
        "{man} is in motion at the snap in {call}: every back may be but the quarterback",
        "in motion",
        "let him be set",
    ),
}
"""What a code forbids: title, message, label, help. An error where the code's figure is published
or the league's own, a warning in the same words where it is not."""

_TIMES: dict[str, Wording] = {
    "E548": Wording(
        "past his place",
        "{man} starts {seconds} seconds before the snap in {motion} and still runs: that is {ran} "
        "yards, and his way is {way}",
        "past his place",
        "let him start {needed} seconds before the snap, or be set",
    ),
    "E549": Wording(
        "not there in time",
        "{man} starts {seconds} seconds before the snap in {motion} and is to be set: he comes "
        "{ran} of {way} yards",
        "not there yet",
        "let him start more than {needed} seconds before the snap",
    ),
    "E550": Wording(
        "splits of the line",
        "linemen stand {least} to {most} yards from each other, not {yards}",
        "not a split",
        "from centre of body to centre of body: 1.3 is usual, 0.5 is foot to foot",
    ),
    "E551": Wording(
        "starts without a move",
        "{motion} says when he starts, and not where he moves",
        "does not move",
        "add a line with `moves`, or delete this one",
    ),
    "E552": Wording(
        "when he starts",
        "a start is seconds before the snap, not `{found}`",
        "how many seconds",
        "for example `Z starts 1.5`",
    ),
    "E554": Wording(
        "how fast he is",
        "a forty is from {least} to {most} seconds, not `{found}`",
        "how many seconds",
        "his own time for 40 yards, such as `X is wideout, 81, forty 4.9`",
    ),
}
_BY_CLOCK = "({rules}; {source}; the moment is the clock's, a planning figure)"
_CALLS: dict[str, Wording] = {
    "W546": Wording(
        "downfield on a pass",
        "{man} may not catch a pass and is {yards} yards past the line in {call}{look} when the "
        f"ball leaves for {{target}} at {{seconds}} seconds: the limit is {{wanted}} {_BY_CLOCK}",
        "a lineman is downfield",
        "throw it sooner, keep him on a double team, or throw to a man behind the line",
    ),
    "W870": Wording(
        "right only after the motion",
        "before {motion}, {formation} is a foul: {rules}; at the snap it is right",
        "not before the motion",
        "never snap it early, or line the men up so that it is right from the start",
    ),
    "W871": Wording(
        "a block past the line before the catch",
        "{man} meets his man {yards} yards past the line at {seconds} seconds in {call}{look}, and "
        f"the ball to {{target}} is there at {{arrives}}: that is interference {_BY_CLOCK}",
        "a block is past the line",
        "let him run a route, or throw only to a man behind the line",
    ),
    "W872": Wording(
        "the snap is not handed on",
        "{man} takes the snap and runs with it in {call}: another man must get the ball before it "
        "crosses the line ({rules}; rests on: {source})",
        "not handed on",
        "give the ball to a back, or throw it",
    ),
}
"""What is asked of whole calls and only ever warns."""
_ALWAYS_BINDING = {526}
"""Rules that are looked at only where their text is published."""


def _worded(number: int) -> dict[str, Wording]:
    title, message, label, help_ = _RULES[number]
    error = Wording(title, f"{message} ({{rules}}; {{source}})", label, help_)
    warning = Wording(
        f"{title}, perhaps", f"{message} ({{rules}}; rests on: {{source}})", label, help_
    )
    if number in _ALWAYS_BINDING:
        return {f"E{number}": error}
    return {f"E{number}": error, f"W{number}": warning}


WORDING: dict[str, Wording] = {
    **_READ,
    **{code: w for number in _RULES for code, w in _worded(number).items()},
    **_TIMES,
    **_CALLS,
}
