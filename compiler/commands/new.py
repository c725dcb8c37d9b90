"""`stemline new`: a small playbook to start from, or a season from the last one."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from stemline.commands.options import FOLDER

if TYPE_CHECKING:
    from stemline.source import Source

_IGNORED = "build/\n"
"""What stemline makes is not for version control: it can be made again."""


@click.command()
@FOLDER
@click.option(
    "--from", "last", type=click.Path(path_type=Path, exists=True, file_okay=False),
    help="Start from the texts of this folder, last season's.",
)  # fmt: skip
def new(folder: Path, last: Path | None) -> None:
    """Make a small playbook to start from, with comments that teach; or a new season."""
    from stemline.diagnostics.plain import plain

    if folder.exists() and (not folder.is_dir() or any(folder.iterdir())):
        raise click.UsageError(f"{folder} is not empty: choose a new folder")
    texts = _starter() if last is None else _season(last)
    try:
        for name, text in texts.items():
            place = folder / name
            place.parent.mkdir(parents=True, exist_ok=True)
            place.write_text(text, "utf-8", newline="\n")
        (folder / ".gitignore").write_text(_IGNORED, "utf-8", newline="\n")
    except OSError as error:
        raise click.UsageError(f"cannot write {folder}: {error.strerror}") from error
    if last is None:
        click.echo(f"{plain(str(folder))}: a playbook to start from. Next: stemline build {folder}")
    else:
        click.echo(
            f"{plain(str(folder))}: the season after {plain(str(last))}. "
            f"What you change: stemline compare {last} {folder}"
        )


def _starter() -> dict[str, str]:
    from importlib.resources import files

    starter = files("stemline.grammar").joinpath("starter")
    found = sorted(starter.iterdir(), key=lambda entry: entry.name)
    return {e.name: e.read_text("utf-8") for e in found if e.name.endswith(".play")}


def _season(last: Path) -> dict[str, str]:
    """Last season's texts, with the next season's year; weeks stay with the season they were of."""
    from stemline.diagnostics.render import render
    from stemline.outside.texts import read_files

    files = read_files(last)
    if not files.sources or any(d.is_error for d in files.found):
        click.echo(render(files.found, files.by_name), nl=False, err=True)
        raise SystemExit(2)
    return {
        Path(source.name).relative_to(last).as_posix(): _next(source)
        for source in files.sources
        if not _of_weeks(source)
    }


def _of_weeks(source: Source) -> bool:
    """Whether a text holds weeks and, beside them, nothing but looks of their opponents."""
    from stemline.syntax.parser import parse

    kinds = {block.kind for block in parse(source)[0].blocks}
    return "week" in kinds and kinds <= {"week", "look"}


def _next(source: Source) -> str:
    """The text with its `season` line a year on, and what it was kept from behind it."""
    from stemline.syntax.parser import parse
    from stemline.syntax.tree import AtomKind, Phrase

    tree, _ = parse(source)
    lines = list(source.lines)
    for fact in (f for block in tree.blocks if block.kind == "playbook" for f in block.facts):
        value = fact.value
        if fact.key != "season" or not isinstance(value, Phrase):
            continue
        year = value.atoms[0]
        if year.kind is AtomKind.NUMBER and year.text.isdigit():
            line = lines[year.span.line - 1]
            before, after = line[: year.span.column - 1], line[year.span.end - 1 :]
            behind = after if "//" in after else f"{after}  // kept from {year.text}"
            lines[year.span.line - 1] = f"{before}{int(year.text) + 1}{behind}"
    return "\n".join(lines)
