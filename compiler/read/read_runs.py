"""The facts of a run: blocking rules, aiming points, the playside, keys and the reactions."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence

from stemline.diagnostics.catalogue.football import E402, E443, E444, E445, E462
from stemline.diagnostics.catalogue.runs import E670, E671, E672, E673, E674, E675, E676, E680
from stemline.diagnostics.in_words import either
from stemline.football.blocking.block_names import BLOCKS, DEFENDERS, UNBLOCKED
from stemline.football.blocking.run_rules import MEANINGS, PULLS, BlockWay
from stemline.playbook.concepts import BlockSaid, Job
from stemline.playbook.run_definitions import (
    WHOLE_LINE,
    Aim,
    AimPoint,
    BlockRules,
    Join,
    KeyDef,
    LineSpot,
    Reaction,
    RuleDef,
    TargetDef,
    Toward,
)
from stemline.playbook.said import SideWord
from stemline.read.own_letters import NO_LETTERS, Letters
from stemline.read.read_places import SIDES
from stemline.read.words import Misread, Words, one_phrase
from stemline.source import Span
from stemline.syntax.tree import Fact, Linked, Mark, Phrase, Series, Value, items, phrases

WAYS = {way.value: way for way in BlockWay}
PLACES = ("guard", "tackle", "outside tackle", "end")
"""Men of the line by place, from the ball outward; beside them `centre` and the whole `line`."""
GAPS = ("A", "B", "C", "D")
_CENTRES = ("centre", "center")
_OUTSIDE_OF = {"guard": "B", "tackle": "C"}
"""The gap that is outside a man of the line, whoever stands beside him."""
_AIMS = (*GAPS, *PLACES[:2], "end", "centre", "outside the end")
TOWARD_MEN = ("tight end", "back")
_SAID_AS = {
    "first linebacker": "near linebacker", "first backer": "near linebacker",
    "defensive end": "end man on line", "end": "end man on line", "backer": "linebacker",
    "mike": "middle linebacker", "mike linebacker": "middle linebacker",
    "force": "force defender", "first man past center": "first man past centre",
    "end man": "end man on line", "noseguard": "nose", "nose guard": "nose", "nose tackle": "nose",
}  # fmt: skip
"""Defenders as coaches name them who mean one of the table: common practice."""
_TOWARD_SIDES = {
    word: side for word, side in SIDES.items()
    if side not in (SideWord.PLAYSIDE, SideWord.BACKSIDE)
}  # fmt: skip
REACTIONS = ("give", "pull", "throw", "pitch")
_AIMED_AT = (
    *(way for way, meaning in MEANINGS.items() if meaning.target),
    BlockWay.STALK,
    BlockWay.CRACK,
)
"""Rules that may say at whom."""


def read_line_spot(subject: Phrase, roles: Collection[str]) -> LineSpot | None:
    """The man of the line that a subject names, or None for a subject that is a role.

    ``roles`` are the block's own: a role may be called ``end``, and then it is one.
    """
    words = Words([subject])
    if subject.text.casefold() in roles:
        return None
    if words.take_word("line") and words.done:
        return WHOLE_LINE
    words.at = 0
    if words.take_word(*_CENTRES) and words.done:
        return LineSpot(None, "centre")
    words.at = 0
    side = words.take_name(SIDES)
    place = words.take_name(PLACES)
    if place is None or not words.done:
        return None
    if side is None:
        raise Misread(E670(place=place).at(subject.span))
    return LineSpot(SIDES[side], place)


def read_rules(value: Value | None, span: Span) -> BlockRules:
    """``down or double with guard then backside linebacker``."""
    parts = items(value, Mark.THEN)
    if value is None or len(parts) > 2:
        raise Misread(E672().at(value.span if value is not None else span))
    rules = [_rule(one_phrase(r, "a block", span)) for r in items(parts[0], Mark.OR)]
    then = []
    for target in items(parts[1], Mark.OR) if len(parts) > 1 else ():
        words = Words([one_phrase(target, "a defender", span)])
        then.append(_target(words))
        words.finish("a defender")
    return BlockRules(tuple(rules), tuple(then), _written(value))


def _written(value: Value) -> str:
    """The rules as the coach wrote them."""
    parts = [" or ".join(p.text for p in phrases(part)) for part in items(value, Mark.THEN)]
    return ", then ".join(parts)


def _rule(phrase: Phrase) -> RuleDef:
    words = Words([phrase])
    if words.take_word("pull") and not (
        not words.done and words.atoms[words.at].word in {w.value for w in (*PULLS, BlockWay.LEAD)}
    ):
        words.at = 0
    way = WAYS[words.expect(WAYS, E445)]
    partner: LineSpot | None = None
    target: TargetDef | None = None
    if way is BlockWay.DOUBLE:
        partner = _partner(words)
    elif way in _AIMED_AT and not words.done:
        words.take_word("to", "on")
        target = _target(words)
    words.finish("a block")
    return RuleDef(way, partner, target)


def _partner(words: Words) -> LineSpot:
    if not words.take_word("with") or words.done:
        raise Misread(E671(found="nothing", choices=either((*PLACES, "centre"))).at(words.last))
    words.take_word("the")
    if words.take_word(*_CENTRES):
        return LineSpot(None, "centre")
    side = words.take_name(SIDES)
    words.take_word("tight")
    place = words.expect((*PLACES, "centre"), E671)
    return LineSpot(SIDES[side] if side else None, place)


def _target(words: Words, among: Sequence[str] = DEFENDERS) -> TargetDef:
    words.take_word("the")
    side = words.take_name(SIDES)
    known = words.take_name((*among, *_SAID_AS))
    what = _SAID_AS.get(known, known) if known else words.expect(among, E462)
    return TargetDef(what, SIDES[side] if side else None)


def read_aim(value: Value | None, span: Span) -> Aim:
    """``playside B``, ``outside the end``, ``backside A then playside C``."""
    points, said = [], []
    for piece in items(value, Mark.THEN):
        phrase = _side_first(piece, span)
        words = Words([phrase])
        words.take_word("at")
        words.take_word("the")
        side = words.take_name(SIDES)
        if words.take_word("outside"):
            words.take_word("the")
            inner = words.take_word(*_OUTSIDE_OF)
            if inner is None:
                words.take_word("tight")
                words.expect(("end",), E673)
            point = _OUTSIDE_OF[inner] if inner else "edge"
        else:
            point = words.expect(_AIMS, E673)
            if point in GAPS and side in (None, "playside", "backside"):
                words.take_word("gap")  # of another side the run has to go `toward` it
        words.finish("an aiming point")
        points.append(AimPoint(point, SIDES[side] if side else None))
        gap = phrase.text.split()[-1].upper() in GAPS  # B may be a man's letter, too
        said.append(f"{phrase.text} gap" if gap else phrase.text)
    if not points:
        raise Misread(E402(what="an aiming point").at(span))
    return Aim(tuple(points), ", then ".join(said))


def _side_first(piece: Value, span: Span) -> Phrase:
    """``B, playside`` and ``B gap playside`` as ``playside B``."""
    parts = items(piece, Mark.AND)
    atoms = [a for p in parts if isinstance(p, Phrase) for a in p.atoms]
    if len(atoms) > 1 and atoms[-1].word in SIDES and atoms[0].word.upper() in GAPS:
        return Phrase((atoms[-1], *atoms[:-1]))
    return one_phrase(piece, "an aiming point", span)


def read_toward(value: Value | None, span: Span, letters: Letters = NO_LETTERS) -> Toward:
    """``call``, ``tight end``, ``away from tight end``, ``away from back``, ``Y``."""
    words = Words([one_phrase(value, "the side the run goes to", span)])
    away = words.take_name(("away from",)) is not None
    man = words.take_name(TOWARD_MEN) or letters.of.get(words.rest.casefold())
    if man is not None and man in letters.of.values():
        return Toward(None, man, away)
    side = None if man or away else words.take_name(_TOWARD_SIDES)
    if man is None and side is None:
        raise words.miss(E674, TOWARD_MEN if away else (*_TOWARD_SIDES, *TOWARD_MEN))
    words.take_word("side")
    words.finish("the side the run goes to")
    return Toward(SIDES[side] if side else None, man or "", away)


def read_key(value: Value | None, span: Span) -> KeyDef:
    """``backside end man on line``, ``unblocked man``; the side may stand behind a comma too."""
    pieces = [one_phrase(p, "a defender and a side", span) for p in items(value, Mark.AND)]
    words = Words(pieces)
    target = _target(words, (*DEFENDERS, UNBLOCKED)) if not words.done else None
    assert target is not None
    if target.side is None and not words.done:
        target = TargetDef(target.what, SIDES[words.expect(SIDES, E443)])
    words.finish("a defender")
    return KeyDef(target, ", ".join(p.text for p in pieces), span)


def read_reaction(fact: Fact, roles: Collection[str]) -> Reaction:
    """``give if he widens``, ``throw slant if he fits the run``, ``pitch off overhang if …``, and
    ``give to sweep if he stays`` where another than the carrier may get it;
    with one man to read also ``pitch to trail if he takes the quarterback``. A pitch alone, off a
    man, is for when he takes the quarterback."""
    value, does = fact.value, fact.key
    first = next(phrases(value), None)
    if first is not None and first.atoms[0].word in ("is", "runs", "blocks", "aims", "says"):
        raise Misread(E680(word=does).at(fact.span))
    when = value.link("if") if isinstance(value, Linked) else None
    alone = does == "pitch" and isinstance(value, Linked) and value.link("off") is not None
    if not isinstance(value, Linked) or (when is None and not alone):
        raise Misread(E675(does=does).at(fact.span))
    to = ""
    off: KeyDef | None = None
    if does == "throw":
        to = _taker(one_phrase(value.head, "the role that is thrown to", fact.span), roles)
    elif does == "give" and isinstance(value.head, Phrase):
        to = _taker(value.head, roles, "to")
    elif value.head is not None:
        raise Misread(E675(does=does).at(value.head.span))
    if does == "pitch":
        off_value, taker = value.link("off"), value.link("to")
        if off_value is None and taker is None:
            raise Misread(E675(does="pitch off overhang").at(fact.span))
        off = read_key(off_value, fact.span) if off_value is not None else None
        if taker is not None:
            to = _taker(one_phrase(taker, "the role that is pitched to", fact.span), roles)
    said = _spoken(when) if when is not None else "he takes the quarterback"
    return Reaction(does, to, said, off, fact.span)


def _taker(taker: Phrase, roles: Collection[str], after: str = "") -> str:
    """The role that gets the ball, ``after`` a word that may stand before it."""
    words = Words([taker])
    if after:
        words.take_word(after)
    to = words.expect(roles, E444)
    words.finish("a role")
    return to


def _spoken(value: Value) -> str:
    """Free words as they were written, the marks between them too."""
    match value:
        case Series(mark, parts):
            between = {Mark.AND: ", "}.get(mark, f" {mark.value} ")
            return between.join(map(_spoken, parts))
        case _:
            return " ".join(phrase.text for phrase in phrases(value))


def read_join(value: Value | None, span: Span) -> Join:
    """``run Power``."""
    phrase = one_phrase(value, "`run` and its name", span)
    words = Words([phrase])
    if not words.take_word("run") or words.done:
        raise Misread(E676().at(phrase.span))
    return Join(words.rest.casefold(), words.span)


_SCANS: Mapping[str, str] = {
    "scan": "inside out", "scan inside out": "inside out", "the edge": "edge",
}  # fmt: skip
"""Blocks of receivers and backs in other words: a protection has `scan`."""


def read_block(fact: Fact) -> Job:
    """One of the jobs of receivers and backs, or a blocking rule as linemen have them."""
    if isinstance(fact.value, Phrase):
        words = Words([fact.value])
        job = words.take_name((*BLOCKS, *_SCANS))
        if job is not None and words.done:
            return BlockSaid(_SCANS.get(job, job))
        words.at = 0
        if (side := words.take_name(SIDES)) and words.take_word("edge") and words.done:
            return BlockSaid("edge", SIDES[side])
        words.at = 0
        if words.take_name((*WAYS, "pull kick")) is None:
            raise words.miss(E445, dict.fromkeys((*BLOCKS, *WAYS)))
    return read_rules(fact.value, fact.span)
