"""Places: ``call, 2 inside numbers, on line`` and who stands or moves there."""

from __future__ import annotations

from dataclasses import replace

from stemline.diagnostics.catalogue.football import (
    E402,
    E430,
    E431,
    E432,
    E433,
    E434,
    E435,
    E436,
    E437,
    E438,
)
from stemline.football.offence.landmarks import OFF_LINE_DEPTH, UNDER_CENTRE_DEPTH, Landmark
from stemline.playbook.formations import Mover
from stemline.playbook.places import AtLandmark, AtMan, Between, FromHere, Home, Place, Where
from stemline.playbook.said import SideWord
from stemline.read.words import Misread, Words
from stemline.source import Span
from stemline.syntax.tree import AtomKind, Mark, Phrase, Value, items

LANDMARKS = {landmark.value: landmark for landmark in Landmark}
SIDES = {side.value: side for side in SideWord}
_AT_SNAP = (SideWord.STRONG, SideWord.WEAK, SideWord.PLAYSIDE, SideWord.BACKSIDE)
FORMATION_SIDES = tuple(s.value for s in SideWord if s not in _AT_SNAP)
"""Strong and weak are counted at the snap, so no man can be lined up by them."""
_MEASURES = ("inside", "outside")
_DEPTHS = ("on line", "off line", "under centre", "5 deep")
_DEPTH_WORDS = ("on", "off", "under")
_OF_LINE = (Landmark.GUARD, Landmark.TACKLE, Landmark.END)
_CENTRES = ("c", "sn", "centre", "center", "snapper")
_WING = 1.0
"""Yards outside the end where a wing stands, off the line. Common practice."""


def read_place(
    value: Value | None, span: Span, letters: tuple[str, ...], *, moving: bool = False
) -> Place:
    """A place with its side and depth; ``letters`` are the men who may be named in it.

    ``moving`` lets it be told from where a mover is: `3 inside`, or `back` to where he lined up.
    """
    phrases = [p for p in items(value, Mark.AND) if isinstance(p, Phrase)]
    if not phrases or len(phrases) != len(items(value, Mark.AND)):
        at = value.span if value is not None else span
        raise Misread(E402(what="a side, a place and a depth parted by commas").at(at))
    words = Words(phrases)
    words.take_word("to", "from") if moving else words.take_word("to")
    if moving and words.take_word("back"):
        words.finish("a place")
        return Place(None, Home(), None, False, span)
    side = _side(words)
    start = words.here
    where = _where(words, letters, FORMATION_SIDES if side is None else (), moving)
    at = start.to(words.last)
    depth, on_line = read_depth(words)
    words.finish("a place")
    if side is None and _needs_side(where):
        raise Misread(E431().at(at))
    return Place(side, where, depth, on_line, span)


def _side(words: Words) -> SideWord | None:
    if words.take_word("strong", "weak"):
        words.at -= 1
        raise Misread(E432(found=words.atoms[words.at].text).at(words.here))
    name = words.take_name(FORMATION_SIDES)
    if name is not None:
        words.take_word("side")
        return SIDES[name]
    return None


def _where(words: Words, letters: tuple[str, ...], sides: tuple[str, ...], moving: bool) -> Where:
    """``sides`` are the side words that may have been meant where none was read."""
    words.take_name(("half way", "halfway"))
    if words.take_word("between"):
        first = _anchor(words, letters, 0.0)
        words.expect(("and",), E433)
        return Between(first, _anchor(words, letters, 0.0))
    words.take_word("at")
    if words.take_word("beside"):
        where = _anchor(words, letters, 1.8)
        return replace(where, beside=True) if isinstance(where, AtMan) else where
    start = words.at
    if words.take_word("behind"):
        where = _anchor(words, letters, 0.0)
        if isinstance(where, AtMan) and not where.man.startswith("Q"):
            return replace(where, behind=True)
        if isinstance(where, AtLandmark) and where.landmark in _OF_LINE and not words.done:
            return where  # behind a lineman, and how deep
        words.at = start  # behind the quarterback is so many yards from the ball
    yards = words.take_number()
    if yards is not None:
        measure = words.take_word(*_MEASURES)
        if measure is None:
            raise words.miss(E434, _MEASURES)
        if moving and _depth_is_next(words):
            return FromHere(yards if measure == "outside" else -yards)
        return _anchor(words, letters, yards if measure == "outside" else -yards)
    if words.take_word("outside", "inside"):
        words.at -= 1
        raise Misread(E435(word=words.atoms[words.at].text).at(words.here))
    return _anchor(words, letters, 0.0, sides)


def _anchor(
    words: Words, letters: tuple[str, ...], outside: float, sides: tuple[str, ...] = ()
) -> AtLandmark | AtMan:
    landmark = words.take_name(LANDMARKS)
    if landmark is not None:
        return AtLandmark(LANDMARKS[landmark], outside)
    if words.take_name(("tight end", "tight", "the tight end")):
        return AtLandmark(Landmark.END, outside)
    by_word = {letter.casefold(): letter for letter in letters}
    if not words.done and (said := words.atoms[words.at].word) not in by_word:
        if said in _CENTRES:
            words.at += 1
            return AtLandmark(Landmark.BALL, outside)
        if said == "wing" and not outside:
            words.at += 1
            return AtLandmark(Landmark.END, _WING)
    if not words.done and words.atoms[words.at].word in by_word:
        words.at += 1
        return AtMan(by_word[words.atoms[words.at - 1].word], outside)
    raise words.miss(E430, (*LANDMARKS, *letters), also=sides)


def _depth_is_next(words: Words) -> bool:
    """Whether no place follows the yards, so that they are told from where the man is."""
    if words.done:
        return True
    atom = words.atoms[words.at]
    return atom.kind is AtomKind.NUMBER or atom.word in _DEPTH_WORDS


def read_depth(words: Words) -> tuple[float | None, bool]:
    """Yards behind the line and whether he is on it; (None, False) where nothing is said."""
    if words.done:
        return None, False
    if words.take_name(("on line", "on the line")):
        return 0.0, True
    if words.take_word("gun", "shotgun"):
        return None, False  # the quarterback's, as deep as the house has it
    if words.take_name(("off line", "off the line")):
        return OFF_LINE_DEPTH, False
    if words.take_name(("under centre", "under center")):
        return UNDER_CENTRE_DEPTH, False
    yards = words.take_number()
    if yards is not None and words.take_word("deep"):
        return yards, False
    if yards is not None:
        words.at -= 1
    raise words.miss(E436, _DEPTHS)


def _needs_side(where: Where) -> bool:
    """A landmark other than the ball stands on both sides; a man is on one already."""
    match where:
        case AtLandmark(Landmark.BALL, 0.0) | AtMan() | FromHere() | Home():
            return False
        case AtLandmark():
            return True
        case Between(first, second):
            return _needs_side(first) and _needs_side(second)


def read_mover(phrase: Phrase, letters: tuple[str, ...]) -> Mover:
    """A letter, ``call #2``: a receiver counted where the men line up, or ``back``: the deepest."""
    words = Words([phrase])
    if words.take_word("back"):
        words.finish("a back")
        return Mover("", None, 0, phrase.span, back=True)
    side = words.take_name(FORMATION_SIDES)
    if side is not None:
        rank = words.take_rank()
        if rank is None:
            raise words.miss(E437, ("#1", "#2", "#3"))
        words.finish("a receiver")
        return Mover("", SIDES[side], rank, phrase.span)
    by_word = {letter.casefold(): letter for letter in letters}
    if len(phrase.atoms) == 1 and phrase.atoms[0].word in by_word:
        return Mover(by_word[phrase.atoms[0].word], None, 0, phrase.span)
    raise words.miss(E438, letters)
