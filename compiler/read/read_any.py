"""Tags that are for many concepts at once: ``any pass``, ``any run but Draw and Trap``."""

from __future__ import annotations

from dataclasses import dataclass

from stemline.syntax.tree import Atom, Phrase

MANY = {"pass": "pass", "passes": "pass", "run": "run", "runs": "run", "call": "call",
        "calls": "call", "play": "call", "plays": "call"}  # fmt: skip
"""Kinds of play as they are said behind `all` and `every`, and the word behind `any`."""


@dataclass(frozen=True)
class AnyConcept:
    """``what`` is `pass`, `run`, `call` or a family, in lower case, or what was said for one with
    `all` or `every`; ``but`` are left out."""

    what: str
    but: tuple[Phrase, ...]


def read_any(owner: Phrase) -> AnyConcept | None:
    """What a header's `for` means where it begins with `any`; None where it names a concept."""
    words = [atom.word for atom in owner.atoms]
    also = words[0] in ("all", "every") and words[1:2] and words[1] in MANY
    if len(words) < 2 or not (words[0] == "any" or also):
        return None
    end = words.index("but") if "but" in words else len(words)
    named: list[list[Atom]] = [[]]
    for atom in owner.atoms[end + 1 :]:
        if atom.word == "and":
            named.append([])
        else:
            named[-1].append(atom)
    but = tuple(Phrase(tuple(atoms)) for atoms in named if atoms)
    return AnyConcept(" ".join(words[0 if also else 1 : end]), but)
