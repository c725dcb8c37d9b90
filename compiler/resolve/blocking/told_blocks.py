"""What a run's text tells each man to block, and who has the ball and where, before a front."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from stemline.football.blocking.carrying import hole
from stemline.football.blocking.run_rules import BlockWay, Rule, Task
from stemline.football.conditions import LookWord
from stemline.football.defence.described import Described
from stemline.football.defence.fronts import at_place
from stemline.football.exchanges import BallMoves, holders
from stemline.football.field import Side
from stemline.football.offence.counting import tight_ends
from stemline.football.play import Assignment, Kind, Play
from stemline.lineup.lined_up import LinedUp
from stemline.playbook.concepts import BlockSaid, Body, Job
from stemline.playbook.guards import narrowest
from stemline.playbook.run_definitions import (
    CARRIER,
    WHOLE_LINE,
    Aim,
    BlockRules,
    LineSpot,
    RuleDef,
    TargetDef,
)
from stemline.playbook.said import Said, SideWord
from stemline.resolve.assignments import Chosen, choose, words_of, worlds_of
from stemline.resolve.roles import Bound

PERIMETER = {"stalk": BlockWay.STALK, "crack": BlockWay.CRACK, "arc": BlockWay.ARC}
"""Jobs of receivers that are rules too, once there is a defence."""


@dataclass(frozen=True)
class Told:
    """What the text tells one man to block, and the name that he has in it."""

    man: str
    name: str
    rules: BlockRules
    said: Said[BlockRules] | Said[Job]


def told_men(play: Play, body: Body, bound: Bound, picture: LinedUp) -> list[Told]:
    """One entry a blocker, linemen from left to right and then roles."""
    told: dict[str, Told] = {}
    for spot in sorted(body.line, key=str):
        label = at_place(picture.men, spot.place, _side(spot, picture)) if spot.place else ""
        taken = bound.role_of(label) not in (None, str(spot))  # he goes out, or has another line
        said = None if taken or not label else _holds(body.line[spot], label, play, picture)
        if said is not None:
            told.setdefault(label, Told(label, str(spot), said.value, said))
    whole = body.line.get(WHOLE_LINE)
    # A tight end of whom nothing is said blocks a run as the line does.
    ends = tight_ends(picture.men) if whole and play.kind is Kind.RUN else ()
    ends = tuple(end for end in ends if bound.role_of(end) is None)
    for man in picture.men:
        if whole and (man.interior or man.label in ends) and man.label not in told:
            said = _holds(whole, man.label, play, picture)
            if said is not None:
                told[man.label] = Told(man.label, str(WHOLE_LINE), said.value, said)
    for man in picture.men:
        side = picture.side_of(man.label)
        if man.interior and side is not None and man.label not in told:
            # The extra man of an unbalanced line blocks as the tackle inside him.
            tackle = told.get(at_place(picture.men, "tackle", side))
            if tackle is not None:
                told[man.label] = replace(tackle, man=man.label)
    told = dict(sorted(told.items(), key=lambda item: picture.man(item[0]).snap.x))
    for role, label in bound.men.items():
        chosen = _chosen(body, role, label, play, picture)
        if chosen is not None and isinstance(chosen.base.value, BlockRules):
            told.setdefault(label, Told(label, role, chosen.base.value, chosen.base))
    return list(told.values())


def holders_by_label(play: Play, bound: Bound) -> tuple[str, ...]:
    """Who has the ball after the man who takes the snap, by label, the last one who runs with it;
    a pass that only shows its run has a carrier all the same."""
    carrier = bound.men.get(CARRIER, "")
    if play.kind is Kind.PASS or not play.exchanges:
        return (carrier,) if carrier else ()
    given = [x for x in play.exchanges if x.kind is not BallMoves.THROW]
    return holders(given, "")[1:] or ((carrier,) if carrier else ())


def _chosen(body: Body, role: str, label: str, play: Play, picture: LinedUp) -> Chosen | None:
    """What a role does in this call."""
    worlds = worlds_of(picture.man(label), picture, _looks(play))
    return choose(body.jobs.get(role, ()), worlds)


def _side(spot: LineSpot, picture: LinedUp) -> Side | None:
    return picture.side(spot.side) if spot.side is not None else None


def _looks(play: Play) -> tuple[LookWord, ...]:
    return tuple(LookWord(word) for word in play.against)


def _holds(
    said: Sequence[Said[BlockRules]], label: str, play: Play, picture: LinedUp
) -> Said[BlockRules] | None:
    """The line that holds; where the look decides and is not known, the widest."""
    worlds = worlds_of(picture.man(label), picture, _looks(play))
    holding = [s for s in said if s.guard.worlds & worlds]
    sure = narrowest([s for s in holding if worlds <= s.guard.worlds])
    return sure or max(holding, key=lambda s: len(s.guard.worlds & worlds), default=None)


def task_of(told: Told, picture: LinedUp) -> Task:
    rules = [_rule(r, told.man, picture) for r in told.rules.rules]
    then = tuple(described(t, picture) for t in told.rules.then)
    return Task(told.man, tuple(r for r in rules if r is not None), then)


def _rule(rule: RuleDef, man: str, picture: LinedUp) -> Rule | None:
    """The rule with its men; None where its partner is nobody in this formation."""
    partner = ""
    if rule.partner is not None:
        side = _side(rule.partner, picture)
        if side is None and rule.partner.place != "centre":
            side = picture.side_of(man) or picture.side(SideWord.PLAYSIDE)
        partner = at_place(picture.men, rule.partner.place, side)
        if partner in ("", man):
            return None
    target = described(rule.target, picture) if rule.target is not None else None
    return Rule(rule.way, partner, target)


def described(target: TargetDef, picture: LinedUp) -> Described:
    return Described(target.what, picture.side(target.side) if target.side is not None else None)


def perimeter(play: Play, body: Body, bound: Bound, picture: LinedUp) -> list[Task]:
    """Receivers who stalk, crack or arc by a word that needs no front to be drawn."""
    tasks = []
    for role, label in bound.men.items():
        chosen = _chosen(body, role, label, play, picture)
        job = chosen.base.value if chosen is not None else None
        if isinstance(job, BlockSaid) and job.job in PERIMETER:
            tasks.append(Task(label, (Rule(PERIMETER[job.job]),)))
    return tasks


def hole_of(play: Play, body: Body, bound: Bound, picture: LinedUp, carrier: str) -> float:
    """x of the hole that the ball is carried through; over the ball where nobody says."""
    if not carrier:
        return 0.0
    roles = dict.fromkeys((bound.role_of(carrier) or CARRIER, CARRIER))
    return aim_of(tuple(roles), play, body, picture, carrier)


def aim_of(roles: Sequence[str], play: Play, body: Body, picture: LinedUp, label: str) -> float:
    """x of the hole that a man aims at by the first of his roles that says one; over the ball
    where none does."""
    there = [c.base.value for r in roles if (c := _chosen(body, r, label, play, picture))]
    aim = next((job for job in there if isinstance(job, Aim)), None)
    if aim is None:
        return 0.0
    last = aim.points[-1]
    return hole(last.point, picture.side(last.side or SideWord.PLAYSIDE), picture.men).x


def places_of_line(picture: LinedUp) -> Mapping[str, str]:
    """The places of linemen and tight ends in this call, by label: "playside guard"."""
    places: dict[str, str] = {}
    for place in ("guard", "tackle", "outside tackle", "end"):
        for word in (SideWord.PLAYSIDE, SideWord.BACKSIDE):
            label = at_place(picture.men, place, picture.side(word))
            places.setdefault(label, f"{word.value} {place}")
    places.setdefault(at_place(picture.men, "centre", None), "centre")
    return places


def named(a: Assignment, told: Told, body: Body, places: Mapping[str, str]) -> Assignment:
    """His words as the rule has them, before a front is known."""
    spoken = words_of(told.rules, told.name)
    if told.name in body.rules:
        return replace(a, job=spoken)
    place = places.get(a.man, told.name)
    names = dict.fromkeys((told.name, place, str(WHOLE_LINE)))
    says = tuple(s for name in names for s in body.role_says.get(name, ()))
    return replace(a, role=place, job=spoken, says=says, span=told.said.span)
