"""What only the pages of a book need: runs against other fronts, and a sheet a formation, look
and protection.

Nothing here is proved. It is built for a printed book alone, so that a check does not wait for it.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import replace
from functools import cached_property

from stemline.diagnostics.diagnostic import Diagnostic
from stemline.football.conditions import EVERY_MOVE, always
from stemline.football.field import BallSpot, Way
from stemline.football.later import later
from stemline.football.offence.strokes import Route
from stemline.football.play import (
    ConceptSheet,
    FormationSheet,
    Kind,
    LookSheet,
    MotionSheet,
    Play,
    ProtectionSheet,
    RouteSheet,
    Season,
)
from stemline.football.put_to_looks import PutToLooks
from stemline.playbook.concepts import Body, Concept, RouteJob
from stemline.playbook.look_definitions import LookDef
from stemline.playbook.places import AtLandmark, AtMan, Between, FromHere, Home, Where
from stemline.playbook.playbook import Playbook
from stemline.playbook.role_rules import Back, Ranked, RoleRule
from stemline.playbook.said import Said, SideWord
from stemline.read.ready_looks import look_of
from stemline.resolve.expand import Expander, Order
from stemline.resolve.season import Calls
from stemline.source import Span

_RUNNER = "runner"
_NAMELESS = ""
"""A route is nobody's: the man who shows it has no letter."""
MOST_SETS = 4
"""Sets of the offence that a look is shown against: as many as a page has room for."""


Plays = Callable[[], tuple[Play, ...]]
"""Makes plays, each against a look."""
Put = Callable[[Order, BallSpot, tuple[str, ...], Plays], PutToLooks | None]
"""What is known of a call from a spot against looks by their keys, else worked out from the plays
that the last gives; None where it has none."""


def with_views(
    book: Playbook,
    calls: Calls,
    season: Season,
    expander: Expander | None = None,
    put: Put | None = None,
) -> Season:
    """``season`` with each concept's first call against every look of the playbook, and the first
    of those that read a defender; ``put`` gives what comes of a pass's looks in their place."""
    maker = expander or Expander(book)
    viewed = (_viewed(book, calls, season, c, maker, put) for c in season.concepts)
    return replace(season, concepts=tuple(viewed))


def with_sheets(book: Playbook, season: Season, expander: Expander | None = None) -> Season:
    """``season`` with its sheets of formations, motions, routes, looks and protections, each kind
    made when somebody asks for it."""
    sheets = _Sheets(book, season, expander or Expander(book))
    known = {name: value for name, value in vars(season).items() if name not in _SHEETS}
    return later(Season, known, sheets.of)


_SHEETS = ("formations", "motions", "routes", "looks", "protections")


class _Sheets:
    def __init__(self, book: Playbook, season: Season, expander: Expander) -> None:
        self._book, self._season = book, season
        self._posing = _Posing(book, expander)

    def of(self, name: str) -> dict[str, object]:
        book, posing, keys = self._book, self._posing, self._keys
        match name:
            case "formations":
                return {name: _formations(book, self._stands, posing)}
            case "motions":
                return {name: _motions(book, self._season, keys, posing)}
            case "routes":
                return {name: _routes(book, keys, posing)}
            case "looks":
                return {name: _looks(book, keys, _sets(keys, self._stands), posing)}
        return {"protections": _protections(book, self._season, keys, posing)}

    @cached_property
    def _stands(self) -> dict[str, Play]:
        return _standing(self._book, self._posing)

    @cached_property
    def _keys(self) -> list[str]:
        return _by_use(self._season, self._stands)


def _viewed(
    book: Playbook,
    calls: Calls,
    season: Season,
    sheet: ConceptSheet,
    expander: Expander,
    put: Put | None,
) -> ConceptSheet:
    mine = tuple(p for p in season.plays if p.call.concept == sheet.name)
    if not mine:
        return sheet
    first = mine[0]
    order = calls.by_name[first.call.spoken]
    known = {name: value for name, value in vars(sheet).items() if name not in _VIEWS}

    def faced() -> tuple[Play, ...]:
        made = (expander.expand(order, first.ball, look_key=key) for key in _whole_looks(book))
        return tuple(p for p in _shown(made) if p.defence is not None)

    if first.is_read and put is not None:
        known |= {"faced": (), "put": put(order, first.ball, tuple(_whole_looks(book)), faced)}

    def fill(name: str) -> dict[str, object]:
        match name:
            case "faced":
                return {name: faced() if first.is_read else ()}
            case "keyed":
                return {name: _keyed(book, calls, mine, expander)}
            case "spotted":
                return {name: tuple(_spotted(book, calls, mine, expander))}
        return {"views": () if first.is_read else _against_looks(book, order, first, expander)}

    return later(ConceptSheet, known, fill)


_VIEWS = ("views", "faced", "keyed", "spotted")
"""What of a concept's sheet is made when somebody asks for it: plays that no index needs."""


def _against_looks(
    book: Playbook, order: Order, first: Play, expander: Expander
) -> tuple[Play, ...]:
    """A run by its rules, and against the looks that it is not drawn against."""
    if first.kind is not Kind.RUN or first.defence is None:
        return ()
    drawn = order.look or book.base_look
    others = (key for key in _whole_looks(book) if key != drawn)
    rules, *met = (expander.expand(order, first.ball, look_key=key) for key in ("", *others))
    against = (play for play in _shown(met) if play.defence is not None)
    return (*_shown((rules,)), *against)


def _keyed(
    book: Playbook, calls: Calls, mine: Sequence[Play], expander: Expander
) -> tuple[Play, ...]:
    """The first call that reads a defender, and the first with each other tag, by look."""
    firsts: dict[tuple[str, ...], Play] = {}
    for play in mine:
        if play.keys:
            firsts.setdefault(play.call.tags, play)
    made = (
        expander.expand(calls.by_name[play.call.spoken], play.ball, look_key=key)
        for play in firsts.values()
        for key in _whole_looks(book)
    )
    return tuple(play for play in _shown(made) if play.defence is not None)


def _spotted(
    book: Playbook, calls: Calls, mine: Sequence[Play], expander: Expander
) -> Iterator[Play]:
    """The first call, and those whose side or use hangs on the ball's spot, from their others."""
    for play in mine:
        call = play.call
        if play is not mine[0] and call.way is None and not call.best and not call.not_from:
            continue
        order = calls.by_name[call.spoken]
        look = book.base_look if play.defence is not None else ""
        spots = [spot for spot in order.spots if spot is not play.ball]
        yield from _shown(expander.expand(order, spot, look_key=look) for spot in spots)


def _shown(made: Iterable[tuple[Play | None, tuple[Diagnostic, ...]]]) -> Iterator[Play]:
    """The plays that could be made; what is wrong with the others is told by the checks."""
    for play, found in made:
        if play is not None and not any(d.is_error for d in found):
            yield play


def _whole_looks(book: Playbook) -> Iterator[str]:
    return (key for key, look in book.looks.items() if not look.broken)


# Men who only stand.


class _Posing:
    """Makes plays of men who stand and perhaps protect; each formation and protection is cast once
    by a maker of plays, whatever looks it is shown against and in however many books."""

    def __init__(self, book: Playbook, expander: Expander) -> None:
        self._book = book
        self._expander = expander

    def play(
        self,
        formation: str,
        look_key: str = "",
        protection: str = "",
        motion: str = "",
        spot: BallSpot = BallSpot.MIDDLE,
    ) -> Play | None:
        """A formation called right, its men standing or in ``protection``, after ``motion`` (keys
        of the playbook), the ball at ``spot``; None where that has errors."""
        order, concept = self._pose(formation, protection)
        order = replace(order, motion=motion)
        play, found = self._expander.play_of(order, concept, spot, look_key=look_key)
        return None if any(d.is_error for d in found) else play

    def running(self, formation: str, route: Route, depth: float, back: bool) -> Play | None:
        """A formation in which one man runs a route: its back, or the second man strong."""
        key = formation, route, depth, back
        if key not in self._expander.posed:
            order, _ = self._pose(formation, "")
            self._expander.posed[key] = order, self._run_alone(formation, route, depth, back)
        order, concept = self._expander.posed[key]
        play, found_wrong = self._expander.play_of(order, concept, BallSpot.MIDDLE)
        return None if any(d.is_error for d in found_wrong) else play

    def _run_alone(self, formation: str, route: Route, depth: float, back: bool) -> Concept:
        found = self._book.formations[formation]
        ever = always(self._book.receivers)
        choice = Back(None) if back else Ranked(SideWord.STRONG, 2)
        job = RouteJob(route, depth, None, None, (), route.name)
        body = Body(
            rules={_RUNNER: (Said(RoleRule((choice,), (_RUNNER,)), ever, found.span),)},
            jobs={_RUNNER: (Said(job, ever, found.span),)},
        )
        return Concept(found.name, "", body, found.span, False)

    def _pose(self, formation: str, protection: str) -> tuple[Order, Concept]:
        key = formation, protection
        if key not in self._expander.posed:
            name, body = self._book.formations[formation].name, Body()
            if protection:
                named = self._book.protections[protection]
                name, body = named.name, _protecting(self._book, named.name, named.span)
            span = self._book.formations[formation].span
            order = Order(formation, Way.RIGHT, "", name.casefold(), (), name, span, span)
            self._expander.posed[key] = order, Concept(name, "", body, span, False)
        return self._expander.posed[key]


def _standing(book: Playbook, posing: _Posing) -> dict[str, Play]:
    """Each formation called right from the middle, nobody moving, by its key."""
    made = {
        key: posing.play(key) for key, formation in book.formations.items() if not formation.broken
    }
    return {key: play for key, play in made.items() if play is not None}


def _formations(
    book: Playbook, stands: dict[str, Play], posing: _Posing
) -> tuple[FormationSheet, ...]:
    return tuple(
        FormationSheet(
            book.formations[key].name,
            book.formations[key].people,
            book.formations[key].says,
            play,
            book.formations[key].span,
            posing.play(key, spot=BallSpot.LEFT_HASH),
            posing.play(key, spot=BallSpot.RIGHT_HASH),
            tuple(
                (letter, split_words(said.value.where), said.guard.text)
                for letter, places in book.formations[key].men.items()
                for said in places
            ),
        )
        for key, play in stands.items()
    )


def split_words(where: Where) -> str:
    """A place across the field as the notation has it: "2 inside numbers"."""
    match where:
        case AtLandmark(landmark, outside):
            return _measured(outside, landmark.value)
        case AtMan(man, outside):
            return _measured(outside, man)
        case Between(first, second):
            return f"between {split_words(first)} and {split_words(second)}"
        case FromHere(outside):
            return _measured(outside, "where he is")
        case Home():
            return "where he lined up"


def _measured(outside: float, place: str) -> str:
    way = "outside" if outside > 0 else "inside"
    return f"{abs(outside):g} {way} {place}" if outside else place


def _motions(
    book: Playbook, season: Season, formations: Sequence[str], posing: _Posing
) -> tuple[MotionSheet, ...]:
    """Each motion in the formation most often called with it, else the first that it suits."""
    made = []
    for key, motion in book.motions.items():
        used = Counter(
            p.call.formation.casefold() for p in season.plays if p.call.motion == motion.name
        )
        names = dict.fromkeys((*(name for name, _ in used.most_common()), *formations))
        views = (posing.play(name, motion=key) for name in names if not motion.broken)
        view = next((play for play in views if play is not None), None)
        if view is not None:
            made.append(MotionSheet(motion.name, view, motion.span))
    return tuple(made)


# One man and his route.


def _routes(book: Playbook, formations: Sequence[str], posing: _Posing) -> tuple[RouteSheet, ...]:
    """Every route that a concept or tag gives, in the order of their depths; a back's from where
    he stands."""
    depths: dict[str, Counter[float]] = {}
    routes: dict[str, Route] = {}
    backs: Counter[str] = Counter()
    for body in (*(c.body for c in book.concepts.values()), *(t.body for t in book.tags.values())):
        for role, said in body.jobs.items():
            back = _of_a_back(body, role, book)
            for job in (each.value for each in said if isinstance(each.value, RouteJob)):
                name = job.route.name
                routes[name] = job.route
                depth = job.depth if job.depth is not None else job.route.depth
                depths.setdefault(name, Counter())[depth] += 1
                backs[name] += 1 if back else -1
    made = []
    for name in sorted(routes, key=lambda n: (backs[n] > 0, depths[n].most_common(1)[0][0], n)):
        depth = depths[name].most_common(1)[0][0]
        view = _alone(routes[name], depth, backs[name] > 0, formations, posing)
        made += [RouteSheet(name, depth, view)] if view is not None else []
    return tuple(made)


def _of_a_back(body: Body, role: str, book: Playbook) -> bool:
    bodies = (body, *(c.body for c in book.concepts.values() if role in c.body.rules))
    rules = next((b.rules[role] for b in bodies if role in b.rules), ())
    return any(isinstance(one.value.choices[0], Back) for one in rules)


def _alone(
    route: Route, depth: float, back: bool, formations: Sequence[str], posing: _Posing
) -> Play | None:
    """The second man of the strong side, or the back, with the route and the line; None where no
    formation has him."""
    for formation in formations:
        play = posing.running(formation, route, depth, back)
        task = play.runs(_RUNNER) if play is not None else None
        if play is not None and task is not None and task.path is not None:
            man = replace(play.man(task.man), label=_NAMELESS)
            task = replace(task, man=_NAMELESS, says=(), branches=(), motion=None)
            line = tuple(one for one in play.men if one.interior)
            return replace(play, men=(*line, man), assignments=(task,))
    return None


# A look against a few sets.


def _by_use(season: Season, stands: dict[str, Play]) -> list[str]:
    """The formations' keys, those first that most calls are called from."""
    called = Counter(play.call.formation for play in season.plays)
    return sorted(stands, key=lambda key: -called[stands[key].call.formation])


def _sets(keys: Sequence[str], stands: dict[str, Play]) -> tuple[str, ...]:
    """Formations that ask different things of a defence, the first of ``keys`` of each kind: a
    balanced one, those with most receivers to one side, and one with an empty backfield.
    """
    backed = [k for k in keys if not _empty(stands[k])]
    leads = sorted({_ahead(stands[k]) for k in backed})
    kinds = (
        *([k for k in backed if _ahead(stands[k]) == lead] for lead in (*leads[:1], *leads[:0:-1])),
        [k for k in keys if _empty(stands[k])],
        keys,
    )
    return tuple(dict.fromkeys(kind[0] for kind in kinds if kind))[:MOST_SETS]


def _ahead(play: Play) -> int:
    """How many more receivers stand to the strong side."""
    return play.shape[0] - play.shape[1]


def _empty(play: Play) -> bool:
    counted = sum(man.rank is not None for man in play.men)
    return counted == play.field.code.receivers


def _looks(
    book: Playbook, keys: Sequence[str], sets: Sequence[str], posing: _Posing
) -> tuple[LookSheet, ...]:
    made: list[LookSheet] = []
    for key in _whole_looks(book):
        look = book.looks[key]
        # A look for few sets shows those that it meets, whatever the others are shown against.
        views = (posing.play(name, key) for name in ((*sets, *keys) if look.limited else sets))
        shown = {p.call.formation: p for p in views if p is not None and p.defence is not None}
        if shown:
            few = tuple(shown.values())[:MOST_SETS]
            made.append(LookSheet(look.name, look.says, few, look.span, _adjusts(look)))
    return tuple(made)


def _adjusts(look: LookDef) -> tuple[tuple[str, str, str], ...]:
    """What each man of a look does when somebody moves: his label, the motion, and his line."""
    stands = ((m, s.guard, s.value[0].words) for m, said in look.stands.items() for s in said)
    duties = ((m, s.guard, s.value.words[0]) for m, said in look.duties.items() for s in said)
    return tuple(
        (man, guard.text, words)
        for man, guard, words in (*stands, *duties)
        if guard.moves != EVERY_MOVE
    )


# A protection against each look.


def _protections(
    book: Playbook, season: Season, formations: Sequence[str], posing: _Posing
) -> tuple[ProtectionSheet, ...]:
    made = (
        _protection(book, season, key, formations, posing)
        for key, protection in book.protections.items()
        if not protection.broken
    )
    return tuple(sheet for sheet in made if sheet is not None)


def _protection(
    book: Playbook, season: Season, key: str, formations: Sequence[str], posing: _Posing
) -> ProtectionSheet | None:
    """The protection in the set most often called with it, else the first that has its men."""
    protection = book.protections[key]
    used = Counter(
        p.call.formation.casefold() for p in season.plays if p.protection.casefold() == key
    )
    for formation in dict.fromkeys((*(name for name, _ in used.most_common()), *formations)):
        views = tuple(
            play
            for look in ("", *_base_first(book))
            if (play := posing.play(formation, look, key)) is not None
            and (not look or play.defence is not None)
        )
        if views:
            hot = tuple((h.throws, h.given) for h in protection.hot)
            return ProtectionSheet(
                protection.name, protection.words, protection.says, views, protection.span, hot
            )
    return None


def _base_first(book: Playbook) -> Iterator[str]:
    keys = dict.fromkeys((book.base_look, *_whole_looks(book)))
    return (key for key in keys if not look_of(book, key).broken)


def _protecting(book: Playbook, name: str, span: Span) -> Body:
    return Body(protect=(Said(name, always(book.receivers), span),))
