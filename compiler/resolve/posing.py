"""Men who only stand, protect or run one route: plays for a book's sheets, and no calls."""

from __future__ import annotations

from dataclasses import replace

from stemline.football.conditions import always
from stemline.football.field import BallSpot, Way
from stemline.football.offence.strokes import Route
from stemline.football.play import Play
from stemline.playbook.concepts import Body, Concept, RouteJob
from stemline.playbook.playbook import Playbook
from stemline.playbook.role_rules import Back, Ranked, RoleRule
from stemline.playbook.said import Said, SideWord
from stemline.resolve.expand import Expander
from stemline.resolve.order import Order

RUNNER = "runner"
"""The role of the one man who runs."""


class Posing:
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
            rules={RUNNER: (Said(RoleRule((choice,), (RUNNER,)), ever, found.span),)},
            jobs={RUNNER: (Said(job, ever, found.span),)},
        )
        return Concept(found.name, "", body, found.span, False)

    def _pose(self, formation: str, protection: str) -> tuple[Order, Concept]:
        key = formation, protection
        if key not in self._expander.posed:
            name, body = self._book.formations[formation].name, Body()
            if protection:
                named = self._book.protections[protection]
                ever = always(self._book.receivers)
                name, body = named.name, Body(protect=(Said(named.name, ever, named.span),))
            span = self._book.formations[formation].span
            order = Order(formation, Way.RIGHT, "", name.casefold(), (), name, span, span)
            self._expander.posed[key] = order, Concept(name, "", body, span, False)
        return self._expander.posed[key]
