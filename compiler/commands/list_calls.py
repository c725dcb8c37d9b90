"""`stemline list`: the calls of a playbook. It makes no play."""

from __future__ import annotations

from pathlib import Path

import click

from stemline.commands.options import FOLDER, NO_CACHE


@click.command("list")
@FOLDER
@click.option("--count", is_flag=True, help="Show how each formation's receivers are counted.")
@NO_CACHE
def list_calls(folder: Path, count: bool, no_cache: bool) -> None:
    """Print every call of a playbook, one a line."""
    from stemline.commands.opening import known, leave, opened, print_found

    texts, compiled = opened(folder, known(not no_cache))
    found = (*texts.found, *compiled.definitions)
    print_found([d for d in found if d.is_error], texts)
    if count and compiled.book is not None:
        from stemline.resolve.counts import count_lines

        for line in count_lines(compiled.book, compiled.calls):
            click.echo(line)
    else:
        for call in compiled.listed():
            click.echo(call)
    leave(found)
