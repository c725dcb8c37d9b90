"""How a thing is taught and signalled: what changes no path."""

from __future__ import annotations

from dataclasses import dataclass

from stemline.football.situations import Situation
from stemline.source import Span

TEMPOS = ("fast", "normal", "slow", "look", "freeze")


@dataclass(frozen=True)
class Lesson:
    """The words of one definition: ``kind`` and ``name`` as written.

    ``signal`` is what is shown from the sideline, ``word`` what is called for it, ``suits`` the
    situations it is for, ``tempo`` how fast a tag has the call go; each empty where nobody says it.
    """

    kind: str
    name: str
    span: Span
    signal: str = ""
    word: str = ""
    tempo: str = ""
    suits: tuple[Situation, ...] = ()

    @property
    def key(self) -> tuple[str, str]:
        return self.kind, self.name.casefold()
