"""Whole lines as they are said at a clinic, put as the notation has them: ``back stays in``,
``E drops to hook``, ``N over centre``, ``quarterback rolls weak``, ``fake to B``.

Asked only about a line that turns on no word of its block, before `spoken_lines`. Common practice,
no published source.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

from lark import Token

_PLAYS = frozenset(("concept", "run", "tag"))
_PASSERS = frozenset(("quarterback", "qb", "q"))
_LAUNCHES: Mapping[str, str] = {
    "boot": "boot", "boots": "boot", "bootlegs": "boot", "roll": "roll", "rolls": "roll",
    "sprint": "sprint", "sprints": "sprint",
}  # fmt: skip
_SIDES = frozenset(("left", "right", "strong", "weak", "field", "boundary", "call", "away"))
_FILLERS = frozenset(("a", "an", "back", "deep", "for", "in", "into", "out", "the", "to", "under"))
"""Words before a zone that say no more than the zone does."""
_FREE = (
    ["centre", "field"], ["center", "field"], ["centrefield"], ["centerfield"], ["free"],
    ["deep", "middle"], ["middle", "of", "field"], ["middle", "third"], ["the", "post"],
)  # fmt: skip
_AROUND = frozenset(("and", "around", "blocks", "edge", "end", "for", "out", "the", "to"))
_PLACES = ("over", "inside", "outside")
_LINE = frozenset(("centre", "center", "guard", "tackle", "end"))
_IN_PLACE: Mapping[str, str] = {"center": "centre", "c": "centre"}


def as_said(kind: str, line: Sequence[Token]) -> list[Token] | None:
    """The line as a block of ``kind`` has it; None for one that is not known to be said so."""
    words = [token.casefold() for token in line]
    for kinds, said in _ROWS:
        if kind in kinds and (found := said(line, words)) is not None:
            return found
    return None


def _as(token: Token, *words: str) -> list[Token]:
    return [Token.new_borrow_pos("WORD", word, token) for word in words]


def _stays_in(line: Sequence[Token], words: Sequence[str]) -> list[Token] | None:
    """``back stays in``, ``back stays in and blocks`` as ``back blocks inside out``."""
    for at in range(1, len(words)):
        if words[at : at + 2] in (["stays", "in"], ["stay", "in"], ["stays", "home"]):
            if set(words[at + 2 :]) <= {"and", "to", "block", "blocks", "protect", "protects"}:
                return [*line[:at], *_as(line[at], "blocks", "inside", "out")]
            return None
    return None


def _helps_in(line: Sequence[Token], words: Sequence[str]) -> list[Token] | None:
    """``back stays in`` of a protection as ``back blocks scan``."""
    found = _stays_in(line, words)
    return [*found[:-2], *_as(found[-1], "scan")] if found is not None else None


def _pulls(line: Sequence[Token], words: Sequence[str]) -> list[Token] | None:
    """``backside guard pulls to the edge`` of a protection: the edge is the man whom he is for."""
    for at, word in enumerate(words[1:], 1):
        if word in ("pull", "pulls") and set(words[at + 1 :]) <= _AROUND:
            return [*line[:at], *_as(line[at], "blocks", "playside", "edge")]
    return None


def _leaves(line: Sequence[Token], words: Sequence[str]) -> list[Token] | None:
    """``guard leaves and climbs to near linebacker`` as ``guard blocks leave to near
    linebacker``: who leaves, climbs."""
    if "leaves" not in words[1:]:
        return None
    at = words.index("leaves", 1)
    rest = list(line[at + 1 :])
    said = words[at + 1 :]
    for climbs in (["and", "climbs"], ["and", "climb"], ["him", "and", "climbs"], ["him"]):
        if said[: len(climbs)] == climbs:
            rest = rest[len(climbs) :]
            break
    to_whom = not rest or rest[0].casefold() in ("to", "on")
    return [*line[:at], *_as(line[at], "blocks", "leave"), *rest] if to_whom else None


def _launch(line: Sequence[Token], words: Sequence[str]) -> list[Token] | None:
    """``quarterback rolls weak`` as ``feet roll weak, set``."""
    if len(words) < 2 or words[0] not in _PASSERS or words[1] not in _LAUNCHES:
        return None
    rest = [t for t, w in zip(line[2:], words[2:], strict=True) if w not in ("out", "to", "the")]
    if len(rest) > 1 or any(t.casefold() not in _SIDES for t in rest):
        return None
    comma = Token.new_borrow_pos("_AND", ",", line[1])
    return [*_as(line[0], "feet"), *_as(line[1], _LAUNCHES[words[1]]), *rest, comma,
            *_as(line[1], "set")]  # fmt: skip


def _fake(line: Sequence[Token], words: Sequence[str]) -> list[Token] | None:
    """``fake to B`` as ``quarterback fakes to B``."""
    if words[0] in ("fake", "fakes") and words[1:2] == ["to"] and len(words) > 2:
        rest = line[3:] if words[2] == "the" else line[2:]
        return [*_as(line[0], "quarterback", "fakes"), line[1], *rest]
    return None


def _hot(line: Sequence[Token], words: Sequence[str]) -> list[Token] | None:
    """``hot strong #3`` of a pass as ``pressure strong #3``: a protection has the other hot."""
    if words[0] == "hot" and len(words) > 1 and not {"is", "if", "when"} & set(words):
        rest = line[2:] if words[1] == "to" else line[1:]
        return [*_as(line[0], "pressure"), *rest] if rest else None
    return None


def _drops(line: Sequence[Token], words: Sequence[str]) -> list[Token] | None:
    """``E drops to hook, field`` as ``E covers hook, field``; ``F plays centre field`` as
    ``F covers deep middle``."""
    for at, word in enumerate(words[1:], 1):
        if word not in ("drop", "drops", "play", "plays", "has", "takes"):
            continue
        rest, said = list(line[at + 1 :]), list(words[at + 1 :])
        if word in ("drop", "drops"):
            while said and said[0] in _FILLERS:
                rest.pop(0)
                said.pop(0)
        elif said[:1] == ["the"] and said not in _FREE:
            rest, said = rest[1:], said[1:]
        if said in _FREE or [w for w in said if w != "the"] in _FREE:
            return [*line[:at], *_as(line[at], "covers", "deep", "middle")]
        return [*line[:at], *_as(line[at], "covers"), *rest] if rest else None
    return None


def _over(line: Sequence[Token], words: Sequence[str]) -> list[Token] | None:
    """``N over centre`` as ``N in over centre``, ``C over strong #1, 5 deep`` as ``C at …``."""
    if len(words) < 3 or line[0].type != "WORD" or len(words[0]) > 2:
        return None
    if words[1] in ("head", "headup", "nose"):
        return None
    if words[1] not in _PLACES:
        return None
    place = [w for w in words[2:4] if w != "the"][:1]
    rest = [t for t in line[2:] if t.casefold() != "the"]
    if place and place[0] in _LINE:
        rest = [*_as(rest[0], _IN_PLACE.get(place[0], place[0])), *rest[1:]]
        return [line[0], *_as(line[1], "in", words[1]), *rest]
    return [line[0], *_as(line[1], "at"), *rest] if words[1] == "over" else None


_Said = Callable[[Sequence[Token], Sequence[str]], "list[Token] | None"]
_ROWS: tuple[tuple[frozenset[str], _Said], ...] = (
    (frozenset(("concept", "tag")), _stays_in),
    (frozenset(("protection",)), _helps_in),
    (frozenset(("protection",)), _pulls),
    (frozenset(("run", "tag")), _leaves),
    (frozenset(("concept", "tag")), _launch),
    (_PLAYS, _fake),
    (frozenset(("concept", "tag")), _hot),
    (frozenset(("look",)), _drops),
    (frozenset(("look",)), _over),
)
