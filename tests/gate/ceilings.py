"""How many faults a sample of the bundled playbooks' diagrams may have: a ratchet.

A number here only goes down. When drawing has become better, print the table anew with

    python -m tests.gate --ceilings

and put it in the place of the one below; a number that went up is not taken over but mended.
A kind that is not in a row has the ceiling 0.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping

from stemline.theme import Theme

from .faults import Kind
from .pictures import Sort, sample
from .table import Judged, judge

Row = tuple[str, Sort]

CALLS: dict[str, tuple[str, ...]] = {
    "saltmarsh-herons": (
        "Spread Right Smash",
        "Three Two Right Full Waggle Deep Over",
        "Quads Left Tuck Crossers Return",
        "Three Two Right Flood Boot",
        "Bunch Left Pylon",
        "Three Two Right Exit Choice",
        "Trey Left Throwback",
        "Ace Right Inside Zone",
        "Pro Left Power",
        "Pro Right Inside Veer",
        "Trey Right Counter",
        "Jumbo Right Power",
        "Three Two Right Outside Zone",
        "Three Two Right Slants Bubble",
    ),
    "cedar-flats-lanterns": (
        "Trips Close Left Crossers Return",
        "Trips Right Slot Option",
        "Full House Right Bootleg",
        "Trips Right Stick Nod",
        "Doubles Right Slow Screen",
        "Trips Close Right Post Wheel Follow",
        "Doubles Left Zone Keep",
        "Pistol Right Counter",
        "Full House Right Toss",
        "Trey Right Quarterback Power",
        "I Right Stretch",
        "I Right Sneak",
        "Full House Right Buck Sweep",
        "Wing Right Bootleg",
    ),
}
"""Passes, screens, motions, runs, options; to both sides; close and wide formations."""

PAGES = ("protection-1", "look-1", "look-7")
"""Pages whose diagrams are judged too: a protection, a zone and a man look."""

CEILINGS: dict[Row, dict[Kind, int]] = {
    ("saltmarsh-herons", Sort.LARGE): {
        Kind.THROUGH: 1,
    },
    ("saltmarsh-herons", Sort.OWN_SMALL): {
        Kind.THROUGH: 1,
    },
    ("saltmarsh-herons", Sort.CLOCK): {},
    ("saltmarsh-herons", Sort.SHEET): {},
    ("saltmarsh-herons", Sort.SHEET_SMALL): {},
    ("cedar-flats-lanterns", Sort.LARGE): {},
    ("cedar-flats-lanterns", Sort.OWN_SMALL): {
        Kind.THROUGH: 2,
        Kind.ALONG: 2,
    },
    ("cedar-flats-lanterns", Sort.CLOCK): {},
    ("cedar-flats-lanterns", Sort.SHEET): {
        Kind.THROUGH: 1,
    },
    ("cedar-flats-lanterns", Sort.SHEET_SMALL): {},
}


def judged_sample(theme: Theme) -> list[Judged]:
    """The sample's diagrams with their faults."""
    return [
        judge(picture, theme)
        for name, calls in CALLS.items()
        for picture in sample(name, calls, PAGES, theme)
    ]


def counts(judged: list[Judged]) -> dict[Row, Counter[Kind]]:
    """Faults by playbook and size, and by kind."""
    made: dict[Row, Counter[Kind]] = {}
    for each in judged:
        row = made.setdefault((each.picture.playbook, each.picture.sort), Counter())
        row.update(fault.kind for fault in each.faults)
    return made


def as_table(found: Mapping[Row, Mapping[Kind, int]]) -> str:
    """The counts as the lines of `CEILINGS`."""
    lines = []
    for (playbook, sort), row in found.items():
        kinds = "".join(f"        Kind.{k.name}: {row[k]},\n" for k in Kind if row.get(k))
        body = f"{{\n{kinds}    }}" if kinds else "{}"
        lines.append(f'    ("{playbook}", Sort.{sort.name}): {body},\n')
    return "".join(lines)
