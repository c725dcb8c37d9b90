"""The commands. Thin: each reads a folder, asks the compiler, and prints or writes what it gives.

Exit codes: 0 done, 1 the playbook has errors, 2 the command itself cannot be carried out.
"""

from __future__ import annotations

import shutil
from collections.abc import Collection, Iterable
from dataclasses import replace
from importlib.resources import as_file, files
from pathlib import Path
from typing import TYPE_CHECKING

import click

from stemline.checking import answers, summary
from stemline.compile import Compiled, compile_texts, no_collecting
from stemline.diagnostics.lowered import lowered_line, parted
from stemline.diagnostics.model import Diagnostic, diagnose
from stemline.diagnostics.nearest import nearest
from stemline.diagnostics.plural import how_many
from stemline.diagnostics.render import render
from stemline.football.field import BallSpot
from stemline.progress import progress
from stemline.project import Files, file_name, read_files, replacing, revision
from stemline.source import Source, Span
from stemline.theme import SIZES, Found, Theme, load_theme, theme_called

if TYPE_CHECKING:
    from stemline.football.play import Play, Season

_FOLDER = click.argument("folder", type=click.Path(path_type=Path))
_THEME = click.option(
    "--theme", default="", help="A theme's name or folder, over the playbook's own."
)
_USAGE = {"E101", "E102"}
"""Codes of a command that was given no playbook at all."""


@click.group(context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(package_name="stemline")
def main() -> None:
    """Compile a playbook written as plain text: check it, list its calls, draw and print it."""


@main.command()
@_FOLDER
@click.option("--timing", is_flag=True, help="Show the quarterback's clock of every pass.")
@click.option("--pictures", is_flag=True, help="Draw every call and list the crowded ones.")
@click.option("--only", default="", help="Show the clock, or pictures, of this concept or family.")
@click.option(
    "--no-cache",
    is_flag=True,
    envvar="STEMLINE_NO_CACHE",
    help="Keep nothing on this machine for the next check, and use nothing of the last.",
)
def check(folder: Path, timing: bool, pictures: bool, only: str, no_cache: bool) -> None:
    """Read a playbook and say everything that is wrong with it."""
    texts, compiled = _compiled(folder)
    themed = _theme(folder, "", compiled)
    texts = replace(texts, sources=(*texts.sources, *themed.sources))
    found = (*texts.found, *compiled.diagnostics, *themed.diagnostics)
    season = compiled.season
    if only and season is not None:
        season = _narrowed(season, only)
    if (timing or (only and not pictures)) and season is not None:
        from stemline.output import timing_lines

        for line in timing_lines(compiled, season):
            click.echo(line)
    _print(found, texts, compiled.lowered)
    if season is not None and not any(d.is_error for d in found):
        for line in answers(folder, compiled, season, keep=not no_cache):
            click.echo(line)
    click.echo(summary(folder, compiled, found))
    if pictures and season is not None and themed.theme is not None:
        from stemline.output import crowded_lines

        with progress() as tell:
            lines = list(crowded_lines(compiled, season, themed.theme, tell))
        click.echo("\n".join(lines))
    _leave(found)


@main.command("list")
@_FOLDER
@click.option("--count", is_flag=True, help="Show how each formation's receivers are counted.")
def list_calls(folder: Path, count: bool) -> None:
    """Print every call of a playbook, one a line."""
    texts, compiled = _compiled(folder)
    found = (*texts.found, *compiled.diagnostics)
    _print([d for d in found if d.is_error], texts)
    if count and compiled.book is not None:
        from stemline.resolve.counts import count_lines

        for line in count_lines(compiled.book, compiled.calls):
            click.echo(line)
    elif compiled.season is not None:
        for play in compiled.season.plays:
            click.echo(play.call.spoken)
    _leave(found)


@main.command()
@_FOLDER
@click.argument("call")
@click.option("-o", "--output", type=click.Path(path_type=Path), help="Write to this SVG file.")
@click.option(
    "--from", "spot", type=click.Choice([s.value for s in BallSpot]), help="Where the ball is."
)
@click.option(
    "--against", default="", help="A look of the playbook, or what it shows, such as 'zone, off'."
)
@click.option(
    "--size", type=click.Choice(list(SIZES)), default="large", show_default=True,
    help="For a page, for a quarter of one, or the small one of a dress-up.",
)  # fmt: skip
@click.option("--only", "man", default="", help="Draw this man strong and the others pale.")
@click.option(
    "--before", metavar="FOLDER", default="",
    help="Under it, pale, the call as it was: in this folder, or at this git revision.",
)  # fmt: skip
@click.option("--before-call", "renamed", default="", help="Its name there, where it had another.")
@_THEME
def draw(
    folder: Path,
    call: str,
    output: Path | None,
    spot: str | None,
    against: str,
    size: str,
    man: str,
    before: str,
    renamed: str,
    theme: str,
) -> None:
    """Draw one CALL as SVG; to the terminal where no file is given."""
    texts, compiled = _compiled(folder)
    look = _look(folder, theme, compiled, texts)
    from stemline.output import call_play, draw_svg, his_label

    play, found = call_play(compiled, call, spot, against)
    words = {"the call": Source("the call", call), "--against": Source("--against", against)}
    if play is None:
        reasons = found or compiled.diagnostics
        click.echo(render((*texts.found, *reasons), {**texts.by_name, **words}), nl=False, err=True)
        raise SystemExit(1)
    label, found = his_label(play, man, Span.over("--only", man)) if man else (None, ())
    if found:
        click.echo(render(found, {"--only": Source("--only", man)}), nl=False, err=True)
        raise SystemExit(2)
    was = _earlier(folder, before, renamed, play, against)
    assert compiled.book is not None, "a play comes from a book"
    level = compiled.book.settings.level
    svg = draw_svg(play, look, SIZES[size], only=label, before=was, level=level)
    others = sum(d.is_error for d in (*texts.found, *compiled.diagnostics))
    if others:
        click.echo(f"the playbook has {how_many(others, 'error')}: see stemline check", err=True)
    if output is None:
        click.echo(svg, nl=False)
        return
    try:
        output.write_text(svg, "utf-8")
    except OSError as error:
        raise click.UsageError(f"cannot write {output}: {error.strerror}") from error


def _earlier(folder: Path, before: str, renamed: str, play: Play, against: str) -> Play | None:
    """The call as it was, where that is asked for; the reasons where it is not to be had."""
    if not before:
        if renamed:
            raise click.UsageError("--before-call goes with --before")
        return None
    from stemline.earlier import earlier_call

    with no_collecting():
        made = earlier_call(folder, before, renamed, play, against)
    if made.play is None:
        click.echo(render(made.found, made.sources), nl=False, err=True)
        raise SystemExit(2)
    return made.play


@main.command()
@_FOLDER
@click.option("--out", type=click.Path(path_type=Path), help="Where to put it: FOLDER/build.")
@click.option("--only", default="", help="Build only this concept or family.")
@click.option("--paper", type=click.Choice(["letter", "a4"]), default="letter", show_default=True)
@_THEME
def build(folder: Path, out: Path | None, only: str, paper: str, theme: str) -> None:
    """Build the printed book and every call's picture.

    The output takes its place only when it is whole: a failed build leaves the last one as it was.
    """
    texts, compiled = _compiled(folder)
    found = (*texts.found, *compiled.diagnostics)
    _print(found, texts, compiled.lowered)
    _leave(found)
    season = compiled.season
    assert season is not None
    look = _look(folder, theme, compiled, texts)
    target = out or folder / "build"
    if only:
        season = _narrowed(season, only)
        target = out or folder / "build" / f"only-{file_name(only)}"
    _refuse_foreign(target, folder)
    rev, date = revision(folder)
    from stemline.output import PangoMissing, Refused, write_book

    try:
        with replacing(target) as made, progress() as tell:
            write_book(compiled, season, rev, date, paper, look, made, tell)
            (made / _MARK).write_text("made by stemline; replaced by the next build\n", "utf-8")
    except (PangoMissing, Refused) as missing:
        click.echo(str(missing), err=True)
        raise SystemExit(2) from None
    except OSError as error:
        raise click.UsageError(f"cannot write {target}: {error.strerror}") from error
    click.echo(f"{target / 'book.pdf'}: {how_many(len(season.plays), 'picture')}")


_MARK = ".stemline-build"


def _refuse_foreign(target: Path, folder: Path) -> None:
    """A build replaces its folder whole, so it must be its own."""
    if target.resolve() in (folder.resolve(), *folder.resolve().parents):
        raise click.UsageError(f"{target} holds the playbook itself: choose another place")
    if target.exists() and not target.is_dir():
        raise click.UsageError(f"{target} is a file: choose a folder")
    if target.is_dir() and any(target.iterdir()) and not (target / _MARK).exists():
        raise click.UsageError(
            f"{target} holds files that stemline did not make: choose another folder"
        )


@main.command()
@_FOLDER
@click.option("-o", "--output", type=click.Path(path_type=Path), help="This PDF or SVG file.")
@click.option("--only", default="", help="Show only this concept or family.")
@click.option("--views", is_flag=True, help="Show runs, protections and looks against the others.")
@click.option(
    "--size", type=click.Choice(list(SIZES)), default="small", show_default=True,
    help="Large is one picture a page, for a meeting room; quarter is two across, to hand out.",
)  # fmt: skip
@click.option(
    "--paper", type=click.Choice(["letter", "a4", "screen"]), default="letter", show_default=True
)
@_THEME
def sheet(
    folder: Path,
    output: Path | None,
    only: str,
    views: bool,
    size: str,
    paper: str,
    theme: str,
) -> None:
    """Put every diagram, each under its call, on a few pages: FOLDER/contact-sheet.pdf."""
    texts, compiled = _compiled(folder)
    found = (*texts.found, *compiled.diagnostics)
    _print([d for d in found if d.is_error], texts)
    _leave(found)
    look = _look(folder, theme, compiled, texts)
    season = compiled.season
    assert season is not None
    file = output or folder / "contact-sheet.pdf"
    if file.suffix.casefold() not in (".pdf", ".svg"):
        raise click.UsageError(f"{file}: a contact sheet is a .pdf or an .svg")
    if only:
        season = _narrowed(season, only)
    rev, date = revision(folder)
    from stemline.output import PangoMissing, Refused, write_sheet

    try:
        with progress() as tell:
            count = write_sheet(
                compiled, season, rev, date, paper, look, file, tell, SIZES[size], views=views
            )
    except (PangoMissing, Refused) as missing:
        click.echo(str(missing), err=True)
        raise SystemExit(2) from None
    except OSError as error:
        raise click.UsageError(f"cannot write {file}: {error.strerror}") from error
    click.echo(f"{file}: {how_many(count, 'picture')}")


@main.command()
@_FOLDER
def new(folder: Path) -> None:
    """Make a small playbook to start from, with comments that teach."""
    if folder.exists() and (not folder.is_dir() or any(folder.iterdir())):
        raise click.UsageError(f"{folder} is not empty: choose a new folder")
    try:
        folder.mkdir(parents=True, exist_ok=True)
        with as_file(files("stemline.grammar").joinpath("starter")) as starter:
            for path in sorted(starter.glob("*.play")):
                shutil.copyfile(path, folder / path.name)
    except OSError as error:
        raise click.UsageError(f"cannot write {folder}: {error.strerror}") from error
    click.echo(f"{folder}: a playbook to start from. Next: stemline build {folder}")


def _compiled(folder: Path) -> tuple[Files, Compiled]:
    texts = read_files(folder)
    if any(d.code in _USAGE for d in texts.found):
        click.echo(render(texts.found, {}), nl=False, err=True)
        raise SystemExit(2)
    if not texts.sources:
        click.echo(render(texts.found, {}), nl=False, err=True)
        raise SystemExit(1)
    with no_collecting():
        whole = not any(d.is_error for d in texts.found)
        compiled = compile_texts(texts.sources, str(folder), whole=whole)
    return texts, compiled


def _look(folder: Path, asked: str, compiled: Compiled, texts: Files) -> Theme:
    """The theme asked for, else the playbook's own, else the plain one; the reasons where none."""
    got = _theme(folder, asked, compiled)
    if got.theme is not None:
        return got.theme
    shown = replace(texts, sources=(*texts.sources, *got.sources, Source("--theme", asked)))
    _print(got.diagnostics, shown)
    raise SystemExit(2 if asked else 1)


def _theme(folder: Path, asked: str, compiled: Compiled) -> Found:
    """An option names a folder from where the coach stands; a playbook one of its own places."""
    places = (folder, folder.resolve().parent)
    if asked:
        return theme_called(asked, Span.over("--theme", asked), (Path(), *places))
    if compiled.book is not None and compiled.book.settings.theme:
        settings = compiled.book.settings
        return theme_called(settings.theme, settings.theme_span, places)
    return Found(load_theme(), (), ())


def _print(found: Iterable[Diagnostic], texts: Files, lowered: Collection[str] = ()) -> None:
    """What was found; warnings that the playbook lowers are counted in a line at the end."""
    printed, counted = parted(found, lowered)
    if printed:
        click.echo(render(printed, texts.by_name), err=True)
    if counted:
        click.echo(lowered_line(counted), err=True)


def _leave(found: tuple[Diagnostic, ...]) -> None:
    if any(d.is_error for d in found):
        raise SystemExit(1)


def _narrowed(season: Season, only: str) -> Season:
    """The season with one concept or one family; a name that is neither is a usage error."""
    wanted = only.casefold()
    concepts = tuple(
        c for c in season.concepts if wanted in (c.name.casefold(), c.family.casefold())
    )
    if not concepts:
        names = {n for c in season.concepts for n in (c.name, c.family)}
        found = diagnose("E603", Span.over("--only", only), nearest=nearest(only, names), name=only)
        click.echo(render([found], {"--only": Source("--only", only)}), nl=False, err=True)
        raise SystemExit(2)
    kept = {c.name for c in concepts}
    plays = tuple(p for p in season.plays if p.call.concept in kept)
    return replace(season, concepts=concepts, plays=plays)


if __name__ == "__main__":
    main()
