"""Small playbooks made at random from sound pieces, the same ones each time.

A bundled book gives the men, formations, motions and looks; the concept, its tags and its dress
are drawn: who plays a role, what it runs, what another shape or a tag makes of it.
"""

from __future__ import annotations

import random
from collections.abc import Iterator

from gate.pictures import BUNDLED, PLAYBOOKS

from stemline.football.play import Season
from stemline.outside.project import read_files
from stemline.read.read_playbook import read_playbook
from stemline.resolve.season import all_calls, season
from stemline.resolve.sheets import with_views
from stemline.source import Source
from stemline.syntax.parser import parse
from stemline.syntax.tree import Document

_SHARED = ("formation", "motions")
_HEADS = {
    "saltmarsh-herons": "playbook Drawn\n    code canadian amateur\n    sections Made\n",
    "cedar-flats-lanterns": "playbook Drawn\n    code high school\n    sections Made\n",
}
_SETS = {
    "saltmarsh-herons": ("Three Two", "Quads", "Spread", "Bunch", "Stack", "Trey", "Pistol"),
    "cedar-flats-lanterns": ("Doubles", "Trips", "Trey", "Bunch", "Stack", "Pistol"),
}
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
_GUARDS = ("protect five", "protect six", "protect six slide", "protect five slide", "")
_SAYS = ("Eyes inside.", "Win outside now.", "Be seen.", "Get your depth first.")


def generated_seasons(number: int) -> Iterator[Season]:
    """``number`` playbooks with at least one call each, seed by seed."""
    shared = {name: _shared(name) for name in BUNDLED}
    for seed in range(number):
        name = BUNDLED[seed % 2]
        text = _HEADS[name] + "\n" + _concept(random.Random(seed), name)
        documents = [*shared[name], parse(Source("drawn.play", text))[0]]
        book, _ = read_playbook(documents, [], "drawn")
        assert book is not None, text
        calls, _ = all_calls(book)
        made, found = season(book, calls, lambda *_: ())
        assert made.plays, f"{text}\n{[(d.code, d.values) for d in found]}"
        yield with_views(book, calls, made) if seed % 10 == 0 else made


def _shared(name: str) -> list[Document]:
    """The book's formations, motions, looks and runs; of its first file the personnel alone."""
    documents = []
    for source in read_files(PLAYBOOKS / name).sources:
        if source.name.endswith("book.play"):
            men = source.text[source.text.index("personnel") :]
            documents.append(parse(Source("people.play", men))[0])
        elif source.name.rpartition("/")[2].startswith(_SHARED):
            documents.append(parse(source)[0])
    return documents


def _concept(draw: random.Random, book: str) -> str:
    lines = ["concept Made"]
    tagged = []
    for role, rule in _ROLES:
        lines.append(f"    {role} is {rule}")
        does = _does(draw, role)
        lines.append(f"    {role} {does}")
        if role != "help" and draw.random() < 0.35:
            lines.append(f"    {role} {_does(draw, role)} {draw.choice(_WHEN)}")
        if draw.random() < 0.3:
            lines.append(f'    {role} says "{draw.choice(_SAYS)}"')
        if draw.random() < 0.3:
            tagged.append(role)
    feet = draw.choice(("quick, hitch", "3, hitch, reset", "5, hitch, reset"))
    lines += [f"    feet {feet}", f"    read slot on {feet.split(', ')[0]} > lone on hitch"]
    lines.append(f"    {draw.choice(_GUARDS)}".rstrip())
    tags = []
    for tag in ("Nod", "Swap")[: draw.randint(0, 2)]:
        role = draw.choice(tagged or ["slot"])
        tags.append(tag)
        lines += ["", f"tag {tag} for Made", f"    {role} {_does(draw, role)}"]
        if draw.random() < 0.3:
            lines.append("    feet quick, hitch, reset")
        if draw.random() < 0.2:
            lines.append(f'    {role} says "{draw.choice(_SAYS)}"')
    return "\n".join((*lines, "", *_dress(draw, book, tags))) + "\n"


def _does(draw: random.Random, role: str) -> str:
    return draw.choice(_BACKS) if role == "help" else f"runs {draw.choice(_ROUTES)}"


def _dress(draw: random.Random, book: str, tags: list[str]) -> Iterator[str]:
    yield "dress Made"
    for name in draw.sample(_SETS[book], draw.randint(1, 3)):
        yield f"    in {name}"
    if draw.random() < 0.6:
        yield f"    motion {draw.choice(_MOTIONS[book])}, none"
    yield "    with plain"
    yield from (f"    with {tag}" for tag in tags)
    yield f"    to {draw.choice(('right', 'right, left'))}"
