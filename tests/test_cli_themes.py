"""Themes, contact sheets and one man's view, as a coach asks for them."""

from __future__ import annotations

import re
from pathlib import Path
from xml.etree import ElementTree

import pypdf
import pytest
from running import run

pytestmark = pytest.mark.usefixtures("kept")

CALL = "Trips Left Stick"
SVG = "{http://www.w3.org/2000/svg}"


@pytest.fixture(scope="module")
def shared(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A playbook that no test changes."""
    folder = tmp_path_factory.mktemp("book") / "mine"
    assert run("new", folder).exit_code == 0
    return folder


@pytest.fixture
def starter(tmp_path: Path) -> Path:
    folder = tmp_path / "mine"
    assert run("new", folder).exit_code == 0
    return folder


def themed(folder: Path, name: str) -> None:
    """Give the playbook a `theme` line."""
    path = next(p for p in folder.glob("*.play") if "\nplaybook " in f"\n{p.read_text('utf-8')}")
    text = re.sub(
        r"^(playbook .*\n)", rf"\1    theme {name}\n", path.read_text("utf-8"), flags=re.M
    )
    path.write_text(text, "utf-8")


def own_theme(folder: Path, text: str) -> Path:
    folder.mkdir(parents=True)
    (folder / "theme.toml").write_text(text, "utf-8")
    return folder


def styles(svg: str) -> set[str]:
    return {e.get("class", "") for e in ElementTree.fromstring(svg).iter()}


def test_a_picture_in_the_dark_lays_its_ground_first(shared: Path) -> None:
    plain, dark = (
        run("draw", shared, CALL).stdout,
        run("draw", shared, CALL, "--theme", "dark").stdout,
    )
    root = ElementTree.fromstring(dark)
    ground = next(e for e in root if e.tag in (f"{SVG}rect", f"{SVG}g"))
    assert (ground.get("class"), ground.get("fill")) == ("ground", "#10161f")
    box = root.get("viewBox", "").split()
    assert (ground.get("width"), ground.get("height")) == (box[2], box[3])
    assert "ground" not in styles(plain)
    assert styles(plain) == styles(dark) - {"ground"}


def test_an_option_may_be_a_folder(shared: Path, tmp_path: Path) -> None:
    theme = own_theme(tmp_path / "ours", '[stroke.route]\ncolour = "#0a5fb4"\n')
    drawn = run("draw", shared, CALL, "--theme", theme)
    assert drawn.exit_code == 0, drawn.stderr
    assert "#0a5fb4" in drawn.stdout
    assert "#0a5fb4" not in run("draw", shared, CALL).stdout


@pytest.mark.parametrize("place", ["inside", "beside"])
def test_the_playbook_names_its_theme(starter: Path, place: str) -> None:
    where = starter if place == "inside" else starter.parent
    own_theme(where / "ours", '[stroke.route]\ncolour = "#0a5fb4"\n')
    themed(starter, "ours")
    assert run("check", starter).exit_code == 0
    assert "#0a5fb4" in run("draw", starter, CALL).stdout
    assert "#0a5fb4" not in run("draw", starter, CALL, "--theme", "plain").stdout


def test_a_theme_name_that_is_wrong_is_told_at_its_line(starter: Path) -> None:
    themed(starter, "drak")
    for command in (("check", starter), ("draw", starter, CALL), ("build", starter)):
        result = run(*command)
        assert result.exit_code == 1
        assert "error E901: there is no theme `drak`" in result.stderr
        assert re.search(r"\| +theme drak\n +\| +\^\^\^\^ not known", result.stderr)
        assert "nearest: dark" in result.stderr
        assert result.stderr.count("E901") == 1
    assert not (starter / "build").exists()


def test_an_option_that_is_wrong_is_a_usage_error(shared: Path) -> None:
    result = run("draw", shared, CALL, "--theme", "plian")
    assert result.exit_code == 2
    assert "nearest: plain" in result.stderr


def test_a_mistake_in_a_theme_shows_its_line(starter: Path) -> None:
    own_theme(starter / "ours", "[stroke.route]\nwieght = 2\n")
    themed(starter, "ours")
    result = run("check", starter)
    assert result.exit_code == 1
    assert "    2 | wieght = 2" in result.stderr


def test_a_template_that_cannot_be_filled_in_is_told(starter: Path) -> None:
    theme = own_theme(starter / "ours", "")
    (theme / "macros.html.jinja").write_text("a\n{% if %}", "utf-8")
    result = run("build", starter, "--theme", theme)
    assert result.exit_code == 2
    assert "macros.html.jinja:2:1: error E913" in result.stderr
    assert not isinstance(result.exception, (ValueError, TypeError))
    assert not (starter / "build").exists()


def test_a_book_in_the_dark(starter: Path) -> None:
    themed(starter, "dark")
    assert run("build", starter, "--only", "Stick", "--out", starter / "build").exit_code == 0
    first = pypdf.PdfReader(starter / "build" / "book.pdf").pages[0].get_contents()
    assert first is not None
    # the ground, #10161f, as the page's first fill
    assert re.match(rb"[\s\S]{0,200}?0\.0627\d* 0\.0862\d* 0\.1215\d* (rg|scn)", first.get_data())
    svg = next((starter / "build" / "pictures").glob("*.svg")).read_text("utf-8")
    assert "#10161f" in svg


def test_one_mans_view_draws_the_others_pale(shared: Path) -> None:
    whole, his = run("draw", shared, CALL).stdout, run("draw", shared, CALL, "--only", "z").stdout
    assert "route-pale" not in styles(whole)
    assert {"route", "route-pale", "man-own", "man-pale"} <= styles(his)
    strong = re.findall(r'<path class="route"', his)
    assert len(strong) == 1
    assert run("draw", shared, CALL, "--only", "Z").stdout == his


def test_a_man_who_is_not_there_is_named_with_those_who_are(shared: Path) -> None:
    result = run("draw", shared, CALL, "--only", "ZZ")
    assert result.exit_code == 2
    assert "nobody in Trips Left Stick is called `ZZ`" in result.stderr
    assert "nearest: Z" in result.stderr


def calls(folder: Path) -> list[str]:
    return run("list", folder).stdout.splitlines()


def words(page: pypdf.PageObject) -> str:
    return " ".join(page.extract_text().split())


def test_a_contact_sheet_has_every_call_once(shared: Path, tmp_path: Path) -> None:
    out = tmp_path / "all.pdf"
    result = run("sheet", shared, "-o", out)
    assert result.exit_code == 0, result.stderr
    pages = pypdf.PdfReader(out).pages
    assert len(pages) <= 2
    text = " ".join(words(page) for page in pages)
    for call in sorted(calls(shared), key=len, reverse=True):
        assert text.count(call) == 1, call
        text = text.replace(call, "|")
    again = tmp_path / "again.pdf"
    run("sheet", shared, "-o", again)
    assert again.read_bytes() == out.read_bytes()


def test_a_contact_sheet_as_one_svg(shared: Path, tmp_path: Path) -> None:
    out = tmp_path / "all.svg"
    assert run("sheet", shared, "-o", out, "--theme", "dark").exit_code == 0
    root = ElementTree.parse(out).getroot()
    said = [e.get("data-text") for e in root if e.tag == f"{SVG}path"]
    assert [call for call in said if call in calls(shared)] == calls(shared)
    ground = next(iter(root.iter(f"{SVG}rect")))
    assert ground.get("fill") == "#10161f"
    width, height = (float(root.get(k, "").removesuffix("pt")) for k in ("width", "height"))
    boxes = [[float(e.get(k, "")) for k in ("x", "y", "width", "height")]
             for e in root if e.tag == f"{SVG}svg"]  # fmt: skip
    assert len(boxes) >= len(calls(shared))
    for i, (x, y, w, h) in enumerate(boxes):
        assert x >= 0 and y >= 0 and x + w <= width and y + h <= height
        for x2, y2, w2, h2 in boxes[:i]:
            assert x >= x2 + w2 or x2 >= x + w or y >= y2 + h2 or y2 >= y + h


def test_large_pictures_stand_one_to_a_wide_page(shared: Path, tmp_path: Path) -> None:
    out = tmp_path / "slides.pdf"
    args = ("--size", "large", "--paper", "screen", "--theme", "dark", "--only", "Stick")
    assert run("sheet", shared, "-o", out, *args).exit_code == 0
    pages = pypdf.PdfReader(out).pages
    wanted = [call for call in calls(shared) if "Stick" in call]
    assert [max((c for c in wanted if c in words(page)), key=len) for page in pages] == wanted
    box = pages[0].mediabox
    assert float(box.width) / float(box.height) == pytest.approx(16 / 9, abs=0.001)


def test_a_contact_sheet_is_a_pdf_or_an_svg(shared: Path, tmp_path: Path) -> None:
    assert run("sheet", shared, "-o", tmp_path / "x.png").exit_code == 2
    assert run("sheet", shared, "--only", "Stik").exit_code == 2
    assert run("sheet", shared, "-o", tmp_path / "none" / "x.svg").exit_code == 2
