"""The table of jobs: what is common to a concept's calls, and by call whatever is not.

A row is a role, or a man without one. Its facts are compared play by play: who plays it, how he
moves before the snap, his job, what a look makes of it, and the coach's words for him. Letters of
the offence count as the roles they stand for, since roles stay and letters move.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass

from stemline.book.content.block_table import place_of
from stemline.book.content.calling import Calling
from stemline.book.content.job_rows import JobChange, LineJobs, Row, ToldJob
from stemline.book.content.letters import each_letter, is_theirs, told, with_men
from stemline.book.content.page import Remark, sentence
from stemline.football.play import SHARED, Assignment, Kind, Play

NOBODY = "–"
Column = tuple[str, Play]
"""Formations that cast a concept alike, and the call that shows how."""
Key = tuple[str, str]
"""A row: ("role", its name) or ("man", his letter)."""


# What a play says of a man.


def task_of(a: Assignment) -> ToldJob:
    """The facts of one assignment as the table prints them."""
    return ToldJob(
        motion=a.motion.words if a.motion else "",
        job=a.job.strip().rstrip("."),
        looks=tuple(Remark(b.looks, b.job.strip().rstrip(".")) for b in a.branches),
        says=tuple(dict.fromkeys(a.says)),
    )


def role_players(play: Play) -> tuple[Assignment, ...]:
    """The assignments of men who have a role, linemen left out, in the play's order."""
    return tuple(a for a in play.assignments if a.role and not play.in_line(a.man))


def by_role(words: str, play: Play, a: Assignment, lettered: bool = False) -> str:
    """``words`` of ``a`` with every letter of the offence as the role or place it has in ``play``,
    or with ``lettered`` behind it ("carrier W").

    Letters of defenders whom he blocks or reads stay, and so do gaps.
    """
    names = {other.man: other.role_said for other in role_players(play)}
    if play.toward is not None:
        names |= {a.man: place_of(play.man(a.man), play) for a in _linemen(play)}
    return each_letter(
        words,
        lambda letter, before: (
            letter
            if is_theirs(letter, before, play, a) or letter not in names
            else with_men(names[letter], (letter,))
            if lettered
            else names[letter]
        ),
    )


def same_job(now: Assignment, play: Play, old: Assignment, before: Play) -> bool:
    """Whether two men are told the same job and reactions; a look that is there decides."""
    if task_of(now).looks == task_of(old).looks or not now.branches:
        told = {old.job: True} | {b.job: True for b in old.branches if shown(b.looks, play)}
        if now.job in told or any(
            by_role(now.job, play, now) == by_role(job, before, old) for job in told
        ):
            return not (old.branches and not now.branches and play.defence is None)
    return False


def shown(looks: str, play: Play) -> bool:
    """Whether the look that the play is drawn against shows all of ``looks``."""
    return bool(looks) and all(look.strip() in play.against for look in looks.split(","))


# Columns: who plays what in which formation.


def formation_columns(plays: Sequence[Play]) -> tuple[Column, ...]:
    """The formations of a concept, those with the same men for all roles together.

    A formation stands by its plainest call; its two sides apart where they have other men.
    """
    chosen: dict[tuple[str, str], Play] = {}
    for play in plays:
        key = (play.call.formation, play.call.side_word)
        if key not in chosen or len(play.call.tags) < len(chosen[key].call.tags):
            chosen[key] = play
    sides: dict[str, set[object]] = {}
    for (formation, _), play in chosen.items():
        sides.setdefault(formation, set()).add(_cast(play))
    names: dict[object, list[str]] = {}
    first: dict[object, Play] = {}
    for (formation, side), play in chosen.items():
        name = formation if len(sides[formation]) == 1 else f"{formation} {side}"
        first.setdefault(_cast(play), play)
        alike = names.setdefault(_cast(play), [])
        if name not in alike:
            alike.append(name)
    return tuple((", ".join(names[cast]), play) for cast, play in first.items())


def _cast(play: Play) -> frozenset[tuple[str, str]]:
    return frozenset((a.role, a.man) for a in role_players(play))


# Rows.


@dataclass(frozen=True)
class _Role:
    """A row being made: each call's assignment by the call's index, None where nobody plays it."""

    key: Key
    in_call: tuple[Assignment | None, ...]

    @property
    def played(self) -> tuple[int, ...]:
        return tuple(i for i, a in enumerate(self.in_call) if a is not None)


def rows(plays: Sequence[Play], columns: Sequence[Column]) -> tuple[Row, ...]:
    """A row for every role, and every man without one who has something to do, of any call."""
    calling = Calling(plays)
    return tuple(_row(role, plays, columns, calling) for role in _roles(plays))


def _roles(plays: Sequence[Play]) -> tuple[_Role, ...]:
    found: dict[Key, list[Assignment | None]] = {}
    for i, play in enumerate(plays):
        for a in play.assignments:
            if play.in_line(a.man) or not (a.role or a.job or a.says or a.motion):
                continue
            key = ("role", a.role) if a.role else ("man", a.man)
            found.setdefault(key, [None] * len(plays))[i] = a
    return tuple(_Role(key, tuple(men)) for key, men in found.items())


def _row(role: _Role, plays: Sequence[Play], columns: Sequence[Column], calling: Calling) -> Row:
    cells = _cells(role, plays, columns)
    played, first = role.played, role.played[0]
    base = role.in_call[first]
    assert base is not None
    spread = _Spread(role, plays, calling, played)
    motion = spread.common(lambda a, _: task_of(a).motion)
    task = ToldJob(
        motion=motion,
        job=spread.words(first),
        looks=task_of(base).looks,
        says=task_of(base).says,
    )
    changes = [
        *_who(role, plays, columns, cells, calling),
        *(() if motion else spread.others("motion", lambda a, _: task_of(a).motion, "")),
        *spread.jobs(first),
        *spread.others("says", lambda a, _: " ".join(task_of(a).says), " ".join(task.says)),
    ]
    name = role.key[1].partition(SHARED)[0] if role.key[0] == "role" else ""
    return Row(cells, name, task, tuple(changes))


def _cells(role: _Role, plays: Sequence[Play], columns: Sequence[Column]) -> tuple[str, ...]:
    """Who plays the role in each column; where only a tag or motion has it, in the first such."""
    shown_by = {id(play): i for i, play in enumerate(plays)}
    plain = [role.in_call[shown_by[id(play)]] for _, play in columns]
    if not any(plain):
        for at, column in enumerate(columns):
            mine = (role.in_call[i] for i in calls_of(column, plays))
            plain[at] = next((a for a in mine if a is not None), None)
    return tuple(a.man if a is not None else NOBODY for a in plain)


def calls_of(column: Column, plays: Sequence[Play]) -> tuple[int, ...]:
    """The calls from the formations of a column, by index."""
    names = column[0].split(", ")
    return tuple(
        i
        for i, play in enumerate(plays)
        if play.call.formation in names or f"{play.call.formation} {play.call.side_word}" in names
    )


def _who(
    role: _Role,
    plays: Sequence[Play],
    columns: Sequence[Column],
    cells: Sequence[str],
    calling: Calling,
) -> list[JobChange]:
    """The calls in which another man than the cell's plays the role, or nobody does."""
    other: dict[str, list[int]] = {}
    counted: set[int] = set()
    for column, cell in zip(columns, cells, strict=True):
        for i in calls_of(column, plays):
            counted.add(i)
            now = role.in_call[i]
            man = now.man if now is not None else NOBODY
            if man != cell:
                other.setdefault(man, []).append(i)
    rest = set(range(len(plays))) - counted
    made = []
    for man, calls in other.items():
        free = rest | ({i for i in counted if not _cell_of(i, plays, columns, cells)})
        if man == NOBODY:
            scope = [i for i in role.played if i in counted]
            empty = {
                i
                for column, cell in zip(columns, cells, strict=True)
                if cell == NOBODY
                for i in calls_of(column, plays)
            } - set(scope)
            only, never = calling.label(scope, rest | empty), calling.label(calls, rest | empty)
            if len(only) <= len(never):
                made.append(JobChange("only", only, "", first=min(scope)))
            else:
                made.append(JobChange("man", never, NOBODY, first=min(calls)))
        else:
            label = calling.label(calls, free - set(calls))
            made.append(JobChange("man", label, man, first=min(calls)))
    return made


def _cell_of(i: int, plays: Sequence[Play], columns: Sequence[Column], cells: Sequence[str]) -> str:
    return next(
        (cell for col, cell in zip(columns, cells, strict=True) if i in calls_of(col, plays)), ""
    )


class _Spread:
    """One role over the calls that have it: what is the same, and the calls in which it is not."""

    def __init__(
        self, role: _Role, plays: Sequence[Play], calling: Calling, played: Sequence[int]
    ) -> None:
        self._role, self._plays, self._calling = role, plays, calling
        self._played = played
        self._absent = set(range(len(plays))) - set(played)

    def _of(self, i: int) -> Assignment:
        a = self._role.in_call[i]
        assert a is not None
        return a

    def common(self, fact: Callable[[Assignment, Play], str]) -> str:
        """The value that all calls share, else ""."""
        values = {fact(self._of(i), self._plays[i]) for i in self._played}
        return values.pop() if len(values) == 1 else ""

    def others(
        self, part: str, fact: Callable[[Assignment, Play], str], usual: str
    ) -> Iterable[JobChange]:
        """The calls in which a fact is another one than ``usual``, those alike together."""
        alike: dict[str, list[int]] = {}
        for i in self._played:
            value = fact(self._of(i), self._plays[i])
            if value != usual:
                alike.setdefault(value, []).append(i)
        for value, calls in alike.items():
            label = self._calling.label(calls, self._absent)
            yield JobChange(part, label, value, first=min(calls), men=self._men(calls))

    def _men(self, calls: Iterable[int]) -> tuple[str, ...]:
        """Who plays the role in these calls, each once."""
        return tuple(dict.fromkeys(self._of(i).man for i in calls))

    def _same(self, i: int, first: int) -> bool:
        return same_job(self._of(i), self._plays[i], self._of(first), self._plays[first])

    def words(self, first: int, calls: Sequence[int] | None = None) -> str:
        """The job of ``first`` in words that are true of all calls told the same."""
        alike = calls or [i for i in self._played if self._same(i, first)]
        play, a = self._plays[first], self._of(first)
        base = task_of(a).job
        if all(self._true(base, i, first) for i in alike):
            return told(base, play, a)
        return told(by_role(base, play, a), play, a)

    def _true(self, base: str, i: int, first: int) -> bool:
        """Whether the letters in ``base`` mean in call ``i`` what they mean in ``first``."""
        here, there = self._of(i), self._of(first)
        if here.job.strip().rstrip(".") == base:
            return True
        return by_role(base, self._plays[i], here) == by_role(base, self._plays[first], there)

    def jobs(self, first: int) -> Iterable[JobChange]:
        """The calls whose job, or what a look makes of it, is another one."""
        groups: list[list[int]] = []
        for i in self._played:
            if self._same(i, first):
                continue
            for group in groups:
                if self._same(i, group[0]) and self._same(group[0], i):
                    group.append(i)
                    break
            else:
                groups.append([i])
        for group in groups:
            label = self._calling.label(group, self._absent)
            looks = task_of(self._of(group[0])).looks
            words = self.words(group[0], group)
            yield JobChange("job", label, words, looks, min(group), self._men(group))


# The line.


def line(plays: Sequence[Play], words: Callable[[str], str], blocked: bool) -> LineJobs | None:
    """The five: what they do in the first call, and what other calls make of it.

    ``words`` says a protection by its name. ``blocked`` tells that the page has a table of who
    blocks whom for the first call: then only the other calls stand here.
    """
    calling, base = Calling(plays), plays[0]
    lines = [_line_of(play) for play in plays]
    if not any(protection or jobs for protection, jobs in lines):
        return None
    alike: dict[object, list[int]] = {}
    for i, one in enumerate(lines):
        if one != lines[0]:
            alike.setdefault(one, []).append(i)
    changes = tuple(
        JobChange(
            "line", calling.label(calls), _line_words(plays[calls[0]], base, lines), first=calls[0]
        )
        for calls in alike.values()
    )
    if blocked:
        said = tuple(Remark(a.man, says) for a in _linemen(base) if (says := _says(a)))
        return LineJobs("", "", said, changes) if changes or said else None
    jobs = lines[0][1]
    notes = tuple(Remark(" ".join(men), job) for men, job in _shared(_in_order(jobs, base)))
    if len(notes) == 1:
        return LineJobs(base.protection, notes[0].words, (), changes)
    return LineJobs(base.protection, "" if notes else words(base.protection), notes, changes)


_Told = tuple[str, tuple[tuple[str, str], ...]]
"""A protection's name, and each lineman's job by his place or letter."""


def _line_of(play: Play) -> _Told:
    run = play.kind is Kind.RUN
    jobs = []
    for a in _linemen(play):
        if a.job or a.says:
            said = by_role(_sentence(a), play, a) if run else _sentence(a)
            said = told(said, play, a)
            jobs.append((place_of(play.man(a.man), play) if run else a.man, said))
    return play.protection, tuple(sorted(jobs))


def _linemen(play: Play) -> list[Assignment]:
    """The line's assignments from left to right."""
    men = (a for a in play.assignments if play.in_line(a.man))
    return sorted(men, key=lambda a: play.man(a.man).snap.x)


def _sentence(a: Assignment) -> str:
    return " ".join(filter(None, (sentence(a.job), _says(a))))


def _says(a: Assignment) -> str:
    return " ".join(sentence(line) for line in dict.fromkeys(a.says))


def _shared(jobs: Iterable[tuple[str, str]]) -> list[tuple[list[str], str]]:
    """Jobs with all who have them."""
    together: dict[str, list[str]] = {}
    for who, job in jobs:
        together.setdefault(job, []).append(who)
    return [(men, job) for job, men in together.items()]


def _in_order(jobs: Iterable[tuple[str, str]], play: Play) -> list[tuple[str, str]]:
    """The jobs of the line from left to right as it stands in ``play``."""
    at = {man.label: man.snap.x for man in play.men}
    at |= {place_of(play.man(a.man), play): at[a.man] for a in _linemen(play)}
    return sorted(jobs, key=lambda one: at[one[0]])


def _line_words(play: Play, base: Play, lines: Sequence[_Told]) -> str:
    """What the line does in a call that is not as the first: those who have another job."""
    protection, jobs = _line_of(play)
    before = dict(lines[0][1]) if play.kind is Kind.RUN else {}
    changed = [one for one in jobs if before.get(one[0]) != one[1]]
    name = f"{protection} protection. " if protection != base.protection else ""
    look = play.defence
    against = f"Against {look.name}: " if look is not None and base.defence is None else ""
    # where the page has a table of fronts instead, no rule stands in full in the row
    known = {job for _, job in lines[0][1]} if base.defence is None else set()
    brief = [(who, _head(job) if job in known else job) for who, job in changed]
    groups = _shared(_in_order(brief, play))
    if len(groups) == 1 and len(groups[0][0]) == len(jobs):
        return f"{name}{against}{groups[0][1]}"
    return name + against + " ".join(f"{_listed(men)}: {job}" for men, job in groups)


def _listed(men: Sequence[str]) -> str:
    """Letters side by side, places with commas."""
    return (", " if any(" " in man for man in men) else " ").join(men)


def _head(job: str) -> str:
    """A rule that stands in full in the row already: "Man: the rusher on you" is "Man"."""
    head, colon, _ = job.partition(":")
    return f"{head}." if colon else job
