"""Two plays at the line: what a call is killed to, and on what; codes 760 to 769."""

from __future__ import annotations

from stemline.diagnostics.diagnostic import Mistake
from stemline.diagnostics.misspelt import Misspelt


class E761(Mistake):
    title = "killed to what"
    message = "`{line}` does not say what the call becomes"
    label = "`to` and a concept belong here"
    help = "write `kill to {to} when {when}`"

    line: str
    to: str
    when: str


class E762(Mistake):
    title = "killed when"
    message = "`kill to {to}` does not say what he sees"
    label = "kill it when?"
    help = "write `kill to {to} when 8 or more in box`"

    to: str


class E763(Misspelt):
    title = "nothing to see at the line"
    message = "`{found}` is nothing that he sees at the line"
    label = "not known"
    help = "one of: {choices}"


class E764(Misspelt):
    title = "neither a tag nor a side"
    message = "`{found}` is neither a tag of {concept} nor a side"
    label = "behind {concept}"
    help = "behind the concept stand its tags, then a side: {choices}"

    concept: str


class E765(Mistake):
    title = "a kill of a kill"
    message = "{call} is killed to {to}, which is killed to {then} itself"
    label = "one word at the line, one other play"
    help = "take `kill to {then}` out of {to}, or put it into a tag that this call does not have"

    call: str
    to: str
    then: str


class E766(Mistake):
    title = "two kills at once"
    message = "{look} would kill {call} to {first} and to {second}"
    label = "so does this"
    help = "let one ask for more, such as `kill to {second} when {when}, {more}`"

    call: str
    first: str
    second: str
    look: str
    when: str
    more: str


class E767(Mistake):
    title = "killed to itself"
    message = "{call} is killed to the play that it is"
    label = "the same play"
    help = (
        "name another concept, a tag of this one, or the other side: `kill to {to} away when "
        "{when}`"
    )

    call: str
    to: str
    when: str
