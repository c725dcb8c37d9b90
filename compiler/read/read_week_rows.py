"""What stands one level in: rows of calls, the lines of a wristband, a period's head."""

from __future__ import annotations

import re
from collections.abc import Collection
from typing import Any

from stemline.diagnostics.catalogue.football import E402
from stemline.diagnostics.catalogue.line_calls import E762
from stemline.diagnostics.catalogue.weeks import E973, E980, E982, E983, E984, E985
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.diagnostics.nearest import nearest
from stemline.football.contact_limits import DAYS, GROUPS, LEVELS, HitLevel
from stemline.football.field import BallSpot
from stemline.playbook.week_definitions import (
    TEMPOS,
    BandDef,
    HeldSituation,
    Named,
    PeriodDef,
    RowDef,
)
from stemline.read.read_kills import read_sights
from stemline.read.read_situations import Piece, names_situation, pieces, read_situation
from stemline.read.situation_lines import head_line
from stemline.read.words import Misread, one_phrase
from stemline.syntax.tree import AtomKind, Fact, Linked, Mark, Phrase, Value, items

BAND_SIZES = {"adult": (4.75, 2.75), "youth": (4.0, 2.0)}
"""Inches of a window by the size of the sleeve; common practice, no published source."""
_LEAST_SIDE, _MOST_SIDE = 1.0, 8.0
MOST_WINDOWS = 3
MOST_MINUTES = 120
MOST_REPS = 30
_SPOTS = {spot.value: spot for spot in BallSpot}
_ROW_WORDS = (*TEMPOS, *_SPOTS, "first", "3 reps", "after", "kill to")


def read_call_rows(
    fact: Fact, found: list[Diagnostic], looks: Collection[str]
) -> tuple[RowDef, ...]:
    """The calls of a situation; ``looks`` are the names of the playbook's looks."""
    return _rows(fact, found, looks, shown=False)


def read_shown_rows(
    fact: Fact, found: list[Diagnostic], looks: Collection[str]
) -> tuple[RowDef, ...]:
    """The calls of a script or of scout cards, which may be a whole situation's."""
    return _rows(fact, found, looks, shown=True)


def _rows(
    fact: Fact, found: list[Diagnostic], looks: Collection[str], *, shown: bool
) -> tuple[RowDef, ...]:
    rows: list[RowDef] = []
    for row in fact.rows:
        try:
            rows.append(_row(row, looks, shown=shown))
        except Misread as miss:
            found.append(miss.diagnostic)
    return tuple(rows)


def _row(row: Fact, looks: Collection[str], *, shown: bool) -> RowDef:
    assert row.value is not None, "a row has a value"
    value, against = row.value, None
    tail: list[Value] = []
    if isinstance(value, Linked):
        if value.head is None:
            raise Misread(E402(what="a call before `against`").at(value.span))
        first, *tail = items(value.links[-1].value, Mark.AND)
        look = one_phrase(first, "the name of a look", value.span)
        against, value = Named(look.text, look.span), value.head
    elif shown and (situation := _situation(value)) is not None:
        return RowDef(Named(situation[0], value.span), situation=read_situation(situation[1]))
    head, *rest = items(value, Mark.AND)
    call = _call(head)
    words: dict[str, Any] = {}
    for item in (*rest, *tail):
        _word(item, words)
    if row.guard is None:
        if "kill_to" in words:
            raise Misread(E762(to=words["kill_to"].text).at(words["kill_to"].span))
        return RowDef(call, against=against, **words)
    when = Named(_plain(row.guard), row.guard.span)
    try:
        sights = read_sights(row.guard, looks)
    except Misread:
        if "kill_to" in words:
            raise
        sights = ()  # a look of the week's opponent, or a mistake that the plan tells
    return RowDef(call, when=when, against=against, sights=sights, **words)


def _situation(value: Value) -> tuple[str, list[Piece]] | None:
    said = pieces(value) if not isinstance(value, Linked) else []
    # A down and distance said another way is told as one, not as a call that nobody has.
    if said and (names_situation(said) or head_line(said[0][0])):
        return ", ".join(text for text, *_ in said), said
    return None


def _call(value: Value) -> Named:
    parts = [one_phrase(part, "a call", value.span) for part in items(value, Mark.TOGETHER)]
    call = Named(" + ".join(p.text for p in parts), value.span)
    last = parts[-1].atoms[-1]
    if last.kind is AtomKind.STRING and len(parts[-1].atoms) > 1:
        before = call.text.removesuffix(last.text).strip()
        raise Misread(E982(call=before, note=last.text).at(last.span))
    return call


def _word(item: Value, words: dict[str, Any]) -> None:
    """One word of a row behind its call, into ``words``."""
    phrase = one_phrase(item, "one word of a row", item.span)
    text = phrase.text.casefold()
    if [a.kind for a in phrase.atoms] == [AtomKind.STRING]:
        got: dict[str, Any] = {"note": phrase.text}
    elif text in _SPOTS:
        got = {"spot": _SPOTS[text]}
    elif text in TEMPOS:
        got = {"tempo": text}
    elif text == "first":
        got = {"first": True}
    elif phrase.atoms[0].word == "after" and len(phrase.atoms) > 1:
        call = Phrase(phrase.atoms[1:])
        got = {"after": Named(call.text, call.span)}
    elif text.startswith("kill to "):
        to = Phrase(phrase.atoms[2:])
        got = {"kill_to": Named(to.text, to.span)}
    elif (reps := _reps(phrase)) is not None:
        got = {"reps": reps}
    else:
        near = nearest(text, _ROW_WORDS)
        raise Misread(E983(found=phrase.text).at(phrase.span, nearest=near))
    if again := words.keys() & got.keys():
        raise Misread(E973(found=phrase.text, what=f"its {min(again)}").at(phrase.span))
    words |= got


def _reps(phrase: Phrase) -> int | None:
    match [a.word for a in phrase.atoms]:
        case [figure, "reps" | "rep"] if figure.isdecimal() and 0 < int(figure) <= MOST_REPS:
            return int(figure)
    return None


def _plain(value: Value) -> str:
    """A guard as it was said."""
    return ", ".join(
        " or ".join(one_phrase(p, "a look", value.span).text for p in items(item, Mark.OR))
        for item in items(value, Mark.AND)
    )


# A wristband.


def read_band(fact: Fact, found: list[Diagnostic]) -> BandDef:
    """A band's head and its lines; one that is misread costs only itself."""
    head = fact.value
    men: tuple[Named, ...] = ()
    if isinstance(head, Linked):
        men = tuple(
            Named(p.text, p.span)
            for p in (
                one_phrase(i, "letters parted by commas", fact.span)
                for i in items(head.links[-1].value, Mark.AND)
            )
        )
        head = head.head
    name = one_phrase(head, "the band's name", fact.span).text
    if [m.text.casefold() for m in men] == ["everybody"]:
        men = ()
    (width, height), windows = BAND_SIZES["adult"], 1
    holds: list[HeldSituation] = []
    for row in fact.rows:
        try:
            match row.key:
                case "size":
                    width, height = _size(row)
                case "windows":
                    windows = _windows(row)
                case _:
                    holds += _held(row)
        except Misread as miss:
            found.append(miss.diagnostic)
    return BandDef(name, men, width, height, windows, tuple(holds), fact.span)


def _size(row: Fact) -> tuple[float, float]:
    phrase = one_phrase(row.value, "a size, such as 4.75 x 2.75 inches", row.span)
    words = [a.word for a in phrase.atoms]
    if words[0] in BAND_SIZES and len(words) == 1:
        return BAND_SIZES[words[0]]
    figures = [a for a in phrase.atoms if a.kind is AtomKind.NUMBER]
    if phrase.atoms[0].kind is AtomKind.SHAPE:
        sides = [float(side) for side in words[0].split("x")]
    elif len(figures) == 2 and words[1] in ("x", "by"):
        sides = [float(a.text) for a in figures]
    else:
        raise Misread(E984(found=phrase.text).at(phrase.span))
    if words[-1] == "cm":
        sides = [round(side / 2.54, 4) for side in sides]
    elif words[-1] == "mm":
        sides = [round(side / 25.4, 4) for side in sides]
    if not all(_LEAST_SIDE <= side <= _MOST_SIDE for side in sides):
        raise Misread(E984(found=phrase.text).at(phrase.span))
    return sides[0], sides[1]


def _windows(row: Fact) -> int:
    phrase = one_phrase(row.value, "how many windows", row.span)
    if phrase.text not in [str(n + 1) for n in range(MOST_WINDOWS)]:
        raise Misread(E980(found=phrase.text, choices=f"1 to {MOST_WINDOWS}").at(phrase.span))
    return int(phrase.text)


def _held(row: Fact) -> list[HeldSituation]:
    """The situations of a `holds` line: each part that makes one alone is one."""
    held: list[HeldSituation] = []
    for piece in pieces(row.value):
        spot = piece[0].casefold() in _SPOTS
        if spot and held:
            before = held.pop()
            words = (before.situation.words, before.span, False)
            both = [*_again(words), piece]
            held.append(HeldSituation(read_situation(both), before.span.to(piece[1])))
        else:
            held.append(HeldSituation(read_situation([piece]), piece[1]))
    return held


def _again(piece: Piece) -> list[Piece]:
    text, span, _ = piece
    return [(part.strip('"'), span, part.startswith('"')) for part in text.split(", ")]


# A period.


def read_period(fact: Fact, found: list[Diagnostic], looks: Collection[str]) -> PeriodDef:
    """A period's head, name first, and its rows."""
    said = pieces(fact.value)
    if not said:
        raise Misread(E402(what="the period's name").at(fact.span))
    name, *words = said
    minutes, contact, day = 0, HitLevel.AIR, ""
    groups: list[str] = []
    for text, span, _ in words:
        word = text.casefold()
        if (length := _minutes(word)) is not None:
            minutes = length
        elif word in LEVELS:
            contact = LEVELS[word]
        elif word.title() in DAYS:
            day = word.title()
        elif word in GROUPS:
            groups.append(word)
        else:
            choices = (*LEVELS, *DAYS, *GROUPS)
            cut = re.fullmatch(r"(\d+) ?m(in|ins)?", word)
            near = (f"{cut[1]} minutes",) if cut else nearest(word, (*choices, "12 minutes"))
            raise Misread(
                E980(found=text, choices="12 minutes, "
                         + ", ".join(choices)).at(span, nearest=near)
            )  # fmt: skip
    if not minutes:
        run = re.fullmatch(r"(.*\S) (\d+ min(?:ute)?s?)\b ?(.*)", name[0])
        parts = (run[1], run[2].split()[0] + " minutes", *run[3].split()) if run else ()
        near = (f"period {', '.join(parts)}",) if parts else ()
        said_name = parts[0] if parts else name[0]
        raise Misread(E985(name=said_name, most=MOST_MINUTES).at(fact.span, nearest=near))
    rows = read_shown_rows(fact, found, looks)
    return PeriodDef(name[0], minutes, contact, day, tuple(groups), rows, fact.span)


def _minutes(word: str) -> int | None:
    match word.split():
        case [figure, "minutes" | "minute"] if figure.isdecimal():
            return int(figure) if 0 < int(figure) <= MOST_MINUTES else None
    return None
