"""What the commands write: the clock, or a whole book with its pictures."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Iterator
from dataclasses import replace
from itertools import groupby
from pathlib import Path
from typing import TYPE_CHECKING

from stemline.book.content.book import Edition, make_book
from stemline.book.content.clock_lines import clock_lines, look_lines, sameness_lines, verdict
from stemline.book.paper import Paper
from stemline.diagnostics.catalogue.weeks import E986
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.diagnostics.nearest import nearest
from stemline.emit.apart import apart
from stemline.emit.engine_log import PictureFailed
from stemline.emit.fetch import Refused
from stemline.emit.pdf import PangoMissing
from stemline.emit.side_by_side import SideBySide
from stemline.football.field import BallSpot
from stemline.football.play import Play, Season
from stemline.football.timing.answers import Stood, check_to
from stemline.football.timing.clock import ReadClock, Verdict, read_clock
from stemline.football.timing.coverage import against as covered
from stemline.football.timing.levels import LEVELS
from stemline.outside.file_names import file_names
from stemline.outside.page_store import PageStore
from stemline.outside.program import program
from stemline.outside.store import Store
from stemline.printing.drawings import Drawings
from stemline.printing.kept_sections import KeptSections
from stemline.printing.printed_season import Build
from stemline.resolve.concept_views import with_views
from stemline.resolve.sheets import with_sheets
from stemline.session import Session, no_collecting
from stemline.source import Span
from stemline.theme import Size, Theme

if TYPE_CHECKING:
    from stemline.printing.week_papers import Papers
    from stemline.week.planning import Planned
    from stemline.week.week_values import Plan

__all__ = [
    "PangoMissing",
    "PictureFailed",
    "Refused",
    "asked_men",
    "book_names",
    "crowded_lines",
    "made_book",
    "made_sheet",
    "made_week",
    "parts_of",
    "timing_lines",
    "week_called",
]


def timing_lines(compiled: Session, season: Season) -> Iterator[str]:
    """The quarterback's clock of every pass in ``season``, a concept after another.

    For each: its first call and that call with each tag, what is late from a hash, the sameness
    of all its calls, its reads against every look of the playbook, and what it is killed to.
    """
    yield (
        "Times are planning estimates: seconds after the snap, distances in yards. "
        "A letter in brackets is a man of theirs."
    )
    groups = [[*group] for _, group in groupby(season.plays, lambda play: play.call.concept)]
    read = [[play for play in group if play.reads] for group in groups]
    stood = [_stood(compiled, plays[0]) for plays in read if plays]
    rows = iter(stood)
    for group, plays in zip(groups, read, strict=True):
        killed = [*_killed_lines(compiled, group)]
        if plays or killed:
            yield ""
        if plays:
            one = next(rows)
            yield from _concept_lines(compiled, plays)
            yield from look_lines(one.rows, check_to(one, stood))
        yield from killed


def _killed_lines(compiled: Session, plays: Iterable[Play]) -> Iterator[str]:
    """The clock of the passes that calls are killed to, of each where it is first."""
    assert compiled.book is not None, "plays come from a book"
    told: set[str] = set()
    for second in (each for play in plays for each in play.becomes if each.play.reads):
        if second.words not in told:
            told.add(second.words)
            clock = read_clock(second.play, compiled.book.settings.level)
            yield from clock_lines(second.play, clock)


def _concept_lines(compiled: Session, plays: list[Play]) -> Iterator[str]:
    assert compiled.book is not None, "plays come from a book"
    level = compiled.book.settings.level
    plays = [_from_middle(compiled, play) for play in plays]
    clocks = {play.call.spoken: read_clock(play, level) for play in plays}
    base = plays[0].call
    said = base.formation, base.side_word, base.motion
    for play in plays:
        call = play.call
        if (call.formation, call.side_word, call.motion) == said:
            yield from clock_lines(play, clocks[call.spoken])
            yield from _from_hashes(compiled, play, clocks[call.spoken])
    yield from sameness_lines(plays, clocks)


def _stood(compiled: Session, play: Play) -> Stood:
    """A call against every look of the playbook."""
    assert compiled.book is not None, "plays come from a book"
    level = compiled.book.settings.level
    order = compiled.calls.by_name[play.call.spoken]
    shown = []
    for key in compiled.book.looks:
        faced, _ = compiled.play(order, order.timed_from, (), key)
        if faced is not None and faced.defence is not None and faced.reads:
            shown.append(covered(faced, read_clock(faced, level), level))
    return Stood(play.call.concept, play.call.formation, tuple(shown))


def _from_middle(compiled: Session, play: Play) -> Play:
    """The play at the spot that warnings speak of, wherever its picture is drawn from."""
    order = compiled.calls.by_name[play.call.spoken]
    if play.ball is order.timed_from:
        return play
    assert compiled.book is not None, "plays come from a book"
    there, _ = compiled.play(order, order.timed_from)
    return there or play


def _from_hashes(compiled: Session, play: Play, middle: ReadClock) -> Iterator[str]:
    """Reads that fit from the middle and do not from a hash."""
    assert compiled.book is not None, "plays come from a book"
    fits = {look.read.target for look in middle.reads if look.verdict is Verdict.ON_TIME}
    order = compiled.calls.by_name[play.call.spoken]
    for spot in (BallSpot.LEFT_HASH, BallSpot.RIGHT_HASH):
        if spot not in order.spots or spot is play.ball:
            continue
        there, _ = compiled.play(order, spot)
        if there is None:
            continue
        clock = read_clock(there, compiled.book.settings.level)
        for look in clock.reads:
            if look.read.target in fits and look.verdict is not Verdict.ON_TIME:
                yield (
                    f"    from the {spot.value}: {look.read.target} {verdict(look)}, "
                    f"a throw of {look.distance:.0f} yards"
                )


def crowded_lines(
    compiled: Session, season: Season, theme: Theme, progress: Callable[[int, int], None]
) -> Iterator[str]:
    """The crowded pictures of ``season``'s calls, worst first, and how many calls have one."""
    assert compiled.book is not None, "a season comes from a book"
    from stemline.printing.crowds import crowd_lines, look_over

    shown = with_views(
        compiled.book, compiled.calls, season, compiled.expander, compiled.put_to_looks
    )
    book = make_book(shown, Edition("", ""), ())
    yield from crowd_lines(look_over(book, theme, progress))


BOOK, SHELF, INDEX = "book.pdf", "pictures", "pictures/index.txt"


def book_names(season: Season) -> tuple[str, ...]:
    """The files that a book of ``season`` is made of, by their names in its folder."""
    return (BOOK, INDEX, *_pictures(play.call.spoken for play in season.plays).values())


def _pictures(calls: Iterable[str]) -> dict[str, str]:
    """The file of each call's picture."""
    return {call: f"{SHELF}/{name}.svg" for call, name in file_names(calls).items()}


@no_collecting()
def made_book(
    compiled: Session,
    season: Season,
    revision: str,
    date: str,
    paper: str,
    theme: Theme,
    progress: Callable[[int, int], None],
    store: Store | None = None,
) -> dict[str, bytes]:
    """``book.pdf``, one SVG a call under ``pictures``, and there an index of which is whose.

    What is known already is taken from ``store``, and what is worked out is kept in it.

    ``season`` is the playbook's own, or part of it: then only the pages of that part are made.
    Raises PangoMissing where the PDF library's system part is missing, Refused where the theme
    cannot be used, PictureFailed where a picture cannot be drawn.
    """
    shown, on = _shown(compiled, season), Paper.named(paper)
    sections = _sections(compiled, season, theme, store)
    build = Build(shown, revision, date, theme, progress, on, store, sections=sections)
    files = {BOOK: build.book(pictures=True)}
    drawn = build.pictures()
    named = _pictures(drawn)
    files |= {named[call]: svg.encode() for call, svg in drawn.items()}
    rows = (f"{named[call].removeprefix(SHELF + '/')}\t{call}\n" for call in drawn)
    files[INDEX] = "".join(rows).encode()
    return files


@no_collecting()
def made_sheet(
    compiled: Session,
    season: Season,
    revision: str,
    date: str,
    paper: str,
    theme: Theme,
    kind: str,
    progress: Callable[[int, int], None],
    size: Size = Size.THUMB,
    *,
    views: bool = False,
    store: Store | None = None,
) -> tuple[bytes, int]:
    """Every picture of ``season`` at ``size`` on a few pages, large ones one to a page.

    ``views`` adds what the book shows against other fronts and sets. A PDF, or one tall SVG where
    ``kind`` is ".svg"; with it how many pictures there are. Raises as `made_book` does.
    """
    from stemline.emit.contact import contact_pdf, contact_svg
    from stemline.printing.contact_pictures import contact_sheet

    shown = replace(_shown(compiled, season, views=views), every_call=True)
    book = make_book(shown, Edition(revision, date), ())
    drawings = Drawings(theme, LEVELS[season.level], store)
    sheet = contact_sheet(book, drawings, progress, size, views=views, svg=kind == ".svg")
    count = len(sheet.arts)
    if kind == ".svg":
        return contact_svg(sheet, theme).encode(), count
    return apart(theme, count, contact_pdf, sheet, theme, paper, date), count


def parts_of(only: str) -> tuple[str, ...] | None:
    """The papers that are asked for by commas, all where nothing is said; None for another word."""
    from stemline.printing.week_papers import PARTS

    said = tuple(part.strip().casefold() for part in only.split(",") if part.strip())
    return (said or PARTS) if set(said) <= set(PARTS) else None


def asked_men(plan: Plan, said: str) -> tuple[tuple[str, ...], str]:
    """The letters that are asked for by commas, none where nothing is said; and the first word that
    means nobody of the plan, "" where there is none."""
    from stemline.week.position_book import men_of

    words = tuple(part.strip() for part in said.split(",") if part.strip())
    try:
        return (men_of(plan, words) if words else ()), ""
    except KeyError as unknown:
        return (), str(unknown.args[0])


def week_called(compiled: Session, name: str) -> tuple[Planned | None, tuple[Diagnostic, ...]]:
    """The week of that number, or number and opponent; None with the reason."""
    wanted = " ".join(name.split()).casefold()
    for planned in compiled.weeks:
        if wanted in (str(planned.week.number), planned.week.name.casefold()):
            return planned, ()
    names = [planned.week.name for planned in compiled.weeks]
    at = Span.over("the week", name)
    return None, (E986(found=name).at(at, nearest=nearest(name, names)),)


def made_week(
    compiled: Session,
    plan: Plan,
    theme: Theme,
    *,
    parts: Collection[str] | None = None,
    paper: str = "letter",
    sheet_paper: str = "letter",
    sides: int = 2,
    revision: str = "",
    date: str = "",
    folder: Path | None = None,
    pages: bool = True,
    men: tuple[str, ...] = (),
    store: Store | None = None,
) -> Papers:
    """The papers of a week. ``pages`` gives each call its page of the book, from the same layout
    that `made_book` prints; ``folder`` is the playbook's, to keep these for the next week. ``men``
    are those whose own books are made, by letter, position or group; none for everybody.

    Raises as `made_book` does.
    """
    from stemline.printing.week_papers import PARTS, Printing, ems_of, week_papers
    from stemline.printing.workbench import workbenches
    from stemline.week.working_out import last_numbers, work_out

    assert compiled.book is not None, "a plan comes from a book"
    parts = PARTS if parts is None else parts
    plans = [each.plan for each in compiled.weeks if each.plan is not None]
    level = compiled.book.settings.level
    helpers = workbenches(theme, level)
    try:
        at = book_pages(compiled, theme, paper, folder, store, helpers) if pages else {}
        game = compiled.game_plan(plan) if {"gameplan", "data"} & set(parts) else None
        install = compiled.install_sheet(plan) if {"install", "data"} & set(parts) else None
        shown = {"positions", "quiz", "data"} & set(parts)
        against = compiled.against_looks(plan) if shown else None
        last = last_numbers(plans, plan.number)
        week = work_out(plan, last, at, ems_of(theme), game, install, against)
        how = Printing(theme, paper, sheet_paper, sides, revision, date, level, men, store, helpers)
        answers = compiled.answers(plan) if "counting" in parts else ()
        return week_papers(week, how, parts, answers)
    finally:
        helpers.end()


def book_pages(
    compiled: Session,
    theme: Theme,
    paper: str,
    folder: Path | None,
    store: Store | None = None,
    helpers: SideBySide | None = None,
) -> dict[str, int]:
    """The page of each call in the book of all calls; ``folder`` is where they are kept for. What
    is drawn and set for it is kept in ``store``, for the week's own pictures and for the book;
    ``helpers`` do it, as for a `Build`."""
    season = compiled.season
    if season is None:
        return {}
    key = compiled.seal((theme.digest, paper))
    kept = PageStore(folder)
    known = kept.read(key)
    if known is None:
        shown, on = _shown(compiled, season), Paper.named(paper)
        sections = _sections(compiled, season, theme, store)
        build = Build(
            shown, "", "", theme, lambda *_: None, on, store, sections=sections, helpers=helpers
        )
        known = build.pages()
        kept.keep(key, known)
    return known


def _sections(
    compiled: Session, season: Season, theme: Theme, store: Store | None
) -> KeptSections | None:
    """What gives parts of the book back; None where nothing is kept, and for another coach's theme,
    whose book goes to a process of its own as it is."""
    if store is None or not (store.keeps and program() and theme.bundled):
        return None
    return KeptSections(store, compiled.page_readings(season), theme)


def _shown(compiled: Session, season: Season, *, views: bool = True) -> Season:
    """``season`` with all that its book shows; only the whole one has the sheets at the end."""
    assert compiled.book is not None, "a season comes from a book"
    book, maker = compiled.book, compiled.expander
    put = compiled.put_to_looks
    shown = with_views(book, compiled.calls, season, maker, put) if views else season
    return with_sheets(book, shown, maker) if compiled.is_whole(season) else shown
