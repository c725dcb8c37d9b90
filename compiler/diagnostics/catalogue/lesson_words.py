"""What is taught and signalled, codes 774 to 777; of the install what its reader tells, 735: the
others are in the check's file."""

from __future__ import annotations

from stemline.diagnostics.diagnostic import Mistake
from stemline.diagnostics.misspelt import Misspelt


class TakenSign(Mistake):
    """Two things that are shown or called alike."""

    said: str
    first: str
    second: str
    how: str


class E774(TakenSign):
    title = "two things with one signal"
    message = "{first} and {second} are {how} alike: `{said}`"
    label = "taken"
    help = "give one of them another signal"


class E775(Misspelt):
    title = "unknown tempo"
    message = "`{found}` is no tempo"
    label = "not known"
    help = "one of: {choices}"


class E776(TakenSign):
    title = "two things with one word"
    message = "{first} and {second} are {how} alike: `{said}`"
    label = "taken"
    help = "give one of them another word"


class E777(Mistake):
    title = "when a thing is put in"
    message = "what is taught when stands in a block of its own"
    label = "not here"
    help = "write `install Camp`, under it `day {day}`, and under that `{name}`"

    day: str
    name: str


class E735(Mistake):
    title = "two install blocks"
    message = "a playbook has one `install` block"
    label = "the second one"
    help = "put the days of both into one block"
