"""`stemline handbook`: the pages for coaches, with what each sample draws."""

from __future__ import annotations

from pathlib import Path

import click

from stemline.commands.options import NO_CACHE, PAPER


@click.command()
@click.option(
    "-o", "--output", type=click.Path(path_type=Path), default=Path("handbook.pdf"),
    show_default=True, help="This PDF or HTML file.",
)  # fmt: skip
@PAPER
@click.option("--theme", default="plain", show_default=True, help="A theme's name or folder.")
@NO_CACHE
def handbook(output: Path, paper: str, theme: str, no_cache: bool) -> None:
    """Print how a playbook is written, each sample with its picture beside it."""
    from stemline.commands.opening import kept, kind_of, print_found, writing
    from stemline.commands.progress import progress
    from stemline.diagnostics.in_words import how_many
    from stemline.diagnostics.plain import plain
    from stemline.handbook.making import made_handbook
    from stemline.outside.file import write_file
    from stemline.outside.interrupts import Interrupts
    from stemline.outside.texts import Files
    from stemline.outside.workroom import workroom
    from stemline.source import Source, Span
    from stemline.theme import theme_called

    kind = kind_of(output, (".pdf", ".html"))
    found = theme_called(theme, Span.over("--theme", theme), (), path=True)
    if found.theme is None:
        print_found(
            found.diagnostics, Files(Path(), (*found.sources, Source("--theme", theme)), ())
        )
        raise SystemExit(2)
    with writing(), Interrupts() as interrupts:
        with workroom(), progress() as tell, kept(not no_cache) as store:
            data, count = made_handbook(found.theme, kind, paper, "", tell, store)
        interrupts.heed()
        write_file(output, data)
    click.echo(f"{plain(str(output))}: {how_many(count, 'picture')}")
