"""A run, a protection and a look made by hand: what the pages of the blocking show.

The men and the set are those of `sample_season`: twelve men, Trips Tight to the right.
"""

from __future__ import annotations

from dataclasses import replace

from sample_season import sample_season, sprint_out

from stemline.football.defenders import Defence, Defender, Duty, DutyKind, Level
from stemline.football.field import Side
from stemline.football.play import (
    Assignment,
    Call,
    ConceptSheet,
    FormationSheet,
    Hit,
    Key,
    Kind,
    LookSheet,
    Play,
    ProtectionSheet,
    Season,
)
from stemline.geometry.paths import Ending, Leg, Path, Point
from stemline.source import NOWHERE

Row = tuple[str, float, float, str, str]


def defence(name: str, *rows: Row) -> Defence:
    """Defenders as (label, x, y, technique, duty)."""
    made = []
    for label, x, y, technique, words in rows:
        level = Level.LINE if y < 1.5 else Level.SECOND if y < 6.5 else Level.DEEP
        kind = DutyKind.RUSH if words.startswith("rush") else DutyKind.HOOK
        duty = Duty(kind, words, "", None)
        made.append(Defender(label, Point(x, y), level, technique, duty, NOWHERE))
    return Defence(name, Side.RIGHT, tuple(made), ("zone", "middle closed"), NOWHERE)


REST: tuple[Row, ...] = (
    ("L", -7.5, 4.0, "", "flat, weak"),
    ("S", 9.0, 5.0, "", "curl, strong"),
    ("C", 27.0, 7.0, "", "third, strong"),
    ("H", -12.0, 7.0, "", "third, weak"),
    ("F", 0.0, 12.0, "", "middle third"),
)
EVEN = defence(
    "Even",
    ("E", 3.2, 1.0, "5", "rush C, strong"),
    ("T", 1.8, 1.0, "3", "rush B, strong"),
    ("N", -0.5, 1.0, "1", "rush A, weak"),
    ("J", -3.2, 1.0, "5", "rush C, weak"),
    ("M", 0.6, 4.5, "", "hook, strong"),
    ("W", -2.2, 4.5, "", "hook, weak"),
    *REST,
)
EVEN_PRESS = replace(EVEN, name="Even Press")
ODD = defence(
    "Odd",
    ("E", 3.2, 1.0, "5", "rush C, strong"),
    ("N", 0.0, 1.0, "0", "rush A, strong"),
    ("J", -3.2, 1.0, "5", "rush C, weak"),
    ("B", 5.4, 1.0, "9", "rush D, strong"),
    ("M", 1.6, 4.5, "", "hook, strong"),
    ("W", -1.6, 4.5, "", "hook, weak"),
    *REST,
)

JOBS = {
    "RT": (
        "down, or double with guard then backside linebacker",
        "double T with RG, then W",
        "down N",
    ),
    "RG": ("on, or double with tackle", "double T with RT, then W", "climb to M"),
    "C": ("back", "back on N", "on N"),
    "LG": ("wrap to playside linebacker", "wrap to M", "wrap to W"),
    "LT": ("hinge", "hinge on J", "hinge on J"),
}
TAKES = {
    "RT": (("T", "double"), ("N", "down")),
    "RG": (("T", "double"), ("M", "climb")),
    "C": (("N", "back"), ("N", "on")),
    "LG": (("M", "wrap"), ("W", "wrap")),
    "LT": (("J", "hinge"), ("J", "hinge")),
}
KEY = Key(
    "end man on line, backside",
    "J",
    (("give", "", "he widens"), ("pull", "", "he chases")),
    NOWHERE,
)


def power(look: Defence | None, spoken: str = "Trips Tight Right Power") -> Play:
    """Power to the right; without a look its jobs are the rules."""
    base = sprint_out()[0]
    column = 0 if look is None else 2 if look.name == "Odd" else 1
    line = tuple(_block(base, label, column, look) for label in JOBS)
    runner = Path(Point(-2, -5), (Leg(Point(2, 0), 2.0), Leg(Point(3, 8), 2.0)), Ending.RUN)
    back = Assignment("R", "carrier", "Press the guard's hip.", runner, (), (), None, (), NOWHERE)
    stalk = Assignment("Z", "stalk", "Stalk.", None, (), (), None, (), NOWHERE)
    others = tuple(
        Assignment(m.label, "", "", None, (), (), None, (), NOWHERE)
        for m in base.men
        if not m.interior and m.label not in ("R", "Z")
    )
    return replace(
        base,
        call=Call("Quads", Side.RIGHT, "", "Power", (), spoken),
        family="gap runs",
        assignments=(back, stalk, *others, *line),
        feet=(),
        reads=(),
        pressure=(),
        alerts=(),
        protection="",
        kind=Kind.RUN,
        defence=look,
        toward=Side.RIGHT,
        carrier="R",
        keys=(replace(KEY, man=KEY.man if look else ""),),
        unblocked=("E",) if column == 2 else (),
    )


def _block(base: Play, label: str, column: int, look: Defence | None) -> Assignment:
    idle = Assignment(label, "", f"{JOBS[label][column]}.", None, (), (), None, (), NOWHERE)
    if look is None:
        return idle
    who, how = TAKES[label][column - 1]
    at = look.defender(who).at
    path = Path(base.man(label).snap, (Leg(at, 1.0),), Ending.BLOCK)
    return replace(idle, path=path, hits=(Hit(who, how, at),))


def stands(formation: str, look: Defence | None = None) -> Play:
    """The offence only stands."""
    play = power(look, formation)
    idle = tuple(Assignment(m.label, "", "", None, (), (), None, (), NOWHERE) for m in play.men)
    call = Call(formation, Side.RIGHT, "", "", (), formation)
    return replace(
        play, call=call, assignments=idle, kind=Kind.PASS, keys=(), unblocked=(), carrier=""
    )


def slide(look: Defence) -> Play:
    play = power(look, "Half Slide")
    men = tuple(
        replace(a, job="slide to your gap.") if a.man != "LT" else a for a in play.assignments
    )
    return replace(play, kind=Kind.PASS, assignments=men, keys=(), carrier="")


POWER = ConceptSheet(
    "Power",
    "gap runs",
    (),
    ("Down, down, kick: and the guard comes through.",),
    (),
    ("4x1",),
    (),
    NOWHERE,
    Kind.RUN,
    (power(None), power(EVEN_PRESS), power(ODD)),
)


def blocking_season() -> Season:
    """Power in two calls, one protection, one look, one formation."""
    shifted = replace(EVEN.defender("M"), at=Point(2.5, 4.5))
    moved = replace(EVEN, defenders=tuple(shifted if d.label == "M" else d for d in EVEN.defenders))
    trips = replace(stands("Trips", moved), shape=(3, 1))
    return replace(
        sample_season(),
        concepts=(POWER,),
        plays=(power(EVEN), power(EVEN, "Trips Tight Right Power Again")),
        looks=(
            LookSheet("Even", ("Four down, two over.",), (stands("Quads", EVEN), trips), NOWHERE),
        ),
        protections=(
            ProtectionSheet(
                "Half Slide",
                "Slide away from the back, who takes the edge.",
                ("Inside foot first.",),
                (slide(EVEN), slide(ODD)),
                NOWHERE,
                (("nearest slant", "a sixth comes"),),
            ),
        ),
        formations=(
            FormationSheet("Quads", "Twelve", ("Wide to the field.",), stands("Quads"), NOWHERE),
        ),
    )
