"""Diagnostics as text for a terminal."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from stemline.diagnostics.catalogue import CATALOGUE
from stemline.diagnostics.model import Diagnostic
from stemline.source import Source, Span

_WIDEST = 100
"""Columns of source text shown; a longer line is cut around the marked text."""


def render(found: Iterable[Diagnostic], sources: Mapping[str, Source]) -> str:
    """All diagnostics in order of place, each with its text underlined; ends with a newline."""
    return "".join(render_one(d, sources) + "\n" for d in in_order(found))


def in_order(found: Iterable[Diagnostic]) -> list[Diagnostic]:
    """By place, then code; the same mistake found twice is said once."""
    return sorted(set(found), key=lambda d: (d.span, d.code, d.values))


def render_one(d: Diagnostic, sources: Mapping[str, Source]) -> str:
    wording = CATALOGUE[d.code]
    values = dict(d.values)
    level = "error" if d.is_error else "warning"
    lines = [f"{where(d.span)}: {level} {d.code}: {wording.message.format(**values)}"]
    lines += _excerpt(d.span, wording.label.format(**values), sources)
    for other in d.related:
        lines.append(f"  {where(other.span)}: {other.label}")
        lines += _excerpt(other.span, "", sources)
    if d.nearest:
        lines.append(f"  nearest: {_either(d.nearest)}")
    if wording.help:
        lines.append(f"  help: {wording.help.format(**values)}")
    return "\n".join(lines) + "\n"


def where(span: Span) -> str:
    if not span.line:
        return span.source or "playbook"
    return f"{span.source}:{span.line}:{span.column}"


def _either(names: tuple[str, ...]) -> str:
    if len(names) == 1:
        return names[0]
    return ", ".join(names[:-1]) + " or " + names[-1]


def _excerpt(span: Span, label: str, sources: Mapping[str, Source]) -> list[str]:
    source = sources.get(span.source)
    if source is None or not 0 < span.line <= len(source.lines):
        return []
    text = source.lines[span.line - 1].replace("\t", " ")
    start, end = span.column - 1, max(span.end - 1, span.column)
    cut = max(0, start - _WIDEST // 2)
    shown = text[cut : cut + _WIDEST]
    lead, tail = ("..." if cut else ""), ("..." if cut + _WIDEST < len(text) else "")
    mark = "^" * max(1, min(end, cut + _WIDEST) - start)
    gutter = f"{span.line:>5} | "
    under = " " * (len(gutter) - 2) + "| " + " " * (len(lead) + start - cut) + mark
    return [gutter + lead + shown + tail, (under + " " + label).rstrip()]
