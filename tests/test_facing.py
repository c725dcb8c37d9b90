"""Passes against looks in a check: the same answers from the cache, from processes and by hand.

What must never happen is a stale answer, so the key is tried against the full clock: where two
texts give a call one key against a look, every figure of the clock is the same.
"""

from __future__ import annotations

import os
import re
import subprocess
import sys
from collections.abc import Iterator, Sequence
from functools import cache as remembered
from itertools import islice
from pathlib import Path
from typing import Any

import pytest
from lineup.look_texts import FRONT
from resolve.texts import CROSSERS, QUADS, THREE_TWO, TWELVE, dress
from sampling import every

from stemline.analysis import passes_against_looks as against_looks
from stemline.analysis.passes_against_looks import _CallAgainst, _SealedCall, _Sealing, face, worked
from stemline.football.field import BallSpot
from stemline.football.timing.answers import Faced, answer
from stemline.football.timing.clock import read_clock
from stemline.football.timing.coverage import against
from stemline.outside.cache import Cache
from stemline.playbook.playbook import Playbook
from stemline.read.read_playbook import read_playbook
from stemline.resolve.all_calls import all_calls
from stemline.resolve.expand import Expander
from stemline.resolve.order import Order
from stemline.source import Source
from stemline.syntax.parser import parse

ZERO = """
look Zero extends Front
    C covers man, strong #1
    H covers man, strong #2
    S covers man, strong #3 or back
    B covers man, weak #1
    D covers man, weak #2 or back
    F covers man, back or strong #2
    M rushes A, strong
    W rushes B, weak
"""
OWN = """
protection Ours
    toward weak
    line blocks slide
    helper is back or nobody
    helper blocks scan
"""
HITCHES = """
concept Hitches
    family Quick
    feet quick
    read first
    protect six slide
    first is strong #1
    first runs hitch
    other is weak #1
    other runs hitch
"""
PARTS = (
    TWELVE,
    THREE_TWO,
    QUADS,
    CROSSERS,
    HITCHES,
    OWN,
    FRONT,
    ZERO,
    dress("Three Two", "with plain, Wheel"),
    "dress Hitches\n    in Three Two, Quads\n    in Quads motion Tuck\n",
)
TEXT = "\n".join(part.strip("\n") + "\n" for part in PARTS)


def read(text: str) -> tuple[Playbook, tuple[Order, ...]] | None:
    """The playbook and its calls; None for a text with a mistake."""
    document, problems = parse(Source("book.play", text))
    book, found = read_playbook([document], problems, "book")
    if book is None or any(d.is_error for d in (*problems, *found)):
        return None
    calls, found = all_calls(book)
    return None if any(d.is_error for d in found) else (book, tuple(o for _, o in calls.orders))


@remembered
def whole() -> tuple[Playbook, tuple[Order, ...]]:
    made = read(TEXT)
    assert made is not None
    return made


def nothing(tmp_path: Path) -> Cache:
    return Cache(tmp_path, None)


def keys(book: Playbook, orders: Sequence[Order]) -> dict[tuple[str, str], str]:
    sealing = _Sealing(book, Expander(book))
    return {(c.call, c.look): c.key for order in orders for c in sealing.cells(order)}


def test_the_small_book_is_what_the_tests_need() -> None:
    book, orders = whole()
    assert [look.name for look in book.looks.values()] == ["Front", "Zero"]
    assert {o.concept for o in orders} == {"crossers", "hitches"} and len(orders) >= 6
    assert {o.motion for o in orders} == {"", "tuck"} and any(o.tags for o in orders)


def by_hand(book: Playbook, orders: Sequence[Order]) -> Iterator[Faced]:
    expander = Expander(book)
    for order in orders:
        for key, look in book.looks.items():
            play, _ = expander.expand(order, BallSpot.MIDDLE, (), key)
            assert play is not None and play.defence is not None
            got = answer(play, book.settings.level)
            if got is not None:
                yield Faced(play.call.concept, order.spoken, look.name, got)


def test_sealed_values_give_the_answers_of_the_plays_themselves(tmp_path: Path) -> None:
    book, orders = whole()
    expected = tuple(by_hand(book, orders))
    assert face(book, orders, nothing(tmp_path)) == expected
    assert len({one.answer for one in expected}) > 1


def test_a_call_of_which_a_man_has_no_line_against_a_look_answers_it_with_nothing(
    tmp_path: Path,
) -> None:
    made = read(TEXT.replace("other runs hitch", "other runs hitch when zone"))
    assert made is not None
    faced = {(one.concept, one.look) for one in face(*made, nothing(tmp_path))}
    assert faced == {("Crossers", "Front"), ("Crossers", "Zero"), ("Hitches", "Front")}


def test_what_is_known_is_not_worked_out_again(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    book, orders = whole()
    cache = Cache(tmp_path / "book", tmp_path / "cache")
    first = face(book, orders, cache)

    def busy(work: _SealedCall) -> None:
        raise AssertionError("worked out again")

    monkeypatch.setattr(against_looks, "worked", busy)
    assert face(book, orders, cache) == first
    with pytest.raises(AssertionError, match="again"):
        face(book, orders, nothing(tmp_path))


def redone(text: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> set[tuple[str, str]]:
    """The calls and looks that a check works out after the text was changed to ``text``."""
    cache = Cache(tmp_path / "book", tmp_path / "cache")
    face(*whole(), cache)
    changed = read(text)
    assert changed is not None and text != TEXT
    done: set[str] = set()

    def counted(work: _SealedCall) -> object:
        done.update(work.keys)
        return worked(work)

    monkeypatch.setattr(against_looks, "worked", counted)
    assert face(*changed, cache) == face(*changed, nothing(tmp_path))
    done.clear()
    monkeypatch.setattr(against_looks, "worked", counted)
    face(*changed, Cache(tmp_path / "book", tmp_path / "cache"))
    assert not done, "kept by the first"
    before = set(keys(*whole()).values())
    return {cell for cell, key in keys(*changed).items() if key not in before}


def test_after_one_concept_is_edited_only_its_calls_are_done_again(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    text = TEXT.replace("other runs hitch", "other runs out")
    cells = redone(text, tmp_path, monkeypatch)
    assert {call for call, _ in cells} == {
        order.spoken for order in whole()[1] if order.concept == "hitches"
    }


def test_after_one_look_is_edited_only_that_look_is_done_again(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    cells = redone(TEXT.replace("W rushes B, weak", "W rushes C, weak"), tmp_path, monkeypatch)
    assert {look for _, look in cells} == {"Zero"}
    assert len(cells) == len(whole()[1])


def test_lines_that_move_and_words_for_the_coach_alone_redo_nothing(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    text = "\n// a remark\n\n" + TEXT.replace("concept Hitches", "// another\n\nconcept Hitches")
    assert redone(text, tmp_path, monkeypatch) == set()
    renamed = TEXT.replace("Hitches", "Sticks").replace("Three Two", "Trey Duo")
    renamed = renamed.replace("family Quick", "family Short")
    assert redone(renamed, tmp_path, monkeypatch) == set()


# No stale answer.


def figures(book: Playbook, orders: Sequence[Order]) -> dict[tuple[str, str], object]:
    """All that the clock says of each call against each look, from the plays themselves."""
    level, expander = book.settings.level, Expander(book)
    made: dict[tuple[str, str], object] = {}
    for order in orders:
        for key, look in book.looks.items():
            play, _ = expander.expand(order, BallSpot.MIDDLE, (), key)
            if play is not None and play.defence is not None and play.reads:
                stood = against(play, read_clock(play, level), level)
                throws = (*stood.reads, *stood.pressure)
                reads = [(r.yards, r.nearest, r.cover, r.thrown, r.arrives, r.at) for r in throws]
                made[order.spoken, look.name] = (reads, stood.rusher, play.unblocked)
    return made


NTH = 4
"""Of the numbers and sides a run changes each so many-th."""


def edits() -> Iterator[tuple[str, str]]:
    """Texts with one thing changed, and what: numbers and sides in turn, then other words."""
    swaps = {"strong": "weak", "weak": "strong", "call": "away", "away": "call", "on": "off"}
    swaps |= {"off": "on", "left": "right", "right": "left", "canadian": "american"}
    words = re.finditer(r"\b(\d+|strong|weak|call|away|on|off|right|left)\b", TEXT)
    for found in islice(words, 0, None, every(NTH)):
        word = found[0]
        new = str(int(word) + 2) if word.isdigit() else swaps[word]
        line = TEXT[: found.start()].count("\n") + 1
        yield TEXT[: found.start()] + new + TEXT[found.end() :], f"line {line}: {word} to {new}"
    for old, new in (
        ("runs hitch", "runs slant"),
        ("    code canadian amateur", "    level college\n    code canadian amateur"),
        ("    code canadian amateur", "    league restraining is 2\n    code canadian amateur"),
        ("right hand", "left hand"),
        ("blocks slide", "blocks man"),
        ("protect six slide", "protect Ours"),
        ("feet quick\n", "feet 3\n"),
        ("is wideout", "is wideout, forty 4.6"),
    ):
        yield TEXT.replace(old, new), f"{old} to {new}"


def test_one_key_means_one_and_the_same_clock_whatever_is_edited() -> None:
    book, orders = whole()
    before, old_keys = figures(book, orders), keys(book, orders)
    tried = differing = 0
    for text, what in edits():
        changed = read(text)
        if changed is None:
            continue
        tried += 1
        after, new_keys = figures(*changed), keys(*changed)
        for cell in after.keys() & before.keys():
            if after[cell] != before[cell]:
                differing += 1
                assert new_keys[cell] != old_keys[cell], f"{what}: {cell} would be stale"
    assert tried > 60 / every(NTH) and differing > 200 / every(NTH), (tried, differing)


def test_a_key_is_the_same_in_another_process_whatever_its_hashes_are() -> None:
    script = (
        "import test_facing as t\n"
        "for cell, key in t.keys(*t.whole()).items(): print(*cell, key, sep='|')"
    )
    seen = set()
    for seed in ("1", "2"):
        env = {**os.environ, "PYTHONHASHSEED": seed, "PYTHONPATH": str(Path(__file__).parent)}
        made = subprocess.run(
            [sys.executable, "-c", script], env=env, capture_output=True, text=True, check=True
        )
        seen.add(made.stdout)
    assert len(seen) == 1
    assert len(next(iter(seen)).splitlines()) == len(keys(*whole()))


def test_another_program_has_other_keys(monkeypatch: pytest.MonkeyPatch) -> None:
    mine = keys(*whole())
    monkeypatch.setattr(against_looks, "program", lambda: "another")
    assert not set(mine.values()) & set(keys(*whole()).values())


def test_a_program_that_cannot_be_told_keeps_and_trusts_nothing(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    cache = Cache(tmp_path / "book", tmp_path / "cache")
    monkeypatch.setattr(against_looks, "program", lambda: "")
    face(*whole(), cache)
    assert not (tmp_path / "cache").exists()


def test_a_key_forgets_what_values_have_worked_out_for_themselves() -> None:
    book, orders = whole()
    sealing = _Sealing(book, Expander(book))
    first: list[_CallAgainst] = [c for order in orders for c in sealing.cells(order)]
    expander = sealing._expander
    for order in orders:
        for key in ("", *book.looks):
            expander.expand(order, BallSpot.MIDDLE, (), key)
    again = [c for order in orders for c in sealing.cells(order)]
    assert [c.key for c in first] == [c.key for c in again]


# Processes.


def test_processes_give_what_one_gives_in_the_same_order(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    book, orders = whole()
    here = face(book, orders, nothing(tmp_path))
    monkeypatch.setattr(against_looks, "processors", lambda: 2)
    monkeypatch.setattr(against_looks, "worked", None)  # in this process
    assert face(book, orders, nothing(tmp_path), pool=1) == here


@pytest.mark.parametrize("error", [OSError, ImportError, against_looks.OtherProgram])
def test_a_machine_that_starts_no_process_does_the_work_in_this_one(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, error: type[Exception]
) -> None:
    def refused(*args: object, **kwargs: object) -> None:
        raise error("no")

    book, orders = whole()
    monkeypatch.setattr(against_looks, "processors", lambda: 4)
    monkeypatch.setattr(against_looks, "ProcessPoolExecutor", refused)
    expected = tuple(by_hand(book, orders))
    assert face(book, orders, nothing(tmp_path), pool=1) == expected


def test_a_process_of_another_program_does_not_work() -> None:
    absent: Any = None
    nothing = against_looks.seal(absent)
    work = _SealedCall("another", (), nothing, nothing, ())
    with pytest.raises(against_looks.OtherProgram):
        against_looks._worked_elsewhere(work)
