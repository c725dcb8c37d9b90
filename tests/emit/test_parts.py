"""A book whose parts are set alone is the book that is set whole; a part is set once."""

from __future__ import annotations

import io
from collections.abc import Iterator
from concurrent.futures import Future
from dataclasses import replace
from itertools import chain, cycle
from pathlib import Path
from typing import Any

import pypdfium2
import pytest
from PIL import ImageChops
from pypdf import PdfReader
from pypdf.generic import IndirectObject
from sample_gallery import CAPTIONS, gallery_of

from stemline.book.content.book import Book, Edition, make_book
from stemline.emit import parts as parts_module
from stemline.emit.fragments import Fragment, unpacked
from stemline.emit.gallery import Gallery, PdfInk
from stemline.emit.parts import Part, Press, Setter
from stemline.emit.pdf import to_pdf
from stemline.emit.pdf_ink import letter_name
from stemline.emit.side_by_side import SideBySide
from stemline.football.play import Season
from stemline.outside.store import Store
from stemline.printing.kept_parts import KeptHeights
from stemline.theme import Theme

DATE = "2026-05-01"


class Kept(dict[str, bytes]):
    """What was set, as a store keeps it; ``made`` is the book of it."""

    made = b""

    def get(self, key: str, /) -> Fragment | None:  # type: ignore[override]
        return unpacked(self[key]) if key in self else None

    def put(self, key: str, piece: Fragment, /) -> None:
        self[key] = piece.packed()

    def named(self, outline: str, /) -> str | None:
        return self[f"filled {outline}"].decode("latin-1") if f"filled {outline}" in self else None

    def name(self, outline: str, key: str, /) -> None:
        self[f"filled {outline}"] = key.encode()


def placed(gallery: Gallery) -> Gallery:
    """Pictures as operators that draw two letters; half of them look the same."""
    letters = ((0, "A"), (2, "Q"))
    draws = " ".join(f"/{letter_name(letter)} Do" for letter in letters)
    return Gallery(
        tuple(
            replace(art, ink=PdfInk(f"0 0 {900 + n % 2 * n} 500 re S {draws}".encode(), letters))
            for n, art in enumerate(gallery.arts)
        )
    )


@pytest.fixture(scope="module")
def gallery(season: Season) -> Gallery:
    return placed(gallery_of(season, CAPTIONS))


@pytest.fixture(scope="module")
def pdf(kept: Kept) -> bytes:
    return kept.made


@pytest.fixture(scope="module")
def whole(book: Book, gallery: Gallery, theme: Theme) -> bytes:
    """The same book set in one document, as that of another coach's theme is."""
    own = replace(theme, layers=(replace(theme.layers[0], bundled=False), *theme.layers[1:]))
    return to_pdf(book, gallery, own, DATE)


@pytest.fixture(scope="module")
def kept(book: Book, gallery: Gallery, theme: Theme) -> Kept:
    """What a build keeps that begins with nothing, and its book, which is that of a build that
    keeps nothing: such a one is made where no process can be started."""
    before = Kept()
    before.made = to_pdf(book, gallery, theme, DATE, before=before)
    return before


@pytest.fixture
def done(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """The names of the parts that are set."""
    names: list[str] = []
    real = Press.set

    def counted(self: Press, part: Any) -> Fragment:
        names.append(part.name)
        return real(self, part)

    monkeypatch.setattr(Press, "set", counted)
    return names


def test_not_one_dot_differs_from_the_book_set_whole(pdf: bytes, whole: bytes) -> None:
    alone, together = pypdfium2.PdfDocument(pdf), pypdfium2.PdfDocument(whole)
    assert len(alone) == len(together)
    for mine, theirs in zip(alone, together, strict=True):
        a, b = (page.render(scale=1).to_pil().convert("L") for page in (mine, theirs))
        assert a.getbbox()
        assert ImageChops.difference(a, b).getbbox() is None


def test_its_text_outline_and_links_are_those_of_the_book_set_whole(
    pdf: bytes, whole: bytes
) -> None:
    alone, together = PdfReader(io.BytesIO(pdf)), PdfReader(io.BytesIO(whole))
    for mine, theirs in zip(alone.pages, together.pages, strict=True):
        assert sorted(mine.extract_text().split()) == sorted(theirs.extract_text().split())
    assert outline(alone) == outline(together) != []
    assert links(alone) == links(together) != []
    assert all(target in alone.named_destinations for target in links(alone))
    assert {
        name: alone.get_destination_page_number(place)
        for name, place in alone.named_destinations.items()
    } == {
        name: together.get_destination_page_number(place)
        for name, place in together.named_destinations.items()
    }


def outline(reader: Any) -> list[tuple[int, str, int | None, Any]]:
    """Depth, words, page and count of every entry."""

    def told(entries: Any, depth: int) -> Iterator[tuple[int, str, int | None, Any]]:
        for entry in entries:
            if isinstance(entry, list):
                yield from told(entry, depth + 1)
            else:
                page = reader.get_destination_page_number(entry)
                yield depth, entry.title, page, entry.node.get("/Count", 0)

    return list(told(reader.outline, 0))


def links(reader: Any) -> list[str]:
    found = chain.from_iterable(page.get("/Annots", ()) for page in reader.pages)
    return [link.get_object()["/Dest"] for link in found]


def elements(reader: Any) -> Iterator[tuple[Any, Any]]:
    """Every structure element below the document, as reference and object."""
    root = reader.root_object["/StructTreeRoot"]
    waiting = list(root["/K"][0]["/K"])
    while waiting:
        reference = waiting.pop()
        if isinstance(reference, IndirectObject):
            element: Any = reference.get_object()
            if element.get("/Type") == "/StructElem":
                yield reference, element
                waiting += element["/K"]


def test_the_tree_of_its_structure_is_whole(pdf: bytes, whole: bytes) -> None:
    """ISO 32000-1, 14.7.4.4: what is marked on a page leads to its element by the page's key, a
    link to its own by its key; each key stands once, in order. 14.7.2: an identifier stands once.
    """
    reader: Any = PdfReader(io.BytesIO(pdf))
    numbers = reader.root_object["/StructTreeRoot"]["/ParentTree"]["/Nums"]
    keys = list(numbers[::2])
    assert keys == sorted(set(keys))
    parents = dict(zip(keys, numbers[1::2], strict=True))
    names: list[str] = []
    marked = 0
    for reference, element in elements(reader):
        names += [element["/ID"]] if "/ID" in element else []
        for kid in element["/K"]:
            if isinstance(kid, int):
                of_page = parents[element["/Pg"]["/StructParents"]]
                assert of_page[kid].idnum == reference.idnum
                marked += 1
            elif (kid := kid.get_object()).get("/Type") == "/OBJR":
                assert parents[kid["/Obj"]["/StructParent"]].idnum == reference.idnum
            else:
                assert kid.raw_get("/P").idnum == reference.idnum
    assert marked > 500
    assert len(names) == len(set(names)) > 10
    asked = {
        str(name)
        for _, element in elements(reader)
        for name in element.get("/A", {}).get("/Headers", ())
    }
    assert asked
    assert asked <= set(map(str, names))
    assert kinds(reader) == kinds(PdfReader(io.BytesIO(whole)))


def kinds(reader: Any) -> list[tuple[str, str]]:
    """Each element's kind and alternative text."""
    return sorted((e["/S"], str(e.get("/Alt", ""))) for _, e in elements(reader))


def test_every_font_and_letter_is_there_once(pdf: bytes, theme: Theme) -> None:
    reader: Any = PdfReader(io.BytesIO(pdf))
    fonts = {page["/Resources"].raw_get("/Font").idnum for page in reader.pages}
    assert len(fonts) == 1
    held = reader.pages[0]["/Resources"]["/Font"].values()
    names = {font.get_object()["/BaseFont"] for font in held}
    assert len(names) == len(held) == len(theme.fonts)
    forms: dict[int, bytes] = {}
    for page in reader.pages:
        waiting = [page["/Resources"]]
        while waiting:
            for name, reference in waiting.pop().get("/XObject", {}).items():
                form = reference.get_object()
                if reference.idnum not in forms and not name.startswith("/x"):
                    forms[reference.idnum] = form.get_data() + str(form["/BBox"]).encode()
                    waiting.append(form.get("/Resources", {}))
    assert len(forms) > 10
    assert len(set(forms.values())) == len(forms)


def test_a_book_that_is_set_is_not_set_again(
    book: Book, gallery: Gallery, theme: Theme, pdf: bytes, kept: Kept, done: list[str]
) -> None:
    assert to_pdf(book, gallery, theme, DATE, before=kept) == pdf
    assert done == []


def test_another_revision_sets_what_shows_it(
    season: Season, gallery: Gallery, theme: Theme, kept: Kept, done: list[str]
) -> None:
    later = make_book(season, Edition("1b2c3d4", "2026-06-01"), CAPTIONS)
    before = Kept(kept)
    warm = to_pdf(later, gallery, theme, "2026-06-01", before=before)
    assert {"cover", "feet"} <= set(done) <= {"cover", "feet", "fonts"}
    assert warm == to_pdf(later, gallery, theme, "2026-06-01")


def test_a_changed_sentence_sets_its_own_section(
    season: Season, theme: Theme, kept: Kept, done: list[str]
) -> None:
    concept = season.plays[0].call.concept
    changed = tuple(
        replace(sheet, says=(*sheet.says, sheet.name)) if sheet.name == concept else sheet
        for sheet in season.concepts
    )
    book = make_book(replace(season, concepts=changed), Edition("4f2c9e1", DATE), CAPTIONS)
    gallery = placed(gallery_of(season, CAPTIONS))
    warm = to_pdf(book, gallery, theme, DATE, before=Kept(kept))
    page = next(page for page in book.pages if page.name == concept)
    assert set(done) - {"fonts"} == {page.id}
    assert warm == to_pdf(book, gallery, theme, DATE)


def test_a_picture_that_looks_otherwise_sets_its_section(
    book: Book, gallery: Gallery, theme: Theme, kept: Kept, done: list[str]
) -> None:
    """Of the same size: nothing in the text says that it changed."""
    page = next(page for page in reversed(book.pages) if page.large is not None)
    base = page.large
    assert base is not None
    arts = tuple(
        replace(art, ink=replace(art.ink, operators=art.ink.operators + b"\n"))
        if art.id == base.id and art.ink is not None else art
        for art in gallery.arts
    )  # fmt: skip
    assert arts != gallery.arts
    to_pdf(book, Gallery(arts), theme, DATE, before=Kept(kept))
    assert done == [page.id]


BROKEN = (b"", b"[]\n", b"[[0],[0]]\n", b"\xff\n", b"{")


def test_a_piece_that_is_broken_or_cut_short_is_set_again(
    book: Book, gallery: Gallery, theme: Theme, pdf: bytes, kept: Kept
) -> None:
    wrong = cycle((*BROKEN, None))
    held = {k: piece[:-1] if (w := next(wrong)) is None else w for k, piece in kept.items()}
    assert len(held) > len(BROKEN)
    assert to_pdf(book, gallery, theme, DATE, before=Kept(held)) == pdf


def test_several_processes_set_the_same_book(
    book: Book, gallery: Gallery, theme: Theme, pdf: bytes, monkeypatch: pytest.MonkeyPatch
) -> None:
    asked: list[tuple[str, bool]] = []
    real = SideBySide.each

    def heard(self: SideBySide, method: str, values: Any) -> Any:
        self.number = 2
        made = list(real(self, method, values))
        asked.append((method, len(made) == len(values)))
        return iter(made)

    monkeypatch.setattr(SideBySide, "each", heard)
    monkeypatch.setattr(parts_module, "FEW", 1)
    monkeypatch.setattr(parts_module, "MANY_TO_MEASURE", 1)
    assert to_pdf(book, gallery, theme, DATE) == pdf
    assert set(asked) == {("measure", True), ("set", True)}


def test_where_no_process_can_be_started_the_book_is_set_here(
    book: Book, gallery: Gallery, theme: Theme, pdf: bytes, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refused(*_: Any, **__: Any) -> Any:
        raise OSError("no more processes")

    monkeypatch.setattr("concurrent.futures.ProcessPoolExecutor", refused)
    monkeypatch.setattr("stemline.emit.side_by_side._processors", lambda: 2)
    monkeypatch.setattr(parts_module, "FEW", 1)
    monkeypatch.setattr(parts_module, "MANY_TO_MEASURE", 1)
    assert to_pdf(book, gallery, theme, DATE) == pdf


def test_fonts_that_lack_a_glyph_are_not_bound(
    small_season: Season, theme: Theme, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Then the book is set whole: nothing in it may be a blank."""
    book = make_book(small_season, Edition("a", ""), CAPTIONS)
    gallery = gallery_of(small_season, CAPTIONS)
    own = replace(theme, layers=(replace(theme.layers[0], bundled=False), *theme.layers[1:]))
    together = to_pdf(book, gallery, own, "")
    real = parts_module.fonts_part
    monkeypatch.setattr(
        "stemline.emit.pdf.fonts_part", lambda theme, pieces: real(theme, pieces[-1:])
    )
    made: Any = PdfReader(io.BytesIO(to_pdf(book, gallery, theme, "")))
    theirs = PdfReader(io.BytesIO(together))
    assert made.pages[2].extract_text() == theirs.pages[2].extract_text()
    assert b"/Footer" not in made.pages[2].get_contents().get_data()


def test_a_part_that_other_processes_set_is_kept_before_the_next_is_there(
    theme: Theme, monkeypatch: pytest.MonkeyPatch
) -> None:
    """So a build that is killed loses no more than it was about to set."""
    asked: list[Future[Fragment]] = []

    class Killed:
        def __init__(self, *_: Any, **__: Any) -> None: ...

        def submit(self, *_: Any) -> Future[Fragment]:
            made: Future[Fragment] = Future()
            if asked:
                made.set_exception(KeyboardInterrupt())
            else:
                made.set_result(Fragment((), (), ()))
            asked.append(made)
            return made

        def shutdown(self, **_: Any) -> None: ...

    monkeypatch.setattr("concurrent.futures.ProcessPoolExecutor", Killed)
    monkeypatch.setattr("stemline.emit.side_by_side._processors", lambda: 2)
    monkeypatch.setattr(parts_module, "FEW", 1)
    monkeypatch.setattr(parts_module, "MANY_TO_MEASURE", 1)
    before = Kept()
    with pytest.raises(KeyboardInterrupt), Setter(theme, before) as setter:
        setter.set((Part("first", ""), Part("second", "")))
    (kept,) = before
    assert kept.endswith(Part("first", "").key)


def test_kept_heights_and_pieces_that_are_none_of_ours_are_not_there(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(KeptHeights, "here", lambda _: "here ")
    with Store(tmp_path) as store:
        heights = KeptHeights(store)
        heights["a"] = {"a-fixed": 1.0}
        (row,) = store._new
        for held in (b"{}", b"3", b'{"a-fixed": true}', b'{"a-fixed": NaN}', b"[]", b"\x80"):
            store.put(row, held)
            found = KeptHeights(store)
            assert "a" not in found or not found["a"], held
    piece = Fragment(((b"a", b""),), (0,), (0,), (0,), (0, [0]), letters={"x": 0})
    assert unpacked(piece.packed()) == piece
    wrongs: tuple[dict[str, Any], ...] = (
        {"pages": (1,)}, {"parents": (0, [1])}, {"letters": {"x": "y"}}
    )  # fmt: skip
    for wrong in wrongs:
        assert unpacked(replace(piece, **wrong).packed()) is None
