"""Who plays which role in each formation, and what one call changes against another.

Roles stay, letters move: a job that names a man ("off Y's heels") is the same job when the man
in that role wears another letter. So jobs are compared with letters put back to roles.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from stemline.book.fronts import place_of
from stemline.book.model import Casting, Note, Part
from stemline.football.field import Side
from stemline.football.play import Assignment, Play

NOBODY = "–"

_Cast = tuple[tuple[str, str, str], ...]
"""Role, letter and job of every man who has a role."""

Column = tuple[str, Play]
"""Formations that cast a concept alike, and the call that shows how."""


def role_players(play: Play) -> tuple[Assignment, ...]:
    """The assignments of men who have a role, linemen left out, in the play's order."""
    return tuple(a for a in play.assignments if a.role and not play.man(a.man).interior)


def casting(columns: tuple[Column, ...]) -> Casting:
    """The casting table of `formation_columns`, whose first is the base."""
    base = columns[0][1]
    roles = dict.fromkeys(a.role for _, play in columns for a in role_players(play))
    rows = tuple((role, tuple(_part(role, play, base) for _, play in columns)) for role in roles)
    return Casting(tuple(name for name, _ in columns), rows)


def changes(play: Play, base: Play) -> tuple[Note, ...]:
    """What is other in ``play`` than in ``base``: each man and role, those alike together."""
    by_words: dict[str, list[str]] = {}
    for now in role_players(play):
        before = base.runs(now.role)
        moved = _moved(now, before)
        job = now.job if before is None or _job(now, play) != _job(before, base) else ""
        if job or moved or before is None or before.man != now.man:
            words = ". ".join(part.rstrip(".") for part in (moved, job) if part)
            by_words.setdefault(words, []).append(f"{now.man} {now.role}")
    for place, words in _line_changes(play, base):
        by_words.setdefault(words, []).append(place)
    gone = [a.role for a in role_players(base) if play.runs(a.role) is None]
    notes = (Note(", ".join(men), words) for words, men in by_words.items())
    return (*notes, *((Note("nobody plays", ", ".join(gone)),) if gone else ()))


def _line_changes(play: Play, base: Play) -> Iterator[tuple[str, str]]:
    """Linemen whose block is another one, by their place, since sides change with the call."""
    if play.toward is None or base.toward is None:
        return
    before = {place_of(man, base): base.assignment(man.label) for man in base.men if man.interior}
    for man in play.men:
        if not man.interior:
            continue
        now, old = play.assignment(man.label), before.get(place_of(man, play))
        if now.job and (old is None or _job(now, play) != _job(old, base)):
            yield place_of(man, play), now.job.rstrip(".")


def tag_changes(plays: tuple[Play, ...]) -> dict[str, tuple[Note, ...]]:
    """Role → what each tag makes of its job, from calls that differ by that one tag alone."""
    plain = {_dress(p): p for p in plays if not p.call.tags}
    found: dict[str, dict[str, str]] = {}
    for play in plays:
        before = plain.get(_dress(play))
        if len(play.call.tags) != 1 or before is None:
            continue
        for now in role_players(play):
            old = before.runs(now.role)
            if old is None:
                continue
            who = f"{now.man} plays it" if now.man != old.man else ""
            job = now.job if _job(now, play) != _job(old, before) else ""
            if who or job:
                words = ". ".join(part for part in (who, job) if part)
                found.setdefault(now.role, {}).setdefault(play.call.tags[0], words)
    return {
        role: tuple(Note(tag, job) for tag, job in by_tag.items()) for role, by_tag in found.items()
    }


def formation_columns(plays: tuple[Play, ...]) -> tuple[Column, ...]:
    """One play a formation, the one with fewest tags; a side of its own where its sides differ.

    Formations cast alike share a column; its name holds them all.
    """
    chosen: dict[tuple[str, Side], Play] = {}
    for play in plays:
        key = (play.call.formation, play.call.side)
        if key not in chosen or len(play.call.tags) < len(chosen[key].call.tags):
            chosen[key] = play
    sides: dict[str, set[_Cast]] = {}
    for (formation, _), play in chosen.items():
        sides.setdefault(formation, set()).add(_cast(play))
    names: dict[_Cast, list[str]] = {}
    first: dict[_Cast, Play] = {}
    for (formation, side), play in chosen.items():
        name = formation if len(sides[formation]) == 1 else f"{formation} {side.word}"
        first.setdefault(_cast(play), play)
        alike = names.setdefault(_cast(play), [])
        if name not in alike:
            alike.append(name)
    return tuple((", ".join(names[cast]), play) for cast, play in first.items())


def _cast(play: Play) -> _Cast:
    return tuple((a.role, a.man, _job(a, play)) for a in role_players(play))


def formation_changes(role: str, columns: tuple[Column, ...]) -> tuple[Note, ...]:
    """Where the role's job is another one than in the first column that has the role."""
    players = [(name, play, play.runs(role)) for name, play in columns]
    there = [(name, play, a) for name, play, a in players if a is not None]
    if not there:
        return ()
    first = _job(there[0][2], there[0][1])
    return tuple(Note(name, a.job) for name, play, a in there[1:] if _job(a, play) != first)


def _part(role: str, play: Play, base: Play) -> Part:
    now, before = play.runs(role), base.runs(role)
    if now is None:
        return Part(NOBODY, "")
    same = before is not None and _job(now, play) == _job(before, base)
    return Part(now.man, "" if same else now.job)


def _job(assignment: Assignment, play: Play) -> str:
    """The job with every letter replaced by the role or place that man has in this call."""
    roles = {a.man: a.role for a in role_players(play)}
    if play.toward is not None:
        roles |= {man.label: place_of(man, play) for man in play.men if man.interior}
    return re.sub(r"\b[A-Z][A-Z0-9]?\b", lambda m: roles.get(m[0], m[0]), assignment.job)


def _moved(now: Assignment, before: Assignment | None) -> str:
    """The words of a motion that the first call has not, or that the same man no longer has."""
    if now.motion and (before is None or now.motion.words != _motion(before)):
        return now.motion.words
    if before is not None and before.motion and not now.motion and before.man == now.man:
        return "no motion"
    return ""


def _motion(assignment: Assignment) -> str:
    return assignment.motion.words if assignment.motion else ""


def _dress(play: Play) -> tuple[str, Side, str]:
    return (play.call.formation, play.call.side, play.call.motion)
