"""Who looks for a rusher and goes out afterwards, as it is said: ``back checks edge then
releases``, ``Y blocks one count, then releases to the flat``, ``R scans and swings weak``.

What stands behind the men is put as the notation has it: ``check edge then flat``. Common
practice, no published source.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from lark import Token

LOOKS_FIRST = frozenset(("block", "blocks", "check", "checks", "help", "helps", "scan", "scans"))
_JOINTS = frozenset((",", "and", "then"))
_RELEASES = frozenset((
    "get", "gets", "go", "goes", "leak", "leaks", "release", "releases", "slip", "slips",
    "sneak", "sneaks",
))  # fmt: skip
_ROUTES: Mapping[str, str] = {
    "angles": "angle", "arrows": "arrow", "crosses": "cross", "curls": "curl", "drags": "cross",
    "fades": "fade", "flares": "swing", "hitches": "hitch", "hooks": "hook", "shoots": "shoot",
    "sits": "sit", "slants": "slant", "swings": "swing", "wheels": "wheel",
}  # fmt: skip
_NAMED = ("corner", "drag", "flat", "leak", "seam")
"""Routes that are said by their name alone."""
_ROUTE_OF = {**_ROUTES, **{r: r for r in (*_ROUTES.values(), *_NAMED)}, "flare": "swing"}
_SMALL = frozenset((
    "a", "an", "as", "first", "for", "in", "into", "late", "of", "off", "on", "out", "the", "to",
    "up",
))  # fmt: skip
_AT_EDGE = (["edge"], ["end"], ["outside"], ["edge", "rusher"], ["defensive", "end"])
_INSIDE_OUT = (
    ["scan"], ["inside"], ["inside", "out"], ["scan", "inside", "out"], ["his", "man"],
    ["his", "gap"], ["pressure"], ["blitz"], ["blitzer"], ["rush"], ["rusher"], ["protection"],
    ["any", "blitz"], ["any", "blitzer"], ["any", "rusher"], ["count"], ["one", "count"],
    ["two", "counts"], ["1", "count"], ["2", "counts"], ["inside", "one", "count"],
)  # fmt: skip
_SIDES = frozenset((
    "strong", "weak", "field", "boundary", "call", "away", "left", "right", "playside", "backside",
))  # fmt: skip
_LINEBACKERS = (
    ["linebacker"], ["near", "linebacker"], ["middle", "linebacker"], ["far", "linebacker"],
)  # fmt: skip
_MIDDLE = frozenset(("ball", "center", "centre", "middle"))
_NOWHERE: tuple[list[str], ...] = ([], ["pass"], ["pattern"], ["route"], ["field"], ["downfield"])


def goes_out(kind: str, verb: Token, rest: Sequence[Token]) -> list[Token] | None:
    """What stands behind the men; None for a line that does not say that they look and go."""
    words = [token.casefold() for token in rest]
    for at, word in enumerate(words):
        if word not in _JOINTS:
            continue
        start = at
        while start < len(words) and words[start] in _JOINTS:
            start += 1
        whom = _whom(rest[:at])
        goes = _goes(rest[start:])
        if words[start : start + 1] in (["leak"], ["leaks"]) and not whom:
            return None  # a leak is a route of its own
        if whom is None or goes is None:
            continue
        if kind != "protection":
            return [_as(verb, "runs"), _as(verb, "check"), *whom, *goes]
        goes = goes or [_then(verb), _as(verb, "release")]
        if goes[0].type != "_THEN":
            return None  # a place or a way is the concept's
        return [_as(verb, "blocks"), _as(verb, "check"), *whom, *goes]
    return None


def _as(token: Token, word: str) -> Token:
    return Token.new_borrow_pos("WORD", word, token)


def _then(token: Token) -> Token:
    return Token.new_borrow_pos("_THEN", "then", token)


def _whom(said: Sequence[Token]) -> list[Token] | None:
    """Whom he looks for: nothing for whoever comes, from the ball outward."""
    left = [token for token in said if token.casefold() not in {*_SMALL, "check", "checks"}]
    words = [token.casefold() for token in left]
    if not words or words in _INSIDE_OUT:
        return []
    side = left[:1] if words[0] in _SIDES and len(words) > 1 else []
    if words[len(side) :] in _AT_EDGE:
        return [*side, _as(left[-1], "edge")]
    return left if words in _LINEBACKERS else None


def _goes(said: Sequence[Token]) -> list[Token] | None:
    """Where he goes afterwards: nothing for a release alone."""
    if not said or said[0].type != "WORD":
        return None
    first, rest = said[0].casefold(), list(said[1:])
    if first in _ROUTE_OF:
        return [_then(said[0]), _as(said[0], _ROUTE_OF[first]), *_way(rest)]
    if first not in (*_RELEASES, "run", "runs"):
        return None
    while rest and rest[0].casefold() in _SMALL:
        rest.pop(0)
    words = [token.casefold() for token in rest]
    if first in _RELEASES and words in _NOWHERE:
        return []
    if first in _RELEASES and len(words) == 1 and words[0] in _SIDES:
        return rest
    if words[:1] == ["over"] and words[-1] in _MIDDLE and {*words[1:-1]} <= {"the"}:
        return [rest[0], _as(rest[-1], "ball")]
    if not rest or rest[0].type != "WORD":
        return None
    route = _ROUTE_OF.get(words[0], words[0])
    return [_then(said[0]), _as(rest[0], route), *_way(rest[1:])]


def _way(rest: Sequence[Token]) -> list[Token]:
    """``out to the weak side`` as ``weak``; anything else as it stands."""
    words = [t for t in rest if t.casefold() not in ("out", "to", "the", "side")]
    return words if len(words) == 1 and words[0].casefold() in _SIDES else list(rest)
