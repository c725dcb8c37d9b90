"""Both sides of a comparison, read and compared."""

from __future__ import annotations

from pathlib import Path

import click

from stemline.commands.side_files import BothFiles
from stemline.compare.asked_names import unknown_name
from stemline.compare.comparing import compared
from stemline.compare.comparison import Comparison
from stemline.compare.following import with_consequences
from stemline.compare.man_letters import as_lettered
from stemline.diagnostics.in_words import how_many
from stemline.diagnostics.plain import plain
from stemline.diagnostics.render import render
from stemline.outside.cache import Cache, place
from stemline.outside.project import Files
from stemline.outside.store import Store
from stemline.session import Session, no_collecting
from stemline.source import Source


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
        was, letters = as_lettered(*sides)
        sides = (was, sides[1])
        found = compared(was, sides[1], (old, new), letters)
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
