"""Who checks by the words of a protection: he goes out where nobody comes, by the way it says, and
is no throw where he has a rusher. Common practice, no published source."""

from __future__ import annotations

from dataclasses import replace

import pytest

from resolve.test_passes_as_coached import TIGHT
from resolve.test_protections import against, taken
from resolve.texts import ELEVEN, codes, compiled
from stemline.book.content.block_table import fronts
from stemline.book.content.book import Edition, make_book
from stemline.book.content.kinds.protection_page import ProtectionPage
from stemline.football.offence.strokes import BLOCKS_FOR
from stemline.football.play import Play, about_blocks
from stemline.football.timing.clock import read_clock
from stemline.football.timing.coverage import against as put
from stemline.football.timing.levels import HIGH_SCHOOL
from stemline.football.timing.men import run_path, timelines
from stemline.geometry.paths import Ending
from stemline.resolve.sheets import with_sheets
from stemline.session import Session

LOOKS = """
look Comes
    E in 9, strong
    T in 3, strong
    N in 1, weak
    J in 5, weak
    M in 20, strong
    W in 20, weak
    C at strong #1, 8 deep
    B at weak #1, 8 deep
    S at strong, 3 outside end, 6 deep
    K at apex, weak, 6 deep
    F at middle, 13 deep
    C covers third, strong
    B covers third, weak
    F covers third, middle
    S covers flat, strong
    K covers flat, weak
    M covers hook, strong
    W covers hook, weak

look Drops extends Comes
    E covers flat, strong
    S covers hook, strong

look Flood extends Comes
    M rushes A, strong
    W rushes A, weak
    K rushes contain, weak
    S rushes contain, strong
"""
OWN = """
protection Own
    line blocks slide
    toward away
    {check}
    back blocks scan
    {more}

concept Throw
    a is weak #1
    a runs slant
    b is strong #1
    b runs go
    {end}
    feet 3
    read {read} on 3
    protect Own

dress Throw
    in Tight
"""
CHECK = "tight end checks edge then flat"


def made(check: str = CHECK, more: str = "", end: str = "feet 3", read: str = "a") -> Session:
    text = OWN.format(check=check, more=more, end=end, read=read)
    return compiled(ELEVEN, TIGHT, LOOKS, text.replace("    feet 3\n    feet 3", "    feet 3"))


def shown(look: str, **said: str) -> Play:
    result = made(**said)
    assert not [d for d in result.diagnostics if d.is_error], codes(result)
    return against(result, look)[0]


@pytest.mark.parametrize(
    ("check", "deep"),
    [(CHECK, 4), ("tight end blocks check edge then flat", 4),
     ("tight end blocks check edge then release", 4), ("tight end checks edge then corner 12", 19)],
)  # fmt: skip
def test_he_goes_out_by_the_way_that_is_said_where_nobody_comes(check: str, deep: float) -> None:
    play = shown("Drops", check=check)
    task = play.assignment("Y")
    assert task.path is not None and task.path.ending is Ending.RUN and not task.hits
    assert task.path.end.y == pytest.approx(deep, abs=0.2)
    assert task.path.end.x > task.path.start.x
    assert task.job == "Check edge: nobody comes, out."
    assert timelines(play, HIGH_SCHOOL)["Y"].start > BLOCKS_FOR


def test_who_has_a_rusher_runs_nothing_and_waits_for_nothing() -> None:
    play = shown("Comes", more="hot tight end slant")
    task = play.assignment("Y")
    assert taken(play)["Y"] == "E"
    assert task.path is not None and task.path.ending is Ending.BLOCK
    assert (task.waits, task.branches, task.marks) == (None, (), ())


def test_what_the_concept_says_of_him_goes_before_the_protection() -> None:
    play = shown("Drops", end="y is tight end\n    y runs check edge then corner")
    path = play.assignment("Y").path
    assert path is not None and path.end.y > 12


@pytest.mark.parametrize("who", ["tight end flat", "back swing"])
def test_a_hot_is_not_thrown_to_a_man_who_blocks_in_that_look(who: str) -> None:
    more = f"hot {who}\n    hot nearest slant if they bring the house"
    assert shown("Drops", more=more).hot[0].throws == who
    flood = shown("Flood", more=more)
    assert {"Y", "R"} <= taken(flood).keys()
    assert [h.throws for h in flood.hot] == ["nearest slant"]


def test_of_two_hots_the_one_without_a_condition_is_told() -> None:
    more = "hot the runner if the edge is soft\n    hot the quick slant"
    play = replace(shown("Flood", more=more), pressure=())
    assert play.unblocked
    told = put(play, read_clock(play, HIGH_SCHOOL), HIGH_SCHOOL)
    assert told.told == "the quick slant"


def test_only_a_way_that_begins_with_the_block_waits_for_it() -> None:
    """A hot goes at the snap, his own route a count later."""
    play = shown("Drops", end="y is tight end\n    y runs check edge then flat",
                 more="hot tight end slant")  # fmt: skip
    task = play.assignment("Y")
    (hot,) = task.branches
    assert task.path is not None
    own, quick = (run_path(play, task, path, HIGH_SCHOOL) for path in (task.path, hot.path))
    assert own.start == pytest.approx(quick.start + BLOCKS_FOR)


def test_his_column_says_that_he_goes() -> None:
    plays = [shown(look) for look in ("Drops", "Comes")]
    table = fronts([(p.defence.name, p) for p in plays if p.defence], plays[0], "free", ("Y",))
    assert table is not None
    at = [man for man, _ in table.men].index("Y")
    rows = [row.blocks[at] for row in table.rows]
    assert rows == ["nobody comes, out", "Check edge: [E]"], rows


def test_the_picture_of_a_protection_stays_close_though_one_of_it_goes_out() -> None:
    result = made()
    assert result.book is not None and result.season is not None
    (sheet,) = with_sheets(result.book, result.season).protections
    faced = [view for view in sheet.views if view.defence is not None]
    assert len(faced) == 3 and all(about_blocks(view) for view in faced)


@pytest.mark.parametrize(
    ("check", "edge", "out"),
    [("playside edge then flat", 1, 1), ("backside edge then flat", -1, -1),
     ("backside edge then flat playside", -1, 1), ("playside edge then swing backside", 1, -1),
     ("backside linebacker then flat", 0, -1), ("playside overhang then flat", 0, 1)],
)  # fmt: skip
def test_he_looks_on_the_side_that_is_said(check: str, edge: int, out: int) -> None:
    """Whichever side of the ball he stands on: first to that edge, and out on that side where his
    route says no other. The slide goes away from the call, and so does the play."""
    helper = f"helper is back\n    helper blocks check {check}"
    own = OWN.replace("    back blocks scan\n", "").replace("    {end}\n", "")
    text = own.format(check=helper, more="", read="a")
    for at in ("2 outside ball", "2 inside ball"):
        stands = TIGHT.replace("R at ball, 7 deep", f"R at call, {at}, 6 deep")
        result = compiled(ELEVEN, stands, LOOKS, text)
        assert not [d for d in result.diagnostics if d.is_error], codes(result)
        path = against(result, "Drops")[0].assignment("R").path
        assert path is not None
        looks, end = path.corners[1], path.end
        toward = -1
        assert end.x * out * toward > 0, (check, at, path.corners)
        assert not edge or looks.x * edge * toward > 2, (check, at, path.corners)


@pytest.mark.parametrize(("back", "close"), [("runs swing", False), ("runs check", True)])
def test_a_backs_route_is_a_route_though_nobody_is_read(back: str, close: bool) -> None:
    """The picture is cut close for who looks for a rusher first, and for nobody else."""
    text = f"""
concept Slow
    back {back}
    each #1 blocks stalk
    each #2 blocks stalk
    feet 3
    protect five

dress Slow
    in Tight
"""
    play, _ = against(compiled(ELEVEN, TIGHT, LOOKS, text), "Drops")
    assert play.assignment("R").path is not None
    assert about_blocks(play) is close


def test_a_protection_that_is_not_read_leaves_nobody_idle() -> None:
    """What is told is the line that is wrong, and not the men whom it was for."""
    wrong = made(check="tight end blocks the whole world")
    assert [d.code for d in wrong.diagnostics if d.is_error]
    assert not [d for d in wrong.diagnostics if d.code == "W650" and "Y" in d.message]


def test_a_caution_of_a_protection_stands_on_its_page() -> None:
    result = made(more='caution "Hands inside."')
    assert result.book is not None and result.season is not None
    book = make_book(with_sheets(result.book, result.season), Edition("", ""), ())
    assert book.of(ProtectionPage)[0].cautions == ("Hands inside.",)


NAMED_HERE = """
protection Solid
    line blocks big on big
    back blocks {does}

concept Dagger
    a is strong #1
    a runs go
    outlet is back
    everyone else runs seam
    protect Solid
    feet 3, hitch
    read a on 3 > outlet on hitch

dress Dagger
    in Tight to right
"""


def test_a_role_whose_check_the_protection_gives_has_a_job_and_may_be_read() -> None:
    made = compiled(ELEVEN, TIGHT, NAMED_HERE.format(does="check edge then flat"))
    assert not [d for d in made.diagnostics if d.is_error], codes(made)
    assert made.season is not None
    (drawn,) = {p for p in made.season.plays if p.ball.value == "middle" and not p.against}
    (task,) = [a for a in drawn.assignments if a.role == "outlet"]
    assert task.job.startswith("Check the edge, then flat")
    assert task.man in drawn.reads[1].men
    without = compiled(ELEVEN, TIGHT, NAMED_HERE.format(does="scan"))
    assert "E471" in codes(without)
