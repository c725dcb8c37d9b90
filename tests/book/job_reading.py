"""A page of jobs read as a player reads it: his call and his letter in, his job out.

Nothing of the page's maker is used. A label is taken word by word for what it says of a call, a
row is followed to its column, and what the call's exceptions say stands in the place of the row.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from stemline.book.content.job_rows import JobChange, Row
from stemline.book.content.kinds.concept_page import ConceptPage
from stemline.football.conditions import LookWord
from stemline.football.play import Assignment, Man, Play


@dataclass(frozen=True)
class Job:
    """What a man is told for one call, in words: each look with what it makes of the job."""

    motion: str
    job: str
    looks: tuple[tuple[str, str], ...]
    says: tuple[str, ...]


# Which calls a label names.


def holds(label: str, play: Play, plays: Sequence[Play]) -> bool:
    """Whether a label ("Trey with Nod, Doubles left") speaks of a call of the page."""
    return any(_term(term, play, plays) for term in label.split(", "))


def _term(term: str, play: Play, plays: Sequence[Play]) -> bool:
    if term == play.call.spoken:
        return True
    front, *without = re.split(r"(?:^| )without ", term.removeprefix("called "))
    if not all(_without(words, play) for words in without):
        return False
    if not front:
        return True
    head, _, tags = front.partition(" with ")
    if tags:
        return _tags(tags, play) and _front(head, play, plays) is True
    found = _front(head, play, plays)
    return found if found is not None else _tags(head, play)


def _without(words: str, play: Play) -> bool:
    if words == "motion":
        return not play.call.motion
    return not play.call.tags if words == "tag" else words not in play.call.tags


def _tags(words: str, play: Play) -> bool:
    return all(tag.removeprefix("tag ") in play.call.tags for tag in words.split(" + "))


def _front(words: str, play: Play, plays: Sequence[Play]) -> bool | None:
    """Formation, side and motion; None where the words are none of these."""
    call = play.call
    known = {
        "formation": ({p.call.formation for p in plays}, call.formation),
        "side": ({p.call.side.word for p in plays}, call.side.word),
        "motion": ({p.call.motion for p in plays if p.call.motion}, call.motion),
    }
    true = True
    for kind, (names, mine) in known.items():
        for name in sorted(names, key=len, reverse=True):
            for said in (f"{kind} {name}", name):
                if words == said or words.startswith(f"{said} "):
                    true = true and name == mine
                    words = words[len(said) :].strip()
                    break
            else:
                continue
            break
    return None if words else true


# Rows.


def jobs(page: ConceptPage, play: Play, plays: Sequence[Play]) -> dict[str, tuple[str, Job]]:
    """Each man's role and job in ``play`` as the rows of the table give them, by letter.

    A letter that two rows give is an AssertionError: a player would not know which is his.
    """
    found: dict[str, tuple[str, Job]] = {}
    for row in page.rows:
        for man in _men(page, row, play, plays):
            assert man not in found, f"{man} stands in two rows"
            found[man] = (row.role, _job(row, play, plays))
    return found


def _men(page: ConceptPage, row: Row, play: Play, plays: Sequence[Play]) -> Iterator[str]:
    cell = _cell(page, row, play)
    for change in row.but:
        if change.part == "man" and holds(change.calls, play, plays):
            cell = change.words
        if change.part == "only" and not holds(change.calls, play, plays):
            cell = "–"
    yield from (man for man in cell.split() if man != "–")


def _cell(page: ConceptPage, row: Row, play: Play) -> str:
    if len(page.columns) == 1:
        return row.men[0]
    return row.men[_column(page.columns, play)]


def _column(names: Sequence[str], play: Play) -> int:
    call = play.call
    wanted = {call.formation, f"{call.formation} {call.side.word}"}
    return next(i for i, name in enumerate(names) if wanted & set(name.split(", ")))


def _job(row: Row, play: Play, plays: Sequence[Play]) -> Job:
    mine = [change for change in row.but if holds(change.calls, play, plays)]
    for part in ("motion", "job", "says"):
        assert sum(change.part == part for change in mine) <= 1, f"two say his {part}"
    by_part = {change.part: change for change in mine}
    job, looks = row.task.job, row.task.looks
    if "job" in by_part:
        job, looks = by_part["job"].words, by_part["job"].looks
    decided = [note.words for note in looks if set(note.label.split(", ")) <= set(play.against)]
    says = row.task.says
    if "says" in by_part:
        says = (by_part["says"].words,)
    motion = by_part["motion"].words if "motion" in by_part else row.task.motion
    if decided and "job" not in by_part:
        return Job(motion, decided[0], (), says)
    left = (n for n in looks if not _shut_out(n.label, play))
    return Job(motion, job, tuple((n.label, n.words) for n in left), says)


def _shut_out(label: str, play: Play) -> bool:
    """Whether the look that the play stands against shows the opposite of a word of the label.

    A look may show neither: its corners at two depths are neither press nor off.
    """
    asked = [LookWord(word) for word in label.split(", ")] if not label.startswith("if ") else ()
    return any(word.opposite.value in play.against for word in asked)


# The line.


def line_jobs(page: ConceptPage, play: Play, plays: Sequence[Play]) -> dict[str, str]:
    """Each lineman's words in ``play``, by letter, as row, exceptions and fronts give them."""
    base = page.base.play
    told = dict(_base_line(page, base))
    notes = [c for c in page.line.but if holds(c.calls, play, plays)] if page.line else []
    assert len(notes) <= 1, "two say what the line does"
    if page.fronts is not None:
        told = {_place(base.man(man), base): _placed(words, base) for man, words in told.items()}
        told = {m.label: told.get(_place(m, play), "") for m in _line(play)}
    if notes:
        told |= _changed_line(page, notes[0], play)
    return told


_PROTECTION = " protection. "
"""What stands behind the name of one."""


def protection(page: ConceptPage, play: Play, plays: Sequence[Play]) -> str:
    """The protection's name in ``play``."""
    if page.line is None:
        return ""
    for change in page.line.but:
        first = change.words.partition(_PROTECTION)[0]
        if holds(change.calls, play, plays) and first in {p.protection for p in plays}:
            return first
    return page.line.protection


def _base_line(page: ConceptPage, base: Play) -> Iterator[tuple[str, str]]:
    if page.fronts is not None:
        assert base.defence is not None
        rows = (r for r in page.fronts.rows if base.defence.name in r.looks.split(", "))
        blocks = next(rows).blocks
        said = {n.label: n.words for n in page.line.jobs} if page.line is not None else {}
        yield from (
            (man, f"{words}. {said.get(man, '')}".strip())
            for (man, _), words in zip(page.fronts.men, blocks, strict=True)
            if words != "–" and base.man(man).interior
        )
    elif page.line is not None:
        for note in page.line.jobs:
            yield from ((man, note.words) for man in note.label.split())
        if page.line.job:
            yield from ((man.label, page.line.job) for man in _line(base))


def _placed(words: str, base: Play) -> str:
    """A front's words with linemen by their places, as the table's head names them."""
    for man in _line(base):
        words = re.sub(rf"\b(with|and|Help) {man.label}\b", rf"\1 {_place(man, base)}", words)
    return words


def _changed_line(page: ConceptPage, change: JobChange, play: Play) -> Iterator[tuple[str, str]]:
    words = change.words
    name, dot, rest = words.partition(_PROTECTION)
    if dot and name == play.protection and ":" not in name:
        words = rest
    words = re.sub(r"^Against [^:]+: ", "", words)
    full = dict(_heads(page))
    names = {_place(man, play): man.label for man in _line(play)}
    names |= {man.label: man.label for man in _line(play)}
    who = "|".join(sorted(map(re.escape, names), key=len, reverse=True))
    parts = re.split(rf"(?:^|(?<=\. ))((?:(?:{who})(?:, | |(?=:)))+): ", words)
    if len(parts) == 1:
        return iter([(man.label, full.get(words, words)) for man in _line(play)])
    told = []
    for men, job in zip(parts[1::2], parts[2::2], strict=True):
        for man in re.findall(who, men):
            told.append((names[man], full.get(job.strip(), job.strip())))
    return iter(told)


def _heads(page: ConceptPage) -> Iterator[tuple[str, str]]:
    """Rules that are called by their first word once they stand in full."""
    if page.line is not None and page.fronts is None:
        for words in (page.line.job, *(note.words for note in page.line.jobs)):
            if ":" in words:
                yield f"{words.partition(':')[0]}.", words


def _line(play: Play) -> tuple[Man, ...]:
    return tuple(man for man in play.men if man.interior)


def _place(man: Man, play: Play) -> str:
    """ "backside guard": a lineman from the side that the run goes to."""
    role = play.assignment(man.label).role
    if role or man.snap.x == 0:
        return role or man.position.value
    if play.toward is None:
        return f"{'right' if man.snap.x > 0 else 'left'} {man.position.value}"
    side = "playside" if man.snap.x * play.toward.value > 0 else "backside"
    return f"{side} {man.position.value}"


# What the play itself says.


def told(task: Assignment) -> Job:
    """The job of one assignment in words."""
    return Job(
        task.motion.words if task.motion else "",
        task.job.strip().rstrip("."),
        tuple((b.looks, b.job.strip().rstrip(".")) for b in task.branches),
        tuple(dict.fromkeys(task.says)),
    )


def line_told(task: Assignment) -> str:
    parts = [task.job.strip(), *dict.fromkeys(line.strip() for line in task.says)]
    return " ".join(part if part[-1] in ".!?" else f"{part}." for part in parts if part)


def same_words(page: str, play_says: str, play: Play) -> bool:
    """Whether the page's words are the play's, a man's letter standing for his role or place.

    The marks of the defence's letters are judged apart.
    """
    pattern = re.sub(
        r"\b[A-Z][A-Z0-9]?\b",
        lambda m: _either(m[0], play),
        re.escape(play_says).replace(r"\ ", " "),
    )
    return re.fullmatch(pattern, re.sub(r"\[([A-Z][A-Z0-9]?)\]", r"\1", page)) is not None


def _either(letter: str, play: Play) -> str:
    names = [letter]
    for task in play.assignments:
        if task.man == letter:
            names += [task.role] if task.role else []
            names.append(_place(play.man(letter), play))
    return f"(?:{'|'.join(map(re.escape, names))})"
