"""Runs: blocking rules, aims, keys and passes that show a run; codes 670 to 689."""

from __future__ import annotations

from stemline.diagnostics.diagnostic import Mistake
from stemline.diagnostics.misspelt import Misspelt


class E670(Mistake):
    title = "which of the two"
    message = "there is a {place} on both sides of the centre"
    label = "on which side"
    help = "write `playside {place}` or `backside {place}`; left and right, strong and weak do too"

    place: str


class E671(Misspelt):
    title = "a double team without its second man"
    message = "a double team needs the man who helps"
    label = "with whom"
    help = "write `double with` and guard, tackle, end or centre"


class E672(Mistake):
    title = "more than one `then` in a block"
    message = "a block has its rules, parted by `or`, and at most one `then`"
    label = "here"
    help = (
        "after `then` stands whom a double team climbs to: `down or double with guard then "
        "backside linebacker`"
    )


class E673(Misspelt):
    title = "unknown aim"
    message = "`{found}` is no place to aim at"
    label = "not known"
    help = "a side and a gap, as in `playside B`, or one of: {choices}"


class E674(Misspelt):
    title = "unknown side of a run"
    message = "`{found}` does not say to which side the run goes"
    label = "not known"
    help = "one of: {choices}"


class E675(Mistake):
    title = "a reaction without its reason"
    message = "`{does}` says what is done, and `if` says when"
    help = (
        "write it as `{does} if he widens`; a throw names its role, a pitch its man: `throw slant "
        "if`, `pitch off overhang if`"
    )

    does: str


class E676(Mistake):
    title = "join what"
    message = "a pass joins a run"
    help = "write `join run` and the run's name"


class E677(Mistake):
    title = "nobody is read"
    message = "`{does}` depends on a man who is read, and {call} has no key"
    label = "read off whom"
    help = "add a line such as `key backside end man on line`"

    call: str
    does: str


class E678(Mistake):
    title = "nobody carries the ball"
    message = "no line of the run says who its carrier is"
    help = "add `carrier is back` and `carrier aims playside B`"


class E679(Mistake):
    title = "a lineman without a block"
    message = "the run does not say how {places} blocks"
    help = "add a line for each, or `line blocks` for all who have none"

    places: str


class E680(Mistake):
    title = "a role named like a line"
    message = "a line that begins with `{word}` says what is done off a key"
    label = "not a role"
    help = "give the role another name, or put its name in quotes"

    word: str


class E681(Mistake):
    title = "two keys"
    message = "a quarterback reads one man at the hand-off, and this is a second `key`"
    label = "the second"
    help = (
        "give each a name, `key end is backside end man on line`, and say `quarterback keeps if "
        "end chases`; a man read after him for a pitch is said with `pitch off`"
    )
