"""The way on which a quarterback keeps the ball by a key, read back from a picture.

It is drawn where the play has one and nowhere else, from him to its end, timed piece by piece, and
through no man's letter.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from picture_reading import THEME, end_of, letters_of, lines_of

from stemline.football.play import Branch, Play
from stemline.geometry.curves import points_of
from stemline.geometry.paths import Point, length, polyline
from stemline.picture.frame.board import shot
from stemline.picture.scene.metrics import extent
from stemline.picture.scene.scene import Scene, Stroke

KEEPS = frozenset({"pull", "keep"})
"""What a key has him do when he runs with the ball himself."""
_OFF = 1.0
"""Yards that the end of his line may lie beside where he runs to, as a carrier's may."""
_SLOW, _FAST = 2.0, 9.5
"""Yards a second, over the whole way: slower he walks, and nobody is faster (a sprinter's 40)."""
_SHARE = 0.9
"""Of a letter's box, the part that no line may enter: its edge may be grazed by the ink's width."""


def keeper_off(play: Play, scene: Scene) -> Iterator[str]:
    """Everything that the picture of a run says otherwise of a quarterback who keeps."""
    passer = play.passer.label if play.passer is not None else ""
    mine = lines_of(scene).get(passer, {})
    drawn = {what: line for what, line in mine.items() if what.startswith("branch")}
    seen = shot(play, scene.size).play
    ways = seen.assignment(passer).branches if passer else ()
    if len(drawn) != len(ways):
        yield f"{play.call.spoken}: {passer} keeps on {len(ways)} ways, {len(drawn)} are drawn"
        return
    asked = any(choice[0] in KEEPS for key in play.keys for choice in key.choices)
    if drawn and not asked:
        yield f"{play.call.spoken}: {passer} is drawn to keep, and no key has him keep"
    for number, way in enumerate(ways, 1):
        line = drawn.get(f"branch-{number}")
        wrong = _line(line, way, seen, scene) if line is not None else ["has no line"]
        yield from (f"{play.call.spoken}: {passer} who keeps {line}" for line in wrong)


def _line(line: Stroke, way: Branch, play: Play, scene: Scene) -> Iterator[str]:
    if line.style != "branch":
        yield f"is drawn as {line.style}"
    tip, end = end_of(line), way.path.end
    if tip.distance(end) > _OFF:
        yield f"runs to {end}, drawn to {tip}"
    if not line.head:
        yield "has no arrow"
    yield from _timed(line, way)
    points = points_of(line.segments)
    for letter, at in letters_of(play, scene).items():
        if any(_through(a, b, at, letter, scene) for a, b in pairwise(points)):
            yield f"runs through {letter} at {at}"


def _timed(line: Stroke, way: Branch) -> Iterator[str]:
    times = line.times
    if not times:
        yield "has no moments"
    elif any(b < a for a, b in pairwise(times)) or times[0] < 0.0:
        yield f"goes back in time: {times}"
    else:
        took = times[-1] - times[0]
        far = length(polyline(way.path))
        if not _SLOW * took <= far <= _FAST * took:
            yield f"runs {far:.1f} yards in {took:.2f} s"


def _through(a: Point, b: Point, at: Point, letter: str, scene: Scene) -> bool:
    """Whether a piece of a line enters the inner part of a letter's box."""
    room = extent(letter, THEME.look(scene.size).types["defender"], THEME)
    half = (_SHARE * room.width / 2 / scene.scale, _SHARE * room.rise / 2 / scene.scale)
    steps = (a + (b - a).scaled(n / 20) for n in range(21))
    return any(abs(p.x - at.x) < half[0] and abs(p.y - at.y) < half[1] for p in steps)
