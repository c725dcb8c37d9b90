"""Words under a picture that stands alone: what a page would say beside it."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace

from stemline.geometry.box import Box
from stemline.geometry.paths import Point
from stemline.picture.scene.metrics import extent
from stemline.picture.scene.scene import Layer, Scene, TextRun
from stemline.source import NOWHERE
from stemline.theme import Theme

_STYLE = "corner"
_ROOM = 4.0
"""Points to each side of a line, and above and below the lines."""
_APART = 1.75
"""From one line's baseline to the next, in heights of its capitals."""


def captioned(scene: Scene, captions: Sequence[str], theme: Theme) -> Scene:
    """The scene with ``captions`` under it, each on lines of its own; as it is where there is none.

    The picture itself stays as it is drawn: its frame grows downward.
    """
    if not captions:
        return scene
    kind, scale, frame = theme.look(scene.size).types[_STYLE], scene.scale, scene.frame
    room = frame.width * scale - 2 * _ROOM
    lines = [
        line
        for words in captions
        for line in _wrapped(words, lambda text: extent(text, kind, theme).width <= room)
    ]
    rise = extent("H", kind, theme).rise
    x = frame.left + _ROOM / scale
    runs = tuple(
        TextRun(
            line,
            Point(x, frame.bottom - (_ROOM + rise + n * rise * _APART) / scale),
            _STYLE,
            NOWHERE,
        )
        for n, line in enumerate(lines)
    )
    bottom = runs[-1].at.y - (_ROOM + rise / 2) / scale
    grown = Box(frame.left, bottom, frame.right, frame.top)
    return replace(scene, frame=grown, layers=(*scene.layers, Layer("caption", runs)))


def _wrapped(words: str, fits: Callable[[str], bool]) -> Iterator[str]:
    """Lines that fit, broken between words; a word that is too long stands alone."""
    line = ""
    for word in words.split():
        longer = f"{line} {word}".lstrip()
        if line and not fits(longer):
            yield line
            longer = word
        line = longer
    yield line
