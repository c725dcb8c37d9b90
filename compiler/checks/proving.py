"""What is asked of a playbook's formations, looks and calls: the checks, joined."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from itertools import product

from stemline.checks.ball_exchanged import check_ball, check_reverse
from stemline.checks.blocks_find_men import check_blocking
from stemline.checks.keeps import check_keeps
from stemline.checks.keys import check_keys
from stemline.checks.legality import (
    Snap,
    before_motion,
    check_call,
    check_formation,
    check_snap,
    check_throws,
)
from stemline.checks.legality.covered import E524
from stemline.checks.looks_line_up import check_looks
from stemline.checks.men_on_the_field import check_men, check_moved, check_places
from stemline.checks.men_without_jobs import check_feet, check_jobs
from stemline.checks.needs import check_needs
from stemline.checks.protection_holds import check_protection
from stemline.checks.throws_on_time import check_clock, check_rhythm, check_space, targets
from stemline.diagnostics.broken_rule import BrokenRule
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.football.field import BallSpot, Side
from stemline.football.play import Kind, Play, Season
from stemline.football.timing.clock import read_clock
from stemline.lineup.alignment import line_up
from stemline.lineup.moving import move
from stemline.playbook.concepts import Body, Tag
from stemline.playbook.formations import Formation
from stemline.playbook.playbook import Playbook
from stemline.playbook.run_definitions import Aim
from stemline.resolve.expand import Expander, Order, field_of
from stemline.resolve.season import Calls, gathered, season
from stemline.resolve.tags import merged, quarrels
from stemline.source import Span


def prove(
    book: Playbook, calls: Calls, expander: Expander
) -> tuple[Season, tuple[Diagnostic, ...]]:
    """Every call of a playbook expanded and proved, its looks lined up, its formations judged."""
    found = check_standing(book, calls, expander)
    made, problems = season(book, calls, lambda *args: prove_call(book, expander, *args), expander)
    return made, (*found, *problems)


def check_standing(book: Playbook, calls: Calls, expander: Expander) -> list[Diagnostic]:
    """Every look lined up, and every formation judged as it stands before motion."""
    return [*check_looks(book, calls, expander), *gathered(_standing(book, calls))]


def check_formations(book: Playbook) -> Iterable[Diagnostic]:
    """Every formation to both sides from every spot, whether a call uses it or not."""
    for formation in book.formations.values():
        if formation.broken:
            continue
        for spot in BallSpot:
            for side in Side:
                field = field_of(book, spot)
                _, men, found = line_up(book, formation, side, field)
                yield from found
                if men:
                    yield from check_men(men, field, formation.name, formation.span)
                    yield from check_places(men, field, formation.name)


def _standing(book: Playbook, calls: Calls) -> Iterable[Diagnostic]:
    """Every formation judged as it stands before motion.

    The rule texts judge the snap. So what every call of a formation mends by its motion is no foul:
    it is said as a warning of its own, since it would be one if the ball were snapped early.
    """
    for key, formation in book.formations.items():
        found = list(_legal(book, key))
        if found:
            yield from _unmended(book, calls, key, formation, found)


def _unmended(
    book: Playbook, calls: Calls, key: str, formation: Formation, found: Sequence[Diagnostic]
) -> Iterable[Diagnostic]:
    orders = [order for _, order in calls.orders if order.formation == key]
    ways = {(order.side, order.motion) for order in orders}
    if orders:
        found = [d for d in found if not isinstance(d.said, E524)]
    if not ways or not all(motion for _, motion in ways):
        yield from found
        return
    still = {_broken_by(d) for side, way in ways for d in _legal(book, key, (side,), way)}
    mended = [d for d in found if _broken_by(d) not in still]
    yield from (d for d in found if d not in mended)
    names = tuple(sorted({book.motions[way].name for _, way in ways}))
    fouls = [d.said for d in mended if isinstance(d.said, BrokenRule) and d.said.foul]
    if fouls:
        yield before_motion(formation.name, names, formation.span, fouls)


def _legal(
    book: Playbook, key: str, sides: Iterable[Side] = tuple(Side), motion: str = ""
) -> Iterable[Diagnostic]:
    """A formation judged from every spot as it stands, or where its men are after a motion."""
    formation = book.formations[key]
    if formation.broken:
        return
    for spot, side in product(BallSpot, sides):
        field = field_of(book, spot)
        alignment, men, _ = line_up(book, formation, side, field)
        if len(men) == field.code.players.value:
            if motion:
                men, _, _ = move(alignment, men, book.motions[motion])
            snap = Snap(field.code, men, formation.name, formation.span, numbers=_numbers(book))
            yield from check_formation(snap)


def _blocked(book: Playbook, expander: Expander, play: Play, order: Order) -> Iterable[Diagnostic]:
    """A run against the look it is drawn against, and against those that a dress-up names; not
    against a front that the coach has not written."""
    if play.kind is not Kind.RUN:
        return
    shown: Play | None = play
    if play.defence is None and book.looks and not play.against:
        shown, _ = expander.expand(order, play.ball, (), book.base_look)
    if shown is not None:
        yield from check_blocking(shown)


def _thrown(book: Playbook, expander: Expander, play: Play, order: Order) -> Iterable[Diagnostic]:
    """Who is past the line when the ball leaves: of a run-pass option against every look."""
    if play.ball is not BallSpot.MIDDLE or (play.against and play.defence is None):
        return
    shown = [play]
    if play.keys:
        looks = (expander.expand(order, play.ball, (), key)[0] for key in book.looks)
        shown += [other for other in looks if other is not None]
    yield from check_keys(shown)
    for one in shown:
        yield from check_throws(one, book.settings.level)


def _in_motion(book: Playbook, play: Play, order: Order) -> Iterable[Diagnostic]:
    """What the motion of a call breaks, where the men stand when it ends and how they move."""
    motions = {a.man: a.motion for a in play.assignments if a.motion is not None}
    if not motions:
        return
    span = next(iter(motions.values())).span
    name = f"{play.call.formation} with {play.call.motion}"
    snap = Snap(play.field.code, play.men, name, span, play.call.spoken, motions, _numbers(book))
    yield from check_snap(snap)
    yield from check_moved(play.men, motions, play.field, name)
    found = list(check_formation(snap))  # a covered man is asked about call by call
    told = {_broken_by(d) for d in _legal(book, order.formation)} if found else set()
    yield from (d for d in found if _broken_by(d) not in told and not isinstance(d.said, E524))


def _others_carry(body: Body, play: Play) -> bool:
    """Whether anybody but the carrier runs by an aim of his own."""
    aims = {r for r, said in body.jobs.items() if any(isinstance(s.value, Aim) for s in said)}
    return any(a.role in aims and a.man != play.carrier for a in play.assignments)


def _numbers(book: Playbook) -> dict[str, Span]:
    return {letter: person.span for letter, person in book.people.items()}


def _timed(
    book: Playbook,
    expander: Expander,
    play: Play,
    plain: Play | None,
    order: Order,
    tags: Sequence[Tag],
) -> Iterable[Diagnostic]:
    """The clock of a pass where it is drawn; from the hashes the table of `--timing` shows it."""
    if not play.reads or play.ball is not BallSpot.MIDDLE or play.against:
        return
    clock = read_clock(play, book.settings.level)
    broken: list[Diagnostic] = []
    if plain is not None:
        before = read_clock(plain, book.settings.level)
        for key, tag in zip(order.tags, tags, strict=True):
            found = list(check_rhythm(tag.name, tag.keeps, before, clock, play))
            if found and len(tags) > 1:
                # Another tag of the call may be the cause: it is this one's fault only by itself.
                alone, _ = expander.expand(replace(order, tags=(key,)), play.ball)
                after = read_clock(alone, book.settings.level) if alone is not None else clock
                by_itself = check_rhythm(tag.name, tag.keeps, before, after, play)
                at_fault = targets(by_itself)
                found = [d for d in found if targets([d]) <= at_fault]
            broken += found
    yield from check_clock(play, clock, targets(broken))
    yield from check_space(play, clock)
    yield from broken


def _broken_by(d: Diagnostic) -> tuple[str, str]:
    """The rule and the man: what a motion need not be blamed for where the formation is."""
    return d.code, getattr(d.said, "man", "")


def prove_call(
    book: Playbook, expander: Expander, play: Play, plain: Play | None, order: Order
) -> Iterable[Diagnostic]:
    """All that is wrong with one play; ``plain`` is the call without its tags, None where it has
    none."""
    tags = [book.tags[order.concept, tag] for tag in order.tags]
    body = merged(book.concepts[order.concept].body, tags)
    quarrel = quarrels(tags, order.tags_span)
    if quarrel:
        yield from quarrel
        return
    yield from check_jobs(play)
    yield from check_feet(play)
    yield from check_needs(play, body.needs)
    yield from check_protection(play)
    yield from check_ball(play)
    yield from check_reverse(play, _others_carry(body, play))
    yield from _blocked(book, expander, play, order)
    yield from _in_motion(book, play, order)
    yield from check_call(play)
    yield from _thrown(book, expander, play, order)
    yield from _timed(book, expander, play, plain, order, tags)
    if plain is not None:
        for tag in tags:
            # What another tag of the call changes without a promise is not this one's fault.
            shared = set.intersection(*({keep for keep, _ in t.keeps} for t in tags))
            keeps = [(keep, span) for keep, span in tag.keeps if keep in shared]
            yield from check_keeps(tag.name, keeps, plain, play)
