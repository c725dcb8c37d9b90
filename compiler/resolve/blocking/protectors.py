"""Who stays in on a pass, and what each of them is told: a protection bound to the men of a call.

The concept decides who goes out. Of the men it keeps in, and of those it says nothing about, the
protection says what they do; a back who checks first and goes out afterwards is both.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from stemline.diagnostics.catalogue.calls import E620, E621
from stemline.diagnostics.catalogue.protections import E695, E696, W690
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.football.blocking.protecting import Blocker, ProtectionRule
from stemline.football.conditions import LookWord
from stemline.football.defence.described import Described
from stemline.football.defence.fronts import Front, front_of
from stemline.football.defence.zones import middle_of
from stemline.football.defenders import Defence
from stemline.football.field import Side
from stemline.football.offence.counting import tight_ends
from stemline.football.play import Man, Play
from stemline.lineup.lined_up import LinedUp
from stemline.playbook.concepts import BlockSaid, Body, Job, RouteJob
from stemline.playbook.guards import narrowest
from stemline.playbook.pass_block import PassBlock
from stemline.playbook.protection_definitions import Protection, SlideWay, Toward
from stemline.playbook.run_definitions import WHOLE_LINE, LineSpot
from stemline.playbook.said import Said, SideWord
from stemline.read.read_runs import PLACES
from stemline.resolve.assignments import choose, natural_out
from stemline.resolve.roles import Bound, bind
from stemline.source import Span

KEEPS_IN = {
    "inside out": ProtectionRule.SCAN,
    "edge": ProtectionRule.EDGE,
    "slide": ProtectionRule.SCAN,
}
"""Blocks of a concept's role that are part of a protection."""
CHECKS = ("check",)
"""Routes that a man runs only after he has looked for a rusher."""


_SIDE_WORDS = frozenset(word.value for word in SideWord)
CENTRE = LineSpot(None, "centre")
OUTSIDE = PLACES.index("outside tackle")
"""A third man of the line on a side, and any after him, is an outside tackle."""


@dataclass(frozen=True)
class Protector:
    """A man who stays in. ``role`` is the protection's name for him ("" for the line and for men
    it does not name), ``kept`` tells that the concept's words and path for him stand, ``goes``
    that he goes out when nobody comes; ``wants`` the described defenders he looks at first, whom
    `RushSeen` finds in a look; ``edge`` the edge he takes, with the side that the text says."""

    man: Man
    blocker: Blocker
    role: str
    kept: bool
    goes: bool
    wants: tuple[str, ...]
    edge: str = "edge"


class Protectors:
    """The men of one play who protect; ``toward`` is the slide's side and ``way`` its words."""

    def __init__(
        self, play: Play, body: Body, protection: Protection, bound: Bound, picture: LinedUp
    ) -> None:
        self.before = play
        self.body = body
        self.protection = protection
        self.bound = bound
        self.found: list[Diagnostic] = []
        self._standing = picture
        self.worlds = picture.worlds(picture.count.strong)
        self.backs = tuple(sorted(picture.count.backs, key=self._likely))
        self.ends = tight_ends(picture.men)
        self.spots = _spots(picture.men)
        self.toward, self.way = self._slide(picture)
        count = replace(picture.count, backs=self.backs)
        self.picture = replace(picture, toward=self.toward, count=count)
        self.men = self._men()

    @property
    def named_at(self) -> Span:
        """The concept's line that names the protection."""
        chosen = narrowest([s for s in self.body.protect if self.worlds & s.guard.worlds])
        return chosen.span if chosen is not None else self.before.span

    @property
    def launch(self) -> Side | None:
        """Where a moving quarterback goes; on the spot, the side of the first read that has one."""
        moving = next((step.side for step in self.before.feet if step.side), None)
        if moving is not None:
            return moving
        return next(filter(None, (Side.at(read.at.x) for read in self.before.reads)), None)

    # Which way.

    def _slide(self, picture: LinedUp) -> tuple[Side | None, str]:
        """The side the line slides to, and how the coach says it; the called side where none of
        his choices is there."""
        chosen = narrowest([s for s in self.protection.toward if self.worlds & s.guard.worlds])
        if chosen is None:
            return None, ""
        for toward in chosen.value:
            side = self._side_of(toward, picture)
            if side is not None:
                return side, _words(toward)
        return picture.called, _words(SideWord.CALL)

    def _side_of(self, toward: Toward, picture: LinedUp) -> Side | None:
        side: Side | None
        match toward:
            case SideWord():
                return picture.side(toward)
            case SlideWay.TO_BACK | SlideWay.FROM_BACK:
                side = picture.side_of(self.backs[0]) if self.backs else None
            case SlideWay.TO_END | SlideWay.FROM_END:
                sides = {picture.side_of(label) for label in self.ends}
                side = sides.pop() if len(sides) == 1 else None
            case SlideWay.TO_LAUNCH | SlideWay.FROM_LAUNCH:
                side = self.launch or picture.called
        if side is not None and toward in (
            SlideWay.FROM_BACK,
            SlideWay.FROM_END,
            SlideWay.FROM_LAUNCH,
        ):
            return side.other
        return side

    # Who.

    def _does(self, label: str) -> Job | None:
        """What the concept has a man do; None where it says nothing of him."""
        role = self.bound.role_of(label)
        said = self.body.jobs.get(role, ()) if role is not None else ()
        if not said:
            return None
        against = tuple(LookWord(word) for word in self.before.against)
        worlds = self._standing.worlds(_side(self.before.man(label)), against)
        chosen = choose(said, worlds)
        return chosen.base.value if chosen is not None else None

    def _likely(self, label: str) -> int:
        """Backs whom the concept keeps in are the protection's before those it sends out."""
        does = self._does(label)
        if does is None:
            return 2
        if isinstance(does, BlockSaid) and does.job in KEEPS_IN:
            return 0
        return 1 if isinstance(does, RouteJob) and does.route.name in CHECKS else 3

    def _men(self) -> tuple[Protector, ...]:
        helpers = self._helpers()
        # A centre who may catch a pass, and goes out for one, is no protector.
        out = {m.label for m in self.before.men if isinstance(self._does(m.label), RouteJob)}
        stays = [m for m in self.before.men if m.interior and m.label not in out]
        line = {m.label: self._of_line(m) for m in stays}
        idle = [label for label, told in line.items() if told is None]
        if idle:
            self.found.append(
                E696(
                    protection=self.protection.name,
                    men=", ".join(idle),
                    call=self.before.call.spoken,
                ).at(self.protection.span)
            )
        made = (
            line.get(m.label) if m.interior else self._other(m, helpers.get(m.label, ""))
            for m in self.before.men
        )
        return tuple(p for p in made if p is not None)

    def _helpers(self) -> dict[str, str]:
        """Roles of the protection by the man who has them."""
        if not self.protection.rules:
            return {}
        made = bind(Body(rules=self.protection.rules), self.picture, self.before.call.spoken)
        for d in made.found:
            call, said = self.before.call.spoken, d.said
            why = said.why if isinstance(said, E620) else "its roles lean on each other"
            if isinstance(said, E620 | E621):
                told = E695(protection=self.protection.name, call=call, role=said.role, why=why)
                self.found.append(told.at(self.named_at))
        return {label: role for role, label in made.men.items()}

    def _of_line(self, man: Man) -> Protector | None:
        """A lineman's own rule before the one for the whole line."""
        spot = self.spots.get(man.label, CENTRE)
        job = self._rule(spot)
        if job is None and spot.place == "outside tackle":
            job = self._rule(replace(spot, place="tackle"))
        job = job or self._rule(WHOLE_LINE)
        return None if job is None else self._protector(man, job, "", kept=False, in_line=True)

    def _rule(self, spot: LineSpot) -> PassBlock | None:
        """The rule for a place; the text may say its side by any word for a side."""
        for who, said in self.protection.line.items():
            if self._is_at(who, spot):
                job = self._holds(said)
                if job is not None:
                    return job
        return None

    def _is_at(self, who: LineSpot, spot: LineSpot) -> bool:
        """Whether the man whom the text names stands at ``spot``."""
        same = who.side is spot.side or (
            who.side is not None
            and spot.side is not None
            and self.picture.side(who.side) is self.picture.side(spot.side)
        )
        return who.place == spot.place and same

    def told(self, man: Protector) -> tuple[str, ...]:
        """What the protection says to a man, by his role or by his place in the line."""
        says = self.protection.role_says.get(man.role, ())
        spot = self.spots.get(man.man.label, CENTRE) if man.man.interior else None
        for who, said in self.protection.line_says.items():
            if spot is not None and (who == WHOLE_LINE or self._is_at(who, spot)):
                says += said
        return says

    def _holds(self, said: Sequence[Said[PassBlock]]) -> PassBlock | None:
        chosen = narrowest([s for s in said if self.worlds & s.guard.worlds])
        return chosen.value if chosen is not None else None

    def _other(self, man: Man, role: str) -> Protector | None:
        """A man who may go out: the concept's word first."""
        does = self._does(man.label)
        job = self._holds(self.protection.jobs.get(role, ())) if role else self._end(man)
        if does is None:
            if job is None:
                return None
            goes = job.rule.checks
            in_line = man.label in self.ends and not goes
            return self._protector(man, job, role, kept=False, in_line=in_line, goes=goes)
        if isinstance(does, BlockSaid) and does.job in KEEPS_IN:
            own = PassBlock(KEEPS_IN[does.job], does.side)
            # kept in by the concept; at the edge or inside is the protection's, as are its words
            same = job is None or job.rule.at_edge == own.rule.at_edge
            told = job if job is not None and does.side is None else own
            return self._protector(man, told, role, kept=same, in_line=False)
        if isinstance(does, RouteJob) and does.route.name in CHECKS:
            told = does.looks or PassBlock(ProtectionRule.CHECK)
            if job is not None and does.looks is None:
                told = replace(told, wants=job.wants)
            return self._protector(man, told, role, kept=True, in_line=False, goes=True)
        if role and isinstance(does, RouteJob):
            self.found.append(
                W690(
                    protection=self.protection.name, man=man.label, role=role,
                    route=does.route.name, call=self.before.call.spoken,
                ).at(self.named_at)
            )  # fmt: skip
        return None

    def way_out(self, man: Protector) -> RouteJob | None:
        """The route that the protection has him run who checks, where the concept says nothing."""
        if man.kept or not man.goes:
            return None
        said = self.protection.outs.get(man.role, ())
        chosen = narrowest([s for s in said if self.worlds & s.guard.worlds])
        return chosen.value if chosen is not None else None

    def looks_to(self, man: Protector) -> Side | None:
        """The side on which he looks who checks: of the edge that is his, or of the defender whom
        the text calls by a side; None where it says none."""
        if man.blocker.rule.at_edge:
            return man.blocker.side
        word = man.wants[0].partition(" ")[0] if man.wants else ""
        return self.picture.side(SideWord(word)) if word in _SIDE_WORDS else None

    def _end(self, man: Man) -> PassBlock | None:
        if man.label not in self.ends:
            return None
        side = SideWord.LEFT if man.snap.x < 0 else SideWord.RIGHT
        return self._rule(LineSpot(side, "end"))

    def _protector(
        self,
        man: Man,
        job: PassBlock,
        role: str,
        *,
        kept: bool,
        in_line: bool,
        goes: bool = False,
    ) -> Protector:
        behind = job.rule.scans or job.rule.at_edge
        if not in_line and not behind:  # a gap or a man of the line, told to one who is not in it
            job = PassBlock(ProtectionRule.SCAN, None, job.wants)
        blocker = Blocker(man.label, man.snap, job.rule, in_line, self._sided(man, job))
        return Protector(man, blocker, role, kept, goes, job.wants, job.edge)

    def _sided(self, man: Man, job: PassBlock) -> Side | None:
        """The edge he takes, or the side he scans first: what the text says; a scan looks away
        from the slide; else his own side, and straight behind the ball the side it leaves."""
        if job.side is not None:
            return self.picture.side(job.side)
        if self.toward is not None and (job.rule.scans or _side(man) is None):
            return self.toward.other
        return natural_out(man, self.picture)


class RushSeen:
    """One look as the protectors see it: the described defenders in it."""

    def __init__(self, men: Protectors, defence: Defence) -> None:
        self._men, self._defence, self._picture = men.before.men, defence, men.picture
        self._toward = men.toward or men.picture.count.strong
        self._fronts: dict[Side, Front] = {}

    def blocker(self, protector: Protector) -> Blocker:
        """A protector with the labels of those he looks at first."""
        if not protector.wants:
            return protector.blocker
        labels = (self.described(what, protector.man) for what in protector.wants)
        return replace(protector.blocker, wants=tuple(label for label in labels if label))

    def described(self, what: str, man: Man | None) -> str:
        """The label of a described defender, seen from a man; "" for nobody.

        Of several who answer, the first who rushes: the others drop and are nobody's.
        """
        if not what:
            return ""
        named, _, rest = what.partition(" ")
        side = _side(man) if man is not None else None
        if named in _SIDE_WORDS:
            what, side = rest, self._picture.side(SideWord(named))
        toward = side or self._toward
        x = man.snap.x if man is not None else 0.0
        there = self._front(toward).described(Described(what, toward), x)
        return next((d.label for d in there if d.rushes), "")

    def _front(self, toward: Side) -> Front:
        if toward not in self._fronts:
            middle = middle_of(self._picture.field)
            self._fronts[toward] = front_of(self._men, self._defence, toward, middle=middle)
        return self._fronts[toward]


def _spots(men: Sequence[Man]) -> dict[str, LineSpot]:
    """Guards and tackles by their place; the centre is not among them."""
    spots = {}
    for side, word in ((Side.LEFT, SideWord.LEFT), (Side.RIGHT, SideWord.RIGHT)):
        there = sorted((m for m in men if m.interior and _side(m) is side), key=_from_ball)
        for n, man in enumerate(there):
            spots[man.label] = LineSpot(word, PLACES[min(n, OUTSIDE)])
    return spots


def _from_ball(man: Man) -> float:
    return abs(man.snap.x)


def _side(man: Man) -> Side | None:
    return Side.at(man.snap.x)


def _words(toward: Toward) -> str:
    """``away from back`` → "away from the back"; a side word as it is."""
    text = toward.value
    if isinstance(toward, SideWord):
        return f"to the {text}" if text in ("call", "field", "boundary", "left", "right") else text
    first, _, man = text.rpartition("from ")
    return f"{first}from the {man}" if first else f"to the {man}"
