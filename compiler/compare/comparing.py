"""Two sessions → what is different: texts first, then the plays that the texts can reach.

A play hangs on the definitions that its call names, on what these name, and on the settings. Where
all of them say the same, the play is the same and is not made; so two revisions cost what their
difference costs.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from functools import cached_property

from stemline.compare.aloud import is_read
from stemline.compare.comparison import (
    CallChange,
    Comparison,
    DefinitionChange,
    Family,
)
from stemline.compare.definitions import Definition, SaidLine, definitions
from stemline.compare.line_changes import LineChange, line_changes
from stemline.compare.matching import ALIKE, likeness
from stemline.compare.reach import Reach
from stemline.compare.renames import Matched, matched
from stemline.compare.row_order import ORDER, ordered
from stemline.describe.changes import PROTECTION, READS, changes, order_changes
from stemline.football.defenders import Defence
from stemline.football.play import Play
from stemline.resolve.order import Order
from stemline.session import Session
from stemline.source import NOWHERE

_WORDS_ONLY = frozenset(
    {"say", "says", "idea", "caution", "family", "signal", "suits", "word", ORDER}
)
"""Lines that move nobody: they are told, and no play is made for them."""
_SHOWN = frozenset({"against", "from"})
"""Lines of a dress-up that say how its calls are drawn, and do not make them."""
_SPLIT = ("concept", "run", "tag", "protection", "formation", "look", "motion")
"""What one is made two of, or two are joined in one."""
OTHERWISE = "blocked otherwise"
"""What an order of the quarterback's says of a protection that has its name still."""
_PAGES_ONLY = frozenset(
    {"version", "season", "sections", "theme", "lower", "say", "caution", "picture"}
)
"""Lines of the playbook block that only its pages show."""


def compared(
    old: Session,
    new: Session,
    called: tuple[str, str] = ("", ""),
    letters: Sequence[tuple[str, str]] = (),
) -> Comparison:
    """What is different between two playbooks, each read whole; both must have a ``book``.

    ``called`` is what each side was asked for as: it tells them apart where their titles do not.
    ``letters`` are men's that were others, by which ``old`` calls them already: they are told.
    """
    comparing = _Comparing(old, new)
    found = comparing.comparison()
    if letters:
        found = replace(found, definitions=tuple(comparing.with_letters(found, letters)))
    if found.old != found.new:
        return found
    was, now = called
    return replace(found, old=f"{found.old} ({was})", new=f"{found.new} ({now})")


def former_name(old: Session, new: Session, call: str) -> str:
    """What a call of ``new`` was called in ``old``; "" where it is not found there."""
    kept = _Comparing(old, new).kept()
    return next((was.spoken for was, now in kept if now.spoken == call), "")


class _Comparing:
    def __init__(self, old: Session, new: Session) -> None:
        self._old, self._new = old, new
        self._was = definitions(tree for tree, _ in old.trees)
        self._now = definitions(tree for tree, _ in new.trees)
        self._by_others: frozenset[str] | None = None

    def comparison(self) -> Comparison:
        told = self._definitions
        kept, added, dropped = self._calls
        reached = self._reached(told)
        changed = [c for pair in kept if pair[1] in reached and (c := self._call(*pair))]
        names = {c.spoken for c in changed}
        made = tuple(play for order in added if (play := _play(self._new, order)))
        gone = tuple(play for order in dropped if (play := _play(self._old, order)))
        return Comparison(
            _title(self._old),
            _title(self._new),
            tuple(self._with_calls(change, changed) for change in told),
            tuple(changed),
            made,
            gone,
            tuple((a.spoken, b.spoken) for a, b in kept if a.spoken != b.spoken),
            len(kept) - len(changed),
            (),
            _families(self._new, self._old, kept, names, added, dropped),
            self._still(names, {o.concept for o in (*added, *dropped)}),
        )

    def _still(self, changed: set[str], touched: set[str]) -> tuple[Play, ...]:
        """The plays that are as they were, of the concepts that something happened to."""
        kept = [now for _, now in self._calls[0]]
        touched = touched | {order.concept for order in kept if order.spoken in changed}
        rest = (o for o in kept if o.concept in touched and o.spoken not in changed)
        return tuple(play for order in rest if (play := _play(self._new, order)))

    def kept(self) -> list[tuple[Order, Order]]:
        """The calls on both sides, as they were and as they are."""
        return self._calls[0]

    def with_letters(
        self, found: Comparison, letters: Sequence[tuple[str, str]]
    ) -> Iterator[DefinitionChange]:
        """The changes, and with the first personnel that has a man his letter that was another."""
        told = {change.now.key: change for change in found.definitions if change.now is not None}
        pairs = {now.key: was for was, now in self._matched.pairs if now.kind == "personnel"}
        left = list(letters)
        for key, was in pairs.items():
            men = {line.subject for line in self._now[key].lines}
            if here := tuple(pair for pair in left if pair[1] in men):
                left = [pair for pair in left if pair not in here]
                change = told.pop(key, None) or DefinitionChange(was, self._now[key])
                yield replace(change, roles=(*change.roles, *here))
        yield from (c for c in found.definitions if c.now is None or c.now.key in told)

    # Definitions.

    @cached_property
    def _matched(self) -> Matched:
        return matched(self._was, self._now, self._alike)

    @cached_property
    def _definitions(self) -> list[DefinitionChange]:
        found = []
        for was, now in self._matched.pairs:
            words = self._matched.words(was)
            lines = line_changes(was.lines, now.lines, words, now.kind)
            parent = words.get(was.parent.casefold(), was.parent)
            if parent.casefold() != now.parent.casefold():
                lines = (_extends(was, now), *lines)
            roles = tuple(
                (role, name)
                for role, name in self._matched.roles.get(was.name.casefold(), {}).items()
                if was.kind not in ("tag", "dress")
            )
            score = self._matched.scores.get(now.key)
            if now.kind == "dress":
                lines = (*lines, *self._in_another_order(now))
            if lines or roles or score is not None:
                found.append(DefinitionChange(was, now, lines, roles, score))
        found += [
            DefinitionChange(None, d, kin=_kin(d, self._was.values())) for d in self._matched.come
        ]
        order = {key: n for n, key in enumerate(self._now)}
        found.sort(key=lambda change: order[change.one.key])
        gone = self._matched.gone
        return [*found, *(DefinitionChange(d, None, kin=_kin(d, self._now.values())) for d in gone)]

    def _in_another_order(self, dress: Definition) -> Iterator[LineChange]:
        """The calls of a concept that are on both sides, where they are printed otherwise."""
        concept = dress.name.casefold()
        kept = [pair for pair in self._calls[0] if pair[1].concept == concept]
        place = {id(order): n for n, order in enumerate(_orders(self._old))}
        before = sorted(kept, key=lambda pair: place[id(pair[0])])
        names = [[now.spoken for _, now in side] for side in (before, kept)]
        told = ordered("its calls", names[0], names[1], (dress.span, dress.span))
        yield from (LineChange(*pair) for pair in told)

    def _alike(self, was: Definition, now: Definition) -> float:
        """How many men of both do the same, over the calls that both make in the same words."""
        if was.kind not in ("concept", "run"):
            return 0.0
        old = {_frame(o): o for o in _orders(self._old) if o.concept == was.name.casefold()}
        new = {_frame(o): o for o in _orders(self._new) if o.concept == now.name.casefold()}
        both = [frame for frame in old if frame in new][:3]
        shares = []
        for frame in both:
            a, b = _play(self._old, old[frame]), _play(self._new, new[frame])
            if a is not None and b is not None:
                men = len(b.men) - sum(c.path or c.moved for c in changes(b, a))
                shares.append(men / len(b.men))
        return sum(shares) / len(both) if both else 0.0

    # Calls.

    @cached_property
    def _calls(self) -> tuple[list[tuple[Order, Order]], list[Order], list[Order]]:
        """Calls on both sides, those that are new, and those that are gone."""
        old = {self._as_now(o): o for o in _orders(self._old)}
        new = {_identity(o): o for o in _orders(self._new)}
        return (
            [(old[key], order) for key, order in new.items() if key in old],
            [order for key, order in new.items() if key not in old],
            [order for key, order in old.items() if key not in new],
        )

    def _as_now(self, order: Order) -> tuple[object, ...]:
        names = self._matched.names

        def now(key: str) -> str:
            return names.get(key, key).casefold()

        tags = frozenset(map(now, order.tags))
        return now(order.formation), order.way, now(order.motion), now(order.concept), tags

    @cached_property
    def _reach(self) -> tuple[Reach, Reach]:
        return Reach(self._old, self._was), Reach(self._new, self._now)

    def _reached(self, told: Sequence[DefinitionChange]) -> frozenset[Order]:
        """The new orders whose plays can be others."""
        before, after = self._reach
        moving = [change for change in told if _moves(change)]
        old = {change.was.key for change in moving if change.was is not None}
        new = {change.now.key for change in moving if change.now is not None}
        return frozenset(
            now for was, now in self._calls[0] if before.of(was) & old or after.of(now) & new
        )

    def _call(self, was: Order, now: Order) -> CallChange | None:
        before, play = _play(self._old, was), _play(self._new, now)
        if before is None or play is None:
            if before is play:
                return None
            return CallChange(was.spoken, now.spoken, before, play, (), ())
        before = self._renamed(before, was)
        men, orders = changes(play, before), order_changes(play, before)
        blocked = play.protection and play.protection.casefold() in self._reblocked
        men = tuple(c for c in men if c.moved or c.motion or c.path or (blocked and c.words))
        if blocked and play.protection == before.protection:
            orders = (*orders, (PROTECTION, play.protection, f"{play.protection}, {OTHERWISE}"))
        if not men and not orders and _stands(play) == _stands(before):
            return None
        return CallChange(was.spoken, now.spoken, before, play, men, orders)

    @cached_property
    def _reblocked(self) -> frozenset[str]:
        """The protections that block otherwise: no man of the line has a path that would tell."""
        moving = (c for c in self._definitions if c.one.kind == "protection" and _moves(c))
        return frozenset(c.now.name.casefold() for c in moving if c.was and c.now)

    def _renamed(self, play: Play, order: Order) -> Play:
        """The old play with its roles called as they are now, so that a new name is no change."""
        roles = dict(self._matched.roles.get(order.concept, {}))
        if not roles:
            return play

        def name(text: str) -> str:
            return roles.get(text.casefold(), text)

        reads, pressure = (
            tuple(replace(r, target=name(r.target), partner=name(r.partner)) for r in looks)
            for looks in (play.reads, play.pressure)
        )
        alerts = tuple(replace(a, target=name(a.target)) for a in play.alerts)
        return replace(play, reads=reads, pressure=pressure, alerts=alerts)

    def _with_calls(
        self,
        change: DefinitionChange,
        changed: Sequence[CallChange],
    ) -> DefinitionChange:
        """The change with the calls that it reaches: those that are others and made of it. To a
        dress-up, which only says how they are drawn, is laid what nothing else has changed."""
        if change.one.kind == "dress":
            return replace(change, calls=self._drawn_otherwise(change, changed))
        before, after = self._reach
        reached = [
            c.spoken
            for c in changed
            if _moves(change)
            and (
                (change.now is not None and change.now.key in after.spoken(c.spoken))
                or (change.was is not None and change.was.key in before.spoken(c.before))
            )
        ]
        alike = self._reads_alike(change, [c for c in changed if c.spoken in reached])
        return replace(change, calls=tuple(reached), reads_alike=alike)

    def _reads_alike(self, change: DefinitionChange, changed: Sequence[CallChange]) -> bool:
        """Whether a line of reads only says in other words what it said: ``changed`` are the calls
        that the definition reaches."""
        one = change.now
        if change.was is None or one is None or not any(map(_is_order, change.lines)):
            return False
        if any(c.was is None or c.now is None for c in changed):
            return False
        if any(what in READS for c in changed for what, _, _ in c.orders):
            return False
        named = {(one.owner or one.name).casefold(), *[one.name.casefold()] * bool(one.owner)}
        return any(
            {now.concept, *now.tags} == named and _play(self._new, now) is not None
            for _, now in self._calls[0]
        )

    def _changed_by_others(self, changed: Sequence[CallChange]) -> frozenset[str]:
        """The calls that a definition reaches which is neither a dress-up nor the settings."""
        if self._by_others is None:
            rest = [c for c in self._definitions if c.one.kind not in ("dress", "playbook")]
            reached = (call for c in rest for call in self._with_calls(c, changed).calls)
            self._by_others = frozenset(reached)
        return self._by_others

    def _drawn_otherwise(
        self, dress: DefinitionChange, changed: Sequence[CallChange]
    ) -> tuple[str, ...]:
        if not _moves(dress) or dress.now is None:
            return ()
        done = self._changed_by_others(changed)
        own = (c for c in changed if dress.now.key in self._reach[1].spoken(c.spoken))
        return tuple(c.spoken for c in own if c.spoken not in done)


def _extends(was: Definition, now: Definition) -> LineChange:
    return LineChange(
        SaidLine("", "extends", was.parent, "", was.span) if was.parent else None,
        SaidLine("", "extends", now.parent, "", now.span) if now.parent else None,
    )


def _kin(one: Definition, others: Iterable[Definition]) -> tuple[str, float] | None:
    """The definition of the same kind that says most of the same, where that is half or more."""
    if one.kind not in _SPLIT:
        return None
    lines = [line.alike for line in one.lines]
    scores = [
        (likeness(lines, [line.alike for line in other.lines]), other.name)
        for other in others
        if other.kind == one.kind and other.owner.casefold() == one.owner.casefold()
    ]
    score, name = max(scores, key=lambda row: row[0], default=(0.0, ""))
    return (name, score) if score >= ALIKE else None


def _moves(change: DefinitionChange) -> bool:
    """Whether a change can put a man elsewhere."""
    if change.was is None or change.now is None:
        return True
    if change.one.kind == "personnel":
        return any(_stands_as(line.was) != _stands_as(line.now) for line in change.lines)
    if change.one.kind == "dress":
        return any(
            line.verb in _SHOWN
            for lines in change.lines
            if (line := lines.now or lines.was) is not None
        )
    still = _PAGES_ONLY if change.one.kind == "playbook" else _WORDS_ONLY
    lines = (line.now or line.was for line in change.lines)
    return any(line is not None and line.verb not in still for line in lines)


def _is_order(line: LineChange) -> bool:
    """Whether it is an order of reads, always true, that stands in another's place."""
    both = [side for side in (line.was, line.now) if side is not None]
    return len(both) == 2 and all(is_read(side) and not side.guard for side in both)


def _stands_as(line: SaidLine | None) -> tuple[str, ...]:
    """What a man is, without his number and how fast he is, which put him nowhere else."""
    if line is None or line.verb in _WORDS_ONLY:
        return ()
    parts = line.value.casefold().split(", ")
    still = [p for p in parts if not p.isdigit() and not p.startswith("forty")]
    return (line.subject.casefold(), line.verb, *still)


def _orders(session: Session) -> Iterable[Order]:
    return (order for _, order in session.calls.orders)


def _identity(order: Order) -> tuple[object, ...]:
    return (
        order.formation,
        order.way,
        order.motion,
        order.concept,
        frozenset(order.tags),
    )


def _frame(order: Order) -> tuple[object, ...]:
    """A call without its concept's name."""
    return order.formation, order.way, order.motion, tuple(sorted(order.tags))


def _play(session: Session, order: Order) -> Play | None:
    return session.drawn(order)[0]


def _stands(play: Play) -> Defence | None:
    """The defence of a play as it stands and what each man does, wherever the text says it."""
    if play.defence is None:
        return None
    men = (replace(d, span=NOWHERE, says=()) for d in play.defence.defenders)
    return replace(play.defence, name="", span=NOWHERE, defenders=tuple(men))


def _title(session: Session) -> str:
    settings = session.book.settings if session.book is not None else None
    return f"{settings.name} {settings.season}".strip() if settings is not None else ""


def _families(
    new: Session,
    old: Session,
    kept: Sequence[tuple[Order, Order]],
    changed: set[str],
    added: Sequence[Order],
    dropped: Sequence[Order],
) -> tuple[Family, ...]:
    assert new.book is not None and old.book is not None
    names = dict.fromkeys((*new.book.families, *old.book.families))
    counts = {name: [0, 0, 0, 0] for name in names}
    for _, now in kept:
        counts[new.book.concepts[now.concept].family][now.spoken in changed] += 1
    for order in added:
        counts[new.book.concepts[order.concept].family][2] += 1
    for order in dropped:
        counts[old.book.concepts[order.concept].family][3] += 1
    return tuple(Family(name, *four) for name, four in counts.items() if any(four))
