"""One cause is told once, where it is; and a man is looked at by his route, whatever names him."""

from __future__ import annotations

from resolve.texts import DOUBLES_ELEVEN, ELEVEN, codes, compiled, dress, play

from read.newcomers import FILE, written
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.source import Source
from stemline.syntax.parser import parse

BY_LETTERS = """
concept Test
    Z runs curl 12
    X runs post
    S, W runs seam
    R runs flat same side as curl
    feet 3
    read curl on 3 > post
"""


def _told(kind: str, *lines: str) -> list[Diagnostic]:
    found = written(kind, *lines).definitions
    return [d for d in found if d.span.source == FILE]


def test_a_tag_for_nothing_is_not_unknown_as_well() -> None:
    tag = "tag Bare\n    R runs swing\n"
    made = dress("Doubles with Bare", concept="Test")
    result = compiled(ELEVEN, DOUBLES_ELEVEN, BY_LETTERS, tag, made)
    assert [code for code in codes(result) if code.startswith("E")] == ["E210"]


def test_a_lineman_in_motion_breaks_one_rule() -> None:
    motion = "motion Guard\n    LG moves to call, 3 outside tackle, 2 deep\n    snap running\n"
    made = dress("Doubles motion Guard", concept="Test")
    result = compiled(ELEVEN, DOUBLES_ELEVEN, BY_LETTERS, motion, made)
    rules = [code for code in codes(result) if code[1] == "5"]
    assert len(rules) == 1 and rules[0][1:] == "522"


def test_a_misspelt_rest_is_offered_in_a_tag() -> None:
    (told,) = [d for d in _told("tag", "read flat on quick > rset") if d.code == "E464"]
    assert told.nearest == ("rest",)
    (told,) = [d for d in _told("concept", "read mate > rset") if d.code == "E464"]
    assert "rest" not in told.nearest  # a concept has no order behind its own


def test_a_quote_that_was_never_opened_is_told_as_a_quote() -> None:
    _, (told,) = parse(Source("t.play", 'concept A\n    say Go now! And hold it."\n'))
    assert (told.code, told.span.column, told.span.end) == ("E126", 9, 30)


def test_a_route_that_a_letter_runs_names_him() -> None:
    result = compiled(ELEVEN, DOUBLES_ELEVEN, BY_LETTERS, dress("Doubles", concept="Test"))
    assert not [code for code in codes(result) if code.startswith("E")]
    shown = play(result, "Doubles Right Test")
    assert [read.men for read in shown.reads] == [("Z",), ("X",)]
    back, curl = (shown.assignment(man).path for man in "RZ")
    assert back is not None and curl is not None and back.end.x * curl.end.x > 0


def test_a_name_for_two_is_each_of_the_two() -> None:
    wides = "wides are each #1\n    wides runs curl 12"
    pair = BY_LETTERS.replace("Z runs curl 12\n    X runs post", wides)
    pair = pair.replace("read curl on 3 > post", "read wides on 3")
    each = pair.replace("    wides are each #1\n", "").replace("wides runs", "each #1 runs")
    each = each.replace("read wides", "read strong #1")
    shown = [
        play(compiled(ELEVEN, DOUBLES_ELEVEN, text, dress("Doubles", concept="Test")),
             "Doubles Right Test")
        for text in (pair, each)
    ]  # fmt: skip
    jobs = [{a.man: a.job for a in one.assignments} for one in shown]
    assert jobs[0] == jobs[1] and [r.men for r in shown[0].reads] == [("Z",)]


def test_a_man_of_an_each_may_be_read_as_the_call_counts_him() -> None:
    """`call #1` is the strong one where the call goes to the strong side, else the weak one."""
    text = "concept Test\n    each #1 runs slant\n    flat is back\n    flat runs swing weak\n"
    text += "    feet quick, reset\n    read flat on quick > {} #1 on reset\n"
    for side, men in (("call", {"Z"}), ("away", {"X"})):
        each = compiled(ELEVEN, DOUBLES_ELEVEN, text.format(side), dress("Doubles", concept="Test"))
        assert not [d for d in each.diagnostics if d.code == "E464"]
        shown = play(each, "Doubles Right Test")
        assert {man for read in shown.reads for man in read.men} - {"R"} == men
