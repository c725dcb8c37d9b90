"""`stemline compare`: what is different between two playbooks, or one at two times."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from stemline.commands.options import NO_CACHE, THEME

if TYPE_CHECKING:
    from stemline.compare.aloud import ToldLine
    from stemline.compare.comparison import Comparison


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
    from stemline.commands.print_lines import print_lines
    from stemline.commands.side_files import both_files
    from stemline.compare.kept_telling import KeptTelling
    from stemline.outside.cache import place
    from stemline.outside.store import Store

    if file is not None:
        from stemline.commands.opening import kind_of

        kind_of(file, (".pdf",))
    told_of = file is not None or as_json or not (stat or man)
    results = Store(place("results") if not no_cache else None)
    store = click.get_current_context().with_resource(results)
    files = both_files(old, new, folder)
    asked = (old, new, only, man, stat, as_json)
    kept = KeptTelling(store, (files.old.sources, files.new.sources), asked)
    telling = kept.held() if file is None and files.are_whole else None
    if telling is None:
        from stemline.commands.both_sides import book_file, both_sides

        session, found = both_sides(
            old, new, files, store, only=only, man=man, follows=told_of, cached=not no_cache
        )
        if file is not None:
            book_file(file, found, files.home, session, theme, paper)
            raise SystemExit(0 if found.is_same else 1)
        telling = found.is_same, _lines(found, only, man, stat=stat, as_json=as_json)
        if files.are_whole:
            kept.keep(telling)
    same, lines = telling
    print_lines(lines, paged=not as_json)
    raise SystemExit(0 if same else 1)


def _lines(
    found: Comparison, only: str, man: str, *, stat: bool, as_json: bool
) -> tuple[ToldLine, ...]:
    """What is printed: plain data as lines too."""
    from stemline.compare.aloud import ToldLine
    from stemline.compare.as_data import as_text
    from stemline.compare.told import stat as numbers
    from stemline.compare.told import told

    if as_json:
        return tuple(ToldLine("", line) for line in as_text(found).split("\n"))
    return tuple(numbers(found, only, man) if stat else told(found, only, man))
