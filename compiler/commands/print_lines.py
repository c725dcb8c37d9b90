"""Lines of a comparison or a history on a terminal."""

from __future__ import annotations

import sys
from collections.abc import Iterable

import click

from stemline.compare.aloud import ToldLine

_STYLES = {
    "head": {"bold": True},
    "new": {"fg": "green"},
    "gone": {"fg": "red"},
    "now": {"fg": "yellow"},
    "note": {"dim": True},
}
_PAGE = 40
"""Lines from which a terminal is given a pager, as git does."""


def print_lines(lines: Iterable[ToldLine], *, paged: bool = True) -> None:
    """The lines, in colour where the terminal has it; the signs say the same without. Only what is
    ``paged`` is given to a pager."""
    text = [click.style(line.text, **_STYLES.get(line.kind, {})) for line in lines]  # type: ignore[arg-type]
    if paged and len(text) > _PAGE and sys.stdout.isatty():
        click.echo_via_pager("\n".join(text) + "\n")
    else:
        click.echo("\n".join(text))
