"""A look as the coach wrote it: sides are still "strong", places still rules."""

from __future__ import annotations

from dataclasses import dataclass

from stemline.source import Span


@dataclass(frozen=True)
class LookDef:
    """A look block, read; ``broken`` where a line of it could not be."""

    name: str
    says: tuple[str, ...]
    span: Span
    broken: bool
