"""A whole playbook, read: every definition by its name, and its settings."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from stemline.football.contact_limits import ContactLimit
from stemline.football.field import Side
from stemline.football.lessons import Lesson
from stemline.football.offence.strokes import Route
from stemline.football.rulebook.codes import Code
from stemline.football.timing.levels import HIGH_SCHOOL, PlayingLevel
from stemline.playbook.concepts import Concept, Tag
from stemline.playbook.dress_ups import Dress
from stemline.playbook.formations import Formation, MotionDef, Person
from stemline.playbook.install_definitions import InstallDef
from stemline.playbook.look_definitions import BASE_FRONT, LookDef
from stemline.playbook.protection_definitions import Protection
from stemline.playbook.week_definitions import WeekDef
from stemline.source import NOWHERE, Span

KILL_WORD = "Kill"
"""What a quarterback says where the playbook has no word of its own. Custom."""


@dataclass(frozen=True)
class Settings:
    """The playbook block: the code, and the house's own figures over the code's.

    ``against`` is the key of the look that runs are drawn against, "" where none is named;
    ``lowered`` names the codes of warnings that are counted and not printed; ``level`` is how fast
    they play, for the clock. ``contact`` are the house's own minutes of contact, None where the
    code's hold. ``theme`` is the name of the theme, said at ``theme_span``; "" for the
    usual one. With ``every_call`` the book draws also those whose picture another one says.
    ``middle`` is the side that the house calls the field from the middle, None for none; with
    ``middle_said`` the playbook says so itself, and lines that name the field mean it too.
    ``scramble`` is what men on short and on deep routes do when the quarterback runs.
    ``kill_word`` is what is said at the line where a call becomes another.
    """

    name: str
    code: Code
    season: str
    numbers: float
    gun_depth: float
    right_handed: bool
    picture: str
    sections: tuple[tuple[str, Span], ...]
    says: tuple[str, ...]
    cautions: tuple[str, ...]
    span: Span
    against: str = ""
    lowered: tuple[tuple[str, Span], ...] = ()
    level: PlayingLevel = HIGH_SCHOOL
    theme: str = ""
    theme_span: Span = NOWHERE
    contact: ContactLimit | None = None
    every_call: bool = False
    middle: Side | None = Side.RIGHT
    middle_said: bool = False
    kill_word: str = KILL_WORD
    scramble: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True)
class Playbook:
    """Every definition by its key, the name in lower case. Runs stand among the concepts.

    ``week_looks`` are those of files that hold a week: an opponent's, which no page of the book
    shows and only weeks know. ``install`` is what each day puts in, where the coach says it;
    ``taught`` the signals, words and situations of definitions.
    """

    settings: Settings
    people: Mapping[str, Person]
    formations: Mapping[str, Formation]
    motions: Mapping[str, MotionDef]
    routes: Mapping[str, Route]
    concepts: Mapping[str, Concept]
    tags: Mapping[tuple[str, str], Tag]
    dresses: tuple[Dress, ...]
    looks: Mapping[str, LookDef] = field(default_factory=dict)
    protections: Mapping[str, Protection] = field(default_factory=dict)
    weeks: Mapping[str, WeekDef] = field(default_factory=dict)
    week_looks: Mapping[str, LookDef] = field(default_factory=dict)
    install: InstallDef | None = None
    taught: tuple[Lesson, ...] = ()

    @property
    def base_look(self) -> str:
        """The key of the look that runs and protections are drawn against: the playbook's own
        choice, else the first by name of those that are for every set, or where there is none the
        base front of its code."""
        if self.settings.against in self.looks:
            return self.settings.against
        every = (key for key, look in self.looks.items() if not look.limited)
        return min(every, default=BASE_FRONT)

    @property
    def families(self) -> tuple[str, ...]:
        """The book's sections in order: those that `sections` lists, then as the text has them."""
        written = dict.fromkeys(c.family for c in self.concepts.values())
        order = [name.casefold() for name, _ in self.settings.sections]
        listed = [f for f in written if f.casefold() in order]
        listed.sort(key=lambda f: order.index(f.casefold()))
        return tuple(dict.fromkeys((*listed, *written)))

    @property
    def receivers(self) -> int:
        """Eligible men besides the quarterback: what shapes are counted from."""
        return self.settings.code.receivers

    def is_broken(self, formation: str, motion: str, concept: str, tags: tuple[str, ...]) -> bool:
        """Whether any definition that a call is made of has a line that was not read."""
        parts: list[Formation | MotionDef | Concept | Tag] = [
            self.formations[formation],
            self.concepts[concept],
            *(self.tags[concept, tag] for tag in tags),
        ]
        if motion:
            parts.append(self.motions[motion])
        return any(part.broken for part in parts)


def with_opponents(book: Playbook) -> Playbook:
    """The playbook with the looks that stand in its weeks alone."""
    return replace(book, looks={**book.looks, **book.week_looks}) if book.week_looks else book
