"""The texts of drawn playbooks: a concept, a run, a protection and a screen, from sound pieces.

Who plays a role, what he does, what another shape, a look or a tag makes of it is drawn. A piece is
sound where a coach could have written it; that all of them together are good football is not asked.
"""

from __future__ import annotations

import random
from collections.abc import Iterator, Sequence

_SETS = {
    "saltmarsh-herons": ("Three Two", "Quads", "Spread", "Bunch", "Stack", "Trey", "Pistol"),
    "cedar-flats-lanterns": ("Doubles", "Trips", "Trey", "Bunch", "Stack", "Pistol"),
}
_HEAVY = {
    "saltmarsh-herons": ("Pro", "Doubles", "Ace", "Wing", "Jumbo", "Diamond"),
    "cedar-flats-lanterns": ("I", "Split", "Ace", "Wing", "Full House", "Doubles Tight"),
}
"""Sets with two backs, a tight end or a wing: for runs."""
_MOTIONS = {
    "saltmarsh-herons": ("Waggle", "Join", "Weak Waggle", "Orbit"),
    "cedar-flats-lanterns": ("Slide", "Jet", "Orbit"),
}
_ROLES = (
    ("lone", "weak #1"),
    ("near", "weak #2 or nobody"),
    ("wide", "strong #1"),
    ("slot", "strong #2"),
    ("third", "strong #3 or nobody"),
    ("fourth", "strong #4 or nobody"),
    ("help", "back or nobody"),
)
_ROUTES = (
    "go", "fade", "slant 4", "curl 12", "cross 6", "dig 12", "seam", "out 10", "hitch 6",
    "post 12", "corner 12", "comeback 14", "hook 6", "flat 4", "quick out 5",
)  # fmt: skip
_BACKS = ("runs swing weak", "runs check 4", "blocks inside out", "blocks edge")
_WHEN = ("when 2x2", "when 3 or more strong", "when off", "when zone", "when press")
_SAYS = ("Eyes inside.", "Win outside now.", "Be seen.", "Get your depth first.", "Feet on M.")

Draw = random.Random


def concept_text(draw: Draw, book: str, guard: str) -> str:
    """A pass, its tags and its dress; ``guard`` is its protection. One tag in four shows the run
    of `run_text`, as a play-action or a run-pass option."""
    lines = ["concept Made"]
    tagged = []
    for role, rule in _ROLES:
        lines += [f"    {role} is {rule}", f"    {role} {_does(draw, role)}"]
        if role != "help" and draw.random() < 0.35:
            lines.append(f"    {role} {_does(draw, role)} {draw.choice(_WHEN)}")
        lines += _says(draw, role)
        if draw.random() < 0.3:
            tagged.append(role)
    feet = draw.choice(("quick, hitch", "3, hitch, reset", "5, hitch, reset"))
    lines += [f"    feet {feet}", f"    read slot on {feet.split(', ')[0]} > lone on hitch"]
    lines += [f"    protect {guard}"] if guard else []
    tags = []
    for tag in ("Nod", "Swap")[: draw.randint(0, 2)]:
        role = draw.choice(tagged or ["slot"])
        tags.append(tag)
        lines += ["", f"tag {tag} for Made", f"    {role} {_does(draw, role)}"]
        lines += ["    feet quick, hitch, reset"] if draw.random() < 0.3 else []
        lines += _says(draw, role, 0.2)
    if draw.random() < 0.25:
        tags.append("Show")
        lines += ["", "tag Show for Made", "    join run Hit", "    help is nobody"]
        if draw.random() < 0.5:
            lines += ["    feet fake, 3, reset", "    read slot on 3 > lone on reset"]
            lines += ['    carrier says "Elbow up."']
        else:
            lines += ["    feet catch", "    read lone on catch", "    key unblocked man, backside"]
            lines += ["    give if he drops", "    throw lone if he fits the run"]
    return "\n".join((*lines, "", *_dress(draw, book, "Made", _SETS[book], tags))) + "\n"


def _does(draw: Draw, role: str) -> str:
    return draw.choice(_BACKS) if role == "help" else f"runs {draw.choice(_ROUTES)}"


def _says(draw: Draw, who: str, often: float = 0.3) -> list[str]:
    return [f'    {who} says "{draw.choice(_SAYS)}"'] if draw.random() < often else []


def _dress(
    draw: Draw, book: str, name: str, sets: Sequence[str], tags: Sequence[str]
) -> Iterator[str]:
    yield f"dress {name}"
    yield from (f"    in {one}" for one in draw.sample(sets, draw.randint(1, 2)))
    if draw.random() < 0.6:
        yield f"    motion {draw.choice(_MOTIONS[book])}, none"
    yield "    with plain"
    yield from (f"    with {tag}" for tag in tags)
    yield f"    to {draw.choice(('right', 'right, left'))}"


_AIMS = (
    "playside A", "playside B", "playside C", "playside tackle", "outside the end", "backside A",
    "backside A then playside B", "playside end",
)  # fmt: skip
_TOWARD = ("call", "strong", "weak", "away from back", "tight end")
_LINE = {
    "playside end": ("on or double with tackle then linebacker", "reach or climb or arc",
                     "down or double with tackle or climb to overhang then far linebacker",
                     "out or on"),
    "playside tackle": ("on or double with guard then near linebacker", "reach or climb",
                        "down or double with guard or on then far linebacker",
                        "climb to near linebacker or out"),
    "playside guard": ("on or double with centre then near linebacker", "reach or climb",
                       "down or on or double with tackle then far linebacker",
                       "pull around the end", "double with centre or down or climb"),
    "centre": ("on or double with backside guard then linebacker", "reach or climb", "back or on",
               "back or double with playside guard or on"),
    "backside guard": ("on or double with centre then far linebacker", "scoop",
                       "wrap to near linebacker", "kick end man on line",
                       "trap first man past centre"),
    "backside tackle": ("on or double with guard or hinge", "scoop", "hinge", "cut off or climb",
                        "wrap to near linebacker"),
    "backside end": ("on or hinge", "cut off or scoop", "hinge", "climb"),
}  # fmt: skip
_LEADS = (
    "blocks lead", "blocks kick end man on line", "blocks lead on near linebacker",
    "blocks lead on overhang", "blocks sift", "runs swing playside",
)  # fmt: skip
_WIDE = ("blocks stalk", "blocks crack or stalk", "runs go")


def run_text(draw: Draw, book: str) -> str:
    """A run, its tags (a read, a throw off a key, a back's fake) and its dress."""
    back, sneak = draw.random(), draw.random() < 0.1
    lines = ["run Hit", f"    toward {draw.choice(_TOWARD)}"]
    lines.append(f"    carrier is {'quarterback' if sneak else 'back'}")
    lines.append(f"    carrier aims {'playside A' if sneak else draw.choice(_AIMS)}")
    if sneak:
        lines += ["    fake is back or nobody", f"    fake aims {draw.choice(_AIMS)}"]
    lines += _says(draw, "carrier")
    lines += (
        ["    lead is fullback or nobody", f"    lead {draw.choice(_LEADS)}"] if back < 0.8 else []
    )
    for place, rules in _LINE.items():
        rule = draw.choice([r for r in rules if not r.startswith("pull ")])
        lines.append(f"    {place} blocks {rule}")
        lines += _says(draw, place, 0.1)
    for men, side in (("outside, second, third, fourth", "playside"),
                      ("far, far second, far third", "backside")):  # fmt: skip
        lines += [f"    {men} is {side} outside or nobody", f"    {men} {draw.choice(_WIDE)}"]
        lines += _says(draw, men.split(", ")[0])
    lines += [] if sneak else [f"    feet {draw.choice(('fake', 'fake, boot'))}"]
    tags = []
    if not sneak and draw.random() < 0.5:
        tags.append("Read")
        lines += ["", "tag Read for Hit", "    backside tackle blocks climb to far linebacker",
                  "    key backside end man on line", "    give if he stays",
                  "    pull if he chases the back"]  # fmt: skip
    if not sneak and draw.random() < 0.3:
        tags.append("Pop")
        lines += ["", "tag Pop for Hit", "    far runs slant 4", "    feet catch",
                  "    key unblocked man, backside", "    give if he stays",
                  "    throw far if he fits the run"]  # fmt: skip
    sets = (*_SETS[book], *_HEAVY[book])
    return "\n".join((*lines, "", *_dress(draw, book, "Hit", sets, tags))) + "\n"


def protection_text(draw: Draw) -> str:
    """A protection of the playbook's own."""
    rules = draw.choice((
        ("line blocks man",),
        ("line blocks slide",),
        ("centre, playside guard, playside tackle blocks slide",
         "backside guard, backside tackle blocks man"),
        ("line blocks big on big", "point middle linebacker"),
    ))  # fmt: skip
    lines = [
        "protection Wall",
        f"    toward {draw.choice(('weak', 'call', 'away from back or weak'))}",
    ]
    lines += [f"    {rule}" for rule in rules]
    if draw.random() < 0.7:
        lines += ["    helper is back or nobody"]
        lines += [
            f"    helper blocks {draw.choice(('scan', 'backside edge', 'check then release'))}"
        ]
        lines += _says(draw, "helper")
    lines += ["    hot slot"] if draw.random() < 0.5 else []
    return "\n".join(lines) + "\n"


def screen_text(draw: Draw, book: str) -> str:
    """A screen to the back or to the outside, blocked for on the field."""
    slow = draw.random() < 0.5
    lines = ["concept Slip"]
    if slow:
        lines += ["    screen is weak back or back", "    screen runs slow screen weak"]
    else:
        lines += ["    screen is strong #1", "    screen runs tunnel to 5 inside numbers"]
    lines += ["    kick is strong #2", f"    kick {'runs seam' if slow else 'blocks stalk'}"]
    lines += ["    wall is strong #3 or nobody", "    wall blocks stalk"]
    lines += [
        "    crack is weak #2 or nobody",
        f"    crack {draw.choice(('blocks crack', 'runs flat 4'))}",
    ]
    lines += ["    lone is weak #1", f"    lone runs {draw.choice(('go', 'slant 4'))}"]
    lines += [f"    feet {'5, reset' if slow else 'catch'}"]
    lines += [f"    read screen on {'reset' if slow else 'catch'}", "    protect screen"]
    return "\n".join((*lines, "", *_dress(draw, book, "Slip", _SETS[book], ()))) + "\n"
