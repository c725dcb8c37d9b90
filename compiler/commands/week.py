"""`stemline week`: everything that is handed out for a game."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from stemline.commands.options import FOLDER, NO_CACHE, PAPER, THEME

if TYPE_CHECKING:
    from stemline.outside.texts import Files
    from stemline.session import Session
    from stemline.week.week_values import Plan


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
@PAPER
@click.option("--sheet", "sheet_paper", type=click.Choice(["letter", "legal", "a4"]),
              help="Paper of the call sheet, where it is another.")  # fmt: skip
@click.option("--sides", type=click.IntRange(1, 2), default=2, show_default=True,
              help="Sides of the call sheet.")  # fmt: skip
@click.option("--no-pages", is_flag=True, help="Leave out the pages of the book: quicker.")
@NO_CACHE
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
        own_place,
        print_found,
        put_in_place,
        theme_for,
        writing,
    )
    from stemline.diagnostics.plain import plain
    from stemline.outside import folder as output_folder
    from stemline.outside.interrupts import Interrupts
    from stemline.outside.project import revision
    from stemline.outside.workroom import workroom

    store = kept_until_end(not no_cache)
    texts, compiled = opened(folder, store)
    look = theme_for(folder, theme, compiled, texts)
    from stemline.printing.week_papers import PARTS
    from stemline.results import asked_men, made_week, parts_of

    parts = parts_of(only)
    if parts is None:
        raise click.UsageError(f"--only {only}: parts are {', '.join(PARTS)}")
    plan = _plan(texts, compiled, name)
    asked, unknown = asked_men(plan, men)
    if unknown:
        raise click.UsageError(f"--for {unknown}: nobody in this week's calls is called so")
    target = out or folder / "build" / f"week-{plan.number}"
    rev, date = revision(folder)
    with writing():
        own_place(folder, target, chosen=out is not None)
        with Interrupts() as interrupts:
            with workroom():
                papers = made_week(
                    compiled, plan, look, parts=parts, paper=paper,
                    sheet_paper=sheet_paper or paper, sides=sides, revision=rev, date=date,
                    folder=None if no_cache else folder, pages=not no_pages,
                    men=asked, store=store,
                )  # fmt: skip
            print_found(papers.found, texts, compiled.lowered)
            leave(tuple(papers.found))
            output_folder.refuse(target, papers.files)
            put_in_place(target, papers.files, interrupts)
    click.echo(f"{plain(str(target))}: {'; '.join(papers.counts)}")


def _plan(texts: Files, compiled: Session, name: str) -> Plan:
    """The plan of a week, with all that is said of it told; what is wrong ends the command."""
    from stemline.commands.opening import leave, print_found
    from stemline.results import week_called

    planned, wrong = week_called(compiled, name)
    found = (*texts.found, *compiled.definitions, *wrong)
    if planned is not None:
        found += (*planned.found, *compiled.pressed((planned,)))
    print_found(found, texts, compiled.lowered)
    leave(found)
    assert planned is not None and planned.plan is not None
    return planned.plan
