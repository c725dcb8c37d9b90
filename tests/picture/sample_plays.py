"""Plays made by hand for the drawing tests: the crossing family in three formations."""

from __future__ import annotations

from dataclasses import replace

from stemline.football.field import BallSpot, Field, Side
from stemline.football.play import (
    Alert,
    Assignment,
    Branch,
    Call,
    Claim,
    DepthMark,
    Man,
    Motion,
    Play,
    Rank,
    Read,
    Spot,
    Step,
)
from stemline.football.players import Position
from stemline.football.rulebook.codes import CANADIAN_AMATEUR, HIGH_SCHOOL, Code
from stemline.geometry.paths import Ending, Leg, Path, Point
from stemline.source import NOWHERE

LINE = (
    ("LT", Position.TACKLE, -2.7),
    ("LG", Position.GUARD, -1.35),
    ("C", Position.CENTRE, 0.0),
    ("RG", Position.GUARD, 1.35),
    ("RT", Position.TACKLE, 2.7),
)


def man(label: str, position: Position, x: float, y: float, rank: Rank | None = None) -> Man:
    return Man(label, position, Point(x, y), Point(x, y), y > -0.5, rank, NOWHERE)


def path(*corners: tuple[float, ...], ending: Ending = Ending.RUN) -> Path:
    """Corners as (x, y) or (x, y, reach of the turn there)."""
    start = Point(corners[0][0], corners[0][1])
    legs = tuple(Leg(Point(c[0], c[1]), c[2] if len(c) > 2 else 0.0) for c in corners[1:])
    return Path(start, legs, ending)


def task(
    label: str,
    role: str,
    job: str,
    runs: Path | None,
    marks: tuple[tuple[float, float, float], ...] = (),
    branches: tuple[Branch, ...] = (),
    motion: Motion | None = None,
) -> Assignment:
    depth = tuple(DepthMark(Point(x, y), yards) for x, y, yards in marks)
    return Assignment(label, role, job, runs, branches, depth, motion, (), NOWHERE)


def branch(looks: str, runs: Path, leaves: tuple[float, float], job: str = "") -> Branch:
    return Branch(looks, runs, job, (), Point(*leaves))


def read(number: int, target: str, at: tuple[float, float], men: str, foot: str = "") -> Read:
    return Read(number, target, Point(*at), tuple(men.split()), foot, "", "", NOWHERE)


def play(
    spoken: str,
    shape: tuple[int, int],
    men: tuple[Man, ...],
    tasks: tuple[Assignment, ...],
    reads: tuple[Read, ...],
    code: Code = CANADIAN_AMATEUR,
    ball: BallSpot = BallSpot.LEFT_HASH,
    alerts: tuple[Alert, ...] = (),
) -> Play:
    spots = {r.target: r.at for r in reads}
    triangle = tuple(spots[n] for n in ("near", "top", "far"))
    hurry = tuple(replace(r, number=n) for n, r in enumerate((reads[0], reads[1], reads[3]), 1))
    line = tuple(man(label, position, x, 0.0) for label, position, x in LINE)
    return Play(
        call=Call(spoken.split(" Crossers")[0], Side.RIGHT, "", "Crossers", (), spoken),
        family="crossing",
        field=Field(code, ball, code.numbers_from_sideline.value),
        shape=shape,
        strong=Side.RIGHT,
        men=(*line, *men),
        assignments=tasks,
        spots=tuple(Spot(n, p, 3.0, 1.5, (), NOWHERE) for n, p in spots.items()),
        feet=(Step("quick", "quick vertical step"), Step("3", "three-step drop")),
        reads=reads,
        pressure=hurry,
        claims=(Claim("triangle", ("near", "top", "far"), triangle, "flat defender", NOWHERE),),
        alerts=alerts,
        protection="Fan Five",
        pick="",
        nobody=(),
        against=("Cover 1",),
        span=NOWHERE,
    )


def _quads(name: str, wheel: bool, back: bool) -> Play:
    tuck = Motion("Tuck", path((-14, 0), (-8.7, 0)), False, 0.0, "Tuck, set 1 s")
    x = replace(man("X", Position.WIDEOUT, -8.7, 0, Rank(Side.LEFT, 1)), at=Point(-14, 0))
    men = (
        x,
        man("Y", Position.SLOT, 5.7, -1, Rank(Side.RIGHT, 4)),
        man("H", Position.SLOT, 9.7, -1, Rank(Side.RIGHT, 3)),
        man("S", Position.SLOT, 27, -1, Rank(Side.RIGHT, 2)),
        man("Z", Position.WIDEOUT, 32, 0, Rank(Side.RIGHT, 1)),
        man("R", Position.BACK, -2, -5),
        man("Q", Position.QUARTERBACK, 0, -5),
    )
    under = path((-8.7, 0), (-7.2, 1.6, 1), (-1, 5, 3), (10, 5))
    over = path((5.7, -1), (4.9, 2.6, 1.5), (1.2, 6, 2.5), (-9, 6))
    near, far, at_near, at_far = (-9.0, 6.0), (10.0, 5.0), "Y", "X"
    if back:
        under = path((-8.7, 0), (-7.2, 1.6, 1), (-1, 5, 3), (2, 5), (-9, 5))
        over = path((5.7, -1), (4.9, 2.6, 1.5), (1.2, 6, 2.5), (-2, 6), (10, 6))
        near, far, at_near, at_far = (-9.0, 5.0), (10.0, 6.0), "X", "Y"
    flat = path((-2, -5), (-17, 2.3))
    first = (-14.0, 0.9)
    if wheel:
        flat = path((-2, -5), (-17, -0.5, 3), (-20, 5, 3), (-20, 23))
        first = (-20.0, 8.0)
    zone = (
        ()
        if back
        else (
            branch(
                "zone",
                path((5.7, -1), (4.9, 2.6, 1.5), (1.2, 6, 2.5), (-4, 6), ending=Ending.SETTLE),
                (-2, 6),
            ),
        )
    )
    tasks = (
        task("X", "under", "Cross at 5, off Y's heels", under, motion=tuck, marks=((-1, 5, 5),)),
        task("Y", "over", "Cross at 6. Sets the depth", over, marks=((1.2, 6, 6),), branches=zone),
        task("H", "settle", "Sit at 8 straight over the ball",
             path((9.7, -1), (8.9, 2.6, 1.5), (3.6, 8, 2.5), (0, 8), ending=Ending.SETTLE),
             marks=((0, 8, 8),)),
        task("S", "window", "In at 10", path((27, -1), (27, 10, 0.8), (16, 10)),
             marks=((27, 10, 10),)),
        task("Z", "clear", "Post at 12", path((32, 0), (32, 12, 0.8), (25.5, 22)),
             marks=((32, 12, 12),)),
        task("R", "flat", "Shoot away from the settle", flat),
        task("Q", "", "Quick step, then 3, reset, reset", None),
    )  # fmt: skip
    reads = (
        read(1, "flat", first, "R", "quick"),
        read(2, "near", near, at_near, "3"),
        read(3, "top", (0, 8), "H", "reset"),
        read(4, "far", far, at_far, "reset"),
    )
    alerts = (Alert("clear", ("Z",), "middle open", NOWHERE),)
    return play(name, (4, 1), men, tasks, reads, alerts=alerts)


def quads() -> Play:
    return _quads("Quads Right Crossers", wheel=False, back=False)


def quads_wheel() -> Play:
    return _quads("Quads Right Crossers Wheel", wheel=True, back=False)


def quads_return() -> Play:
    return _quads("Quads Right Crossers Return", wheel=False, back=True)


def quads_wheel_return() -> Play:
    return _quads("Quads Right Crossers Wheel + Return", wheel=True, back=True)


def three_two(wheel: bool = False) -> Play:
    """Twelve men, three and two with a back whose flat runs at the receivers of his side."""
    men = (
        man("X", Position.WIDEOUT, -15.5, 0, Rank(Side.LEFT, 1)),
        man("W", Position.SLOT, -9.5, -1, Rank(Side.LEFT, 2)),
        man("H", Position.SLOT, 5.5, -1, Rank(Side.RIGHT, 3)),
        man("S", Position.SLOT, 16, -1, Rank(Side.RIGHT, 2)),
        man("Z", Position.WIDEOUT, 28, 0, Rank(Side.RIGHT, 1)),
        man("R", Position.BACK, -2, -5),
        man("Q", Position.QUARTERBACK, 0, -5),
    )
    flat = path((-2, -5), (-18, 2.5))
    if wheel:
        flat = path((-2, -5), (-16.5, 0.5, 3), (-19, 5, 3), (-19, 22))
    out = branch("off", path((28, 0), (28, 10, 0.8), (36, 10)), (28, 10), "Out at 10")
    tasks = (
        task("X", "dig", "Dig at 12", path((-15.5, 0), (-15.5, 12, 0.8), (-6, 12)),
             marks=((-15.5, 12, 12),)),
        task("W", "under", "Cross at 5", path((-9.5, -1), (-8.4, 1.6, 1), (-1, 5, 3), (10, 5)),
             marks=((-1, 5, 5),)),
        task("H", "over", "Cross at 6", path((5.5, -1), (4.9, 2.6, 1.5), (1.2, 6, 2.5), (-9, 6)),
             marks=((1.2, 6, 6),)),
        task("S", "settle", "Sit at 8 over the ball",
             path((16, -1), (13, 3.5, 2), (4, 8, 2.5), (0, 8), ending=Ending.SETTLE),
             marks=((0, 8, 8),)),
        task("Z", "clear", "Dig at 12; out at 10 when off",
             path((28, 0), (28, 12, 0.8), (18, 12)), marks=((28, 12, 12),), branches=(out,)),
        task("R", "flat", "Shoot away from the settle", flat),
        task("Q", "", "Quick step, then 3, reset, reset", None),
    )  # fmt: skip
    reads = (
        read(1, "flat", (-19.0, 10.0) if wheel else (-15.0, 1.1), "R", "quick"),
        read(2, "near", (-9, 6), "H", "3"),
        read(3, "top", (0, 8), "S", "reset"),
        read(4, "far", (10, 5), "W", "reset"),
    )
    return play(f"Three Two Right Crossers{' Wheel' if wheel else ''}", (3, 2), men, tasks, reads)


def trips() -> Play:
    """Eleven men, three and one, a tight end who settles."""
    men = (
        man("X", Position.WIDEOUT, -7, 0, Rank(Side.LEFT, 1)),
        man("Y", Position.TIGHT_END, 4.2, 0, Rank(Side.RIGHT, 3)),
        man("H", Position.SLOT, 8.5, -1, Rank(Side.RIGHT, 2)),
        man("Z", Position.WIDEOUT, 20, 0, Rank(Side.RIGHT, 1)),
        man("R", Position.BACK, -1.8, -5),
        man("Q", Position.QUARTERBACK, 0, -5),
    )
    tasks = (
        task("X", "under", "Cross at 5", path((-7, 0), (-6, 1.6, 1), (-1, 5, 3), (10, 5)),
             marks=((-1, 5, 5),)),
        task("H", "over", "Cross at 6", path((8.5, -1), (7, 2.6, 1.5), (2.4, 6, 2.5), (-9, 6)),
             marks=((2.4, 6, 6),)),
        task("Y", "settle", "Sit at 8 over the ball",
             path((4.2, 0), (4.2, 5, 1.5), (0.6, 8, 0.4), (0, 8), ending=Ending.SETTLE),
             marks=((0, 8, 8),)),
        task("Z", "clear", "Post at 12", path((20, 0), (20, 12, 0.8), (14, 21)),
             marks=((20, 12, 12),)),
        task("R", "flat", "Shoot away from the settle", path((-1.8, -5), (-14, 2))),
        task("Q", "", "Quick step, then 3", None),
    )  # fmt: skip
    reads = (
        read(1, "flat", (-11, 0.3), "R", "quick"),
        read(2, "near", (-9, 6), "H", "3"),
        read(3, "top", (0, 8), "Y", "reset"),
        read(4, "far", (10, 5), "X", "reset"),
    )
    return play("Trips Right Crossers", (3, 1), men, tasks, reads, code=HIGH_SCHOOL)


def counter() -> Play:
    """A run: a jet man running across, a guard who pulls, men who block, a stack on the right."""
    jet = Motion("Jet", path((12, -1), (4, -1.6, 1), (-3, -2)), True, 7.0, "Jet, full speed")
    men = (
        man("X", Position.WIDEOUT, -12, 0, Rank(Side.LEFT, 1)),
        man("Y", Position.TIGHT_END, -4.1, 0, Rank(Side.LEFT, 2)),
        replace(man("H", Position.SLOT, -3, -2), at=Point(12, -1)),
        man("Z", Position.WIDEOUT, 14, 0, Rank(Side.RIGHT, 1)),
        man("R", Position.BACK, 0, -7),
        man("Q", Position.QUARTERBACK, 0, -5),
    )
    tasks = (
        task("LT", "", "Down", path((-2.7, 0), (-1.9, 1.5), ending=Ending.BLOCK)),
        task("LG", "", "Down", path((-1.35, 0), (-0.6, 1.5), ending=Ending.BLOCK)),
        task("C", "", "Back", path((0, 0), (1.3, 1.2), ending=Ending.BLOCK)),
        task("RG", "", "Pull and kick", path((1.35, 0), (0.6, -1.2, 0.6), (-4.8, -1.0, 1.5),
                                             (-6.4, 1.2), ending=Ending.BLOCK)),
        task("Y", "", "Down", path((-4.1, 0), (-3.4, 1.6), ending=Ending.BLOCK)),
        task("X", "", "Stalk", path((-12, 0), (-11.5, 6), ending=Ending.BLOCK)),
        task("H", "", "Fake the jet", path((-3, -2), (-11, -2.5)), motion=jet),
        task("R", "", "Follow the guard", path((0, -7), (1.2, -5.5, 0.8), (-5.2, 0.5, 1),
                                               (-5.4, 8))),
        task("Q", "", "Hand off, boot", path((0, -5), (1, -6.5, 0.8), (9, -7))),
    )  # fmt: skip
    bare = replace(trips(), men=(*trips().men[:5], *men), assignments=tasks, reads=(), claims=())
    call = replace(bare.call, spoken="Wing Left Jet Counter", concept="Counter")
    return replace(bare, call=call, pressure=(), spots=(), strong=Side.LEFT, shape=(2, 1))


ALL = {
    "quads": quads(),
    "quads-wheel": quads_wheel(),
    "quads-return": quads_return(),
    "quads-wheel-return": quads_wheel_return(),
    "three-two": three_two(),
    "three-two-wheel": three_two(wheel=True),
    "trips": trips(),
    "counter": counter(),
}
