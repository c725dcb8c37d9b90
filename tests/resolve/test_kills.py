"""Two plays at the line: what a call becomes, made and proved from the same men and places."""

from __future__ import annotations

import pytest
from lineup.look_texts import FRONT

from resolve.shipped_books import BOOKS, shipped
from resolve.texts import THREE_TWO, TWELVE, compiled, dress, said
from stemline.describe.spoken_play import describe
from stemline.football.play import Play
from stemline.resolve.kills import kills_of
from stemline.session import Session

RUN = """
run Dive
    carrier is back
    carrier aims playside A
    line blocks on or climb
    everyone else blocks stalk
{}
concept Slants
    slant is strong #1
    slant runs slant
    hitch is weak #1
    hitch runs hitch
    everyone else runs go
    flat is back
    flat blocks inside out
    feet quick
    read slant on quick > hitch on quick

tag Go for Slants
    slant runs go
    keeps feet

run Away
    carrier is back
    carrier aims playside C
    line blocks reach or climb
    everyone else blocks stalk
    toward call
"""
PRESSED = "look Pressed extends Front\n    C at strong #1, 2 deep\n    B at weak #1, 2 deep\n"


def made(*kills: str, tag: str = "", dressed: str = "with plain", settings: str = "") -> Session:
    lines = "".join(f"    kill {kill}\n" for kill in kills)
    return compiled(
        TWELVE + settings, THREE_TWO, RUN.format(lines), FRONT + PRESSED + tag,
        dress("Three Two", dressed, concept="Dive"),
    )  # fmt: skip


def codes(session: Session) -> list[str]:
    """All but that some of these concepts are not dressed up."""
    return [d.code for d in session.diagnostics if d.code != "W710"]


def drawn(session: Session, call: str = "Three Two Right Dive") -> Play:
    assert codes(session) == [], said(session.diagnostics)
    assert session.season is not None
    return next(p for p in session.season.plays if p.call.spoken == call)


def test_the_second_play_stands_where_the_first_does_and_is_no_call() -> None:
    session = made("to Slants when press")
    play = drawn(session)
    (second,) = play.becomes
    assert (second.word, second.words, second.when) == ("Kill", "Slants", "press")
    assert second.looks == ("Pressed",)
    assert [m.snap for m in second.play.men] == [m.snap for m in play.men]
    assert second.play.ball is play.ball
    assert [read.target for read in second.play.reads] == ["slant", "hitch"]
    assert len(session.calls.orders) == 2
    assert "Kill: Slants when press: pass, reads 1 slant (Z) on quick" in describe(play)


def test_a_playbook_has_its_own_word() -> None:
    settings = TWELVE.replace("    version 1\n", '    version 1\n    kill word "Anchor"\n')
    session = compiled(
        settings, THREE_TWO, RUN.format("    kill to Slants when press\n"), FRONT + PRESSED,
        dress("Three Two", concept="Dive"),
    )  # fmt: skip
    assert drawn(session).becomes[0].headed == "Anchor: Slants"


def test_a_tag_kills_any_run_and_its_own_line_stands_before_the_runs() -> None:
    tag = """
tag Kill Slants for any run
    kill to Slants Go when press
    kill to Away when 7 in box
"""
    session = made("to Away when 8 in box", tag=tag, dressed="with plain, Kill Slants")
    assert [k.when for k in drawn(session).becomes] == ["8 in box"]
    tagged = drawn(session, "Three Two Right Dive Kill Slants").becomes
    assert [(k.words, k.when, k.tag) for k in tagged] == [
        ("Slants Go", "press", "Kill Slants"), ("Away", "7 in box", "Kill Slants"),
    ]  # fmt: skip


def test_a_run_goes_to_the_other_side_and_its_men_stay() -> None:
    session = made("to Away away when press", "to Dive away when 9 in box")
    right, left = drawn(session), drawn(session, "Three Two Left Dive")
    for play in (right, left):
        for second in play.becomes:
            assert play.toward is not None and second.play.toward is play.toward.other
            assert [m.at for m in second.play.men] == [m.at for m in play.men]
    # Against a look that he kills it on, where there is one.
    assert right.becomes[0].play.defence is not None
    assert right.becomes[0].play.defence.name == "Pressed"
    # And no front where no look shows it: a picture of the base look would be one he never kills.
    assert right.becomes[1].looks == () and right.becomes[1].play.defence is None


@pytest.mark.parametrize("team", BOOKS)
def test_a_second_plays_picture_shows_a_look_that_he_kills_on(team: str) -> None:
    session = shipped(team)
    assert session.book is not None
    orders = [o for o in session.calls.by_name.values() if kills_of(session.book, o)]
    seen = 0
    for play in (session.drawn(order)[0] for order in orders):
        assert play is not None
        for second in play.becomes:
            look = second.play.defence
            assert look is None or look.name in second.looks
            if look is not None and "in box" in second.when:
                line = [m.snap.x for m in play.men if m.on_line and abs(m.snap.x) < 4.6]
                box = sum(
                    min(line) - 2 <= d.at.x <= max(line) + 2 and d.at.y <= 6 for d in look.defenders
                )
                figure = int(second.when.split()[0])
                assert box <= figure if "fewer" in second.when else box >= figure, second.when
            elif look is not None:
                assert look.name.casefold() == second.when.casefold()
            seen += 1
    assert seen


@pytest.mark.parametrize(
    ("kills", "code"),
    [
        (["Slants when press"], "E761"),
        (["to Slants to Away when press"], "E761"),
        (["to Slants"], "E762"),
        (["to Slants when 8 in bix"], "E763"),
        (["to Slants when weak corner deep"], "E763"),
        (["to Slants when Zero"], "E763"),
        (["to Slats when press"], "E310"),
        (["to Slants Og when press"], "E764"),
        (["to Dive when press"], "E767"),
        (["to Slants when 6 in box", "to Away when press"], "E766"),
        (["to Slants when 7 or more in box", "to Away when 9 in box"], "E766"),
        (["to Slants when press", "to Slants when zone"], "E420"),
    ],
)
def test_what_is_refused(kills: list[str], code: str) -> None:
    session = made(*kills)
    assert codes(session) == [code], said(session.diagnostics)


def test_counts_of_the_box_that_no_look_joins_stand_side_by_side() -> None:
    assert codes(made("to Slants when 7 or more in box", "to Away when 5 or fewer in box")) == []


def test_a_second_play_that_the_set_does_not_serve_is_refused_as_a_call_is() -> None:
    tag = (
        "\nconcept Fours\n    four is strong #4\n    four runs go\n    feet 3\n    read four on 3\n"
    )
    session = made("to Fours when press", tag=tag)
    (found,) = {d.code: d for d in session.diagnostics if d.is_error}.values()
    assert "killed to Fours" in dict(found.values)["call"]
    assert session.season is not None and session.season.plays == ()


def test_a_kill_of_a_kill_is_refused() -> None:
    tag = "\ntag More for Slants\n    kill to Away when 5 in box\n"
    assert codes(made("to Slants More when press", tag=tag)) == ["E765"]
