"""One call fully expanded: what every stage after the resolver reads.

Distances in yards: x right of the ball as the offence faces, y past the line of scrimmage.
Every fact keeps the `Span` it came from. Nothing here knows of text, pages or colours.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from enum import Enum
from functools import cached_property

from stemline.football.defenders import Defence
from stemline.football.exchanges import Exchange, holders, said_any
from stemline.football.field import BallSpot, Field, Side, Way
from stemline.football.players import Position
from stemline.football.put_to_looks import PutToLooks
from stemline.geometry.paths import Ending, Path, Point
from stemline.source import NOWHERE, Span


@dataclass(frozen=True)
class Rank:
    """A receiver's count at the snap: ``number`` from outside in on ``side``."""

    side: Side
    number: int


HANDS_DEEP = 2.0
"""Yards behind the ball within which a quarterback is under centre; deeper he is in the gun."""
HANDS_WIDE = 1.0
"""Yards beside the ball within which he is. Both common practice, no published source."""


@dataclass(frozen=True)
class Man:
    """A player of the offence, in yards to the right of the ball and past the line.

    ``at`` is where he lines up, ``snap`` where he is when the ball moves (the same without a
    motion); ``rank`` is None for a man who is not counted as a receiver (linemen, quarterback,
    backs); ``on_line`` tells a line player from a backfield player; ``forty`` is his own time for
    40 yards in seconds, None where the level's stands for him. ``in_line`` tells that the formation
    puts him into the interior line, whatever his position; ``number`` is his jersey's, None where
    the personnel does not say; ``says`` are the formation's words for him; ``natural`` is his own
    position where the formation may have him play another: he runs as what he is.
    """

    label: str
    position: Position
    at: Point
    snap: Point
    on_line: bool
    rank: Rank | None
    span: Span
    forty: float | None = None
    in_line: bool = False
    number: int | None = None
    says: tuple[str, ...] = ()
    natural: Position | None = None

    @cached_property
    def interior(self) -> bool:
        """One of those who may not go out for a pass: a lineman, or a man put among them."""
        return self.position.interior or self.in_line

    @property
    def under_centre(self) -> bool:
        """Whether he is the quarterback and takes the ball from the centre's hands at the snap."""
        hands = abs(self.snap.x) < HANDS_WIDE and -self.snap.y <= HANDS_DEEP
        return self.position is Position.QUARTERBACK and hands


@dataclass(frozen=True)
class Motion:
    """A man's move before the snap; ``running`` if he has not stopped when the ball moves.

    ``speed`` at the snap in yards a second (0 when set), ``words`` as the coach reads it.
    ``starts`` is when he begins, in seconds before the snap, and ``set_for`` for how long he has
    been still when the ball moves; each None where nothing in the text decides it.
    """

    name: str
    path: Path
    running: bool
    speed: float
    words: str
    starts: float | None = None
    set_for: float | None = None
    span: Span = NOWHERE


@dataclass(frozen=True)
class DepthMark:
    """A depth that is taught: the yards past the line at a break, and where the break is."""

    at: Point
    yards: float


@dataclass(frozen=True)
class Branch:
    """Another path that the look decides; ``looks`` in the coach's words ("off", "zone").

    ``leaves`` is where it parts from the base path; the branch's own path runs from the start.
    """

    looks: str
    path: Path
    job: str
    marks: tuple[DepthMark, ...]
    leaves: Point


@dataclass(frozen=True)
class Hit:
    """A defender whom a blocker takes, by label; ``how`` in a word or two ("down", "kick")."""

    defender: str
    how: str
    at: Point


@dataclass(frozen=True)
class Assignment:
    """What one man does: ``role`` in the concept ("" when he has none), his path after the snap.

    ``job`` is the line for the assignment table ("Sit at 8 straight over the ball"), ``says`` the
    coach's own words for him. ``path`` is None for a man who stays where he is. A blocker's
    ``hits`` are the defenders he takes in order, against the defence drawn (none without one);
    ``path`` goes to the first of them and ``climb`` on to the second: a double team that moves up.
    Of one who only chips, ``climb`` is his way out from there. ``scramble`` is what he does when
    the quarterback runs: a word of `SCRAMBLES`, "" where nothing is said. ``waits`` are the seconds
    for which he blocks before he runs his route, 0 for a back who looks for a rusher on his way;
    None for who goes at the snap.
    """

    man: str
    role: str
    job: str
    path: Path | None
    branches: tuple[Branch, ...]
    marks: tuple[DepthMark, ...]
    motion: Motion | None
    says: tuple[str, ...]
    span: Span
    hits: tuple[Hit, ...] = ()
    climb: Path | None = None
    scramble: str = ""
    waits: float | None = None

    @property
    def role_said(self) -> str:
        """The role as it is printed: men whom one line tells their job share its words."""
        return self.role.partition(SHARED)[0]


SHARED = " · "
"""Parts the words of a role from the number of the man who plays it, where several do."""
FOR_MANY = ("everyone else", "every other back")
"""Who is meant by a line for all those whom no other line names."""


@dataclass(frozen=True)
class Spot:
    """A place that the quarterback looks at; men change, the spot does not.

    The area is an axis-parallel box: ``half_width`` and ``half_height`` yards around ``at``.
    ``men`` are those whose paths bring them there, by label.
    """

    name: str
    at: Point
    half_width: float
    half_height: float
    men: tuple[str, ...]
    span: Span


@dataclass(frozen=True)
class Step:
    """One piece of the quarterback's feet: "quick", "3", "reset", "sprint", with its words.

    ``side`` is where a moving launch goes, None for a step on the spot; ``said`` what it is on
    paper where that is not its name: a fake on which he hands the ball on is a hand-off.
    """

    name: str
    words: str
    side: Side | None = None
    said: str = ""

    @property
    def called(self) -> str:
        return self.said or self.name


@dataclass(frozen=True)
class Read:
    """One look of the quarterback, in order from 1.

    ``target`` is the spot's or role's name, ``at`` where the ball would be caught, ``men`` who
    stands there in this call, ``foot`` the step that throws it ("" when not said), ``partner``
    a role looked at in the same glance ("with dig") and ``partner_man`` its man.
    """

    number: int
    target: str
    at: Point
    men: tuple[str, ...]
    foot: str
    partner: str
    partner_man: str
    span: Span


@dataclass(frozen=True)
class Claim:
    """A shape that the concept claims: "triangle", "high-low" or "stretch", and its points."""

    kind: str
    targets: tuple[str, ...]
    points: tuple[Point, ...]
    on: str
    span: Span


@dataclass(frozen=True)
class Alert:
    """A man looked at before the order starts, and when: "middle open"."""

    target: str
    men: tuple[str, ...]
    when: str
    span: Span


@dataclass(frozen=True)
class Key:
    """A defender whom nobody blocks because the ball goes where he does not.

    ``described`` as the coach writes it ("end man on line, backside"), ``man`` his label in the
    defence drawn ("" without one). ``choices`` are what is done and when: ("give", "", "he
    widens"), ("throw", "glance", "he fits the run"). ``instead`` are the men of the box whom the
    blocking leaves though he is read, where it would leave fewer if another were. ``name`` is what
    the lines call him, "" without one.
    """

    described: str
    man: str
    choices: tuple[tuple[str, str, str], ...]
    span: Span
    instead: tuple[str, ...] = ()
    name: str = ""

    @property
    def throws(self) -> bool:
        """Whether a pass is thrown off him: the key of a run-pass option."""
        return any(what == "throw" for what, *_ in self.choices)

    @property
    def done(self) -> tuple[tuple[str, str], ...]:
        """Each choice in words, and when: ("pitch to F", "he takes the quarterback")."""
        return tuple(
            (f"{what} {'to ' if what in ('pitch', 'give') and to else ''}{to}".rstrip(), when)
            for what, to, when in self.choices
        )


@dataclass(frozen=True)
class Hot:
    """What is thrown when one more comes than is blocked; ``given`` is "" or when, in words.

    ``men`` are those who run it in this call, by label: none where it names no role of the concept.
    """

    throws: str
    given: str
    men: tuple[str, ...]
    span: Span


@dataclass(frozen=True)
class Call:
    """The names a call is made of. ``motion`` is "" without one; ``spoken`` is how it is called;
    ``tempo`` is what its tags say of that, "" for nothing.

    ``side`` is the true one of this play, ``way`` the wide or the short one where the call says
    that instead. ``best`` are the spots that it is best called from, none where nothing says so,
    ``not_from`` those it is never called from.
    """

    formation: str
    side: Side
    motion: str
    concept: str
    tags: tuple[str, ...]
    spoken: str
    tempo: str = ""
    way: Way | None = None
    best: tuple[BallSpot, ...] = ()
    not_from: frozenset[BallSpot] = frozenset()

    @property
    def side_word(self) -> str:
        """The side as it is called: right, left, field or boundary."""
        return self.way.word if self.way is not None else self.side.word


class Kind(Enum):
    """What sort of play a call is."""

    PASS = "concept"
    RUN = "run"


@dataclass(frozen=True)
class Play:
    """One call at one ball spot (against the looks in ``against``, if any were given).

    ``defence`` is the look it is drawn against, None without one. ``toward`` is the playside of
    a run or of a protection's slide, ``carrier`` the label of the man with the ball on a run (""),
    ``handoffs`` those of the men whose hands it goes through between the quarterback's and his.
    ``unblocked`` are the labels of defenders whom nobody takes: on a run in the box, or over an end
    that a receiver's block does not reach, the nearest to the hole first; among the rushers on a
    pass. Keys are not among them. ``chasing`` are the others whom nobody takes on a run and who can
    be at the carrier in time, the first of them first: they are left to him. ``last`` is what the
    quarterback does when no read is open, in the coach's words: "run", "throw away". ``exchanges``
    are how the ball goes, in order, the snap to the quarterback left out. ``becomes`` are the plays
    that it is killed to at the line, in the order of the text: filled in where the play is drawn.
    """

    call: Call
    family: str
    field: Field
    shape: tuple[int, int]
    strong: Side
    men: tuple[Man, ...]
    assignments: tuple[Assignment, ...]
    spots: tuple[Spot, ...]
    feet: tuple[Step, ...]
    reads: tuple[Read, ...]
    pressure: tuple[Read, ...]
    claims: tuple[Claim, ...]
    alerts: tuple[Alert, ...]
    protection: str
    pick: str
    nobody: tuple[str, ...]
    against: tuple[str, ...]
    span: Span
    kind: Kind = Kind.PASS
    defence: Defence | None = None
    toward: Side | None = None
    carrier: str = ""
    keys: tuple[Key, ...] = ()
    unblocked: tuple[str, ...] = ()
    chasing: tuple[str, ...] = ()
    hot: tuple[Hot, ...] = ()
    protection_words: str = ""
    handoffs: tuple[str, ...] = ()
    called_away: tuple[str, ...] = ()
    last: tuple[str, ...] = ()
    exchanges: tuple[Exchange, ...] = ()
    becomes: tuple[Becoming, ...] = ()

    @property
    def unsaid(self) -> Play:
        """The play without the coach's own words for its men, which no picture shows."""
        return replace(
            self,
            men=tuple(replace(man, says=()) for man in self.men),
            assignments=tuple(replace(task, says=()) for task in self.assignments),
            becomes=tuple(replace(each, play=each.play.unsaid) for each in self.becomes),
        )

    @property
    def ball(self) -> BallSpot:
        return self.field.spot

    @property
    def is_read(self) -> bool:
        """Whether the quarterback looks at anybody."""
        return bool(self.reads)

    @property
    def unmet(self) -> tuple[str, ...]:
        """Whom nobody takes and somebody has to run by: ``unblocked`` and ``chasing``."""
        return (*self.unblocked, *self.chasing)

    @property
    def passer(self) -> Man | None:
        """The quarterback; None where the formation lines up none."""
        return next((m for m in self.men if m.position is Position.QUARTERBACK), None)

    def as_said(self, man: str) -> str:
        """As a line of the text has a man: by his role where it is his alone, the quarterback as
        that, else by his letter."""
        role, passer = self.assignment(man).role_said, self.passer
        if not role and passer is not None and passer.label == man:
            return "quarterback"
        return man if role in (*FOR_MANY, "") else role

    def as_told(self, man: str) -> str:
        """As a message has him: as a line says him, with his letter behind a role."""
        said = self.as_said(man)
        return f"{said} ({man})" if said != man else said

    @cached_property
    def ball_men(self) -> frozenset[str]:
        """Who has the ball on the way that the coach says, but for the quarterback; nobody where
        he leaves it to the rule."""
        if not said_any(self.exchanges):
            return frozenset()
        passer = self.passer
        return frozenset(holders(self.exchanges, "")[1:]) - {passer.label if passer else ""}

    def man(self, label: str) -> Man:
        return self._men[label]

    @cached_property
    def _men(self) -> Mapping[str, Man]:
        return {m.label: m for m in reversed(self.men)}

    def assignment(self, label: str) -> Assignment:
        return next(a for a in self.assignments if a.man == label)

    def in_line(self, label: str) -> bool:
        """Whether he is told with the line: its men, but for one who goes out for a pass where the
        code lets him catch it."""
        task, man = self.assignment(label), self.man(label)
        path = task.path if self.field.code.all_eligible and task.role else None
        goes = path is not None and bool(path.legs) and path.ending is not Ending.BLOCK
        return man.interior and not (goes and self.kind is Kind.PASS)

    def runs(self, role: str) -> Assignment | None:
        """The assignment of ``role``, or None when nobody plays it in this call."""
        return next((a for a in self.assignments if role in (a.role, a.role_said)), None)


@dataclass(frozen=True)
class Becoming:
    """A play that a call becomes at the line, from the same men at the same places.

    ``when`` is what the quarterback sees, in words, and ``words`` the play as it is called;
    ``word`` is what he says. ``looks`` are those of the playbook that show it to this call, by
    name; ``tag`` is the tag that says so, "" where the concept does.
    """

    word: str
    words: str
    when: str
    looks: tuple[str, ...]
    play: Play
    span: Span
    tag: str = ""

    @property
    def headed(self) -> str:
        """What stands over its picture: "Anchor: Stick"."""
        return f"{self.word}: {self.words}"


@dataclass(frozen=True)
class ConceptSheet:
    """What a concept's page says in words, once for all its calls; ``idea`` is what it is for, ""
    where the coach does not say.

    ``views`` are its first call again, one play for each look it is shown against beside the
    picture's own; none where the playbook has no looks or the page shows none. A view without a
    defence holds the blocking rules themselves. ``faced`` are, for a pass, its first call against
    every look: what the table of reads by looks is worked out from; ``put`` is what comes of them,
    where it is known, and then none of them is there. ``keyed`` are the first call that reads a
    defender, and the first with each other tag that does, against every look.
    ``suits`` are the situations it is for, in words.
    ``spotted`` are calls as they are drawn, but from their other spots: the first, and those whose
    dress-up speaks of spots.
    """

    name: str
    family: str
    feet: tuple[Step, ...]
    says: tuple[str, ...]
    cautions: tuple[str, ...]
    serves: tuple[str, ...]
    tags: tuple[tuple[str, tuple[str, ...]], ...]
    span: Span
    kind: Kind = Kind.PASS
    views: tuple[Play, ...] = ()
    faced: tuple[Play, ...] = ()
    keyed: tuple[Play, ...] = ()
    idea: str = ""
    suits: tuple[str, ...] = ()
    spotted: tuple[Play, ...] = ()
    put: PutToLooks | None = None


@dataclass(frozen=True)
class LookSheet:
    """A look's page: the look against one or more sets of the offence, the first the largest.

    Each view is a play in which the offence only stands (no assignments with a job). ``adjusts``
    is what a man does when somebody moves: his label, the motion, and his line. ``after`` is what
    the look shows behind motions, by name, where that is something else.
    """

    name: str
    says: tuple[str, ...]
    views: tuple[Play, ...]
    span: Span
    adjusts: tuple[tuple[str, str, str], ...] = ()
    after: tuple[tuple[tuple[str, ...], tuple[str, ...]], ...] = ()


@dataclass(frozen=True)
class ProtectionSheet:
    """A protection's page: its blockers against each look, in one set of the offence.

    ``hot`` is what is thrown when one more comes than is blocked, and when, "" where not said. A
    view without a defence holds the rules themselves.
    """

    name: str
    words: str
    says: tuple[str, ...]
    views: tuple[Play, ...]
    span: Span
    hot: tuple[tuple[str, str], ...] = ()
    cautions: tuple[str, ...] = ()


@dataclass(frozen=True)
class FormationSheet:
    """A formation as it stands when called right; ``people`` is its personnel, "" where not said.

    The view is a play in which the offence only stands; in ``to_field`` and ``to_boundary`` the
    ball lies on a hash, so that the called side is the wide or the short one. ``splits`` are the
    coach's places, man by man: his letter, the place in words, and when it holds ("" for always).
    """

    name: str
    people: str
    says: tuple[str, ...]
    view: Play
    span: Span
    to_field: Play | None = None
    to_boundary: Play | None = None
    splits: tuple[tuple[str, str, str], ...] = ()


@dataclass(frozen=True)
class MotionSheet:
    """A motion or shift, from the formation that is most often called with it, called right: a
    play in which the men only move before the snap; ``says`` are the coach's own words."""

    name: str
    view: Play
    span: Span
    says: tuple[str, ...] = ()


@dataclass(frozen=True)
class RouteSheet:
    """A route that the playbook calls, at the depth it is most often called at, run by one man
    alone beside the line, yards deep: a play that has nobody else."""

    name: str
    depth: float
    view: Play


@dataclass(frozen=True)
class Team:
    """What the playbook block says of the book itself."""

    name: str
    season: str
    says: tuple[str, ...]
    cautions: tuple[str, ...]
    right_handed: bool


@dataclass(frozen=True)
class Season:
    """A whole playbook, resolved: what the book is made from.

    ``low_block``, ``blindside_block``, ``behind_block``, ``crossing_contact`` and ``chop_block``
    are the code's rules in words for the coach's page, each with its source and any doubt about
    it; ``league`` are the figures that the playbook's league has otherwise; ``level`` names the
    table of the clock's figures. ``past_line`` is the rule on blocks past the line on a pass;
    ``care`` what is published on contact, heat, youth and concussion, as labels and texts.

    ``letters`` are those of the offence in the order in which its personnel names them; with
    ``every_call`` the book draws also calls whose picture another one says.

    ``signs`` are the signals and words of definitions: what it is ("concept Stick"), the signal and
    the word, each "" where the coach gives none.

    ``plays`` hold every call once, at the spot it is drawn from, in book order: by family,
    concept, then the order of the dress-up.
    """

    team: Team
    code_title: str
    authority: str
    low_block: str
    crossing_contact: str
    concepts: tuple[ConceptSheet, ...]
    plays: tuple[Play, ...]
    looks: tuple[LookSheet, ...] = ()
    protections: tuple[ProtectionSheet, ...] = ()
    formations: tuple[FormationSheet, ...] = ()
    blindside_block: str = ""
    behind_block: str = ""
    league: str = ""
    level: str = "high school"
    signs: tuple[tuple[str, str, str], ...] = ()
    past_line: str = ""
    care: tuple[tuple[str, str], ...] = ()
    chop_block: str = ""
    letters: tuple[str, ...] = ()
    motions: tuple[MotionSheet, ...] = ()
    routes: tuple[RouteSheet, ...] = ()
    every_call: bool = False


def about_blocks(play: Play) -> bool:
    """Whether a play is drawn close: a run, or nobody's route and men who block against a look or
    give the ball on behind the line."""
    if play.kind is Kind.RUN:
        return True
    faced = play.defence is not None and any(task.hits for task in play.assignments)
    if not faced and not play.ball_men:
        return False
    return not any(_is_route(play, task) for task in play.assignments)


def _is_route(play: Play, task: Assignment) -> bool:
    passer = play.man(task.man).position is Position.QUARTERBACK
    if task.path is None or passer:
        return False
    behind = task.man in play.ball_men and task.path.end.y <= 0.0
    # Where nobody is read, who looks for a rusher first is the protection's.
    checks = not play.reads and task.waits is not None
    return task.path.ending in (Ending.RUN, Ending.SETTLE) and not (behind or checks)
