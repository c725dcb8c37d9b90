"""Every diagram that a playbook prints, as its SVG, without proving the playbook first."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Collection, Iterable, Iterator
from dataclasses import dataclass, replace
from enum import Enum
from functools import cache, partial
from pathlib import Path

from stemline.book.content.book import Edition, make_book
from stemline.book.content.page import Entry, Page
from stemline.emit.svg import to_svg
from stemline.football.play import Play, Season
from stemline.football.timing.clock import ReadClock, read_clock
from stemline.football.timing.levels import LEVELS
from stemline.outside.project import read_files
from stemline.picture.clock_strip import clock_scene
from stemline.picture.legend.legend import legend_entries
from stemline.picture.picture import frame_of, picture
from stemline.picture.scene.scene import Box, Scene
from stemline.picture.trimmed import roomier, trimmed
from stemline.read.read_playbook import read_playbook
from stemline.resolve.all_calls import Calls, all_calls
from stemline.resolve.concept_views import with_views
from stemline.resolve.season import season
from stemline.resolve.sheets import with_sheets
from stemline.syntax.parser import parse
from stemline.theme import Size, Theme

PLAYBOOKS = Path(__file__).parents[2] / "playbooks"
BUNDLED = ("saltmarsh-herons", "cedar-flats-lanterns")


class Sort(Enum):
    """Which of a book's diagrams one is."""

    LARGE = "large, calls"
    QUARTER = "quarter, calls"
    OWN_SMALL = "small, calls"
    SMALL = "small, dress-ups"
    SHEET = "large, sheets"
    SHEET_QUARTER = "quarter, sheets"
    SHEET_SMALL = "small, sheets"
    ON_PAGE = "large, as its page has it"
    CLOCK = "quarterback's clock"
    LEGEND = "how to read"


@dataclass(frozen=True)
class Picture:
    """One emitted diagram; ``name`` is its call, or the page it stands on."""

    playbook: str
    sort: Sort
    name: str
    svg: str


Sketch = tuple[Sort, str, Callable[[], Scene]]
"""A diagram that is not drawn yet: its sort, its name, and what draws it."""


@cache
def bundled_season(name: str, only: tuple[str, ...] = ()) -> Season:
    """A bundled playbook's season with all that its book prints; nothing of it is proved. It is
    made once for all tests of a process.

    ``only`` are the calls to expand, all of them by default.
    """
    texts = read_files(PLAYBOOKS / name)
    book, _ = read_playbook([parse(source)[0] for source in texts.sources], [], name)
    if book is None:
        raise ValueError(f"{name} cannot be read")
    calls, _ = all_calls(book)
    if only:
        calls = Calls(tuple(row for row in calls.orders if row[1].spoken in only))
    made, _ = season(book, calls, lambda *_: ())
    missing = set(only) - {play.call.spoken for play in made.plays}
    if missing:
        raise ValueError(f"{name} has no call {', '.join(sorted(missing))}")
    return with_sheets(book, with_views(book, calls, made))


def sample(
    playbook: str, calls: Collection[str], pages: Collection[str], theme: Theme
) -> Iterator[Picture]:
    """The named calls at every size, and every diagram of the pages with these ids."""
    made = bundled_season(playbook, tuple(calls))
    for play in made.plays:
        yield from each_size(playbook, play, theme)
    for page in make_book(made, Edition("", ""), ("",)).pages:
        if page.id in pages:
            yield from _drawn(playbook, _page(page, theme), theme)
        yield from _drawn(playbook, _clock(page, made, theme), theme)


def of_pages(playbook: str, pages: Collection[str], theme: Theme) -> Iterator[Picture]:
    """Every diagram of the pages with these ids."""
    for page in make_book(bundled_season(playbook), Edition("", ""), ("",)).pages:
        if page.id in pages:
            yield from _drawn(playbook, _page(page, theme), theme)


CALL = {Size.FULL: Sort.LARGE, Size.QUARTER: Sort.QUARTER, Size.THUMB: Sort.OWN_SMALL}
VIEW = {Size.FULL: Sort.SHEET, Size.QUARTER: Sort.SHEET_QUARTER, Size.THUMB: Sort.SHEET_SMALL}
"""The sort of a call by itself, and of a page's view, at each size."""


def each_size(playbook: str, play: Play, theme: Theme) -> Iterator[Picture]:
    """A call by itself, in a frame of its own, at every size."""
    yield from _drawn(playbook, _call(play, theme), theme)


def pictures(playbook: str, theme: Theme, nth: int = 1) -> Iterator[Picture]:
    """A bundled playbook's diagrams, each call at every size, then those of its pages; or every
    ``nth`` of each sort, the others not drawn."""
    return _drawn(playbook, _every(nth, _all(bundled_season(playbook), theme)), theme)


def _every(nth: int, sketches: Iterable[Sketch]) -> Iterator[Sketch]:
    """Every ``nth`` of each sort, which begins with another: so the sizes are of unlike calls."""
    met: Counter[Sort] = Counter()
    begins = {sort: place % nth for place, sort in enumerate(Sort)}
    for sketch in sketches:
        sort = sketch[0]
        if met[sort] % nth == begins[sort]:
            yield sketch
        met[sort] += 1


def _all(made: Season, theme: Theme) -> Iterator[Sketch]:
    for play in made.plays:
        yield from _call(play, theme)
    book = make_book(made, Edition("", ""), tuple(c for c, _ in legend_entries(theme)))
    for page in book.pages:
        yield from _page(page, theme)
        yield from _clock(page, made, theme)


def _drawn(playbook: str, sketches: Iterable[Sketch], theme: Theme) -> Iterator[Picture]:
    for sort, name, draw in sketches:
        yield Picture(playbook, sort, name, to_svg(draw(), theme))


def _call(play: Play, theme: Theme) -> Iterator[Sketch]:
    for size, sort in CALL.items():
        yield sort, play.call.spoken, partial(picture, play, size, theme)


def legend(theme: Theme) -> Iterator[Picture]:
    """The small pictures of the page that explains the marks."""
    for caption, scene in legend_entries(theme):
        yield Picture("every book", Sort.LEGEND, caption, to_svg(scene, theme))


def _page(page: Page, theme: Theme) -> Iterator[Sketch]:
    if page.large is not None:
        yield Sort.ON_PAGE, f"{page.id}: {page.large.call}", partial(_large, page, theme)
    for entry in page.entries:
        for size, sort in VIEW.items() if not entry.listed else ():
            draw = partial(picture, entry.play, size, theme, duties=page.duties)
            yield sort, f"{page.id}: {entry.call}", draw
    for entries in page.framed:
        frame = frame_of([entry.play for entry in entries], Size.THUMB, page.duties)
        for entry in entries:
            draw = partial(_small, entry, theme, frame, page)
            sort = Sort.SMALL if entry.listed else Sort.SHEET_SMALL
            name = entry.call if entry.listed else f"{page.id}: {entry.call}"
            yield sort, name, draw


def _large(page: Page, theme: Theme) -> Scene:
    """A page's large picture, trimmed as it is printed."""
    assert page.large is not None, "the page has one"
    return trimmed(picture(page.large.play, Size.FULL, theme, duties=page.duties), theme)


def _small(entry: Entry, theme: Theme, frame: Box, page: Page) -> Scene:
    frame = roomier(frame) if page.flows else frame
    scene = picture(entry.play, Size.THUMB, theme, frame, duties=page.duties, solid=entry.solid)
    return trimmed(scene, theme) if page.trims else scene


def _clock(page: Page, made: Season, theme: Theme) -> Iterator[Sketch]:
    """The strip of seconds under a concept's first picture."""
    if page.clock and page.base is not None:
        clock = replace(read_clock(page.base.play, LEVELS[made.level]), rusher=page.rusher)
        yield Sort.CLOCK, f"{page.id}: clock", partial(_strip, clock, theme)


def _strip(clock: ReadClock, theme: Theme) -> Scene:
    scene = clock_scene(clock, theme)
    assert scene is not None, "a page with a clock has reads"
    return scene
