"""The warnings that a playbook lowers: `lower W650`."""

from __future__ import annotations

from collections.abc import Iterable

from stemline.source import Span
from stemline.syntax.tree import Fact, Mark, Phrase, items


def lowered_codes(facts: Iterable[Fact]) -> tuple[tuple[str, Span], ...]:
    """What the `lower` lines name, in their order and as it is written."""
    named = (item for fact in facts for item in items(fact.value, Mark.AND))
    return tuple((i.text if isinstance(i, Phrase) else "several things", i.span) for i in named)
