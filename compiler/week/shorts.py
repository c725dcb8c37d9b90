"""Calls as short as a sleeve needs them: the coach's own words first, else made here.

What he shortens is shortened wherever it stands. Where that is still too long, each part of the
call is cut by one rule, and two parts of one week never come out the same.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence

from stemline.diagnostics.catalogue.weeks import E994
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.football.play import Call, Play
from stemline.source import Span
from stemline.week.killed_rows import bare_call, killed_by_book
from stemline.week.week_values import Plan

_LETTERS = 4
"""Letters of a word that are left of a name of one word."""


def shortened(plan: Plan, room: int) -> dict[str, str]:
    """Each call of the plan in at most ``room`` letters where that can be, never two alike."""
    own = {name.casefold(): short for name, short in plan.shorts}
    # By their names, not their places: a call that is moved is shortened as before.
    spoken = {c: bare_call(plan.plays[c]) for c in sorted((*plan.calls, *plan.practised))}
    ends = {c: _killed(plan.plays[c]) for c in spoken}
    parts = _automatic([part for call in spoken.values() for part in _parts(call)], own)
    _, cut = _fitted(spoken, own, parts, room, ends)
    # A name that one call has no room for is cut in all: a card has one way to write it.
    return _fitted(spoken, {**{key: parts[key] for key in cut}, **own}, parts, room, ends)[0]


def _killed(play: Play) -> str:
    """What stands behind a call that becomes another, as the call sheet prints it: ` > Stick`."""
    return "".join(f" > {to}" for to in dict.fromkeys(to for to, _ in killed_by_book(play)))


def _fitted(
    spoken: Mapping[str, Call],
    own: Mapping[str, str],
    parts: Mapping[str, str],
    room: int,
    ends: Mapping[str, str],
) -> tuple[dict[str, str], set[str]]:
    """Each call in the first of its ways that fits and is no other call's, and the names that are
    cut for that."""
    made: dict[str, str] = {}
    taken: set[str] = set()
    cut: set[str] = set()
    for call, names in spoken.items():
        his = [own[call.casefold()]] if call.casefold() in own else []
        whole: list[tuple[str, tuple[str, ...]]] = [(short, ()) for short in his]
        said = names.spoken if ends[call] else call
        cuts = [(_with(said, names, own), ()), *_shorter(said, names, own, parts)]
        tries = [*whole, *((short + ends[call], keys) for short, keys in cuts)]
        free = (t for t in tries if len(t[0]) <= room and t[0].casefold() not in taken)
        best, shorter = next(free, tries[-1])
        if best.casefold() in taken:
            best, shorter = call, ()
        taken.add(best.casefold())
        made[call] = best
        cut |= set(shorter)
    return made, cut


def _parts(call: Call) -> list[str]:
    return [p for p in (call.formation, call.motion, call.concept, *call.tags) if p]


def _with(spoken: str, call: Call, shorts: Mapping[str, str]) -> str:
    """A call with its parts shortened; one that has a name of its own keeps it."""
    parts = [call.formation, call.side_word.title(), call.motion, call.concept, *call.tags]
    words = " ".join(part for part in parts if part)
    if words.casefold() != spoken.replace(" + ", " ").casefold():
        return shorts.get(spoken.casefold(), spoken)
    sides = {call.side_word: call.side_word[0].upper()} if shorts else {}
    told = [sides.get(p.casefold()) or shorts.get(p.casefold(), p) for p in parts if p]
    return " ".join(told)


def _shorter(
    spoken: str, call: Call, own: Mapping[str, str], made: Mapping[str, str]
) -> Iterator[tuple[str, tuple[str, ...]]]:
    """The call with more and more of its parts shortened, what saves most first, and which these
    are; all of them last, the side too."""
    whole = {part.casefold(): own.get(part.casefold(), part) for part in _parts(call)}
    saving = {key: len(words) - len(made[key]) for key, words in whole.items()}
    cut: list[str] = []
    for key in sorted(saving, key=lambda key: (-saving[key], key)):
        whole[key] = made[key]
        cut.append(key)
        yield _with(spoken, call, whole), tuple(cut)


def _automatic(names: Sequence[str], own: Mapping[str, str]) -> dict[str, str]:
    """A short name for each name, none of them another's."""
    made = dict(own)
    taken = {short.casefold() for short in own.values()}
    for name in dict.fromkeys(names):
        if name.casefold() in made:
            continue
        for short in _ways(name):
            if short.casefold() not in taken:
                break
        made[name.casefold()] = short
        taken.add(short.casefold())
    return made


def _ways(name: str) -> Iterator[str]:
    """Ways to shorten a name, the shortest first: initials, then more letters of each word."""
    words = name.split()
    if len(words) > 1:
        yield "".join(word[0].upper() for word in words)
        for letters in range(2, max(map(len, words)) + 1):
            yield " ".join(word[:letters] for word in words)
    else:
        yield from (name[:letters] for letters in range(_LETTERS, len(name)))
    yield name
    yield from (f"{name} {n}" for n in range(2, 100))


def check_shorts(plan: Plan, at: Mapping[str, Span], parts: Iterable[str]) -> Iterator[Diagnostic]:
    """A short name given to two things, or that is another thing's whole name; ``parts`` are the
    names of all that the plan's calls are made of."""
    names = {part.casefold(): part for part in parts}
    seen: dict[str, str] = {}
    for name, short in plan.shorts:
        first = seen.setdefault(short.casefold(), name)
        if first == name and short.casefold() in names:
            first = names[short.casefold()]
        if first.casefold() != name.casefold():
            yield E994(short=short, first=first, second=name).at(at[name])
