"""Diagnostics as text for a terminal."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from stemline.diagnostics.diagnostic import Diagnostic
from stemline.diagnostics.in_words import either, how_many
from stemline.diagnostics.plain import plain, shortened
from stemline.source import Source, Span

_WIDEST = 100
"""Columns of source text shown; a longer line is cut around the marked text."""


MOST = 50
"""Messages printed at once: more than anybody mends before he checks again."""
_FIELD = 400
"""Characters of a name or list that a message repeats; the rest of a longer one is left out."""


def render(found: Iterable[Diagnostic], sources: Mapping[str, Source]) -> str:
    """The diagnostics in order of place, each with its text underlined; ends with a newline.

    Of more than `MOST` the first are printed, errors before warnings, and the others counted.
    """
    ordered = in_order(found)
    printed, others = ordered, ""
    if len(ordered) > MOST:
        first = sorted(ordered, key=lambda d: not d.is_error)
        chosen = set(first[:MOST])
        printed = [d for d in ordered if d in chosen]
        others = _counted(first[MOST:]) + "\n"
    return "".join(render_one(d, sources) + "\n" for d in printed) + others


def _counted(left: Sequence[Diagnostic]) -> str:
    """The line that stands for the messages that are not printed."""
    errors = sum(d.is_error for d in left)
    counts = [(errors, "error"), (len(left) - errors, "warning")]
    told = " and ".join(how_many(number, what) for number, what in counts if number)
    return f"and {told} more: mend what stands above, then check again"


def in_order(found: Iterable[Diagnostic]) -> list[Diagnostic]:
    """By place, then code; the same mistake found twice is said once."""
    return sorted(set(found), key=lambda d: (d.span, d.code, d.values))


def render_one(d: Diagnostic, sources: Mapping[str, Source]) -> str:
    wording = d.said.wording
    values = {key: shortened(plain(value), _FIELD) for key, value in d.values}
    level = "error" if d.is_error else "warning"
    lines = [f"{where(d.span)}: {level} {d.code}: {wording.message.format(**values)}"]
    lines += _excerpt(d.span, wording.label.format(**values), sources)
    for other in d.related:
        lines.append(f"  {where(other.span)}: {plain(other.label)}")
        lines += _excerpt(other.span, "", sources)
    if d.nearest:
        lines.append(f"  nearest: {plain(either(d.nearest))}")
    if wording.help:
        lines.append(f"  help: {wording.help.format(**values)}")
    return "\n".join(lines) + "\n"


def where(span: Span) -> str:
    name = plain(span.source)
    if not span.line:
        return name or "playbook"
    return f"{name}:{span.line}:{span.column}"


def _excerpt(span: Span, label: str, sources: Mapping[str, Source]) -> list[str]:
    source = sources.get(span.source)
    if source is None or not 0 < span.line <= len(source.lines):
        return []
    text = plain(source.lines[span.line - 1])
    if not text.strip():
        return []
    start, end = span.column - 1, max(span.end - 1, span.column)
    cut = max(0, start - _WIDEST // 2)
    shown = text[cut : cut + _WIDEST]
    lead, tail = ("..." if cut else ""), ("..." if cut + _WIDEST < len(text) else "")
    mark = "^" * max(1, min(end, cut + _WIDEST) - start)
    gutter = f"{span.line:>5} | "
    under = " " * (len(gutter) - 2) + "| " + " " * (len(lead) + start - cut) + mark
    return [gutter + lead + shown + tail, (under + " " + label).rstrip()]
