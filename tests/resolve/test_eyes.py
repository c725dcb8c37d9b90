"""The quarterback's picture: spots with the men who come there, reads, claims, alerts."""

from __future__ import annotations

import pytest
from together import together

from resolve.texts import ELEVEN, THREE_TWO, TRIPS, TWELVE, codes, compiled, dress, play, said
from stemline.football.conditions import LookWord
from stemline.football.field import BallSpot
from stemline.football.offence.quarterback import FEET
from stemline.football.play import Play, Spot
from stemline.session import Session

MEN = """
concept Test
    z is strong #1
    z runs go
    s is strong #2
    s runs sit 8 over ball
    h is strong #3
    h runs cross 6
    w is weak #2
    w runs cross 5
    x is weak #1
    x runs dig 12
    r is back
    r runs shoot away from s
"""


def eyes(*lines: str) -> Session:
    text = MEN + "".join(f"    {line}\n" for line in lines)
    return compiled(TWELVE, THREE_TWO, text, dress("Three Two", concept="Test"))


def made(*lines: str, side: str = "Right") -> Play:
    return play(eyes(*lines), f"Three Two {side} Test")


def spot(line: str, side: str = "Right") -> Spot:
    (one,) = made(f"spot here is {line}", side=side).spots
    return one


# The tackle is 2.6 from the ball; a low spot lies from the tackle to 9 yards outside it.


@together(
    ("line", "x", "y"),
    [
        ("low, strong", 7.1, 5.5),
        ("low, weak", -7.1, 5.5),
        ("low, away from s", -7.1, 5.5),
        ("low, same side as s", 7.1, 5.5),
        ("low, across from x", 7.1, 5.5),
        ("low, toward x", -7.1, 5.5),
        ("low, left", -7.1, 5.5),
        ("strong, low", 7.1, 5.5),
        ("high, strong", 7.1, 8),
        ("deep, weak", -7.1, 14),
        ("over ball", 0, 8),
        ("6 deep, over ball", 0, 6),
        ("over tackle, strong", 2.6, 8),
        ("over hash, weak", -8.5, 8),
        ("10 deep, strong", 7.1, 10),
        ("10 deep, 2 outside numbers, strong", 24.5, 10),
        ("12 deep, 2 inside numbers, weak", -20.5, 12),
        ("2 outside tackle, strong", 4.6, 8),
    ],
)
def test_where_a_spot_lies(line: str, x: float, y: float) -> None:
    for side, way in (("Right", 1), ("Left", -1)):
        one = spot(line, side)
        if "left" in line:
            way = 1
        assert (round(one.at.x, 6), one.at.y) == (way * x, y)


def test_how_big_a_spot_is() -> None:
    low, top = spot("low, strong"), spot("over ball")
    assert (low.half_width, low.half_height) == (4.5, 2)
    assert (top.half_width, top.half_height) == (3, 2)


@together(
    ("line", "men"),
    [
        ("low, strong", ("W",)),
        ("low, weak", ("H",)),
        ("over ball", ("S",)),
        ("12 deep, 8 outside tackle, weak", ("X",)),
        ("2 deep, 7 outside tackle, weak", ("R",)),
        ("20 deep, strong", ()),
        ("3.4 deep, strong", ("W",)),
        ("2.9 deep, strong", ()),
        ("7 deep, strong", ("W",)),
        ("7.1 deep, strong", ()),
    ],
)
def test_a_man_is_at_a_spot_when_his_path_ends_in_it(line: str, men: tuple[str, ...]) -> None:
    assert spot(line).men == men


def test_reads_name_spots_and_roles_and_the_foot_that_throws_them() -> None:
    reads = made(
        "spot near is low, weak",
        "feet quick, 3, reset, hitch",
        "read r on quick > near with x on 3 > s on reset > z",
    ).reads
    assert [(r.number, r.target, r.men, r.foot, r.partner, r.partner_man) for r in reads] == [
        (1, "r", ("R",), "quick", "", ""),
        (2, "near", ("H",), "3", "x", "X"),
        (3, "s", ("S",), "reset", "", ""),
        (4, "z", ("Z",), "", "", ""),
    ]


def test_a_read_is_seen_where_its_man_catches_the_ball() -> None:
    reads = made("spot near is low, weak", "read near > s > z > r").reads
    assert [(round(r.at.x, 2), round(r.at.y, 2)) for r in reads] == [
        (-8.6, 6),
        (0, 8),
        (22.5, 13.64),  # a long run is thrown before its end
        (-10, 2),
    ]


def test_a_spot_with_two_men_is_seen_at_its_own_place() -> None:
    text = MEN.replace("w runs cross 5", "w runs return 5")
    lines = "    spot near is low, weak\n    read near\n"
    result = compiled(TWELVE, THREE_TWO, text + lines, dress("Three Two", concept="Test"))
    (read,) = play(result, "Three Two Right Test").reads
    assert read.men == ("W", "H")
    assert (round(read.at.x, 6), read.at.y) == (-7.1, 5.5)


def test_an_empty_spot_that_is_read_is_a_mistake_where_it_is_read() -> None:
    result = eyes("spot deep end is 20 deep, strong", "read s > deep end")
    (found,) = [d for d in result.diagnostics if d.is_error]
    assert found.code == "E630"
    assert dict(found.values)["spot"] == "deep end"
    miss = ": X ends 6.0 yards too short and 5.6 yards to the side of it"
    assert dict(found.values)["miss"] == miss
    assert result.season is not None and result.season.plays == ()


def test_an_empty_spot_that_nobody_reads_is_none() -> None:
    assert eyes("spot deep end is 20 deep, strong", "read s").diagnostics == ()


def test_a_role_that_is_nobody_is_passed_over_and_the_numbers_close_up() -> None:
    lines = ("e is strong #4 or nobody", "e runs go", "read e on 3 > s on 3 > z with e on reset")
    one = made(*lines)
    assert [(r.number, r.target, r.partner) for r in one.reads] == [(1, "s", ""), (2, "z", "")]
    assert one.nobody == ("e",)


def test_of_two_in_one_glance_the_one_who_is_left_is_read() -> None:
    one = made(
        "e is strong #4 or nobody", "e runs go",
        "read e with s on 3 > z", "pressure z with e on 3 > e",
    )  # fmt: skip
    read = [(r.number, r.target, r.men, r.partner) for r in one.reads]
    assert read == [(1, "s", ("S",), ""), (2, "z", ("Z",), "")]
    assert [(r.target, r.partner) for r in one.pressure] == [("z", "")]


def test_pressure_is_an_order_of_its_own() -> None:
    one = made("read s > z", "pressure r > s")
    assert [r.target for r in one.pressure] == ["r", "s"]
    assert [r.target for r in one.reads] == ["s", "z"]
    assert [r.number for r in one.pressure] == [1, 2]


@together("name", sorted(FEET))
def test_every_step_of_the_feet_is_known(name: str) -> None:
    one = made(f"feet {name}", f"read s on {name}")
    assert [s.name for s in one.feet] == [name]
    assert one.reads[0].foot == name
    assert one.feet[0].words.startswith(FEET[name])


def test_a_foot_that_the_feet_never_come_to() -> None:
    (found,) = eyes("feet 3, reset", "read s on 5").diagnostics
    values = dict(found.values)
    assert (found.code, values["target"], values["foot"]) == ("E631", "s", "5")


def test_a_tag_that_changes_the_feet_is_named_by_its_call() -> None:
    text = MEN + "    feet 3, reset\n    read s on 3\n\ntag Fast for Test\n    feet quick\n"
    dressed = dress("Three Two", "with plain", "with Fast", concept="Test", sides=False)
    (found,) = compiled(TWELVE, THREE_TWO, text, dressed).diagnostics
    assert said([found]) == [
        "E631 16: s is thrown on 3 in Three Two Right Test Fast, and the feet there are quick"
    ]


# Claims, pairs, alerts, needs, picks, protections.


@pytest.mark.parametrize(
    ("line", "kind", "targets", "on"),
    [
        ("claims triangle s h w", "triangle", ("s", "h", "w"), ""),
        ("claims high-low s h", "high-low", ("s", "h"), ""),
        ("claims high-low x above h on hook defender", "high-low", ("h", "x"), "hook defender"),
        ("claims stretch r h s w", "stretch", ("r", "h", "s", "w"), ""),
        ("claims stretch z s on safety", "stretch", ("z", "s"), "safety"),
        ("pair x above r on flat defender", "high-low", ("x", "r"), "flat defender"),
        ("pair s above h", "high-low", ("s", "h"), ""),
    ],
)
def test_a_claim(line: str, kind: str, targets: tuple[str, ...], on: str) -> None:
    (claim,) = made(line).claims
    assert (claim.kind, claim.on) == (kind, on)
    assert set(claim.targets) == set(targets)
    assert len(claim.points) == len(targets)


def test_the_points_of_a_claim_are_where_its_men_are() -> None:
    (claim,) = made("spot near is low, weak", "claims triangle near s w").claims
    assert [(round(p.x, 2), round(p.y, 2)) for p in claim.points] == [(-8.6, 6), (0, 8), (8.6, 5)]


def test_a_claim_on_somebody_who_is_nobody_is_not_made() -> None:
    one = made("e is strong #4 or nobody", "e runs go", "claims triangle e s h")
    assert one.claims == ()


@together(
    ("guard", "made_of"),
    [("3x2", 1), ("2x2", 0), ("3 or more strong", 1), ("2 or more weak", 1), ("1 weak", 0)],
)
@together("line", ["claims stretch s h w", "pair x above h on hook defender"])
def test_a_claim_is_made_of_the_shapes_it_is_said_of(line: str, guard: str, made_of: int) -> None:
    assert len(made(f"{line} when {guard}").claims) == made_of


def test_claims_that_hold_together_are_all_made() -> None:
    one = made("claims stretch s h w", "claims triangle s h w when 3x2")
    assert [c.kind for c in one.claims] == ["stretch", "triangle"]


def drops(*lines: str) -> Session:
    """A concept with two claims, and a tag with these lines."""
    text = MEN + "    claims triangle s h w\n    pair x above h\n"
    text += "\ntag Other for Test\n    z runs post\n" + "".join(f"    {x}\n" for x in lines)
    return compiled(TWELVE, THREE_TWO, text, dress("Three Two", "with Other", concept="Test"))


@pytest.mark.parametrize(
    ("lines", "kinds"),
    [
        ((), ["triangle", "high-low"]),
        (("claims nothing",), []),
        (("claims stretch s w",), ["stretch"]),
    ],
)
def test_a_tag_drops_or_replaces_what_is_claimed(lines: tuple[str, ...], kinds: list[str]) -> None:
    one = play(drops(*lines), "Three Two Right Test Other")
    assert [c.kind for c in one.claims] == kinds


@pytest.mark.parametrize(
    ("line", "targets"),
    [
        ("claims nothing", []),
        ("claims stretch s w", [("s", "w")]),
        ("pair s above w", [("s", "w")]),
        ("feet 3", [("s", "h", "w"), ("x", "h")]),
    ],
)
def test_an_heir_drops_or_replaces_claims_and_pairs_alike(
    line: str, targets: list[tuple[str, ...]]
) -> None:
    claims = "    claims triangle s h w\n    pair x above h\n"
    text = f"{MEN}{claims}\nconcept Heir extends Test\n    {line}\n"
    result = compiled(TWELVE, THREE_TWO, text, dress("Three Two", concept="Heir"))
    assert [c.targets for c in play(result, "Three Two Right Heir").claims] == targets


@pytest.mark.parametrize(
    ("lines", "code"),
    [
        (("claims nothing", "pair s above h"), "E420"),
        (("claims triangle s h w", "claims nothing"), "E420"),
        (("claims nothing when 3x2",), "E401"),
        (("claims triangle s h w when zone",), "E413"),
    ],
)
def test_a_claim_that_contradicts_itself(lines: tuple[str, ...], code: str) -> None:
    assert codes(drops(*lines)) == [code]


# The side of a launch.


@together("name", ["sprint", "roll", "boot"])
@together(
    ("words", "side"),
    [("", 1), (" away", -1), (" strong", 1), (" weak", -1), (" left", 0), (" call", 1)],
)
def test_a_launch_goes_to_the_first_read_unless_a_side_is_said(
    name: str, words: str, side: int
) -> None:
    for called, way in (("Right", 1), ("Left", -1)):
        (one,) = made(f"feet {name}{words}", f"read h on {name} > w > s", side=called).feet
        # h crosses from the called side: he is read on the other one.
        wanted = {"": -way, " left": -1}.get(words, side * way)
        assert one.side is not None
        assert (one.name, one.side.value) == (name, wanted)
        assert one.words.startswith(f"{FEET[name]} to the {one.side.word}: ")


def test_only_a_launch_has_a_side() -> None:
    assert codes(eyes("feet 3 strong")) == ["E401"]
    assert codes(eyes("feet sprint sideways")) == ["E447"]
    assert [s.side for s in made("feet 3, reset", "read s").feet] == [None, None]


@together(
    ("line", "code"),
    [
        ("claims triangle s h", "E467"),
        ("claims high-low s h w", "E467"),
        ("claims stretch s", "E467"),
        ("claims square s h w", "E466"),
        ("claims triangle s h v", "E464"),
        ("pair s", "E467"),
        ("pair s above h on Mike", "E462"),
        ("alert v", "E464"),
        ("read s > v", "E464"),
        ("read s on tiptoe", "E463"),
        ("feet 3, tiptoe", "E463"),
        ("spot near low, strong", "E404"),
        ("spot near in low, strong", "E465"),
        ("spot near is low", "E457"),
        ("spot near is 10 deep", "E457"),
        ("spot near is low, sideways", "E456"),
        ("spot near is over moon", "E430"),
        ("spot near is 2 past numbers, strong", "E434"),
        ("needs s within 6", "E468"),
        ("needs s of tackle", "E468"),
        ("needs v within 6 of tackle", "E444"),
        ("needs s within 6 of moon", "E430"),
        ("pick side by coin", "E461"),
        ("protect nine", "E460"),
    ],
)
def test_a_line_that_cannot_be_read(line: str, code: str) -> None:
    assert code in codes(eyes(line)), said(eyes(line).diagnostics)


@pytest.mark.parametrize(
    ("line", "men", "when"),
    [
        ("alert z when middle open", ("Z",), "middle open"),
        ("alert z on corner", ("Z",), "the corner lets him go"),
        ("alert z", ("Z",), ""),
        ("alert near when zone", ("H",), "zone"),
    ],
)
def test_an_alert(line: str, men: tuple[str, ...], when: str) -> None:
    (alert,) = made("spot near is low, weak", line).alerts
    assert (alert.men, alert.when) == (men, when)


def test_an_alert_that_can_never_come_in_this_shape_is_left_out() -> None:
    assert made("alert z when 4x1").alerts == ()


@pytest.mark.parametrize(
    ("line", "met"),
    [
        ("needs h within 4 of tackle at snap", True),
        ("needs h within 3.9 of tackle at snap", False),
        ("needs w within 5 yards of tackle", True),
        ("needs z within 0 of numbers", True),
        ("needs s within 2 of numbers", False),
        ("needs r within 2 of ball", True),
    ],
)
def test_a_need(line: str, met: bool) -> None:
    assert ("E651" not in codes(eyes(line))) is met


def test_a_need_of_a_role_that_is_nobody_asks_for_nothing() -> None:
    assert (
        eyes("e is strong #4 or nobody", "e runs go", "needs e within 1 of ball").diagnostics == ()
    )


@together(
    "name",
    ["soft corner", "leverage", "fewer defenders", "field", "boundary", "best matchup"],
)
@together("opening", ["pick", "pick side", "pick side by"])
def test_the_side_of_a_mirrored_concept(name: str, opening: str) -> None:
    assert made(f"{opening} {name}").pick == name


def test_a_family_is_the_files_name_unless_said() -> None:
    result = compiled(
        ELEVEN, TRIPS, "concept Go\n    a is strong #1\n    a runs go", dress("Trips", concept="Go")
    )
    assert play(result, "Trips Right Go").family == "Three"
    result = compiled(
        ELEVEN,
        TRIPS,
        "concept Go\n    family Deep Shots\n    a is strong #1\n    a runs go",
        dress("Trips", concept="Go"),
    )
    assert play(result, "Trips Right Go").family == "Deep Shots"


def test_reading_a_man_who_blocks_is_reading_nobody() -> None:
    text = MEN.replace("r runs shoot away from s", "r blocks edge") + "    read r > s\n"
    result = compiled(TWELVE, THREE_TWO, text, dress("Three Two", concept="Test"))
    found = [dict(d.values)["spot"] for d in result.diagnostics if d.code == "E630"]
    assert found == ["r"]


@pytest.mark.parametrize(
    ("shown", "alerts"),
    [
        ((), ["x", "z"]),
        ((LookWord.OPEN,), ["x", "z"]),
        ((LookWord.CLOSED,), ["x"]),
        ((LookWord.CLOSED, LookWord.MAN), ["x"]),
    ],
)
def test_an_alert_for_one_look_is_none_against_another(
    shown: tuple[LookWord, ...], alerts: list[str]
) -> None:
    session = eyes("read s", "alert x on near safety", "alert z when middle open")
    call = session.calls.by_name["Three Two Right Test"]
    found, _ = session.play(call, BallSpot.MIDDLE, shown)
    assert found is not None and [a.target for a in found.alerts] == alerts
