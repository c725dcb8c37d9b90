"""`stemline format`: one canonical layout for the texts of a playbook."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

import click

if TYPE_CHECKING:
    from stemline.source import Source


@click.command("format")
@click.argument("paths", nargs=-1, required=True, type=click.Path(path_type=Path, allow_dash=True))
@click.option(
    "--check", is_flag=True, help="Write nothing; exit 1 where a text has another layout."
)
@click.option("--diff", is_flag=True, help="Write nothing; show what would be written.")
def format_texts(paths: tuple[Path, ...], check: bool, diff: bool) -> None:
    """Lay out PATHS, files or folders, in the one canonical way; `-` is standard input, for an
    editor.

    Comments stay where they belong and no line changes its place, so no play changes. A line that
    cannot be read stays as it is; of standard input that ends with 2, the text given back.
    """
    import sys
    from difflib import unified_diff

    from stemline.commands.opening import writing
    from stemline.outside.file import write_file
    from stemline.source import Source

    if paths == (Path("-"),):
        given = Source("standard input", sys.stdin.read())
        text, wrong = _laid_out(given)
        click.echo(text, nl=False)
        if wrong:
            raise SystemExit(2)
        return
    other = 0
    for source in _sources(paths):
        text, _ = _laid_out(source)
        if text == source.text:
            continue
        other += 1
        if diff:
            old, new = source.text.splitlines(True), text.splitlines(True)
            click.echo("".join(unified_diff(old, new, source.name, source.name)), nl=False)
        elif check:
            click.echo(f"{source.name}: another layout")
        else:
            with writing():
                write_file(Path(source.name), text.encode())
            click.echo(f"{source.name}: laid out")
    if other and (check or diff):
        raise SystemExit(1)


def _laid_out(source: Source) -> tuple[str, bool]:
    """The text in its layout, and whether some of it could not be read, which is told: it stays as
    it is."""
    from stemline.diagnostics.render import render
    from stemline.syntax.formatting import formatted
    from stemline.syntax.parser import parse

    tree, found = parse(source)
    if wrong := [d for d in found if d.is_error]:
        click.echo(render(wrong, {source.name: source}), nl=False, err=True)
    return formatted(tree), bool(wrong)


def _sources(paths: tuple[Path, ...]) -> Iterator[Source]:
    """The texts of files and folders; what cannot be read is told, and ends the command where
    nothing can."""
    from stemline.diagnostics.render import render
    from stemline.outside.texts import read_files, read_one

    for path in paths:
        files = read_files(path) if path.is_dir() else read_one(path)
        if files.found:
            click.echo(render(files.found, files.by_name), nl=False, err=True)
            if not files.sources:
                raise SystemExit(2)
        yield from files.sources
