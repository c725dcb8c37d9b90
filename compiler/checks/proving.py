"""A playbook's formations, looks and calls, as the checks are asked about them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from stemline.checks.asked import PlacedMen, ProvedCall, When
from stemline.checks.discovered import ask
from stemline.checks.legality.before_motion import as_it_stands, broken_by
from stemline.checks.legality.covered import E524
from stemline.checks.legality.snap import Snap, numbers_of
from stemline.checks.places_of_their_own import check_moved
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.football.field import BallSpot, Side
from stemline.football.play import Play, Season
from stemline.lineup.alignment import line_up
from stemline.playbook.playbook import Playbook
from stemline.resolve.all_calls import Calls
from stemline.resolve.expand import Expander, field_of
from stemline.resolve.gathering import gathered
from stemline.resolve.order import Order
from stemline.resolve.season import season
from stemline.resolve.tags import quarrels


def prove(
    book: Playbook, calls: Calls, expander: Expander
) -> tuple[Season, tuple[Diagnostic, ...]]:
    """Every call of a playbook expanded and proved, its looks lined up, its formations judged."""
    found = [*check_standing(book, calls, expander), *check_taught(book, calls)]
    made, problems = season(book, calls, lambda *args: prove_call(book, expander, *args), expander)
    return made, (*found, *problems)


def check_standing(book: Playbook, calls: Calls, expander: Expander) -> list[Diagnostic]:
    """Every look lined up, and every formation judged as it stands before motion."""
    return gathered(ask(When.BOOK, book, calls, expander))


def check_taught(book: Playbook, calls: Calls) -> list[Diagnostic]:
    """What the install puts in."""
    return gathered(ask(When.TAUGHT, book, calls))


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
                    yield from ask(
                        When.PLACED, PlacedMen(men, field, formation.name, formation.span)
                    )


def prove_call(
    book: Playbook, expander: Expander, play: Play, plain: Play | None, order: Order
) -> Iterable[Diagnostic]:
    """All that is wrong with one play; ``plain`` is the call without its tags, None where it has
    none."""
    call = ProvedCall(book, expander, play, plain, order)
    quarrel = quarrels(call.tags, order.tags_span)
    if quarrel:
        yield from quarrel
        return
    yield from ask(When.CALLED, play)
    yield from ask(When.PROVED, call)
    yield from _in_motion(call)
    for shown in call.when_thrown:
        yield from ask(When.THROWN, shown, book.settings.level)


def _in_motion(call: ProvedCall) -> Iterator[Diagnostic]:
    """What the motion of a call breaks, where the men stand when it ends and how they move."""
    play, motions = call.play, call.motions
    if not motions:
        return
    span = next(iter(motions.values())).span
    name = f"{play.call.formation} with {play.call.motion}"
    numbers = numbers_of(call.book)
    snap = Snap(play.field.code, play.men, name, span, play.call.spoken, motions, numbers)
    yield from ask(When.MOVING, snap)
    yield from check_moved(play.men, motions, play.field, name)
    # A covered man is asked about call by call.
    found = [d for d in ask(When.STANDING, snap) if not isinstance(d.said, E524)]
    told = {broken_by(d) for d in as_it_stands(call.book, call.order.formation)} if found else set()
    yield from (d for d in found if broken_by(d) not in told)
