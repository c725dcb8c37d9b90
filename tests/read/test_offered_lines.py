"""What a message offers to type is read: each row has a text that goes wrong, the line that does,
and what stands in its place once the coach has typed what the help says."""

from __future__ import annotations

from dataclasses import dataclass

import pytest
from corpus.mixing import compile_case

from read.newcomers import FILE, HOSTS, written
from stemline.diagnostics.catalogue.expected_forms import EXPECTED
from stemline.syntax.lines import KINDS


@dataclass(frozen=True)
class Offer:
    """``offered`` are lines that the message has between marks; "" takes the wrong one out."""

    name: str
    code: str
    text: str
    wrong: str
    offered: tuple[str, ...]
    also: tuple[tuple[str, str], ...] = ()

    def mended(self, line: str) -> str:
        text = self.text.replace(self.wrong, line)
        for old, new in self.also:
            text = text.replace(old, new)
        return text


RUN = """
run Z
    carrier is back
    carrier aims playside A
    line blocks on or climb
    everyone else blocks stalk

dress Z
    in Three Two
"""
PASS = """
concept K
    a is strong #1
    a runs hitch
    b is back
    b runs swing
    everyone else runs go
    feet 3
    read a on 3

dress K
    in Three Two
"""
HANDED = """
run Crossed
    carrier is back
    taker is weak #1
    quarterback hands to carrier
    carrier hands to taker{at}
    carrier aims playside A
    taker aims backside D
    line blocks on or climb
    everyone else blocks stalk

dress Crossed
    in {set}

formation Under extends Three Two
    Q at ball, under centre
"""
PASSED = """
concept B
    giver is back
    taker is weak #1
    taker runs go
    quarterback hands to giver
    giver hands to taker
    read strong #1 on 3
    strong #1 runs go
    everyone else runs seam
    feet 3

dress B
    in Three Two
"""
UNDER = HANDED.format(at=" at 5 deep, backside guard", set="Under").replace(
    "quarterback hands to carrier", "quarterback hands to carrier at 6 deep, backside end"
)
NEAR = "carrier hands to taker at 5 deep, backside guard"


def instead(
    name: str, text: str, line: str, wrong: str, *offered: str, code: str = "E404"
) -> Offer:
    """``line`` of a right text written wrong."""
    return Offer(name, "E404", text.replace(line, wrong, 1), wrong, offered)


OFFERS = (
    Offer(
        "no place", "E790", HANDED.format(at="", set="Three Two"), "carrier hands to taker", (NEAR,)
    ),
    Offer(
        "no place for a quarterback under centre",
        "E790",
        UNDER,
        "quarterback hands to carrier at 6 deep, backside end",
        ("quarterback hands to carrier at 3 deep, backside guard",),
    ),
    Offer(
        "a route that leads away",
        "E790",
        PASSED,
        "giver hands to taker",
        ("giver hands to taker at 5 deep, backside guard",),
        (("    taker runs go\n", ""),),
    ),
    Offer(
        "a second choice of a side",
        "E404",
        RUN.replace("run Z", "run Z\n    toward tight end or call"),
        "toward tight end or call",
        ("toward tight end",),
    ),
    Offer(
        "a side behind a comma",
        "E404",
        RUN + "\ntag Check for Z\n    kill to Crossers, away when 8 or more in box\n",
        "kill to Crossers, away when 8 or more in box",
        ("kill to Crossers away when 8 or more in box",),
    ),
    instead(
        "a side behind the end",
        RUN,
        "carrier aims playside A",
        "carrier aims outside the end, backside",
        "carrier aims backside outside the end",
    ),
    instead(
        "a side behind a gap",
        RUN,
        "carrier aims playside A",
        "carrier aims B, backside",
        "carrier aims backside B",
    ),
    Offer(
        "a second back",
        "E624",
        RUN.replace("Three Two", "Two") + "\nformation Two extends Three "
        "Two\n    H at call, 2 outside ball, 5 deep\n",
        "everyone else blocks stalk",
        ("every other back blocks lead",),
    ),
    Offer(
        "a look and a word",
        "E402",
        PASS + "    against Base, man\n",
        "against Base, man",
        ("against Base", "against man"),
    ),
    instead("each of two", PASS, "everyone else runs go", "outs is each #2", "each #2 runs go"),
    instead(
        "deep in a route",
        PASS,
        "b runs swing",
        "b runs swing to 5 outside tackle at 2 deep",
        "b runs swing to 5 outside tackle at 2",
        "b runs swing to 5 outside tackle at 2 behind",
    ),
    instead(
        "deep behind a route",
        PASS,
        "b runs swing",
        "b runs shoot 1 deep",
        "b runs shoot 1",
        "b runs shoot 1 behind",
    ),
    Offer(
        "deep in a stroke",
        "E404",
        "route Slip\n    stroke to 1 outside tackle at 4 deep then up 3",
        "stroke to 1 outside tackle at 4 deep then up 3",
        ("stroke to 1 outside tackle at 4 behind then up 3",),
    ),
    Offer(
        "behind in a set",
        "E404",
        "formation F extends Three Two\n    R at ball, 6 behind\n",
        "R at ball, 6 behind",
        ("R at ball, 6 deep",),
    ),
    Offer(
        "no place for a defender",
        "E489",
        "look L extends Base\n    D at tight end, weak, 2 deep\n",
        "D at tight end, weak, 2 deep",
        ("D at tight end, weak, 2 deep or outside end, weak, 2 deep",),
    ),
    Offer(
        "a word that is no place",
        "E481",
        "look L extends Base\n    F at roof\n",
        "F at roof",
        ("F at middle, 12 deep",),
    ),
)


@pytest.mark.parametrize("offer", OFFERS, ids=lambda o: o.name)
def test_what_a_message_offers_is_read(offer: Offer) -> None:
    told = compile_case("tried.play", offer.text)
    assert offer.code in told.codes, told.shown
    for line in offer.offered:
        assert f"`{line}`" in told.shown
        kept = f"{offer.wrong}\n    " if offer.code == "E624" else ""
        after = compile_case("tried.play", offer.mended(kept + line))
        assert not [code for code in after.codes if code.startswith("E")], after.shown


def test_each_form_that_is_shown_is_one_of_its_block() -> None:
    """Names apart, which are the coach's own."""
    for what, (kind, line) in EXPECTED.items():
        assert kind in KINDS, what
        if kind not in HOSTS or line.split()[0] in ("size", "windows", "Doubles"):
            continue  # a row under another line, or a block without a host
        found = [d for d in written(kind, line).definitions if d.span.source == FILE]
        assert not {d.code for d in found} & _FORMS, (what, line, [d.code for d in found])


_FORMS = frozenset(("E401", "E402", "E404", "E220", "E221", "E224", "E225", "E436", "E443"))
"""What is said of a line whose form is wrong."""
