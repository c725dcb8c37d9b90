"""Every run and protection called left is the mirror of the same call to the right, against every
look of both books, from the middle of the field; a run takes a third of the pairs, each call
against another third of the looks."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from itertools import islice

import pytest
from sampling import every

from resolve.shipped_books import BOOKS, played, shipped
from stemline.football.field import Way
from stemline.football.play import Assignment, Kind, Play
from stemline.geometry.paths import Path, Point
from stemline.resolve.order import Order

TURNED = {"LT": "RT", "LG": "RG", "RT": "LT", "RG": "LG", "left": "right", "right": "left"}
EVERY = pytest.mark.parametrize("book", BOOKS)


def turned(words: str) -> str:
    return re.sub(r"\b(LT|LG|RT|RG|left|right)\b", lambda found: TURNED[found[0]], words)


def point(at: Point, mirror: bool) -> tuple[float, float]:
    return round(-at.x if mirror else at.x, 2) + 0.0, round(at.y, 2) + 0.0


def way(path: Path | None, mirror: bool) -> object:
    if path is None:
        return None
    return [point(p, mirror) for p in path.corners], path.ending


def job(a: Assignment, mirror: bool) -> object:
    hits = [(h.defender, h.how, point(h.at, mirror)) for h in a.hits]
    words = turned(a.job) if mirror else a.job
    return a.role, words, hits, way(a.path, mirror), way(a.climb, mirror)


def seen(play: Play, mirror: bool) -> dict[str, object]:
    """All that blocking makes of a play; with ``mirror``, as the mirror shows it."""
    turn = turned if mirror else str
    assert play.defence is not None
    return {
        "men": sorted((turn(m.label), point(m.snap, mirror)) for m in play.men),
        "defence": sorted((d.label, point(d.at, mirror)) for d in play.defence.defenders),
        "jobs": {turn(a.man): job(a, mirror) for a in play.assignments},
        "free": sorted(play.unblocked),
        "keys": [(k.man, k.choices) for k in play.keys],
        "ball": (play.carrier, tuple(turn(h) for h in play.handoffs)),
    }


def pairs(book: str, kind: Kind) -> Iterator[tuple[Play, Play]]:
    made = shipped(book)
    assert made.book is not None
    for n, (name, order) in enumerate(made.calls.by_name.items()):
        if made.book.concepts[order.concept].kind is kind and " Right " in name:
            for look in islice(made.book.looks, n % every(3), None, every(3)):
                right, left = played(book, order, look), played(book, left_of(order), look)
                assert (right.defence is None) is (left.defence is None)
                if right.defence is not None:  # a look that is for other sets is nowhere
                    yield right, left


def left_of(order: Order) -> Order:
    spoken = order.spoken.replace(" Right ", " Left ")
    # Where the house says which side of the middle is the field, the mirror has the other.
    middle = order.middle.other if order.middle is not None else None
    return replace(order, way=Way.LEFT, spoken=spoken, middle=middle)


def differ(right: Play, left: Play) -> str:
    one, two = seen(right, True), seen(left, False)
    wrong = []
    for part in one:
        if one[part] != two[part]:
            wrong.append(f"{part}: {_first(one[part], two[part])}")
    look = right.defence.name if right.defence is not None else ""
    return f"{right.call.spoken} against {look}: {'; '.join(wrong)}" if wrong else ""


def _first(one: object, two: object) -> str:
    if isinstance(one, dict) and isinstance(two, dict):
        man = next(m for m in one if one[m] != two.get(m))
        return f"{man} {one[man]} and {two.get(man)}"
    return f"{one} and {two}"


@EVERY
@pytest.mark.parametrize("kind", Kind)
def test_called_left_is_the_mirror_of_called_right(book: str, kind: Kind) -> None:
    seen = [differ(right, left) for right, left in pairs(book, kind)]
    assert len(seen) > 200 / every(3)
    wrong = [line for line in seen if line]
    assert not wrong, "\n".join(wrong[:20])
