"""Looks: codes 422 to 428, and 480 to 499."""

from __future__ import annotations

from stemline.diagnostics.diagnostic import Mistake
from stemline.diagnostics.misspelt import Misspelt


class FaultOfLook(Mistake):
    """A fault of a look where it is lined up: it is the look's own, not that of a call against
    which it is drawn."""

    look: str
    man: str
    formations: str


class E422(Mistake):
    title = "a rusher behind nobody"
    message = "[{man}] comes behind [{other}], {why}"
    label = "not a rusher"
    help = "name a man who rushes: `{man} rushes A, strong behind T`, and `T rushes B, strong`"

    man: str
    other: str
    why: str


class E423(Mistake):
    title = "rushers behind each other"
    message = "{men} wait for each other"
    label = "in a circle"
    help = "one of them goes first: take `behind` off his line"

    men: str


class E424(Mistake):
    title = "the side before the timing"
    message = "`{found}` stands behind what says when he comes"
    label = "too late in the line"
    help = "the gap and the side come first: `{line}`"

    found: str
    line: str


class W425(Mistake):
    title = "a disguise that hides nothing"
    message = "{look} shows `{word}` before the snap and plays just that"
    label = "nothing is hidden"
    help = "take the line off: what a look plays is worked out from its men"

    look: str
    word: str


class E426(Misspelt):
    title = "unknown motion"
    message = "a defence does not adjust to motion `{found}`"
    label = "not known"
    help = "`when motion`, or behind it one of: {choices}"


class E427(Mistake):
    title = "two kinds of condition in one choice"
    message = "`{first} or {second}` asks for two kinds of thing"
    label = "two lines"
    help = "write two lines, one `when {first}` and one `when {second}`"

    first: str
    second: str


class W428(Mistake):
    title = "a call against a look that it never meets"
    message = "{call} never meets {look}: that is {sets}"
    label = "not for this set"
    help = "name another look, or change `only for` and `never for` of {look}"

    call: str
    look: str
    sets: str


class E481(Misspelt):
    title = "unknown place of a defender"
    message = "`{found}` is no place for a defender"
    label = "not understood"
    help = (
        "for example `T in 3, strong` · `W in 30, weak, 4 deep` · `C at strong #1, 1 inside, 7 "
        "deep` · `F at middle, 12 deep`"
    )


class E482(Mistake):
    title = "which side of a look"
    message = "`{place}` is on both sides of the ball"
    label = "no side said"
    help = "add `strong` or `weak`: `T in 3, strong`"

    place: str


class E483(Mistake):
    title = "how deep"
    message = "`{place}` does not say how far off the line he stands"
    label = "how deep"
    help = (
        "for example `C at strong #1, 7 deep`, or `1 deep` for one on the line; only a technique "
        "such as 3 is there by itself"
    )

    place: str


class E484(Misspelt):
    title = "unknown duty"
    message = "`{found}` is nothing that a defender covers"
    label = "not known"
    help = "for example: man, strong #2 · flat, strong · hook, weak · hole · third, middle"


class E485(Misspelt):
    title = "unknown gap"
    message = "`{found}` is no gap"
    label = "not known"
    help = "one of: {choices}; for example `T rushes B, strong`"


class E486(Misspelt):
    title = "unknown strength"
    message = "a look is not strong to `{found}`"
    label = "not known"
    help = "one of: {choices}"


class E487(Mistake):
    title = "a look named as a word"
    message = "`{name}` already is a word for what any defence shows"
    label = "taken"
    help = "give the look a name of its own, such as Odd {name}"

    name: str


class E488(FaultOfLook):
    title = "no line holds for a defender"
    message = "no line of {look} says where [{man}] stands against {formations}"
    label = "only under a condition"
    help = "add a line `{man} at` and a place without `when`"


class W489(FaultOfLook):
    title = "a defender with no place"
    message = (
        "in {look}, [{man}] has no place against {formations}: {why}; drawn outside the end man"
    )
    label = "no place"
    help = "say where he stands then, behind `or`: `{line}`"

    line: str
    why: str


class E490(FaultOfLook):
    title = "two defenders on one spot"
    message = "in {look}, [{man}] and [{other}] stand on one spot against {formations}"
    label = "no room"
    help = "move one of them{deeper}"

    deeper: str = ""
    other: str


class W492(FaultOfLook):
    title = "a defender with nobody to cover"
    message = "in {look}, [{man}] covers nobody against {formations}: {why}"
    label = "nobody there"
    help = "add what he does then with `or`: `M covers man, strong #3 or hook, strong`"

    why: str


class W494(FaultOfLook):
    title = "a defender with nothing to do"
    message = "in {look}, no line says what [{man}] does"
    label = "no duty"
    help = "add `{man} covers` and a zone or a man, or `{man} rushes` and a gap"


class W429(Mistake):
    title = "contain that comes inside"
    message = "in {look}, [{man}] comes inside, who has contain in the look it extends"
    label = "nobody has the edge"
    help = "give the edge to somebody: `{who} rushes contain, {side}`"

    look: str
    man: str
    side: str
    who: str


class E495(Mistake):
    title = "a defender who is not lined up"
    message = "no line says where [{man}] stands"
    label = "not lined up"
    help = "add a line `{man} at` and a place"

    man: str


class E496(Misspelt):
    title = "unknown man to cover"
    message = "`{found}` is no man to cover"
    label = "not known"
    help = "for example: man, strong #2 · man, back · man, weak back · man, tight end"


class E497(Mistake):
    title = "a man whom both parents tell"
    message = "{first} and {second} both say what {man} {what}"
    label = "two answers"
    help = "say it in this look, or take it out of one of them"

    first: str
    man: str
    second: str
    what: str


class E498(Mistake):
    title = "whom a look is for"
    message = "`{word}` in a look says for which sets it is"
    label = "`for` is missing"
    help = "write `{word} for {sets}`"

    word: str
    sets: str


class W499(Mistake):
    title = "a look that no set meets"
    message = "no formation of this playbook is one that {look} is for"
    label = "never drawn"
    help = "name a formation of the book, or take `only for` and `never for` off"

    look: str
