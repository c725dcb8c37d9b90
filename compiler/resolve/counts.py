"""How the receivers of each formation are counted, in words."""

from __future__ import annotations

from collections.abc import Iterator

from stemline.football.field import BallSpot, Side
from stemline.football.offence.counting import Count, count
from stemline.lineup.alignment import line_up
from stemline.lineup.moving import move
from stemline.playbook.playbook import Playbook
from stemline.resolve.all_calls import Calls
from stemline.resolve.expand import field_of


def count_lines(book: Playbook, calls: Calls) -> Iterator[str]:
    """One line a formation, called right with the ball in the middle, and one more for each
    motion that a call uses with it; sides as strong and weak."""
    motions: dict[str, dict[str, None]] = {key: {"": None} for key in book.formations}
    for _, order in calls.orders:
        motions[order.formation].setdefault(order.motion)
    field = field_of(book, BallSpot.MIDDLE)
    for key, used in motions.items():
        formation = book.formations[key]
        alignment, men, _ = line_up(book, formation, Side.RIGHT, field)
        if not men:
            continue
        for motion in used:
            moving = book.motions[motion] if motion else None
            moved, _, _ = move(alignment, men, moving)
            name = " ".join([formation.name, "Right", *([moving.name] if moving else [])])
            yield _line(name, count(moved, Side.RIGHT))


def _line(name: str, counted: Count) -> str:
    parts = [f"{name}: {counted.shape_word}"]
    for title, side in (("strong", counted.strong), ("weak", counted.weak)):
        men = counted.on(side)
        if men:
            ranks = ", ".join(f"#{n} {label}" for n, label in enumerate(men, 1))
            parts.append(f"{title} ({side.word}) {ranks}")
    if counted.backs:
        parts.append(f"back {', '.join(counted.backs)}")
    return " · ".join(parts)
