"""What is different between two playbooks, as values: a change once, where it was made."""

from __future__ import annotations

from dataclasses import dataclass

from stemline.compare.definitions import Definition
from stemline.compare.line_changes import LineChange
from stemline.describe.changes import PlayChange
from stemline.football.play import Play


@dataclass(frozen=True)
class DefinitionChange:
    """A definition that is new (``was`` None), gone (``now`` None), renamed or changed.

    ``likeness`` is, for one that has another name, how much of both is the same, from 0 to 1;
    ``roles`` are its roles that have another name; ``calls`` the calls whose plays are different
    and that are made of it, as they are spoken now, or were. ``kin`` is, of one that is new or
    gone, what on the other side it was split from, or has gone into, and how alike the two are.
    ``reads_alike`` says that its calls are read as they were, and that its own line of reads, which
    is another, decides that in one of them.
    """

    was: Definition | None
    now: Definition | None
    lines: tuple[LineChange, ...] = ()
    roles: tuple[tuple[str, str], ...] = ()
    likeness: float | None = None
    calls: tuple[str, ...] = ()
    kin: tuple[str, float] | None = None
    reads_alike: bool = False

    @property
    def one(self) -> Definition:
        found = self.now or self.was
        assert found is not None, "a change has a side"
        return found


@dataclass(frozen=True)
class CallChange:
    """A call whose play is another: who is different, and what of the quarterback's orders.

    ``was`` or ``now`` is None where its play could not be made. ``orders`` are (what, was, now).
    """

    before: str
    spoken: str
    was: Play | None
    now: Play | None
    men: tuple[PlayChange, ...]
    orders: tuple[tuple[str, str, str], ...]


@dataclass(frozen=True)
class Consequence:
    """What follows from the changes, in the words of a check: something that came, or went.

    ``calls`` are those it is true of, by the side it is true on; ``concept`` is theirs, of as many
    calls now as ``of`` says, and ``look`` the defence it is true against, "" for all.
    """

    came: bool
    code: str
    text: str
    calls: tuple[str, ...]
    concept: str = ""
    look: str = ""
    of: int = 0


@dataclass(frozen=True)
class Family:
    """The calls of a family, by the side they are on: as they were, changed, new, gone."""

    name: str
    same: int
    changed: int
    new: int
    gone: int


@dataclass(frozen=True)
class Comparison:
    """Two playbooks compared. ``old`` and ``new`` are their names, with season.

    ``renamed`` are calls that are only called something else: (before, now). ``still`` are the
    plays that are as they were of the concepts with one that changed, came or went.
    """

    old: str
    new: str
    definitions: tuple[DefinitionChange, ...]
    changed: tuple[CallChange, ...]
    added: tuple[Play, ...]
    dropped: tuple[Play, ...]
    renamed: tuple[tuple[str, str], ...]
    same: int
    follows: tuple[Consequence, ...]
    families: tuple[Family, ...]
    still: tuple[Play, ...] = ()

    @property
    def is_same(self) -> bool:
        """Whether both texts say the same, layout aside."""
        return not self.definitions and self.no_play_changed

    @property
    def no_play_changed(self) -> bool:
        return not (self.changed or self.added or self.dropped)
