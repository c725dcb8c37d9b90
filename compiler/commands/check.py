"""`stemline check`: everything that is wrong with a playbook."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from stemline.commands.options import FOLDER, NO_CACHE

if TYPE_CHECKING:
    from stemline.diagnostics.diagnostic import Diagnostic
    from stemline.football.play import Season
    from stemline.outside.store import Store
    from stemline.session import Session
    from stemline.theme import Theme


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
    from stemline.commands.opening import kept_until_end, leave

    store = kept_until_end(not no_cache)
    leave(_checked(folder, store, timing, pictures, only, keep=not no_cache))


def _checked(
    folder: Path, store: Store, timing: bool, pictures: bool, only: str, *, keep: bool
) -> tuple[Diagnostic, ...]:
    """All that is wrong, said; with the clock or the crowded pictures where they are wanted."""
    from dataclasses import replace

    from stemline.commands.closing_lines import answers, older, summary
    from stemline.commands.opening import narrowed, opened, print_found, theme_of

    texts, compiled = opened(folder, store)
    themed = theme_of(folder, "", compiled)
    texts = replace(texts, sources=(*texts.sources, *themed.sources))
    found = (*texts.found, *compiled.checked(only), *themed.diagnostics)
    if not only and not any(d.is_error for d in found):
        found += compiled.pressed(compiled.weeks)
    # Plays are made for what shows them; that all is right is known without.
    season = compiled.proved(only)[0] if timing or pictures or only else None
    if only and season is not None:
        season = narrowed(season, only)
    if (timing or (only and not pictures)) and season is not None:
        from stemline.results import timing_lines

        for line in timing_lines(compiled, season):
            click.echo(line)
    print_found(found, texts, compiled.lowered)
    if compiled.book is not None and not any(d.is_error for d in found):
        for line in answers(folder, compiled, only, keep=keep):
            click.echo(line)
    for line in older(compiled):
        click.echo(line)
    click.echo(summary(folder, compiled, len(compiled.named(only)), found))
    if pictures and season is not None and themed.theme is not None:
        _say_crowded(compiled, season, themed.theme)
    return found


def _say_crowded(compiled: Session, season: Season, theme: Theme) -> None:
    from stemline.commands.progress import progress
    from stemline.results import Refused, crowded_lines

    try:
        with progress() as tell:
            lines = list(crowded_lines(compiled, season, theme, tell))
    except Refused as why:
        click.echo(str(why), err=True)
        raise SystemExit(1) from None
    click.echo("\n".join(lines))
