"""How the ball goes: ``carrier hands to taker at 5 deep, backside guard``."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence

from stemline.diagnostics.catalogue.exchange_lines import (
    E780,
    E781,
    E782,
    E783,
    E784,
    E785,
    E789,
    E793,
    E794,
)
from stemline.diagnostics.catalogue.football import E402, E450
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.football.exchanges import BallMoves
from stemline.playbook.concepts import Body
from stemline.playbook.exchange_definitions import (
    QUARTERBACK,
    SNAPPER_SAID,
    ExchangeDef,
    ExchangePlace,
)
from stemline.playbook.role_rules import ByLetter, Choice
from stemline.playbook.run_definitions import AimPoint
from stemline.playbook.said import Said
from stemline.read.concept_scope import Scope
from stemline.read.read_places import SIDES
from stemline.read.read_roles import read_men
from stemline.read.words import Misread, Words, one_phrase
from stemline.source import Span
from stemline.syntax.tree import AtomKind, Fact, Linked, Mark, Phrase, Series, Value, items

EXCHANGES = {move.value: move for move in BallMoves}
"""The verbs of the ball."""
_KEEPS = "run"
"""What a thrower does instead where nobody is open."""
_OVER = ("A", "B", "C", "D", "guard", "tackle", "end", "centre", "ball")
_DEPTHS = ("deep", "behind")


def with_the_ball(body: Body) -> Iterator[str]:
    """The roles that give or get the ball: it is a job."""
    for said in body.exchanges.values():
        for one in said:
            yield from (one.value.giver, one.value.taker, *one.value.others)


def read_exchange(fact: Fact, subject: Phrase, scope: Scope) -> tuple[ExchangeDef, str]:
    """One exchange, and the key under which a tag replaces it: its giver's name."""
    kind = EXCHANGES[fact.key]
    by_place: dict[str, Choice] = {}
    giver = _man(subject, scope, by_place)
    value = fact.value
    to = value.link("to") if isinstance(value, Linked) else None
    if not isinstance(value, Linked) or value.head is not None or to is None:
        raise Misread(_no_taker(fact, subject, scope))
    if isinstance(to, Series) and to.mark is Mark.AND and kind is BallMoves.THROW:
        to = _all_of(to, scope)
    if isinstance(to, Series) and to.mark is Mark.AND:
        first, *rest = (getattr(item, "text", "…") for item in to.items)
        line = f"{subject.text} {fact.key} to {first} at {', '.join(rest)}"
        raise Misread(E782(line=line).at(to.items[1].span))
    takers = [one_phrase(item, "a role or a man by his place", fact.span)
              for item in items(to, Mark.OR)]  # fmt: skip
    runs = len(takers) > 1 and takers[-1].text.casefold() == _KEEPS
    takers = takers[:-1] if runs else takers
    if (runs or len(takers) > 1) and kind is not BallMoves.THROW:
        raise Misread(E784(does=f"{fact.key} to").at(to.span))
    taker, *others = (_man(phrase, scope, by_place) for phrase in takers)
    if taker == giver:
        raise Misread(E785(man=giver).at(to.span))
    made = ExchangeDef(
        kind, giver, taker, _place(value.link("at"), fact.span), _seconds(value.link("after")),
        tuple(others), runs, by_place, fact.span,
    )  # fmt: skip
    return made, f"{giver} fakes" if kind is BallMoves.FAKE else giver


def _all_of(to: Series, scope: Scope) -> Series:
    """``deep, post or run`` as ``deep or post or run``; without an `or` a place stands behind the
    comma, unless each is a man, and it is as it is. Raises Misread: one of the former is nobody."""
    said = [one for item in to.items for one in items(item, Mark.OR)]
    men = [one for one in said if isinstance(one, Phrase)]
    if men and men[-1].text.casefold() == _KEEPS:
        men = men[:-1]
    try:
        for man in men:
            _man(man, scope, {})
    except Misread:
        if len(said) > len(to.items):
            raise
        return to
    return Series(Mark.OR, tuple(said)) if len(said) - len(men) <= 1 else to


def _no_taker(fact: Fact, subject: Phrase, scope: Scope) -> Diagnostic:
    """`tosses carrier` is told the line; `fullback fakes Trap` that it is two lines."""
    named = next((p.text for p in _phrases(fact.value)), "")
    if fact.key == BallMoves.FAKE.value and subject.text.casefold() != QUARTERBACK:
        does = f"{subject.text} {fact.key} {named}".rstrip()
        return E793(does=does, man=subject.text.casefold()).at(fact.span)
    known = named.casefold() in (*scope.roles, QUARTERBACK)
    line = f"{subject.text} {fact.key} to {named if known else 'carrier'}"
    span = fact.value.span if fact.value is not None else fact.span
    return E780(does=f"{subject.text} {fact.key}", line=line).at(span)


def _phrases(value: Value | None) -> Iterator[Phrase]:
    head = value.head if isinstance(value, Linked) else value
    if isinstance(head, Phrase):
        yield head


def _man(phrase: Phrase, scope: Scope, by_place: dict[str, Choice]) -> str:
    """A role of the block, the quarterback, the centre, or a man by where he stands."""
    name = phrase.text.casefold().removeprefix("the ")
    name = SNAPPER_SAID if name == "center" else name
    if name in (QUARTERBACK, SNAPPER_SAID) or name in scope.roles:
        if name in scope.by_place:
            by_place[name] = scope.by_place[name]
        return name
    letter = scope.letters.called(phrase)
    if letter in scope.letters.same_as:
        return scope.letters.same_as[letter]
    men = {letter: ByLetter(letter)} if letter else read_men(phrase)
    if len(men) == 1:
        by_place.update(men)
        return next(iter(men))
    raise Words([phrase]).miss(E450, tuple(dict.fromkeys((*scope.roles, QUARTERBACK))))


def _seconds(value: Value | None) -> float | None:
    if value is None:
        return None
    words = Words([one_phrase(value, "seconds from the snap", value.span)])
    seconds = words.take_number()
    if seconds is None or not words.done:
        raise Misread(E783().at(value.span))
    return seconds


def _place(value: Value | None, span: Span) -> ExchangePlace | None:
    """``5 deep, backside guard``, ``2 behind``, ``over ball``."""
    if value is None:
        return None
    deep = behind = None
    over: AimPoint | None = None
    pieces = [one_phrase(item, "a place", span) for item in items(value, Mark.AND)]
    for piece in pieces:
        words = Words([piece])
        if words.atoms[0].kind in (AtomKind.NUMBER, AtomKind.RANGE):
            yards = words.take_number()
            which = words.expect(_DEPTHS, E781)
            deep, behind = (yards, behind) if which == "deep" else (deep, yards)
        else:
            words.take_word("over")
            words.take_word("the")
            side = words.take_name(SIDES)
            point = words.expect(_OVER, E781)
            point = "centre" if point == "ball" else point
            over = AimPoint(point, SIDES[side] if side else None)
        words.finish("a place")
    if deep is not None and behind is not None:
        raise Misread(E402(what="one depth").at(value.span))
    return ExchangePlace(deep, behind, over, ", ".join(p.text for p in pieces))


def ball_clashes(
    exchanges: Mapping[str, Sequence[Said[ExchangeDef]]],
    handoffs: Collection[Said[tuple[str, ...]]],
) -> list[Diagnostic]:
    """Both forms in one block; and a read that is said as if it were an exchange."""
    found = [
        E794(man=s.value.taker).at(s.span)
        for s in exchanges.get(QUARTERBACK, ())
        if s.value.kind is BallMoves.THROW and not s.value.place and s.value.taker not in exchanges
    ]
    said = [s for lines in exchanges.values() for s in lines if s.value.kind is not BallMoves.FAKE]
    if not said or not handoffs:
        return found
    return [*found, *(E789(line=said[0].value.written).at(s.span) for s in handoffs)]
