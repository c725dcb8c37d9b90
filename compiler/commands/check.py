"""`stemline check`: everything that is wrong with a playbook."""

from __future__ import annotations

from pathlib import Path

import click

from stemline.commands.options import FOLDER, NO_CACHE


@click.command()
@FOLDER
@click.option("--timing", is_flag=True, help="Show the quarterback's clock of every pass.")
@click.option("--pictures", is_flag=True, help="Draw every call and list the crowded ones.")
@click.option(
    "--only",
    default="",
    help="Check the calls of this concept or family alone, and show their clock, or pictures.",
)
@NO_CACHE
def check(folder: Path, timing: bool, pictures: bool, only: str, no_cache: bool) -> None:
    """Read a playbook and say everything that is wrong with it."""
    from dataclasses import replace

    from stemline.commands.closing_lines import answers, summary
    from stemline.commands.opening import leave, narrowed, opened, print_found, theme_of
    from stemline.commands.progress import progress

    texts, compiled = opened(folder)
    themed = theme_of(folder, "", compiled)
    texts = replace(texts, sources=(*texts.sources, *themed.sources))
    season, wrong = compiled.proved(only)
    found = (*texts.found, *wrong, *themed.diagnostics)
    if not only and not any(d.is_error for d in found):
        found += compiled.pressed(compiled.weeks)
    if only and season is not None:
        season = narrowed(season, only)
    if (timing or (only and not pictures)) and season is not None:
        from stemline.results import timing_lines

        for line in timing_lines(compiled, season):
            click.echo(line)
    print_found(found, texts, compiled.lowered)
    if season is not None and not any(d.is_error for d in found):
        for line in answers(folder, compiled, season, keep=not no_cache):
            click.echo(line)
    click.echo(summary(folder, compiled, len(compiled.named(only)), found))
    if pictures and season is not None and themed.theme is not None:
        from stemline.results import Refused, crowded_lines

        try:
            with progress() as tell:
                lines = list(crowded_lines(compiled, season, themed.theme, tell))
        except Refused as why:
            click.echo(str(why), err=True)
            raise SystemExit(1) from None
        click.echo("\n".join(lines))
    leave(found)
