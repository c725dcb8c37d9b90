"""Calls over what they were: old lines may lie on new ones, and nothing else may be wrong."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

import pytest

from stemline.emit.svg import to_svg
from stemline.football.play import Play
from stemline.outside.project import read_files
from stemline.picture.picture import picture
from stemline.read.read_playbook import read_playbook
from stemline.resolve.all_calls import Calls, all_calls
from stemline.resolve.season import season
from stemline.source import Source
from stemline.syntax.parser import parse
from stemline.theme import Size, load_theme

from .faults import faults
from .marks import read_svg
from .pictures import PLAYBOOKS

HERONS, LANTERNS = "saltmarsh-herons", "cedar-flats-lanterns"
Swaps = tuple[tuple[str, str], ...]


@dataclass(frozen=True)
class Case:
    """A call, and what the playbook said before: texts put in the place of others, another call."""

    book: str
    call: str
    swaps: Swaps = ()
    was: str = ""


CASES = {
    "deeper routes": Case(
        HERONS,
        "Quads Left Tuck Crossers",
        (
            ("under runs cross 5\n", "under runs cross 7\n"),
            ("settle runs sit 8 over ball", "settle runs sit 9.5 over ball"),
        ),
    ),
    "other routes": Case(
        HERONS,
        "Spread Right Smash",
        (("middle runs seam", "middle runs dig 12"), ("short runs hitch 6", "short runs slant 4")),
    ),
    "another motion": Case(
        HERONS,
        "Quads Left Tuck Crossers Return",
        (("moves to away, 6 outside tackle", "moves to away, 2 outside tackle"),),
    ),
    "other places": Case(
        HERONS,
        "Three Two Right Crossers",
        (
            ("H at call, 4 outside tackle, off line", "H at call, 1 outside tackle, off line"),
            ("R at away, 2 outside ball, 5 deep", "R at ball, 7 deep"),
        ),
    ),
    "another call": Case(HERONS, "Spread Right Smash", was="Three Two Right Crossers"),
    "a tag": Case(
        LANTERNS, "Trips Close Left Crossers Return", was="Trips Close Left Crossers"
    ),
    "a wider aim": Case(
        HERONS, "Pro Left Power", (("carrier aims playside B", "carrier aims playside C"),)
    ),
    "an aim and a block": Case(
        HERONS,
        "Ace Right Inside Zone",
        (
            ("carrier aims playside A", "carrier aims playside tackle"),
            ("playside guard blocks on or", "playside guard blocks reach or"),
        ),
    ),
    "another run": Case(LANTERNS, "Pistol Right Counter", was="Doubles Left Zone Keep"),
}  # fmt: skip


@cache
def expanded(book: str, call: str, swaps: Swaps) -> Play:
    """A call of a bundled playbook, with texts of it swapped; nothing of it is proved."""
    texts = [source.text for source in read_files(PLAYBOOKS / book).sources]
    for old, new in swaps:
        assert any(old in text for text in texts), old
        texts = [text.replace(old, new) for text in texts]
    sources = [Source(str(number), text) for number, text in enumerate(texts)]
    read, _ = read_playbook([parse(source)[0] for source in sources], [], book)
    assert read is not None
    calls, _ = all_calls(read)
    only = Calls(tuple(row for row in calls.orders if row[1].spoken == call))
    (play,) = season(read, only, lambda *_: ())[0].plays
    return play


@pytest.mark.parametrize("theme", ["plain", "dark"])
@pytest.mark.parametrize("case", CASES.values(), ids=CASES.keys())
def test_a_call_over_what_it_was_is_clean(case: Case, theme: str) -> None:
    look = load_theme(theme)
    now = expanded(case.book, case.call, ())
    before = expanded(case.book, case.was or case.call, case.swaps)
    for size in Size:
        svg = to_svg(picture(now, size, look, before=before), look)
        assert 'class="before"' in svg
        assert [str(fault) for fault in faults(read_svg(svg, look))] == [], size
