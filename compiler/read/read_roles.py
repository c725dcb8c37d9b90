"""Who plays a role: ``strong #2``, ``tight end or strong #2``, ``inside opposite under``."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from functools import partial

from stemline.diagnostics.catalogue.football import E444, E451, E452, E453, E454, E455
from stemline.football.play import FOR_MANY
from stemline.playbook.role_rules import (
    Back,
    ByLetter,
    ByRole,
    Choice,
    Fullback,
    Nobody,
    Passer,
    Ranked,
    Relative,
    RoleRule,
    Snapper,
    TightEnd,
    Which,
    Wing,
)
from stemline.playbook.said import SideWord
from stemline.read.own_letters import NO_LETTERS, Letters
from stemline.read.read_places import SIDES
from stemline.read.read_routes import read_way
from stemline.read.words import Misread, Words, one_phrase
from stemline.source import Span
from stemline.syntax.tree import Atom, AtomKind, Mark, Phrase, Value, items


def read_rule(
    value: Value | None, span: Span, roles: Collection[str], letters: Letters = NO_LETTERS
) -> RoleRule:
    """``strong #2``, ``tight end or strong #2``, ``inside opposite under or nobody``, ``X``."""
    choices: list[Choice] = []
    words: list[str] = []
    places: list[Span] = []
    for item in items(value, Mark.OR):
        phrase = one_phrase(item, "a man by rule", span)
        letter = letters.called(phrase)
        choices.append(ByLetter(letter) if letter else _choice(phrase, roles))
        words.append(phrase.text)
        places.append(phrase.span)
    for choice, place in zip(choices[:-1], places, strict=False):
        if isinstance(choice, Nobody):
            raise Misread(E452().at(place))
    return RoleRule(tuple(choices), tuple(words))


_RULE_STARTS = (*SIDES, "inside", "outside", "back", "fullback", "wing", "quarterback", "centre",
                "tight end", "nobody")  # fmt: skip


_FIRST_WORDS = frozenset(name.split()[0] for name in (*_RULE_STARTS, "center"))

EVERYONE_ELSE, OTHER_BACKS = FOR_MANY


def read_others(subject: Phrase) -> str:
    """Whom `everyone else`, `everyone else strong` or `every other back` means, in lower case; ""
    for a subject that says something else."""
    words = Words([subject])
    if words.take_name((OTHER_BACKS,)) and words.done:
        return OTHER_BACKS
    if words.take_name((EVERYONE_ELSE,)) is None:
        return ""
    side = words.take_name(SIDES) if not words.done else None
    words.finish("whom the line is for")
    return f"{EVERYONE_ELSE} {side}" if side else EVERYONE_ELSE


def read_men(subject: Phrase) -> Mapping[str, Choice]:
    """The men whom a subject names by where they stand, by the rule's words: ``weak #1``,
    ``strong inside``, ``tight end``; both of ``each #1``. None for any other subject."""
    words = Words([subject])
    words.take_word("the")
    if words.take_word("each"):
        rank = words.take_rank()
        if rank is None or not words.done:
            return {}
        return {f"{s.value} #{rank}": Ranked(s, rank) for s in (SideWord.STRONG, SideWord.WEAK)}
    if words.done or not _begins_a_rule(words.atoms[words.at]):
        return {}
    try:
        choice = _read_choice(words, ())
    except Misread:
        return {}
    named = subject.text.casefold().removeprefix("the ")
    if not words.done or isinstance(choice, Nobody | Snapper):
        return {}
    return {named: choice}


def _begins_a_rule(start: Atom) -> bool:
    """Whether a rule can begin so. Most subjects are letters and roles: to find the nearest right
    word for each of them costs more than all else that is read."""
    return start.kind is AtomKind.STRING or start.word in _FIRST_WORDS


def _choice(phrase: Phrase, roles: Collection[str]) -> Choice:
    words = Words([phrase])
    words.take_word("the")
    choice = _read_choice(words, roles)
    words.finish("a man by rule")
    return choice


def _read_choice(words: Words, roles: Collection[str]) -> Choice:
    if words.take_word("nobody"):
        return Nobody()
    if words.take_name(("tight end",)):
        return TightEnd(None)
    if words.take_word("back"):
        return Back(None)
    if words.take_word("fullback"):
        return Fullback()
    if words.take_word("wing"):
        return Wing(None)
    if words.take_word("quarterback"):
        return Passer()
    if words.take_word("centre", "center"):
        return Snapper()
    if words.take_word("inside", "outside"):
        which = Which(words.atoms[words.at - 1].word)
        if words.take_word("opposite"):
            at = words.here
            return Relative(which, ByRole(words.expect(roles, E444), True, at))
        way = read_way(words, roles, E454, ("opposite",))
        return Relative(which, way)
    side_name = words.take_name(SIDES)
    if side_name is None:
        start = words.atoms[words.at].text if not words.done else ""
        if len(words.atoms) == 1 and len(start) <= 2:
            from stemline.read.coach_lines import rule_of_letter  # none for a text that is right

            raise Misread(E453(letter=start, rule=rule_of_letter(start)).at(words.here))
        raise words.miss(E451, _RULE_STARTS)
    side = SIDES[side_name]
    rank = words.take_rank()
    if rank is not None:
        return Ranked(side, rank)
    follows = ("inside", "outside", "tight end", "wing", "back")
    follow = words.expect(follows, partial(E455, side=side.value))
    if follow == "tight end":
        return TightEnd(side)
    if follow == "wing":
        return Wing(side)
    if follow == "back":
        return Back(side)
    return Relative(Which(follow), side)
