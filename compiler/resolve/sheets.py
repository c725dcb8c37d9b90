"""What only the pages of a book need: a sheet a formation, motion, route, look and protection.

Nothing here is proved. It is built for a printed book alone, so that a check does not wait for it.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import replace
from functools import cached_property

from stemline.football.conditions import EVERY_MOVE
from stemline.football.defence.zones import shown_words
from stemline.football.field import BallSpot
from stemline.football.later import later
from stemline.football.offence.strokes import Route
from stemline.football.play import (
    FormationSheet,
    LookSheet,
    MotionSheet,
    Play,
    ProtectionSheet,
    RouteSheet,
    Season,
)
from stemline.playbook.concepts import Body, RouteJob
from stemline.playbook.look_definitions import LookDef
from stemline.playbook.places import AtLandmark, AtMan, Between, FromHere, Home, Where
from stemline.playbook.playbook import Playbook
from stemline.playbook.role_rules import Back
from stemline.read.ready_looks import look_of
from stemline.resolve.concept_views import whole_looks
from stemline.resolve.expand import Expander
from stemline.resolve.posing import RUNNER, Posing

_NAMELESS = ""
"""A route is nobody's: the man who shows it has no letter."""
MOST_SETS = 4
"""Sets of the offence that a look is shown against: as many as a page has room for."""


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
        self._posing = Posing(book, expander)

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


def _standing(book: Playbook, posing: Posing) -> dict[str, Play]:
    """Each formation called right from the middle, nobody moving, by its key."""
    made = {
        key: posing.play(key) for key, formation in book.formations.items() if not formation.broken
    }
    return {key: play for key, play in made.items() if play is not None}


def _formations(
    book: Playbook, stands: dict[str, Play], posing: Posing
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
    book: Playbook, season: Season, formations: Sequence[str], posing: Posing
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
            made.append(MotionSheet(motion.name, view, motion.span, motion.says))
    return tuple(made)


# One man and his route.


def _routes(book: Playbook, formations: Sequence[str], posing: Posing) -> tuple[RouteSheet, ...]:
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
    route: Route, depth: float, back: bool, formations: Sequence[str], posing: Posing
) -> Play | None:
    """The second man of the strong side, or the back, with the route and the line; None where no
    formation has him."""
    for formation in formations:
        play = posing.running(formation, route, depth, back)
        task = play.runs(RUNNER) if play is not None else None
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
    book: Playbook, keys: Sequence[str], sets: Sequence[str], posing: Posing
) -> tuple[LookSheet, ...]:
    made: list[LookSheet] = []
    for key in whole_looks(book):
        look = book.looks[key]
        # A look for few sets shows those that it meets, whatever the others are shown against.
        views = (posing.play(name, key) for name in ((*sets, *keys) if look.limited else sets))
        shown = {p.call.formation: p for p in views if p is not None and p.defence is not None}
        if shown:
            few = tuple(shown.values())[:MOST_SETS]
            adjusts = _adjusts(look)
            after = _after(book, key, keys, posing) if adjusts else ()
            made.append(LookSheet(look.name, look.says, few, look.span, adjusts, after))
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


def _after(
    book: Playbook, look: str, keys: Sequence[str], posing: Posing
) -> tuple[tuple[tuple[str, ...], tuple[str, ...]], ...]:
    """What a look shows behind each motion, in the first formation that has it, where that is
    something else than before; motions alike together."""
    found: dict[tuple[str, ...], list[str]] = {}
    for motion, moves in book.motions.items():
        for key in keys if not moves.broken else ():
            still, moved = posing.play(key, look), posing.play(key, look, motion=motion)
            if still is None or moved is None or still.defence is None or moved.defence is None:
                continue
            words = shown_words(moved.defence)
            if words != shown_words(still.defence):
                found.setdefault(words, []).append(moves.name)
            break
    return tuple((tuple(motions), words) for words, motions in found.items())


# A protection against each look.


def _protections(
    book: Playbook, season: Season, formations: Sequence[str], posing: Posing
) -> tuple[ProtectionSheet, ...]:
    made = (
        _protection(book, season, key, formations, posing)
        for key, protection in book.protections.items()
        if not protection.broken
    )
    return tuple(sheet for sheet in made if sheet is not None)


def _protection(
    book: Playbook, season: Season, key: str, formations: Sequence[str], posing: Posing
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
                protection.name, protection.words, protection.says, views, protection.span, hot,
                protection.cautions,
            )  # fmt: skip
    return None


def _base_first(book: Playbook) -> Iterator[str]:
    keys = dict.fromkeys((book.base_look, *whole_looks(book)))
    return (key for key in keys if not look_of(book, key).broken)
