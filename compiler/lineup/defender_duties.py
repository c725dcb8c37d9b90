"""What each defender does on a pass: his duty as written → the man, the zone or the gap."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from stemline.football.defence.techniques import GAPS, TECHNIQUES, Gap, On, gap_at, gap_x
from stemline.football.defence.zones import zone_point
from stemline.football.defenders import Defender, Duty, DutyKind, Level
from stemline.football.field import Side
from stemline.geometry.paths import Point
from stemline.lineup.stands import Offence
from stemline.playbook.look_definitions import Choices, LookSide, ManMark, Rush, Task, ZoneDuty

CONTAIN_WIDTH = 2.0
"""How far outside the end man on the line a contain rusher aims. Common practice."""
ROUND = 1.2
"""Yards behind the place of a man who goes first at which the next comes round. Common practice."""
_ORDINALS = {1: "", 2: "second ", 3: "third "}
_DEEP = {DutyKind.THIRD: "deep third", DutyKind.HALF: "deep half"}


def first_side(choices: Choices) -> LookSide | None:
    """The side that a duty's first choice names: it decides what `into field` means there."""
    return choices.tasks[0].side


class DutyMaker:
    """The duties of one look against one picture."""

    def __init__(self, ground: Offence, mover: str = "") -> None:
        self.ground = ground
        self.mover = mover

    def all(self, told: Sequence[tuple[Defender, Choices | None]]) -> list[tuple[Duty | None, str]]:
        """Each defender's duty; None with the reason where no choice of it is there.

        A man on the line of whom nothing is said rushes through the gap he stands in or that his
        technique has.
        """
        picked = [self._pick(choices) for _, choices in told]
        quarters = [
            (defender, self.ground.side(task.side))
            for (defender, _), (task, _) in zip(told, picked, strict=True)
            if isinstance(task, ZoneDuty)
            and task.kind is DutyKind.QUARTER
            and task.side is not None
        ]
        given: list[tuple[Duty | None, str]] = []
        for (defender, choices), (task, why) in zip(told, picked, strict=True):
            duty = self._own_gap(defender) if choices is None else None
            if task is not None:
                duty = self._duty(defender, task, quarters)
            if duty is not None and isinstance(task, Rush):
                duty = _timed(duty, task, [d for d, _ in told])
            given.append((duty, why))
        return given

    def _pick(self, choices: Choices | None) -> tuple[Task | None, str]:
        """The first choice that is there; what is missing of those that are not."""
        if choices is None:
            return None, ""
        reasons = []
        for task, words in zip(choices.tasks, choices.words, strict=True):
            if not isinstance(task, ManMark) or self._man(task) is not None:
                return task, ""
            reasons.append(f"there is no {words.removeprefix('man').lstrip(', ')}")
        return None, " and ".join(reasons)

    def _duty(
        self, defender: Defender, task: Task, quarters: Sequence[tuple[Defender, Side]]
    ) -> Duty | None:
        match task:
            case ManMark():
                return self._man(task)
            case ZoneDuty(kind, word):
                side = self.ground.side(word) if word is not None else None
                inner = kind is DutyKind.QUARTER and _inside(defender, side, quarters)
                return self._zone(kind, side, inner)
            case Rush(gap, word):
                return self._rush(gap, self._rush_side(defender, word))

    def _man(self, mark: ManMark) -> Duty | None:
        if mark.mover:
            words = "man on the motion man"
            return Duty(DutyKind.MAN, words, self.mover, None) if self.mover else None
        if mark.letter:
            there = any(m.label == mark.letter for m in self.ground.picture.men)
            words = f"man on {mark.letter}"
            return Duty(DutyKind.MAN, words, mark.letter, None) if there else None
        side = self.ground.side(mark.side) if mark.side is not None else None
        if mark.number and side is not None:
            label = self.ground.receiver(side, mark.number)
            words = f"man on #{mark.number} {self._word(side)}"
        elif mark.back:
            label = self._back(mark.back, side)
            words = f"man on the {_ORDINALS.get(mark.back, '')}back"
        else:
            sides = [side] if side is not None else [self.ground.strong, self.ground.strong.other]
            label = next(filter(None, map(self.ground.tight_end, sides)), None)
            words = "man on the tight end"
        return None if label is None else Duty(DutyKind.MAN, words, label, None)

    def _back(self, nth: int, side: Side | None) -> str | None:
        """A back, counted from the deepest; with a side, of those who stand there or behind the
        ball."""
        picture = self.ground.picture
        backs = [
            b for b in picture.count.backs if side is None or picture.side_of(b) in (side, None)
        ]
        return backs[nth - 1] if nth <= len(backs) else None

    def _zone(self, kind: DutyKind, side: Side | None, inner: bool) -> Duty:
        to = zone_point(kind, side, self.ground.picture.field, inner=inner)
        name = _DEEP.get(kind, kind.value)
        if kind is DutyKind.QUARTER:
            name = "inside quarter" if inner else "outside quarter"
        if side is not None:
            name += f", {self._word(side)}"
        elif kind is DutyKind.THIRD:
            name += ", middle"
        return Duty(kind, name, "", to)

    def _rush_side(self, defender: Defender, word: LookSide | None) -> Side:
        if word is not None:
            return self.ground.side(word)
        return Side.at(defender.at.x) or self.ground.strong.other

    def _rush(self, gap: Gap | None, side: Side) -> Duty:
        line = self.ground.line(side)
        if gap is None:
            words = f"contain, {self._word(side)}"
            to = Point(side.value * (line.last + CONTAIN_WIDTH), 0.0)
            return Duty(DutyKind.RUSH, f"rush, {words}", "", to, f"contain {self._word(side)}")
        name = f"{gap.value} {self._word(side)}"
        to = Point(gap_x(gap, line), 0.0)
        return Duty(DutyKind.RUSH, f"rush {gap.value} gap, {self._word(side)}", "", to, name)

    def _own_gap(self, defender: Defender) -> Duty | None:
        if defender.level is not Level.LINE:
            return None
        technique = TECHNIQUES.get(defender.technique)
        gap = technique.gap if technique else GAPS.get(defender.technique)
        side = self._rush_side(defender, None)
        if technique and technique.on is On.END and self.ground.line(side).tight is not None:
            gap = None  # beside a guard the end's gaps have other letters: by where he stands
        gap = gap or gap_at(defender.at.x, self.ground.line(side))
        if gap is None:
            return None  # beside a man out wide, in no gap: he rushes only where a line says so
        return self._rush(gap, side)

    def _word(self, side: Side) -> str:
        return "strong" if side is self.ground.strong else "weak"


def _timed(duty: Duty, task: Rush, men: Sequence[Defender]) -> Duty:
    """A rush of a stunt: behind another man's back, or so many seconds late."""
    words = duty.words
    if task.after:
        words += f", after {task.after:g} second{'s' * (task.after != 1)}"
    first = next((d for d in men if d.label == task.behind), None)
    if first is None:
        return replace(duty, words=words, after=task.after)
    via = Point(first.at.x, first.at.y + ROUND)
    words += f", behind [{task.behind}]"
    return replace(duty, words=words, behind=task.behind, after=task.after, via=via)


def _inside(
    defender: Defender, side: Side | None, quarters: Sequence[tuple[Defender, Side]]
) -> bool:
    """Of the men in quarters on a side the widest has the outside one."""
    if side is None:
        return False
    away = defender.at.x * side.value
    return any(d.at.x * side.value > away for d, there in quarters if there is side)
