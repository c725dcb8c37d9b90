"""The league's own figures over the rule code's: `league hash is 24`."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Any

from stemline.diagnostics.catalogue.football import E530, E531
from stemline.diagnostics.catalogue.names import E328, E329
from stemline.diagnostics.diagnostic import Diagnostic, Related
from stemline.football.rulebook.rules import Certainty, Code, Known, Numbers
from stemline.read.words import Misread, Words, one_phrase
from stemline.source import Span
from stemline.syntax.tree import AtomKind, Fact, Linked, Mark, Phrase, Value, items

SOURCE = "this playbook's league"
NO_LIMIT = "no limit"


@dataclass(frozen=True)
class LeagueFigure:
    """A figure of `Code` that a league may set, and the values that make sense for it.

    ``least`` and ``most`` bound the number, both in, ``most`` None where the men of the side do;
    ``unit`` is how it is counted; ``example`` is a right value for the help beside a wrong one.
    ``free`` tells that the league may have no such limit.
    """

    field: str
    unit: str
    least: float
    most: float | None
    example: str
    free: bool = False


FIGURES: Mapping[str, LeagueFigure] = {
    "players": LeagueFigure("players", "men", 5, 12, example="9"),
    "ineligible": LeagueFigure("ineligible", "men", 0, 5, example="3"),
    "length": LeagueFigure("length", "yards", 30, 120, example="100"),
    "width": LeagueFigure("width", "yards", 20, 70, example="60"),
    "end zone": LeagueFigure("end_zone", "yards", 5, 25, example="15"),
    "hash": LeagueFigure("hash_from_sideline", "yards", 5, 35, example="22"),
    "restraining": LeagueFigure("restraining", "yards", 0, 10, example="1"),
    "on line": LeagueFigure("on_line", "men", 1, None, example="7"),
    "in backfield": LeagueFigure("in_backfield", "men", 1, None, example="5", free=True),
    "motion at snap": LeagueFigure("motion_most", "men", 0, None, example="1", free=True),
    "set time": LeagueFigure("motion_set", "seconds", 0, 5, example="1"),
    "downfield": LeagueFigure("downfield", "yards", 0, 10, example="1", free=True),
}
"""What a coach calls each figure. The bounds are ours: wide enough for any field and rule known,
narrow enough that a slipped digit is seen."""
JERSEYS = "ineligible numbers"
NAMES = (*FIGURES, JERSEYS)
"""Every figure that a `league` line may set."""

_NUMBERS = "jersey numbers or `none`"
_HIGHEST = 99
_ONE = {"yards": "yard", "men": "man", "seconds": "second"}


def with_league(code: Code, facts: Iterable[Fact], found: list[Diagnostic]) -> Code:
    """The code with the league's figures in place of its own; mistakes go into ``found``.

    A figure that the league sets binds as a published one does, so breaking it is an error.
    """
    changes: dict[str, Any] = {}
    said: dict[str, Span] = {}
    for fact in sorted(facts, key=lambda f: _subject(f) != "league players"):
        try:
            name = _figure(fact)
            if name in said:
                first = (Related(said[name], "first set here"),)
                raise Misread(E531(figure=name).at(fact.span, related=first))
            said[name] = fact.span
            value = fact.value.link("is") if isinstance(fact.value, Linked) else None
            if name == JERSEYS:
                jerseys = _jerseys(value, fact.span)
                changes["ineligible_numbers"] = Known(jerseys, Certainty.HOUSE, SOURCE)
                # What it names are all of them.
                changes["also_ineligible"] = Known((), Certainty.HOUSE, SOURCE)
                continue
            number = _number(name, value, fact.span, code)
            if name == "players" and number != code.players.value:
                code = _of_size(code, int(number or 0))
            changes[FIGURES[name].field] = Known(number, Certainty.HOUSE, SOURCE)
        except Misread as miss:
            found.append(miss.diagnostic)
    return replace(code, **changes)


_LINES = ((10, ("LT", "LG", "C", "RG", "RT")), (7, ("LG", "C", "RG")), (0, ("C",)))
"""The linemen of a side of so many men or more, as the codes of that size have them."""


def _of_size(code: Code, men: int) -> Code:
    """A code played by another number of men: what hangs on the number follows from memory."""
    line = next(line for least, line in _LINES if men >= least)
    on_line = len(line) + 2

    def follows(value: float) -> Known[float]:
        return Known(value, Certainty.MEMORY, f"what a side of {men} leaves of the code's line")

    return replace(
        code,
        title=re.sub(r"\d+ men", f"{men} men", code.title),
        line=line,
        players=Known(men, Certainty.HOUSE, SOURCE),
        ineligible=follows(len(line) if len(line) > 1 else 0),
        on_line=follows(on_line),
        in_backfield=follows(men - on_line),
    )


def league_words(code: Code) -> str:
    """What the league sets, for the book: "width 60 yards, in backfield no limit"; "" for none."""
    parts = []
    for name, figure in FIGURES.items():
        set_to: Known[float | None] = getattr(code, figure.field)
        if set_to.certainty is Certainty.HOUSE:
            unit = _ONE[figure.unit] if set_to.value == 1 else figure.unit
            number = NO_LIMIT if set_to.value is None else f"{set_to.value:g} {unit}"
            parts.append(f"{name} {number}")
    if code.ineligible_numbers.certainty is Certainty.HOUSE:
        ranges = (f"{a}-{b}" if a < b else f"{a}" for a, b in code.ineligible_numbers.value)
        parts.append(f"{JERSEYS} {' and '.join(ranges) or 'none'}")
    return ", ".join(parts)


def misfits(code: Code, numbers: float, facts: Iterable[Fact]) -> Iterator[Diagnostic]:
    """Marks that lie past the middle of the field, said at the line that moved one of the two.

    ``numbers`` are yards from the sideline to where a man on the numbers stands.
    """
    said = {_subject(fact): fact.span for fact in facts if fact.key in ("league", "house")}
    width = code.width.value
    marks = (
        ("hash", "league hash", code.hash_from_sideline.value),
        ("numbers", "house numbers", numbers),
    )
    for what, line, yards in marks:
        span = said.get(line) or said.get("league width")
        if span is not None and yards > width / 2:
            yield E530(
                what=what, line=line, yards=f"{yards:.4g}", width=f"{width:.4g}",
                middle=f"{width / 2:.4g}",
            ).at(span)  # fmt: skip


def _subject(fact: Fact) -> str:
    head = fact.value.head if isinstance(fact.value, Linked) else None
    return f"{fact.key} {head.text.casefold() if isinstance(head, Phrase) else ''}"


def _figure(fact: Fact) -> str:
    head = fact.value.head if isinstance(fact.value, Linked) else fact.value
    words = Words([one_phrase(head, "a figure, `is` and its value", fact.span)])
    name = words.expect(NAMES, E328)
    words.finish("the name of a figure: `is` and its value come next")
    return name


def _number(name: str, value: Value | None, span: Span, code: Code) -> float | None:
    """The number of a figure; None where the league has no such limit."""
    figure = FIGURES[name]
    most = code.players.value if figure.most is None else figure.most
    wanted = f"{figure.least:g} to {most:g} {figure.unit}"
    if figure.free:
        wanted += f" or `{NO_LIMIT}`"
    if not isinstance(value, Phrase):
        raise _wrong(name, wanted, value, span)
    words = Words([value])
    if figure.free and words.take_name((NO_LIMIT,)):
        words.finish("a league's figure")
        return None
    atom = words.take(AtomKind.NUMBER)
    whole = figure.unit == "men"
    if (
        atom is None
        or not figure.least <= atom.number <= most
        or (whole and atom.number != int(atom.number))
    ):
        raise _wrong(name, wanted, value, span)
    words.take_word(figure.unit, _ONE[figure.unit])
    words.finish("a league's figure")
    return atom.number


def _jerseys(value: Value | None, span: Span) -> Numbers:
    """Jersey numbers as ranges, a single number as a range of itself; none as no range."""
    if isinstance(value, Phrase) and value.text.casefold() == "none":
        return ()
    ranges: list[tuple[int, int]] = []
    for item in items(value, Mark.AND):
        atom = item.atoms[0] if isinstance(item, Phrase) and len(item.atoms) == 1 else None
        if atom is None or atom.kind not in (AtomKind.NUMBER, AtomKind.RANGE):
            raise _wrong(JERSEYS, _NUMBERS, item, span)
        low, _, high = atom.text.partition("-")
        ends = float(low), float(high or low)
        if not ends[0] <= ends[1] <= _HIGHEST or any(end != int(end) for end in ends):
            raise _wrong(JERSEYS, _NUMBERS, item, span)
        ranges.append((int(ends[0]), int(ends[1])))
    if not ranges:
        raise _wrong(JERSEYS, _NUMBERS, value, span)
    return tuple(sorted(ranges))


def _wrong(name: str, wanted: str, value: Value | None, span: Span) -> Misread:
    found = value.text if isinstance(value, Phrase) else "several things" if value else "nothing"
    at = span if value is None else value.span
    right = "50-69, 90-99" if name == JERSEYS else FIGURES[name].example
    return Misread(
        E329(figure=name, wanted=wanted, found=found, example=f"league {name} is {right}").at(at)
    )
