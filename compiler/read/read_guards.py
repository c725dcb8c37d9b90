"""Guards: ``when 3x2, off`` → the set of worlds where it holds; and guards that clash."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable, Sequence
from itertools import combinations

from stemline.diagnostics.catalogue.football import E402, E410, E411, E412, E413, E414, E420, E421
from stemline.diagnostics.catalogue.looks import E426, E427
from stemline.diagnostics.diagnostic import Diagnostic, Related
from stemline.diagnostics.in_words import either
from stemline.diagnostics.nearest import nearest
from stemline.football.conditions import (
    EVERY_MOVE,
    Called,
    Condition,
    Guard,
    Lie,
    LookWord,
    MoveWord,
    always,
    example,
    moves_where,
    where,
    worlds,
)
from stemline.playbook.guards import T
from stemline.playbook.said import Said
from stemline.read.words import Misread, Words, bounded
from stemline.source import Span
from stemline.syntax.tree import Atom, AtomKind, Mark, Phrase, Value, items

_MOST_RECEIVERS = 6
"""Men of the largest code: what a guard may ever ask for, whatever code this book plays."""

_BACKS = {"empty": 0, "one back": 1, "two backs": 2, "three backs": 3}
_LOOKS = {look.value: look for look in LookWord}
_LIES = {lie.value: lie for lie in Lie}
_CALLED = {called.value: called for called in Called if called is not Called.NEITHER}
_MOTION = MoveWord.ANY.value
_COUNTED = ("strong", "weak")
EXCLUDE = "they exclude each other"
SET_WORDS = tuple(_BACKS)
"""Conditions on a set alone, beside shapes and figures."""
CONDITION_WORDS = (*_LOOKS, *_LIES, *_CALLED, *_BACKS)


def read_guard(
    value: Value | None,
    receivers: int,
    formations: Collection[str] = (),
    *,
    looks: bool = True,
    moves: bool = False,
) -> Guard:
    """The guard of a fact; no text means always. ``looks`` False refuses words of the defence;
    with ``moves`` it may ask for a motion; it may ask for one of the ``formations``."""
    if value is None:
        return always(receivers)
    holds = always(receivers).worlds
    ever = always(_MOST_RECEIVERS).worlds
    asked: list[LookWord] = []
    moved = moves_where()
    # A formation called Empty is one that the condition `empty` means, and it stays the condition.
    sets = {name.casefold() for name in formations}.difference(CONDITION_WORDS)
    called: frozenset[str] = frozenset()
    for item in items(value, Mark.AND):
        if moves and (words := _moves(item)):
            moved &= moves_where(*words)
            continue
        if named := _called(item, sets):
            called = called & named if called else named
            if not called:
                raise Misread(E411(guard=_text(value), why=EXCLUDE).at(value.span))
            continue
        conditions = [_condition(p, formations, looks=looks) for p in _alternatives(item)]
        holds &= frozenset[int]().union(*(where(receivers, c) for c in conditions))
        ever &= frozenset[int]().union(*(where(_MOST_RECEIVERS, c) for c in conditions))
        asked += [c.look for c in conditions if c.look is not None]
    text = _text(value)
    if not ever or not moved:
        why = EXCLUDE if "," in text else "no code plays so many receivers"
        raise Misread(E411(guard=text, why=why).at(value.span))
    return Guard(text, holds, tuple(asked), moved, called)


def _called(item: Value, sets: Collection[str]) -> frozenset[str]:
    """The keys of the formations of which one is asked for; none where the words ask for something
    else."""
    said = _alternatives(item)
    named = [p for p in said if p.text.casefold() in sets]
    if named and len(named) < len(said):
        other = next(p for p in said if p not in named)
        raise Misread(E427(first=_told(named[0]), second=_told(other)).at(item.span))
    return frozenset(p.text.casefold() for p in named)


def _moves(item: Value) -> tuple[MoveWord, ...]:
    """The moves of which one must be there: ``motion across or motion jet``; none where the words
    ask for something else."""
    said = _alternatives(item)
    moving = [p for p in said if p.atoms[0].word == _MOTION]
    if moving and len(moving) < len(said):
        first, second = (_told(p) for p in said[:2])
        raise Misread(E427(first=first, second=second).at(item.span))
    return tuple(_move(p) for p in moving)


def _move(phrase: Phrase) -> MoveWord:
    words = Words([phrase])
    if words.take_word(_MOTION) and words.done:
        return MoveWord.ANY
    ways = {word.value.removeprefix(f"{_MOTION} "): word for word in MoveWord}
    del ways[_MOTION]
    way = words.expect(ways, E426)
    words.finish("a motion")
    return ways[way]


def read_looks(value: Value, names: Iterable[str] = ()) -> tuple[LookWord, ...]:
    """Looks for `against`: words of the defence only, parted by commas.

    ``names`` are those of the playbook's own looks, which may have been meant.
    """
    found = []
    for item in items(value, Mark.AND):
        if not isinstance(item, Phrase):
            raise Misread(E402(what="looks parted by commas").at(item.span))
        words = Words([item])
        word = words.take_name(_LOOKS)
        if word is None:
            raise words.miss(E412, (*_LOOKS, *names))
        found.append(_LOOKS[word])
        words.finish("a look")
    for first, second in combinations(found, 2):
        if first.opposite is second:
            why = EXCLUDE
            raise Misread(E411(guard=_text(value), why=why).at(value.span))
    return tuple(found)


def read_look_words(
    text: str, names: Iterable[str] = ()
) -> tuple[tuple[LookWord, ...], tuple[Diagnostic, ...]]:
    """Looks given on the command line: ``zone, off``; ``names`` as in `read_looks`."""
    known = (*_LOOKS, *names)
    looks: list[LookWord] = []
    for piece in re.finditer(r"[^,]+", text):
        word = " ".join(piece.group().split()).casefold()
        look = _LOOKS.get(word)
        if look is None or look.opposite in looks:
            at = Span("--against", 1, piece.start() + 1, piece.end() + 1)
            near, choices = nearest(word, known), either(known)
            return (), (E412(found=word, choices=choices).at(at, nearest=near),)
        looks.append(look)
    return tuple(looks), ()


def clashes(said: Sequence[Said[T]], receivers: int, what: str) -> Iterable[Diagnostic]:
    """Pairs of facts about one thing that can both hold and neither refines the other."""
    for first, second in combinations(said, 2):
        a, b = first.guard, second.guard
        if not a.meets(b):
            continue  # also where this code has too few men for either
        other = (Related(first.span, "the other line is here"),)
        if a.refines(b) and b.refines(a):
            if first.value != second.value:
                yield E420(what=what).at(second.span, related=other)
        elif first.value != second.value and not (a.refines(b) or b.refines(a)):
            yield E421(
                what=what, first=first.guard.text or "always",
                second=second.guard.text or "always",
                world=_example(first.guard, second.guard, receivers), apart=_told_apart(a, b),
            ).at(second.span, related=other)  # fmt: skip


def _told_apart(first: Guard, second: Guard) -> str:
    """The second guard as a special case of the first, and as what the first leaves, where that is
    one word."""
    own = second.text.split(", ")
    more = [words for words in first.text.split(", ") if words not in own]
    whole = ", ".join((*own, *more))
    left = _LOOKS[more[0]].opposite.value if len(more) == 1 and more[0] in _LOOKS else ""
    both = f"`when {whole}`"
    return f"{both}, or `when {second.text}, {left}`" if left else both


def _example(a: Guard, b: Guard, receivers: int) -> str:
    """A look or shape in which both hold, saying only what the two guards ask for."""
    everywhere, both = worlds(receivers), a.worlds & b.worlds
    world = example(receivers, both)
    asked = {*a.looks, *b.looks}
    words = []
    if {w.shape for w in everywhere} != {everywhere[i].shape for i in both}:
        words.append("{}x{}".format(*world.shape))
    if {w.lie for w in everywhere} != {everywhere[i].lie for i in both}:
        words.append(world.lie.value)
    if {w.called for w in everywhere} != {everywhere[i].called for i in both}:
        words.append(world.called.value)
    words += [look.value for look in LookWord if look in world.looks and look in asked]
    if called := a.formations & b.formations or a.formations or b.formations:
        words.append(_as_written(min(called), f"{a.text}, {b.text}"))
    if (moved := a.moves & b.moves) != EVERY_MOVE:
        asked_for = (w for w in MoveWord if w is not MoveWord.ANY and not moved & ~moves_where(w))
        words += [w.value for w in asked_for]
    return ", ".join(words)


def _as_written(name: str, text: str) -> str:
    found = re.search(re.escape(name), text, re.IGNORECASE)
    return found[0] if found else name


def _alternatives(item: Value) -> list[Phrase]:
    phrases: list[Phrase] = []
    for alternative in items(item, Mark.OR):
        if not isinstance(alternative, Phrase):
            raise Misread(E402(what="conditions").at(alternative.span))
        if phrases and _is_figure(phrases[-1]) and alternative.atoms[0].word == "more":
            # "3 or more strong" is one condition: its `or` parts no choices.
            alternative = Phrase((*phrases.pop().atoms, *alternative.atoms))
        phrases.append(alternative)
    return phrases


def _is_figure(phrase: Phrase) -> bool:
    return len(phrase.atoms) == 1 and phrase.atoms[0].kind is AtomKind.NUMBER


def _condition(phrase: Phrase, formations: Collection[str] = (), *, looks: bool) -> Condition:
    words = Words([phrase])
    shape = words.take(AtomKind.SHAPE)
    if shape is not None:
        strong, weak = sorted((int(n) for n in shape.text.split("x")), reverse=True)
        words.finish("a shape")
        return Condition(shape=(strong, weak))
    if _is_whole(phrase.atoms[0]) and (counted := _counted(words)):
        return counted
    name = words.take_name(CONDITION_WORDS)
    if name is None:
        raise words.miss(E410, CONDITION_WORDS, also=formations)
    words.finish("a condition")
    if name in _LOOKS:
        if not looks:
            raise Misread(E413(look=name, instead="").at(phrase.span))
        return Condition(look=_LOOKS[name])
    if name in _LIES:
        return Condition(lie=_LIES[name])
    if name in _CALLED:
        return Condition(called=_CALLED[name])
    return Condition(backs=_BACKS[name])


def _is_whole(atom: Atom) -> bool:
    return atom.kind is AtomKind.NUMBER and "." not in atom.text


def _counted(words: Words) -> Condition | None:
    """``3 strong``, ``2 or more weak``: receivers on one side; None where the words after the
    figure have no likeness to that."""
    number = int(bounded(words.atoms[0]))
    words.at = 1
    if not words.done and not nearest(words.atoms[1].text, (*_COUNTED, "more")):
        words.at = 0
        return None
    limits = (number, _MOST_RECEIVERS if words.take_word("more") else number)
    side = words.expect(_COUNTED, E414)
    words.finish("a condition")
    return Condition(strong=limits) if side == "strong" else Condition(weak=limits)


def _text(value: Value) -> str:
    return ", ".join(
        " or ".join(_told(p) for p in _alternatives(i)) for i in items(value, Mark.AND)
    )


def _told(phrase: Phrase) -> str:
    """A condition as it is spoken; the `or` of "3 or more strong" is no atom of its phrase."""
    first, *rest = phrase.text.split(maxsplit=1)
    return f"{first} or {rest[0]}" if rest and rest[0].startswith("more ") else phrase.text
