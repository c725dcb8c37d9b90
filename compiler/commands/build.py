"""`stemline build`: the printed book and every call's picture."""

from __future__ import annotations

from pathlib import Path

import click

from stemline.commands.options import FOLDER, THEME
from stemline.diagnostics.catalogue.output import E958


@click.command()
@FOLDER
@click.option("--out", type=click.Path(path_type=Path), help="Where to put it: FOLDER/build.")
@click.option("--only", default="", help="Build only this concept or family.")
@click.option("--paper", type=click.Choice(["letter", "a4"]), default="letter", show_default=True)
@THEME
def build(folder: Path, out: Path | None, only: str, paper: str, theme: str) -> None:
    """Build the printed book and every call's picture.

    The output takes its place only when it is whole: a failed build leaves the last one as it was.
    """
    from stemline.commands.opening import (
        leave,
        narrowed,
        opened,
        print_found,
        real,
        refuse_led_out,
        theme_for,
        writing,
    )
    from stemline.commands.progress import progress
    from stemline.diagnostics.in_words import how_many
    from stemline.diagnostics.plain import plain
    from stemline.outside import folder as output_folder
    from stemline.outside.file_names import file_name
    from stemline.outside.interrupts import Interrupts
    from stemline.outside.not_written import NotWritten
    from stemline.outside.project import revision
    from stemline.outside.workroom import workroom

    texts, compiled = opened(folder)
    found = (*texts.found, *compiled.diagnostics)
    print_found(found, texts, compiled.lowered)
    leave(found)
    season = compiled.season
    assert season is not None
    look = theme_for(folder, theme, compiled, texts)
    target = out or folder / "build"
    if only:
        season = narrowed(season, only)
        target = out or folder / "build" / f"only-{file_name(only.strip().casefold())}"
    from stemline.results import book_names, made_book

    rev, date = revision(folder)
    with writing():
        home = folder.resolve()
        if real(target) in (home, *home.parents):
            raise NotWritten(E958(), target)
        if out is None:
            refuse_led_out(folder, target)
        output_folder.refuse(target, book_names(season))
        with Interrupts() as interrupts:
            with workroom(), progress() as tell:
                files = made_book(compiled, season, rev, date, paper, look, tell)
            interrupts.heed()
            output_folder.replace(target, files)
            interrupts.heed()
    click.echo(f"{plain(str(target / 'book.pdf'))}: {how_many(len(season.plays), 'picture')}")
