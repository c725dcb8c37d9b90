"""``kill to Stick when 8 or more in box``: the play that a call becomes, and what he sees."""

from __future__ import annotations

from collections.abc import Collection

from stemline.diagnostics.catalogue.football import E402
from stemline.diagnostics.catalogue.line_calls import E761, E762, E763
from stemline.football.conditions import LookWord
from stemline.football.defence.techniques import TECHNIQUES
from stemline.playbook.kill_definitions import (
    BoxCount,
    HasTechnique,
    IsLook,
    KillDef,
    Leverage,
    Plays,
    Shows,
    Sight,
    Sights,
)
from stemline.read.read_places import SIDES
from stemline.read.words import Misread, Words, bounded, one_phrase
from stemline.syntax.tree import AtomKind, Fact, Linked, Mark, Phrase, Value, items, phrases
from stemline.syntax.writing import written

EXAMPLE = "8 or more in box"
_MOST_IN_BOX = 12
_LOOKS = {look.value: look for look in LookWord}
_HOW = {how.value: how for how in Leverage}
_WHO = ("corner", "overhang")
_SHOWN = ("8 in box", EXAMPLE, "5 or fewer in box", *_LOOKS, "weak corner off",
          "strong overhang inside", "3 technique playside")  # fmt: skip


def read_kill(fact: Fact, looks: Collection[str]) -> KillDef:
    """The kill that a line says; ``looks`` are the names of the playbook's looks."""
    value = fact.value
    to = value.link("to") if isinstance(value, Linked) else None
    when = _words(fact.guard) if fact.guard is not None else ""
    if to is None or not isinstance(value, Linked) or value.head or len(value.links) > 1:
        meant = next((p.text for p in phrases(value)), "")
        said = written(value)
        line = " ".join(filter(None, ("kill", said, f"when {when}" if when else "")))
        raise Misread(E761(line=line, to=meant or "Stick", when=when or EXAMPLE).at(fact.span))
    parts = items(to, Mark.TOGETHER)
    named = [one_phrase(part, "a concept, its tags and a side", to.span) for part in parts]
    said = " + ".join(part.text for part in named)
    if fact.guard is None:
        raise Misread(E762(to=said).at(fact.span))
    words = tuple(said.casefold().split())
    return KillDef(words, said, read_sights(fact.guard, looks), when, fact.span, to.span)


def read_sights(value: Value, looks: Collection[str]) -> Sights:
    """What he sees: all of what commas part, any of what `or` parts."""
    return tuple(
        tuple(_sight(phrase, looks) for phrase in _choices(item)) for item in items(value, Mark.AND)
    )


def _words(value: Value) -> str:
    """What he sees as it is spoken."""
    return ", ".join(
        " or ".join(_spoken(p) for p in _choices(item)) for item in items(value, Mark.AND)
    )


def _spoken(phrase: Phrase) -> str:
    """The `or` of "8 or more in box" is no atom of its phrase."""
    first, *rest = phrase.text.split(maxsplit=1)
    more = rest and rest[0].startswith(("more ", "fewer "))
    return f"{first} or {rest[0]}" if more else phrase.text


def _choices(item: Value) -> list[Phrase]:
    """The choices that `or` parts; in "8 or more in box" it parts none."""
    found: list[Phrase] = []
    for one in items(item, Mark.OR):
        if not isinstance(one, Phrase):
            raise Misread(E402(what="what he sees at the line").at(one.span))
        counted = found and len(found[-1].atoms) == 1
        if counted and one.atoms[0].word in ("more", "fewer"):
            one = Phrase((*found.pop().atoms, *one.atoms))
        found.append(one)
    return found


def _sight(phrase: Phrase, looks: Collection[str]) -> Sight:
    words = Words([phrase])
    known = {name.casefold(): name for name in looks}
    named = words.take_name((*_LOOKS, *known))
    if named is not None and words.done:
        return Shows(_LOOKS[named]) if named in _LOOKS else IsLook(named)
    words.at = 0
    sight = _box(words) or _technique(words) or _leverage(words)
    if sight is None:
        words.at = 0
        raise words.miss(E763, (*_SHOWN, *looks))
    words.finish("what he sees at the line")
    return sight


def _box(words: Words) -> BoxCount | None:
    atom = words.take(AtomKind.NUMBER)
    if atom is None or "." in atom.text:
        words.at = 0
        return None
    number = int(bounded(atom))
    least, most = number, number
    way = words.take_word("more", "fewer")
    if not words.take_word("in"):
        if way is not None and words.done:
            found = f"{number} or {way}"
            told = E763(found=found, choices=", ".join(_SHOWN[:3]))
            raise Misread(told.at(words.atoms[0].span, nearest=(f"{found} in box",)))
        words.at = 0
        return None
    words.take_word("the")
    at = words.here
    if not words.take_word("box") or number > _MOST_IN_BOX:
        raise Misread(E763(found=words.rest or str(number), choices=", ".join(_SHOWN[:3])).at(at))
    if way == "fewer":
        return BoxCount(0, most)
    return BoxCount(least, None if way == "more" else most)


def _technique(words: Words) -> HasTechnique | None:
    name = words.take_name(TECHNIQUES)
    if name is None or not words.take_word("technique"):
        words.at = 0
        return None
    side = words.take_name(SIDES)
    return HasTechnique(name, SIDES[side] if side else None)


def _leverage(words: Words) -> Plays | None:
    side = words.take_name(SIDES)
    who = words.take_word(*_WHO) if side is not None else None
    if side is None or who is None:
        words.at = 0
        return None
    return Plays(who, SIDES[side], _HOW[words.expect(_HOW, E763)])
