"""`stemline history`: a definition through the revisions of its text."""

from __future__ import annotations

from pathlib import Path

import click

from stemline.commands.options import FOLDER


@click.command()
@FOLDER
@click.argument("name")
@click.option("--lines", is_flag=True, help="Since when each of its lines stands.")
@click.option("--who", is_flag=True, help="And who wrote it so.")
def history(folder: Path, name: str, lines: bool, who: bool) -> None:
    """Every revision of FOLDER that changed what is called NAME, and what it changed."""
    from stemline.commands.both_sides import print_lines
    from stemline.compare.saying import ToldLine
    from stemline.compare.through_time import Revision, standing, turns
    from stemline.compare.told import standing_lines, turn_lines
    from stemline.diagnostics.nearest import nearest
    from stemline.outside.project import earlier_texts
    from stemline.syntax.parser import parse

    kept = earlier_texts(folder)
    if not kept:
        click.echo(f"{folder} is under no version control, or has no revision yet", err=True)
        raise SystemExit(2)
    trees = {source: parse(source)[0] for _, sources in kept for source in sources}
    revisions = [
        Revision(commit.name, commit.day, commit.who, tuple(trees[source] for source in sources))
        for commit, sources in kept
    ]
    told: list[ToldLine]
    if lines:
        told = list(standing_lines(standing(revisions, name), who))
    else:
        told = list(turn_lines(turns(revisions, name), who))
    if not told:
        names = {block.name.text for tree in trees.values() for block in tree.blocks}
        near = nearest(name, names)
        hint = f"; nearest: {near[0]}" if near else ""
        click.echo(f"nothing was ever called {name}{hint}", err=True)
        raise SystemExit(2)
    print_lines(told)
