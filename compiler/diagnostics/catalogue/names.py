"""Names and definitions: codes 300 to 399."""

from __future__ import annotations

from stemline.diagnostics.wording import Wording

WORDING: dict[str, Wording] = {
    "E301": Wording(
        "defined twice",
        "{kind} `{name}` is defined {times}",
        "this one is not used",
        "give one of them another name, or delete it",
    ),
    "E302": Wording(
        "unknown parent",
        "no {kind} is called `{name}`",
        "not defined",
        "correct the name, or write a {kind} block of that name",
    ),
    "E303": Wording(
        "extends itself",
        "{path}: a {kind} cannot extend itself, not even through others",
        "the circle starts here",
        "take `extends` off one of them",
    ),
    "E305": Wording(
        "no playbook block",
        "this folder has no `playbook` block, so its rule code is not known",
        "",
        "write `playbook NAME` in column one and under it a line such as `code high school`",
    ),
    "E306": Wording(
        "two playbook blocks",
        "a folder is one playbook, and this one has two",
        "the second",
        "keep one `playbook` block",
    ),
    "E307": Wording(
        "no rule code",
        "the playbook does not say which rule code it plays",
        "",
        "add a line `code` with one of: {choices}",
    ),
    "E308": Wording(
        "unknown version",
        "the notation's version is {current}, and this playbook asks for `{found}`",
        "not known",
        "write `version {current}`, or use the stemline that this book was written for",
    ),
    "E309": Wording(
        "unknown rule code",
        "no rule code is called `{found}`",
        "not known",
        "one of: {choices}",
    ),
    "E310": Wording(
        "unknown name",
        "no {kind} is called `{found}`",
        "not defined",
        "correct the name, or write a {kind} block of that name",
    ),
    "E320": Wording(
        "unknown warning to lower",
        "`{found}` is not the code of a warning, so it cannot be lowered",
        "no such warning",
        "name each warning by the code that it is printed with: `lower W650, W710`",
    ),
    "E321": Wording(
        "an error is not lowered",
        "{found} is an error, and only warnings can be lowered",
        "an error",
        "take it out, and mend what the error points at",
    ),
    "E322": Wording(
        "unknown house figure",
        "a house figure is {choices}, not `{found}`",
        "not known",
        "for example `house numbers is 12`; a figure of the rules is set by `league`",
    ),
    "E323": Wording("which hand", "a hand is right or left, not `{found}`", "right or left"),
    "E324": Wording(
        "unknown picture spot",
        "pictures are drawn from {choices}, not `{found}`",
        "not known",
    ),
    "E332": Wording(
        "unknown level",
        "`{found}` is no level of play: {choices}",
        "not known",
    ),
    "E325": Wording(
        "a man's letter",
        "`{found}` is not a man's letter: one or two characters, such as X or LT",
        "too long",
    ),
    "E326": Wording(
        "unknown position",
        "no position is called `{found}`",
        "not known",
        "one of: {choices}",
    ),
    "E327": Wording(
        "unknown section",
        "no concept is of the family `{found}`",
        "not known",
        "one of: {choices}",
    ),
    "E328": Wording(
        "unknown league figure",
        "no league sets a figure called `{found}`",
        "not known",
        "one of: {choices}",
    ),
    "E329": Wording(
        "the value of a league figure",
        "`league {figure} is` takes {wanted}, not `{found}`",
        "not that",
        "for example `{example}`",
    ),
}
