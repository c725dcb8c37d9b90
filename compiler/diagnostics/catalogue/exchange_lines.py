"""How the ball goes: codes 780 to 799 that the reader and the resolver tell."""

from __future__ import annotations

from stemline.diagnostics.diagnostic import Mistake
from stemline.diagnostics.misspelt import Misspelt


class E780(Mistake):
    title = "an exchange without its taker"
    message = "`{does}` says to whom the ball goes"
    label = "to whom"
    help = "write `{line}`"

    does: str
    line: str


class E781(Misspelt):
    title = "unknown place of an exchange"
    message = "`{found}` is no place at which the ball is given"
    label = "not known"
    help = (
        "yards and over whom, as in `at 5 deep, backside guard`, or `at 2 behind` for behind the "
        "man who gives it; over whom is a side and one of: {choices}"
    )


class E782(Mistake):
    title = "a comma where `at` stands"
    message = "the place at which the ball is given stands behind `at`"
    label = "the place"
    help = "write `{line}`"

    line: str


class E783(Mistake):
    title = "a moment without its seconds"
    message = "`after` is followed by seconds from the snap"
    label = "when"
    help = "write `after 1.5 seconds`"


class E784(Mistake):
    title = "a choice that only a thrower has"
    message = "`{does}` goes to one man: only a throw has a second choice behind `or`"
    label = "one man"
    help = "write a line for each call's man with a guard, or `throws to`"

    does: str


class E785(Mistake):
    title = "the ball given to oneself"
    message = "{man} would give the ball to himself"
    label = "the same man"
    help = "name the man who gets it"

    man: str


class E786(Mistake):
    title = "no way for the ball"
    message = "{call}: after `{last}` nobody gives the ball to `{man}`"
    label = "he never has it"
    help = "write who gives it to him, as in `{giver} hands to {man}`, or take this line out"

    call: str
    giver: str
    last: str
    man: str


class E787(Mistake):
    title = "two ways for the ball"
    message = "{call}: the ball may go {first}, or {second}"
    label = "which of them"
    help = "each man may give the ball once: leave one of these lines out"

    call: str
    first: str
    second: str


class E788(Mistake):
    title = "a man with the ball and nowhere to go"
    message = "{call}: {man} gets the ball, and no line says where he runs with it"
    label = "and then"
    help = "write `{role} aims outside the end`"

    call: str
    man: str
    role: str


class E789(Mistake):
    title = "the ball's way said in two forms"
    message = "`handoff` and `{line}` both say whose hands the ball goes through"
    label = "the other form"
    help = (
        "take the `handoff` line out and write a line for each exchange: `quarterback hands to …`"
    )

    line: str


class E794(Mistake):
    title = "a read said as an exchange"
    message = "whom the quarterback throws to is a read"
    label = "his own throw"
    help = (
        "write `read {man}`; a throw to a man who throws it on says where, `at 2 behind`, and has "
        "a line for what {man} does with it"
    )

    man: str


class E799(Misspelt):
    title = "a snap to nobody"
    message = "`{found}` is nobody who lines up"
    label = "nobody"
    help = "write the letter of who takes the snap, one of: {choices}"


class E793(Mistake):
    title = "a fake that names a run"
    message = "`{does}` shows the ball to a man"
    label = "whom"
    help = "write `quarterback fakes to {man}`, and where he runs: `{man} aims playside A`"

    does: str
    man: str
