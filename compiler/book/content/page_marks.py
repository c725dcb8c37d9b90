"""The marks of a page in a line at its foot: what a man who opens the book there has to know.

Only what stands on the page is told; the page on reading pictures tells all of it at length.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from stemline.book.content.answer_table import Answers
from stemline.book.content.block_table import BY_HIS_RULE, NOTHING, Fronts
from stemline.diagnostics.in_words import BETWEEN_SIGNS
from stemline.football.play import Kind, Play

SOLID = "solid: new job"
"""Of the men in a dress-up who do something else than on the page of its concept."""
LAST_RESORTS = ("Out", "Down", "Help")
"""How the table says the block of a man whose rule finds nobody, where that is no part of it."""


@dataclass(frozen=True)
class DrawnSigns:
    """What is drawn in a picture besides men, lines and yards, and whether it is that of a run."""

    run: bool
    reads: bool
    pressure: bool
    alerts: bool
    claims: bool
    keys: bool
    kept: bool
    wedged: bool
    chasing: bool


def signs_of(plays: Iterable[Play]) -> tuple[DrawnSigns, ...]:
    """The signs in the picture of each of ``plays``."""
    return tuple(
        DrawnSigns(
            run=play.kind is Kind.RUN,
            reads=bool(play.reads),
            pressure=bool(play.pressure),
            alerts=bool(play.alerts),
            claims=bool(play.claims),
            keys=bool(play.keys),
            kept=_kept(play),
            wedged=play.kind is Kind.RUN and bool(play.unmet),
            chasing=bool(play.chasing),
        )
        for play in plays
    )


def picture_marks(plays: Iterable[Play]) -> str:
    """What is drawn in the pictures of ``plays`` besides men, lines and yards; "" for nothing."""
    return sign_marks(signs_of(plays))


def sign_marks(signs: Iterable[DrawnSigns], among: Iterable[DrawnSigns] = ()) -> str:
    """What these mean; "" for nothing. ``among`` are those that may stand in one line with them."""
    drawn = tuple(signs)
    line = (*drawn, *among)
    said = (
        ("1, 2: order of his eyes", any(each.reads for each in drawn)),
        ("›: under pressure", any(each.pressure for each in drawn)),
        ("A: looked at first", any(each.alerts for each in drawn)),
        ("dotted: shape read", any(each.claims for each in drawn)),
        ("letter in a box: read", any(each.keys for each in drawn)),
        (_dashes(line), any(each.kept for each in drawn)),
        (_wedges(line), any(each.wedged for each in drawn)),
    )
    return BETWEEN_SIGNS.join(words for words, there in said if there)


def _dashes(drawn: Sequence[DrawnSigns]) -> str:
    """In short beside the signs of passes: all of them are one line."""
    alone = not any(each.reads for each in drawn)
    return "short dashes: if he keeps it" if alone else "dashes: kept"


def _kept(play: Play) -> bool:
    """Whether a way is drawn on which the quarterback keeps the ball if a key has him keep it."""
    passer = play.passer
    if play.kind is not Kind.RUN or passer is None:
        return False
    return any(task.branches for task in play.assignments if task.man == passer.label)


def _wedges(drawn: Sequence[DrawnSigns]) -> str:
    """In short beside the signs of passes: all of them are one line."""
    left = any(each.chasing for each in drawn) and all(each.run for each in drawn)
    return "wedge: unblocked" + (", or left to the carrier" if left else "")


def block_marks(table: Fronts | None) -> str:
    """How the letters of the table of blocks are told apart; "" without one."""
    if table is None:
        return ""
    words = "boxed in the table: theirs"
    nobody = any(NOTHING in (row.free, row.key, row.chasing) for row in table.rows)
    words = f"{words}, {NOTHING} nobody" if nobody else words
    his = any(BY_HIS_RULE in block for row in table.rows for block in row.blocks)
    words = f"{words}, {BY_HIS_RULE} the other man's" if his else words
    unruled = _last_resorts(table)
    return (
        f"{words}{BETWEEN_SIGNS}{', '.join(unruled)}: where his rule finds nobody"
        if unruled
        else words
    )


def _last_resorts(table: Fronts) -> tuple[str, ...]:
    """The blocks of the table that stand in nobody's rule: what is left where it finds no man."""
    ruled = {man: rule.words.casefold() for rule in table.rules for man in rule.label.split()}
    said = [
        (block.split(" ")[0], ruled[man])
        for row in table.rows
        for (man, _), block in zip(table.men, row.blocks, strict=True)
        if man in ruled
    ]
    return tuple(w for w in LAST_RESORTS if any(w == b and w.casefold() not in r for b, r in said))


def answer_marks(table: Answers | None) -> str:
    """What the cells of the table of reads mean, those that it has; "" without one."""
    if table is None:
        return ""
    cells = [cell for _, _, row in table.rows for cell in row]
    covers = {cell.cover for cell in cells}
    said = (
        ("bold open", "open" in covers),
        ("6+ more than six", any("+" in cell.words for cell in cells)),
        ("( ) a good throw", "tight" in covers),
        (f"{NOTHING} covered", "covered" in covers),
        ("late: the rusher is there before", "late" in covers),
        ("heavy line: thrown to", any(cell.first for cell in cells)),
    )
    meant = BETWEEN_SIGNS.join(words for words, there in said if there)
    return f"Yards to their nearest man, in a box, when the ball is there: {meant}"
