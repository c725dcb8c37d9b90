"""What is done off keys that have a name: codes E682 to E687 and W682."""

from __future__ import annotations

from stemline.diagnostics.diagnostic import Mistake
from stemline.diagnostics.misspelt import Misspelt


class E682(Misspelt):
    title = "unknown key"
    message = "no `key` line calls a man `{found}`"
    label = "who"
    help = "behind `if` stands a key's name and what he does; keys here: {choices}"


class E683(Misspelt):
    title = "unknown action of a key"
    message = "`{found}` is nothing that the one who is read does"
    label = "not known"
    help = "one of: {choices}"


class E684(Mistake):
    title = "which of two keys"
    message = "there are two keys, and `{does} if …` does not say which of them"
    label = "who"
    help = "write `{line}`"

    does: str
    line: str


class E685(Mistake):
    title = "one case twice"
    message = "if {case}, the quarterback {first} and {second}"
    label = "the same case"
    help = "make one of the lines narrower with what another key does, or leave it out"

    case: str
    first: str
    second: str


class E686(Mistake):
    title = "a reaction of somebody else"
    message = "only the quarterback gives, keeps or throws off a key"
    label = "not he"
    help = "write `quarterback {does}`"

    does: str


class E687(Misspelt):
    title = "unknown scramble rule"
    message = "`{found}` is nothing that a man does when the quarterback runs"
    label = "not known"
    help = "one of: {choices}"


class W682(Mistake):
    title = "a case that is left open"
    message = "no line says what the quarterback does if {case}"
    label = "and else"
    help = "write `{line}`, or what he does then"

    case: str
    line: str
