"""The carrier of a run that is only shown and who then goes out: he fakes where he would have got
the ball, and runs his route from there."""

from __future__ import annotations

from dataclasses import replace

from stemline.football.blocking.carrying import mesh
from stemline.football.play import SHARED, Man
from stemline.football.players import Position
from stemline.geometry.paths import Leg, Path, Point, along, length, polyline
from stemline.lineup.lined_up import LinedUp
from stemline.playbook.concepts import Body, RouteJob
from stemline.playbook.run_definitions import CARRIER, Aim
from stemline.resolve.roles import Bound, shows_run

FAKER = f"{CARRIER}{SHARED}fakes"
"""The role of a man whose route is said of the `carrier`, which no coach can write and no page
prints: it is said as `carrier`."""
_GIVEN = 1.6
"""Yards from a quarterback under centre at which he shows the ball to a man behind him. Common
practice, no published source."""
_STRIDE = 1.4
"""Yards that he goes on toward the hole with his elbow up. Common practice, no published source."""
_LAST = -2.4
"""How near the line he turns at the latest, and how far a turn reaches."""
_TURN = 0.5
_STEP = 0.1


def with_faker(body: Body) -> Body:
    """``body`` where a route is said of the carrier: he has the run's aim, the route a role of its
    own, whose man he is too."""
    own = body.jobs.get(CARRIER, ())
    if not shows_run(body) or not any(isinstance(said.value, RouteJob) for said in own):
        return body
    says = {role: told for role, told in body.role_says.items() if role != CARRIER}
    return replace(
        body,
        rules={**body.rules, FAKER: body.rules[CARRIER]},
        jobs={**body.jobs, CARRIER: body.shown, FAKER: own},
        role_says={**says, FAKER: body.role_says.get(CARRIER, ())},
    )


def fake_of(man: str, role: str, body: Body, bound: Bound) -> Aim | None:
    """Where a man shows that he carries the ball who then goes out; None for any other."""
    if role == CARRIER or bound.men.get(CARRIER) != man or not shows_run(body):
        return None
    return next((said.value for said in body.shown if isinstance(said.value, Aim)), None)


def faked_at(man: Man, way: Path, picture: LinedUp) -> tuple[Point, ...]:
    """Where he fakes: at the mesh, or where his ``way`` to the hole comes up to a quarterback under
    centre, and a stride on from there."""
    passer = next((m for m in picture.men if m.position is Position.QUARTERBACK), man)
    points = polyline(way)
    places = [along(points, n * _STEP) for n in range(int(length(points) / _STEP) + 1)]
    behind = [p for p in places if p.y < _LAST] or [man.snap]
    meets = mesh(man, passer)
    by = meets[0] if meets else passer.snap
    near = 0.0 if meets else _GIVEN
    at = next(
        (n for n, p in enumerate(behind) if p.distance(by) <= near),
        min(range(len(behind)), key=lambda n: behind[n].distance(by)),
    )
    stride = int(_STRIDE / _STEP)
    at = min(at, max(len(behind) - 1 - stride, 0))
    on = min(at + stride, len(behind) - 1)
    return tuple(dict.fromkeys((meets[0] if meets else behind[at], behind[on])))


def then_out(way: Path, start: Point, at: tuple[Point, ...]) -> Path:
    """A route that is run from the fake, with the way there."""
    return replace(way, start=start, legs=(*(Leg(p, _TURN) for p in at), *way.legs))
