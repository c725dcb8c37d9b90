"""Formations and motions built from the rule texts, legal ones and fouls, code by code.

Beside each stands the text that decides it. What was not seen in print is "from memory" and so may
only warn; the codes beginning with E rest on a text that was seen.
"""

from __future__ import annotations

from dataclasses import dataclass
from textwrap import dedent

import pytest
from together import together

from references.figures import ARTICLE, Printed, Value
from stemline.checks.discovered import rows
from stemline.diagnostics.broken_rule import BrokenRule
from stemline.session import Session
from stemline.source import Source

_RULES = {code for row in rows() if issubclass(row, BrokenRule) for code in row.worded()}


@dataclass(frozen=True)
class Case:
    """One set of men, what decides it, and the rules it breaks; none for a legal one.

    ``men`` are lined up in short: "X a12 on" is X on the away side, 12 yards outside the tackle, on
    the line; "H c5 0.5" the called side, half a yard deep; "B b7" behind the ball, seven deep.
    ``plays`` are blocks behind the formation, as a coach types them: a concept or run with its
    dress-up ``in Tried Set``. ``figure`` names a figure of the code that stands or falls with the
    case: a legal one and a foul are worth a row of `figures.py`. ``value`` is a length or number as
    ``source`` has it, and is held against the code's; ``seen`` says what ``source`` is.
    """

    code: str
    source: str
    men: str
    broken: str = ""
    line: str = ""
    people: str = ""
    motion: str = ""
    figure: str = ""
    value: Value = None
    seen: str = ARTICLE
    plays: str = ""

    def text(self) -> str:
        lines = [f"playbook Tried\n    code {self.code}\n", "personnel All\n    Q is quarterback\n"]
        lines[1] += "".join(f"    {p}\n" for p in self.people.split("; ") if p)
        lines.append("formation Tried Set")
        if self.line:
            lines.append(f"    line {self.line}")
        lines += [f"    {_placed(man)}" for man in self.men.split(", ")]
        if self.motion:
            lines.append("\nmotion Tried Way")
            lines += [f"    {x}" for x in self.motion.split("; ")]
            lines.append("\nconcept Go\n    a is strong #1\n    a runs go\n\ndress Go")
            lines.append("    in Tried Set motion Tried Way\n    to right, left")
        return "\n".join(lines) + f"\n{dedent(self.plays)}"

    def compiled(self) -> Session:
        return Session([Source("tried.play", self.text())], "tried")


def _placed(man: str) -> str:
    letter, place, *depth = man.split()
    if place[0] == "b":
        return f"{letter} at ball, {place[1:]} deep"
    side = {"a": "away", "c": "call"}[place[0]]
    how = {"on": "on line", "off": "off line"}.get(depth[0], f"{depth[0]} deep")
    return f"{letter} at {side}, {place[1:]} outside tackle, {how}"


NFHS = "NFHS 7-2-5a, reported for 2024: five linemen, four backs"
NFHS_BACK = "NFHS 2-32-9, from memory: lineman or back"
NFHS_END = "NFHS 7-5-6, from memory: ends and backs are eligible"
NFHS_NUMBER = "NFHS 7-2-5a, reported for 2024: 50 to 79"
NCAA_FIVE = "NCAA 7-1-4a-3: five numbered 50 to 79"
NCAA_FOUR = "NCAA 7-1-4a-4: four backs"
NCAA_BETWEEN = "NCAA 7-1-4a-2: neither lineman nor back"
NCAA_END = "NCAA 7-3-3: ends and backs, numbers"
NFL_SEVEN = "NFL 7-5-1, second-hand: seven on the line"
NFL_YARD = "NFL operations glossary: a yard back"
NFL_NUMBER = "NFL operations glossary: 50 to 79"
NFL_NINETIES = "NFL 5-3-1, second-hand: 90 to 99"
CFL_SEVEN = "CFL 2021, 4-5-1: seven on the line, five behind it"
CFL_RUN = "CFL 2021, 4-5: five in one run, an eligible man at each end"
CFL_YARD = "CFL 2008, 4-1-2: within a yard, nobody in doubt"
CFL_NUMBER = "CFL 2021, 4-5: 50 to 69"
FC19 = "Football Canada, changes for 2019: five ineligibles and one eligible at each end"
FC_MEMORY = "as the CFL, from memory"
NEXT = "announced for 2027: everything else from memory"
EIGHT = "NFHS eight-player modifications, Rule 7: two ends, three backs, any number"
EIGHT_LINE = "NFHS eight-player, Rule 7: three on the line, three backs at most"
NINE = "nine-player, a report: five and four"
CAN_SIX_SIDE = "three on the line of six, from memory"
CAN_NINE_SIDE = "five on the line of nine, from memory"
SIX = "six-player, a report: three on the line, all eligible, any number"

TWO = "X a12 on, H a5 off, S c5 off, Z c12 on, B b7, Q b5"
HALF = "X a12 on, H a5 0.3, S c5 off, Z c12 on, B b7, Q b5"
COVER = "X a12 on, Y c1 on, H c5 off, Z c12 on, B b7, Q b5"
FIVE_BACK = "X a12 off, H a5 off, S c5 off, Z c12 on, B b7, Q b5"
SIX_BACK = "X a12 off, H a5 off, S c5 off, Z c12 off, B b7, Q b5"
EXTRA = "X a12 on, H a5 off, Z c12 on, B b7, Q b5"
FOUR = "X a12 on, Y c1 on, Z c12 on, H a5 off, S c5 off, B b7, Q b5"
GATE = "LT a9 on, LG a8 on, X a12 on, H a10 off, S c5 off, Z c5 on, B b7, Q b5"
WIDE_TACKLES = "LT a10 on, RT c10 on, X a12 on, H a10 2, S c10 2, Z c12 on, B b7, Q b5"
END_TACKLE = "X a12 off, H a5 off, S c1 on, B b7, Q b5"
FIVE = "LT, LG, C, RG, RT"
SIX_LINE = "LT, LG, C, RG, RT, ET"

CAN = "X a12 on, W a5 off, H c4 off, S c8 off, Z c12 on, R b7, Q b5"
CAN_SIX = "X a12 off, W a5 off, H c4 off, S c8 off, Z c12 on, R b7, Q b5"
CAN_TIGHT = "X a1 on, W a3 off, H c1 on, S c3 off, F b4, R b7, Q b1"
CAN_EIGHT = "X a12 on, W a5 off, H c4 off, Z c12 on, R b7, Q b5"
CAN_COVER = "X a12 on, W a5 off, H c4 on, S c8 off, Z c12 on, R b7, Q b5"
CAN_GATE = "LT a9 on, X a12 on, W a5 off, H c4 off, S c8 off, Z c12 on, R b7, Q b5"
CAN_TACKLE_END = "X a12 off, W a5 off, H c4 off, Z c12 on, R b7, Q b5"
CAN_HALF = "X a12 on, W a5 off, H c4 0.7, S c8 off, Z c12 on, R b7, Q b5"
CAN_OPEN = "X a12 off, W a5 off, H c4 off, S c8 off, Z c12 off, R b7, Q b5"

FORMATIONS = [
    # US high school
    Case("high school", NFHS, TWO),
    Case("high school", NFHS, "X a12 on, Y c1 on, H a5 off, Z c12 off, B b7, Q b1"),
    Case("high school", NFHS, EXTRA, line=SIX_LINE),
    Case("high school", NFHS, GATE),
    Case("high school", NFHS, WIDE_TACKLES),
    Case("high school", NFHS, "Y c1 on, X a1 on, F b4, H a1 4, B c1 4, Q b1"),
    Case("high school", NFHS, END_TACKLE, line=SIX_LINE),
    Case("high school", NFHS, FIVE_BACK, "W521"),
    Case("high school", NFHS, SIX_BACK, "W521"),
    Case("high school", NFHS, FOUR, "W522 W524", line="LG, C, RG, RT"),
    Case("high school", NFHS_BACK, HALF, "W525"),
    Case("high school", NFHS_BACK, HALF.replace("0.3", "0.6")),
    Case("high school", NFHS_END, COVER, "W524"),
    Case("high school", NFHS_END, COVER.replace("Z c12 on", "Z c12 off")),
    Case("high school", NFHS_END, COVER.replace("Y c1 on, ", ""), line=f"{FIVE}, Y",
         people="Y is tight end, 88"),
    Case("high school", NFHS_NUMBER, TWO, "W527", people="X is wideout, 72"),
    Case("high school", NFHS_NUMBER, TWO, people="X is wideout, 82; LT is tackle, 72"),
    Case("high school", NFHS_NUMBER, TWO, "W528", people="LT is tackle, 88"),
    Case("high school", NFHS_NUMBER, EXTRA, line=SIX_LINE, people="ET is tackle, 88"),
    # US college
    Case("college", NCAA_FOUR, TWO),
    Case("college", NCAA_FOUR, EXTRA, line=SIX_LINE),
    Case("college", NCAA_FOUR, FIVE_BACK, "E521"),
    Case("college", NCAA_FIVE, GATE),
    Case("college", NCAA_FIVE, FOUR, "E522 E524", line="LG, C, RG, RT"),
    Case("college", NCAA_BETWEEN, HALF, "E525", figure="between_foul"),
    Case("college", NCAA_BETWEEN, TWO.replace("B b7", "B a1 4"), figure="between_foul"),
    Case("college", NCAA_END, COVER, "E524"),
    Case("college", NCAA_END, COVER.replace("Z c12 on", "Z c12 off")),
    Case("college", NCAA_END, TWO, "E527", people="Z is wideout, 55"),
    Case("college", NCAA_FIVE, TWO, "E528", people="RG is guard, 44"),
    Case("college", NCAA_FIVE, TWO, people="RG is guard, 64; Z is wideout, 4"),
    # US professional
    Case("professional", NFL_SEVEN, TWO),
    Case("professional", NFL_SEVEN, FIVE_BACK, "W520"),
    Case("professional", NFL_YARD, HALF.replace("0.3", "0.7"), "W525"),
    Case("professional", NFL_YARD, TWO.replace("Q b5", "Q b0.8")),
    Case("professional", NFL_NUMBER, TWO, "E527", people="S is slot, 75"),
    Case("professional", NFL_NINETIES, TWO, "W527", people="S is slot, 95"),
    Case("professional", NFL_NUMBER, TWO, people="S is slot, 85; LG is guard, 95"),
    Case("professional", "NFL 8-1: line-end men and backs", COVER, "E524"),
    # Canadian professional
    Case("canadian professional", CFL_SEVEN, CAN),
    Case("canadian professional", CFL_SEVEN, CAN_TIGHT),
    Case("canadian professional", CFL_SEVEN, CAN_SIX, "E520"),
    Case("canadian professional", CFL_SEVEN, CAN_OPEN, "E520"),
    Case("canadian professional", CFL_SEVEN, CAN_EIGHT, line=SIX_LINE),
    Case("canadian professional", CFL_RUN, CAN_GATE, "E522"),
    Case("canadian professional", CFL_RUN, CAN_TACKLE_END, "E523", line=SIX_LINE),
    Case("canadian professional", CFL_RUN, CAN, line="LG, C, RG, RT, LT"),
    Case("canadian professional", CFL_RUN, CAN_COVER, "E524"),
    Case("canadian professional", CFL_YARD, CAN_HALF, "E525"),
    Case("canadian professional", CFL_YARD, CAN_HALF.replace("0.7", "1")),
    Case("canadian professional", CFL_NUMBER, CAN, "E527", people="X is wideout, 65"),
    Case("canadian professional", CFL_NUMBER, CAN, people="X is wideout, 75; LT is tackle, 65"),
    Case("canadian professional", CFL_NUMBER, CAN, "E528", people="LT is tackle, 75"),
    # Canadian amateur
    Case("canadian amateur", FC19, CAN),
    Case("canadian amateur", FC19, CAN_TIGHT),
    Case("canadian amateur", FC19, CAN_EIGHT, line=SIX_LINE),
    Case("canadian amateur", FC19, CAN_SIX, "E520"),
    Case("canadian amateur", FC19, CAN_GATE, "E522"),
    Case("canadian amateur", FC19, CAN_TACKLE_END, "E523", line=SIX_LINE),
    Case("canadian amateur", FC_MEMORY, CAN_HALF, "W525"),
    Case("canadian amateur", FC_MEMORY, CAN_COVER, "W524"),
    Case("canadian amateur", "a report, unsettled", CAN, "W527", people="S is slotback, 50"),
    Case("canadian amateur", "a report, unsettled", CAN, people="S is slotback, 40"),
    Case("canadian professional 2027", NEXT, CAN),
    Case("canadian professional 2027", NEXT, CAN_SIX, "W520"),
    Case("canadian professional 2027", NEXT, CAN_TACKLE_END, "W523", line=SIX_LINE),
    # Reduced sizes
    Case("eight-man", EIGHT, "X a8 on, Y c1 on, Z c8 off, B b6, Q b4"),
    Case("eight-man", EIGHT, "X a8 on, Y c1 on, Z c8 off, B b6, Q b4", people="Z is wideout, 55"),
    Case("eight-man", EIGHT, "X a8 on, Y c1 on, Z c8 on, B b6, Q b4", "E524"),
    Case("eight-man", EIGHT_LINE, "X a8 off, Y c1 on, Z c8 off, B b6, Q b4", "E521"),
    Case("eight-man", EIGHT, "X a8 on, Y c1 on, Z c8 on, S c4 off, B b6, Q b4", "E522 E524",
         line="LG, C"),
    Case("nine-man", NINE, "X a8 on, Y c1 on, Z c8 off, H a4 off, B b6, Q b4"),
    Case("nine-man", NINE, "X a8 off, Y c1 on, Z c8 off, H a4 off, B b6, Q b4", "W520"),
    Case("canadian nine-man", CAN_NINE_SIDE, "X a8 on, Y c8 on, Z c5 off, H a4 off, R b6, Q b4"),
    Case("canadian nine-man", CAN_NINE_SIDE, "X a8 off, Y c8 on, Z c5 off, H a4 off, R b6, Q b4",
         "W520"),
    Case("canadian six-man", CAN_SIX_SIDE, "X a6 on, Y c6 on, Z c3 off, R b6, Q b4"),
    Case("canadian six-man", CAN_SIX_SIDE, "X a6 off, Y c6 on, Z c3 off, R b6, Q b4", "W520"),
    Case("six-man", SIX, "X a6 on, Y c1 on, Z c8 off, B b6, Q b4"),
    Case("six-man", SIX, "X a6 on, Y c1 on, Z c8 on, B b6, Q b4", people="X is wideout, 66"),
    Case("six-man", SIX, "X a6 off, Y c1 on, Z c8 off, B b6, Q b4", "W520"),
]  # fmt: skip

JET = "H moves to call, 1 outside tackle, off line; snap running"
UP = "H moves from 6 deep; snap running"
BOTH = "H moves to away, 2 outside tackle, off line; S moves to call, 2 outside tackle, off line"
THREE = "H, S, W moves from 6 deep; snap running 7"
LEAVES = "X moves to away, 3 outside tackle, {} deep; snap running"
SHIFT = "H moves to away, 2 outside tackle, off line; H starts {}; snap set"
INNER_ON = TWO.replace("H a5 off", "H a5 on")

MOTIONS = [
    Case("high school", "NFHS 7-2-7, from memory: one, sideways", TWO, motion=JET),
    Case("high school", "NFHS 7-2-7, from memory: away from the line", TWO,
         motion="H moves 1 outside, 4 deep; snap running"),
    Case("high school", "NFHS 7-2-7, from memory: not toward the line", TWO, "W541", motion=UP),
    Case("high school", "NFHS 7-2-7, from memory: one man", TWO, "W540",
         motion=f"{BOTH}; snap running"),
    Case("high school", "NFHS 7-2-6, from memory: a shift", TWO, motion=f"{BOTH}; snap set"),
    Case("high school", "NFHS 7-2-6, from memory: a full second", TWO, "W542",
         motion=SHIFT.format(1.2)),
    Case("high school", "NFHS 7-2-6, from memory: a full second", TWO, motion=SHIFT.format(1.6)),
    Case("high school", "NFHS 7-2-7, from memory: five yards deep", INNER_ON, "W544",
         motion=LEAVES.format(2)),
    Case("high school", "NFHS 7-2-7, from memory: five yards deep", INNER_ON,
         motion=LEAVES.format(5)),
    Case("college", "NCAA A.R. 7-1-4: veers toward the line", TWO, "E541", motion=UP),
    Case("college", "NCAA A.R. 7-1-4: along the line", TWO, motion=JET),
    Case("college", "officials' slides: one back", TWO, "W540", motion=f"{BOTH}; snap running"),
    Case("college", "NCAA 2-22-1: one second", TWO, "E542", motion=SHIFT.format(1.2)),
    Case("college", "NCAA 2-22-1: one second", TWO, motion=SHIFT.format(1.6)),
    Case("college", "NCAA 2-27-4: a back when he has stopped", INNER_ON, "E544",
         motion=LEAVES.format(5)),
    Case("professional", "NFL 7-4-8, from memory", TWO, "W541", motion=UP),
    Case("canadian professional", "reported: every back, any way", CAN, motion=THREE),
    Case("canadian professional", "reported: not the quarterback", CAN, "W553",
         motion="Q moves to ball, 6 deep; snap running"),
    Case("canadian professional", "CFL 2008, 4-1-3: the zone is a yard", CAN, "E545",
         motion="H moves from 6 deep; H starts 1.2; snap running 7"),
    Case("canadian professional", "CFL 2008, 4-1-2: a yard off", CAN, "E525",
         motion="H moves from 6 deep; H starts 0.8; snap running 7"),
    Case("canadian professional", "CFL 2021, 4-5-1: seven when the ball moves", CAN, "E520",
         motion="X moves to away, 8 outside tackle, off line; snap running"),
    Case("canadian amateur", "as in the CFL, from memory: every back, any way", CAN, motion=THREE),
    Case("canadian amateur", "from memory: line players are still", CAN, "W543",
         motion="X moves to away, 9 outside tackle, on line; snap running"),
    Case("canadian amateur", "from memory: line players are still", CAN,
         motion="X moves to away, 9 outside tackle, on line; snap set"),
]  # fmt: skip


PRINTED_BESIDE = tuple(
    Printed(case.code, case.figure, case.value, case.source, case.seen)
    for case in (*FORMATIONS, *MOTIONS)
    if case.value is not None
)
"""Figures of the rules that a case gives itself."""


def broken(case: Case) -> list[str]:
    result = case.compiled()
    found = {d.code for d in result.diagnostics}
    unread = {c for c in found if c.startswith("E") and c not in _RULES}
    assert not unread, (unread, case.text())
    return sorted({c for c in found if c in _RULES})


def named(case: Case) -> str:
    return f"{case.code}-{case.broken or 'legal'}"


@together("case", FORMATIONS, ids=named)
def test_a_formation_is_judged_as_the_rule_text_judges_it(case: Case) -> None:
    assert broken(case) == case.broken.split()


@together("case", MOTIONS, ids=named)
def test_a_motion_is_judged_as_the_rule_text_judges_it(case: Case) -> None:
    assert broken(case) == case.broken.split()


def test_half_of_the_cases_are_legal_and_every_code_has_both() -> None:
    assert len(FORMATIONS) >= 60
    legal = [c for c in FORMATIONS if not c.broken]
    assert abs(len(legal) - len(FORMATIONS) / 2) <= len(FORMATIONS) / 10
    by_code: dict[str, set[bool]] = {}
    for case in FORMATIONS:
        by_code.setdefault(case.code, set()).add(bool(case.broken))
    assert all(kinds == {True, False} for kinds in by_code.values())


SAME_TEXT = [
    # One text, two codes; what each of them says of it.
    (CAN, THREE, "canadian amateur", "", "canadian professional", ""),
    (TWO, UP, "college", "E541", "high school", "W541"),
    (TWO, SHIFT.format(1.2), "college", "E542", "professional", "W542"),
    (FIVE_BACK, "", "college", "E521", "professional", "W520"),
    (COVER, "", "college", "E524", "high school", "W524"),
    (CAN_SIX, "", "canadian amateur", "E520", "canadian professional 2027", "W520"),
    (CAN_HALF, "", "canadian professional", "E525", "canadian amateur", "W525"),
]


@pytest.mark.parametrize(("men", "motion", "one", "said", "other", "also"), SAME_TEXT)
def test_one_text_under_two_codes(
    men: str, motion: str, one: str, said: str, other: str, also: str
) -> None:
    assert broken(Case(one, "", men, motion=motion)) == said.split()
    assert broken(Case(other, "", men, motion=motion)) == also.split()


def test_the_waggle_set_is_legal_with_twelve_and_flagged_in_high_school_with_the_rules() -> None:
    """The same motion text: three men running at the line."""
    waggle = "H, S moves from 6 deep; snap running 6"
    assert broken(Case("canadian amateur", "", CAN, motion=waggle)) == []
    flagged = Case("high school", "", TWO, motion=waggle).compiled().diagnostics
    told = {d.code: dict(d.values) for d in flagged if d.code in _RULES}
    assert sorted(told) == ["W540", "W541"]
    assert all(values["source"].startswith("NFHS") for values in told.values())
    assert all("7-2-7" in values["source"] for values in told.values())
    assert (told["W540"]["got"], told["W540"]["wanted"]) == ("2", "1")


def test_six_on_the_line_names_the_rule_of_each_code() -> None:
    sources = {}
    for code, men in (("canadian amateur", CAN_SIX), ("canadian professional", CAN_SIX),
                      ("professional", FIVE_BACK)):  # fmt: skip
        found = Case(code, "", men).compiled().diagnostics
        (one,) = [dict(d.values) for d in found if d.code[1:] == "520"]
        sources[code] = one["source"]
    assert "2019" in sources["canadian amateur"]
    assert "4-5-1" in sources["canadian professional"]
    assert "7-5-1" in sources["professional"] and "second-hand" in sources["professional"]
