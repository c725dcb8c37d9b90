"""A week on paper: its call sheet, wristbands, scout cards, script, index and data as files."""

from __future__ import annotations

import re
from collections.abc import Callable, Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from functools import lru_cache

from stemline.book.content.book import Edition
from stemline.book.content.plan_book import make_plan_book
from stemline.book.paper import Paper
from stemline.diagnostics.catalogue.weeks import E984, E996, E997, W996
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.diagnostics.in_words import how_many
from stemline.emit.apart import apart
from stemline.emit.parts import FEW
from stemline.emit.pdf import page_count
from stemline.emit.side_by_side import SideBySide
from stemline.emit.week_counting import counting_pdf
from stemline.emit.week_install import install_pdf
from stemline.emit.week_pages import (
    DUTIES,
    ScoutCard,
    bands_pdf,
    card_room,
    index_pdf,
    scout_pdf,
    script_pdf,
    sheet_pdf,
)
from stemline.emit.week_positions import position_pdf
from stemline.emit.week_quiz import quiz_pdf
from stemline.football.play import Play
from stemline.football.timing.levels import HIGH_SCHOOL, PlayingLevel
from stemline.outside.file_names import file_names
from stemline.outside.store import Store
from stemline.picture.scene.metrics import faces
from stemline.printing.drawings import Drawings
from stemline.printing.install_papers import installed_calls
from stemline.printing.look_team_cards import card_picture, duty_points
from stemline.printing.position_papers import OwnPictures, position_page
from stemline.printing.printed_season import Build
from stemline.printing.quiz_papers import question_height, quiz_sheets
from stemline.theme import Theme
from stemline.week.bands import REFUSED, WARNED, Card, TooSmall, card_of, copies, place
from stemline.week.call_sheet import Ems, NotFitting, lay_out
from stemline.week.index_of import index_lines
from stemline.week.leanings import leanings_of
from stemline.week.plain_data import data_files
from stemline.week.position_book import men_of, own_book
from stemline.week.practising import day_place
from stemline.week.quizzing import quiz_papers
from stemline.week.scripting import ScriptPeriod, card_key, card_numbers, script_of, shown_rows
from stemline.week.week_values import PlanRow, RowAnswer, Week

PARTS = (
    "sheet", "bands", "gameplan", "scout", "script", "positions", "quiz", "counting",
    "install", "index", "data",
)  # fmt: skip
"""What is made, by the words a coach asks for it with."""
SHEET, BANDS, SCOUT = "call-sheet.pdf", "wristbands.pdf", "scout-cards.pdf"
SCRIPT, INDEX = "practice-script.pdf", "call-index.pdf"
QUIZ, KEY, COUNTING = "quiz.pdf", "quiz-key.pdf", "counting.pdf"
GAME_PLAN, INSTALL = "game-plan.pdf", "install.pdf"
LAST_MINUTES = (
    "Last 3 minutes of a half: time stops after each play; a time-count foul costs the down on 1st "
    "and 2nd, 10 yards on 3rd (as reported; ask your league)."
)


@dataclass(frozen=True)
class Printing:
    """How the papers are printed: on which paper, the sheet on how many sides, in what theme;
    ``revision`` and ``date`` are those of the playbook. ``men`` are letters, positions or groups
    whose books are made, none for everybody's; ``store`` keeps drawings, ``helpers`` are
    the processes of `stemline.printing.workbench`."""

    theme: Theme
    paper: str = "letter"
    sheet_paper: str = "letter"
    sides: int = 2
    revision: str = ""
    date: str = ""
    level: PlayingLevel = HIGH_SCHOOL
    men: tuple[str, ...] = ()
    store: Store | None = None
    helpers: SideBySide | None = None


@dataclass
class Papers:
    """The files by name, how many sheets each takes, in words, and what is wrong with them."""

    files: dict[str, bytes] = field(default_factory=dict)
    counts: list[str] = field(default_factory=list)
    found: list[Diagnostic] = field(default_factory=list)


def ems_of(theme: Theme) -> Ems:
    """How wide words are in the theme's faces."""
    known = faces(theme)

    @lru_cache(maxsize=8192)
    def ems(text: str, face: str) -> float:
        return sum(known[face].glyph(letter).advance for letter in text)

    return ems


def week_papers(
    week: Week,
    printing: Printing,
    parts: Collection[str] = PARTS,
    answers: Sequence[RowAnswer] = (),
) -> Papers:
    """The papers that are asked for; none of the files where one has an error. ``answers`` are
    those of the passes to the looks that the week names, for the counting alone."""
    making = _Making(week, printing, answers)
    for part in PARTS:
        if part in parts:
            making.make(part)
    making.finish()
    return making.papers


class _Making:
    def __init__(self, week: Week, printing: Printing, answers: Sequence[RowAnswer] = ()) -> None:
        self._week, self._printing, self._answers = week, printing, answers
        self._theme = printing.theme
        self._ems = ems_of(printing.theme)
        self._drawings = Drawings(printing.theme, printing.level, printing.store, printing.helpers)
        self._jobs: dict[str, tuple[Callable[..., bytes], tuple[object, ...]]] = {}
        self._counts: list[str | Callable[[], str]] = []
        self._title = f"Week {week.plan.number}: {week.plan.opponent}"
        said = (week.plan.team, self._title, week.plan.date, printing.revision)
        self._footer = " · ".join(part for part in said if part)
        self.papers = Papers()

    def make(self, part: str) -> None:
        makers: Mapping[str, Callable[[], None]] = {
            "sheet": self._sheet,
            "bands": self._bands,
            "gameplan": self._game_plan,
            "scout": self._scout,
            "script": self._script,
            "positions": self._positions,
            "quiz": self._quiz,
            "counting": self._counting,
            "install": self._install,
            "index": self._index,
            "data": self._data,
        }
        makers[part]()

    def finish(self) -> None:
        """Set what was laid out: the papers hang on nothing but their own values."""
        jobs, helpers = self._jobs, self._printing.helpers
        if any(d.is_error for d in self.papers.found):
            self.papers.files.clear()
            return
        made = iter(())
        if helpers is not None and self._theme.bundled and (helpers.started or len(jobs) >= FEW):
            made = helpers.each("paper", tuple(jobs.values()))
        for name, (make, values) in jobs.items():
            self.papers.files[name] = next(made, None) or apart(self._theme, 1, make, *values)
        said = (words if isinstance(words, str) else words() for words in self._counts)
        self.papers.counts += said

    def _sheet(self) -> None:
        plan, how = self._week.plan, self._printing
        if not plan.lists:
            return
        rules = (LAST_MINUTES,) if plan.code.canadian else ()
        made = lay_out(self._week, how.sheet_paper, how.sides, self._ems, rules)
        if isinstance(made, NotFitting):
            paper = f"{how_many(how.sides, 'side')} of {how.sheet_paper}"
            self.papers.found.append(
                E997(
                    points=made.points,
                    over=made.over,
                    rows=made.rows,
                    paper=paper,
                    where=made.where,
                ).at(plan.span)
            )
            return
        self._put(SHEET, sheet_pdf, made)
        self._counts.append(f"call sheet: {how_many(len(made.sides), 'side')}")

    def _bands(self) -> None:
        cards: list[tuple[Card, int]] = []
        for band in self._week.plan.bands:
            card = card_of(self._week, band, self._ems)
            if isinstance(card, TooSmall):
                self.papers.found.append(
                    E996(band=band.name, calls=card.calls, points=REFUSED, room=card.room).at(
                        band.span
                    )
                )
                continue
            if card.points < WARNED:
                self.papers.found.append(
                    W996(band=band.name, points=card.points, least=WARNED).at(band.span)
                )
            cards.append((card, copies(self._week.plan, band)))
        if not cards:
            return
        sheets = place(cards, self._printing.paper)
        if isinstance(sheets, str):
            band = next(b for b in self._week.plan.bands if b.name == sheets)
            size = f"{band.width:g} x {band.height * band.windows:g}"
            self.papers.found.append(E984(found=size).at(band.span))
            return
        self._put(BANDS, bands_pdf, sheets, f"{self._title}: wristbands")
        worn = ", ".join(f"{count} {card.name}" for card, count in cards)
        count = how_many(len(sheets), "sheet")
        self._counts.append(f"wristbands: {count} ({worn})")

    def _game_plan(self) -> None:
        game, how = self._week.game, self._printing
        if game is None or not game.season.plays:
            return
        edition = Edition(how.revision, how.date, Paper.named(how.paper))
        book = make_plan_book(self._week, edition)
        build = Build(
            game.season, how.revision, how.date, how.theme, lambda *_: None, edition.paper,
            how.store, book, helpers=how.helpers,
        )  # fmt: skip
        self.papers.files[GAME_PLAN] = build.book()
        sheets = how_many(self._sheets(GAME_PLAN), "sheet")
        self._counts.append(f"game plan: {sheets} on both sides")

    def _scout(self) -> None:
        cards = self.cards()
        if cards:
            title = f"{self._title}: scout cards"
            self._put(SCOUT, scout_pdf, cards, title, self._theme, self._printing.paper)
            self._counts.append(f"scout cards: {how_many(len(cards), 'sheet')}")

    def cards(self) -> list[ScoutCard]:
        plan, numbers = self._week.plan, card_numbers(self._week)
        uses = self._uses()
        made: dict[int, ScoutCard] = {}
        for row in shown_rows(self._week):
            key = card_key(row)
            if numbers[key] not in made:
                play = plan.shown[row.call, row.against, row.spot]
                made[numbers[key]] = self._card(numbers[key], play, row, uses.get(key, ""))
        return [made[number] for number in sorted(made)]

    def _card(self, number: int, play: Play, row: PlanRow, uses: str) -> ScoutCard:
        room = card_room(self._printing.paper)
        art = card_picture(f"scout-{number}", play, self._theme, room)
        assert play.defence is not None, "a card shows a look"
        # "[T]" is their letter; the look team has no other.
        words = {d.label: d.duty.words if d.duty else "" for d in play.defence.defenders}
        duties = tuple((man, re.sub(r"[\[\]]", "", job)) for man, job in words.items())
        spot = row.spot.value if row.spot else ""
        points = duty_points(duties, self._ems, DUTIES - 12.0, room[1])
        return ScoutCard(number, row.against, spot, uses, art, duties, points)

    def _uses(self) -> dict[tuple[str, str, str], str]:
        """The periods in which each card is used, day after day, by what it is of."""
        plan = self._week.plan
        uses: dict[tuple[str, str, str], dict[str, None]] = {}
        named = [(scout.name, scout.name, scout.rows) for scout in plan.scouts]
        named += [(p.day, f"{p.day} {p.name}".strip(), p.rows) for p in plan.periods]
        for _, words, rows in sorted(named, key=lambda use: day_place(use[0])):
            for row in rows:
                if row.against:
                    uses.setdefault(card_key(row), {})[words] = None
        return {key: ", ".join(_longest(words)) for key, words in uses.items()}

    def _script(self) -> None:
        if not self._week.plan.periods:
            return
        script = script_of(self._week)
        self._put(SCRIPT, script_pdf, script, self._theme, self._printing.paper)
        days = how_many(len(script.days), "practice")
        over: list[ScriptPeriod] = [p for d in script.days for p in d.periods if p.over]
        said = f", {how_many(len(over), 'period')} with more reps than fit" if over else ""
        self._counts.append(f"script: {days}{said}")

    def _positions(self) -> None:
        """A file a man, so that each may be printed on both sides and handed out."""
        how = self._printing
        men = men_of(self._week.plan, how.men)
        named = {man: f"positions/{name}.pdf" for man, name in file_names(men).items()}
        books = [own_book(self._week, man) for man in men]
        pictures = OwnPictures(self._drawings)
        with self._drawings.beside(pictures.wanted(books)):
            for book in books:
                page, arts = position_page(book, self._week, pictures, how.paper)
                name = named[book.man]
                self._put(name, position_pdf, page, arts, self._title, self._theme, how.paper)

        def counted() -> str:
            sheets = how_many(sum(map(self._sheets, named.values())), "sheet")
            return f"position books: {sheets} on both sides ({', '.join(men)})"

        if men:
            self._counts.append(counted)

    def _quiz(self) -> None:
        papers, paper = quiz_papers(self._week), self._printing.paper
        if not papers:
            return
        tall = question_height(paper)
        quizzes, keys = quiz_sheets(papers, self._drawings, paper)
        for name, title, sheets in ((QUIZ, "quiz", quizzes), (KEY, "key", keys)):
            self._put(name, quiz_pdf, sheets, f"{self._title}: {title}", self._theme, paper, tall)
        count, men = how_many(len(papers), "sheet"), ", ".join(each.man for each in papers)
        self._counts.append(f"quiz: {count} ({men}); key to it: {count}")

    def _counting(self) -> None:
        counted = leanings_of(self._week, self._answers)
        if counted.rows:
            self._put(
                COUNTING, counting_pdf, counted, self._title, self._theme, self._printing.paper
            )
            self._counts.append(lambda: f"counting: {how_many(self._sheets(COUNTING), 'sheet')}")

    def _install(self) -> None:
        """Nothing in a playbook that says no install."""
        sheet, how = self._week.install, self._printing
        if sheet is None:
            return
        planned = installed_calls(sheet, self._week)
        self._put(INSTALL, install_pdf, sheet, planned, self._title, self._theme, how.paper)
        self._counts.append(
            lambda: f"install: {how_many(self._sheets(INSTALL), 'sheet')} on both sides"
        )

    def _index(self) -> None:
        lines = index_lines(self._week)
        if lines:
            self._put(INDEX, index_pdf, lines, self._title, self._theme, self._printing.paper)
            self._counts.append(f"index: {how_many(len(lines), 'call')}")

    def _data(self) -> None:
        files = data_files(self._week)
        self.papers.files |= {f"data/{name}": data for name, data in files.items()}
        self._counts.append(f"data: {how_many(len(files), 'file')}")

    def _put(self, name: str, make: Callable[..., bytes], *values: object) -> None:
        """A file to be made: here, beside, or for a coach's own theme in a process of its own."""
        if self._theme not in values:
            values = (*values, self._theme)
        self._jobs[name] = make, (*values, self._footer, self._printing.date)
        self.papers.files[name] = b""  # its place among them

    def _sheets(self, name: str) -> int:
        """How many sheets a file takes on both sides."""
        return (page_count(self.papers.files[name]) + 1) // 2


def _longest(names: Iterable[str]) -> list[str]:
    """Names that no other goes on from: not "Tuesday" beside "Tuesday Inside Run"."""
    known = tuple(names)
    return [n for n in known if not any(other.startswith(f"{n} ") for other in known)]
