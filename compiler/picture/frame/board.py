"""The board a picture is drawn on: its frame, its scale, and points on paper turned into yards."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from stemline.football.field import Side
from stemline.football.play import Play, about_blocks
from stemline.geometry.box import Box, square
from stemline.geometry.paths import Path, Point, polyline
from stemline.picture.frame.closeup import ahead, closed_up, hands_only, inside_end_line
from stemline.picture.paper.drops import ground_of
from stemline.picture.paper.fold import NO_FOLD, Fold
from stemline.picture.paper.surface import Board
from stemline.theme import Size, Theme

_MAN = 0.8
"""Yards: room kept round a man; a symbol of the large picture is this large."""
_LABEL = 1.0
"""Yards: room kept round the end of a path for its arrow and its number."""
_CLOSE = (-7.0, -3.0, 7.0, 0.0)
"""Left, bottom, right and top in yards of what every close picture shows at least."""
_SIDELINE = 5.0
"""Yards: a sideline this near to the play is shown; it is a landmark."""
_BEHIND = -6.5
"""Yards: pictures reach at least this deep, so that sections with and without a back agree."""
_AHEAD = 10.0
"""Yards: pictures show at least the field to this depth."""
_DEEPEST = 16.0
"""Yards: a defender or a drop deeper than this does not make a picture larger."""


@dataclass(frozen=True)
class Shot:
    """A play as one size of picture shows it: ``play`` is cut and closed up where it is close."""

    play: Play
    close: bool
    fold: Fold


def shot(play: Play, size: Size) -> Shot:
    """What of ``play`` a picture of ``size`` shows, and how."""
    play = inside_end_line(play)
    if not about_blocks(play):
        return Shot(play, False, NO_FOLD)
    cut, fold = closed_up(play, size)
    return Shot(cut, True, fold)


def frame_of(plays: Iterable[Play], size: Size = Size.THUMB, duties: bool = False) -> Box:
    """The box in yards that holds all that these plays draw: one frame for a section.

    Pass it to `picture` for every play of the section and they all stand at one scale. ``size``
    is theirs; it matters only to runs, of which a small picture shows less. ``duties`` makes room
    for the drops of their defences. Where every play is a run or a protection the frame is as wide
    as the widest of them: `board` moves it over each.
    """
    return _around([shot(play, size) for play in plays], size, duties)


def framed(
    of: Shot, frame: Box | None, size: Size, theme: Theme, duties: bool = False, whole: bool = False
) -> Board:
    """The `board` of one picture: in ``frame``, or in one of its own."""
    own = frame if frame is not None else _around((of,), size, duties)
    return board(own, of, size, theme, duties, whole)


def _around(shots: Sequence[Shot], size: Size, duties: bool) -> Box:
    if shots and all(each.close for each in shots):
        top = max(ahead(each.play, size) for each in shots)
        boxes = [_close_box(each, duties) for each in shots]
        wide, bottom = max(box.width for box in boxes), min(box.bottom for box in boxes)
        middle = boxes[0].centre.x
        return Box(middle - wide / 2, bottom, middle + wide / 2, top)
    frame = Box(-8.0, _BEHIND, 8.0, _AHEAD)
    for each in shots:
        frame = frame.union(_content(each, duties))
    return frame


def _close_box(of: Shot, duties: bool) -> Box:
    return Box(*_CLOSE).union(_content(of, duties))


def board(
    frame: Box, of: Shot, size: Size, theme: Theme, duties: bool = False, whole: bool = False
) -> Board:
    """The board for a content box: a margin added, then widened to the picture's full width.

    The width left over goes to the side where there is still field to show. Of a close picture
    only the content box's size counts: it is moved over what the picture shows.
    """
    look = theme.look(size)
    field, fold = of.play.field, of.fold
    if of.close:
        by = _close_box(of, duties).centre.x - frame.centre.x
        frame = Box(frame.left + by, frame.bottom, frame.right + by, frame.top)
    longest = look.symbol["close_yard"] if of.close else look.yard
    if of.close and hands_only(of.play):
        longest = look.width  # what is shown is small: as large as it goes
    room = 2 * look.margin
    scale = min((look.width - room) / frame.width, (look.height - room) / frame.height, longest)
    grown = frame.grown(look.margin / scale)
    spare = max(0.0, look.width / scale - grown.width)
    left = grown.left - fold.x(field.sideline(Side.LEFT)) + look.margin / scale
    right = fold.x(field.sideline(Side.RIGHT)) - grown.right + look.margin / scale
    to_left = min(max(spare / 2, spare - max(right, 0.0)), max(left, 0.0))
    if left + right < spare:
        to_left = left + (spare - left - right) / 2
    wide = Box(grown.left - to_left, grown.bottom, grown.right + spare - to_left, grown.top)
    return Board(wide, scale, size, theme, of.close, fold, duties, whole)


def _content(of: Shot, duties: bool) -> Box:
    play = of.play
    box: Box | None = None
    for man in play.men:
        for at in (man.at, man.snap):
            around = square(at, _MAN)
            box = around if box is None else box.union(around)
    assert box is not None, "a play has men"
    for path in _paths(play):
        box = box.union(Box.around(polyline(path)).grown(_LABEL))
    for around in _defence(play, duties):
        box = box.union(around)
    for side in Side:
        x = of.fold.x(play.field.sideline(side))
        if min(abs(box.left - x), abs(box.right - x)) < _SIDELINE:
            box = box.union(Box(x, box.bottom, x, box.top))
    return box


def _defence(play: Play, duties: bool) -> Iterable[Box]:
    """Boxes of the defenders, and of their drops, as far up the field as pictures reach."""
    for man in play.defence.defenders if play.defence is not None else ():
        at = Point(man.at.x, min(man.at.y, _DEEPEST))
        yield square(at, _MAN)
        ground = ground_of(man.duty) if duties and man.duty is not None else None
        if ground is not None:
            top = min(ground.top, _DEEPEST + _MAN)
            yield Box(ground.left, min(ground.bottom, top - ground.height), ground.right, top)


def _paths(play: Play) -> Iterable[Path]:
    for task in play.assignments:
        if task.path is not None:
            yield task.path
        if task.motion is not None:
            yield task.motion.path
        for branch in task.branches:
            yield branch.path
