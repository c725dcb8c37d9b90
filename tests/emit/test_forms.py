"""Pictures in the document: inside their figure, stored once, and the same bytes everywhere."""

from __future__ import annotations

import hashlib
import io
import os
import shutil
import subprocess
import sys
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from picture.sample_plays import ALL
from pypdf import PdfReader
from pypdf.generic import ContentStream

from stemline.emit.engine_log import PictureFailed
from stemline.emit.gallery import Art, Gallery, PdfInk
from stemline.emit.pdf import identified, pages_pdf
from stemline.emit.pdf_forms import _Placed
from stemline.emit.pdf_ink import art_of
from stemline.picture.picture import picture
from stemline.theme import Size, load_theme

THEME = load_theme()
QUADS = art_of("a", picture(ALL["quads-return"], Size.THUMB, THEME), THEME, "")
TRIPS = art_of("c", picture(ALL["trips"], Size.THUMB, THEME), THEME, "")
ARTS = (QUADS, replace(QUADS, id="b", alt="the same again"), TRIPS)
HTML = (
    '<html lang="en"><title>p</title>'
    + "".join(f'<p>over {a.id}</p><img src="stemline:picture/{a.id}" alt="{a.alt}">' for a in ARTS)
    + "</html>"
)


def made() -> bytes:
    return pages_pdf(HTML, Gallery(ARTS), THEME, "2026-05-01")


@pytest.fixture(scope="module")
def reader() -> PdfReader:
    return PdfReader(io.BytesIO(made()))


def tree(reader: PdfReader) -> Any:
    """The document as a reader of screens is given it."""
    root: Any = reader.trailer["/Root"]
    return root["/StructTreeRoot"]


def figures(node: Any) -> list[tuple[str, int]]:
    """Alternative text and the number of the marked content of every figure, in order."""
    node = node.get_object()
    if isinstance(node, list):
        return [each for kid in node for each in figures(kid)]
    if not hasattr(node, "get"):
        return []
    if node.get("/S") == "/Figure":
        kid = node["/K"]
        kid = kid[0] if isinstance(kid, list) else kid
        kid = kid.get_object()
        return [(node["/Alt"], int(kid["/MCID"] if hasattr(kid, "get") else kid))]
    return figures(node["/K"]) if "/K" in node else []


def forms_of(reader: PdfReader) -> Any:
    """Every form that the only page may draw, by its name there."""
    resources: Any = reader.pages[0]["/Resources"]
    return resources.get("/XObject", {})


def drawn_in(reader: PdfReader) -> dict[int, list[str]]:
    """The forms that are drawn inside each marked content of the only page."""
    (page,) = reader.pages
    inside: dict[int, list[str]] = {}
    open_: list[int | None] = []
    for operands, operator in ContentStream(page.get_contents(), reader).operations:
        if operator in (b"BDC", b"BMC"):
            marked = operands[1].get("/MCID") if operator == b"BDC" else None
            open_.append(None if marked is None else int(marked))
        elif operator == b"EMC":
            open_.pop()
        elif operator == b"Do":
            assert open_ and open_[-1] is not None, "drawn outside of any figure"
            inside.setdefault(open_[-1], []).append(operands[0])
    return inside


def test_each_picture_is_drawn_inside_the_figure_with_its_words(reader: PdfReader) -> None:
    found = figures(tree(reader))
    assert [alt for alt, _ in found] == [art.alt for art in ARTS]
    inside = drawn_in(reader)
    assert sorted(inside) == sorted(mark for _, mark in found)
    names = [inside[mark] for _, mark in found]
    assert all(len(each) == 1 for each in names)


def test_pictures_that_look_the_same_are_stored_once(reader: PdfReader) -> None:
    inside = drawn_in(reader)
    first, same, other = (inside[mark][0] for _, mark in figures(tree(reader)))
    assert first == same != other
    forms = forms_of(reader)
    assert set(forms) == {first, other}


def test_every_letter_that_is_drawn_is_there(reader: PdfReader) -> None:
    forms = forms_of(reader)
    assert forms
    for form in forms.values():
        form = form.get_object()
        known = form["/Resources"]["/XObject"]
        drawn = [
            operands[0]
            for operands, operator in ContentStream(form, reader).operations
            if operator == b"Do"
        ]
        assert drawn
        assert set(drawn) <= set(known)
        assert all(known[name].get_object().get_data().endswith(b"f") for name in drawn)


def test_words_between_pictures_can_be_read(reader: PdfReader) -> None:
    text = reader.pages[0].extract_text()
    assert text.split() == ["over", "a", "over", "b", "over", "c"]


def test_a_picture_that_cannot_be_placed_stops_the_document(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    def fail(*args: object) -> None:
        raise ZeroDivisionError("by nothing")

    class Broken(_Placed):
        id = property(fail, lambda self, value: None)

    monkeypatch.setattr("stemline.emit.pdf_forms._Placed", Broken)
    with pytest.raises(PictureFailed, match=f"{QUADS.name} cannot be drawn: by nothing"):
        made()


def test_an_interrupt_while_a_picture_is_placed_comes_through(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    def interrupted(*args: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr("stemline.emit.pdf_forms._Placed.draw", interrupted)
    with pytest.raises(KeyboardInterrupt):
        made()


def test_two_runs_and_any_seed_of_hashes_give_the_same_bytes() -> None:
    here = hashlib.sha256(made()).hexdigest()
    assert hashlib.sha256(made()).hexdigest() == here
    code = "import hashlib; from emit.test_forms import made; "
    code += "print(hashlib.sha256(made()).hexdigest())"
    for seed in ("1", "77"):
        env = {**os.environ, "PYTHONHASHSEED": seed,
               "PYTHONPATH": os.pathsep.join(p for p in sys.path if p)}  # fmt: skip
        done = subprocess.run(
            [sys.executable, "-c", code], env=env, capture_output=True, text=True, check=True
        )
        assert done.stdout.strip() == here


def test_the_file_has_an_identifier_that_follows_from_what_went_in(reader: PdfReader) -> None:
    both: Any = reader.trailer["/ID"]
    first, second = both
    assert first == second
    other = PdfReader(io.BytesIO(pages_pdf(HTML, Gallery(ARTS), THEME, "")))
    assert other.trailer["/ID"] == reader.trailer["/ID"]
    changed = (replace(QUADS, ink=PdfInk(b"0 0 m 9 9 l S", ())), *ARTS[1:])
    third = PdfReader(io.BytesIO(pages_pdf(HTML, Gallery(changed), THEME, "")))
    assert third.trailer["/ID"] != reader.trailer["/ID"]


def test_a_file_that_has_an_identifier_gets_no_second() -> None:
    with pytest.raises(ValueError, match="no ID yet"):
        identified(made(), "0" * 32)


def test_a_checker_of_files_finds_nothing(tmp_path: Path) -> None:
    checker = shutil.which("qpdf")
    if checker is None:
        pytest.skip("qpdf is not installed")
    file = tmp_path / "pictures.pdf"
    file.write_bytes(made())
    done = subprocess.run([checker, "--check", str(file)], capture_output=True, text=True)
    assert done.returncode == 0, done.stdout + done.stderr


def test_a_picture_without_operators_is_painted_from_its_svg() -> None:
    svg = (
        '<svg xmlns="http://www.w3.org/2000/svg" width="9pt" height="9pt"><path d="M1 1H8"/></svg>'
    )
    html = '<html lang="en"><title>p</title><img src="stemline:picture/a" alt="a"></html>'
    page = PdfReader(io.BytesIO(pages_pdf(html, Gallery((Art("a", svg, "a", 9, 9),)), THEME, "")))
    assert not forms_of(page)
