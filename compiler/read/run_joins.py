"""A pass that joins a run takes its line, its carrier and its side; what a run must say itself."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from stemline.diagnostics.catalogue.runs import E678, E679
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.diagnostics.in_words import together
from stemline.football.blocking.run_rules import BlockWay
from stemline.playbook.concepts import Body, Job
from stemline.playbook.role_rules import Nobody, RoleRule
from stemline.playbook.run_definitions import (
    CARRIER,
    WHOLE_LINE,
    Aim,
    BlockRules,
    LineSpot,
    RuleDef,
)
from stemline.playbook.said import Said, SideWord
from stemline.source import Span

_EVERY_LINE = (
    LineSpot(None, "centre"),
    *(
        LineSpot(side, place)
        for place in ("guard", "tackle")
        for side in (SideWord.PLAYSIDE, SideWord.BACKSIDE)
    ),
)
_BOTH_SIDES = (
    {SideWord.LEFT, SideWord.RIGHT},
    {SideWord.STRONG, SideWord.WEAK},
    {SideWord.CALL, SideWord.AWAY},
    {SideWord.FIELD, SideWord.BOUNDARY},
)


_PLACES = ("centre", "guard", "tackle")


def unfinished(body: Body, at: Span, line: Sequence[str]) -> list[Diagnostic]:
    """What a run has to say and does not: who carries the ball, and how each man of the code's
    ``line`` blocks: a code of three linemen has no tackles, one of a centre alone no guards."""
    found = []
    if CARRIER not in body.rules:
        found.append(E678().at(at))
    there = _PLACES[: (len(line) + 1) // 2]
    missing = [str(s) for s in _EVERY_LINE if s.place in there and not _blocks(body, s)]
    if missing:
        found.append(E679(places=together(missing)).at(at))
    return found


def _blocks(body: Body, spot: LineSpot) -> bool:
    """Whether a line tells him what to do, by this word for his side or by others for both."""
    if spot in body.line or WHOLE_LINE in body.line:
        return True
    told = {s.side for s in body.line if s.place == spot.place}
    return any(sides <= told for sides in _BOTH_SIDES)


def with_partners(body: Body) -> Body:
    """The run's line with each man of whom another says `double with` and no line says anything:
    he doubles with that man, else has the man on him, else climbs."""
    line = dict(body.line)
    for spot in _EVERY_LINE:
        if _blocks(body, spot):
            continue
        for owner, said in body.line.items():
            if any(_doubles_with(rule, owner, spot) for one in said for rule in one.value.rules):
                line[spot] = tuple(
                    replace(one, value=_partner_of(owner, one.value)) for one in said
                )
    return replace(body, line=line)


def _doubles_with(rule: RuleDef, owner: LineSpot, spot: LineSpot) -> bool:
    partner = rule.partner
    return (
        partner is not None
        and partner.place == spot.place
        and (partner.side or owner.side) is spot.side
    )


def _partner_of(owner: LineSpot, rules: BlockRules) -> BlockRules:
    ways = (RuleDef(BlockWay.DOUBLE, owner, None), RuleDef(BlockWay.ON, None, None))
    climbs = RuleDef(BlockWay.CLIMB, None, None)
    _, then, whom = rules.words.partition(", then ")
    words = f"double with {owner} or on or climb{then}{whom}"
    return BlockRules((*ways, climbs), rules.then, words)


def with_run(body: Body, owner: Body, run: Body) -> Body:
    """``body`` (laid over ``owner``) with what it takes from the run that it joins.

    The carrier comes in before all others, the run's other blockers where a man is left for them;
    receivers keep the pass, also where it says one thing for all of them. A body that says its own
    `protect` keeps that for the line.
    """
    own = {*body.rules, *owner.rules}
    rules = dict(body.rules)
    jobs = dict(body.jobs)
    for role, said in run.rules.items():
        if role == CARRIER or (role not in own and _blocks_by_rule(run.jobs.get(role, ()))):
            rules.setdefault(role, said if role == CARRIER else tuple(map(_or_nobody, said)))
            jobs.setdefault(role, run.jobs.get(role, ()))
    joined = frozenset(rules) - frozenset(body.rules) - {CARRIER}
    return replace(
        body,
        rules=rules,
        jobs=jobs,
        line=body.line if body.protect else {**run.line, **body.line},
        toward=body.toward or run.toward,
        keys=body.keys or run.keys if body.reactions else body.keys,
        first=(CARRIER,),
        joined=joined,
        shown=run.jobs.get(CARRIER, ()),
    )


def _blocks_by_rule(said: tuple[Said[Job], ...]) -> bool:
    return any(isinstance(s.value, BlockRules | Aim) for s in said)


def _or_nobody(said: Said[RoleRule]) -> Said[RoleRule]:
    rule = said.value
    if isinstance(rule.choices[-1], Nobody):
        return said
    wider = RoleRule((*rule.choices, Nobody()), (*rule.words, "nobody"))
    return replace(said, value=wider)
