"""Names and definitions: codes 300 to 399."""

from __future__ import annotations

from stemline.diagnostics.diagnostic import Mistake
from stemline.diagnostics.misspelt import Misspelt

INTO_ONE = "put the lines of both into one, give one of them another name, or delete it"


class E301(Mistake):
    title = "defined twice"
    message = "{kind} `{name}` is defined {times}"
    label = "this one is not used"
    help = "{instead}"

    instead: str
    kind: str
    name: str
    times: str


class E302(Mistake):
    title = "unknown parent"
    message = "no {kind} is called `{name}`"
    label = "not defined"
    help = "correct the name, or write a {kind} block of that name"

    kind: str
    name: str


class E303(Mistake):
    title = "extends itself"
    message = "{path}: a {kind} cannot extend itself, not even through others"
    label = "the circle starts here"
    help = "take `extends` off one of them"

    kind: str
    path: str


class E304(Mistake):
    title = "a second parent that extends another"
    message = "`{name}` stands second, and it extends another {kind} itself"
    label = "extends another"
    help = "name it first, or what it extends: only the first of several may lean on others"

    kind: str
    name: str


class E305(Mistake):
    title = "no playbook block"
    message = "this folder has no `playbook` block, so its rule code is not known"
    help = "write `playbook NAME` in column one and under it a line such as `code high school`"


class E306(Mistake):
    title = "two playbook blocks"
    message = "a folder is one playbook, and this one has two"
    label = "the second"
    help = "keep one `playbook` block"


class E307(Mistake):
    title = "no rule code"
    message = "the playbook does not say which rule code it plays"
    help = "add a line `code` with one of: {choices}"

    choices: str


class E308(Mistake):
    title = "unknown version"
    message = "the notation's version is {current}, and this playbook asks for `{found}`"
    label = "not known"
    help = "write `version {current}`, or use the stemline that this book was written for"

    current: int
    found: str


class E309(Misspelt):
    title = "unknown rule code"
    message = "no rule code is called `{found}`"
    label = "not known"
    help = "one of: {choices}"


class E310(Misspelt):
    title = "unknown name"
    message = "no {kind} is called `{found}`"
    label = "not defined"
    help = "correct the name, or write a {kind} block of that name"

    kind: str


class E322(Misspelt):
    title = "unknown house figure"
    message = "a house figure is {choices}, not `{found}`"
    label = "not known"
    help = "for example `house numbers is 12`; a figure of the rules is set by `league`"


class E323(Misspelt):
    title = "which hand"
    message = "a hand is right or left, not `{found}`"
    label = "right or left"


class E324(Misspelt):
    title = "unknown picture spot"
    message = "`{found}` does not say what is drawn: {choices}"
    label = "not known"


class E333(Misspelt):
    title = "which side is the field"
    message = "in the middle the field is {choices}, not `{found}`"
    label = "not a side"
    help = "for example `house middle field is right`; `none` where nothing is called so there"


class E332(Misspelt):
    title = "unknown level"
    message = "`{found}` is no level of play: {choices}"
    label = "not known"


class E325(Mistake):
    title = "a man's letter"
    message = "`{found}` is not a man's letter: one or two characters, such as X or LT"
    label = "too long"

    found: str


class E326(Misspelt):
    title = "unknown position"
    message = "no position is called `{found}`"
    label = "not known"
    help = "one of: {choices}"


class E327(Mistake):
    title = "unknown section"
    message = "no concept is of the family `{found}`"
    label = "not known"
    help = "one of: {choices}"

    choices: str
    found: str


class E328(Misspelt):
    title = "unknown league figure"
    message = "no league sets a figure called `{found}`"
    label = "not known"
    help = "one of: {choices}"


class E329(Mistake):
    title = "the value of a league figure"
    message = "`league {figure} is` takes {wanted}, not `{found}`"
    label = "not that"
    help = "for example `{example}`"

    example: str
    figure: str
    found: str
    wanted: str
