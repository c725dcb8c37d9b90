"""What a look shows: the words of a guard (`when zone`, `when press`) that it makes true.

Computed from where its men stand and what they do, so that no label can say one thing and the
picture another. A pair of words that it does not settle is left out: both stay possible.
"""

from __future__ import annotations

from stemline.football.conditions import LookWord
from stemline.football.defence.zones import DEEP, middle_of
from stemline.football.defenders import Defence, Defender, DutyKind
from stemline.football.field import Field, Side

# Common practice, no published source: a press corner stands 1 to 3 yards off his man; a deep
# middle player plays within a few yards of the middle of the field.
PRESS_DEPTH = 3.0
MIDDLE_WIDTH = 4.0


def shown(defence: Defence, field: Field) -> tuple[str, ...]:
    """The words, in the order of the closed list."""
    words = {_coverage(defence), _leverage(defence), _middle(defence, field)}
    return tuple(look.value for look in LookWord if look in words)


def _coverage(defence: Defence) -> LookWord | None:
    """Man where more of those who cover have a man than a zone; a tie is what the corners do."""
    duties = [d.duty for d in defence.defenders if d.duty is not None and not d.rushes]
    men = sum(duty.kind is DutyKind.MAN for duty in duties)
    zones = len(duties) - men
    if men != zones:
        return LookWord.MAN if men > zones else LookWord.ZONE
    kinds = {_is_man(corner) for corner in _corners(defence)}
    if len(kinds) != 1:
        return None
    return LookWord.MAN if kinds.pop() else LookWord.ZONE


def _is_man(defender: Defender) -> bool:
    return defender.duty is not None and defender.duty.kind is DutyKind.MAN


def _leverage(defence: Defence) -> LookWord | None:
    """Press or off where both corners are; one of each is neither."""
    near = {corner.at.y <= PRESS_DEPTH for corner in _corners(defence)}
    if len(near) != 1:
        return None
    return LookWord.PRESS if near.pop() else LookWord.OFF


def _corners(defence: Defence) -> list[Defender]:
    """The corner of each side that has one."""
    return [corner for side in Side if (corner := widest(defence, side)) is not None]


def widest(defence: Defence, side: Side) -> Defender | None:
    """The corner of a side: the widest defender there who does not rush."""
    there = [d for d in defence.defenders if d.at.x * side.value > 0 and not d.rushes]
    return max(there, key=lambda d: (abs(d.at.x), d.label), default=None)


def _middle(defence: Defence, field: Field) -> LookWord:
    """Closed where somebody is deep in the middle of the field."""
    middle = middle_of(field)
    deep = [d.duty.to for d in defence.defenders if d.duty is not None and d.duty.kind in DEEP]
    closed = any(to is not None and abs(to.x - middle) <= MIDDLE_WIDTH for to in deep)
    return LookWord.CLOSED if closed else LookWord.OPEN
