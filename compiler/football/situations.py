"""Situations of a game: down and distance, place on the field, clock, score and wind.

A situation is a value: two heads that mean the same are one, all sort the same way on every paper,
and a rule code can be asked whether it has them at all. Distances in yards; a place on the field is
counted from the offence's own goal line.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from enum import Enum

from stemline.football.field import BallSpot
from stemline.football.rulebook.rules import Certainty, Code, Known

ORDINALS = ("1st", "2nd", "3rd", "4th")
DISTANCES = {"long": (7, None), "medium": (4, 6), "short": (1, 3), "inches": (1, 1)}
"""Yards to go by their words; common practice, no published source."""
MOST_TO_GO = 99


class FieldPart(Enum):
    """Parts of the field by name: the yard lines between which each lies, from the own goal line
    where positive, from theirs where negative. Common practice, no published source; a coach who
    means others says the yard lines."""

    BACKED_UP = ("backed up", 1, 10)
    COMING_OUT = ("coming out", 10, 20)
    FRINGE = ("fringe", -40, -25)
    RED_ZONE = ("red zone", -20, -1)
    GREEN_ZONE = ("green zone", -10, -1)
    GOAL_LINE = ("goal line", -5, -1)

    @property
    def word(self) -> str:
        return str(self.value[0])

    @property
    def lines(self) -> Stretch:
        low, high = self.value[1], self.value[2]
        return Stretch(YardLine(low > 0, abs(low)), YardLine(high > 0, abs(high)))


@dataclass(frozen=True)
class YardLine:
    """A yard line of the own half, or of theirs."""

    own: bool
    yards: int

    def at(self, length: float) -> float:
        """Yards from the own goal line on a field of ``length``."""
        return self.yards if self.own else length - self.yards

    @property
    def words(self) -> str:
        return f"{'own' if self.own else 'their'} {self.yards}"


@dataclass(frozen=True)
class Stretch:
    """From one yard line to another, both in."""

    first: YardLine
    last: YardLine

    def on(self, length: float) -> tuple[float, float]:
        """From and to, in yards from the own goal line, the nearer first."""
        one, other = self.first.at(length), self.last.at(length)
        return min(one, other), max(one, other)


class Score(Enum):
    TRAILING = "trailing"
    TIED = "tied"
    AHEAD = "ahead"


class Wind(Enum):
    WITH = "wind with"
    AGAINST = "wind against"
    NONE = "no wind"


class Moment(Enum):
    """A moment that is no down: it has a place of its own on a call sheet."""

    OPENERS = "openers"
    FIRST_PLAY = "first play"
    TRY = "2-point try"
    TWO_MINUTES = "two minute"
    FOUR_MINUTES = "four minute"
    LAST_PLAY = "last play"
    SUDDEN_CHANGE = "sudden change"
    OVERTIME = "overtime"


@dataclass(frozen=True)
class Situation:
    """One head of a call sheet; what is None does not matter.

    ``to_go`` are the fewest and the most yards, the most None for "or more". ``zone`` is where the
    ball is, ``place`` the name that stretch was said by. ``try_from`` is the yard line that the
    coach named for a try; ``minutes`` are the last of a half, ``margin`` points as ``to_go`` are
    yards. ``own`` is a name of the coach's own. ``words`` say all of it, as it is printed: two
    situations with the same words are the same.
    """

    words: str
    moment: Moment | None = None
    down: int | None = None
    to_go: tuple[int, int | None] | None = None
    zone: Stretch | None = None
    place: FieldPart | None = None
    try_from: int | None = None
    minutes: int | None = None
    score: Score | None = None
    margin: tuple[int, int | None] | None = None
    wind: Wind | None = None
    spot: BallSpot | None = None
    own: str = ""

    @property
    def key(self) -> str:
        return self.words.casefold()

    @property
    def anywhere(self) -> Situation:
        """The same from wherever the ball is."""
        spot = self.spot.value if self.spot else ""
        words = ", ".join(part for part in self.words.split(", ") if part != spot)
        return replace(self, spot=None, words=words)

    @property
    def group(self) -> str:
        """The part of a call sheet it belongs to."""
        if self.moment in (Moment.OPENERS, Moment.FIRST_PLAY):
            return "Openers"
        if self.own:
            return "Own"
        if self.minutes is not None or self.score or self.wind or self.moment not in (None, _TRY):
            return "Clock, score and wind"
        if self.zone is not None or self.moment is _TRY:
            return "Field"
        return f"{ORDINALS[self.down - 1]} down" if self.down else "Any down"

    def place_in(self, length: float) -> tuple[object, ...]:
        """A key that sorts situations as a caller meets them, on a field of ``length``."""
        zone = self.zone.on(length) if self.zone else (0.0, 0.0)
        return (
            _GROUPS.index(self.group),
            list(Moment).index(self.moment) if self.moment else -1,
            zone,
            self.down or 0,
            self.to_go[0] if self.to_go else 0,
            self.minutes or 0,
            list(Score).index(self.score) if self.score else -1,
            list(Wind).index(self.wind) if self.wind else -1,
            list(BallSpot).index(self.spot) if self.spot else -1,
        )


_TRY = Moment.TRY
_GROUPS = (
    "Openers", "1st down", "2nd down", "3rd down", "4th down", "Any down", "Field",
    "Clock, score and wind", "Own",
)  # fmt: skip
OPENERS = Situation("openers", Moment.OPENERS)


def try_spot(code: Code) -> Known[int]:
    """The yard line that a try for two points begins on."""
    custom = "common practice for this code; no rule text seen, ask your league"
    spots = {
        "canadian amateur": 5, "canadian nine-man": 5, "canadian six-man": 5, "professional": 2
    }  # fmt: skip
    yards = spots.get(code.key, 3)
    return Known(yards, Certainty.CUSTOM, custom)


@dataclass(frozen=True)
class Misfit:
    """Why a code has no such situation; ``binding`` where that rests on a published rule, or on
    the field and the words alone."""

    why: str
    binding: bool


def misfits(situation: Situation, code: Code) -> Iterator[Misfit]:
    """What a code says against a situation, or the situation against itself."""
    downs = int(code.downs.value)
    if situation.down is not None and situation.down > downs:
        why = f"{code.title} has {downs} downs ({code.downs.cited})"
        yield Misfit(why, code.downs.binding)
    half = code.length.value / 2
    for line in _lines(situation.zone):
        if not 0 < line.yards <= half:
            yield Misfit(f"the field has no {line.words}: each half has {half:g} yards", True)
    yield from _apart(situation, code.length.value)
    known = try_spot(code)
    if situation.try_from not in (None, known.value):
        why = f"a try begins on the {known.value} ({known.cited})"
        yield Misfit(why, known.binding)


def _lines(zone: Stretch | None) -> tuple[YardLine, ...]:
    return tuple(dict.fromkeys((zone.first, zone.last))) if zone else ()


def _apart(situation: Situation, length: float) -> Iterator[Misfit]:
    """A place that is not where its name says, and more yards to go than there are."""
    if situation.zone is None:
        return
    low, high = situation.zone.on(length)
    if situation.place is not None:
        named = situation.place.lines.on(length)
        if high < named[0] or low > named[1]:
            first, last = situation.place.lines.first, situation.place.lines.last
            why = (
                f"{situation.place.word} is {first.words} to {last.words} here, and that is not "
                f"{situation.zone.first.words} to {situation.zone.last.words}"
            )
            yield Misfit(why, True)
    if situation.to_go is not None and situation.to_go[0] > length - low:
        why = f"nobody has {situation.to_go[0]} to go {length - low:g} yards from the goal line"
        yield Misfit(why, True)


# What a plan should not leave empty.


def needed(code: Code) -> tuple[Situation, ...]:
    """The situations that every caller meets under a code; common practice, no published source."""
    downs = int(code.downs.value)
    found = [OPENERS, Situation("1st and 10", down=1, to_go=(10, 10))]
    found += [_to_go(2, low, high) for low, high in ((1, 3), (4, 6), (7, None))]
    if downs > 3:
        found += [_to_go(3, low, high) for low, high in ((1, 2), (3, 5), (6, 9), (10, None))]
        found.append(_to_go(4, 1, 2))
    else:
        found.append(_to_go(3, 1, 2))
    zones = (FieldPart.BACKED_UP, FieldPart.RED_ZONE, FieldPart.GOAL_LINE)
    found += [Situation(zone.word, zone=zone.lines, place=zone) for zone in zones]
    found.append(Situation(Moment.TRY.value, Moment.TRY))
    if code.canadian:
        found.append(Situation("last 3 minutes", minutes=3))
        found += [Situation(wind.value, wind=wind) for wind in (Wind.WITH, Wind.AGAINST)]
    else:
        found.append(Situation(Moment.TWO_MINUTES.value, Moment.TWO_MINUTES))
    return tuple(found)


def _to_go(down: int, low: int, high: int | None) -> Situation:
    words = f"{low} or more" if high is None else f"{low} to {high}"
    return Situation(f"{ORDINALS[down - 1]} and {words}", down=down, to_go=(low, high))


def serves(have: Situation, need: Situation, length: float) -> bool:
    """Whether calls kept for one situation are there in another."""
    if have.own or (have.moment, have.wind) != (need.moment, need.wind):
        late = not have.own and have.minutes is not None
        return late and need.moment is Moment.TWO_MINUTES
    if (need.minutes is None) != (have.minutes is None):
        return False
    if need.zone is not None:
        if have.zone is None:
            return False
        ours, theirs = have.zone.on(length), need.zone.on(length)
        return min(ours[1], theirs[1]) - max(ours[0], theirs[0]) >= 0
    if have.zone is not None or have.score is not None:
        return False
    if need.down is None:
        return True
    return have.down == need.down and _overlap(have.to_go, need.to_go)


def _overlap(one: tuple[int, int | None] | None, other: tuple[int, int | None] | None) -> bool:
    if one is None or other is None:
        return True
    most = (MOST_TO_GO if t[1] is None else t[1] for t in (one, other))
    return max(one[0], other[0]) <= min(most)
