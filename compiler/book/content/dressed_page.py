"""Pages of dress-ups: what the other calls of some concepts change, and their pictures."""

from __future__ import annotations

from collections.abc import Container, Sequence
from dataclasses import dataclass

from stemline.book.content.block_table import KeyRead
from stemline.book.content.by_call import ByCall
from stemline.book.content.drawn_calls import Left
from stemline.book.content.page import Entry, Listing, Page, Remark, alike
from stemline.book.content.page_marks import SOLID, DrawnSigns, sign_marks
from stemline.diagnostics.in_words import each_sign_once
from stemline.football.play import Kind, Play

SHEETS = 24.0
"""Sheets of dress-ups that are set together before the next concept begins: fewer, and a part of a
sheet is left at the end of each too often; more, and they are far from their concepts."""
_SHEET = 690.0
_HEAD, _LINE = 34.0, 11.5
_ROW = {Kind.RUN: 92.0, Kind.PASS: 128.0}
"""Points of a sheet, of a concept's heading, a line, and a row of two pictures; measured, and only
used to guess where a new sheet is begun."""
_LONG = 8.0
"""Sheets by that guess which are more than one, however wrong it is and however many pictures stand
on the concepts' own pages."""
_LETTERS = 120
"""Letters on a line across the page."""


@dataclass(frozen=True)
class DressGroup:
    """A concept's dress-ups: ``calls`` are what they change in words, ``keys`` whom they read,
    ``entries`` the pictures, and ``said`` the calls that need none, with where their parts are
    drawn. ``of`` is the id of the concept's page and ``id`` its own. ``signs`` are those in each of
    its pictures, in order."""

    id: str
    of: str
    name: str
    family: str
    calls: tuple[ByCall, ...]
    keys: tuple[KeyRead, ...]
    entries: tuple[Entry, ...]
    said: tuple[Remark, ...]
    signs: tuple[DrawnSigns, ...] = ()

    @property
    def empty(self) -> bool:
        return not (self.calls or self.keys or self.entries or self.said)

    def all_on(self, elsewhere: Container[str]) -> bool:
        """Whether all of it stands elsewhere: its words under its own id, each picture."""
        worded = not (self.calls or self.keys) or self.id in elsewhere
        return worded and not self.said and all(e.id in elsewhere for e in self.entries)

    @property
    def height(self) -> float:
        """About how many points it takes."""
        lines = sum(1 + sum(len(j.words) + 12 for j in c.jobs) // _LETTERS for c in self.calls)
        lines += 2 * len(self.keys) + len(self.said)
        return _HEAD + _LINE * lines + sum(_ROW[e.play.kind] for e in self.entries) / 2


@dataclass(frozen=True, kw_only=True)
class DressedPage(Page):
    """The dress-ups of some concepts that follow each other."""

    template = "dressed.html.jinja"
    listing = Listing.NONE
    flows = True
    trims = True

    groups: tuple[DressGroup, ...]

    @property
    def framed(self) -> tuple[tuple[Entry, ...], ...]:
        return tuple(entries for group in self.groups for entries in alike(group.entries))

    @property
    def anchors(self) -> tuple[str, ...]:
        return tuple(group.id for group in self.groups)

    def all_on(self, elsewhere: Container[str]) -> bool:
        return all(group.all_on(elsewhere) for group in self.groups)

    @property
    def long(self) -> bool:
        return sum(group.height for group in self.groups) > _LONG * _SHEET

    @property
    def marks_of(self) -> dict[str, str]:
        """The signs of each picture, by its id: the foot of a sheet tells those that it has, and a
        sheet may have any of them."""
        every = tuple(signs for group in self.groups for signs in group.signs)
        return {
            entry.id: each_sign_once(sign_marks((signs,), every), SOLID if entry.solid else "")
            for group in self.groups
            for entry, signs in zip(group.entries, group.signs, strict=True)
        }


def dressed(groups: Sequence[DressGroup]) -> DressedPage:
    """The page of ``groups``, of which there is at least one."""
    first, last = groups[0].name, groups[-1].name
    names = first if len(groups) == 1 else f"{first} to {last}"
    return DressedPage(id=f"{groups[0].id}-all", name=f"{names}, dressed up", groups=tuple(groups))


def enough(groups: Sequence[DressGroup]) -> bool:
    """Whether these fill their sheets well enough to be set."""
    return sum(group.height for group in groups) > SHEETS * _SHEET


def said_of(left: Sequence[Left], plays: Sequence[Play]) -> tuple[Remark, ...]:
    """The calls that are the sum of two pictures, and the mirrors of such, with their parts."""
    parts: dict[tuple[int, ...], list[str]] = {}
    for one in left:
        if len(one.of) > 1:
            parts.setdefault(one.of[1:], []).append(plays[one.call].call.spoken)
    return tuple(
        Remark(
            ", ".join(calls),
            f"as without the tag{'s' * (len(of) > 1)}, {' and '.join(_part(plays[i]) for i in of)}",
        )
        for of, calls in parts.items()
    )


def _part(play: Play) -> str:
    return f"{' + '.join(play.call.tags)} as in {play.call.spoken}"


def mirrors(call: int, left: Sequence[Left], plays: Sequence[Play]) -> tuple[str, ...]:
    """The calls that the picture of ``call`` shows turned over."""
    return tuple(plays[one.call].call.spoken for one in left if one.mirror and one.of == (call,))
