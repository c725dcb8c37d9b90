"""Week blocks: what is called when, against whom, what is worn and what is practised."""

from __future__ import annotations

import datetime
from collections.abc import Collection, Sequence
from dataclasses import dataclass, field

from stemline.diagnostics.catalogue.expected_forms import NO_WHEN
from stemline.diagnostics.catalogue.football import E402
from stemline.diagnostics.catalogue.forms import E223
from stemline.diagnostics.catalogue.weeks import E970, E976, E977, E978, E979, E980, W974
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.diagnostics.nearest import nearest
from stemline.football.contact_limits import DAYS
from stemline.football.situations import Situation
from stemline.playbook.week_definitions import (
    BandDef,
    DropDef,
    ListDef,
    MoveDef,
    Named,
    NumberDef,
    Numbering,
    PeriodDef,
    QuizDef,
    ScoutDef,
    ShortDef,
    WeekDef,
)
from stemline.read.read_situations import Piece, pieces, read_situation
from stemline.read.read_week_rows import (
    read_band,
    read_call_rows,
    read_period,
    read_shown_rows,
)
from stemline.read.words import Misread, one_phrase, string_of
from stemline.source import Span
from stemline.syntax.tree import AtomKind, Block, Fact, Link, Linked, Mark, Phrase, Value, items

MOST_ROWS = 1000
"""Rows of a week, four times the longest call sheet: a bound on what is looked through."""
LARGEST_NUMBER = 999
_LONGEST_SHORT = 24
_PARTS = ("period", "scout", "wristband")


def read_week(
    block: Block, unread: bool, looks: Collection[str] = ()
) -> tuple[WeekDef, tuple[Diagnostic, ...]]:
    """The week of a block, with what is wrong in it; ``unread`` tells that the parser could not
    read one of its lines, ``looks`` are the names of the playbook's looks."""
    reader = _Reader(block, looks)
    reader.read_all()
    broken = unread or any(d.is_error for d in reader.found)
    return reader.week(broken), tuple(reader.found)


@dataclass
class _Reader:
    block: Block
    looks: Collection[str] = ()
    found: list[Diagnostic] = field(default_factory=list)
    date: str = ""
    faces: list[Named] = field(default_factory=list)
    drops: list[DropDef] = field(default_factory=list)
    moves: list[MoveDef] = field(default_factory=list)
    lists: list[ListDef] = field(default_factory=list)
    bands: list[BandDef] = field(default_factory=list)
    scouts: list[ScoutDef] = field(default_factory=list)
    periods: list[PeriodDef] = field(default_factory=list)
    quizzes: list[QuizDef] = field(default_factory=list)
    shorts: list[ShortDef] = field(default_factory=list)
    frozen: list[NumberDef] = field(default_factory=list)
    starts: list[tuple[str, int]] = field(default_factory=list)
    says: list[str] = field(default_factory=list)
    numbering: Numbering | None = None

    def read_all(self) -> None:
        rows = 0
        for fact in self.block.facts:
            rows += len(fact.rows)
            if rows > MOST_ROWS:
                self.found.append(E976(most=MOST_ROWS).at(fact.span))
                return
            try:
                self._read(fact)
            except Misread as miss:
                self.found.append(miss.diagnostic)

    def week(self, broken: bool) -> WeekDef:
        number, opponent = _title(self.block.name, self.found)
        parent = self.block.join("from")
        return WeekDef(
            number=number,
            opponent=opponent,
            span=self.block.name.span,
            broken=broken or not number,
            parent=Named(parent.text, parent.span) if parent is not None else None,
            date=self.date,
            faces=tuple(self.faces),
            drops=tuple(self.drops),
            moves=tuple(self.moves),
            lists=tuple(self.lists),
            bands=tuple(self.bands),
            scouts=tuple(self.scouts),
            periods=tuple(self.periods),
            quizzes=tuple(self.quizzes),
            shorts=tuple(self.shorts),
            frozen=tuple(self.frozen),
            numbering=self.numbering,
            says=tuple(self.says),
            starts=tuple(self.starts),
        )

    def _read(self, fact: Fact) -> None:
        if fact.guard is not None:
            what = "this line without `when`"
            raise Misread(E402(what=what, instead=NO_WHEN).at(fact.guard.span))
        match fact.key:
            case "date":
                self.date = _date(fact)
            case "say":
                self.says.append(string_of(fact.value, fact.span))
            case "faces":
                self.faces += [
                    _named(item, "looks parted by commas") for item in items(fact.value, Mark.AND)
                ]
            case "drop":
                self.drops.append(_drop(fact))
            case "move":
                self.moves.append(_move(fact))
            case "short":
                self.shorts.append(_short(fact))
            case "number":
                self.frozen.append(_number(fact))
            case "numbers":
                self.numbering = _numbering(fact, self.numbering or Numbering())
            case "quiz":
                self.quizzes.append(_quiz(fact))
            case "practice":
                self.starts.append(_start(fact))
            case _:
                self._opened(fact)

    def _opened(self, fact: Fact) -> None:
        misplaced = fact.key == "openers" and fact.value is not None  # told as what it is
        if not fact.rows and fact.key in ("openers", "situation", "scout") and not misplaced:
            self.found.append(W974(opener=fact.key).at(fact.span))
        match fact.key:
            case "openers" | "situation":
                self._list(fact)
            case "wristband":
                self.bands.append(read_band(fact, self.found))
            case "scout":
                name = _named(fact.value, "the cards' name", fact.span).text
                self.scouts.append(
                    ScoutDef(name, read_shown_rows(fact, self.found, self.looks), fact.span)
                )
            case _:
                self.periods.append(read_period(fact, self.found, self.looks))

    def _list(self, fact: Fact) -> None:
        said = pieces(fact.value)
        if fact.key == "openers":
            said = [("openers", fact.span, False), *said]
        elif not said:
            raise Misread(
                E223(word="situation", kind="week", example="situation 2nd and 7 or more").at(
                    fact.span
                )
            )
        rows = read_call_rows(fact, self.found, self.looks)
        self.lists.append(ListDef(read_situation(said), rows, fact.span))


def _title(name: Phrase, found: list[Diagnostic]) -> tuple[int, str]:
    """The week's figure and its opponent; 0 where none is given."""
    first, *rest = name.atoms
    whole = first.kind is AtomKind.NUMBER and first.text.isdecimal()
    number = int(first.text) if whole else 0
    if not 0 < number <= LARGEST_NUMBER or not rest:
        found.append(E970(found=name.text).at(name.span))
        return 0, name.text
    return number, " ".join(atom.text for atom in rest)


def _named(value: Value | None, what: str, span: Span | None = None) -> Named:
    if value is None:
        assert span is not None, "a value that may be missing has a place"
        raise Misread(E402(what=what).at(span))
    phrase = one_phrase(value, what, value.span)
    return Named(phrase.text, phrase.span)


def named_call(value: Value | None, span: Span) -> Named:
    """A call as it is said, its tags with `+` between them or side by side."""
    parts = [one_phrase(part, "a call", span) for part in items(value, Mark.TOGETHER)]
    if not parts:
        raise Misread(E402(what="a call").at(span))
    return Named(" + ".join(part.text for part in parts), parts[0].span.to(parts[-1].span))


def _date(fact: Fact) -> str:
    phrase = one_phrase(fact.value, "a date", fact.span)
    try:
        return datetime.date.fromisoformat(phrase.text).isoformat()
    except ValueError:
        raise Misread(E977(found=phrase.text).at(phrase.span)) from None


def _links(fact: Fact, what: str) -> tuple[Value, tuple[Link, ...]]:
    if not isinstance(fact.value, Linked) or fact.value.head is None:
        raise Misread(E402(what=what).at(fact.span))
    return fact.value.head, fact.value.links


def _situation_at(value: Value) -> Situation:
    return read_situation(pieces(value))


def _drop(fact: Fact) -> DropDef:
    if isinstance(fact.value, Linked):
        head, links = _links(fact, "a call, or `all`, and the situation it leaves")
        call = named_call(head, fact.span)
        situation = _situation_at(links[-1].value)
        every = call.text.casefold() == "all"
        return DropDef(None if every else call, situation, "", "", fact.span)
    call = named_call(fact.value, fact.span)
    kind, _, name = call.text.partition(" ")
    if kind.casefold() in _PARTS and name:
        return DropDef(None, None, kind.casefold(), name, fact.span)
    return DropDef(call, None, "", "", fact.span)


def _move(fact: Fact) -> MoveDef:
    what = "a call `to` a situation"
    head, links = _links(fact, what)
    source: Situation | None = None
    after: Named | None = None
    to: list[Piece] = []
    for link in links:
        match link.connector.word:
            case "from":
                source = _situation_at(link.value)
            case "after":
                after = named_call(link.value, fact.span)
            case _:
                to = _joined(to, pieces(link.value))
    if not to:
        raise Misread(E402(what=what).at(fact.span))
    return MoveDef(named_call(head, fact.span), source, read_situation(to), after, fact.span)


def _joined(to: list[Piece], more: list[Piece]) -> list[Piece]:
    """A range is cut at its own `to`: "3rd and 1" and "2" are put together again."""
    if not to:
        return more
    (text, span, quoted), (next_text, next_span, _) = to[-1], more[0]
    return [*to[:-1], (f"{text} to {next_text}", span.to(next_span), quoted), *more[1:]]


def _short(fact: Fact) -> ShortDef:
    head, links = _links(fact, "a name, `is`, and how it is shortened")
    name, said = named_call(head, fact.span), _named(links[-1].value, "a short name")
    if len(said.text) > _LONGEST_SHORT:
        raise Misread(E978(found=said.text, most=_LONGEST_SHORT).at(said.span))
    return ShortDef(name, said.text, fact.span)


def _number(fact: Fact) -> NumberDef:
    head, links = _links(fact, "a call, `is`, and its number")
    said = _named(links[-1].value, "a number")
    if not said.text.isdecimal() or not 0 < int(said.text) <= LARGEST_NUMBER:
        raise Misread(E979(found=said.text, most=LARGEST_NUMBER).at(said.span))
    return NumberDef(named_call(head, fact.span), int(said.text), fact.span)


def _numbering(fact: Fact, known: Numbering) -> Numbering:
    together, seed = known.together, known.seed
    for text, span, _ in pieces(fact.value):
        word = text.casefold()
        if word in ("together", "apart"):
            together = word == "together"
        elif word.startswith("seed ") and len(word) > 5:
            seed = word[5:]
        else:
            near = nearest(word, ("together", "apart", "seed 1"))
            raise Misread(
                E980(found=text, choices="together, apart or seed 1").at(span, nearest=near)
            )
    return Numbering(together, seed)


def day_of(text: str) -> str | None:
    """A day of the week as it is printed; None for another word."""
    return next((day for day in DAYS if day.casefold() == text.casefold()), None)


def _day(value: Value) -> str:
    said = _named(value, "a day of the week")
    day = day_of(said.text)
    if day is None:
        near = nearest(said.text, DAYS)
        raise Misread(E980(found=said.text, choices=", ".join(DAYS)).at(said.span, nearest=near))
    return day


def _men(value: Value | None, span: Span) -> tuple[Named, ...]:
    return tuple(_named(item, "letters parted by commas", span) for item in items(value, Mark.AND))


def _quiz(fact: Fact) -> QuizDef:
    if isinstance(fact.value, Linked):
        head, links = _links(fact, "letters, and `on` a day")
        return QuizDef(_men(head, fact.span), _day(links[-1].value), fact.span)
    return QuizDef(_men(fact.value, fact.span), "", fact.span)


def _start(fact: Fact) -> tuple[str, int]:
    """``Wednesday at 1530``: hour and minute of the day, side by side or apart."""
    head, links = _links(fact, "a day, `at`, and the hour, such as 1530")
    said = _named(links[-1].value, "the hour, such as 1530")
    figures: Sequence[str] = said.text.split()
    if len(figures) == 1:
        figures = (figures[0][:-2], figures[0][-2:])
    if not all(f.isdecimal() and len(f) <= 2 for f in figures) or len(figures) != 2:
        raise Misread(E977(found=said.text).at(said.span))
    hour, minute = map(int, figures)
    if hour > 23 or minute > 59:
        raise Misread(E977(found=said.text).at(said.span))
    return _day(head), 60 * hour + minute
