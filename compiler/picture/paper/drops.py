"""The ground that a zone defender drops to, as large as a picture shows it."""

from __future__ import annotations

from stemline.football.defenders import Duty, DutyKind
from stemline.geometry.box import Box

# Half widths and half heights in yards. They are a picture's figures, not a coverage's: deep
# grounds are wide and all are low enough to leave the field between them. No published source.
_GROUNDS: dict[DutyKind, tuple[float, float]] = {
    DutyKind.FLAT: (3.4, 1.5),
    DutyKind.CURL: (3.2, 1.5),
    DutyKind.HOOK: (3.2, 1.5),
    DutyKind.HOLE: (3.2, 1.5),
    DutyKind.ROBBER: (3.2, 1.5),
    DutyKind.QUARTER: (4.6, 1.7),
    DutyKind.THIRD: (6.0, 1.7),
    DutyKind.HALF: (8.0, 1.7),
}


def ground_of(duty: Duty) -> Box | None:
    """The box in yards round a drop's ground; None for a man who rushes or follows a receiver."""
    if duty.to is None or duty.kind not in _GROUNDS:
        return None
    wide, tall = _GROUNDS[duty.kind]
    return Box(duty.to.x - wide, duty.to.y - tall, duty.to.x + wide, duty.to.y + tall)
