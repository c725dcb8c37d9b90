"""A coach's own words: each is read, or answered with the line to type, and that line is read.

What the words mean is common practice; no published source.
"""

from __future__ import annotations

import re

import pytest
from together import together

from read.newcomers import FILE, written
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.football.offence.routes import LIBRARY
from stemline.read.coach_lines import _ROUTE_OF
from stemline.read.newcomer_lines import _ROUTE_VERB
from stemline.read.own_words import advised

READ = [
    ("run", "FB blocks kick end man on line"),
    ("run", "each guard blocks pull"),
    ("run", "TE blocks down"),
    ("run", 'FB says "Square up."'),
    ("concept", "tight end runs flat"),
    ("concept", "TE runs flat"),
    ("concept", "strong TE runs flat"),
    ("concept", "RB runs swing"),
    ("concept", "TB runs swing away from mate"),
    ("concept", "tailback runs swing"),
    ("concept", "wingback runs flat"),
    ("concept", "mate runs hitch"),
    ("concept", "read mate > throw away"),
    ("concept", "read mate > out man > run or throw away"),
    ("tag", "RB runs wheel"),
    ("run", "playside tackle blocks double with tight end then near linebacker"),
    ("protection", "back blocks scan near linebacker > far linebacker"),
    ("protection", "FB blocks playside edge"),
    ("concept", "read mate on quick > throw it away"),
    ("concept", "read mate, out man"),
    ("concept", "RB fakes inside zone"),
    ("concept", "mate runs post across the ball"),
    ("concept", "back blocks weak edge"),
    ("concept", "everyone else blocks"),
    ("run", "fullback fakes dive"),
    ("run", "key the backside end"),
    ("concept", "back blocks inside out then swing weak"),
    ("concept", "back checks then swings weak"),
    ("protection", "everyone else blocks"),
    ("protection", "back blocks nobody"),
    ("concept", "everyone else runs vertical"),
    ("run", "both guards pull"),
    ("run", "left guard pulls"),
    ("run", "backside guard pulls and kicks"),
    ("run", "fullback kicks out the end"),
    ("concept", "read hitch > slant"),
    ("run", "playside line blocks down or climb"),
    ("run", "backside guard, backside tackle pull"),
    ("run", "quarterback keeps if he widens"),
    ("concept", "back swings weak"),
    ("concept", "quarterback drops 5"),
    ("run", "read the end"),
    ("concept", "quarterback reads mate, out man"),
    ("concept", "mate runs drag 4"),
    ("look", "M, W rush A, strong"),
    ("look", "C covers strong #1 or flat, strong"),
    ("look", "F is free"),
    ("look", "C at strong #1, press"),
    ("look", "S blitzes off the edge, strong"),
    ("protection", "playside guard, centre slide"),
    ("formation", "H behind Y"),
    ("formation", "B beside Q"),
    ("concept", "QB rolls right"),
    ("concept", "back stays in to block"),
    ("concept", "pressure mate"),
    ("concept", "hot mate"),
    ("run", "carrier aims playside B gap"),
    ("run", "carrier aims B, backside"),
    ("run", "fullback blocks kick the end"),
    ("run", "fullback blocks lead on the first linebacker"),
    ("run", "playside guard leaves and climbs to near linebacker"),
    ("look", "C covers flat"),
    ("look", "C covers man"),
    ("look", "E drops to hook, strong"),
    ("look", "F plays centre field"),
    ("look", "N over centre"),
    ("formation", "H at call, wing, off line"),
    ("formation", "R at call, behind tackle, 4 deep"),
    ("protection", "back stays in"),
    ("dress", "in Doubles right, left"),
    ("dress", "in all to both"),
    ("dress", "in all but Trips"),
    ("dress", "in Doubles to left and right"),
    ("dress", "in Doubles and Trips motion Jet and none"),
    ("dress", "not in Trips"),
    ("formation", "Q under centre"),
    ("formation", "H at call, tight end, on line"),
    ("formation", "H at call, half way between Y and Z, off line"),
    ("protection", "slide left"),
    ("protection", "back, fullback blocks the edges"),
    ("concept", "back blocks scan"),
    ("concept", "back runs swing to the weak side"),
    ("concept", "back runs flat to the mate side"),
    ("concept", "back runs flat to the hitch side"),
    ("concept", "weak #1 runs drag across"),
    ("concept", "weak #1 runs sit over the ball at 8"),
    ("concept", "weak #1 runs sit 8 over the middle"),
    ("concept", "weak #1 runs post over the top"),
    ("concept", "weak #1, weak #2 runs seams"),
    ("concept", "everyone else runs off"),
    ("concept", "back runs check down"),
    ("concept", "wides are each #1"),
    ("concept", "weak #1 runs over 18 settle"),
    ("concept", "weak #1 runs over 18 and sit down"),
    ("concept", "weak #1 runs hook 6 at 2 outside tackle"),
    ("concept", "weak #1 runs smash"),
    ("concept", "back runs flat away from call"),
    ("concept", "quarterback throws to mate, weak #1 or run"),
]

ANSWERED = [
    ("concept", "weak #1 runs slant when corner outside",
     'weak #1 runs slant & weak #1 says "Corner outside: slant."'),
    ("concept", "weak #1 runs out 6 if he is inside",
     'weak #1 runs out 6 & weak #1 says "He is inside: out 6."'),
    ("concept", "back blocks overhang then shoot weak", "back runs check overhang then shoot weak"),
    ("concept", "join Inside Zone and inside zone", "join run Inside Zone · join run inside zone"),
    ("concept", "back fakes away", "join run Inside Zone · toward away"),
    ("concept", "back leads the way and blocks edge", "back blocks edge"),
    ("concept", "back blocks edge strong", "back blocks strong edge"),
    ("run", "pitch if he takes the quarterback", "pitch to back if he takes the quarterback"),
    ("concept", "swing back", "back runs swing"),
    ("look", "M rushes A and B, strong", "M rushes A, strong"),
    ("concept", "weak #1 runs cross 5 under mate", "weak #1 runs cross 5"),
    ("concept", "weak #1 runs corner 12 behind him", "weak #1 runs corner 12"),
    ("concept", "weak #1 runs cross 6 and sets the depth",
     'weak #1 runs cross 6 & weak #1 says "Set the depth."'),
    ("concept", "backside slot runs cross", "weak inside runs cross"),
    ("concept", "if the corner sinks, throw the hitch", "read hitch"),
    ("concept", "H blocks", "H blocks inside out · H blocks stalk"),
    ("concept", "weak #1 runs 6 yard option",
     "weak #1 runs sit 6 when zone · weak #1 runs out 6 when man"),
    ("concept", "nobody blocks", "protect five"),
    ("concept", "mate blocks the corner", "mate blocks stalk corner"),
    ("protection", "back has Will", "back blocks scan near linebacker"),
    ("protection", "back blocks the backside end", "back blocks backside edge"),
    ("protection", "back blocks blitzers", "back blocks scan"),
    ("look", "M at call, 2 outside ball, 4 deep", "M at strong, 2 outside ball, 4 deep"),
    ("tag", "keeps the rest", "keeps read, feet"),
    ("concept", "mate blocks chip", "mate runs check then swing"),
    ("concept", "read mate, out man > hitch",
     "read mate > out man > hitch · read mate with out man > hitch"),
    ("motion", "H goes in and back out", "H moves 3 inside then back"),
    ("motion", "H in jet motion to call", "H moves to call, 2 outside tackle"),
    ("motion", "H goes behind the quarterback",
     "H moves to ball, 7 deep then to away, 4 outside tackle"),
    # kind, his line, the line or lines to type
    ("concept", "split end runs go", "weak #1 runs go"),
    ("concept", "wide receiver runs go", "strong #1 runs go · weak #1 runs go · each #1 runs go"),
    ("concept", "halfback runs flat", "back runs flat · wing runs flat"),
    ("concept", "V runs slant", "strong #2 runs slant"),
    ("concept", "#1 runs slant", "strong #1 runs slant · weak #1 runs slant · each #1 runs slant"),
    ("concept", "5 step drop", "feet 5"),
    ("concept", "read mate > QB scrambles", "read mate > run"),
    ("concept", "if press out man runs fade", "out man runs fade when press"),
    ("concept", "out man runs fade vs press", "out man runs fade when press"),
    ("concept", "out man runs fade when cover 2", "out man runs fade when middle open"),
    ("concept", "weak #1 runs 10 yard out", "weak #1 runs out 10"),
    ("concept", "protection is six", "protect six"),
    ("concept", "out man runs out 12 metres", "out man runs out 13"),
    ("concept", "out man runs out 12 yrds", "out man runs out 12"),
    ("concept", "out man is weak number one", "out man is weak #1"),
    ("concept", "number two strong runs go", "strong #2 runs go"),
    ("concept", "strong number two runs go", "strong #2 runs go"),
    ("concept", "alert mate if middle open", "alert mate when middle open"),
    ("concept", "out man runs fade when 2 by 2", "out man runs fade when 2x2"),
    ("concept", "feet 5 hitch reset", "feet 5, hitch, reset"),
    ("run", "aims right 6 hole", "toward right & carrier aims playside C"),
    ("run", "carrier aims 26", "toward right & carrier aims playside C"),
    ("run", "carrier aims 3 hole", "toward left & carrier aims playside B"),
    ("run", "carrier runs A gap", "carrier aims playside A"),
    ("run", "check to Stick when press", "kill to Stick when press"),
    ("run", "QB audibles to Stick against 8 in box", "kill to Stick when 8 in box"),
    ("run", "kill to Stick, when press", "kill to Stick when press"),
    ("look", "nose at 0", "N at 0"),
    ("look", "will at 30, weak", "W at 30, weak"),
    ("look", "sam at 9, strong", "S at 9, strong"),
    ("look", "mike blitzes", "M rushes A, either"),
    ("look", "F covers deep", "F covers third, strong · F covers third, middle · "
     "F covers half, strong · F covers quarter, strong"),
    ("look", "E at 5 technique, strong", "E at 5, strong"),
    ("look", "C man on #1", "C covers man, strong #1"),
    ("dress", "in all, but Trips", "in all but Trips"),
    ("dress", "in Doubles, Trips, to right", "in Doubles, Trips to right"),
    ("dress", "in every formation", "in all"),
    ("dress", "to both sides", "to both"),
    ("dress", "only from left hash", "from left hash"),
    ("concept", "weak #1 runs pivot", "weak #1 runs whip"),
    ("concept", "weak #1 runs fade outside numbers", "weak #1 runs fade to 1 outside numbers"),
    ("concept", "weak #1 runs fade 18 outside the numbers",
     "weak #1 runs fade to 1 outside numbers at 18"),
    ("concept", "weak #1 runs out 5 inside sideline",
     "weak #1 runs out to 5 inside sideline · weak #1 runs out to 1 inside sideline at 5"),
    ("dress", "in Doubles with plane to both", "in Doubles with plain to both"),
    ("motion", "H moves left", "H moves to away, 2 outside tackle"),
    ("motion", "H moves to 2 outside tackle",
     "H moves to call, 2 outside tackle · H moves to away, 2 outside tackle"),
    ("formation", "H at call, 4.6 metres outside tackle", "H at call, 5 outside tackle"),
    ("formation", "B at I, 7 deep", "B at ball, 7 deep"),
    ("personnel", "X is WR", "X is wideout"),
    ("week", "3rd and long", "situation 3rd and 7 or more"),
    ("playbook", "code 11 man", "code high school"),
]  # fmt: skip

FORMS = re.compile(r"E(2\d\d|31\d|32\d|4[0134578]\d|67\d|690)")
"""The codes of words that are not understood; a line may clash with the block around it."""


def told(kind: str, *lines: str) -> list[Diagnostic]:
    found = written(kind, *lines).definitions
    return [d for d in found if d.span.source == FILE and d.is_error]


@together(("kind", "line"), READ)
def test_it_is_read(kind: str, line: str) -> None:
    assert not [d for d in told(kind, line) if FORMS.fullmatch(d.code) and d.code != "E420"]


@together(("kind", "line", "lines"), ANSWERED)
def test_it_is_answered_with_the_line_to_type(kind: str, line: str, lines: str) -> None:
    (said,) = [d for d in told(kind, line) if d.code == "E404"]
    values = dict(said.said.values)
    assert values["found"] == line
    typed = re.findall(r"`([^`]+)`", values["answer"])
    assert typed == re.split(r" & | · ", lines)


@together(("kind", "line", "lines"), ANSWERED)
def test_what_is_to_be_typed_is_read(kind: str, line: str, lines: str) -> None:
    for choice in lines.split(" · "):
        found = told(kind, *choice.split(" & "))
        assert not [d.code for d in found if FORMS.fullmatch(d.code) and d.code != "E420"], choice


def test_a_name_that_is_a_word_of_the_notation_is_answered_with_its_quotes() -> None:
    (said,) = [d for d in told("dress", "in Doubles with Now or Never") if d.code == "E404"]
    assert '`in Doubles with "Now or Never"`' in dict(said.said.values)["answer"]


def test_a_man_by_his_coach_s_name_is_the_man_of_the_rule() -> None:
    concept = ("concept", "TE runs flat", "RB runs swing away from TE", "feet 3", "read TE on 3")
    made = written(*concept, "", "dress Tried", "in Trips")
    assert made.season is not None
    play = next(p for p in made.season.plays if p.call.concept == "Tried")
    assert [play.assignment(man).role for man in "BY"] == ["back", "tight end"]
    assert play.reads[0].men == ("Y",)


@together(
    ("word", "rule"),
    [
        *((word, "back") for word in ("RB", "TB", "tailback")),
        *((word, "wing") for word in ("WB", "wingback")),
        ("FB", "fullback"),
        ("TE", "tight end"),
        ("QB", "quarterback"),
    ],
)
def test_each_of_his_words_is_one_rule(word: str, rule: str) -> None:
    book = written("concept", f"{word} runs flat", f"other is {word}", "other runs go").book
    assert book is not None
    rules = book.concepts["tried"].body.rules
    assert rule in rules and rules["other"][0].value.words == (rule,)


def test_a_role_of_his_own_by_such_a_name_stays_his_role() -> None:
    found = told("concept", "TE is weak #1", "TE runs slant")
    assert not found


@pytest.mark.parametrize(
    ("kind", "line"),
    [
        ("concept", "mate runs slatn"),
        ("run", "pull if he takes the back"),
        ("run", "key overhang"),
        ("concept", 'say "QB rolls right"'),
        ("dress", 'in "All In, but One"'),
    ],
)
def test_a_line_of_the_notation_is_left_alone(kind: str, line: str) -> None:
    assert advised(kind, line) == ""


def test_no_route_is_answered_with_another() -> None:
    """A word that has become a route goes from the tables of coaches' words."""
    assert LIBRARY.keys().isdisjoint({*_ROUTE_OF, *_ROUTE_VERB})
