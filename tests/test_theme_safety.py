"""Another coach's theme: nothing outside its folder is read, and whatever it does is one message.

What a theme may do and what it may take stands in the figures, under Themes. Children of a
process are met in `test_theme_apart.py`.
"""

from __future__ import annotations

import os
import re
import struct
import sys
import time
import zlib
from importlib.resources import files
from pathlib import Path
from types import SimpleNamespace

import pytest

sys.path.insert(0, str(Path(__file__).parent / "book"))

from sample_season import sample_season

from stemline.diagnostics.render import render
from stemline.emit.fetch import answer
from stemline.emit.html import filled
from stemline.emit.svg import to_svg
from stemline.picture.picture import picture
from stemline.picture.scene.metrics import Face
from stemline.source import NOWHERE, Span
from stemline.theme import Found, Refused, Size, Theme, load_theme, read_theme, theme_called
from stemline.theme import limits as bounds
from stemline.theme.fonts import unfit
from stemline.theme.pictures import Unsound, prove_png, prove_svg

PLAIN = Path(str(files("stemline.themes"))) / "plain"
FIGURES = files("stemline.grammar").joinpath("figures.md").read_text("utf-8")
SECRET = "a letter to nobody else"
SVG = '<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9" viewBox="0 0 9 9">'

posix = pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="files of other kinds")


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A theme that says nothing, with a secret beside its folder."""
    (tmp_path / "secret").mkdir()
    for name in ("x.txt", "theme.toml", "x.ttf", "x.svg", "x.css"):
        (tmp_path / "secret" / name).write_text(SECRET, "utf-8")
    made = tmp_path / "mine"
    made.mkdir()
    (made / "theme.toml").write_text("", "utf-8")
    return made


def said(got: Found) -> str:
    assert got.theme is None
    return render(got.diagnostics, {source.name: source for source in got.sources})


def only(folder: Path) -> str:
    """The one message on the theme."""
    found = said(read_theme(folder, "mine"))
    assert found.count(": error E") == 1, found
    assert SECRET not in found
    return found


def theme_of(folder: Path) -> Theme:
    got = read_theme(folder, "mine")
    assert got.theme is not None, said(got)
    return got.theme


# Nothing outside.


@pytest.mark.parametrize(
    "name",
    ["book.html.jinja", "book.css", "cover.svg", "logo.png", "x.ttf", "theme.toml", "fonts/a.css"],
)
def test_a_link_that_leads_out_is_named_and_not_read(folder: Path, name: str) -> None:
    file = folder / name
    file.parent.mkdir(exist_ok=True)
    file.unlink(missing_ok=True)
    file.symlink_to(folder.parent / "secret" / "x.txt")
    found = only(folder)
    assert f"{name}: error E906: the file `{name}`" in found
    assert "leads out of the theme's folder" in found


def test_a_font_behind_a_link_is_named_once(folder: Path) -> None:
    (folder / "x.ttf").symlink_to(folder.parent / "secret" / "x.ttf")
    (folder / "theme.toml").write_text('[font]\nbold = "x.ttf"\n', "utf-8")
    assert "leads out" in only(folder)
    (folder / "x.font").symlink_to(folder.parent / "secret" / "x.ttf")
    (folder / "x.ttf").unlink()
    (folder / "theme.toml").write_text('[font]\nbold = "x.font"\n', "utf-8")
    found = only(folder)
    assert "theme.toml:2:" in found and "leads out" in found


def test_a_link_to_a_folder_is_named(folder: Path) -> None:
    (folder / "more").symlink_to(folder.parent / "secret")
    assert "`more` of the theme cannot be read: it is a link to a folder" in only(folder)


def test_links_in_a_circle_and_to_nowhere_are_named(folder: Path) -> None:
    (folder / "a.css").symlink_to("b.css")
    (folder / "b.css").symlink_to("a.css")
    (folder / "c.css").symlink_to("gone.css")
    found = said(read_theme(folder, "mine"))
    assert re.findall(r"file `(.).css` .*leads nowhere", found) == ["a", "b", "c"]
    for name in "abc":
        (folder / f"{name}.css").unlink()
    (folder / "round").symlink_to(folder)
    assert "`round`" in only(folder)


def test_a_link_that_stays_inside_is_a_file_like_others(folder: Path) -> None:
    (folder / "styles").mkdir()
    (folder / "styles" / "x.css").write_text("h1 {}", "utf-8")
    (folder / "book.css").symlink_to("styles/x.css")
    assert answer("stemline:theme/book.css", theme_of(folder), {})[0].endswith(b"\nh1 {}")


def test_a_file_put_there_later_is_not_seen(folder: Path) -> None:
    theme = theme_of(folder)
    (folder / "late.css").symlink_to(folder.parent / "secret" / "x.css")
    with pytest.raises(Refused, match="no such file"):
        answer("stemline:theme/late.css", theme, {})


@posix
@pytest.mark.parametrize("name", ["book.css", "theme.toml", "x.ttf"])
def test_a_pipe_is_named_and_not_waited_for(folder: Path, name: str) -> None:
    (folder / name).unlink(missing_ok=True)
    os.mkfifo(folder / name)
    assert f"`{name}` of the theme cannot be read: it is no plain file" in only(folder)


@posix
def test_a_device_is_outside(folder: Path) -> None:
    (folder / "book.css").symlink_to("/dev/zero")
    assert "leads out" in only(folder)


@pytest.mark.parametrize("base", ["../secret", "../mine/../secret", "/", ".", "..", "", "a\\\\b"])
def test_a_theme_is_extended_by_its_plain_name(folder: Path, base: str) -> None:
    for file in (folder.parent / "secret").iterdir():
        file.unlink()
    (folder.parent / "secret" / "theme.toml").write_text("", "utf-8")
    for name in (base, str(folder.parent / "secret")):
        (folder / "theme.toml").write_text(f'extends = "{name}"\n', "utf-8")
        found = only(folder)
        assert "theme.toml:1:1: error E901" in found
    (folder / "theme.toml").write_text('extends = "secret"\n', "utf-8")
    assert len(theme_of(folder).layers) == 3


def test_only_an_option_may_say_the_way_to_a_theme(folder: Path) -> None:
    for name in (str(folder), "secret/../mine"):
        assert "E901" in said(theme_called(name, NOWHERE, (folder.parent,)))
        assert theme_called(name, NOWHERE, (folder.parent,), path=True).theme is not None


def test_a_long_chain_of_themes_is_one_message(tmp_path: Path) -> None:
    for n in range(60):
        made = tmp_path / f"t{n}"
        made.mkdir()
        (made / "theme.toml").write_text(f'extends = "t{n + 1}"\n' * (n < 59), "utf-8")
    found = said(read_theme(tmp_path / "t0", "mine"))
    assert found.count(": error E") == 1
    assert f"t{bounds.LONGEST_CHAIN - 1}/theme.toml:1:1: error E917" in found.replace(os.sep, "/")


# Sizes.


@pytest.mark.parametrize("name", ["theme.toml", "book.css", "cover.svg", "a.html.jinja", "b.png"])
def test_a_file_that_is_too_large_is_named(folder: Path, name: str) -> None:
    with (folder / name).open("wb") as out:
        out.truncate(max(bounds.LARGEST.values()) * 40)  # a hole: it takes no room
    assert f"`{name}` of the theme cannot be read: it is larger than" in only(folder)


def test_many_files_many_names_and_deep_folders(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    deep = folder / "a" / "b" / "c" / "d" / "e"
    deep.mkdir(parents=True)
    assert "folders lie more than 4 deep" in only(folder)
    (folder / "a").rename(folder.parent / "a")
    for n in range(62):  # more than the bundled theme has, which is read by the same bounds
        (folder / f"{n}.css").write_text("x" * 50_000, "utf-8")
    for name, most, words in (
        ("MOST_FILES", 60, "at most 60 files"),
        ("MOST_ENTRIES", 60, "more than 60 names"),
        ("ALL_FILES", 1_000_000, "at most 1 megabytes"),
    ):
        with monkeypatch.context() as patch:
            patch.setattr(bounds, name, most)
            assert words in said(read_theme(folder, "mine"))


@pytest.mark.parametrize(
    "text",
    [
        "".join(f"k{n} = 1\n" for n in range(12_000)),
        "k" * 100_000 + " = 1",
        "[stroke.route]\nweight = " + "1" * 5_000,
        "x = " + "[" * 60_000,
        ".".join("a" * 50_000) + " = 1",
        "[font]\n" + "".join(f'f{n} = "theme.toml"\n' for n in range(4_000)),
        "[stroke.route]\ndash = [" + "1," * 50_000 + "]",
    ],
)
def test_a_hostile_table_is_answered_at_once(folder: Path, text: str) -> None:
    (folder / "theme.toml").write_text(text, "utf-8")
    began = time.process_time()
    got = read_theme(folder, "mine")
    assert got.theme is None
    assert 0 < len(got.diagnostics) <= bounds.MOST_MISTAKES + bounds.MOST_FACES
    assert time.process_time() - began < 5


# Files that are not what they say.


@pytest.mark.parametrize("name", ["book.css", "macros.html.jinja"])
def test_a_text_that_is_no_text_is_told_with_its_place(folder: Path, name: str) -> None:
    (folder / name).write_bytes(b"a\nbc\xe4\n")
    assert f"{name}:2:3: error E911" in only(folder)


@pytest.mark.parametrize(
    ("text", "place", "why"),
    [
        ("", ":1:1:", "no element found"),
        (SVG, ":1:80:", "no element found"),
        ("<p/>", ":1:1:", "outermost element"),
        ('<svg width="9"/>', ":1:1:", "outermost element"),
        (f"{SVG}\n<g></svg>", ":2:6:", "mismatched tag"),
        (f"{SVG}\n&lt;&nbsp;</svg>", ":2:5:", "undefined entity"),
        (f"<!DOCTYPE svg>{SVG}</svg>", ":1:", "no document type"),
        (
            f'<!DOCTYPE svg [<!ENTITY a SYSTEM "file:///etc/passwd">]>{SVG}<text>&a;</text></svg>',
            ":1:",
            "no document type",
        ),
        (f'<?xml version="1.0" encoding="klingon"?>{SVG}</svg>', ":1:", "encoding"),
        (f"{SVG}{'<g>' * 100}{'</g>' * 100}</svg>", ":1:", "deep"),
        (f"{SVG}{'<g/>' * 60_000}</svg>", ":1:", "elements"),
    ],
)
def test_an_svg_that_cannot_be_drawn_is_told(folder: Path, text: str, place: str, why: str) -> None:
    (folder / "cover.svg").write_text(text, "utf-8")
    found = only(folder)
    assert f"cover.svg{place}" in found
    assert "error E912" in found and why in found


def png(width: int = 2, height: int = 2, body: bytes | None = None) -> bytes:
    """A grey picture of so many dots."""
    dots = (b"\0" + b"\7" * width) * height if body is None else body

    def chunk(kind: bytes, data: bytes) -> bytes:
        return (
            struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))
        )

    head = struct.pack(">IIBBBBB", width, height, 8, 0, 0, 0, 0)
    parts = (b"\x89PNG\r\n\x1a\n", chunk(b"IHDR", head))
    return b"".join((*parts, chunk(b"IDAT", zlib.compress(dots)), chunk(b"IEND", b"")))


def test_a_png_is_proved_to_its_last_dot(folder: Path) -> None:
    good = png()
    prove_png(good)
    (folder / "logo.png").write_bytes(good)
    theme_of(folder)
    for cut in range(len(good)):
        with pytest.raises(Unsound):
            prove_png(good[:cut])
    for n in range(8, len(good)):
        with pytest.raises(Unsound):
            prove_png(good[:n] + bytes([good[n] ^ 1]) + good[n + 1 :])
    for wrong in (
        png(2, 2, b"\0\7"),
        png(2, 2, bytes(50_000_000)),
        png(0),
        png(90_000, 90_000, b""),
    ):
        with pytest.raises(Unsound):
            prove_png(wrong)
    (folder / "logo.png").write_bytes(good[:-20])
    assert "logo.png: error E912: the picture `logo.png`" in only(folder)


def test_the_bundled_pictures_and_fonts_are_sound() -> None:
    for file in PLAIN.parent.rglob("*.svg"):
        prove_svg(file.read_bytes())
    for data in load_theme().fonts.values():
        assert unfit(data) == ""


def with_table(data: bytes, tag: bytes, change: bytes, at: int) -> bytes:
    """A font with some bytes of a table replaced."""
    (count,) = struct.unpack(">H", data[4:6])
    for row in range(12, 12 + 16 * count, 16):
        name, _, offset, _ = struct.unpack(">4sLLL", data[row : row + 16])
        if name == tag:
            return data[: offset + at] + change + data[offset + at + len(change) :]
    raise KeyError(tag)


def test_a_font_whose_figures_would_fill_the_machine_is_damaged(folder: Path) -> None:
    font = load_theme().fonts["bold"]
    many = struct.pack(">HHHHLHHLLLLLL", 0, 1, 3, 10, 12, 12, 0, 28, 0, 1, 0, 0xFFFFFFFF, 0)
    for wrong, why in (
        (with_table(font, b"cmap", many, 0), "more letters than there are"),
        (with_table(font, b"cmap", struct.pack(">HHHHLH", 0, 1, 3, 1, 12, 2), 0), "a form"),
        (with_table(font, b"loca", b"\xff\xff\xff\xff", 0), "outlines are not where it says"),
        (with_table(font, b"head", b"\0\0", 18), "0 units"),
    ):
        assert why in unfit(wrong)
        (folder / "x.ttf").write_bytes(wrong)
        (folder / "theme.toml").write_text('[font]\nbold = "x.ttf"\n', "utf-8")
        assert "theme.toml:2:1: error E907" in only(folder)


def test_letters_that_are_garbage_are_one_message() -> None:
    font = load_theme().fonts["bold"]
    (offset,) = (
        struct.unpack(">4sLLL", font[row : row + 16])[2]
        for row in range(12, 12 + 16 * struct.unpack(">H", font[4:6])[0], 16)
        if font[row : row + 4] == b"glyf"
    )
    garbage = font[: offset + 200] + b"\x01\xfe\x7f" * 20_000 + font[offset + 60_200 :]
    garbage = garbage[: len(font)]
    assert unfit(garbage) == "", "the tables are where they were: only letters are wrong"
    face = Face(garbage, "bold", Span("mine/theme.toml", 2, 1, 5))
    with pytest.raises(Refused, match=r"^mine/theme.toml:2:1: error E907: `bold` cannot letter"):
        for letter in "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789":
            face.glyph(letter)


def test_a_letter_that_is_put_together_from_itself_comes_to_an_end() -> None:
    import io

    from fontTools.fontBuilder import FontBuilder
    from fontTools.pens.ttGlyphPen import TTGlyphPen

    order = [".notdef", *(f"g{n}" for n in range(40))]
    glyphs = {".notdef": TTGlyphPen(None).glyph()}
    glyphs["g0"] = TTGlyphPen(None).glyph()
    for n in range(1, 40):
        pen = TTGlyphPen(glyphs)
        for _ in range(2):
            pen.addComponent(f"g{n - 1}", (1, 0, 0, 1, 0, 0))
        glyphs[f"g{n}"] = pen.glyph()
    for glyph in glyphs.values():
        glyph.xMin = glyph.yMin = glyph.xMax = glyph.yMax = 0
    made = FontBuilder(1000, isTTF=True)
    made.setupGlyphOrder(order)
    made.setupCharacterMap({ord("A"): "g39"})
    made.setupGlyf(glyphs, calcGlyphBounds=False)
    made.setupHorizontalMetrics(dict.fromkeys(order, (500, 0)))
    made.setupHorizontalHeader(ascent=800, descent=-200)
    made.setupPost()
    made.font.recalcBBoxes = False
    held = io.BytesIO()
    made.save(held)
    face = Face(held.getvalue(), "bold", Span("mine/theme.toml", 2, 1, 5))
    began = time.process_time()
    with pytest.raises(Refused, match="E907"):
        face.glyph("A")
    assert time.process_time() - began < 5


# Templates.


def fill(folder: Path, text: str, **values: object) -> str:
    (folder / "own.jinja").write_text(text, "utf-8")
    return filled(theme_of(folder), "own.jinja", **values)


@pytest.mark.parametrize(
    ("text", "why"),
    [
        ("{{ 1/0 }}", "division by zero"),
        ("{{ 1 + 'a' }}", "unsupported operand"),
        ("{{ (1e308 * 10)|int }}", "infinity"),
        ("{{ 'x' * 10**10 }}", "repeats something too often"),
        ("{{ 10**10 * 'x' }}", "repeats something too often"),
        ("{{ 9**9**9 }}", "a power of more than 100"),
        ("{{ nobody }}", "'nobody' is undefined"),
        ("{{ lipsum() }}", "'lipsum' is undefined"),
        ("{{ [1, 2]|random }}", "No filter named 'random'"),
        ("{% include 'own.jinja' %}", "circle"),
        ("{% macro m() %}{{ m() }}{% endmacro %}{{ m() }}", "circle"),
        ("{% extends '../secret/x.txt' %}", "../secret/x.txt"),
        ("{% include '/etc/passwd' %}", "/etc/passwd"),
        ("{{ range(200000)|list }}", "Range too big"),
        ("{{ ''.__class__ }}", "unsafe"),
        ("{{ '{0.__class__}'.format('x') }}", "unsafe"),
        ("{% if %}", "Expected an expression"),
        ("{% for a in %}", "Expected an expression"),
        ("{{ 'a'.encode('zip') }}", "zip"),
    ],
)
def test_a_template_that_fails_is_one_message_with_its_line(
    folder: Path, text: str, why: str
) -> None:
    with pytest.raises(Refused) as refused:
        fill(folder, f"a\nb\n{text}\n")
    found = str(refused.value)
    assert found.count("error E913") == 1
    line = 1 if "extends" in text or "include 'own" in text else 3
    assert re.search(rf"own\.jinja:({line}|3):1: error E913", found), found
    assert why in found
    assert SECRET not in found


def test_the_line_is_that_of_the_template_where_it_goes_wrong(folder: Path) -> None:
    (folder / "part.jinja").write_text("\n\n{% macro m(x) %}\n{{ 1/x }}{% endmacro %}", "utf-8")
    with pytest.raises(Refused, match=r"part.jinja:4:1: error E913"):
        fill(folder, "{% from 'part.jinja' import m %}{{ m(0) }}")


def test_templates_that_write_without_end_are_stopped(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("stemline.emit.html.LARGEST_PAGES", 100_000)
    with pytest.raises(Refused, match="writes more than"):
        fill(
            folder, "{% for a in range(9999) %}{% for b in range(9999) %}x{% endfor %}{% endfor %}"
        )


def test_our_own_mistake_in_a_bundled_template_is_no_message() -> None:
    with pytest.raises(TypeError):
        filled(load_theme(), "contact.html.jinja", contact=SimpleNamespace(title="x"), faces=3)


def test_a_template_that_does_well_is_as_it_was(folder: Path) -> None:
    assert fill(folder, "{{ 3 * 4 }} {{ 'ab' * 2 }} {{ 2 ** 10 }} {{ n }}", n="<") == (
        "12 abab 1024 &lt;"
    )


# What coaches are told.


def test_the_page_of_figures_has_the_limits() -> None:
    table = FIGURES.partition("## Themes\n")[2].partition("\n## ")[0]

    def row(name: str) -> list[float]:
        (text,) = re.findall(rf"^\| {name} \| (.*) \|$", table, re.MULTILINE)
        return [float(n.replace(",", "")) for n in re.findall(r"\d[\d,]*(?:\.\d+)?", text)]

    mega = bounds.MEGABYTE
    largest = {k: v / mega for k, v in bounds.LARGEST.items()}
    assert row("one `theme.toml`") == [largest[".toml"] * 1000]
    assert row("one template or style sheet") == [largest[".jinja"]] == [largest[".css"]]
    assert row("one SVG") == [largest[".svg"], bounds.MOST_ELEMENTS]
    assert row("one PNG") == [largest[".png"], bounds.MOST_DOTS / mega]
    assert row("one font") == [largest[".ttf"]]
    assert row("all files of a folder") == [
        bounds.ALL_FILES / mega,
        bounds.MOST_FILES,
        bounds.DEEPEST,
    ]
    assert row("faces") == [bounds.MOST_FACES]
    assert row("themes that rest on each other") == [bounds.LONGEST_CHAIN]
    assert row("filling in the templates once") == [
        bounds.TEMPLATE_SECONDS,
        bounds.LARGEST_PAGES / mega,
    ]
    assert row("setting all pages") == [bounds.SECONDS, bounds.SECONDS_A_PICTURE]
    assert row("memory for it") == [bounds.MEMORY / mega, bounds.MEMORY_A_PICTURE / mega]
    assert bounds.SLACK == 4 and "four times" in table


# Figures at their ends.

_EXTREME = [
    "[picture]\nwidth = 2000\nheight = 2000\nyard = 2000\nmargin = 0\n[symbol]\nman = 20\n",
    "[symbol]\nman = 0\nlineman = 0\n[text.letter]\nsize = 144\n",
    "[symbol]\nman = 20\nlineman = 20\n",
]


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("[symbol]\nman = 9999", "from 0 to 20"),
        ("[stroke.route]\nweight = 37", "from 0 to 36"),
        ("[text.letter]\nsize = 9999", "from 0 to 144"),
        ("[picture]\nwidth = 9999", "from 0 to 2,000"),
        ("[picture]\nyard = 1e-300", "at least 6 points"),
        ("[stroke.route]\ndash = [0.01, 0.01]", "points on"),
        ("[stroke.route]\ndash = [1, 300]", "points on"),
    ],
)
def test_a_figure_beyond_any_page_is_told(folder: Path, text: str, words: str) -> None:
    (folder / "theme.toml").write_text(text, "utf-8")
    found = only(folder)
    assert "theme.toml:2:1: error E904" in found and words in found


@pytest.mark.parametrize("text", _EXTREME)
def test_a_picture_at_the_ends_of_its_figures_is_drawn_at_once(folder: Path, text: str) -> None:
    (folder / "theme.toml").write_text(text, "utf-8")
    theme = theme_of(folder)
    play = sample_season().plays[0]
    began = time.process_time()
    for size in Size:
        drawn = to_svg(picture(play, size, theme), theme)
        assert not re.search(r"\b(nan|inf)\b", drawn)
    assert time.process_time() - began < 20
