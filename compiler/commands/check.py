"""`stemline check`: everything that is wrong with a playbook."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from stemline.commands.options import FOLDER, NO_CACHE

if TYPE_CHECKING:
    from collections.abc import Iterable

    from stemline.commands.stamping import CheckStamping
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
    from stemline.commands.stamping import CheckStamping

    options = str(timing), str(pictures), only
    stamp = CheckStamping(folder, options, cached=not no_cache)
    if (last := stamp.unchanged()) is not None:
        for words, wrong in last.words:
            click.echo(words, err=wrong)
        raise SystemExit(int(last.failed))
    from stemline.commands.opening import kept_until_end, leave

    store = kept_until_end(not no_cache)
    leave(_checked(folder, store, stamp, timing, pictures, only, keep=not no_cache))


def _checked(
    folder: Path,
    store: Store,
    stamp: CheckStamping,
    timing: bool,
    pictures: bool,
    only: str,
    *,
    keep: bool,
) -> tuple[Diagnostic, ...]:
    """All that is wrong, said; with the clock or the crowded pictures where they are wanted."""
    from dataclasses import replace

    from stemline.commands.closing_lines import answers, older, summary
    from stemline.commands.opening import narrowed, opened, print_found, theme_of
    from stemline.outside.stamp import LastSaid

    read, compiled = opened(folder, store)
    themed = theme_of(folder, "", compiled)
    texts = replace(read, sources=(*read.sources, *themed.sources))
    said: list[tuple[str, bool]] = []

    def say(lines: Iterable[str]) -> None:
        for line in lines:
            click.echo(line)
            said.append((line, False))

    found = (*texts.found, *compiled.checked(only), *themed.diagnostics)
    failed = any(d.is_error for d in found)
    # Before the weeks, which ask the same of their own calls.
    unanswered: tuple[str, ...] = ()
    if compiled.book is not None and not failed:
        unanswered = answers(folder, compiled, only, keep=keep)
    if not only and not failed:
        found += compiled.pressed(compiled.weeks)
    # Plays are made for what shows them; that all is right is known without.
    season = compiled.proved(only)[0] if timing or pictures or only else None
    if only and season is not None:
        season = narrowed(season, only)
    if (timing or (only and not pictures)) and season is not None:
        from stemline.results import timing_lines

        say(timing_lines(compiled, season))
    said += [(words, True) for words in print_found(found, texts, compiled.lowered)]
    say(unanswered)
    say(older(compiled))
    say([summary(folder, compiled, len(compiled.named(only)), found)])
    if pictures and season is not None and themed.theme is not None:
        say(["\n".join(_crowded(compiled, season, themed.theme))])
    if compiled.book is not None and themed.theme is not None:
        last, theme = LastSaid(tuple(said), failed), compiled.book.settings.theme
        stamp.keep(read, stamp.PRINTED, theme, themed.theme, last)
    return found


def _crowded(compiled: Session, season: Season, theme: Theme) -> list[str]:
    from stemline.commands.progress import progress
    from stemline.results import Refused, crowded_lines

    try:
        with progress() as tell:
            return list(crowded_lines(compiled, season, theme, tell))
    except Refused as why:
        click.echo(str(why), err=True)
        raise SystemExit(1) from None
