"""From whom to whom the ball goes in one call: the lines that say it, put in the one order in
which the ball can go, and the ways of the men who meet for it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from types import MappingProxyType

from stemline.diagnostics.catalogue.exchange_lines import E786, E787, E788
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.football.blocking.carrying import hole, mesh, stands_wide
from stemline.football.exchanges import BallMoves, Exchange, said_any
from stemline.football.play import Assignment, Kind, Man, Motion
from stemline.football.players import Position
from stemline.geometry.paths import Ending, Leg, Path, Point
from stemline.lineup.lined_up import LinedUp
from stemline.playbook.concepts import Body
from stemline.playbook.exchange_definitions import QUARTERBACK, SNAPPER_SAID, ExchangeDef
from stemline.playbook.guards import narrowest
from stemline.playbook.run_definitions import CARRIER
from stemline.playbook.said import SideWord
from stemline.resolve.roles import Bound, candidates
from stemline.source import NOWHERE

_TURN = 1.2
"""The reach in yards of a turn on the way to an exchange."""
_HANDS_ON_AT = 5.0
"""Yards behind the line at which a man hands the ball on, over the backside guard, where the coach
says neither where nor what he runs. Common practice, no published source."""
_OVER_HIM = 0.5
"""Yards apart of two places that are one on a man's way."""
_RUNS_BY = 5.0
"""Yards at the snap up to which a man in motion is by the quarterback before a fake is made: some
six yards a second, and eight tenths until the fake. Common practice, no published source."""


@dataclass(frozen=True)
class BallWay:
    """The exchanges of a call in order, and what is wrong: fakes before their giver's own, but
    behind a hand-off to a man who runs by in motion, or one whose line stands before theirs."""

    exchanges: tuple[Exchange, ...]
    found: tuple[Diagnostic, ...] = ()


def ball_way(
    body: Body,
    bound: Bound,
    picture: LinedUp,
    kind: Kind,
    call: str,
    motions: Mapping[str, Motion] = MappingProxyType({}),
) -> BallWay:
    """How the ball goes. Said nothing: the quarterback hands it to the carrier of a run, or throws
    his reads. A line whose man is nobody in this call is passed over."""
    passer = _at(picture, Position.QUARTERBACK)
    snapper = _at(picture, Position.CENTRE)
    lines = [
        (said, _usual(made, passer, body, bound, picture))
        for line in _holding(body, picture)
        if (named := _named(line, bound, picture)) is not None
        for said, made in (named,)
    ]
    fakes = [x for x in lines if x[1].kind is BallMoves.FAKE]
    gives = [x for x in lines if x[1].kind is not BallMoves.FAKE]
    snaps = [x for x in gives if x[1].kind is BallMoves.SNAP]
    gives = [x for x in gives if x not in snaps]
    first = snaps[0][1].taker if snaps else passer
    if not first:
        return BallWay(())
    carrier = bound.men.get(CARRIER, "")
    runs = kind is Kind.RUN or bool(body.reactions) or any(x.giver == carrier for _, x in gives)
    if carrier and runs and all(x.taker != carrier for _, x in gives):
        gives = [*_implied(body, bound, picture, first, carrier, bool(gives)), *gives]
    if any(x.giver != snapper for _, x in snaps):
        gives += [x for x in snaps if x[1].giver != snapper]
        snaps = [x for x in snaps if x[1].giver == snapper]
    found_ways = ways(first, gives)
    if not found_ways:
        return BallWay((), _no_way(first, gives, call))
    if len(found_ways) > 1:
        return BallWay((), _two_ways(first, found_ways, gives, call))
    ordered = list(found_ways[0])
    for fake in fakes:
        own = [n for n, x in enumerate(ordered) if x[1].giver == fake[1].giver]
        at = next((n for n in own if not _is_behind(fake, ordered[n])), len(ordered))
        at = min(at, own[0] + 1) if own else at
        first_by = at < len(ordered) and at in own and _runs_by(ordered[at][1], picture, motions)
        ordered.insert(at + first_by, fake)
    ordered = [*snaps, *ordered]
    found = _nowhere(ordered, body, bound, kind, call)
    return BallWay(tuple(x for _, x in ordered), tuple(found))


def _is_behind(fake: OneLine, give: OneLine) -> bool:
    """Whether a fake is said behind the hand-off, in one text: then it is made behind it."""
    own, other = fake[1].span, give[1].span
    same = fake[0] is not None and give[0] is not None and own.source == other.source
    return same and other.line < own.line


def _runs_by(made: Exchange, picture: LinedUp, motions: Mapping[str, Motion]) -> bool:
    """Whether a man in motion is by the giver, to take the ball, before a fake can be made."""
    motion = motions.get(made.taker)
    near = picture.man(made.giver).snap.distance(picture.man(made.taker).snap) <= _RUNS_BY
    return made.kind is BallMoves.HAND and motion is not None and motion.running and near


OneLine = tuple[ExchangeDef | None, Exchange]
"""A line of the text, none for an exchange that nobody has to say, and what it is in this call."""


def _at(picture: LinedUp, position: Position) -> str:
    return next((m.label for m in picture.men if m.position is position), "")


def _holding(body: Body, picture: LinedUp) -> Iterator[ExchangeDef]:
    """The lines whose guard holds; of two of one giver and taker the narrower."""
    known = picture.worlds(picture.count.strong)
    for lines in body.exchanges.values():
        holding = [said for said in lines if said.guard.worlds & known]
        for said in holding:
            if narrowest([s for s in holding if s.value.taker == said.value.taker]) is said:
                yield said.value


def _named(said: ExchangeDef, bound: Bound, picture: LinedUp) -> OneLine | None:
    """The line with its men; None where one of them is nobody here."""
    giver, taker, *others = (
        _who(name, said, bound, picture) for name in (said.giver, said.taker, *said.others)
    )
    if not giver or not taker or giver == taker:
        return None
    made = Exchange(
        said.kind, giver, taker, None, said.after, said.place.words if said.place else "",
        True, tuple(filter(None, others)), said.runs, said.span,
    )  # fmt: skip
    return said, replace(made, at=_place(said, made, picture))


def _usual(made: Exchange, passer: str, body: Body, bound: Bound, picture: LinedUp) -> Exchange:
    """The place where a man hands it on of whom no line says where he runs, and none where."""
    if made.at is None and made.kind.flies and made.taker == passer and made.giver != passer:
        stood = picture.man(passer)
        # He has turned and dropped by then; where he stood, the ball would come to him forward.
        return replace(made, at=_dropped(stood)) if stood.under_centre else made
    role = bound.role_of(made.giver)
    hands = made.kind is BallMoves.HAND and made.giver != passer
    if made.at is not None or not hands or role is None or body.jobs.get(role):
        return made
    x = hole("guard", picture.side(SideWord.BACKSIDE), picture.men).x
    return replace(made, at=Point(x, -_HANDS_ON_AT), words=f"{_HANDS_ON_AT:g} deep, backside guard")


def _dropped(passer: Man) -> Point:
    return Point(passer.snap.x, -_HANDS_ON_AT)


def in_exchanges(body: Body, bound: Bound, picture: LinedUp) -> frozenset[str]:
    """The men (labels) whom a line about the ball's way names."""
    return frozenset(
        _who(name, said, bound, picture)
        for said in _holding(body, picture)
        for name in (said.giver, said.taker, *said.others)
    )


def _who(name: str, said: ExchangeDef, bound: Bound, picture: LinedUp) -> str:
    if man := bound.man(name):
        return man
    if name == QUARTERBACK:
        return _at(picture, Position.QUARTERBACK)
    if name == SNAPPER_SAID:
        return _at(picture, Position.CENTRE)
    choice = said.by_place.get(name)
    return next(iter(candidates(choice, picture, bound)), "") if choice is not None else ""


def _place(said: ExchangeDef, made: Exchange, picture: LinedUp) -> Point | None:
    """Where the ball is taken, as the coach says; None where the men's ways decide."""
    if said.place is None:
        return None
    place, giver, taker = said.place, picture.man(made.giver).snap, picture.man(made.taker).snap
    x = taker.x if said.kind.flies else giver.x
    if place.over is not None:
        side = picture.side(place.over.side or SideWord.PLAYSIDE)
        x = hole(place.over.point, side, picture.men).x
    y = taker.y if said.kind.flies else giver.y
    if place.deep is not None:
        y = -place.deep
    elif place.behind is not None:
        y = giver.y - place.behind
    return Point(x, y)


def _implied(
    body: Body, bound: Bound, picture: LinedUp, first: str, carrier: str, said: bool
) -> list[OneLine]:
    """The exchanges that nobody has to say: from the quarterback, through the hands that `handoff`
    names, to the carrier. A quarterback who stands wide hands nothing to anybody."""
    known = picture.worlds(picture.count.strong)
    passer = picture.man(first)
    if passer.position is Position.QUARTERBACK and stands_wide(passer):
        return []
    through = None
    if not said:
        through = narrowest([s for s in body.handoffs if s.guard.worlds & known])
    between = [man for r in through.value if (man := bound.man(r))] if through else []
    hands = [first, *between, carrier]
    span = through.span if through else NOWHERE
    return [
        (None, Exchange(BallMoves.HAND, giver, taker, said=False, span=span))
        for giver, taker in pairwise(hands)
        if giver != taker
    ]


def ways(first: str, lines: Sequence[OneLine]) -> list[tuple[OneLine, ...]]:
    """Every order of all the lines in which the ball is where each of them takes it from."""
    if not lines:
        return [()]
    made = []
    for n, line in enumerate(lines):
        if line[1].giver == first:
            rest = [*lines[:n], *lines[n + 1 :]]
            made += [(line, *way) for way in ways(line[1].taker, rest)]
        if len(made) > 1:
            break
    return made


def _spoken(line: OneLine) -> str:
    """As it is said after "after": `hands to carrier`."""
    said, made = line
    return f"{made.kind.value} to {said.taker if said else CARRIER}"


def _no_way(first: str, lines: Sequence[OneLine], call: str) -> tuple[Diagnostic, ...]:
    """Where the ball stops, and who would give it on without having it."""
    left, holder, last = list(lines), first, "snaps to quarterback"
    while (step := next((x for x in left if x[1].giver == holder), None)) is not None:
        left.remove(step)
        holder, last = step[1].taker, _spoken(step)
    said = next((x for x in left if x[0] is not None), None)
    if said is None or said[0] is None:
        return ()
    giver = next((x[0].taker for x in lines if x[0] and x[1].taker == holder), "quarterback")
    told = E786(call=call, last=last, man=said[0].giver, giver=giver)
    return (told.at(said[1].span),)


def _two_ways(
    first: str, found: Sequence[Sequence[OneLine]], lines: Sequence[OneLine], call: str
) -> tuple[Diagnostic, ...]:
    told = [" > ".join((first, *(x.taker for _, x in way))) for way in found[:2]]
    span = next((x.span for _, x in reversed(lines) if x.said), NOWHERE)
    return (E787(call=call, first=told[0], second=told[1]).at(span),)


def _nowhere(
    ordered: Sequence[OneLine], body: Body, bound: Bound, kind: Kind, call: str
) -> Iterator[Diagnostic]:
    """On a run, who has the ball last and runs nowhere."""
    last = next((x for x in reversed(ordered) if x[1].kind is not BallMoves.FAKE), None)
    if kind is not Kind.RUN or last is None or last[0] is None:
        return
    role = bound.role_of(last[1].taker)
    if last[1].kind is BallMoves.THROW or (role is not None and body.jobs.get(role)):
        return
    yield E788(call=call, man=last[1].taker, role=role or last[0].taker).at(last[1].span)


# The men's ways.


def on_their_ways(
    assigned: Sequence[Assignment], exchanges: Sequence[Exchange], picture: LinedUp
) -> tuple[Assignment, ...]:
    """The assignments with the path of each man who meets another for the ball: a man with no job
    of his own goes to where he gets it and on to where he gives it, and waits there."""
    if not said_any(exchanges):
        return tuple(assigned)
    return tuple(_led(a, exchanges, picture) for a in assigned)


def _led(a: Assignment, exchanges: Sequence[Exchange], picture: LinedUp) -> Assignment:
    man = picture.man(a.man)
    if man.position is Position.QUARTERBACK and a.path is None:
        return a
    places = _distinct(_places(a.man, exchanges))
    if not places:
        return a
    if a.path is None and not a.job:
        passer = next((m for m in picture.men if m.position is Position.QUARTERBACK), None)
        meets, _ = ways_through(a.man, exchanges, passer.label if passer else "")
        handed = any(x.taker == a.man and x.kind is BallMoves.HAND for x in exchanges)
        if meets and handed and passer is not None:
            places = [*mesh(man, passer), *places]
        legs = [Leg(p, _TURN) for p in places[:-1]] + [Leg(places[-1])]
        return replace(a, path=Path(man.snap, tuple(legs), Ending.STAND))
    return a


def _places(man: str, exchanges: Sequence[Exchange]) -> Iterator[Point]:
    """Where he gets the ball and gives it, in order. A throw is given from where he has it."""
    for x in exchanges:
        if x.at is None or man not in (x.giver, x.taker) or x.kind is BallMoves.SNAP:
            continue
        if x.taker == man or not x.kind.flies:
            yield x.at


def _distinct(points: Iterable[Point]) -> list[Point]:
    made: list[Point] = []
    for point in points:
        if not made or made[-1].distance(point) > _OVER_HIM:
            made.append(point)
    return made


def ways_through(
    man: str, exchanges: Sequence[Exchange], passer: str
) -> tuple[bool, tuple[Point, ...]]:
    """Whether a runner's way to his hole goes by the quarterback, who hands him the ball, and the
    places where he meets others for it."""
    mine = [x for x in exchanges if man in (x.giver, x.taker) and x.kind is not BallMoves.FAKE]
    taken = next((x for x in mine if x.taker == man), None)
    if taken is None or not taken.said:
        meets = True
    else:
        meets = taken.kind is BallMoves.HAND and taken.at is None and taken.giver == passer
    return meets, tuple(_distinct(_places(man, mine)))
