"""The pages of a concept read as they are printed: the row of the page's own call, and behind it
the lines of what other calls change. Nothing of their maker is used."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from job_reading import holds

from stemline.book.content.book import Book
from stemline.book.content.by_call import ByCall, ChangedJob, OwnRow
from stemline.book.content.dressed_page import DressedPage, DressGroup
from stemline.book.content.kinds.concept_page import ConceptPage
from stemline.football.play import Assignment, Play

Printed = tuple[ConceptPage, DressGroup | None, tuple[Play, ...]]


def printed(book: Book, groups: Sequence[tuple[Play, ...]]) -> list[Printed]:
    """Each concept's page with its dress-ups and its calls."""
    dressed = {group.of: group for page in book.of(DressedPage) for group in page.groups}
    pages = book.of(ConceptPage)
    return [(p, dressed.get(p.id), plays) for p, plays in zip(pages, groups, strict=True)]


def wrong_men(one: Printed) -> Iterator[str]:
    """Each man of each call who does not find himself, or finds another: a line each."""
    page, group, plays = one
    calls = group.calls if group is not None else ()
    for play in plays:
        told = [job for each in calls if holds(each.calls, play, plays) for job in each.jobs]
        for task in play.assignments:
            if task.role and not play.man(task.man).interior:
                found = _players(task, page.own, told)
                if task.man not in found:
                    yield f"{play.call.spoken}: {task.role} is {task.man}, printed {found}"
                jobs = [job for job in told if job.words and task.role]
                wrong = {him for job in jobs for him in _named(task.role, job)} - {task.man}
                if wrong and not any(not job.words and job.role for job in told):
                    yield f"{play.call.spoken}: {task.role} is {task.man}, told {wrong}"


def _players(task: Assignment, own: Sequence[OwnRow], told: Sequence[ChangedJob]) -> list[str]:
    """Who plays a role by the page: those whom a line for the call names, else the row's man. Of a
    row without a role, or a line for men without one, he finds his letter."""
    role, man = task.role, task.man
    named = [him for job in told for him in _named(role, job)]
    named += [man for job in told if not job.role and man in job.man.split()]
    rows = [him for row in own if row.row.role == role for him in row.man.split()]
    rows += [man for row in own if not row.row.role and man in row.man.split()]
    return named or rows


def _named(role: str, job: ChangedJob) -> Iterator[str]:
    roles = job.role.split(", ")
    if role in roles and job.man:
        men = job.man.split()
        yield men[roles.index(role)] if len(men) == len(roles) else job.man


def unsaid(one: Printed) -> Iterator[str]:
    """Each change of a row that holds in other calls and that no line of them says."""
    page, group, _ = one
    for row in page.rows:
        for change in row.but:
            if change.first == 0 or change.part in ("man", "only"):
                continue
            lines = [c for c in group.calls if c.calls == change.calls] if group else []
            said = " ".join(job.words for line in lines for job in line.jobs)
            if change.words.split(". ")[0].rstrip(".").split(", ")[-1] not in said:
                yield f"{page.name}, {change.calls}: {row.role} {change.words}"


def of_tag(calls: Sequence[ByCall], tag: str, play: Play, plays: Sequence[Play]) -> set[str]:
    """The roles that the lines of a tag's call name."""
    told = (job for each in calls if holds(each.calls, play, plays) for job in each.jobs)
    return {role for job in told for role in (*job.role.split(", "), job.man)}


def job_of(task: Assignment) -> tuple[str, tuple[tuple[str, str], ...]]:
    return task.job, tuple((b.looks, b.job) for b in task.branches)
