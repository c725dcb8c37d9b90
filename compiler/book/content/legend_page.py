"""The page "How to read these pictures": the legend's symbols and the few rules behind them."""

from __future__ import annotations

from dataclasses import dataclass

from stemline.book.content.page import Remark


@dataclass(frozen=True)
class LegendEntry:
    """One entry of the legend: the id of its small picture and what it means."""

    id: str
    caption: str


@dataclass(frozen=True)
class LegendPage:
    """The page on how to read the pictures."""

    symbols: tuple[LegendEntry, ...]
    notes: tuple[Remark, ...]


_NOTES = (
    Remark(
        "Counting",
        "Receivers are numbered from outside in on each side, where they stand at the snap and so "
        "after any motion: #1 is the widest. Strong is the side with more of them; in a tie it "
        "is the called side.",
    ),
    Remark(
        "Reads",
        "A number on a filled tile is the quarterback's order. It stands where the ball would be "
        "caught.",
    ),
    Remark(
        "Under pressure",
        "The chevrons beside a tile are the order when the rush comes: one chevron is looked at "
        "first. A read without a chevron is skipped then: there is no time for it.",
    ),
    Remark(
        "Alerts",
        "An A on an open tile is looked at before the order begins, and only when what stands "
        "beside it is so, such as press. It is no number of the order.",
    ),
    Remark(
        "Spots",
        "A read is a place and not a man. A formation or a tag may bring another man there; the "
        "quarterback's eyes and feet stay the same.",
    ),
    Remark(
        "Depths",
        "A number at a break is yards past the line of scrimmage. Length and depth are drawn at "
        "one scale.",
    ),
    Remark(
        "Looks and calls",
        "The drawn path is the one to run when nothing else is said. In bold behind a man's job "
        "stands what the defence makes of it, such as off or zone, and a motion by its name. What "
        "other calls change is told below, or with their pictures; nobody plays a role there when "
        "no man has its job in that call.",
    ),
    Remark(
        "Blocks",
        "A run is one text for every front. The table says it man by man: his rule, and whom it "
        "gives him against each look; (his rule): the other man's asks for it. Out, down or help: "
        "where no rule finds a man. Playside is where the ball goes.",
    ),
    Remark(
        "Letters",
        "In the text a letter in a small box is a man of theirs; a letter without one is ours.",
    ),
    Remark(
        "Keys",
        "A defender who is read is left alone on purpose; what he does decides what is done. Short "
        "dashes: the quarterback keeps the ball; dots: he pitches it.",
    ),
    Remark(
        "The clock",
        "Under a pass: dashed where a foot is down, grey while the read is open, a line while the "
        "ball is in the air and a tick where it arrives; the cross is a free rusher, where a look "
        "frees one. Below it each read against each look: yards to the nearest defender when the "
        "ball is there. Bold is open: he is 2.5 yards off or more, and 6+ is more than six. In "
        "brackets a good throw beats him: he is a yard off or more, and beside or behind his man. "
        "A dash is covered, late "
        "comes after the free rusher, and blocks is a man who has a rusher to pick up. A heavy "
        "rule marks who is thrown to; where nobody is, check to the concept named. The row of the "
        "free rusher says after how many seconds he is at the passer, and what is thrown before: "
        "a dash is nothing. All are planning estimates.",
    ),
    Remark(
        "Dress-ups",
        "A man who stands solid does something else than on the page of the concept. "
        "A mere mirror is named beside its picture, and a call of which tag and formation are both "
        "drawn is named below it with the tag's picture.",
    ),
)


def reading(captions: tuple[str, ...]) -> LegendPage:
    """The page with the legend's ``captions``, in the order they were drawn in."""
    symbols = tuple(LegendEntry(f"legend-{i}", caption) for i, caption in enumerate(captions, 1))
    return LegendPage(symbols, _NOTES)
