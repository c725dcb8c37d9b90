"""What a theme prints can be read by every eye, on every printer and in a lit room.

Every bundled theme is judged; the checks are tried on two invented palettes besides.
"""

from __future__ import annotations

import pytest
from gate import roles
from gate.colour import Vision, contrast, difference, luminance, rgb, seen
from gate.palette import (
    FAINT,
    PAIRS,
    STANDS_ON,
    By,
    Ink,
    Pair,
    Parts,
    coloured,
    confused,
    inks,
    told_by,
    too_faint,
)

from stemline.theme import Size, bundled_themes, load_theme

THEME = load_theme()
PAPER = THEME.colours.ground
SHORT: dict[str, float] = {}
"""Roles of the plain theme that are fainter than they should be, and the contrast they have: none
may be added, and one that is mended leaves the table. Other themes have none."""

each_size = pytest.mark.parametrize("size", Size)
each_theme = pytest.mark.parametrize("name", bundled_themes())


def test_the_themes_that_are_judged() -> None:
    assert bundled_themes() == ("dark", "plain")


@each_theme
@each_size
def test_text_and_marks_stand_out(size: Size, name: str) -> None:
    theme = load_theme(name)
    faint: dict[str, float] = {}
    for role, _, ratio in too_faint(inks(theme, size), theme.colours.ground):
        faint[role] = min(round(ratio, 1), faint.get(role, 21.0))
    assert faint == (SHORT if name == "plain" else {})


@each_theme
@each_size
def test_roles_that_must_be_told_apart_are(size: Size, name: str) -> None:
    assert confused(inks(load_theme(name), size)) == []


@each_size
def test_colours_only_repeat_what_dash_and_weight_say(size: Size) -> None:
    """With every colour of the dark theme made ink, no two roles are confused that must not be."""
    theme = load_theme("dark")
    plain = inks(theme, size)
    ink = theme.colours.ink
    strokes: dict[Parts, str] = {
        (sort, name): ink
        for sort, name in plain
        if sort == "stroke" and chromatic(plain[sort, name].colour)
    }
    assert strokes
    assert confused(coloured(plain, strokes)) == []


def chromatic(colour: str) -> bool:
    """Whether a colour is clearly none of the theme's greys."""
    return max(rgb(colour)) - min(rgb(colour)) > 0.2


@each_size
def test_every_colour_of_the_dark_theme_is_told_from_the_ground_by_every_eye(size: Size) -> None:
    theme = load_theme("dark")
    ground = rgb(theme.colours.ground)
    for vision in Vision:
        for (sort, name), ink in inks(theme, size).items():
            if sort != "shape" and chromatic(ink.colour):
                under = seen(ground, vision)
                assert contrast(seen(rgb(ink.colour), vision), under) > 4.5, (vision, name)


@each_size
def test_offence_and_defence_are_told_apart_by_every_eye_in_the_dark(size: Size) -> None:
    palette = inks(load_theme("dark"), size)
    ours, theirs = palette["stroke", "route"], palette["stroke", "rush"]
    assert By.COLOUR in told_by(ours, theirs)
    assert By.COLOUR in told_by(palette["text", "letter"], palette["text", "defender"])


@each_size
def test_every_role_is_looked_at(size: Size) -> None:
    palette = inks(THEME, size)
    assert {name for sort, name in palette if sort == "text"} == STANDS_ON.keys()
    assert {name for sort, name in palette if sort == "stroke"} == set(THEME.look(size).pens)
    assert {name for _, name in palette} >= FAINT
    for pair in PAIRS:
        assert {(pair.sort, pair.one), (pair.sort, pair.other)} <= palette.keys()
    paired = {roles.plain(n) for p in PAIRS if p.sort == "stroke" for n in (p.one, p.other)}
    alone = roles.PATHS - paired
    # each is a short mark with a shape of its own
    assert alone == {"tick", "mesh"}


def test_the_inks_are_what_is_emitted() -> None:
    palette = inks(THEME, Size.FULL)
    assert palette["stroke", "route"] == Ink("#000000", 1.45)
    assert palette["stroke", "branch"].dash == (2.2, 2.0)
    assert palette["shape", "man"].fill == "#ffffff"
    assert palette["text", "read"] == Ink("#ffffff")


@pytest.mark.parametrize(
    ("one", "other", "ratio"),
    [("#000000", "#ffffff", 21.0), ("#777777", "#ffffff", 4.48), ("#767676", "#ffffff", 4.54),
     ("#ff0000", "#ffffff", 4.0), ("#0000ff", "#ffffff", 8.59), ("#808080", "#808080", 1.0)],
)  # fmt: skip
def test_contrast_agrees_with_known_ratios(one: str, other: str, ratio: float) -> None:
    assert contrast(rgb(one), rgb(other)) == pytest.approx(ratio, abs=0.01)
    assert contrast(rgb(other), rgb(one)) == contrast(rgb(one), rgb(other))


@pytest.mark.parametrize("vision", Vision)
def test_greys_look_the_same_to_everyone(vision: Vision) -> None:
    """A property of the published matrices: their rows add up to one."""
    for row in vision.value:
        assert sum(row) == pytest.approx(1.0, abs=2e-6)
    for level in ("#000000", "#595959", "#bdbdbd", "#ffffff"):
        assert seen(rgb(level), vision) == pytest.approx(rgb(level), abs=1e-3)


def test_what_colour_blind_eyes_confuse() -> None:
    """Red and green of one lightness are far apart to most, near to two kinds of eyes."""
    red, green = rgb("#c04000"), rgb("#5c7000")
    assert difference(red, green) > 40
    near = {v for v in Vision if difference(seen(red, v), seen(green, v)) < 20}
    assert near == {Vision.PROTANOPIA, Vision.DEUTERANOPIA, Vision.GREY}
    blue, teal = rgb("#0050c0"), rgb("#006060")
    assert difference(seen(blue, Vision.TRITANOPIA), seen(teal, Vision.TRITANOPIA)) < 20
    assert difference(blue, teal) > 40


def test_difference_agrees_with_the_definition_of_lightness() -> None:
    assert difference(rgb("#000000"), rgb("#ffffff")) == pytest.approx(100.0, abs=0.05)
    assert difference(rgb("#ffffff"), rgb("#777777")) == pytest.approx(100 - 50.03, abs=0.1)
    assert luminance(rgb("#bcbcbc")) == pytest.approx(0.5029, abs=1e-3)


def test_inks_are_told_by_dash_weight_or_colour() -> None:
    plain = Ink("#000000", 1.0)
    assert told_by(plain, plain) == frozenset()
    assert told_by(plain, Ink("#000000", 1.0, (2.0, 2.0))) == {By.DASH}
    assert told_by(Ink("#000000", 1.0, (2.0, 2.0)), Ink("#000000", 1.0, (5.0, 2.5))) == {By.DASH}
    assert told_by(plain, Ink("#000000", 1.3)) == {By.WEIGHT}
    assert told_by(plain, Ink("#0060ff", 1.0)) == {By.COLOUR}
    assert told_by(Ink("#c04000", 1.0), Ink("#5c7000", 1.0)) == frozenset()


SOUND: dict[Parts, str] = {
    ("stroke", "route"): "#0b2a6b",
    ("stroke", "branch"): "#0b2a6b",
    ("stroke", "carry"): "#7a1f00",
    ("stroke", "block"): "#3a3a3a",
    ("stroke", "rush"): "#8a0f3c",
    ("text", "depth"): "#0b2a6b",
    ("text", "words"): "#3b1a5a",
}
"""Dark colours that only repeat what dash and weight already say."""

UNSOUND: dict[Parts, str] = {
    ("stroke", "carry"): "#ffd000",
    ("text", "depth"): "#e07000",
    ("text", "read"): "#604000",
}
"""Colours too near to what they stand on."""


@each_size
def test_a_sound_palette_passes(size: Size) -> None:
    palette = coloured(inks(THEME, size), SOUND)
    assert confused(palette) == []
    assert {name for name, _, _ in too_faint(palette, PAPER)} == SHORT.keys()


@each_size
def test_faint_colours_are_found(size: Size) -> None:
    palette = coloured(inks(THEME, size), UNSOUND)
    found = {(name, under) for name, under, _ in too_faint(palette, PAPER) if name not in SHORT}
    assert found == {
        ("carry", "paper"), ("depth", "paper"), ("depth", "halo"), ("depth", "claim"),
        ("read", "tile"),
    }  # fmt: skip


@each_size
def test_red_and_green_alone_tell_nothing(size: Size) -> None:
    """A theme with solid branches, told from routes by red and green."""
    palette = inks(THEME, size)
    weight = palette["stroke", "route"].weight
    palette |= {
        ("stroke", "route"): Ink("#c04000", weight),
        ("stroke", "branch"): Ink("#5c7000", weight),
    }
    assert confused(palette) == [Pair("stroke", "route", "branch")]
