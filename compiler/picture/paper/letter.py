"""A defender on paper: his letter, the marks that single one out, and the room they take."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from stemline.football.defenders import Defender
from stemline.football.play import Play
from stemline.geometry.box import Box
from stemline.geometry.paths import Point
from stemline.picture.paper.detail import Detail
from stemline.picture.paper.surface import Board
from stemline.picture.scene.scene import Plate, Polygon, TextRun


@dataclass(frozen=True)
class Letter:
    """A defender on paper. ``reach`` is how near a bar may come to ``at``, the letter's middle;
    ``deep`` his depth where he stands at the picture's edge instead of at his place, else 0, and
    ``left`` tells that it is written on his left. ``over`` is the room that a wedge takes above the
    letter; ``hit`` tells that a bar stands at him."""

    man: Defender
    at: Point
    half_width: float
    half_height: float
    reach: float
    style: str
    deep: float = 0.0
    left: bool = False
    over: float = 0.0
    hit: bool = False

    @property
    def box(self) -> Box:
        w, h = self.half_width, self.half_height
        return Box(self.at.x - w, self.at.y - h, self.at.x + w, self.at.y + h)


def touched(play: Play) -> set[str]:
    """Defenders who are blocked, read or left free."""
    hit = {hit.defender for task in play.assignments for hit in task.hits}
    return hit | {key.man for key in play.keys} | set(play.unmet)


def letter_of(
    man: Defender, board: Board, bold: bool = True, key: bool = False, free: bool = False
) -> Letter:
    """One letter at its defender's place, or at the top of the frame below its mark."""
    style = "defender" if bold else "defender-behind"
    room = board.extent(man.label, style)
    half_width, half_height = room.width / 2, room.rise / 2
    reach = max(half_width, half_height) + board.mark("letter_room")
    if key:
        reach += board.mark("key_room")
    wedge = board.yards(1.6) + 1.3 * board.mark("free") if free else 0.0
    top = board.frame.top - half_height - board.yards(3.5) - max(0.0, wedge - board.yards(2.5))
    at = Point(man.at.x, min(man.at.y, top))
    deep = man.at.y if man.at.y > top + 1.0 else 0.0
    return Letter(man, at, half_width, half_height, reach, style, deep, over=wedge)


def boxed(letter: Letter, board: Board) -> float:
    """Yards from a letter to the box round it, if he is read; else 0."""
    room = letter.reach - max(letter.half_width, letter.half_height) - board.mark("letter_room")
    return max(0.0, room)


def key_mark(letter: Letter, board: Board) -> Plate:
    """A box round the letter of a man who is read."""
    box = letter.box.grown(board.mark("key_room"))
    return Plate(box, board.mark("tile_corner"), "key", letter.man.span)


def free_mark(letter: Letter, board: Board) -> Polygon:
    """A solid wedge over the letter, pointing the way he comes."""
    size = board.mark("free")
    y = letter.box.top + board.yards(1.6)
    x = letter.at.x
    points = (Point(x, y), Point(x - size, y + 1.3 * size), Point(x + size, y + 1.3 * size))
    return Polygon(points, "free", letter.man.span)


def depth_words(letter: Letter, board: Board) -> TextRun:
    """How deep a man stands who is drawn at the picture's edge."""
    text = f"{round(letter.deep)}"
    room = board.extent(text, "words")
    gap = board.yards(2.0) + boxed(letter, board)
    x = letter.box.left - gap - room.width if letter.left else letter.box.right + gap
    at = Point(x, letter.at.y - room.rise / 2)
    return TextRun(text, at, "words", letter.man.span)


def depth_room(letter: Letter, board: Board) -> Box:
    """The room that the depth of a man at the picture's edge takes."""
    words = depth_words(letter, board)
    room = board.extent(words.text, words.style)
    return Box(words.at.x, words.at.y, words.at.x + room.width, words.at.y + room.rise)


def solids(letters: Mapping[str, Letter], play: Play, board: Board) -> list[Box]:
    """The boxes that no word may lie on: the letters with their marks."""
    keys = {key.man for key in play.keys}
    boxes: list[Box] = []
    for name, letter in letters.items():
        box = letter.box.grown(board.mark("key_room") if name in keys else board.yards(0.8))
        if name in play.unmet:
            top = max(point.y for point in free_mark(letter, board).points)
            box = box.union(Box(box.left, box.bottom, box.right, top))
        if letter.deep and board.shows(Detail.EDGE_DEPTHS):
            words = depth_room(letter, board)
            box = box.union(replace(words, bottom=box.bottom, top=box.top))
        boxes.append(box)
    return boxes
