"""Does every look line up against every formation of the book, with the right number of men?

An opponent's front is drawn once, on a board with one formation on it. In the book it is drawn
against all of them: the receiver that the nickel stands over is not there in the next one, and a
man defender whose man walked across the ball has nobody. So each look is lined up against each
formation, to both sides and from all three spots, and with the motions that calls use.

Example: ``M covers man, strong #3`` against two by two. Write what he does then:
``M covers man, strong #3 or hook, strong``.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from itertools import product

from stemline.diagnostics.diagnostic import Diagnostic, diagnose
from stemline.football.conditions import LookWord
from stemline.football.defenders import Defence
from stemline.football.field import BallSpot, Side
from stemline.lineup.lined_up import LinedUp
from stemline.playbook.look_definitions import LookDef
from stemline.playbook.playbook import Playbook
from stemline.resolve.expand import Expander
from stemline.resolve.season import Calls
from stemline.source import Span

MOST_PAIRS = 600
"""Looks by formations, those that move counted again, that are tried: each is lined up six times.
The bundled playbooks have less than half as many."""
_NAMED = 3
"""Formations that a message names before it counts the others."""
_ORDINALS = ("back", "second back", "third back", "fourth back")


def check_looks(
    book: Playbook, calls: Calls, known: Expander | None = None
) -> Iterator[Diagnostic]:
    """Every look of the book; one cause is said once, with the formations it shows against."""
    expander = known or Expander(book)
    keys = [key for key, look in book.looks.items() if not look.broken]
    looks = [book.looks[key] for key in keys]
    if not looks:
        return
    yield from _numbers(looks, book)
    yield from _too_near(looks, book)
    found = _LooksByCause()
    sets = list(_sets(book, calls))
    tried = max(1, MOST_PAIRS // len(keys))
    if tried < len(sets):
        pairs, most = f"{len(sets) * len(keys):,}", f"{tried * len(keys):,}"
        yield diagnose("W104", looks[0].span, pairs=pairs, most=most)
    for formation, motion in sets[:tried]:
        name = _name(book, formation, motion)
        for spot, side in product(BallSpot, Side):
            picture = expander.lined(formation, side, motion, spot).picture
            for key in keys if picture is not None else ():
                defence, problems = expander.defence(key, formation, side, motion, spot)
                found.add(name, problems)
                if picture is not None and defence is not None:
                    found.add(name, _uncovered(defence, picture))
    yield from found.gathered()


def _numbers(looks: Sequence[LookDef], book: Playbook) -> Iterator[Diagnostic]:
    """The code's number of men; a look that takes over another's men says it once with it."""
    players = book.settings.code.players
    told: set[frozenset[Span]] = set()
    for look in looks:
        men = frozenset(said[0].span for said in look.stands.values())
        if len(look.stands) != int(players.value) and men not in told:
            told.add(men)
            yield diagnose(
                "E480", look.span, look=look.name, got=len(look.stands),
                wanted=f"{players.value:g}", rules=book.settings.code.title, source=players.cited,
            )  # fmt: skip


def _sets(book: Playbook, calls: Calls) -> Iterator[tuple[str, str]]:
    """Every formation, still and with the motions that calls use."""
    motions: dict[str, dict[str, None]] = {
        key: {"": None} for key, formation in book.formations.items() if not formation.broken
    }
    for _, order in calls.orders:
        if order.formation in motions and (
            not order.motion or not book.motions[order.motion].broken
        ):
            motions[order.formation].setdefault(order.motion)
    for key, used in motions.items():
        for motion in used:
            yield key, motion


def _name(book: Playbook, formation: str, motion: str) -> str:
    name = book.formations[formation].name
    return f"{name} with {book.motions[motion].name}" if motion else name


def _too_near(looks: Sequence[LookDef], book: Playbook) -> Iterator[Diagnostic]:
    """Nobody of the defence nearer to the line than its restraining distance.

    A line that a look takes over is said once, where it stands.
    """
    code = book.settings.code
    told: set[Span] = set()
    for look in looks:
        for man, lines in look.stands.items():
            for line in lines:
                depths = [s.depth for s in line.value if s.depth is not None]
                depth = min(depths, default=code.restraining.value)
                if depth < code.restraining.value and line.span not in told:
                    told.add(line.span)
                    yield diagnose(
                        "E491" if code.restraining.binding else "W491", line.span,
                        look=look.name, man=man, depth=f"{depth:g}", rules=code.title,
                        wanted=f"{code.restraining.value:g}", source=code.restraining.cited,
                    )  # fmt: skip


def _uncovered(defence: Defence, picture: LinedUp) -> Iterator[Diagnostic]:
    """In man coverage every man who may catch a pass is somebody's."""
    if LookWord.MAN.value not in defence.shows:
        return
    covered = {d.duty.man for d in defence.defenders if d.duty is not None}
    counted = picture.count
    names = {
        label: f"{'strong' if side is defence.strong else 'weak'} #{number}"
        for side in Side
        for number, label in enumerate(counted.on(side), 1)
    }
    names |= dict(zip(counted.backs, _ORDINALS, strict=False))
    for label, who in names.items():
        if label not in covered:
            said = who if "#" in who else f"the {who}"
            yield diagnose(
                "W493", defence.span, look=defence.name, who=who, said=said,
                formations=counted.shape_word,
            )  # fmt: skip


class _LooksByCause:
    """Diagnostics by cause, each with the formations that show it."""

    def __init__(self) -> None:
        self._causes: dict[tuple[object, ...], tuple[Diagnostic, dict[str, None]]] = {}

    def add(self, formation: str, found: Iterable[Diagnostic]) -> None:
        for d in found:
            values = dict(d.values)
            cause = (d.code, d.span, values.get("man"), values.get("other"), values.get("who"))
            _, formations = self._causes.setdefault(cause, (d, {}))
            formations.setdefault(formation)

    def gathered(self) -> Iterator[Diagnostic]:
        for d, formations in self._causes.values():
            values = dict(d.values)
            if "formations" in values:
                values["formations"] = _listed(list(formations))
            yield replace(d, values=tuple(sorted(values.items())))


def _listed(names: Sequence[str]) -> str:
    more = len(names) - _NAMED
    if more <= 0:
        return ", ".join(names[:-1]) + " and " + names[-1] if len(names) > 1 else names[0]
    return f"{', '.join(names[:_NAMED])} and {more} more"
