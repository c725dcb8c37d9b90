"""A concept with its tags laid over it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Any

from stemline.diagnostics.catalogue.calls import E640
from stemline.diagnostics.diagnostic import Diagnostic, Related
from stemline.football.conditions import Guard
from stemline.lineup.lined_up import LinedUp
from stemline.playbook.concepts import REST, Body, Job, LookAt, Tag
from stemline.playbook.kill_definitions import joined_kills
from stemline.playbook.run_definitions import WHOLE_LINE
from stemline.playbook.said import Said
from stemline.resolve.roles import Bound, candidates
from stemline.source import Span

_TABLES = (
    "rules",
    "jobs",
    "decides",
    "spots",
    "line",
    "others",
    "called",
    "exchanges",
    "scrambles",
)
_LISTS = ("feet", "read", "pressure", "protect", "pick", "toward", "handoffs")
_TITLES = {
    "rules": "who {} is",
    "jobs": "what {} runs",
    "decides": "when {} decides",
    "spots": "where {} is",
    "line": "how {} blocks",
    "others": "what {} does",
    "called": "who {} is",
    "scrambles": "where {} goes when the quarterback runs",
    "exchanges": "to whom {} gives the ball",
    "feet": "the feet",
    "read": "the read order",
    "pressure": "the pressure order",
    "protect": "the protection",
    "pick": "the pick of sides",
    "toward": "where the run goes",
    "handoffs": "whose hands the ball goes through",
}


def merged(body: Body, tags: Sequence[Tag]) -> Body:
    """The concept's facts, each replaced by a tag's facts about the same thing."""
    for tag in tags:
        other = tag.body
        changes: dict[str, Any] = {
            name: {**getattr(body, name), **getattr(other, name)} for name in _TABLES
        }
        changes["jobs"] |= {
            role: beside(body.jobs[role], said)
            for role, said in other.jobs.items()
            if role in body.jobs and not always_said(said)
        }
        if WHOLE_LINE in other.line:
            changes["line"] = other.line
        changes |= {name: getattr(other, name) or getattr(body, name) for name in _LISTS}
        changes |= {
            order: _gone_on(getattr(other, order), getattr(body, order))
            for order in ("read", "pressure")
            if getattr(other, order)
        }
        changes["claims"] = () if other.no_claims else other.claims or body.claims
        changes["pointed"] = {**body.pointed, **other.pointed}
        changes["needs"] = body.needs + other.needs
        changes["alerts"] = other.alerts or body.alerts
        changes["kills"] = tuple(joined_kills(body.kills, other.kills, tag.name))
        changes["keys"] = other.keys or body.keys
        changes["reactions"] = other.reactions or body.reactions
        changes["joins"] = other.joins or body.joins
        changes["first"] = tuple(dict.fromkeys(body.first + other.first))
        changes["joined"] = body.joined | other.joined
        changes["shown"] = other.shown or body.shown
        changes["swaps"] = body.swaps + other.swaps
        # A coach's words are about the job: where a tag gives another, they are no longer true.
        kept = {role: says for role, says in body.role_says.items() if role not in other.jobs}
        changes["role_says"] = {
            r: kept.get(r, ()) + other.role_says.get(r, ()) for r in {**kept, **other.role_says}
        }
        notes = (note for note in body.notes if note.who not in other.jobs)
        changes["notes"] = (*notes, *(n for n in other.notes if n not in body.notes))
        body = replace(body, **changes)
    return body


def always_said(said: Sequence[Said[Job]]) -> bool:
    """Whether some line of a man holds whatever is so."""
    return any(not one.guard.text for one in said)


def beside(own: Sequence[Said[Job]], tagged: Sequence[Said[Job]]) -> tuple[Said[Job], ...]:
    """What a man does by the concept's ``own`` lines where no line of a tag holds, each of which
    has a condition: a tag's `runs fade when press` leaves him his route against all else."""
    kept = []
    for one in own:
        taken = [t for t in tagged if t.guard.meets(one.guard) and not t.guard.refines(one.guard)]
        left = one.guard.worlds.difference(*(t.guard.worlds for t in taken))
        same = any(t.guard.worlds == one.guard.worlds and t.guard.text for t in tagged)
        if left and not same:
            kept.append(replace(one, guard=replace(one.guard, worlds=left)))
    return (*kept, *tagged)


def told_beside(body: Body, bound: Bound, picture: LinedUp) -> Body:
    """``body`` with the lines of a man whom a tag calls by his place under the role that he has:
    where each of them has a condition he keeps his role, and does what it says else."""
    jobs, called = dict(body.jobs), dict(body.called)
    for name, choice in body.called.items():
        said = body.jobs.get(name, ())
        found = candidates(choice.value, picture, bound)
        role = bound.role_of(found[0]) if found else None
        if role is None or role not in body.jobs or role in body.called:
            continue
        if said and not always_said(said):
            jobs[role] = beside(body.jobs[role], jobs.pop(name))
            del called[name]
    return replace(body, jobs=jobs, called=called) if called != body.called else body


def _gone_on(
    orders: Sequence[Said[tuple[LookAt, ...]]], own: Sequence[Said[tuple[LookAt, ...]]]
) -> tuple[Said[tuple[LookAt, ...]], ...]:
    """A tag's orders, their `rest` being what is left of the concept's ``own``, guard by guard."""
    made: list[Said[tuple[LookAt, ...]]] = []
    for order in orders:
        if not any(look.target == REST for look in order.value):
            made.append(order)
            continue
        named = {look.target for look in order.value}
        for base in own or (replace(order, value=()),):
            if order.guard.meets(base.guard):
                rest = tuple(look for look in base.value if look.target not in named)
                looks = tuple(
                    x for look in order.value for x in (rest if look.target == REST else (look,))
                )
                made.append(replace(order, value=looks, guard=_both(order.guard, base.guard)))
    return tuple(made)


def _both(tag: Guard, own: Guard) -> Guard:
    """Where a tag's guard and the concept's ``own`` hold both, in its words if it has some."""
    sets = tag.formations & own.formations or tag.formations | own.formations
    narrow = own if own.text else tag
    return replace(narrow, worlds=tag.worlds & own.worlds, formations=sets)


def quarrels(tags: Sequence[Tag], at: Span) -> list[Diagnostic]:
    """Two tags of one call that both change one thing, each its own way."""
    found: list[Diagnostic] = []
    for i, first in enumerate(tags):
        for second in tags[i + 1 :]:
            for name, one, two in _shared(first.body, second.body):
                if [s.value for s in one] != [s.value for s in two]:
                    found.append(
                        E640(first=first.name, second=second.name, what=name).at(
                            at,
                            related=(
                                Related(one[0].span, f"{first.name} says it here"),
                                Related(two[0].span, f"{second.name} says it here"),
                            ),
                        )
                    )
    return found


def _shared(
    first: Body, second: Body
) -> list[tuple[str, tuple[Said[object], ...], tuple[Said[object], ...]]]:
    shared = []
    for table in _TABLES:
        one, two = getattr(first, table), getattr(second, table)
        shared += [(_TITLES[table].format(k), one[k], two[k]) for k in one if k in two]
    for name in _LISTS:
        one, two = getattr(first, name), getattr(second, name)
        if one and two:
            shared.append((_TITLES[name], one, two))
    return shared
