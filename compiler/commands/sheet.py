"""`stemline sheet`: every diagram on a few pages."""

from __future__ import annotations

from pathlib import Path

import click

from stemline.commands.options import FOLDER, NO_CACHE, SIZES, THEME


@click.command()
@FOLDER
@click.option("-o", "--output", type=click.Path(path_type=Path), help="This PDF or SVG file.")
@click.option("--only", default="", help="Show only this concept or family.")
@click.option("--views", is_flag=True, help="Show runs, protections and looks against the others.")
@click.option(
    "--size", type=click.Choice(SIZES), default="small", show_default=True,
    help="Large is one picture a page, for a meeting room; quarter is two across, to hand out.",
)  # fmt: skip
@click.option(
    "--paper", type=click.Choice(["letter", "a4", "screen"]), default="letter", show_default=True
)
@THEME
@NO_CACHE
def sheet(
    folder: Path,
    output: Path | None,
    only: str,
    views: bool,
    size: str,
    paper: str,
    theme: str,
    no_cache: bool,
) -> None:
    """Put every diagram, each under its call, on a few pages.

    Where no file is named: FOLDER/build/sheet/contact-sheet.pdf.
    """
    from stemline.commands.opening import (
        kept,
        kind_of,
        leave,
        narrowed,
        opened,
        print_found,
        refuse_led_out,
        theme_for,
        writing,
    )
    from stemline.commands.progress import progress
    from stemline.diagnostics.in_words import how_many
    from stemline.diagnostics.plain import plain
    from stemline.outside import folder as output_folder
    from stemline.outside.file import write_file
    from stemline.outside.interrupts import Interrupts
    from stemline.outside.project import revision
    from stemline.outside.workroom import workroom
    from stemline.theme import SIZES as BY_WORD

    texts, compiled = opened(folder)
    season, unmade = compiled.pictured(only)
    found = (*texts.found, *compiled.definitions, *unmade)
    print_found([d for d in found if d.is_error], texts)
    leave(found)
    look = theme_for(folder, theme, compiled, texts)
    assert season is not None
    shelf = folder / "build" / "sheet"
    file = output or shelf / "contact-sheet.pdf"
    kind = kind_of(file, (".pdf", ".svg"))
    if only:
        season = narrowed(season, only)
    rev, date = revision(folder)
    from stemline.results import made_sheet

    with writing(), Interrupts() as interrupts:
        if output is None:
            refuse_led_out(folder, shelf)
            output_folder.refuse(shelf, (file.name,))
        with workroom(), progress() as tell, kept(not no_cache) as store:
            data, count = made_sheet(
                compiled, season, rev, date, paper, look, kind, tell, BY_WORD[size],
                views=views, store=store,
            )  # fmt: skip
        interrupts.heed()
        if output is None:
            output_folder.replace(shelf, {file.name: data})
        else:
            write_file(file, data)
    click.echo(f"{plain(str(file))}: {how_many(count, 'picture')}")
