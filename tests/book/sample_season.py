"""A small season made by hand: twelve men, two families, four concepts, for tests of the book.

The Saltmarsh Herons play Canadian amateur rules. Crossers is dressed up enough for two pages,
Stick fills one, High Low has a swap, Sprint Out stands alone. Yards; x right of the ball.
"""

from __future__ import annotations

from dataclasses import replace

from stemline.football.field import BallSpot, Field, Side
from stemline.football.play import (
    Alert,
    Assignment,
    Branch,
    Call,
    Claim,
    ConceptSheet,
    DepthMark,
    Man,
    Motion,
    Play,
    Rank,
    Read,
    Season,
    Spot,
    Step,
    Team,
)
from stemline.football.players import Position
from stemline.football.rulebook.care_rules import care_rules
from stemline.football.rulebook.codes import CANADIAN_AMATEUR
from stemline.football.rulebook.rules import noted
from stemline.geometry.paths import Ending, Leg, Path, Point
from stemline.source import NOWHERE

FIELD = Field(CANADIAN_AMATEUR, BallSpot.LEFT_HASH, 10)

LINE = (("LT", -2.6), ("LG", -1.3), ("C", 0.0), ("RG", 1.3), ("RT", 2.6))

FORMATIONS: dict[str, tuple[tuple[int, int], dict[str, tuple[float, float]]]] = {
    "Quads": (
        (4, 1),
        {"X": (-9, 0), "Y": (6, -1), "H": (10, -1), "S": (24, -1), "Z": (31, 0), "R": (-2, -5)},
    ),
    "Three Two": (
        (3, 2),
        {"X": (-17, 0), "W": (-7, -1), "H": (7, -1), "S": (17, -1), "Z": (31, 0), "R": (-2, -5)},
    ),
    "Trips Tight": (
        (3, 1),
        {"X": (-12, 0), "Y": (4.2, 0), "H": (9, -1), "Z": (27, 0), "F": (2, -5), "R": (-2, -5)},
    ),
}

CAST: dict[str, dict[str, str]] = {
    "Quads": {"under": "X", "over": "Y", "settle": "H", "window": "S", "clear": "Z", "flat": "R"},
    "Three Two": {"under": "W", "over": "H", "settle": "S", "dig": "X", "clear": "Z", "flat": "R"},
    "Trips Tight": {
        "under": "X",
        "over": "H",
        "settle": "Y",
        "clear": "Z",
        "flat": "R",
        "guard": "F",
    },
}


def path(start: tuple[float, float], *to: tuple[float, float], end: Ending = Ending.RUN) -> Path:
    return Path(Point(*start), tuple(Leg(Point(*p), 2.0) for p in to), end)


def runs(role: str, at: tuple[float, float], shape: tuple[int, int]) -> tuple[Path, float, str]:
    """Path, taught depth and job of a role from where its man stands."""
    x, _ = at
    inward = -1 if x > 0 else 1
    match role:
        case "under":
            return path(at, (x + 5, 5), (11, 5)), 5, "Cross at 5, off the over man's heels"
        case "over":
            return path(at, (x - 3, 6), (-10, 6)), 6, "Cross at 6: sets the depth"
        case "settle":
            return path(at, (x - 3, 8), (0.3, 8), end=Ending.SETTLE), 8, "Sit at 8 over the ball"
        case "window":
            return path(at, (x, 10), (x - 10, 10)), 10, "In at 10, behind the far low spot"
        case "dig":
            return path(at, (x, 12), (x + 12, 12)), 12, "Dig at 12"
        case "clear" if shape == (3, 2):
            return path(at, (x, 12), (x - 12, 12)), 12, "Dig at 12, slow off the line"
        case "clear":
            return path(at, (x, 12), (x - 6, 21)), 12, "Post at 12: keep the middle man deep"
        case "flat":
            return path(at, (-16, 3)), 3, "Shoot away from the settle. First look"
        case "stick":
            return path(at, (x, 6), (x - inward, 5.5), end=Ending.SETTLE), 6, "Stick at 6"
        case "arrow":
            return path(at, (x - 6 * inward, 3)), 3, "Arrow to 3 at once"
        case "fade":
            return path(at, (x - inward, 18)), 18, "Fade, outside the corner"
        case "top":
            return path(at, (x, 14), (x + 14 * inward, 15)), 14, "Dig at 14, in front of the middle"
        case "low":
            return path(at, (x + 10 * inward, 5)), 5, "Drive flat to 5 under the dig"
        case "out":
            return path(at, (x, 11), (x - 6 * inward, 11)), 11, "Out at 11"
        case "drag":
            return path(at, (x + 16 * inward, 9)), 9, "Drag to 9, late"
        case _:
            return path(at, (x + inward, 1), end=Ending.BLOCK), 0, "Block the edge"


def assignment(man: str, role: str, at: tuple[float, float], shape: tuple[int, int]) -> Assignment:
    way, depth, job = runs(role, at, shape)
    branches: tuple[Branch, ...] = ()
    if role == "under":
        sit = path(at, (at[0] + 5, 5), (4, 5), end=Ending.SETTLE)
        branches = (
            Branch("zone", sit, "Past the ball, settle and turn", (), Point(at[0] + 5, 5)),
            Branch("man", way, "Run on", (), Point(at[0] + 5, 5)),
        )
    if role == "stick":
        out = path(at, (at[0], 6), (at[0] + 6, 6))
        branches = (Branch("man", out, "Turn out at 6, away from him", (), Point(at[0], 6)),)
    mark = (DepthMark(way.legs[0].to, depth),) if depth > 3 else ()
    return Assignment(man, role, job, way, branches, mark, None, (), NOWHERE)


WHEEL = "Flat for 4, then up the sideline, 4 inside it"
RETURN = "Plant over the tackle and come back at the same depth"


def tagged(a: Assignment, tags: tuple[str, ...], at: tuple[float, float]) -> Assignment:
    x, _ = at
    if "Wheel" in tags and a.role == "flat":
        return replace(a, job=WHEEL, path=path(at, (-14, 0), (-18, 4), (-18, 17)), marks=())
    if "Return" in tags and a.role in ("under", "over"):
        depth = 5.0 if a.role == "under" else 6.0
        turn = 2.5 if a.role == "under" else -2.5
        back = path(at, (x + turn, depth), (turn, depth), (4 * x / abs(x) + x / 2, depth + 0.8))
        return replace(a, job=RETURN, path=back, branches=())
    if "Double" in tags and a.role == "stick":
        up = path(at, (x, 6), (x, 18))
        return replace(a, job="Stick, then up the seam", path=up, branches=())
    return a


def men_of(formation: str) -> tuple[Man, ...]:
    positions = {"Q": Position.QUARTERBACK, "R": Position.BACK, "F": Position.FULLBACK}
    spots = FORMATIONS[formation][1]
    ranks: dict[str, Rank] = {}
    for side, sign in ((Side.LEFT, -1), (Side.RIGHT, 1)):
        wide = sorted(
            (m for m, (x, y) in spots.items() if x * sign > 3 and y > -4),
            key=lambda m: -abs(spots[m][0]),
        )
        ranks |= {m: Rank(side, i) for i, m in enumerate(wide, 1)}
    skill = tuple(
        Man(
            m,
            positions.get(m, Position.SLOT),
            Point(*at),
            Point(*at),
            at[1] == 0,
            ranks.get(m),
            NOWHERE,
        )
        for m, at in {**spots, "Q": (0.0, -5.0)}.items()
    )
    kinds = {"LT": Position.TACKLE, "RT": Position.TACKLE, "C": Position.CENTRE}
    line = tuple(
        Man(m, kinds.get(m, Position.GUARD), Point(x, 0), Point(x, 0), True, None, NOWHERE)
        for m, x in LINE
    )
    return (*skill, *line)


def reads_of(
    order: tuple[tuple[str, str, str], ...], jobs: tuple[Assignment, ...], spots: tuple[Spot, ...]
) -> tuple[Read, ...]:
    made: list[Read] = []
    for target, foot, partner in order:
        spot = next((s for s in spots if s.name == target), None)
        who = next((a for a in jobs if a.role == target), None)
        with_him = next((a.man for a in jobs if a.role == partner), "")
        if spot is None and (who is None or who.path is None):
            continue
        at = spot.at if spot else who.path.end if who and who.path else Point(0, 0)
        men = spot.men if spot else (who.man,) if who else ()
        made.append(
            Read(
                len(made) + 1, target, at, men, foot, partner if with_him else "", with_him, NOWHERE
            )
        )
    return tuple(made)


FEET = {
    "quick": Step("quick", "one vertical step"),
    "3": Step("3", "three-step drop"),
    "reset": Step("reset", "reset"),
    "sprint": Step("sprint", "sprint to the call"),
}


def call(
    family: str,
    concept: str,
    formation: str,
    roles: dict[str, str],
    tags: tuple[str, ...],
    order: tuple[tuple[str, str, str], ...],
    hot: tuple[str, ...],
    feet: tuple[str, ...],
    motion: str = "",
) -> Play:
    shape, at = FORMATIONS[formation]
    if "Swap" in tags:
        roles = {**roles, "top": roles["fade"], "fade": roles["top"]}
    jobs = tuple(
        tagged(assignment(man, role, at[man], shape), tags, at[man]) for role, man in roles.items()
    )
    if motion:
        moved = Motion(
            motion,
            path((at["X"][0] - 6, 0), at["X"]),
            False,
            0.0,
            "Tuck to 6 outside the tackle, set",
        )
        jobs = tuple(replace(a, motion=moved) if a.man == "X" else a for a in jobs)
    line = tuple(
        Assignment(
            m,
            "",
            "Five men, no help: Q is hot with a sixth rusher",
            None,
            (),
            (),
            None,
            (),
            NOWHERE,
        )
        for m, _ in LINE
    )
    who = {a.role: a.man for a in jobs}
    spots: tuple[Spot, ...] = ()
    claims: tuple[Claim, ...] = ()
    if concept == "Crossers":
        near, far = ("under", "over") if "Return" in tags else ("over", "under")
        spots = (
            Spot("near", Point(-7, 6), 3, 2, (who[near],), NOWHERE),
            Spot("top", Point(0.3, 8), 2, 2, (who["settle"],), NOWHERE),
            Spot("far", Point(9, 5), 3, 2, (who[far],), NOWHERE),
        )
        claims = (
            Claim("triangle", ("near", "top", "far"), tuple(s.at for s in spots), "", NOWHERE),
        )
    reads = reads_of(order, jobs, spots)
    by_name = {r.target: r for r in reads}
    pressure = tuple(
        replace(by_name[t], number=i) for i, t in enumerate((t for t in hot if t in by_name), 1)
    )
    alerts = (Alert("clear", (who["clear"],), "middle open", NOWHERE),) if "clear" in who else ()
    words = " + ".join(tags)
    spoken = " ".join(p for p in (formation, "Right", motion, concept, words) if p)
    return Play(
        call=Call(formation, Side.RIGHT, motion, concept, tags, spoken),
        family=family,
        field=FIELD,
        shape=shape,
        strong=Side.RIGHT,
        men=men_of(formation),
        assignments=(*jobs, *line),
        spots=spots,
        feet=tuple(FEET[f] for f in feet),
        reads=reads,
        pressure=pressure,
        claims=claims,
        alerts=alerts,
        protection="Fan Five",
        pick="",
        nobody=(),
        against=("Cover 1",),
        span=NOWHERE,
    )


def crossers() -> tuple[Play, ...]:
    order = (
        ("flat", "quick", ""),
        ("near", "3", "dig"),
        ("top", "reset", ""),
        ("far", "reset", ""),
    )
    hot, feet = ("flat", "near", "far"), ("quick", "3", "reset", "reset")
    tags = ((), ("Wheel",), ("Return",), ("Wheel", "Return"))
    return tuple(
        call(
            "crossing",
            "Crossers",
            formation,
            CAST[formation],
            tag,
            order,
            hot,
            feet,
            "Tuck" if formation == "Quads" else "",
        )
        for formation in FORMATIONS
        for tag in tags
    )


def high_low() -> tuple[Play, ...]:
    order = (("low", "3", ""), ("top", "reset", ""), ("flat", "reset", ""))
    return tuple(
        call(
            "crossing",
            "High Low",
            formation,
            roles,
            tag,
            order,
            ("low", "flat"),
            ("3", "reset", "reset"),
        )
        for formation, roles in (
            ("Quads", {"top": "Z", "low": "H", "fade": "S", "out": "Y", "drag": "X", "flat": "R"}),
            (
                "Three Two",
                {"top": "Z", "low": "S", "fade": "H", "out": "W", "drag": "X", "flat": "R"},
            ),
        )
        for tag in ((), ("Swap",))
    )


def stick() -> tuple[Play, ...]:
    order = (("arrow", "quick", ""), ("stick", "3", ""), ("fade", "", ""))
    return tuple(
        call(
            "quick game",
            "Stick",
            formation,
            roles,
            tag,
            order,
            ("arrow", "stick"),
            ("quick", "3"),
            motion,
        )
        for formation, roles in (
            (
                "Quads",
                {"stick": "Y", "arrow": "H", "fade": "Z", "out": "S", "drag": "X", "flat": "R"},
            ),
            (
                "Trips Tight",
                {"stick": "Y", "arrow": "H", "fade": "Z", "drag": "X", "flat": "R", "guard": "F"},
            ),
        )
        for tag, motion in (((), ""), (("Double",), ""), ((), "Waggle"))
    )


def sprint_out() -> tuple[Play, ...]:
    order = (("out", "sprint", ""), ("arrow", "sprint", ""))
    roles = {"out": "Z", "arrow": "S", "fade": "H", "guard": "Y", "drag": "X"}
    return (call("quick game", "Sprint Out", "Quads", roles, (), order, ("arrow",), ("sprint",)),)


SHEETS = (
    ConceptSheet(
        "Crossers",
        "crossing",
        (),
        (
            "Two low, one high: a triangle that answers man by crossing and zone by sitting.",
            "Over sets the depth; under runs off his heels.",
        ),
        ("Never from a bunch: the crossers need six yards to see each other.",),
        ("4x1", "3x2", "3x1"),
        (
            ("Wheel", ("The flat turns up the sideline; he is still the first read",)),
            ("Return", ("Both crossers come back to where they came from",)),
        ),
        NOWHERE,
    ),
    ConceptSheet(
        "High Low",
        "crossing",
        (),
        ("Make the hook defender wrong: low first, then over him.",),
        (),
        ("4x1", "3x2"),
        (("Swap", ("Dig and fade change men",)),),
        NOWHERE,
    ),
    ConceptSheet(
        "Stick",
        "quick game",
        (),
        ("Ball out on the third step, whatever happens.",),
        (),
        ("4x1", "3x1"),
        (("Double", ("Stick and up when they jump it",)),),
        NOWHERE,
    ),
    ConceptSheet(
        "Sprint Out",
        "quick game",
        (),
        ("Run with your shoulders square; throw it away with a yard to spare.",),
        (),
        ("4x1",),
        (),
        NOWHERE,
    ),
)


def sample_season() -> Season:
    return Season(
        team=Team(
            "Saltmarsh Herons",
            "2026",
            ("Know your line. Know the man next to you.",),
            ("Fourteen men or fewer at practice: no live work.",),
            True,
        ),
        code_title=CANADIAN_AMATEUR.title,
        authority=CANADIAN_AMATEUR.authority,
        low_block=noted(CANADIAN_AMATEUR.low_block),
        crossing_contact=noted(CANADIAN_AMATEUR.crossing_contact),
        blindside_block=noted(CANADIAN_AMATEUR.blindside_block),
        behind_block=noted(CANADIAN_AMATEUR.behind_block),
        care=tuple((rule.label, noted(rule.text)) for rule in care_rules("canadian amateur").notes),
        concepts=SHEETS,
        plays=(*crossers(), *high_low(), *stick(), *sprint_out()),
    )
