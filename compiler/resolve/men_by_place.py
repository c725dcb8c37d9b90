"""Men who are named by where they stand: `weak #1 runs post` in a tag takes whoever that is out of
the concept's order, and `everyone else blocks stalk` is for all those whom no line names."""

from __future__ import annotations

from dataclasses import replace

from stemline.diagnostics.catalogue.calls import E624, E625
from stemline.diagnostics.in_words import together
from stemline.football.defence.fronts import wings
from stemline.football.offence.counting import tight_ends
from stemline.football.play import FOR_MANY, SHARED
from stemline.lineup.lined_up import LinedUp
from stemline.playbook.concepts import Body
from stemline.playbook.run_definitions import CARRIER
from stemline.playbook.said import SideWord
from stemline.resolve.roles import Bound, candidates

EVERYONE, BACKS = FOR_MANY


def call_away(body: Body, bound: Bound, picture: LinedUp, call: str) -> tuple[str, ...]:
    """The men whom tags call get roles of their own; ``bound`` is changed. Returned are the roles
    that they leave, which are nobody's then: reads of them are passed over."""
    left: list[str] = []
    for name, said in body.called.items():
        found = candidates(said.value, picture, bound)
        old = bound.role_of(found[0]) if found else None
        if not found:
            bound.nobody.append(name)
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


def with_others(body: Body, bound: Bound, picture: LinedUp, call: str) -> Body:
    """``body`` with a job for each man whom `everyone else` means; ``bound`` gains their roles.

    They are the receivers outside the tackles who have no role, by side where the line says one;
    men behind the ball are meant by `every other back` alone, since what a split man does is not
    done from there.
    """
    if not body.others:
        return body
    _leave_run(body, bound, picture)
    jobs, says = dict(body.jobs), dict(body.role_says)
    for who, said in body.others.items():
        for number, label in enumerate(_meant(who, bound, picture), 1):
            role = who if number == 1 else f"{who}{SHARED}{number}"
            bound.men[role] = label
            jobs[role] = said
            says[role] = body.role_says.get(who, ())
    left = [b for b in picture.count.backs if bound.role_of(b) is None]
    if left and BACKS not in body.others and EVERYONE in body.others:
        others = body.others[EVERYONE][0]
        line = f"{BACKS} {'blocks lead' if body.line else 'runs check'}"
        bound.found.append(E624(man=together(left), call=call, line=line).at(others.span))
    return replace(body, jobs=jobs, role_says=says)


def _leave_run(body: Body, bound: Bound, picture: LinedUp) -> None:
    """Men away from the line whom a joined run had block, and whom a line of the pass means:
    receivers keep the pass. A tight end and a wing are of the run's line."""
    close = {*tight_ends(picture.men), *wings(picture.men)}
    wide = [who for who in body.others if who != BACKS]
    meant = {label for who in wide for label in _there(who, picture)}
    for role in sorted(body.joined & bound.men.keys()):
        if bound.men[role] in meant - close:
            del bound.men[role]
            bound.nobody.append(role)


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
