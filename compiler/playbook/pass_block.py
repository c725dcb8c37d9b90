"""What one man of a protection blocks, as the text says it."""

from __future__ import annotations

from dataclasses import dataclass

from stemline.football.blocking.protecting import ProtectionRule
from stemline.playbook.said import SideWord


@dataclass(frozen=True)
class PassBlock:
    """``side`` only where the text says which edge; ``wants`` described defenders in order."""

    rule: ProtectionRule
    side: SideWord | None = None
    wants: tuple[str, ...] = ()
