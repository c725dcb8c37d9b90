"""Run blocks read, dressed up and worked out: one text, and the front decides."""

from __future__ import annotations

from functools import cache

import pytest
from syrupy.assertion import SnapshotAssertion

from resolve.run_tables import in_short, table, told_of
from resolve.shipped_books import BOOKS, played, shipped
from resolve.texts import ELEVEN, codes, compiled, said
from stemline.football.field import BallSpot, Side
from stemline.football.play import Kind, Play
from stemline.geometry.paths import Ending, Point
from stemline.read.read_runs import read_reaction
from stemline.resolve.expand import expand
from stemline.session import Session
from stemline.source import Source
from stemline.syntax.parser import parse

FORMATIONS = """
formation Two Backs
    X at away, numbers, on line
    H at call, 6 outside tackle, off line
    Z at call, numbers, on line
    W at call, 2 outside ball, 5 deep
    R at away, 2 outside ball, 5 deep
    Q at ball, 5 deep

formation Tight
    X at away, numbers, on line
    Y at call, end, on line
    H at call, 6 outside tackle, off line
    W at ball, 4 deep
    R at ball, 7 deep
    Q at ball, under centre

formation Over extends Tight
    line LG, C, RG, RT, LT
"""

LOOKS = """
look Even
    E at 5, strong
    T at 3, strong
    N at 1, weak
    J at 5, weak
    M at 10, strong
    W at 30, weak
    S at apex or outside end, strong, 5 deep
    C at strong #1, 7 deep
    B at weak #1 or outside end, weak, 7 deep
    F at ball, 12 deep
    D at hash, weak, 10 deep

look Even Inside extends Even
    T at 2i, strong

look Odd extends Even
    N at 0
    T at 5, weak
    J at outside end, weak, 1 deep
    M at 20, strong
    W at 20, weak

look Bear extends Even
    N at 0
    E at 9, strong
    D at 3, weak
    J at 9, weak
"""

OTHERS = """
    outside, second is strong outside or nobody
    outside, second blocks stalk
    far is weak outside or nobody
    far blocks stalk
    helper is fullback or nobody
    helper blocks lead
"""

COUNTER = f"""
run Counter
    toward call
    carrier is back
    carrier aims backside A then playside B
    playside end blocks down or climb
    playside tackle blocks down or double with guard or on then far linebacker
    playside guard blocks down or on or double with centre then far linebacker
    centre blocks back or on
    backside guard blocks kick end man on line
    backside guard says "Hug the line."
    backside tackle blocks wrap to near linebacker
    feet fake, boot
{OTHERS}
dress Counter
    in Two Backs
    in Tight
    in Over
    to right, left
"""

READ = f"""
run Zone
    carrier is back
    carrier aims playside A
    line blocks on or climb
    backside guard blocks on or double with centre then far linebacker
{OTHERS}
tag Read for Zone
    backside tackle blocks climb to far linebacker
    key backside end man on line
    give if he stays
    pull if he chases

tag Bubble for Zone
    outside runs bubble
    key overhang
    give if he stays
    throw outside if he comes in

dress Zone
    in Two Backs
    with plain
    with Read
    with Bubble
    to right, left
"""

PASS = """
concept Flood
    far is weak #1
    far runs post
    out is strong #1
    out runs out 10
    in is strong #2
    in runs flat
    back is strong back
    back runs check
    other is weak back
    other runs swing weak
    feet 3
    read out on 3 > in on 3

tag Counter Pass for Flood
    join run Counter
    other is nobody
    feet fake, 3

tag Option for Flood
    join run Zone
    other is nobody
    key backside end man on line
    give if he stays
    throw out if he chases

tag Kept In for Flood
    join run Counter
    other is nobody
    protect five
    feet fake, 3

dress Flood
    in Two Backs
    with plain
    with Counter Pass
    with Option
    with Kept In
"""


@cache
def book() -> Session:
    result = compiled(ELEVEN, FORMATIONS, LOOKS, COUNTER, READ, PASS)
    assert not result.failed, said(result.diagnostics)
    return result


def against(call: str, look: str = "", result: Session | None = None) -> Play:
    result = result or book()
    assert result.book is not None
    order = result.calls.by_name[call]
    play, found = expand(result.book, order, BallSpot.MIDDLE, (), look.casefold())
    assert play is not None and not [d for d in found if d.is_error], said(found)
    return play


def jobs(play: Play) -> dict[str, str]:
    return {m.label: play.assignment(m.label).job for m in play.men if m.interior}


# One text against three fronts.


@pytest.mark.parametrize(
    ("look", "wanted"),
    [
        ("Even", {
            "LT": "Wrap to M.", "LG": "Kick E.", "C": "Back on N.",
            "RG": "Double T with RT, then W.", "RT": "Double T with RG."}),
        ("Odd", {
            "LT": "Wrap to M.", "LG": "Kick E.", "C": "Double N with RG.",
            "RG": "Double N with C.", "RT": "Nobody on you: climb to W."}),
        ("Bear", {
            "LT": "Wrap to M.", "LG": "Kick E.", "C": "Back on D.", "RG": "Down on N.",
            "RT": "Down on T."}),
    ],
)  # fmt: skip
def test_one_counter_against_an_even_an_odd_and_a_bear_front(
    look: str, wanted: dict[str, str]
) -> None:
    assert jobs(against("Two Backs Right Counter", look)) == wanted


def test_a_three_technique_moved_to_a_two_i_changes_two_jobs() -> None:
    three, two = (jobs(against("Two Backs Right Counter", x)) for x in ("Even", "Even Inside"))
    assert {m for m in three if three[m] != two[m]} == {"RG", "RT"}
    assert two["RG"] == "Down on T."


def test_called_left_the_other_five_do_it() -> None:
    """Strength is on the called side, so the front turns with the call: everything mirrored."""
    right, left = (against(f"Two Backs {x} Counter", "Even") for x in ("Right", "Left"))
    turned = {"LT": "RT", "RT": "LT", "LG": "RG", "RG": "LG", "C": "C"}
    for a, b in turned.items():
        mine, other = right.assignment(a), left.assignment(b)
        assert [h.defender for h in mine.hits] == [h.defender for h in other.hits]
        assert mine.role == other.role
        assert mine.path is not None and other.path is not None
        assert mine.path.mirrored() == other.path


def test_without_a_look_the_line_has_its_words_and_no_path() -> None:
    play = against("Two Backs Right Counter")
    assert play.kind is Kind.RUN and play.toward is Side.RIGHT and play.carrier == "R"
    guard = play.assignment("LG")
    assert (guard.role, guard.job) == ("backside guard", "Kick end man on line.")
    assert guard.says == ("Hug the line.",)
    assert [play.assignment(m.label).path for m in play.men if m.interior] == [None] * 5


def test_paths_end_as_blocks_at_the_defenders_and_pullers_stay_shallow() -> None:
    play = against("Two Backs Right Counter", "Even")
    assert play.defence is not None
    for man in play.men:
        a = play.assignment(man.label)
        if man.interior:
            assert a.path is not None and a.path.ending is Ending.BLOCK
            assert a.path.end == a.hits[0].at
            assert a.path.end.distance(play.defence.defender(a.hits[0].defender).at) < 0.5
            assert min(p.y for p in a.path.corners) >= -1.5
    double = play.assignment("RG")
    assert double.climb is not None
    assert double.climb.end == play.defence.defender("W").at


def test_the_carrier_steps_away_and_then_goes_through_his_hole() -> None:
    path = against("Two Backs Right Counter").assignment("R").path
    assert path is not None
    first, *_, hole, end = path.corners[1:]
    assert first.x < 0 < hole.x
    assert 1.3 < hole.x < 2.6 and end.y > 3


def test_the_extra_man_of_an_unbalanced_line_blocks_as_the_tackle_inside_him() -> None:
    play = against("Over Right Counter", "Even")
    assert play.assignment("LT").role == "playside outside tackle"
    assert play.assignment("LT").job
    assert play.assignment("LG").role == "backside guard"


def test_an_end_is_one_by_place() -> None:
    tight = against("Tight Right Counter", "Even").assignment("Y")
    assert tight.role == "playside end" and tight.job
    assert against("Two Backs Right Counter").runs("playside end") is None


# Keys.


def test_a_man_who_is_read_is_left_and_what_is_done_off_him_is_told() -> None:
    play = against("Two Backs Right Zone Read", "Even")
    (key,) = play.keys
    assert (key.man, key.described) == ("J", "backside end man on line")
    assert key.choices == (("give", "", "he stays"), ("pull", "", "he chases"))
    assert all("J" not in [h.defender for h in a.hits] for a in play.assignments)
    assert "J" not in play.unblocked
    passer = play.assignment("Q")
    assert passer.job.startswith("Read J, the backside end man on line: give if he stays")
    (keep,) = passer.branches
    assert keep.path.end.x < -2.6 and keep.path.end.y > 3


def test_a_tag_may_give_a_receiver_a_route_and_the_throw_names_him() -> None:
    play = against("Two Backs Right Zone Bubble", "Even")
    (key,) = play.keys
    assert key.man == "S"
    assert key.choices[1] == ("throw", play.runs("outside").man, "he comes in")  # type: ignore[union-attr]


# Passes that show a run.


def test_a_play_action_pass_shows_the_run_and_stays_at_the_line() -> None:
    play = against("Two Backs Right Flood Counter Pass", "Even")
    assert play.kind is Kind.PASS and play.carrier == ""
    assert play.assignment("R").job == "Fake the run to backside A gap, then playside B gap."
    path = play.assignment("R").path
    assert path is not None and path.end.y <= 0
    for man in play.men:
        if man.interior:
            a = play.assignment(man.label)
            assert a.climb is None and all(h.at.y < 2 for h in a.hits), a
    assert play.assignment("LG").job == "Kick E."


def test_a_run_pass_option_blocks_the_run() -> None:
    play = against("Two Backs Right Flood Option", "Even")
    assert play.kind is Kind.PASS and play.carrier == "R"
    assert [k.man for k in play.keys] == ["J"]
    assert any(h.at.y > 3 for m in play.men if m.interior for h in play.assignment(m.label).hits)
    out = play.runs("out")
    assert out is not None and out.job.startswith("Out at 10")


def test_a_protect_line_beside_the_join_keeps_the_line() -> None:
    play = against("Two Backs Right Flood Kept In", "Even")
    assert play.assignment("R").job.startswith("Fake the run to")
    assert all("Wrap" not in job and "Kick" not in job for job in jobs(play).values())


# Sides, roles, reading.


@pytest.mark.parametrize(
    ("toward", "formation", "called", "side"),
    [
        ("call", "Tight", "left", Side.LEFT),
        ("away", "Tight", "left", Side.RIGHT),
        ("strong", "Two Backs", "left", Side.LEFT),
        ("tight end", "Tight", "left", Side.LEFT),
        ("away from tight end", "Tight", "left", Side.RIGHT),
        ("back", "Two Backs", "right", Side.LEFT),
        ("away from back", "Two Backs", "right", Side.RIGHT),
        ("right", "Tight", "left", Side.RIGHT),
    ],
)
def test_toward(toward: str, formation: str, called: str, side: Side) -> None:
    run = f"""
run Dive
    toward {toward}
    carrier is back
    carrier aims playside A
    line blocks on or climb
dress Dive
    in {formation}
    to {called}
"""
    result = compiled(ELEVEN, FORMATIONS, run)
    play = against(f"{formation} {called.title()} Dive", "", result)
    assert play.toward is side
    path = play.assignment("R").path
    assert path is not None
    assert path.corners[-2].x * side.value > 0


@pytest.mark.parametrize(
    ("line", "code"),
    [
        ("guard blocks on", "E670"),
        ("playside guard blocks double", "E671"),
        ("playside guard blocks double with helper", "E671"),
        ("playside guard blocks on then climb then linebacker", "E672"),
        ("playside guard blocks hit", "E445"),
        ("playside guard blocks kick somebody", "E462"),
        ("playside guard blocks down with tackle", "E401"),
        ("playside guard runs go", "E403"),
        ("carrier aims playside E", "E673"),
        ("toward nobody", "E674"),
        ("give", "E223"),
        ("give him the ball", "E675"),
        ("throw carrier", "E675"),
        ("throw someone if he comes", "E444"),
        ("pitch if he comes", "E404"),
        ("give is back", "E680"),
        ("key the big man", "E462"),
        ("key end man on line, outside", "E443"),
    ],
)
def test_a_line_that_cannot_be_read(line: str, code: str) -> None:
    run = f"run Dive\n    carrier is back\n    line blocks on\n    {line}\n"
    result = compiled(ELEVEN, FORMATIONS, run)
    assert code in codes(result), said(result.diagnostics)


def test_a_run_needs_a_carrier_and_five_blocks() -> None:
    result = compiled(ELEVEN, FORMATIONS, "run Dive\n    centre blocks on\n")
    assert codes(result)[:2] == ["E678", "E679"]
    assert (
        "playside guard, backside guard, playside tackle and backside tackle"
        in said(result.diagnostics)[1]
    )


def test_left_and_right_are_enough_for_a_line() -> None:
    run = """
run Dive
    carrier is back
    carrier aims playside A
    centre, left guard, right guard, strong tackle, weak tackle blocks on
"""
    assert "E679" not in codes(compiled(ELEVEN, FORMATIONS, run))


# Every run of both playbooks against every look of theirs.


@pytest.mark.parametrize("team", BOOKS)
def test_every_run_against_every_look(team: str, snapshot: SnapshotAssertion) -> None:
    """The first call of each run: who takes whom, who is read, who is free."""
    result = shipped(team)
    assert result.book is not None
    firsts: dict[str, str] = {}
    for call, order in result.calls.by_name.items():
        concept = result.book.concepts[order.concept]
        if concept.kind is Kind.RUN:
            firsts.setdefault(concept.name, call)
    assert len(firsts) >= 10
    looks = list(result.book.looks)
    runs = [
        [played(team, result.calls.by_name[call], look) for look in looks]
        for call in firsts.values()
    ]
    for play in (play for plays in runs for play in plays):
        check(play)
    cells = in_short(
        told_of(play, task) for plays in runs for play in plays for task in play.assignments
    )
    tables = [
        table(call, looks, plays, cells) for call, plays in zip(firsts.values(), runs, strict=True)
    ]
    assert "\n\n".join(tables) == snapshot


def check(play: Play) -> None:
    """What holds of every run: five linemen have a job, and nobody is blocked by three."""
    hit: dict[str, list[str]] = {}
    for a in play.assignments:
        if play.man(a.man).interior:
            assert a.job, a
        if a.hits:
            hit.setdefault(a.hits[0].defender, []).append(a.man)
        if a.path is not None and a.hits:
            assert a.path.start == play.man(a.man).snap
            assert a.path.end != Point(0, 0) or a.path.legs
    assert all(len(men) <= 2 for men in hit.values()), hit


def test_the_words_of_a_reaction_keep_what_stands_between_them() -> None:
    (fact,) = (
        parse(Source("one.play", "run Veer\n    give if he stays, goes up the field or out\n"))[0]
        .blocks[0]
        .facts
    )
    assert read_reaction(fact, ()).when == "he stays, goes up the field or out"


def test_who_may_get_it_by_a_word_for_his_place_is_told_to_be_named() -> None:
    run = "run Bash\n    carrier is quarterback\n    give to back if he stays\n    line blocks on\n"
    told = [d for d in compiled(ELEVEN, FORMATIONS, run).diagnostics if d.code == "E404"]
    assert len(told) == 1
    answer = dict(told[0].values)["answer"]
    assert isinstance(answer, str)
    assert "`taker is back` and `give to taker if he stays`" in answer
