"""Who answers a look: the read that is thrown to, the hot throw, and what to check to.

Common practice, no published source: a throw that leaves after a free rusher is there, or before
its man is open, answers nothing.
"""

from __future__ import annotations

from dataclasses import replace

from football.timed import against, clocked
from stemline.book.content.answer_table import _table
from stemline.football.put_to_looks import PutToLooks
from stemline.football.timing.answers import Stood, check_to
from stemline.football.timing.coverage import Against, Cover, Separation
from stemline.football.timing.putting import looked
from stemline.geometry.paths import Point

FLAT, NEAR, TOP, FAR = clocked(against("Three Two Right Crossers", "Zero")).reads


def read(number: int, cover: Cover, thrown: float, opens: float = 0.0) -> Separation:
    look = (FLAT, NEAR, TOP, FAR)[number]
    assert look.window is not None
    look = replace(look, thrown=thrown, window=replace(look.window, opens=opens))
    return Separation(look, 2.0, "D", cover, thrown, thrown + 0.7, look.at)


def row(*reads: Separation, rusher: float | None = None, name: str = "Zero") -> Against:
    return Against(name, reads, reads, rusher)


def test_an_open_man_is_thrown_to_before_one_whom_a_good_throw_finds() -> None:
    tight, open_ = read(0, Cover.TIGHT, 1.4), read(1, Cover.OPEN, 2.0)
    assert row(tight, open_).best is open_
    assert row(tight, read(1, Cover.COVERED, 2.0)).best is tight
    assert row(read(0, Cover.COVERED, 1.4), read(1, Cover.LATE, 2.0)).best is None


def test_a_hot_throw_is_open_when_it_is_thrown() -> None:
    early, good = read(0, Cover.OPEN, 1.4, opens=1.7), read(1, Cover.TIGHT, 1.6, opens=1.5)
    assert row(early, good, rusher=1.8).hot is good
    assert row(early, rusher=1.8).hot is None
    assert row(good).hot is None, "nobody is free"


def test_a_screen_is_open_once_he_has_the_ball() -> None:
    """Behind the line there is nobody to get away from: he need not have turned at the throw."""
    early = read(0, Cover.OPEN, 1.0, opens=1.6)
    behind = replace(early, at=Point(early.at.x, -2.0))
    assert row(behind, rusher=1.7).hot is behind
    assert row(replace(behind, arrives=1.4), rusher=1.7).hot is None
    assert row(early, rusher=1.7).hot is None


def test_without_an_order_under_pressure_the_reads_are_asked() -> None:
    good = read(0, Cover.OPEN, 1.4)
    assert Against("Zero", (good,), (), 1.8).hot is good


def stood(concept: str, formation: str, *rows: Against) -> Stood:
    return Stood(concept, formation, rows)


def test_a_check_is_to_the_same_formation_and_to_the_ball_that_is_out_soonest() -> None:
    bare = stood("Dagger", "Trips", row(read(0, Cover.COVERED, 2.0)))
    late = stood("Dig", "Trips", row(read(0, Cover.OPEN, 2.4)))
    soon = stood("Slants", "Trips", row(read(0, Cover.OPEN, 1.4)))
    moved = stood("Hitches", "Empty", row(read(0, Cover.OPEN, 1.0)))
    tight = stood("Stick", "Trips", row(read(0, Cover.TIGHT, 1.0)))
    assert check_to(bare, (bare, late, soon, moved, tight)) == {"Zero": "Slants"}
    assert check_to(bare, (bare, moved, tight)) == {"Zero": ""}
    assert check_to(soon, (bare, soon)) == {}


def test_the_table_of_a_page_tells_the_three_states_apart_without_colour() -> None:
    reads = (read(0, Cover.TIGHT, 1.4), read(1, Cover.COVERED, 2.0), read(2, Cover.LATE, 2.4),
             read(3, Cover.OPEN, 1.8))  # fmt: skip
    one = stood("Crossers", "Trips", row(*reads, rusher=1.9), row(reads[1], name="Base"))
    targets = (("1", "flat"), ("2", "near"), ("3", "top"), ("4", "far"))
    put = PutToLooks("Crossers", "Trips", targets, tuple(map(looked, one.rows)), (), ())
    table = _table(put, {"Base": ""})
    cells = [cells[0] for _, _, cells in table.rows]
    assert [(c.words, c.first) for c in cells] == [
        ("(2)", False), ("–", False), ("late", False), ("2", True),
    ]  # fmt: skip
    assert table.rushers == (("1.9 s", "flat"), ("", ""))
    assert table.rusher == 1.9
    assert table.checks == ("", "another call")
