"""Codes of the rule books: an error or a warning in the same words, by what the rule rests on."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from stemline.diagnostics.diagnostic import Mistake, Wording


@dataclass(frozen=True)
class Resting:
    """What a rule rests on: the code's title, the figure's source, and whether it binds."""

    rules: str
    source: str
    binds: bool


class BrokenRule(Mistake):
    """A broken rule: an error where its figure is published or the league's own, else a warning.

    Named with W, as where no code has a published figure, it is only ever a warning.
    """

    resting: Resting

    foul: ClassVar[str] = ""
    """What makes a formation a foul by itself, as a clause; "" where it is none: who may catch a
    pass is asked at the snap only, so a man whom a motion uncovers was never a foul."""

    @property
    def code(self) -> str:
        name = type(self).__name__
        return name if self.resting.binds else f"W{name[1:]}"

    @classmethod
    def worded(cls) -> dict[str, Wording]:
        name = cls.__name__
        error = Wording(cls.title, f"{cls.message} ({{rules}}; {{source}})", cls.label, cls.help)
        doubted = f"{cls.message} ({{rules}}; rests on: {{source}})"
        warning = Wording(f"{cls.title}, perhaps", doubted, cls.label, cls.help)
        return {name: error, f"W{name[1:]}": warning}

    @property
    def values(self) -> tuple[tuple[str, str], ...]:
        own = dict(super().values)
        del own["resting"]
        own |= {"rules": self.resting.rules, "source": self.resting.source}
        return tuple(sorted(own.items()))
