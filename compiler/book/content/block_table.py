"""Who blocks whom: one call's blockers against each look, fronts that are answered alike in one."""

from __future__ import annotations

import re
from collections.abc import Container, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace

from stemline.book.content.letters import mark, marks, told
from stemline.book.content.page import Remark
from stemline.football.play import Assignment, Man, Play
from stemline.football.players import Position


@dataclass(frozen=True)
class BlockRow:
    """A row of the table "Who blocks whom": looks that are answered alike, what each blocker does
    against them, who is read, whom nobody takes and who is left to the carrier ("" for no such
    column)."""

    looks: str
    blocks: tuple[str, ...]
    key: str
    free: str
    chasing: str = ""


@dataclass(frozen=True)
class Fronts:
    """Who blocks whom: a column a blocker, as they stand from left to right, a row a front.

    ``men`` are letters and places ("RG", "playside guard"), ``rules`` what holds against every
    front, men of one rule together; none where the rules are not known. ``key``, ``free`` and
    ``chasing`` head the columns of those who are read, of the box whom nobody takes, and of those
    outside it who are left to the carrier, "" where there are none.
    """

    men: tuple[tuple[str, str], ...]
    rules: tuple[Remark, ...]
    rows: tuple[BlockRow, ...]
    key: str
    free: str
    chasing: str = ""

    @property
    def many(self) -> bool:
        """Whether its columns are narrower than their cells want to be."""
        more = (self.key, self.free, self.chasing)
        return len(self.men) + sum(bool(head) for head in more) > _EASY

    @property
    def heads(self) -> tuple[tuple[str, str], ...]:
        """``men`` as they head its columns: of many only the side of a guard or tackle, whose
        letters say the rest."""
        return tuple(
            (man, _side_alone(man, place) if self.many else place) for man, place in self.men
        )


_EASY = 8
"""Columns that stand beside each other with their heads in full."""


def _side_alone(man: str, place: str) -> str:
    side, _, post = place.partition(" ")
    return side if post in ("guard", "tackle") and man.endswith(post[0].upper()) else place


@dataclass(frozen=True)
class KeyRead:
    """A defender who is read: as he is described, his letter in the look drawn ("" without one),
    and what is done when: ("give", "if he widens"). ``calls`` tells with which tags, "" where with
    none; ``looks`` who he is, looks in which he is the same together: ("Bear, Zero", "J"), and
    ``of`` the call that they are told of, "" where it is every call with that tag."""

    described: str
    man: str
    choices: tuple[Remark, ...]
    calls: str = ""
    looks: tuple[Remark, ...] = ()
    of: str = ""

    @property
    def told(self) -> tuple[Remark, ...]:
        """``looks`` as they are read at once: the exceptions, and who he is in all others."""
        if len(self.looks) < 2:
            return tuple(replace(one, label="every look") for one in self.looks)
        most = max(self.looks, key=lambda one: one.label.count(", "))
        if most.label.count(", ") + 1 < _LOOKS_IN_ONE:
            return self.looks
        others = (one for one in self.looks if one is not most)
        return (*others, replace(most, label="every other look"))


_LOOKS_IN_ONE = 3
"""Looks that are worth no name each where the key is the same man in all of them."""


NOTHING = "–"
NOBODY_COMES = "nobody comes"
GOES_OUT = f"{NOBODY_COMES}, out"
BY_HIS_RULE = "(his rule)"
"""After the man with whom another doubles because that man's rule says so, and not his own."""
_WITH = "double with "
_PARTNER = re.compile(
    rf"{_WITH}((?:(?:playside|backside) )?(?:centre|guard|outside tackle|tackle|end))"
)
_DOUBLED = re.compile(r"Double \S+ with (\w+)(?! and )")
_SIDE_WORD = re.compile(r"(?:playside|backside) ")

Front = tuple[str, Play]
"""Looks that are answered alike, by name, and the call against the first of them."""


def grouped(plays: Iterable[Play]) -> tuple[Front, ...]:
    """The plays that stand against a look, those whose blockers all answer alike together."""
    names: dict[object, list[str]] = {}
    first: dict[object, Play] = {}
    for play in plays:
        if play.defence is None:
            continue
        answers = (
            tuple((a.man, _answer(a, play)) for a in _blocking(play)),
            tuple(key.man for key in play.keys),
            play.unblocked,
            play.chasing,
        )
        first.setdefault(answers, play)
        names.setdefault(answers, []).append(play.defence.name)
    return tuple((", ".join(names[key]), play) for key, play in first.items())


def against(names: str) -> tuple[str, str]:
    """The words over a picture against the first of `grouped` looks, and those beside them."""
    first, *others = names.split(", ")
    return f"against {first}", f"and {len(others)} more alike" if others else ""


def most_unlike(blocked: Sequence[Front], number: int) -> tuple[Front, ...]:
    """The first of `grouped` plays and those ``number`` that are answered least like it and like
    each other, in their own order: what is worth a picture where the table has the rest.
    """
    chosen, left = list(blocked[:1]), list(blocked[1:])
    while left and len(chosen) <= number:
        far = max(left, key=lambda front: min(_apart(front[1], other) for _, other in chosen))
        chosen.append(far)
        left.remove(far)
    return tuple(front for front in blocked if front in chosen)


def _apart(a: Play, b: Play) -> int:
    """How many blockers answer two looks differently."""
    return sum(_answer(x, a) != _answer(b.assignment(x.man), b) for x in _blocking(a))


def fronts(
    blocked: Sequence[Front], rule: Play | None, free: str, stay: Container[str] = ()
) -> Fronts | None:
    """The table of `grouped` plays of one call in one formation; the men of ``stay`` have a column
    though nobody comes for them in any.

    ``rule`` is the call without a look, whose jobs are the rules themselves; ``free`` heads the
    column of those whom nobody takes. A call that tells no blocker anything has no table.
    """
    if not any(_answer(a, play) for _, play in blocked for a in _blocking(play)):
        return None
    base = blocked[0][1]
    men = _columns([play for _, play in blocked], stay)
    rules = _rules(men, rule)
    ruled = {label: r.words for r in rules for label in r.label.split()}
    return Fronts(
        men=tuple((man.label, place_of(man, base)) for man in men),
        rules=rules,
        rows=tuple(
            BlockRow(
                names,
                tuple(_cell(play.assignment(man.label), play, ruled) for man in men),
                marks([key.man for key in play.keys if key.man]) or NOTHING,
                marks(play.unblocked) or NOTHING,
                marks(play.chasing) or NOTHING,
            )
            for names, play in blocked
        ),
        key="key" if any(key.man for _, play in blocked for key in play.keys) else "",
        free=free if any(play.unblocked for _, play in blocked) else "",
        chasing=_left_to(base) if any(play.chasing for _, play in blocked) else "",
    )


def _left_to(play: Play) -> str:
    return f"left to {play.carrier}"


def _columns(plays: Sequence[Play], stay: Container[str]) -> tuple[Man, ...]:
    """The line from left to right, then others whose block is not the same against every front, and
    those who ``stay`` for one who comes in none."""
    base = plays[0]
    labels = dict.fromkeys(a.man for play in plays for a in _blocking(play))
    labels |= dict.fromkeys(a.man for a in base.assignments if a.man in stay)
    men = [base.man(label) for label in labels]

    def varies(man: Man) -> bool:
        answers = {_answer(play.assignment(man.label), play) for play in plays}
        return len(answers) > 1 or man.label in stay

    line = [man for man in men if _in_line(man, base)]
    others = [man for man in men if not _in_line(man, base) and varies(man)]
    return (
        *sorted(line, key=lambda man: man.snap.x),
        *sorted(others, key=lambda man: man.snap.x),
    )


def answers(play: Play, base: Play, free: str) -> tuple[Remark, ...]:
    """What blockers of one call do against another look than that of ``base``."""
    if play is base:
        return ()
    changed: dict[str, list[str]] = {}
    for a in _blocking(play):
        if _answer(a, play) != _answer(base.assignment(a.man), base):
            changed.setdefault(_answer(a, play), []).append(a.man)
    keys = marks([key.man for key in play.keys if key.man])
    return (
        *(Remark(" ".join(men), words) for words, men in changed.items()),
        *((Remark("key", keys),) if keys else ()),
        *((Remark(free, marks(play.unblocked)),) if play.unblocked else ()),
        *((Remark(_left_to(play), marks(play.chasing)),) if play.chasing else ()),
    )


def place_of(man: Man, play: Play) -> str:
    """Where a blocker plays, from the side the call goes to: "playside guard"; or his role."""
    role = play.assignment(man.label).role
    if role:
        return role
    if man.position is Position.CENTRE or man.snap.x == 0:
        return man.position.value
    if play.toward is None:
        side = "right" if man.snap.x > 0 else "left"
    else:
        side = "playside" if man.snap.x * play.toward.value > 0 else "backside"
    return f"{side} {man.position.value if man.interior else 'end'}"


def key_reads(plays: Iterable[Play], keyed: Iterable[Play]) -> tuple[KeyRead, ...]:
    """The defenders whom the calls read instead of blocking them: of ``plays`` the first that
    reads any, and the first with each other tag; ``keyed`` are these against every look."""
    tagged: dict[tuple[str, ...], list[Play]] = {}
    for play in plays:
        if play.keys:
            tagged.setdefault(play.call.tags, []).append(play)
    by_look = [p for p in keyed if p.defence is not None]
    return tuple(
        KeyRead(
            key.described,
            mark(key.man),
            _choices(n, alike),
            " + ".join(tags),
            _who_is_read(n, [p for p in by_look if p.call.spoken == alike[0].call.spoken]),
            alike[0].call.spoken if len({_set(p) for p in alike}) > 1 else "",
        )
        for tags, alike in tagged.items()
        for n, key in enumerate(alike[0].keys)
    )


def _set(play: Play) -> tuple[str, str]:
    """What places the men, whichever side is called: from another set another man may be read."""
    return play.call.formation, play.call.motion


def _choices(number: int, plays: Sequence[Play]) -> tuple[Remark, ...]:
    """What is done off one key of the first of ``plays``, and when: who gets the ball by his
    letter, or by his role where others of them have another man for it."""
    play, made = plays[0], list[Remark]()
    key = play.keys[number]
    for n, ((does, when), (_, to, _)) in enumerate(zip(key.done, key.choices, strict=True)):
        also = (p.keys[number].done[n][0] for p in plays if number < len(p.keys))
        role = next((a.role_said for a in play.assignments if to and a.man == to), "")
        if role and any(words != does for words in also):
            does = f"{does.removesuffix(to)}{role}"
        made.append(Remark(does, f"if {when}" if when else ""))
    return tuple(made)


def _who_is_read(number: int, plays: Iterable[Play]) -> tuple[Remark, ...]:
    """The man of one key by looks, those in which he is the same man together."""
    looks: dict[str, list[str]] = {}
    for play in plays:
        man = play.keys[number].man if number < len(play.keys) else ""
        if play.defence is not None:
            looks.setdefault(mark(man) or NOTHING, []).append(play.defence.name)
    return tuple(Remark(", ".join(names), man) for man, names in looks.items())


def _blocking(play: Play) -> tuple[Assignment, ...]:
    """The linemen, and everybody else who takes a defender."""
    return tuple(a for a in play.assignments if play.man(a.man).interior or a.hits)


def _in_line(man: Man, play: Play) -> bool:
    return man.interior or (man.on_line and not play.assignment(man.label).role)


def _answer(assignment: Assignment, play: Play) -> str:
    return told(assignment.job.strip().rstrip("."), play, assignment)


def _cell(assignment: Assignment, play: Play, ruled: Mapping[str, str]) -> str:
    """What stands in his column: where his rule stands over it, that says how he looks for the man
    he has not; without, his words stand whole ("Set and release: nobody comes"). Where his rule
    doubles with another man than he does here, the rule of that one is named as what holds."""
    words, man = _answer(assignment, play) or NOTHING, assignment.man
    if man not in ruled:
        return words
    both = _DOUBLED.search(words)
    other = _WITH in ruled[man] and both and f"{_WITH}{both[1]}" not in ruled[man]
    if both and other and f"{_WITH}{man}" in ruled.get(both[1], ""):
        words = words.replace(both[0], f"{both[0]} {BY_HIS_RULE}")
    _, _, short = words.rpartition(": ")
    return short if short in (NOBODY_COMES, GOES_OUT) else words


def _by_letter(words: str, man: Man, play: Play) -> str:
    """A rule with the man of its double team by his letter, as the rows have him: of a place
    without a side the one beside ``man``."""
    places = {task.role: task.man for task in play.assignments if task.role}
    own = _SIDE_WORD.match(play.assignment(man.label).role)
    beside = own[0] if own else "playside "

    def put(found: re.Match[str]) -> str:
        sided = found[1] == "centre" or _SIDE_WORD.match(found[1])
        place = found[1] if sided else beside + found[1]
        return f"{_WITH}{places[place]}" if place in places else found[0]

    return _PARTNER.sub(put, words)


def _rules(men: Iterable[Man], rule: Play | None) -> tuple[Remark, ...]:
    """What each man is told for every front; those who are told the same, together."""
    rules: dict[str, list[str]] = {}
    for man in men if rule else ():
        assert rule is not None
        words = _by_letter(_answer(rule.assignment(man.label), rule), man, rule)
        rules.setdefault(words, []).append(man.label)
    return tuple(Remark(" ".join(labels), words) for words, labels in rules.items() if words)
