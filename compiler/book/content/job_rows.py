"""Rows of the table of jobs: what a man is told, and in which calls he is told otherwise."""

from __future__ import annotations

from dataclasses import dataclass, field

from stemline.book.content.page import Remark, sentence


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
    ``first`` is the place of the first of them among the page's calls: 0 is the page's own.
    ``men`` are who has the job in them, by letter; none where ``words`` say it.
    """

    part: str
    calls: str
    words: str
    looks: tuple[Remark, ...] = ()
    first: int = 1
    men: tuple[str, ...] = field(default=(), compare=False)


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


def change_notes(changes: tuple[JobChange, ...]) -> tuple[Remark, ...]:
    """The changes as notes: a label, and all that is other in the calls it names."""
    said: dict[str, list[str]] = {}
    for change in changes:
        label = f"only {change.calls}" if change.part == "only" else change.calls
        words = said.setdefault(label, [])
        words.append(said_change(change, first=not words))
    return tuple(Remark(label, " ".join(filter(None, words))) for label, words in said.items())


def said_change(change: JobChange, first: bool = True) -> str:
    """A change in sentences; a motion need not name itself again right after its label."""
    words = change.words
    if change.part == "man":
        words = f"{'nobody' if words == '–' else words} plays it"
    elif change.part == "says" and not words:
        words = "What the coach says to him is not for this call"
    elif change.part == "motion" and first and words.startswith(change.calls):
        words = words.removeprefix(change.calls).lstrip(" ,")
    looks = (f"{against(note.label)}: {note.words}" for note in change.looks)
    return " ".join(sentence(part) for part in (words, *looks) if part)


def against(looks: str) -> str:
    """ "against press", "if he sits": what a look or a key makes of a job, begun."""
    return f"{looks[:1].upper()}{looks[1:]}" if looks.startswith("if ") else f"Against {looks}"
