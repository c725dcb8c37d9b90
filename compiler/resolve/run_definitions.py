"""Blocking as the coach wrote it: rules for the line, for backs and for protections."""

from __future__ import annotations

from dataclasses import dataclass

from stemline.source import Span


@dataclass(frozen=True)
class Protection:
    """A protection block, read; ``broken`` where a line of it could not be."""

    name: str
    says: tuple[str, ...]
    span: Span
    broken: bool
