"""The playbook block: the rule code, the league's figures over it, and the house's own."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator

from stemline.diagnostics.catalogue.football import E402, E441
from stemline.diagnostics.catalogue.key_cases import E687
from stemline.diagnostics.catalogue.names import (
    E305,
    E306,
    E307,
    E308,
    E309,
    E310,
    E322,
    E323,
    E324,
    E332,
    E333,
)
from stemline.diagnostics.diagnostic import Diagnostic, Related
from stemline.diagnostics.in_words import either
from stemline.diagnostics.nearest import nearest
from stemline.football.contact_limits import ContactLimit
from stemline.football.field import Side
from stemline.football.rulebook.codes import CODES
from stemline.football.scrambling import DEEP, GOES, SHORT
from stemline.football.timing.levels import LEVELS, level_for
from stemline.playbook.playbook import KILL_WORD, Settings
from stemline.read.league import misfits, with_league
from stemline.read.name_table import Blocks, name_key
from stemline.read.words import Misread, Words, one_phrase, string_of
from stemline.source import NOWHERE, Span
from stemline.syntax.tree import Block, Fact, Linked, Mark, Phrase, items, phrases

VERSION = 1
GUN_DEPTH = 5.0
"""Depth of the quarterback in the gun where a formation does not say. Common practice."""
EVERY_CALL = "every call"
_PICTURES = ("middle", "strength to field", "strength to boundary")
_DRAWN = dict(zip(("from middle", "strong to field", "strong to boundary"), _PICTURES, strict=True))
_MIDDLE_FIELD = "middle field"
_HOUSE = ("numbers", "gun", _MIDDLE_FIELD)
_FIELD_SIDES: dict[str, Side | None] = {"right": Side.RIGHT, "left": Side.LEFT, "none": None}
_ELSEWHERE = ("sections", "league", "lower", "against", "contact")
"""Lines whose values hold marks or need the code or the names: each is read by itself."""


def read_settings(blocks: Blocks, folder: str, found: list[Diagnostic]) -> Settings | None:
    """The settings; None, with the reason in ``found``, where no code is known."""
    book = _playbook_block(blocks, folder, found)
    return None if book is None else _settings(book, blocks, found)


def _playbook_block(blocks: Blocks, folder: str, found: list[Diagnostic]) -> Block | None:
    """The first `playbook` block, which names a code."""
    books = blocks.of("playbook")
    if not books:
        found.append(E305().at(Span(folder, 0, 0, 0)))
        return None
    for extra in books[1:]:
        first = (Related(books[0].name.span, "the first playbook block is here"),)
        found.append(E306().at(extra.name.span, related=first))
    book = books[0]
    if not any(f.key == "code" for f in book.facts):
        found.append(E307(choices=", ".join(CODES)).at(book.name.span))
        return None
    return book


def _settings(book: Block, blocks: Blocks, found: list[Diagnostic]) -> Settings | None:
    values: dict[str, str] = {}
    house: dict[str, float] = {}
    says: dict[str, list[str]] = {"say": [], "caution": []}
    for fact in book.facts:
        try:
            _setting(fact, values, house, says)
        except Misread as miss:
            found.append(miss.diagnostic)
            if fact.key == "code" and miss.diagnostic.nearest:
                # Read as the code that was meant, so that the rest of the book is looked at.
                values["code"] = miss.diagnostic.nearest[0]
    if "code" not in values:
        return None
    code = CODES[values["code"]]
    played = with_league(code, _lines(book, "league"), found)
    numbers = house.get("numbers", played.numbers_from_sideline.value)
    if wrong := list(misfits(played, numbers, book.facts)):
        # Looked at on the field of the code itself, so that nothing else falls over the sideline.
        found += wrong
        played, numbers = code, code.numbers_from_sideline.value
    return Settings(
        name=book.name.text,
        code=played,
        season=values.get("season", ""),
        numbers=numbers,
        gun_depth=house.get("gun", GUN_DEPTH),
        right_handed=values.get("quarterback", "right") == "right",
        picture=values.get("picture", "middle"),
        level=LEVELS[values.get("level", level_for(code.key))],
        sections=tuple(_sections(book, found)),
        says=tuple(says["say"]),
        cautions=tuple(says["caution"]),
        span=book.span,
        against=_against(book, blocks, found),
        lowered=_lowered_codes(_lines(book, "lower")),
        contact=_contact(book, found),
        every_call="draw" in values,
        middle=_FIELD_SIDES[values.get(_MIDDLE_FIELD, "right")],
        middle_said=values.get(_MIDDLE_FIELD, "none") != "none",
        scramble=tuple(
            (where, values[f"scramble {where}"])
            for where in (SHORT, DEEP)
            if f"scramble {where}" in values
        ),
        kill_word=values.get("kill", KILL_WORD),
        theme=values.get("theme", ""),
        theme_span=next((_value(fact) for fact in reversed(_lines(book, "theme"))), NOWHERE),
    )


def _lines(book: Block, label: str) -> list[Fact]:
    return [fact for fact in book.facts if fact.key == label]


def _value(fact: Fact) -> Span:
    return fact.value.span if isinstance(fact.value, Phrase) else fact.span


def _against(book: Block, blocks: Blocks, found: list[Diagnostic]) -> str:
    """The key of the look that an `against` line names; "" where none does or none is meant."""
    key = ""
    for fact in _lines(book, "against"):
        names = blocks.names("look")
        if not isinstance(fact.value, Phrase):
            first = next((p.text for p in phrases(fact.value)), names[0] if names else "Base")
            instead = f"`against {first}` here; the others stand in a dress-up, an `against` each"
            found.append(E402(what="the name of one look", instead=instead).at(fact.span))
        elif name_key(fact.value) in {name.casefold() for name in names}:
            key = name_key(fact.value)
        else:
            said, near = fact.value, nearest(fact.value.text, names)
            found.append(
                E310(kind="look", found=said.text, choices=either(names)).at(
                    said.span, nearest=near
                )
            )
    return key


_COUNTED = re.compile(r"(\d{1,3}) (?:minutes? )?a (day|week)")


def _contact(book: Block, found: list[Diagnostic]) -> ContactLimit | None:
    """The house's own limit of full contact; None where no line gives one."""
    said: dict[str, int] = {}
    lines = _lines(book, "contact")
    for fact in lines:
        for item in items(fact.value, Mark.AND):
            text = item.text.casefold() if isinstance(item, Phrase) else ""
            if match := _COUNTED.fullmatch(text):
                said[match[2]] = int(match[1])
            else:
                what = "minutes a day, and minutes a week"
                found.append(E402(what=what).at(item.span))
    return ContactLimit(said.get("day"), said.get("week")) if lines else None


def _sections(book: Block, found: list[Diagnostic]) -> Iterator[tuple[str, Span]]:
    """The families of the `sections` lines, in their order."""
    for fact in _lines(book, "sections"):
        for item in items(fact.value, Mark.AND):
            if isinstance(item, Phrase):
                yield item.text, item.span
            else:
                found.append(E402(what="families parted by commas").at(item.span))


def _setting(
    fact: Fact, values: dict[str, str], house: dict[str, float], says: dict[str, list[str]]
) -> None:
    if fact.key in _ELSEWHERE:
        return
    if fact.key in says:
        says[fact.key].append(string_of(fact.value, fact.span))
        return
    if fact.key == "house":
        _house(fact, values, house)
        return
    words = Words([one_phrase(fact.value, "one value", fact.span)])
    match fact.key:
        case "version":
            number = words.take_number()
            if number != VERSION:
                raise Misread(
                    E308(current=VERSION, found=words.atoms[0].text).at(words.atoms[0].span)
                )
            values["version"] = str(VERSION)
        case "code":
            values["code"] = words.expect(CODES, E309)
            words.finish("a rule code")
        case "quarterback":
            values["quarterback"] = words.expect(("right", "left"), E323)
        case "picture":
            values["picture"] = words.expect(_PICTURES, E324)
        case "draw":
            if words.take_name((EVERY_CALL,)) is not None:
                values["draw"] = EVERY_CALL
            else:
                values["picture"] = _DRAWN[words.expect((*_DRAWN, EVERY_CALL), E324)]
            words.finish("what is drawn")
        case "kill":
            if not words.take_word("word") or words.done:
                what = "`kill word` and what he says"
                raise Misread(E402(what=what).at(fact.span))
            values["kill"] = words.rest
        case "scramble":
            where = words.expect((SHORT, DEEP), E687)
            values[f"scramble {where}"] = GOES[words.expect(GOES, E687)]
            words.finish("a scramble rule")
        case "level":
            values["level"] = words.expect(LEVELS, E332)
            words.finish("a level")
        case _:
            values[fact.key] = words.rest


def _house(fact: Fact, values: dict[str, str], house: dict[str, float]) -> None:
    """A figure of the house's own, `house gun is 5`, or the side of the middle field."""
    link = fact.value.link("is") if isinstance(fact.value, Linked) else None
    head = fact.value.head if isinstance(fact.value, Linked) else None
    name = Words([one_phrase(head, "a house figure", fact.span)]).expect(_HOUSE, E322)
    if name == _MIDDLE_FIELD:
        words = Words([one_phrase(link, "right, left or none", fact.span)])
        values[_MIDDLE_FIELD] = words.expect(_FIELD_SIDES, E333)
        words.finish("a side")
        return
    number = Words([one_phrase(link, "yards", fact.span)]).take_number()
    if number is None:
        raise Misread(E441(found="nothing", choices="").at(fact.span))
    house[name] = number


def _lowered_codes(facts: Iterable[Fact]) -> tuple[tuple[str, Span], ...]:
    """What the `lower` lines name, in their order and as it is written."""
    named = (item for fact in facts for item in items(fact.value, Mark.AND))
    return tuple((i.text if isinstance(i, Phrase) else "several things", i.span) for i in named)
