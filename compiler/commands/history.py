"""`stemline history`: a definition through the revisions of its text."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import click

from stemline.commands.options import FOLDER, NO_CACHE, THEME

if TYPE_CHECKING:
    from stemline.outside.repository import Commit
    from stemline.source import Source


@click.command()
@FOLDER
@click.argument("name")
@click.option("--lines", is_flag=True, help="Since when each of its lines stands.")
@click.option("--who", is_flag=True, help="And who wrote it so.")
@click.option(
    "-o", "--output", type=click.Path(path_type=Path, dir_okay=False), metavar="FILE",
    help="A strip of pictures too, one for each revision that changed its plays: SVG, PDF or PNG.",
)  # fmt: skip
@THEME
@NO_CACHE
def history(
    folder: Path,
    name: str,
    lines: bool,
    who: bool,
    output: Path | None,
    theme: str,
    no_cache: bool,
) -> None:
    """Every revision of FOLDER that changed what is called NAME, and what it changed."""
    from stemline.commands.opening import kind_of
    from stemline.commands.print_lines import print_lines
    from stemline.compare.aloud import ToldLine
    from stemline.compare.through_time import Revision, standing, turns
    from stemline.compare.told import standing_lines, turn_lines
    from stemline.diagnostics.nearest import nearest
    from stemline.outside.project import earlier_texts
    from stemline.syntax.parser import parse

    kind = kind_of(output, (".svg", ".pdf", ".png")) if output is not None else ""
    kept = earlier_texts(folder)
    if not kept:
        click.echo(f"{folder}: is under no version control, or has no revision yet", err=True)
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
    if output is not None:
        _strip(folder, kept, name, (output, kind), theme, who=who, cached=not no_cache)


def _strip(
    folder: Path,
    revisions: Sequence[tuple[Commit, tuple[Source, ...]]],
    name: str,
    out: tuple[Path, str],
    theme: str,
    *,
    who: bool,
    cached: bool,
) -> None:
    """Write the strip of pictures as a file and its kind; told where there is none to draw."""
    from stemline.commands.opening import kept, theme_for, writing
    from stemline.compare.strip import DatedSession, strip_file, strip_turns
    from stemline.diagnostics.in_words import how_many
    from stemline.diagnostics.plain import plain
    from stemline.outside.file import write_file
    from stemline.outside.project import read_files
    from stemline.outside.workroom import workroom
    from stemline.printing.drawings import Drawings
    from stemline.session import Session, no_collecting

    with no_collecting():
        dated = [
            DatedSession(commit.day, commit.who, Session(sources, commit.name))
            for commit, sources in revisions
        ]
        turns = strip_turns(dated, name)
    if not turns:
        click.echo(f"no revision changed a play of {name}: nothing to draw", err=True)
        raise SystemExit(2)
    last = next(d.session for d in reversed(dated) if d.session.book is not None)
    look = theme_for(folder, theme, last, read_files(folder))
    with writing(), workroom(), kept(cached) as store:
        assert last.book is not None, "its texts are those that the theme was found for"
        drawings = Drawings(look, last.book.settings.level, store)
        data = strip_file(turns, name, drawings, look, out[1], who=who)
    write_file(out[0], data)
    click.echo(f"{plain(str(out[0]))}: {how_many(len(turns), 'picture')}")
