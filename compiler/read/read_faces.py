"""Whom a look is for: ``only for Jumbo, three backs`` · ``never for Pinch``."""

from __future__ import annotations

from collections.abc import Iterable
from functools import partial

from stemline.diagnostics.catalogue.looks import E498
from stemline.diagnostics.catalogue.names import E310
from stemline.football.conditions import always
from stemline.playbook.look_definitions import FacedSet
from stemline.read.read_guards import SET_WORDS, read_guard
from stemline.read.words import Misread, Words
from stemline.syntax.tree import AtomKind, Fact, Linked, Mark, Phrase, Value, items, phrases


def read_faces(fact: Fact, formations: Iterable[str], receivers: int) -> tuple[FacedSet, ...]:
    """The sets behind `for`: formations by name, and conditions on how many stand where.

    A condition wins over a formation of that name; in quotes it is the name. Raises Misread.
    """
    sets = fact.value.link("for") if isinstance(fact.value, Linked) else None
    if sets is None or (isinstance(fact.value, Linked) and fact.value.head is not None):
        said = ", ".join(p.text for p in phrases(fact.value)) or "Jumbo"
        raise Misread(E498(word=fact.key, sets=said).at(fact.span))
    names = tuple(formations)
    return tuple(_set(item, names, receivers) for item in items(sets, Mark.AND))


def _set(item: Value, formations: tuple[str, ...], receivers: int) -> FacedSet:
    if not isinstance(item, Phrase) or _is_condition(item):
        return FacedSet("", read_guard(item, receivers, looks=False))
    words = Words([item])
    name = words.take_name(formations)
    if name is None or not words.done:
        words.at = 0
        raise words.miss(partial(E310, kind="formation"), formations, also=SET_WORDS)
    return FacedSet(name.casefold(), always(receivers))


def _is_condition(phrase: Phrase) -> bool:
    counted = phrase.atoms[0].kind in (AtomKind.SHAPE, AtomKind.NUMBER)
    return counted or (
        phrase.atoms[0].kind is not AtomKind.STRING and phrase.text.casefold() in SET_WORDS
    )
