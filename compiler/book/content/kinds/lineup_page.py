"""How the offence lines up: some formations a page, called right, with where each man stands."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from stemline.book.content.keeping import Reads
from stemline.book.content.page import Entry, Listing, Page, PageKind, Remark, joined
from stemline.book.content.pointed_places import formation_place
from stemline.diagnostics.in_words import half_yards
from stemline.football.play import FormationSheet, Man, Play, Season

_SHEET, _RULES = 668.0, 36.0
_HEAD, _ROW, _LINE = 38.6, 12.2, 9.4
_ABOVE, _PICTURE = 26.0, 5870.0
"""Points of a sheet below its heading, of the code's rules, of a formation's own heading with that
of its table, a row there, a further line of a row, the heading over its picture, and the picture of
a field one yard wide; measured, and only used to guess where a sheet is full."""
_LETTERS, _WIDE = 28, 52
"""Letters of a split on a line beside the picture, and of the coach's words on one below it."""


@dataclass(frozen=True)
class StandRow:
    """A man of a formation: the coach's words for his split, his yards from the ball with the ball
    in the middle, the called side into the field and into the boundary, and how far off the line
    he is, "on" for a line player."""

    man: str
    split: str
    yards: tuple[str, str, str]
    depth: str


@dataclass(frozen=True)
class LinedUpSet:
    """A formation: its picture, its men, who comes in for whom against the usual personnel, and
    where the ``line`` stands."""

    entry: Entry
    rows: tuple[StandRow, ...]
    people: str
    says: tuple[str, ...]
    line: str

    @property
    def height(self) -> float:
        """About how many points it takes."""
        more = sum(max(0, (len(row.split) - 1) // _LETTERS) for row in self.rows)
        words = sum(-(-len(line) // _WIDE) for line in self.says)
        drawn = _PICTURE / self.entry.play.field.code.width.value + _ROW * words
        return max(_HEAD + _ROW * len(self.rows) + _LINE * more, _ABOVE + drawn)


@dataclass(frozen=True, kw_only=True)
class LineupPage(Page):
    """``sets`` are as many formations as a sheet holds; the first page has the ``rules`` of the
    code."""

    template = "lineup.html.jinja"
    listing = Listing.FIRST
    trims = True

    sets: tuple[LinedUpSet, ...]
    rules: tuple[Remark, ...] = ()

    @property
    def framed(self) -> tuple[tuple[Entry, ...], ...]:
        return (tuple(one.entry for one in self.sets),)


class MoreSets(LineupPage):
    """The formations after the first page, which the contents find with it."""

    listing = Listing.NONE


def _pages(season: Season, _: Sequence[Page]) -> Iterator[LineupPage]:
    base = usual_letters(season)
    sets = tuple(_set(sheet, season, base) for sheet in season.formations)
    for at, some in enumerate(_sheets(sets), 1):
        first, last = some[0].entry.call, some[-1].entry.call
        names = first if len(some) == 1 else f"{first} to {last}"
        yield (MoreSets if at > 1 else LineupPage)(
            id=f"lineup-{at}" if at > 1 else "lineup",
            name="How we line up" if at == 1 else f"How we line up: {names}",
            sets=some,
            rules=_rules([sheet.view for sheet in season.formations]) if at == 1 else (),
        )


def _sheets(sets: Sequence[LinedUpSet]) -> Iterator[tuple[LinedUpSet, ...]]:
    """The formations that stand on a sheet, in their order."""
    some: list[LinedUpSet] = []
    left = _SHEET - _RULES
    for one in sets:
        if some and one.height > left:
            yield tuple(some)
            some, left = [], _SHEET
        some.append(one)
        left -= one.height
    if some:
        yield tuple(some)


KIND = PageKind(10, _pages, reads=Reads.CALLS)


def usual_letters(season: Season) -> tuple[str, ...]:
    """The letters of the personnel that most calls are called with."""
    count: dict[tuple[str, ...], int] = {}
    for play in season.plays:
        letters = letters_of(play)
        count[letters] = count.get(letters, 0) + 1
    return max(count, key=lambda letters: count[letters], default=())


def letters_of(play: Play) -> tuple[str, ...]:
    """Who is in the game besides the line, by letter."""
    return tuple(sorted(man.label for man in play.men if not man.interior))


def _set(sheet: FormationSheet, season: Season, base: Sequence[str]) -> LinedUpSet:
    view = sheet.view
    entry = Entry(
        formation_place(sheet.name), sheet.name, view, listed=False,
        aside=joined("{}x{}".format(*view.shape), sheet.people),
    )  # fmt: skip

    def place(man: Man) -> tuple[int, str]:
        known = man.label in season.letters
        return (season.letters.index(man.label) if known else len(season.letters), man.label)

    men = sorted((man for man in view.men if not man.interior), key=place)
    rows = tuple(_row(man, sheet) for man in men)
    return LinedUpSet(entry, rows, comes_in(view, base), sheet.says, _line(view))


def _line(view: Play) -> str:
    """The line from left to right, each man's yards from the ball."""
    men = sorted((man for man in view.men if man.interior), key=lambda man: man.at.x)
    told = (f"{m.label} {half_yards(abs(m.at.x)) if m.at.x else 'over the ball'}" for m in men)
    return ", ".join(told)


def _row(man: Man, sheet: FormationSheet) -> StandRow:
    said = [(where, guard) for letter, where, guard in sheet.splits if letter == man.label]
    split = "; ".join(f"{where}{f' when {guard}' if guard else ''}" for where, guard in said)
    views = (sheet.view, sheet.to_field, sheet.to_boundary)
    yards = tuple(
        half_yards(abs(play.man(man.label).at.x)) if play is not None else "" for play in views
    )
    depth = "on" if man.on_line else half_yards(-man.at.y)
    return StandRow(man.label, split, (yards[0], yards[1], yards[2]), depth)


def comes_in(play: Play, base: Sequence[str]) -> str:
    """Who comes in for whom against the usual men: "Y for W"; "" where nobody does."""
    mine = letters_of(play)
    new = [letter for letter in mine if letter not in base]
    gone = [letter for letter in base if letter not in mine]
    return f"{' '.join(new)} for {' '.join(gone)}" if new and gone else ""


def _rules(views: Sequence[Play]) -> tuple[Remark, ...]:
    """What the code asks of the men at the snap, each with how sure it is, and the numbers of all
    of ours who have one."""
    code = views[0].field.code
    ranges = ", ".join(f"{low} to {high}" for low, high in code.ineligible_numbers.value)
    numbers = code.ineligible_numbers
    made = [Remark("On the line", f"At least {code.on_line.value:g} men ({code.on_line.cited}).")]
    if ranges:
        words = f"Who may not catch a pass wears {ranges} ({numbers.cited})."
        made.append(Remark("Jerseys", words))
    ours = {(m.number, m.label) for view in views for m in view.men if m.number is not None}
    if ours:
        worn = ", ".join(f"{label} {number}" for number, label in sorted(ours))
        made.append(Remark("Ours", f"{worn}."))
    return tuple(made)
