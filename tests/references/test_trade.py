"""Facts of the trade that every call of the bundled playbooks must show.

Beside each fact stands its source, or that there is none: common practice.
"""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest
from resolve.shipped_books import shipped
from shared import results

from stemline.football.field import BallSpot, Side
from stemline.football.play import Man, Play
from stemline.football.players import Position
from stemline.outside.texts import read_files
from stemline.session import Session

FOLDERS = sorted(p for p in (Path(__file__).parents[2] / "playbooks").iterdir() if p.is_dir())
BOOKS = [p for p in FOLDERS if not p.name[-1].isdigit()]
"""This season's: what last season's book says is judged where both are compared."""
every_book = pytest.mark.parametrize("book", BOOKS, ids=lambda p: p.name)
every_spot = pytest.mark.parametrize("spot", BallSpot, ids=lambda s: s.value)


def compiled(book: Path) -> Session:
    return shipped(book.name)


@cache
def plays(book: Path, spot: BallSpot) -> tuple[Play, ...]:
    """Every call of a playbook from one ball spot."""
    result = compiled(book)
    assert result.book is not None
    made = (result.play(order, spot)[0] for order in result.calls.by_name.values())
    return tuple(p for p in made if p is not None)


def crossers(book: Path, spot: BallSpot) -> list[Play]:
    found = [p for p in plays(book, spot) if p.call.concept == "Crossers"]
    assert found
    return found


def test_both_codes_have_a_bundled_playbook() -> None:
    codes = {c.settings.code.key for b in BOOKS if (c := compiled(b).book) is not None}
    assert codes == {"canadian amateur", "high school"}


@pytest.mark.parametrize("book", [p for p in FOLDERS if p not in BOOKS], ids=lambda p: p.name)
def test_last_seasons_playbook_has_no_mistake_and_no_warning(book: Path) -> None:
    """This season's are checked as a coach checks them, by the command; what that has proved of the
    texts that both seasons have is not proved again."""
    with results(book) as (store, _):
        said = Session(read_files(book).sources, book.name, whole=True, store=store)
        assert said.diagnostics == ()


# Common practice, no published source: the settle is eight yards deep, straight over the ball.


@every_book
@every_spot
def test_the_settle_ends_eight_yards_straight_over_the_ball(book: Path, spot: BallSpot) -> None:
    for play in crossers(book, spot):
        settle = play.runs("settle")
        assert settle is not None and settle.path is not None, play.call.spoken
        assert (round(settle.path.end.x, 6), round(settle.path.end.y, 6)) == (0, 8)


# Common practice, no published source: the back goes to the flat away from the settle's side.


@every_book
@every_spot
def test_the_backs_flat_goes_away_from_the_settle(book: Path, spot: BallSpot) -> None:
    for play in crossers(book, spot):
        settle, flat = play.runs("settle"), play.runs("flat")
        if flat is None:
            assert "flat" in play.nobody
            continue
        assert settle is not None and settle.path is not None and flat.path is not None
        assert settle.path.start.x * flat.path.end.x < 0, play.call.spoken


# Common practice, no published source: one crosser sets the depth, the other runs a yard under.


@every_book
def test_the_crossers_come_from_two_sides_a_yard_apart(book: Path) -> None:
    for play in crossers(book, BallSpot.MIDDLE):
        over, under = play.runs("over"), play.runs("under")
        assert over is not None and over.path is not None
        assert under is not None and under.path is not None
        assert over.path.start.x * under.path.start.x < 0
        if not play.call.tags:
            assert over.path.end.y - under.path.end.y == 1
            assert over.path.start.x * play.strong.value > 0


# Common practice, no published source: strength is the side with more receivers, backs not counted.


@every_book
@every_spot
def test_no_call_is_weaker_on_its_strong_side(book: Path, spot: BallSpot) -> None:
    for play in plays(book, spot):
        sides = dict.fromkeys(Side, 0)
        for man in play.men:
            if man.rank:
                sides[man.rank.side] += 1
        assert play.shape == (sides[play.strong], sides[play.strong.other])
        assert sides[play.strong] >= sides[play.strong.other]


# Football Canada, Amateur Tackle Rule Book Changes for 2019: five ineligible men on the line and
# one eligible man at each end of it. NFHS Football Rules Book 7-2-5a: at most four men in the
# backfield, so seven of eleven on the line. The compiler does not check a coach's own formations.


def line_of(play: Play) -> list[Man]:
    return sorted((m for m in play.men if m.on_line), key=lambda m: m.snap.x)


@every_book
def test_seven_men_on_the_line_and_the_two_at_its_ends_may_catch(book: Path) -> None:
    for play in plays(book, BallSpot.MIDDLE):
        line = line_of(play)
        assert len(line) == 7, (play.call.spoken, [m.label for m in line])
        assert [m.interior for m in line] == [False, *[True] * 5, False], play.call.spoken


@every_book
def test_nobody_stands_on_the_line_who_is_said_to_be_off_it(book: Path) -> None:
    """Common practice: a man off the line is a yard behind it, clear of the snapper's waist."""
    for play in plays(book, BallSpot.MIDDLE):
        for man in play.men:
            assert man.on_line == (man.snap.y == 0), (play.call.spoken, man.label)
            assert man.on_line or man.snap.y <= -1


# Canadian amateur: every back but the quarterback may be moving, toward the line too (from memory,
# as the Canadian professional rule). US high school: one man, not toward the line (NFHS 7-2-7, from
# memory); the others are still for a second (NFHS 7-2-6, from memory).


@pytest.mark.parametrize("book", [b for b in BOOKS if "lanterns" in b.name], ids=lambda p: p.name)
def test_with_eleven_men_one_man_moves_at_the_snap_and_not_toward_the_line(book: Path) -> None:
    for play in plays(book, BallSpot.MIDDLE):
        running = [a.motion for a in play.assignments if a.motion and a.motion.running]
        assert len(running) <= 1, play.call.spoken
        for motion in running:
            before, after = motion.path.corners[-2:]
            assert after.y <= before.y, (play.call.spoken, motion.path)


@every_book
def test_the_quarterback_takes_the_snap_behind_the_ball(book: Path) -> None:
    for play in plays(book, BallSpot.MIDDLE):
        (passer,) = (m for m in play.men if m.position is Position.QUARTERBACK)
        assert passer.snap.x == 0
        assert 1 <= -passer.snap.y <= 6


# Common practice, no published source: a right-hander throws on the run to his right; to his left
# he gets depth and turns first.


@every_book
def test_a_launch_is_set_by_its_side(book: Path) -> None:
    sets = {
        (step.side, "hips upfield" in step.words, play.reads[0].at.x > 0)
        for play in plays(book, BallSpot.MIDDLE)
        for step in play.feet
        if step.side is not None and play.reads
    }
    assert sets <= {(Side.RIGHT, True, True), (Side.LEFT, False, False)}
