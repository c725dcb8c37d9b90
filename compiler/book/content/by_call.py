"""The table of jobs as it is printed: each man's row in the page's own call, and after it what the
other calls change, a line for each set of calls that change alike."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

from stemline.book.content.job_rows import JobChange, LineJobs, Row, said_change
from stemline.book.content.job_table import NOBODY, by_role, task_of
from stemline.book.content.letters import beside, told
from stemline.book.content.page import Remark, sentence
from stemline.football.play import FOR_MANY, Play

LINE = "line"
PASSER = "quarterback"


@dataclass(frozen=True)
class OwnRow:
    """A man's row in the page's own call: his letter, and what of his row only some calls share
    with it, by their names."""

    man: str
    row: Row
    shared: tuple[Remark, ...]


@dataclass(frozen=True)
class ChangedJob:
    """What a man is told otherwise: his letter ("" for what is the line's), role and words; no
    words where only the man is another one."""

    man: str
    role: str
    words: str


@dataclass(frozen=True)
class ByCall:
    """What some calls change, by their name; ``says`` are the coach's words for a tag."""

    calls: str
    jobs: tuple[ChangedJob, ...]
    says: str = ""


def own_rows(rows: Iterable[Row], letters: Sequence[str], base: Play) -> tuple[OwnRow, ...]:
    """The rows of the men of the page's own call ``base``, always in the order of ``letters``. Men
    without a role who are told the same here share one, whatever other calls make of them."""

    def place(man: str) -> tuple[int, str]:
        return (letters.index(man) if man in letters else len(letters), man)

    made: dict[object, OwnRow] = {}
    for row in rows:
        men = _own(row)
        if not men:
            continue
        own = OwnRow(men, _lettered(row, men.split()[0], base), _shared(row))
        key = (own.row.job, own.row.task.looks, own.shared) if not row.role else row
        known = made.get(key)
        all_men = sorted((*(known.man.split() if known else ()), *men.split()), key=place)
        made[key] = replace(known or own, man=" ".join(all_men))
    return tuple(sorted(made.values(), key=lambda own: place(own.man.split()[0])))


def _lettered(row: Row, man: str, base: Play) -> Row:
    """The row with the men whom it names by role by their letters too ("carrier W"), as they stand
    in the picture of ``base``."""
    task = base.assignment(man)
    job = task_of(task).job
    if row.task.job != told(by_role(job, base, task), base, task):
        return row
    words = told(by_role(job, base, task, lettered=True), base, task)
    return replace(row, task=replace(row.task, job=words))


def by_call(
    rows: Sequence[Row],
    columns: Sequence[str],
    line: LineJobs | None,
    passer: Iterable[JobChange],
    tags: Sequence[Remark],
) -> tuple[ByCall, ...]:
    """What the other calls change, in the order of the calls; ``columns`` name the formations of
    the rows' cells, ``tags`` are the coach's words for each."""
    made: dict[str, list[ChangedJob]] = {}
    first: dict[str, tuple[int, int]] = {}
    said = [*_cast(rows, columns), *_changed(rows, columns)]
    said += [(c.calls, c.first, ChangedJob("", LINE, c.words)) for c in _line(line)]
    said += [(c.calls, c.first, ChangedJob("", PASSER, c.words)) for c in passer if c.first]
    for number, (calls, at, job) in enumerate(said):
        jobs = made.setdefault(calls, [])
        jobs.append(job)
        first[calls] = min(first.get(calls, (at, number)), (at, number))
    words = {tag.label: tag.words for tag in tags}
    for tag in (label for label, words_of in words.items() if words_of):
        made.setdefault(tag, [])
    order = sorted(made, key=lambda calls: first.get(calls, (len(said) + 1000, 0)))
    return tuple(ByCall(calls, _together(made[calls]), words.get(calls, "")) for calls in order)


def _own(row: Row) -> str:
    """Who has the row in the page's own call, "" for nobody."""
    man = row.men[0]
    for change in row.but:
        if change.part == "man" and change.first == 0:
            man = change.words
        if change.part == "only" and change.first > 0:
            man = NOBODY
    return "" if man == NOBODY else man


def _shared(row: Row) -> tuple[Remark, ...]:
    shared = (c for c in row.but if c.first == 0 and c.part not in ("man", "only"))
    return tuple(Remark(c.calls, said_change(c)) for c in shared)


def _cast(rows: Sequence[Row], columns: Sequence[str]) -> Iterator[tuple[str, int, ChangedJob]]:
    """Who plays a role in formations that have another man for it; a row that the page's own call
    has not stands with its job."""
    for at, name in enumerate(columns[1:], 1):
        for row in rows:
            man = row.men[at]
            if not row.role:
                more = " ".join(m for m in man.split() if m not in (*row.men[0].split(), NOBODY))
                if more:
                    yield name, at, ChangedJob(more, "", _whole(row))
                continue
            if man == (_own(row) or NOBODY) or (_only(row) and man == _first(row)):
                continue  # whose the row is in some calls only is told with those
            words = _whole(_as_in(name, row)) if name in _told_whole(row, columns) else ""
            yield name, at, ChangedJob(man, row.role, words)


def _told_whole(row: Row, columns: Sequence[str]) -> tuple[str, ...]:
    """The formations whose lines tell all of a row that the page's own call has not."""
    if _own(row) or _only(row):
        return ()
    cells = zip(columns[1:], row.men[1:], strict=True)
    return tuple(name for name, man in cells if man != NOBODY)


def _as_in(calls: str, row: Row) -> Row:
    """The row with the job that exactly ``calls`` have in the place of the common one."""
    theirs = next((c for c in row.but if c.part == "job" and c.calls == calls), None)
    if theirs is None:
        return row
    return replace(row, task=replace(row.task, job=theirs.words, looks=theirs.looks))


def _changed(rows: Sequence[Row], columns: Sequence[str]) -> Iterator[tuple[str, int, ChangedJob]]:
    for row in rows:
        mine, whole = _own(row), _told_whole(row, columns)
        for change in row.but:
            if change.first == 0 and mine:
                continue
            if change.part == "job" and change.calls in whole:
                continue  # that formation's line has it in the row's place
            man = _then(row, change) or mine or _first(row)
            if change.part == "only":
                men = _then(row, change) or mine or _players(row)
                yield change.calls, change.first, ChangedJob(men, row.role, _whole(row))
            elif change.part == "man" and not row.role and change.words == NOBODY:
                continue  # his job without a role is another row there
            elif change.part == "man":
                known = mine or _only(row) or change.words == NOBODY
                words = "" if known else _whole(row)
                yield change.calls, change.first, ChangedJob(change.words, row.role, words)
            else:
                yield (
                    change.calls,
                    change.first,
                    ChangedJob(_men(change, man, row.role), row.role, said_change(change)),
                )


def _men(change: JobChange, man: str, role: str) -> str:
    """Who is told it: of several men with one role none, since each formation's line says its own;
    ``man`` where the change names nobody, or its role is everybody's."""
    if not role or role.startswith(FOR_MANY) or not change.men:
        return man
    return change.men[0] if len(change.men) == 1 else ""


def _then(row: Row, change: JobChange) -> str:
    """Who plays it in exactly the calls of another change."""
    same = (c.words for c in row.but if c.part == "man" and c.calls == change.calls)
    return next((man for man in same if man != NOBODY), "")


def _first(row: Row) -> str:
    """The first man who has the row in some formation."""
    return next((man for man in row.men if man != NOBODY), "")


def _players(row: Row) -> str:
    """All who have the row in some formation, each once."""
    return " ".join(dict.fromkeys(man for man in row.men if man != NOBODY))


def _only(row: Row) -> bool:
    return any(change.part == "only" for change in row.but)


def _whole(row: Row) -> str:
    looks = (sentence(f"Against {note.label}: {note.words}") for note in row.task.looks)
    return " ".join((row.job, *looks)).strip()


def _line(line: LineJobs | None) -> tuple[JobChange, ...]:
    return tuple(change for change in line.but if change.first) if line is not None else ()


def _together(jobs: Sequence[ChangedJob]) -> tuple[ChangedJob, ...]:
    """All that one man is told in one, and men who are told the same together."""
    words: dict[tuple[str, str], list[str]] = {}
    for job in jobs:
        words.setdefault((job.man, beside(job.man, job.role)), []).append(job.words)
    alike: dict[tuple[str, bool], list[tuple[str, str]]] = {}
    made: list[ChangedJob] = []
    for who, parts in words.items():
        said = " ".join(sentence(part) for part in dict.fromkeys(parts) if part)
        if said:
            alike.setdefault((said, bool(who[0])), []).append(who)
        else:
            made.append(ChangedJob(*who, ""))
    for (said, named), men in alike.items():
        letters = " ".join(man for man, _ in men) if named else ""
        made.append(ChangedJob(letters, ", ".join(role for _, role in men if role), said))
    return tuple(made)
