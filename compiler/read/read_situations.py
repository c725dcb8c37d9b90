"""A situation's head in words: ``2nd and 7 or more, left hash`` → a `Situation`."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Any

from stemline.diagnostics.catalogue.football import E402
from stemline.diagnostics.catalogue.weeks import E971, E973, E974
from stemline.diagnostics.nearest import nearest
from stemline.football.field import BallSpot
from stemline.football.situations import (
    DISTANCES,
    MOST_TO_GO,
    ORDINALS,
    FieldPart,
    Moment,
    Score,
    Situation,
    Stretch,
    Wind,
    YardLine,
)
from stemline.read.words import Misread
from stemline.source import Span
from stemline.syntax.tree import AtomKind, Mark, Phrase, Value, items

Piece = tuple[str, Span, bool]
"""A part between commas as plain text, where it stands, and whether it stood in quotes."""

_ALIASES = {
    "two-point try": "2-point try", "2-point convert": "2-point try",
    "two-point conversion": "2-point try", "2-point conversion": "2-point try",
    "two minutes": "two minute", "2-minute": "two minute", "two-minute": "two minute",
    "four minutes": "four minute", "4-minute": "four minute", "four-minute": "four minute",
    "against the wind": "wind against", "with the wind": "wind with", "opener": "openers",
}  # fmt: skip
_ZONES = {zone.word: zone for zone in FieldPart}
_MOMENTS = {moment.value: moment for moment in Moment}
_WINDS = {wind.value: wind for wind in Wind}
_SPOTS = {spot.value: spot for spot in BallSpot}
_SCORES = {score.value: score for score in Score}
WORDS = (
    *_MOMENTS, *_ZONES, *_SCORES, *_WINDS, *_SPOTS, *ORDINALS, "midfield", "last 3 minutes",
    *_ALIASES,
)  # fmt: skip
"""Every head of one or two words: what a misspelt one may have meant."""

_DOWN = re.compile(r"(1st|2nd|3rd|4th)(?: and (?:(goal)|(long|medium|short|inches)|(.+)))?")
_COUNT = re.compile(r"(\d+)(?: (or more|or less|or fewer)| to (\d+))?")
_LINES = re.compile(r"(own|their) (\d+)(?: to (?:(own|their) )?(\d+))?")
_TRY = re.compile(r"2-point try from (?:the )?(\d+)")
_LAST = re.compile(r"last (\d+) minutes?")
_SCORE = re.compile(r"(trailing|ahead) by (.+)")


def pieces(value: Value | None) -> list[Piece]:
    """What stands between the commas; an `or` inside belongs to its part ("7 or more")."""
    found: list[Piece] = []
    for item in items(value, Mark.AND):
        parts = items(item, Mark.OR)
        if not all(isinstance(part, Phrase) for part in parts):
            raise Misread(E402(what="words parted by commas").at(item.span))
        said = [part for part in parts if isinstance(part, Phrase)]
        quoted = len(said) == 1 and [a.kind for a in said[0].atoms] == [AtomKind.STRING]
        found.append((" or ".join(part.text for part in said), item.span, quoted))
    return found


def read_situation(said: Sequence[Piece]) -> Situation:
    """The situation that the parts make together; a misread at the part that says nothing, or says
    again what another said."""
    values: dict[str, Any] = {}
    told: list[str] = []
    for text, span, quoted in said:
        got, words = ({"own": text}, f'"{text}"') if quoted else _part(text, span)
        if again := values.keys() & got.keys() - {"zone", "place"}:
            raise Misread(E973(found=text, what=_NAMED.get(min(again), "that")).at(span))
        # A named zone beside yard lines is kept, to be held against them.
        if "zone" in got and "place" in got and "zone" in values:
            got = {"place": got["place"]}
        values |= got
        told.append(words)
    return Situation(", ".join(told), **values)


_NAMED = {"down": "the down", "spot": "the ball's spot", "moment": "when it is", "own": "a name"}


def names_situation(said: Sequence[Piece]) -> bool:
    """Whether these words name a situation and no call."""
    try:
        read_situation(said)
    except Misread:
        return False
    return True


def _part(text: str, span: Span) -> tuple[dict[str, Any], str]:
    """What one part says, and how it is printed."""
    word = " ".join(text.casefold().split())
    word = _ALIASES.get(word, word)
    for table, name in ((_MOMENTS, "moment"), (_WINDS, "wind"), (_SPOTS, "spot")):
        if word in table:
            return {name: table[word]}, word
    if word in _SCORES:
        return {"score": _SCORES[word]}, word
    if word in _ZONES:
        zone = _ZONES[word]
        return {"zone": zone.lines, "place": zone}, word
    if word == "midfield":
        return {"zone": Stretch(YardLine(True, 40), YardLine(False, 40))}, word
    if match := _TRY.fullmatch(word):
        return {"moment": Moment.TRY, "try_from": int(match[1])}, f"2-point try from the {match[1]}"
    if match := _LAST.fullmatch(word):
        return {"minutes": int(match[1])}, word
    if match := _DOWN.fullmatch(word):
        return _down(match, span)
    if match := _LINES.fullmatch(word):
        return _stretch(match)
    if match := _SCORE.fullmatch(word):
        margin, words = _counted(match[2], span, "points")
        return {"score": _SCORES[match[1]], "margin": margin}, f"{match[1]} by {words}"
    near = nearest(word, WORDS)
    raise Misread(E971(found=text).at(span, nearest=near))


def _down(match: re.Match[str], span: Span) -> tuple[dict[str, Any], str]:
    down = ORDINALS.index(match[1]) + 1
    if match[2]:
        zone = {"zone": Stretch(YardLine(False, 10), YardLine(False, 1))}
        return {"down": down, **zone}, f"{match[1]} and goal"
    if match[3]:
        low, high = DISTANCES[match[3]]
        return {"down": down, "to_go": (low, high)}, f"{match[1]} and {_spoken(low, high)}"
    if match[4]:
        to_go, words = _counted(match[4], span, "yards to go")
        return {"down": down, "to_go": to_go}, f"{match[1]} and {words}"
    return {"down": down}, match[1]


def _counted(text: str, span: Span, what: str) -> tuple[tuple[int, int | None], str]:
    match = _COUNT.fullmatch(text)
    if match is None or not 0 < int(match[1]) <= MOST_TO_GO:
        raise Misread(E974(found=text, what=what).at(span))
    low = int(match[1])
    high: int | None = low
    if match[2]:
        low, high = (low, None) if match[2] == "or more" else (1, low)
    elif match[3]:
        high = min(int(match[3]), MOST_TO_GO)
        low, high = min(low, high), max(low, high)
    return (low, high), _spoken(low, high)


def _spoken(low: int, high: int | None) -> str:
    if high is None:
        return f"{low} or more"
    return f"{low}" if low == high else f"{low} to {high}"


def _stretch(match: re.Match[str]) -> tuple[dict[str, Any], str]:
    first = YardLine(match[1] == "own", int(match[2]))
    if not match[4]:
        return {"zone": Stretch(first, first)}, first.words
    last = YardLine((match[3] or match[1]) == "own", int(match[4]))
    words = f"{first.words} to {last.yards}" if first.own == last.own else (
        f"{first.words} to {last.words}"
    )  # fmt: skip
    return {"zone": Stretch(first, last)}, words
