"""`stemline compare`: what is different between two playbooks, or one at two times."""

from __future__ import annotations

from pathlib import Path

import click

from stemline.commands.options import NO_CACHE, THEME


@click.command()
@click.argument("old")
@click.argument("new")
@click.option(
    "--in", "folder", type=click.Path(path_type=Path, exists=True, file_okay=False),
    help="The playbook's folder, where OLD or NEW is a revision, tag, branch or date of it.",
)  # fmt: skip
@click.option("--only", default="", metavar="NAME", help="Only this concept, formation or other.")
@click.option("--for", "man", default="", metavar="LETTER", help="Only what this man has to learn.")
@click.option("--stat", is_flag=True, help="Numbers alone: calls by family, with --for by concept.")
@click.option(
    "--book", "file", type=click.Path(path_type=Path, dir_okay=False), metavar="FILE.pdf",
    help="The comparison as a book: numbers, old and new over each other, a page for each man.",
)  # fmt: skip
@click.option("--paper", type=click.Choice(["letter", "a4"]), default="letter", show_default=True)
@THEME
@click.option("--json", "as_json", is_flag=True, help="Plain data, by the published schema.")
@NO_CACHE
def compare(
    old: str,
    new: str,
    folder: Path | None,
    only: str,
    man: str,
    stat: bool,
    file: Path | None,
    paper: str,
    theme: str,
    as_json: bool,
    no_cache: bool,
) -> None:
    """Say what is different between OLD and NEW: folders, or revisions of one.

    Exit codes as a diff tool's: 0 the same, 1 different, 2 trouble.
    """
    from stemline.commands.both_sides import book_file, both_sides, print_lines
    from stemline.commands.opening import kept_until_end, kind_of

    if file is not None:
        kind_of(file, (".pdf",))
    told_of = file is not None or as_json or not (stat or man)
    store = kept_until_end(not no_cache)
    home, session, found = both_sides(
        old, new, folder, store, only=only, man=man, follows=told_of, cached=not no_cache
    )
    if file is not None:
        book_file(file, found, home, session, theme, paper)
    elif as_json:
        from stemline.compare.as_data import as_text

        click.echo(as_text(found))
    else:
        from stemline.compare.told import stat as numbers
        from stemline.compare.told import told

        print_lines(numbers(found, only, man) if stat else told(found, only, man))
    raise SystemExit(0 if found.is_same else 1)
