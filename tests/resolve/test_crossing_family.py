"""The crossing family: one text, every way of dressing it up, one quarterback's job.

The expectations are facts of the trade: common practice, no published source.
"""

from __future__ import annotations

from dataclasses import dataclass, field

import pytest
from together import together

from resolve.texts import (
    CROSSERS,
    DOUBLES_ELEVEN,
    DOUBLES_TWELVE,
    ELEVEN,
    EMPTY,
    QUADS,
    THREE_TWO,
    TREY,
    TRIPS,
    TWELVE,
    compiled,
    dress,
    message,
    play,
    sound,
    who,
)
from stemline.football.conditions import LookWord
from stemline.football.field import BallSpot, Side
from stemline.football.play import Play
from stemline.geometry.paths import Ending
from stemline.session import Session

SIDES = ("Right", "Left")


@dataclass(frozen=True)
class Row:
    """One line of the family's table: a distribution and who plays what in it."""

    book: str
    formation: str
    called: str
    shape: tuple[int, int]
    settle: str
    over: str
    under: str
    clear: str
    clear_runs: str
    dig: str | None = None
    flat: str | None = "R"
    window: str | None = None
    clear_off: str | None = None
    letters: dict[str, str] = field(default_factory=dict)

    @property
    def bound(self) -> dict[str, str]:
        roles = ("settle", "over", "under", "clear", "dig", "flat", "window")
        return {r: getattr(self, r) for r in roles if getattr(self, r)}

    @property
    def dressed(self) -> tuple[str, ...]:
        tags = "with plain, Wheel, Return, Wheel + Return"
        return self.book, self.formation, CROSSERS, dress(self.called, tags)

    def name(self, side: str, tags: str = "") -> str:
        formation, _, motion = self.called.partition(" motion ")
        return " ".join(x for x in (formation, side, motion, "Crossers", tags) if x)


ROWS = {
    "12 men, 3x2 and a back": Row(
        TWELVE, THREE_TWO, "Three Two", (3, 2),
        settle="strong #2", over="strong #3", under="weak #2", dig="weak #1",
        clear="strong #1", clear_runs="Dig at 12.", clear_off="Out at 10.",
    ),
    "12 men, 4x1 and a back": Row(
        TWELVE, QUADS, "Quads motion Tuck", (4, 1),
        settle="strong #3", over="strong #4", under="weak #1", window="strong #2",
        clear="strong #1", clear_runs="Post at 12.",
    ),
    "11 men, 3x2 empty": Row(
        ELEVEN, EMPTY, "Empty", (3, 2),
        settle="strong #2", over="strong #3", under="weak #2", dig="weak #1", flat=None,
        clear="strong #1", clear_runs="Dig at 12.", clear_off="Out at 10.",
    ),
    "11 men, 3x1 and a back": Row(
        ELEVEN, TRIPS, "Trips", (3, 1),
        settle="strong #2", over="strong #3", under="weak #1",
        clear="strong #1", clear_runs="Post at 12.",
    ),
    "11 men, 3x1 and a back, tight end inside": Row(
        ELEVEN, TREY, "Trey", (3, 1),
        settle="strong #3", over="strong #2", under="weak #1",
        clear="strong #1", clear_runs="Post at 12.", letters={"settle": "Y"},
    ),
}  # fmt: skip
_BOOKS: dict[str, Session] = {}


def book(name: str) -> Session:
    """Each row compiled once; it must be free of any mistake or warning."""
    if name not in _BOOKS:
        _BOOKS[name] = sound(*ROWS[name].dressed)
    return _BOOKS[name]


every_row = together("name", ROWS)
every_side = together("side", SIDES)
every_spot = together("spot", BallSpot, ids=lambda s: s.value)


def runs(made: Play, role: str) -> str:
    assignment = made.runs(role)
    assert assignment is not None
    return assignment.job


def end(made: Play, role: str) -> tuple[float, float]:
    assignment = made.runs(role)
    assert assignment is not None and assignment.path is not None
    return round(assignment.path.end.x, 6), round(assignment.path.end.y, 6)


@every_row
@every_side
@every_spot
def test_the_table_binds(name: str, side: str, spot: BallSpot) -> None:
    row = ROWS[name]
    made = play(book(name), row.name(side), spot)
    assert made.strong is Side[side.upper()]
    assert made.shape == row.shape
    assert who(made) == row.bound
    absent = {"dig", "flat"} - row.bound.keys()
    assert set(made.nobody) == absent
    for role, letter in row.letters.items():
        assignment = made.runs(role)
        assert assignment is not None and assignment.man == letter


@every_row
@every_side
@every_spot
def test_the_table_runs(name: str, side: str, spot: BallSpot) -> None:
    row = ROWS[name]
    made = play(book(name), row.name(side), spot)
    strong = made.strong.value
    settle = made.runs("settle")
    assert settle is not None and settle.path is not None
    assert end(made, "settle") == (0, 8)
    assert settle.path.ending is Ending.SETTLE
    assert end(made, "over")[0] * strong < 0 and end(made, "over")[1] == 6
    assert end(made, "under")[0] * strong > 0 and end(made, "under")[1] == 5
    assert runs(made, "clear") == row.clear_runs
    clear = made.runs("clear")
    assert clear is not None
    options = {b.looks: b.job for b in clear.branches}
    assert options == ({"off": row.clear_off} if row.clear_off else {})
    if row.dig:
        assert runs(made, "dig") == "Dig at 12."
        assert end(made, "dig")[1] == 12
    if row.window:
        assert runs(made, "window") == "In at 10."
    if row.flat:
        assert end(made, "flat")[0] * strong < 0


@every_row
def test_the_motion_and_the_split_bring_the_under_man_in(name: str) -> None:
    made = play(book(name), ROWS[name].name("Right"))
    under = made.runs("under")
    assert under is not None
    assert abs(made.man(under.man).snap.x) <= 2.6 + 6
    assert (under.motion is not None) == ("motion" in ROWS[name].called)


@every_row
@every_side
def test_the_order_of_reads(name: str, side: str) -> None:
    row = ROWS[name]
    made = play(book(name), row.name(side))
    order = [(r.target, r.foot) for r in made.reads]
    whole = [("flat", "quick"), ("near", "3"), ("top", "reset"), ("far", "reset")]
    assert order == (whole if row.flat else whole[1:])
    assert [r.number for r in made.reads] == list(range(1, len(order) + 1))
    near = next(r for r in made.reads if r.target == "near")
    assert near.partner == ("dig" if row.dig else "")
    assert [r.target for r in made.pressure] == [t for t, _ in order if t != "top"]
    assert [s.name for s in made.feet] == ["quick", "3", "reset"]


@every_row
@every_side
@every_spot
def test_spots_hang_on_the_settle_and_each_has_its_man(
    name: str, side: str, spot: BallSpot
) -> None:
    made = play(book(name), ROWS[name].name(side), spot)
    places = {s.name: s for s in made.spots}
    strong = made.strong.value
    assert places["near"].at.x * strong < 0 < places["far"].at.x * strong
    assert places["top"].at.x == 0
    by_role = {a.role: a.man for a in made.assignments if a.role}
    assert places["near"].men == (by_role["over"],)
    assert places["top"].men == (by_role["settle"],)
    assert places["far"].men == (by_role["under"],)


@every_row
@every_side
@together(
    "look", [LookWord.ZONE, LookWord.MAN, LookWord.PRESS, LookWord.OFF], ids=lambda v: v.value
)
def test_the_spots_are_filled_by_the_same_men_against_every_look(
    name: str, side: str, look: LookWord
) -> None:
    """Against zone the crossers sit down in their windows, against man they run on."""
    result, row = book(name), ROWS[name]
    for tags in ("", "Return"):
        plain = play(result, row.name(side, tags))
        seen = play(result, row.name(side, tags), against=(look,))
        assert {s.name: s.men for s in seen.spots} == {s.name: s.men for s in plain.spots}
    crosser = play(result, row.name(side), against=(look,)).runs("over")
    assert crosser is not None and crosser.path is not None
    assert (crosser.path.ending is Ending.SETTLE) == (look is LookWord.ZONE)


def second_read(made: Play) -> tuple[str, tuple[str, ...], tuple[float, float]]:
    read = made.reads[1] if made.reads[0].target == "flat" else made.reads[0]
    spot = next(s for s in made.spots if s.name == read.target)
    return read.target, read.men, (round(spot.at.x, 6), spot.at.y)


@every_row
@every_side
@every_spot
def test_return_changes_the_men_and_not_the_eyes(name: str, side: str, spot: BallSpot) -> None:
    result, row = book(name), ROWS[name]
    plain = play(result, row.name(side), spot)
    tagged = play(result, row.name(side, "Return"), spot)
    target, men, place = second_read(plain)
    assert second_read(tagged)[0] == target == "near"
    assert second_read(tagged)[2] == place
    assert second_read(tagged)[1] != men
    by_role = {a.role: a.man for a in plain.assignments if a.role}
    assert (men, second_read(tagged)[1]) == ((by_role["over"],), (by_role["under"],))

    def eyes(made: Play) -> list[tuple[str, str]]:
        return [(r.target, r.foot) for r in made.reads]

    assert eyes(tagged) == eyes(plain)
    assert [s.at for s in tagged.spots] == [s.at for s in plain.spots]
    assert tagged.feet == plain.feet
    swapped = {s.name: s.men for s in plain.spots}
    swapped["near"], swapped["far"] = swapped["far"], swapped["near"]
    assert {s.name: s.men for s in tagged.spots} == swapped


@every_row
@every_side
def test_each_crosser_of_a_return_ends_on_the_side_he_came_from(name: str, side: str) -> None:
    made = play(book(name), ROWS[name].name(side, "Return"))
    for role in ("over", "under"):
        assignment = made.runs(role)
        assert assignment is not None and assignment.path is not None
        assert assignment.path.end.x * assignment.path.start.x > 0


@together("name", [n for n, row in ROWS.items() if row.flat])
@every_side
def test_wheel_turns_the_flat_up_and_stays_the_first_read(name: str, side: str) -> None:
    result, row = book(name), ROWS[name]
    for tags in ("Wheel", "Wheel + Return"):
        made = play(result, row.name(side, tags))
        assert made.reads[0].target == "flat" and made.reads[0].foot == "quick"
        flat = made.runs("flat")
        assert flat is not None and flat.path is not None
        assert flat.path.end.y >= 15
        assert flat.path.end.x * made.strong.value < 0
        above, below = flat.path.end, flat.path.corners[-2]
        assert above.x == pytest.approx(below.x)


@pytest.mark.parametrize(
    ("code", "formation"), [(ELEVEN, DOUBLES_ELEVEN), (TWELVE, DOUBLES_TWELVE)], ids=["11", "12"]
)
def test_two_by_two_is_not_served_and_the_message_says_why(code: str, formation: str) -> None:
    result = compiled(code, formation, CROSSERS, dress("Doubles"))
    missing = [d for d in result.diagnostics if d.code == "E620"]
    assert [dict(d.values) for d in missing] == [
        {
            "call": "Doubles Right Crossers and 1 more call",
            "line": "over is inside opposite under or nobody",
            "role": "over",
            "why": "strong #2 already runs the settle, strong #1 already runs the clear, "
            "nobody is left on the strong side",
        }
    ]
    assert dict(missing[0].values)["why"] in message(missing[0])
    assert result.failed
    assert result.season is not None and result.season.plays == ()
    line = CROSSERS.splitlines()[missing[0].span.line - 1]
    assert line.strip() == "over is inside opposite under"


@every_row
def test_nobody_is_dropped(name: str) -> None:
    """Every man who may catch a pass has a job in every dress-up of the family."""
    made = book(name).season
    assert made is not None
    assert len(made.plays) == 8
    for one in made.plays:
        for man in one.men:
            if not man.interior and man.label != "Q":
                assert one.assignment(man.label).job, (one.call.spoken, man.label)


def test_a_read_of_a_man_who_is_nobody_is_passed_over() -> None:
    made = play(book("11 men, 3x2 empty"), "Empty Right Crossers")
    assert [r.target for r in made.reads] == ["near", "top", "far"]
    assert [r.number for r in made.reads] == [1, 2, 3]
    assert made.nobody == ("flat",)
