"""`stemline format`: one canonical layout for the texts of a playbook."""

from __future__ import annotations

from pathlib import Path

import click


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
    cannot be read stays as it is.
    """
    from difflib import unified_diff

    from stemline.commands.opening import writing
    from stemline.outside.file import write_file
    from stemline.outside.texts import read_files, read_one
    from stemline.source import Source
    from stemline.syntax.formatting import formatted
    from stemline.syntax.parser import parse

    if paths == (Path("-"),):
        text = click.get_text_stream("stdin").read()
        click.echo(formatted(parse(Source("standard input", text))[0]), nl=False)
        return
    other = 0
    for path in paths:
        files = read_files(path) if path.is_dir() else read_one(path)
        if files.found:
            from stemline.diagnostics.render import render

            click.echo(render(files.found, files.by_name), nl=False, err=True)
            if not files.sources:
                raise SystemExit(2)
        for source in files.sources:
            text = formatted(parse(source)[0])
            if text == source.text:
                continue
            other += 1
            if diff:
                lines = unified_diff(
                    source.text.splitlines(True), text.splitlines(True), source.name, source.name
                )
                click.echo("".join(lines), nl=False)
            elif check:
                click.echo(f"{source.name}: another layout")
            else:
                with writing():
                    write_file(Path(source.name), text.encode())
                click.echo(f"{source.name}: laid out")
    if other and (check or diff):
        raise SystemExit(1)
