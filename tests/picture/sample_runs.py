"""Runs, a protection and a look made by hand for the drawing tests."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from picture.sample_plays import LINE, man, path, three_two, trips
from stemline.football.defenders import Defence, Defender, Duty, DutyKind, Level
from stemline.football.exchanges import BallMoves, Exchange
from stemline.football.field import BallSpot, Field, Side
from stemline.football.play import (
    Assignment,
    Call,
    Hit,
    Key,
    Kind,
    Man,
    Motion,
    Play,
    Rank,
)
from stemline.football.players import Position
from stemline.football.rulebook.codes import CANADIAN_AMATEUR, HIGH_SCHOOL, Code
from stemline.geometry.paths import Ending, Path, Point
from stemline.source import NOWHERE

Row = tuple[str, float, float] | tuple[str, float, float, str]


def front(name: str, *rows: Row, strong: Side = Side.RIGHT) -> Defence:
    """Defenders as (label, x, y) or (label, x, y, technique); the level follows the depth."""
    made: list[Defender] = []
    for label, x, y, *technique in rows:
        level = Level.LINE if y < 1.5 else Level.SECOND if y < 6.5 else Level.DEEP
        made.append(Defender(label, Point(x, y), level, "".join(technique), None, NOWHERE))
    return Defence(name, strong, tuple(made), ("zone", "middle closed"), NOWHERE)


EVEN = front(
    "Even Three",
    ("E", 3.2, 0.8, "5"),
    ("T", 1.8, 0.8, "3"),
    ("N", -0.45, 0.8, "1"),
    ("J", -3.2, 0.8, "5"),
    ("M", 0.6, 4.5),
    ("W", -2.2, 4.5),
    ("S", 6.5, 4),
    ("C", 18, 6),
    ("H", -14, 6),
    ("F", 1, 12),
    ("R", 7, 10),
)

BEAR = front(
    "Bear",
    ("E", 4.9, 0.8, "9"),
    ("T", 1.5, 0.8, "3"),
    ("N", 0, 0.8, "0"),
    ("D", -1.5, 0.8, "3"),
    ("J", -3.4, 0.8, "5"),
    ("S", 3.6, 3.2),
    ("M", 1.2, 4.5),
    ("W", -1.6, 4.5),
    ("C", 18, 5),
    ("H", -14, 5),
    ("F", 0.5, 13),
)

TWELVE = front(
    "Odd Four",
    ("E", 3.3, 1, "5"),
    ("N", 0.2, 1, "0"),
    ("J", -3.3, 1, "5"),
    ("B", 5.2, 1.2, "9"),
    ("M", 1.5, 4.5),
    ("W", -1.8, 4.5),
    ("L", -7.5, 4),
    ("S", 10, 5),
    ("C", 27, 7),
    ("H", -16, 7),
    ("F", -1, 13),
    ("R", 9, 12),
)


def blocks(
    label: str,
    look: Defence,
    way: tuple[tuple[float, ...], ...],
    *takes: tuple[str, str],
    job: str = "",
) -> Assignment:
    """A blocker: the corners of his way up to the first of the defenders he ``takes``."""
    hits = tuple(Hit(name, how, look.defender(name).at) for name, how in takes)
    first = hits[0].at
    climb = None
    if len(hits) > 1:
        climb = Path(first, path((0, 0), (hits[1].at.x, hits[1].at.y)).legs, Ending.BLOCK)
    said = job or ", then ".join(f"{how} {name}" for name, how in takes)
    runs = path(*way, (first.x, first.y), ending=Ending.BLOCK)
    return Assignment(label, "", said, runs, (), (), None, (), NOWHERE, hits=hits, climb=climb)


def job(label: str, said: str, runs: Path | None, motion: Motion | None = None) -> Assignment:
    return Assignment(label, "", said, runs, (), (), motion, (), NOWHERE)


def line_men(rows: tuple[tuple[str, Position, float], ...] = LINE) -> tuple[Man, ...]:
    return tuple(man(label, position, x, 0.0) for label, position, x in rows)


def run(
    name: str,
    look: Defence | None,
    men: tuple[Man, ...],
    tasks: tuple[Assignment, ...],
    *,
    code: Code = HIGH_SCHOOL,
    carrier: str = "R",
    keys: tuple[Key, ...] = (),
    unblocked: tuple[str, ...] = (),
    ball: BallSpot = BallSpot.MIDDLE,
    toward: Side = Side.RIGHT,
) -> Play:
    gives = carrier != "Q" and {"Q", carrier} <= {task.man for task in tasks}
    return replace(
        trips(),
        exchanges=(Exchange(BallMoves.HAND, "Q", carrier, said=False),) if gives else (),
        call=Call("Pro Right", Side.RIGHT, "", name, (), f"Pro Right {name}"),
        family="gap runs",
        field=Field(code, ball, code.numbers_from_sideline.value),
        shape=(2, 1),
        men=men,
        assignments=tasks,
        spots=(),
        reads=(),
        pressure=(),
        claims=(),
        feet=(),
        protection="",
        against=(),
        kind=Kind.RUN,
        defence=look,
        toward=toward,
        carrier=carrier,
        keys=keys,
        unblocked=unblocked,
    )


PRO = (
    *line_men(),
    man("Y", Position.TIGHT_END, 4.05, 0, Rank(Side.RIGHT, 2)),
    man("X", Position.WIDEOUT, -14, 0, Rank(Side.LEFT, 1)),
    man("Z", Position.WIDEOUT, 18, -1, Rank(Side.RIGHT, 1)),
    man("F", Position.FULLBACK, 1.4, -4.2),
    man("R", Position.BACK, 0, -7),
    man("Q", Position.QUARTERBACK, 0, -1.2),
)

STALKS = (
    blocks("X", EVEN, ((-14, 0),), ("H", "stalk")),
    blocks("Z", EVEN, ((18, -1),), ("C", "stalk")),
)


def power() -> Play:
    """Two backs against an even front: a double team that climbs, a kick, a guard who wraps."""
    tasks = (
        blocks("LT", EVEN, ((-2.7, 0),), ("J", "hinge")),
        blocks("LG", EVEN, ((-1.35, 0), (-0.6, -1.2, 0.6), (1.8, -1.2, 0.8), (2.7, 0.2, 0.8)),
               ("S", "wrap")),
        blocks("C", EVEN, ((0, 0),), ("N", "back")),
        blocks("RG", EVEN, ((1.35, 0),), ("T", "double")),
        blocks("RT", EVEN, ((2.7, 0),), ("T", "double"), ("M", "climb")),
        blocks("Y", EVEN, ((4.05, 0), (3.2, 2.6, 0.5)), ("W", "down")),
        blocks("F", EVEN, ((1.4, -4.2),), ("E", "kick")),
        *STALKS,
        job("R", "Follow the guard", path((0, -7), (0.6, -5.6, 0.6), (2.0, -1.6, 1),
                                           (2.2, 0, 1), (2.9, 9))),
        job("Q", "Open, hand off, boot away", path((0, -1.2), (0.1, -3.6, 0.8), (-4, -6.5, 2),
                                                    (-8, -6.5))),
    )  # fmt: skip
    return run("Power", EVEN, PRO, tasks, unblocked=("R",))


def power_bear() -> Play:
    """The same run against a bear: three men down inside, nobody left for the outside man."""
    tasks = (
        blocks("LT", BEAR, ((-2.7, 0),), ("D", "hinge")),
        blocks(
            "LG",
            BEAR,
            ((-1.35, 0), (-0.6, -1.2, 0.6), (2.4, -1.2, 0.8), (3.3, 0.2, 0.8)),
            ("S", "wrap"),
        ),
        blocks("C", BEAR, ((0, 0),), ("N", "back")),
        blocks("RG", BEAR, ((1.35, 0),), ("T", "double")),
        blocks("RT", BEAR, ((2.7, 0),), ("T", "double"), ("W", "climb")),
        blocks("Y", BEAR, ((4.05, 0), (3.2, 2.2, 0.5)), ("M", "down")),
        blocks("F", BEAR, ((1.4, -4.2),), ("E", "kick")),
        blocks("X", BEAR, ((-14, 0),), ("H", "stalk")),
        blocks("Z", BEAR, ((18, -1),), ("C", "stalk")),
        *power().assignments[-2:],
    )
    return run("Power", BEAR, PRO, tasks, unblocked=("J",))


def outside_zone() -> Play:
    """One back beside a quarterback in the gun, everybody reaching to the right."""
    men = (
        *line_men(),
        man("Y", Position.TIGHT_END, 4.05, 0, Rank(Side.RIGHT, 2)),
        man("X", Position.WIDEOUT, -14, 0, Rank(Side.LEFT, 1)),
        man("H", Position.SLOT, -8, -1, Rank(Side.LEFT, 2)),
        man("Z", Position.WIDEOUT, 18, -1, Rank(Side.RIGHT, 1)),
        man("R", Position.BACK, -1.8, -5),
        man("Q", Position.QUARTERBACK, 0, -5),
    )
    tasks = (
        blocks("LT", EVEN, ((-2.7, 0),), ("N", "cut off")),
        blocks("LG", EVEN, ((-1.35, 0),), ("N", "scoop"), ("W", "climb")),
        blocks("C", EVEN, ((0, 0), (0.6, 1.6, 0.6)), ("M", "climb")),
        blocks("RG", EVEN, ((1.35, 0),), ("T", "reach")),
        blocks("RT", EVEN, ((2.7, 0),), ("E", "reach")),
        blocks("Y", EVEN, ((4.05, 0),), ("S", "arc")),
        *STALKS,
        job("H", "Stalk", None),
        job("R", "Aim outside the end", path((-1.8, -5), (0.6, -4.6, 0.8), (4.8, -1.2, 2),
                                              (6.2, 2, 1.5), (7, 9))),
        job("Q", "Hand off, fake the boot", path((0, -5), (-1, -6, 0.6), (-7, -6.5))),
    )  # fmt: skip
    key = Key("end man on line, backside", "J", (("give", "", "he chases"),), NOWHERE)
    return run("Outside Zone", EVEN, men, tasks, keys=(key,), unblocked=("R",))


def counter_two() -> Play:
    """A twelve-man counter: guard kicks, tackle wraps behind him, to the left."""
    men = (
        *line_men(),
        man("Y", Position.TIGHT_END, -4.05, 0, Rank(Side.LEFT, 2)),
        man("X", Position.WIDEOUT, -16, 0, Rank(Side.LEFT, 1)),
        man("W", Position.SLOT, -9, -1.5, Rank(Side.LEFT, 2)),
        man("S", Position.SLOT, 10, -1.5, Rank(Side.RIGHT, 2)),
        man("Z", Position.WIDEOUT, 27, 0, Rank(Side.RIGHT, 1)),
        man("R", Position.BACK, 1.6, -5),
        man("Q", Position.QUARTERBACK, 0, -5),
    )
    tasks = (
        blocks("LT", TWELVE, ((-2.7, 0), (-2.4, 1.5, 0.6)), ("M", "down")),
        blocks("LG", TWELVE, ((-1.35, 0),), ("N", "double")),
        blocks("C", TWELVE, ((0, 0),), ("N", "double")),
        blocks("RG", TWELVE, ((1.35, 0), (0.6, -1.1, 0.6), (-3.6, -1.1, 1)), ("J", "kick")),
        blocks("RT", TWELVE, ((2.7, 0), (1.9, -1.5, 0.6), (-2.4, -1.5, 1), (-3.2, 0.6, 0.6)),
               ("W", "wrap")),
        blocks("Y", TWELVE, ((-4.05, 0),), ("L", "arc")),
        blocks("X", TWELVE, ((-16, 0),), ("H", "stalk")),
        blocks("S", TWELVE, ((10, -1.5),), ("S", "stalk")),
        blocks("Z", TWELVE, ((27, 0),), ("C", "stalk")),
        job("W", "Orbit behind", path((-9, -1.5), (-4, -7, 3), (6, -7))),
        job("R", "Counter step, follow the tackle", path((1.6, -5), (2.2, -4.4, 0.3),
            (-0.8, -3.4, 0.8), (-3.2, -0.6, 1), (-4.4, 9))),
        job("Q", "Hand off", path((0, -5), (0.8, -6, 0.5), (4, -7))),
    )  # fmt: skip
    return run(
        "Counter", TWELVE, men, tasks, code=CANADIAN_AMATEUR, ball=BallSpot.LEFT_HASH,
        unblocked=("E",), toward=Side.LEFT,
    )  # fmt: skip


def veer() -> Play:
    """An inside veer: the end is read, the next man is the pitch key."""
    men = (
        *line_men(),
        man("A", Position.SLOTBACK, -4.2, -1.2, Rank(Side.LEFT, 2)),
        man("X", Position.WIDEOUT, -14, 0, Rank(Side.LEFT, 1)),
        man("H", Position.SLOTBACK, 4.2, -1.2, Rank(Side.RIGHT, 2)),
        man("Z", Position.WIDEOUT, 18, 0, Rank(Side.RIGHT, 1)),
        man("F", Position.FULLBACK, 0, -4),
        man("Q", Position.QUARTERBACK, 0, -1.2),
    )
    orbit = Motion("Orbit", path((-4.2, -1.2), (-3, -3.6, 1), (-1.2, -4.6)), True, 6.0, "Orbit")
    men = tuple(replace(m, snap=Point(-1.2, -4.9)) if m.label == "A" else m for m in men)
    tasks = (
        blocks("LT", EVEN, ((-2.7, 0),), ("N", "scoop")),
        blocks("LG", EVEN, ((-1.35, 0),), ("N", "scoop"), ("W", "climb")),
        blocks("C", EVEN, ((0, 0),), ("T", "double")),
        blocks("RG", EVEN, ((1.35, 0),), ("T", "double")),
        blocks("RT", EVEN, ((2.7, 0), (2.5, 1.6, 0.5)), ("M", "inside release")),
        blocks("H", EVEN, ((4.2, -1.2), (5.6, 1, 1)), ("R", "arc")),
        blocks("X", EVEN, ((-14, 0),), ("H", "stalk")),
        blocks("Z", EVEN, ((18, 0),), ("C", "stalk")),
        job("F", "Dive at the guard's hip", path((0, -4), (1.1, -1, 0.6), (1.4, 8))),
        Assignment("A", "pitch", "Pitch man", path((-1.2, -4.9), (3, -5, 1.5), (9, -3.6, 2),
                   (11, 3)), (), (), orbit, (), NOWHERE),
        job("Q", "Read the end, then the pitch key", path((0, -1.2), (0.9, -1.9, 0.4),
            (3.4, -2, 0.8), (5.4, -1))),
    )  # fmt: skip
    keys = (
        Key("end man on line, playside", "E", (("give", "", "he widens"),), NOWHERE),
        Key("overhang", "S", (("pitch", "", "he takes the quarterback"),), NOWHERE),
    )
    return run("Veer", EVEN, men, tasks, carrier="F", keys=keys, unblocked=("J",))


def _sets(label: str, x: float, back: float, look: Defence, takes: str, how: str) -> Assignment:
    at = look.defender(takes).at
    aim = x + 0.35 * (1 if at.x > x else -1 if at.x < x else 0)
    runs = path((x, 0), (aim, -back), ending=Ending.BLOCK)
    hit = Hit(takes, how, at)
    return Assignment(label, "", how, runs, (), (), None, (), NOWHERE, hits=(hit,))


def slide() -> Play:
    """A six-man slide to the left on its own page: every rusher comes through a gap."""
    rush = {"J": -3.4, "N": -0.7, "T": 2.0, "E": 3.6, "W": -2.0}
    look = _with_duties(
        EVEN, {n: Duty(DutyKind.RUSH, "rush", "", Point(x, 0), "") for n, x in rush.items()}
    )
    tasks = (
        _sets("LT", -2.7, 1.3, look, "J", "slide"),
        _sets("LG", -1.35, 1.0, look, "W", "slide"),
        _sets("C", 0, 0.9, look, "N", "slide"),
        _sets("RG", 1.35, 1.0, look, "T", "man"),
        _sets("RT", 2.7, 1.3, look, "E", "man"),
        Assignment("R", "", "scan", path((1.8, -5), (1.6, -3.4), ending=Ending.BLOCK), (), (),
                   None, (), NOWHERE, hits=(Hit("M", "scan", look.defender("M").at),)),
    )  # fmt: skip
    men = (
        *line_men(),
        man("X", Position.WIDEOUT, -14, 0, Rank(Side.LEFT, 1)),
        man("Y", Position.SLOT, 6, -1, Rank(Side.RIGHT, 3)),
        man("H", Position.SLOT, 10, -1, Rank(Side.RIGHT, 2)),
        man("Z", Position.WIDEOUT, 18, 0, Rank(Side.RIGHT, 1)),
        man("R", Position.BACK, 1.8, -5),
        man("Q", Position.QUARTERBACK, 0, -5),
    )
    bare = run("Half Slide", look, men, tasks, carrier="", toward=Side.LEFT, unblocked=())
    return replace(bare, kind=Kind.PASS, family="protections")


def _with_duties(look: Defence, duties: Mapping[str, Duty]) -> Defence:
    men = tuple(replace(d, duty=duties.get(d.label)) for d in look.defenders)
    return replace(look, defenders=men)


def look_page() -> Play:
    """A look against three and one, every man's responsibility on it; nobody runs."""
    zone = {
        "F": Duty(DutyKind.THIRD, "deep third, middle", "", Point(0, 16)),
        "C": Duty(DutyKind.THIRD, "deep third, strong", "", Point(18, 16)),
        "H": Duty(DutyKind.THIRD, "deep third, weak", "", Point(-18, 16)),
        "S": Duty(DutyKind.CURL, "curl, strong", "", Point(9, 10)),
        "W": Duty(DutyKind.HOOK, "hook, weak", "", Point(-4, 10)),
        "M": Duty(DutyKind.HOOK, "hook, strong", "", Point(4, 10)),
        "R": Duty(DutyKind.MAN, "man on #2 strong", "H", None),
        "E": Duty(DutyKind.RUSH, "rush C strong", "", Point(3.6, 0), "C strong"),
        "T": Duty(DutyKind.RUSH, "rush B strong", "", Point(2.0, 0), "B strong"),
        "N": Duty(DutyKind.RUSH, "rush A weak", "", Point(-0.7, 0), "A weak"),
        "J": Duty(DutyKind.RUSH, "rush C weak", "", Point(-3.5, 0), "C weak"),
    }
    tasks = tuple(job(m.label, "", None) for m in slide().men)
    look = _with_duties(EVEN, zone)
    bare = run("Even Three", look, slide().men, tasks, carrier="")
    return replace(bare, kind=Kind.PASS, family="looks", toward=None)


def pass_against() -> Play:
    """A pass drawn against a look of twelve: the defence behind the routes, the line setting."""
    play = three_two()
    sets = tuple(
        _sets(label, x, 1.1, TWELVE, takes, "man")
        for label, x, takes in (
            ("LT", -2.7, "J"), ("LG", -1.35, "N"), ("C", 0.0, "N"),
            ("RG", 1.35, "E"), ("RT", 2.7, "B"),
        )
    )  # fmt: skip
    return replace(play, assignments=(*sets, *play.assignments), defence=TWELVE)


def eight_man() -> Play:
    """Three men inside, a short line."""
    rows = LINE[1:4]
    men = (
        *line_men(rows),
        man("Y", Position.TIGHT_END, 2.7, 0, Rank(Side.RIGHT, 1)),
        man("X", Position.TIGHT_END, -2.7, 0, Rank(Side.LEFT, 1)),
        man("F", Position.FULLBACK, 0, -3.6),
        man("R", Position.BACK, 0, -6),
        man("Q", Position.QUARTERBACK, 0, -1.2),
    )
    look = front("Three Two", ("E", 2.9, 0.8), ("N", 0, 0.8), ("J", -2.9, 0.8), ("M", 1.5, 4),
                 ("W", -1.5, 4), ("C", 7, 5), ("H", -7, 5), ("F", 0, 9))  # fmt: skip
    tasks = (
        blocks("LG", look, ((-1.35, 0),), ("W", "base")),
        blocks("C", look, ((0, 0),), ("N", "base")),
        blocks("RG", look, ((1.35, 0),), ("N", "double"), ("M", "climb")),
        blocks("Y", look, ((2.7, 0),), ("E", "base")),
        blocks("X", look, ((-2.7, 0),), ("J", "base")),
        blocks("F", look, ((0, -3.6), (1.9, -0.4, 0.8)), ("M", "lead")),
        job("R", "Follow the fullback", path((0, -6), (1.9, -1.5, 1), (2.1, 8))),
        job("Q", "Hand off", path((0, -1.2), (-0.9, -3, 0.5), (-2.5, -5))),
    )
    return run("Lead", look, men, tasks)


def unbalanced() -> Play:
    """Seven men inside, the extra tackle outside the right one, close splits."""
    rows = (
        ("LG", Position.GUARD, -1.0), ("C", Position.CENTRE, 0.0), ("RG", Position.GUARD, 1.0),
        ("RT", Position.TACKLE, 2.0), ("LT", Position.TACKLE, 3.0), ("ET", Position.TACKLE, 4.0),
    )  # fmt: skip
    kept = tuple(m for m in PRO if not m.interior)
    men = (*line_men(rows), *(replace(m, at=Point(5, 0), snap=Point(5, 0))
                              if m.label == "Y" else m for m in kept))  # fmt: skip
    tasks = (
        blocks("LG", BEAR, ((-1, 0),), ("D", "base")),
        blocks("C", BEAR, ((0, 0),), ("N", "base")),
        blocks("RG", BEAR, ((1, 0),), ("T", "double")),
        blocks("RT", BEAR, ((2, 0),), ("T", "double"), ("M", "climb")),
        blocks("LT", BEAR, ((3, 0),), ("S", "base")),
        blocks("ET", BEAR, ((4, 0),), ("E", "double")),
        blocks("Y", BEAR, ((5, 0),), ("E", "double")),
        *power_bear().assignments[-2:],
    )
    return run("Wedge", BEAR, men, tasks, unblocked=("J", "W"))


RUNS = {
    "power": power(),
    "power-bear": power_bear(),
    "outside-zone": outside_zone(),
    "counter-two": counter_two(),
    "veer": veer(),
    "slide": slide(),
    "look": look_page(),
    "pass-against": pass_against(),
    "eight-man": eight_man(),
    "unbalanced": unbalanced(),
}
