"""The call sheet: where each row stands, in how many columns and in what type.

Lengths are points. The type is as large as the paper lets it be, and never under the least that is
read with the sheet in the hand. What does not fit is counted, not set smaller.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import product
from math import ceil, pi, tan

from stemline.football.field import BallSpot
from stemline.football.play import Call
from stemline.week.killed_rows import arrowed, brief, killed, printed_row, told_kills
from stemline.week.wanting import left_empty
from stemline.week.week_values import PlanRow, Week

Ems = Callable[[str, str], float]
"""How wide words are in a face of the theme, in ems."""

DISTANCE = 20.0
"""Inches from the eye to a sheet that is held: the reading distance of ISO 9241-3's desk, and what
the caller's hand does."""
ARC_LEAST = 16.0
"""Minutes of arc that a capital's height must take at least, by ISO 9241-3 (20 to 22 are best)."""
CAP = 0.7
"""Height of a capital in ems, as the bundled face has it."""


def least_points(distance: float = DISTANCE) -> float:
    """The smallest type, rounded up to a tenth, whose capitals are seen under `ARC_LEAST`."""
    height = 2 * distance * 72 * tan(ARC_LEAST / 2 / 60 * pi / 180)
    return ceil(10 * height / CAP) / 10


LARGEST = 13.0
COMFORT = 10.3
"""Points at 20 inches by the rule of thumb of a 200th of the distance: with these one side will do,
and a second is not begun."""
WHOLE = 0.88
"""How much smaller, as a share, type may be for the sake of lists that nobody has to look up in two
places; never under the least."""
_STEP = 0.1
LONGEST_CALL = 34
"""Letters of a call on a row; a longer one is shortened as on a wristband. Common practice."""
_LONGEST_LOOK = 15
PAPERS = {"letter": (612.0, 792.0), "legal": (612.0, 1008.0), "a4": (595.3, 841.9)}
MARGIN, STRIP, GUTTER = 20.0, 54.0, 9.0
"""The margin, the least that the head with the clock and the wind takes, and the white between two
columns."""
ROW_SAID = "A row: order, box, number, call, look, hash, personnel, page of the book."
SAID, SAID_LINE, SAID_SHARE = 7.5, 9.0, 0.66
"""Points of the words at the head, of a line of them, and how much of the width they have."""
_WINDS, _RULE = 12.0, 6.0
"""Points of the line for the wind, and of the white under the head."""
ROW, HEAD, NOTE = 1.16, 1.42, 0.98
"""Heights of a row, a heading and a note, in the type's points."""
OVER = 0.14
"""White over a heading, in ems of its height: no letter of the row above touches its black."""
CELL = 0.42
"""White between two cells, in ems."""
PATTERNS = {
    "Openers": "solid", "1st down": "stripes", "2nd down": "dots", "3rd down": "bars",
    "4th down": "bars", "Any down": "stripes", "Field": "cross", "Clock, score and wind": "edge",
    "Own": "plain",
}  # fmt: skip
"""The pattern beside each part of the sheet: black and white, so that a copier keeps it."""


@dataclass(frozen=True)
class SheetRow:
    """One row as it is printed; ``note`` stands on a line of its own under it."""

    order: int
    number: str
    call: str
    look: str
    spot: str
    people: str
    page: str
    note: str


@dataclass(frozen=True)
class SheetPiece:
    """A heading and rows under it in one column; ``again`` where the list began in another."""

    title: str
    pattern: str
    again: bool
    rows: tuple[SheetRow, ...]


@dataclass(frozen=True)
class Widths:
    """Widths of the cells in points."""

    order: float
    number: float
    call: float
    look: float
    spot: float
    people: float
    page: float


@dataclass(frozen=True)
class CallSheet:
    """A sheet laid out: sides, their columns, the pieces in each. ``left`` is what has no call."""

    title: str
    clock: str
    rules: tuple[str, ...]
    winds: bool
    left: tuple[str, ...]
    width: float
    height: float
    points: float
    column: float
    strip: float
    widths: Widths
    sides: tuple[tuple[tuple[SheetPiece, ...], ...], ...]


@dataclass(frozen=True)
class NotFitting:
    """A sheet that does not fit: how many ``over`` of all ``rows``, and the list it stops in."""

    over: int
    rows: int
    where: str
    points: float


def sheet_rows(week: Week) -> list[tuple[str, str, tuple[SheetRow, ...]]]:
    """Every list of the week as title, pattern and rows, in its order."""
    return [
        (each.title, PATTERNS[each.situation.group],
         tuple(_row(week, n, row) for n, row in enumerate(each.rows, 1)))
        for each in week.plan.lists
    ]  # fmt: skip


def _row(week: Week, order: int, row: PlanRow) -> SheetRow:
    entry = week.entry(row.call)
    kills = killed(row, entry.play)
    own = ((row.kill_to, ""),) if row.kill_to else ()
    call = printed_row(row, entry.play)
    if len(call) > LONGEST_CALL:
        call = arrowed(entry.short, own)
    notes = [row.note] if row.note else []
    look = brief(row.look)
    # What he kills it on stands in the look's place; where the row's own look does, or there are
    # several, under the row.
    by_book = kills[1:] if row.kill_to else kills
    if len(by_book) == 1 and not look and len(brief(by_book[0][1])) <= _LONGEST_LOOK:
        look, by_book = brief(by_book[0][1]), ()
    if by_book:
        notes.insert(0, told_kills(by_book))
        look = look or "see note"
    if len(look) > _LONGEST_LOOK:
        notes.insert(0, f"When {look}.")
        look = "see note"
    if row.tempo:
        notes.insert(0, f"{row.tempo.title()}.")
    return SheetRow(
        order=order,
        number="" if entry.number is None else str(entry.number),
        call=call,
        look=look,
        spot=spot_letter(row.spot) or " ".join(map(spot_letter, _own_spots(entry.play.call))),
        people=entry.personnel[:10],
        page="" if entry.page is None else str(entry.page),
        note=" ".join(notes),
    )


def _own_spots(call: Call) -> tuple[BallSpot, ...]:
    """The spots that a call is for by its dress-up, where its row names none: those that it is best
    called from, else what its exceptions leave."""
    left = tuple(spot for spot in BallSpot if spot not in call.not_from)
    return call.best or (left if call.not_from else ())


def spot_letter(spot: BallSpot | None) -> str:
    """The hash by its letter, as a caller says it: L, M or R; "" for any."""
    return {None: "", BallSpot.LEFT_HASH: "L", BallSpot.MIDDLE: "M", BallSpot.RIGHT_HASH: "R"}[spot]


def lay_out(
    week: Week, paper: str, sides: int, ems: Ems, rules: Sequence[str] = ()
) -> CallSheet | NotFitting:
    """The sheet on ``paper``, one of `PAPERS`, on at most so many ``sides``.

    Upright or across, whichever takes the larger type; one side where that is read with ease. No
    list is parted where all find room whole in that type, or in one that is little smaller.
    """
    lists = sheet_rows(week)
    cells = _widths([row for *_, rows in lists for row in rows], ems)
    head = _Head(week, tuple(rules), ems)
    wide, tall = PAPERS[paper]
    least = least_points()
    counts = sorted({1, sides})
    for count in counts:
        parted: CallSheet | None = None
        points, floor = LARGEST, COMFORT if count < sides else least
        while points >= floor - 1e-9:
            for whole, (width, height) in product((True, False), ((wide, tall), (tall, wide))):
                if parted is not None and not whole:
                    continue
                made = _filled(lists, points, cells, head, (width, height), count, whole)
                if made is not None and not made[1]:
                    even = _evened(lists, points, cells, head, (width, height), made[0], whole)
                    sheet = _sheet(head, width, height, points, cells, even)
                    if not any(_parted(side) for side in even):
                        return sheet
                    parted = parted or sheet
            points = round(points - _STEP, 1)
            if parted is not None and points < WHOLE * parted.points:
                break
        if parted is not None:
            return parted
    return _not_fitting(lists, least, cells, head, (wide, tall), sides)


@dataclass(frozen=True)
class _Head:
    """What stands over the columns of a side, and how tall that is on a paper so wide."""

    week: Week
    rules: tuple[str, ...]
    ems: Ems

    @cached_property
    def clock(self) -> str:
        clock = self.week.plan.code.play_clock
        kept = clock.value
        short = f", {kept.short:g} from {kept.short_starts}" if kept.short else ""
        return f"Play clock: {kept.usual:g} seconds from {kept.starts}{short} ({clock.cited})."

    @cached_property
    def left(self) -> tuple[str, ...]:
        return left_empty(self.week.plan)

    def strip(self, width: float) -> float:
        """Never so low that the wind's line is cut off under words."""
        room = SAID_SHARE * (width - 2 * MARGIN)
        left = f"No call kept for: {', '.join(self.left)}." if self.left else ""
        said = (" ".join((ROW_SAID, self.clock, *self.rules)), left)
        # A line ends with its last whole word: a tenth is left white.
        lines = 1 + sum(ceil(1.1 * SAID * self.ems(words, "regular") / room) for words in said)
        winds = _WINDS if self.week.plan.code.canadian else 0.0
        return max(STRIP, lines * SAID_LINE + winds + 2 * _RULE)


def _widths(rows: Sequence[SheetRow], ems: Ems) -> Widths:
    """The widest of each cell, in ems; a heading has room beside them always."""

    def widest(words: Iterable[str], face: str) -> float:
        return max((ems(text, face) for text in words), default=0.0)

    return Widths(
        order=widest((str(r.order) for r in rows), "regular") * 0.8,
        number=widest((r.number for r in rows), "bold") * 1.15,
        call=max(widest((r.call for r in rows), "semibold"), 8.0),
        look=widest((r.look for r in rows), "italic"),
        spot=widest((r.spot for r in rows), "bold"),
        people=widest((r.people for r in rows), "regular") * 0.85,
        page=widest((r.page for r in rows), "regular") * 0.85,
    )


def _natural(cells: Widths, points: float) -> float:
    parts = (
        cells.order, cells.number, cells.call, cells.look, cells.spot, cells.people, cells.page
    )  # fmt: skip
    box = 0.8
    used = [part for part in (*parts, box) if part]
    pattern = 9.0
    return points * (sum(used) + CELL * (len(used) + 1)) + pattern


_Lists = Sequence[tuple[str, str, tuple[SheetRow, ...]]]
_Sides = list[list[list[SheetPiece]]]


def _filled(
    lists: _Lists,
    points: float,
    cells: Widths,
    head: _Head,
    paper: tuple[float, float],
    count: int,
    whole: bool = False,
    last: float | None = None,
) -> tuple[_Sides, list[tuple[str, int]]] | None:
    """The lists in columns of so many sides, and what is left over: titles and rows. None where
    not one column is wide enough. ``whole`` begins a list in the next column rather than part it;
    ``last`` is how tall the columns of the last side may be."""
    width, height = paper
    room = width - 2 * MARGIN
    across = int((room + GUTTER) / (_natural(cells, points) + GUTTER))
    if across < 1:
        return None
    tall = height - 2 * MARGIN - head.strip(width)
    columns: list[list[SheetPiece]] = [[] for _ in range(across * count)]
    at, used = 0, 0.0
    left: list[tuple[str, int]] = []
    for title, pattern, rows in lists:
        waiting, again = list(rows), False
        while waiting:
            if at >= len(columns):
                left.append((title, len(waiting)))
                break
            most = tall if last is None or at < len(columns) - across else min(tall, last)
            taken = _taken(waiting, points, most - used - HEAD * points)
            alone = _taken(waiting, points, most - HEAD * points)
            if whole and used and not again and taken < len(waiting) == alone:
                taken = 0
            # Neither a heading with one row under it, nor the last row of a list, stands alone.
            if 1 < taken == len(waiting) - 1:
                taken -= 1
            if not taken or (taken == 1 and len(waiting) > 1):
                at, used = at + 1, 0.0
                continue
            piece = SheetPiece(title, pattern, again, tuple(waiting[:taken]))
            columns[at].append(piece)
            used += points * (HEAD + sum(map(_tall, piece.rows)))
            waiting, again = waiting[taken:], True
    sides = [columns[n : n + across] for n in range(0, len(columns), across)]
    return sides, left


def _evened(
    lists: _Lists,
    points: float,
    cells: Widths,
    head: _Head,
    paper: tuple[float, float],
    sides: _Sides,
    whole: bool,
) -> _Sides:
    """The same with the columns of its last side about as long as each other, and as few lists as
    can be parted between them."""
    kept = [side for side in sides if any(side)]
    heights = [points * sum(HEAD + sum(map(_tall, p.rows)) for p in col) for col in kept[-1]]
    best, parted = kept, _parted(kept[-1])
    last, longest = sum(heights) / len(heights), max(heights)
    even = False
    while last < longest and not (even and parted == 0):
        made = _filled(lists, points, cells, head, paper, len(kept), whole, last)
        if made is not None and not made[1]:
            again = _parted(made[0][-1])
            if again < parted or not (even or (whole and again > parted)):
                best, parted, even = made[0], again, True
        last += ROW * points
    return best


def _parted(side: list[list[SheetPiece]]) -> int:
    return sum(piece.again for column in side for piece in column)


def _tall(row: SheetRow) -> float:
    """A row's height in ems."""
    return ROW + (NOTE if row.note else 0.0)


def _taken(rows: Sequence[SheetRow], points: float, room: float) -> int:
    """How many rows from the first on fit into so much room."""
    taken = 0
    for row in rows:
        room -= points * _tall(row)
        if room < -1e-6:
            break
        taken += 1
    return taken


def _sheet(
    head: _Head, width: float, height: float, points: float, cells: Widths, sides: _Sides
) -> CallSheet:
    plan = head.week.plan
    across = max(len(side) for side in sides)
    column = (width - 2 * MARGIN - GUTTER * (across - 1)) / across
    kept = [side for side in sides if any(side)]
    # Room that is left between the columns goes to the call.
    more = max(column - _natural(cells, points), 0.0)
    return CallSheet(
        title=f"Week {plan.number}: {plan.opponent}",
        clock=head.clock,
        rules=head.rules,
        winds=plan.code.canadian,
        left=head.left,
        width=width,
        height=height,
        points=points,
        column=column,
        strip=head.strip(width),
        widths=Widths(
            cells.order * points, cells.number * points, cells.call * points + more,
            cells.look * points, cells.spot * points, cells.people * points, cells.page * points,
        ),
        sides=tuple(tuple(tuple(column) for column in side) for side in kept),
    )  # fmt: skip


def _not_fitting(
    lists: _Lists, points: float, cells: Widths, head: _Head, paper: tuple[float, float], sides: int
) -> NotFitting:
    """What is left over where the least is left over."""
    total = sum(len(rows) for *_, rows in lists)
    tries = []
    for size in (paper, paper[::-1]):
        made = _filled(lists, points, cells, head, size, sides)
        left = made[1] if made is not None else [(lists[0][0], total)]
        tries.append((sum(n for _, n in left), left[0][0]))
    over, where = min(tries)
    return NotFitting(over, total, where, points)
