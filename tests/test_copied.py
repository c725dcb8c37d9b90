"""What a picture says is there on a black and white copy, and the copy's gate sees what is not.

Every picture of both playbooks is copied in `gate/test_every_copy.py`; here some.
"""

from __future__ import annotations

from dataclasses import replace
from types import MappingProxyType

import pytest
from gate.copied import Loss, copied
from gate.copies import copies, told_lost
from gate.pictures import BUNDLED, bundled_season, sample

from stemline.emit.svg import to_svg
from stemline.picture.picture import picture
from stemline.theme import Fill, Pen, Size, Theme, load_theme

THEME = load_theme()

SAMPLE = {
    "saltmarsh-herons": (("Trey Right Counter", "Spread Right Smash"), ("look-1",)),
    "cedar-flats-lanterns": (("Trips Close Left Crossers Return", "Doubles Left Zone Keep"), ()),
}
"""Triangles, high-lows, zones, windows, motions, pulls and the free man."""


@pytest.mark.parametrize("book", BUNDLED)
def test_a_copy_keeps_what_the_picture_says(book: str) -> None:
    calls, pages = SAMPLE[book]
    made = copies(sample(book, calls, pages, THEME), THEME)
    assert len(made) > len(calls) * len(Size)
    lost = [told_lost(each) for each in made if each.copy.lost]
    assert not lost, "\n".join(lost)


@pytest.mark.parametrize("size", Size)
def test_men_who_are_not_the_readers_are_still_there(size: Size) -> None:
    (play,) = bundled_season("saltmarsh-herons", ("Spread Right Smash",)).plays
    made = copied(to_svg(picture(play, size, THEME, only="H"), THEME), THEME)
    assert any(role.endswith("-pale") for role in made.asked)
    assert made.lost == ()


def painted(strokes: dict[str, Pen], shapes: dict[str, Fill]) -> Theme:
    """The plain theme with some strokes and shapes of the large picture in other paint."""
    look = THEME.look(Size.FULL)
    other = replace(
        look,
        pens=MappingProxyType({**look.pens, **strokes}),
        grounds=MappingProxyType({**look.grounds, **shapes}),
    )
    return replace(THEME, looks=MappingProxyType({**THEME.looks, Size.FULL: other}))


HALF, PALE = "#8c8c8c", "#e6e6e6"
FADED = {
    "a pale fill with no edge": (painted({}, {"claim": Fill(PALE, None)}), "claim"),
    "a fill with a white edge": (
        painted({}, {"claim": Fill(PALE, Pen(1.4, "#ffffff", ()))}),
        "claim",
    ),
    "a pale solid line": (painted({"yard-line": Pen(0.45, "#bdbdbd", ())}, {}), "yard-line"),
    "a line a little under half": (painted({"hash": Pen(2.0, HALF, ())}, {}), "hash"),
    "a black line too thin": (painted({"route": Pen(0.15, "#000000", ())}, {}), "route"),
    "a pale ring": (painted({}, {"man": Fill("#ffffff", Pen(1.3, HALF, ()))}), "man"),
}


@pytest.mark.parametrize(("theme", "role"), FADED.values(), ids=FADED)
def test_what_a_copy_loses_is_told(theme: Theme, role: str) -> None:
    (play,) = bundled_season("saltmarsh-herons", ("Spread Right Smash",)).plays
    made = copied(to_svg(picture(play, Size.FULL, theme), theme), theme)
    assert {(item.role, item.how) for item in made.lost} == {(role, Loss.GONE)}
    assert len(made.lost) > made.asked.count(role) / 2


def svg(*elements: str) -> str:
    body = "".join(elements)
    size = 'width="200pt" height="100pt" viewBox="0 0 200 100"'
    return f'<svg xmlns="http://www.w3.org/2000/svg" {size}><g class="all">{body}</g></svg>'


def line(y: float, dash: str = "", colour: str = "#000000") -> str:
    dashed = f' stroke-dasharray="{dash}"' if dash else ""
    paint = f'fill="none" stroke="{colour}" stroke-width="1.2"{dashed}'
    return f'<path class="branch" d="M10 {y}L190 {y}" {paint}/>'


def test_dashes_that_run_together_are_told() -> None:
    """A dash under a pale line of another that the copy makes black, and one in the clear."""
    clear = line(30, "4 2")
    assert copied(svg(clear), THEME).lost == ()
    blot = '<path class="claim" d="M5 25L195 25L195 35L5 35Z" fill="#707070"/>'
    (lost,) = copied(svg(blot, clear), THEME).lost
    assert (lost.role, lost.how, lost.left) == ("branch", Loss.CLOSED, 0.0)


def test_what_is_hidden_or_white_is_not_asked_for() -> None:
    plate = '<rect class="halo" x="5" y="25" width="190" height="10" fill="#ffffff"/>'
    under = copied(svg(line(30, colour="#e6e6e6"), plate), THEME)
    assert (under.lost, under.asked) == ((), ("branch",))
    (lost,) = copied(svg(plate, line(30, colour="#e6e6e6")), THEME).lost
    assert (lost.x, lost.y, lost.left) == pytest.approx((100.0, 30.0, 0.0))


def test_letters_are_measured_as_copied() -> None:
    (play,) = bundled_season("saltmarsh-herons", ("Spread Right Smash",)).plays
    made = copied(to_svg(picture(play, Size.FULL, THEME), THEME), THEME)
    yards = THEME.look(Size.FULL).types["yards"]
    assert made.least == pytest.approx(0.64 * yards.points, abs=0.02)
    assert not made.small
    assert copied(to_svg(picture(play, Size.THUMB, THEME), THEME), THEME).small
