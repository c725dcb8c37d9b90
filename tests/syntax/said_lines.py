"""One line of a block as it is read."""

from __future__ import annotations

from stemline.source import Source
from stemline.syntax.parser import parse
from stemline.syntax.writing import written_fact


def read(kind: str, line: str) -> str:
    document, found = parse(Source("t.play", f"{kind} A\n    {line}\n"))
    assert not found, [(line, d.code) for d in found]
    return written_fact(document.blocks[0].facts[0])
