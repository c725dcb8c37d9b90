"""Protections: codes E690 to E699 and W690 to W699."""

from __future__ import annotations

from stemline.diagnostics.diagnostic import Mistake
from stemline.diagnostics.misspelt import Misspelt


class E690(Misspelt):
    title = "unknown man of a protection"
    message = "`{found}` is no man of the line and no role of this protection"
    label = "not known"
    help = "one of: {known}; a new role needs a line with `is`, such as `helper is back`"

    known: str


class E691(Misspelt):
    title = "unknown block of a protection"
    message = "`{found}` does not say how he protects"
    label = "not known"
    help = "one of: {choices}"


class E692(Misspelt):
    title = "which way a protection goes"
    message = "a protection does not go `{found}`"
    label = "not known"
    help = "one of: {choices}"


class E693(Mistake):
    title = "a helper without a block"
    message = "`{role}` is somebody, but no line says how he protects"
    label = "no block"
    help = "add a line such as `{role} blocks scan` or `{role} blocks edge`"

    role: str


class E694(Mistake):
    title = "a line that is not whole"
    message = "{name} does not say what {men} of the line blocks"
    label = "not everybody has a rule"
    help = "say it of both sides, or add `line blocks slide` for whoever has no line of his own"

    men: str
    name: str


class E695(Mistake):
    title = "a protection without its man"
    message = "{protection} needs a {role}, and in {call} nobody can be: {why}"
    label = "no man for it"
    help = (
        "name another protection for this set, such as `protect five when empty`, or let the "
        "{role} be `nobody`"
    )

    call: str
    protection: str
    role: str
    why: str


class E696(Mistake):
    title = "no line holds for a lineman"
    message = "in {call} no line of {protection} holds for {men}"
    label = "only under a condition"
    help = "add a line without `when` for his place, or one for the whole `line`"

    call: str
    men: str
    protection: str


class W690(Mistake):
    title = "a blocker who is sent out"
    message = "{protection} keeps {man} in as its {role}, and in {call} he runs {route}"
    label = "one man fewer than it says"
    help = "name a protection without him, or give him a block or a `check`"

    call: str
    man: str
    protection: str
    role: str
    route: str


class W699(Mistake):
    title = "a ready protection taken over"
    message = "{name} takes the place of the ready `{ready}` in every call that names it"
    label = "yours from here on"
    help = "give it another name, or keep it: yours is the one that is used"

    name: str
    ready: str
