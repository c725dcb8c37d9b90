"""A page of a playbook as values: words and references, no drawing.

`Page` is what every kind of page has, `PageKind` what a file of ``kinds/`` gives. Every value is
frozen, since templates that a coach may change are filled from it. ``Entry.id`` is the name both of
a call's picture and of its place in the book; nothing else is linked to.
"""

from __future__ import annotations

from collections.abc import Callable, Container, Iterable, Sequence
from dataclasses import dataclass
from enum import Enum
from itertools import groupby
from typing import ClassVar

from stemline.book.content.keeping import KeepPart, Reads
from stemline.football.play import Play, Season


@dataclass(frozen=True)
class Remark:
    """A label and its words: "tag Wheel", "the back turns up the sideline"."""

    label: str
    words: str


@dataclass(frozen=True)
class Entry:
    """One picture in the book and the words over it.

    ``changes`` say, man by man, what is other than in the page's first picture; the first itself
    has none. ``play`` is what is drawn. A ``listed`` entry is a call, which stands in outline and
    index; the others are views of what a page is about. ``aside`` is a word or two beside it;
    ``also`` are calls that are found here too, since this picture says all that theirs would.
    ``solid`` are the men drawn solid, who do something else than on the page of its concept;
    ``keyed`` is what is done off the man it reads, and ``marks`` say what its signs mean.
    """

    id: str
    call: str
    play: Play
    changes: tuple[Remark, ...] = ()
    listed: bool = True
    aside: str = ""
    also: tuple[str, ...] = ()
    solid: tuple[str, ...] = ()
    keyed: str = ""
    marks: str = ""


class Listing(Enum):
    """How the contents name a page: among the first lines, on a line of its own with its words,
    in a narrow column, its family beside others, or not at all."""

    FIRST = "first"
    LINE = "line"
    COLUMN = "column"
    NONE = "none"


@dataclass(frozen=True, kw_only=True)
class Page:
    """A page between the front ones and the indexes, laid to fill its sheets; what is not said
    is not there, and a page may have no picture at all.

    ``family`` stands over its name, which stands alone without one; ``opens`` says that it is the
    first of its family, which the book itself finds out. ``base`` is the large picture and
    ``drawn`` the words beside its call, ``dressups`` the small ones. ``says``, ``tags`` and
    ``cautions`` are its coaching points; ``again`` is what the pages after its first hold.
    ``clock`` is the id of the picture of the quarterback's clock, ``further`` that of the place
    where the same is told of more calls; ``idea`` is what it is for, ``marks`` what the signs on it
    mean. ``offered`` are pictures of that place: some of them stand here where there is
    room, and with ``more`` there is something there besides. ``stands`` is the id of the place that
    says where the men of its large picture line up.

    ``template`` is a file of the theme with a macro ``body``, and where the kind has them ``jobs``
    and ``casting``, tables that may go overleaf. With ``duties`` its pictures say what each
    defender does. A ``half`` page has its first picture small, as its others, and stands on one
    sheet with the half page before it where both have room. One that ``flows`` goes over sheets
    as its text does, and each says at its top what is going on there; ``long``, it surely takes
    several. One that ``trims`` has its small pictures without the empty field above and below.
    """

    template: ClassVar[str]
    listing: ClassVar[Listing] = Listing.LINE
    duties: ClassVar[bool] = False
    half: ClassVar[bool] = False
    flows: ClassVar[bool] = False
    trims: ClassVar[bool] = False

    @property
    def long(self) -> bool:
        return False

    id: str
    name: str
    family: str = ""
    opens: bool = False
    base: Entry | None = None
    drawn: str = ""
    dressups: tuple[Entry, ...] = ()
    says: tuple[str, ...] = ()
    tags: tuple[Remark, ...] = ()
    cautions: tuple[str, ...] = ()
    again: str = "continued"
    clock: str = ""
    idea: str = ""
    further: str = ""
    marks: str = ""
    offered: tuple[Entry, ...] = ()
    more: bool = False
    stands: str = ""

    @property
    def brief(self) -> str:
        """The words on its line of the contents."""
        return ""

    @property
    def under(self) -> str:
        """The words under its name."""
        return ""

    @property
    def rusher(self) -> float | None:
        """Seconds after which the clock shows a free rusher at the passer, where there is one."""
        return None

    @property
    def anchors(self) -> tuple[str, ...]:
        """Places of the page that are pointed to besides its pictures."""
        return ()

    def all_on(self, elsewhere: Container[str]) -> bool:
        """Whether nothing is left of it where all of ``elsewhere`` stands on other pages."""
        return False

    @property
    def framed(self) -> tuple[tuple[Entry, ...], ...]:
        """The small pictures, those together that are drawn in one frame, to be compared."""
        small = (self.base, *self.dressups) if self.half and self.base else self.dressups
        return alike(small)

    @property
    def large(self) -> Entry | None:
        """Its first picture, where that is a large one."""
        return None if self.half else self.base

    @property
    def entries(self) -> tuple[Entry, ...]:
        small = (entry for entries in self.framed for entry in entries)
        return (*((self.large,) if self.large is not None else ()), *small)


def alike(entries: Sequence[Entry]) -> tuple[tuple[Entry, ...], ...]:
    """The entries as they are drawn in one frame: a run is drawn close, and would be far too small
    in the frame of a pass that it is changed to."""
    kinds = dict.fromkeys(entry.play.kind for entry in entries)
    return tuple(tuple(e for e in entries if e.play.kind is kind) for kind in kinds)


@dataclass(frozen=True)
class PageKind:
    """A kind of page, in print order: by ``order``, those of one number by their files' names.
    ``pages`` makes them of a season and of all pages that stand before them. They are kept, and
    made anew when what the kind ``reads`` changes: the whole playbook, or less where it reads no
    page before. ``parts`` in its place keeps by itself what it makes."""

    order: int
    pages: Callable[[Season, Sequence[Page]], Iterable[Page]] | None = None
    reads: Reads = Reads.ALL
    parts: Callable[[Season, Sequence[Page], KeepPart], Iterable[Page]] | None = None

    def made(self, season: Season, before: Sequence[Page], keep: KeepPart) -> Iterable[Page]:
        """The pages, as ``keep`` gives them."""
        if self.parts is not None:
            return self.parts(season, before, keep)
        pages = self.pages
        assert pages is not None, "a kind has pages"
        known = before if self.reads is Reads.ALL else ()
        return keep(
            self.reads, pages.__module__, tuple[Page, ...], "", lambda: tuple(pages(season, known))
        )


def sentence(words: str) -> str:
    """Words with their full stop; coaches' lines come with and without one."""
    words = words.strip()
    return words if not words or words[-1] in ".!?" else f"{words}."


def joined(*parts: str) -> str:
    """The parts that say something, set apart from each other."""
    return " · ".join(part for part in parts if part)


def call_ids(season: Season) -> tuple[str, ...]:
    """The id of each of the season's calls, in book order: picture, anchor and link share it."""
    return tuple(f"call-{number}" for number in range(1, len(season.plays) + 1))


def concept_groups(season: Season) -> tuple[tuple[Play, ...], ...]:
    """The season's plays cut into concepts, as they stand side by side in book order."""
    return tuple(
        tuple(plays) for _, plays in groupby(season.plays, lambda p: (p.family, p.call.concept))
    )
