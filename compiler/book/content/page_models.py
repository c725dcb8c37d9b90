"""What stands on the pages of a playbook, in print order: words and references, no drawing.

Every value is frozen, since templates that a coach may change are filled from it. ``Entry.id``
is the name both of a call's picture and of its place in the book; nothing else is linked to.
"""

from __future__ import annotations

from dataclasses import dataclass

from stemline.book.paper import Paper
from stemline.football.play import Play

BRIEF = 74
"""Letters that a line of the contents has room for beside a concept's name; measured."""
CONTENTS = 30
"""Lines of contents, the front pages and indexes apart, that one sheet holds when set wide."""


@dataclass(frozen=True)
class Edition:
    """Which printing this is: the revision's short name, its date as text, and its paper."""

    revision: str
    date: str
    paper: Paper = Paper.LETTER


@dataclass(frozen=True)
class Remark:
    """A label and its words: "tag Wheel", "the back turns up the sideline"."""

    label: str
    words: str


@dataclass(frozen=True)
class Entry:
    """One picture in the book and the words over it.

    ``changes`` say, man by man, what is other than in the page's first picture; the first itself
    has none. ``play`` is what is drawn. A ``listed`` entry is a call, which stands in outline and
    index; the others are views of what a page is about. ``aside`` is a word or two beside it.
    """

    id: str
    call: str
    play: Play
    changes: tuple[Remark, ...] = ()
    listed: bool = True
    aside: str = ""


@dataclass(frozen=True)
class ToldJob:
    """What a man is told, without full stops: his motion before the snap, his job, what a look
    makes of it (each look with the job), and the coach's own words for him."""

    motion: str
    job: str
    looks: tuple[Remark, ...] = ()
    says: tuple[str, ...] = ()


@dataclass(frozen=True)
class JobChange:
    """What is other in some calls than in the row: ``calls`` names them all and no others.

    ``part`` tells what ``words`` stand in the place of: "man" who plays it (a dash for nobody),
    "motion", "job" with its ``looks``, "says", or "line"; "only" that no other call has the row.
    """

    part: str
    calls: str
    words: str
    looks: tuple[Remark, ...] = ()


@dataclass(frozen=True)
class Row:
    """A line of the assignment table.

    ``men`` are who plays the role, a cell for each column of the page's table; ``task`` is what
    all calls have in common that ``but`` does not name.
    """

    men: tuple[str, ...]
    role: str
    task: ToldJob
    but: tuple[JobChange, ...] = ()

    @property
    def job(self) -> str:
        """The job in sentences."""
        task = self.task
        return " ".join(sentence(part) for part in (task.motion, task.job, *task.says) if part)

    @property
    def changes(self) -> tuple[Remark, ...]:
        """What changes it as it is printed: all that is other in the same calls in one note."""
        return (*self.task.looks, *change_notes(self.but))


@dataclass(frozen=True)
class LineJobs:
    """The five linemen: the protection's name, the job they share or jobs that are not shared,
    and what other calls make of them."""

    protection: str
    job: str
    jobs: tuple[Remark, ...]
    but: tuple[JobChange, ...] = ()

    @property
    def changes(self) -> tuple[Remark, ...]:
        return change_notes(self.but)


def sentence(words: str) -> str:
    """Words with their full stop; coaches' lines come with and without one."""
    words = words.strip()
    return words if not words or words[-1] in ".!?" else f"{words}."


def change_notes(changes: tuple[JobChange, ...]) -> tuple[Remark, ...]:
    """The changes as notes: a label, and all that is other in the calls it names."""
    said: dict[str, list[str]] = {}
    for change in changes:
        label = f"only {change.calls}" if change.part == "only" else change.calls
        words = said.setdefault(label, [])
        words.append(_said(change, first=not words))
    return tuple(Remark(label, " ".join(filter(None, words))) for label, words in said.items())


def _said(change: JobChange, first: bool) -> str:
    """A change in sentences; a motion need not name itself again right after its label."""
    words = change.words
    if change.part == "man":
        words = f"{'nobody' if words == '–' else words} plays it"
    elif change.part == "motion" and first and words.startswith(change.calls):
        words = words.removeprefix(change.calls).lstrip(" ,")
    looks = (f"{against(note.label)}: {note.words}" for note in change.looks)
    return " ".join(sentence(part) for part in (words, *looks) if part)


def against(looks: str) -> str:
    """ "against press", "if he sits": what a look or a key makes of a job, begun."""
    return f"{looks[:1].upper()}{looks[1:]}" if looks.startswith("if ") else f"Against {looks}"


@dataclass(frozen=True)
class ReadLook:
    """A read: its number in the order, the spot or role, who stands there, who goes with it."""

    number: int
    target: str
    men: str
    partner: str


@dataclass(frozen=True)
class Stop:
    """A step of the quarterback's feet and the reads that are thrown from it."""

    name: str
    words: str
    looks: tuple[ReadLook, ...]


@dataclass(frozen=True)
class Quarterback:
    """The quarterback's strip.

    ``loose`` are reads whose step is not said; ``skipped`` the targets that pressure leaves out;
    ``but`` tells in which calls his "feet", "reads", "pressure", "alert" or "claim" are others.
    """

    stops: tuple[Stop, ...]
    loose: tuple[ReadLook, ...]
    pressure: tuple[ReadLook, ...]
    skipped: tuple[str, ...]
    notes: tuple[Remark, ...]
    but: tuple[JobChange, ...] = ()

    @property
    def changes(self) -> tuple[Remark, ...]:
        return change_notes(self.but)


@dataclass(frozen=True)
class CastTable:
    """Who plays which role in each formation: a row a role, a cell for each of ``formations``."""

    formations: tuple[str, ...]
    rows: tuple[tuple[str, tuple[str, ...]], ...]


@dataclass(frozen=True)
class BlockRow:
    """A row of the table "Who blocks whom": looks that are answered alike, what each blocker does
    against them, who is read and whom nobody takes ("" for no such column)."""

    looks: str
    blocks: tuple[str, ...]
    key: str
    free: str


@dataclass(frozen=True)
class Fronts:
    """Who blocks whom: a column a blocker, as they stand from left to right, a row a front.

    ``men`` are letters and places ("RG", "playside guard"), ``rules`` what holds against every
    front, men of one rule together; none where the rules are not known. ``key`` and ``free`` head
    the columns of those who are read and those whom nobody takes, "" where there are none.
    """

    men: tuple[tuple[str, str], ...]
    rules: tuple[Remark, ...]
    rows: tuple[BlockRow, ...]
    key: str
    free: str


@dataclass(frozen=True)
class KeyRead:
    """A defender who is read: as he is described, his letter in the look drawn ("" without one),
    and what is done when: ("give", "if he widens"). ``calls`` tells with which tags, "" where with
    none; ``looks`` who he is, looks in which he is the same together: ("Bear, Zero", "J")."""

    described: str
    man: str
    choices: tuple[Remark, ...]
    calls: str = ""
    looks: tuple[Remark, ...] = ()


@dataclass(frozen=True)
class ThrowCell:
    """A read against a look: yards to the nearest defender and his letter, "open", "tight",
    "covered", "late" or "never", and whether it is the read that is thrown to."""

    words: str
    nearest: str
    cover: str
    first: bool = False


@dataclass(frozen=True)
class Answers:
    """Reads by looks: a column for each of ``looks``, a row a read: number, target, cells.

    ``rushers`` are, where any look has a free one, a cell a look: when he is at the passer (""
    where all are blocked), and what the pressure order throws before; ``rusher`` is the soonest
    of them, in seconds. ``checks`` are, where any look leaves nobody, a cell a look: what to check
    to ("" where somebody is there).
    """

    looks: tuple[str, ...]
    rows: tuple[tuple[str, str, tuple[ThrowCell, ...]], ...]
    rushers: tuple[tuple[str, str], ...] = ()
    checks: tuple[str, ...] = ()
    rusher: float | None = None


@dataclass(frozen=True)
class ConceptPage:
    """All that is printed of one concept or run; ``opens`` its family when it stands first in it.

    ``columns`` name the formations that the assignment table has letters for, or hold one "man";
    when formations are too many for that, ``casting`` is a table of its own. ``fronts`` is, on a
    run, the table of who blocks whom; on a pass ``clock`` is the id of the picture of the
    quarterback's clock and ``answers`` his reads against each look.
    """

    id: str
    name: str
    family: str
    opens: bool
    serves: str
    drawn: str
    base: Entry
    columns: tuple[str, ...]
    rows: tuple[Row, ...]
    line: LineJobs | None
    quarterback: Quarterback | None
    says: tuple[str, ...]
    tags: tuple[Remark, ...]
    cautions: tuple[str, ...]
    casting: CastTable | None
    dressups: tuple[Entry, ...]
    keys: tuple[KeyRead, ...] = ()
    fronts: Fronts | None = None
    clock: str = ""
    answers: Answers | None = None

    sort = "concept"

    @property
    def brief(self) -> str:
        """What it serves, on one line of the contents."""
        words = self.serves
        if len(words) <= BRIEF:
            return words
        return f"{words[:BRIEF].rsplit(', ', 1)[0]} …"

    @property
    def again(self) -> str:
        """What the pages after the first hold."""
        return "dressed up" if any(e.listed for e in self.dressups) else "against other fronts"

    @property
    def split(self) -> int:
        """Per cent of the words' width in the table that go to what changes a job, from 20 to 50.

        Long jobs beside short changes get the wider column, and the other way round.
        """
        changing = [row for row in self.rows if row.changes]
        if not changing:
            return 0
        job = max(len(row.job) for row in changing)
        change = max(_length(row.changes) for row in changing)
        return min(50, max(20, round(100 * change / (job + change))))

    @property
    def entries(self) -> tuple[Entry, ...]:
        return (self.base, *self.dressups)


def _length(notes: tuple[Remark, ...]) -> int:
    """Letters of notes set one after another."""
    return sum(len(note.label) + len(note.words) + 3 for note in notes)


@dataclass(frozen=True)
class ProtectionPage:
    """A protection: ``words`` say it, ``fronts`` who takes whom against each look; ``hot`` what is
    thrown when one more comes than is blocked, and when."""

    id: str
    name: str
    opens: bool
    drawn: str
    base: Entry
    words: str
    hot: tuple[Remark, ...]
    fronts: Fronts | None
    says: tuple[str, ...]
    dressups: tuple[Entry, ...]

    sort = "protection"
    family = "Protections"
    again = "against other fronts"


@dataclass(frozen=True)
class Post:
    """A row of a look's table: a defender, where he lines up, what is his, and what changes it."""

    man: str
    place: str
    duty: str
    changes: tuple[Remark, ...]


@dataclass(frozen=True)
class LookPage:
    """A look: ``shows`` are the words that it makes true ("zone", "middle closed")."""

    id: str
    name: str
    opens: bool
    drawn: str
    base: Entry
    shows: str
    rows: tuple[Post, ...]
    says: tuple[str, ...]
    dressups: tuple[Entry, ...]

    sort = "look"
    family = "Looks"
    again = "against other sets"


@dataclass(frozen=True)
class LineupPage:
    """How the offence lines up: every formation small."""

    id: str
    dressups: tuple[Entry, ...]

    sort = "lineup"
    name = "How we line up"
    again = "continued"
    family = ""
    opens = True
    base = None


Page = ConceptPage | ProtectionPage | LookPage | LineupPage
"""A page of pictures that is laid to fill its sheets."""


@dataclass(frozen=True)
class Section:
    """A family of concepts."""

    family: str
    concepts: tuple[ConceptPage, ...]


@dataclass(frozen=True)
class CoverPage:
    team: str
    season: str
    code: str
    edition: str
    about: str
    says: tuple[str, ...]
    cautions: tuple[str, ...]

    @property
    def roomy(self) -> bool:
        """Whether the coach's own words leave room for an emblem; 80 letters make a line."""
        return sum(1 + len(line) // 80 for line in (*self.says, *self.cautions)) <= 8


@dataclass(frozen=True)
class ContactLevel:
    """A level of contact in practice and whether it counts as full contact."""

    number: int
    name: str
    meaning: str
    full: bool


@dataclass(frozen=True)
class Care:
    """The page on contact and on head injuries; ``source`` is where scale and limits come from."""

    levels: tuple[ContactLevel, ...]
    source: str
    notes: tuple[Remark, ...]


@dataclass(frozen=True)
class LegendEntry:
    """One entry of the legend: the id of its small picture and what it means."""

    id: str
    caption: str


@dataclass(frozen=True)
class LegendPage:
    """The page on how to read the pictures."""

    symbols: tuple[LegendEntry, ...]
    notes: tuple[Remark, ...]


@dataclass(frozen=True)
class IndexLine:
    """A call and the id it stands at."""

    call: str
    id: str


@dataclass(frozen=True)
class IndexGroup:
    """Index lines under one formation or tag."""

    title: str
    lines: tuple[IndexLine, ...]


@dataclass(frozen=True)
class IndexItem:
    """One line of a column of the index: ``kind`` is "index", "group" or "call".

    ``id`` is what it links to, or for an index its own id; ``height`` is in points.
    """

    kind: str
    text: str
    id: str
    height: float


@dataclass(frozen=True)
class Index:
    """The three indexes, and the same lines set in columns: a page holds ``across`` of them."""

    calls: tuple[IndexLine, ...]
    formations: tuple[IndexGroup, ...]
    tags: tuple[IndexGroup, ...]
    across: int
    pages: tuple[tuple[tuple[IndexItem, ...], ...], ...]


@dataclass(frozen=True)
class Book:
    """The whole book in print order."""

    title: str
    footer: str
    caution: str
    paper: Paper
    cover: CoverPage
    reading: LegendPage
    care: Care
    sections: tuple[Section, ...]
    index: Index
    lineup: LineupPage | None = None
    protections: tuple[ProtectionPage, ...] = ()
    looks: tuple[LookPage, ...] = ()

    @property
    def crowded(self) -> bool:
        """Whether the contents are too long to be set wide."""
        halves = max(len(self.protections), len(self.looks))
        return len(self.concepts) + halves > CONTENTS

    @property
    def pages(self) -> tuple[Page, ...]:
        """Every page of pictures in print order."""
        lineup = (self.lineup,) if self.lineup else ()
        return (*lineup, *self.concepts, *self.protections, *self.looks)

    @property
    def concepts(self) -> tuple[ConceptPage, ...]:
        return tuple(concept for section in self.sections for concept in section.concepts)
