"""Warnings that a playbook lowers: counted in one line, never hidden."""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection, Iterable

from stemline.diagnostics.diagnostic import Diagnostic
from stemline.diagnostics.in_words import how_many


def parted(
    found: Iterable[Diagnostic], codes: Collection[str]
) -> tuple[tuple[Diagnostic, ...], tuple[Diagnostic, ...]]:
    """What is printed and what is only counted. An error is printed whatever the codes say."""
    once = tuple(dict.fromkeys(found))
    counted = tuple(d for d in once if d.code in codes and not d.is_error)
    return tuple(d for d in once if d.code not in codes or d.is_error), counted


def lowered_line(counted: Collection[Diagnostic]) -> str:
    """The line that stands for them: "3 warnings lowered: W650"; "" where there are none."""
    if not counted:
        return ""
    by_code = Counter(d.code for d in counted)
    several = len(by_code) > 1
    listed = ", ".join(f"{by_code[c]} {c}" if several else c for c in sorted(by_code))
    return f"{how_many(len(counted), 'warning')} lowered: {listed}"
