"""`stemline week`: everything that is handed out for a game."""

from __future__ import annotations

from pathlib import Path

import click

from stemline.commands.options import FOLDER, THEME


@click.command()
@FOLDER
@click.argument("name")
@click.option(
    "--out", type=click.Path(path_type=Path), help="Where to put it: FOLDER/build/week-N."
)
@click.option(
    "--only", default="", metavar="PARTS",
    help="Make only these, by commas: sheet, bands, gameplan, scout, script, positions, "
    "quiz, counting, install, index, data. Papers made before are taken away: of an earlier "
    "plan, they could disagree.",
)  # fmt: skip
@click.option("--for", "men", default="", metavar="MEN",
              help="Whose own books: letters, positions, or linemen, receivers.")  # fmt: skip
@click.option("--paper", type=click.Choice(["letter", "a4"]), default="letter", show_default=True)
@click.option("--sheet", "sheet_paper", type=click.Choice(["letter", "legal", "a4"]),
              help="Paper of the call sheet, where it is another.")  # fmt: skip
@click.option("--sides", type=click.IntRange(1, 2), default=2, show_default=True,
              help="Sides of the call sheet.")  # fmt: skip
@click.option("--no-pages", is_flag=True, help="Leave out the pages of the book: quicker.")
@click.option(
    "--no-cache",
    is_flag=True,
    envvar="STEMLINE_NO_CACHE",
    help="Keep nothing on this machine for the next week, and use nothing of the last.",
)
@THEME
def week(
    folder: Path,
    name: str,
    out: Path | None,
    only: str,
    men: str,
    paper: str,
    sheet_paper: str | None,
    sides: int,
    no_pages: bool,
    no_cache: bool,
    theme: str,
) -> None:
    """Make the papers of the week NAME: its number, or its number and opponent.

    They take their place only when all are whole: an error leaves the last ones as they were.
    """
    from stemline.commands.opening import (
        kept_until_end,
        leave,
        opened,
        print_found,
        real,
        refuse_led_out,
        theme_for,
        writing,
    )
    from stemline.diagnostics.catalogue.output import E958
    from stemline.diagnostics.plain import plain
    from stemline.outside import folder as output_folder
    from stemline.outside.interrupts import Interrupts
    from stemline.outside.not_written import NotWritten
    from stemline.outside.project import revision
    from stemline.outside.workroom import workroom

    store = kept_until_end(not no_cache)
    texts, compiled = opened(folder, store)
    look = theme_for(folder, theme, compiled, texts)
    from stemline.printing.week_papers import PARTS
    from stemline.results import asked_men, made_week, parts_of, week_called

    parts = parts_of(only)
    if parts is None:
        raise click.UsageError(f"--only {only}: parts are {', '.join(PARTS)}")
    planned, wrong = week_called(compiled, name)
    found = (*texts.found, *compiled.definitions, *wrong)
    if planned is not None:
        found += planned.found
        found += compiled.pressed((planned,))
    print_found(found, texts, compiled.lowered)
    leave(found)
    assert planned is not None and planned.plan is not None
    asked, unknown = asked_men(planned.plan, men)
    if unknown:
        raise click.UsageError(f"--for {unknown}: nobody in this week's calls is called so")
    target = out or folder / "build" / f"week-{planned.plan.number}"
    rev, date = revision(folder)
    with writing():
        home = folder.resolve()
        if real(target) in (home, *home.parents):
            raise NotWritten(E958(), target)
        if out is None:
            refuse_led_out(folder, target)
        with Interrupts() as interrupts:
            with workroom():
                papers = made_week(
                    compiled, planned.plan, look, parts=parts, paper=paper,
                    sheet_paper=sheet_paper or paper, sides=sides, revision=rev, date=date,
                    folder=None if no_cache else folder, pages=not no_pages,
                    men=asked, store=store,
                )  # fmt: skip
            print_found(papers.found, texts, compiled.lowered)
            leave(tuple(papers.found))
            output_folder.refuse(target, papers.files)
            interrupts.heed()
            output_folder.replace(target, papers.files)
            interrupts.heed()
    click.echo(f"{plain(str(target))}: {'; '.join(papers.counts)}")
