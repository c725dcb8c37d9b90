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
