"""The samples of the page of the notation, each made whole so that it can be compiled and drawn.

A sample shows what it is about. The rest is the playbook of the page's first ten minutes, whose
fences are marked ``base``: a block of the sample takes the place of what has its name there.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cached_property

from stemline.source import Source
from stemline.syntax.parser import parse
from stemline.syntax.tree import Block

_FENCE = re.compile(r"^```play *(.*)\n((?:.*\n)*?)```$", re.MULTILINE)
_BLOCK = re.compile(r"^(?=\S)", re.MULTILINE)


@dataclass(frozen=True)
class PageSample:
    """A fenced text, the word behind its fence and the line of the page it begins on."""

    word: str
    text: str
    line: int

    @cached_property
    def blocks(self) -> tuple[Block, ...]:
        document, _ = parse(Source("sample.play", self.text))
        return document.blocks


def samples_of(page: str) -> tuple[PageSample, ...]:
    """Every fence of the notation on ``page``, in its order."""
    return tuple(
        PageSample(found[1], found[2], page[: found.start()].count("\n") + 1)
        for found in _FENCE.finditer(page)
    )


def base_of(samples: tuple[PageSample, ...]) -> PageSample:
    """The playbook of the first ten minutes, which the page writes in steps."""
    parts = [sample for sample in samples if sample.word == "base"]
    return PageSample("base", "\n".join(part.text for part in parts), parts[0].line)


def completed(sample: PageSample, base: PageSample) -> list[str]:
    """A sample with the blocks of ``base`` that it does not hold, and what it needs to be called.

    A concept without a dress-up is dressed with its tags, so that each is laid over it and proved;
    a route is run by somebody, and formations and motions stand before a concept that anybody can
    run. A playbook block takes the place of the base's whatever its name.
    """
    blocks = sample.blocks
    mine = {key_of_block(block) for block in blocks}
    plays = [block for block in blocks if block.kind in ("concept", "run")]
    tagged: dict[str, list[str]] = {block.name.text.casefold(): [] for block in plays}
    for block in blocks:
        for owner in tagged_by(block):
            tagged.setdefault(owner, []).append(block.name.text)
    bare = [owner for owner in tagged if ("dress", owner) not in mine]
    mine |= {("dress", owner) for owner in bare}
    texts = [sample.text]
    if sample != base:
        led = any(block.kind == "playbook" for block in blocks)
        texts += [
            text
            for block, text in zip(base.blocks, _cut(base.text), strict=True)
            if key_of_block(block) not in mine and not (led and block.kind == "playbook")
        ]
        for owner in bare:
            lines = ["in Three Two", "to right, left"]
            lines += [f"with {tag}" for tag in ("plain", *tagged[owner])]
            texts.append("\n    ".join([f"dress {owner}", *lines]) + "\n")
    names = {kind: [b.name.text for b in blocks if b.kind == kind] for kind in _RUN_BY_ANYBODY}
    for name in names["route"]:
        texts.append(f"concept Test {name}\n    a is strong #1\n    a runs {name}\n")
        texts.append(f"dress Test {name}\n    in Three Two\n")
    if sample != base and (names["motion"] or names["formation"]):
        lines = [f"in {', '.join(names['formation'])}"] if names["formation"] else []
        lines += [f"in Three Two motion {', '.join(names['motion'])}"] if names["motion"] else []
        texts.append("concept Anything\n    a is strong #1\n    a runs go\n")
        texts.append("\n    ".join(["dress Anything", *lines]) + "\n")
    return texts


_RUN_BY_ANYBODY = ("route", "motion", "formation")


def key_of_block(block: Block) -> tuple[str, str]:
    return block.kind, block.name.text.casefold()


def tagged_by(block: Block) -> list[str]:
    """The concepts that a tag is for; of a tag for any pass or run, the base's. None for another
    block."""
    owner = block.join("for") if block.kind == "tag" else None
    if owner is None:
        return []
    said = owner.text.casefold()
    if said.startswith("any run"):
        return ["zone"]
    return ["crossers" if said.startswith("any ") else said]


def _cut(text: str) -> list[str]:
    """A text's blocks, each as text."""
    return [part for part in _BLOCK.split(text) if part.strip()]
