"""Calls, roles, tags and dress-ups: codes 600 to 799."""

from __future__ import annotations

from stemline.diagnostics.diagnostic import Mistake
from stemline.diagnostics.misspelt import Misspelt


class E601(Mistake):
    title = "a call with two readings"
    message = "`{call}` can be read in two ways: {readings}"
    label = "two readings"
    help = "rename one of them"

    call: str
    readings: str


class E602(Mistake):
    title = "unknown call"
    message = "`{call}` is no call of this playbook"
    label = "not known"
    help = "`stemline list` prints every call"

    call: str


class E603(Mistake):
    title = "unknown concept or family"
    message = "no concept and no family is called `{name}`"
    label = "not known"
    help = "give a concept's or a family's name as it stands in the book"

    name: str


class E604(Mistake):
    title = "unknown man of a call"
    message = "nobody in {call} is called `{man}`"
    label = "not known"
    help = "the men of this call are {choices}"

    call: str
    choices: str
    man: str


class E605(Mistake):
    title = "no earlier playbook"
    message = "`{said}` is no folder, and {why}"
    label = "not found"
    help = "give last season's folder, or a tag or a commit of the playbook's repository"

    said: str
    why: str


class E606(Mistake):
    title = "a call that was not there before"
    message = "`{call}` is no call of {before}"
    label = "not known there"
    help = "give the name it had with --before-call"

    before: str
    call: str


class E610(Mistake):
    title = "nobody to move"
    message = "{motion} moves {who}, and {formation} has no such man"
    label = "nobody"
    help = "use the motion only in formations where he is"

    formation: str
    motion: str
    who: str


class E620(Mistake):
    title = "a role found no man"
    message = "in {call} nobody can be the {role}: {why}"
    label = "no man for {role}"
    help = (
        "write `{line}`, or another choice behind `or`, or leave this formation out of the dress-up"
    )
    varies = ("why",)

    call: str
    line: str
    role: str
    why: str


class E621(Mistake):
    title = "roles that lean on each other"
    message = "{role} is found by way of {others}, and {others} by way of {role}"
    label = "a circle"
    help = "give one of them an exact rule, such as strong #2"

    others: str
    role: str


class E622(Mistake):
    title = "no line holds for a role"
    message = "in {call} no line says what {role} runs ({shape})"
    label = "only under a condition"
    help = "add a line for {role} without `when`"
    varies = ("shape",)

    call: str
    role: str
    shape: str


class E623(Mistake):
    title = "the side of nobody"
    message = "in {call} {role} is nobody or stands over the ball: no side to run from"
    label = "no side"
    help = "say the side itself: weak, strong, call or away"

    call: str
    role: str


class E625(Mistake):
    title = "a man who cannot be called away"
    message = "in {call} the {name} is {man}, who {why}"
    label = "not free"
    help = "call another man, or leave this formation out of the tag's calls with `never`"
    varies = ("man",)

    call: str
    man: str
    name: str
    why: str


class E626(Mistake):
    title = "a man who does not line up"
    message = "in {call} no {man} lines up"
    label = "not in this formation"
    help = (
        "leave the formation out of the dress-up, end the line with `when` and the name of one "
        "that has him, or name the job: `clear is {man} or strong #1`"
    )

    call: str
    man: str


class E630(Mistake):
    title = "a read with nobody there"
    message = "in {call} the quarterback reads {spot}, and nobody comes there{miss}"
    label = "an empty spot"
    help = "move the spot, or give a role a route that ends there"
    varies = ("miss",)

    call: str
    miss: str
    spot: str


class E640(Mistake):
    title = "two tags that quarrel"
    message = "{first} and {second} both say {what}, and they do not agree"
    label = "cannot be called together"
    help = "take {first} + {second} out of the dress-up, or let only one of them say it"

    first: str
    second: str
    what: str


class E701(Mistake):
    title = "a dress-up without a formation"
    message = "the dress-up of {name} names no formation"
    label = "no `in` line"
    help = "add a line such as `in Quads`"

    name: str


class E702(Misspelt):
    title = "which way"
    message = "a call goes {choices}, not `{found}`"
    label = "not a side of a call"
    help = "for example `to right, left`"


class E703(Misspelt):
    title = "which ball spot"
    message = "a ball spot is {choices}, not `{found}`"
    label = "not known"
    help = "for example `from left hash, middle`"


class E704(Mistake):
    title = "an exception with two meanings"
    message = "`{said}` is two things in this playbook"
    label = "two meanings"
    help = "say which: `{first}`, or `{second}`"

    first: str
    said: str
    second: str


class E705(Mistake):
    title = "an exception that excepts nothing"
    message = "no call of this dress-up is like this"
    label = "excepts nothing"
    help = "delete the line, or mend its names"


class E706(Mistake):
    title = "a name for a call that is not made"
    message = "`{call}` is not a call of this dress-up"
    label = "not made here"
    help = "add its formation and tags to the dress-up, or delete the line"

    call: str


class E707(Mistake):
    title = "no field in the middle"
    message = "{call} has no side from the middle: the house calls neither side the field there"
    label = "from the hashes only"
    help = "say which, `house middle field is right`, or call it from a hash"
    varies = ("way",)

    call: str
    way: str


class E708(Mistake):
    title = "a call that is never called"
    message = "{call} would be called from no spot"
    label = "no spot is left"
    help = "then it is no call: leave the spots out, `{line}`"

    call: str
    line: str


class E709(Mistake):
    title = "best and never from one spot"
    message = "{call} is best called from the {spot}, and never called from it"
    label = "never from there"
    help = "take the {spot} out of one of the two lines"

    call: str
    spot: str


class W624(Mistake):
    title = "everyone else behind the ball"
    message = (
        "in {call} {man} stands behind the ball, and `everyone else` means those out wide: "
        "drawn is `{line}`"
    )
    label = "not {man}"
    help = "give {man} this line, or another: `{line}`"
    varies = ("line", "man")

    call: str
    line: str
    man: str


class W627(Mistake):
    title = "a man named twice"
    message = (
        "in {call} one line says what {first} does, another what {second} does, and {man} is both: "
        "drawn is what {first} does"
    )
    label = "not drawn there"
    help = (
        "let one of the lines be for other formations, with `when` and their names, or name "
        "another man"
    )
    varies = ("man",)

    call: str
    first: str
    man: str
    second: str


class W628(Mistake):
    title = "a route for the man with the ball"
    message = (
        "in {call} {man} may get the ball of the run that is joined, and what {role} runs is not "
        "drawn"
    )
    label = "nobody runs it"
    help = (
        "without a `give`, and with no line of how the ball goes, he fakes and then runs it; else "
        "give the route to another man"
    )
    varies = ("man",)

    call: str
    man: str
    role: str


class W710(Mistake):
    title = "a concept without a dress-up"
    message = "{concept} has no dress-up, so it makes no call"
    label = "never called"
    help = "add `dress {concept}` with an `in` line"

    concept: str


class W711(Mistake):
    title = "a side and the field"
    message = "from a hash {call} is the play that {other} is, and both have a number"
    label = "the same play twice"
    help = "call it one way: `to right, left` or `to field, boundary`"
    varies = ("other",)

    call: str
    other: str
