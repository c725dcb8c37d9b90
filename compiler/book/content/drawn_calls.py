"""Which calls of a concept a book draws: those whose picture no other one says.

A call to the other side is a mirror where every man of it is. A call with a tag, in a formation
and with a motion, is their sum where each man does what he does in one of the two.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from functools import partial

from stemline.book.content.job_table import by_role
from stemline.book.content.keeping import KeepPart, Reads, anew
from stemline.book.content.page import call_ids, concept_groups
from stemline.football.defenders import Defence
from stemline.football.play import Assignment, Play, Season
from stemline.geometry.paths import Path, Point, polyline


@dataclass(frozen=True)
class Left:
    """A call that is not drawn: ``of`` are the calls, by index, whose pictures say it, of a sum the
    plain one first. A ``mirror`` is said by the one that it mirrors, or by that one's pictures; so
    is a call that only its tempo tells from another."""

    call: int
    of: tuple[int, ...]
    mirror: bool


def left_out(plays: Sequence[Play]) -> tuple[Left, ...]:
    """The calls of a concept that need no picture of their own; the first call has one."""
    drawn: list[int] = []
    left: dict[int, Left] = {}
    for i, play in enumerate(plays):
        other = _mirrored(play, plays, range(i))
        other = _unchanged(play, plays, drawn) if other is None else other
        if other is not None:
            left[i] = Left(i, left[other].of if other in left else (other,), True)
        elif of := _summed(play, plays, drawn):
            left[i] = Left(i, of, False)
        else:
            drawn.append(i)
    return tuple(left.values())


def places(season: Season, keep: KeepPart = anew) -> tuple[str, ...]:
    """Where each of the season's calls is found in its book: the id of its own picture, or of the
    first that says it."""
    ids = list(call_ids(season))
    if season.every_call:
        return tuple(ids)
    start = 0
    for plays in concept_groups(season):
        name = plays[0].call.concept
        make = partial(left_out, plays)
        for left in keep(Reads.CONCEPT, "left out", tuple[Left, ...], "", make, name):
            ids[start + left.call] = ids[start + left.of[0]]
        start += len(plays)
    return tuple(ids)


def _mirrored(play: Play, plays: Sequence[Play], before: Iterable[int]) -> int | None:
    """The call among those ``before`` that it mirrors."""
    one = play.call
    for i in before:
        other = plays[i].call
        same = (one.formation, one.motion, one.tags) == (other.formation, other.motion, other.tags)
        if same and one.side is not other.side and is_mirror(play, plays[i]):
            return i
    return None


def _unchanged(play: Play, plays: Sequence[Play], drawn: Iterable[int]) -> int | None:
    """The call that only the tempo tells from this one: its picture is the same."""
    mine = play.call
    for i in drawn if mine.tempo else ():
        other = plays[i].call
        same = replace(other, tags=mine.tags, tempo=mine.tempo, spoken=mine.spoken) == mine
        if same and sorted(_seen(play, 1)) == sorted(_seen(plays[i], 1)):
            return i
    return None


def is_mirror(one: Play, other: Play) -> bool:
    """Whether two pictures are the same but for left and right: men, paths, reads, defenders; and
    those of the plays that they become at the line."""
    if kill_words(one) != kill_words(other):
        return False
    if sorted(_seen(one, 1)) != sorted(_seen(other, -1)):
        return False
    pairs = zip(one.becomes, other.becomes, strict=True)
    return all(is_mirror(a.play, b.play) for a, b in pairs)


def _seen(play: Play, way: int) -> Iterator[tuple[object, ...]]:
    """Everything that a picture shows, in whole tenths of a yard; ``way`` -1 turns it over.

    Linemen are known by where they stand: their letters change sides.
    """
    for man in play.men:
        label = "" if man.interior else man.label
        yield "man", label, man.on_line, *_at(man.at, way), *_at(man.snap, way)
    for task in play.assignments:
        man = play.man(task.man)
        who = ("", *_at(man.snap, way)) if man.interior else (task.man, 0, 0)
        for path in (task.path, task.climb, task.motion.path if task.motion else None):
            yield "path", *who, task.role, *_line(path, way)
        for branch in task.branches:
            yield "branch", *who, branch.looks, *_line(branch.path, way)
        for hit in task.hits:
            yield "hit", *who, hit.defender, *_at(hit.at, way)
    for read in (*play.reads, *play.pressure):
        yield "read", "", str(read.number), read.target, *_at(read.at, way)
    if play.defence is not None:
        yield from _defenders(play.defence, way)


def _defenders(defence: Defence, way: int) -> Iterator[tuple[object, ...]]:
    for defender in defence.defenders:
        yield "defender", defender.label, *_at(defender.at, way)


def _at(point: Point, way: int) -> tuple[int, int]:
    return round(point.x * 10) * way, round(point.y * 10)


def _line(path: Path | None, way: int) -> tuple[object, ...]:
    if path is None:
        return ()
    places = (_at(point, way) for point in polyline(path)[::_EVERY])
    return (path.ending.value, *(each for place in places for each in place))


_EVERY = 3
"""Of the points that a curve is followed by, one in so many is compared."""


def _summed(play: Play, plays: Sequence[Play], drawn: Sequence[int]) -> tuple[int, ...]:
    """The plain call in this formation and with this motion, and one for each tag, where these
    say all of it; () where they do not."""
    call, sides = play.call, play.call.side
    if not call.tags:
        return ()
    plain = next(
        (
            i
            for i in drawn
            if not plays[i].call.tags
            and (plays[i].call.formation, plays[i].call.motion, plays[i].call.side)
            == (call.formation, call.motion, sides)
        ),
        None,
    )
    tagged = [
        next((i for i in drawn if plays[i].call.tags == (t,) and plays[i].call.side is sides), None)
        for t in call.tags
    ]
    if plain is None or None in tagged:
        return ()
    of = (plain, *(i for i in tagged if i is not None))
    return of if _said_by(play, [plays[i] for i in of]) else ()


def _said_by(play: Play, parts: Sequence[Play]) -> bool:
    """Whether each man of ``play`` stands as in the first of ``parts`` and does what he, or who has
    his role, does in one of them; and the quarterback's orders are those of one."""
    plain = parts[0]
    if not all(one in [k for part in parts for k in kill_words(part)] for one in kill_words(play)):
        return False
    if {(m.label, *_at(m.snap, 1)) for m in play.men} != {
        (m.label, *_at(m.snap, 1)) for m in plain.men
    }:
        return False
    roles = {(a.man, a.role) for a in play.assignments if a.role}
    if roles != {(a.man, a.role) for a in plain.assignments if a.role}:
        return False
    told = [set(_told(part)) for part in parts]
    if any(not any(one in said for said in told) for one in _told(play)):
        return False
    orders = [(part.feet, _targets(part)) for part in parts]
    return (play.feet, _targets(play)) in orders


def _told(play: Play) -> Iterator[tuple[str, str]]:
    for task in play.assignments:
        if task.role or not play.man(task.man).interior:
            yield task.role or task.man, _words(task, play)


def _words(task: Assignment, play: Play) -> str:
    branches = ((b.looks, by_role(b.job, play, task)) for b in task.branches)
    return repr((by_role(task.job, play, task), tuple(branches)))


def kill_words(play: Play) -> tuple[tuple[str, str], ...]:
    """What the call becomes at the line, and on what."""
    return tuple((becoming.words, becoming.when) for becoming in play.becomes)


def _targets(play: Play) -> tuple[object, ...]:
    return (
        tuple((read.target, read.foot) for read in play.reads),
        tuple(read.target for read in play.pressure),
    )
