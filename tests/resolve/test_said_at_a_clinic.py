"""What is said at a clinic is the play or the look that the notation's own words make; a line that
would be drawn otherwise than it says is told."""

from __future__ import annotations

import pytest

from resolve.texts import DOUBLES_ELEVEN, ELEVEN, codes, compiled, dress, play
from stemline.football.play import Play

TIGHT = """
formation Tight
    X at away, 6 outside tackle, on line
    S at call, 6 outside tackle, off line
    Y at call, end, on line
    R at ball, 7 deep
    H at ball, 4 deep
    Q at ball, under centre
"""
RUN = """
run Test
    carrier is back
    carrier aims playside A
    {line}
    fullback blocks lead
    everyone else blocks stalk
"""
PASS = """
concept Test
    {lines}
    feet 3
"""


def made(text: str, formation: str = "Doubles", more: str = "") -> Play:
    texts = (ELEVEN, DOUBLES_ELEVEN, more, text, dress(formation, concept="Test"))
    return play(compiled(*texts), f"{formation} Right Test")


def jobs(shown: Play) -> dict[str, tuple[object, str]]:
    return {a.man: (a.path, a.job) for a in shown.assignments}


def test_a_man_whom_another_doubles_with_doubles_with_him() -> None:
    said = """centre blocks double with backside guard then near linebacker
    playside guard, playside tackle, backside tackle blocks on or climb"""
    both = said + "\n    backside guard blocks double with centre or on or climb"
    both += " then near linebacker"
    assert jobs(made(RUN.format(line=said)))["LG"] == jobs(made(RUN.format(line=both)))["LG"]


def test_a_tight_end_of_whom_nothing_is_said_blocks_as_the_line() -> None:
    line = "line blocks reach or climb"
    text = RUN.format(line=line).replace("    everyone else blocks stalk\n", "")
    own = text + "    playside end blocks reach or climb\n"
    mine, theirs = (jobs(made(one, "Tight", TIGHT)) for one in (text, own))
    other = jobs(made(text + "    playside end blocks down or climb\n", "Tight", TIGHT))
    assert mine["Y"] == theirs["Y"] != other["Y"]


@pytest.mark.parametrize(
    ("who", "found"), [("weak #1", []), ("strong #1", []), ("tight end", ["W627"])]
)
def test_a_line_for_a_man_who_has_another_is_told(who: str, found: list[str]) -> None:
    lines = f"strong #2 runs seam\n    {who} runs cross 5\n    everyone else runs go"
    lines += "\n    every other back runs check"
    text = PASS.format(lines=lines)
    result = compiled(ELEVEN, TIGHT, text, dress("Tight", concept="Test"))
    assert codes(result) == found
    for d in result.diagnostics:
        values = dict(d.values)
        assert (values["man"], values["first"], values["second"]) == ("Y", "strong #2", "tight end")


@pytest.mark.parametrize(
    ("more", "made", "found"),
    [
        ("    S runs cross 5\n", dress("Tight", concept="Test"), ["W627"]),
        ("\ntag Over for Test\n    S runs cross 5\n", dress("Tight with Over", concept="Test"), []),
        ("\nconcept More extends Test\n    S runs cross 5\n", dress("Tight", concept="More"), []),
        ("concept More extends Test\n    S runs cross 5\n", dress("Tight", concept="More"), []),
    ],
)
def test_a_letter_against_a_place_is_told_where_one_block_says_both(
    more: str, made: str, found: list[str]
) -> None:
    text = PASS.format(lines="strong #1 runs seam\n    everyone else runs go\n    R runs check")
    whole = more + text if more.startswith("concept") else text + more  # its parent below it
    told = codes(compiled(ELEVEN, TIGHT, whole, made))
    assert [code for code in told if code == "W627" or code.startswith("E")] == found


def test_the_fullback_of_a_protection_is_he_whoever_stays_in() -> None:
    text = """
protection Two Edges
    line blocks slide
    toward call
    fullback blocks edge

concept Test
    strong #1, weak #1 runs go
    R runs swing
    feet 3
    protect Two Edges
"""
    people = ELEVEN.replace("H, S, W is slot", "S, W is slot\n    H is fullback")
    result = compiled(people, TIGHT, text, dress("Tight", concept="Test"))
    assert "W690" not in codes(result)
    assert "edge" in play(result, "Tight Right Test").assignment("H").job


STANDS = """
look {name}
    E in 5, strong
    C at strong #1, 8 deep
    B at weak #1, 8 deep
    Y at tight end, strong, 5 deep
    H at strong hash, 12 deep
    D at weak #2 or apex, weak, 8 deep
    D at strong #4, 7 deep when 4x1
    F at middle, 13 deep
    {lines}
"""
SAID = "C, B cover flat\n    Y, E cover man\n    H covers half\n    F covers third"
WRITTEN = """C covers flat, strong
    B covers flat, weak
    Y covers man, strong tight end
    E covers man, strong #2
    H covers half, strong
    F covers third, middle"""


def test_a_zone_without_a_side_is_on_the_side_where_he_stands() -> None:
    said = SAID.replace("Y, E cover man", "Y covers man\n    E covers man, strong #2")
    # What he does may stand before where he stands.
    late = STANDS.format(name="Late", lines="").rstrip() + "\n"
    first, _, rest = late.partition("\n    E in")
    texts = (
        STANDS.format(name="Said", lines=said),
        STANDS.format(name="Written", lines=WRITTEN),
        f"{first}\n    {said}\n    E in{rest}",
    )
    result = compiled(ELEVEN, DOUBLES_ELEVEN, *texts)
    assert result.book is not None
    looks = result.book.looks
    mine, theirs, before = (
        {
            man: [(s.value.tasks, s.value.words) for s in said]
            for man, said in looks[x].duties.items()
        }
        for x in ("said", "written", "late")
    )
    assert mine == theirs == before


@pytest.mark.parametrize("line", ["D covers flat", "F covers half", "E covers man"])
def test_where_his_places_do_not_say_it_he_is_asked(line: str) -> None:
    """D stands on either side, F over the middle, E over a lineman."""
    result = compiled(ELEVEN, DOUBLES_ELEVEN, STANDS.format(name="Asked", lines=line))
    assert [c for c in codes(result) if c in ("E404", "E482", "E496")]


OPTION = """
run Test
    {who}
    line blocks reach or climb
    tight end blocks arc
    fullback blocks lead
    everyone else blocks stalk
    {pitch}
"""


@pytest.mark.parametrize(
    ("said", "written"),
    [
        (
            ("quarterback aims outside the end\n    pitch man is back", "pitch off overhang"),
            (
                "carrier is quarterback\n    carrier aims outside the end\n    pitch man is back\n"
                "    pitch man runs swing playside",
                "pitch off overhang if he takes the quarterback",
            ),
        ),
        (
            ("back aims outside the tackle", ""),
            ("carrier is back\n    carrier aims playside C", ""),
        ),
    ],
)
def test_who_aims_is_the_carrier_of_a_run_that_names_none(
    said: tuple[str, str], written: tuple[str, str]
) -> None:
    mine, theirs = (
        made(OPTION.format(who=who, pitch=pitch), "Tight", TIGHT) for who, pitch in (said, written)
    )
    assert mine.carrier == theirs.carrier != ""
    assert {m: path for m, (path, _) in jobs(mine).items()} == {
        m: path for m, (path, _) in jobs(theirs).items()
    }
    assert [(k.man, k.choices) for k in mine.keys] == [(k.man, k.choices) for k in theirs.keys]


def test_two_men_in_one_technique_are_one_on_each_side() -> None:
    pair = STANDS.format(name="Pair", lines="J, T in 3, 1 deep")
    apart = STANDS.format(name="Apart", lines="J in 3, strong, 1 deep\n    T in 3, weak, 1 deep")
    result = compiled(ELEVEN, DOUBLES_ELEVEN, pair, apart)
    assert result.book is not None
    stands = [
        {man: [(s.where, s.side, s.depth) for one in said for s in one.value]
         for man, said in result.book.looks[name].stands.items()}
        for name in ("pair", "apart")
    ]  # fmt: skip
    assert stands[0] == stands[1] and set("JT") <= set(stands[0])


def test_a_line_that_slides_to_a_side_says_the_way_and_the_rule() -> None:
    text = "\nprotection {}\n    {}\n    back blocks {}\n"
    said = text.format("Said", "line slides right", "edge left")
    written = text.format("Written", "toward right\n    line blocks slide", "left edge")
    result = compiled(ELEVEN, DOUBLES_ELEVEN, said, written)
    assert result.book is not None
    first, second = (result.book.protections[name] for name in ("said", "written"))
    assert [s.value for s in first.toward] == [s.value for s in second.toward] != []
    assert first.words == second.words
