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

_ELEVEN = "high school"
_WRITTEN_FOR = ("canadian amateur", _ELEVEN, "nine-man", "eight-man", "six-man")
"""The codes that have texts to start from; another code starts from those of as many men."""
_WING = "wing-set"
_BY_MEN = {"12-man": "canadian amateur", "11-man": _ELEVEN, "9-man": "nine-man",
           "8-man": "eight-man", "6-man": "six-man"}  # fmt: skip
"""What a coach calls a code by its men; which of several codes is meant is the commonest one."""


@click.command()
@FOLDER
@click.option(
    "--from", "last", type=click.Path(path_type=Path, exists=True, file_okay=False),
    help="Start from the texts of this folder, last season's.",
)  # fmt: skip
@click.option(
    "--code", default="", metavar="CODE",
    help="The rule code, such as 'six-man' or 'canadian amateur'; 12-man to 6-man is read too.",
)  # fmt: skip
@click.option("--wing", is_flag=True, help="Start from a wing set under centre, eleven men.")
def new(folder: Path, last: Path | None, code: str, wing: bool) -> None:
    """Make a small playbook to start from, with comments that teach; or a new season."""
    from stemline.diagnostics.plain import plain

    if last is not None and (code or wing):
        raise click.UsageError("--from starts from a season of yours; leave --code and --wing out")

    if folder.exists() and (not folder.is_dir() or any(folder.iterdir())):
        raise click.UsageError(f"{folder} is not empty: choose a new folder")
    if last is not None and folder.resolve().is_relative_to(last.resolve()):
        raise click.UsageError(
            f"{folder} lies in {last}, whose texts it would be: choose a folder beside it"
        )
    texts = _starter(_code(code, wing), wing) if last is None else _season(last)
    made = {name: text.encode() for name, text in texts.items()}
    try:
        for name, data in (made | (_themes(last) if last is not None else {})).items():
            place = folder / name
            place.parent.mkdir(parents=True, exist_ok=True)
            place.write_bytes(data)
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


def _code(said: str, wing: bool) -> str:
    """The key of the rule code that was asked for, as a coach or the notation says it."""
    from stemline.diagnostics.in_words import either
    from stemline.diagnostics.nearest import nearest
    from stemline.football.rulebook.codes import CODES

    asked = " ".join(said.casefold().split())
    alike = (code for code in CODES if code.replace("-", " ") == asked.replace("-", " "))
    key = _BY_MEN.get(asked) or next(alike, asked) or _ELEVEN
    if key not in CODES:
        names = (*CODES, *_BY_MEN)
        near = nearest(asked, names) or names
        raise click.UsageError(f"no rule code is called {said!r}: write {either(near)}")
    if wing and CODES[key].players.value != CODES[_ELEVEN].players.value:
        raise click.UsageError(f"--wing is a set of eleven men, and {key} has another number")
    return key


def _starter(key: str, wing: bool) -> dict[str, str]:
    """The texts to start from under a code: those written for as many men, with its name in."""
    from importlib.resources import files

    from stemline.football.rulebook.codes import CODES

    men = CODES[key].players.value
    own = next(c for c in _WRITTEN_FOR if CODES[c].players.value == men)
    name = _WING if wing else own.replace(" ", "-")
    starter = files("stemline.grammar").joinpath("starter").joinpath(name)
    found = sorted(starter.iterdir(), key=lambda entry: entry.name)
    texts = {e.name: e.read_text("utf-8") for e in found if e.name.endswith(".play")}
    written = _ELEVEN if wing else own
    return {n: text.replace(f"    code {written}", f"    code {key}") for n, text in texts.items()}


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


def _themes(last: Path) -> dict[str, bytes]:
    """The files of the themes that are kept in last season's folder."""
    from stemline.theme.folder_files import taken

    return {
        f"{table.parent.name}/{name}": data
        for table in sorted(last.glob("*/theme.toml"))
        for name, data in taken(table.parent).files.items()
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
