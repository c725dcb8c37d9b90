"""Men out wide who are told on a pass of its own protection whom to block: a screen's receivers."""

from __future__ import annotations

from dataclasses import replace

from stemline.football.blocking.block_paths import block_path, lane
from stemline.football.blocking.run_rules import BlockWay, Task
from stemline.football.blocking.run_scheme import scheme
from stemline.football.defence.fronts import front_of
from stemline.football.defence.zones import middle_of
from stemline.football.defenders import Defence
from stemline.football.play import Assignment, Hit, Play
from stemline.geometry.paths import Point
from stemline.lineup.lined_up import LinedUp
from stemline.playbook.concepts import Body
from stemline.resolve.blocking.told_blocks import perimeter, task_of, told_men
from stemline.resolve.roles import Bound

_WIDE = frozenset({BlockWay.STALK, BlockWay.CRACK})


def thrown_short(play: Play) -> Point | None:
    """Where the first read that is caught at or behind the line is caught, which a screen blocks
    for; None where there is none."""
    return next((read.at for read in play.reads if read.at.y <= 0.0), None)


class ScreenBlocks:
    """The receivers of a pass whose text names their man; who is told only how blocks as ever."""

    def __init__(self, play: Play, body: Body, bound: Bound, picture: LinedUp) -> None:
        told = [task_of(t, picture) for t in told_men(play, body, bound, picture)]
        named = [t for t in told if t.rules and all(r.way in _WIDE for r in t.rules)]
        self._named = {t.man for t in named}
        self._tasks: list[Task] = []
        if named:  # the others too, so that no two go to one man
            self._tasks = [*named, *perimeter(play, body, bound, picture)]
        self._picture = picture

    def against(self, play: Play, defence: Defence) -> Play:
        """The play with their men and their ways to them."""
        if not self._tasks:
            return play
        picture = self._picture
        throw = thrown_short(play)
        toward, middle = picture.toward or picture.called, middle_of(picture.field)
        front = front_of(picture.men, defence, toward, 0.0, middle)
        men = {m.label: m for m in picture.men}
        solved = scheme(front, self._tasks, men, hold=True, throw=throw)
        through = lane(picture.men, 0.0, front.toward)

        def block(a: Assignment) -> Assignment:
            taken = solved.of(a.man) if a.man in self._named else None
            if taken is None or not taken.defender:
                return a
            to = defence.defender(taken.defender)
            way = taken.way or BlockWay.STALK
            path = block_path(men[a.man], way, to.at, through, 0.0)
            words = f"{way.value[:1].upper()}{way.value[1:]} {to.label}."
            return replace(a, job=words, path=path, hits=(Hit(to.label, way.value, to.at),))

        return replace(play, assignments=tuple(map(block, play.assignments)))
