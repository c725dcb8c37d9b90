"""What the commands have in common: a folder opened, its theme found, messages printed, output
written or refused."""

from __future__ import annotations

import os
from collections.abc import Collection, Iterable, Iterator, Mapping
from contextlib import contextmanager, suppress
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

import click

from stemline.diagnostics.catalogue.calls import E603
from stemline.diagnostics.catalogue.files import NoPlaybook
from stemline.diagnostics.catalogue.output import E956, E957, E958, E960
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.diagnostics.in_words import either
from stemline.diagnostics.lowered import lowered_line, parted
from stemline.diagnostics.nearest import nearest
from stemline.diagnostics.render import render
from stemline.outside import folder as output_folder
from stemline.outside.cache import place
from stemline.outside.not_written import NotWritten
from stemline.outside.project import Files, read_files
from stemline.outside.store import Store
from stemline.session import Session
from stemline.source import Source, Span

if TYPE_CHECKING:
    from stemline.football.play import Season
    from stemline.outside.interrupts import Interrupts
    from stemline.theme import Found, Theme


@contextmanager
def writing() -> Iterator[None]:
    """Output is made and written in it: what hinders that is told, and ends the command."""
    try:
        yield
    except NotWritten as error:
        found = error.found
    except Exception as error:
        # Who makes no page has not loaded what can fail there.
        from stemline.results import PangoMissing, PictureFailed, Refused

        if isinstance(error, PangoMissing | Refused):
            click.echo(str(error), err=True)
            raise SystemExit(2) from None
        if not isinstance(error, PictureFailed):
            raise
        found = E956(why=error.why).at(Span(error.address, 0, 0, 0))
    else:
        return
    click.echo(render([found], {}), nl=False, err=True)
    raise SystemExit(2)


def kept(cached: bool) -> Store:
    """What was worked out before, for as long as it is entered; nothing where ``cached`` is False,
    and then nothing is kept."""
    return Store(place("results") if cached else None)


def known(cached: bool) -> Store:
    """What a check or a build has kept, for as long as the command runs, which keeps nothing: what
    only reads texts would take longer to keep their trees than they save it."""
    store = Store(place("results") if cached else None, adding=False)
    return click.get_current_context().with_resource(store)


def kept_until_end(cached: bool) -> Store:
    """`kept` for as long as the command runs."""
    return click.get_current_context().with_resource(kept(cached))


def real(path: Path) -> Path:
    """Where a path leads; in a circle of links, as far as it does."""
    return Path(os.path.realpath(path))


def refuse_led_out(folder: Path, target: Path) -> None:
    """Raise where a link that lies in the playbook leads its own output out of it."""
    place = real(target)
    if not place.is_relative_to(folder.resolve()):
        raise NotWritten(E960(place=str(place)), target)


def own_place(folder: Path, target: Path, *, chosen: bool) -> None:
    """Raise where output would take the playbook's own place; and, where nobody has ``chosen`` the
    place, where a link leads it out of the playbook."""
    home = folder.resolve()
    if real(target) in (home, *home.parents):
        raise NotWritten(E958(), target)
    if not chosen:
        refuse_led_out(folder, target)


def put_in_place(target: Path, files: Mapping[str, bytes], interrupts: Interrupts) -> None:
    """The whole output in its place, unless it was interrupted till now."""
    interrupts.heed()
    output_folder.replace(target, files)
    interrupts.heed()


def kind_of(file: Path, kinds: tuple[str, ...]) -> str:
    """What kind of file a name asks for; a pipe or device, which has no ending, gets the first."""
    ending = file.suffix.casefold()
    if ending in kinds:
        return ending
    if not ending and file.exists() and not file.is_file() and not file.is_dir():
        return kinds[0]
    at = Span.over("--output", str(file))
    found = E957(found=file.name, choices=either(kinds)).at(at, nearest=nearest(ending, kinds))
    click.echo(render([found], {"--output": Source("--output", str(file))}), nl=False, err=True)
    raise SystemExit(2)


def _settle(folder: Path) -> None:
    """Finish what a killed build of the playbook left; what cannot be is told and not insisted on.

    Before anything else, so that whatever comes next sees one book or the other.
    """
    roots = [folder / "build"]
    with suppress(OSError):  # a folder that cannot be looked into, or is none: told when it is read
        roots = output_folder.fillings(roots[0])
    for root in roots:
        try:
            output_folder.settle(root)
        except NotWritten as error:
            click.echo(render([error.found], {}), nl=False, err=True)


def opened(folder: Path, store: Store | None = None) -> tuple[Files, Session]:
    """The texts of a folder and a session of them, which takes its proofs from ``store``; a folder
    without any ends the command."""
    _settle(folder)
    texts = read_files(folder)
    if any(isinstance(d.said, NoPlaybook) for d in texts.found):
        click.echo(render(texts.found, {}), nl=False, err=True)
        raise SystemExit(2)
    if not texts.sources:
        click.echo(render(texts.found, {}), nl=False, err=True)
        raise SystemExit(1)
    whole = not any(d.is_error for d in texts.found)
    return texts, Session(texts.sources, str(folder), whole=whole, store=store)


def theme_for(folder: Path, asked: str, compiled: Session, texts: Files) -> Theme:
    """The theme asked for, else the playbook's own, else the plain one; the reasons where none."""
    got = theme_of(folder, asked, compiled)
    if got.theme is not None:
        return got.theme
    shown = replace(texts, sources=(*texts.sources, *got.sources, Source("--theme", asked)))
    print_found(got.diagnostics, shown)
    raise SystemExit(2 if asked else 1)


def theme_of(folder: Path, asked: str, compiled: Session) -> Found:
    """An option names a folder from where the coach stands; a playbook one of its own places."""
    from stemline.theme import Found, load_theme, theme_called

    places = (folder, folder.resolve().parent)
    if asked:
        return theme_called(asked, Span.over("--theme", asked), (Path(), *places), path=True)
    if compiled.book is not None and compiled.book.settings.theme:
        settings = compiled.book.settings
        return theme_called(settings.theme, settings.theme_span, places)
    return Found(load_theme(), (), ())


def print_found(
    found: Iterable[Diagnostic], texts: Files, lowered: Collection[str] = ()
) -> tuple[str, ...]:
    """What was found; warnings that the playbook lowers are counted in a line at the end. Gives the
    lines that were printed."""
    printed, counted = parted(found, lowered)
    said = (
        *((render(printed, texts.by_name),) if printed else ()),
        *((lowered_line(counted),) if counted else ()),
    )
    for each in said:
        click.echo(each, err=True)
    return said


def leave(found: tuple[Diagnostic, ...]) -> None:
    if any(d.is_error for d in found):
        raise SystemExit(1)


def narrowed(season: Season, only: str) -> Season:
    """The season with one concept or one family; a name that is neither is a usage error."""
    wanted = only.casefold()
    concepts = tuple(
        c for c in season.concepts if wanted in (c.name.casefold(), c.family.casefold())
    )
    if not concepts:
        names = {n for c in season.concepts for n in (c.name, c.family)}
        found = E603(name=only).at(Span.over("--only", only), nearest=nearest(only, names))
        click.echo(render([found], {"--only": Source("--only", only)}), nl=False, err=True)
        raise SystemExit(2)
    kept = {c.name for c in concepts}
    plays = tuple(p for p in season.plays if p.call.concept in kept)
    return replace(season, concepts=concepts, plays=plays)
