"""`stemline install-git`: a playbook's repository taught to compare, merge and check texts."""

from __future__ import annotations

from pathlib import Path

import click

from stemline.commands.options import FOLDER


@click.command("install-git")
@FOLDER
@click.option("--undo", is_flag=True, help="Take the settings away again.")
def install_git(folder: Path, undo: bool) -> None:
    """Let git show, merge and check the texts of FOLDER's repository as football.

    The settings are the repository's own: nothing in your texts, and nothing outside it, changes.
    """
    from stemline.outside.git_settings import NoRepository, install, remove

    try:
        lines = remove(folder) if undo else install(folder)
    except NoRepository:
        click.echo(f"{folder} is under no version control: run git init there first", err=True)
        raise SystemExit(2) from None
    for line in lines:
        click.echo(line)


@click.command(hidden=True)
@click.argument("file", type=click.Path(path_type=Path, exists=True, dir_okay=False))
def tell(file: Path) -> None:
    """A text as git shows its changes: each line with what it belongs to."""
    from stemline.compare.definitions import definitions
    from stemline.outside.texts import read_one
    from stemline.syntax.parser import parse

    for source in read_one(file).sources:
        tree, mistakes = parse(source)
        if any(d.is_error for d in mistakes):  # half a text would hide the other half
            click.echo(source.text, nl=False)
            continue
        for one in definitions([tree]).values():
            parent = f" extends {one.parent}" if one.parent else ""
            click.echo(f"{one.title}{parent}")
            for line in one.lines:
                click.echo(f"{one.title}: {line.text}")
