"""What the commands that compare have in common: both sides read, lines printed."""

from __future__ import annotations

import sys
from collections.abc import Iterable
from pathlib import Path
from typing import NamedTuple

import click

from stemline.commands.earlier import earlier_files
from stemline.compare.aloud import ToldLine
from stemline.compare.asked_names import unknown_name
from stemline.compare.comparing import compared
from stemline.compare.comparison import Comparison
from stemline.compare.following import with_consequences
from stemline.diagnostics.in_words import how_many
from stemline.diagnostics.plain import plain
from stemline.diagnostics.render import render
from stemline.outside.cache import Cache, place
from stemline.outside.project import Files
from stemline.outside.store import Store
from stemline.session import Session, no_collecting
from stemline.source import Source

_STYLES = {
    "head": {"bold": True},
    "new": {"fg": "green"},
    "gone": {"fg": "red"},
    "now": {"fg": "yellow"},
    "note": {"dim": True},
}
_PAGE = 40
"""Lines from which a terminal is given a pager, as git does."""


class BothFiles(NamedTuple):
    """The texts of both sides, and the playbook's folder."""

    home: Path
    old: Files
    new: Files

    @property
    def are_whole(self) -> bool:
        """Whether each side has texts, and each of its files could be read as one."""
        sides = (self.old, self.new)
        return all(side.sources and not any(d.is_error for d in side.found) for side in sides)


def both_files(old: str, new: str, folder: Path | None) -> BothFiles:
    """What ``old`` and ``new`` mean: folders, else revisions of ``folder``, else of the side that
    is a folder, else of where we stand."""
    home = folder or next((Path(s) for s in (new, old) if Path(s).is_dir()), Path())
    return BothFiles(home, earlier_files(home, old, "OLD"), earlier_files(home, new, "NEW"))


def both_sides(
    old: str,
    new: str,
    files: BothFiles,
    store: Store,
    *,
    only: str = "",
    man: str = "",
    follows: bool = True,
    cached: bool = True,
) -> tuple[Session, Comparison]:
    """The new side and the comparison of both; the reasons where one cannot be read, or neither
    has what ``only`` or ``man`` asks for.

    ``follows`` tells that what follows is wanted too, which costs most; ``cached`` that it may be
    known from the last time. Proofs are taken from ``store`` and kept in it.
    """
    first = _session(files.old, old, "OLD", store)
    sides = (first, _session(files.new, new, "NEW", store, first))
    with no_collecting():
        if wrong := unknown_name(sides, only, man):
            click.echo(wrong, err=True)
            raise SystemExit(2)
        found = compared(sides[0], sides[1], (old, new))
        if follows:
            cache = Cache(files.home, place() if cached else None)
            found = with_consequences(found, sides[0], sides[1], cache, store)
        return sides[1], found


def _session(
    files: Files, said: str, place: str, store: Store, beside: Session | None = None
) -> Session:
    made = Session(files.sources, said, store=store, beside=beside)
    session = made if files.sources else None
    found = (*files.found, *(session.definitions if session is not None else ()))
    wrong = [d for d in found if d.is_error]
    if wrong or session is None or session.book is None:
        click.echo(
            render(wrong or found, {**files.by_name, place: Source(place, said)}),
            nl=False,
            err=True,
        )
        raise SystemExit(2)
    return session


def book_file(
    file: Path, found: Comparison, home: Path, session: Session, theme: str, paper: str
) -> None:
    """The comparison book, in the theme asked for, else that of the new side's playbook."""
    from stemline.commands.opening import theme_for, writing
    from stemline.compare.on_paper import on_paper
    from stemline.outside.file import write_file
    from stemline.outside.project import read_files, revision
    from stemline.outside.workroom import workroom
    from stemline.printing.comparison_book import comparison_book

    look = theme_for(home, theme, session, read_files(home))
    assert session.book is not None, "the side was read"
    rev, date = revision(home)
    pages, drawn = on_paper(found)
    footer = " · ".join(filter(None, (pages.title, rev)))
    with writing():
        with workroom():
            level = session.book.settings.level
            data = comparison_book(pages, drawn, look, level, paper, footer, date)
        write_file(file, data)
    click.echo(f"{plain(str(file))}: {how_many(len(drawn), 'change')} drawn or told")


def print_lines(lines: Iterable[ToldLine], *, paged: bool = True) -> None:
    """The lines, in colour where the terminal has it; the signs say the same without. Only what is
    ``paged`` is given to a pager."""
    text = [click.style(line.text, **_STYLES.get(line.kind, {})) for line in lines]  # type: ignore[arg-type]
    if paged and len(text) > _PAGE and sys.stdout.isatty():
        click.echo_via_pager("\n".join(text) + "\n")
    else:
        click.echo("\n".join(text))
