"""A coach's words by man, position, look and spot: each printed where it may hold."""

from __future__ import annotations

import pytest
from lineup.look_texts import FRONT

from resolve.texts import QUADS, THREE_TWO, TWELVE, codes, compiled, dress, said
from stemline.football.field import BallSpot
from stemline.resolve.expand import expand
from stemline.session import Session

CURL = """
concept Curl
    curl is strong #1
    curl runs curl
    each #2 runs seam
    out is strong inside
    out runs out
    everyone else runs go
    back blocks inside out
    feet 5
    read curl on 5 > out on 5
{}
"""
PRESSED = "look Pressed extends Front\n    C at strong #1, 2 deep\n    B at weak #1, 2 deep\n"


def made(*lines: str, tag: str = "", dressed: str = "with plain") -> Session:
    text = CURL.format("".join(f"    {line}\n" for line in lines)) + tag
    where = dress("Three Two, Quads", dressed, concept="Curl")
    return compiled(TWELVE, THREE_TWO, QUADS, text, FRONT + PRESSED, where)


def told(
    session: Session, call: str = "Three Two Right Curl", look: str = ""
) -> dict[str, tuple[str, ...]]:
    """Every man's words, of those who have some."""
    assert codes(session) == [], said(session.diagnostics)
    assert session.book is not None
    order = session.calls.by_name[call]
    play, _ = expand(session.book, order, BallSpot.MIDDLE, (), look)
    assert play is not None
    return {a.man: a.says for a in play.assignments if a.says}


OUT = """
protection Out
    toward SIDE
    playside guard, centre blocks set and release
    backside guard, line blocks man
"""


@pytest.mark.parametrize(
    ("line", "men"),
    [
        ('playside guard says "Out."', {"RG"}),
        ('backside tackle says "Out."', {"LT"}),
        ('centre says "Out."', {"C"}),
        ('playside guard, centre says "Out."', {"RG", "C"}),
        ('line says "Out."', {"LT", "LG", "C", "RG", "RT"}),
        ('guards says "Out."', {"LG", "RG"}),
        ('guards say "Out."', {"LG", "RG"}),
        ('both tackles say "Out."', {"LT", "RT"}),
    ],
)
def test_a_lineman_is_spoken_to_by_his_place_in_a_pass_too(line: str, men: set[str]) -> None:
    """With whatever protection, a built-in one or his own."""
    protected = made(line, "protect Out", tag=OUT.replace("SIDE", "strong"))
    for session in (made(line), made(line, "protect screen"), protected):
        assert {m for m, says in told(session).items() if says == ("Out.",)} == men


@pytest.mark.parametrize(("side", "man"), [("strong", "RG"), ("weak", "LG")])
def test_the_playside_of_a_word_is_that_of_the_protection(side: str, man: str) -> None:
    """Said in the concept or in the protection, it is to the same man."""
    line, out = 'playside guard says "Out."', OUT.replace("SIDE", side)
    for session in (
        made(line, "protect Out", tag=out), made("protect Out", tag=f"{out}    {line}\n"),
    ):  # fmt: skip
        assert {m for m, says in told(session).items() if "Out." in says} == {man}


def test_the_quarterback_and_positions_and_the_line_are_spoken_to() -> None:
    session = made(
        'quarterback says "Eyes up."', 'every slotback says "Inside release."',
        'linemen says "Thick."', 'curl says "Push to twelve."',
    )  # fmt: skip
    words = told(session)
    assert {m for m, says in words.items() if says == ("Inside release.",)} == {"H", "S", "W"}
    assert {m for m, says in words.items() if says == ("Thick.",)} == {"LT", "LG", "C", "RG", "RT"}
    assert (words["Q"], words["Z"]) == (("Eyes up.",), ("Push to twelve.",))
    assert session.season is not None
    quarterback = session.season.plays[0].assignment("Q")
    assert quarterback.role == ""  # spoken to, he has no role for it


def test_a_look_decides_a_word_and_several_may_hold() -> None:
    session = made(
        'quarterback says "Eyes up."', 'quarterback says "Back shoulder." when press',
        'curl says "Sit." when off', 'curl says "Drive him off." when off, middle closed',
    )  # fmt: skip
    open_ = told(session)
    assert open_["Q"] == ("Eyes up.", "When press: Back shoulder.")
    assert open_["Z"] == ("When off: Sit.", "When off, middle closed: Drive him off.")
    pressed, off = told(session, look="pressed"), told(session, look="front")
    assert pressed["Q"] == ("Eyes up.", "Back shoulder.") and "Z" not in pressed
    assert off["Q"] == ("Eyes up.",) and off["Z"] == ("Sit.", "Drive him off.")


def test_a_shape_is_settled_by_the_set_and_a_spot_is_said() -> None:
    session = made(
        'out says "Alone." when 4x1, press', 'each #2 says "Wide." when into boundary',
        'say "Short throw." when into boundary', 'say "Four." when 4x1',
    )  # fmt: skip
    assert "Alone." not in str(told(session))
    quads = told(session, "Quads Right Curl")
    assert any(says == ("When press: Alone.",) for says in quads.values())
    three = told(session)
    assert list(three.values()) == [("When into boundary: Wide.",)] * 2
    assert session.season is not None
    assert session.season.concepts[0].says == (
        "When into boundary: Short throw.", "When 4x1: Four.",
    )  # fmt: skip


def test_a_tags_note_adds_and_calls_nobody_away() -> None:
    tag = '\ntag Slow for Curl\n    quarterback says "Slow feet."\n    weak #1 says "Wait."\n'
    session = made('quarterback says "Eyes up."', tag=tag, dressed="with plain, Slow")
    words = told(session, "Three Two Right Curl Slow")
    assert words["Q"] == ("Eyes up.", "Slow feet.") and words["X"] == ("Wait.",)
    assert session.season is not None
    slow = next(p for p in session.season.plays if p.call.tags)
    assert slow.called_away == ()


@pytest.mark.parametrize(
    ("line", "code", "values"),
    [
        ('every wing says "Go."', "E771", ("found", "wing")),
        ('every slotbak says "Go."', "E771", ("found", "slotbak")),
        ("every slotback runs go when press", "E772", ("line", "`each #2 runs go when press`")),
        ("linemen blocks slide", "E772", ("line", "`line blocks slide`")),
    ],
)
def test_what_is_refused(line: str, code: str, values: tuple[str, str]) -> None:
    (found,) = made(line).diagnostics
    assert found.code == code and values in found.values


def test_a_word_for_a_look_that_nobody_shows() -> None:
    texts = (TWELVE, THREE_TWO, CURL.format('    curl says "Fade." when press\n'))
    where = dress("Three Two", concept="Curl")
    assert codes(compiled(*texts, FRONT, where)) == ["W771"]
    assert codes(compiled(*texts, where)) == []
    assert codes(compiled(*texts, FRONT, where + "\n    against press")) == []
