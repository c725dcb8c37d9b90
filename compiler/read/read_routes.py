"""Routes: the strokes of a route block, ``runs sit 8 over ball`` of a role, where he decides."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import replace
from types import MappingProxyType

from stemline.diagnostics.catalogue.football import (
    E402,
    E415,
    E430,
    E434,
    E440,
    E441,
    E442,
    E443,
    E444,
    E448,
    E449,
    E462,
    E479,
)
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.football.blocking.block_names import BLOCKS, DEFENDERS
from stemline.football.offence.landmarks import Landmark
from stemline.football.offence.rails import SHARE, Rail, stem_of
from stemline.football.offence.routes import LIBRARY
from stemline.football.offence.strokes import (
    DOWN_SET,
    PASS_SET,
    Break,
    Decide,
    Depth,
    Lateral,
    Route,
    RunTo,
    Settle,
    Stroke,
    Target,
    Up,
    set_at_the_line,
    to_the_flat,
)
from stemline.football.offence.tracing import called_depth
from stemline.playbook.concepts import RouteJob
from stemline.playbook.pass_block import PassBlock
from stemline.playbook.role_rules import ByRole
from stemline.playbook.said import SideWord
from stemline.read.pass_blocks import looked_for, released
from stemline.read.read_places import LANDMARKS, SIDES
from stemline.read.words import Misread, Missed, Words, one_phrase
from stemline.source import Span
from stemline.syntax.tree import AtomKind, Fact, Linked, Mark, Phrase, Series, Value, items

Runners = Mapping[str, tuple[str, ...]]
"""By a route the roles that run it."""
STROKES = ("up", "in", "out", "back", "across", "to", "over", "rounded", "settle")
_WAYS = ("away from", "same side as", "toward", "across from")
ALSO_CALLED: Mapping[str, str] = {
    "check and release": "check", "check down": "check", "check release": "check", "clear": "go",
    "clear out": "go", "drag": "cross", "flag": "corner", "flare": "swing", "fly": "go",
    "glance": "skinny post", "off": "go", "rail": "wheel", "shallow": "cross", "smash": "hitch",
    "square in": "in", "square out": "out", "stop": "hitch", "streak": "go", "vertical": "go",
}  # fmt: skip
"""Other names of routes, and the one that is drawn: where the playbook has no route so called.
Common practice, no published source."""
CHECK = "check"
"""The route of a man who looks for a rusher first; another may follow: ``check then swing``."""
TURNS_IN = (
    "bender", "post", "skinny post", "slant", "in", "dig", "over", "cross", "high cross", "snag",
    "curl", "hook",
)  # fmt: skip
TO_THE_BALL = (
    "across",
    "across the field",
    "across the formation",
    "over the top",
    "over the middle",
    *(
        f"{way} {where}"
        for way in ("across", "to", "toward", "towards")
        for where in ("the ball", "the middle", "ball", "middle", "inside")
    ),
)
"""Where a route goes anyhow that turns in: ``bender across the ball``."""
SITS_DOWN = tuple(
    f"{joint}{sits}"
    for joint in ("", "and ")
    for sits in ("settle", "settle down", "settles", "sit", "sit down", "sits", "sits down", "stop")
)
LEANS = 60.0
"""Degrees off straight up to which a break leans, and is no square cut."""
BROKEN_OFF = 3.5
"""Yards of such a break in front of another, as in ``slant and go``. Common practice."""
_DEEP = -2.0
"""Yards past the line, behind which an edge is not checked."""
_BACK = {"in": (Lateral.IN, 135.0), "out": (Lateral.OUT, 135.0)}


def read_strokes(value: Value) -> tuple[Stroke, ...]:
    """Pieces parted by ``then``; each is one stroke of the closed list."""
    strokes: list[Stroke] = []
    for piece in items(value, Mark.THEN):
        if not isinstance(piece, Phrase):
            raise Misread(E402(what="strokes parted by `then`").at(piece.span))
        strokes.append(read_stroke(piece))
    return tuple(strokes)


def read_stroke(phrase: Phrase) -> Stroke:
    words = Words([phrase])
    rounded = words.take_word("rounded") is not None
    name = words.expect(STROKES, E440)
    stroke = _stroke(name, words, rounded)
    words.finish("a stroke")
    return stroke


def _stroke(name: str, words: Words, rounded: bool) -> Stroke:
    match name:
        case "up":
            words.take_word("to")
            return Up(_depth(words))
        case "in" | "out":
            yards = _yards(words)
            degrees = _yards(words) if words.take_word("at") else 90.0
            return Break(Lateral(name), yards, degrees, rounded)
        case "back":
            way = words.take_word("in", "out") or "in"
            lateral, degrees = _BACK[way]
            return Break(lateral, _yards(words), degrees, rounded)
        case "across":
            words.take_word("to")
            target = read_target(words)
            target = Target(target.landmark, target.outside, far=True)
            return RunTo(target, _at_depth(words), speed=True)
        case "to" | "over":
            return RunTo(read_target(words), _at_depth(words), speed=True)
        case _:
            return Settle()


def _depth(words: Words) -> Depth:
    if words.take_word("depth"):
        return Depth(0, called=True)
    yards = _yards(words)
    if read_behind(words):
        return Depth(-yards)
    if words.take_name(("short of depth",)):
        return Depth(-yards, called=True)
    if words.take_name(("past depth",)):
        return Depth(yards, called=True)
    return Depth(yards)


def read_behind(words: Words) -> bool:
    """Whether a depth that was read is behind the line: ``1 behind``, ``1 behind the line``."""
    if words.take_word("behind") is None:
        return False
    words.take_name(("the line",))
    return True


def _at_depth(words: Words) -> Depth | None:
    return _depth(words) if words.take_word("at") else None


def _yards(words: Words) -> float:
    yards = words.take_number()
    if yards is None:
        raise words.miss(E441)
    return yards


def read_target(words: Words) -> Target:
    """``far tackle``, ``2 inside numbers``, ``6 past tackle`` (past: outside it)."""
    yards = words.take_number()
    outside = 0.0
    if yards is not None:
        measure = words.expect(("inside", "outside", "past"), E434)
        outside = -yards if measure == "inside" else yards
    words.take_word("the")
    far = words.take_word("far") is not None
    if words.take_word("middle"):
        return Target(Landmark.BALL, outside, far)
    landmark = words.expect(LANDMARKS, E430)
    return Target(LANDMARKS[landmark], outside, far)


def read_run(
    value: Value | None,
    span: Span,
    routes: Mapping[str, Route],
    roles: Collection[str],
    runners: Runners = MappingProxyType({}),
) -> RouteJob:
    """``ROUTE [depth] [over|to place [at depth]] [away from role | side] [then strokes]``.

    ``runners`` are, by a route, the roles that run it: one that a single man runs names him.
    """
    pieces = items(value, Mark.THEN)
    if not pieces or not isinstance(pieces[0], Phrase):
        at = value.span if value is not None else span
        raise Misread(E402(what="a route").at(at))
    words = Words([pieces[0]])
    route = _route(words, routes)
    looks: PassBlock | None = None
    if route.name == CHECK:
        begins = words.at
        looked = looked_for(words)
        looks = looked if words.at > begins else None
        pieces = pieces[:1] if len(pieces) == 2 and released(pieces[1]) else pieces
        if words.done and len(pieces) > 1 and _names_route(pieces[1], routes):
            rest = pieces[1] if len(pieces) == 2 else Series(Mark.THEN, tuple(pieces[1:]))
            return _after_check(route, looks, read_run(rest, span, routes, roles, runners))
        route = _checking(route, looks)
    depth = words.take_number()
    if depth is not None and read_behind(words):
        depth = -depth
    target: Target | None = None
    end: Depth | None = None
    way: SideWord | ByRole | None = None
    rail: Rail | None = None
    if route.name in TURNS_IN:
        _across(words)
    later: list[Stroke] = []
    start = words.at
    while not words.done:
        if words.take_word("up"):
            rail = _rail(words, route, depth)
        elif (toward := _to_a_side(words, roles, runners)) is not None:
            way = toward
        elif words.take_word("over", "to") or _at_a_place(words):
            target = read_target(words)
            end = _at_depth(words)
        elif _sits_down(words):
            later.append(Settle())
        else:
            edge = ("edge",) if route.name == CHECK and words.at == start else ()
            way = read_way(words, roles, E443, ("over", "to", "up", *edge), runners)
    if rail is not None and target is not None and _ends_upfield(route):
        raise Misread(E449(route=route.name).at(pieces[0].span))
    extra = " ".join(a.text for a in words.atoms[start:])
    said = []
    for piece in pieces[1:]:
        if not isinstance(piece, Phrase):
            raise Misread(E402(what="strokes parted by `then`").at(piece.span))
        later.append(read_stroke(piece))
        said.append(piece.text)
    told = _words(route, depth, extra, said)
    if looks is not None:
        told = f"Check {_seen(looks)}, then out{told.removeprefix('Check')}"
    route = _cut_off(route, later)
    return RouteJob(route, depth, target, way, tuple(later), told, end, rail, looks)


_BLOCKS_FIRST = {"down": "Block down", "chip": "Chip the edge rusher"}


def read_block_then_run(
    value: Value | None,
    span: Span,
    routes: Mapping[str, Route],
    roles: Collection[str],
    runners: Runners = MappingProxyType({}),
) -> RouteJob | None:
    """``down then leak``, ``chip then flat``: he blocks first and goes out whoever comes. None for
    a block alone."""
    first, *rest = items(value, Mark.THEN) or (None,)
    told = _BLOCKS_FIRST.get(first.text.casefold()) if isinstance(first, Phrase) else None
    if told is None or not rest or not _names_route(rest[0], routes):
        return None
    goes = rest[0] if len(rest) == 1 else Series(Mark.THEN, tuple(rest))
    job = read_run(goes, span, routes, roles, runners)
    strokes = job.route.strokes
    if set_at_the_line(strokes)[:1] == (PASS_SET,):
        strokes = strokes[1:]  # the block is the look for a rusher
    sets: tuple[Stroke, ...] = (DOWN_SET,)
    if told != _BLOCKS_FIRST["down"]:
        sets, strokes = BLOCKS["chip"].strokes, to_the_flat(strokes, looked=True)
        strokes = strokes[1:] if _from_behind(strokes) else strokes
    words = f"{told}, then {job.words[:1].lower()}{job.words[1:]}"
    return replace(job, route=replace(job.route, strokes=(*sets, *strokes)), words=words)


def in_a_run(fact: Fact, job: RouteJob, who: str) -> Diagnostic:
    """What is told of such a line in a run, where who blocks stays on his man."""
    first = items(fact.value, Mark.THEN)[0]
    assert isinstance(first, Phrase)
    said = first.text.casefold()
    instead = "down or climb" if said == "down" else "on or climb"
    told = E479(who=who, first=said, route=job.route.name, instead=instead)
    return told.at(fact.value.span if fact.value is not None else fact.span)


def _across(words: Words) -> None:
    """Passes over where a route goes anyhow; `across from` a man is a way of its own."""
    at = words.at
    if words.take_name(TO_THE_BALL) == "across" and words.take_word("from"):
        words.at = at


def _at_a_place(words: Words) -> bool:
    """Whether `at` and a place stand here, as where he ends: ``hook 6 at 2 outside tackle``."""
    at = words.at
    if words.take_word("at"):
        place = words.at
        words.take_number()
        measured = words.at == place or words.take_word("inside", "outside", "past") is not None
        if measured and words.take_name((*LANDMARKS, "the", "far", "middle")) is not None:
            words.at = place
            return True
    words.at = at
    return False


def _sits_down(words: Words) -> bool:
    """Whether he is to sit where the route ends, and nothing stands behind it: ``over 18 and sit
    down`` as ``over 18 then settle``."""
    at = words.at
    if words.take_name(SITS_DOWN) is not None and words.done:
        return True
    words.at = at
    return False


def _cut_off(route: Route, later: Sequence[Stroke]) -> Route:
    """A slant or post that is not the end of it is broken off where a double move is, and not run
    to where it is drawn alone: ``slant then in 8``. Where he sits down at its end it is whole."""
    last = route.strokes[-1] if route.strokes else None
    goes_on = bool(later) and not isinstance(later[0], Settle)
    if not goes_on or LIBRARY.get(route.name) != route or not isinstance(last, Break):
        return route
    if not 0 < last.degrees <= LEANS or last.yards <= BROKEN_OFF:
        return route
    return replace(route, strokes=(*route.strokes[:-1], replace(last, yards=BROKEN_OFF)))


def _to_a_side(words: Words, roles: Collection[str], runners: Runners) -> SideWord | ByRole | None:
    """``to the field``, ``to the weak side``, ``to the settle side``: a way, as if it stood there
    without `to`; None where a place follows."""
    at = words.at
    if words.take_word("to"):
        words.take_word("the")
        side = words.take_name(SIDES)
        if side is not None:
            words.take_word("side")
            return SIDES[side]
        here = words.here
        role = _role(words, roles, runners)
        if role is not None and words.take_word("side"):
            return ByRole(role, False, here)
    words.at = at
    return None


def _names_route(piece: Value, routes: Mapping[str, Route]) -> bool:
    """Whether a piece behind `then` is a route, and no stroke of that name: over is one where he
    goes over a place, and a route by its depth."""
    if not isinstance(piece, Phrase):
        return False
    first, *rest = piece.atoms
    deep = not rest or (
        rest[0].kind is AtomKind.NUMBER and not {a.word for a in rest[1:2]} & {"outside", "inside"}
    )
    if first.word in STROKES and not (first.word == "over" and deep):
        return False
    return Words([piece]).take_name((*routes, *ALSO_CALLED)) is not None


def _after_check(check: Route, looks: PassBlock | None, job: RouteJob) -> RouteJob:
    """``check then swing weak``: he looks for a rusher where a check does, and goes from there."""
    goes = to_the_flat(job.route.strokes, looked=True)
    if looks is not None and looks.rule.at_edge and _from_behind(goes):
        goes = goes[1:]  # from the edge he swings out, and not back behind the ball first
    looked = _checking(check, looks).strokes[0]
    route = replace(job.route, name=check.name, strokes=(looked, *goes))
    seen = f" {_seen(looks)}" if looks is not None else ""
    told = f"Check{seen}, then {job.words[:1].lower()}{job.words[1:]}"
    return replace(job, route=route, words=told, looks=looks)


def _from_behind(strokes: Sequence[Stroke]) -> bool:
    """Whether a route goes out behind the line in an arc, as a swing."""
    first = strokes[0] if len(strokes) > 1 else None
    return isinstance(first, RunTo) and first.depth is not None and first.depth.at(0) < _DEEP


def _checking(check: Route, looks: PassBlock | None) -> Route:
    """A check of the edge is made there, and goes on outside."""
    if looks is None or not looks.rule.at_edge or LIBRARY.get(check.name) != check:
        return check
    out = BLOCKS["chip"].then[0]
    assert isinstance(out, RunTo)
    return replace(check, strokes=(*BLOCKS["edge"].strokes, replace(out, depth=Depth(0, True))))


def _seen(looks: PassBlock) -> str:
    """Whom he looks for, in words: ``the weak edge``."""
    if looks.rule.at_edge:
        return f"the {looks.edge}"
    return f"the {looks.wants[0]}" if looks.wants else "inside out"


def _rail(words: Words, route: Route, depth: float | None) -> Rail:
    """What stands behind `up`: a line of the field, and `by` which depth he is on it."""
    at = words.last
    words.take_word("the")
    line = read_target(words)
    by = _yards(words) if words.take_word("by") else None
    stem = stem_of(route.strokes, called_depth(route, depth))
    said = words.here if by is not None else at
    if stem is None:
        raise Misread(E448(route=route.name).at(at))
    if by is not None and not 0 < by < stem:
        raise Misread(
            E415(route=route.name, by=f"{by:g}", stem=f"{stem:g}", less=f"{stem * SHARE:.0f}").at(
                said
            )
        )
    return Rail(line, by)


def _ends_upfield(route: Route) -> bool:
    return isinstance(next(s for s in reversed(route.strokes) if not isinstance(s, Settle)), Up)


def _route(words: Words, routes: Mapping[str, Route]) -> Route:
    number = words.take(AtomKind.NUMBER)
    if number is not None:
        if number.text in routes:
            return routes[number.text]
        words.at -= 1
    name = words.take_name((*routes, *ALSO_CALLED))
    if name is not None and name not in routes:
        name = ALSO_CALLED[name]
    if name is None:
        name = _one_of_many(words, routes)
    if name is None:
        raise words.miss(E442, routes)
    return routes[name]


def _one_of_many(words: Words, routes: Mapping[str, Route]) -> str | None:
    """``X, Y runs seams``: a route said of several men."""
    said = {form: name for name in routes for form in (f"{name}s", f"{name}es") if name[-1:] != "s"}
    many = words.take_name(said)
    return said[many] if many is not None else None


def _role(words: Words, roles: Collection[str], runners: Runners) -> str | None:
    """A role, or the only man of a route: ``same side as stick``."""
    role = words.take_name(roles)
    if role is None and (route := words.take_name(runners)) is not None:
        men = [man for man in runners[route] if man in roles]
        role = men[0] if len(men) == 1 else None
    return role


def read_way(
    words: Words,
    roles: Collection[str],
    code: Missed,
    also: Iterable[str] = (),
    runners: Runners = MappingProxyType({}),
) -> SideWord | ByRole:
    """``away from settle``, ``same side as settle`` or a side word.

    ``also`` are other right words for this place, which a misspelt one may have meant.
    """
    name = words.take_name((*_WAYS, *SIDES))
    if name in SIDES:
        words.take_word("side")
        return SIDES[name]
    if name is None:
        raise words.miss(code, (*_WAYS, *SIDES), also=also)
    at, start = words.here, words.at
    role = _role(words, roles, runners)
    if role is None:
        words.at = start
        words.take_word("the")
        side = words.take_name(SIDES)
        if side is not None:  # `away from call` is a side too
            words.take_word("side")
            away = name in ("away from", "across from")
            return SIDES[side].opposite if away else SIDES[side]
        words.at = start
        raise words.miss(E444, roles)
    return ByRole(role, name in ("away from", "across from"), at, name == "across from")


def _words(route: Route, depth: float | None, extra: str, then: list[str]) -> str:
    shown = f"{route.name[:1].upper()}{route.name[1:]}"
    if depth is not None or route.taught:
        yards = route.depth if depth is None else depth
        shown += f" at {abs(yards):g}{' behind the line' * (yards < 0)}"
    parts = [f"{shown} {extra}".strip(), *then]
    return ", then ".join(parts)


def read_decide(fact: Fact) -> Decide:
    """``decides at 6 on corner``: yards past the line, and the defender whom he looks at."""
    value = fact.value
    head = value.head if isinstance(value, Linked) else value
    words = Words([one_phrase(head, "`at` and a depth", fact.span)])
    words.take_word("at")
    depth = words.take_number()
    if depth is None:
        raise words.miss(E441)
    words.finish("a depth")
    return Decide(depth, read_on(value))


def read_on(value: Value | None) -> str:
    """The described defender after ``on``, or nothing."""
    link = value.link("on") if isinstance(value, Linked) else None
    if link is None:
        return ""
    words = Words([one_phrase(link, "a defender", link.span)])
    defender = words.expect(DEFENDERS, E462)
    words.finish("a defender")
    return defender
