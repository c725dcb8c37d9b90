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

    @property
    def edge(self) -> str:
        """The edge in words, the called side behind it as the coach says it: "weak edge"."""
        match self.side:
            case None:
                return "edge"
            case SideWord.CALL:
                return "edge to the call"
            case SideWord.AWAY:
                return "edge away from the call"
            case _:
                return f"{self.side.value} edge"
