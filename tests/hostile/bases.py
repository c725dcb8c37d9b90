"""Right texts to begin from: small playbooks, and parts of the bundled ones."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from random import Random

ROOT = Path(__file__).parent.parent.parent
BUNDLED = ("saltmarsh-herons", "cedar-flats-lanterns")
_BLOCK = re.compile(r"^(?=[^\s/])", re.MULTILINE)
_GROUND = ("playbook", "personnel")
"""Kinds of blocks without which no other means anything."""


@dataclass(frozen=True)
class Block:
    """A block's text, its lines and those of comments up to the next block."""

    text: str

    @property
    def kind(self) -> str:
        return self.text.split(maxsplit=1)[0]

    @property
    def name(self) -> str:
        header = self.text.split("\n", 1)[0].partition("//")[0]
        return re.split(r" extends | for ", header.partition(" ")[2])[0].strip()


def blocks_of(text: str) -> list[Block]:
    return [Block(part) for part in _BLOCK.split(text) if part.strip() and part[0] not in " \t\n/"]


@cache
def joined(folder: str) -> str:
    paths = sorted((ROOT / folder).glob("*.play"))
    return "\n".join(path.read_text("utf-8").rstrip() + "\n" for path in paths)


@cache
def small() -> tuple[str, ...]:
    """Whole playbooks of a few kilobytes."""
    return joined("grammar/starter/high-school"), joined("tests/corpus/base")


@cache
def mistakes() -> tuple[str, ...]:
    """Texts of the corpus: each a block or two with a mistake, to go with its base."""
    return tuple(p.read_text("utf-8") for p in sorted((ROOT / "tests/corpus").glob("*.play")))


@cache
def bundled(name: str) -> tuple[Block, ...]:
    return tuple(blocks_of(joined(f"playbooks/{name}")))


@cache
def words() -> tuple[str, ...]:
    """Every word of the bundled playbooks and of the starter."""
    texts = [
        joined("grammar/starter/high-school"),
        *(joined(f"playbooks/{name}") for name in BUNDLED),
    ]
    return tuple(sorted({word for text in texts for word in re.findall(r"[^\s,]+", text)}))


def part(rng: Random, dresses: int) -> str:
    """Some dress-ups of a bundled playbook with what they name, so that most of it compiles."""
    whole = bundled(rng.choice(BUNDLED))
    chosen = rng.sample([b for b in whole if b.kind == "dress"], dresses)
    called = "\n".join(b.text for b in chosen)
    names = {b.name for b in chosen}
    kept = []
    for block in whole:
        concept = re.search(r" for (.+)", block.text.split("\n")[0])
        wanted = (
            block.kind in _GROUND
            or block in chosen
            or (block.kind in ("concept", "run") and block.name in names)
            or (concept is not None and concept[1].strip() in names)
            or (block.kind in ("formation", "motion") and block.name in called)
            or (block.kind in ("route", "protection") and rng.random() < 0.5)
            or (block.kind == "look" and rng.random() < 0.1)
        )
        if wanted:
            kept.append(block.text)
    return "".join(kept)


def single(rng: Random) -> str:
    """One definition, with nothing that it needs."""
    return rng.choice(bundled(rng.choice(BUNDLED))).text


def base(rng: Random) -> str:
    """A text to spoil; most are small, since a book costs its calls."""
    sort = rng.random()
    if sort < 0.20:
        return rng.choice(small())
    if sort < 0.30:
        return small()[1] + rng.choice(mistakes())
    if sort < 0.70:
        return single(rng)
    if sort < 0.93:
        ground = "".join(b.text for b in bundled(BUNDLED[0]) if b.kind in _GROUND)
        return ground + "".join(single(rng) for _ in range(rng.randint(1, 4)))
    if sort < 0.999:
        return part(rng, rng.randint(1, 2))
    return part(rng, 12)
