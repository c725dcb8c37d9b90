"""A pass that joins a run: who goes out, who fakes, and what it is drawn against."""

from __future__ import annotations

import pytest
from resolve.texts import codes, compiled, dress, play

from stemline.football.field import Side
from stemline.football.play import Play
from stemline.session import Session

BOOK = """
playbook Cedar Flats Lanterns
    version 1
    code high school

personnel Eleven
    Q is quarterback, right hand
    R is back
    X, Z is wideout
    H is slot
    Y is tight end

formation Trey
    X at away, numbers, on line
    Y at call, end, on line
    H at call, between Y and Z, off line
    Z at call, numbers, off line
    R at away, 2 outside ball, 5 deep
    Q at ball, 5 deep

look Even
    E at 5, strong
    T at 3, strong
    N at 1, weak
    J at 5, weak
    M at 10, strong
    W at 30, weak
    S at apex or outside end, strong, 5 deep
    C at strong #1, 7 deep
    B at weak #1, 7 deep
    F at middle, 12 deep
    D at hash, weak, 10 deep
    C covers third, strong
    F covers third, middle
    B covers third, weak
    S covers curl, strong
    M covers hook, strong
    W covers hook, weak
    D covers curl, weak
"""

RUN = """
run Zone
    carrier is back
    carrier aims playside A
    carrier says "Bang it."
    line blocks on or climb
    playside end blocks reach
    outside, second is playside outside or nobody
    outside, second blocks stalk
    far is backside outside or nobody
    far blocks stalk
    feet fake, boot
"""

PASS = """
concept Pop
    join run Zone
    go is strong #1
    go runs go
    slot is strong #2
    slot runs flat
    pop is {rule}
    {pop}
    lone is weak #1
    lone runs slant
    {line}
    feet fake, set
    read {read} on set
"""


def passing(
    pop: str = "pop runs corner 6",
    line: str = "family Fakes",
    read: str = "pop",
    rule: str = "strong tight end",
) -> str:
    return PASS.format(pop=pop, line=line, read=read, rule=rule)


def joined(
    pop: str = "pop runs corner 6",
    line: str = "family Fakes",
    tag: str = "",
    read: str = "pop",
    rule: str = "strong tight end",
) -> Session:
    text = passing(pop, line, read, rule) + tag
    dressed = ("with plain", *(["with Give"] if tag else []))
    return compiled(
        BOOK, RUN, text, dress("Trey", *dressed, concept="Pop"), dress("Trey", concept="Zone")
    )


def called(result: Session, call: str = "Trey Right Pop") -> Play:
    assert result.season is not None
    return next(p for p in result.season.plays if p.call.spoken == call)


@pytest.mark.parametrize("side", ["Right", "Left"])
def test_a_tight_end_who_goes_out_leaves_the_runs_line(side: str) -> None:
    end = play(joined(), f"Trey {side} Pop").assignment("Y")
    assert (end.role, end.job) == ("pop", "Corner at 6.")
    assert end.path is not None and end.path.end.y > 6


def test_a_tight_end_whom_the_pass_keeps_in_blocks_as_the_run_says() -> None:
    text = passing(read="slot").replace("    pop is strong tight end\n", "")
    text = text.replace("    pop runs corner 6\n", "")
    result = compiled(BOOK, RUN, text, dress("Trey", concept="Pop"), dress("Trey", concept="Zone"))
    assert codes(result) == []
    assert play(result, "Trey Right Pop").assignment("Y").role == "playside end"


def test_on_the_run_itself_the_line_comes_first() -> None:
    text = RUN + "    pop is strong #3 or nobody\n    pop runs corner\n"
    result = compiled(BOOK, text, dress("Trey", concept="Zone"))
    made = play(result, "Trey Right Zone")
    assert made.assignment("Y").role == "playside end"
    assert made.nobody == ("pop",)


@pytest.mark.parametrize(
    ("does", "role"),
    [
        ("runs corner 6 when 3x1", "pop"),
        ("blocks edge", "playside end"),
        ("runs corner 6 when 2x2\n    pop blocks edge when 3x1", "playside end"),
    ],
)
def test_he_goes_out_only_where_the_pass_sends_him(does: str, role: str) -> None:
    result = joined(f"pop {does}", read="slot", rule="strong tight end or nobody")
    assert codes(result) == []
    assert play(result, "Trey Right Pop").assignment("Y").role == role


def test_a_word_to_the_carrier_of_a_joined_run() -> None:
    result = joined(line='carrier says "Elbow up."')
    assert codes(result) == []
    (carrier,) = [a for a in play(result, "Trey Right Pop").assignments if a.role == "carrier"]
    assert (carrier.man, carrier.says) == ("R", ("Elbow up.",))


def test_a_tag_of_such_a_pass_may_speak_to_him_too() -> None:
    tag = '\ntag Give for Pop\n    carrier says "Both hands on it."\n    keeps read\n'
    result = joined(line='carrier says "Elbow up."', tag=tag)
    assert codes(result) == []
    made = play(result, "Trey Right Pop Give").runs("carrier")
    assert made is not None and made.says == ("Elbow up.", "Both hands on it.")


def test_without_a_run_there_is_no_carrier_to_speak_to() -> None:
    text = passing(line='carrier says "Elbow up."').replace("    join run Zone\n", "")
    assert codes(compiled(BOOK, text, dress("Trey", concept="Pop"))) == ["E450"]


def test_a_pass_with_reactions_is_drawn_against_the_base_look() -> None:
    tag = "\ntag Give for Pop\n    key backside overhang\n    give if he stays\n"
    tag += "    throw lone if he fits the run\n"
    result = joined(tag=tag)
    option = called(result, "Trey Right Pop Give")
    assert option.defence is not None and option.carrier == "R"
    assert called(result, "Trey Right Zone").defence is not None


def test_a_boot_after_a_hand_off_goes_away_from_the_run() -> None:
    for call, side in (("Right", Side.LEFT), ("Left", Side.RIGHT)):
        made = play(joined(), f"Trey {call} Zone")
        assert [s.side for s in made.feet] == [None, side]
        path = made.assignment("Q").path
        assert path is not None and path.end.x * side.value > 0


def test_a_boot_with_a_side_goes_there() -> None:
    text = RUN.replace("feet fake, boot", "feet fake, boot strong")
    made = play(compiled(BOOK, text, dress("Trey", concept="Zone")), "Trey Right Zone")
    path = made.assignment("Q").path
    assert made.feet[1].side is Side.RIGHT
    assert path is not None and path.end.x > 0


def test_a_fullback_who_goes_out_is_not_the_lead_of_the_fake() -> None:
    book = BOOK.replace("H is slot", "H is fullback")
    book = book.replace("H at call, between Y and Z, off line", "H at ball, 3 deep")
    run = RUN + "    lead is fullback\n    lead blocks lead\n"
    text = passing(read="flat").replace("    slot is strong #2\n", "")
    text = text.replace("    slot runs flat\n", "    fullback runs flat strong\n")
    result = compiled(book, run, text, dress("Trey", concept="Pop"), dress("Trey", concept="Zone"))
    assert play(result, "Trey Right Pop").assignment("H").role == "fullback"
    assert play(result, "Trey Right Zone").assignment("H").role == "lead"
