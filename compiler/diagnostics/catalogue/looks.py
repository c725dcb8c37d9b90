"""Looks: codes 480 to 499."""

from __future__ import annotations

from stemline.diagnostics.wording import Wording

WORDING: dict[str, Wording] = {
    "E480": Wording(
        "the wrong number of defenders",
        "{look} has {got} defenders, and {wanted} play ({rules}; {source})",
        "{got} defenders",
        "one line with `at` for each man, and none twice",
    ),
    "E481": Wording(
        "unknown place of a defender",
        "`{found}` is no place for a defender",
        "not understood",
        "for example: 3, strong · 30, weak, 4 deep · strong #1, 1 inside, 7 deep · middle, 12 deep",
    ),
    "E482": Wording(
        "which side of a look",
        "`{place}` is on both sides of the ball",
        "no side said",
        "add `strong` or `weak`: `T at 3, strong`",
    ),
    "E483": Wording(
        "how deep",
        "`{place}` does not say how far off the line he stands",
        "how deep",
        "for example `C at strong #1, 7 deep`; only a technique such as 3 is on the line by itself",
    ),
    "E484": Wording(
        "unknown duty",
        "`{found}` is nothing that a defender covers",
        "not known",
        "for example: man, strong #2 · flat, strong · hook, weak · hole · third, middle",
    ),
    "E485": Wording(
        "unknown gap",
        "`{found}` is no gap",
        "not known",
        "one of: {choices}; for example `T rushes B, strong`",
    ),
    "E486": Wording(
        "unknown strength",
        "a look is not strong to `{found}`",
        "not known",
        "one of: {choices}",
    ),
    "E487": Wording(
        "a look named as a word",
        "`{name}` already is a word for what any defence shows",
        "taken",
        "give the look a name of its own, such as Odd {name}",
    ),
    "E488": Wording(
        "no line holds for a defender",
        "no line of {look} says where {man} stands against {formations}",
        "only under a condition",
        "add a line `{man} at` and a place without `when`",
    ),
    "E489": Wording(
        "a defender with no place",
        "in {look}, {man} has no place against {formations}: {why}",
        "no place",
        "add another choice with `or`: `N at strong #3 or apex, strong, 5 deep`",
    ),
    "E490": Wording(
        "two defenders on one spot",
        "in {look}, {man} and {other} stand on one spot against {formations}",
        "no room",
        "move one of them",
    ),
    "E491": Wording(
        "a defender too near the ball",
        "in {look}, {man} stands {depth} yards off the ball, and the defence must be {wanted} "
        "({rules}; {source})",
        "too near",
        "at least `{wanted} deep`; a technique without a depth keeps the distance by itself",
    ),
    "W491": Wording(
        "a defender who may be too near the ball",
        "in {look}, {man} stands {depth} yards off the ball, and {wanted} may be asked for "
        "({rules}; {source})",
        "near",
        "ask your league; a technique without a depth keeps the distance by itself",
    ),
    "W492": Wording(
        "a defender with nobody to cover",
        "in {look}, {man} covers nobody against {formations}: {why}",
        "nobody there",
        "add what he does then with `or`: `M covers man, strong #3 or hook, strong`",
    ),
    "W493": Wording(
        "a man whom nobody covers",
        "in {look}, everybody is covered man to man, and nobody has {said} of {formations}",
        "{said} is free",
        "give him to somebody: `M covers man, {who}`",
    ),
    "W494": Wording(
        "a defender with nothing to do",
        "in {look}, no line says what {man} does",
        "no duty",
        "add `{man} covers` and a zone or a man, or `{man} rushes` and a gap",
    ),
    "E495": Wording(
        "a defender who is not lined up",
        "no line says where {man} stands",
        "not lined up",
        "add a line `{man} at` and a place",
    ),
    "E496": Wording(
        "unknown man to cover",
        "`{found}` is no man to cover",
        "not known",
        "for example: man, strong #2 · man, back · man, weak back · man, tight end",
    ),
}
