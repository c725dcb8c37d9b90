"""`stemline build`: the printed book and every call's picture."""

from __future__ import annotations

from pathlib import Path

import click

from stemline.commands.options import FOLDER, NO_CACHE, PAPER, THEME


@click.command()
@FOLDER
@click.option("--out", type=click.Path(path_type=Path), help="Where to put it: FOLDER/build.")
@click.option("--only", default="", help="Build only this concept or family.")
@PAPER
@THEME
@NO_CACHE
def build(
    folder: Path, out: Path | None, only: str, paper: str, theme: str, no_cache: bool
) -> None:
    """Build the printed book and every call's picture.

    The output takes its place only when it is whole: a failed build leaves the last one as it was.
    Where nothing has changed since the last one, nothing is done.
    """
    from stemline.commands.stamping import Stamping
    from stemline.outside.file_names import file_name

    target = out or folder / "build"
    if only and out is None:
        target = target / f"only-{file_name(only.strip().casefold())}"
    stamp = Stamping(folder, target, (only, paper, str(out)), theme, cached=not no_cache)
    if (told := stamp.unchanged()) is not None:
        (warnings, _), (line, _) = told.words
        click.echo(warnings, nl=False, err=True)
        click.echo(f"{line}, nothing changed")
        return
    from stemline.commands.opening import (
        kept_until_end,
        leave,
        narrowed,
        opened,
        own_place,
        print_found,
        put_in_place,
        theme_for,
        writing,
    )
    from stemline.commands.progress import progress
    from stemline.diagnostics.in_words import how_many
    from stemline.diagnostics.plain import plain
    from stemline.outside import folder as output_folder
    from stemline.outside.interrupts import Interrupts
    from stemline.outside.project import revision
    from stemline.outside.stamp import LastSaid
    from stemline.outside.workroom import workroom

    store = kept_until_end(not no_cache)
    texts, compiled = opened(folder, store)
    season, wrong = compiled.proved(only)
    found = (*texts.found, *wrong)
    said = print_found(found, texts, compiled.lowered)
    leave(found)
    assert season is not None
    look = theme_for(folder, theme, compiled, texts)
    if only:
        season = narrowed(season, only)
    from stemline.results import book_names, made_book

    rev, date = revision(folder)
    with writing():
        own_place(folder, target, chosen=out is not None)
        output_folder.refuse(target, book_names(season))
        with Interrupts() as interrupts:
            with workroom(), progress() as tell:
                files = made_book(compiled, season, rev, date, paper, look, tell, store)
            put_in_place(target, files, interrupts)
    line = f"{plain(str(target / 'book.pdf'))}: {how_many(len(season.plays), 'picture')}"
    click.echo(line)
    assert compiled.book is not None, "a season comes from a book"
    words = "".join(f"{each}\n" for each in said)
    last = LastSaid(((words, True), (line, False)))
    stamp.keep(texts, (rev, date), compiled.book.settings.theme, look, last)
