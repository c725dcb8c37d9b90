"""One call before any defence: its roles bound, and its play against one defence after another.

A `CallParts` holds everything that decides a call's play but the look it stands against. A `Cast`
works out once what does not hang on the look, which is most of it.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from stemline.diagnostics.catalogue.calls import E623
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.football.conditions import LookWord
from stemline.football.defenders import Defence
from stemline.football.play import Call, Kind, Motion, Play
from stemline.lineup.lined_up import LinedUp
from stemline.playbook.concepts import Body
from stemline.playbook.protection_definitions import Protection
from stemline.resolve.assignments import assignments, scrambling
from stemline.resolve.ball_way import ball_way
from stemline.resolve.ball_words import with_ball_words
from stemline.resolve.blocking.blockers import Blocking, blocking, playside
from stemline.resolve.faking import with_faker
from stemline.resolve.men_by_place import CalledMen, call_away, with_others
from stemline.resolve.noting import with_notes
from stemline.resolve.progression import look
from stemline.resolve.roles import Bound, bind
from stemline.resolve.tags import told_beside
from stemline.source import NOWHERE, Span


@dataclass(frozen=True)
class CallParts:
    """What a call's play is made of.

    ``body`` is the concept with the call's tags laid over it, ``picture`` the men at the snap,
    ``motions`` theirs by label, ``protections`` those that the body names, by its words for them;
    ``concept`` is where the concept's name stands.
    """

    body: Body
    picture: LinedUp
    motions: Mapping[str, Motion]
    protections: Mapping[str, Protection]
    call: Call
    family: str
    kind: Kind
    right_handed: bool
    span: Span
    concept: tuple[Span, Span]
    """The name of the concept, and the last line of its text."""
    scramble: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True)
class _Told:
    """What a call's men do and what the quarterback sees where these looks show."""

    blocking: Blocking
    found: tuple[Diagnostic, ...]


class Cast:
    """A call's roles with their men, and what they do, once for all looks that show the same."""

    def __init__(self, casting: CallParts) -> None:
        body = with_faker(casting.body)
        self._casting = casting
        self._picture = replace(casting.picture, toward=playside(body, casting.picture))
        own = (NOWHERE, NOWHERE) if casting.call.tags else casting.concept
        self._bound = bind(body, self._picture, casting.call.spoken, own)
        _swap(body, self._bound)
        body = told_beside(body, self._bound, self._picture)
        self._called_away = call_away(body, self._bound, self._picture, casting.call.spoken)
        standing = CalledMen(
            self._picture, casting.call.spoken, tuple(casting.protections.values())
        )
        body = with_others(body, self._bound, standing)
        self._casting = casting = replace(casting, body=body)
        self._way = ball_way(
            body, self._bound, self._picture, casting.kind, casting.call.spoken, casting.motions
        )
        self._asked = _asked(body)
        self._told: dict[tuple[LookWord, ...], _Told] = {}

    def play(
        self, against: tuple[LookWord, ...], defence: Defence | None
    ) -> tuple[Play, tuple[Diagnostic, ...]]:
        """The play where these looks show, with its blocks against ``defence`` if there is one."""
        deciding = self._deciding(against)
        if deciding not in self._told:
            self._told[deciding] = self._tell(deciding)
        told = self._told[deciding]
        play, found = told.blocking.against(defence, tuple(x.value for x in against))
        if self._casting.body.notes:
            line = replace(self._picture, toward=told.blocking.playside)
            notes = self._casting.body.notes
            play = with_notes(play, notes, self._bound, self._picture, line, against)
        play = with_ball_words(self._alerted(play, against))
        return play, (*self._bound.found, *told.found, *found)

    def _alerted(self, play: Play, against: tuple[LookWord, ...]) -> Play:
        """The play without the alerts that these looks rule out."""
        said = self._casting.body.alerts
        if not said or not against:
            return play
        worlds = self._picture.worlds(self._picture.count.strong, against)
        there = {alert.span for alert in said if worlds & alert.guard.worlds}
        return replace(play, alerts=tuple(a for a in play.alerts if a.span in there))

    def asks(self, against: tuple[LookWord, ...]) -> bool:
        """Whether a line of the concept asks about any of these looks, or no two of them can be."""
        return bool(self._deciding(against))

    def _deciding(self, against: tuple[LookWord, ...]) -> tuple[LookWord, ...]:
        """Of the looks that show those that a line of the concept asks about."""
        if any(shown.opposite in against for shown in against):
            return against  # nothing is so: no line holds, whatever it asks
        return tuple(shown for shown in against if shown in self._asked)

    def _tell(self, against: tuple[LookWord, ...]) -> _Told:
        casting, bound, picture = self._casting, self._bound, self._picture
        body, call = casting.body, casting.call.spoken
        assigned, found = assignments(
            body, bound, picture, casting.motions, against, call, self._way.exchanges
        )
        if casting.kind is Kind.PASS and (casting.scramble or body.scrambles):
            rules = dict(casting.scramble)
            assigned = tuple(scrambling(a, body, bound, rules, picture) for a in assigned)
        eyes = look(body, bound, picture, assigned, casting.right_handed, call)
        play = Play(
            call=casting.call,
            family=casting.family,
            field=picture.field,
            shape=picture.count.shape,
            strong=picture.count.strong,
            men=picture.men,
            assignments=assigned,
            spots=eyes.spots,
            feet=eyes.feet,
            reads=eyes.reads,
            pressure=eyes.pressure,
            claims=eyes.claims,
            alerts=eyes.alerts,
            protection=eyes.protection,
            pick=eyes.pick,
            last=eyes.last,
            nobody=tuple(role for role in bound.nobody if role not in body.joined),
            against=tuple(x.value for x in against),
            span=casting.span,
            kind=casting.kind,
            toward=picture.toward,
            called_away=self._called_away,
            exchanges=self._way.exchanges,
        )
        told = blocking(play, body, casting.protections, bound, picture)
        if any(d.is_error for d in bound.found):
            # A role without its man leaves spots empty and gives no side: one cause is reported
            # once.
            return _Told(told, tuple(d for d in found if not isinstance(d.said, E623)))
        return _Told(told, (*found, *eyes.found, *self._way.found))


def _asked(body: Body) -> frozenset[LookWord]:
    """Looks, and their opposites, that the lines of a body ask about before they say what to do."""
    lines = (*body.jobs.values(), *body.decides.values(), *body.line.values())
    looks = {asked for said in lines for one in said for asked in one.guard.looks}
    return frozenset(looks | {asked.opposite for asked in looks})


def _swap(body: Body, bound: Bound) -> None:
    """`swap a with b`: the two men change roles, or one takes the role of the other."""
    for swap in body.swaps:
        a, b = bound.man(swap.first), bound.man(swap.second)
        one, two = bound.role_of(a or ""), bound.role_of(b or "")
        if one is not None and two is not None:
            bound.men[one], bound.men[two] = bound.men[two], bound.men[one]
        elif a is not None and b is not None and (one or two):
            bound.men[one or two or ""] = b if one else a
