"""Proofs from what is kept: a check says what it says without, whatever was edited before."""

from __future__ import annotations

import json
import random
import shutil
from collections import Counter
from collections.abc import Callable, Iterator
from functools import cache, partial
from itertools import cycle
from pathlib import Path
from typing import Any

import pytest
from sampling import every

import stemline.proofs.call_readings as call_readings
import stemline.proofs.kept_proofs as kept_proofs
from proofs.proved_texts import Texts, edited, texts
from stemline.checks import proving
from stemline.diagnostics.diagnostic import Diagnostic
from stemline.diagnostics.render import render
from stemline.football.play import Play
from stemline.outside.cache import Cache
from stemline.outside.store import Store
from stemline.proofs.reading import Reading, ReadPart
from stemline.resolve.order import Order
from stemline.session import Session
from stemline.source import NOWHERE, Source, Span

Told = tuple[str, tuple[Diagnostic, ...], tuple[Order, ...], object]


def session(said: Texts, store: Store | None = None) -> Session:
    sources = [Source(name, text) for name, text in said.items()]
    return Session(sources, "book", whole=True, store=store)


def told(said: Texts, store: Store | None, place: Path) -> Told:
    """All that a check tells, and each call's play: what is printed, places, calls, answers."""
    asked = session(said, store)
    found = asked.checked("")
    if asked.book is None:
        return "", found, (), ()
    calls: tuple[Order, ...] = ()
    answers: object = ()
    if not any(d.is_error for d in found):
        found += asked.pressed(asked.weeks)
        calls = asked.read_calls("")
        cache = Cache(place, None)
        answers = asked.faced(calls, cache), put_to_looks(asked)
    shown = {name: Source(name, text) for name, text in said.items()}
    return render(found, shown), found, calls, answers


def put_to_looks(asked: Session) -> object:
    """What the page of each concept prints of its looks: of its first call alone, as the book."""
    assert asked.book is not None
    firsts = {order.concept: order for order in reversed(asked.read_calls(""))}
    return [
        asked.put_to_looks(order, order.drawn_from, looks, partial(faced, asked, order, looks))
        for looks in (tuple(asked.book.looks),)
        for order in firsts.values()
    ]


def faced(asked: Session, order: Order, looks: tuple[str, ...]) -> tuple[Play, ...]:
    made = (asked.play(order, order.drawn_from, look_key=look) for look in looks)
    right = (play for play, found in made if not any(d.is_error for d in found))
    return tuple(play for play in right if play is not None and play.defence is not None)


class Counted:
    """How many plays were proved, and of which calls."""

    def __init__(self, patch: pytest.MonkeyPatch) -> None:
        self.calls: Counter[str] = Counter()
        prove = proving.prove_call

        def counted(book: Any, maker: Any, play: Any, *more: Any) -> Any:
            self.calls[play.call.spoken] += 1
            return prove(book, maker, play, *more)

        patch.setattr(proving, "prove_call", counted)

    def since(self, work: Callable[[], Told]) -> tuple[Counter[str], Told]:
        self.calls = Counter()
        made = work()
        done, self.calls = self.calls, Counter()
        return done, made


@pytest.fixture
def counted(monkeypatch: pytest.MonkeyPatch) -> Counted:
    return Counted(monkeypatch)


def edits(seed: int, most: int) -> Iterator[Texts]:
    """Playbooks, each an edit after the one before or, now and then, an old one again.

    Most are kept in one piece: after one with an error the next mostly starts from the last good.
    """
    dice = random.Random(seed)
    good = [texts()]
    said = good[0]
    for _ in range(most):
        said = dice.choice(good) if dice.random() < 0.1 else edited(said, dice)
        yield said
        asked = session(said)
        right = asked.book is not None and not any(d.is_error for d in asked.definitions)
        if right:
            good = [*good[-9:], said]
        elif dice.random() < 0.7:
            said = good[-1]


@pytest.mark.parametrize("seed", range(0, 4, every(4)))
def test_edited_in_a_row_a_check_says_what_it_says_without_the_store(
    seed: int, tmp_path: Path, counted: Counted
) -> None:
    few = many = errors = warnings = 0
    for said in edits(seed, 60 // every(2)):
        with Store(tmp_path / "kept") as store:
            proved, kept = counted.since(lambda: told(said, store, tmp_path))  # noqa: B023
        all_, fresh = counted.since(lambda: told(said, None, tmp_path))  # noqa: B023
        assert kept == fresh
        few, many = few + proved.total(), many + all_.total()
        errors += any(d.is_error for d in fresh[1])
        warnings += any(not d.is_error for d in fresh[1])
    assert few < many * 0.6, "many calls do not change with an edit"
    assert errors > 5 / every(2) and warnings > 30 / every(2)


@cache
def as_written() -> Texts:
    return texts()


@cache
def told_as_written() -> Told:
    """What is said of it where nothing is kept."""
    return told(as_written(), None, Path())


@pytest.fixture(scope="module")
def kept_once(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """What a check of it keeps, for every test that begins there."""
    place = tmp_path_factory.mktemp("written") / "kept"
    with Store(place) as store:
        assert told(as_written(), store, place) == told_as_written()
    return place


@pytest.fixture
def as_kept(kept_once: Path, tmp_path: Path) -> Path:
    """A copy of it that is this test's own."""
    return shutil.copytree(kept_once, tmp_path / "kept")


def proved_after(said: Texts, as_kept: Path, counted: Counted) -> set[str]:
    """The calls that are proved when the texts are ``said``, after all was kept as it was."""
    with Store(as_kept) as store:
        proved, kept = counted.since(lambda: told(said, store, as_kept))
    assert kept == (told_as_written() if said == as_written() else told(said, None, as_kept))
    return set(proved)


def changed(name: str, old: str, new: str) -> Texts:
    said = as_written()
    assert old in said[name]
    return {**said, name: said[name].replace(old, new)}


def test_nothing_is_proved_twice(as_kept: Path, counted: Counted) -> None:
    assert not proved_after(as_written(), as_kept, counted)


def test_lines_that_move_prove_nothing(as_kept: Path, counted: Counted) -> None:
    moved = {name: f"// a line more\n\n\n{text}" for name, text in as_written().items()}
    assert not proved_after(moved, as_kept, counted)
    inside = changed("book.play", "    protect six slide", "    // inside\n    protect six slide")
    assert not proved_after(inside, as_kept, counted)
    behind = changed("runs.play", "    key backside overhang", "    key backside overhang  // he")
    assert not proved_after(behind, as_kept, counted)


def test_one_changed_route_proves_the_calls_that_run_it(as_kept: Path, counted: Counted) -> None:
    said = changed("more.play", "    other runs hitch", "    other runs slant")
    calls = proved_after(said, as_kept, counted)
    assert calls and all(" Sticks" in call for call in calls)


def test_other_words_of_the_coach_prove_nothing(as_kept: Path, counted: Counted) -> None:
    said = changed("more.play", '    say "Spread them out."', '    say "Spread."')
    for old in ("Sit down and show your numbers.", "Win outside."):
        assert old in said["more.play"]
        said["more.play"] = said["more.play"].replace(old, "Another word.")
    assert not proved_after(said, as_kept, counted)


def test_one_changed_look_proves_runs_and_who_names_it(as_kept: Path, counted: Counted) -> None:
    calls = proved_after(
        changed("book.play", "    W rushes B, weak", "    W rushes C, weak"), as_kept, counted
    )
    assert {call.split()[-1] for call in calls} <= {"Dive", "Orbit", "Sticks", "Deep"} and calls


def test_a_row_that_is_not_as_we_write_is_proved_again(as_kept: Path, counted: Counted) -> None:
    """Signed as it should be, and with other data in it: nothing of it is said. Each row is another
    of the strange ones, and another the next time."""
    strange = list(_strange())
    for first in range(0, len(strange), every(4)):
        rows = cycle(strange[first:] + strange[:first])
        given: set[bytes] = set()

        def another(key: str, get: Any, rows: Any = rows, given: set[bytes] = given) -> Any:
            if not get(key):
                return None
            given.add(row := next(rows))
            return row

        with Store(as_kept) as store:
            store.get = partial(another, get=store.get)  # type: ignore[method-assign]
            assert told(as_written(), store, as_kept) == told_as_written()
        assert given == set(strange)


def _strange() -> Iterator[bytes]:
    place = [0, 1, 2]
    yield b"\xff\xfe"
    yield b"["
    strange: tuple[object, ...] = (
        None, 7, {}, [7], ["a"], [[], 1, 1], [[["E999", {}, place, [], []]], True, True],
        [["E620", {"call": 1}, place, [], []]], [[["W650", {}, place, [], []]], True, True],
        [["os.system", {"command": "true"}, place, [], []]], [[[]], True, True],
        [[["W103", {}, [9999, 1, 2], [], []]], True, True],
        [[["W103", {}, [-2, 1, 2], [], []]], True, True],
        [["W103", {}, [9999, 1, 2], [], []]], [["W103", {}, place, [7], []]],
    )  # fmt: skip
    for held in strange:
        yield json.dumps(held).encode()


@pytest.mark.parametrize(("day", "code"), [("Nowhere", "E730"), ("Hitches Other", "")])
def test_an_install_that_comes_new_is_judged(day: str, code: str, as_kept: Path) -> None:
    """It may name whatever the playbook has, so it is judged each time."""
    said = {**as_written(), "install.play": f"install Camp\n    day 1\n        {day}\n"}
    fresh = told(said, None, as_kept)
    with Store(as_kept) as store:
        assert told(said, store, as_kept) == fresh
    assert (code or "E7") in fresh[0] or not code


def test_another_program_proves_all_again(
    as_kept: Path, counted: Counted, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(call_readings, "program", lambda: "another")
    with Store(as_kept) as store:
        proved, _ = counted.since(lambda: told(as_written(), store, as_kept))
    assert len(proved) > 8


def test_nothing_is_kept_of_a_program_that_cannot_be_told(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    answers = iter(range(4))

    def asked() -> int:
        with Store(tmp_path / "kept") as store:
            kept = kept_proofs.KeptAnswers(store)
            read: Callable[[Any, Reading], int] = lambda held, _: int(held)  # noqa: E731
            return kept.answer("number", lambda: Reading([]), lambda: next(answers), read, read)

    assert [asked(), asked()] == [0, 0]
    monkeypatch.setattr(kept_proofs, "program", lambda: "")
    assert [asked(), asked()] == [1, 2]


# Places.


def test_places_are_found_again_by_what_was_read() -> None:
    old = Reading([ReadPart(Span("a", 7, 3, 5)), ReadPart((Span("b", 2, 1, 4), NOWHERE))])
    new = Reading([ReadPart(Span("a", 9, 3, 5)), ReadPart((Span("c", 4, 1, 4), NOWHERE))])
    assert old.digest == new.digest
    assert new.span(old.place(Span("a", 7, 4, 9))) == Span("a", 9, 4, 9)
    assert new.span(old.place(Span("b", 2, 1, 2))) == Span("c", 4, 1, 2)
    assert new.span(old.place(NOWHERE)) == NOWHERE
    with pytest.raises(KeyError):
        old.place(Span("a", 8, 3, 5))


@pytest.mark.parametrize(
    "other",
    [
        [Span("a", 1, 3, 5), Span("a", 2, 2, 4)],  # another column
        [Span("a", 2, 3, 5), Span("a", 1, 1, 4)],  # the other one first
        [Span("a", 1, 3, 5), Span("a", 1, 1, 4)],  # both on one line
    ],
)
def test_what_stands_first_and_on_one_line_is_in_the_key(other: list[Span]) -> None:
    said = [Span("a", 1, 3, 5), Span("a", 2, 1, 4)]
    apart = Reading([ReadPart(each) for each in said])
    assert apart.digest != Reading([ReadPart(each) for each in other]).digest
    assert Reading([ReadPart(said)]).digest != Reading([ReadPart(other)]).digest


_LATER = "3 outside tackle, 1 deep"
_MOVED = "moves to away, 6 outside tackle, on"
_UNUSED = "first runs out\n    keeps read, feet"
INGREDIENTS = {
    "formation": ("more.play", _LATER, "2 outside ball, 5 deep"),
    "motion": ("book.play", _MOVED, "moves to away, 9 outside tackle, off"),
    "concept": ("more.play", "first runs hitch", "first runs slant"),
    "tag": ("more.play", "    other runs go", "    first blocks edge"),
    "protection": ("book.play", "toward weak", "toward call"),
    "look": ("book.play", "W rushes B, weak", "M rushes B, weak"),
    "code": ("book.play", "canadian amateur", "canadian professional"),
    "level": ("book.play", "canadian amateur\n", "canadian amateur\n    level college\n"),
    "personnel": ("book.play", "H, S, W is slotback", "H, S, W is slotback, forty 5.9"),
    "looks against": ("more.play", "against Zero", "against Front"),
    "unused tag": ("runs.play", _UNUSED, "first blocks edge\n    keeps read, feet"),
    "week": ("week.play", "faces Zero", "faces Front"),
}
"""A change of each thing that a check reads, such that it says another thing."""


@pytest.mark.parametrize("what", INGREDIENTS)
def test_whatever_a_check_reads_is_in_a_key(what: str, as_kept: Path) -> None:
    name, old, new = INGREDIENTS[what]
    said = changed(name, old, new)
    with Store(as_kept) as store:
        kept = told(said, store, as_kept)
    fresh = told(said, None, as_kept)
    assert kept == fresh
    assert fresh[1:] != told_as_written()[1:], "another change has to be found for this"
