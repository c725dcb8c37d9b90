"""What one call changes against another, man by man."""

from __future__ import annotations

from collections.abc import Iterator

from stemline.book.content.block_table import place_of
from stemline.book.content.job_table import by_role, role_players, same_job
from stemline.book.content.letters import beside, told
from stemline.book.content.page import Remark
from stemline.football.play import Assignment, Play


def changes(play: Play, base: Play) -> tuple[Remark, ...]:
    """What is other in ``play`` than in ``base``: each man and role, those alike together."""
    by_words: dict[str, list[str]] = {}
    for now in play.assignments:
        if play.in_line(now.man) or not (now.role or now.job or now.motion):
            continue
        before = base.runs(now.role) if now.role else _man(now.man, base)
        moved = _moved(now, before, base)
        other = before is None or not same_job(now, play, before, base)
        if other or moved or before is None or before.man != now.man:
            parts = (moved, told(now.job, play, now) if other else "", *_reacts(now, before))
            words = ". ".join(part.rstrip(".") for part in parts if part)
            role = beside(now.man, now.role_said)
            by_words.setdefault(words, []).append(f"{now.man} {role}".rstrip())
    for place, words in _line_changes(play, base):
        by_words.setdefault(words, []).append(place)
    gone = [a.role_said for a in role_players(base) if play.runs(a.role) is None]
    notes = (Remark(", ".join(men), words) for words, men in by_words.items())
    return (*notes, *((Remark("nobody plays", ", ".join(dict.fromkeys(gone))),) if gone else ()))


def new_jobs(play: Play, base: Play) -> tuple[str, ...]:
    """The letters of the men who do something else in ``play`` than in ``base``, or have no job
    there; linemen have none of their own to be told by."""
    before = {a.man: a for a in base.assignments}
    return tuple(
        now.man
        for now in play.assignments
        if not play.in_line(now.man) and _new(now, before.get(now.man), play, base)
    )


def _new(now: Assignment, before: Assignment | None, play: Play, base: Play) -> bool:
    if before is None:
        return True
    moves = (now.motion.words if now.motion else "", before.motion.words if before.motion else "")
    return moves[0] != moves[1] or not same_job(now, play, before, base)


def _man(label: str, play: Play) -> Assignment | None:
    """What a man without a role does in the other call, where he has none there either."""
    return next((a for a in play.assignments if a.man == label and not a.role), None)


def _reacts(now: Assignment, before: Assignment | None) -> Iterator[str]:
    """What a look makes of a job, where the first call has it otherwise."""
    known = {(b.looks, b.job) for b in before.branches} if before is not None else set()
    yield from (
        f"Against {b.looks}: {b.job}" for b in now.branches if (b.looks, b.job) not in known
    )


def _line_changes(play: Play, base: Play) -> Iterator[tuple[str, str]]:
    """Linemen whose block is another one: by their place where both calls have a playside, since
    sides change with the call, else by letter."""
    sided = play.toward is not None and base.toward is not None

    def name(label: str, of: Play) -> str:
        return place_of(of.man(label), of) if sided else label

    before = {name(a.man, base): a for a in base.assignments if base.in_line(a.man)}
    for now in play.assignments:
        if not play.in_line(now.man) or not now.job:
            continue
        old = before.get(name(now.man, play))
        if old is None or by_role(now.job, play, now) != by_role(old.job, base, old):
            yield name(now.man, play), told(now.job, play, now).rstrip(".")


def _moved(now: Assignment, before: Assignment | None, base: Play) -> str:
    """The words of a motion that the first call has not, or that he has there and not here."""
    words = now.motion.words if now.motion else ""
    there = before.motion.words if before is not None and before.motion else ""
    if words:
        return words if words != there else ""
    his = next((a.motion for a in base.assignments if a.man == now.man), None)
    return "no motion" if his is not None or there else ""
