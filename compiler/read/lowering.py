"""The warnings that a playbook lowers: `lower W650`."""

from __future__ import annotations

from collections.abc import Iterable

from stemline.diagnostics.catalogue import CATALOGUE
from stemline.diagnostics.diagnostic import Diagnostic, diagnose
from stemline.diagnostics.nearest import nearest
from stemline.syntax.tree import Fact, Mark, Phrase, items

_ERROR, _WARNING = "E", "W"


def lowered_codes(facts: Iterable[Fact], found: list[Diagnostic]) -> tuple[str, ...]:
    """The codes of the `lower` lines, in their order, each once; mistakes go into ``found``.

    A code is named, one by one: nothing lowers all of them, and nothing lowers an error.
    """
    warnings = sorted(code for code in CATALOGUE if code.startswith(_WARNING))
    codes: dict[str, None] = {}
    for fact in facts:
        for item in items(fact.value, Mark.AND):
            text = item.text if isinstance(item, Phrase) else "several things"
            code = text.upper()
            if code in warnings:
                codes[code] = None
            elif code in CATALOGUE:
                found.append(diagnose("E321", item.span, found=code))
            else:
                found.append(
                    diagnose(
                        "E320",
                        item.span,
                        nearest=nearest(code, warnings),
                        found=text,
                    )
                )
    return tuple(codes)
