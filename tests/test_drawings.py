"""Pictures and pages from what is kept: the same bytes as without, whatever was edited before."""

from __future__ import annotations

import random
import re
from collections.abc import Callable, Iterator
from dataclasses import replace
from functools import cache, partial
from importlib.resources import files
from pathlib import Path
from types import MappingProxyType
from typing import Any

import pytest
from sampling import every

import stemline.emit.parts as parts
import stemline.emit.side_by_side as side_by_side
import stemline.printing.drawings as drawings
from stemline.football.play import Kind, Play, Season
from stemline.football.timing.levels import LEVELS
from stemline.geometry.box import Box
from stemline.one_picture import drawn
from stemline.outside.store import Store
from stemline.printing.drawings import Drawings, Showing
from stemline.results import made_book, made_sheet
from stemline.session import Session
from stemline.source import Source
from stemline.theme import Size, Theme, load_theme

Texts = dict[str, str]


@cache
def starter(code: str = "high-school") -> tuple[tuple[str, str], ...]:
    folder = files("stemline.grammar").joinpath("starter", code)
    return tuple(
        (file.name, file.read_text("utf-8"))
        for file in sorted(folder.iterdir(), key=lambda f: f.name)
        if file.name.endswith(".play")
    )


def compiled(texts: Texts) -> tuple[Session, Season] | None:
    """The playbook and its season, as a sheet shows it; None for a text with a mistake."""
    session = Session([Source(name, text) for name, text in texts.items()], "starter", whole=True)
    season, wrong = session.pictured()
    found = (*session.definitions, *wrong)
    return None if season is None or any(d.is_error for d in found) else (session, season)


@cache
def season() -> Season:
    made = compiled(dict(starter()))
    assert made is not None
    return made[1]


def sheet(made: tuple[Session, Season], store: Store | None, size: Size = Size.THUMB) -> bytes:
    session, shown = made
    data, _ = made_sheet(
        session, shown, "", "", "letter", load_theme(), ".svg", lambda done, of: None, size,
        views=True, store=store,
    )  # fmt: skip
    return data


class Counted:
    """How many pictures were drawn."""

    def __init__(self, patch: pytest.MonkeyPatch) -> None:
        self.drawn = 0
        make = drawings.picture

        def counted(*args: Any) -> Any:
            self.drawn += 1
            return make(*args)

        patch.setattr(drawings, "picture", counted)

    def since(self, work: Callable[[], bytes]) -> tuple[int, bytes]:
        before = self.drawn
        made = work()
        return self.drawn - before, made


@pytest.fixture
def counted(monkeypatch: pytest.MonkeyPatch) -> Counted:
    return Counted(monkeypatch)


NUMBER, SIDE = re.compile(r"(?<![\w.])\d{1,2}(?![\w.])"), re.compile(r"\b(left|right)\b")
SENTENCE = re.compile(r'(?<=say ")[^"]+')


def edited(texts: Texts, dice: random.Random) -> Texts:
    """The texts with one number, side or sentence changed."""
    name = dice.choice(sorted(texts))
    text = texts[name]
    kind = dice.choice((NUMBER, NUMBER, SIDE, SENTENCE))
    places = [
        m
        for m in kind.finditer(text)
        if "//" not in text[text.rfind("\n", 0, m.start()) + 1 : m.start()]
    ]
    if not places:
        return texts
    at = dice.choice(places)
    if kind is NUMBER:
        new = str(max(1, int(at[0]) + dice.choice((-2, -1, 1, 2))))
    elif kind is SIDE:
        new = "left" if at[0] == "right" else "right"
    else:
        new = f"{at[0]} Again."
    return {**texts, name: text[: at.start()] + new + text[at.end() :]}


def edits(seed: int, most: int) -> Iterator[tuple[Session, Season]]:
    """Playbooks, each one edit after the one before; one with a mistake is taken back."""
    texts, dice = dict(starter()), random.Random(seed)
    while most:
        tried = edited(texts, dice)
        made = compiled(tried) if tried != texts else None
        if made is not None:
            texts = tried
            most -= 1
            yield made


def test_edited_in_a_row_every_picture_is_as_without_the_store(
    tmp_path: Path, counted: Counted
) -> None:
    warm, cold = 0, 0
    for made in edits(seed=1, most=30 // every(4)):
        with Store(tmp_path) as store:
            few, kept = counted.since(partial(sheet, made, store))
        all_, fresh = counted.since(partial(sheet, made, None))
        assert kept == fresh
        warm, cold = warm + few, cold + all_
    assert warm < cold / 2, "most pictures do not change with an edit"


def test_a_picture_is_drawn_once_for_all_commands(tmp_path: Path, counted: Counted) -> None:
    texts = dict(starter())
    made, again = compiled(texts), compiled(texts)
    assert made is not None and again is not None
    with Store(tmp_path) as store:
        first, _ = counted.since(lambda: sheet(made, store))
    assert first
    moved = compiled({name: f"// A line more.\n\n{text}" for name, text in texts.items()})
    role = re.compile(r"^    (\w+) runs \w+$", re.MULTILINE)
    told = r'\g<0>\n    \1 says "Eyes up."'
    said = {name: role.sub(told, text, count=1) for name, text in texts.items()}
    other = compiled(said)
    assert moved is not None and other is not None and said != texts
    assert any(task.says for play in other[1].plays for task in play.assignments)
    for each in (again, moved, other):
        with Store(tmp_path) as store:
            assert counted.since(partial(sheet, each, store))[0] == 0
    play = made[1].plays[0]
    with Store(tmp_path) as store:
        drawn(play, load_theme(), Size.THUMB, store=store)
    assert counted.drawn == first


def test_a_small_picture_has_no_svg_until_one_asks(tmp_path: Path, counted: Counted) -> None:
    play, showing = season().plays[0], Showing(Size.THUMB)
    with Store(tmp_path) as store:
        maker = Drawings(load_theme(), store=store)
        assert maker.art("a", play, showing).svg == ""
        one = maker.art("a", play, showing, svg=True)
        two = maker.art("b", play, showing, svg=True, ids="b-")
        assert counted.drawn == 2
    alone = Drawings(load_theme()).art("b", play, showing, svg=True, ids="b-")
    assert two == alone
    assert drawings._IDS not in one.svg + two.svg
    men = re.findall(r' id="(\w+)"', one.svg)
    assert men and [f"b-{man}" for man in men] == re.findall(r' id="(b-\w+)"', two.svg)[: len(men)]


def test_a_play_for_one_man_after_another_is_as_for_each_alone(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """What is the same for all of them is worked out once, and nothing of one shows in the next."""
    begun: list[Play] = []
    begin = drawings.begin

    def counted(play: Play, *rest: Any) -> Any:
        begun.append(play)
        return begin(play, *rest)

    monkeypatch.setattr(drawings, "begin", counted)
    shown = season().plays
    some = [next(p for p in shown if p.kind is kind) for kind in (Kind.PASS, Kind.RUN)]
    maker = Drawings(load_theme())
    sizes = [(play, size) for play in some for size in (Size.THUMB, Size.FULL)]
    for play, size in sizes:
        for man in [*(man.label for man in play.men), None]:
            wanted = Showing(size, only=man)
            assert maker.art("a", play, wanted) == Drawings(load_theme()).art("a", play, wanted)
    alone = sum(len(play.men) + 1 for play, _ in sizes)
    assert len(begun) == alone + 2 * len(sizes)


def test_many_are_drawn_by_other_processes_as_they_are_here(
    tmp_path: Path, counted: Counted, monkeypatch: pytest.MonkeyPatch
) -> None:
    wanted = [(play, showing, n == 1) for n, (play, showing) in enumerate(plays())]
    wanted.append((*wanted[0][:2], True))
    alone = Drawings(load_theme())
    here = [alone.art("a", play, how, svg=svg) for play, how, svg in wanted]
    before = counted.drawn
    monkeypatch.setattr(drawings, "FEW", 2)
    monkeypatch.setattr(side_by_side, "_processors", lambda: 2)
    with Store(tmp_path) as store:
        maker = Drawings(load_theme(), store=store)
        with maker.beside(wanted):
            there = [maker.art("a", play, how, svg=svg) for play, how, svg in wanted]
        assert there == here and counted.drawn - before < len(wanted) - 1, "some of them elsewhere"
        before = counted.drawn
        read: list[str] = []
        get = store.get

        def told(key: str) -> bytes | None:
            read.append(key)
            return get(key)

        monkeypatch.setattr(store, "get", told)
        with maker.beside(wanted):
            again = [maker.art("a", play, how, svg=svg) for play, how, svg in wanted]
        assert again == here and counted.drawn == before
        assert len(read) == len(wanted), "what is kept is read once"


def themes() -> Iterator[Theme]:
    """The plain theme with one thing changed that a picture shows."""
    plain = load_theme()
    look = plain.look(Size.FULL)
    pens, types = dict(look.pens), dict(look.types)
    pens["route"] = replace(pens["route"], weight=9.0)
    types["letter"] = replace(types["letter"], points=7.7)
    symbol = {**look.symbol, "man": look.symbol["man"] * 1.1} if "man" in look.symbol else None
    changed = [
        replace(look, pens=MappingProxyType(pens)), replace(look, types=MappingProxyType(types)),
        replace(look, width=look.width - 7), replace(look, margin=look.margin + 1),
    ]  # fmt: skip
    if symbol:
        changed.append(replace(look, symbol=MappingProxyType(symbol)))
    for each in changed:
        yield replace(plain, looks=MappingProxyType({**plain.looks, Size.FULL: each}))
    yield replace(plain, colours=replace(plain.colours, ground="#102030"))
    fonts = dict(plain.fonts)
    names = sorted(fonts)
    fonts[names[0]], fonts[names[-1]] = fonts[names[-1]], fonts[names[0]]
    yield replace(plain, fonts=MappingProxyType(fonts))


def plays() -> Iterator[tuple[Play, Showing]]:
    play = season().plays[0]
    other = next(each for each in season().plays if each.men == play.men and each is not play)
    label = play.men[-1].label
    yield play, Showing(Size.FULL)
    yield other, Showing(Size.FULL)
    yield play, Showing(Size.QUARTER)
    yield play, Showing(Size.FULL, Box(-20.0, -9.0, 20.0, 21.0))
    yield play, Showing(Size.FULL, only=label)
    yield play, Showing(Size.FULL, before=other)
    yield replace(play, kind=play.kind), Showing(Size.FULL, duties=True)


def test_whatever_a_picture_shows_is_in_its_key(tmp_path: Path) -> None:
    """Each with one thing changed, all from one store: as it is drawn without one."""
    asked = [(load_theme(), play, showing, "high school") for play, showing in plays()]
    asked += [(theme, *next(plays()), "high school") for theme in themes()]
    asked += [(load_theme(), *next(plays()), level) for level in LEVELS if level != "high school"]
    seen: set[str] = set()
    with Store(tmp_path) as store:
        for theme, play, showing, level in asked:
            kept = Drawings(theme, LEVELS[level], store).art("a", play, showing, svg=True)
            fresh = Drawings(theme, LEVELS[level]).art("a", play, showing, svg=True)
            assert kept == fresh
            maker = Drawings(theme, LEVELS[level], store)
            key = maker._key(drawings.seal(play), None if showing.before is None
                             else drawings.seal(showing.before), showing)  # fmt: skip
            assert key not in seen
            seen.add(key)


def test_a_style_sheet_or_another_size_changes_no_picture(tmp_path: Path, counted: Counted) -> None:
    """What a page alone takes of a theme is no part of a picture, nor is how large ones look."""
    plain, play = load_theme(), season().plays[0]
    large = replace(plain.look(Size.FULL), margin=3.0)
    looks = MappingProxyType({**plain.looks, Size.FULL: large})
    for theme in (plain, replace(plain, digest="another", layers=()), replace(plain, looks=looks)):
        with Store(tmp_path) as store:
            Drawings(theme, store=store).art("a", play, Showing(Size.THUMB))
    assert counted.drawn == 1


def test_trees_read_back_draw_nothing_again(tmp_path: Path, counted: Counted) -> None:
    """Words of a tree that was kept are other objects than those of a text that was parsed."""
    sources = [Source(name, text) for name, text in starter()]
    drawn = []
    for _ in range(2):
        with Store(tmp_path) as store:
            session = Session(sources, "starter", whole=True, store=store)
            shown, _ = session.pictured()
            assert shown is not None
            sheet((session, shown), store)
        drawn.append(counted.drawn)
    assert drawn[0] and drawn[0] == drawn[1]


def test_another_program_uses_nothing(
    tmp_path: Path, counted: Counted, monkeypatch: pytest.MonkeyPatch
) -> None:
    play, showing = next(plays())
    for told, most in (("one", 1), ("one", 1), ("other", 2), ("", 3), ("", 4)):
        monkeypatch.setattr(drawings, "program", lambda told=told: told)
        with Store(tmp_path) as store:
            Drawings(load_theme(), store=store).art("a", play, showing)
        assert counted.drawn == most


@pytest.mark.parametrize(
    "data",
    [
        *(b"", b"7", b"[]", b"{", b"[" * 100_000, b"\xff"),
        b'["a","b",1.0,1.0,"","x",""]',
        b'["a","b",1.0,1.0,"",[[1]],""]',
    ],
)
def test_a_row_of_another_shape_is_none(data: bytes) -> None:
    assert drawings._read(data) is None


def test_a_book_from_what_is_kept_is_the_same(
    tmp_path: Path, counted: Counted, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Cold, with a sentence more and with all known: the PDF and every file beside it."""
    measured: list[int] = []
    heights = parts.heights_in

    def measuring_all(document: Any) -> dict[str, float]:
        measured.append(len(document.pages))
        return heights(document)

    monkeypatch.setattr(parts, "heights_in", measuring_all)

    def measured_now() -> int:
        """Pages that were measured since it was last asked."""
        pages = sum(measured)
        measured.clear()
        return pages

    texts = dict(starter("six-man"))
    line = "    protect Fence\n"
    said = {n: t.replace(line, f'{line}    say "Throw it early."\n') for n, t in texts.items()}
    assert said != texts

    def book(texts: Texts, place: Path | None) -> dict[str, bytes]:
        made = compiled(texts)
        assert made is not None
        with Store(place) as store:
            return made_book(
                *made, "", "2026-05-01", "letter", load_theme(), lambda done, of: None, store
            )

    cold = book(texts, tmp_path)
    whole = measured_now()
    assert cold == book(texts, None)
    assert measured_now() == whole
    once = counted.drawn // 2
    book(said, tmp_path)
    part = measured_now()
    known = book(said, tmp_path)
    assert measured_now() == 0
    assert counted.drawn == 2 * once, "a sentence changes no picture"
    assert known == book(said, None)
    assert 0 < part < whole, "only what changed is measured"
