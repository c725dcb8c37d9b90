"""What a check says after the diagnostics: passes without an answer to a look, and the count."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import Path

from stemline.analysis.answer_lines import answer_lines
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.diagnostics.in_words import how_many
from stemline.diagnostics.lowered import parted
from stemline.diagnostics.plain import plain
from stemline.outside.cache import Cache, place
from stemline.session import Session, no_collecting
from stemline.syntax.older_forms import older_forms


def answers(folder: Path, compiled: Session, only: str, *, keep: bool) -> tuple[str, ...]:
    """The passes of ``only`` that have no answer to a look, as lines; ``keep`` uses what the last
    check of this folder worked out, and keeps what this one does."""
    cache = Cache(folder, place() if keep else None)
    with no_collecting():
        return tuple(answer_lines(compiled.faced(compiled.read_calls(only), cache)))


def older(compiled: Session) -> Iterator[str]:
    """What is told of lines in an older form: the first, its newer form, and how many there are."""
    found = older_forms(tree for tree, _ in compiled.trees)
    if found:
        first, more = found[0], len(found) - 1
        others = f" (and {how_many(more, 'more line')} in an older form)" if more else ""
        where = f"{plain(first.span.source)}:{first.span.line}"
        yield f"{where}: note: `{plain(first.old)}` is written `{plain(first.new)}` now{others}"
        yield "  help: both are read; `stemline format` rewrites them, and no play changes"


def summary(folder: Path, compiled: Session, calls: int, found: Sequence[Diagnostic]) -> str:
    """The last line of a check: of how many ``calls``, and how much was ``found``."""
    printed, lowered = parted(found, compiled.lowered)
    errors = sum(d.is_error for d in printed)
    counts = (
        how_many(calls, "call"),
        how_many(errors, "error"),
        how_many(len(printed) - errors, "warning"),
        *((f"{len(lowered)} lowered",) if lowered else ()),
    )
    title = compiled.book.settings.name if compiled.book is not None else plain(str(folder))
    return f"{title}: {', '.join(counts)}"
