"""`stemline merge`: the merge driver for git. What is in one file and what is not one key alone."""

from __future__ import annotations

from pathlib import Path

import click


@click.command()
@click.argument("base", type=click.Path(path_type=Path, exists=True, dir_okay=False))
@click.argument("ours", type=click.Path(path_type=Path, exists=True, dir_okay=False))
@click.argument("theirs", type=click.Path(path_type=Path, exists=True, dir_okay=False))
@click.option("--marks", default=7, show_default=True, help="Signs in a conflict's marks.")
@click.option("--name", default="", help="The file's name, for messages.")
def merge(base: Path, ours: Path, theirs: Path, marks: int, name: str) -> None:
    """Join what THEIRS changed since BASE into the file OURS, line by line of the notation.

    Conflicts only where one line got two values. Exit code 0 where all is joined, 1 with conflicts
    in the file; 2, and OURS untouched, where a text cannot be read.
    """
    from stemline.commands.opening import writing
    from stemline.diagnostics.render import render
    from stemline.outside.file import write_file
    from stemline.outside.texts import read_one
    from stemline.syntax.joining import merge as merged
    from stemline.syntax.parser import parse

    trees = []
    for path in (base, ours, theirs):
        files = read_one(path)
        found = [d for d in files.found if d.code != "E105"]
        text = files.sources[0] if files.sources else None
        tree, mistakes = parse(text) if text is not None else (None, ())
        wrong = [d for d in (*found, *mistakes) if d.is_error]
        if tree is None or wrong:
            click.echo(render(wrong or found, files.by_name), nl=False, err=True)
            raise SystemExit(2)
        trees.append(tree)
    joined = merged(trees[0], trees[1], trees[2], marks)
    with writing():
        write_file(ours, joined.text.encode())
    for conflict in joined.conflicts:
        click.echo(f"{name or ours}: two values for {conflict}", err=True)
    raise SystemExit(1 if joined.conflicts else 0)
