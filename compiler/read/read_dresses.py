"""Dress-ups: which formations, tags, motions and sides a concept is called with."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, field, replace
from functools import partial
from typing import TypeVar

from stemline.diagnostics.catalogue.calls import E701, E702, E703, E704
from stemline.diagnostics.catalogue.football import E402
from stemline.diagnostics.catalogue.names import E310
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.football.conditions import LookWord
from stemline.football.field import BallSpot
from stemline.playbook.dress_ups import Alias, Dress, DressIn, DressWith, Pattern
from stemline.read.read_guards import read_looks
from stemline.read.words import Misread, Missed, Words, one_phrase
from stemline.source import Span
from stemline.syntax.tree import Atom, Block, Fact, Linked, Mark, Phrase, Value, items, phrases

Read = TypeVar("Read")
SIDES = ("right", "left")
WAYS = (*SIDES, "field", "boundary")
BOTH = "both"
SPOTS = tuple(spot.value for spot in BallSpot)
GOAL_LINE = "goal line"
MOST_TO_GOAL = 40
"""Yards: from farther off no picture reaches the goal line."""


@dataclass(frozen=True)
class KnownNames:
    """The names that a dress-up of one concept may use."""

    formations: tuple[str, ...]
    motions: tuple[str, ...]
    tags: tuple[str, ...]
    looks: tuple[str, ...] = ()
    call_route: Callable[[Phrase], str | None] = lambda _: None
    """The tag that a called route (`X runs fade`) makes, by name; None for other words."""


@dataclass
class _Parts:
    formations: list[DressIn] = field(default_factory=list)
    withs: list[DressWith] = field(default_factory=list)
    sides: list[str] = field(default_factory=list)
    motions: list[str] = field(default_factory=list)
    spots: list[str] = field(default_factory=list)
    against: list[tuple[LookWord, ...]] = field(default_factory=list)
    looks: list[str] = field(default_factory=list)
    goal: int | None = None
    never: list[Pattern] = field(default_factory=list)
    best: list[Pattern] = field(default_factory=list)
    only: list[Pattern] = field(default_factory=list)
    aliases: list[Alias] = field(default_factory=list)


def read_dress(
    block: Block, concept: str, facts: Sequence[Fact], known: KnownNames, broken: bool
) -> tuple[Dress, list[Diagnostic]]:
    """``broken`` tells that the parser could not read one of the lines."""
    parts, found = _Parts(), list[Diagnostic]()
    for fact in facts:
        try:
            _read(fact, parts, known)
        except Misread as miss:
            found.append(miss.diagnostic)
    if not broken and not any(f.key == "in" for f in facts):
        found.append(E701(name=block.name.text).at(block.name.span))
    if broken or any(d.is_error for d in found):
        # What a misread line would have called is not known: nothing may hang on it.
        parts.aliases = []
        parts.never = [p for p in parts.never if _named_here(p, parts)]
        parts.only = [p for p in parts.only if _named_here(p, parts)]
        parts.best = [p for p in parts.best if _named_here(p, parts)]
    dress = Dress(
        concept=concept,
        formations=tuple(parts.formations),
        withs=tuple(parts.withs) or (DressWith((), block.span),),
        sides=tuple(parts.sides) or SIDES[:1],
        motions=tuple(parts.motions),
        spots=tuple(parts.spots) or SPOTS,
        against=tuple(parts.against),
        never=tuple(parts.never),
        only=tuple(parts.only),
        aliases=tuple(parts.aliases),
        span=block.span,
        looks=tuple(parts.looks),
        goal=parts.goal,
        best=tuple(parts.best),
    )
    return dress, found


def _read(fact: Fact, parts: _Parts, known: KnownNames) -> None:
    value, span = fact.value, fact.span
    match fact.key:
        case "in":
            parts.formations += _formations(value, span, known)
        case "with":
            parts.withs += _withs(value, known)
        case "to":
            parts.sides += _sides(value, span)
        case "motion":
            parts.motions += [_motion(p, known) for p in _motions(value, span, known)]
        case "from":
            said = _each(value, span, _spot)
            parts.spots += [spot for spot in said if isinstance(spot, str)]
            parts.goal = next((yards for yards in said if isinstance(yards, int)), parts.goal)
        case "against":
            named = _looks_by_name(value, span, known)
            parts.looks += named
            if value is not None and not named:
                parts.against.append(read_looks(value, known.looks))
        case "never":
            parts.never.append(_pattern(value, span, known, "never"))
        case "best":
            pattern = _pattern(value, span, known, "best")
            if not pattern.spots:
                what = "the spots it is best called from"
                raise Misread(E402(what=what).at(span))
            parts.best.append(pattern)
        case "only":
            pattern = _pattern(value, span, known)
            if fact.subject:  # `Wheel + Return only to right`: what it limits stands before it
                tags = tuple(_together(phrase, known) for phrase in fact.subject)
                limits = Pattern((), tags, (), (), span)
                pattern = replace(pattern, tags=tags, limits=limits)
            parts.only.append(pattern)
        case "call":
            head, given = _split(value, "as")
            name = one_phrase(given, "a name", span).text
            text, at = _call(head, span)
            parts.aliases.append(Alias(text, name, at))


def _spot(words: Words) -> str | int:
    """A ball spot, or the yards of ``goal line 3``."""
    if words.take_name((GOAL_LINE,)) is None:
        return words.expect((*SPOTS, f"{GOAL_LINE} 3"), E703)
    yards = words.take_number()
    if yards is None or yards != int(yards) or not 1 <= yards <= MOST_TO_GOAL:
        raise words.miss(E703, (*SPOTS, f"{GOAL_LINE} 3"))
    return int(yards)


def _formations(value: Value | None, span: Span, known: KnownNames) -> list[DressIn]:
    """``Trey, Trips motion Jet with plain, Wheel to right``; ``all but Jumbo``."""
    head = value.head if isinstance(value, Linked) else value
    said = (
        {link.connector.word: link.value for link in value.links}
        if isinstance(value, Linked)
        else {}
    )
    motions = tuple(_motion(p, known) for p in _motions(said.get("motion"), span, known))
    withs = tuple(_withs(said.get("with"), known))
    sides = tuple(_sides(said.get("to"), span))
    without = {_formation(p, known) for p in _phrases(said.get("but"), span)}
    named: list[DressIn] = []
    said_there = _and_parted(_phrases(head, span), (*known.formations, "all"))
    phrases, called = _sides_behind(said_there, known)
    sides = sides or called
    for phrase in phrases:
        all_of_them = phrase.text.casefold() == "all" and "all" not in _keys(known.formations)
        names = _keys_in_order(known.formations) if all_of_them else [_formation(phrase, known)]
        named += [
            DressIn(name, motions, phrase.span, withs, sides)
            for name in names
            if name not in without
        ]
    return named


def _sides_behind(phrases: list[Phrase], known: KnownNames) -> tuple[list[Phrase], tuple[str, ...]]:
    """``Trey right, left``, as a call is said, with its sides apart: where the last formation has
    no such name, and one without the side."""
    names, said = _keys(known.formations), {*WAYS, BOTH}
    for at, phrase in enumerate(phrases):
        words = phrase.text.casefold().split()
        behind = [other.text.casefold() for other in phrases[at + 1 :]]
        if len(words) < 2 or words[-1] not in said or not said.issuperset(behind):
            continue
        if phrase.text.casefold() not in names and " ".join(words[:-1]) in names:
            sides = tuple(dict.fromkeys((words[-1], *behind)))
            ways = (w for side in sides for w in (SIDES if side == BOTH else (side,)))
            return [*phrases[:at], Phrase(phrase.atoms[:-1])], tuple(dict.fromkeys(ways))
    return phrases, ()


def _formation(phrase: Phrase, known: KnownNames) -> str:
    return _named(phrase, known.formations, partial(E310, kind="formation"), also=("all",))


def _withs(value: Value | None, known: KnownNames) -> list[DressWith]:
    names = (*known.tags, "plain")
    parted = [
        one
        for v in items(value, Mark.AND)
        for one in (_and_parted([v], names) if isinstance(v, Phrase) else [v])
    ]
    return [DressWith(_tags(v, known), v.span) for v in parted]


def _motions(value: Value | None, span: Span, known: KnownNames) -> list[Phrase]:
    return _and_parted(_phrases(value, span), (*known.motions, "none"))


def _and_parted(said: Iterable[Phrase], names: Iterable[str]) -> list[Phrase]:
    """``Trey and Trips`` as two: where no name has such words, and each side of `and` is one."""
    keys = _keys(names)
    made: list[Phrase] = []
    for phrase in said:
        parts: list[list[Atom]] = [[]]
        for atom in phrase.atoms:
            if atom.word == "and":
                parts.append([])
            else:
                parts[-1].append(atom)
        apart = [Phrase(tuple(part)) for part in parts if part]
        whole = phrase.text.casefold() in keys or len(apart) < len(parts)
        fits = not whole and all(one.text.casefold() in keys for one in apart)
        made += apart if fits else [phrase]
    return made


def _sides(value: Value | None, span: Span) -> list[str]:
    """``right, left``, or ``both``; ``field, boundary``."""
    if value is None:
        return []
    words = (*WAYS, BOTH)
    read = [
        _whole(phrase, lambda w: _after_the(w).expect(words, E702))
        for phrase in _and_parted(_phrases(value, span), words)
    ]
    return list(dict.fromkeys(side for one in read for side in (SIDES if one == BOTH else (one,))))


def _after_the(words: Words) -> Words:
    """`to the field` is said as often as `to field`."""
    words.take_word("the")
    return words


def _together(phrase: Phrase, known: KnownNames) -> tuple[str, ...]:
    """The tags of a subject: ``Wheel + Return``, its marks among its words."""
    parts: list[list[Atom]] = [[]]
    for atom in phrase.atoms:
        if atom.text == "+":
            parts.append([])
        else:
            parts[-1].append(atom)
    return _named_tags([Phrase(tuple(part)) for part in parts if part], known)


def _call(value: Value | None, span: Span) -> tuple[str, Span]:
    """A call as it is said, its tags with `+` between them or side by side, and where it stands."""
    parts = [one_phrase(item, "a call", span) for item in items(value, Mark.TOGETHER)]
    if not parts:
        one_phrase(value, "a call", span)
    return " + ".join(part.text for part in parts), parts[0].span.to(parts[-1].span)


def _pattern(value: Value | None, span: Span, known: KnownNames, label: str = "only") -> Pattern:
    formations: tuple[str, ...] = ()
    tags: tuple[tuple[str, ...], ...] = ()
    sides: tuple[str, ...] = ()
    motions: tuple[str, ...] = ()
    spots: tuple[BallSpot, ...] = ()
    head = value.head if isinstance(value, Linked) else value
    if head is not None:
        # What is meant stands first: `never left in Trips`, `never Wheel in Quads`.
        match _meant_by(head, known):
            case "to":
                sides = tuple(_sides(head, span))
            case "motion":
                motions = tuple(_motion(p, known) for p in _phrases(head, span))
            case "in":
                formations = tuple(_formation(p, known) for p in _phrases(head, span))
            case _:
                others = (*WAYS, *known.motions, *known.formations)
                tags = tuple(_tags(v, known, others) for v in items(head, Mark.AND))
    for link in value.links if isinstance(value, Linked) else ():
        match link.connector.word:
            case "in":
                formations = tuple(_formation(p, known) for p in _phrases(link.value, span))
            case "with":
                tags = tuple(_tags(v, known) for v in items(link.value, Mark.AND))
            case "to":
                sides = tuple(_sides(link.value, span))
            case "from":
                spots = tuple(BallSpot(spot) for spot in _spots(link.value, span))
            case _:
                motions = tuple(_motion(p, known) for p in _phrases(link.value, span))
    line = f"{label} {_without_spots(value)}".strip() if spots else ""
    return Pattern(formations, tags, sides, motions, span, spots=spots, line=line)


def _without_spots(value: Value | None) -> str:
    """The words of an exception, but for the spots that it speaks of."""
    if not isinstance(value, Linked):
        return _said(value)
    links = [
        f"{k.connector.word} {_said(k.value)}" for k in value.links if k.connector.word != "from"
    ]
    return " ".join(part for part in (_said(value.head), *links) if part)


def _said(value: Value | None) -> str:
    return ", ".join(
        " + ".join(phrase.text for phrase in phrases(item)) for item in items(value, Mark.AND)
    )


def _spots(value: Value | None, span: Span) -> list[str]:
    return _each(value, span, lambda w: w.expect(SPOTS, E703))


def _meant_by(head: Value, known: KnownNames) -> str:
    """The connector for which the first words of an exception stand: `with`, where they are tags.

    Words that name two things, a motion and a tag, are told so.
    """
    words = {phrase.text.casefold() for phrase in phrases(head)}
    tables = {
        "to": {*WAYS, BOTH},
        "with": {*_keys(known.tags), "plain"},
        "motion": _keys(known.motions),
        "in": _keys(known.formations),
    }
    fits = [word for word, names in tables.items() if words <= names]
    if len(fits) > 1:
        said = ", ".join(phrase.text for phrase in phrases(head))
        first, second = (f"never {word} {said}" for word in fits[:2])
        raise Misread(E704(said=said, first=first, second=second).at(head.span))
    return fits[0] if fits else "with"


def _named_here(pattern: Pattern, parts: _Parts) -> bool:
    """Whether the dress-up was seen to call with every formation and tag of an exception."""
    formations = {where.formation for where in parts.formations}
    tags = [set(w.tags) for w in (*parts.withs, *(w for f in parts.formations for w in f.withs))]
    return set(pattern.formations) <= formations and all(set(t) in tags for t in pattern.tags)


def _split(value: Value | None, connector: str) -> tuple[Value | None, Value | None]:
    if isinstance(value, Linked):
        return value.head, value.link(connector)
    return value, None


def _looks_by_name(value: Value | None, span: Span, known: KnownNames) -> list[str]:
    """The keys of the looks that a line names, each of them a picture; none where it says what a
    defence shows instead."""
    phrases = [item for item in items(value, Mark.AND) if isinstance(item, Phrase)]
    keys, looks = [phrase.text.casefold() for phrase in phrases], _keys(known.looks)
    named = [key for key in keys if key in looks]
    if named and len(named) < len(keys):
        first = next(p.text for p, key in zip(phrases, keys, strict=True) if key in looks)
        other = next(p.text for p, key in zip(phrases, keys, strict=True) if key not in looks)
        instead = f"a line for each: `against {first}` and `against {other}`"
        told = E402(what="looks by name, or what a defence shows", instead=instead)
        raise Misread(told.at(span))
    return named


def _phrases(value: Value | None, span: Span) -> list[Phrase]:
    return [one_phrase(item, "names parted by commas", span) for item in items(value, Mark.AND)]


def _keys_in_order(names: Iterable[str]) -> list[str]:
    return [name.casefold() for name in names]


def _keys(names: Iterable[str]) -> set[str]:
    return set(_keys_in_order(names))


def _each(value: Value | None, span: Span, read: Callable[[Words], Read]) -> list[Read]:
    return [_whole(phrase, read) for phrase in _phrases(value, span)]


def _whole(phrase: Phrase, read: Callable[[Words], Read]) -> Read:
    words = Words([phrase])
    found = read(words)
    words.finish("a name")
    return found


def _named(phrase: Phrase, names: Iterable[str], code: Missed, *, also: Iterable[str] = ()) -> str:
    """``also`` are the other right words for this place, of which one may be misspelt."""
    words = Words([phrase])
    name = words.take_name(names)
    if name is None or not words.done:
        words.at = 0
        raise words.miss(code, names, also=also)
    return name.casefold()


def _motion(phrase: Phrase, known: KnownNames) -> str:
    if phrase.text.casefold() == "none":
        return ""
    return _named(phrase, known.motions, partial(E310, kind="motion"), also=("none",))


def _tags(value: Value, known: KnownNames, also: Iterable[str] = ()) -> tuple[str, ...]:
    parts = items(value, Mark.TOGETHER)
    named = [one_phrase(p, "tags joined by +", value.span) for p in parts]
    return _named_tags(named, known, also)


def _named_tags(
    named: Iterable[Phrase], known: KnownNames, also: Iterable[str] = ()
) -> tuple[str, ...]:
    """Tags by name, `plain` for none of them, and called routes: `X runs fade`.

    ``also`` are names of other kinds that may stand in this place.
    """
    tags = []
    for phrase in named:
        if phrase.text.casefold() == "plain":
            continue
        made = known.call_route(phrase)
        code = partial(E310, kind="tag")
        tags.append(made or _named(phrase, known.tags, code, also=("plain", *also)))
    return tuple(tags)
