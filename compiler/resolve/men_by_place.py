"""Men who are named by where they stand: `weak #1 runs post` in a tag takes whoever that is out of
the concept's order, and `everyone else blocks stalk` is for all those whom no line names."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from stemline.diagnostics.catalogue.calls import E625, W624
from stemline.diagnostics.in_words import together
from stemline.football.blocking.run_rules import BlockWay
from stemline.football.conditions import always
from stemline.football.defence.fronts import wings
from stemline.football.offence.counting import tight_ends
from stemline.football.offence.routes import LIBRARY
from stemline.football.play import FOR_MANY, SHARED
from stemline.lineup.lined_up import LinedUp
from stemline.playbook.concepts import Body, Job, RouteJob
from stemline.playbook.protection_definitions import Protection
from stemline.playbook.run_definitions import CARRIER, WHOLE_LINE, BlockRules, RuleDef
from stemline.playbook.said import Said, SideWord
from stemline.resolve.ball_way import in_exchanges
from stemline.resolve.roles import Bound, candidates, line_ends, shows_run

EVERYONE, BACKS = FOR_MANY
_BEHIND_HIM = 1.0
"""Yards behind the carrier from which a back can lead him no more."""


def _rules(way: BlockWay) -> BlockRules:
    return BlockRules((RuleDef(way, None, None),), (), way.value)


_LEAD, _HINGE = _rules(BlockWay.LEAD), _rules(BlockWay.HINGE)
_CHECK = RouteJob(LIBRARY["check"], None, None, None, (), "check")


def call_away(body: Body, bound: Bound, picture: LinedUp, call: str) -> tuple[str, ...]:
    """The men whom tags call get roles of their own; ``bound`` is changed. Returned are the roles
    that they leave, which are nobody's then: reads of them are passed over."""
    left: list[str] = []
    for name, said in body.called.items():
        found = candidates(said.value, picture, bound)
        old = bound.role_of(found[0]) if found else None
        if old == name:
            continue  # the line for him stands in its own place
        if not found:
            bound.nobody.append(name)
        elif old == CARRIER and shows_run(body) and _go(body.jobs.get(name, ())):
            bound.men[name] = found[0]  # he fakes, then goes out
        elif old == CARRIER or old in body.called:
            why = "carries the ball" if old == CARRIER else f"is called as {old} already"
            bound.found.append(E625(man=found[0], name=name, call=call, why=why).at(said.span))
        else:
            if old is not None:
                del bound.men[old]
                bound.nobody.append(old)
                left.append(old)
            bound.men[name] = found[0]
    return tuple(left)


@dataclass(frozen=True)
class CalledMen:
    """A call's men, its name, and the protections that it names."""

    picture: LinedUp
    call: str
    protections: tuple[Protection, ...] = ()


def with_others(body: Body, bound: Bound, parts: CalledMen) -> Body:
    """``body`` with a job for each man whom `everyone else` means; ``bound`` gains their roles.

    They are the receivers outside the tackles who have no role, by side where the line says one;
    a tight end blocks a run as the `line` does, where that has a rule and these only block;
    what a split man does is not done from behind the ball, so `every other back` is said apart.
    Where no line says that either, a back whom nothing else names is drawn with what is usual
    there (`_usual`), and that is told.
    """
    if not body.others:
        return body
    _leave_run(body, bound, parts.picture)
    jobs, says = dict(body.jobs), dict(body.role_says)
    ends = _of_the_line(body, parts.picture)
    others = {
        who: (said, [m for m in _meant(who, bound, parts.picture) if m not in ends or _go(said)])
        for who, said in body.others.items()
    }
    said_here = BACKS in others and any(each.guard.worlds for each in others[BACKS][0])
    if not said_here and EVERYONE in others:
        others[BACKS] = _usual(body, bound, parts, others[EVERYONE][0][0])
    for who, (said, men) in others.items():
        for number, label in enumerate(men, 1):
            role = who if number == 1 else f"{who}{SHARED}{number}"
            bound.men[role] = label
            jobs[role] = said
            says[role] = body.role_says.get(who, ())
    return replace(body, jobs=jobs, role_says=says)


def _go(said: Sequence[Said[Job]]) -> bool:
    return any(isinstance(each.value, RouteJob) for each in said)


def _of_the_line(body: Body, picture: LinedUp) -> tuple[str, ...]:
    """Tight ends for whom the line's own rule is, on a run."""
    worlds = picture.worlds(picture.count.strong)
    whole = any(s.guard.worlds & worlds for s in body.line.get(WHOLE_LINE, ()))
    return tight_ends(picture.men) if whole and not body.joins else ()


def _usual(
    body: Body, bound: Bound, parts: CalledMen, others: Said[Job]
) -> tuple[tuple[Said[Job], ...], list[str]]:
    """The job of the backs whom no line names, and who they are: they lead a run, or look after
    the backside where the carrier is in front of them, and on a pass look for a rusher first.

    Nobody is meant who has the ball on its way, and none where a protection has a helper."""
    picture = parts.picture
    busy = in_exchanges(body, bound, picture)
    left = [b for b in picture.count.backs if bound.role_of(b) is None and b not in busy]
    if not left or any(p.rules or p.broken for p in parts.protections):
        return (), []
    carrier = bound.men.get(CARRIER)
    deep = carrier is not None and all(
        picture.man(b).snap.y < picture.man(carrier).snap.y - _BEHIND_HIM for b in left
    )
    job = (_HINGE if deep else _LEAD) if body.line else _CHECK
    word = f"{'runs' if isinstance(job, RouteJob) else 'blocks'} {job.words}"
    line = f"{BACKS} {word}"
    bound.found.append(W624(man=together(left), call=parts.call, line=line).at(others.span))
    return (Said(job, always(picture.receivers), others.span),), left


def _leave_run(body: Body, bound: Bound, picture: LinedUp) -> None:
    """Men whom a joined run had block, and whom a line of the pass means: receivers keep the pass.
    A tight end and a wing are of the run's line too, and leave it only for a route."""
    close = {*tight_ends(picture.men), *wings(picture.men)}
    meant: set[str] = set()
    for who, said in body.others.items():
        if who != BACKS:
            meant |= {label for label in _there(who, picture) if _go(said) or label not in close}
    places = line_ends(body, picture).keys() if body.joins else ()
    for role in sorted({*body.joined, *places} & bound.men.keys()):
        if bound.men[role] in meant:
            del bound.men[role]
            bound.nobody += [role] if role in body.joined else []


def _meant(who: str, bound: Bound, picture: LinedUp) -> list[str]:
    return [label for label in _there(who, picture) if bound.role_of(label) is None]


def _there(who: str, picture: LinedUp) -> list[str]:
    """All whom the words may mean, whatever role they have."""
    counted = picture.count
    if who == BACKS:
        men = list(counted.backs)
    else:
        word = who.removeprefix(EVERYONE).strip()
        strong, weak = counted.strong, counted.weak
        sides = [picture.side(SideWord(word))] if word else [strong, weak]
        men = [label for side in sides for label in counted.on(side)]
    return men
