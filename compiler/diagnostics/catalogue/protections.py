"""Protections: codes E690 to E699 and W690 to W699."""

from __future__ import annotations

from stemline.diagnostics.wording import Wording

WORDING: dict[str, Wording] = {
    "E690": Wording(
        "unknown man of a protection",
        "`{found}` is no man of the line and no role of this protection",
        "not known",
        "one of: {known}; a new role needs a line with `is`, such as `helper is back`",
    ),
    "E691": Wording(
        "unknown block of a protection",
        "`{found}` does not say how he protects",
        "not known",
        "one of: {choices}",
    ),
    "E692": Wording(
        "which way a protection goes",
        "a protection does not go `{found}`",
        "not known",
        "one of: {choices}",
    ),
    "E693": Wording(
        "a helper without a block",
        "`{role}` is somebody, but no line says how he protects",
        "no block",
        "add a line such as `{role} blocks scan` or `{role} blocks edge`",
    ),
    "E694": Wording(
        "a line that is not whole",
        "{name} does not say what {men} of the line blocks",
        "not everybody has a rule",
        "say it of both sides, or add `line blocks slide` for whoever has no line of his own",
    ),
    "E695": Wording(
        "a protection without its man",
        "{protection} needs a {role}, and in {call} nobody can be: {why}",
        "no man for it",
        "name another protection for this set, such as `protect five when empty`, or let the "
        "{role} be `nobody`",
    ),
    "E696": Wording(
        "no line holds for a lineman",
        "in {call} no line of {protection} holds for {men}",
        "only under a condition",
        "add a line without `when` for his place, or one for the whole `line`",
    ),
    "W690": Wording(
        "a blocker who is sent out",
        "{protection} keeps {man} in as its {role}, and in {call} he runs {route}",
        "one man fewer than it says",
        "name a protection without him, or give him a block or a `check`",
    ),
    "W691": Wording(
        "a free rusher and no answer",
        "against {look} one more comes than {protection} blocks: {man} is free {where}, and "
        "nothing is thrown for him ({call})",
        "no answer",
        "give the concept a `pressure` order, or the protection a `hot`",
    ),
    "W692": Wording(
        "two free rushers",
        "against {look} two more come than {protection} blocks: {men} are free ({call})",
        "too few stay in",
        "keep another man in, slide to them, or leave this look out of the dress-up",
    ),
}
