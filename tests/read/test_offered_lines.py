"""What a message offers to type is read: each row has a text that goes wrong, the line that does,
and what stands in its place once the coach has typed what the help says."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass

import pytest
from corpus.mixing import compile_case
from corpus.small_run import RUN

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
TRICK = """
formation Ruff extends Three Two
    R at {from_}, 1 outside guard, 5 deep

concept Lost
    first is R
    taker is {side} #1
    quarterback hands to first
    first tosses to taker at 6 deep, {side} guard
    taker throws to quarterback or run
    quarterback runs shoot {from_} to 6 outside end at 4
    everyone else runs go

dress Lost
    in Ruff to both
"""
HALVES = """
concept K
    a is strong #1
    a runs hitch
    b is weak #1
    b runs slant
    everyone else runs go
    feet 3, hitch
    read a on 3
    read b on 3 with a > a on hitch > throw away when middle open

dress K
    in Three Two
    with {tag}
"""


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
        "a second back",
        "W624",
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
    Offer(
        "a letter for a role",
        "E453",
        PASS.replace("a is strong #1", "a is Z2"),
        "Z2",
        ("strong #1",),
    ),
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
        "W489",
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
    assert not {"E798", "W798"} & {*told.codes}, "one cause, one message"
    for line in offer.offered:
        assert f"`{line}`" in told.shown
        kept = f"{offer.wrong}\n    " if offer.code == "W624" else ""
        after = compile_case("tried.play", offer.mended(kept + line))
        assert not [code for code in after.codes if code.startswith("E")], after.shown
        assert offer.code not in after.codes, after.shown


@pytest.mark.parametrize(
    ("text", "line"),
    [
        (TRICK.format(from_="call", side="away"), "first aims away end"),
        (TRICK.format(from_="away", side="call"), "first aims call end"),
    ],
)
def test_who_gives_the_ball_on_is_told_to_run_on(text: str, line: str) -> None:
    told = compile_case("tried.play", text)
    assert "W790" in told.codes and f"`{line}`" in told.shown, told.shown
    hands = "    quarterback hands to first\n"
    after = compile_case("tried.play", text.replace(hands, f"{hands}    {line}\n"))
    assert "W790" not in after.codes, after.shown
    assert not [code for code in after.codes if code.startswith("E")], after.shown


def test_an_order_for_one_look_is_offered_as_a_tag_and_a_kill_to_it() -> None:
    told = compile_case("tried.play", HALVES.format(tag="plain"))
    assert told.codes == ["E413"], told.shown
    tags = re.findall(r"`(tag .*?)` with `(.*?)`", told.shown)
    assert [head for head, _ in tags] == ["tag Middle Open for K", "tag By Look for K"]
    order = "read b on 3 with a > a on hitch > throw away"
    assert [line for _, line in tags] == [order, "kill to K Middle Open when middle open"]
    mended = HALVES.format(tag="By Look").replace(f"    {order} when middle open\n", "")
    blocks = "".join(f"\n{head}\n    {line}\n" for head, line in tags)
    after = compile_case("tried.play", mended + blocks)
    assert not [code for code in after.codes if code.startswith("E")], after.shown


def test_a_side_by_the_middle_is_offered_as_a_tag_and_a_kill_to_it() -> None:
    wrong = HALVES.format(tag="plain").replace(" when middle open", "")
    wrong = wrong.replace("    read a on 3\n", "    pick side by middle open\n")
    told = compile_case("tried.play", wrong)
    assert told.codes == ["E413"], told.shown
    heads = re.findall(r"`(tag .*?)`", told.shown)
    assert heads == ["tag Middle Closed for K", "tag By Look for K"]
    (kill,) = re.findall(r"`(kill .*?)`", told.shown)
    mended = wrong.replace("    pick side by middle open\n", "").replace("plain", "By Look")
    blocks = f"\n{heads[0]}\n    read a on 3\n\n{heads[1]}\n    {kill}\n"
    after = compile_case("tried.play", mended + blocks)
    assert not [code for code in after.codes if code.startswith("E")], after.shown


WRITTEN: Mapping[str, tuple[tuple[str, str], ...]] = {
    "concept": (
        ("read mate at 3", "read mate on 3"),
        ("inner strong #3", "inner is strong #3"),
        ("everyone else go", "everyone else runs go"),
        ("mate runs post at 12 when man coverage", "mate runs post 12 when man"),
        ("mate runs dig at 12 then turns up 6", "mate runs dig 12 then up 6"),
        ("mate runs hook when they play zone", "mate runs hook when zone"),
        ("mate runs sit when man coverage", "mate runs sit when man"),
        ("spot top over ball", "spot top is over ball"),
        ("pair out man over mate", "pair out man above mate"),
        ("hot mate if two come", "pressure mate"),
        ("pressure mate on 3 > V on 3", "pressure mate on 3 > strong #2 on 3"),
        ("mate runs seam in Trips", "mate runs seam when Trips"),
        ("inside runs seam", "strong inside runs seam"),
        ("receivers run go", "everyone else runs go"),
        ("say Keep your eyes up, and run", 'say "Keep your eyes up, and run"'),
    ),
    "run": (
        ("carrier back", "carrier is back"),
        ("line blocks down then climb", "line blocks down or climb"),
        ("centre blocks", "centre blocks on or climb"),
        ("backside guard blocks pull to linebacker, kick",
         "backside guard blocks pull to linebacker or kick"),
        ("pull when he chases", "pull if he chases"),
        ("centre snaps to R", "centre snaps to back"),
        ("outside blocks crack", "playside outside blocks crack"),
        ("carrier hands inner at 5 deep", "carrier hands to inner at 5 deep"),
    ),
    "tag": (("swap near, far", "swap near with far"),),
    "route": (
        ("stroke 10 up", "stroke up 10"),
        ("stroke up 10 and in 5", "stroke up 10 then in 5"),
        ("depth of 12", "depth 12"),
    ),
    "formation": (
        ("Q at shotgun 5", "Q at ball, 5 deep"),
        ("line LT LG C RG RT", "line LT, LG, C, RG, RT"),
        ("B at left of Q, 5 deep", "B at beside Q, 5 deep"),
    ),
    "motion": (
        ("H moves across formation", "H moves to away, 2 outside tackle"),
        ("H moves to away, 2 outside tackle then return",
         "H moves to away, 2 outside tackle then back"),
    ),
    "protection": (
        ("toward back away", "toward away from back"),
        ("line blocks inside to outside", "line blocks scan inside out"),
        ("back blocks edge, playside", "back blocks playside edge"),
        ("fullback blocks scan near linebacker then far linebacker",
         "fullback blocks scan near linebacker > far linebacker"),
    ),
    "look": (
        ("T in 3 technique, strong", "T in 3, strong"),
        ("E in 5", "E in 5, weak"),
        ("H at #2, 8 deep", "H at weak #2, 8 deep"),
        ("shows cover 2", "shows middle open"),
        ("W at back, 4 deep", "W at ball, 4 deep"),
        ("C covers man on strong #1", "C covers man, strong #1"),
    ),
    "dress": (
        ("never Jet from Doubles", "never Jet in Doubles"),
        ("best from left hash or right hash", "best from left hash, right hash"),
        ("with X fade", "with X runs fade"),
        ("in Doubles, Trips only to right", "in Trips to right"),
        ("call Doubles Right Stick Comet", "call Doubles Right Stick as Comet"),
    ),
    "playbook": (("house gun 4", "house gun is 4"),),
    "personnel": (("H is 88", "H is slot, 88"),),
}  # fmt: skip
"""By kind of block what a coach writes who half remembers, and what he is told to type."""


@pytest.mark.parametrize("kind", WRITTEN)
def test_a_half_remembered_line_is_told_its_form(kind: str) -> None:
    wrong, right = zip(*WRITTEN[kind], strict=True)
    told = [dict(d.values) for d in written(kind, *wrong).definitions if d.code == "E404"]
    answers = {values["found"]: values["answer"] for values in told}
    for line, typed in WRITTEN[kind]:
        assert f"`{typed}`" in answers.get(line, ""), line
    found = [d for d in written(kind, *right).definitions if d.span.source == FILE]
    assert not {d.code for d in found} & _FORMS, [(d.code, d.values) for d in found]


def test_a_call_behind_its_heading_is_told_once() -> None:
    found = written("week", "openers Doubles Right Stick").definitions
    assert [d.code for d in found if d.span.source == FILE] == ["E404"]


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
