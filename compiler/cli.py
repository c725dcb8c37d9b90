"""The commands. Thin: each reads a folder, asks the compiler, and prints or writes what it gives.

Exit codes: 0 done, 1 the playbook has errors, 2 the command itself cannot be carried out, 130 it
was interrupted.
"""

from __future__ import annotations

import os
import shutil
from collections.abc import Collection, Iterable, Iterator
from contextlib import contextmanager, nullcontext, suppress
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
from stemline.diagnostics.plain import plain
from stemline.diagnostics.plural import how_many
from stemline.diagnostics.render import render
from stemline.football.field import BallSpot
from stemline.outside import folder as output_folder
from stemline.outside.file import write_file
from stemline.outside.interrupts import Interrupts
from stemline.outside.model import NotWritten
from stemline.outside.names import file_name
from stemline.outside.workroom import workroom
from stemline.progress import progress
from stemline.project import Files, read_files, revision
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


class _Commands(click.Group):
    """The commands; an interrupt ends any of them as a shell expects it, and in one line."""

    def invoke(self, ctx: click.Context) -> object:
        try:
            return super().invoke(ctx)
        except KeyboardInterrupt:
            click.echo("interrupted: what was written before is as it was", err=True)
            raise SystemExit(130) from None


@click.group(cls=_Commands, context_settings={"help_option_names": ["-h", "--help"]})
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
        from stemline.output import Refused, crowded_lines

        try:
            with progress() as tell:
                lines = list(crowded_lines(compiled, season, themed.theme, tell))
        except Refused as why:
            click.echo(str(why), err=True)
            raise SystemExit(1) from None
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
@click.option("-o", "--output", type=click.Path(path_type=Path), help="This SVG, PDF or PNG file.")
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
    """Draw one CALL; as SVG to the terminal where no file is given."""
    kind = _kind(output, (".svg", ".pdf", ".png")) if output is not None else ".svg"
    texts, compiled = _compiled(folder)
    look = _look(folder, theme, compiled, texts)
    from stemline.output import call_play, drawn, his_label

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
    with _writing(), workroom() if kind == ".pdf" else nullcontext():
        data = drawn(
            play, look, SIZES[size], kind,
            only=label, before=was, level=level, duties=bool(against),
        )  # fmt: skip
    others = sum(d.is_error for d in (*texts.found, *compiled.diagnostics))
    if others:
        click.echo(f"the playbook has {how_many(others, 'error')}: see stemline check", err=True)
    if output is None:
        click.echo(data, nl=False)
        return
    with _writing():
        write_file(output, data)


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
        target = out or folder / "build" / f"only-{file_name(only.strip().casefold())}"
    from stemline.output import book_names, made_book

    rev, date = revision(folder)
    with _writing():
        home = folder.resolve()
        if _real(target) in (home, *home.parents):
            raise NotWritten("E958", target)
        if out is None:
            _refuse_led_out(folder, target)
        output_folder.refuse(target, book_names(season))
        with Interrupts() as interrupts:
            with workroom(), progress() as tell:
                files = made_book(compiled, season, rev, date, paper, look, tell)
            interrupts.heed()
            output_folder.replace(target, files)
            interrupts.heed()
    click.echo(f"{plain(str(target / 'book.pdf'))}: {how_many(len(season.plays), 'picture')}")


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
    """Put every diagram, each under its call, on a few pages.

    Where no file is named: FOLDER/build/sheet/contact-sheet.pdf.
    """
    texts, compiled = _compiled(folder)
    found = (*texts.found, *compiled.diagnostics)
    _print([d for d in found if d.is_error], texts)
    _leave(found)
    look = _look(folder, theme, compiled, texts)
    season = compiled.season
    assert season is not None
    shelf = folder / "build" / "sheet"
    file = output or shelf / "contact-sheet.pdf"
    kind = _kind(file, (".pdf", ".svg"))
    if only:
        season = _narrowed(season, only)
    rev, date = revision(folder)
    from stemline.output import made_sheet

    with _writing(), Interrupts() as interrupts:
        if output is None:
            _refuse_led_out(folder, shelf)
            output_folder.refuse(shelf, (file.name,))
        with workroom(), progress() as tell:
            data, count = made_sheet(
                compiled, season, rev, date, paper, look, kind, tell, SIZES[size], views=views
            )
        interrupts.heed()
        if output is None:
            output_folder.replace(shelf, {file.name: data})
        else:
            write_file(file, data)
    click.echo(f"{plain(str(file))}: {how_many(count, 'picture')}")


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
    click.echo(f"{plain(str(folder))}: a playbook to start from. Next: stemline build {folder}")


@contextmanager
def _writing() -> Iterator[None]:
    """Output is made and written in it: what hinders that is told, and ends the command."""
    from stemline.output import PangoMissing, PictureFailed, Refused

    try:
        yield
    except NotWritten as error:
        found = error.found
    except PictureFailed as error:
        found = diagnose("E956", Span(error.address, 0, 0, 0), why=error.why)
    except (PangoMissing, Refused) as error:
        click.echo(str(error), err=True)
        raise SystemExit(2) from None
    else:
        return
    click.echo(render([found], {}), nl=False, err=True)
    raise SystemExit(2)


def _real(path: Path) -> Path:
    """Where a path leads; in a circle of links, as far as it does."""
    return Path(os.path.realpath(path))


def _refuse_led_out(folder: Path, target: Path) -> None:
    """Raise where a link that lies in the playbook leads its own output out of it."""
    place = _real(target)
    if not place.is_relative_to(folder.resolve()):
        raise NotWritten("E960", target, place=str(place))


def _kind(file: Path, kinds: tuple[str, ...]) -> str:
    """What kind of file a name asks for; a pipe or device, which has no ending, gets the first."""
    ending = file.suffix.casefold()
    if ending in kinds:
        return ending
    if not ending and file.exists() and not file.is_file() and not file.is_dir():
        return kinds[0]
    choices = ", ".join(kinds[:-1]) + " or " + kinds[-1]
    at = Span.over("--output", str(file))
    found = diagnose("E957", at, nearest=nearest(ending, kinds), found=file.name, choices=choices)
    click.echo(render([found], {"--output": Source("--output", str(file))}), nl=False, err=True)
    raise SystemExit(2)


def _settle(folder: Path) -> None:
    """Finish what a killed build of the playbook left; what cannot be is told and not insisted on.

    Before anything else, so that whatever comes next sees one book or the other.
    """
    build = folder / "build"
    parts: list[Path] = []
    with suppress(OSError):  # a folder that cannot be looked into, or is none: told when it is read
        parts = sorted(path.parent for path in build.glob(f"*/{output_folder.HELD}"))
    for root in (build, *parts):
        try:
            output_folder.settle(root)
        except NotWritten as error:
            click.echo(render([error.found], {}), nl=False, err=True)


def _compiled(folder: Path) -> tuple[Files, Compiled]:
    _settle(folder)
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
        return theme_called(asked, Span.over("--theme", asked), (Path(), *places), path=True)
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
