"""Who plays which role: the rules of a concept bound to the men of one call.

The order is fixed, so that no line's place in the text decides: men who must exist before those
who may be nobody; among them exact rules ("strong #2") before relative ones ("weak inside", the
innermost man still free); a relative rule after the role it leans on.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from stemline.diagnostics.catalogue.calls import E620, E621, E626, W627, W628
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.diagnostics.in_words import how_many
from stemline.football.defence.fronts import WING_REACH, at_place, line_of, wings
from stemline.football.field import Side
from stemline.football.offence.counting import tight_ends
from stemline.football.players import Position
from stemline.lineup.lined_up import LinedUp
from stemline.playbook.concepts import Body, RouteJob
from stemline.playbook.guards import narrowest
from stemline.playbook.role_rules import (
    Back,
    ByLetter,
    ByRole,
    Choice,
    Fullback,
    Nobody,
    Passer,
    Ranked,
    Relative,
    RoleRule,
    Snapper,
    TightEnd,
    Which,
    Wing,
)
from stemline.playbook.run_definitions import CARRIER
from stemline.playbook.said import Said, SideWord
from stemline.source import NOWHERE, Span


@dataclass
class Bound:
    """Roles with their men (labels); roles that are nobody in this call; what went wrong. A man has
    one role, but for a carrier who only shows a run and goes out: his route's, the later, is his.
    ``pointed`` are men of whom lines speak by their letters, whatever role they have."""

    men: dict[str, str] = field(default_factory=dict)
    pointed: dict[str, str] = field(default_factory=dict)
    nobody: list[str] = field(default_factory=list)
    found: list[Diagnostic] = field(default_factory=list)

    def man(self, name: str) -> str | None:
        """The man (label) of a role, or of a letter that is none."""
        return self.men.get(name) or self.pointed.get(name)

    def role_of(self, label: str) -> str | None:
        return next((r for r, m in reversed(self.men.items()) if m == label), None)


def bind(
    body: Body, picture: LinedUp, call: str, own: tuple[Span, Span] = (NOWHERE, NOWHERE)
) -> Bound:
    """Every role of ``body`` bound; ``call`` is only for the messages, ``own`` is where the
    concept's text begins and ends, if no tag is laid over it: of a tag, and of what extends
    another, a letter takes a man from his line on purpose.

    In a pass that joins a run a role that goes out for it comes before the run's line: its man
    runs his route, and the line of an `end` is passed over as where no tight end stands.
    """
    ends = line_ends(body, picture)
    if body.joins and ends:
        alone = _bind_all(body, picture, {}, call, own)
        ends = {s: m for s, m in ends.items() if not _goes_out(body, alone.role_of(m), m, picture)}
    return _bind_all(body, picture, ends, call, own)


def _runs(body: Body, role: str) -> bool:
    return any(isinstance(said.value, RouteJob) for said in body.jobs.get(role, ()))


def _goes_out(body: Body, role: str | None, label: str, picture: LinedUp) -> bool:
    """Whether what a role does in this shape is a route."""
    worlds = picture.worlds(picture.side_of(label))
    said = narrowest([s for s in body.jobs.get(role or "", ()) if s.guard.worlds & worlds])
    return said is not None and isinstance(said.value, RouteJob)


def _bind_all(
    body: Body, picture: LinedUp, ends: Mapping[str, str], call: str, own: tuple[Span, Span]
) -> Bound:
    """The roles bound where ``ends`` are taken by their place in the line."""
    bound = Bound(men=dict(ends))
    _point(body, picture, bound, call)
    waiting = dict(_rules_that_hold(body, picture))
    while ready := [r for r, rule in waiting.items() if not _leans_on(rule.value) & set(waiting)]:
        turns = sorted(ready, key=lambda r: (r not in body.first, *_turn(r, waiting[r].value)))
        role = turns[0]
        if role in body.joined:  # a joined run's blocker is not taken from those who go out
            role = next((r for r in turns if r not in body.joined and _runs(body, r)), role)
        read = any(role in (at.target, at.partner) for said in body.read for at in said.value)
        rule = waiting.pop(role)
        if (faker := _fakes_first(role, rule.value, body, picture, bound, waiting)) is not None:
            bound.men[role] = faker
            continue
        _bind_one(role, rule, picture, bound, call, read=read)
    bound.nobody += waiting
    bound.found += (*_circles(waiting), *_named_twice(body, picture, bound, call, own))
    bound.found += _with_the_ball(body, picture, bound, call)
    return bound


def _named_twice(
    body: Body, picture: LinedUp, bound: Bound, call: str, own: tuple[Span, Span]
) -> Iterable[Diagnostic]:
    """Men of whom two lines speak by two of their places, or by a place and the letter: one of the
    lines is not drawn."""
    for role in bound.nobody:
        rule = next(iter(body.rules.get(role, ())), None)
        if rule is None or rule.value.words[0] != role or role not in body.jobs:
            continue
        for label in candidates(rule.value.choices[0], picture, bound):
            other = bound.role_of(label) or ""
            if role in body.joined and other not in body.joined:
                continue  # receivers keep the pass
            theirs = next(iter(body.rules.get(other, ())), None)
            if theirs is None or theirs.value.words[0] != other or other not in body.jobs:
                continue
            letters = any(isinstance(r.value.choices[0], ByLetter) for r in (rule, theirs))
            if not letters or all(_is_inside(r.span, own) for r in (rule, theirs)):
                yield W627(man=label, first=other, second=role, call=call).at(rule.span)
                break


def _with_the_ball(body: Body, picture: LinedUp, bound: Bound, call: str) -> Iterable[Diagnostic]:
    """Routes of the man who may get the ball of a joined run: nobody runs them."""
    carrier = bound.men.get(CARRIER)
    for role in bound.nobody if carrier and body.shown and not shows_run(body) else ():
        said = next(iter(body.rules.get(role, ())), None)
        named = said is not None and said.value.words[0] == role and role not in body.joined
        if said is None or not named or not _runs(body, role):
            continue
        if carrier in candidates(said.value.choices[0], picture, bound)[:1]:
            yield W628(man=carrier, role=role, call=call).at(body.jobs[role][0].span)


def _is_inside(span: Span, own: tuple[Span, Span]) -> bool:
    """Whether a line stands in the concept's own text, and not in one that it extends."""
    name, last = own
    return span.source == name.source and name.line < span.line <= last.line


def _by_place(role: str, rule: RoleRule) -> bool:
    """Whether no line gives the role a man: its name says who he is."""
    return rule.words[0] == role and not isinstance(rule.choices[0], ByLetter)


def line_ends(body: Body, picture: LinedUp) -> Mapping[str, str]:
    """Tight ends whom a line of the run speaks of by place: they play no other role.

    Of two lines for one man the last by name stands: "weak end" before "playside end".
    """
    found: dict[str, str] = {}
    for spot in sorted(body.line, key=str, reverse=True):
        if spot.place == "end" and spot.side is not None:
            label = at_place(picture.men, "end", picture.side(spot.side))
            if label and label not in found.values():
                found[str(spot)] = label
    return found


def _point(body: Body, picture: LinedUp, bound: Bound, call: str) -> None:
    """The men of whom lines speak by their letters, or count them from a side; a line with a letter
    that holds wants its man."""
    worlds = picture.worlds(picture.count.strong)
    for letter, said in body.pointed.items():
        there = candidates(said[0].value, picture, bound)
        holding = [one for one in said if one.guard.worlds & worlds]
        if there:
            bound.pointed[letter] = there[0]
        elif holding and isinstance(holding[0].value, ByLetter):
            bound.found.append(E626(man=letter, call=call).at(holding[0].span))


def _turn(role: str, rule: RoleRule) -> tuple[bool, int, bool, str]:
    """When a role binds; the name breaks ties, so that no line's place in the text does. Of those
    named by their place only, a number is before `tight end`, which may be either."""
    loose = _by_place(role, rule) and not isinstance(rule.choices[0], Ranked)
    return isinstance(rule.choices[-1], Nobody), _relative(rule), loose, role


def _rules_that_hold(body: Body, picture: LinedUp) -> Iterable[tuple[str, Said[RoleRule]]]:
    """For each role the narrowest rule whose guard holds; a role with none plays no part."""
    for role, said in body.rules.items():
        holding = [s for s in said if s.guard.worlds & picture.worlds(_rule_side(s.value, picture))]
        chosen = narrowest(holding)
        if chosen is not None:
            yield role, chosen


def _rule_side(rule: RoleRule, picture: LinedUp) -> Side | None:
    """The side a rule's first choice looks to; the strong side where it does not say."""
    side = getattr(rule.choices[0], "side", None)
    return picture.side(side) if isinstance(side, SideWord) else picture.count.strong


def _relative(rule: RoleRule) -> int:
    """A man by his letter first, then exact rules, then those that take whoever is free on a
    side."""
    if isinstance(rule.choices[0], ByLetter):
        return -1
    return int(any(isinstance(c, Relative) for c in rule.choices))


def _leans_on(rule: RoleRule) -> set[str]:
    return {
        c.side.role for c in rule.choices if isinstance(c, Relative) and isinstance(c.side, ByRole)
    }


def _bind_one(
    role: str, rule: Said[RoleRule], picture: LinedUp, bound: Bound, call: str, *, read: bool
) -> None:
    reasons = []
    for choice, words in zip(rule.value.choices, rule.value.words, strict=True):
        if isinstance(choice, Nobody):
            bound.nobody.append(role)
            return
        there = candidates(choice, picture, bound)
        free = [label for label in there if bound.role_of(label) is None]
        if free:
            bound.men[role] = free[0]
            return
        reasons.append(_reason(choice, words, there, picture, bound))
    if (man := _had_the_number(rule.value, picture)) and bound.role_of(man) is None:
        bound.men[role] = man
        return
    alone = _only_back(rule.value, picture) if role == CARRIER else ""
    if alone and picture.man(alone).position is not Position.BACK:
        bound.men[role] = alone
        return
    bound.nobody.append(role)
    letter = rule.value.choices[0]
    if rule.value.words == (role,) and isinstance(letter, ByLetter) and not there:
        bound.found.append(E626(man=role, call=call).at(rule.span))
        return
    gone = _gone_behind(rule.value, picture)
    reasons += [f"{man} stands behind the ball after his motion, a back" for man in gone]
    # A run is nobody's by no means, and an order of reads loses whoever is looked at.
    last = "strong #2" if role == CARRIER or read else "nobody"
    if alone or any(bound.role_of(man) is None for man in gone):
        last = "back"
    line = f"{role} is {' or '.join((*rule.value.words, last))}"
    why = "; ".join(dict.fromkeys(reasons))
    bound.found.append(E620(role=role, call=call, line=line, why=why).at(rule.span))


def _fakes_first(
    role: str,
    rule: RoleRule,
    body: Body,
    picture: LinedUp,
    bound: Bound,
    waiting: Mapping[str, Said[RoleRule]],
) -> str | None:
    """The carrier of a run that is only shown, where a role with a route can be nobody but him, or
    a man who has a line of his own: he fakes, then goes out. None for any other role; of `or
    nobody` the text has it as it says."""
    carrier = bound.men.get(CARRIER)
    route = role != CARRIER and role not in body.joined and _runs(body, role)
    if carrier is None or not route or not shows_run(body):
        return None
    if body.rules[role] is body.rules[CARRIER]:
        return carrier  # his route is said of the carrier
    if any(isinstance(choice, Nobody) for choice in rule.choices) and not _by_place(role, rule):
        return None
    if rule.words[0] == role and carrier in candidates(rule.choices[0], picture, bound)[:1]:
        return carrier if bound.role_of(carrier) == CARRIER else None
    there = [label for choice in rule.choices for label in candidates(choice, picture, bound)]
    theirs = {
        label
        for other, said in waiting.items()
        if said.value.words[0] == other and other not in body.joined
        for label in candidates(said.value.choices[0], picture, bound)[:1]
    }
    free = [label for label in there if bound.role_of(label) is None and label not in theirs]
    fakes = carrier in there and not free and bound.role_of(carrier) == CARRIER
    return carrier if fakes else None


def shows_run(body: Body) -> bool:
    """Whether a body joins a run whose carrier never gets the ball: none with a key's `give`, or
    with a line of how the ball goes."""
    return CARRIER in body.first and bool(body.shown) and not (body.reactions or body.exchanges)


def _had_the_number(rule: RoleRule, picture: LinedUp) -> str:
    """Who had the number of a rule until he came behind the ball in motion, where nobody has it at
    the snap: `carrier is away #2` of a jet."""
    for choice in rule.choices:
        if isinstance(choice, Ranked):
            side = picture.side(choice.side)
            for was, number, label in picture.came:
                if was is side and number == choice.number:
                    return label
    return ""


def _only_back(rule: RoleRule, picture: LinedUp) -> str:
    """The one man behind the ball, of a rule that asks for a fullback: who is no back by position
    is the fullback of a set with nobody else there."""
    backs = picture.count.backs
    asked = any(isinstance(choice, Fullback) for choice in rule.choices)
    return backs[0] if asked and len(backs) == 1 else ""


def _gone_behind(rule: RoleRule, picture: LinedUp) -> list[str]:
    """Who stood on a side that a rule counts on until his motion brought him behind the ball."""
    counted = [c.side for c in rule.choices if isinstance(c, Ranked | Relative)]
    sides = {picture.side(word) for word in counted if isinstance(word, SideWord)}
    return [label for was, _, label in picture.came if was in sides]


def candidates(choice: Choice, picture: LinedUp, bound: Bound) -> list[str]:
    """Labels that a choice speaks of, best first, free or not."""
    counted = picture.count
    match choice:
        case Ranked(side, number):
            return list(counted.on(picture.side(side))[number - 1 : number])
        case Relative(which, side):
            there = side_of_way(side, bound, picture)
            men = list(counted.on(there)) if there is not None else []
            return men[::-1] if which is Which.INSIDE else men
        case TightEnd(word) | Wing(word):
            labels = (tight_ends if isinstance(choice, TightEnd) else wings)(picture.men)
            sides = [picture.side(word)] if word else [counted.strong, counted.weak]
            return [x for s in sides for x in labels if picture.side_of(x) is s]
        case Back(word):
            if word is None:
                return list(counted.backs)
            stands = (picture.side(word), None)
            return [b for b in counted.backs if picture.side_of(b) in stands]
        case Fullback():
            return _fullbacks(picture)
        case Passer():
            return [m.label for m in picture.men if m.position is Position.QUARTERBACK]
        case ByLetter(letter):
            return [m.label for m in picture.men if m.label == letter and not m.interior]
        case Snapper():
            out = picture.field.code.all_eligible
            return [m.label for m in picture.men if out and m.position is Position.CENTRE]
        case _:
            return []


_LEVEL = 0.5
"""Yards within which two backs are as deep, or as wide: custom."""


def _fullbacks(picture: LinedUp) -> list[str]:
    """Fullbacks by position, then whoever of the others is nearest the line; the first back apart
    who is none by position: he is the ball carrier, whoever stays in before him."""
    backs = picture.count.backs
    fullback = Position.FULLBACK

    def turn(n: int) -> tuple[bool, float, int]:
        man = picture.man(backs[n])
        return man.position is not fullback, -round(man.snap.y, 3), -n

    kinds = [picture.man(label).position for label in backs]
    if kinds == [fullback]:
        return list(backs)
    first = next((n for n, position in enumerate(kinds) if position is not fullback), 0)
    deepest = picture.man(backs[first]).snap if backs else None
    for n, position in enumerate(kinds):
        beside = picture.man(backs[n]).snap
        level = deepest is not None and abs(beside.y - deepest.y) < _LEVEL
        wider = deepest is not None and level and abs(beside.x) > abs(deepest.x) + _LEVEL
        if wider and position is not fullback:
            first, deepest = n, beside  # who dives from behind the ball is the fullback
    return [backs[n] for n in sorted(range(len(backs)), key=turn) if n != first]


def side_of_way(way: SideWord | ByRole, bound: Bound, picture: LinedUp) -> Side | None:
    """The side a word means; for a role, the side that its man comes from at the snap, or, for a
    carrier who stands over the ball, the side that he runs to."""
    if isinstance(way, SideWord):
        return picture.side(way)
    label = bound.man(way.role)
    side = picture.side_of(label) if label is not None else None
    if side is None and label is not None and way.role == CARRIER:
        side = picture.side(SideWord.PLAYSIDE)
    if side is None:
        return None
    return side.other if way.opposite else side


def _reason(
    choice: Choice, words: str, candidates: list[str], picture: LinedUp, bound: Bound
) -> str:
    """Why a choice found nobody, in football words."""
    taken = [(label, bound.role_of(label)) for label in candidates]
    busy = ", ".join(f"{label} already runs the {role}" for label, role in taken if role)
    match choice:
        case Relative(_, ByRole(other, _, _)) if bound.man(other) is None:
            return f"{other} is nobody in this call, so it has no side"
        case Relative(_, side):
            there = side_of_way(side, bound, picture)
            word = "strong" if there is picture.count.strong else "weak"
            if not candidates:
                return f"no receiver is on the {word} side"
            return f"{_ranked(taken, picture)}, nobody is left on the {word} side"
        case Ranked(side, _):
            if busy:
                return f"{words} is taken: {busy}"
            there = picture.side(side)
            has = len(picture.count.on(there))
            return f"there is no {words}: {how_many(has, 'receiver')} on the {there.word}"
        case TightEnd():
            return f"the {words} is taken: {busy}" if busy else "no man stands as a tight end"
        case Wing():
            return f"the {words} is taken: {busy}" if busy else _no_wing(picture)
        case Snapper() if not picture.field.code.all_eligible:
            return "the centre may not catch a pass under this rule code"
        case ByLetter():
            return f"{words} is taken: {busy}" if busy else f"no {words} lines up"
        case Fullback():
            return f"the {words} is taken: {busy}" if busy else "no second back is behind the ball"
        case _:
            return f"the {words} is taken: {busy}" if busy else "no back is behind the ball"


def _no_wing(picture: LinedUp) -> str:
    """How near to the line a wing stands, and who off it stands nearest."""
    where = f"off the line, at most {WING_REACH:g} yards outside its last man"
    edges = {side: max((m.snap.x * side.value for m in line_of(picture.men)), default=0.0)
             for side in Side}  # fmt: skip
    there = [
        (round(m.snap.x * side.value - edge, 1), m.label)
        for side, edge in edges.items()
        for m in picture.men
        if not m.on_line and m.snap.x * side.value > edge and m.label not in picture.count.backs
    ]
    if not there:
        return f"no man stands as a wing, {where}"
    yards, label = min(there)
    return f"no man stands as a wing, {where}: {label} is {yards:g} outside"


def _ranked(taken: list[tuple[str, str | None]], picture: LinedUp) -> str:
    parts = []
    for label, role in taken:
        rank = picture.man(label).rank
        word = "strong" if rank and rank.side is picture.count.strong else "weak"
        place = f"{word} #{rank.number}" if rank else label
        parts.append(f"{place} already runs the {role}")
    return ", ".join(parts)


def _circles(waiting: Mapping[str, Said[RoleRule]]) -> Iterable[Diagnostic]:
    """Roles that lean on themselves through others: each circle once, at its first line.

    A role that only leans on such a circle is not said: it would repeat the mistake.
    """
    told: set[str] = set()
    for role, rule in sorted(waiting.items(), key=lambda item: item[1].span):
        circle = _leads_to(role, waiting)
        if role in circle and role not in told:
            told |= {r for r in circle if role in _leads_to(r, waiting)}
            others = ", ".join(sorted(_leans_on(rule.value) & told))
            yield E621(role=role, others=others).at(rule.span)


def _leads_to(role: str, waiting: Mapping[str, Said[RoleRule]]) -> set[str]:
    """Every waiting role that a role leans on, through others too."""
    reached: set[str] = set()
    ahead = {role}
    while ahead:
        ahead = {o for r in ahead for o in _leans_on(waiting[r].value) & set(waiting)} - reached
        reached |= ahead
    return reached
