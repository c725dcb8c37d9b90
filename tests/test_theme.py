"""Themes are data: what a coach may change, how one rests on another, and what is said of mistakes.

Pages and pictures in a theme of one's own stand in `test_cli_themes.py`.
"""

from __future__ import annotations

import re
from importlib.resources import files
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from stemline.checks.discovered import wordings
from stemline.diagnostics.render import render
from stemline.source import NOWHERE
from stemline.theme import (
    SMALLEST_TYPE,
    Found,
    Size,
    Theme,
    ThemeError,
    bundled_themes,
    load_theme,
    read_theme,
    theme_called,
)
from stemline.theme.theme import Colours

PLAIN = files("stemline.themes") / "plain"


def made(folder: Path, text: str) -> Path:
    """A theme's folder with this file."""
    folder.mkdir(parents=True, exist_ok=True)
    (folder / "theme.toml").write_text(text, "utf-8")
    return folder


def read(folder: Path, text: str) -> Theme:
    got = read_theme(made(folder, text), "mine")
    assert got.theme is not None, got.diagnostics
    return got.theme


def said(got: Found) -> str:
    """The print-out of what is wrong."""
    assert got.theme is None
    return render(got.diagnostics, {source.name: source for source in got.sources})


def wrong(folder: Path, text: str) -> str:
    return said(read_theme(made(folder, text), "mine"))


# The bundled themes.


def test_the_plain_theme_has_every_role_at_every_size() -> None:
    theme = load_theme()
    full, quarter, thumb = (theme.look(size) for size in Size)
    assert full.pens.keys() == quarter.pens.keys() == thumb.pens.keys()
    assert full.width == pytest.approx(7.3 * 72)
    assert quarter.width == pytest.approx(3.55 * 72)
    assert thumb.width == pytest.approx(2.3 * 72)
    assert theme.fonts.keys() == {"regular", "semibold", "bold", "italic"}


def test_plain_is_black_on_white_and_rests_on_nothing() -> None:
    theme = load_theme()
    assert theme.colours == Colours("#ffffff", "#000000")
    assert theme.colours.white
    assert len(theme.layers) == 1 and theme.bundled


@pytest.mark.parametrize("name", bundled_themes())
def test_every_bundled_theme_has_all_that_is_drawn(name: str) -> None:
    plain, theme = load_theme(), load_theme(name)
    for size in Size:
        for table in ("pens", "grounds", "types", "symbol"):
            mine = getattr(theme.look(size), table)
            assert mine.keys() == getattr(plain.look(size), table).keys()


def test_the_dark_theme_is_heavier_and_larger_and_lays_its_ground() -> None:
    plain, dark = load_theme(), load_theme("dark")
    assert not dark.colours.white
    for name in ("man", "lineman", "centre", "tile", "head"):
        assert dark.look(Size.FULL).symbol[name] > plain.look(Size.FULL).symbol[name]
    for size in Size:
        ours, theirs = dark.look(size), plain.look(size)
        for name in ("route", "motion", "carry", "block", "rush", "yard-line"):
            assert ours.pens[name].weight > theirs.pens[name].weight
        assert ours.symbol["cross"] > theirs.symbol["cross"]
        assert ours.grounds["halo"].fill == dark.colours.ground
        assert ours.grounds["man"].fill == dark.colours.ground


def test_every_face_has_its_licence_beside_it() -> None:
    assert "SIL Open Font License" in (PLAIN / "fonts" / "OFL.txt").read_text(encoding="utf-8")


def test_a_bundled_theme_that_is_not_there_is_our_own_mistake() -> None:
    with pytest.raises(ThemeError, match="E901"):
        load_theme("no-such")


# A theme says what differs.


def test_an_empty_theme_is_the_plain_one(tmp_path: Path) -> None:
    mine, plain = read(tmp_path, ""), load_theme()
    assert mine.looks == plain.looks
    assert mine.fonts == plain.fonts
    assert [layer.place for layer in mine.layers] == [str(tmp_path), plain.layers[0].place]
    assert not mine.bundled


def test_one_line_changes_one_thing(tmp_path: Path) -> None:
    mine = read(tmp_path, "[stroke.route]\nweight = [2.0, 1.2]\n")
    plain = load_theme()
    pen = mine.look(Size.FULL).pens["route"]
    assert (pen.weight, pen.colour) == (2.0, "#000000")
    for size in Size:
        old = dict(plain.look(size).pens)
        assert {k for k, v in mine.look(size).pens.items() if v != old[k]} == {"route"}
    assert mine.digest != plain.digest


@pytest.mark.parametrize(
    ("said", "wanted"),
    [
        ("2", (2.0, 2.0, 2.0)),
        ("[5, 1]", (5.0, 2.0, 1.0)),
        ("[5, 4, 1]", (5.0, 4.0, 1.0)),
    ],
)
def test_of_two_numbers_the_quarter_page_takes_one_between(
    tmp_path: Path, said: str, wanted: tuple[float, ...]
) -> None:
    mine = read(tmp_path, f"[stroke.route]\nweight = {said}\n")
    assert tuple(mine.look(size).pens["route"].weight for size in Size) == wanted


@pytest.mark.parametrize(
    ("said", "wanted"),
    [
        ("[5.0, 3.0]", (5.0, 3.0)),
        ("[[5.0, 2.0], [1.0, 1.0]]", (2.0, 1.25)),
        ("[[5.0, 2.0], [4.0, 3.0], [1.0, 1.0]]", (4.0, 3.0)),
        ("[[5.0, 2.0, 1.0, 2.0], [1.0, 1.0]]", (1.0, 1.0)),
    ],
)
def test_dashes_of_the_quarter_page(tmp_path: Path, said: str, wanted: tuple[float, ...]) -> None:
    mine = read(tmp_path, f"[stroke.route]\ndash = {said}\n")
    assert mine.look(Size.QUARTER).pens["route"].dash == wanted


def test_the_digest_follows_every_file_that_is_printed(tmp_path: Path) -> None:
    before = read(tmp_path, "")
    assert read(tmp_path, "").digest == before.digest
    (tmp_path / "book.css").write_text("h1 { color: red }", "utf-8")
    assert read(tmp_path, "").digest != before.digest


def test_a_theme_may_rest_on_one_beside_it(tmp_path: Path) -> None:
    made(tmp_path / "team", 'extends = "dark"\n[colour]\nsky = "#99CCFF"\n')
    mine = read(tmp_path / "week", 'extends = "team"\n[stroke.motion]\nweight = 2\n')
    pen = mine.look(Size.THUMB).pens["motion"]
    assert (pen.weight, pen.colour) == (2.0, "#99ccff")
    names = [Path(layer.place).name for layer in mine.layers]
    assert names == ["week", "team", "dark", "plain"]


def test_a_copy_of_a_bundled_theme_may_keep_its_name(tmp_path: Path) -> None:
    mine = made(tmp_path / "dark", 'extends = "dark"\n[stroke.route]\nweight = 3\n')
    got = theme_called("dark", NOWHERE, (tmp_path,))
    assert got.theme is not None
    places = [layer.place for layer in got.theme.layers]
    assert places[:2] == [str(mine), str(files("stemline.themes") / "dark")]
    assert theme_called("dark", NOWHERE, ()).theme is not None


def test_no_type_is_smaller_than_six_points_whatever_the_table_says(tmp_path: Path) -> None:
    changed = read(tmp_path, "[text.letter]\nsize = [4.0, 3.0]\n")
    assert changed.look(Size.FULL).types["letter"].points == SMALLEST_TYPE
    for name in bundled_themes():
        for size in Size:
            assert min(t.points for t in load_theme(name).look(size).types.values()) >= 6


# Inks.


def test_greys_go_from_the_ink_to_the_ground(tmp_path: Path) -> None:
    mine = read(tmp_path, '[colour]\nground = "#102030"\nink = "#f0E0d0"\n').look(Size.FULL)
    assert mine.pens["route"].colour == "#f0e0d0"
    assert mine.grounds["lineman"].fill == "#102030"
    assert mine.grounds["halo"].fill == "#102030"
    assert mine.types["read"].colour == "#102030"


@given(st.floats(0, 1))
def test_on_white_a_grey_is_the_same_in_each_channel(grey: float) -> None:
    shade = Colours().shade(grey)
    assert re.fullmatch(r"#(..)\1\1", shade)
    assert int(shade[1:3], 16) == round(255 * grey)


def test_a_colour_stands_for_a_grey_and_a_grey_for_a_colour(tmp_path: Path) -> None:
    made(tmp_path / "low", '[colour]\nnavy = "#0b2a6b"\n[stroke.route]\ncolour = "navy"\n')
    mine = read(
        tmp_path / "high",
        'extends = "low"\n[stroke.route]\ngrey = 1.0\n[stroke.block]\ncolour = "navy"\n'
        '[shape.man]\nfill = "navy"\nedge = "ground"\n[text.depth]\ncolour = "#FF8800"\n',
    ).look(Size.FULL)
    assert mine.pens["route"].colour == "#ffffff"
    assert mine.pens["block"].colour == "#0b2a6b"
    man = mine.grounds["man"]
    assert man.fill == "#0b2a6b"
    assert man.edge is not None
    assert man.edge.colour == "#ffffff"
    assert mine.types["depth"].colour == "#ff8800"


def test_fills_edges_and_dashes_can_be_taken_away(tmp_path: Path) -> None:
    text = (
        '[shape.man]\nfill = "none"\n[shape.tile-open]\nedge = "none"\n[stroke.motion]\ndash = []\n'
    )
    mine = read(tmp_path, text + "[shape.dot]\nedge = 0.5\n").look(Size.FULL)
    assert mine.grounds["man"].fill is None
    assert mine.grounds["tile-open"].edge is None
    assert mine.pens["motion"].dash == ()
    assert mine.grounds["dot"].edge_weight > 0


# Mistakes.


@pytest.mark.parametrize(
    ("text", "place", "words"),
    [
        ("[stroke.rout]\nweight = 1\n", ":1:", "nearest: route"),
        ("[stroke.route]\nwieght = 1\n", ":2:", "nearest: weight"),
        ("[symbl]\nman = 1\n", ":1:", "nearest: symbol"),
        ("[symbol]\nmen = 1\n", ":2:", "nearest: man"),
        ('title = "x"\nextend = "dark"\n', ":2:", "nearest: extends"),
        ('extends = "drak"\n', ":1:", "nearest: dark"),
        ('\n[text.letter]\nface = "black"\n', ":3:", "the name of a face"),
        ("[stroke.route]\ngrey = 2\n", ":2:", "a grey from 0"),
        ('[stroke.route]\ncolour = "#12"\n', ":2:", "a colour"),
        ('[colour]\nink = "black"\n', ":2:", "#0a5fb4"),
        ("[stroke.route]\nweight = true\n", ":2:", "points"),
        ("[stroke.route]\nweight = [1, 2, 3, 4]\n", ":2:", "points"),
        ("[stroke.route]\nweight = -1\n", ":2:", "points"),
        ("[stroke.route]\nweight = nan\n", ":2:", "points"),
        (f"[stroke.route]\nweight = {10**400}\n", ":2:", "points"),
        ("[stroke.motion]\ndash = [[1, 2], [[3], 4]]\n", ":2:", "points on"),
        ("[stroke.motion]\ndash = [0, 0]\n", ":2:", "points on"),
        ("stroke = 3\n", ":1:", "a table"),
        ("[stroke]\nroute = 3\n", ":2:", "a table"),
        ("title = 3\n", ":1:", "words in quotes"),
        ("[picture]\nmargin = 80\n", ":2:", "more than the margins"),
        ("[picture]\nyard = [11, 0]\n", ":2:", "at least 3 points"),
        ("[stroke.route\nweight = 1\n", ":1:", "cannot be read"),
        ("a = 1\na = 2\n", ":2:", "cannot be read"),
        ('[font]\nbold = "no.ttf"\n', ":2:", "no.ttf"),
        ('[font]\nbold = "../secret.ttf"\n', ":2:", "outside the theme's folder"),
        ('[font]\nbold = "/etc/passwd"\n', ":2:", "outside the theme's folder"),
        ('[font]\nbold = "theme.toml"\n', ":2:", "no TrueType font"),
        ("[font]\nbold = 1\n", ":2:", "font file"),
    ],
)
def test_a_mistake_is_told_with_its_line(tmp_path: Path, text: str, place: str, words: str) -> None:
    found = wrong(tmp_path, text)
    assert f"theme.toml{place}" in found
    assert words in found
    assert found.count("error E") == 1, found


def test_every_mistake_of_a_file_is_told_at_once(tmp_path: Path) -> None:
    found = wrong(tmp_path, "[stroke.rout]\nweight = 1\n[symbol]\nman = -1\n[foo]\n")
    assert re.findall(r"error (E\d+)", found) == ["E903", "E904", "E903"]


def test_a_mistake_of_the_theme_below_is_told_in_its_own_file(tmp_path: Path) -> None:
    made(tmp_path / "low", "[stroke.route]\nweight = -1\n")
    got = read_theme(made(tmp_path / "high", 'extends = "low"\n'), "high")
    (only,) = got.diagnostics
    assert only.span.source == str(tmp_path / "low" / "theme.toml")


def test_themes_in_a_circle(tmp_path: Path) -> None:
    made(tmp_path / "low", 'extends = "high"\n')
    assert "E905" in said(read_theme(made(tmp_path / "high", 'extends = "low"\n'), "high"))


def test_a_name_that_is_no_theme(tmp_path: Path) -> None:
    made(tmp_path / "lanterns", "")
    found = said(theme_called("lantern", NOWHERE, (tmp_path,)))
    assert "E901" in found
    assert "nearest: lanterns" in found
    assert "dark, plain" in found
    assert "E901" in said(theme_called("x" * 300, NOWHERE, (tmp_path, tmp_path / "no")))
    (tmp_path / "empty").mkdir()
    assert "E901" in said(theme_called("empty", NOWHERE, (tmp_path,)))


def test_a_file_that_is_no_text(tmp_path: Path) -> None:
    (tmp_path / "theme.toml").write_bytes(b"title = \xff")
    assert "E902" in said(read_theme(tmp_path, "mine"))


def test_a_folder_without_its_file_and_a_file_that_leads_nowhere(tmp_path: Path) -> None:
    assert "E906" in said(read_theme(tmp_path, "mine"))
    (tmp_path / "loop.css").symlink_to(tmp_path / "loop.css")
    assert "loop.css: error E906" in wrong(tmp_path, "")
    (tmp_path / "loop.css").unlink()
    (tmp_path / "fonts").write_text("no folder", "utf-8")
    assert "E906" in wrong(tmp_path, '[font]\nbold = "fonts/x.ttf"\n')


@pytest.mark.parametrize(
    ("start", "why"),
    [(b"OTTO", "PostScript"), (b"wOF2", "packed"), (b"\x00\x01\x00\x00\x00\x0a", "TrueType"),
     (b"\x00\x01\x00\x00\x00\x0a" + bytes(6), "cut off")],
)  # fmt: skip
def test_fonts_that_cannot_letter_a_picture(tmp_path: Path, start: bytes, why: str) -> None:
    (tmp_path / "x.ttf").write_bytes(start)
    assert why in wrong(tmp_path, '[font]\nbold = "x.ttf"\n')


def test_a_font_that_is_cut_off_or_lacks_a_table(tmp_path: Path) -> None:
    whole = load_theme().fonts["bold"]
    font = tmp_path / "x.ttf"
    font.write_bytes(whole[: len(whole) // 2])
    assert "cut off" in wrong(tmp_path, '[font]\nbold = "x.ttf"\n')
    font.write_bytes(whole.replace(b"glyf", b"glyx", 1))
    assert "no table glyf" in wrong(tmp_path, '[font]\nbold = "x.ttf"\n')
    font.write_bytes(whole)
    assert read(tmp_path, '[font]\nbold = "x.ttf"\n').fonts["bold"] == whole


JUNK = st.recursive(
    st.one_of(st.integers(-9, 9), st.floats(), st.booleans(), st.text("abc#019", max_size=8)),
    lambda inner: st.lists(inner, max_size=3),
    max_leaves=5,
)


@given(
    section=st.sampled_from(["stroke.route", "shape.man", "text.letter", "symbol", "picture"]),
    key=st.sampled_from(
        ["weight", "grey", "colour", "dash", "fill", "edge", "face", "size", "man"]
    ),
    value=JUNK,
)
def test_no_value_makes_it_raise(
    tmp_path_factory: pytest.TempPathFactory, section: str, key: str, value: object
) -> None:
    """Whatever stands there, it is a theme or it is told."""
    folder = tmp_path_factory.mktemp("junk")
    got = read_theme(made(folder, f"[{section}]\n{key} = {toml(value)}\n"), "junk")
    assert (got.theme is None) == bool(got.diagnostics)
    assert all(d.code in wordings() for d in got.diagnostics)


def toml(value: object) -> str:
    if isinstance(value, bool):
        return str(value).lower()
    if isinstance(value, list):
        return f"[{', '.join(map(toml, value))}]"
    return f'"{value}"' if isinstance(value, str) else repr(value)
