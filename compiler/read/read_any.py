"""Tags that are for many concepts at once: ``any pass``, ``any run but Draw and Trap``."""

from __future__ import annotations

from dataclasses import dataclass

from stemline.syntax.tree import Atom, Phrase


@dataclass(frozen=True)
class AnyConcept:
    """``what`` is `pass`, `run`, `call` or a family, in lower case; ``but`` are left out."""

    what: str
    but: tuple[Phrase, ...]


def read_any(owner: Phrase) -> AnyConcept | None:
    """What a header's `for` means where it begins with `any`; None where it names a concept."""
    words = [atom.word for atom in owner.atoms]
    if words[0] != "any" or len(words) < 2:
        return None
    end = words.index("but") if "but" in words else len(words)
    named: list[list[Atom]] = [[]]
    for atom in owner.atoms[end + 1 :]:
        if atom.word == "and":
            named.append([])
        else:
            named[-1].append(atom)
    but = tuple(Phrase(tuple(atoms)) for atoms in named if atoms)
    return AnyConcept(" ".join(words[1:end]), but)
