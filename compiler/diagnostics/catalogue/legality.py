"""Lines, splits, numbers and motions, and what a rule code says of them: 514 to 579, 870 to 879."""

from __future__ import annotations

from stemline.diagnostics.diagnostic import Mistake
from stemline.diagnostics.misspelt import Misspelt


class E514(Mistake):
    title = "no condition here"
    message = "`{verb}` holds from every ball spot, so a condition has no place behind it"
    label = "a condition"
    help = "delete the `when`, or write a second block of another name"

    verb: str


class E515(Mistake):
    title = "not a lineman"
    message = "`{found}` is no lineman and no man of the personnel"
    label = "who is this"
    help = (
        "a lineman's label ends in T, G or C, such as LT, EG or C; any other man needs a line in "
        "the personnel"
    )

    found: str


class E516(Mistake):
    title = "who snaps the ball"
    message = "{formation} has {got} centre in its line, and one stands over the ball"
    label = "one centre"
    help = "put C into the line, or a man of whom the personnel says `is centre`"

    formation: str
    got: int | str


class E517(Mistake):
    title = "in the line and lined up"
    message = "{man} stands in the line of {formation} and is lined up as well"
    label = "lined up here"
    help = "keep one of the two: take him out of the `line`, or delete this line"

    formation: str
    man: str


class E518(Mistake):
    title = "not in the personnel"
    message = "{man} is lined up, and he is not in the personnel {people}"
    label = "not among them"
    help = "add him there with `is`, or name another personnel behind `people`"

    man: str
    people: str


class E519(Mistake):
    title = "unknown number"
    message = "`{found}` is no jersey number"
    label = "not a number"
    help = "one man, one number from 0 to 99, such as `X is wideout, 81`"

    found: str


class OutOfTime(Mistake):
    """A start that does not bring a man to where his motion ends."""

    varies = ("needed", "ran", "way")

    man: str
    motion: str
    seconds: str
    ran: str
    way: str
    needed: str


class E548(OutOfTime):
    title = "past his place"
    message = (
        "{man} starts {seconds} seconds before the snap in {motion} and still runs: that is {ran} "
        "yards, and his way is {way}"
    )
    label = "past his place"
    help = "let him start {needed} seconds before the snap, or be set"


class E549(OutOfTime):
    title = "not there in time"
    message = (
        "{man} starts {seconds} seconds before the snap in {motion} and is to be set: he comes "
        "{ran} of {way} yards"
    )
    label = "not there yet"
    help = "let him start more than {needed} seconds before the snap"


class E550(Mistake):
    title = "splits of the line"
    message = "linemen stand {least} to {most} yards from each other, not {yards}"
    label = "not a split"
    help = "from centre of body to centre of body: 1.3 is usual, 0.5 is foot to foot"

    least: float
    most: str
    yards: str


class E551(Mistake):
    title = "starts without a move"
    message = "{motion} says when he starts, and not where he moves"
    label = "does not move"
    help = "add a line with `moves`, or delete this one"

    motion: str


class E552(Misspelt):
    title = "when he starts"
    message = "a start is seconds before the snap, not `{found}`"
    label = "how many seconds"
    help = "for example `Z starts 1.5 seconds`"


class E554(Mistake):
    title = "how fast he is"
    message = "a forty is from {least} to {most} seconds, not `{found}`"
    label = "how many seconds"
    help = "his own time for 40 yards, such as `X is wideout, 81, forty 4.9`"

    found: str
    least: str
    most: str
