"""The quarterback's clock under a picture: his feet as dashed lines, each read's window as a bar,
the ball as a line from his hand to a tick where it arrives."""

from __future__ import annotations

from collections.abc import Iterator
from math import ceil

from stemline.football.timing.clock import ReadClock, TimedRead, Verdict
from stemline.geometry.box import Box
from stemline.geometry.paths import Line, Point
from stemline.picture.labels.notes import tile_items
from stemline.picture.paper.surface import Board
from stemline.picture.scene.scene import Item, Layer, Plate, Scene, Stroke, TextRun
from stemline.source import NOWHERE
from stemline.theme import Size, Theme

_SCALE = 10.0
"""Points to a unit of the strip's own space: nothing in it is a yard."""
_HEAD = 1.5
_ROW = 1.35
_FOOT = 1.3
_NAMES = 10.5
"""Width of the names at the left."""
_WORDS = 10.8
"""Width of the words at the right."""


def clock_scene(clock: ReadClock, theme: Theme) -> Scene:
    """The strip of a call's reads."""
    width = theme.look(Size.FULL).width / _SCALE
    height = _HEAD + _ROW * len(clock.reads) + _FOOT
    board = Board(Box(0.0, 0.0, width, height), _SCALE, Size.FULL, theme)
    axis = _Axis(clock, board, width, height)
    rows = [item for i, look in enumerate(clock.reads) for item in axis.row(i, look)]
    layers = (
        Layer("clock-feet", (*axis.seconds(), *axis.feet(), *axis.rusher())),
        Layer("clock-reads", tuple(rows)),
    )
    words = "Quarterback's clock. " + " ".join(sentence(look) for look in clock.reads)
    return Scene("Quarterback's clock", words, board.frame, _SCALE, Size.FULL, layers)


def sentence(look: TimedRead) -> str:
    """A row of the clock in words, for those who hear it."""
    who = look.window.man if look.window else "nobody"
    return (
        f"{look.read.number}: {look.read.target}, {who}; thrown at {look.thrown:.1f} seconds, "
        f"there at {look.arrives:.1f}: {verdict(look)}."
    )


def verdict(look: TimedRead) -> str:
    """In a word or two: on time, 0.4 s early, too far."""
    if look.verdict in (Verdict.EARLY, Verdict.LATE):
        return f"{look.misses:.1f} s {look.verdict.value}"
    return str(look.verdict.value)


class _Axis:
    """Seconds on paper, and the rows under them."""

    def __init__(self, clock: ReadClock, board: Board, width: float, height: float) -> None:
        self.clock, self.board = clock, board
        self.left, self.right = _NAMES, width - _WORDS
        self.top, self.bottom = height - _HEAD, _FOOT
        ends = [look.arrives for look in clock.reads]
        closes = [look.window.closes for look in clock.reads if look.window]
        self.last = max(3.0, *(e + 0.3 for e in ends), min(max(closes, default=0.0), 5.0))

    def x(self, time: float) -> float:
        return self.left + (self.right - self.left) * min(time, self.last) / self.last

    def seconds(self) -> Iterator[Item]:
        """Pale lines each second, named below."""
        for second in range(ceil(self.last)):
            x = self.x(second)
            style = "foot" if second == 0 else "second"
            yield Stroke((Line(Point(x, self.bottom), Point(x, self.top)),), style, (), NOWHERE)
            yield self._centred(f"{second} s", x, 0.35, "clock-second")

    def feet(self) -> Iterator[Item]:
        """A dashed line where each foot is down, its name above."""
        taken = -100.0
        downs = {(foot.time, foot.name) for foot in self.clock.feet}
        downs |= {(look.ready, look.foot) for look in self.clock.reads}
        for time, name in sorted(downs):
            x = self.x(time)
            yield Stroke(
                (Line(Point(x, self.bottom), Point(x, self.top)),), "foot-down", (), NOWHERE
            )
            room = self.board.extent(name, "clock-foot").width
            if x - room / 2 > taken:
                yield self._centred(name, x, self.top + 0.35, "clock-foot")
                taken = x + room / 2 + 0.3
        yield self._centred("snap", self.x(0.0), self.top + 0.35, "clock-foot")

    def rusher(self) -> Iterator[Item]:
        """When the first free man is there, where a look frees one."""
        free = self.clock.rusher
        if free is not None and free < self.last:
            x = self.x(free)
            half, middle = 0.22, self.top - 0.12
            for sign in (-1, 1):
                a, b = (
                    Point(x - half, middle - half * sign),
                    Point(x + half, middle + half * sign),
                )
                yield Stroke((Line(a, b),), "foot", (), NOWHERE)

    def row(self, index: int, look: TimedRead) -> Iterator[Item]:
        y = self.top - _ROW * (index + 0.5)
        half = self.board.mark("tile") / 2
        box = Box(0.2, y - half, _NAMES, y + half)
        yield from tile_items(str(look.read.number), 0, box, self.board, look.read.span)
        who = look.window.man if look.window else "-"
        yield self._text(f"{look.read.target} · {who}", 0.2 + 2 * half + 0.5, y, "clock-name")
        if look.window is not None:
            start, end = self.x(max(look.window.opens, 0.0)), self.x(look.window.closes)
            yield Plate(
                Box(start, y - 0.33, max(end, start + 0.2), y + 0.33), 0.0, "window", look.read.span
            )
        if look.verdict is not Verdict.TOO_FAR and look.window is not None:
            thrown, there = self.x(look.thrown), self.x(look.arrives)
            yield Stroke((Line(Point(thrown, y), Point(there, y)),), "ball", (), look.read.span)
            tick = Line(Point(there, y - 0.48), Point(there, y + 0.48))
            yield Stroke((tick,), "arrival", (), look.read.span)
        style = "clock-name" if look.verdict is Verdict.ON_TIME else "clock-wrong"
        yield self._text(f"{look.distance:.0f} yards, {verdict(look)}", self.right + 0.6, y, style)

    def _text(self, text: str, x: float, y: float, style: str) -> TextRun:
        rise = self.board.extent(text, style).rise
        return TextRun(text, Point(x, y - rise / 2), style, NOWHERE)

    def _centred(self, text: str, x: float, y: float, style: str) -> TextRun:
        width = self.board.extent(text, style).width
        return TextRun(text, Point(x - width / 2, y), style, NOWHERE)
