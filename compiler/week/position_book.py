"""A man's own week: where he stands, what he does in each call, and what came and went."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace

from stemline.describe.phrases import alignment, at_last, numbered, plain, target
from stemline.football.play import Assignment, Man, Play
from stemline.football.players import Position
from stemline.week.week_values import AgainstLooks, CallEntry, Plan, Week

_LINE = (Position.CENTRE, Position.GUARD, Position.TACKLE)
_BACKS = (Position.BACK, Position.FULLBACK, Position.SLOTBACK)
_RECEIVERS = (
    Position.WIDEOUT, Position.SLOT, Position.SLOTBACK, Position.TIGHT_END, Position.WING
)  # fmt: skip
_GROUPS = {"linemen": _LINE, "backs": _BACKS, "receivers": _RECEIVERS}
"""Groups that practise together, beside each position by its own name: common practice, no
published source."""


@dataclass(frozen=True)
class OwnPlace:
    """Where he lines up, in words, and the formations that put him there."""

    words: str
    formations: tuple[str, ...]


@dataclass(frozen=True)
class AlikeCalls:
    """Calls in which he starts from one place and goes one way; the first is drawn."""

    calls: tuple[CallEntry, ...]


@dataclass(frozen=True)
class OwnTask:
    """What he is told: his move before the snap ("" without one), his job, what a look or key makes
    of it (each with the words), and the coach's own words."""

    motion: str
    job: str
    looks: tuple[tuple[str, str], ...]
    says: tuple[str, ...]


@dataclass(frozen=True)
class OwnJob:
    """One task, and the calls in which it is his, those that are one picture to him together;
    ``new`` where no call of the week before told it to him."""

    task: OwnTask
    alike: tuple[AlikeCalls, ...]
    new: bool = False


@dataclass(frozen=True)
class OwnKill:
    """Calls of one concept that become ``to`` at the line ``when`` that is seen, and his job
    then."""

    calls: tuple[CallEntry, ...]
    to: str
    when: str
    job: str


@dataclass(frozen=True)
class OwnBook:
    """A man's book. ``came`` and ``went`` are calls he is in that the week before, ``since``, had
    not or had alone; ``since`` is "" for the first week. ``off`` counts calls that he does not play
    in. ``killed`` is what his calls become at the line."""

    man: str
    places: tuple[OwnPlace, ...]
    jobs: tuple[OwnJob, ...]
    since: str
    came: tuple[CallEntry, ...]
    went: tuple[str, ...]
    off: int
    killed: tuple[OwnKill, ...] = ()


def men_of(plan: Plan, wanted: Iterable[str] = ()) -> tuple[str, ...]:
    """The letters of all who play, in the order in which the plan's calls first line them up; with
    ``wanted`` those of these letters, positions or groups ("linemen", "backs", "receivers").

    Raises KeyError with the word that is none of them.
    """
    men: dict[str, set[Position]] = {}
    for call in plan.calls:
        for man in plan.plays[call].men:
            men.setdefault(man.label, set()).add(man.position)
    asked = tuple(wanted)
    if not asked:
        return tuple(men)
    found: set[str] = set()
    for word in asked:
        known = {man for man in men if _means(word, man, men[man])}
        if not known:
            raise KeyError(word)
        found |= known
    return tuple(man for man in men if man in found)


def _means(word: str, man: str, positions: set[Position]) -> bool:
    said = word.casefold()
    if said == man.casefold():
        return True
    if said in _GROUPS:
        return bool(positions & set(_GROUPS[said]))
    return any(said in (p.value, f"{p.value}s") for p in positions)


def own_book(week: Week, man: str) -> OwnBook:
    """The book of a man by his letter."""
    plan = week.plan
    mine = [week.faced(call) for call in plan.calls if plays_in(plan.plays[call], man)]
    # By their numbers, as on his wrist: to him nothing changes where the caller moves a call.
    mine.sort(key=lambda entry: entry.number or 0)
    before = plan.before
    had = set(before.calls) if before is not None else set()
    went: tuple[str, ...] = ()
    jobs = own_jobs(mine, man, week.against)
    if before is not None:
        known = set(plan.calls)
        gone = (call for call in before.calls if call not in known)
        went = tuple(call for call in gone if plays_in(before.plays[call], man))
        theirs = (before.plays[call] for call in before.calls)
        told = {own_task(play, man) for play in theirs if plays_in(play, man)}
        jobs = tuple(replace(job, new=not told & _rules(job, plan, man)) for job in jobs)
    return OwnBook(
        man=man,
        places=_places(mine, man),
        jobs=jobs,
        since=before.name if before is not None else "",
        came=tuple(e for e in mine if e.call not in had) if before is not None else (),
        went=went,
        off=len(plan.calls) - len(mine),
        killed=own_kills(mine, man),
    )


def _rules(job: OwnJob, plan: Plan, man: str) -> set[OwnTask]:
    """What the season's book tells him in the calls of a job: another front alone is no new job."""
    return {own_task(plan.plays[e.call], man) for alike in job.alike for e in alike.calls}


def plays_in(play: Play, man: str) -> bool:
    """Whether a man is on the field in a call."""
    return any(each.label == man for each in play.men)


def _places(entries: Iterable[CallEntry], man: str) -> tuple[OwnPlace, ...]:
    """Each place once, by what is said of it; a motion is named where he begins it elsewhere."""
    found: dict[str, dict[str, str]] = {}
    for entry in entries:
        call = entry.play.call
        him = entry.play.man(man)
        words = ". ".join((alignment(him, entry.play), *him.says))
        stands = f"{call.formation} {call.side_word.title()}"
        moves = call.motion if him.at != him.snap else ""
        found.setdefault(words, {})[" ".join(filter(None, (stands, moves)))] = stands
    return tuple(
        OwnPlace(words, tuple(w for w, plain in where.items() if w == plain or plain not in where))
        for words, where in found.items()
    )


def own_jobs(
    entries: Iterable[CallEntry], man: str, against: AgainstLooks | None = None
) -> tuple[OwnJob, ...]:
    """Calls by what he is told, the task of most calls first; calls that he runs alike together.
    ``against`` are runs against looks, of which he is told where his job is another one."""
    found: dict[OwnTask, dict[object, list[CallEntry]]] = {}
    for entry in entries:
        met = against.get(entry.call, ()) if against is not None else ()
        alike = found.setdefault(own_task(entry.play, man, met), {})
        alike.setdefault(_way(entry.play, man), []).append(entry)
    jobs = [
        OwnJob(task, tuple(AlikeCalls(_plainest_first(calls)) for calls in ways.values()))
        for task, ways in found.items()
    ]
    return tuple(sorted(jobs, key=lambda job: -sum(len(a.calls) for a in job.alike)))


def own_kills(entries: Iterable[CallEntry], man: str) -> tuple[OwnKill, ...]:
    """What he does where a call becomes another at the line, those with one job together."""
    found: dict[tuple[str, str, str], list[CallEntry]] = {}
    for entry in entries:
        for becoming in entry.play.becomes:
            task = own_task(becoming.play, man)
            looks = (f"{look[:1].upper()}{look[1:]}: {plain(words)}." for look, words in task.looks)
            job = " ".join(filter(None, (task.motion and f"{task.motion}.", task.job, *looks)))
            shown = becoming.play.defence
            if shown is not None and shown.name != becoming.when:
                job = f"Against {shown.name}: {job}"
            found.setdefault((becoming.words, becoming.when, job), []).append(entry)
    return tuple(OwnKill(tuple(calls), *said) for said, calls in found.items())


def _plainest_first(calls: list[CallEntry]) -> tuple[CallEntry, ...]:
    """The one with the least said in it is drawn, whatever its number is this week: what a man
    knows the others by, and the picture that he had last week."""

    def said(entry: CallEntry) -> tuple[int, int, str]:
        call = entry.play.call
        return len(call.tags) + bool(call.motion), len(call.spoken), call.spoken

    first = min(calls, key=said)
    return first, *(each for each in calls if each is not first)


def own_task(play: Play, man: str, against: Iterable[tuple[str, Play]] = ()) -> OwnTask:
    """What a play tells one of its men; to the quarterback it tells his feet and reads too.
    ``against`` is the same call against looks: one that gives him another job is named with it."""
    task = _assignment(play, man)
    him = play.man(man)
    passer = him.position is Position.QUARTERBACK
    others = ((look, _assignment(other, man)) for look, other in against)
    job = task.job.strip() if task is not None else ""
    looks = tuple((b.looks, b.job.strip()) for b in task.branches) if task is not None else ()
    if passer:
        # The job of one who hands it or throws it has his feet in it already.
        told = (words for words in _reading(play) if words.casefold() not in job.casefold())
        job = " ".join(filter(None, (job, *told)))
        looks += tuple((f"alert, {a.when}", target(a.target, a.men)) for a in play.alerts)
        if play.pressure:
            looks += (("pressure", numbered(play.pressure)),)
        looks += tuple(
            (h.given or "one more than is blocked", f"throw {target(h.throws, h.men)}")
            for h in play.hot
        )
    if task is not None:
        looks += tuple(
            (f"against {look}", other.job.strip())
            for look, other in others
            if other is not None and other.job != task.job
        )
    return OwnTask(
        motion=task.motion.words if task is not None and task.motion is not None else "",
        job=job or "No job of his own in the text: ask your coach.",
        looks=looks,
        says=tuple(dict.fromkeys(task.says)) if task is not None else (),
    )


def _reading(play: Play) -> Iterable[str]:
    if play.feet and play.reads:
        feet = "; then ".join(step.words for step in play.feet)
        yield f"{feet[:1].upper()}{feet[1:]}."
    if play.pick:
        yield f"Pick the side: {play.pick}."
    if play.reads:
        last = f", then {at_last(play)}" if play.last else ""
        yield f"Reads: {numbered(play.reads)}{last}."


def _assignment(play: Play, man: str) -> Assignment | None:
    return next((a for a in play.assignments if a.man == man), None)


def _way(play: Play, man: str) -> object:
    """Where he starts and how he goes, to the yard: what makes two pictures one to him."""
    him: Man = play.man(man)
    task = _assignment(play, man)
    points = [him.at, him.snap]
    if task is not None:
        paths = (task.path, task.climb, *(branch.path for branch in task.branches))
        points += [leg.to for path in paths if path is not None for leg in path.legs]
    return play.kind, tuple((round(p.x), round(p.y)) for p in points)
