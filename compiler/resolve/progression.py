"""The quarterback's picture of one call: spots, reads, claims and alerts."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from stemline.diagnostics.catalogue.calls import E630
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.football.field import Side
from stemline.football.offence.landmarks import Landmark, x_of
from stemline.football.offence.quarterback import step
from stemline.football.play import Alert, Assignment, Claim, Read, Spot, Step
from stemline.geometry.paths import Ending, Point, along, length, polyline
from stemline.lineup.lined_up import LinedUp
from stemline.playbook.concepts import Body, FootDef, LookAt, SpotRule
from stemline.playbook.guards import narrowest
from stemline.playbook.said import Said
from stemline.resolve.roles import Bound, side_of_way

# Half the width and height of a spot in yards. Common practice, no published source: the window
# of a shallow crosser reaches from the tackle to a slot's first split; a settle is thrown within
# a step or two of his place.
LOW_HALF_WIDTH = 4.5
HALF_WIDTH = 3.0
HALF_HEIGHT = 2.0
_LONG_PATH = 16.0
"""A catch on a longer path than this is shown part of the way along it, where it is thrown."""
_CATCH = 0.62


@dataclass(frozen=True)
class Eyes:
    """What `look` works out, with what went wrong."""

    spots: tuple[Spot, ...]
    feet: tuple[Step, ...]
    reads: tuple[Read, ...]
    pressure: tuple[Read, ...]
    claims: tuple[Claim, ...]
    alerts: tuple[Alert, ...]
    protection: str
    pick: str
    last: tuple[str, ...]
    found: tuple[Diagnostic, ...]


def look(
    body: Body,
    bound: Bound,
    picture: LinedUp,
    assigned: Sequence[Assignment],
    right_handed: bool,
    call: str,
) -> Eyes:
    found: list[Diagnostic] = []
    worker = _Looking(body, bound, picture, assigned, call, found)
    spots = worker.spots()
    reads = worker.order(body.read, spots, report=True)
    feet = worker.one(body.feet)
    return Eyes(
        spots=spots,
        feet=tuple(
            step(f.name, _launched(f, reads, picture), right_handed, picture.toward)
            for f in (feet.value if feet else ())
        ),
        reads=reads,
        pressure=worker.order(body.pressure, spots, report=False),
        claims=worker.claims(spots),
        alerts=worker.alerts(spots),
        protection=worker.text(body.protect),
        pick=worker.text(body.pick),
        last=worker.last(),
        found=tuple(found),
    )


def _launched(foot: FootDef, reads: Sequence[Read], picture: LinedUp) -> Side:
    """The side a moving launch goes to: as the text says, else where the first read is; with
    nobody to throw to, a boot goes away from the run that was shown."""
    if foot.side is not None:
        return picture.side(foot.side)
    for read in reads:
        if side := Side.at(read.at.x):
            return side
    if foot.name == "boot" and picture.toward is not None:
        return picture.toward.other
    return picture.called


class _Looking:
    def __init__(
        self,
        body: Body,
        bound: Bound,
        picture: LinedUp,
        assigned: Sequence[Assignment],
        call: str,
        found: list[Diagnostic],
    ) -> None:
        self.body, self.bound, self.picture = body, bound, picture
        self.by_man = {a.man: a for a in assigned}
        self.call, self.found = call, found

    def one(self, said: Sequence[Said[tuple[FootDef, ...]]]) -> Said[tuple[FootDef, ...]] | None:
        return narrowest([s for s in said if self._worlds & s.guard.worlds])

    def text(self, said: Sequence[Said[str]]) -> str:
        chosen = narrowest([s for s in said if self._worlds & s.guard.worlds])
        return chosen.value if chosen else ""

    @property
    def _worlds(self) -> frozenset[int]:
        return self.picture.worlds(self.picture.count.strong)

    def spots(self) -> tuple[Spot, ...]:
        spots = []
        for name, said in self.body.spots.items():
            chosen = narrowest([s for s in said if self._worlds & s.guard.worlds])
            if chosen is not None:
                spots.append(self._spot(name, chosen))
        return tuple(spots)

    def _spot(self, name: str, said: Said[SpotRule]) -> Spot:
        rule = said.value
        side = self.picture.count.strong
        if rule.side is not None:
            side = side_of_way(rule.side, self.bound, self.picture) or side
        x = x_of(rule.landmark, side, self.picture.field) + side.value * rule.outside
        half = HALF_WIDTH if rule.landmark is Landmark.BALL else LOW_HALF_WIDTH
        at = Point(x, rule.depth)
        men = tuple(
            a.man
            for a in self.by_man.values()
            if a.path is not None
            and a.path.ending is not Ending.BLOCK
            and abs(a.path.end.x - at.x) <= half + 1e-9
            and abs(a.path.end.y - at.y) <= HALF_HEIGHT + 1e-9
        )
        return Spot(name, at, half, HALF_HEIGHT, men, said.span)

    def order(
        self, said: Sequence[Said[tuple[LookAt, ...]]], spots: Sequence[Spot], *, report: bool
    ) -> tuple[Read, ...]:
        """Reads in order; one that names a man who is nobody here, and what ends the order, are
        passed over. Of two who are seen in one glance the one who is left is read."""
        chosen = narrowest([s for s in said if self._worlds & s.guard.worlds])
        reads: list[Read] = []
        for looked in chosen.value if chosen else ():
            place = self._place(looked.target, spots)
            partner = self._place(looked.partner, spots) if looked.partner else None
            if place is None and partner is not None:
                looked, place, partner = replace(looked, target=looked.partner), partner, None
            if place is None:
                continue
            at, men = place
            if not men and report:
                miss = self._miss(looked.target, spots, chosen.value if chosen else ())
                empty = E630(spot=looked.target, call=self.call, miss=miss)
                self.found.append(empty.at(looked.span))
            reads.append(
                Read(
                    number=len(reads) + 1,
                    target=looked.target,
                    at=at,
                    men=men,
                    foot=looked.foot,
                    partner=looked.partner if partner else "",
                    partner_man=partner[1][0] if partner and partner[1] else "",
                    span=looked.span,
                )
            )
        return tuple(reads)

    def last(self) -> tuple[str, ...]:
        """What he does when no look of his order is open, as the text says it."""
        chosen = narrowest([s for s in self.body.read if self._worlds & s.guard.worlds])
        return chosen.value[-1].last if chosen else ()

    def _miss(self, target: str, spots: Sequence[Spot], looks: Sequence[LookAt]) -> str:
        """Who that is no other read comes nearest to an empty one, and by how much he misses
        it: ``: H ends 4 yards too deep``; nothing for the read of a man, and where nobody runs."""
        spot = next((s for s in spots if s.name == target), None)
        if spot is None:
            return ""
        elsewhere = {man for other in spots for man in other.men}
        elsewhere |= {self.bound.man(look.target) or "" for look in looks}
        misses = []
        for task in self.by_man.values():
            if task.man in elsewhere:
                continue
            if task.path is not None and task.path.ending is not Ending.BLOCK:
                up = task.path.end.y - spot.at.y
                over = max(abs(up) - spot.half_height, 0.0)
                aside = max(abs(task.path.end.x - spot.at.x) - spot.half_width, 0.0)
                misses.append((over + aside, task.man, over, aside, up))
        if not misses:
            return ""
        _, man, over, aside, up = min(misses)
        parts = [f"{over:.1f} yards too {'deep' if up > 0 else 'short'}"] if over else []
        parts += [f"{aside:.1f} yards to the side of it"] if aside else []
        return f": {man} ends {' and '.join(parts)}"

    def _place(self, target: str, spots: Sequence[Spot]) -> tuple[Point, tuple[str, ...]] | None:
        """Where a target is caught and by whom, if he goes out; None for a role that is nobody."""
        spot = next((s for s in spots if s.name == target), None)
        if spot is not None:
            if len(spot.men) == 1:
                return self._catch(spot.men[0]), spot.men
            return spot.at, spot.men
        label = self.bound.man(target)
        if label is None:
            return None
        path = self.by_man[label].path
        goes_out = path is not None and path.ending is not Ending.BLOCK
        return self._catch(label), (label,) if goes_out else ()

    def _catch(self, label: str) -> Point:
        path = self.by_man[label].path
        if path is None:
            return self.picture.man(label).snap
        if path.ending is not Ending.RUN or path.end.y <= _LONG_PATH / 2:
            return path.end
        points = polyline(path)
        run = length(points)
        return along(points, run * _CATCH) if run > _LONG_PATH else path.end

    def claims(self, spots: Sequence[Spot]) -> tuple[Claim, ...]:
        made = []
        for claim in self.body.claims:
            if not self._worlds & claim.guard.worlds:
                continue
            places = [self._place(target, spots) for target, _ in claim.targets]
            points = tuple(p[0] for p in places if p is not None)
            if len(points) == len(places):
                names = tuple(target for target, _ in claim.targets)
                made.append(Claim(claim.kind, names, points, claim.on, claim.span))
        return tuple(made)

    def alerts(self, spots: Sequence[Spot]) -> tuple[Alert, ...]:
        made = []
        for alert in self.body.alerts:
            place = self._place(alert.target, spots)
            if place is not None and self._worlds & alert.guard.worlds:
                when = alert.guard.text or (f"the {alert.on} lets him go" if alert.on else "")
                made.append(Alert(alert.target, place[1], when, alert.span))
        return tuple(made)
