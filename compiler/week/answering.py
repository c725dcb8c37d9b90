"""A plan → its game plan: each of its calls against each look of the opponent, by the clock.

A pass answers a look where a read is open or a good throw finds it in time, or where a hot throw
beats the man who comes free; a run where nobody of the box is left but the man who is read. The
figures are the clock's, for planning.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

from stemline.diagnostics.in_words import theirs, together
from stemline.football.defence.zones import shown_words
from stemline.football.field import BallSpot
from stemline.football.play import Kind, Play
from stemline.football.timing.clock import read_clock
from stemline.football.timing.coverage import TOLD, Separation, against
from stemline.football.timing.levels import PlayingLevel
from stemline.geometry.paths import Point
from stemline.playbook.playbook import Playbook
from stemline.resolve.all_calls import Calls
from stemline.resolve.called_season import season_of
from stemline.resolve.concept_views import Put, with_views
from stemline.resolve.expand import Expander
from stemline.resolve.kills import second_calls
from stemline.resolve.order import Order
from stemline.resolve.season import drawn
from stemline.resolve.sheets import with_sheets
from stemline.resolve.sight_of import looks_seen
from stemline.week.game_plan import FacedLook, GamePlan, LookAnswer
from stemline.week.week_values import Plan

SHORT, DEEP, INSIDE = 6.0, 14.0, 6.0
"""Yards past the line up to which a catch is short and from which it is deep, and to each side of
the ball within which it is in the middle; common practice, no published source."""


@dataclass(frozen=True)
class AskedOfPlaybook:
    """What a game plan asks: ``book`` with the opponents' looks in it, the calls by how they are
    spoken, a maker of plays of the same book, how fast they play, and what is known of a pass
    against looks."""

    book: Playbook
    calls: Calls
    expander: Expander
    level: PlayingLevel
    put: Put


def game_plan(plan: Plan, asked: AskedOfPlaybook) -> GamePlan:
    """The plan's calls as a season of their own against the opponent's looks, and its answers."""
    book = _narrowed(plan, asked.book)
    plays = [_as_drawn(plan, call, book, asked) for call in plan.calls]
    season = season_of(book, _together(plays))
    season = with_views(book, asked.calls, season, asked.expander, asked.put)
    if plan.faces:
        season = replace(with_sheets(book, season, asked.expander), formations=())
    return GamePlan(season, tuple(_faced(plan, look, asked) for look in plan.faces))


def _narrowed(plan: Plan, book: Playbook) -> Playbook:
    """The playbook with no looks but the opponent's, and with what the plan's calls are made of; a
    week that names none keeps the look that its pictures are drawn against."""
    faced = tuple(name.casefold() for name in plan.faces)
    kept = faced or tuple(key for key in (book.base_look,) if key in book.looks)
    base = faced[0] if faced else book.base_look
    used = {play.call.formation.casefold() for play in plan.plays.values()}
    protecting = {play.protection.casefold() for play in plan.plays.values()}
    return replace(
        book,
        settings=replace(book.settings, against=base),
        looks={key: book.looks[key] for key in dict.fromkeys(kept)},
        formations={key: f for key, f in book.formations.items() if key in used},
        protections={key: p for key, p in book.protections.items() if key in protecting},
    )


def _as_drawn(plan: Plan, call: str, book: Playbook, asked: AskedOfPlaybook) -> Play:
    """A call as its picture shows it against the opponent, and where it is killed on his first look
    against one that it meets; as the season's book has it where that cannot be."""
    order = asked.calls.by_name[call]
    play, found = drawn(book, asked.expander, order)
    if play is None or any(d.is_error for d in found):
        return plan.plays[call]
    killed = {look for each in play.becomes for look in each.looks}
    if play.defence is None or play.defence.name not in killed:
        return play
    for look in (look.casefold() for look in plan.faces if look not in killed):
        other, found = asked.expander.expand(order, play.ball, look_key=look)
        if other is not None and other.defence is not None and not any(d.is_error for d in found):
            return replace(other, becomes=play.becomes)
    return plan.plays[call]


def _together(plays: Iterable[Play]) -> list[Play]:
    """Those of a family together, and in it those of a concept, each where its first call is."""
    families: dict[str, dict[str, list[Play]]] = {}
    for play in plays:
        concepts = families.setdefault(play.family, {})
        concepts.setdefault(play.call.concept, []).append(play)
    return [play for each in families.values() for same in each.values() for play in same]


# The plan against a look.


def _faced(plan: Plan, look: str, asked: AskedOfPlaybook) -> FacedLook:
    answers: list[LookAnswer] = []
    without: list[LookAnswer] = []
    leaves: Counter[str] = Counter()
    shows: tuple[str, ...] = ()
    rushers = 0
    for order, spot in _meeting(plan, look, asked):
        second = _killed_to(order, spot, look, asked)
        play, found = asked.expander.expand(second or order, spot, look_key=look.casefold())
        if play is None or play.defence is None or any(d.is_error for d in found):
            continue
        shows, rushers = shows or shown_words(play.defence), rushers or len(play.defence.rushers)
        met = _met(play, asked.level)
        if met.thrown is not None:
            leaves[part_of_field(met.thrown.at, play)] += 1
        words = f"{play.call.concept}: {met.words}" if second else met.words
        (answers if met.answered else without).append(LookAnswer(order.spoken, words))
    most = sorted(leaves.items(), key=lambda each: (-each[1], each[0]))
    return FacedLook(look, shows, rushers, tuple(most), tuple(answers), tuple(without))


def _killed_to(order: Order, spot: BallSpot, look: str, asked: AskedOfPlaybook) -> Order | None:
    """What a call becomes against a look; None where it is run as it is called."""
    for kill, second in second_calls(asked.book, order):
        if look.casefold() in looks_seen(asked.book, asked.expander, order, kill, spot):
            return second
    return None


def _meeting(plan: Plan, look: str, asked: AskedOfPlaybook) -> Iterator[tuple[Order, BallSpot]]:
    """The calls that may meet a look, each once, where the plan first has it: a call kept for
    another look does not."""
    names = {name.casefold() for name in plan.faces}
    orders, known = asked.calls.by_name, set[str]()
    for row in (row for each in plan.lists for row in each.rows):
        own = row.look.casefold()
        if row.call in known or (own in names and own != look.casefold()):
            continue
        known.add(row.call)
        yield orders[row.call], row.spot or orders[row.call].timed_from


@dataclass(frozen=True)
class _Met:
    """How a call fares against a look, in words; ``thrown`` is the throw that answers it."""

    answered: bool
    words: str
    thrown: Separation | None = None


def _met(play: Play, level: PlayingLevel) -> _Met:
    if play.kind is Kind.RUN and not play.unblocked:
        keyed = [theirs(key.man) for key in play.keys if key.man]
        return _Met(True, f"reads {together(keyed)}" if keyed else "all of the box blocked")
    if not play.reads:
        free = [theirs(letter) for letter in play.unblocked]
        return _Met(False, f"{together(free)} unblocked" if free else "no read to go by")
    stood = against(play, read_clock(play, level), level)
    thrown = stood.best or stood.hot
    if thrown is None:
        rusher = f", a rusher free at {stood.rusher:.1f} s" if stood.rusher is not None else ""
        return _Met(False, f"nobody open{rusher}")
    read = thrown.read.read
    man = f" ({', '.join(read.men)})" if read.men else ""
    far = f"{min(thrown.yards, TOLD):.0f}{'+' if thrown.yards > TOLD else ''} yd"
    return _Met(True, f"{'' if stood.best else 'hot '}{read.target}{man} {far}", thrown)


def part_of_field(at: Point, play: Play) -> str:
    """Where a ball is caught, as coaches part the field: "short strong", "deep middle"."""
    if at.y <= 0:
        deep = "behind the line"
    else:
        deep = "short" if at.y <= SHORT else "deep" if at.y >= DEEP else "middle-depth"
    if abs(at.x) <= INSIDE:
        return f"{deep} middle"
    return f"{deep} {'strong' if at.x * play.strong.value > 0 else 'weak'}"
