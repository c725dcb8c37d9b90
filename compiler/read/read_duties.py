"""What a defender does on a pass: ``covers flat, strong`` · ``rushes B, weak``."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from stemline.diagnostics.catalogue.football import E402
from stemline.diagnostics.catalogue.looks import E424, E482, E484, E485, E496
from stemline.diagnostics.in_words import either
from stemline.football.defence.techniques import Gap
from stemline.football.defenders import DutyKind
from stemline.football.offence.landmarks import Landmark
from stemline.playbook.look_definitions import (
    AtField,
    Choices,
    LookSide,
    OverEnd,
    OverReceiver,
    Rush,
    Stand,
    Task,
    ZoneDuty,
)
from stemline.playbook.look_definitions import ManMark as Man
from stemline.read.read_stands import SIDES, choices_of
from stemline.read.words import Misread, Words, one_phrase
from stemline.source import Span
from stemline.syntax.tree import Linked, Mark, Phrase, Value, items, phrases

ZONES = {kind.value: kind for kind in DutyKind if kind not in (DutyKind.RUSH, DutyKind.MAN)}
SIDELESS = (DutyKind.HOLE, DutyKind.ROBBER)
"""Zones over the middle: they have no side."""
RUSHES = (*(gap.value for gap in Gap), "contain")
MOTION_MAN = "motion man"
MEN = ("tight end", "back", MOTION_MAN)
NOBODYS: Mapping[str, str] = MappingProxyType({})
_LETTERS = 2
"""Characters of a man's label at most."""
_ORDINALS = {"second": 2, "third": 3}
_COVERS = (*ZONES, "man", "deep middle")
_OF_MANY = {**{f"{name}s": kind for name, kind in ZONES.items()}, "halves": DutyKind.HALF}
"""Zones as they are said of several men: `C, F, B cover thirds`."""


def read_duty(
    value: Value | None,
    span: Span,
    stands: tuple[Stand, ...] = (),
    letters: Mapping[str, str] = NOBODYS,
) -> Choices:
    """Every choice of what he covers, in order: ``man, strong #3 or hook, strong``.

    ``stands`` are the places he has, however the sets differ: `flat` alone is the one on the side
    where he stands, `man` alone whoever he stands over. ``letters`` are the offence's men, by
    their lower case.
    """
    choices = choices_of(value, span, "what he covers and the side")
    read = [_by_letter(choice, letters) or _duty(choice, stands) for choice in choices]
    return Choices(tuple(task for task, _ in read), tuple(text for _, text in read))


def _by_letter(phrases: list[Phrase], letters: Mapping[str, str]) -> tuple[Man, str] | None:
    """``man, X`` · ``X``: a man of the offence by his letter."""
    words = Words(phrases)
    words.take_word("man")
    words.take_word("on")
    letter = letters.get(words.rest.casefold(), "") if not words.done else ""
    return (Man(None, 0, 0, letter=letter), _text(phrases)) if letter else None


def _text(phrases: list[Phrase]) -> str:
    return ", ".join(p.text for p in phrases)


def _duty(phrases: list[Phrase], stands: tuple[Stand, ...]) -> tuple[Task, str]:
    """A zone, or a man of the offence: he is one without `man` before him; and its words."""
    words, said = Words(phrases), _text(phrases)
    side = _side(words)
    if words.take_word("man") or _names_man(words):
        over = side is None and words.done and _over_whom(stands)
        return over or (_man(words, side), said)
    if words.take_name(("deep middle", "deep middle hole", "deep hole")):
        words.finish("a zone")
        return ZoneDuty(DutyKind.THIRD, None), said
    middle = words.take_word("middle") is not None
    words.take_word("deep")
    name = words.take_name({**ZONES, **_OF_MANY})
    if name is None:
        raise words.miss(E484, _COVERS, also=SIDES)
    kind = ZONES.get(name) or _OF_MANY[name]
    side = side or _side(words)
    middle = middle or (kind is DutyKind.THIRD and words.take_word("middle") is not None)
    words.finish("a zone")
    if (middle and kind is not DutyKind.THIRD) or (side is not None and kind in SIDELESS):
        raise Misread(E484(found=_text(phrases), choices=either(_COVERS)).at(phrases[0].span))
    if side is None and not middle and kind not in SIDELESS:
        side, middle = _own_side(stands)
        if side is None and not (middle and kind is DutyKind.THIRD):
            raise Misread(E482(place=said).at(phrases[0].span))
        said = f"{kind.value}, {side.value if side else 'middle'}"
    return ZoneDuty(kind, side), said


def _own_side(stands: tuple[Stand, ...]) -> tuple[LookSide | None, bool]:
    """The side on which all of his places are; whether all are over the middle."""
    sides = {stand.side for stand in stands}
    middle = all(stand.where in (AtField(None), AtField(Landmark.BALL)) for stand in stands)
    return (sides.pop() if len(sides) == 1 else None), bool(stands) and middle


def _over_whom(stands: tuple[Stand, ...]) -> tuple[Man, str] | None:
    """The man over whom he stands in his first place: whoever has another in a set says so."""
    if not stands or stands[0].side is None:
        return None
    side = stands[0].side
    match stands[0].where:
        case OverReceiver(rank):
            return Man(side, rank, 0), f"man, {side.value} #{rank}"
        case OverEnd():
            return Man(side, 0, 0), f"man, {side.value} tight end"
        case _:
            return None


def _names_man(words: Words) -> bool:
    ahead = [a.word for a in words.atoms[words.at :]]
    return bool(ahead) and (
        ahead[0].startswith("#") or ahead[0] in ("tight", "motion") or "back" in ahead[:3]
    )


def _man(words: Words, side: LookSide | None) -> Man:
    """Whom: ``strong #2``, ``tight end``, ``back``, ``second back``, ``weak back``."""
    side = side or _side(words)
    if (rank := words.take_rank()) is not None:
        found = Man(side or _side(words), rank, 0)
        if found.side is None:
            raise Misread(E482(place=f"#{rank}").at(words.last))
    elif words.take_name((MOTION_MAN,)):
        found = Man(None, 0, 0, mover=True)
    elif words.take_name(("tight end",)):
        found = Man(side or _side(words), 0, 0)
    else:
        nth = _ORDINALS[word] if (word := words.take_word(*_ORDINALS)) else 1
        if not words.take_word("back"):
            raise words.miss(E496, MEN, also=SIDES)
        found = Man(side or _side(words), 0, nth)
    words.finish("a man to cover")
    return found


def read_rush(value: Value | None, span: Span) -> Choices:
    """The gap he rushes through and the side, and when: ``A, strong behind T``; `either` is the
    side he stands on."""
    value, behind, after = _timed(value)
    choices = choices_of(value, span, "a gap and the side")
    if len(choices) > 1:
        at = choices[1][0].span
        raise Misread(E402(what="one gap, for a gap is always there").at(at))
    words = Words(choices[0])
    side = _side(words)
    name = words.take_name(RUSHES)
    if name is None:
        raise words.miss(E485, RUSHES, also=SIDES)
    words.take_word("gap")
    if not words.take_word("either"):
        side = side or _side(words)
    words.finish("a gap and the side")
    gap = None if name == "contain" else Gap(name)
    said = _text(choices[0])
    said += f" behind {behind}" if behind else ""
    said += f" after {after:g} seconds" if after else ""
    return Choices((Rush(gap, side, behind, after),), (said,))


def _timed(value: Value | None) -> tuple[Value | None, str, float]:
    """What stands before the timing, the man he comes behind, and the seconds he waits."""
    if not isinstance(value, Linked):
        return value, "", 0.0
    behind, after = "", 0.0
    for link in value.links:
        first, *others = items(link.value, Mark.AND)
        phrase = one_phrase(first, "a man or seconds", link.value.span)
        if others:
            late = ", ".join(p.text for p in phrases(link.value))[len(phrase.text) + 2 :]
            head = ", ".join(p.text for p in phrases(value.head))
            line = f"rushes {head}, {late} {link.connector.word} {phrase.text}"
            raise Misread(E424(found=late, line=line).at(others[0].span.to(others[-1].span)))
        words = Words([phrase])
        if link.connector.word == "behind":
            behind = phrase.text
            if len(phrase.atoms) > 1 or len(behind) > _LETTERS:
                raise Misread(E402(what="the letter of another rusher").at(phrase.span))
        else:
            number = words.take_number()
            if not number:
                raise Misread(E402(what="seconds: `after 1 second`").at(phrase.span))
            words.finish("seconds")
            after = number
    return value.head, behind, after


def _side(words: Words) -> LookSide | None:
    name = words.take_name(SIDES)
    if name is None:
        return None
    words.take_word("side")
    return SIDES[name]
