"""Which of a book's pictures are crowded, worst first, in words.

Every picture that the book prints of a call is looked at: its large one, and its small one in the
frame of its page.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from stemline.book.content.book import Book
from stemline.book.content.page import Entry
from stemline.diagnostics.in_words import how_many
from stemline.geometry.box import Box
from stemline.picture.labels.labels import Trouble
from stemline.picture.labels.placing import ALL, WORST, Crowding, Tight
from stemline.picture.picture import frame_of, how_crowded
from stemline.printing.model import Progress
from stemline.theme import SIZES, Size, Theme

_SIZES = {size: word for word, size in SIZES.items()}
_ROLES = {
    "read": "read {}",
    "alert": "the alert {}",
    "depth": "the depth {}",
    "words": 'the note "{}"',
}
_WORDS = {
    Trouble.AWAY: "stands away from its place",
    Trouble.LINE: "lies on a line",
    Trouble.SYMBOL: "lies on a man",
    Trouble.LABEL: "lies on another label",
    Trouble.EDGE: "reaches over the edge",
    Trouble.DOUBT: "could belong to another place",
    Trouble.CUT_OFF: "is parted from its place by a line",
}
_ON = {
    Trouble.LINE: "lies on the line of {on}",
    Trouble.SYMBOL: "lies on {on}",
    Trouble.LABEL: "lies on {on}",
}


@dataclass(frozen=True)
class Seen:
    """One picture of a call, and how crowded it is."""

    call: str
    size: Size
    crowding: Crowding


def look_over(book: Book, theme: Theme, progress: Progress) -> tuple[Seen, ...]:
    """Every picture of every call of ``book``, in its order, each drawn once."""
    pages = [page for page in book.pages if any(entry.listed for entry in page.entries)]
    total = sum(
        (entry is page.large) + 2 * (entry is not page.large)
        for page in pages
        for entry in page.entries
        if entry.listed
    )
    seen: list[Seen] = []

    def look(entry: Entry, size: Size, frame: Box | None = None) -> None:
        seen.append(Seen(entry.call, size, how_crowded(entry.play, size, theme, frame)))
        progress(len(seen), total)

    for page in pages:
        if page.large is not None:
            look(page.large, Size.FULL)
        for entries in page.framed:
            frame = frame_of([entry.play for entry in entries], Size.THUMB)
            for entry in filter(lambda each: each.listed, entries):
                look(entry, Size.FULL)
                look(entry, Size.THUMB, frame)
    return tuple(seen)


def crowd_lines(seen: Sequence[Seen]) -> Iterator[str]:
    """The crowded pictures, worst first, and how many calls have one."""
    crowded = sorted((s for s in seen if s.crowding.crowded), key=lambda s: -s.crowding.worst)
    if crowded:
        yield (
            f"Crowded pictures, worst first. A label may cost up to {WORST:g} and all of a picture "
            f"{ALL:g}; one in its best place costs nothing."
        )
    for each in crowded:
        yield f"  {each.call}, {_SIZES[each.size]}: {_told(each.crowding)}"
    calls = len(dict.fromkeys(s.call for s in seen))
    bad = len(dict.fromkeys(s.call for s in crowded))
    yield f"{how_many(calls, 'call')}, {bad or 'none'} crowded"


def _told(crowding: Crowding) -> str:
    worst = crowding.labels[0]
    words = _ROLES.get(worst.role, "a label").format(worst.text).rstrip()
    return (
        f"{words} {_trouble(worst)} ({worst.cost:.1f}; all labels {crowding.cost:.1f}, "
        f"{how_many(crowding.leaders, 'leader')})"
    )


def _trouble(label: Tight) -> str:
    if label.on and label.trouble in _ON:
        return _ON[label.trouble].format(on=label.on)
    return _WORDS[label.trouble]
