"""How a concept's dress-ups are laid on its pages, so that no page ends in an empty foot.

The back end lays the book out once in a plain way and measures each concept's parts; `arrange`
then chooses, for each concept, how many rows stand under the large picture, how wide the rest
are drawn on the pages after it, and how many ruled lines for the player's own notes fill what is
left. The search is small and exhaustive, and ties fall to the earlier choice: same measures, same
book.

Heights and widths are points on the page.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from enum import Enum
from itertools import accumulate, pairwise, product
from math import ceil

from stemline.book.content.page import Entry, Page
from stemline.diagnostics.in_words import each_sign_once

NOTE_LINE = 21.0
"""From one ruled line to the next: about 7 mm, as in an exercise book."""
NOTE_HEAD = 20.0
FEWEST_NOTES = 3
"""Fewer lines than this are not worth a heading."""


_HELD = 20.0
"""Points that a sheet may hold beyond the room that is planned with, and more than that."""
CARE_GAP = 16.0
"""White between the contents and the page on care below them, as the style sheet sets it."""
SHARE_GAP = 6.0
"""White above a page that shares a sheet, as the style sheet sets it."""
_BESIDE = 45
"""Letters on a line beside a picture of the largest style: about."""
_MOST_ROWS = 8
"""Rows of small pictures that are tried below what else stands on a first page, less one."""


class Style(Enum):
    """How dress-ups stand: three a row, two a row, or one a row with its changes beside it."""

    THREE = 3
    TWO = 2
    ONE = 1

    @property
    def factor(self) -> float:
        """How much larger than its own size a small picture is printed."""
        return {Style.THREE: 1.0, Style.TWO: 1.5, Style.ONE: 1.8}[self]

    @property
    def css(self) -> str:
        return self.name.lower()


@dataclass(frozen=True)
class Measures:
    """One concept, measured.

    ``fixed`` is what always stands on its first page, from the heading to the tables of a picture;
    ``points`` are the coaching points, ``casting`` the table of who plays what and ``jobs`` the
    assignment table, which may go overleaf; ``head`` is the heading of a later page; ``row``
    a row's height in each style; ``changes`` what its other calls change, in words, which may be
    told with their pictures instead; ``offered`` the heights of these, as they stand two a row.
    """

    dressups: int
    fixed: float
    points: float
    casting: float
    head: float
    row: Mapping[Style, float]
    jobs: float = 0.0
    changes: float = 0.0
    offered: tuple[float, ...] = ()


@dataclass(frozen=True)
class Arrangement:
    """A concept's layout.

    With ``shares`` it stands on the sheet of the page before it, below that.
    ``first`` dress-ups stand below the large picture, ``rest`` on each later page. ``notes`` are
    the ruled lines at the foot of each page. A concept that runs on has more text than its pages
    can be planned for: it takes the room it needs, ``likely`` so many sheets,
    and one that stands elsewhere as a whole takes none. ``told`` says that
    what its other calls change stands on it too, and ``taken`` which of the pictures offered;
    ``elsewhere`` are places and pictures of the page, by their ids, whose words or that themselves
    stand so on another.
    """

    first: int
    first_style: Style = Style.THREE
    rest: tuple[int, ...] = ()
    rest_style: Style = Style.THREE
    points_first: bool = True
    casting_first: bool = True
    jobs_first: bool = True
    notes: tuple[int, ...] = ()
    runs_on: bool = False
    likely: int = 1
    shares: bool = False
    told: bool = False
    taken: tuple[int, ...] = ()
    elsewhere: frozenset[str] = frozenset()

    @property
    def pages(self) -> int:
        return self.likely + len(self.rest)


@dataclass(frozen=True)
class Laid:
    """A page of pictures and how it is laid: what a template's page is filled from."""

    page: Page
    how: Arrangement

    @property
    def under(self) -> tuple[Entry, ...]:
        """Dress-ups below the large picture."""
        return self.page.dressups[: self.how.first]

    @property
    def overleaf(self) -> tuple[tuple[Entry, ...], ...]:
        """Dress-ups on each of the pages after it."""
        ends = tuple(accumulate(self.how.rest, initial=self.how.first))
        return tuple(self.page.dressups[a:b] for a, b in pairwise(ends))

    @property
    def taken(self) -> tuple[Entry, ...]:
        """Pictures of another place that stand on its first sheet."""
        return tuple(self.page.offered[at] for at in self.how.taken)

    @property
    def marks(self) -> str:
        """What the signs on its first sheet mean."""
        return each_sign_once(self.page.marks, *(entry.marks for entry in self.taken))

    def notes(self, page: int) -> int:
        """Ruled lines at the foot of a sheet of the page, counted from 0."""
        return self.how.notes[page] if page < len(self.how.notes) else 0


def telling(entries: Sequence[Entry]) -> tuple[Entry, ...]:
    """Those of a page's small pictures that are worth measuring: the two with most words beside
    them, and the one with most over it."""

    def beside(entry: Entry) -> int:
        return sum(ceil((len(n.label) + len(n.words)) / _BESIDE) for n in entry.changes)

    longest = sorted(entries, key=lambda e: -beside(e))[:2]
    longest += sorted(entries, key=lambda e: -len(e.call) - len(e.aside))[:1]
    return tuple(entry for entry in entries if any(entry is each for each in longest))


@dataclass(frozen=True)
class FrontMatter:
    """How the pages before the pictures are laid: whether the page on care begins a sheet of its
    own, and the ruled lines that fill the foot of each."""

    care_apart: bool = False
    contents_notes: int = 0
    care_notes: int = 0
    reading_notes: int = 0


def front(contents: float, care: float, reading: float, room: float) -> FrontMatter:
    """The front pages laid from their heights; contents of several sheets count for what stands
    on their last."""
    last = _last(contents, room)
    apart = last + CARE_GAP + care > room
    return FrontMatter(
        care_apart=apart,
        contents_notes=_lines(room - last) if apart else 0,
        care_notes=_lines(room - care if apart else room - last - CARE_GAP - care),
        reading_notes=_lines(room - _last(reading, room)),
    )


def front_of_plan(contents: float, room: float) -> FrontMatter:
    """The front pages of a week's book, which are its contents alone."""
    return FrontMatter(contents_notes=_lines(room - _last(contents, room)))


def _last(height: float, room: float) -> float:
    """What a text fills of its last sheet: all of it, where its end may still stand on the sheet
    before, or notes would fill a sheet on which there is nothing else."""
    over = height % room
    return over if over > _HELD else min(height, room)


def share(halves: Sequence[Measures | None], room: float) -> tuple[Arrangement | None, ...]:
    """How half pages that follow each other are laid, each below the one before while the sheet
    has room; None where there is no half page, or one that fills more than a sheet."""
    made: list[Arrangement | None] = []
    used = room
    for m in halves:
        tall = room + 1 if m is None else _whole(m)
        if m is None or tall > room:
            made.append(None)
            used = room
            continue
        shares = used + SHARE_GAP + tall <= room
        used = used + SHARE_GAP + tall if shares else tall
        made.append(Arrangement(m.dressups, Style.THREE, shares=shares))
    return tuple(made)


def _whole(m: Measures) -> float:
    """The height of a page with all its small pictures in the smallest style."""
    return m.fixed + m.points + m.casting + m.jobs + _rows(m.dressups, Style.THREE, m)


def arrange(measures: Measures, room: float) -> Arrangement:
    """The layout with fewest pages and, among those, least empty ``room`` of each page's."""
    best: tuple[tuple[float, ...], Arrangement] | None = None
    for choice in _choices(measures, room):
        left = _left(choice, measures, room)
        if min(left) < 0:
            continue
        cost = _cost(choice, left, room)
        if best is None or cost < best[0]:
            best = (cost, _filled(choice, left, measures))
    if best:
        return best[1]
    return Arrangement(measures.dressups, runs_on=True, likely=ceil(_whole(measures) / room))


def _filled(choice: Arrangement, left: list[float], m: Measures) -> Arrangement:
    """With what its other calls change, rows of their pictures and ruled lines in what is left."""
    told = m.changes <= left[0] and choice.pages == 1
    left[0] -= m.changes if told else 0
    taken: list[int] = []
    lowest = sorted(range(len(m.offered)), key=lambda at: m.offered[at])
    for at in range(0, len(lowest) if choice.pages == 1 else 0, 2):
        pair = lowest[at : at + 2]
        height = m.offered[pair[-1]]
        if height > left[0]:
            break
        left[0] -= height
        taken += pair
    notes = tuple(_lines(each) for each in left)
    return replace(choice, notes=notes, told=told, taken=tuple(sorted(taken)))


def _choices(m: Measures, room: float) -> Iterator[Arrangement]:
    for style in Style:
        yield Arrangement(m.dressups, style)
    for rows, style, rest_style, (points, casting, jobs) in product(
        range(_MOST_ROWS), (Style.THREE, Style.TWO), Style, _parts(m)
    ):
        first = rows * style.value
        if first > m.dressups or (first == m.dressups and points and casting and jobs):
            continue
        kept = ((points, m.points), (casting, m.casting), (jobs, m.jobs))
        moved = sum(height for stays, height in kept if not stays)
        rest = _spread(m.dressups - first, rest_style, m, room - m.head, moved)
        if rest:
            yield Arrangement(first, style, rest, rest_style, points, casting, jobs)


def _parts(m: Measures) -> Iterator[tuple[bool, bool, bool]]:
    """Whether points, casting and jobs stay on the first page; jobs go only with the points."""
    yield from ((points, casting, True) for points in (True, False) for casting in (True, False))
    if m.jobs:
        yield from ((False, casting, False) for casting in (True, False))


def _spread(dressups: int, style: Style, m: Measures, room: float, moved: float) -> tuple[int, ...]:
    """Dress-ups on each of as few later pages as hold them.

    The first of these also holds ``moved`` points of other parts: it takes as many rows as it has
    room for, but no more than its share; the rows of the others are shared out evenly.
    """
    if dressups == 0:
        return (0,)
    row = m.row[style]
    rows, first, most = ceil(dressups / style.value), int((room - moved) // row), int(room // row)
    if first < 0 or most < 1:
        return ()
    pages = 1 + ceil(max(0, rows - first) / most)
    shares: list[int] = []
    for page in range(pages):
        share = ceil((rows - sum(shares)) / (pages - page))
        shares.append(min(share, first) if page == 0 else share)
    held: list[int] = []
    for share in shares:
        held.append(min(share * style.value, dressups - sum(held)))
    return tuple(held)


def _cost(choice: Arrangement, left: Sequence[float], room: float) -> tuple[float, ...]:
    """Pages, then parts away from their picture, then emptiness and ragged rows."""
    shown = (choice.first, *choice.rest)
    styles = (choice.first_style, *(choice.rest_style for _ in choice.rest))
    ragged = sum(-n % style.value for n, style in zip(shown, styles, strict=True))
    return (
        choice.pages,
        not choice.jobs_first,
        not choice.points_first,
        sum((each / room) ** 2 for each in left) + 0.004 * ragged,
    )


def _left(choice: Arrangement, m: Measures, room: float) -> list[float]:
    """Empty room at the foot of each page."""
    left = [room - m.fixed - _rows(choice.first, choice.first_style, m)]
    left += (room - m.head - _rows(n, choice.rest_style, m) for n in choice.rest)
    left[0 if choice.points_first else 1] -= m.points
    left[0 if choice.casting_first else 1] -= m.casting
    left[0 if choice.jobs_first else 1] -= m.jobs
    return left


def _rows(number: int, style: Style, m: Measures) -> float:
    return ceil(number / style.value) * m.row[style]


def _lines(left: float) -> int:
    lines = int((left - NOTE_HEAD) // NOTE_LINE)
    return lines if lines >= FEWEST_NOTES else 0
