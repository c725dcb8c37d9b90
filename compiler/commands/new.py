"""`stemline new`: a small playbook to start from."""

from __future__ import annotations

from pathlib import Path

import click

from stemline.commands.options import FOLDER


@click.command()
@FOLDER
def new(folder: Path) -> None:
    """Make a small playbook to start from, with comments that teach."""
    import shutil
    from importlib.resources import as_file, files

    from stemline.diagnostics.plain import plain

    if folder.exists() and (not folder.is_dir() or any(folder.iterdir())):
        raise click.UsageError(f"{folder} is not empty: choose a new folder")
    try:
        folder.mkdir(parents=True, exist_ok=True)
        with as_file(files("stemline.grammar").joinpath("starter")) as starter:
            for path in sorted(starter.glob("*.play")):
                shutil.copyfile(path, folder / path.name)
    except OSError as error:
        raise click.UsageError(f"cannot write {folder}: {error.strerror}") from error
    click.echo(f"{plain(str(folder))}: a playbook to start from. Next: stemline build {folder}")
