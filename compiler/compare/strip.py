"""A concept or formation in pictures through its playbook's revisions: a strip, a picture for each
revision that changed its plays, what was under what came."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from stemline.compare.comparing import compared
from stemline.compare.comparison import CallChange, Comparison
from stemline.diagnostics.in_words import how_many, together
from stemline.emit.apart import apart
from stemline.emit.contact import Contact, SheetCell, SheetGroup, contact_pdf, contact_svg
from stemline.emit.gallery import Art
from stemline.emit.single import picture_png
from stemline.football.play import Play
from stemline.printing.drawings import Drawings, Showing
from stemline.session import Session, no_collecting
from stemline.theme import Size, Theme

_ORDER = re.compile(" (?:was|were|went)")
"""What parts an order's name from the words after it: "The kill was"."""


@dataclass(frozen=True)
class DatedSession:
    """A playbook as a revision has it: the day of it, who made it, and the session of its texts."""

    day: str
    who: str
    session: Session


@dataclass(frozen=True)
class StripTurn:
    """A revision that changed the plays: one of them as it was and as it is, and how many others
    changed with it. ``was`` is None where they came; ``otherwise`` are the orders that are others
    where no man is drawn elsewhere, since then the two pictures are alike."""

    day: str
    who: str
    was: Play | None
    now: Play
    others: int
    otherwise: str = ""


def strip_turns(revisions: Sequence[DatedSession], name: str) -> tuple[StripTurn, ...]:
    """The turns, oldest first, of what is called ``name`` at the end, followed back through its
    renames. A revision that cannot be read is passed over."""
    read = [each for each in revisions if each.session.book is not None]
    asked = {name.casefold()}
    found: list[StripTurn] = []
    for older, newer in reversed(list(zip((None, *read), read, strict=False))):
        if older is None:
            found += _came(newer, _plays(newer.session, asked))
            continue
        both = compared(older.session, newer.session)
        former = _former(both, asked)
        changed = [c for c in both.changed if c.was and c.now and _is_of(c.now, asked)]
        if changed:
            found.append(_turn(newer, changed))
        elif not any(_is_of(p, former) for p in _plays(older.session, former)):
            found += _came(newer, [play for play in both.added if _is_of(play, asked)])
        asked = former
    return tuple(reversed(found))


def _turn(newer: DatedSession, changed: Sequence[CallChange]) -> StripTurn:
    """The call that most men move in, of those the first."""
    most = max(changed, key=lambda c: sum(m.moved or m.motion or m.path for m in c.men))
    assert most.now is not None, "it was looked for"
    drawn = any(m.moved or m.motion or m.path for m in most.men)
    orders = together([_ORDER.split(what)[0].lower() for what, *_ in most.orders])
    return StripTurn(
        newer.day, newer.who, most.was, most.now, len(changed) - 1, "" if drawn else orders
    )


def _came(newer: DatedSession, plays: Sequence[Play]) -> Iterator[StripTurn]:
    if plays:
        yield StripTurn(newer.day, newer.who, None, plays[0], len(plays) - 1)


def _former(both: Comparison, asked: set[str]) -> set[str]:
    """The names before this revision."""
    names = {
        c.now.name.casefold(): c.was.name.casefold()
        for c in both.definitions
        if c.was is not None and c.now is not None and c.one.kind in ("concept", "run", "formation")
    }
    return {names.get(name, name) for name in asked}


def _plays(session: Session, asked: set[str]) -> list[Play]:
    orders = [o for _, o in session.calls.orders if {o.concept, o.formation} & asked]
    return [play for order in orders if (play := session.drawn(order)[0]) is not None]


def _is_of(play: Play, asked: set[str]) -> bool:
    return bool({play.call.concept.casefold(), play.call.formation.casefold()} & asked)


@no_collecting()
def strip_file(
    turns: Sequence[StripTurn],
    name: str,
    drawings: Drawings,
    theme: Theme,
    kind: str,
    *,
    who: bool = False,
) -> bytes:
    """The strip as SVG, or where ``kind`` is ".pdf" or ".png" as that: the call over each picture,
    its day beneath; ``who`` adds who made it. Raises what `contact_pdf` does."""
    sheet = _strip(turns, name, drawings, who, kind != ".pdf")
    if kind == ".pdf":
        return apart(theme, len(turns), contact_pdf, sheet, theme, "letter", turns[-1].day)
    svg = contact_svg(sheet, theme)
    return (
        picture_png(Art("strip", svg, sheet.title, 0.0, 0.0), theme)
        if kind == ".png"
        else svg.encode()
    )


def _strip(
    turns: Sequence[StripTurn], name: str, drawings: Drawings, who: bool, svg: bool
) -> Contact:
    cells = []
    for number, turn in enumerate(turns):
        wanted, id_ = Showing(Size.QUARTER, before=turn.was), f"turn-{number}"
        art = drawings.art(id_, turn.now, wanted, svg=svg, ids=f"{id_}-")
        others = f"and {how_many(turn.others, 'more call')}" if turn.others else ""
        orders = f"otherwise: {turn.otherwise}" if turn.otherwise else ""
        told = (turn.day, turn.who * who, "new" * (turn.was is None), orders, others)
        below = ", ".join(filter(None, told))
        cells.append(SheetCell(turn.now.call.spoken, art, below=below))
    note = f"{name}: solid is what came, dashed and pale what was"
    title = f"{name} through the seasons"
    return Contact(title, title, Size.QUARTER, (SheetGroup(note, tuple(cells)),))
