"""What follows from a change: whom a protection and a look reach, and what is kept of it."""

from __future__ import annotations

from collections.abc import Sequence
from concurrent.futures import ProcessPoolExecutor
from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest

from stemline.analysis import passes_against_looks
from stemline.analysis.passes_against_looks import face
from stemline.checks import proving
from stemline.compare import side_analysis
from stemline.compare.comparing import compared
from stemline.compare.comparison import Comparison, Consequence
from stemline.compare.following import with_consequences
from stemline.compare.side_analysis import NO_ANSWER, SideAnalysis
from stemline.compare.told import told
from stemline.outside.cache import Cache
from stemline.outside.store import Store
from stemline.outside.texts import read_files
from stemline.session import Session
from stemline.source import Source

ROOT = Path(__file__).parents[2]
HERONS = ROOT / "playbooks" / "saltmarsh-herons"
STARTER = ROOT / "grammar" / "starter" / "high-school"
HARBOUR = (
    "    centre, playside guard, playside tackle blocks slide\n",
    "    centre, playside guard, playside tackle blocks man\n",
)
SLANTS = (
    "    read outside on quick > arrow on quick > second on hitch\n",
    "    read arrow on quick > second on quick > outside on hitch\n",
)
ZERO = (
    "    C at strong #1, 1 inside, 4 deep\n    H at strong #2 or tackle, strong, 6 deep\n",
    "    C at strong #1, 1 inside, 14 deep\n    H at strong #2 or tackle, strong, 14 deep\n",
)
PART = (
    "book", "corners", "formations", "formations-backs", "formations-close", "formations-tight",
    "looks", "motions", "protections", "quick", "runs",
)  # fmt: skip
"""The files of theirs that are taken: every look, and two fifths of the passes."""
NO_CACHE = Cache(HERONS, None)


@cache
def _texts() -> tuple[Source, ...]:
    return tuple(source for source in read_files(HERONS).sources if source.stem in PART)


def _session(*edits: tuple[str, str], store: Store | None = None) -> Session:
    texts = [source.text for source in _texts()]
    for was, now in edits:
        assert any(was in text for text in texts), was
        texts = [text.replace(was, now, 1) for text in texts]
    names = (source.name for source in _texts())
    sources = [Source(n, t) for n, t in zip(names, texts, strict=True)]
    return Session(sources, "herons", store=store)


@cache
def _slants() -> tuple[Consequence, ...]:
    """What follows from that change, with nothing kept."""
    return _followed(_session(), _session(SLANTS)).follows


def _followed(old: Session, new: Session, store: Store | None = None) -> Comparison:
    return with_consequences(compared(old, new), old, new, NO_CACHE, store)


def test_a_protection_that_blocks_otherwise_reaches_the_calls_that_have_it() -> None:
    old, new = _session(), _session(HARBOUR)
    found = compared(old, new)
    have_it = {
        order.spoken
        for _, order in new.calls.orders
        if (play := new.drawn(order)[0]) is not None and play.protection == "Harbour"
    }
    assert have_it and {change.spoken for change in found.changed} == have_it
    said = [line.text for line in told(found)]
    assert f"that changes {len(have_it)} calls of" in " ".join(said), said


def test_a_look_that_is_another_is_put_to_every_pass() -> None:
    """Against every pass of both sides put to that look, whether its text changed or not."""
    old, new = _session(), _session(ZERO)
    assert len(compared(old, new).definitions) == 1
    without = []
    for side in (old, new):
        assert side.book is not None
        orders = [o for _, o in side.calls.orders if (p := side.drawn(o)[0]) and p.reads]
        zero = replace(side.book, looks={"zero": side.book.looks["zero"]})
        faced = face(zero, orders, NO_CACHE, expander=side.expander)
        without.append({f.call for f in faced if not f.answer.given})
    follows = _followed(old, new).follows
    for came, calls in ((True, without[1] - without[0]), (False, without[0] - without[1])):
        rows = [r for r in follows if r.code == NO_ANSWER and r.came == came]
        assert {call for row in rows for call in row.calls} == calls
        assert all(0 < len(row.calls) <= row.of for row in rows), "as many as the concept has"
    assert without[0] != without[1], "the change of the look decides something"


def test_a_line_that_only_stands_elsewhere_moves_no_defender() -> None:
    """A call drawn against a look is made anew with its concept; the look's text has moved."""
    remark = "look Over Three ", "// A remark.\n\nlook Over Three "
    plain, moved = (
        [c.spoken for c in compared(_session(), _session(SLANTS, *more)).changed]
        for more in ((), (remark,))
    )
    assert plain and plain == moved
    assert "Three Two Right Slants Zone" not in plain, "its tag has a read of its own"


def test_a_second_comparison_proves_nothing(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    with Store(tmp_path) as store:
        first = _followed(_session(), _session(SLANTS), store)
    assert first.follows and first.follows == _slants()

    def proved(*_: object, **__: object) -> None:
        raise AssertionError("it is known from the last time")

    monkeypatch.setattr(side_analysis, "_found", proved)
    with Store(tmp_path) as store:
        assert _followed(_session(), _session(SLANTS), store).follows == first.follows
        with pytest.raises(AssertionError, match="last time"):
            _followed(_session(), _session((SLANTS[0], SLANTS[1].replace("hitch", "reset"))), store)


def test_what_a_check_has_kept_is_not_worked_out_again(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    with Store(tmp_path) as store:
        for side in (_session(store=store), _session(SLANTS, store=store)):
            side.faced(side.read_calls("Slants"), NO_CACHE)
    expected = _slants()
    monkeypatch.setattr(proving, "prove_call", _worked_out)
    monkeypatch.setattr(passes_against_looks, "worked", _worked_out)
    with Store(tmp_path) as store:
        sides = _session(store=store), _session(SLANTS, store=store)
        assert _followed(*sides, store=store).follows == expected


def _worked_out(*_: object) -> None:
    raise AssertionError("it is kept")


def test_a_row_that_is_not_ours_is_not_believed() -> None:
    good = {("W641", "a"): "b"}
    assert side_analysis._read(side_analysis._written(good)) == good
    for bad in (b"{}x", b"[[1]]", b'[["a","b"]]', b"7", b"", None):
        assert side_analysis._read(bad) is None, bad


def test_a_process_of_its_own_says_the_same(monkeypatch: pytest.MonkeyPatch) -> None:
    here = _slants()
    apart: list[int] = []
    elsewhere = SideAnalysis.asked_elsewhere

    def asked(side: SideAnalysis, pool: ProcessPoolExecutor, calls: Sequence[str]) -> object:
        apart.append(len(calls))
        return elsewhere(side, pool, calls)

    monkeypatch.setattr(side_analysis, "processors", lambda: 2)
    monkeypatch.setattr(side_analysis, "APART", 1)
    monkeypatch.setattr(side_analysis, "STAY", 2)  # so that some are done here
    monkeypatch.setattr(SideAnalysis, "asked_elsewhere", asked)
    assert _followed(_session(), _session(SLANTS)).follows == here and apart


@pytest.mark.parametrize(
    ("route", "was", "now"),
    [
        ("comeback 9", "    code high school", "    level youth\n    code high school"),
        ("out 10", "    H is slot", "    H is slot, forty 6.5"),
    ],
)
def test_who_runs_otherwise_is_judged_in_calls_that_are_as_they_were(
    route: str, was: str, now: str
) -> None:
    """All that a check says of every call of one side and not of the other."""
    files = read_files(STARTER).sources
    texts = [Source(s.name, s.text.replace("runs stick 6", f"runs {route}")) for s in files]
    assert any(was in source.text for source in texts)
    old = Session(texts, "a")
    new = Session([Source(s.name, s.text.replace(was, now)) for s in texts], "b")
    found = _followed(old, new)
    assert found.no_play_changed and found.follows
    said = [
        {(d.code, d.message, call) for call in side.calls.by_name for d in side.proof(call).found}
        for side in (old, new)
    ]
    for came, rows in ((True, said[1] - said[0]), (False, said[0] - said[1])):
        follows = [r for r in found.follows if r.came == came and r.code != NO_ANSWER]
        told = {(row.code, call) for row in follows for call in row.calls}
        assert told == {(code, call) for code, _, call in rows}
