"""The pages of a concept read as they are printed: the row of the page's own call, and behind it
the lines of what other calls change. Nothing of their maker is used."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from job_reading import holds

from stemline.book.content.book import Book
from stemline.book.content.by_call import LINE, PASSER, ByCall, ChangedJob, OwnRow
from stemline.book.content.dressed_page import DressedPage, DressGroup
from stemline.book.content.job_table import NOBODY
from stemline.book.content.kinds.concept_page import ConceptPage
from stemline.book.content.letters import told as marked
from stemline.football.play import Assignment, Play

_LETTERS = re.compile(r"\b[A-Z][A-Z0-9]?\b")
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


def two_jobs(one: Printed) -> Iterator[str]:
    """Each man to whom one line for his call gives two of the jobs that his role has on the page,
    and each who is told another man's letter alone for what only some calls have."""
    _, group, plays = one
    for play in plays:
        calls = group.calls if group is not None else ()
        told = [job for each in calls if holds(each.calls, play, plays) for job in each.jobs]
        for task in play.assignments:
            mine = [j for j in told if j.words and task.role and task.role in j.role.split(", ")]
            if not mine or play.man(task.man).interior:
                continue
            jobs = {job for other in plays for job in _jobs(task.role, other)}
            for line in mine:
                found = [job for job in jobs if job in line.words]
                whole = [a for a in found if not any(a != b and a in b for b in found)]
                if len(whole) > 1:
                    yield f"{play.call.spoken}: {task.man} is told {sorted(whole)}"
            named = {man for line in mine if len(line.role.split(", ")) == 1
                     for man in line.man.split()}  # fmt: skip
            if named and task.man not in named:
                yield f"{play.call.spoken}: {task.role} is {task.man}, told {sorted(named)}"


def _jobs(role: str, play: Play) -> Iterator[str]:
    """The job that a role has in a call, as a page prints it."""
    task = play.runs(role)
    if task is not None and task.job and not play.man(task.man).interior:
        yield marked(task.job, play, task).rstrip(".")


def idle_roles(one: Printed) -> Iterator[str]:
    """Each role that the lines for a call give to somebody, and that nobody has in it; and each
    that nobody has, with a job all the same."""
    _, group, plays = one
    for play in plays:
        calls = group.calls if group is not None else ()
        told = [job for each in calls if holds(each.calls, play, plays) for job in each.jobs]
        played = {task.role for task in play.assignments}
        nobodys = {job.role for job in told if job.man == NOBODY}
        yield from (f"{play.call.spoken}: nobody plays {j.role} {j.words}"
                    for j in told if j.man == NOBODY and j.words)  # fmt: skip
        for job in told:
            roles = set(job.role.split(", ")) - {"", LINE, PASSER} if job.man else set()
            for role in sorted(roles - played - nobodys):
                yield f"{play.call.spoken}: {job.man} is told {role}, which nobody plays"


def lettered(one: Printed) -> Iterator[str]:
    """Each row of a page's own call that has not every man of the job by his letter."""
    page, _, plays = one
    for own in page.own:
        task = plays[0].assignment(own.man.split()[0])
        lost = {*_LETTERS.findall(task.job)} - {*_LETTERS.findall(own.row.task.job)}
        if lost and own.row.task.job:
            yield f"{page.name}: {own.man} {own.row.task.job} without {sorted(lost)}"


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
